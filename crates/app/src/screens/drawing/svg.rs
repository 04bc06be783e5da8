//! The drawing as a standalone SVG document, with black lines on white.

use units::show_length_in;
use workshop::{Piece, Takeoff, Workshop};

use super::dimension::{Line, lines};
use super::picture::Picture;
use super::room::Room;
use super::scale::FINE;
use super::sheet::{Look, look};
use crate::state;
use crate::words;

/// The styles of the document. Line widths follow ISO 128: outlines twice as wide as edges, and thin
/// dimension lines.
const STYLE: &str = "text{font:26px sans-serif}.thin{stroke-width:.9}.end{stroke-width:1.8}.edges{stroke-width:10}\
                     .outline{stroke-width:24}path{fill:none;stroke:#222;stroke-linejoin:round}.face{stroke:none}\
                     .on-dark{stroke:#fff;stroke-opacity:.5;stroke-width:12}.shade{stroke:none;fill:#000}.guessed{font-style:italic}";

/// Returns a piece seen from one side, with its dimensions, as an SVG document.
pub fn svg(workshop: &Workshop, piece: &Piece, takeoff: &Takeoff, from: state::Look) -> String {
    let room = Room::FIXED;
    let picture = Picture::of(&piece.furniture(), &takeoff.surfaces, from.view(), None, room);
    let [width, height] = room.size;
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" \
         height=\"{height}\"><title>{}</title><desc>Sizes in {}</desc><style>{STYLE}</style><rect width=\"{width}\" height=\"{height}\" \
         fill=\"#fff\"/><g transform=\"scale({})\">",
        escaped(&piece.name),
        workshop.units.tape_unit().sign(),
        1.0 / FINE
    );
    let mut light_lines = String::new();
    for face in &picture.faces {
        let look = look(piece, &workshop.materials, face, &takeoff.surfaces);
        if look.is_dark() {
            light_lines += &format!("<path class=\"on-dark\" d=\"{}\"/>", face.lines);
        }
        let fill = match look {
            Look::Glass => "#e4ebeb".into(),
            Look::Coloured(colour) => colour.write(),
            Look::Clear => "#c49a6c".into(),
            Look::Bare => "#fff".into(),
        };
        text.push_str(&format!(
            "<path class=\"face\" d=\"{}\" style=\"fill:{fill}\"/>",
            face.region
        ));
        for (path, dark) in &face.shades {
            text.push_str(&format!(
                "<path class=\"shade\" d=\"{path}\" opacity=\"{dark}\"/>"
            ));
        }
    }
    text.push_str(&format!(
        "<path class=\"edges\" d=\"{}\"/>{light_lines}<path class=\"outline\" d=\"{}\"/></g>",
        picture.edges, picture.outline
    ));
    let written = |length| {
        let shown = show_length_in(length, workshop.units, workshop.settings.inches);
        words::without_unit(&shown).to_owned()
    };
    for line in lines(piece, &picture, &room, &written, &|_| None) {
        text.push_str(&dimension(&line));
    }
    text + "</svg>\n"
}

fn dimension(line: &Line) -> String {
    let [x, y] = line.at;
    let class = if line.is_guessed { " class=\"guessed\"" } else { "" };
    format!(
        "<path class=\"thin\" d=\"{}{}\"/><path class=\"end\" d=\"{}\"/><text x=\"{x:.1}\" y=\"{y:.1}\" \
         text-anchor=\"{}\"{class}>{}</text>",
        line.extensions,
        line.thin,
        line.ends,
        line.anchor,
        escaped(&line.text)
    )
}

/// Escapes a text for SVG.
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            sign if sign.is_control() => {}
            sign => safe.push(sign),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{Colour, PieceId, Workshop, invented_workshop, takeoff};

    #[test]
    fn dark_paint_gets_light_lines() {
        let workshop = invented_workshop();
        let piece = workshop.pieces[0].as_ref();
        let picture = |colour: [u8; 3]| {
            let mut painted = piece.clone();
            painted.scheme.colour = Colour(colour);
            let takeoff = takeoff(&Workshop::default(), &painted, &[]).unwrap();
            svg(&workshop, &painted, &takeoff, state::Look::Front)
        };
        let light_lines = |text: &str| text.matches("class=\"on-dark\"").count();
        assert!(light_lines(&picture([20, 40, 60])) > 0);
        assert_eq!(light_lines(&picture([240, 240, 230])), 0);
    }

    #[test]
    fn the_picture_is_whole_and_takes_no_markup_from_a_name() {
        let mut piece = Piece::new(PieceId("a".into()), Kind::Dresser);
        piece.name = "<b>Tall & wide</b>\u{7}".into();
        let takeoff = takeoff(&Workshop::default(), &piece, &[]).unwrap();
        let text = svg(&Workshop::default(), &piece, &takeoff, state::Look::Front);
        assert!(text.contains("<title>&lt;b&gt;Tall &amp; wide&lt;/b&gt;</title>"));
        let [opened, closed] = ["<text ", "</text>"].map(|tag| text.matches(tag).count());
        let furniture = piece.furniture();
        let dimensions = furniture
            .checked()
            .unwrap()
            .dimensions(geometry::View::Front)
            .len();
        assert_eq!((opened, closed), (dimensions, dimensions));
        assert!(text.contains(">60</text>") && text.ends_with("</svg>\n"));
    }
}
