//! The color palette.

use coatings::Rgb;

use crate::book::ShelfCan;
use crate::document::{Colour, Workshop};

/// Common furniture colors: white, warm white, grays, black, dark blue, dark green, gray green, dark
/// red.
const USUAL: [Rgb; 9] = [
    [250, 250, 247],
    [241, 233, 217],
    [201, 200, 196],
    [92, 95, 99],
    [34, 34, 36],
    [40, 56, 88],
    [40, 66, 52],
    [160, 174, 149],
    [122, 32, 36],
];

/// The maximum number of the workshop's own colors after the common ones.
const OWN: usize = 8;

/// Returns the common colors, then those of the pieces and the cans on the shelf, without duplicates. A can
/// counts for a piece only if their colors are equal, so the colors in use must be easy to pick again. The
/// common colors come first so that no swatch moves when another color is chosen.
pub fn palette(workshop: &Workshop) -> Vec<Colour> {
    let schemes = workshop.pieces.iter().flat_map(|piece| piece.schemes());
    let cans = workshop.books.all::<ShelfCan>();
    let mut palette: Vec<Colour> = Vec::new();
    let own = schemes
        .map(|scheme| scheme.colour)
        .chain(cans.filter_map(|can| can.colour));
    for colour in USUAL.into_iter().map(Colour).chain(own) {
        if palette.len() < USUAL.len() + OWN && !palette.contains(&colour) {
            palette.push(colour);
        }
    }
    palette
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit, invented_workshop};

    #[test]
    fn usual_colours_stand_first_and_none_twice() {
        let of_pieces: Vec<Colour> = palette(&invented_workshop());
        let blue = Colour([1, 2, 200]);
        let first = blue.write();
        let values = crate::samples::values(&[("material", "trim-enamel"), ("colour", &first)]);
        let add = |name: &str| Edit::Book(BookEdit::Add("shelf", name.into(), values.clone()));
        let workshop = invented_workshop().apply(add("s1")).unwrap();
        let workshop = workshop.apply(add("s2")).unwrap();
        let palette = palette(&workshop);
        assert_eq!(palette.len(), of_pieces.len() + 1);
        assert_eq!(palette.iter().filter(|colour| **colour == blue).count(), 1);
        assert_eq!(palette[0].0, USUAL[0]);
        assert_eq!(palette[USUAL.len()], workshop.pieces[0].scheme.colour);
        assert_eq!(palette.last(), Some(&blue));
    }
}
