//! Coating materials by their generic kind, with the figures that a label would carry.
//!
//! The values are starting points for a maker without a label. A label takes precedence, see
//! [`Label`](crate::Label).

mod clean;
mod paint;
mod primer;
mod properties;
mod shared;
mod stain;
mod topcoat;

pub use properties::{FilmClass, Material, Stage, Thinner};
pub(crate) use shared::COAT_ON_WOOD;

/// Every generic material, stage after stage.
pub fn materials() -> impl Iterator<Item = &'static Material> {
    clean::MATERIALS
        .iter()
        .chain(&stain::MATERIALS)
        .chain(&primer::MATERIALS)
        .chain(&paint::MATERIALS)
        .chain(&topcoat::MATERIALS)
}

/// The generic material with this key in saved files.
///
/// # Example
/// ```
/// assert_eq!(coatings::material("wall-latex").map(|material| material.name.as_ref()), Some("Latex wall paint"));
/// assert_eq!(coatings::material("whitewash"), None);
/// ```
pub fn material(key: &str) -> Option<&'static Material> {
    materials().find(|material| material.key == key)
}

#[cfg(test)]
mod tests;
