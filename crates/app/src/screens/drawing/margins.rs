//! How far the dimension lines are from the piece, the margins that they need, and their order.

use geometry::{Dimension, Point2};

use super::room::Room;
use super::scale::Scale;

/// Returns the distance between the piece and the dimension lines of this row. Figures beside the piece are wider than
/// those below it are high.
pub fn offset(line: &Dimension, room: &Room) -> f64 {
    let further = f64::from(line.row.saturating_sub(1));
    let step = if line.away[0] == 0.0 { 1.5 } else { 3.2 };
    room.figure * (1.5 + further * step)
}

/// Returns the margins for the dimensions: left, right, top, bottom.
pub fn margins(dimensions: &[Dimension], room: &Room) -> [f64; 4] {
    let sides = [
        ([-1.0, 0.0], 1.6),
        ([1.0, 0.0], 3.4),
        ([0.0, 1.0], 0.9),
        ([0.0, -1.0], 0.9),
    ];
    let straight = sides.map(|(away, figure)| {
        let of_side = dimensions.iter().filter(|line| line.away == away);
        let furthest = of_side.map(|line| offset(line, room)).reduce(f64::max);
        furthest.map_or(room.figure * 0.4, |furthest| furthest + figure * room.figure)
    });
    // A line along a receding edge has its figure beside it.
    let mut receding = dimensions
        .iter()
        .filter(|line| line.away[0] != 0.0 && line.away[1] != 0.0);
    match receding.next() {
        Some(line) if line.away[1] > 0.0 => {
            let [left, right, top, bottom] = straight;
            [left, right, top.max(room.figure * 1.9), bottom]
        }
        Some(_) => {
            let [left, right, top, bottom] = straight;
            [left, right.max(room.figure * 4.0), top, bottom]
        }
        None => straight,
    }
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

/// Returns the size that a text takes at the size of the figures. The letters of the page's font are half as wide as high
/// on average.
pub fn extent(text: &str, room: &Room) -> Point2 {
    // A fraction is set smaller.
    let signs = text.chars().map(|sign| match sign {
        '/' | ' ' => 0.3,
        _ => 0.55,
    });
    [signs.sum::<f64>() * room.figure, room.figure]
}
