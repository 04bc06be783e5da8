//! Pieces of the border of the result joined to contours.

use super::edge::Contour;
use super::fill::Border;
use crate::corner::Corner;
use crate::sorting;

/// The contours of the result: each outer one, and after it its holes.
pub(super) fn contours(corners: &[Corner], borders: &[Option<Border>]) -> Vec<Contour> {
    // For each piece, the index at which the outer contour around it begins.
    let mut outer = vec![usize::MAX; borders.len()];
    let mut contours: Vec<(usize, Contour)> = Vec::new();
    for (start, border) in borders.iter().enumerate() {
        // The piece at which a hole begins arrives at its lowest leftmost corner. Whatever is below begins further
        // left, so it is already known.
        let (around, mut at) = match border {
            Some(Border {
                next,
                below: Some(below),
                ..
            }) => (outer[*below], *next),
            _ => (start, start),
        };
        let mut contour = Contour::new();
        while let Some(border) = borders[at]
            && outer[at] == usize::MAX
        {
            outer[at] = around;
            push(&mut contour, corners[border.from]);
            at = border.next;
        }
        close(&mut contour);
        if contour.len() > 2 {
            contours.push((around, contour));
        }
    }
    sorting::sort_by(&mut contours, |(outer, _)| *outer);
    contours.into_iter().map(|(_, contour)| contour).collect()
}

/// Adds a corner, and removes the one before it if that is now collinear.
fn push(contour: &mut Contour, corner: Corner) {
    if let [.., p, q] = contour[..]
        && (q - p).cross(corner - q) == 0
    {
        contour.pop();
    }
    contour.push(corner);
}

/// The same around the end. The first corner is the lowest leftmost one, so it is never collinear.
fn close(contour: &mut Contour) {
    if let [first, .., p, q] = contour[..]
        && (q - p).cross(first - q) == 0
    {
        contour.pop();
    }
}
