//! Colors in words, for lists that are read aloud or printed in black and white.

use std::rc::Rc;

use coatings::Rgb;
use workshop::{Colour, OwnMaterial};

/// The upper limit of each hue in degrees, with the name of a light or medium color and of a dark one (common
/// practice, no source).
const HUES: [(f64, &str, &str); 9] = [
    (15.0, "red", "red"),
    (45.0, "orange", "brown"),
    (70.0, "yellow", "olive"),
    (160.0, "green", "green"),
    (195.0, "blue-green", "blue-green"),
    (255.0, "blue", "blue"),
    (290.0, "violet", "violet"),
    (345.0, "pink", "purple"),
    (360.0, "red", "red"),
];

/// Describes a color with its code: `grayish blue-green, #4a6b61`.
pub fn colour(rgb: Rgb) -> String {
    format!("{}, {}", colour_name(rgb), Colour(rgb).write())
}

/// Describes the color of a material in a list: `, grayish blue-green`. Empty if its own name says it.
pub fn tint(own: &[Rc<OwnMaterial>], material: &str, colour: Option<Rgb>) -> String {
    let is_named = own.iter().any(|own| own.name == material && own.is_named());
    let colour = colour.filter(|_| !is_named);
    colour.map_or_else(String::new, |colour| format!(", {}", colour_name(colour)))
}

/// Describes a color.
pub fn colour_name(rgb: Rgb) -> String {
    let [r, g, b] = rgb.map(|part| f64::from(part) / 255.0);
    let (most, least) = (r.max(g).max(b), r.min(g).min(b));
    let (light, spread) = ((most + least) / 2.0, most - least);
    // The saturation relative to the maximum at this lightness.
    let strength = spread / (1.0 - (2.0 * light - 1.0).abs()).max(1e-9);
    if spread < 0.05 || strength < 0.08 {
        let grays = [
            (0.12, "black"),
            (0.4, "dark gray"),
            (0.7, "gray"),
            (0.9, "light gray"),
        ];
        let gray = grays.iter().find(|(up_to, _)| light < *up_to);
        return gray.map_or("white", |(_, name)| name).into();
    }
    let sixth = if most == r {
        (g - b) / spread
    } else if most == g {
        2.0 + (b - r) / spread
    } else {
        4.0 + (r - g) / spread
    };
    let hue = (sixth * 60.0 + 360.0) % 360.0;
    let (_, middling, dark) = HUES.iter().find(|(up_to, ..)| hue < *up_to).unwrap_or(&HUES[0]);
    let hue = if light < 0.45 { dark } else { middling };
    let how = match (light, strength) {
        (light, _) if light > 0.85 => "very light ",
        (light, _) if light > 0.7 => "light ",
        (light, _) if light < 0.25 => "dark ",
        (_, strength) if strength < 0.3 => "grayish ",
        _ => "",
    };
    format!("{how}{hue}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_have_the_names_that_people_give_them() {
        for (rgb, expected) in [
            ([0, 0, 0], "black"),
            ([255, 255, 255], "white"),
            ([0x80, 0x80, 0x80], "gray"),
            ([0x4a, 0x6b, 0x61], "grayish blue-green"),
            ([0x6e, 0x45, 0x2a], "brown"),
            ([0xf2, 0xee, 0xe0], "very light yellow"),
            ([0xc8, 0x10, 0x10], "red"),
            ([0x1f, 0x2f, 0x4f], "dark blue"),
            ([0xf4, 0xc2, 0xc2], "very light red"),
            ([0x00, 0x80, 0x80], "blue-green"),
            ([0xff, 0x00, 0x08], "red"),
        ] {
            assert_eq!(colour_name(rgb), expected, "{rgb:?}");
        }
    }

    #[test]
    fn a_name_of_the_makers_own_says_the_color() {
        let blue_green = Some([0x4a, 0x6b, 0x61]);
        let own = |name: &str| {
            let material = OwnMaterial {
                key: "own-1".into(),
                of: "trim-enamel",
                name: name.into(),
                label: Default::default(),
                prices: Default::default(),
            };
            tint(&[Rc::new(material)], name, blue_green)
        };
        assert_eq!(own("Harbor Blue"), "");
        for of in ["Acrylic trim enamel", "Acrylic trim enamel (own)"] {
            assert_eq!(own(of), ", grayish blue-green");
        }
        assert_eq!(tint(&[], "Acrylic trim enamel", None), "");
    }
}
