//! Takeoffs: areas and their uncertainty, amounts, ways of doing the job, and surfaces.

use std::rc::Rc;

use coatings::{Stage, Substrate};
use geometry::{Kind, fields};
use units::LengthUnit;

use super::{
    Area, ComparedAt, Estimate, Notice, Piece, SurfaceLine, Takeoff, WayColumn, WayFigure, about_as_soon,
    are_finished, compare, edges_by_zone, main_ways, side_faces, switched, touched_faces,
};
use crate::document::{ChangeKind, PieceChange, PieceId, Reading, SurfaceChoice};
use crate::samples::{takeoff, takeoff_in, values};
use crate::{BookEdit, BrushTo, Edit, HaveEdit, PieceEdit, SchemeEdit, Workshop};

/// Returns the way that takes the least time and the way that takes the least material, among tools the maker
/// has.
fn soonest_and_least(columns: &[WayColumn], compared: ComparedAt) -> Option<(&WayColumn, &WayColumn)> {
    let minutes = |column: &&WayColumn| column.whole(compared).minutes.value;
    let litres = |column: &&WayColumn| column.whole(compared).all().as_litres();
    let at_hand = || columns.iter().filter(|column| column.is_at_hand);
    let soonest = at_hand().min_by(|a, b| minutes(a).total_cmp(&minutes(b)));
    let least = at_hand().min_by(|a, b| litres(a).total_cmp(&litres(b)));
    soonest.zip(least)
}

fn nightstand() -> Piece {
    Piece::new(PieceId("n".into()), Kind::Nightstand)
}

fn measured(mut piece: Piece) -> Piece {
    let furniture = piece.furniture();
    for field in furniture.fields() {
        let inches = furniture.length(field).as_inches();
        piece.readings.insert(
            field.key,
            Reading::new(&format!("{inches}"), LengthUnit::Inch).unwrap(),
        );
    }
    piece
}

#[test]
fn measuring_makes_the_area_surer() {
    let guessed = takeoff(&nightstand()).unwrap().painted;
    let measured = takeoff(&measured(nightstand())).unwrap().painted;
    assert_eq!(guessed.value, measured.value);
    let share = |estimate: Estimate<Area>| estimate.standard_uncertainty / estimate.value;
    assert!(share(guessed) > 0.1, "{}", share(guessed));
    assert!(share(measured) < 0.004, "{}", share(measured));
}

#[test]
fn a_pair_takes_twice_the_paint_but_dirties_the_tool_once() {
    let one = takeoff(&measured(nightstand())).unwrap();
    let pair = Piece {
        count: 2,
        ..measured(nightstand())
    };
    let two = takeoff(&pair).unwrap();
    let shares = |t: &Takeoff| t.materials[2].need.shares.clone();
    assert!((shares(&two)[0].volume / shares(&one)[0].volume - 2.0).abs() < 1e-9);
    assert_eq!(shares(&one).last(), shares(&two).last());
}

#[test]
fn a_choice_wins_over_the_default() {
    let mut piece = nightstand();
    let before = takeoff(&piece).unwrap();
    let left = SurfaceChoice {
        zone: None,
        painted: Some(false),
    };
    piece.choices.insert("top/top".into(), left);
    let after = takeoff(&piece).unwrap();
    let top = before
        .surfaces
        .iter()
        .find(|line| line.surface.id.to_string() == "top/top")
        .unwrap();
    let lost = (before.painted_each - after.painted_each).as_square_metres();
    assert!((lost - top.surface.net.as_square_metres()).abs() < 1e-12);
}

fn edited(edits: impl IntoIterator<Item = PieceEdit>) -> Piece {
    let id = PieceId("n".into());
    let workshop = Workshop {
        pieces: vec![Rc::new(measured(nightstand()))],
        ..Workshop::default()
    };
    let edits = edits.into_iter().map(|edit| Edit::Piece(id.clone(), edit));
    let workshop = edits.fold(workshop, |workshop, edit| workshop.apply(edit).unwrap());
    (*workshop.pieces[0]).clone()
}

/// A reading that makes the case larger makes the legs smaller, so their errors cancel in part. Adding the
/// zones, or their squares, would give a wrong uncertainty.
#[test]
fn errors_of_zones_hang_together() {
    let takeoff = takeoff(&measured(nightstand())).unwrap();
    let apart = takeoff.job.zones.iter().map(|zone| {
        let own = coatings::Patch::together(zone.patches.iter()).standard_uncertainty;
        own.as_square_metres()
    });
    let squares: f64 = apart.clone().map(|u| u * u).sum::<f64>().sqrt();
    let all = takeoff.painted.standard_uncertainty.as_square_metres();
    assert!(all < 0.9 * squares && squares < apart.sum(), "{squares} {all}");
}

#[test]
fn legs_are_narrow_and_sides_are_not() {
    let takeoff = takeoff(&nightstand()).unwrap();
    let of = |key: &str| takeoff.job.zones.iter().find(|zone| zone.key == key).unwrap();
    let [broad, narrow] = [0, 1].map(|place: usize| of("base").patches[place].area);
    assert!(narrow > broad, "{narrow:?} {broad:?}");
    let top = &of("top").patches;
    assert_eq!(
        (top[0].narrow, top[1].narrow, top[1].area),
        (false, true, Area::ZERO)
    );
}

#[test]
fn a_zone_of_its_own_colour_needs_a_can_of_its_own() {
    let red = crate::Colour([200, 0, 0]);
    let one = takeoff(&edited([])).unwrap();
    let two = takeoff(&edited([
        PieceEdit::Apart {
            zone: "fronts".into(),
            apart: true,
        },
        PieceEdit::Finish(Some("fronts".into()), SchemeEdit::Colour(red)),
    ]))
    .unwrap();
    let ids =
        |takeoff: &Takeoff| -> Vec<String> { takeoff.materials.iter().map(|line| line.id.clone()).collect() };
    assert_eq!(ids(&one), ["clean", "primer", "paint", "topcoat"]);
    assert_eq!(ids(&two), ["clean", "primer", "paint", "paint-2", "topcoat"]);
    let on_piece = |takeoff: &Takeoff, places: &[usize]| -> f64 {
        let lines = places.iter().map(|place| &takeoff.materials[*place]);
        lines.map(|line| line.need.shares[0].volume.as_litres()).sum()
    };
    assert!((on_piece(&one, &[2]) - on_piece(&two, &[2, 3])).abs() < 1e-9);
    assert_eq!(two.materials[3].need.colour, Some([200, 0, 0]));
}

#[test]
fn every_amount_has_a_working_that_comes_to_the_best_estimate() {
    let takeoff = takeoff(&nightstand()).unwrap();
    for line in &takeoff.materials {
        let working = takeoff.working_of(line).unwrap();
        let best = line.need.linear().value.as_litres();
        assert!(
            (working.litres / best - 1.0).abs() < 1e-9,
            "{} {best}",
            working.litres
        );
    }
}

#[test]
fn what_nobody_measured_makes_an_area_unsure() {
    let unsure = |piece: &Piece| takeoff(piece).unwrap().unsure_by;
    let before = unsure(&nightstand());
    let sum: f64 = before.iter().map(|(_, share)| share).sum();
    assert!((sum - 1.0).abs() < 1e-9 && before.is_sorted_by(|a, b| a.1 >= b.1));
    // Width, depth and height determine most of any area.
    let large = [fields::WIDTH, fields::DEPTH, fields::HEIGHT].map(|field| field.id());
    assert!(large.contains(&before[0].0));
    let mut piece = nightstand();
    for (key, typed) in [("width", "20"), ("depth", "16"), ("height", "26")] {
        piece
            .readings
            .insert(key, Reading::new(typed, LengthUnit::Inch).unwrap());
    }
    assert!(!large.contains(&unsure(&piece)[0].0));
}

#[test]
fn a_half_empty_can_is_less_likely_enough() {
    let begun = Workshop {
        pieces: vec![Rc::new(measured(nightstand()))],
        ..Workshop::default()
    };
    let have = |workshop: Workshop, edit| {
        let piece = &workshop.pieces[0];
        let edit = Edit::Have {
            piece: piece.id.clone(),
            material: "trim-enamel".into(),
            colour: Some(piece.scheme.colour.0),
            edit,
        };
        workshop.apply(edit).unwrap()
    };
    let probability = |workshop: &Workshop| {
        let materials = takeoff_in(workshop, &workshop.pieces[0]).unwrap().materials;
        materials[2].on_hand.as_ref().unwrap().enough.probability
    };
    let full = have(begun, HaveEdit::Can(Some("us-pint")));
    let half = have(full.clone(), HaveEdit::Level(Some("half")));
    assert!(probability(&full) > probability(&half));
    // Two cans are judged together.
    let colour = half.pieces[0].scheme.colour.write();
    let second = [
        ("material", "trim-enamel"),
        ("colour", colour.as_str()),
        ("can", "us-pint"),
        ("level", "half"),
    ];
    let second = BookEdit::Add("shelf", "second".into(), values(&second));
    let both = half.apply(Edit::Book(second)).unwrap();
    assert!(probability(&both) > probability(&half));
}

/// Returns the takeoff of a nightstand of bare wood, and its ways.
fn bare_wood() -> (Takeoff, Vec<WayColumn>) {
    let piece = edited([PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Bare))]);
    let takeoff = takeoff(&piece).unwrap();
    let edges = edges_by_zone(&piece).unwrap();
    let columns = compare(&Workshop::default(), &piece, &takeoff, &edges);
    (takeoff, columns)
}

fn column<'a>(columns: &'a [WayColumn], key: &str) -> &'a WayColumn {
    columns.iter().find(|column| column.key == key).unwrap()
}

fn paint<'a>(columns: &'a [WayColumn], key: &str) -> &'a WayFigure {
    let mut figures = column(columns, key).figures.iter();
    figures.find(|figure| figure.id == "paint").unwrap()
}

#[test]
fn every_way_has_every_material_and_its_minutes() {
    let (takeoff, columns) = bare_wood();
    // Bare wood gets no cleaner.
    assert_eq!(takeoff.materials[0].need.material.stage, Stage::Primer);
    for column in &columns {
        assert_eq!(column.figures.len(), takeoff.materials.len());
        let each = column.figures.iter().map(|figure| figure.minutes.value);
        assert!((each.sum::<f64>() - column.planned.minutes.value).abs() < 1e-9);
    }
}

/// Two brushed coats of paint are 200 um wet, and two rolled ones 140 um. A third rolled coat reaches 200 um.
#[test]
fn thinner_coats_take_more_of_them_for_an_equal_film() {
    let (_, columns) = bare_wood();
    let (brushed, rolled) = (paint(&columns, "brush"), paint(&columns, "foam-roller"));
    assert_eq!(brushed.coats_for_equal_film, 2);
    assert_eq!(rolled.coats_for_equal_film, 3);
    assert_eq!(brushed.likely, brushed.likely_at_equal_film);
    assert!(rolled.likely < rolled.likely_at_equal_film);
    // The brush leaves the thickest film, so only the roller takes more work and paint for an equal one.
    let brush = column(&columns, "brush");
    assert_eq!(brush.planned, brush.equal);
    let roller = column(&columns, "foam-roller");
    assert!(roller.planned.minutes.value < roller.equal.minutes.value);
    assert!(roller.planned.all() < roller.equal.all());
}

#[test]
fn tools_differ_in_paint_time_and_overspray() {
    let (_, columns) = bare_wood();
    let need = |key| paint(&columns, key).buy.as_ref().unwrap().need;
    assert!(need("hvlp") > need("brush"));
    let minutes = |key| column(&columns, key).planned.minutes.value;
    assert!(minutes("brush") > minutes("foam-roller"));
    let is_in_air = |key| {
        let mut lost = column(&columns, key).planned.lost.iter();
        lost.any(|(place, _)| *place == coatings::Place::InAir)
    };
    assert!(is_in_air("hvlp") && !is_in_air("brush"));
}

#[test]
fn the_soonest_and_the_least_are_of_the_tools_at_hand() {
    let (_, columns) = bare_wood();
    assert!(!column(&columns, "hvlp").is_at_hand);
    let (planned, _) = soonest_and_least(&columns, ComparedAt::Planned).unwrap();
    let (soonest, least) = soonest_and_least(&columns, ComparedAt::EqualFilm).unwrap();
    for column in columns.iter().filter(|column| column.is_at_hand) {
        assert!(planned.planned.minutes.value <= column.planned.minutes.value);
        assert!(soonest.equal.minutes.value <= column.equal.minutes.value);
        assert!(least.equal.all() <= column.equal.all());
    }
}

#[test]
fn times_within_their_uncertainty_are_about_the_same() {
    let (_, columns) = bare_wood();
    let (soonest, _) = soonest_and_least(&columns, ComparedAt::EqualFilm).unwrap();
    let soonest = soonest.equal.minutes;
    let later = |by: f64| Estimate {
        value: soonest.value + by * soonest.standard_uncertainty,
        ..soonest
    };
    assert!(about_as_soon(soonest, later(0.9)) && about_as_soon(later(0.9), soonest));
    assert!(!about_as_soon(soonest, later(1.1)) && !about_as_soon(later(1.1), soonest));
}

/// A nightstand has legs, which a roller does not reach. The choice of a tool is about its paint alone.
#[test]
fn a_way_is_planned_once_its_tools_are_used() {
    let id = PieceId("n".into());
    let workshop = Workshop {
        pieces: vec![Rc::new(measured(nightstand()))],
        ..Workshop::default()
    };
    let ways = |workshop: &Workshop| {
        let piece = &workshop.pieces[0];
        let takeoff = takeoff(piece).unwrap();
        let columns = compare(workshop, piece, &takeoff, &edges_by_zone(piece).unwrap());
        let keys: Vec<&str> = main_ways(&columns, &takeoff).iter().map(|way| way.key).collect();
        assert_eq!(keys, ["brush", "rolled", "hvlp"]);
        columns
    };
    let columns = ways(&workshop);
    let is_planned = |workshop: &Workshop, key: &str| {
        let way = columns.iter().find(|way| way.key == key).unwrap();
        way.is_planned(&workshop.pieces[0], &[], Stage::Paint)
    };
    assert!(is_planned(&workshop, "brush") && !is_planned(&workshop, "rolled"));
    let rolled = columns.iter().find(|way| way.key == "rolled").unwrap();
    let paint = rolled.figures.iter().find(|figure| figure.id == "paint").unwrap();
    assert_eq!(rolled.coat.volume, paint.likely);
    assert_eq!(rolled.coat.minutes, paint.minutes);
    let edits = rolled.edits(&workshop.pieces[0], &[], Stage::Paint).into_iter();
    let edits = edits.map(|edit| Edit::Piece(id.clone(), edit));
    let used = edits.fold(workshop, |workshop, edit| workshop.apply(edit).unwrap());
    assert!(is_planned(&used, "rolled") && !is_planned(&used, "brush"));
    let tools: Vec<&str> = used.pieces[0]
        .scheme
        .layers
        .iter()
        .map(|layer| layer.tool)
        .collect();
    assert_eq!(tools, ["pad", "brush", "foam-roller", "brush"]);
}

/// A sprayer counts only if the maker has one or plans one.
#[test]
fn what_is_not_at_hand_is_not_the_soonest() {
    let at_hand = |workshop: &Workshop, piece: &Piece| {
        let takeoff = takeoff(piece).unwrap();
        let columns = compare(workshop, piece, &takeoff, &edges_by_zone(piece).unwrap());
        let sprayer = columns.iter().find(|column| column.key == "hvlp").unwrap();
        sprayer.is_at_hand
    };
    let bare = Workshop::default();
    assert!(!at_hand(&bare, &nightstand()));
    let has = BookEdit::Write("habits", "only".into(), "sprayer".into(), "yes".into());
    assert!(at_hand(&bare.apply(Edit::Book(has)).unwrap(), &nightstand()));
    let planned = edited([PieceEdit::Finish(None, SchemeEdit::Tool(2, "hvlp"))]);
    assert!(at_hand(&bare, &planned));
}

/// 16 by 19 inches of the side, and the outer faces of two legs of 1 1/2 by 6 inches: 322 square inches.
#[test]
fn a_side_is_left_at_one_touch() {
    let before = takeoff(&nightstand()).unwrap();
    let faces: Vec<&SurfaceLine> = side_faces(&before.surfaces, geometry::Side::Left).collect();
    let area: Area = faces.iter().map(|line| line.surface.net).sum();
    let names: Vec<String> = faces.iter().map(|line| line.surface.id.to_string()).collect();
    assert!(
        (area.as_square_metres() / 0.000_645_16 - 322.0).abs() < 1e-6,
        "{names:?}"
    );
    let left = takeoff(&edited([PieceEdit::Brush(names, BrushTo::Left)])).unwrap();
    let gone = before.painted_each - left.painted_each - area;
    assert!(gone.as_square_metres().abs() < 1e-12);
}

/// Every entry that does not count gives a notice.
#[test]
fn what_does_not_count_says_so() {
    let notices = |piece: &Piece| takeoff(piece).unwrap().notices;
    assert_eq!(notices(&nightstand()), []);
    let mut piece = nightstand();
    let left = SurfaceChoice {
        zone: None,
        painted: Some(false),
    };
    for name in ["top/top", "top/moulded-front"] {
        piece.choices.insert(name.into(), left.clone());
    }
    let mut hole = PieceChange::new(ChangeKind::Hole {
        surface: "top/moulded-left".into(),
    });
    for field in [fields::PART_WIDTH, fields::PART_HEIGHT] {
        let reading = Reading::new("2", LengthUnit::Inch).unwrap();
        hole.readings.insert((0, field.key), reading);
    }
    piece.changes = vec![hole];
    let found = notices(&piece);
    assert!(
        matches!(
            &found[..],
            [Notice::Piece(geometry::Notice::NoSurfaceForHole { surface, .. }), Notice::NoSurface { surface: choice }]
                if surface == "top/moulded-left" && choice == "top/moulded-front"
        ),
        "{found:?}"
    );
    // The profile that both notices are about.
    piece.styles.top_edge = geometry::Edge::Shaped(geometry::Shape::Ogee);
    assert_eq!(notices(&piece), []);
}

/// One touch on the back of an open row skips everything visible in it, and another restores it.
#[test]
fn an_open_cubby_is_left_and_comes_back_at_one_touch() {
    let mut open = nightstand();
    open.bays[0].rows[0].fill = geometry::Fill::Open;
    let touch = |piece: &Piece| {
        let lines = takeoff(piece).unwrap().surfaces;
        let faces = touched_faces(piece, &lines, "back/front");
        let area: Area = faces.iter().map(|line| line.surface.net).sum();
        let names = faces.iter().map(|line| line.surface.id.to_string()).collect();
        let finished = faces.iter().any(|line| line.painted);
        let edit = PieceEdit::Brush(names, switched(&faces, finished));
        let workshop = Workshop {
            pieces: vec![Rc::new(piece.clone())],
            ..Workshop::default()
        };
        let workshop = workshop.apply(Edit::Piece(piece.id.clone(), edit)).unwrap();
        ((*workshop.pieces[0]).clone(), area)
    };
    let painted = |piece: &Piece| takeoff(piece).unwrap().painted_each;
    let (left, area) = touch(&open);
    let back = takeoff(&open).unwrap();
    let back = back
        .surfaces
        .iter()
        .find(|line| line.surface.id.to_string() == "back/front");
    // Besides the back there are a floor, a ceiling and two sides.
    assert!(area > back.unwrap().surface.net * 2.0);
    let gone = painted(&open) - painted(&left) - area;
    assert!(gone.as_square_metres().abs() < 1e-12);
    let (again, _) = touch(&left);
    assert_eq!(again, open);
}

/// Without its board the side is not painted, though its legs are.
#[test]
fn a_side_is_finished_if_most_of_it_is() {
    let of = |piece: &Piece| {
        let takeoff = takeoff(piece).unwrap();
        let faces: Vec<&SurfaceLine> = side_faces(&takeoff.surfaces, geometry::Side::Left).collect();
        let all = faces.len();
        let painted = faces.iter().filter(|line| line.painted).count();
        (are_finished(&faces), painted, all)
    };
    let (finished, painted, all) = of(&nightstand());
    assert!(finished && painted == all && all > 1);
    let before = takeoff(&nightstand()).unwrap();
    let mut faces: Vec<&SurfaceLine> = side_faces(&before.surfaces, geometry::Side::Left).collect();
    faces.sort_by(|one, other| {
        other
            .surface
            .net
            .as_square_metres()
            .total_cmp(&one.surface.net.as_square_metres())
    });
    let board = vec![faces[0].surface.id.to_string()];
    let left = edited([PieceEdit::Brush(board, BrushTo::Left)]);
    let (finished, painted, _) = of(&left);
    assert!(!finished && painted == all - 1);
}

#[test]
fn a_piece_that_cannot_be_says_which_measurement() {
    let mut piece = nightstand();
    piece
        .readings
        .insert("height", Reading::new("2", LengthUnit::Inch).unwrap());
    let problems = takeoff(&piece).unwrap_err();
    assert_eq!(problems[0].field(), Some(fields::HEIGHT.id()));
}

/// The same piece entered twice, or on two devices, gets the same answer. The name does not matter.
#[test]
fn pieces_that_are_alike_get_the_same_amounts() {
    let of = |id: &str| {
        let mut piece = Piece::new(PieceId(id.into()), Kind::Dresser);
        piece.name = id.into();
        takeoff(&piece).unwrap().materials
    };
    let first = of("0b0f2a5e-5a0c-4bb0-9f0e-2f6f3f0f6a11");
    for other in ["b", "invented-dresser", "7"] {
        assert_eq!(of(other), first);
    }
}

/// Free-standing, a piece has its back painted as well: all that looks at the wall otherwise, and nothing else.
#[test]
fn a_free_standing_piece_has_its_back_painted() {
    for kind in [
        Kind::ChestOfDrawers,
        Kind::Hutch,
        Kind::BlanketBox,
        Kind::Headboard,
    ] {
        let wall = Piece::new(PieceId("w".into()), kind);
        let mut free = wall.clone();
        let choice = PieceEdit::Style {
            choice: "stand",
            answer: "free",
        };
        let workshop = Workshop {
            pieces: vec![Rc::new(free)],
            ..Workshop::default()
        };
        let workshop = workshop.apply(Edit::Piece(PieceId("w".into()), choice)).unwrap();
        free = (*workshop.pieces[0]).clone();
        let [at_wall, all_around] = [&wall, &free].map(|piece| takeoff(piece).unwrap());
        let backs = at_wall.surfaces.iter().filter(|line| {
            line.surface.id.exposure == geometry::Exposure::Wall && line.surface.takes_finish()
        });
        let backs: Area = backs.map(|line| line.surface.net).sum();
        assert!(backs > Area::square_metres(0.2), "{}", kind.key());
        let more = all_around.painted.value.as_square_metres() - at_wall.painted.value.as_square_metres();
        assert!(
            (more - backs.as_square_metres()).abs() < 1e-12,
            "{}: {more}",
            kind.key()
        );
    }
}
