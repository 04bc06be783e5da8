//! Space as cells between the planes of bounding boxes, one bit a cell.

use crate::Vector3;
use crate::sorting;

/// The planes at right angles to one axis.
#[derive(Debug)]
pub(super) struct Planes {
    /// From low to high, meters.
    places: Vec<f64>,
    /// Planes within this distance above a kept one are merged with it, meters.
    tolerance: f64,
}

/// How far apart planes may be and still coincide, meters: above rounding noise, below any tape.
const SAME_PLANE: f64 = 1e-5;

/// The extent of the room beyond the piece, meters. The value does not matter.
const MARGIN: f64 = 1.0;

/// The most work that a grid may be, as [`Shape::work`] counts it. Bays and rows alone come to 400,000 at most. Without a
/// limit, 900 repeated boards take half a gigabyte and more than a second; with it, 6 MB and a few milliseconds.
const MOST_WORK: usize = 500_000;

impl Planes {
    /// The planes at these places along the three axes; `open` adds a cell of room below and above them.
    ///
    /// While the grid is more work than [`MOST_WORK`], the tolerance is doubled along the axis with the most cells.
    pub(super) fn within_limit(mut places: [Vec<f64>; 3], open: [[bool; 2]; 3]) -> [Planes; 3] {
        places.iter_mut().for_each(|places| sorting::sort(places));
        let mut planes = [0, 1, 2].map(|axis| Planes::at(&places[axis], open[axis], SAME_PLANE));
        while Shape::of(&planes).work() > MOST_WORK {
            let [x, y, z] = [0, 1, 2].map(|axis| planes[axis].cells());
            let axis = match () {
                () if x >= y && x >= z => 0,
                () if y >= z => 1,
                () => 2,
            };
            planes[axis] = Planes::at(&places[axis], open[axis], 2.0 * planes[axis].tolerance);
        }
        planes
    }

    /// The planes at these sorted places; `open` adds a cell of room below and above them.
    fn at(places: &[f64], open: [bool; 2], tolerance: f64) -> Self {
        // The first plane of a cluster represents it, so that a cluster is never wider than the tolerance.
        let mut kept: Vec<f64> = Vec::with_capacity(places.len() + 2);
        for &place in places {
            if kept.last().is_none_or(|last| place - last > tolerance) {
                kept.push(place);
            }
        }
        if let (Some(&first), Some(&last)) = (kept.first(), kept.last()) {
            if open[1] {
                kept.push(last + MARGIN);
            }
            if open[0] {
                kept.insert(0, first - MARGIN);
            }
        }
        Planes {
            places: kept,
            tolerance,
        }
    }

    /// The number of cells between them.
    pub(super) fn cells(&self) -> usize {
        self.places.len().saturating_sub(1)
    }

    /// The plane at or below a place.
    pub(super) fn plane(&self, place: f64) -> usize {
        let above = self.places.partition_point(|plane| *plane <= place + 1e-9);
        above.saturating_sub(1)
    }

    /// The cells between two places, without cells that they only touch: the first, and the one after the last.
    pub(super) fn span(&self, low: f64, high: f64) -> [usize; 2] {
        let cells = self.cells();
        let first = self.plane(low);
        let begins = first + usize::from(first < cells && self.places[first + 1] - low <= SAME_PLANE);
        let last = self.plane(high);
        let ends = last + usize::from(high - self.places[last] > self.tolerance);
        [begins.min(cells), ends.min(cells)]
    }

    /// Where a cell begins and ends.
    pub(super) fn cell(&self, cell: usize) -> [f64; 2] {
        [self.places[cell], self.places[cell + 1]]
    }

    pub(super) fn width(&self, cell: usize) -> f64 {
        self.places[cell + 1] - self.places[cell]
    }

    /// Whether the cells `first..end` are narrower than `width` together.
    pub(super) fn is_narrow(&self, [first, end]: [usize; 2], width: f64) -> bool {
        self.places[end] - self.places[first] < width - SAME_PLANE
    }

    /// Every run of cells that is narrower than `width` together: its first cell, and the one after its last.
    pub(super) fn narrow_runs(&self, width: f64) -> Vec<[usize; 2]> {
        let mut runs = Vec::new();
        for first in 0..self.cells() {
            let ends = (first + 1..=self.cells()).take_while(|&end| self.is_narrow([first, end], width));
            runs.extend(ends.map(|end| [first, end]));
        }
        runs
    }
}

/// The number of cells along each axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shape {
    pub(super) cells: [usize; 3],
    /// The number of 64-bit words in a column of cells.
    words: usize,
}

impl Shape {
    pub(super) fn of(planes: &[Planes; 3]) -> Self {
        let cells = [0, 1, 2].map(|axis| planes[axis].cells());
        Shape {
            cells,
            words: cells[2].div_ceil(64),
        }
    }

    /// The number of words in a set.
    fn size(self) -> usize {
        self.cells[0] * self.cells[1] * self.words
    }

    /// The work of following one slanting line from each column: the words of all columns, times the columns that a
    /// level line crosses.
    fn work(self) -> usize {
        let [nx, ny, _] = self.cells;
        self.size().saturating_mul(nx + ny)
    }

    /// The empty set.
    pub(super) fn none(self) -> Cells {
        Cells {
            shape: self,
            bits: vec![0; self.size()],
        }
    }

    /// The bits of a column for the cells `from..to`, counted up from the floor.
    pub(super) fn column(self, span: [usize; 2]) -> Vec<u64> {
        self.words_of(span).collect()
    }

    /// The words of such a column, from the top down.
    pub(super) fn words_of(self, [from, to]: [usize; 2]) -> impl Iterator<Item = u64> + Clone {
        let levels = self.cells[2];
        let (first, behind) = if from < to {
            (levels - to, levels - from)
        } else {
            (0, 0)
        };
        (0..self.words).map(move |word| {
            let below = |place: usize| match place.saturating_sub(word * 64) {
                bits @ 0..64 => (1 << bits) - 1,
                _ => !0,
            };
            below(behind) & !below(first)
        })
    }

    /// The index of the first word of a column.
    pub(super) fn start(self, x: usize, y: usize) -> usize {
        (x * self.cells[1] + y) * self.words
    }

    /// Bits count from the top cell down, so that filling down is the carry of an addition.
    fn bit(self, level: usize) -> [usize; 2] {
        let place = self.cells[2] - 1 - level;
        [place / 64, place % 64]
    }
}

/// A set of cells, in vertical columns.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cells {
    shape: Shape,
    bits: Vec<u64>,
}

impl Cells {
    pub(super) fn shape(&self) -> Shape {
        self.shape
    }

    fn start(&self, x: usize, y: usize) -> usize {
        self.shape.start(x, y)
    }

    /// All words, column by column.
    pub(super) fn words(&self) -> &[u64] {
        &self.bits
    }

    /// One vertical column.
    pub(super) fn column(&self, x: usize, y: usize) -> &[u64] {
        let start = self.start(x, y);
        &self.bits[start..start + self.shape.words]
    }

    pub(super) fn column_mut(&mut self, x: usize, y: usize) -> &mut [u64] {
        let start = self.start(x, y);
        &mut self.bits[start..start + self.shape.words]
    }

    pub(super) fn has(&self, [x, y, z]: [usize; 3]) -> bool {
        let [word, bit] = self.shape.bit(z);
        self.bits[self.start(x, y) + word] >> bit & 1 == 1
    }

    /// Calls `of` for each run of cells of a column that are not in the set, between two that are: the first, and the
    /// one after the last.
    pub(super) fn free_between(&self, x: usize, y: usize, mut of: impl FnMut([usize; 2])) {
        let levels = self.shape.cells[2];
        let column = self.column(x, y);
        // From the top cell down, as the bits count.
        let next = |from: usize, is_set: bool| {
            let mut word = from / 64;
            let mut bits = if is_set { column[word] } else { !column[word] } & (!0 << (from % 64));
            while bits == 0 && word + 1 < column.len() {
                word += 1;
                bits = if is_set { column[word] } else { !column[word] };
            }
            let place = word * 64 + bits.trailing_zeros() as usize;
            (bits != 0 && place < levels).then_some(place)
        };
        let mut at = next(0, true);
        while let Some(solid) = at {
            let Some(free) = next(solid, false) else { break };
            let Some(below) = next(free, true) else { break };
            of([levels - below, levels - free]);
            at = Some(below);
        }
    }

    pub(super) fn each(&self) -> impl Iterator<Item = [usize; 3]> {
        let Shape {
            cells: [_, ny, nz],
            words,
        } = self.shape;
        let words_of = self.bits.iter().enumerate().filter(|(_, bits)| **bits != 0);
        words_of.flat_map(move |(place, &bits)| {
            let (column, word) = (place / words, place % words);
            let set = (0..64).filter(move |bit| bits >> bit & 1 == 1);
            set.map(move |bit| [column / ny, column % ny, nz - 1 - (word * 64 + bit)])
        })
    }

    /// Adds the block of cells between two spans along each axis.
    pub(super) fn add_block(&mut self, [x, y, z]: [[usize; 2]; 3]) {
        let column = self.shape.words_of(z);
        for x in x[0]..x[1] {
            for y in y[0]..y[1] {
                for (cells, new) in self.column_mut(x, y).iter_mut().zip(column.clone()) {
                    *cells |= new;
                }
            }
        }
    }

    /// Removes a block of cells.
    pub(super) fn remove_block(&mut self, [x, y, z]: [[usize; 2]; 3]) {
        let column = self.shape.words_of(z);
        for x in x[0]..x[1] {
            for y in y[0]..y[1] {
                for (cells, gone) in self.column_mut(x, y).iter_mut().zip(column.clone()) {
                    *cells &= !gone;
                }
            }
        }
    }

    pub(super) fn add(&mut self, other: &Cells) {
        add(&mut self.bits, &other.bits);
    }

    pub(super) fn remove(&mut self, other: &Cells) {
        for (cells, gone) in self.bits.iter_mut().zip(&other.bits) {
            *cells &= !gone;
        }
    }

    /// Keeps only cells that are also in another set.
    pub(super) fn keep(&mut self, other: &Cells) {
        keep(&mut self.bits, &other.bits);
    }

    /// The cells in neither set.
    pub(super) fn neither(&self, other: &Cells) -> Cells {
        let pairs = self.bits.iter().zip(&other.bits);
        let mut cells = Cells {
            shape: self.shape,
            bits: pairs.map(|(a, b)| !(a | b)).collect(),
        };
        cells.trim();
        cells
    }

    /// Clears the unused bits after the lowest cell of each column.
    pub(super) fn trim(&mut self) {
        let used = self.shape.cells[2] % 64;
        if used > 0 {
            let last = self.shape.words - 1;
            for word in self.bits.iter_mut().skip(last).step_by(self.shape.words) {
                *word &= !(!0 << used);
            }
        }
    }
}

/// Adds the bits of a column to another.
pub(super) fn add(to: &mut [u64], bits: &[u64]) {
    for (to, bits) in to.iter_mut().zip(bits) {
        *to |= bits;
    }
}

/// Keeps only bits of a column that are also set in another.
pub(super) fn keep(of: &mut [u64], bits: &[u64]) {
    for (of, bits) in of.iter_mut().zip(bits) {
        *of &= bits;
    }
}

/// Extends each cell of a column down through the free cells below it. All cells of the column must be free.
///
/// Adding a bit to a run of ones carries to the end of the run: the bits that change are the cells below.
pub(super) fn fill_down(column: &mut [u64], free: &[u64]) {
    let mut carry = 0;
    for (cell, free) in column.iter_mut().zip(free) {
        let (sum, over) = free.overflowing_add(*cell);
        let (sum, over_again) = sum.overflowing_add(carry);
        carry = u64::from(over | over_again);
        *cell = free & ((sum ^ free) | *cell);
    }
}

/// Extends each cell of a column up through the free cells above it.
pub(super) fn fill_up(column: &mut [u64], free: &[u64]) {
    let mut over = false;
    for (cell, free) in column.iter_mut().zip(free).rev() {
        // Shift toward the low bits, twice as far each time.
        *cell |= u64::from(over) << 63 & free;
        let mut way = *free;
        for step in [1, 2, 4, 8, 16, 32] {
            *cell |= way & (*cell >> step);
            way &= way >> step;
        }
        over = *cell & 1 == 1;
    }
}

/// The main axis of a direction, and whether it points up that axis.
pub(super) fn main_axis(direction: &Vector3) -> (usize, bool) {
    let [x, y, z] = [0, 1, 2].map(|axis| direction[axis].abs());
    let axis = match () {
        () if z >= x && z >= y => 2,
        () if x >= y => 0,
        () => 1,
    };
    (axis, direction[axis] > 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn planes_that_only_noise_keeps_apart_are_one() {
        let planes = Planes::at(&[0.0, 1e-9, 0.02, 0.020_000_01, 0.5], [true, false], SAME_PLANE);
        assert_eq!(planes.cells(), 3);
        assert_eq!(
            (planes.plane(0.0), planes.plane(1e-9), planes.plane(0.3)),
            (1, 1, 2)
        );
        assert_eq!((planes.span(0.0, 0.02), planes.span(0.01, 0.3)), ([1, 2], [1, 3]));
    }

    #[test]
    fn planes_are_merged_until_the_grid_is_small_enough() {
        let open = [[true, true], [true, false], [false, true]];
        let even = |count: u32, step: f64| -> Vec<f64> { (0..count).map(|i| step * f64::from(i)).collect() };
        let planes = Planes::within_limit([even(900, 0.001), even(900, 0.002), even(2000, 0.001)], open);
        assert!(Shape::of(&planes).work() <= MOST_WORK);
        for planes in &planes {
            let gaps = planes.places.windows(2).map(|pair| pair[1] - pair[0]);
            assert!(gaps.clone().all(|gap| gap > planes.tolerance));
            // A place that was merged has the cell above the plane that stands for it.
            let merged = planes.places[10] + 0.9 * planes.tolerance;
            assert_eq!(planes.span(merged, merged), [10, 10]);
        }
        // An axis with few planes keeps them.
        let planes = Planes::within_limit([even(10, 0.001), even(900, 0.002), even(900, 0.002)], open);
        assert_eq!((planes[0].cells(), planes[0].tolerance), (11, SAME_PLANE));
    }

    #[test]
    fn cells_fall_through_free_cells_and_stop_at_solids() {
        let level = |cells: &[usize]| cells.iter().fold(0u64, |bits, &at| bits | 1 << (9 - at));
        let free = level(&[9, 8, 7, 5, 4, 3, 1, 0]);
        for (from, reached) in [
            (&[9][..], &[9, 8, 7][..]),
            (&[8, 7], &[8, 7]),
            (&[5, 3, 1], &[5, 4, 3, 1, 0]),
        ] {
            let mut column = [level(from)];
            fill_down(&mut column, &[free]);
            assert_eq!(column[0], level(reached), "{from:?}");
        }
        // From one word of a column into the next.
        let mut column = [1 << 62, 0];
        fill_down(&mut column, &[u64::MAX, 0b0111]);
        assert_eq!(column, [3 << 62, 0b0111]);
    }

    #[test]
    fn free_runs_lie_between_two_solids() {
        let planes = [vec![0.0, 1.0], vec![0.0, 1.0], (0..=100).map(f64::from).collect()];
        let planes = Planes::within_limit(planes, [[false, false]; 3]);
        let mut cells = Shape::of(&planes).none();
        for z in [[2, 10], [13, 40], [41, 70], [90, 95]] {
            cells.add_block([[0, 1], [0, 1], z]);
        }
        let mut runs = vec![];
        cells.free_between(0, 0, |run| runs.push(run));
        assert_eq!(runs, [[70, 90], [40, 41], [10, 13]]);
        assert_eq!(cells.each().count(), 8 + 27 + 29 + 5);
    }

    #[test]
    fn cells_rise_through_free_cells_and_stop_at_solids() {
        let mut column = [0, 0b0100];
        fill_up(&mut column, &[!0 << 3 & !(1 << 20), 0b0111]);
        assert_eq!(column, [!0 << 21, 0b0111]);
        let mut column = [1 << 5];
        fill_up(&mut column, &[0b11_1101]);
        assert_eq!(column, [0b11_1100]);
    }
}
