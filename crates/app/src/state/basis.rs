//! The basis of all that is worked out about the open piece.

use std::rc::Rc;

use workshop::{Piece, Workshop};

use super::App;

/// The document with the open piece. Results are kept as long as it is the same.
///
/// A list of the entries that a result reads would have to grow with each of them, and one that is forgotten leaves an old
/// answer standing. So any change of the document is another basis; comparing two takes no time, whatever they hold.
#[derive(Clone, Debug)]
pub struct Basis {
    /// The document.
    pub workshop: Rc<Workshop>,
    /// The open piece.
    pub piece: Rc<Piece>,
}

impl Basis {
    /// The basis of a piece as the document is now.
    pub fn of(app: &App, piece: &Rc<Piece>) -> Self {
        Basis {
            workshop: Rc::clone(&app.workshop),
            piece: Rc::clone(piece),
        }
    }
}

impl PartialEq for Basis {
    fn eq(&self, other: &Basis) -> bool {
        Rc::ptr_eq(&self.workshop, &other.workshop) && Rc::ptr_eq(&self.piece, &other.piece)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::Act;
    use coatings::suggest::Wish;
    use coatings::{Basis as Volumes, Ground};
    use geometry::{BayPlace, Fill, Kind, fields};
    use units::{Day, Inches, LengthUnit, System};
    use workshop::money::{Account, account};
    use workshop::preparing::{PrepareStep, prepare};
    use workshop::{
        BookEdit, BrushTo, Buy, Colour, Confidence, Currency, Edit, MaterialEdit, PieceEdit, PieceId, Price,
        Reading, SchemeEdit, SettingEdit, Sign, Takeoff, WayColumn, cans_to_buy, compare, edges_by_zone,
        invented_workshop, on_shelf, takeoff_in,
    };

    /// All that the page works out for the open piece and keeps, or works out from what it keeps.
    #[derive(Debug, PartialEq)]
    struct Outputs {
        takeoff: Takeoff,
        ways: Vec<WayColumn>,
        buys: Vec<Buy>,
        shelf: Vec<Vec<coatings::Contents>>,
        steps: Vec<PrepareStep>,
        account: Account,
    }

    fn outputs(app: &App) -> Option<Outputs> {
        let (workshop, piece) = (&app.workshop, app.piece()?);
        let takeoff = takeoff_in(workshop, piece).ok()?;
        let edges = edges_by_zone(piece).ok()?;
        let lines = takeoff.materials.iter();
        Some(Outputs {
            ways: compare(workshop, piece, &takeoff, &edges),
            buys: lines
                .clone()
                .filter_map(|line| cans_to_buy(workshop, line).ok())
                .collect(),
            shelf: lines.map(|line| on_shelf(workshop, &line.need)).collect(),
            steps: prepare(workshop, piece, &takeoff, &edges),
            account: account(workshop, piece, &takeoff, Day::since_1970(20_000)),
            takeoff,
        })
    }

    fn written(book: &'static str, key: &str, text: &str) -> BookEdit {
        BookEdit::Write(book, "only".into(), key.into(), text.into())
    }

    /// An edit of each kind, and of each entry that a result hangs on.
    fn edits(app: &App) -> Vec<Edit> {
        let id = app.open.clone().unwrap();
        let piece = app.piece().unwrap();
        let material = Rc::clone(&piece.scheme.layers[1].material);
        let colour = Some(piece.scheme.colour.0);
        let bay = BayPlace { upper: false, bay: 1 };
        let top = || "top/top".to_owned();
        let reading = |text: &str| Reading::new(text, LengthUnit::Inch).ok();
        let price = Price::new("31").ok();
        let of_piece = [
            PieceEdit::Name("Other".into()),
            PieceEdit::Count(3),
            PieceEdit::Measure(fields::WIDTH.id(), reading("50")),
            PieceEdit::Style("base", "legs"),
            PieceEdit::Bays(false, 2),
            PieceEdit::Rows(bay, 4),
            PieceEdit::RepeatRow(bay, 1),
            PieceEdit::RemoveRow(bay, 1),
            PieceEdit::Fill(bay, 1, Fill::Doors),
            PieceEdit::Columns(bay, 1, 3),
            PieceEdit::Painted(top(), Some(false)),
            PieceEdit::Zone(top(), Some("body".into())),
            PieceEdit::Brush(vec![top()], BrushTo::Left),
            PieceEdit::ZonePainted("inside".into(), Some(true)),
            PieceEdit::Finish(None, SchemeEdit::Colour(Colour([250, 250, 250]))),
            PieceEdit::Finish(None, SchemeEdit::Ground(Ground::Bare)),
            PieceEdit::Finish(None, SchemeEdit::Sign(Sign::Knots, true)),
            PieceEdit::Finish(None, SchemeEdit::Basis(Volumes::LabelRate)),
            PieceEdit::Finish(None, SchemeEdit::Coats(1, 5)),
            PieceEdit::Finish(None, SchemeEdit::Tool(1, "brush")),
            PieceEdit::Finish(None, SchemeEdit::Suggested(Wish::Clear)),
            PieceEdit::Apart("top".into(), true),
            PieceEdit::Can(Rc::clone(&material), colour, Some("us-gallon")),
            PieceEdit::Level(Rc::clone(&material), colour, Some("half")),
            PieceEdit::Book(written("facts", "hours", "2")),
            PieceEdit::Book(written("facts", "asking", "200")),
            PieceEdit::Book(written("facts", "sold", "200")),
            PieceEdit::Book(written("facts", "lead", "positive")),
        ];
        let of_workshop = [
            Edit::Units(System::Metric),
            Edit::Settings(SettingEdit::Confidence(Confidence::Percent99)),
            Edit::Settings(SettingEdit::Inches(Inches::Decimals)),
            Edit::Settings(SettingEdit::Currency(Currency::new("EUR").ok())),
            Edit::Book(written("habits", "hourly", "25")),
            Edit::Book(written("habits", "profit", "25")),
            Edit::Book(written("habits", "sprayer", "yes")),
            Edit::Book(written("habits", "dilution", "20")),
            Edit::Book(written("habits", "sheet-yield", "20 ft2")),
            Edit::Material(Rc::clone(&material), MaterialEdit::Price("us-quart", price)),
            Edit::Book(BookEdit::Add(
                "shelf",
                "s1".into(),
                vec![
                    ("material", material.to_string()),
                    ("colour", piece.scheme.colour.write()),
                    ("can", "us-gallon".into()),
                    ("level", "half".into()),
                ],
            )),
            Edit::AddMaterial("own-1".into(), material.to_string()),
            Edit::Copy {
                of: id.clone(),
                id: PieceId("copy".into()),
            },
            Edit::Add {
                id: PieceId("new".into()),
                kind: Kind::Bench,
            },
        ];
        let of_piece = of_piece.map(|edit| Edit::Piece(id.clone(), edit));
        of_piece.into_iter().chain(of_workshop).collect()
    }

    /// An edit that changes an answer makes another basis, so that the page works the answer out anew.
    #[test]
    fn whatever_changes_an_answer_changes_its_basis() {
        let workshop = Rc::new(invented_workshop());
        let app = App::default().update(Act::Loaded(workshop));
        let before = (Basis::of(&app, app.piece().unwrap()), outputs(&app));
        let mut telling = Vec::new();
        for edit in edits(&app) {
            let after = app.update(Act::Edit(edit.clone()));
            assert!(
                after.messages.is_empty(),
                "{edit:?} was refused: {:?}",
                after.messages
            );
            let is_same = Basis::of(&after, after.piece().unwrap()) == before.0;
            let outputs = outputs(&after);
            assert!(!is_same || outputs == before.1, "{edit:?}");
            if outputs != before.1 {
                telling.push(edit);
            }
        }
        // Among them are the entries that a list of what is read once left out.
        let tells = |edit: &dyn Fn(&Edit) -> bool| telling.iter().any(edit);
        assert!(tells(&|edit| matches!(
            edit,
            Edit::Material(_, MaterialEdit::Price(..))
        )));
        assert!(tells(&|edit| matches!(
            edit,
            Edit::Book(BookEdit::Add("shelf", ..))
        )));
        assert!(telling.len() > 25, "{} of them", telling.len());
    }

    /// Looking around changes nothing, and nothing is worked out anew.
    #[test]
    fn looking_around_leaves_the_basis() {
        let app = App::default().update(Act::Loaded(Rc::new(invented_workshop())));
        let before = Basis::of(&app, app.piece().unwrap());
        for act in [
            Act::Sheet(crate::state::Sheet::Tools),
            Act::Enter(fields::WIDTH.id()),
            Act::Pick(Some("top/top".into())),
            Act::Fold("how-paint".into()),
        ] {
            let after = app.update(act);
            assert!(Basis::of(&after, after.piece().unwrap()) == before);
        }
    }
}
