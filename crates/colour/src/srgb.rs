//! Colors of a screen, and the light that they stand for.

/// A color in sRGB (IEC 61966-2-1): red, green and blue from 0 to 255.
pub type Rgb = [u8; 3];

/// Light of the three primaries of sRGB: red, green and blue, each from 0 to 1 as a fraction of the white of the screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linear(pub [f64; 3]);

/// The light of a channel from its value, both from 0 to 1 (IEC 61966-2-1, 5.2; from memory, checked against an
/// independent library).
pub fn to_linear(value: f64) -> f64 {
    if value <= 0.040_45 {
        value / 12.92
    } else {
        libm::pow((value + 0.055) / 1.055, 2.4)
    }
}

/// The value of a channel from its light, both from 0 to 1: the inverse of [`to_linear`].
pub fn from_linear(light: f64) -> f64 {
    if light <= 0.003_130_8 {
        light * 12.92
    } else {
        1.055 * libm::pow(light, 1.0 / 2.4) - 0.055
    }
}

impl Linear {
    /// The light of a color.
    pub fn of(rgb: Rgb) -> Self {
        Linear(rgb.map(|value| to_linear(f64::from(value) / 255.0)))
    }

    /// The nearest color that a screen has. Values outside its gamut are clipped, and NaN is black.
    ///
    /// # Example
    /// ```
    /// use colour::Linear;
    /// assert_eq!(Linear([0.2, 1.3, -0.1]).rgb(), [124, 255, 0]);
    /// ```
    pub fn rgb(self) -> Rgb {
        // A cast of a float keeps to the limits of the whole number.
        self.0.map(|light| libm::round(from_linear(light) * 255.0) as u8)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_value_comes_back() {
        for value in 0..=255_u8 {
            assert_eq!(Linear::of([value; 3]).rgb(), [value; 3]);
        }
    }

    /// By hand: a value of 128 is 0.50196, its light ((0.50196 + 0.055) / 1.055)^2.4 = 0.52793^2.4 = 0.21586.
    #[test]
    fn a_value_in_the_middle_is_a_fifth_of_the_light() {
        assert!((to_linear(128.0 / 255.0) - 0.215_86).abs() < 1e-5);
        assert_eq!((to_linear(0.0), to_linear(1.0)), (0.0, 1.0));
    }

    /// The two pieces of the curve meet to the last value that a screen tells apart.
    #[test]
    fn the_pieces_meet() {
        assert!((to_linear(0.040_45) - to_linear(0.040_45 + 1e-9)).abs() < 1e-6);
        assert!((from_linear(0.003_130_8) - from_linear(0.003_130_8 + 1e-9)).abs() < 1e-6);
    }

    #[test]
    fn what_a_screen_cannot_show_is_cut_off() {
        assert_eq!(Linear([-1.0, 2.0, f64::NAN]).rgb(), [0, 255, 0]);
    }
}
