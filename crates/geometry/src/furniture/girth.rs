//! How the girth and the width of a worked edge determine each other.

use units::Length;

use crate::profile::{Profile, Shape};

/// The number of bisections that determine a length of a few meters to the last digit.
pub(super) const HALVINGS: usize = 60;

/// The width into the face of a profile with this girth, where nobody measured it: that of a quarter of an ellipse over
/// the whole thickness (common practice, no source). Zero if the strip is only as long as the board is thick.
pub(super) fn likely_width(girth: Length, thickness: Length) -> Length {
    let (mut low, mut high) = (0.0, girth.as_metres());
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        if round_over_girth(Length::metres(middle), thickness) > girth {
            high = middle;
        } else {
            low = middle;
        }
    }
    Length::metres(low)
}

/// The girth of a round-over of this width over the whole thickness.
pub(super) fn round_over_girth(width: Length, thickness: Length) -> Length {
    let profile = Profile::standard(Shape::Roundover, width.as_metres(), thickness.as_metres());
    Length::metres(profile.girth())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_guess_is_the_round_over_of_the_whole_thickness() {
        let thickness = Length::millimetres(20.0);
        let girth = round_over_girth(thickness, thickness);
        assert!((girth.as_millimetres() - 10.0 * std::f64::consts::PI).abs() < 1e-9);
        assert!((likely_width(girth, thickness).as_millimetres() - 20.0).abs() < 1e-9);
        assert!(likely_width(thickness, thickness).as_millimetres() < 1e-6);
        assert!(likely_width(thickness * 0.5, thickness).as_millimetres() < 1e-6);
    }
}
