//! Working times and waiting times of the steps (common practice, no source). In the account of a piece, the
//! maker's own hours take precedence.

use units::Area;

/// Minutes per square meter, minimum and maximum.
type Pace = (f64, f64);

/// Setup and cleanup for a step, in minutes.
pub(super) const SET_UP: (f64, f64) = (5.0, 15.0);
/// Washing and wiping.
pub(super) const CLEAN: Pace = (4.0, 8.0);
/// Removing wax.
pub(super) const WAX: Pace = (3.0, 6.0);
/// Scraping off loose finish.
pub(super) const LOOSE: Pace = (2.0, 5.0);
/// Stripping: apply, let it work, remove, and repeat where finish remains.
pub(super) const STRIP: Pace = (60.0, 120.0);
/// Sanding with one grit.
pub(super) const GRIT: Pace = (4.0, 8.0);
/// Sanding between coats.
pub(super) const BETWEEN: Pace = (2.0, 4.0);
/// Removing dust.
pub(super) const DUST: Pace = (1.0, 2.0);
/// Filling the grain.
pub(super) const GRAIN: Pace = (10.0, 20.0);

/// Minutes to rub the runners of one drawer and try it.
pub(super) const DRAWER: Pace = (0.5, 1.5);
/// Minutes to take photos of one piece, price it and tag it.
pub(super) const TAG: Pace = (5.0, 10.0);

/// Drying time after washing, in hours.
pub(super) const WASHED: f64 = 2.0;
/// Hours until filler can be sanded.
pub(super) const FILLED: f64 = 4.0;
/// Clamping time, in hours.
pub(super) const GLUED: f64 = 12.0;
/// A full day, in hours: for vinegar in moving air, wood after stripping, and paste filler (NAVEDTRA 14044 p.
/// 8-8 for the filler).
pub(super) const A_DAY: f64 = 24.0;

/// Returns the minutes for an area.
pub(super) fn on(area: Area, (low, high): Pace) -> (f64, f64) {
    (area.as_square_metres() * low, area.as_square_metres() * high)
}

/// Returns the minutes for a number of items.
pub(super) fn each(count: u32, (low, high): Pace) -> (f64, f64) {
    (f64::from(count) * low, f64::from(count) * high)
}
