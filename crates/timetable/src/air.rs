//! The air of the workshop.

/// The air of the workshop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Degrees Celsius.
    pub celsius: f64,
    /// Relative humidity, percent.
    pub humidity: f64,
}
