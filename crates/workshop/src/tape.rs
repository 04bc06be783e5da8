//! The uncertainty of a tape measure reading.

use units::Length;

/// The smallest division that a person reads off a tape: 1/16 in (common practice, no source).
const DIVISION: Length = Length::inches(1.0 / 16.0);

/// Returns the maximum permissible error of a class II tape with a hook, for a length.
///
/// It is `a + b L + c` with a = 0.3 mm, b = 0.2 mm per meter or part of one, and c = 0.2 mm because one end
/// is a hook (Directive 2014/32/EU, Annex X; UK SI 2016/1153 Sch. 1I).
fn permissible_error(length: Length) -> Length {
    Length::millimetres(0.3 + 0.2 * length.as_metres().ceil() + 0.2)
}

/// Returns the standard uncertainty of a reading: the error of the tape and the division, both rectangular
/// (JCGM 100, 4.3.7 and F.2.2.1).
///
/// # Example
/// ```
/// use units::Length;
/// // The tape alone contributes 0.52 mm at 1.2 m. Reading to 1/16 in adds 0.46 mm in quadrature.
/// let u = workshop::standard_uncertainty(Length::metres(1.2));
/// assert!((u.as_millimetres() - 0.693).abs() < 0.001);
/// ```
pub fn standard_uncertainty(length: Length) -> Length {
    let tape = permissible_error(length).as_metres() / 3f64.sqrt();
    let division = DIVISION.as_metres() / 12f64.sqrt();
    Length::metres((tape * tape + division * division).sqrt())
}
