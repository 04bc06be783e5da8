//! Small workshops for the tests of this crate.

use std::rc::Rc;

use geometry::Problem;

use crate::learning::lessons;
use crate::preparing::prepare;
use crate::work::Work;
use crate::{BookEdit, Edit, Piece, PieceEdit, Takeoff, Workshop, edges_by_zone, invented_workshop};

/// Returns the takeoff of a piece in an empty workshop.
pub(crate) fn takeoff(piece: &Piece) -> Result<Takeoff, Vec<Problem>> {
    crate::takeoff(&Workshop::default(), piece, &[])
}

/// Returns the takeoff of a piece with what the workshop's own jobs teach.
pub(crate) fn takeoff_in(workshop: &Workshop, piece: &Piece) -> Result<Takeoff, Vec<Problem>> {
    crate::takeoff(workshop, piece, &lessons(workshop))
}

/// Returns the takeoff of every piece, in order, with `None` for pieces whose measurements do not fit.
pub(crate) fn takeoffs(workshop: &Workshop) -> Vec<Option<Rc<Takeoff>>> {
    let of = |piece: &Rc<Piece>| takeoff_in(workshop, piece).ok().map(Rc::new);
    workshop.pieces.iter().map(of).collect()
}

/// Returns the work on a piece, computed without an [`Analysis`](crate::Analysis).
pub(crate) fn work(workshop: &Workshop, piece: &Piece) -> Option<Work> {
    let takeoff = takeoff_in(workshop, piece).ok()?;
    let edges = edges_by_zone(piece).ok()?;
    Some(Work {
        steps: Rc::new(prepare(workshop, piece, &takeoff, &edges)),
        takeoff: Rc::new(takeoff),
        edges: Rc::new(edges),
    })
}

/// Returns the work on every piece, in order, with `None` for pieces whose measurements do not fit.
pub(crate) fn works(workshop: &Workshop) -> Vec<Option<Work>> {
    let of = |piece: &Rc<Piece>| work(workshop, piece);
    workshop.pieces.iter().map(of).collect()
}

/// Converts the values of a line to the form that an edit needs.
pub(crate) fn values(of: &[(&'static str, &str)]) -> Vec<(&'static str, String)> {
    of.iter().map(|(key, text)| (*key, (*text).to_owned())).collect()
}

/// Returns the sample workshop with these facts for its first piece, and these habits.
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

/// Returns the sample workshop with weighed cans that have these values.
pub(crate) fn with_jobs(lines: &[&[(&'static str, &str)]]) -> Workshop {
    let mut workshop = invented_workshop();
    for (place, values) in lines.iter().enumerate() {
        let values = self::values(values);
        let add = BookEdit::Add("weighings", format!("w{place}").into(), values);
        workshop = workshop.apply(Edit::Book(add)).unwrap();
    }
    workshop
}

/// A job with a can weighed before and after.
pub(crate) const JOB: [(&str, &str); 7] = [
    ("material", "trim-enamel"),
    ("tool", "foam-roller"),
    ("coats", "2"),
    ("area", "3 m2"),
    ("share", "2 %"),
    ("before", "1400 g"),
    ("after", "780 g"),
];
