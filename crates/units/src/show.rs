//! Quantities as a maker reads them. Rounding happens here, once, and only for the eye.

use crate::{Area, Length, Mass, System, Volume, VolumeUnit, exact};

/// A length as it would be read off a tape: the nearest sixteenth of an inch, or the nearest millimeter.
///
/// Ties go to the even figure (NIST Handbook 44, section 10.3).
///
/// # Example
/// ```
/// use units::{Length, System, show_length};
/// assert_eq!(show_length(Length::inches(33.875), System::UsCustomary), "33 7/8 in");
/// assert_eq!(show_length(Length::inches(33.875), System::Metric), "860 mm");
/// ```
pub fn show_length(length: Length, system: System) -> String {
    match system {
        System::Metric => format!("{:.0} mm", nearest(length.as_millimetres())),
        System::UsCustomary => {
            let sixteenths = nearest(length.as_inches() * 16.0);
            let whole = (sixteenths / 16.0).floor();
            let mut upper = (sixteenths - whole * 16.0) as u32;
            let mut lower = 16;
            while upper > 0 && upper.is_multiple_of(2) {
                upper /= 2;
                lower /= 2;
            }
            match (whole, upper) {
                (whole, 0) => format!("{whole:.0} in"),
                (0.0, upper) => format!("{upper}/{lower} in"),
                (whole, upper) => format!("{whole:.0} {upper}/{lower} in"),
            }
        }
    }
}

/// How a length in inches is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Inches {
    /// In halves, quarters, eighths and sixteenths, as on a carpenter's tape.
    #[default]
    Fractions,
    /// With a point, as on an engineer's tape.
    Decimals,
}

/// A length as [`show_length`] writes it, or in inches to the nearest hundredth; zeros behind the point are left out.
///
/// A hundredth of an inch is finer than the sixteenth that a tape is read to, so no reading looks coarser for it.
///
/// # Example
/// ```
/// use units::{Inches, Length, System, show_length_in};
/// let length = Length::inches(33.875);
/// assert_eq!(show_length_in(length, System::UsCustomary, Inches::Decimals), "33.88 in");
/// assert_eq!(show_length_in(length, System::UsCustomary, Inches::Fractions), "33 7/8 in");
/// assert_eq!(show_length_in(length, System::Metric, Inches::Decimals), "860 mm");
/// ```
pub fn show_length_in(length: Length, system: System, inches: Inches) -> String {
    match (system, inches) {
        (System::UsCustomary, Inches::Decimals) => {
            let hundredths = nearest(length.as_inches() * 100.0);
            format!("{} in", without_zeros(format!("{:.2}", hundredths / 100.0)))
        }
        _ => show_length(length, system),
    }
}

/// The nearest whole number, ties to even; the noise of a unit conversion does not decide a tie.
fn nearest(value: f64) -> f64 {
    ((value * 1e6).round() / 1e6).round_ties_even()
}

/// An area as its figure and its unit: square feet or square meters, to a tenth or a hundredth.
///
/// Surfaces smaller than a twentieth of the unit get another decimal, so that none reads as nothing.
///
/// # Example
/// ```
/// use units::{Area, System, show_area};
/// assert_eq!(show_area(Area::square_metres(2.345), System::Metric), ("2.35".into(), "m²"));
/// assert_eq!(show_area(Area::square_feet(25.24), System::UsCustomary), ("25.2".into(), "ft²"));
/// ```
pub fn show_area(area: Area, system: System) -> (String, &'static str) {
    match system {
        System::UsCustomary => {
            let feet = area.as_square_feet();
            (
                if feet < 0.5 {
                    format!("{feet:.2}")
                } else {
                    format!("{feet:.1}")
                },
                "ft²",
            )
        }
        System::Metric => {
            let metres = area.as_square_metres();
            (
                if metres < 0.05 {
                    format!("{metres:.3}")
                } else {
                    format!("{metres:.2}")
                },
                "m²",
            )
        }
    }
}

/// A mass as whole pounds and the ounces beyond them, to a tenth of an ounce, or to a hundredth if it is fine.
///
/// # Example
/// ```
/// use units::{Mass, show_pounds};
/// assert_eq!(show_pounds(Mass::grams(638.0), false), (1, "6.5".into()));
/// assert_eq!(show_pounds(Mass::grams(453.59), true), (1, "0.00".into()));
/// ```
pub fn show_pounds(mass: Mass, is_fine: bool) -> (u32, String) {
    let (decimals, steps) = if is_fine { (2, 100.0) } else { (1, 10.0) };
    // Round before dividing, so that nearly a pound does not read as 16 ounces.
    let ounces = nearest(mass.as_kilograms() / exact::OUNCE * steps) / steps;
    let pounds = (ounces / 16.0).floor();
    (pounds as u32, format!("{:.decimals$}", ounces - pounds * 16.0))
}

/// A volume as its figure and its unit, in the unit that a can of that size would carry.
///
/// Fluid ounces up to two quarts, then quarts, then gallons; milliliters up to a liter, then liters.
///
/// # Example
/// ```
/// use units::{System, Volume, show_volume};
/// assert_eq!(show_volume(Volume::millilitres(236.6), System::UsCustomary), ("8.0".into(), "fl oz"));
/// assert_eq!(show_volume(Volume::litres(1.25), System::Metric), ("1.25".into(), "L"));
/// ```
pub fn show_volume(volume: Volume, system: System) -> (String, &'static str) {
    show_volume_beside(volume, volume, system)
}

/// A volume as its figure and its unit, in the unit of the least of those that stand beside it, so that all can be compared.
///
/// # Example
/// ```
/// use units::{System, Volume, show_volume_beside};
/// let (little, much) = (Volume::millilitres(1500.0), Volume::millilitres(2540.0));
/// assert_eq!(show_volume_beside(much, little, System::UsCustomary), ("86".into(), "fl oz"));
/// ```
pub fn show_volume_beside(volume: Volume, least: Volume, system: System) -> (String, &'static str) {
    match system {
        System::UsCustomary => {
            let ounces = VolumeUnit::UsFluidOunce.count(volume);
            let least = VolumeUnit::UsFluidOunce.count(least);
            if least >= 255.0 {
                (format!("{:.1}", ounces / 128.0), "gal")
            } else if least >= 63.5 {
                (format!("{:.1}", ounces / 32.0), "qt")
            } else if ounces >= 9.95 {
                (format!("{ounces:.0}"), "fl oz")
            } else {
                (format!("{ounces:.1}"), "fl oz")
            }
        }
        System::Metric => {
            let millilitres = volume.as_millilitres();
            if least.as_millilitres() < 999.5 {
                (format!("{millilitres:.0}"), "mL")
            } else {
                (format!("{:.2}", millilitres / 1000.0), "L")
            }
        }
    }
}

/// A number with four figures that count, as in a working; zeros behind the point are left out.
///
/// # Example
/// ```
/// use units::show_number;
/// assert_eq!(show_number(1.443_375_673e-5), "0.00001443");
/// assert_eq!(show_number(2.0), "2");
/// assert_eq!(show_number(12_345.6), "12346");
/// ```
pub fn show_number(value: f64) -> String {
    let size = value.abs();
    // Further behind the point than this, nothing of the trade is measured.
    let decimals = (0..12).zip([
        1000.0, 100.0, 10.0, 1.0, 0.1, 0.01, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8,
    ]);
    let decimals = decimals
        .into_iter()
        .find(|(_, least)| size >= *least)
        .map_or(if size == 0.0 { 0 } else { 12 }, |(decimals, _)| decimals);
    without_zeros(format!("{value:.decimals$}"))
}

/// A number without the zeros at its end that stand behind the point.
fn without_zeros(shown: String) -> String {
    if shown.contains('.') {
        shown.trim_end_matches('0').trim_end_matches('.').into()
    } else {
        shown
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_are_reduced_and_ties_go_to_even() {
        let inches = |value: f64| show_length(Length::inches(value), System::UsCustomary);
        assert_eq!(inches(0.5), "1/2 in");
        assert_eq!(inches(12.0), "12 in");
        assert_eq!(inches(0.0), "0 in");
        assert_eq!(inches(5.9999), "6 in");
        // 1/32 lies between 0/16 and 1/16, 3/32 between 1/16 and 2/16: both go to the even sixteenth.
        assert_eq!(inches(1.0 / 32.0), "0 in");
        assert_eq!(inches(3.0 / 32.0), "1/8 in");
        assert_eq!(show_length(Length::millimetres(18.5), System::Metric), "18 mm");
    }

    #[test]
    fn decimals_of_an_inch_are_rounded_to_even_and_shortened() {
        let inches =
            |value: f64| show_length_in(Length::inches(value), System::UsCustomary, Inches::Decimals);
        assert_eq!(inches(36.0), "36 in");
        assert_eq!(inches(0.5), "0.5 in");
        assert_eq!(inches(10.0), "10 in");
        assert_eq!(inches(0.0), "0 in");
        assert_eq!(inches(4.999), "5 in");
        // 1/8 lies between 0.12 and 0.13, 3/8 between 0.37 and 0.38: both go to the even hundredth.
        assert_eq!(inches(0.125), "0.12 in");
        assert_eq!(inches(0.375), "0.38 in");
        // What is shown can be typed, and is within half a hundredth.
        let read = crate::read_length("33.88 in", crate::LengthUnit::Inch).unwrap();
        assert!((read.as_inches() - 33.875).abs() <= 0.005 + 1e-9);
    }

    #[test]
    fn volumes_change_unit_where_cans_do() {
        let us = |ounces: f64| show_volume(VolumeUnit::UsFluidOunce.of(ounces), System::UsCustomary);
        assert_eq!(us(9.94), ("9.9".into(), "fl oz"));
        assert_eq!(us(40.0), ("40".into(), "fl oz"));
        assert_eq!(us(80.0), ("2.5".into(), "qt"));
        assert_eq!(us(320.0), ("2.5".into(), "gal"));
        assert_eq!(
            show_volume(Volume::millilitres(85.2), System::Metric),
            ("85".into(), "mL")
        );
    }
}
