//! The side of each piece that the result is on, and which border piece follows which.
//!
//! A vertical line sweeps over the corners from left to right (Shamos and Hoey). It keeps the pieces that it crosses,
//! from bottom to top, each with the winding numbers above it.

use super::edge::{Edge, Rule, Winding};
use crate::corner::Corner;

/// A piece of the border of the result.
#[derive(Clone, Copy)]
pub(super) struct Border {
    /// The index of the corner where it begins; the result is on its left.
    pub(super) from: usize,
    /// The index of the piece that follows it around the border.
    pub(super) next: usize,
    /// The index of the border piece next below, if a hole begins here.
    pub(super) below: Option<usize>,
}

/// The border pieces of the result, by the index of the piece.
pub(super) fn borders(corners: &[Corner], mut pieces: Vec<Edge<i64>>, rule: Rule) -> Vec<Option<Border>> {
    let mut sweep = Sweep {
        corners,
        borders: vec![None; pieces.len()],
        above: vec![[0; 2]; pieces.len()],
        crossed: Vec::new(),
    };
    let mut from = 0;
    let mut around = Vec::new();
    for (corner, &at) in corners.iter().enumerate() {
        let begins = |piece: &&Edge<i64>| piece.ends[0] == corner as i64;
        let to = from + pieces[from..].iter().take_while(begins).count();
        let ways = |piece: &Edge<i64>| sweep.end(piece, 1) - at;
        units::sort_few(&mut pieces[from..to], |a, b| ways(a).cross(ways(b)) > 0);
        around.clear();
        sweep.pass(corner, &pieces, from..to, rule, &mut around);
        sweep.join(&around);
        from = to;
    }
    sweep.borders
}

struct Sweep<'a> {
    corners: &'a [Corner],
    borders: Vec<Option<Border>>,
    /// The winding numbers above each piece.
    above: Vec<Winding>,
    /// The pieces that the line crosses, from bottom to top.
    crossed: Vec<usize>,
}

impl Sweep<'_> {
    fn end(&self, piece: &Edge<i64>, end: usize) -> Corner {
        self.corners[piece.ends[end] as usize]
    }

    /// Moves the line over a corner at which the pieces `begin` begin, from bottom to top. The border pieces at the
    /// corner go into `around`, counter-clockwise from below, each with whether it arrives there.
    fn pass(
        &mut self,
        corner: usize,
        pieces: &[Edge<i64>],
        begin: std::ops::Range<usize>,
        rule: Rule,
        around: &mut Vec<(usize, bool)>,
    ) {
        let at = self.corners[corner];
        let low = self.crossed.partition_point(|&place| {
            let [p, q] = [0, 1].map(|end| self.end(&pieces[place], end));
            (q - p).cross(at - p) > 0
        });
        let ends = |place: &&usize| pieces[**place].ends[1] == corner as i64;
        let high = low + self.crossed[low..].iter().take_while(ends).count();
        let mut winding = match low.checked_sub(1) {
            Some(below) => self.above[self.crossed[below]],
            None => [0; 2],
        };
        let mut is_in = rule.takes(winding);
        let is_border = |place: &&usize| self.borders[**place].is_some();
        let mut below = None;
        // At the lowest leftmost corner of a hole the result is below, and no border piece arrives.
        if is_in && !self.crossed[low..high].iter().any(|place| is_border(&place)) {
            below = self.crossed[..low].iter().rev().find(is_border).copied();
        }
        for place in begin.clone() {
            let step = pieces[place].step;
            winding = [winding[0] + step[0], winding[1] + step[1]];
            self.above[place] = winding;
            let was_in = std::mem::replace(&mut is_in, rule.takes(winding));
            if is_in != was_in {
                let from = pieces[place].ends[usize::from(was_in)] as usize;
                self.borders[place] = Some(Border {
                    from,
                    next: place,
                    below: below.take(),
                });
                around.push((place, was_in));
            }
        }
        for &place in self.crossed[low..high].iter().rev() {
            if let Some(border) = self.borders[place] {
                around.push((place, border.from != corner));
            }
        }
        self.crossed.splice(low..high, begin);
    }

    /// Joins each piece that arrives at a corner to the next one clockwise that leaves it: together they enclose a
    /// corner of the result.
    fn join(&mut self, around: &[(usize, bool)]) {
        let mut before = around.last();
        for here in around {
            if let (&(place, true), Some(&(next, false))) = (here, before)
                && let Some(border) = &mut self.borders[place]
            {
                border.next = next;
            }
            before = Some(here);
        }
    }
}
