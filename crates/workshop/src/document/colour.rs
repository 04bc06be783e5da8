//! Screen colors.

use coatings::Rgb;

/// A screen color that represents the maker's paint: red, green, blue.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub Rgb);

impl Colour {
    /// Reads `#rrggbb`.
    pub fn read(text: &str) -> Option<Self> {
        let digits = text
            .strip_prefix('#')
            .filter(|d| d.len() == 6 && d.bytes().all(|b| b.is_ascii_hexdigit()))?;
        let value = u32::from_str_radix(digits, 16).ok()?;
        let [_, red, green, blue] = value.to_be_bytes();
        Some(Colour([red, green, blue]))
    }

    /// Returns true if stains that bleed through would show in this color, as in all but dark paint. The
    /// limit is 30% of the luma in ITU-R BT.709 (common practice, no source).
    pub fn is_light(self) -> bool {
        let [red, green, blue] = self.0.map(f64::from);
        0.2126 * red + 0.7152 * green + 0.0722 * blue > 0.3 * 255.0
    }

    /// Writes `#rrggbb`.
    pub fn write(self) -> String {
        let [red, green, blue] = self.0;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_are_read_as_they_are_written() {
        let colour = Colour([0x0a, 0xff, 0x80]);
        assert_eq!(Colour::read(&colour.write()), Some(colour));
        for bad in ["", "#12345", "123456", "#12345g", "#1234567", "#+12345"] {
            assert_eq!(Colour::read(bad), None, "{bad}");
        }
    }
}
