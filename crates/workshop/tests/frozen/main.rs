//! What was saved means for good what it meant when it was saved.
//!
//! `editions/` holds every default of each edition, `saved/` a file and a link of every version with what each of them
//! means. `DEVELOPERS.md` says what to do when a test here fails, under "A usual size, style or scheme" and "A change
//! of the numbers of saved pieces".

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop where something saved is broken"
)]

mod defaults;
mod keys;
mod meaning;
mod numbers;
mod saved;

use units::Length;

/// A length as it is pinned: in millimetres, to a ten-thousandth.
fn mm(length: Length) -> String {
    let text = format!("{:.4}", length.as_millimetres());
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Compares a text with the one that is committed, and names the first line that differs.
#[track_caller]
fn holds(what: &str, actual: &str, committed: &str, advice: &str) {
    let pairs = actual.lines().zip(committed.lines());
    let differs = pairs.into_iter().find(|(actual, committed)| actual != committed);
    if let Some((actual, committed)) = differs {
        panic!("{what}\n  was: {committed}\n  now: {actual}\n{advice}");
    }
    let rest = |long: &str, short: &str| {
        let count = short.lines().count();
        long.lines().skip(count).collect::<Vec<_>>().join("\n")
    };
    let (gone, new) = (rest(committed, actual), rest(actual, committed));
    assert!(
        gone.is_empty() && new.is_empty(),
        "{what}\n  gone: {gone}\n  new: {new}\n{advice}"
    );
}
