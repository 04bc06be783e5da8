//! Phrases that people do not say, in what the tool shows: `cargo xtask phrases`.
//!
//! What is shown are the strings in the code of the crates, without tests and comments, and the text of the page's own
//! files. A string that is put together from parts is looked at part by part.

use anyhow::{Result, ensure};

use crate::invariants::{CRATES, Code, lines};
use crate::repository::Repository;

const PHRASES: &str = include_str!("phrases.txt");

/// Files of the page that are no Rust and hold words for the maker.
const FILES: [&str; 5] = [
    "www/index.html",
    "www/boot.js",
    "www/manifest.webmanifest",
    "crates/app/src/browser/device.js",
    "crates/app/src/browser/device_status.js",
];

/// Prints where the phrases stand, and how many there are of each.
pub(crate) fn print() -> Result<()> {
    let phrases: Vec<&str> = lines(PHRASES).collect();
    let mut counts = vec![0; phrases.len()];
    for (file, line, place) in places(&Repository::find()?, &phrases)? {
        if let (Some(phrase), Some(count)) = (phrases.get(place), counts.get_mut(place)) {
            println!("{file}:{line}: {phrase}");
            *count += 1;
        }
    }
    println!();
    for (phrase, count) in phrases.iter().zip(&counts).filter(|(_, count)| **count > 0) {
        println!("{count:>4}  {phrase}");
    }
    println!("{:>4}  in all", counts.iter().sum::<usize>());
    Ok(())
}

/// Checks that the tool shows none of the phrases.
pub(crate) fn check() -> Result<()> {
    let phrases: Vec<&str> = lines(PHRASES).collect();
    let faults: Vec<String> = places(&Repository::find()?, &phrases)?
        .into_iter()
        .filter_map(|(file, line, place)| {
            let phrase = phrases.get(place)?;
            Some(format!("{file}:{line}: say \"{phrase}\" in plain words."))
        })
        .collect();
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    println!("None of {} unnatural phrases is shown.", phrases.len());
    Ok(())
}

/// Where the phrases stand: the file, the line, and the number of the phrase.
fn places(repository: &Repository, phrases: &[&str]) -> Result<Vec<(String, usize, usize)>> {
    let mut places = Vec::new();
    let mut look = |file: &str, line: usize, text: &str| {
        let found = found(text, phrases).into_iter();
        places.extend(found.map(|phrase| (file.to_owned(), line, phrase)));
    };
    for (folder, _) in CRATES {
        let name = folder.split('/').nth(1).unwrap_or_default();
        for (file, code) in Code::of_crate(repository, name)? {
            for (line, text) in &code.strings {
                look(&file, *line, text);
            }
        }
    }
    for file in FILES {
        for (number, line) in repository.read(file)?.lines().enumerate() {
            look(file, number + 1, line);
        }
    }
    Ok(places)
}

/// The phrases in a text, by number, each as often as it occurs. Case does not count; a phrase begins where a word begins,
/// and its last word may go on, as in "reckoned".
fn found(text: &str, phrases: &[&str]) -> Vec<usize> {
    let text = text.to_lowercase().replace(char::is_whitespace, " ");
    let mut found = Vec::new();
    for (number, phrase) in phrases.iter().enumerate() {
        let begins = |(at, _): &(usize, &str)| {
            let before = text.get(..*at).and_then(|before| before.chars().next_back());
            before.is_none_or(|letter| !letter.is_alphanumeric())
        };
        let times = text.match_indices(phrase).filter(begins).count();
        found.extend(std::iter::repeat_n(number, times));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_phrase_is_found_in_any_case_from_the_start_of_a_word() {
        let phrases = ["reckon", "in hand", "come in:"];
        assert_eq!(
            found("Reckoned with what is in\u{a0}hand. In hand: 1", &phrases),
            [0, 1, 1]
        );
        assert_eq!(found("within hand", &phrases), [0; 0]);
        assert_eq!(found("What may come in: a", &phrases), [2]);
    }

    #[test]
    fn strings_are_found_with_their_lines_and_nothing_else() {
        let text = "//! reckon\n/// reckon\nconst A: &str = \"a\";\nfn f() {\n    println!(\"b {}\", \\\n\"c\");\n}\n\
                    #[cfg(test)]\nmod tests {\n    const D: &str = \"d\";\n}\n";
        let code = Code::of(&text.replace("\\\n", "\n")).unwrap();
        let strings: Vec<(usize, &str)> = code
            .strings
            .iter()
            .map(|(line, text)| (*line, text.as_str()))
            .collect();
        assert_eq!(strings, [(3, "a"), (5, "b {}"), (6, "c")]);
    }

    #[test]
    fn phrases_are_in_lower_case_and_stand_once() {
        let phrases: Vec<&str> = lines(PHRASES).collect();
        assert!(phrases.len() > 30);
        for phrase in &phrases {
            assert_eq!(*phrase, phrase.to_lowercase().trim());
            assert_eq!(
                phrases.iter().filter(|other| *other == phrase).count(),
                1,
                "{phrase}"
            );
        }
    }
}
