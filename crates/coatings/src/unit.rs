//! Units of a [`SourcedRange`](crate::SourcedRange) as types, so that a density is not used as a time.

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
    /// Minutes for a square meter.
    MinutesPerSquareMetre
    /// Minutes for a meter of edge.
    MinutesPerMetre
    /// Meters of film.
    Metres
    /// Square meters.
    SquareMetres
    /// Liters.
    Litres
    /// Square meters to a liter: a spreading rate.
    SquareMetresPerLitre
    /// Kilograms to a liter: a density.
    KilogramsPerLitre
    /// Grams to a hundred grams, as oil absorption is given.
    GramsPerHundredGrams
    /// Degrees Celsius.
    Celsius
}
