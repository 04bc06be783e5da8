//! CIEDE2000: how far two colors look apart.

use crate::lab::Lab;

/// The tolerance for opposite hues, degrees. The angle comes from an arc tangent whose last bit differs
/// between libraries, and the formula has a step at 180 degrees.
const ANGLE_NOISE: f64 = 1e-9;

/// `sqrt(C^7 / (C^7 + 25^7))`, the weight by which both the grays and the blues are bent.
fn weight_of_chroma(chroma: f64) -> f64 {
    let square = chroma * chroma;
    let seventh = square * square * square * chroma;
    (seventh / (seventh + 6_103_515_625.0)).sqrt()
}

fn cos_degrees(angle: f64) -> f64 {
    libm::cos(angle.to_radians())
}

/// Chroma and hue in degrees from 0 to 360, of the axes after the grays are bent.
fn chroma_and_hue(a: f64, b: f64) -> (f64, f64) {
    let hue = libm::atan2(b, a).to_degrees();
    (libm::hypot(a, b), if hue < 0.0 { hue + 360.0 } else { hue })
}

/// The difference of two colors by CIEDE2000 (ISO/CIE 11664-6), all three parametric factors 1.
///
/// The steps and the rules for hues are those of Sharma, Wu and Dalal, "The CIEDE2000 Color-Difference Formula:
/// Implementation Notes, Supplementary Test Data, and Mathematical Observations", Color Research and Application 30
/// (2005) 21-30; all 34 pairs of their table are tested. The formula is meant for differences up to about 5.
///
/// # Example
/// The first pair of that table.
/// ```
/// use colour::{Lab, delta_e_2000};
/// let blue = |a, b| Lab { lightness: 50.0, a, b };
/// let apart = delta_e_2000(blue(2.6772, -79.7751), blue(0.0, -82.7485));
/// assert!((apart - 2.0425).abs() < 5e-5);
/// ```
pub fn delta_e_2000(one: Lab, other: Lab) -> f64 {
    let bent = 1.0 + 0.5 * (1.0 - weight_of_chroma((one.chroma() + other.chroma()) / 2.0));
    let (chroma_1, hue_1) = chroma_and_hue(one.a * bent, one.b);
    let (chroma_2, hue_2) = chroma_and_hue(other.a * bent, other.b);

    let is_grey = chroma_1 * chroma_2 == 0.0;
    let turn = hue_2 - hue_1;
    let over_the_top = turn.abs() > 180.0 + ANGLE_NOISE;
    let hue_step = if is_grey {
        0.0
    } else if !over_the_top {
        turn
    } else if turn > 0.0 {
        turn - 360.0
    } else {
        turn + 360.0
    };
    // A gray has no hue of its own: 0, so the sum is the hue of the other.
    let sum = hue_1 + hue_2;
    let hue = if is_grey {
        sum
    } else if !over_the_top {
        sum / 2.0
    } else if sum < 360.0 {
        (sum + 360.0) / 2.0
    } else {
        (sum - 360.0) / 2.0
    };

    let lightness = (one.lightness + other.lightness) / 2.0;
    let chroma = (chroma_1 + chroma_2) / 2.0;
    let from_middle = (lightness - 50.0) * (lightness - 50.0);
    let of_hue = 1.0 - 0.17 * cos_degrees(hue - 30.0)
        + 0.24 * cos_degrees(2.0 * hue)
        + 0.32 * cos_degrees(3.0 * hue + 6.0)
        - 0.20 * cos_degrees(4.0 * hue - 63.0);

    let by_lightness =
        (other.lightness - one.lightness) / (1.0 + 0.015 * from_middle / (20.0 + from_middle).sqrt());
    let by_chroma = (chroma_2 - chroma_1) / (1.0 + 0.045 * chroma);
    let chord = 2.0 * (chroma_1 * chroma_2).sqrt() * libm::sin((hue_step / 2.0).to_radians());
    let by_hue = chord / (1.0 + 0.015 * chroma * of_hue);

    let from_blue = (hue - 275.0) / 25.0;
    let turned = 60.0 * libm::exp(-from_blue * from_blue);
    let rotation = -2.0 * weight_of_chroma(chroma) * libm::sin(turned.to_radians());

    let square =
        by_lightness * by_lightness + by_chroma * by_chroma + by_hue * by_hue + rotation * by_chroma * by_hue;
    // Rounding can make a square of zero slightly negative.
    square.max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn lab(lightness: f64, a: f64, b: f64) -> Lab {
        Lab { lightness, a, b }
    }

    /// Of grays all but the lightness is nothing: 10 / (1 + 0.015 x 0 / sqrt 20) about the middle, and
    /// 2 / (1 + 0.015 x 1600 / sqrt 1620) = 1.25291 at a lightness of 90, by hand.
    #[test]
    fn greys_differ_by_lightness_alone() {
        assert!((delta_e_2000(lab(45.0, 0.0, 0.0), lab(55.0, 0.0, 0.0)) - 10.0).abs() < 1e-12);
        let light = delta_e_2000(lab(89.0, 0.0, 0.0), lab(91.0, 0.0, 0.0));
        assert!((light - 1.252_91).abs() < 1e-5, "{light}");
    }

    proptest! {
        #[test]
        fn it_is_the_same_both_ways_and_nothing_to_itself(
            one in (0.0..100.0_f64, -100.0..100.0_f64, -100.0..100.0_f64),
            other in (0.0..100.0_f64, -100.0..100.0_f64, -100.0..100.0_f64),
        ) {
            let (one, other) = (lab(one.0, one.1, one.2), lab(other.0, other.1, other.2));
            let there = delta_e_2000(one, other);
            prop_assert!(there > 0.0 && there.is_finite());
            prop_assert!((there - delta_e_2000(other, one)).abs() < 1e-9);
            prop_assert_eq!(delta_e_2000(one, one), 0.0);
        }
    }
}
