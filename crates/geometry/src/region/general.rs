//! The general boolean of regions: their corners on a grid of whole numbers.

use super::{Point2, Region};
use crate::boolean::{Boolean, Rule};
use crate::corner::Corner;

/// The general boolean of two sets of regions.
pub(super) fn boolean(first: &[&Region], second: &[&Region], rule: Rule) -> Region {
    let corners = || {
        first
            .iter()
            .chain(second)
            .flat_map(|region| region.contours().flatten())
    };
    let Some(grid) = Grid::over(corners()) else {
        return Region::EMPTY;
    };
    let mut boolean = Boolean::new(corners().count());
    for (set, regions) in [first, second].into_iter().enumerate() {
        for contour in regions.iter().flat_map(|region| region.contours()) {
            boolean.add(set, contour.iter().map(|&point| grid.corner(point)));
        }
    }
    let contours = boolean.contours(rule).into_iter();
    let points = |contour: Vec<Corner>| contour.into_iter().map(|corner| grid.point(corner)).collect();
    Region::from_contours(contours.map(points).collect())
}

/// The integer grid of the general boolean.
struct Grid {
    middle: Point2,
    steps_per_metre: f64,
}

impl Grid {
    /// The grid over points. Its step is a power of two such that no point is more than 2^29 steps from the middle.
    /// `None` without points, or if one is not finite.
    fn over<'a>(points: impl Iterator<Item = &'a Point2>) -> Option<Grid> {
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for point in points {
            for axis in 0..2 {
                if !point[axis].is_finite() {
                    return None;
                }
                low[axis] = low[axis].min(point[axis]);
                high[axis] = high[axis].max(point[axis]);
            }
        }
        let middle = [0, 1].map(|axis| (low[axis] + high[axis]) * 0.5);
        let reach = (high[0] - middle[0]).max(high[1] - middle[1]);
        let (fraction, exponent) = libm::frexp(reach);
        let digits = if fraction == 0.5 { exponent - 1 } else { exponent };
        let steps_per_metre = libm::ldexp(1.0, (29 - digits).min(f64::MAX_EXP - 1));
        reach.is_finite().then_some(Grid {
            middle,
            steps_per_metre,
        })
    }

    fn corner(&self, point: Point2) -> Corner {
        let whole = |axis: usize| ((point[axis] - self.middle[axis]) * self.steps_per_metre).round() as i32;
        Corner::new(whole(0), whole(1))
    }

    fn point(&self, corner: Corner) -> Point2 {
        let Corner { x, y } = corner;
        let at = |axis: usize, steps: i32| self.middle[axis] + f64::from(steps) / self.steps_per_metre;
        [at(0, x), at(1, y)]
    }
}
