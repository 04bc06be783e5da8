//! The formulas between spreading rate, wet film, dry film and volume.
//!
//! Terms as in ISO 4618 (wording from memory): the *spreading rate* is the area that a quantity of coating
//! covers; the *theoretical* one counts only the non-volatile matter by volume (volume solids).
//!
//! # Units
//! Spreading rates in square meters per liter. One liter of film one micrometer thick covers 1000 m2, the
//! metric form of the trade's constant 1604 ft2 mil per US gallon.

use units::{Area, Length};

/// The wet film that one liter leaves on one square meter: 1 mm, in micrometers.
const FILM_OF_A_LITRE: f64 = 1000.0;

/// The area that one liter covers, from its volume solids (a fraction) and the dry film wanted; m2/L.
///
/// # Example
/// Volume solids 65 %, 125 um dry: 5.2 m2/L (worked example of a coatings technical bulletin).
/// ```
/// use units::Length;
/// let rate = coatings::film::theoretical_rate(0.65, Length::millimetres(0.125));
/// assert!((rate - 5.2).abs() < 1e-9);
/// ```
pub fn theoretical_rate(volume_solids: f64, dry_film: Length) -> f64 {
    rate_of_wet_film(wet_film(volume_solids, dry_film))
}

/// The area that one liter covers at this wet film; m2/L. No solids are needed: it is an identity.
pub fn rate_of_wet_film(wet_film: Length) -> f64 {
    FILM_OF_A_LITRE / (wet_film.as_millimetres() * 1000.0)
}

/// The wet film that a spreading rate (m2/L) leaves.
pub fn wet_film_of_rate(rate: f64) -> Length {
    Length::millimetres(FILM_OF_A_LITRE / rate / 1000.0)
}

/// The dry film that an unthinned wet film leaves.
pub fn dry_film(wet_film: Length, volume_solids: f64) -> Length {
    wet_film * volume_solids
}

/// The dry film that a wet film leaves when the paint was thinned by a fraction of its volume.
pub fn dry_film_thinned(wet_film: Length, volume_solids: f64, thinned_by: f64) -> Length {
    wet_film * (volume_solids / (1.0 + thinned_by))
}

/// The wet film that an unthinned coating needs for a dry film.
pub fn wet_film(volume_solids: f64, dry_film: Length) -> Length {
    dry_film / volume_solids
}

/// A spreading rate in ft2 per US gallon as m2/L.
pub fn from_square_feet_per_gallon(rate: f64) -> f64 {
    Area::square_feet(rate).as_square_metres() / units::VolumeUnit::UsGallon.of(1.0).as_litres()
}

/// A spreading rate in m2/L as ft2 per US gallon.
pub fn to_square_feet_per_gallon(rate: f64) -> f64 {
    Area::square_metres(rate).as_square_feet() * units::VolumeUnit::UsGallon.of(1.0).as_litres()
}
