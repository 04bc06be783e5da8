//! What a volume is worked out from.

/// What the volume is worked out from, unless the maker entered the rate of the can; see [`Material::basis`](crate::Material::basis).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Basis {
    /// The wet film that the tool leaves.
    #[default]
    WetFilm,
    /// The spreading rate on the label.
    LabelRate,
}
