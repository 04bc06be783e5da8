//! How long the steps take, and how long one waits after them: common practice, no source. The maker's own hours go before
//! in the account of a piece.

use units::Area;

/// Minutes for a square metre, at least and at most.
type Pace = (f64, f64);

/// To get ready for a step and clear away after it, minutes.
pub(super) const SET_UP: (f64, f64) = (5.0, 15.0);
/// To wash and wipe off.
pub(super) const CLEAN: Pace = (4.0, 8.0);
/// To take off wax.
pub(super) const WAX: Pace = (3.0, 6.0);
/// To scrape off what is loose.
pub(super) const LOOSE: Pace = (2.0, 5.0);
/// To strip: laid on, left to work, taken off, and once more where it holds.
pub(super) const STRIP: Pace = (60.0, 120.0);
/// To sand with one grit.
pub(super) const GRIT: Pace = (4.0, 8.0);
/// To sand between coats.
pub(super) const BETWEEN: Pace = (2.0, 4.0);
/// To take off the dust.
pub(super) const DUST: Pace = (1.0, 2.0);
/// To fill the grain.
pub(super) const GRAIN: Pace = (10.0, 20.0);

/// Hours until it is dry after washing.
pub(super) const WASHED: f64 = 2.0;
/// Hours until a filler can be sanded.
pub(super) const FILLED: f64 = 4.0;
/// Hours under a clamp.
pub(super) const GLUED: f64 = 12.0;
/// Hours of a full day: vinegar in moving air, wood after a stripper, a paste filler (NAVEDTRA 14044 p. 8-8 for that).
pub(super) const A_DAY: f64 = 24.0;

/// Minutes on an area.
pub(super) fn on(area: Area, (low, high): Pace) -> (f64, f64) {
    (area.as_square_metres() * low, area.as_square_metres() * high)
}

/// Minutes for things that are counted.
pub(super) fn each(count: u32, (low, high): Pace) -> (f64, f64) {
    (f64::from(count) * low, f64::from(count) * high)
}
