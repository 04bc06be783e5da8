//! Exposed areas against a CAD kernel.
//!
//! Outside source: Open CASCADE Technology, through the script `tests/cad/expose.py`, which builds each piece a
//! second time from the written description of its construction and measures what a general fuse of all its
//! solids leaves of each face. The bound is 0.003 % of each face; faces that are wholly covered must be nothing.
//!
//! A second source: the `manifold3d` library, through `tests/cad/mesh.py`, for the area of whole pieces.

#![allow(clippy::unwrap_used, reason = "a test may stop where its fixture is broken")]

use std::collections::{BTreeMap, BTreeSet};

use geometry::{Assembly, Furniture, Kind, Part, PartId, PartKind, Surface, styles};
use outside::{CadFixture, cad_fixtures};
use units::{LengthUnit, read_length};

/// The largest difference of a face, as a share of it. Reached are 2.6e-5, at the lower ends of the sides of a lipped chest; no
/// curve needs more.
const RELATIVE: f64 = 3e-5;
/// The largest difference of a whole piece from the mesh, as a share of it. The mesh has 48 straight lines in
/// place of a quarter circle, which are shorter by (pi / 2 / 48)^2 / 24 = 0.0045 %; twice that leaves room for
/// what lies against them.
const MESH: f64 = 1e-4;
/// The largest area, in square metres, of a face that should be nothing.
const NOTHING: f64 = 1e-7;

fn agrees(ours: f64, theirs: f64) -> bool {
    (ours - theirs).abs() <= (RELATIVE * theirs.abs()).max(NOTHING)
}

/// The piece as measured, if the fixture is of a piece.
fn furniture(fixture: &CadFixture) -> Option<Furniture> {
    let is_piece = fixture.piece.is_some();
    is_piece.then(|| fixture.to_piece().unwrap().furniture())
}

fn assembly(fixture: &CadFixture) -> Assembly {
    if let Some(block) = &fixture.block {
        let size = ["width", "depth", "height"].map(|key| {
            assert_eq!(block[key].unit, "in");
            read_length(&block[key].typed, LengthUnit::Inch)
                .unwrap()
                .as_metres()
        });
        let board = Part::block(PartId::nth(PartKind::Board, 1), [0.0; 3], size);
        return Assembly::new(vec![board], vec![]);
    }
    let built = furniture(fixture).unwrap().assembly();
    built.map_err(|problems| (&fixture.name, problems)).unwrap()
}

fn surfaces(fixture: &CadFixture) -> Vec<Surface> {
    assembly(fixture).surfaces()
}

/// The net area of each face, by sense.
fn faces(surfaces: &[Surface]) -> BTreeMap<String, BTreeMap<&'static str, f64>> {
    let mut faces = BTreeMap::<String, BTreeMap<_, _>>::new();
    for surface in surfaces {
        let face = format!("{}/{}", surface.id.part, surface.id.side.word());
        let sense = surface.id.exposure.key();
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
    assert!(
        fixtures.len() >= 40,
        "only {} fixtures were found",
        fixtures.len()
    );
    let mut wrong = Vec::new();
    let mut worst = (0f64, String::new());
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
                let difference = (net / theirs.exposed - 1.0).abs();
                if difference > worst.0 {
                    worst = (difference, place);
                }
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
    let (worst, place) = worst;
    println!("{compared} faces, the largest difference is {worst:.1e} of a face, {place}");
}

/// What no fixture has is not checked at all.
#[test]
fn every_kind_of_furniture_part_and_answer_is_among_the_pieces() {
    let fixtures = cad_fixtures().unwrap();
    let pieces: Vec<Furniture> = fixtures.iter().filter_map(furniture).collect();
    let mut missing = Vec::new();
    for kind in Kind::ALL {
        if !pieces.iter().any(|piece| piece.kind == kind) {
            missing.push(format!("the kind {}", kind.key()));
        }
    }
    let parts = fixtures.iter().flat_map(|fixture| assembly(fixture).parts);
    let parts: BTreeSet<PartKind> = parts.map(|part| part.id.kind).collect();
    // No builder makes these: they come from what a maker alters.
    let altered = [PartKind::Added, PartKind::Hole];
    for kind in PartKind::ALL.iter().filter(|kind| !altered.contains(kind)) {
        if !parts.contains(kind) {
            missing.push(format!("the part {}", kind.key()));
        }
    }
    for field in styles::ALL {
        let matters = pieces
            .iter()
            .filter(|piece| piece.style_fields().contains(&field));
        let given: BTreeSet<&str> = matters.map(|piece| field.of(&piece.styles).key).collect();
        for option in field.options.iter().filter(|option| !given.contains(option.key)) {
            missing.push(format!("the answer {} {}", field.key, option.key));
        }
    }
    assert!(missing.is_empty(), "no fixture has\n{}", missing.join("\n"));
}

/// The mesh knows no faces, so whole pieces are compared; it has nothing of the kernel in it.
#[test]
fn whole_pieces_agree_with_the_mesh() {
    let mut wrong = Vec::new();
    let mut worst = (0f64, String::new());
    let mut compared = 0;
    for fixture in cad_fixtures().unwrap() {
        let Some(mesh) = fixture.mesh_total else { continue };
        let net: f64 = surfaces(&fixture)
            .iter()
            .map(|surface| surface.net.as_square_metres())
            .sum();
        let difference = (net / mesh - 1.0).abs();
        if difference > MESH {
            wrong.push(format!("{}: {net} against {mesh}", fixture.name));
        }
        if difference > worst.0 {
            worst = (difference, fixture.name);
        }
        compared += 1;
    }
    assert!(compared >= 30, "only {compared} pieces were compared");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let (worst, place) = worst;
    println!("{compared} pieces, the largest difference is {worst:.1e} of a piece, {place}");
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
