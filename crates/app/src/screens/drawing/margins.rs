//! The margins for dimension lines around a piece, and the order of the lines.

use geometry::{Dimension, Point2};

use super::scale::Scale;

/// The distance between the piece and the first dimension line, and between lines.
pub const DIMENSION_STEP: f64 = 44.0;

/// The approximate width and height of a figure.
pub const FIGURE: Point2 = [90.0, 26.0];

/// Returns the margins for the dimensions: left, right, top, bottom.
pub fn margins(dimensions: &[Dimension]) -> [f64; 4] {
    // Figures next to the lines are rotated on the left and horizontal on the right.
    let sides = [
        ([-1.0, 0.0], 50.0),
        ([1.0, 0.0], 160.0),
        ([0.0, 1.0], 40.0),
        ([0.0, -1.0], 45.0),
    ];
    sides.map(|(away, figures)| {
        let of_side = || dimensions.iter().filter(|line| line.away == away);
        let Some(last) = of_side().map(|line| line.row).max() else {
            return 36.0;
        };
        // Close figures in the last row are placed one below the other.
        let beside = of_side().filter(|line| line.row == last).count() - 1;
        let below = if away[0] == 0.0 {
            beside.min(1) as f64 * FIGURE[1]
        } else {
            0.0
        };
        f64::from(last) * DIMENSION_STEP + figures + below
    })
}

/// Sorts the lines from the top of the sheet down.
pub fn from_the_top(dimensions: Vec<Dimension>, scale: &Scale) -> Vec<Dimension> {
    let y = |line: &Dimension| scale.at(line.from)[1];
    let mut ordered: Vec<Dimension> = Vec::with_capacity(dimensions.len());
    for line in dimensions {
        let below = ordered.iter().position(|other| y(other) > y(&line));
        ordered.insert(below.unwrap_or(ordered.len()), line);
    }
    ordered
}
