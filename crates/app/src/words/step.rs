//! The effect of an undo or redo, in words.

use std::rc::Rc;

use workshop::book::{BOOKS, Books};
use workshop::{Piece, Workshop};

use super::field_label;
use crate::state::{Stepped, in_order};

/// Says what was undone or redone: `Undone: Old dresser, height now 33 7/8 in.`
pub fn stepped(step: &Stepped, now: &Workshop) -> String {
    let word = if step.is_back { "Undone" } else { "Redone" };
    format!("{word}: {}.", changed(&step.from, now))
}

/// Describes the first difference between two documents.
fn changed(from: &Workshop, now: &Workshop) -> String {
    if let Some(gone) = from.pieces.iter().find(|piece| now.piece(&piece.id).is_none()) {
        return format!("{} deleted", gone.name);
    }
    for piece in &now.pieces {
        match from.piece(&piece.id) {
            None => return format!("{} is back", piece.name),
            Some(before) if !Rc::ptr_eq(before, piece) && before != piece => {
                return format!("{}, {}", piece.name, of_piece(before, piece));
            }
            Some(_) => {}
        }
    }
    if from.materials != now.materials {
        return "your own material".into();
    }
    of_books(&from.books, &now.books).unwrap_or_else(|| "settings".into())
}

fn of_piece(from: &Piece, now: &Piece) -> String {
    if let Some(reading) = reading(from, now) {
        return reading;
    }
    if from.name != now.name {
        return "the name".into();
    }
    if from.count != now.count {
        return format!("quantity now {}", now.count);
    }
    if let Some(surfaces) = surfaces(from, now) {
        return surfaces;
    }
    let parts: [(bool, &str); 5] = [
        (from.bays != now.bays || from.upper != now.upper, "the rows"),
        (
            from.styles != now.styles || from.counts != now.counts,
            "the details",
        ),
        (from.changes != now.changes, "the parts"),
        (from.scheme != now.scheme, "the finish"),
        (from.zones != now.zones, "a group"),
    ];
    let part = parts.iter().find(|(differs, _)| *differs);
    let part = part.map(|(_, word)| (*word).to_owned());
    part.or_else(|| of_books(&from.books, &now.books))
        .unwrap_or_default()
}

/// Says how many surfaces changed, and their current choice if it is the same for all.
fn surfaces(from: &Piece, now: &Piece) -> Option<String> {
    let names = from.choices.keys().chain(
        now.choices
            .keys()
            .filter(|name| !from.choices.contains_key(*name)),
    );
    let changed: Vec<_> = names
        .filter(|name| from.choices.get(*name) != now.choices.get(*name))
        .collect();
    let count = match changed.len() {
        0 => return None,
        1 => "1 surface".to_owned(),
        count => format!("{count} surfaces"),
    };
    let left = |name: &&String| {
        now.choices
            .get(*name)
            .is_some_and(|choice| choice.painted == Some(false))
    };
    let how = match changed.iter().filter(|name| left(name)).count() {
        all if all == changed.len() => " not painted",
        0 if changed.len() == 1 => " like its group",
        0 => " like their groups",
        _ => "",
    };
    Some(format!("{count}{how}"))
}

/// Returns the measurement that changed, and its new value.
fn reading(from: &Piece, now: &Piece) -> Option<String> {
    let mut fields = in_order(now).into_iter();
    let field = fields.find(|field| from.reading(*field) != now.reading(*field))?;
    let label = coatings::in_sentence(&field_label(now.kind, field));
    Some(match now.reading(field) {
        Some(reading) => format!("{label} now {}", super::reading(reading)),
        None => format!("{label} not measured"),
    })
}

/// Returns the book field that changed.
fn of_books(from: &Books, now: &Books) -> Option<String> {
    let book = BOOKS
        .iter()
        .find(|book| from.lines(book.key) != now.lines(book.key))?;
    let (before, after) = (from.lines(book.key), now.lines(book.key));
    let differing = match (book.is_single, before.len() == after.len()) {
        (true, _) => Some((from.only(book.key), now.only(book.key))),
        (false, false) => return Some("an entry".into()),
        (false, true) => {
            let differing = before.iter().zip(after).find(|(one, other)| one != other);
            differing.map(|(one, other)| ((**one).clone(), (**other).clone()))
        }
    };
    let field = differing.and_then(|(one, other)| {
        let mut fields = book.fields.iter();
        fields.find(|field| one.text(field.key) != other.text(field.key))
    });
    Some(field.map_or_else(|| "a note".into(), |field| coatings::in_sentence(field.label)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::Action;
    use crate::state::tests::{typed, with_piece};
    use geometry::Fill;
    use workshop::{BookEdit, PieceEdit, SchemeEdit};

    fn said(app: &crate::state::App) -> String {
        stepped(app.stepped.as_ref().unwrap(), &app.workshop)
    }

    #[test]
    fn a_step_says_what_it_changed() {
        let app = typed(&with_piece(), &["3", "33 7/8"]).update(Action::Rest);
        let back = app.update(Action::Undo);
        assert_eq!(said(&back), "Undone: Dresser, width not measured.");
        let again = back.update(Action::Redo);
        assert_eq!(said(&again), "Redone: Dresser, width now 33 7/8 in.");
        let place = crate::state::tests::FIRST_BAY;
        for (edit, word) in [
            (
                PieceEdit::Fill {
                    bay: place,
                    row: 1,
                    fill: Fill::Open,
                },
                "the rows",
            ),
            (PieceEdit::Finish(None, SchemeEdit::Coats(1, 3)), "the finish"),
            (
                PieceEdit::Painted {
                    surface: "top/top".into(),
                    painted: Some(false),
                },
                "1 surface like its group",
            ),
            (PieceEdit::Count(3), "quantity now 1"),
            (
                PieceEdit::Book(BookEdit::Write(
                    "facts",
                    "only".into(),
                    "bought".into(),
                    "20".into(),
                )),
                "seller\u{2019}s price, or what you paid",
            ),
        ] {
            let back = again.update(Action::Change(edit)).update(Action::Undo);
            assert_eq!(said(&back), format!("Undone: Dresser, {word}."));
        }
        let begun = with_piece().update(Action::Undo);
        assert_eq!(said(&begun), "Undone: Dresser deleted.");
        // The next change hides the message.
        assert_eq!(typed(&again, &["34"]).stepped, None);
    }
}
