//! The basis of a volume.

/// The basis of a volume, unless the maker entered the rate on the can; see
/// [`Material::basis`](crate::Material::basis).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Basis {
    /// The wet film that the tool leaves.
    #[default]
    WetFilm,
    /// The spreading rate on the label.
    LabelRate,
}
