//! The save file: versioned JSON. `SAVE-FILE.md` beside this crate describes it for people.
//!
//! Loading has steps. The text must be our JSON, and its version selects the reader. The reader takes each
//! piece separately, so that a damaged part is left out or repaired with a [`Notice`] and the rest is kept.
//! Pieces of an older version are converted to the current one. A file from a newer version is refused.

mod error;
mod record;
mod v1;
mod v2;
mod v3;
mod words;

use std::rc::Rc;

use serde::{Serialize, Serializer};
use serde_json::Value;

pub use error::{LoadError, Notice};
pub(crate) use record::Record;
pub use record::RecordError;
pub(crate) use v3::ReadPiece;
pub(crate) use v3::SchemeRecord;
pub use v3::{PieceRecord, WorkshopRecord};
pub use words::system_of;

use crate::document::{Piece, Workshop};
use crate::edit::MAX_PIECES;

/// The kind that every save file contains.
pub const KIND: &str = "coatwright-workshop";
/// The version that is written.
pub const VERSION: u64 = 3;
/// The maximum size of a file that is read. A full workshop fits: 500 photos take up to 80 MB, and 5,000
/// pieces 10 to 20 MB. A larger file would take more memory than a tablet gives a page.
pub const MAX_BYTES: usize = 128 * 1024 * 1024;

/// A workshop from a file, with notices about what was changed.
#[derive(Clone, Debug, PartialEq)]
pub struct Loaded {
    /// The workshop.
    pub workshop: Workshop,
    /// The repairs and omissions.
    pub notices: Vec<Notice>,
}

/// Reads a save file.
///
/// # Errors
/// If the file is too large, is not JSON, is not a workshop, or was written by a newer version.
///
/// # Example
/// ```
/// use workshop::format::{load, save};
/// let workshop = workshop::invented_workshop();
/// assert_eq!(load(&save(&workshop))?.workshop, workshop);
/// # Ok::<(), workshop::format::LoadError>(())
/// ```
pub fn load(text: &str) -> Result<Loaded, LoadError> {
    if text.len() > MAX_BYTES {
        return Err(LoadError::TooLarge { bytes: text.len() });
    }
    // Some editors put a byte order mark before the text.
    let text = text.trim_start_matches('\u{feff}');
    let value: Value = serde_json::from_str(text).map_err(|error| LoadError::NotJson {
        line: error.line(),
        column: error.column(),
    })?;
    load_value(value)
}

/// Reads the contents of a save file.
///
/// # Errors
/// If it is not a workshop, or was written by a newer version.
pub(crate) fn load_value(value: Value) -> Result<Loaded, LoadError> {
    if value.get("kind").and_then(Value::as_str) != Some(KIND) {
        return Err(LoadError::NotAWorkshop);
    }
    match value.get("version").and_then(Value::as_u64) {
        Some(1) => v3::load(value, of_version_1),
        Some(2) => v3::load(value, v2::piece),
        Some(3) => v3::load(value, PieceRecord::read),
        Some(version) if version > VERSION => Err(LoadError::Newer { version }),
        _ => Err(LoadError::NotAWorkshop),
    }
}

/// Writes a save file, with a line break for each entry so that two versions can be compared by eye.
pub fn save(workshop: &Workshop) -> String {
    let record = WorkshopRecord::of(workshop, |piece| Written(Rc::clone(piece)));
    let mut text = serde_json::to_string_pretty(&record).unwrap_or_default();
    text.push('\n');
    text
}

/// A piece that is converted to its record while it is written. All records at once would take the memory of
/// all photos a second time.
struct Written(Rc<Piece>);

impl Serialize for Written {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        PieceRecord::of(&self.0).serialize(serializer)
    }
}

/// Reads the record of a single piece, as in a database, from this version or an older one.
///
/// Such a record has no version. Every version wrote all entries of its records. `bays` are from format 2,
/// and `layers` of a scheme from format 3.
///
/// # Errors
/// If it is not the record of a piece.
pub fn piece_record(value: Value) -> Result<PieceRecord, RecordError> {
    if value.get("bays").is_none() {
        of_version_1(value)
    } else if value
        .get("scheme")
        .and_then(|scheme| scheme.get("layers"))
        .is_none()
    {
        v2::piece(value)
    } else {
        PieceRecord::read(value)
    }
}

fn of_version_1(value: Value) -> Result<PieceRecord, RecordError> {
    v1::PieceRecord::read(value).map(Into::into)
}

fn check_count(pieces: usize) -> Result<(), LoadError> {
    if pieces > MAX_PIECES {
        Err(LoadError::TooManyPieces { pieces })
    } else {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn file(inner: &str) -> String {
        format!("{{\"kind\": \"coatwright-workshop\", \"version\": 3, {inner}}}")
    }

    fn one_piece(inner: &str) -> String {
        file(&format!(
            "\"units\": \"us\", \"pieces\": [{{\"id\": \"a\", \"name\": \"A\", \"furniture\": \"dresser\"{inner}}}]"
        ))
    }

    fn notices(text: &str) -> Vec<String> {
        load(text)
            .unwrap()
            .notices
            .iter()
            .map(ToString::to_string)
            .collect()
    }

    #[test]
    fn a_file_that_is_not_ours_is_refused_with_its_reason() {
        assert_eq!(load("{").unwrap_err(), LoadError::NotJson { line: 1, column: 1 });
        assert_eq!(load("[]").unwrap_err(), LoadError::NotAWorkshop);
        assert_eq!(
            load("{\"kind\": \"shopping\", \"version\": 1}").unwrap_err(),
            LoadError::NotAWorkshop
        );
        let newer = file("\"pieces\": []").replace("\"version\": 3", "\"version\": 4");
        assert_eq!(load(&newer).unwrap_err(), LoadError::Newer { version: 4 });
        let large = " ".repeat(MAX_BYTES + 1);
        assert_eq!(
            load(&large).unwrap_err(),
            LoadError::TooLarge { bytes: MAX_BYTES + 1 }
        );
        let many = file(&format!("\"pieces\": [{}0]", "0,".repeat(MAX_PIECES)));
        assert_eq!(
            load(&many).unwrap_err(),
            LoadError::TooManyPieces {
                pieces: MAX_PIECES + 1
            }
        );
    }

    #[test]
    fn deep_nesting_is_an_error_and_not_a_crash() {
        let deep = "[".repeat(100_000);
        assert!(matches!(load(&deep), Err(LoadError::NotJson { .. })));
    }

    #[test]
    fn one_bad_part_is_named_and_the_rest_kept() {
        let text = one_piece(
            ", \"count\": 2, \"readings\": {\"width\": {\"typed\": \"6O\", \"unit\": \"in\"}, \"depth\": {\"typed\": \"18\", \"unit\": \"in\"}, \"girth\": {\"typed\": \"3\", \"unit\": \"in\"}}",
        );
        let loaded = load(&text).unwrap();
        let piece = &loaded.workshop.pieces[0];
        assert_eq!((piece.count, piece.readings.len()), (2, 1));
        assert_eq!(
            notices(&text),
            [
                "A: skipped the unknown measurement \u{201c}girth\u{201d}.",
                "A: skipped the width \u{201c}6O\u{201d}. \u{201c}O\u{201d} is not a unit of length. Use in, ft, mm, cm or m.",
            ]
        );
    }

    #[test]
    fn a_piece_that_is_no_piece_is_left_out_by_number() {
        let text = file("\"pieces\": [7, {\"id\": \"a\", \"name\": \"A\", \"furniture\": \"dresser\"}]");
        assert_eq!(load(&text).unwrap().workshop.pieces.len(), 1);
        assert_eq!(notices(&text).len(), 1);
        assert!(
            notices(&text)[0].starts_with("Piece 1 couldn't be read"),
            "{:?}",
            notices(&text)
        );
    }

    #[test]
    fn absurd_counts_are_brought_within_limits() {
        let text = one_piece(", \"count\": 100000, \"bays\": [{\"rows\": [{\"columns\": 4000000000}]}]");
        let piece = load(&text).unwrap().workshop.pieces[0].clone();
        assert_eq!(
            (piece.count, piece.bays[0].rows[0].columns),
            (99, geometry::MAX_COLUMNS)
        );
        assert_eq!(notices(&text).len(), 2);
    }

    #[test]
    fn pieces_with_one_name_become_pieces_with_their_own() {
        let piece = |id| format!("{{\"id\": \"{id}\", \"furniture\": \"nightstand\"}}");
        let pieces = ["a-2", "a", "a"].map(piece).join(", ");
        let loaded = load(&file(&format!("\"pieces\": [{pieces}]"))).unwrap();
        let ids: Vec<&str> = loaded.workshop.pieces.iter().map(|piece| &*piece.id.0).collect();
        assert_eq!(ids, ["a-2", "a", "a-3"]);
    }

    #[test]
    fn what_is_not_known_here_is_kept_and_written_back() {
        let text =
            one_piece(", \"photo\": {\"taken\": true}").replace("\"units\"", "\"shelf\": [1, 2], \"units\"");
        let written: Value = serde_json::from_str(&save(&load(&text).unwrap().workshop)).unwrap();
        assert_eq!(written["shelf"], serde_json::json!([1, 2]));
        assert_eq!(written["pieces"][0]["photo"], serde_json::json!({"taken": true}));
    }

    #[test]
    fn markup_in_a_name_stays_text() {
        let text = one_piece("").replace("\"A\"", "\"<img src=x onerror=alert(1)>\"");
        assert_eq!(
            load(&text).unwrap().workshop.pieces[0].name,
            "<img src=x onerror=alert(1)>"
        );
    }

    #[test]
    fn the_description_for_people_shows_a_file_that_loads() {
        let page = include_str!("../../SAVE-FILE.md");
        let example = page
            .split("```json")
            .nth(1)
            .and_then(|rest| rest.split("```").next())
            .unwrap();
        let loaded = load(example).unwrap();
        assert!(loaded.notices.is_empty(), "{:?}", loaded.notices);
        assert_eq!(loaded.workshop.pieces.len(), 2);
        for piece in &loaded.workshop.pieces {
            assert!(crate::takeoff(&loaded.workshop, piece, &[]).is_ok());
        }
    }

    #[test]
    fn the_description_for_people_names_every_entry() {
        let page = include_str!("../../SAVE-FILE.md");
        for (record, entries) in v1::RECORDS.iter().chain(v3::RECORDS) {
            for entry in *entries {
                let is_named = page.contains(&format!("`{entry}`")) || page.contains(&format!("\"{entry}\""));
                assert!(is_named, "{entry} of {record} is not described");
            }
        }
        assert!(v3::RECORDS.len() > 10);
    }

    #[test]
    fn a_record_tells_its_own_version() {
        let of = |text| piece_record(serde_json::from_str(text).unwrap()).unwrap();
        let mut notices = vec![];
        let old = of(
            "{\"id\": \"a\", \"furniture\": \"dresser\", \"rows\": [{\"columns\": 5}], \"back\": \"flush\"}",
        );
        let piece = old.into_piece(&[], &mut notices).piece;
        assert_eq!(piece.bays[0].rows[0].columns, 5);
        let record = serde_json::to_value(PieceRecord::of(&piece)).unwrap();
        assert_eq!(
            piece_record(record).unwrap().into_piece(&[], &mut notices).piece,
            piece
        );
        assert!(notices.is_empty(), "{notices:?}");
        assert!(piece_record(Value::Null).is_err());
    }

    proptest! {
        #[test]
        fn any_text_loads_or_says_why(text in "\\PC{0,200}") {
            if let Err(error) = load(&text) {
                prop_assert!(!error.to_string().is_empty());
            }
        }
    }
}
