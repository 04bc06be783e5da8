//! A tree of boxes, to find those that overlap without comparing each with each.

/// As many boxes are compared one by one.
const LEAF: usize = 8;

/// An upright box: its lower left and its upper right corner.
pub(super) type Bounds = ([i32; 2], [i32; 2]);

/// A tree over boxes, each known by its place in the list.
pub(super) struct Tree {
    nodes: Vec<Node>,
    boxes: Vec<(Bounds, usize)>,
}

struct Node {
    bounds: Bounds,
    /// Its boxes, as a span of the list.
    from: usize,
    to: usize,
    /// The second half of a node that is divided; the first follows the node itself.
    second: Option<usize>,
}

impl Tree {
    pub(super) fn over(boxes: impl Iterator<Item = Bounds>) -> Tree {
        let boxes: Vec<(Bounds, usize)> = boxes.zip(0..).collect();
        let mut tree = Tree {
            nodes: Vec::with_capacity(1 + boxes.len() / 2),
            boxes,
        };
        tree.divide(0, tree.boxes.len());
        tree
    }

    /// Makes the node of some boxes, and those below it.
    fn divide(&mut self, from: usize, to: usize) -> usize {
        let boxes = &mut self.boxes[from..to];
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
            let middle = boxes.len() / 2;
            let span = |axis: usize| i64::from(bounds.1[axis]) - i64::from(bounds.0[axis]);
            let axis = usize::from(span(1) > span(0));
            boxes.select_nth_unstable_by_key(middle, |((low, high), _)| {
                i64::from(low[axis]) + i64::from(high[axis])
            });
            self.divide(from, from + middle);
            let second = self.divide(from + middle, to);
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
