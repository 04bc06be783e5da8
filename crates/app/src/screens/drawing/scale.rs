//! Conversion from meters in a drawing to sheet units.

use std::fmt::Write as _;

use geometry::{Drawing, Point2, Region};

/// Paths use whole numbers of this fraction of a unit because they are fast to write.
pub const FINE: f64 = 10.0;

/// The conversion from meters to sheet units.
pub struct Scale {
    factor: f64,
    shift: [f64; 2],
}

impl Scale {
    /// Returns the scale at which a drawing fills a sheet within the left, right, top and bottom margins,
    /// with at most `most` units per meter.
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

    /// Returns the number of sheet units per meter.
    pub fn units_to_the_metre(&self) -> f64 {
        self.factor
    }

    /// Converts a point of the drawing to the sheet.
    pub fn at(&self, point: Point2) -> Point2 {
        [
            self.shift[0] + point[0] * self.factor,
            self.shift[1] - point[1] * self.factor,
        ]
    }

    /// Returns the outlines of a region as a path.
    pub fn path(&self, region: &Region) -> String {
        let mut path = String::new();
        for contour in region.contours() {
            self.line(contour, &mut path);
            path.push('Z');
        }
        path
    }

    /// Returns open or closed lines as a path.
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
            // Writing to a string cannot fail.
            let _ = write!(path, "{x} {y}");
        }
    }
}
