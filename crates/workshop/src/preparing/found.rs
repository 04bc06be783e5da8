//! What the maker found on a piece, as its book of facts has it.

use units::Length;

use crate::book::Line;
use crate::document::Piece;

/// What may be done to an old finish.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OldFinish {
    /// There is none, or it is from after the landmark, or a test found no lead.
    Clear,
    /// It may hold lead, and nobody tested it.
    Untested,
    /// It holds lead.
    Lead,
}

impl OldFinish {
    /// What is known of the old finish of a piece. A test decides; without one a later finish is taken at the maker's word,
    /// and wood that is bare has none.
    pub fn of(piece: &Piece) -> Self {
        let facts = piece.books.only("facts");
        // What comes off in places is there, whatever the rest goes onto.
        let is_there = facts.is("loose")
            || piece
                .schemes()
                .any(|scheme| scheme.condition.ground.is_old_finish());
        match (facts.text("lead"), facts.text("age")) {
            ("positive", _) => OldFinish::Lead,
            ("negative", _) | (_, "later") => OldFinish::Clear,
            _ if is_there => OldFinish::Untested,
            _ => OldFinish::Clear,
        }
    }
}

/// Holes or dents of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pits {
    pub(super) count: u32,
    pub(super) width: Length,
    pub(super) depth: Length,
    /// Whether width and depth are usual ones and not the maker's.
    pub(super) is_usual: bool,
}

impl Pits {
    /// Screw holes of old knobs, unless the maker measured them (common practice).
    pub(super) fn holes(facts: &Line) -> Option<Self> {
        Self::of(facts, ["holes", "hole-width", "hole-depth"], [0.005, 0.012])
    }

    /// Dents of a knock, unless the maker measured them (common practice).
    pub(super) fn dents(facts: &Line) -> Option<Self> {
        Self::of(facts, ["dents", "dent-width", "dent-depth"], [0.015, 0.002])
    }

    fn of(facts: &Line, [count, width, depth]: [&str; 3], usual: [f64; 2]) -> Option<Self> {
        let number = |key| facts.number("facts", key).filter(|number| *number > 0.0);
        let (own_width, own_depth) = (number(width), number(depth));
        Some(Pits {
            count: facts.count(count).filter(|count| *count > 0)?,
            width: Length::metres(own_width.unwrap_or(usual[0])),
            depth: Length::metres(own_depth.unwrap_or(usual[1])),
            is_usual: own_width.is_none() || own_depth.is_none(),
        })
    }
}
