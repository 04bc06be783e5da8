//! CIELAB: lightness and two opponent axes, nearly perceptually uniform.

use crate::srgb::{Linear, Rgb};
use crate::xyz::{WHITE, Xyz};

/// A color in CIELAB (ISO/CIE 11664-4) against the white of sRGB.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// Lightness L*, from 0 for black to 100 for white.
    pub lightness: f64,
    /// a*: green below 0, red above.
    pub a: f64,
    /// b*: blue below 0, yellow above.
    pub b: f64,
}

/// Below this share of the white the cube root gives way to a straight line: `(6 / 29)^3`.
const STRAIGHT: f64 = 216.0 / 24_389.0;
/// The slope of that line: `(29 / 3)^3`.
const SLOPE: f64 = 24_389.0 / 27.0;

fn bend(share: f64) -> f64 {
    if share > STRAIGHT {
        libm::cbrt(share)
    } else {
        (SLOPE * share + 16.0) / 116.0
    }
}

fn unbend(bent: f64) -> f64 {
    let cube = bent * bent * bent;
    if cube > STRAIGHT {
        cube
    } else {
        (116.0 * bent - 16.0) / SLOPE
    }
}

impl Lab {
    /// The color of a swatch.
    ///
    /// # Example
    /// ```
    /// let white = colour::Lab::of([255, 255, 255]);
    /// assert!((white.lightness - 100.0).abs() < 1e-9 && white.a.abs() < 1e-9);
    /// ```
    pub fn of(rgb: Rgb) -> Self {
        Linear::of(rgb).xyz().lab()
    }

    /// Its tristimulus values.
    pub fn xyz(self) -> Xyz {
        let y = (self.lightness + 16.0) / 116.0;
        let [white_x, white_y, white_z] = WHITE.0;
        Xyz([
            white_x * unbend(y + self.a / 500.0),
            white_y * unbend(y),
            white_z * unbend(y - self.b / 200.0),
        ])
    }

    /// Chroma: how far it is from gray.
    pub fn chroma(self) -> f64 {
        libm::hypot(self.a, self.b)
    }
}

impl Xyz {
    /// The color in CIELAB.
    pub fn lab(self) -> Lab {
        let [x, y, z] = [0, 1, 2].map(|axis| bend(self.0[axis] / WHITE.0[axis]));
        Lab {
            lightness: 116.0 * y - 16.0,
            a: 500.0 * (x - y),
            b: 200.0 * (y - z),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn greys_have_no_colour() {
        for value in 0..=255 {
            assert!(Lab::of([value; 3]).chroma() < 1e-12, "{value}");
        }
        assert!(Lab::of([0; 3]).lightness.abs() < 1e-12);
    }

    /// By hand: a fifth of the light, 0.184187, is the middle lightness: 116 cbrt(0.184187) - 16 = 50.
    #[test]
    fn the_middle_lightness() {
        let lab = Linear([0.184_187; 3]).xyz().lab();
        assert!((lab.lightness - 50.0).abs() < 1e-4, "{lab:?}");
    }

    proptest! {
        #[test]
        fn every_swatch_comes_back(rgb in any::<[u8; 3]>()) {
            prop_assert_eq!(Lab::of(rgb).xyz().linear().rgb(), rgb);
        }
    }
}
