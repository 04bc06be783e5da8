//! How finely curves are drawn.

/// How far a chord that is drawn may lie from its curve: a twentieth of a millimeter, less than a pencil line.
pub(crate) const CHORD: f64 = 5e-5;
