//! From meters of a drawing to the units of the sheet.

use std::fmt::Write as _;

use geometry::{Drawing, Point2, Region};

/// Paths are in whole numbers of this part of a unit: whole numbers are written quickly.
pub const FINE: f64 = 10.0;

/// From metres of the drawing to units of the sheet.
pub struct Scale {
    factor: f64,
    shift: [f64; 2],
}

impl Scale {
    /// The scale at which a drawing fills a sheet within margins, left, right, top, bottom; of `most` units to the metre at
    /// most.
    pub fn fitting(drawing: &Drawing, sheet: [f64; 2], margins: [f64; 4], most: f64) -> Self {
        let (low, high) = drawing.bounds();
        let [left, right, top, bottom] = margins;
        let room = [sheet[0] - left - right, sheet[1] - top - bottom];
        let size = [high[0] - low[0], high[1] - low[1]];
        let factor = (room[0] / size[0]).min(room[1] / size[1]).min(most);
        let spare = [room[0] - size[0] * factor, room[1] - size[1] * factor];
        Scale {
            factor,
            shift: [
                left + spare[0] / 2.0 - low[0] * factor,
                top + spare[1] / 2.0 + high[1] * factor,
            ],
        }
    }

    /// How many units of the sheet a metre has.
    pub fn units_to_the_metre(&self) -> f64 {
        self.factor
    }

    /// Where a point of the drawing stands on the sheet.
    pub fn at(&self, point: Point2) -> Point2 {
        [
            self.shift[0] + point[0] * self.factor,
            self.shift[1] - point[1] * self.factor,
        ]
    }

    /// The outlines of a region.
    pub fn path(&self, region: &Region) -> String {
        let mut path = String::new();
        for contour in region.contours() {
            self.line(contour, &mut path);
            path.push('Z');
        }
        path
    }

    /// Lines, closed or open.
    pub fn lines(&self, lines: &[Vec<Point2>]) -> String {
        let mut path = String::new();
        for line in lines {
            self.line(line, &mut path);
        }
        path
    }

    fn line(&self, points: &[Point2], path: &mut String) {
        for (i, &point) in points.iter().enumerate() {
            let [x, y] = self.at(point).map(|x| (x * FINE).round() as i32);
            path.push(if i == 0 { 'M' } else { 'L' });
            // Writing into a string never fails.
            let _ = write!(path, "{x} {y}");
        }
    }
}
