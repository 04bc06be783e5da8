//! What each surface looks at, against rays.
//!
//! Outside source: rays cast from points of every surface at the finished solids of a piece, with trimesh and Embree,
//! through the script `tests/cad/seen.py`, which knows of the piece only its solids. The pieces are every kind as it
//! usually is, every answer to every choice of every kind, and 200 that were altered at random.

#![allow(clippy::unwrap_used, reason = "a test may stop where its fixture is broken")]

use std::collections::BTreeMap;

use geometry::{Furniture, Surface};
use outside::seen::{ALTERED, pieces};
use serde::Deserialize;

/// The largest difference of a share of a surface: the rays begin at some hundred points of it.
const SHARE: f64 = 0.1;
/// Surfaces of less than this are not compared, square meters: a strip as wide as the spacing of the points.
const SMALL: f64 = 2e-4;

/// Differences that are known, by the beginning of the name of the piece, the kind of part and the side, each with its
/// reason. An empty name means any.
const KNOWN: &[(&str, &str, &str, &str)] = &[];

#[derive(Deserialize)]
struct Fixture {
    pieces: BTreeMap<String, Seen>,
}

/// What the rays say of a piece, where it is not as in the usual one of its kind: surfaces by what they look at.
#[derive(Deserialize)]
struct Seen {
    kind: String,
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

type Shares = BTreeMap<String, f64>;

impl Seen {
    fn of(&self, face: &str) -> Option<Shares> {
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
fn faces(surfaces: &[Surface]) -> BTreeMap<String, (Shares, f64)> {
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

fn differs(ours: &Shares, theirs: &Shares) -> bool {
    let labels = ours.keys().chain(theirs.keys());
    let share = |of: &Shares, label: &String| of.get(label).copied().unwrap_or(0.0);
    labels
        .into_iter()
        .any(|label| (share(ours, label) - share(theirs, label)).abs() > SHARE)
}

fn known(piece: &str, face: &str) -> Option<&'static str> {
    let (part, side) = face.split_once('/').unwrap();
    let found = KNOWN.iter().find(|(name, kind, of, _)| {
        piece.starts_with(name) && part.contains(kind) && (of.is_empty() || side == *of)
    });
    found.map(|(.., reason)| *reason)
}

#[test]
fn what_each_surface_looks_at_is_what_rays_say() {
    let fixture: Fixture = outside::fixture("seen.json").unwrap();
    let pieces = pieces();
    assert_eq!(
        pieces
            .iter()
            .filter(|(name, _)| name.starts_with("altered "))
            .count(),
        ALTERED
    );
    let mut wrong = Vec::new();
    let mut reasons = BTreeMap::<&str, usize>::new();
    let (mut compared, mut painted) = (0, Vec::new());
    for (name, piece) in &pieces {
        let Some(theirs) = fixture.pieces.get(name) else {
            continue;
        }; //DEV
        let usual = &fixture.pieces[&theirs.kind];
        let mut sums = [0.0; 2];
        for (face, (shares, area)) in faces(&surfaces(piece)) {
            let Some(seen) = theirs.of(&face).or_else(|| usual.of(&face)) else {
                if area > SMALL {
                    wrong.push(format!("{name}: {face} is bare, and the rays find nothing of it"));
                }
                continue;
            };
            let outside = |of: &Shares| of.get("outside").copied().unwrap_or(0.0) * area;
            compared += 1;
            if area > SMALL && differs(&shares, &seen) {
                match known(name, &face) {
                    Some(reason) => *reasons.entry(reason).or_default() += 1,
                    None => wrong.push(format!(
                        "{name}: {face}, {area:.4} m2: {shares:.2?} against {seen:?}"
                    )),
                }
                continue;
            }
            sums[0] += outside(&shares);
            sums[1] += outside(&seen);
        }
        painted.push((name, sums));
    }
    for (reason, count) in &reasons {
        println!("{count}: {reason}");
    }
    println!("{compared} faces of {} pieces", pieces.len());
    assert!(wrong.is_empty(), "{} differ\n{}", wrong.len(), wrong.join("\n"));
    let idle: Vec<_> = KNOWN
        .iter()
        .filter(|(.., reason)| !reasons.contains_key(reason))
        .collect();
    assert!(idle.is_empty(), "no difference has the reason {idle:?}");
    // What is left of the differences is the noise of the points.
    for (name, [ours, theirs]) in painted {
        assert!(
            (ours - theirs).abs() < 0.01 * ours.max(0.05),
            "{name}: {ours} against {theirs} m2"
        );
    }
}

fn surfaces(piece: &Furniture) -> Vec<Surface> {
    piece.assembly().unwrap().surfaces()
}
