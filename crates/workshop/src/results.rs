//! Changes of this program that altered the results of saved pieces, and the notices about them. Each maker
//! sees a notice once.
//!
//! A bug fix or a better-sourced value can change areas and amounts of a piece that nobody edited. Each such
//! change is listed in [`CAUSES`] and increases [`RESULTS`]. A piece stores the version of the results it was
//! last shown with.

use std::rc::Rc;

use geometry::{Edge, Kind, styles};

pub use crate::document::RESULTS;
use crate::document::{ChangeKind, Piece, Workshop};
use crate::takeoff::unmeasured;

/// The maximum number of pieces named in one sentence.
const NAMED: usize = 3;

/// A change of this program that altered results.
pub struct Cause {
    /// The version of the results that introduced it.
    pub since: u64,
    /// The key used by the tests that pin the results of old files. It never changes.
    pub key: &'static str,
    /// The possible effect, as the start of the notice.
    pub what: &'static str,
    /// The reason, in one sentence.
    pub why: &'static str,
    /// Returns true if it may have changed this piece.
    touches: fn(&Piece) -> bool,
}

/// All such changes, oldest first.
pub const CAUSES: [Cause; 3] = [
    Cause {
        since: 2,
        key: "faces-of-altered-pieces",
        what: "Areas may have changed",
        why: "Which faces show is now worked out from every part.",
        touches: |piece| {
            let mut changes = piece.changes.iter();
            let is_altered = changes.any(|change| !matches!(change.kind, ChangeKind::Hole { .. }));
            // The backs of these pieces, and the area behind an apron, used to count as visible.
            let is_by_parts = matches!(piece.kind, Kind::PedestalDesk | Kind::Headboard);
            is_altered || is_by_parts || piece.styles.base == styles::BaseStyle::SplayedLegs
        },
    },
    Cause {
        since: 2,
        key: "measured-top-edge",
        what: "Areas may have changed",
        why: "A measured top edge is no longer counted twice.",
        touches: |piece| {
            let has_top = piece.furniture().style_fields().contains(&&styles::TOP_EDGE);
            has_top && piece.styles.top_edge == Edge::Measured
        },
    },
    Cause {
        since: 2,
        key: "spread-of-guesses",
        what: "Ranges may be wider",
        why: "Guessed sizes now vary as much as they do on real furniture.",
        touches: |piece| !unmeasured(piece).is_empty(),
    },
];

impl Cause {
    /// Returns the notice for these pieces, or `None` if none of them was shown before this change.
    fn news(&self, pieces: &[Rc<Piece>]) -> Option<String> {
        let touched = pieces
            .iter()
            .filter(|piece| piece.shown < self.since && !piece.is_invented() && (self.touches)(piece));
        let names: Vec<&str> = touched.map(|piece| piece.called()).collect();
        (!names.is_empty()).then(|| format!("{} for {}. {}", self.what, listed(&names), self.why))
    }
}

/// Returns the notices for this workshop: one sentence for each cause, with the pieces that it may have
/// changed. Sample pieces are skipped.
pub fn news(workshop: &Workshop) -> Vec<String> {
    let causes = CAUSES.iter();
    causes.filter_map(|cause| cause.news(&workshop.pieces)).collect()
}

impl Workshop {
    /// Marks all notices as seen.
    pub fn told(mut self) -> Workshop {
        for piece in &mut self.pieces {
            if piece.shown < RESULTS {
                Rc::make_mut(piece).shown = RESULTS;
            }
        }
        self
    }
}

impl Piece {
    fn called(&self) -> &str {
        if self.name.is_empty() {
            self.kind.label()
        } else {
            &self.name
        }
    }
}

/// Joins names for a sentence.
fn listed(names: &[&str]) -> String {
    let mut shown: Vec<String> = names.iter().take(NAMED).map(|name| (*name).to_owned()).collect();
    let more = names.len() - shown.len();
    if more > 0 {
        shown.push(format!("{more} more"));
    }
    match shown.as_slice() {
        [first @ .., last] if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        _ => shown.concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::FIRST_RESULTS;
    use crate::format::{load, save};
    use crate::{Edit, PieceChange, PieceEdit, PieceId, Reading, invented_workshop};
    use geometry::Kind;
    use units::LengthUnit;

    fn shown(name: &str, kind: Kind, shown: u64, edits: &[PieceEdit]) -> Workshop {
        let id = PieceId("a".into());
        let add = Edit::Add { id: id.clone(), kind };
        let name = PieceEdit::Name(name.into());
        let edits = std::iter::once(&name).chain(edits);
        let edits = edits.map(|edit| Edit::Piece(id.clone(), edit.clone()));
        let mut workshop = std::iter::once(add)
            .chain(edits)
            .fold(Workshop::default(), |workshop, edit| {
                workshop.apply(edit).unwrap()
            });
        Rc::make_mut(&mut workshop.pieces[0]).shown = shown;
        workshop
    }

    /// Fills in all required measurements.
    fn measured(mut workshop: Workshop) -> Workshop {
        for field in unmeasured(&workshop.pieces[0]) {
            let length = workshop.pieces[0]
                .furniture()
                .length(Piece::field(field).unwrap());
            let reading = Reading::new(&format!("{} m", length.as_metres()), LengthUnit::Metre).ok();
            let edit = PieceEdit::Measure(field, reading);
            workshop = workshop.apply(Edit::Piece(PieceId("a".into()), edit)).unwrap();
        }
        workshop
    }

    #[test]
    fn each_cause_names_the_pieces_that_it_touches() {
        let plain = || measured(shown("Plain", Kind::Bench, 1, &[]));
        assert_eq!(news(&plain()), [""; 0]);
        let guessed = shown("Bench", Kind::Bench, 1, &[]);
        assert_eq!(
            news(&guessed),
            ["Ranges may be wider for Bench. Guessed sizes now vary as much as they do on real furniture."]
        );
        let moved = PieceEdit::AddChange(PieceChange::new(ChangeKind::Remove { part: "top".into() }));
        let altered = measured(shown("Bench", Kind::Bench, 1, &[moved]));
        assert_eq!(news(&altered).len(), 1);
        assert!(news(&altered)[0].starts_with("Areas may have changed for Bench."));
        let edge = PieceEdit::Style {
            choice: "top-edge",
            answer: "measured",
        };
        let edged = measured(shown("Desk", Kind::Desk, 1, std::slice::from_ref(&edge)));
        assert_eq!(
            news(&edged),
            ["Areas may have changed for Desk. A measured top edge is no longer counted twice."]
        );
        // A hole has no faces, and a frame has no top.
        let hole = PieceEdit::AddChange(PieceChange::new(ChangeKind::Hole {
            surface: "top/top".into(),
        }));
        assert_eq!(news(&measured(shown("Bench", Kind::Bench, 1, &[hole]))), [""; 0]);
        assert_eq!(news(&measured(shown("Frame", Kind::Frame, 1, &[edge]))), [""; 0]);
    }

    #[test]
    fn what_was_told_is_not_told_again_in_this_workshop_or_in_its_file() {
        let old = shown("Bench", Kind::Bench, 1, &[]);
        let told = old.clone().told();
        assert_eq!((news(&old).len(), news(&told).len()), (1, 0));
        assert_eq!(load(&save(&old)).unwrap().workshop, old);
        assert_eq!(load(&save(&told)).unwrap().workshop, told);
        // A newer page has shown later results. That version is kept.
        let newer = shown("Bench", Kind::Bench, RESULTS + 1, &[]);
        assert_eq!(newer.clone().told(), newer);
        // A new piece has only been shown with the current results.
        assert_eq!(
            shown("Bench", Kind::Bench, RESULTS, &[]).told().pieces[0].shown,
            RESULTS
        );
        assert_eq!(Piece::new(PieceId("a".into()), Kind::Bench).shown, RESULTS);
    }

    #[test]
    fn nothing_is_told_of_invented_pieces() {
        let mut workshop = invented_workshop();
        for piece in &mut workshop.pieces {
            Rc::make_mut(piece).shown = 1;
        }
        assert_eq!(news(&workshop), [""; 0]);
    }

    #[test]
    fn few_pieces_are_named_and_many_are_counted() {
        assert_eq!(listed(&["A"]), "A");
        assert_eq!(listed(&["A", "B"]), "A and B");
        assert_eq!(listed(&["A", "B", "C"]), "A, B and C");
        assert_eq!(listed(&["A", "B", "C", "D", "E"]), "A, B, C and 2 more");
    }

    #[test]
    fn every_cause_belongs_to_results_that_came() {
        let since: Vec<u64> = CAUSES.iter().map(|cause| cause.since).collect();
        assert!(since.is_sorted() && since.iter().all(|since| *since > FIRST_RESULTS));
        assert_eq!(since.last(), Some(&RESULTS), "the last results have a cause");
        for cause in &CAUSES {
            assert!(
                cause.why.ends_with('.') && !cause.what.ends_with('.'),
                "{}",
                cause.key
            );
        }
    }
}
