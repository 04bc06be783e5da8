//! Contacts: where faces of two parts lie against each other.

use crate::assembly::Assembly;
use crate::face::Face;
use crate::region::Region;
use crate::{CONTACT_GAP, SMALLEST_AREA};

/// How nearly two directions must agree, as the difference of their cosine from 1: about 0.08 degrees.
const PARALLEL: f64 = 1e-6;

/// The common region of two faces that lie against each other, in the plane of the face that it covers.
pub(crate) struct Cover {
    /// The part that covers, by its place in the assembly.
    pub(crate) part: usize,
    /// What it covers.
    pub(crate) region: Region,
}

/// For each face of each part, in order, what covers it.
///
/// Faces are sorted along the longest direction of the piece, so that only neighbours are compared.
pub(crate) fn covers(assembly: &Assembly) -> Vec<Vec<Cover>> {
    let faces: Vec<Placed> = assembly
        .parts
        .iter()
        .enumerate()
        .flat_map(|(part, solid)| solid.faces.iter().map(move |face| (part, face)))
        .enumerate()
        .map(|(index, (part, face))| Placed::new(index, part, face))
        .collect();
    let mut found: Vec<Vec<Cover>> = faces.iter().map(|_| Vec::new()).collect();
    let axis = longest_axis(&faces);
    let mut order: Vec<&Placed> = faces.iter().collect();
    order.sort_by(|a, b| a.low[axis].total_cmp(&b.low[axis]));
    for (i, a) in order.iter().enumerate() {
        let reach = a.high[axis] + CONTACT_GAP;
        for b in order[i + 1..].iter().take_while(|b| b.low[axis] <= reach) {
            if a.part == b.part || !a.near(b) || !lie_against(a.face, b.face) {
                continue;
            }
            let on_a = a
                .face
                .region
                .intersection(&carried(b.face, &b.face.region, a.face));
            if on_a.area() > SMALLEST_AREA {
                let on_b = carried(a.face, &on_a, b.face);
                found[a.index].push(Cover {
                    part: b.part,
                    region: on_a,
                });
                found[b.index].push(Cover {
                    part: a.part,
                    region: on_b,
                });
            }
        }
    }
    // The sweep meets pairs in the order of their places; the order of the parts is what a reader expects.
    for list in &mut found {
        list.sort_by_key(|cover| cover.part);
    }
    found
}

struct Placed<'a> {
    index: usize,
    part: usize,
    face: &'a Face,
    low: [f64; 3],
    high: [f64; 3],
    normal: crate::Vector3,
}

impl<'a> Placed<'a> {
    fn new(index: usize, part: usize, face: &'a Face) -> Self {
        let (low, high) = face.bounds();
        Placed {
            index,
            part,
            face,
            low,
            high,
            normal: face.plane.normal(),
        }
    }

    fn near(&self, other: &Placed) -> bool {
        self.normal.dot(&other.normal) < PARALLEL - 1.0
            && (0..3).all(|axis| {
                self.low[axis] <= other.high[axis] + CONTACT_GAP
                    && other.low[axis] <= self.high[axis] + CONTACT_GAP
            })
    }
}

fn longest_axis(faces: &[Placed]) -> usize {
    let spread = |axis: usize| {
        let low = faces.iter().map(|f| f.low[axis]).fold(f64::INFINITY, f64::min);
        let high = faces
            .iter()
            .map(|f| f.high[axis])
            .fold(f64::NEG_INFINITY, f64::max);
        high - low
    };
    (0..3)
        .max_by(|&a, &b| spread(a).total_cmp(&spread(b)))
        .unwrap_or(0)
}

fn lie_against(a: &Face, b: &Face) -> bool {
    a.plane.height_of(&b.plane.origin).abs() <= CONTACT_GAP
}

/// A region in the plane of one face, as seen in the plane of another that is parallel to it.
fn carried(from: &Face, region: &Region, to: &Face) -> Region {
    region.mapped(|point| to.plane.project(&from.plane.at(point)))
}
