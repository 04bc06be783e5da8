//! Areas and amounts of what was saved: pinned, with every change and its cause.
//!
//! A line of `numbers.txt` is what a number was when it was pinned, and behind each arrow what it became since and by
//! which cause of [`workshop::results::CAUSES`]. The page tells that cause to whoever has such a piece.

use std::fmt::Write;

use workshop::learning::lessons;
use workshop::results::CAUSES;
use workshop::takeoff;

use crate::saved::SAVED;

const PINNED: &str = include_str!("numbers.txt");

/// One number: what it is, what it was at first, and what became of it.
struct Pinned<'a> {
    what: &'a str,
    first: &'a str,
    since: Vec<(&'a str, &'a str)>,
}

impl<'a> Pinned<'a> {
    fn of(line: &'a str) -> Self {
        let (what, values) = line.split_once(": ").unwrap();
        let mut values = values.split(" -> ");
        let first = values.next().unwrap();
        let since = values.map(|value| value.strip_suffix(')').unwrap().split_once(" (").unwrap());
        Pinned {
            what,
            first,
            since: since.collect(),
        }
    }

    fn now(&self) -> &'a str {
        self.since.last().map_or(self.first, |(value, _)| value)
    }
}

/// What each number is today.
fn today() -> Vec<(String, String)> {
    let mut numbers = Vec::new();
    for saved in SAVED {
        let workshop = saved.read().workshop;
        for piece in &workshop.pieces {
            let of = |what: &str| format!("{}, {}, {what}", saved.name, piece.name);
            let takeoff = takeoff(&workshop, piece, &lessons(&workshop)).unwrap();
            let area = takeoff.painted.value.as_square_metres();
            numbers.push((of("area"), format!("{area:.6} m2")));
            let share = takeoff.painted.give_or_take() * 100.0;
            numbers.push((of("give or take"), format!("{share:.2} %")));
            for line in &takeoff.materials {
                let name = takeoff.name_of(line);
                let [likely, high] = [line.need.likely(), line.need.high()].map(|volume| volume.as_litres());
                numbers.push((of(&name), format!("{likely:.4} l likely, {high:.4} l at 90 %")));
            }
        }
    }
    numbers
}

#[test]
fn areas_and_amounts_of_what_was_saved_change_for_a_named_cause_only() {
    let pinned: Vec<Pinned> = PINNED.lines().map(Pinned::of).collect();
    let today = today();
    let mut wrong = String::new();
    for (what, now) in &today {
        match pinned.iter().find(|pinned| pinned.what == what) {
            Some(pinned) if pinned.now() == now => {}
            Some(pinned) => writeln!(wrong, "{what}: {} -> {now}", pinned.now()).unwrap(),
            None => writeln!(wrong, "{what}: {now} is not pinned").unwrap(),
        }
    }
    assert!(
        wrong.is_empty(),
        "{wrong}Undo that, or name its cause: see DEVELOPERS.md, \"A change of the numbers of saved pieces\"."
    );
    assert_eq!(pinned.len(), today.len(), "a number that was pinned is gone");
}

#[test]
fn each_change_of_a_number_has_a_cause_that_the_page_tells() {
    for pinned in PINNED.lines().map(Pinned::of) {
        let mut before = pinned.first;
        for (now, key) in &pinned.since {
            assert!(
                CAUSES.iter().any(|cause| cause.key == *key),
                "{}: {key}",
                pinned.what
            );
            assert_ne!(before, *now, "{}", pinned.what);
            before = now;
        }
    }
}

/// `CAUSE=key cargo test -p workshop --test frozen -- --ignored write_what_changed`
#[test]
#[ignore = "adds to each number that changed what it is now"]
fn write_what_changed() {
    let cause = std::env::var("CAUSE").unwrap_or_default();
    let mut text = String::new();
    for (what, now) in today() {
        match PINNED.lines().find(|line| Pinned::of(line).what == what) {
            Some(line) if Pinned::of(line).now() == now => writeln!(text, "{line}").unwrap(),
            Some(line) => {
                assert!(
                    CAUSES.iter().any(|known| known.key == cause),
                    "no cause \"{cause}\""
                );
                writeln!(text, "{line} -> {now} ({cause})").unwrap();
            }
            None => writeln!(text, "{what}: {now}").unwrap(),
        }
    }
    std::fs::write("tests/frozen/numbers.txt", text).unwrap();
}
