//! Exposure worked out from the parts of an altered piece. For a piece as it was measured, the spaces that come with it
//! give the same.

#![allow(
    clippy::unwrap_used,
    reason = "a test may stop where a generated piece is broken"
)]

#[allow(dead_code, reason = "other tests use the rest")]
mod pieces;

use std::collections::BTreeMap;

use geometry::{
    Added, AddedShape, Along, Alteration, Assembly, Exposure, Furniture, Kind, Part, PartKind, Side,
    SurfaceId, Towards, fields, styles,
};
use pieces::{Built, piece};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use units::Length;

fn nets(piece: &Assembly) -> BTreeMap<SurfaceId, f64> {
    let nets = piece.net_areas().into_iter();
    nets.map(|(id, area)| (id, area.as_square_metres())).collect()
}

/// Where the two differ by more than `noise`, square meters, among the surfaces that count.
fn differences(piece: &Assembly, noise: f64, counts: impl Fn(&SurfaceId) -> bool) -> Vec<String> {
    let by_spaces = nets(piece);
    let by_parts = nets(&Assembly {
        by_parts: true,
        ..piece.clone()
    });
    let ids = by_spaces.keys().chain(by_parts.keys());
    let mut ids: Vec<_> = ids.filter(|id| counts(id)).collect();
    ids.sort_unstable();
    ids.dedup();
    let of = |areas: &BTreeMap<SurfaceId, f64>, id: &SurfaceId| areas.get(id).copied().unwrap_or(0.0);
    let differs = |id: &&&SurfaceId| (of(&by_spaces, id) - of(&by_parts, id)).abs() > noise;
    let told = ids.iter().filter(differs).map(|id| {
        let [a, b] = [of(&by_spaces, id) * 1e4, of(&by_parts, id) * 1e4];
        format!("{id}: {a:.1} by spaces, {b:.1} cm2 by parts")
    });
    told.collect()
}

#[test]
fn spaces_and_parts_agree_on_every_kind_in_every_style() {
    let mut found = Vec::new();
    for kind in Kind::ALL {
        let usual = Furniture::usual(kind);
        let mut pieces = vec![("usual", usual.clone())];
        for field in usual.style_fields() {
            for option in field.options {
                let mut piece = usual.clone();
                field.choose(&mut piece.styles, option.key);
                pieces.push((option.key, piece));
            }
        }
        for (name, piece) in pieces {
            for difference in differences(&piece.assembly().unwrap(), 1e-6, |_| true) {
                found.push(format!("{} {name} {difference}", kind.key()));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// The spaces let the inside begin behind a frame, also where it is thinner than the fronts in it.
fn fronts_reach_behind_frame(piece: &Furniture) -> bool {
    piece.length(&fields::FRAME_THICKNESS) < piece.length(&fields::FRONT_THICKNESS)
}

/// Through wide gaps around fronts one sees the inside, which the spaces do not know. They take what is behind a glazed door
/// as seen, also where its rails hide a shelf.
fn shows_the_inside(piece: &Furniture) -> bool {
    let is_glazed = styles::DOORS.of(&piece.styles).key == "glazed";
    is_glazed || piece.length(&fields::GAP) > Length::millimetres(12.0)
}

/// A shelf close to the aprons or the stretchers closes the joint between them, which the spaces take as open.
fn has_lower_shelf(piece: &Furniture) -> bool {
    styles::LOWER_SHELF.of(&piece.styles).key == "shelf"
}

fn depth(piece: &Assembly) -> f64 {
    let bounds = piece.parts.iter().map(|part| part.bounds());
    let ends = bounds.fold(
        [f64::INFINITY, f64::NEG_INFINITY],
        |[front, back], (low, high)| [front.min(low[1]), back.max(high[1])],
    );
    ends[1] - ends[0]
}

fn cases(cases: u32) -> ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok();
    // The same pieces in every run, unless more are asked for: odd pieces whose joints all but close differ by a strip.
    let rng_seed = match asked {
        Some(_) => RngSeed::Random,
        None => RngSeed::Fixed(19),
    };
    let cases = asked.and_then(|asked| asked.parse().ok()).unwrap_or(cases);
    ProptestConfig {
        cases,
        max_global_rejects: 10 * cases,
        max_local_rejects: 10 * cases + 65_536,
        failure_persistence: None,
        rng_seed,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(cases(300))]

    /// All air in a shallow piece without a back would be the air before the wall, so such pieces are left out. Of what is
    /// not seen, the parts may say "inside" where the spaces say "underneath", as over a drawer front that is thicker than its
    /// apron. Neither is painted. The sides of very short tapered legs look down, which the spaces take for the underside.
    /// Strips of less than 3 cm2 in gaps may differ.
    #[test]
    fn spaces_and_parts_agree_on_what_is_seen_of_generated_pieces(Built { furniture, assembly } in piece()) {
        prop_assume!(depth(&assembly) > 0.13);
        prop_assume!(!fronts_reach_behind_frame(&furniture) && !shows_the_inside(&furniture));
        prop_assume!(!has_lower_shelf(&furniture));
        let is_compared = |id: &SurfaceId| id.exposure == Exposure::Outside && id.part.kind != PartKind::Leg;
        let found = differences(&assembly, 3e-4, is_compared);
        prop_assert!(found.is_empty(), "{}", found.join("\n"));
    }
}

// --- What is altered -------------------------------------------------------------------------------------------

fn altered(kind: Kind, changes: Vec<Alteration>) -> Assembly {
    let mut piece = Furniture::usual(kind);
    piece.changes = changes;
    piece.assembly().unwrap()
}

/// The area that is painted by default, square meters: everything exposed to the room, of these parts.
fn seen(piece: &Assembly, counts: impl Fn(&SurfaceId) -> bool) -> f64 {
    let nets = nets(piece).into_iter();
    let seen = nets.filter(|(id, _)| id.exposure == Exposure::Outside && counts(id));
    seen.map(|(_, area)| area).sum()
}

/// What is visible of one and not, or not as much, of the other.
fn changed(one: &Assembly, other: &Assembly) -> String {
    let [one, other] = [one, other].map(nets);
    let ids = one
        .keys()
        .chain(other.keys())
        .filter(|id| id.exposure == Exposure::Outside);
    let mut ids: Vec<_> = ids.collect();
    ids.sort_unstable();
    ids.dedup();
    let area = |areas: &BTreeMap<SurfaceId, f64>, id: &SurfaceId| 1e4 * areas.get(id).copied().unwrap_or(0.0);
    let told = ids.into_iter().map(|id| (id, area(&one, id), area(&other, id)));
    let told = told.filter(|(_, before, after)| (before - after).abs() > 0.1);
    let told: Vec<_> = told
        .map(|(id, before, after)| format!("{id} {before:.1} {after:.1}"))
        .collect();
    told.join(", ")
}

fn of(name: &str) -> impl Fn(&SurfaceId) -> bool + '_ {
    move |id| id.to_string() == name
}

/// All surfaces of a part.
fn of_part(name: &str) -> impl Fn(&SurfaceId) -> bool + '_ {
    move |id| id.part.to_string() == name
}

fn resize(part: &str, along: Along, to: Length) -> Alteration {
    let part = part.to_owned();
    Alteration::Resize { part, along, to }
}

fn shift(part: &str, towards: Towards, by: f64) -> Alteration {
    let (part, by) = (part.to_owned(), Length::millimetres(by));
    Alteration::Move { part, towards, by }
}

fn remove(part: &str) -> Alteration {
    Alteration::Remove {
        part: part.to_owned(),
    }
}

/// Thinner boards of a dresser leave slits of a few millimeters, which open nothing. The boards' own edges shrink.
#[test]
fn a_thinner_board_does_not_open_the_inside() {
    let before = seen(&altered(Kind::Dresser, vec![]), |_| true);
    for (part, along) in [
        ("bottom", Along::Height),
        ("back", Along::Depth),
        ("left-side", Along::Width),
        ("rail-2", Along::Height),
        ("top-rail-2", Along::Height),
    ] {
        let thick = Length::inches(if part == "back" { 0.125 } else { 0.5 });
        let piece = altered(Kind::Dresser, vec![resize(part, along, thick)]);
        let after = seen(&piece, |_| true);
        let told = changed(&altered(Kind::Dresser, vec![]), &piece);
        assert!(
            (after - before).abs() < 0.012 * before,
            "{part}: {before} became {after}: {told}"
        );
    }
}

/// The outside of a board of the plinth stays its outside when it stands further in, and its hidden face stays hidden.
#[test]
fn a_board_that_moves_in_keeps_its_show_face() {
    let piece = |by| altered(Kind::Dresser, vec![shift("plinth-side-1", Towards::Right, by)]);
    let outer = |by| seen(&piece(by), of("plinth-side-1/left"));
    assert!(
        (outer(30.0) - outer(0.0)).abs() < 1e-9 && outer(30.0) > 0.01,
        "{}",
        outer(30.0)
    );
    assert_eq!(seen(&piece(30.0), of("plinth-side-1/right")), 0.0);
}

/// Where a drawer front is gone one looks into its compartment, and into no other.
#[test]
fn a_front_that_is_gone_opens_its_own_compartment() {
    let whole = altered(Kind::Dresser, vec![]);
    let open = altered(Kind::Dresser, vec![remove("drawer-front-2-1")]);
    let gained = |name: &str| seen(&open, of(name)) - seen(&whole, of(name));
    for name in ["rail-1/bottom", "rail-2/top", "back/front", "left-side/right"] {
        assert!(gained(name) > 0.001, "{name}: {}", gained(name));
    }
    assert_eq!(gained("drawer-front-1-1/back"), 0.0);
    // The compartment is a sixth of the inside.
    let back = |exposure| {
        let is_back = |id: &SurfaceId| {
            id.part.kind == PartKind::Back && id.side == Side::Front && id.exposure == exposure
        };
        let nets = nets(&open).into_iter().filter(move |(id, _)| is_back(id));
        nets.map(|(_, area)| area).sum::<f64>()
    };
    assert!(back(Exposure::Outside) < 0.3 * back(Exposure::Inside));
}

/// A strip of the inside is visible through a slit beside a door, but not the whole compartment.
#[test]
fn a_slit_opens_no_compartment() {
    let whole = altered(Kind::Wardrobe, vec![]);
    let moved = |by| {
        let parts = whole.parts.iter().map(|part| part.id.to_string());
        let doors = parts.filter(|part| part.starts_with("door-") && part.ends_with("-1-1"));
        altered(
            Kind::Wardrobe,
            doors.map(|door| shift(&door, Towards::Left, by)).collect(),
        )
    };
    let gained = |by, name: &str| seen(&moved(by), of(name)) - seen(&whole, of(name));
    assert!(gained(30.0, "back/front") > 0.001);
    assert!(gained(30.0, "back/front") < 0.1 * seen(&whole, of("left-side/left")));
    assert_eq!(gained(30.0, "top/bottom"), 0.0);
    // A wide gap does open it.
    assert!(gained(200.0, "top/bottom") > 0.1);
}

/// The pocket between the aprons of a table stays what it is where one can peep into it at a corner.
#[test]
fn a_slit_beside_an_apron_does_not_show_the_underside_of_the_top() {
    for kind in [Kind::SideTable, Kind::Desk, Kind::Bench] {
        let usual = Furniture::usual(kind).assembly().unwrap();
        let parts = usual.parts.iter().map(|part| part.id.to_string());
        let heads: Vec<_> = parts.filter(|part| part.starts_with("leg-head-")).collect();
        let changes = match heads.first() {
            Some(head) => vec![
                vec![resize(head, Along::Width, Length::inches(0.75))],
                vec![remove(head)],
            ],
            None => vec![vec![resize("leg-1", Along::Width, Length::inches(0.75))]],
        };
        for changes in changes {
            let piece = altered(kind, changes.clone());
            let gained = seen(&piece, of("top/bottom")) - seen(&usual, of("top/bottom"));
            assert!(
                gained < 0.1 * seen(&usual, of("top/top")),
                "{} {changes:?}: {gained} m2",
                kind.key()
            );
        }
    }
}

/// A top that hangs over at the back stands at the wall itself.
#[test]
fn a_top_that_moves_back_is_finished_as_a_whole() {
    let piece = |by| altered(Kind::Dresser, vec![shift("top", Towards::Back, by)]);
    let upper = |by| seen(&piece(by), of("top/top"));
    assert!((upper(20.0) - upper(0.0)).abs() < 1e-9);
    // What is behind the case still looks at the wall.
    assert_eq!(seen(&piece(20.0), of("back/back")), 0.0);
}

/// Every shape that is added without a place, with its free area in square meters, whatever is beside it.
#[test]
fn a_loose_part_does_not_depend_on_the_piece_beside_it() {
    let inch = |inches| Length::inches(inches);
    let mut board = Added::usual(1, AddedShape::Board);
    for (field, size) in [
        (&fields::PART_WIDTH, 16.0),
        (&fields::PART_DEPTH, 12.0),
        (&fields::PART_HEIGHT, 0.75),
    ] {
        board.measures.set(field, inch(size));
    }
    let mut bar = Added::usual(1, AddedShape::Bar);
    bar.measures.set(&fields::PART_LENGTH, Length::metres(1.0));
    let square_inch = 0.0254 * 0.0254;
    let known = [(board, 426.0 * square_inch), (bar, 0.1)];
    let others = AddedShape::ALL.map(|shape| (Added::usual(1, shape), f64::NAN));
    for (added, free) in known.into_iter().chain(others) {
        let is_added = |id: &SurfaceId| id.part.kind == PartKind::Added;
        let areas =
            Kind::ALL.map(|kind| seen(&altered(kind, vec![Alteration::Add(added.clone())]), is_added));
        assert!(
            areas.iter().all(|area| (area - areas[0]).abs() < 1e-9),
            "{:?} {areas:?}",
            added.shape
        );
        assert!(
            free.is_nan() || (areas[0] - free).abs() < 1e-9,
            "{:?} {areas:?} {free}",
            added.shape
        );
        assert!(areas[0] > 0.0, "{:?}", added.shape);
    }
}

/// A loose board that is made thinner stays loose.
#[test]
fn a_loose_board_of_another_size_is_still_free() {
    let mut board = Added::usual(1, AddedShape::Board);
    board.measures.set(&fields::PART_HEIGHT, Length::inches(0.75));
    let piece = altered(
        Kind::Headboard,
        vec![
            Alteration::Add(board),
            resize("added-1", Along::Height, Length::inches(0.5)),
        ],
    );
    let whole = nets(&piece).into_iter().filter(|(id, _)| of_part("added-1")(id));
    let whole: f64 = whole.map(|(_, area)| area).sum();
    assert!(whole > 0.1);
    assert!((seen(&piece, of_part("added-1")) - whole).abs() < 1e-9);
    // Nor is it what stands at the wall.
    let posts = |piece: &Assembly| seen(piece, of_part("post-1"));
    assert!((posts(&piece) - posts(&altered(Kind::Headboard, vec![]))).abs() < 1e-9);
}

/// A molding is glued with its back and meets the next one at its ends; a half column is glued with its flat side.
#[test]
fn a_loose_part_is_not_painted_where_its_kind_is_glued() {
    for (shape, glued) in [
        (AddedShape::Moulding, &["back", "left", "right"][..]),
        (AddedShape::HalfColumn, &["back"]),
    ] {
        let piece = altered(Kind::Frame, vec![Alteration::Add(Added::usual(1, shape))]);
        let surfaces = piece.surfaces().into_iter();
        let found = surfaces.filter(|surface| surface.id.exposure == Exposure::Glued);
        let mut sides: Vec<_> = found.map(|surface| surface.id.side.word()).collect();
        sides.sort_unstable();
        assert_eq!(sides, glued, "{shape:?}");
    }
}

proptest! {
    #![proptest_config(cases(60))]

    /// A hidden board may be made thinner, or moved by what a closed gap hides: nothing else is painted for it.
    #[test]
    fn what_is_hidden_decides_nothing_outside(kind in prop::sample::select(Kind::ALL.to_vec()), which in any::<prop::sample::Index>(), by in 0.5..4.5f64, moves in any::<bool>()) {
        let whole = altered(kind, vec![]);
        let is_hidden = |part: &&Part| seen(&whole, |id| id.part == part.id) < 1e-9 && part.faces.len() == 6;
        let hidden: Vec<&Part> = whole.parts.iter().filter(is_hidden).collect();
        prop_assume!(!hidden.is_empty());
        let part = hidden[which.index(hidden.len())];
        let name = part.id.to_string();
        let change = if moves {
            shift(&name, Towards::Back, by)
        } else {
            let (low, high) = part.bounds();
            let (along, size) = [Along::Width, Along::Depth, Along::Height]
                .into_iter()
                .zip((0..3).map(|axis| high[axis] - low[axis]))
                .min_by(|a, b| a.1.total_cmp(&b.1))
                .unwrap();
            resize(&name, along, Length::metres(size - by / 1000.0))
        };
        let piece = Furniture { changes: vec![change], ..Furniture::usual(kind) };
        let Ok(after) = piece.assembly() else { return Ok(()) };
        let told = changed(&whole, &after);
        let [before, after] = [&whole, &after].map(|piece| seen(piece, |_| true));
        prop_assert!((before - after).abs() < 1e-6 + 0.002 * before, "{name} {before} {after}: {told}");
    }

    /// The position of a piece changes nothing. Noise moves the edges of cells, and a strip in a gap may switch sides.
    #[test]
    fn a_piece_that_is_moved_and_turned_shows_the_same(Built { assembly, .. } in piece(), turn in -3.0..3.0f64, shift in -4.0..4.0f64) {
        let by = nalgebra::Isometry3::new(nalgebra::Vector3::new(shift, 1.0, -shift), nalgebra::Vector3::new(0.3, turn, 0.7));
        let whole = Assembly { by_parts: true, ..assembly };
        let before = seen(&whole, |_| true);
        let after = seen(&whole.moved(&by), |_| true);
        prop_assert!((before - after).abs() < 0.005 * before, "{before} became {after}");
    }

    /// Changes of unrelated parts may be made in any order.
    #[test]
    fn the_order_of_changes_does_not_matter(kind in prop::sample::select(Kind::ALL.to_vec()), parts in prop::array::uniform3(any::<prop::sample::Index>()), by in prop::array::uniform3(1.0..40.0f64)) {
        let whole = altered(kind, vec![]);
        let names = parts.map(|part| whole.parts[part.index(whole.parts.len())].id.to_string());
        prop_assume!(names[0] != names[1] && names[1] != names[2] && names[0] != names[2]);
        let [a, b, c] = [0, 1, 2].map(|i| match i {
            0 => remove(&names[0]),
            1 => shift(&names[1], Towards::Up, by[1]),
            _ => shift(&names[2], Towards::Front, by[2]),
        });
        let one = altered(kind, vec![a.clone(), b.clone(), c.clone()]);
        let other = altered(kind, vec![c, a, b]);
        prop_assert_eq!(nets(&one), nets(&other));
    }
}

/// A dresser with nine added boards, each repeated along one of the three axes: 900 parts with as many planes.
fn many_planes() -> Assembly {
    let mut changes = Vec::new();
    for number in 1..=9 {
        let mut board = Added::usual(number, AddedShape::Board);
        for (field, size) in [
            (&fields::PART_WIDTH, 3.1),
            (&fields::PART_DEPTH, 3.3),
            (&fields::PART_HEIGHT, 3.7),
        ] {
            board.measures.set(field, Length::millimetres(size));
        }
        let offset = 1.37 * f64::from(u32::try_from(number).unwrap());
        board.place = Some([2000.0, 100.0, 100.0].map(|at| Length::millimetres(at + offset)));
        changes.push(Alteration::Add(board));
        changes.push(Alteration::Repeat {
            part: format!("added-{number}"),
            times: 100,
            towards: [Towards::Right, Towards::Front, Towards::Up][number % 3],
            every: Length::millimetres(17.3),
        });
    }
    altered(Kind::Dresser, changes)
}

/// The cells of such a piece are limited: planes that are closer merge. How many cells that leaves is tested beside the grid.
#[test]
fn a_piece_with_hundreds_of_planes_keeps_what_it_shows() {
    let piece = many_planes();
    assert!(piece.parts.len() > 900);
    let nets = nets(&piece);
    // The boards are beside the dresser, so both show what they show alone.
    let area = |id: &SurfaceId| nets.get(id).copied().unwrap_or(0.0);
    let plain = self::nets(&altered(Kind::Dresser, vec![shift("top", Towards::Up, 0.0)]));
    let [mut all, mut kept] = [0.0; 2];
    for (id, before) in plain.iter().filter(|(id, _)| id.exposure == Exposure::Outside) {
        all += before;
        kept += area(id).min(*before);
    }
    assert!(kept > 0.95 * all, "{kept} of {all} m2");
    let added = seen(&piece, |id| id.part.kind == PartKind::Added);
    let whole = 900.0 * 2.0 * (3.1 * 3.3 + 3.1 * 3.7 + 3.3 * 3.7) / 1e6;
    assert!((added - whole).abs() < 0.01 * whole, "{added} of {whole} m2");
}
