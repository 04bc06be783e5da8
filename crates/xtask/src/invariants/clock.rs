//! No clock and no randomness in `workshop` and the crates below it: the same document gives the same answer.

use anyhow::{Result, ensure};

use super::code::Code;
use crate::repository::Repository;

/// The crates that have neither.
const CRATES: [&str; 6] = ["units", "colour", "geometry", "coatings", "timetable", "workshop"];

/// Names that stand for a clock, for chance, or for a browser that has both. Maps by hash are among them, as their order is
/// one of chance. The generators of `rand_pcg` begin with a seed that is given, so they are none.
const NAMES: [&str; 20] = [
    "DefaultHasher",
    "HashMap",
    "HashSet",
    "Instant",
    "OsRng",
    "RandomState",
    "SysRng",
    "SystemTime",
    "UNIX_EPOCH",
    "chrono",
    "fastrand",
    "from_entropy",
    "from_os_rng",
    "getrandom",
    "jiff",
    "js_sys",
    "rand",
    "thread_rng",
    "web_sys",
    "web_time",
];

/// Checks these crates.
pub(super) fn check(repository: &Repository) -> Result<()> {
    let mut faults = Vec::new();
    for name in CRATES {
        for (file, code) in Code::of_crate(repository, name)? {
            faults.extend(found(&code).into_iter().map(|name| {
                format!("{file}: {name} is a clock or randomness. Pass its result as an argument.")
            }));
        }
    }
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    println!("{} crates have no clock or randomness.", CRATES.len());
    Ok(())
}

fn found(code: &Code) -> Vec<String> {
    let is_one = |path: &&Vec<String>| {
        let is_std_time = path.first().is_some_and(|first| first == "std")
            && path.get(1).is_some_and(|second| second == "time");
        is_std_time || path.iter().any(|name| NAMES.contains(&name.as_str()))
    };
    let paths = code.paths.iter().filter(is_one).map(|path| path.join("::"));
    paths.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_and_chance_are_found_outside_tests() {
        for (text, expected) in [
            ("use std::time::Duration;", vec!["std::time::Duration"]),
            (
                "fn f() { let t = std::time::Instant::now(); }",
                vec!["std::time::Instant::now"],
            ),
            ("fn f() { dbg!(js_sys::Date::now()); }", vec!["js_sys::Date::now"]),
            (
                "use std::{fmt, collections::{BTreeMap, HashMap}};",
                vec!["std::collections::HashMap"],
            ),
            ("fn f() -> f64 { rand::random() }", vec!["rand::random"]),
            (
                "use rand_pcg::Pcg32;\n// std::time\n#[cfg(test)]\nmod tests { use std::time::Instant; }",
                vec![],
            ),
        ] {
            assert_eq!(found(&Code::of(text).unwrap()), expected, "{text}");
        }
    }
}
