//! Axis-aligned bounding boxes.

/// A box between its lowest and its highest corner, meters.
pub(crate) type Bounds = ([f64; 3], [f64; 3]);

/// The box around nothing.
pub(crate) const EMPTY: Bounds = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);

/// The smallest box around both.
pub(crate) fn union((a_low, a_high): Bounds, (b_low, b_high): Bounds) -> Bounds {
    (each(a_low, b_low, f64::min), each(a_high, b_high, f64::max))
}

/// The overlap of both. Where they are apart along an axis, its lowest corner is above its highest.
pub(crate) fn intersection((a_low, a_high): Bounds, (b_low, b_high): Bounds) -> Bounds {
    (each(a_low, b_low, f64::max), each(a_high, b_high, f64::min))
}

fn each([ax, ay, az]: [f64; 3], [bx, by, bz]: [f64; 3], pick: fn(f64, f64) -> f64) -> [f64; 3] {
    [pick(ax, bx), pick(ay, by), pick(az, bz)]
}
