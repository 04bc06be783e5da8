//! What each surface looks at, against rays.
//!
//! Outside source: rays cast from points of every surface at the finished solids of a piece, with trimesh and Embree,
//! through the script `tests/cad/seen.py`, which knows of the piece only its solids. The pieces are every kind as it
//! usually is, and 200 that were altered at random.

#![allow(clippy::unwrap_used, reason = "a test may stop where its fixture is broken")]

use std::collections::BTreeMap;

use geometry::{Furniture, Kind, Surface};
use outside::seen::{ALTERED, pieces};
use serde::Deserialize;

#[derive(Deserialize)]
pub struct Fixture {
    pub pieces: BTreeMap<String, Seen>,
}

/// What the rays say of a piece, where it is not as in the usual one of its kind: surfaces by what they look at.
#[derive(Deserialize)]
pub struct Seen {
    pub kind: String,
    #[serde(default)]
    outside: String,
    #[serde(default)]
    inside: String,
    #[serde(default)]
    wall: String,
    #[serde(default)]
    floor: String,
    #[serde(default)]
    underneath: String,
    #[serde(default)]
    glued: String,
    #[serde(default)]
    mixed: BTreeMap<String, BTreeMap<String, f64>>,
}

pub type Shares = BTreeMap<String, f64>;

impl Seen {
    pub fn of(&self, face: &str) -> Option<Shares> {
        if let Some(shares) = self.mixed.get(face) {
            let mut sums = Shares::new();
            for (label, share) in shares {
                *sums.entry(unseen(label).to_owned()).or_default() += share;
            }
            return Some(sums);
        }
        let lists = [
            ("outside", &self.outside),
            ("inside", &self.inside),
            ("wall", &self.wall),
            ("floor", &self.floor),
            ("underneath", &self.underneath),
            ("glued", &self.glued),
        ];
        let found = lists
            .into_iter()
            .find(|(_, list)| list.split(' ').any(|name| name == face));
        found.map(|(label, _)| Shares::from([(unseen(label).to_owned(), 1.0)]))
    }
}

/// Which of the two a surface looks at that nobody sees hangs on what is opened, and no paint hangs on it.
fn unseen(label: &str) -> &str {
    if label == "underneath" { "inside" } else { label }
}

/// The shares of each face by what it looks at, and its bare area.
pub fn faces(surfaces: &[Surface]) -> BTreeMap<String, (Shares, f64)> {
    let mut faces = BTreeMap::<String, (Shares, f64)>::new();
    for surface in surfaces {
        let area = surface.net.as_square_metres();
        let (shares, whole) = faces
            .entry(format!("{}/{}", surface.id.part, surface.id.side.word()))
            .or_default();
        *shares
            .entry(unseen(surface.id.sense.key()).to_owned())
            .or_default() += area;
        *whole += area;
    }
    for (shares, whole) in faces.values_mut() {
        shares
            .values_mut()
            .for_each(|share| *share /= whole.max(f64::MIN_POSITIVE));
    }
    faces
}

/// What is painted of a piece, square meters: by the geometry, and by the rays on the same bare areas.
pub fn painted(piece: &Furniture, theirs: &Seen, usual: &Seen) -> [f64; 2] {
    let mut sums = [0.0; 2];
    for (face, (shares, area)) in faces(&surfaces(piece)) {
        let seen = theirs.of(&face).or_else(|| usual.of(&face));
        let of = |shares: &Shares| shares.get("outside").copied().unwrap_or(0.0) * area;
        sums[0] += of(&shares);
        sums[1] += seen.as_ref().map_or(0.0, of);
    }
    sums
}

/// What is painted by default agrees with the rays within 1 % for every kind of piece. Of pieces that were altered at random
/// nine in ten agree within 15 %, and most far better. The others have an opening of a few centimeters that a change made:
/// the geometry takes all as seen that a bent line reaches through it, and the rays only what a straight one does. The bound
/// below holds what was reached; it is to come down.
#[test]
fn what_is_painted_by_default_is_what_rays_see() {
    let fixture: Fixture = outside::fixture("seen.json").unwrap();
    let (mut kinds, mut altered) = (0, Vec::new());
    for (name, piece) in pieces() {
        let Some(theirs) = fixture.pieces.get(&name) else {
            continue;
        };
        let [ours, seen] = painted(&piece, theirs, &fixture.pieces[&theirs.kind]);
        let off = (ours - seen).abs() / seen;
        if name.starts_with("altered ") {
            altered.push(off);
        } else {
            kinds += 1;
            assert!(off < 0.01, "{name}: {ours} m2, and the rays see {seen}");
        }
    }
    assert_eq!((kinds, altered.len()), (Kind::ALL.len(), ALTERED));
    altered.sort_by(f64::total_cmp);
    let [middle, most] = [ALTERED / 2, ALTERED * 9 / 10].map(|place| altered[place]);
    assert!(
        middle < 0.01 && most < 0.15,
        "half within {middle}, nine in ten within {most}"
    );
}

pub fn surfaces(piece: &Furniture) -> Vec<Surface> {
    piece.assembly().unwrap().surfaces()
}
