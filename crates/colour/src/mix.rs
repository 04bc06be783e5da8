//! The color of a mix, estimated from swatches: single-constant Kubelka-Munk on three channels.
//!
//! For each channel the light `R` of a thick film follows from one number, absorption over scattering,
//! `K/S = (1 - R)^2 / (2 R)`, and back, `R = 1 + K/S - sqrt((K/S)^2 + 2 K/S)` (Kubelka and Munk, "Ein Beitrag zur Optik
//! der Farbanstriche", Zeitschrift fuer technische Physik 12 (1931) 593-601; formulas from memory, standard). The `K/S`
//! of a mix is the mean of those of its parts by their amounts: the single-constant form, which takes it that all parts
//! scatter alike (known from dyed textiles; from memory).
//!
//! What is left out makes it an estimate of *drift* and no color match:
//! - three channels stand for a whole spectrum, so the hue of a mix of strong colors is only about right;
//! - white scatters much more than most tints, so a real tint needs a little more or less than the estimate says;
//! - swatches are of a screen, not measured, and paint dries to another shade than it is mixed in.

use crate::error::MixError;
use crate::srgb::{Linear, Rgb};

/// The assumed reflection at the surface of any film, as a fraction of all light.
///
/// Without it a black swatch, whose light is 0, would be infinitely strong and a drop of it turn any batch black. Air on
/// a film of index 1.5 throws back `((1.5 - 1) / (1.5 + 1))^2 = 0.04` (Fresnel, calculated; the index is common
/// practice, no source). It is added before the mean and taken off after it, so a part alone keeps its swatch.
pub const SURFACE: f64 = 0.04;

/// A part of a mix.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// Its swatch.
    pub colour: Rgb,
    /// How much of it, by mass; all parts in one unit.
    pub amount: f64,
}

/// Absorption over scattering in each channel.
pub(crate) type Strength = [f64; 3];

/// The strength of a swatch.
pub(crate) fn strength(colour: Rgb) -> Strength {
    Linear::of(colour).0.map(|light| {
        let film = SURFACE + (1.0 - SURFACE) * light;
        (1.0 - film) * (1.0 - film) / (2.0 * film)
    })
}

/// The light of parts with these strengths and amounts, which add up to more than nothing.
pub(crate) fn blend(strengths: &[Strength], amounts: &[f64]) -> Linear {
    let all: f64 = amounts.iter().sum();
    Linear([0, 1, 2].map(|channel| {
        let parts = strengths.iter().zip(amounts);
        let mean = parts
            .map(|(strength, amount)| strength[channel] * amount)
            .sum::<f64>()
            / all;
        let film = 1.0 + mean - (mean * mean + 2.0 * mean).sqrt();
        (film - SURFACE) / (1.0 - SURFACE)
    }))
}

/// Whether the amounts have a positive sum.
pub(crate) fn can_be_mixed(amounts: &[f64]) -> Result<(), MixError> {
    let broken = |amount: &f64| !(*amount >= 0.0 && amount.is_finite());
    if let Some(place) = amounts.iter().position(broken) {
        return Err(MixError::Amount(place));
    }
    let all = amounts.iter().sum::<f64>();
    if all > 0.0 && all.is_finite() {
        Ok(())
    } else {
        Err(MixError::Empty)
    }
}

/// The strengths and amounts of parts that can be mixed.
pub(crate) fn checked(parts: &[Part]) -> Result<(Vec<Strength>, Vec<f64>), MixError> {
    let amounts: Vec<f64> = parts.iter().map(|part| part.amount).collect();
    can_be_mixed(&amounts)?;
    Ok((parts.iter().map(|part| strength(part.colour)).collect(), amounts))
}

/// An estimate of the color of a mix; the module doc says what it leaves out.
///
/// # Errors
/// [`MixError::Empty`] or [`MixError::Amount`].
///
/// # Example
/// Equal parts of black and white paint are a dark gray, not the middle: black is the stronger. By hand: its K/S is
/// `0.96^2 / 0.08 = 11.52`, that of the mix 5.76, its light `(6.76 - sqrt(5.76^2 + 11.52) - 0.04) / 0.96 = 0.0351`.
/// ```
/// use colour::{Part, mixed};
/// let part = |colour, amount| Part { colour, amount };
/// let grey = mixed(&[part([0; 3], 1.0), part([255; 3], 1.0)])?;
/// assert_eq!(grey.rgb(), [53; 3]);
/// # Ok::<(), colour::MixError>(())
/// ```
pub fn mixed(parts: &[Part]) -> Result<Linear, MixError> {
    let (strengths, amounts) = checked(parts)?;
    Ok(blend(&strengths, &amounts))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn part(colour: Rgb, amount: f64) -> Part {
        Part { colour, amount }
    }

    #[test]
    fn what_cannot_be_mixed_is_refused() {
        assert_eq!(mixed(&[]), Err(MixError::Empty));
        assert_eq!(mixed(&[part([9; 3], 0.0)]), Err(MixError::Empty));
        for amount in [-1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(
                mixed(&[part([9; 3], 1.0), part([9; 3], amount)]),
                Err(MixError::Amount(1))
            );
        }
    }

    proptest! {
        #[test]
        fn a_part_alone_keeps_its_swatch(colour in any::<[u8; 3]>(), amount in 0.001..1e6_f64) {
            prop_assert_eq!(mixed(&[part(colour, amount), part([1, 2, 3], 0.0)]).unwrap().rgb(), colour);
        }

        #[test]
        fn a_mix_lies_between_its_parts(
            parts in prop::collection::vec((any::<[u8; 3]>(), 0.001..100.0_f64), 1..8), factor in 0.001..1000.0_f64,
        ) {
            let of = |factor: f64| -> Vec<Part> {
                parts.iter().map(|&(colour, amount)| part(colour, amount * factor)).collect()
            };
            let mix = mixed(&of(1.0)).unwrap();
            for channel in 0..3 {
                let all = || parts.iter().map(|(colour, _)| Linear::of(*colour).0[channel]);
                prop_assert!(all().fold(1.0, f64::min) - 1e-9 <= mix.0[channel]);
                prop_assert!(mix.0[channel] <= all().fold(0.0, f64::max) + 1e-9);
            }
            // Shares alone count.
            for (ours, theirs) in mix.0.iter().zip(mixed(&of(factor)).unwrap().0) {
                prop_assert!((ours - theirs).abs() < 1e-12);
            }
        }
    }
}
