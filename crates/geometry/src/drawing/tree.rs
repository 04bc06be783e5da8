//! A tree of bounding boxes, to find overlapping ones without comparing every pair.
//!
//! The boxes are sorted in Morton order (along a Z-shaped space-filling curve), so that boxes near each other in the
//! list are near each other on the sheet. The tree divides that list.

use crate::sorting;

/// The most boxes in a leaf; they are compared one by one.
const LEAF: usize = 8;

/// An upright box: its lower left and its upper right corner.
pub(super) type Bounds = ([i32; 2], [i32; 2]);

/// A tree over boxes, each known by its index.
pub(super) struct Tree {
    nodes: Vec<Node>,
    boxes: Vec<(Bounds, usize)>,
}

struct Node {
    bounds: Bounds,
    /// Its boxes, as a range of the list.
    from: usize,
    to: usize,
    /// The second half of a node that is split; the first half is the next node.
    second: Option<usize>,
}

impl Tree {
    pub(super) fn over(boxes: impl Iterator<Item = Bounds>) -> Tree {
        let mut boxes: Vec<(Bounds, usize)> = boxes.zip(0..).collect();
        sorting::sort_by(&mut boxes, |(bounds, _)| [morton_code(bounds), 0]);
        let mut tree = Tree {
            nodes: Vec::with_capacity(1 + boxes.len() / 2),
            boxes,
        };
        tree.divide(0, tree.boxes.len());
        tree
    }

    /// Adds the node of some boxes, and those below it.
    fn divide(&mut self, from: usize, to: usize) -> usize {
        let boxes = &self.boxes[from..to];
        let none = ([i32::MAX; 2], [i32::MIN; 2]);
        let bounds = boxes.iter().fold(none, |(low, high), ((box_low, box_high), _)| {
            (
                [low[0].min(box_low[0]), low[1].min(box_low[1])],
                [high[0].max(box_high[0]), high[1].max(box_high[1])],
            )
        });
        let here = self.nodes.len();
        self.nodes.push(Node {
            bounds,
            from,
            to,
            second: None,
        });
        if boxes.len() > LEAF {
            let middle = from + boxes.len() / 2;
            self.divide(from, middle);
            let second = self.divide(middle, to);
            self.nodes[here].second = Some(second);
        }
        here
    }

    /// Calls `found` with each box that overlaps this one by more than `noise` both ways.
    pub(super) fn overlapping(&self, of: Bounds, noise: i32, mut found: impl FnMut(usize)) {
        let overlaps = |(low, high): &Bounds| {
            (0..2).all(|axis| low[axis] + noise < of.1[axis] && of.0[axis] + noise < high[axis])
        };
        let mut open = vec![0];
        while let Some(at) = open.pop() {
            let Some(node) = self.nodes.get(at).filter(|node| overlaps(&node.bounds)) else {
                continue;
            };
            if let Some(second) = node.second {
                open.extend([at + 1, second]);
                continue;
            }
            for (bounds, place) in &self.boxes[node.from..node.to] {
                if overlaps(bounds) {
                    found(*place);
                }
            }
        }
    }
}

/// The Morton code of the middle of a box: the bits of both coordinates interleaved.
fn morton_code((low, high): &Bounds) -> u64 {
    let digits = |axis: usize| {
        let middle = (i64::from(low[axis]) + i64::from(high[axis])).cast_unsigned() / 2;
        [
            (16, 0x0000_ffff_0000_ffff),
            (8, 0x00ff_00ff_00ff_00ff),
            (4, 0x0f0f_0f0f_0f0f_0f0f),
            (2, 0x3333_3333_3333_3333),
            (1, 0x5555_5555_5555_5555),
        ]
        .into_iter()
        .fold(middle, |spread, (by, mask)| (spread | (spread << by)) & mask)
    };
    digits(0) | (digits(1) << 1)
}
