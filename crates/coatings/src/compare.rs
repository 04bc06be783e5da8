//! Comparing tools at equal dry film: two thin coats are not two thick ones.

use crate::tool::Tool;

/// How many coats with `tool` reach the film of this many coats with `other`, at the middle of their films.
///
/// # Example
/// ```
/// let (roller, brush) = (coatings::tool("foam-roller").unwrap(), coatings::tool("brush").unwrap());
/// assert_eq!(coatings::coats_to_match(roller, brush, 2), 3);
/// assert_eq!(coatings::coats_to_match(brush, roller, 3), 3);
/// ```
pub fn coats_to_match(tool: &Tool, other: &Tool, coats: u32) -> u32 {
    let needed = f64::from(coats) * other.wet_film.middle() / tool.wet_film.middle();
    // A hair above a whole number is the noise of the division, not another coat.
    (needed - 1e-9).ceil() as u32
}
