//! Color math: differences between shades, estimates of mixes, and drift from weighing errors.
//!
//! A swatch is an [`Rgb`] value of a screen. [`Linear`] is its light, [`Xyz`] its tristimulus values,
//! [`Lab`] its CIELAB coordinates. [`delta_e_2000`] is the difference between two of them, and
//! [`Perceptibility`] says how visible it is. [`mixed`] estimates the color of a mix, and [`drift`] its
//! change from weighing errors.
//!
//! **What this is not:** a color match. A swatch on a screen is three numbers; a paint has a spectrum, pigments of
//! different strength, a gloss, and dries to another shade than it has when wet. The mixed color is there so that a
//! change of the amounts can be turned into a change of the shade. Judge the shade itself from a dry sample.
//!
//! Invariant: this crate knows colors and shares, and nothing of materials, documents or browsers.

mod delta_e_2000;
mod drift;
mod error;
mod lab;
mod mix;
mod perceptibility;
mod srgb;
mod xyz;

pub use delta_e_2000::delta_e_2000;
pub use drift::{DRAWS, Drift, Weighing, drift};
pub use error::MixError;
pub use lab::Lab;
pub use mix::{Part, SURFACE, mixed};
pub use perceptibility::Perceptibility;
pub use srgb::{Linear, Rgb, from_linear, to_linear};
pub use xyz::{WHITE, Xyz};
