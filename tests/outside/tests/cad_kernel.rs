//! Exposed areas against a CAD kernel.
//!
//! Outside source: Open CASCADE Technology, through the script `tests/cad/expose.py`, which builds each piece a
//! second time from the written description of its construction and measures what a general fuse of all its
//! solids leaves of each face. The bound is 0.1 % of each face; faces that are wholly covered must be nothing.

#![allow(clippy::unwrap_used, reason = "a test may stop where its fixture is broken")]

use std::collections::BTreeMap;

use geometry::{Assembly, Part, PartId, PartKind, Surface};
use outside::{CadFixture, cad_fixtures};
use units::{LengthUnit, read_length};

/// The largest difference of a face, as a share of it.
const RELATIVE: f64 = 1e-3;
/// The largest area, in square metres, of a face that should be nothing.
const NOTHING: f64 = 1e-7;

fn agrees(ours: f64, theirs: f64) -> bool {
    (ours - theirs).abs() <= (RELATIVE * theirs.abs()).max(NOTHING)
}

fn surfaces(fixture: &CadFixture) -> Vec<Surface> {
    if let Some(block) = &fixture.block {
        let size = ["width", "depth", "height"].map(|key| {
            assert_eq!(block[key].unit, "in");
            read_length(&block[key].typed, LengthUnit::Inch)
                .unwrap()
                .as_metres()
        });
        let board = Part::block(PartId::nth(PartKind::Board, 1), [0.0; 3], size);
        let alone = Assembly {
            parts: vec![board],
            spaces: vec![],
        };
        return alone.surfaces();
    }
    fixture
        .to_piece()
        .unwrap()
        .furniture()
        .assembly()
        .unwrap()
        .surfaces()
}

/// The net area of each face, by sense.
fn faces(surfaces: &[Surface]) -> BTreeMap<String, BTreeMap<&'static str, f64>> {
    let mut faces = BTreeMap::<String, BTreeMap<_, _>>::new();
    for surface in surfaces {
        let face = format!("{}/{}", surface.id.part, surface.id.side.word());
        let sense = surface.id.sense.key();
        let before = faces
            .entry(face)
            .or_default()
            .insert(sense, surface.net.as_square_metres());
        assert_eq!(before, None, "{} is listed twice", surface.id);
    }
    faces
}

/// The kind of a part: its name without the numbers of row and column.
fn kind(face: &str) -> String {
    let part = face.split('/').next().unwrap();
    part.trim_end_matches(|c: char| c.is_ascii_digit() || c == '-')
        .into()
}

#[test]
fn every_face_of_every_piece_agrees_with_the_kernel() {
    let fixtures = cad_fixtures().unwrap();
    assert!(fixtures.len() >= 8, "only {} fixtures were found", fixtures.len());
    let mut wrong = Vec::new();
    let mut worst = 0f64;
    let mut compared = 0;
    for fixture in &fixtures {
        assert_eq!(fixture.units, "m2");
        assert!(!fixture.faces.is_empty(), "{} has no faces", fixture.name);
        let mut ours = faces(&surfaces(fixture));
        for theirs in &fixture.faces {
            let place = format!("{} {}", fixture.name, theirs.face);
            let Some(senses) = ours.remove(&theirs.face) else {
                wrong.push(format!("{place} is not among ours"));
                continue;
            };
            let net: f64 = senses.values().sum();
            if !agrees(net, theirs.exposed) {
                wrong.push(format!("{place}: {net} against {}", theirs.exposed));
            }
            if theirs.exposed > NOTHING {
                worst = worst.max((net / theirs.exposed - 1.0).abs());
            }
            compared += 1;
        }
        wrong.extend(
            ours.keys()
                .map(|face| format!("{} {face} is not among theirs", fixture.name)),
        );
    }
    assert!(compared > 0, "no face was compared");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    println!("{compared} faces, the largest difference is {worst:.1e} of a face");
}

/// What a finisher paints hangs on what a face looks at, so the parts of a divided face must agree one by one.
#[test]
fn what_each_face_looks_at_agrees_with_the_kernel() {
    let mut wrong = Vec::new();
    let mut compared = 0;
    for fixture in cad_fixtures().unwrap() {
        let ours = faces(&surfaces(&fixture));
        for theirs in &fixture.faces {
            let none = BTreeMap::new();
            let senses = ours.get(&theirs.face).unwrap_or(&none);
            for sense in ["outside", "inside", "wall", "floor", "underneath"] {
                let [mine, kernel] = [senses.get(sense).copied(), theirs.senses.get(sense).copied()]
                    .map(|area| area.unwrap_or(0.0));
                if !agrees(mine, kernel) {
                    wrong.push(format!(
                        "{} {}, {sense}: {mine} against {kernel}",
                        fixture.name, theirs.face
                    ));
                }
                compared += usize::from(kernel > 0.0);
            }
        }
    }
    assert!(compared > 0, "no sense was compared");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The underside of the top has three senses; the script works them out by hand as well.
#[test]
fn the_underside_of_the_top_agrees_with_the_sum_by_hand() {
    let mut compared = 0;
    for fixture in cad_fixtures().unwrap() {
        let ours = faces(&surfaces(&fixture));
        for (face, senses) in &fixture.by_hand {
            for (sense, &area) in senses {
                let mine = ours[face].get(sense.as_str()).copied().unwrap_or(0.0);
                assert!(
                    agrees(mine, area),
                    "{} {face}, {sense}: {mine} against {area}",
                    fixture.name
                );
                compared += 1;
            }
        }
    }
    assert!(compared >= 3 * 7, "only {compared} areas were compared");
}

#[test]
fn the_kinds_of_parts_add_up_as_the_kernel_says() {
    let mut compared = 0;
    for fixture in cad_fixtures().unwrap() {
        let mut groups = BTreeMap::<String, f64>::new();
        for (face, senses) in faces(&surfaces(&fixture)) {
            *groups.entry(kind(&face)).or_default() += senses.values().sum::<f64>();
        }
        let names = |groups: &BTreeMap<String, f64>| groups.keys().cloned().collect::<Vec<_>>();
        assert_eq!(names(&groups), names(&fixture.groups), "{}", fixture.name);
        for (kind, &area) in &fixture.groups {
            let ours = groups[kind];
            assert!(
                agrees(ours, area),
                "{} {kind}: {ours} against {area}",
                fixture.name
            );
            compared += 1;
        }
        let total: f64 = groups.values().sum();
        assert!(
            agrees(total, fixture.total),
            "{}: {total} against {}",
            fixture.name,
            fixture.total
        );
    }
    assert!(compared > 0, "no group was compared");
}
