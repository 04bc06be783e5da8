//! Properties that hold for every piece, checked on generated ones: laws that need no outside answer.

#![allow(
    clippy::unwrap_used,
    reason = "a test may stop where a generated piece is broken"
)]

mod pieces;

use std::collections::{BTreeMap, BTreeSet};

use geometry::{
    Added, AddedShape, Alteration, Assembly, Bay, CONTACT_GAP, Exposure, FaceShape, FieldId, Fill, Furniture,
    Kind, LengthField, Part, PartId, PartKind, Problem, Row, SMALLEST_AREA, Side, Surface, SurfaceId,
    Vector3, Zone, counts, fields, styles,
};
use nalgebra::{Isometry3, Translation3, UnitQuaternion};
use pieces::{Built, Taken, any_furniture, changed_piece, furniture, piece, told};
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use units::Length;

/// How far two areas may differ: what is dropped as noise, once on either side, and the grid of the polygon
/// boolean.
const SAME_AREA: f64 = 2.0 * SMALLEST_AREA;

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

// --- What is compared ----------------------------------------------------------------------------------------

fn net(surface: &Surface) -> f64 {
    surface.net.as_square_metres()
}

/// The net area of each surface, and how far it may be off: each of its facets has its own noise.
fn nets(surfaces: &[Surface]) -> BTreeMap<SurfaceId, (f64, f64)> {
    let area = |surface: &Surface| (net(surface), SAME_AREA * surface.facets.len() as f64);
    surfaces
        .iter()
        .map(|surface| (surface.id, area(surface)))
        .collect()
}

/// Which parts touch which surfaces.
fn touching(surfaces: &[Surface]) -> BTreeSet<(SurfaceId, PartId)> {
    let of = |surface: &Surface| {
        let id = surface.id;
        let by = surface.deductions.iter().map(move |deduction| (id, deduction.by));
        by.collect::<Vec<_>>()
    };
    surfaces.iter().flat_map(of).collect()
}

fn total(surfaces: &[Surface]) -> f64 {
    surfaces.iter().map(net).sum()
}

fn by_sense(surfaces: &[Surface]) -> BTreeMap<Exposure, (f64, f64)> {
    let mut sums = BTreeMap::new();
    for surface in surfaces {
        let sum: &mut (f64, f64) = sums.entry(surface.id.exposure).or_default();
        *sum = (sum.0 + net(surface), 12.0 * SMALLEST_AREA);
    }
    sums
}

/// Every area of one is `factor` times that of the other. A surface that only one side lists has no area.
fn compare<K: Ord + std::fmt::Debug>(
    before: &BTreeMap<K, (f64, f64)>,
    after: &BTreeMap<K, (f64, f64)>,
    factor: f64,
) -> Result<(), TestCaseError> {
    for key in before.keys().chain(after.keys()) {
        let of = |areas: &BTreeMap<K, (f64, f64)>| areas.get(key).copied().unwrap_or_default();
        let ((a, noise), (b, other_noise)) = (of(before), of(after));
        let tolerance = noise * factor + other_noise;
        prop_assert!(
            (a * factor - b).abs() <= tolerance.max(SAME_AREA),
            "{key:?}: {} became {b}",
            a * factor
        );
    }
    Ok(())
}

fn surface_of_block(low: [f64; 3], high: [f64; 3]) -> f64 {
    let [a, b, c] = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
    2.0 * (a * b + b * c + c * a)
}

/// Whether a part is a plain upright block: it has as much surface as the block around it.
fn is_block(part: &Part) -> bool {
    let area: f64 = part.faces.iter().map(|face| face.area()).sum();
    let (low, high) = part.bounds();
    let is_plain = part
        .faces
        .iter()
        .all(|face| matches!(face.patch, FaceShape::Flat(_)) && face.stretch == 1.0);
    part.faces.len() == 6 && is_plain && (area - surface_of_block(low, high)).abs() < 1e-12
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

// --- Pieces that pass the check --------------------------------------------------------------------------------

/// How many pieces are tried; the environment can ask for more with `PROPTEST_CASES`.
fn cases(cases: u32) -> ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok();
    let cases = asked.and_then(|asked| asked.parse().ok()).unwrap_or(cases);
    ProptestConfig {
        cases,
        max_shrink_iters: 4000,
        max_global_rejects: cases + 1024,
        max_local_rejects: 10 * cases + 65_536,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(cases(800))]

    #[test]
    fn moving_and_turning_changes_no_area(Built { assembly, .. } in piece(), by in isometry()) {
        // For pieces whose faces are worked out from their parts, see `exposure.rs`.
        prop_assume!(!assembly.by_parts);
        let before = nets(&assembly.surfaces());
        compare(&before, &nets(&assembly.moved(&by).surfaces()), 1.0)?;
    }

    /// The short way to the net areas ends where the one with the working does.
    #[test]
    fn net_areas_are_those_of_the_surfaces(Built { assembly, .. } in piece()) {
        let surfaces = assembly.surfaces();
        let nets = assembly.net_areas();
        prop_assert_eq!(nets.len(), surfaces.len());
        for (surface, (id, area)) in surfaces.iter().zip(nets) {
            prop_assert_eq!(surface.id, id);
            let gross = surface.gross.as_square_metres();
            prop_assert!((net(surface) - area.as_square_metres()).abs() <= 1e-12 * gross, "{}", id);
        }
    }

    /// Some sizes are the same whatever the size of the case, such as the depth of a rail and the room around a drawer
    /// box, so only what is seen from outside scales, but for what is seen of the top of a rail. What counts as touching is a fixed gap too, so the piece grows
    /// by little.
    #[test]
    fn areas_scale_with_the_square(Built { furniture, assembly } in piece(), k in 1.01..1.1f64) {
        // Gaps that are closed and slits that open nothing have fixed widths, and so does the air before the wall.
        prop_assume!(!assembly.by_parts);
        let mut scaled = furniture.clone();
        for field in fields::ALL {
            scaled.measures.set(field, furniture.length(field) * k);
        }
        for bay in scaled.bays.iter_mut().chain(&mut scaled.upper) {
            bay.width = bay.width.map(|width| width * k);
            for row in &mut bay.rows {
                row.height = row.height.map(|height| height * k);
            }
        }
        let Ok(scaled) = scaled.assembly() else { return Err(TestCaseError::reject("out of the limits")) };
        let outside = |assembly: &Assembly| {
            let mut surfaces = assembly.surfaces();
            surfaces.retain(|surface| surface.id.exposure == Exposure::Outside && surface.usual_zone(styles::Stand::Wall) != Zone::Inside);
            // A sliver of the top of a rail is seen under a deeply worked edge; it is as deep as the rail.
            let is_rail = |part: PartId| matches!(part.kind, PartKind::TopRail | PartKind::Rail);
            surfaces.retain(|surface| !(is_rail(surface.id.part) && matches!(surface.id.side, Side::Top | Side::Bottom)));
            surfaces
        };
        let (before, after) = (outside(&assembly), outside(&scaled));
        // Parts that nearly touch may touch before and not after, and a face near the boundary of a space may look into
        // it before and not after.
        let ids = |surfaces: &[Surface]| surfaces.iter().map(|surface| surface.id).collect::<BTreeSet<_>>();
        prop_assume!(touching(&before) == touching(&after) && ids(&before) == ids(&after));
        compare(&nets(&before), &nets(&after), k * k)?;
    }

    #[test]
    fn the_order_of_the_parts_does_not_matter(
        Built { assembly, .. } in piece(), keys in prop::collection::vec(any::<u32>(), 60),
    ) {
        let before = nets(&assembly.surfaces());
        let mut keyed: Vec<(u32, Part)> = keys.into_iter().cycle().zip(assembly.parts.clone()).collect();
        keyed.sort_by_key(|(key, _)| *key);
        let parts = keyed.into_iter().map(|(_, part)| part).collect();
        compare(&before, &nets(&Assembly { parts, ..assembly }.surfaces()), 1.0)?;
    }

    #[test]
    fn a_part_far_away_adds_its_own_surface_and_changes_no_other(
        Built { assembly: mut both, .. } in piece(),
        size in prop::array::uniform3(0.003..2.0f64),
        at in prop::array::uniform3(5.0..9.0f64),
    ) {
        let before = nets(&both.surfaces());
        let id = PartId::nth(PartKind::Board, 1);
        let (low, high) = (at.map(|v| -v), [size[0] - at[0], size[1] - at[1], size[2] - at[2]]);
        // A part that stood there would move the floor and the wall of the piece.
        both.parts.push(Part {
            is_loose: true,
            ..Part::block(id, low, high)
        });
        let (far, rest): (Vec<Surface>, Vec<Surface>) =
            both.surfaces().into_iter().partition(|surface| surface.id.part == id);
        compare(&before, &nets(&rest), 1.0)?;
        prop_assert!((total(&far) - surface_of_block(low, high)).abs() < 1e-9);
        prop_assert!(far.iter().all(|surface| surface.deductions.is_empty()));
    }

    #[test]
    fn splitting_a_board_leaves_what_is_seen_alone(
        Built { assembly: mut split, .. } in piece(), which in any::<Index>(), axis in 0usize..3, share in 0.2..0.8f64,
    ) {
        // Where what faces look at is worked out from the parts, a bit of a face goes with the larger part of it: a cut
        // changes what that is.
        prop_assume!(!split.by_parts);
        let before = by_sense(&split.surfaces());
        let boards: Vec<usize> = (0..split.parts.len()).filter(|&i| is_block(&split.parts[i])).collect();
        // A picture frame has none.
        if boards.is_empty() {
            return Ok(());
        }
        let part = split.parts.swap_remove(*which.get(&boards));
        let (low, high) = part.bounds();
        let cut = low[axis] + share * (high[axis] - low[axis]);
        // A half that is thinner than a contact would let what lies behind it through.
        prop_assume!((high[axis] - low[axis]) * 0.2 > 2.0 * CONTACT_GAP);
        let (mut middle_high, mut middle_low) = (high, low);
        middle_high[axis] = cut;
        middle_low[axis] = cut;
        split.parts.push(Part::block(PartId::nth(PartKind::Board, 1), low, middle_high));
        split.parts.push(Part::block(PartId::nth(PartKind::Board, 2), middle_low, high));
        compare(&before, &by_sense(&split.surfaces()), 1.0)?;
    }

    /// A choice that a maker made for a part or a surface stays with it when the piece is measured again.
    #[test]
    fn names_stay_when_a_piece_is_measured_again(
        Built { furniture, assembly } in piece(), times in prop::collection::vec(0.9..1.1f64, fields::ALL.len()),
    ) {
        let mut again = furniture.clone();
        for (field, times) in furniture.fields().into_iter().zip(times) {
            again.measures.set(field, (furniture.length(field) * times).max(field.min).min(field.max));
        }
        let Ok(again) = again.assembly() else { return Err(TestCaseError::reject("out of the limits")) };
        let parts = |assembly: &Assembly| assembly.parts.iter().map(|part| part.id).collect::<Vec<_>>();
        prop_assert_eq!(parts(&assembly), parts(&again));
        for (part, again) in assembly.parts.iter().zip(&again.parts) {
            let sides = |part: &Part| part.faces.iter().map(|face| face.side).collect::<BTreeSet<_>>();
            let (sides, again) = (sides(part), sides(again));
            // A profile that reaches over the whole thickness leaves no flat edge below it.
            let is_worked = sides.iter().any(|side| side.word().starts_with("moulded"));
            prop_assert!(sides == again || is_worked, "{}: {sides:?} became {again:?}", part.id);
        }
    }
}

proptest! {
    #![proptest_config(cases(1600))]

    /// Solids that run into each other would be counted, and drawn, wrongly.
    #[test]
    fn the_parts_of_a_piece_are_solid_and_keep_apart(Built { assembly, .. } in piece()) {
        for part in &assembly.parts {
            is_solid(part)?;
        }
        let overlaps = assembly.overlaps();
        let told = overlaps.iter().map(|o| format!("{} and {} by {} mm", o.a, o.b, o.depth.as_millimetres()));
        prop_assert!(overlaps.is_empty(), "{:?}", told.collect::<Vec<_>>());
    }

    #[test]
    fn the_working_of_each_surface_adds_up(built in prop_oneof![piece(), changed_piece()]) {
        let surfaces = built.assembly.surfaces();
        let ids: BTreeSet<SurfaceId> = surfaces.iter().map(|surface| surface.id).collect();
        prop_assert_eq!(ids.len(), surfaces.len(), "two surfaces have one name");
        for surface in &surfaces {
            adds_up(surface)?;
        }
    }
}

/// The faces of a solid close it: their areas as arrows along their normals sum to nothing, and what they enclose is
/// within the block around them. Facets that stand in for a curve close it as well.
fn is_solid(part: &Part) -> Result<(), TestCaseError> {
    let facets = || part.faces.iter().flat_map(|face| face.facets());
    let (low, high) = part.bounds();
    let middle = Vector3::from(std::array::from_fn(|i| (low[i] + high[i]) / 2.0));
    let (mut open, mut volume) = (Vector3::zeros(), 0.0);
    for facet in facets() {
        let area = facet.region.area();
        prop_assert!(area > 0.0, "{} is turned inside out", part.id);
        let normal = facet.plane.normal();
        open += normal * area;
        volume += (facet.plane.origin.coords - middle).dot(&normal) * area / 3.0;
    }
    // Faces smaller than the smallest area are left out, and a hole is cut on the grid of the polygon boolean.
    let tolerance = if is_block(part) { 1e-9 } else { 4.0 * SMALLEST_AREA };
    prop_assert!(
        open.norm() < tolerance,
        "{} is open by {} m²",
        part.id,
        open.norm()
    );
    let around: f64 = (0..3).map(|i| high[i] - low[i]).product();
    prop_assert!(
        0.0 < volume && volume < around + 1e-9,
        "{}: {volume} m³ of {around}",
        part.id
    );
    Ok(())
}

fn adds_up(surface: &Surface) -> Result<(), TestCaseError> {
    let covered: f64 = surface.deductions.iter().map(|d| d.area.as_square_metres()).sum();
    let (gross, net) = (surface.gross.as_square_metres(), net(surface));
    prop_assert!(
        gross.is_finite() && 0.0 <= net && net <= gross,
        "{}: {net} of {gross}",
        surface.id
    );
    let noise = SMALLEST_AREA * (surface.facets.len() + surface.deductions.len()) as f64;
    prop_assert!(
        (gross - covered - net).abs() <= noise,
        "{}: {gross} - {covered} = {net}",
        surface.id
    );
    prop_assert!(surface.deductions.iter().all(|d| d.area.as_square_metres() > 0.0));
    Ok(())
}

// --- Anything at all -------------------------------------------------------------------------------------------

proptest! {
    #![proptest_config(cases(10_000))]

    /// Nothing that can be typed or loaded may stop the page, and a piece that passes the check has sound areas.
    #[test]
    fn any_measurements_give_a_piece_or_problems(Taken(piece) in any_furniture()) {
        match piece.assembly() {
            Ok(assembly) => {
                for surface in &assembly.surfaces() {
                    let (gross, net) = (surface.gross.as_square_metres(), net(surface));
                    prop_assert!(gross.is_finite() && 0.0 <= net && net <= gross, "{}: {net} of {gross}", surface.id);
                }
                prop_assert!(piece.checked().map(|piece| piece.shared_lengths()).is_ok());
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in &problems {
                    sound_problem(&piece, problem)?;
                }
            }
        }
    }
}

/// A problem has a sentence, and what it is about exists.
fn sound_problem(piece: &Furniture, problem: &Problem) -> Result<(), TestCaseError> {
    let message = problem.to_string();
    prop_assert!(message.len() > 15 && message.ends_with('.'), "{message}");
    match problem.field() {
        Some(FieldId::Of(key)) => {
            let field = fields::by_key(key);
            prop_assert!(
                field.is_some_and(|field| message.contains(field.label)),
                "{message}"
            );
            prop_assert!(
                field.is_some_and(|field| piece.fields().contains(&field)),
                "{message}"
            );
        }
        Some(FieldId::RowHeight(place, row)) => {
            let bay = &piece.bays_of(place.upper)[place.bay - 1];
            prop_assert!((1..=bay.rows.len()).contains(&row), "{message}");
        }
        Some(FieldId::BayWidth(place)) => {
            prop_assert!(
                (1..=piece.bays_of(place.upper).len()).contains(&place.bay),
                "{message}"
            );
        }
        Some(FieldId::Alteration { change, key, .. }) => {
            prop_assert!(
                change < piece.changes.len() && fields::by_key(key).is_some(),
                "{message}"
            );
        }
        None => {}
    }
    Ok(())
}

/// The properties above see little if nearly everything that is generated is refused.
#[test]
fn of_every_kind_many_generated_pieces_pass_the_check() {
    let mut runner = TestRunner::deterministic();
    let mut counts: BTreeMap<&str, [u32; 2]> = BTreeMap::new();
    for _ in 0..3000 {
        let piece = furniture().new_tree(&mut runner).unwrap().current();
        let [passed, all] = counts.entry(piece.kind.key()).or_default();
        *all += 1;
        *passed += u32::from(piece.assembly().is_ok());
    }
    assert_eq!(counts.len(), Kind::ALL.len());
    assert!(
        counts.values().all(|[passed, all]| passed * 10 > *all),
        "{counts:?}"
    );
}

// --- What cannot be --------------------------------------------------------------------------------------------

/// A piece of this kind of which one thing is altered.
fn altered(kind: Kind, alter: impl FnOnce(&mut Furniture)) -> Furniture {
    let mut piece = Furniture::usual(kind);
    alter(&mut piece);
    piece
}

fn measured(kind: Kind, field: &'static LengthField, length: Length) -> Furniture {
    altered(kind, |piece| piece.measures.set(field, length))
}

fn styled(kind: Kind, field: &styles::StyleField, option: &str) -> Furniture {
    altered(kind, |piece| assert!(field.choose(&mut piece.styles, option)))
}

/// The only problem of the piece is told in these words.
#[track_caller]
fn refused(piece: &Furniture, message: &str) {
    let problems = piece.assembly().unwrap_err();
    let told: Vec<String> = problems.iter().map(ToString::to_string).collect();
    assert_eq!(told, [message]);
}

#[test]
fn what_is_no_measurement_is_refused_with_its_limit() {
    let width = |length| measured(Kind::Dresser, &fields::WIDTH, length);
    refused(
        &width(mm(0.0)),
        "Width is 0 mm. The minimum is 50 mm. Measure it again.",
    );
    refused(
        &width(mm(-900.0)),
        "Width is -900 mm. The minimum is 50 mm. Measure it again.",
    );
    refused(
        &width(mm(f64::NAN)),
        "Width is NaN mm. The maximum is 3000 mm. Check the unit.",
    );
    refused(
        &width(mm(f64::INFINITY)),
        "Width is inf mm. The maximum is 3000 mm. Check the unit.",
    );
    refused(
        &width(Length::metres(100.0)),
        "Width is 100000 mm. The maximum is 3000 mm. Check the unit.",
    );
    let first_row = altered(Kind::Dresser, |piece| {
        piece.bays[0].rows[0].height = Some(mm(f64::NAN))
    });
    let told = first_row.assembly().unwrap_err()[0].to_string();
    assert!(
        told.starts_with("Height of row 1 is NaN mm. The maximum is "),
        "{told}"
    );
}

#[test]
fn ten_thousand_drawers_are_refused() {
    let row = |columns| Row::of(Fill::Drawers, columns, 0);
    let bays = |bays: Vec<Bay>| altered(Kind::Dresser, |piece| piece.bays = bays);
    refused(
        &bays(vec![Bay::of(vec![row(10_000)])]),
        "Drawers or doors in a row: use 1 to 6, not 10000.",
    );
    refused(
        &bays(vec![Bay::of(vec![row(1); 10_000])]),
        "Column 1: use at most 12 rows, not 10000.",
    );
    refused(
        &bays(vec![Bay::of(vec![row(1)]); 10_000]),
        "Columns: use 1 to 6, not 10000.",
    );
    refused(&bays(vec![]), "Columns: use 1 to 6, not 0.");
    refused(&bays(vec![Bay::of(vec![])]), "Column 1: add a row.");
    refused(
        &altered(Kind::Desk, |piece| piece.counts.set(&counts::DRAWERS, 10_000)),
        "Drawers in the apron: use 0 to 6, not 10000.",
    );
}

#[test]
fn what_does_not_fit_beside_another_is_refused_with_the_room() {
    let mut applied = styled(Kind::Nightstand, &styles::APPLIED, "ogee");
    applied.measures.set(&fields::APPLIED_WIDTH, mm(100.0));
    let told = applied.assembly().unwrap_err()[0].to_string();
    assert!(
        told.starts_with("Molding width is 100 mm; there is room for "),
        "{told}"
    );
    let mut crown = styled(Kind::Nightstand, &styles::CROWN, "cove");
    crown.measures.set(&fields::CROWN_HEIGHT, mm(300.0));
    crown.measures.set(&fields::HEIGHT, mm(450.0));
    let told = crown.assembly().unwrap_err()[0].to_string();
    assert!(told.starts_with("Height is 450 mm. The minimum is "), "{told}");
}

#[test]
fn a_turning_out_of_order_is_refused() {
    let turned = |points: &[(f64, f64)]| {
        let mut added = Added::usual(1, AddedShape::Turned);
        added.turning = points
            .iter()
            .map(|(height, diameter)| (mm(*height), mm(*diameter)))
            .collect();
        altered(Kind::SideTable, |piece| {
            piece.changes = vec![Alteration::Add(added)]
        })
    };
    assert!(
        turned(&[(0.0, 30.0), (200.0, 50.0), (400.0, 40.0)])
            .assembly()
            .is_ok()
    );
    let message = "Change 1: put the points in order, from the bottom up.";
    refused(&turned(&[(0.0, 30.0), (400.0, 40.0), (200.0, 50.0)]), message);
    refused(&turned(&[(0.0, 30.0), (0.0, 40.0)]), message);
    refused(&turned(&[(0.0, 30.0)]), message);
}

// --- Once found by the properties above ------------------------------------------------------------------------

/// The piece is refused, or its parts keep apart.
#[track_caller]
fn sound(piece: &Furniture) {
    if let Ok(assembly) = piece.assembly() {
        let overlaps = assembly.overlaps();
        assert!(overlaps.is_empty(), "{}: {overlaps:?}", told(piece));
        for part in &assembly.parts {
            is_solid(part).unwrap();
        }
    }
}

/// Two corners that only noise keeps apart make a line of any direction, and a region that was clipped by it lost
/// any share of its area.
#[test]
fn a_rail_that_ends_flush_stays_covered_however_it_is_turned() {
    let board = |n, low, high| Part::block(PartId::nth(PartKind::Board, n), low, high);
    let (side, rail) = (
        board(1, [0.0; 3], [0.02, 0.5, 0.8]),
        board(2, [0.02, 0.44, 0.78], [0.2, 0.5, 0.8]),
    );
    let pair = Assembly::new(vec![side, rail], vec![]);
    let before = nets(&pair.surfaces());
    for step in (0..1000).map(f64::from) {
        let by = Isometry3::from_parts(
            Translation3::new(0.01 * step - 5.0, 0.3, 4.0 - 0.007 * step),
            UnitQuaternion::from_euler_angles(0.37 * step, 0.11 * step, 0.23 * step),
        );
        compare(&before, &nets(&pair.clone().moved(&by).surfaces()), 1.0).unwrap();
    }
}

/// A front lower than the rails about it left its drawer no opening, and the rails ran into each other.
#[test]
fn a_front_lower_than_its_rails_is_no_piece() {
    let row = |height: Option<f64>| Row {
        height: height.map(mm),
        ..Row::of(Fill::Drawers, 1, 0)
    };
    sound(&altered(Kind::Dresser, |piece| {
        piece.bays = vec![Bay::of(vec![row(Some(10.0)), row(None)])];
    }));
}

/// The back of a rail that ends within the thickness of an inset front is hidden by the front, and nobody paints it.
#[test]
fn an_inset_front_thicker_than_the_rails_are_deep_shows_no_rail_back() {
    let mut piece = styled(Kind::Nightstand, &styles::FRONTS, "inset");
    assert!(styles::BASE.choose(&mut piece.styles, "floor"));
    piece.measures.set(&fields::DEPTH, mm(90.0));
    piece.measures.set(&fields::FRONT_THICKNESS, mm(30.0));
    let surfaces = piece.assembly().unwrap().surfaces();
    let shown = surfaces.iter().filter(|surface| {
        let rail = matches!(surface.id.part.kind, PartKind::Rail | PartKind::TopRail);
        rail && surface.id.side == Side::Back && surface.id.exposure == Exposure::Outside
    });
    assert_eq!(shown.map(net).sum::<f64>(), 0.0);
}

/// Boards that stand out behind the stiles of a face frame stand in the way of inset fronts and drawer boxes.
#[test]
fn a_board_wider_than_the_stile_before_it_is_no_piece() {
    let mut piece = styled(Kind::Dresser, &styles::FACE_FRAME, "frame");
    piece.measures.set(&fields::STILE, mm(10.0));
    piece.measures.set(&fields::FRAME, mm(5.0));
    refused(
        &piece,
        "Board thickness is 19 mm; there is room for 10 mm. Check it and the frame stile.",
    );
}

/// The foot at the side begins behind the foot in front, which left it nothing on the floor.
#[test]
fn a_bracket_foot_as_wide_as_its_board_is_thick_is_no_piece() {
    let mut piece = styled(Kind::Dresser, &styles::BASE, "bracket-feet");
    piece.measures.set(&fields::FOOT_WIDTH, mm(19.0));
    piece.measures.set(&fields::BOARD, mm(19.0));
    assert!(piece.assembly().is_err());
}

#[test]
fn legs_keep_clear_of_each_other_and_of_what_is_between_them() {
    let mut desk = styled(Kind::PedestalDesk, &styles::BASE, "splayed-legs");
    sound(&desk);
    desk.measures.set(&fields::MODESTY_FOOT, Length::ZERO);
    sound(&desk);
    let mut table = styled(Kind::Desk, &styles::LEGS, "splayed");
    for (field, size) in [
        (&fields::HEIGHT, 50.0),
        (&fields::LEG_FOOT, 5.0),
        (&fields::LEG_SPLAY, 18.0),
        (&fields::LEG_WIDTH, 66.7),
    ] {
        table.measures.set(field, mm(size));
    }
    sound(&table);
    let mut bench = styled(Kind::Bench, &styles::STRETCHERS, "h");
    bench.measures.set(&fields::LEG_WIDTH, mm(66.0));
    bench.measures.set(&fields::TOP_DEPTH, mm(205.0));
    sound(&bench);
    for stretchers in ["box", "h"] {
        let mut desk = styled(Kind::Desk, &styles::LEGS, "square");
        assert!(styles::STRETCHERS.choose(&mut desk.styles, stretchers));
        assert!(styles::LOWER_SHELF.choose(&mut desk.styles, "shelf"));
        assert!(desk.assembly().is_ok());
        desk.measures.set(&fields::STRETCHER_HEIGHT, mm(130.0));
        sound(&desk);
    }
}

/// A rail at the back of a shallow case ran into a deep face frame.
#[test]
fn the_rail_at_the_back_keeps_clear_of_a_deep_face_frame() {
    let mut piece = styled(Kind::Dresser, &styles::FACE_FRAME, "frame");
    assert!(styles::BACK.choose(&mut piece.styles, "none"));
    assert!(styles::BASE.choose(&mut piece.styles, "floor"));
    piece.measures.set(&fields::DEPTH, mm(50.0));
    piece.measures.set(&fields::FRAME_THICKNESS, mm(36.0));
    assert!(piece.assembly().is_ok());
    sound(&piece);
}

/// Flutes that keep apart on the surface of a column still met a little within it.
#[test]
fn flutes_keep_apart_within_the_column() {
    for (count, radius) in [(6, 19.0), (2, 37.0)] {
        let mut added = Added::usual(1, AddedShape::Column);
        added.measures.set(&fields::PART_DIAMETER, mm(75.4));
        added.measures.set(&fields::FLUTE_RADIUS, mm(radius));
        added.flutes = count;
        let piece = altered(Kind::SideTable, |piece| {
            piece.changes = vec![Alteration::Add(added)]
        });
        sound(&piece);
    }
}

/// Members that run along the ground they stand on enclose nothing.
#[test]
fn a_step_is_not_offered_where_it_would_enclose_nothing() {
    for field in [&styles::STICKING, &styles::APPLIED] {
        assert!(
            field.options.iter().all(|option| option.key != "step"),
            "{}",
            field.key
        );
    }
}

// --- What must not jump ---------------------------------------------------------------------------------------

/// What is seen of a piece from the room, with this measurement so long; nothing where that does not fit.
fn seen_with(piece: &Furniture, field: &'static LengthField, metres: f64) -> Option<f64> {
    let mut piece = piece.clone();
    piece.measures.set(field, Length::metres(metres));
    let areas = piece.assembly().ok()?.net_areas().into_iter();
    let seen = areas.filter(|(id, _)| id.exposure == Exposure::Outside);
    Some(seen.map(|(_, area)| area.as_square_metres()).sum())
}

/// Where a board becomes thicker than its neighbor, the area goes on as it did: a sixteenth of an inch is no new surface.
/// The steps are wider than the gap under which parts touch.
#[test]
fn no_area_jumps_where_one_board_becomes_thicker_than_another() {
    const STEP: f64 = 6e-4;
    // The edges of all fronts that go on growing, or grow no more, come to 0.013 m2 in two steps.
    const JUMP: f64 = 0.02;
    let ours = [
        &fields::FRONT_THICKNESS,
        &fields::FRAME_THICKNESS,
        &fields::BOARD,
        &fields::TOP_THICKNESS,
        &fields::APRON_THICKNESS,
    ];
    for kind in [Kind::Dresser, Kind::Nightstand, Kind::Wardrobe, Kind::Console] {
        for frame in styles::FACE_FRAME.options {
            for fronts in styles::FRONTS.options {
                let mut piece = styled(kind, &styles::FACE_FRAME, frame.key);
                if !styles::FRONTS.choose(&mut piece.styles, fronts.key) {
                    continue;
                }
                for (field, other) in ours
                    .iter()
                    .flat_map(|field| ours.iter().map(move |other| (field, other)))
                {
                    let at = piece.length(other).as_metres();
                    let seen = |steps: f64| seen_with(&piece, field, at + steps * STEP);
                    if let (Some(before), Some(under), Some(over)) = (seen(-3.0), seen(-1.0), seen(1.0)) {
                        let jump = (over - under) - (under - before);
                        assert!(
                            jump.abs() < JUMP,
                            "{} {} {}: {jump} m2 at {} {at}",
                            kind.key(),
                            frame.key,
                            fronts.key,
                            field.key
                        );
                    }
                }
            }
        }
    }
}

/// A worked edge as high as the top is thick leaves nothing under it, whatever the rounding of the heights.
#[test]
fn an_edge_of_the_whole_thickness_leaves_no_sheet() {
    let under = |thick: f64, kind: Kind| {
        let mut piece = styled(kind, &styles::TOP_EDGE, "step");
        piece.measures.set(&fields::TOP_THICKNESS, mm(thick));
        piece.measures.set(&fields::EDGE_HEIGHT, mm(thick));
        let surfaces = piece.assembly().unwrap().surfaces();
        let bottoms = surfaces.into_iter().filter(|surface| {
            surface.id.part.kind == PartKind::Top
                && surface.id.side == Side::Bottom
                && surface.id.exposure == Exposure::Outside
        });
        bottoms.map(|surface| net(&surface)).collect::<Vec<_>>()
    };
    for kind in [Kind::Dresser, Kind::Hutch] {
        for thick in [19.0, 19.05, 19.19, 22.225, 25.4] {
            let (one, other) = (under(thick, kind), under(thick + 0.01, kind));
            assert_eq!(one.len(), other.len());
            for (one, other) in one.iter().zip(&other) {
                assert!(
                    (one - other).abs() < 1e-3,
                    "{} {thick}: {one} {other}",
                    kind.key()
                );
            }
        }
    }
}
