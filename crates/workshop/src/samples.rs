//! Small workshops for the tests of this crate.

use crate::{BookEdit, Edit, PieceEdit, Workshop, invented_workshop};

/// The values of a line of a book, as an edit takes them.
pub(crate) fn values(of: &[(&'static str, &str)]) -> Vec<(&'static str, String)> {
    of.iter().map(|(key, text)| (*key, (*text).to_owned())).collect()
}

/// The invented workshop, with these facts of its first piece and these habits written down.
pub(crate) fn written_down(facts: &[(&str, &str)], habits: &[(&str, &str)]) -> Workshop {
    let mut workshop = invented_workshop();
    let id = workshop.pieces[0].id.clone();
    let write = |book, key: &str, text: &str| BookEdit::Write(book, "only".into(), key.into(), text.into());
    for (key, text) in facts {
        let edit = PieceEdit::Book(write("facts", key, text));
        workshop = workshop.apply(Edit::Piece(id.clone(), edit)).unwrap();
    }
    for (key, text) in habits {
        workshop = workshop.apply(Edit::Book(write("habits", key, text))).unwrap();
    }
    workshop
}
