//! Developed areas against textbooks: solids of revolution, mouldings, tapers and mitres.
//!
//! Each test names its source and how sure it is: *read* in the source, *calculated* by hand from a formula that
//! was read or from a definition, or *from memory*. Lengths are millimetres where a piece is built, and without a
//! unit in examples of calculus. Old rules of thumb for girths (twice the area of a panelled door and the like) are
//! not used and not compared.

#![allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    reason = "a test may stop where its input is broken, and need not agree to the last digit on every target"
)]

use std::f64::consts::{FRAC_PI_2, PI};

use geometry::{
    Added, AddedShape, Alteration, Assembly, Furniture, Kind, Part, PartId, PartKind, Point3, Profile, Shape,
    Surface, Turning, fields, styles,
};
use units::{Area, Length};

/// What the arithmetic may lose.
const EXACT: f64 = 1e-12;

#[track_caller]
fn assert_near(ours: f64, theirs: f64, tolerance: f64) {
    assert!(
        (ours - theirs).abs() <= tolerance,
        "{ours} is not {theirs} to {tolerance}"
    );
}

fn mm(length: f64) -> Length {
    Length::millimetres(length)
}

fn square_mm(area: Area) -> f64 {
    area.as_square_metres() * 1e6
}

/// The area all around a turned part.
fn around(turning: &Turning) -> f64 {
    let part = turning.part(PartId::nth(PartKind::Leg, 1), Point3::origin());
    named(&[part], "leg-1/around")
}

/// The developed area of a surface that nothing touches, in the unit of the part squared.
fn named(parts: &[Part], name: &str) -> f64 {
    let surfaces = Assembly::new(parts.to_vec(), vec![]).surfaces();
    let surface = surfaces.iter().find(|surface| surface.id.to_string() == name);
    surface.unwrap().gross.as_square_metres()
}

/// The line through the points (x, y) of a curve as radius y at height x, from the last point to the first.
fn revolved(points: impl DoubleEndedIterator<Item = [f64; 2]>) -> f64 {
    let mut points = points.rev();
    let [x, y] = points.next().unwrap();
    around(&points.fold(Turning::from(y, x), |line, [x, y]| line.line_to(y, x)))
}

/// The curve y(x) over a span of x, divided into many straight pieces.
fn curve(from: f64, to: f64, y: impl Fn(f64) -> f64) -> f64 {
    const PIECES: usize = 400;
    let x = |n: usize| from + (to - from) * n as f64 / PIECES as f64;
    revolved((0..=PIECES).map(|n| [x(n), y(x(n))]))
}

fn furniture(kind: Kind, chosen: &[(&str, &str)], measured: &[(&str, f64)]) -> Furniture {
    let mut piece = Furniture::usual(kind);
    for (key, option) in chosen {
        assert!(styles::by_key(key).unwrap().choose(&mut piece.styles, option));
    }
    for (key, length) in measured {
        piece.measures.set(fields::by_key(key).unwrap(), mm(*length));
    }
    piece
}

/// The gross areas, in square millimetres, of the surfaces of a piece whose names begin and end like this.
fn areas(piece: &Furniture, begins: &str, ends: &str) -> Vec<f64> {
    let surfaces = piece.assembly().unwrap().surfaces();
    let is_meant = |surface: &&Surface| {
        let name = surface.id.to_string();
        name.starts_with(begins) && name.contains(ends)
    };
    surfaces
        .iter()
        .filter(is_meant)
        .map(|surface| square_mm(surface.gross))
        .collect()
}

/// The gross area, in square millimetres, of a face of a part that is added beside a table.
fn added(added: Added, face: &str) -> f64 {
    let mut piece = Furniture::usual(Kind::SideTable);
    piece.changes = vec![Alteration::Add(added)];
    areas(&piece, "added-1/", face).iter().sum()
}

fn with(shape: AddedShape, measured: &[(&str, f64)]) -> Added {
    let mut added = Added::usual(1, shape);
    for (key, length) in measured {
        added.measures.set(fields::by_key(key).unwrap(), mm(*length));
    }
    added
}

/// The girth, in millimetres, of a moulding of one member.
fn girth(shape: Shape, out: f64, up: f64) -> f64 {
    let member = (shape, mm(out), mm(up));
    let moulding = Added {
        members: vec![member],
        ..with(AddedShape::Moulding, &[("part-length", 1000.0)])
    };
    added(moulding, "moulded") / 1000.0
}

/// Frustum of a cone. The formula, 2 pi times mean radius times slant, was read in Mathematics LibreTexts, Integral
/// Calculus 1.5; the area for radii 25 and 15 and height 150 is calculated from it.
#[test]
fn frustum_of_a_cone() {
    let leg = with(
        AddedShape::Turned,
        &[
            ("part-height", 150.0),
            ("part-diameter", 50.0),
            ("part-foot", 30.0),
        ],
    );
    assert_near(added(leg, "around"), 18_891.397, 1e-3);
}

/// Frusta of school books, read at esaral.com: diameters 32 and 20, slant 10 (so 8 high), 260 pi; 9 high, diameters
/// 28 and 4, 240 pi.
#[test]
fn frusta_of_school_books() {
    assert_near(
        around(&Turning::from(16.0, 8.0).line_to(10.0, 0.0)),
        260.0 * PI,
        1e-9,
    );
    assert_near(
        around(&Turning::from(2.0, 9.0).line_to(14.0, 0.0)),
        240.0 * PI,
        1e-9,
    );
}

/// A whole cone, y = x / 2 up to x = 4: 4 pi sqrt 5, read as the answer of exercise 6.4.9 of Thomas' Calculus, 13th
/// edition (gradesaver.com).
#[test]
fn cone() {
    assert_near(
        revolved([[0.0, 0.0], [4.0, 2.0]].into_iter()),
        4.0 * PI * 5f64.sqrt(),
        1e-12,
    );
}

/// y = x^2 from 2 to 3: 208.09, read in Mathematics LibreTexts, Integral Calculus 1.5, example 1.
#[test]
fn parabola() {
    assert_near(curve(2.0, 3.0, |x| x * x), 208.09, 0.005);
}

/// y = x^3 from 0 to 1: pi / 27 (10^(3/2) - 1) = 3.563, read in the ThinkQuest library (3616, "Area of Surface of
/// Revolution Example").
#[test]
fn cubic() {
    let area = curve(0.0, 1.0, |x| x * x * x);
    assert_near(area, 3.563, 0.0005);
    assert_near(area, PI / 27.0 * (10.0 * 10f64.sqrt() - 1.0), 1e-4);
}

/// y = sqrt x: pi / 6 (5^(3/2) - 1) = 5.33041 from 0 to 1 and pi / 6 (17^(3/2) - 5^(3/2)) = 30.84649 from 1 to 4,
/// calculated from the integral; pi / 6 (27 - 5^(3/2)) from 1 to 2, read at socratic.org; 30.85 from 1 to 4, read at
/// gauthmath.com.
#[test]
fn square_root() {
    // In even steps of y, since the curve stands upright where it begins.
    let root = |from: f64, to: f64| {
        let y = |n: usize| from.sqrt() + (to.sqrt() - from.sqrt()) * n as f64 / 400.0;
        revolved((0..=400).map(move |n| [y(n) * y(n), y(n)]))
    };
    assert_near(root(0.0, 1.0), 5.33041, 2e-5);
    assert_near(root(1.0, 2.0), PI / 6.0 * (27.0 - 5.0 * 5f64.sqrt()), 2e-5);
    assert_near(root(1.0, 4.0), 30.84649, 5e-5);
    assert_near(root(1.0, 4.0), 30.85, 0.005);
}

/// y = 4 + 3 x^2 from 1 to 2 about the y axis: 88.4864, read in Paul's Online Notes, Calculus II 8.2, problem 4.
#[test]
fn bowl() {
    let x = |n: usize| 1.0 + n as f64 / 400.0;
    let area = revolved((0..=400).map(|n| [4.0 + 3.0 * x(n) * x(n), x(n)]));
    assert_near(area, 88.4864, 0.00005);
}

/// Zone of a sphere, 2 pi R h: 24 pi for x^2 + y^2 = 9 between -2 and 2, and 4 pi R^2 for the whole, read at
/// cdquestions.com and in the table of Pappus' theorem at edurev.in (after Kern and Bland 1948).
#[test]
fn zone_of_a_sphere() {
    let rim = libm::asin(2.0 / 3.0);
    let zone = Turning::from(5f64.sqrt(), 2.0).arc([0.0, 0.0], 3.0, rim, -rim);
    assert_near(around(&zone), 24.0 * PI, 1e-9);
    let sphere = Turning::from(0.0, 3.0).arc([0.0, 0.0], 3.0, FRAC_PI_2, -FRAC_PI_2);
    assert_near(around(&sphere), 36.0 * PI, 1e-9);
}

/// Four bun feet, each the zone of a ball of 80 mm, 60 mm high; calculated from 2 pi R h.
#[test]
fn bun_feet() {
    let base = [("base", "bun-feet")];
    let dresser = furniture(Kind::Dresser, &base, &[("leg-width", 80.0), ("leg-height", 60.0)]);
    let feet = areas(&dresser, "leg-", "/around");
    assert_eq!(feet.len(), 4);
    for foot in feet {
        assert_near(foot, PI * 80.0 * 60.0, 1e-6);
    }
}

/// Torus, 4 pi^2 R r: 8 pi^2 for radii 2 and 1, read in a lecture at Rutgers (S. Ferry, "torus"), with the formula
/// also in Math24; 78.95684.
#[test]
fn torus() {
    let outer = Turning::from(2.0, 1.0).arc([2.0, 0.0], 1.0, FRAC_PI_2, -FRAC_PI_2);
    let whole = outer.arc([2.0, 0.0], 1.0, -FRAC_PI_2, -3.0 * FRAC_PI_2);
    assert_near(around(&whole), 8.0 * PI * PI, 1e-9);
    assert_near(around(&whole), 78.95684, 5e-6);
}

/// A bead of radius 5 on a cylinder of radius 20. Pappus' theorem was read in Math24 and the CRC Concise Encyclopedia
/// of Mathematics, the centroid of half a circle, 2 r / pi, is from memory; calculated: 2288.080.
#[test]
fn turned_bead() {
    let bead = Turning::from(20.0, 5.0).arc([20.0, 0.0], 5.0, FRAC_PI_2, -FRAC_PI_2);
    assert_near(around(&bead), PI * 5.0 * 2.0 * PI * (20.0 + 2.0 * 5.0 / PI), 1e-9);
    assert_near(around(&bead), 2_288.080, 1e-3);
}

/// A turned leg as it stands in `tests/cad/CONSTRUCTION.md`, member by member: cylinder, two rings, a bead by Pappus
/// and a cone; calculated.
#[test]
fn turned_leg() {
    let (head, foot, high) = (25.0, 10.0, 150.0);
    let legs = [
        ("leg-width", 2.0 * head),
        ("leg-foot", 2.0 * foot),
        ("leg-height", high),
    ];
    let piece = furniture(Kind::Nightstand, &[("base", "turned-legs")], &legs);
    let (neck, bead) = (0.6 * head, 0.2 * head);
    let cylinder = 2.0 * PI * head * head / 2.0;
    let rings = 2.0 * PI * (head * head - neck * neck);
    let beads = PI * bead * 2.0 * PI * (neck + 2.0 * bead / PI);
    let cone_height = high - head / 2.0 - 2.0 * bead;
    let cone = PI * (head + foot) * cone_height.hypot(head - foot);
    let around = areas(&piece, "leg-", "/around");
    assert_eq!(around.len(), 4);
    for leg in around {
        assert_near(leg, cylinder + rings + beads + cone, 1e-6);
    }
}

/// A square leg tapered evenly from 40 to 25 on a height of 150: four trapezoids, calculated: 19524.36. The same on a
/// table, where it stands below its head.
#[test]
fn square_taper() {
    let leg = with(
        AddedShape::Tapered,
        &[("part-height", 150.0), ("part-width", 40.0), ("part-foot", 25.0)],
    );
    let sides: f64 = ["front", "back", "left", "right"]
        .map(|side| added(leg.clone(), side))
        .iter()
        .sum();
    assert_near(sides, 4.0 * 32.5 * 150f64.hypot(7.5), 1e-6);
    assert_near(sides, 19_524.36, 0.01);

    let table = [
        ("height", 275.0),
        ("top-thickness", 25.0),
        ("apron-height", 100.0),
    ];
    let legs = [("leg-width", 40.0), ("leg-foot", 25.0)];
    let table = furniture(
        Kind::SideTable,
        &[("legs", "tapered")],
        &[&table[..], &legs].concat(),
    );
    let sides =
        ["front", "back", "left", "right"].map(|side| areas(&table, "leg-1/", side).iter().sum::<f64>());
    assert_near(sides.iter().sum(), 19_524.36, 0.01);
}

/// Quarter round, r = 19.05 (three quarters of an inch): developed length pi r / 2, 29.924; calculated from the
/// circumference of a circle.
#[test]
fn quarter_round() {
    for shape in [Shape::Roundover, Shape::Cove] {
        assert_near(girth(shape, 19.05, 19.05), 29.924, 5e-4);
        assert_near(Profile::standard(shape, 1.0, 1.0).girth(), FRAC_PI_2, EXACT);
    }
}

/// Ogee of two quarter arcs of radius r: pi r, against its chord, 2 sqrt 2 r; calculated.
#[test]
fn ogee() {
    for shape in [Shape::Ogee, Shape::ReversedOgee] {
        assert_near(girth(shape, 20.0, 20.0), 10.0 * PI, 1e-8);
        let [inward, up] = Profile::standard(shape, 20.0, 20.0).size();
        assert_near(inward.hypot(up), 2.0 * 2f64.sqrt() * 10.0, EXACT * 10.0);
    }
}

/// Half-round bead of radius r: pi r, against 2 r flat; calculated from the circumference of a circle.
#[test]
fn half_round_bead() {
    let bead = with(
        AddedShape::HalfColumn,
        &[("part-height", 1000.0), ("part-diameter", 20.0)],
    );
    assert_near(added(bead, "around") / 1000.0, 10.0 * PI, 1e-8);
    assert_near(
        Profile::standard(Shape::HalfRound, 10.0, 20.0).multiplier(),
        FRAC_PI_2,
        EXACT,
    );
}

/// A half-round bead mitred to a rectangle on each drawer front: girth times the line through its middle, by the
/// symmetry of its section; calculated.
#[test]
fn mitred_rectangle_of_half_rounds() {
    let (inset, wide) = (30.0, 20.0);
    let measured = [
        ("applied-inset", inset),
        ("applied-width", wide),
        ("applied-height", wide / 2.0),
    ];
    let piece = furniture(Kind::Dresser, &[("applied", "half-round")], &measured);
    let parts = piece.assembly().unwrap().parts;
    let front = parts
        .iter()
        .find(|part| part.id.to_string() == "drawer-front-1-1")
        .unwrap();
    let (low, high) = front.bounds();
    let [across, up] = [0, 2].map(|axis| (high[axis] - low[axis]) * 1e3 - 2.0 * inset - wide);
    let runs = ["left", "right", "top", "bottom"].map(|side| {
        areas(&piece, &format!("applied-{side}-1-1/"), "moulded")
            .iter()
            .sum::<f64>()
    });
    assert_near(runs.iter().sum(), PI * wide / 2.0 * 2.0 * (across + up), 1e-6);
}

/// A crown mitred around three sides: girth times W + 2 D, and, as it grows outwards, four times the first moment of
/// the profile, the integral of how far it stands out along its curve. Calculated: of a slope, and of an ogee by
/// symmetry, that is half the projection times the girth; of a hollow quarter circle, from the centroid of its arc,
/// 2 r / pi from either radius (from memory, checked by the half sphere), r (1 - 2 / pi) times its girth.
#[test]
fn mitred_crown() {
    let (wide, deep, size) = (900.0, 400.0, 40.0);
    let quarter = FRAC_PI_2 * size;
    let cases = [
        ("chamfer", size * 2f64.sqrt(), size / 2.0),
        ("ogee", quarter, size / 2.0),
        ("reversed-ogee", quarter, size / 2.0),
        ("cove", quarter, size * (1.0 - 2.0 / PI)),
        ("roundover", quarter, size * 2.0 / PI),
    ];
    for (shape, girth, stands_out) in cases {
        let measured = [
            ("width", wide),
            ("depth", deep),
            ("crown-projection", size),
            ("crown-height", size),
        ];
        let piece = furniture(Kind::Bookcase, &[("crown", shape)], &measured);
        let runs = areas(&piece, "crown-", "/moulded");
        assert_eq!(runs.len(), 3, "{shape}");
        let expected = girth * (wide + 2.0 * deep + 4.0 * stands_out);
        assert_near(runs.iter().sum(), expected, 1e-5);
    }
}

/// The bevels around a raised field: four trapezoids as wide as the slope of bevel and raise, so the slope times the
/// line around its middle; calculated (Pythagoras).
#[test]
fn bevels_of_a_raised_panel() {
    let measured = [
        ("panel-bevel", 40.0),
        ("panel-raise", 9.0),
        ("panel-recess", 10.0),
    ];
    let piece = furniture(Kind::Wardrobe, &[("doors", "raised-panel")], &measured);
    let parts = piece.assembly().unwrap().parts;
    let panel = parts
        .iter()
        .find(|part| part.id.to_string() == "door-panel-1-1")
        .unwrap();
    let (low, high) = panel.bounds();
    let [across, up] = [0, 2].map(|axis| (high[axis] - low[axis]) * 1e3 - 40.0);
    let bevels = areas(&piece, "door-panel-1-1/", "bevel-");
    assert_eq!(bevels.len(), 4);
    assert_near(bevels.iter().sum(), 41.0 * 2.0 * (across + up), 1e-6);
}

/// A top whose edge was measured by a strip of paper, from the flat of the top to the underside: pressed around a
/// quarter round of radius r the strip is the rest of the thickness and pi r / 2 long, and top, edges and underside are
/// those of a round-over that is known by its shape. Calculated, from the circumference of a circle.
#[test]
fn a_measured_quarter_round_is_a_round_over() {
    for kind in [
        Kind::Dresser,
        Kind::SideTable,
        Kind::BlanketBox,
        Kind::PedestalDesk,
    ] {
        for (thick, radius) in [(25.0, 25.0), (25.0, 10.0), (20.0, 3.0)] {
            let size = [("top-thickness", thick), ("edge-width", radius)];
            let worked = [&size[..], &[("edge-height", radius)]].concat();
            let strip = [&size[..], &[("edge-girth", thick - radius + FRAC_PI_2 * radius)]].concat();
            let known = furniture(kind, &[("top-edge", "roundover")], &worked);
            let measured = furniture(kind, &[("top-edge", "measured")], &strip);
            let board = if kind == Kind::BlanketBox { "lid/" } else { "top/" };
            for face in ["top", "bottom", "front", "left", "right", "back"] {
                let sum = |piece: &Furniture| -> f64 {
                    let faces = [format!("{board}{face}"), format!("{board}moulded-{face}")];
                    faces.iter().flat_map(|name| areas(piece, name, "")).sum()
                };
                assert!(sum(&known) > 0.0);
                assert_near(sum(&measured), sum(&known), 1e-4);
            }
        }
    }
}

/// The same top in one formula: a table of a by b with a quarter round of r over its whole thickness all around has, but for
/// its underside, (a - 2 r)(b - 2 r) + pi r / 2 (2 a + 2 b) - 8 r^2 (pi / 2 - 1). Calculated: the arc lies on average
/// r (1 - 2 / pi) within the edge (centroid of a quarter circle, from memory), and each mitre takes so much off a run.
#[test]
fn a_measured_edge_takes_its_share_off_the_flat() {
    let (a, b, r) = (800.0, 500.0, 25.0);
    let measured = [
        ("top-width", a),
        ("top-depth", b),
        ("top-thickness", r),
        ("edge-width", r),
        ("edge-girth", FRAC_PI_2 * r),
    ];
    let piece = furniture(Kind::SideTable, &[("top-edge", "measured")], &measured);
    let sum: f64 = ["top", "front", "left", "right", "back"]
        .map(|face| areas(&piece, &format!("top/{face}"), "").iter().sum::<f64>())
        .iter()
        .sum();
    let edges = FRAC_PI_2 * r * 2.0 * (a + b) - 8.0 * r * r * (FRAC_PI_2 - 1.0);
    assert_near(sum, (a - 2.0 * r) * (b - 2.0 * r) + edges, 1e-4);
}

/// A moulding that is half round: half an ellipse before the wall, so that its section is pi w h / 4. A moulding of bead
/// and cove: a body w / 2 deep, before its lower half a bead of half an ellipse, pi (w / 2) (h / 2) / 4, before its upper
/// half a hollow that leaves 1 - pi / 4 of its block: 3 w h / 4 together. Calculated from the area of an ellipse; the way
/// around a half round as deep as half its height is pi h / 2.
#[test]
fn beads_of_a_moulding_stand_out() {
    let (out, up, long) = (12.0, 24.0, 1000.0);
    let of = |shape| {
        let mut moulding = with(AddedShape::Moulding, &[("part-length", long)]);
        moulding.members = vec![(shape, mm(out), mm(up))];
        moulding
    };
    assert_near(added(of(Shape::HalfRound), "left"), PI * out * up / 4.0, 1e-6);
    assert_near(added(of(Shape::HalfRound), "moulded"), PI * up / 2.0 * long, 1e-6);
    assert_near(added(of(Shape::HalfRound), "back"), up * long, 1e-6);
    assert_near(added(of(Shape::HalfRound), "top"), 0.0, EXACT);
    assert_near(added(of(Shape::BeadAndCove), "left"), 0.75 * out * up, 1e-6);
    assert_near(added(of(Shape::BeadAndCove), "top"), out * long, 1e-6);
    let around = out / 2.0 + PI * up / 4.0 + girth(Shape::Cove, out / 2.0, up / 2.0);
    assert_near(added(of(Shape::BeadAndCove), "moulded"), around * long, 1e-6);
    // A member above a bead begins at the wall again.
    let mut both = of(Shape::HalfRound);
    both.members.push((Shape::Chamfer, mm(30.0), mm(40.0)));
    assert_near(added(both.clone(), "left"), PI * out * up / 4.0 + 600.0, 1e-6);
    assert_near(added(both, "moulded"), (PI * up / 2.0 + 50.0) * long, 1e-6);
}
