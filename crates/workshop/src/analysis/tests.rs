//! Kept results equal fresh ones, and no result is calculated again without need.

use coatings::suggest::Wish;
use coatings::{Basis as Volumes, Substrate};
use geometry::{BayPlace, Fill, fields};
use units::{Inches, LengthUnit, System};

use super::*;
use crate::book::{Facts, Habits};
use crate::document::{Colour, Confidence, Currency, Price, Reading};
use crate::samples::{takeoff_in, takeoffs, works};
use crate::{
    BookEdit, BrushTo, Case, Edit, HaveEdit, MaterialEdit, PieceEdit, SchemeEdit, SettingEdit, Sign,
    invented_workshop,
};

fn today() -> Day {
    Day::since_1970(20_000)
}

/// Returns every result of the first piece and of all pieces, each with its full debug text.
fn results(analysis: &Analysis) -> Vec<(&'static str, Rc<dyn std::any::Any>, String)> {
    let piece = &analysis.workshop().pieces[0];
    macro_rules! told {
        ($($name:literal = $result:expr),* $(,)?) => {
            vec![$({ let result = $result; let text = format!("{result:?}"); ($name, result as Rc<dyn std::any::Any>, text) }),*]
        };
    }
    told![
        "takeoff" = analysis.takeoff(piece),
        "edges" = analysis.edges(piece),
        "cans" = analysis.cans(piece),
        "ways" = analysis.ways(piece),
        "preparing" = analysis.preparing(piece),
        "account" = analysis.account(piece, today()),
        "shopping" = analysis.shopping(&[]),
        "goods" = analysis.goods(&[]),
        "coated" = analysis.coated(&[]),
        "stores" = analysis.stores(),
        "earnings" = analysis.earnings(),
        "days" = analysis.days(Moment::new(today(), 600), None),
    ]
}

/// Returns the same texts, calculated from the whole document.
fn from_all_of_it(workshop: &Workshop) -> Vec<String> {
    let piece = &workshop.pieces[0];
    let result = takeoff_in(workshop, piece).map(Rc::new);
    let takeoff = result.clone().unwrap();
    let edges = edges_by_zone(piece).unwrap();
    let (all, works) = (takeoffs(workshop), works(workshop));
    let is_ahead = |place: usize| workshop.pieces[place].status().is_ahead();
    let ahead = works
        .iter()
        .enumerate()
        .map(|(place, work)| work.clone().filter(|_| is_ahead(place)));
    let ahead: Vec<_> = ahead.collect();
    let work = crate::samples::work(workshop, piece).unwrap();
    let lines = takeoff.materials.iter();
    let cans: Vec<_> = lines.map(|line| cans_to_buy(workshop, line)).collect();
    vec![
        format!("{result:?}"),
        format!("{edges:?}"),
        format!("{cans:?}"),
        format!("{:?}", compare(workshop, piece, &takeoff, &edges)),
        format!("{:?}", prepare(workshop, piece, &takeoff, &edges)),
        format!("{:?}", Some(account(workshop, piece, &work, today()))),
        format!("{:?}", shopping(workshop, &all)),
        format!("{:?}", goods(workshop, &works)),
        format!("{:?}", coated(workshop, &all)),
        format!("{:?}", stores(workshop, &ahead)),
        format!("{:?}", earnings(workshop, &works)),
        format!("{:?}", days(workshop, &ahead, Moment::new(today(), 600))),
    ]
}

fn write<R: crate::book::Record>(key: &str, text: &str) -> BookEdit {
    BookEdit::Write(R::BOOK, "only".into(), key.into(), text.into())
}

fn add(book: &'static str, values: &[(&'static str, &str)]) -> BookEdit {
    BookEdit::Add(book, "l1".into(), crate::samples::values(values))
}

/// Returns an edit of each kind.
#[expect(clippy::too_many_lines, reason = "one entry for each edit")]
fn edits(workshop: &Workshop) -> Vec<Edit> {
    let piece = &workshop.pieces[0];
    let id = piece.id.clone();
    let material = Rc::clone(&piece.scheme.layers[1].material);
    let colour = Some(piece.scheme.colour.0);
    let have = |edit| Edit::Have {
        piece: id.clone(),
        material: Rc::clone(&material),
        colour,
        edit,
    };
    let bay = BayPlace { upper: false, bay: 1 };
    let top = || "top/top".to_owned();
    let reading = |text: &str| Reading::new(text, LengthUnit::Inch).ok();
    let price = Price::new("31").ok();
    let shelf = [
        ("material", material.to_string()),
        ("colour", piece.scheme.colour.write()),
        ("can", "us-gallon".into()),
        ("level", "half".into()),
    ];
    let shelf: Vec<_> = shelf.iter().map(|(key, text)| (*key, text.as_str())).collect();
    let fact = |key: &str, text: &str| PieceEdit::Book(write::<Facts>(key, text));
    let habit = |key: &str, text: &str| Edit::Book(write::<Habits>(key, text));
    let of_piece = [
        PieceEdit::Name("Other".into()),
        PieceEdit::Count(3),
        PieceEdit::Measure(fields::WIDTH.id(), reading("50")),
        PieceEdit::Style {
            choice: "base",
            answer: "legs",
        },
        PieceEdit::Bays {
            case: Case::Lower,
            count: 2,
        },
        PieceEdit::Rows { bay, count: 4 },
        PieceEdit::RepeatRow { bay, row: 1 },
        PieceEdit::RemoveRow { bay, row: 1 },
        PieceEdit::Fill {
            bay,
            row: 1,
            fill: Fill::Doors,
        },
        PieceEdit::Columns {
            bay,
            row: 1,
            columns: 3,
        },
        PieceEdit::Painted {
            surface: top(),
            painted: Some(false),
        },
        PieceEdit::Zone(top(), Some("body".into())),
        PieceEdit::Brush(vec![top()], BrushTo::Left),
        PieceEdit::ZonePainted {
            zone: "inside".into(),
            painted: Some(true),
        },
        PieceEdit::Finish(None, SchemeEdit::Colour(Colour([250, 250, 250]))),
        PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Bare)),
        PieceEdit::Finish(None, SchemeEdit::Sign(Sign::Knots, true)),
        PieceEdit::Finish(None, SchemeEdit::Basis(Volumes::LabelRate)),
        PieceEdit::Finish(None, SchemeEdit::Coats(1, 5)),
        PieceEdit::Finish(None, SchemeEdit::Tool(1, "brush")),
        PieceEdit::Finish(None, SchemeEdit::Suggested(Wish::Clear)),
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        fact("status", "looking"),
        fact("status", "for-sale"),
        fact("hours", "2"),
        fact("asking", "200"),
        fact("sold", "200"),
        fact("sold-on", "2024-10-01"),
        fact("begin", "2024-11-01"),
        fact("due", "2024-12-01"),
        fact("lead", "positive"),
        fact("holes", "4"),
        fact("hardware", "6"),
        fact("stickers", "yes"),
        fact("rust", "yes"),
        PieceEdit::Book(add(
            "art",
            &[("kind", "leaf"), ("width", "300 mm"), ("height", "300 mm")],
        )),
        PieceEdit::Book(add("log", &[("day", "2024-10-01"), ("note", "dull")])),
        PieceEdit::Book(BookEdit::Add(
            "done",
            "dust".into(),
            vec![("day", "2024-10-01".into())],
        )),
        PieceEdit::Book(BookEdit::Add(
            "done",
            "lead".into(),
            vec![("day", "2024-10-01".into())],
        )),
    ];
    let of_workshop = [
        Edit::Units(System::Metric),
        Edit::Settings(SettingEdit::Confidence(Confidence::Percent99)),
        Edit::Settings(SettingEdit::Inches(Inches::Decimals)),
        Edit::Settings(SettingEdit::Currency(Currency::new("EUR").ok())),
        habit("hourly", "25"),
        habit("profit", "25"),
        habit("sprayer", "yes"),
        habit("dilution", "20"),
        habit("reserve", "20 %"),
        habit("sheet-yield", "20 ft2"),
        habit("sheet-price", "1.20"),
        habit("mon", "9-10"),
        habit("temperature", "50 F"),
        Edit::Material(Rc::clone(&material), MaterialEdit::Price("us-quart", price)),
        Edit::Book(add("shelf", &shelf)),
        have(HaveEdit::Can(Some("us-gallon"))),
        have(HaveEdit::Level(Some("half"))),
        have(HaveEdit::Can(None)),
        Edit::Book(add(
            "stores",
            &[("kind", "sheets"), ("grit", "P180"), ("count", "2")],
        )),
        Edit::Book(add(
            "recipes",
            &[("name", "Fog"), ("part-1", "white"), ("weight-1", "20 g")],
        )),
        Edit::AddMaterial("own-1".into(), material.to_string()),
        Edit::Copy {
            of: id.clone(),
            id: PieceId("copy".into()),
        },
    ];
    let of_piece = of_piece.map(|edit| Edit::Piece(id.clone(), edit));
    of_piece.into_iter().chain(of_workshop).collect()
}

/// Returns true for an edit of entries that are read but make no difference in this workshop: knots under an
/// old finish, a zone finished like the piece, rust without hardware, a temperature without humidity, and a
/// label that no layer uses.
fn matters_elsewhere(edit: &Edit) -> bool {
    match edit {
        Edit::Piece(_, PieceEdit::Apart { .. } | PieceEdit::Finish(_, SchemeEdit::Sign(Sign::Knots, _)))
        | Edit::AddMaterial(..) => true,
        Edit::Piece(_, PieceEdit::Book(BookEdit::Write(_, _, key, _))) => key == "rust",
        Edit::Book(BookEdit::Write(_, _, key, _)) => key == "temperature",
        _ => false,
    }
}

/// An edit that changes a result has it calculated again, from a slice with everything it reads. An edit that
/// changes nothing leaves all results kept.
#[test]
fn a_result_is_worked_out_anew_when_an_edit_changes_it_and_only_then() {
    let workshop = Rc::new(invented_workshop());
    let known = results(&Analysis::of(Rc::clone(&workshop)));
    let texts: Vec<_> = known.iter().map(|(.., text)| text.clone()).collect();
    assert_eq!(texts, from_all_of_it(&workshop));
    let (mut changing, mut idle) = (0, 0);
    for edit in edits(&workshop) {
        let after = Rc::new(workshop.apply(edit.clone()).unwrap());
        // Results kept from the previous edit must not interfere.
        let first = Analysis::of(Rc::clone(&workshop));
        let kept = results(&first);
        let found = results(&first.after(Rc::clone(&after)));
        let whole = from_all_of_it(&after);
        for ((name, _, text), whole) in found.iter().zip(&whole) {
            assert!(text == whole, "{name} after {edit:?}");
        }
        if whole == texts {
            idle += 1;
            for ((name, one, _), (_, other, _)) in found.iter().zip(&kept) {
                assert!(
                    Rc::ptr_eq(one, other) || matters_elsewhere(&edit),
                    "{name} was worked out anew for {edit:?}"
                );
            }
        } else {
            changing += 1;
        }
    }
    assert!(
        changing > 40 && idle >= 5,
        "{changing} change something, {idle} nothing"
    );
}
