//! The room that dimension lines take around a piece, and their order.

use geometry::{Dimension, Point2};

use super::scale::Scale;

/// How far the first dimension line stands from the piece, and each further one from the one before.
pub const DIMENSION_STEP: f64 = 44.0;

/// How wide and how high a figure is, about.
pub const FIGURE: Point2 = [90.0, 26.0];

/// What is kept free around the piece for its dimensions: left, right, top, bottom.
pub fn margins(dimensions: &[Dimension]) -> [f64; 4] {
    // Beside the lines stand figures: turned at the left, written out at the right.
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
        // Figures that stand close to each other in the last row are set below each other.
        let beside = of_side().filter(|line| line.row == last).count() - 1;
        let below = if away[0] == 0.0 {
            beside.min(1) as f64 * FIGURE[1]
        } else {
            0.0
        };
        f64::from(last) * DIMENSION_STEP + figures + below
    })
}

/// The lines from the top of the sheet down.
pub fn from_the_top(dimensions: Vec<Dimension>, scale: &Scale) -> Vec<Dimension> {
    let y = |line: &Dimension| scale.at(line.from)[1];
    let mut ordered: Vec<Dimension> = Vec::with_capacity(dimensions.len());
    for line in dimensions {
        let below = ordered.iter().position(|other| y(other) > y(&line));
        ordered.insert(below.unwrap_or(ordered.len()), line);
    }
    ordered
}
