//! Tristimulus values of the CIE 1931 observer.

use crate::srgb::Linear;

/// Tristimulus values X, Y, Z; the white of the screen (D65) has a Y of 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Xyz(pub [f64; 3]);

/// The white of sRGB: D65 with x = 0.3127 and y = 0.3290 (IEC 61966-2-1).
pub const WHITE: Xyz = Xyz([3127.0 / 3290.0, 1.0, 3583.0 / 3290.0]);

/// From light to tristimulus values. Exact for the primaries (0.64, 0.33), (0.30, 0.60), (0.15, 0.06) and [`WHITE`], in
/// place of the four decimals of the standard: with these a gray is a gray, and what was turned comes back.
const TO_XYZ: [[f64; 3]; 3] = [
    [506_752.0 / 1_228_815.0, 87_881.0 / 245_763.0, 12_673.0 / 70_218.0],
    [87_098.0 / 409_605.0, 175_762.0 / 245_763.0, 12_673.0 / 175_545.0],
    [
        7918.0 / 409_605.0,
        87_881.0 / 737_289.0,
        1_001_167.0 / 1_053_270.0,
    ],
];

/// The inverse of [`TO_XYZ`].
const TO_LINEAR: [[f64; 3]; 3] = [
    [12_831.0 / 3959.0, -329.0 / 214.0, -1974.0 / 3959.0],
    [
        -851_781.0 / 878_810.0,
        1_648_619.0 / 878_810.0,
        36_519.0 / 878_810.0,
    ],
    [705.0 / 12_673.0, -2585.0 / 12_673.0, 705.0 / 667.0],
];

fn times(matrix: &[[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

impl Linear {
    /// Its tristimulus values.
    pub fn xyz(self) -> Xyz {
        Xyz(times(&TO_XYZ, self.0))
    }
}

impl Xyz {
    /// The light of the three primaries; below 0 or above 1 where the screen does not reach.
    pub fn linear(self) -> Linear {
        Linear(times(&TO_LINEAR, self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn full_light_is_white() {
        let white = Linear([1.0; 3]).xyz();
        for (ours, theirs) in white.0.iter().zip(WHITE.0) {
            assert!((ours - theirs).abs() < 1e-15, "{white:?}");
        }
    }

    /// The four decimals that IEC 61966-2-1 prints.
    #[test]
    fn rounded_it_is_the_matrix_of_the_standard() {
        let printed = [
            [0.4124, 0.3576, 0.1805],
            [0.2126, 0.7152, 0.0722],
            [0.0193, 0.1192, 0.9505],
        ];
        for (ours, theirs) in TO_XYZ.iter().flatten().zip(printed.iter().flatten()) {
            assert!((ours - theirs).abs() <= 5e-5, "{ours} {theirs}");
        }
    }

    #[test]
    fn what_was_turned_comes_back() {
        let light = [0.2, 0.7, 0.03];
        let back = Linear(light).xyz().linear();
        for (ours, theirs) in back.0.iter().zip(light) {
            assert!((ours - theirs).abs() < 1e-15, "{back:?}");
        }
    }
}
