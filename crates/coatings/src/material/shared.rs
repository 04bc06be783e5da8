//! Values that several materials share: sources, derived values, cautions.

use crate::sourced_range::{Provenance, SourcedRange};
use crate::unit::{Celsius, Hours, SquareMetresPerLitre, Unit};

/// The dry film of one coat on wood, inches: 1.5 mil, MIL-HDBK-1110 / UFC 3-190-06 s. 4.4.1.
pub(crate) const COAT_ON_WOOD: f64 = 0.0015;

const FILM_SOURCE: &str = "1.5 mil (38 µm) dry film per coat on wood, MIL-HDBK-1110 / UFC 3-190-06 s. 4.4.1, with its volume solids";
const VARNISH_SOURCE: &str =
    "350 to 550 ft²/gal for varnish, \"Data on Painting\", Building Construction vol. 4";
const CLEANER_SOURCE: &str = "cleaner wipes off and leaves no film";
const UNTHINNED_SOURCE: &str = "used straight from the can";

/// Shellac varnish, TM 43-0139.
pub(super) const SHELLAC_SOURCE: &str =
    "shellac: recoat after 2 to 3 h, full hardness 24 h, TM 43-0139 s. 2-23";
/// The same, assumed for a material that the source does not name.
const PIGMENTED_SHELLAC_SOURCE: &str = "clear shellac: recoat after 2 to 3 h, full hardness 24 h, TM 43-0139 s. 2-23; the pigmented kind is taken to dry like it";

/// A time of shellac varnish, assumed for the pigmented kind without a source.
pub(super) const fn like_shellac<U: Unit>(low: f64, high: f64) -> SourcedRange<U> {
    SourcedRange::new(low, high, PIGMENTED_SHELLAC_SOURCE, Provenance::Memory)
}

/// A spreading rate that follows from the usual dry film of a coat on wood.
pub(super) const fn rate_of_film(low: f64, high: f64) -> SourcedRange<SquareMetresPerLitre> {
    SourcedRange::calculated(low, high, FILM_SOURCE)
}

/// The spreading rate of varnish, first coat to later coats.
pub(super) const fn varnish_rate() -> SourcedRange<SquareMetresPerLitre> {
    SourcedRange::read(8.6, 13.5, VARNISH_SOURCE)
}

/// The volume solids of what leaves no film.
pub(super) const fn no_film() -> SourcedRange {
    SourcedRange::assumed(0.0, 0.0, CLEANER_SOURCE)
}

/// The thinning of what is not thinned.
pub(super) const fn unthinned() -> SourcedRange {
    SourcedRange::assumed(0.0, 0.0, UNTHINNED_SOURCE)
}

/// Two weeks to a month: latex as remembered, and what else cures at the pace of its binder.
pub(super) const fn cure_of_latex() -> SourcedRange<Hours> {
    SourcedRange::memory(336.0, 720.0)
}

/// A week to a month: what dries by taking up oxygen.
pub(super) const fn cure_of_oil() -> SourcedRange<Hours> {
    SourcedRange::memory(168.0, 720.0)
}

/// The least air temperature for water-thinned materials, degrees Celsius. The source names latex; other
/// water-borne films form the same way.
pub(super) const WATER_BORNE_AIR: SourcedRange<Celsius> = SourcedRange::read(
    10.0,
    10.0,
    "latex: at least 10 °C (50 °F), and for 24 h after, Wood Handbook FPL-GTR-190 p. 378",
);
const FORTY_FAHRENHEIT: f64 = 8.0 / units::exact::FAHRENHEIT_STEPS;
/// The least air temperature for oil-alkyd paint, degrees Celsius.
pub(super) const ALKYD_AIR: SourcedRange<Celsius> = SourcedRange::read(
    FORTY_FAHRENHEIT,
    FORTY_FAHRENHEIT,
    "oil-alkyd paint: at least 4 °C (40 °F), Wood Handbook FPL-GTR-190 p. 378",
);
/// The least air temperature for varnish and shellac, degrees Celsius.
pub(super) const VARNISH_AIR: SourcedRange<Celsius> = SourcedRange::read(
    10.0,
    10.0,
    "paint and varnish: not below 10 °C (50 °F), TB 43-0209 s. 31 and TM 43-0139 s. 5-31, which count shellac as a varnish",
);
/// The least air temperature for stain, oil and wax, degrees Celsius: assumed from varnish, because no
/// source names these.
pub(super) const OTHER_AIR: SourcedRange<Celsius> = SourcedRange::assumed(
    10.0,
    10.0,
    "no source for stain, oil or wax; the limit of varnish (TB 43-0209 s. 31)",
);

pub(super) const WATER_BASED: &str = "Ventilate. Keep from freezing. Follow the label.";
pub(super) const ALCOHOL: &str =
    "Alcohol vapor burns. No flame or spark. Ventilate well and wear gloves. Follow the label.";
pub(super) const DRYING_OIL: &str = "Flammable vapor. Oily rags can catch fire on their own: dry them flat outdoors or soak them in water in a closed metal can. Follow the label.";
pub(super) const PURE_OIL: &str = "Oily rags can catch fire on their own: dry them flat outdoors or soak them in water in a closed metal can. Follow the label.";
pub(super) const WAX: &str = "Flammable vapor. No flame or spark. Ventilate and wear gloves. Dry rags flat outdoors or soak them in water in a closed metal can. Follow the label.";

/// Sold by the pint and up.
pub(super) const SMALL_TO_GALLON: &[&str] = &[
    "us-pint",
    "us-quart",
    "us-gallon",
    "metric-250-ml",
    "metric-500-ml",
    "metric-1-l",
    "metric-2500-ml",
];
/// Sold by the quart and up.
pub(super) const QUART_TO_GALLON: &[&str] = &[
    "us-quart",
    "us-gallon",
    "metric-750-ml",
    "metric-1-l",
    "metric-2500-ml",
];
/// Sold from samples to the contractor's pail.
pub(super) const SAMPLE_TO_PAIL: &[&str] = &[
    "us-8-fl-oz",
    "us-quart",
    "us-gallon",
    "us-5-gallon",
    "metric-250-ml",
    "metric-1-l",
    "metric-2500-ml",
    "metric-5-l",
    "metric-10-l",
];
/// Sold in half pints and up.
pub(super) const HALF_PINT_TO_QUART: &[&str] = &[
    "us-8-fl-oz",
    "us-pint",
    "us-quart",
    "metric-250-ml",
    "metric-500-ml",
    "metric-1-l",
];
/// Clear coats.
pub(super) const HALF_PINT_TO_GALLON: &[&str] = &[
    "us-8-fl-oz",
    "us-quart",
    "us-gallon",
    "metric-250-ml",
    "metric-750-ml",
    "metric-1-l",
    "metric-2500-ml",
];
