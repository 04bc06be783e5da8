//! What the maker found on a piece, as its book of facts has it.

use units::Length;

use crate::book::{Facts, FinishAge, LeadTest};
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
        let facts: Facts = piece.books.one();
        // What comes off in places is there, whatever the rest goes onto.
        let is_there = facts.loose
            || piece
                .schemes()
                .any(|scheme| scheme.condition.substrate.is_old_finish());
        match (facts.lead, facts.age) {
            (Some(LeadTest::Positive), _) => OldFinish::Lead,
            (Some(LeadTest::Negative), _) | (_, Some(FinishAge::Later)) => OldFinish::Clear,
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
    pub(super) fn holes(facts: &Facts) -> Option<Self> {
        Self::of(facts.holes, [facts.hole_width, facts.hole_depth], [0.005, 0.012])
    }

    /// Dents of a knock, unless the maker measured them (common practice).
    pub(super) fn dents(facts: &Facts) -> Option<Self> {
        Self::of(facts.dents, [facts.dent_width, facts.dent_depth], [0.015, 0.002])
    }

    fn of(count: Option<u32>, own: [Option<Length>; 2], usual: [f64; 2]) -> Option<Self> {
        let [width, depth] = own.map(|size| size.filter(|size| *size > Length::ZERO));
        let [usual_width, usual_depth] = usual.map(Length::metres);
        Some(Pits {
            count: count.filter(|count| *count > 0)?,
            width: width.unwrap_or(usual_width),
            depth: depth.unwrap_or(usual_depth),
            is_usual: width.is_none() || depth.is_none(),
        })
    }
}
