//! What the numbers of a [`SourcedRange`](crate::SourcedRange) are measured in, as types: a density is not taken for a time.

/// A unit that figures are given in.
pub trait Unit: Copy + std::fmt::Debug + PartialEq {}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident)*) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Copy, Debug, PartialEq, Eq)]
            pub struct $name;

            impl Unit for $name {}
        )*
    };
}

units! {
    /// A plain number: a share of one, or how many times as much.
    Ratio
    /// Hours.
    Hours
    /// Minutes.
    Minutes
    /// Minutes for a square metre.
    MinutesPerSquareMetre
    /// Minutes for a metre of edge.
    MinutesPerMetre
    /// Metres of film.
    Metres
    /// Square metres.
    SquareMetres
    /// Litres.
    Litres
    /// Square metres to a litre: a spreading rate.
    SquareMetresPerLitre
    /// Kilograms to a litre: a density.
    KilogramsPerLitre
    /// Grams to a hundred grams, as oil absorption is given.
    GramsPerHundredGrams
    /// Degrees Celsius.
    Celsius
}
