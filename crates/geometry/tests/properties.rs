//! Properties that hold for every piece, checked on generated measurements: usual ones, equal ones, nearly equal
//! ones, the limits, and what is no measurement at all.

#![allow(
    clippy::unwrap_used,
    reason = "a test may stop where a generated piece is broken"
)]

use std::collections::BTreeMap;

use geometry::{
    Assembly, BackStyle, BaseStyle, CONTACT_GAP, DrawerRow, Drawing, FrontStyle, Furniture, Kind,
    LengthField, Part, PartId, PartKind, SMALLEST_AREA, Sense, Side, Surface, SurfaceId, View, fields,
};
use nalgebra::{Isometry3, Translation3, UnitQuaternion};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use units::Length;

/// How far two areas may differ: what is dropped as noise, once on either side, and the grid of the polygon
/// boolean.
const SAME_AREA: f64 = 2.0 * SMALLEST_AREA;

// --- Generated pieces ----------------------------------------------------------------------------------------

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// A length between two limits in millimetres, now and then at a limit or at a size that other parts have too.
fn length(low: f64, high: f64) -> BoxedStrategy<f64> {
    let clamp = move |value: f64| value.clamp(low, high);
    prop_oneof![
        4 => low..=high,
        1 => select(vec![low, high]),
        1 => select(vec![19.0, 19.05, 19.0 + 1e-9, 18.0, 25.4]).prop_map(clamp),
    ]
    .boxed()
}

/// The smallest gap of the generated pieces that is no contact, even at half its size.
const OPEN_GAP: f64 = 1.2;

/// Nothing, a gap that still counts as contact, or one that clearly does not.
fn gap(high: f64) -> BoxedStrategy<f64> {
    prop_oneof![2 => Just(0.0), 1 => Just(0.3), 5 => OPEN_GAP..=high].boxed()
}

fn styles() -> impl Strategy<Value = (Kind, FrontStyle, BackStyle, BaseStyle)> {
    (
        select(Kind::ALL.to_vec()),
        select(vec![FrontStyle::Overlay, FrontStyle::Inset]),
        select(vec![BackStyle::Flush, BackStyle::Recessed]),
        select(vec![BaseStyle::Floor, BaseStyle::Plinth, BaseStyle::Legs]),
    )
}

/// Rows of drawers; a height is given as a share of what the row would have if all were alike.
fn rows() -> impl Strategy<Value = Vec<(usize, Option<f64>)>> {
    prop::collection::vec((1usize..=3, prop::option::weighted(0.3, 0.6..1.0f64)), 1..=4)
}

/// Each measurement between limits, in millimetres, that leave room for the others more often than not.
fn measures() -> Vec<BoxedStrategy<(&'static LengthField, f64)>> {
    let lengths = [
        (&fields::WIDTH, length(260.0, 1800.0)),
        (&fields::DEPTH, length(90.0, 600.0)),
        (&fields::HEIGHT, length(320.0, 1500.0)),
        (&fields::BOARD, length(6.0, 30.0)),
        (&fields::TOP_THICKNESS, length(6.0, 45.0)),
        (&fields::OVERHANG_FRONT, length(0.0, 60.0)),
        (&fields::OVERHANG_SIDE, length(0.0, 60.0)),
        (&fields::FRONT_THICKNESS, length(6.0, 30.0)),
        (&fields::GAP, gap(6.0)),
        (&fields::FRAME, gap(6.0)),
        (&fields::BACK_THICKNESS, length(2.0, 20.0)),
        (&fields::BACK_RECESS, length(1.0, 25.0)),
        (&fields::PLINTH_HEIGHT, length(20.0, 160.0)),
        (&fields::PLINTH_SETBACK, length(0.0, 40.0)),
        (&fields::LEG_HEIGHT, length(20.0, 160.0)),
        (&fields::LEG_WIDTH, length(15.0, 60.0)),
        (&fields::LEG_INSET, length(0.0, 30.0)),
    ];
    lengths
        .into_iter()
        .map(|(field, length)| (Just(field), length).boxed())
        .collect()
}

/// Measurements as a maker could take them.
fn furniture() -> impl Strategy<Value = Furniture> {
    (styles(), measures(), rows()).prop_map(|((kind, fronts, back, base), measures, rows)| {
        let mut piece = Furniture {
            rows: vec![],
            fronts,
            back,
            base,
            ..Furniture::usual(kind)
        };
        for (field, value) in measures {
            piece.measures.set(field, mm(value));
        }
        let of = |field| piece.length(field).as_millimetres();
        let taken = of(&fields::TOP_THICKNESS) + of(&fields::LEG_HEIGHT).max(of(&fields::PLINTH_HEIGHT));
        let board = of(&fields::BOARD);
        let alike = (of(&fields::HEIGHT) - taken - 2.0 * board) / rows.len() as f64 - 2.0 * board;
        // The first row shares what is left, so that the heights add up.
        let row = |(i, (columns, share)): (usize, (usize, Option<f64>))| DrawerRow {
            columns,
            height: share.filter(|_| i > 0).map(|share| mm((share * alike).max(10.0))),
        };
        piece.rows = rows.into_iter().enumerate().map(row).collect();
        piece
    })
}

/// Pieces that pass the check of their measurements.
fn piece() -> impl Strategy<Value = Furniture> {
    furniture().prop_filter("measurements that fit", |piece| piece.assembly().is_ok())
}

/// Any number at all for a field, with a leaning to its limits.
fn any_value(field: &'static LengthField) -> BoxedStrategy<f64> {
    let (low, high) = (field.min.as_metres(), field.max.as_metres());
    prop_oneof![
        6 => low..=high,
        2 => select(vec![low, high, low * (1.0 - 1e-15), high * (1.0 + 1e-15), (low + high) / 2.0]),
        1 => select(vec![0.0, -0.0, -0.3, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE]),
        1 => any::<f64>(),
    ]
    .boxed()
}

/// Pieces with a few measurements that are anything at all.
fn any_furniture() -> impl Strategy<Value = Furniture> {
    let height = prop::option::of(any_value(&fields::ROW_HEIGHT));
    let rows = prop_oneof![
        4 => prop::collection::vec((1usize..=6, height.clone()), 1..=4),
        1 => prop::collection::vec((0usize..=8, height), 0..=14),
    ];
    let measures = prop::collection::vec(
        select(fields::ALL.to_vec()).prop_flat_map(|field| (Just(field), any_value(field))),
        0..6,
    );
    (styles(), rows, measures).prop_map(|((kind, fronts, back, base), rows, measures)| {
        let mut piece = Furniture {
            rows: rows
                .into_iter()
                .map(|(columns, height)| DrawerRow {
                    columns,
                    height: height.map(Length::metres),
                })
                .collect(),
            fronts,
            back,
            base,
            ..Furniture::usual(kind)
        };
        for (field, metres) in measures {
            piece.measures.set(field, Length::metres(metres));
        }
        piece
    })
}

// --- What is compared ----------------------------------------------------------------------------------------

fn net(surface: &Surface) -> f64 {
    surface.net.as_square_metres()
}

fn nets(surfaces: &[Surface]) -> BTreeMap<SurfaceId, f64> {
    surfaces
        .iter()
        .map(|surface| (surface.id, net(surface)))
        .collect()
}

fn total(surfaces: &[Surface]) -> f64 {
    surfaces.iter().map(net).sum()
}

fn by_sense(surfaces: &[Surface]) -> BTreeMap<Sense, f64> {
    let mut sums = BTreeMap::new();
    for surface in surfaces {
        *sums.entry(surface.id.sense).or_default() += net(surface);
    }
    sums
}

/// Every area of one is `factor` times that of the other. A surface that only one side lists has no area.
fn compare<K: Ord + std::fmt::Debug>(
    before: &BTreeMap<K, f64>,
    after: &BTreeMap<K, f64>,
    factor: f64,
    tolerance: f64,
) -> Result<(), TestCaseError> {
    for key in before.keys().chain(after.keys()) {
        let [a, b] = [before, after].map(|areas| areas.get(key).copied().unwrap_or(0.0));
        prop_assert!(
            (a * factor - b).abs() <= tolerance,
            "{key:?}: {} became {b}",
            a * factor
        );
    }
    Ok(())
}

/// The lowest and the highest corner of a part.
fn corners(part: &Part) -> ([f64; 3], [f64; 3]) {
    let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
    for face in &part.faces {
        for &corner in face.region.contours().flatten() {
            let point = face.plane.at(corner);
            for axis in 0..3 {
                low[axis] = low[axis].min(point[axis]);
                high[axis] = high[axis].max(point[axis]);
            }
        }
    }
    (low, high)
}

fn surface_of_block(low: [f64; 3], high: [f64; 3]) -> f64 {
    let [a, b, c] = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
    2.0 * (a * b + b * c + c * a)
}

/// A turn about any axis and a move.
fn isometry() -> impl Strategy<Value = Isometry3<f64>> {
    let turn = prop::array::uniform3(-3.2..3.2f64);
    let shift = prop::array::uniform3(-5.0..5.0f64);
    (turn, shift).prop_map(|([roll, pitch, yaw], [x, y, z])| {
        Isometry3::from_parts(
            Translation3::new(x, y, z),
            UnitQuaternion::from_euler_angles(roll, pitch, yaw),
        )
    })
}

// --- The properties ------------------------------------------------------------------------------------------

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn moving_and_turning_changes_no_area(piece in piece(), by in isometry()) {
        let assembly = piece.assembly().unwrap();
        let before = nets(&assembly.surfaces());
        let after = nets(&assembly.moved(&by).surfaces());
        compare(&before, &after, 1.0, SAME_AREA)?;
    }

    /// A rail reaches 60 mm into the case, whatever the size of the case, unless the case is shallow; so the
    /// inside scales only where it is shallow before and after.
    #[test]
    fn areas_scale_with_the_square(furniture in piece(), k in 0.5..2.0f64) {
        // What counts as contact is a fixed gap, whatever the size of the piece.
        let gaps = [&fields::GAP, &fields::FRAME, &fields::LEG_INSET, &fields::PLINTH_SETBACK,
            &fields::OVERHANG_FRONT, &fields::OVERHANG_SIDE];
        for gap in gaps.map(|field| furniture.length(field)) {
            prop_assume!(gap == Length::ZERO || gap >= mm(OPEN_GAP));
        }
        let assembly = furniture.assembly().unwrap();
        let mut scaled = furniture.clone();
        for field in fields::ALL {
            scaled.measures.set(field, furniture.length(field) * k);
        }
        for row in &mut scaled.rows {
            row.height = row.height.map(|height| height * k);
        }
        let Ok(scaled_assembly) = scaled.assembly() else { return Err(TestCaseError::reject("out of the limits")) };
        let is_shallow = |piece: &Furniture| piece.length(&fields::DEPTH) < mm(180.0);
        let shallow = is_shallow(&furniture) && is_shallow(&scaled);
        let scales = |surface: &Surface| shallow || surface.id.sense == Sense::Outside;
        let areas = |assembly: &Assembly| {
            let mut surfaces = assembly.surfaces();
            surfaces.retain(scales);
            nets(&surfaces)
        };
        compare(&areas(&assembly), &areas(&scaled_assembly), k * k, SAME_AREA * (1.0 + k * k))?;
    }

    #[test]
    fn the_order_of_the_parts_does_not_matter(piece in piece(), keys in prop::collection::vec(any::<u32>(), 60)) {
        let assembly = piece.assembly().unwrap();
        let mut keyed: Vec<(u32, Part)> = keys.into_iter().cycle().zip(assembly.parts.iter().cloned()).collect();
        keyed.sort_by_key(|(key, _)| *key);
        let parts = keyed.into_iter().map(|(_, part)| part).collect();
        let other = Assembly { parts, spaces: assembly.spaces.clone() };
        compare(&nets(&assembly.surfaces()), &nets(&other.surfaces()), 1.0, SAME_AREA)?;
    }

    #[test]
    fn a_part_far_away_adds_its_own_surface_and_changes_no_other(
        piece in piece(), size in prop::array::uniform3(0.003..2.0f64), at in prop::array::uniform3(5.0..9.0f64),
    ) {
        let assembly = piece.assembly().unwrap();
        let before = nets(&assembly.surfaces());
        let id = PartId::nth(PartKind::Board, 1);
        let (low, high) = (at.map(|v| -v), [size[0] - at[0], size[1] - at[1], size[2] - at[2]]);
        let mut both = assembly;
        both.parts.push(Part::block(id, low, high));
        let (far, rest): (Vec<Surface>, Vec<Surface>) =
            both.surfaces().into_iter().partition(|surface| surface.id.part == id);
        // The faces are gone through in another order, which may change the last digits.
        compare(&before, &nets(&rest), 1.0, 1e-12)?;
        prop_assert!((total(&far) - surface_of_block(low, high)).abs() < 1e-9);
        prop_assert!(far.iter().all(|surface| surface.deductions.is_empty()));
    }

    #[test]
    fn splitting_a_board_leaves_what_is_seen_alone(
        piece in piece(), which in any::<Index>(), axis in 0usize..3, share in 0.2..0.8f64,
    ) {
        let assembly = piece.assembly().unwrap();
        let before = by_sense(&assembly.surfaces());
        let mut split = assembly;
        let part = split.parts.swap_remove(which.index(split.parts.len()));
        let (low, high) = corners(&part);
        let cut = low[axis] + share * (high[axis] - low[axis]);
        // A half that is thinner than a contact would let what lies behind it through.
        prop_assume!((high[axis] - low[axis]) * 0.2 > 2.0 * CONTACT_GAP);
        let (mut middle_high, mut middle_low) = (high, low);
        middle_high[axis] = cut;
        middle_low[axis] = cut;
        split.parts.push(Part::block(PartId::nth(PartKind::Board, 1), low, middle_high));
        split.parts.push(Part::block(PartId::nth(PartKind::Board, 2), middle_low, high));
        // Up to twelve faces stand where six stood, each with its own noise.
        compare(&before, &by_sense(&split.surfaces()), 1.0, 12.0 * SMALLEST_AREA)?;
    }

    #[test]
    fn the_working_of_each_surface_adds_up(piece in piece()) {
        for surface in piece.assembly().unwrap().surfaces() {
            let covered: f64 = surface.deductions.iter().map(|d| d.area.as_square_metres()).sum();
            let (gross, net) = (surface.gross.as_square_metres(), net(&surface));
            prop_assert!(0.0 <= net && net <= gross, "{}: {net} of {gross}", surface.id);
            prop_assert!((gross - covered - net).abs() <= SMALLEST_AREA, "{}: {gross} - {covered} = {net}", surface.id);
            prop_assert!(surface.deductions.iter().all(|d| d.area.as_square_metres() > 0.0));
        }
    }

    /// Solids that run into each other would be counted, and drawn, wrongly.
    #[test]
    fn the_parts_of_a_piece_are_solid_and_keep_apart(piece in piece()) {
        solid_and_apart(&piece.assembly().unwrap())?;
    }

    #[test]
    fn what_is_seen_from_each_side_fills_the_outline(piece in piece(), turn in -1.2..1.2f64, tilt in 0.0..1.2f64) {
        let surfaces = piece.assembly().unwrap().surfaces();
        for view in [View::Front, View::Side, View::Top, View::Turned { turn, tilt }] {
            let drawing = Drawing::of(&surfaces, view);
            let seen: f64 = drawing.faces.iter().map(|face| face.region.area()).sum();
            let outline = drawing.outline.area();
            // Slivers below the smallest area are not drawn, one for each face at most.
            let tolerance = surfaces.len() as f64 * SMALLEST_AREA;
            prop_assert!((seen - outline).abs() <= tolerance, "{view:?}: {seen} in an outline of {outline}");
        }
    }
}

fn solid_and_apart(assembly: &Assembly) -> Result<(), TestCaseError> {
    for (i, part) in assembly.parts.iter().enumerate() {
        for face in &part.faces {
            prop_assert!(
                face.region.area() > 0.0,
                "{}/{} is turned inside out: {}",
                part.id,
                face.side.word(),
                face.region.area()
            );
        }
        let (low, high) = corners(part);
        for other in &assembly.parts[..i] {
            let (other_low, other_high) = corners(other);
            let deep = (0..3).map(|axis| high[axis].min(other_high[axis]) - low[axis].max(other_low[axis]));
            let least = deep.fold(f64::INFINITY, f64::min);
            prop_assert!(least < 1e-9, "{} runs {least} m into {}", part.id, other.id);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    /// Nothing that can be typed or loaded may stop the page; what passes the check has sound areas.
    #[test]
    fn any_measurements_give_a_piece_or_problems(piece in any_furniture()) {
        match piece.assembly() {
            Ok(assembly) => {
                let surfaces = assembly.surfaces();
                for surface in &surfaces {
                    let (gross, net) = (surface.gross.as_square_metres(), net(surface));
                    prop_assert!(gross.is_finite() && 0.0 <= net && net <= gross, "{}: {net} of {gross}", surface.id);
                }
                let drawing = Drawing::of(&surfaces, View::Front);
                prop_assert!(drawing.outline.area().is_finite());
                prop_assert!(piece.dimensions(View::Front).is_ok() && piece.row_heights().is_ok());
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                prop_assert!(piece.dimensions(View::Front).is_err() && piece.row_heights().is_err());
                for problem in problems {
                    prop_assert!(!problem.to_string().is_empty());
                }
            }
        }
    }

    /// The check lets nothing through whose parts run into each other.
    #[test]
    fn any_measurements_that_pass_the_check_give_solids_that_keep_apart(piece in any_furniture()) {
        if let Ok(assembly) = piece.assembly() {
            solid_and_apart(&assembly)?;
        }
    }
}

/// Found by the property above: two corners that only noise keeps apart make a line of any direction, and a region
/// that was clipped by it lost any share of its area.
#[test]
fn a_rail_that_ends_flush_stays_covered_however_it_is_turned() {
    let board = |n, low, high| Part::block(PartId::nth(PartKind::Board, n), low, high);
    let (side, rail) = (
        board(1, [0.0; 3], [0.02, 0.5, 0.8]),
        board(2, [0.02, 0.44, 0.78], [0.2, 0.5, 0.8]),
    );
    let pair = Assembly {
        parts: vec![side, rail],
        spaces: vec![],
    };
    let before = nets(&pair.surfaces());
    for step in (0..1000).map(f64::from) {
        let by = Isometry3::from_parts(
            Translation3::new(0.01 * step - 5.0, 0.3, 4.0 - 0.007 * step),
            UnitQuaternion::from_euler_angles(0.37 * step, 0.11 * step, 0.23 * step),
        );
        compare(
            &before,
            &nets(&pair.clone().moved(&by).surfaces()),
            1.0,
            SAME_AREA,
        )
        .unwrap();
    }
}

/// Found by the properties above: a front lower than the rails about it left its drawer no opening, and the rails
/// ran into each other. Such a piece must be refused or its parts must keep apart.
#[test]
fn a_front_lower_than_its_rails_is_no_piece() {
    let row = |height: Option<f64>| DrawerRow {
        columns: 1,
        height: height.map(mm),
    };
    let piece = Furniture {
        rows: vec![row(Some(10.0)), row(None)],
        ..Furniture::usual(Kind::Dresser)
    };
    if let Ok(assembly) = piece.assembly() {
        solid_and_apart(&assembly).unwrap();
    }
}

/// Found by the properties above: the back of a rail that ends within the thickness of an inset front is hidden by
/// the front, and nobody paints it.
#[test]
fn an_inset_front_thicker_than_the_rails_are_deep_shows_no_rail_back() {
    let mut piece = Furniture {
        fronts: FrontStyle::Inset,
        base: BaseStyle::Floor,
        ..Furniture::usual(Kind::Nightstand)
    };
    piece.measures.set(&fields::DEPTH, mm(90.0));
    piece.measures.set(&fields::FRONT_THICKNESS, mm(30.0));
    let surfaces = piece.assembly().unwrap().surfaces();
    let shown = surfaces.iter().filter(|surface| {
        let rail = matches!(surface.id.part.kind, PartKind::Rail | PartKind::TopRail);
        rail && surface.id.side == Side::Back && surface.id.sense == Sense::Outside
    });
    assert_eq!(shown.map(net).sum::<f64>(), 0.0);
}
