//! The condition of a piece before work, from its book of facts.

use units::Length;

use crate::book::{Facts, FinishAge, LeadTest};
use crate::document::Piece;

/// Whether an old finish may be sanded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OldFinish {
    /// There is no old finish, it is from after the cutoff year, or a test found no lead.
    Clear,
    /// It may contain lead and has not been tested.
    Untested,
    /// It contains lead.
    Lead,
}

impl OldFinish {
    /// Returns what is known about the old finish of a piece. A test result decides. Without one, the maker's
    /// word on the age is accepted. Bare wood has no old finish.
    pub fn of(piece: &Piece) -> Self {
        let facts: Facts = piece.books.one();
        // A loose finish means there is an old finish, whatever the substrate is.
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
    /// True if the width or depth is a default.
    pub(super) is_usual: bool,
}

impl Pits {
    /// Returns the holes. The default size is that of screw holes from old knobs (common practice).
    pub(super) fn holes(facts: &Facts) -> Option<Self> {
        Self::of(facts.holes, [facts.hole_width, facts.hole_depth], [0.005, 0.012])
    }

    /// Returns the dents. The default size is that of a dent from a knock (common practice).
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
