//! Texts that mean another number where another sign stands before decimals, as `1,250` does: which of its numbers was
//! meant when it was typed. A save file has that number beside such a text.

use units::{Decimals, in_other_signs};

/// Reads a saved text so that it comes to the number beside it. Where there is none, or the text cannot come to it, either
/// sign stands before decimals.
///
/// # Errors
/// If the text cannot be read.
pub(crate) fn read_meant<T, E>(
    read: impl Fn(Decimals) -> Result<T, E>,
    is_meant: impl Fn(&T) -> bool,
) -> Result<T, E> {
    let both = [Decimals::Point, Decimals::Comma];
    let meant = both
        .into_iter()
        .find_map(|decimals| read(decimals).ok().filter(&is_meant));
    meant.map_or_else(|| read(Decimals::Either), Ok)
}

/// A text as it reads here, so that it comes to the same if it is typed once more.
pub(crate) fn written_here(
    typed: &str,
    decimals: Decimals,
    is_meant: impl Fn(&str, Decimals) -> bool,
) -> String {
    if is_meant(typed, decimals) {
        return typed.to_owned();
    }
    let other = in_other_signs(typed);
    match is_meant(&other, decimals) {
        true => other,
        false => typed.to_owned(),
    }
}

/// Whether two numbers are the same but for the noise of writing them down.
pub(crate) fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(other.abs())
}
