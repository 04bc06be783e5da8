//! Old colors that show through new ones.

use super::Suggestion;
use super::reason::Reason;
use crate::job::Rgb;
use crate::material::Stage;

const DARK: Reason = Reason::practice(
    "The old color is much darker and shows through. Plan one more coat of paint, or a tinted primer first.",
);
const RED: Reason = Reason::practice(
    "The old color is red and shows through light paint. Plan one more coat of paint, or a tinted primer first.",
);

/// How much lighter than the old paint a color may be before it takes another coat, in units of L* (common
/// practice, no source).
const MUCH_LIGHTER: f64 = 35.0;
/// A color of at least this L* is light (common practice, no source).
const LIGHT: f64 = 75.0;
/// A color is red if its red exceeds both others by this much and they differ by less, of 255 (common practice, no
/// source).
const REDDISH: i32 = 60;

/// Returns why a color hides an old paint badly, if it does.
///
/// # Example
/// ```
/// use coatings::suggest::hides_badly;
/// let (black, white) = ([20, 20, 20], [250, 250, 250]);
/// assert!(hides_badly(black, white).is_some());
/// assert_eq!(hides_badly(white, black), None);
/// ```
pub fn hides_badly(old: Rgb, new: Rgb) -> Option<Reason> {
    if is_red(old) && lightness(new) >= LIGHT {
        return Some(RED);
    }
    (lightness(new) - lightness(old) >= MUCH_LIGHTER).then_some(DARK)
}

impl Suggestion {
    /// Returns the suggestion over an old paint of this color: one more coat of paint where the new color hides it
    /// badly.
    #[must_use]
    pub fn over(mut self, old: Rgb, new: Rgb) -> Self {
        let paint = self.layers.iter_mut().find(|layer| layer.stage == Stage::Paint);
        if let Some((paint, why)) = paint.zip(hides_badly(old, new)) {
            paint.coats += 1;
            paint.reasons.push(why);
        }
        self
    }
}

impl super::SuggestedLayer {
    /// Returns true if fewer coats would not hide the old color.
    pub fn is_for_hiding(&self) -> bool {
        self.reasons.iter().any(|reason| [DARK, RED].contains(reason))
    }
}

fn is_red([red, green, blue]: Rgb) -> bool {
    let [red, green, blue] = [red, green, blue].map(i32::from);
    red - green.max(blue) >= REDDISH && (green - blue).abs() < REDDISH
}

/// Returns the lightness L* of CIE 1976, from 0 to 100, of an sRGB color (IEC 61966-2-1).
fn lightness(colour: Rgb) -> f64 {
    let linear = |of: u8| match f64::from(of) / 255.0 {
        of if of <= 0.04045 => of / 12.92,
        of => libm::pow((of + 0.055) / 1.055, 2.4),
    };
    let [red, green, blue] = colour.map(linear);
    let luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    match luminance {
        dark if dark <= 216.0 / 24389.0 => dark * 24389.0 / 27.0,
        light => 116.0 * libm::cbrt(light) - 16.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::suggest::{Condition, Wish, suggest};

    const WHITE: Rgb = [250, 250, 248];
    const CREAM: Rgb = [0xf2, 0xee, 0xe0];
    const SAGE: Rgb = [0x9a, 0xae, 0x90];
    const NAVY: Rgb = [0x28, 0x38, 0x58];
    const BROWN: Rgb = [0x4a, 0x30, 0x20];
    const BLACK: Rgb = [20, 20, 20];
    const RED_PAINT: Rgb = [0xb0, 0x1c, 0x24];
    const CORAL: Rgb = [0xe8, 0x78, 0x70];

    #[test]
    fn dark_and_red_show_through_what_is_light() {
        for (old, new, why) in [
            (BLACK, WHITE, Some(DARK)),
            (NAVY, CREAM, Some(DARK)),
            (BROWN, SAGE, Some(DARK)),
            (RED_PAINT, WHITE, Some(RED)),
            (RED_PAINT, CREAM, Some(RED)),
            (CORAL, WHITE, Some(RED)),
            (WHITE, BLACK, None),
            (WHITE, CREAM, None),
            (SAGE, WHITE, None),
            (RED_PAINT, NAVY, None),
            (BLACK, NAVY, None),
            (NAVY, RED_PAINT, None),
        ] {
            assert_eq!(hides_badly(old, new), why, "{old:?} under {new:?}");
        }
    }

    /// Mid gray of the sRGB standard: 119 of 255 is L* 50.
    #[test]
    fn lightness_of_known_grays() {
        for (gray, expected) in [(0, 0.0), (119, 50.0), (255, 100.0)] {
            assert!(libm::fabs(lightness([gray; 3]) - expected) < 0.1, "{gray}");
        }
    }

    #[test]
    fn one_more_coat_of_paint_is_suggested_with_its_reason() {
        let plain = suggest(&Condition::default(), Wish::Painted { light: true });
        let over = plain.clone().over(BLACK, WHITE);
        let paint = |of: &Suggestion| {
            let paint = of
                .layers
                .iter()
                .find(|layer| layer.stage == Stage::Paint)
                .unwrap();
            (paint.coats, paint.is_for_hiding())
        };
        assert_eq!((paint(&plain), paint(&over)), ((2, false), (3, true)));
        assert_eq!(plain.clone().over(WHITE, BLACK), plain);
        let clear = suggest(&Condition::default(), Wish::Clear);
        assert_eq!(clear.clone().over(BLACK, WHITE), clear);
    }
}
