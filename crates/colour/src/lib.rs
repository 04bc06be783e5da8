//! Colours as numbers: how far two shades are apart, what a mix comes to, how far the errors of weighing let it drift.
//!
//! A swatch is an [`Rgb`] as screens have it. [`Linear`] is the light of it, [`Xyz`] what the eye takes of that, [`Lab`]
//! the same in even steps, and [`delta_e_2000`] says how far two of them are apart. [`mixed`] estimates what paints come
//! to together, [`drift`] how far that moves with the errors of the scale, and [`Perceptibility`] what an eye makes of it.
//!
//! **What this is not:** a colour match. A swatch on a screen is three numbers; a paint has a spectrum, pigments of
//! different strength, a gloss, and dries to another shade than it has when wet. The mixed colour is there so that a
//! change of the amounts can be turned into a change of the shade. Judge the shade itself from a dry sample.
//!
//! Invariant: this crate knows colours and shares, and nothing of materials, documents or browsers.

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
