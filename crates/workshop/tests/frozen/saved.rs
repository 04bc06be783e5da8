//! A file and a link of every version: what each of them means is pinned for good.

use std::path::PathBuf;

use workshop::PieceId;
use workshop::format::{Loaded, Notice, load, save};
use workshop::out::{link_text, read_link};

use crate::{holds, meaning};

const ADVICE: &str = "What was saved means for good what it meant when it was saved. Mend the reading; the text in \
    tests/frozen/saved stays as it is.";

/// A text that was saved once, and what it means.
pub(crate) struct Saved {
    /// Where it comes from.
    pub name: &'static str,
    text: &'static str,
    meaning: &'static str,
}

macro_rules! saved {
    ($($name:literal)*) => {
        &[$(Saved {
            name: $name,
            text: include_str!(concat!("saved/", $name, ".json")),
            meaning: include_str!(concat!("saved/", $name, ".txt")),
        }),*]
    };
}

/// Written by the program of its time, but for some that were written by hand: an `example` shows all that a version
/// holds, and a `least` hardly more than it must have, so that all else stands in.
pub(crate) const SAVED: &[Saved] = saved! {
    "file-1" "file-1-least"
    "file-2" "file-2-example" "file-2-least"
    "file-3-cans" "file-3-no-cans" "file-3" "file-3-example" "file-3-least" "file-3-editions"
    "link-3-cans-dresser" "link-3-cans-hutch" "link-3-no-cans-dresser" "link-3-no-cans-hutch"
    "link-3-dresser" "link-3-hutch" "link-3-editions-dresser" "link-3-editions-hutch"
};

impl Saved {
    /// What the page of today reads from it.
    pub(crate) fn read(&self) -> Loaded {
        if self.name.starts_with("link") {
            read_link(self.text, PieceId("sent".into())).unwrap()
        } else {
            load(self.text).unwrap()
        }
    }
}

/// A can that a layer had in hand stands on the shelf since all cans do, where every layer of its material and color counts it;
/// the cans of the usual finish of new pieces, which were none, are gone. The lines that this changed are in `file-2-example`,
/// `file-3-example` and `link-3-cans-hutch`.
#[test]
fn what_was_saved_means_what_it_meant() {
    for saved in SAVED {
        let Loaded { workshop, notices } = saved.read();
        let what = format!("{} means something else.", saved.name);
        holds(&what, &meaning::of(&workshop), saved.meaning, ADVICE);
        // The coats that links left out before they named their edition cannot be told.
        let is_unsure = saved.name.starts_with("link-3-") && !saved.name.starts_with("link-3-editions-");
        let said = |notice: &Notice| matches!(notice, Notice::CoatsLeftOut { .. });
        assert!(notices.iter().all(said), "{}: {notices:?}", saved.name);
        assert_eq!(notices.len(), usize::from(is_unsure), "{}", saved.name);
    }
}

#[test]
fn what_was_saved_means_the_same_when_it_is_saved_again() {
    for saved in SAVED {
        let workshop = saved.read().workshop;
        assert_eq!(
            load(&save(&workshop)).unwrap().workshop,
            workshop,
            "{}",
            saved.name
        );
        for piece in &workshop.pieces {
            let text = link_text(piece, &workshop.materials).unwrap();
            let Loaded {
                workshop: sent,
                notices,
            } = read_link(&text, piece.id.clone()).unwrap();
            assert!(notices.is_empty(), "{}: {notices:?}", saved.name);
            // Books stay at home.
            let mut piece = (**piece).clone();
            piece.books = sent.pieces[0].books.clone();
            let sent = (*sent.pieces[0]).clone();
            assert_eq!(sent.with_new_ids(), piece.with_new_ids(), "{}", saved.name);
        }
    }
}

/// What is in the folder is in the list.
#[test]
fn every_saved_text_is_looked_at() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/frozen/saved");
    let files = std::fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().path());
    let texts = files.filter(|file| file.extension().is_some_and(|ending| ending == "json"));
    let mut names: Vec<String> = texts
        .map(|file| file.file_stem().unwrap().to_str().unwrap().to_owned())
        .collect();
    names.sort_unstable();
    let mut listed: Vec<&str> = SAVED.iter().map(|saved| saved.name).collect();
    listed.sort_unstable();
    assert_eq!(names, listed);
}

#[test]
#[ignore = "writes what new texts mean"]
fn write_what_they_mean() {
    for saved in SAVED.iter().filter(|saved| saved.meaning.is_empty()) {
        let file = format!("tests/frozen/saved/{}.txt", saved.name);
        std::fs::write(file, meaning::of(&saved.read().workshop)).unwrap();
    }
}
