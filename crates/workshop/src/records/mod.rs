//! Database records: one for each piece, and one for the workshop, which lists the pieces.
//!
//! [`read`] returns the workshop and anything that could not be read. As long as something is unread, nothing
//! may be written over it. [`Changes`] returns the records to write for a change of the document. When two
//! tabs save at the same time, a page may have an older document than the database. Each change is therefore
//! applied again to the newest records, so that no old record overwrites a newer one.

mod merge;

use std::fmt;
use std::rc::Rc;

use serde_json::{Map, Value};
use units::SortedMap;

use crate::document::{OwnMaterial, Piece, PieceId, Workshop};
use crate::format::Record;
use crate::format::{KIND, Notice, PieceRecord, ReadPiece, VERSION, WorkshopRecord, piece_record};
use crate::stock::OldCan;
use merge::merged;

/// The records as found: their texts, or `None` if the browser could not return them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// The record of the workshop. The outer `None` means that there is none.
    pub workshop: Option<Option<String>>,
    /// The records of the pieces, by key.
    pub pieces: Vec<(String, Option<String>)>,
}

/// The result of reading records.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Saved {
    /// The workshop, as far as it could be read.
    pub workshop: Rc<Workshop>,
    /// The workshop as stored, if it differs. The difference must be written.
    pub as_found: Rc<Workshop>,
    /// The data that could not be read as it was, if any.
    pub unread: Option<Unread>,
}

/// Records that could not be read as they were saved.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unread {
    /// The faults, one sentence each.
    pub faults: Vec<Fault>,
    /// The faulty records as found, by key, if they are text at all.
    records: Map<String, Value>,
}

/// A fault in the records.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Fault {
    /// There are pieces but no record of the workshop.
    NoWorkshop,
    /// The record of the workshop cannot be read.
    Workshop,
    /// Part of the record of the workshop cannot be read.
    Entry(String),
    /// The record of a piece cannot be read. This is the maker's name for it, or else its key in the
    /// database.
    Piece(String),
    /// The records were written by a newer version of the tool.
    Newer,
    /// A value in a record was repaired or dropped.
    Mended(Notice),
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::NoWorkshop => f.write_str("Your settings, shelf and local prices are missing."),
            Fault::Workshop => f.write_str("Your settings, shelf and local prices can\u{2019}t be read."),
            Fault::Entry(entry) => write!(
                f,
                "The workshop\u{2019}s \u{201c}{entry}\u{201d} can\u{2019}t be read."
            ),
            Fault::Piece(name) => write!(f, "The piece \u{201c}{name}\u{201d} can\u{2019}t be read."),
            Fault::Newer => {
                f.write_str("A newer version of this page saved your work. Reload to get that version.")
            }
            Fault::Mended(notice) => notice.fmt(f),
        }
    }
}

/// The save file entry for records that could not be read. It is kept like any unknown entry.
const UNREAD: &str = "unread";

impl Unread {
    /// Returns a workshop to save to a file, with the unreadable records included.
    pub fn beside(&self, workshop: &Workshop) -> Workshop {
        let mut whole = workshop.clone();
        if !self.records.is_empty() {
            whole.beyond.insert(UNREAD.into(), self.records.clone().into());
        }
        whole
    }

    fn note(&mut self, fault: Fault, name: &str, text: Option<&str>) {
        self.faults.push(fault);
        if let Some(text) = text {
            // Text that is not JSON is kept as a string.
            let value = serde_json::from_str(text).unwrap_or_else(|_| text.into());
            self.records.insert(name.to_owned(), value);
        }
    }
}

/// The key of the workshop record in a file of unreadable records. No piece has this key because the browser
/// assigns those.
const WORKSHOP: &str = "workshop";

/// Reads the records. Returns `None` if nothing was ever saved.
pub fn read(found: &Found) -> Option<Saved> {
    if found.workshop.is_none() && found.pieces.is_empty() {
        return None;
    }
    let mut unread = Unread::default();
    let (mut workshop, listed) = workshop_of(found, &mut unread);
    let mut pieces: SortedMap<Rc<str>, Rc<Piece>> = SortedMap::new();
    let mut cans: SortedMap<Rc<str>, Vec<OldCan>> = SortedMap::new();
    for (name, text) in &found.pieces {
        let text = text.as_deref();
        let mut notices = Vec::new();
        match piece_of(name, text, &workshop.materials, &mut notices) {
            Some(read) => {
                for notice in notices {
                    unread.note(Fault::Mended(notice), name, text);
                }
                let id = read.piece.id.0.clone();
                pieces.insert(id.clone(), Rc::new(read.piece));
                if !read.cans.is_empty() {
                    cans.insert(id, read.cans);
                }
            }
            None => unread.note(Fault::Piece(called(name, text)), name, text),
        }
    }
    workshop.pieces = listed
        .iter()
        .filter_map(|id| pieces.remove(id.as_str()))
        .collect();
    // A piece that another tab added while this one wrote its list is in no list, so it goes last.
    workshop.pieces.extend(pieces.into_iter().map(|(_, piece)| piece));
    let as_found = Rc::new(workshop);
    let moved = (!cans.is_empty()).then(|| Rc::new(with_cans(&as_found, &cans)));
    Some(Saved {
        workshop: moved.unwrap_or_else(|| Rc::clone(&as_found)),
        as_found,
        unread: Some(unread).filter(|unread| !unread.faults.is_empty()),
    })
}

/// Returns a workshop with the cans from older records on its shelf. The pieces of these records change too,
/// so that their records are rewritten.
fn with_cans(found: &Workshop, cans: &SortedMap<Rc<str>, Vec<OldCan>>) -> Workshop {
    let mut moved = found.clone();
    let mut old = Vec::new();
    for piece in &mut moved.pieces {
        if let Some(cans) = cans.get(&piece.id.0) {
            *piece = Rc::new((**piece).clone());
            old.extend(cans.iter().cloned());
        }
    }
    moved.take_over(old);
    moved
}

/// Returns the workshop without its pieces, and their keys in order.
fn workshop_of(found: &Found, unread: &mut Unread) -> (Workshop, Vec<String>) {
    let text = found.workshop.as_ref().and_then(Option::as_deref);
    if found.workshop.is_none() {
        unread.note(Fault::NoWorkshop, WORKSHOP, None);
        return Default::default();
    }
    let Some(Value::Object(mut entries)) = text.and_then(|text| serde_json::from_str(text).ok()) else {
        unread.note(Fault::Workshop, WORKSHOP, text);
        return Default::default();
    };
    if entries.get("version").and_then(Value::as_u64) > Some(VERSION) {
        unread.note(Fault::Newer, WORKSHOP, text);
    }
    // One unreadable entry must not invalidate the others.
    let bare = || -> Map<String, Value> {
        [
            ("kind".to_owned(), KIND.into()),
            ("version".to_owned(), VERSION.into()),
        ]
        .into_iter()
        .collect()
    };
    let mut kept = bare();
    for name in entries.keys().cloned().collect::<Vec<_>>() {
        let Some(value) = entries.remove(&name) else {
            continue;
        };
        let mut alone = bare();
        alone.insert(name.clone(), value);
        match WorkshopRecord::<Value>::read(Value::Object(alone.clone())) {
            Ok(_) => kept.extend(alone.remove_entry(&name)),
            Err(_) => unread.note(Fault::Entry(name), WORKSHOP, text),
        }
    }
    let Ok(record) = WorkshopRecord::<Value>::read(Value::Object(kept)) else {
        unread.note(Fault::Workshop, WORKSHOP, text);
        return Default::default();
    };
    let listed = record
        .pieces
        .iter()
        .filter_map(|id| Some(id.as_str()?.to_owned()));
    let listed = listed.collect();
    let mut notices = Vec::new();
    let workshop = record.into_workshop(&mut notices);
    for notice in notices {
        unread.note(Fault::Mended(notice), WORKSHOP, text);
    }
    (workshop, listed)
}

/// Reads a piece from its record. The key of the record is the id of the piece.
fn piece_of(
    name: &str,
    text: Option<&str>,
    own: &[Rc<OwnMaterial>],
    notices: &mut Vec<Notice>,
) -> Option<ReadPiece> {
    let mut value: Value = serde_json::from_str(text?).ok()?;
    value.as_object_mut()?.insert("id".into(), name.into());
    Some(piece_record(value).ok()?.into_piece(own, notices))
}

/// Returns the maker's name for the piece of an unreadable record, if it contains one, or else its key.
fn called(name: &str, text: Option<&str>) -> String {
    let value: Option<Value> = text.and_then(|text| serde_json::from_str(text).ok());
    let called = value.as_ref().and_then(|value| value.get("name")?.as_str());
    let called = called.filter(|called| !called.is_empty()).unwrap_or(name);
    crate::edit::shortened(called)
}

/// The key of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Key {
    /// The key of the workshop record.
    Workshop,
    /// The key of a piece record.
    Piece(PieceId),
}

/// The records to write for a change of the document.
pub struct Changes<'a> {
    now: &'a Workshop,
    before: &'a Workshop,
    pieces: Vec<Changed<'a>>,
    of_workshop: bool,
}

/// A piece before and after a change.
struct Changed<'a> {
    before: Option<&'a Rc<Piece>>,
    now: Option<&'a Rc<Piece>>,
}

impl<'a> Changes<'a> {
    /// Returns the change from one document to another.
    pub fn between(before: &'a Workshop, now: &'a Workshop) -> Self {
        // Nearly all pieces are the same object at the same index.
        let same = |(one, other): &(&Rc<Piece>, &Rc<Piece>)| Rc::ptr_eq(one, other);
        let pairs = before.pieces.iter().zip(&now.pieces);
        let start = pairs.take_while(same).count();
        let [old, new] = [&before.pieces[start..], &now.pieces[start..]];
        let end = old.iter().rev().zip(new.iter().rev()).take_while(same).count();
        let [old, new] = [&old[..old.len() - end], &new[..new.len() - end]];
        let by_name = |pieces: &'a [Rc<Piece>]| -> SortedMap<&'a PieceId, &'a Rc<Piece>> {
            pieces.iter().map(|piece| (&piece.id, piece)).collect()
        };
        let [old_names, new_names] = [old, new].map(by_name);
        let changed = new.iter().map(|now| Changed {
            before: old_names.get(&now.id).copied(),
            now: Some(now),
        });
        let changed = changed.filter(|of| !of.before.zip(of.now).is_some_and(|pair| same(&pair)));
        let gone = old.iter().filter(|piece| !new_names.contains_key(&piece.id));
        let gone = gone.map(|before| Changed {
            before: Some(before),
            now: None,
        });
        Changes {
            now,
            before,
            pieces: changed.chain(gone).collect(),
            // Another tab may have changed the settings, so they are only written if they changed here.
            of_workshop: !is_same_workshop(before, now),
        }
    }

    /// Returns every record of a document, whatever was saved before.
    pub fn whole(now: &Workshop) -> Vec<(Key, String)> {
        let pieces = now.pieces.iter();
        let pieces = pieces.map(|piece| (Key::Piece(piece.id.clone()), piece_text(piece)));
        pieces.chain([(Key::Workshop, workshop_text(now))]).collect()
    }

    /// Returns the keys of the records to write or delete.
    pub fn keys(&self) -> Vec<Key> {
        let pieces = self.pieces.iter().filter_map(|of| of.now.or(of.before));
        let pieces = pieces.map(|piece| Key::Piece(piece.id.clone()));
        pieces.chain(self.of_workshop.then_some(Key::Workshop)).collect()
    }

    /// Returns the new texts for the records of [`Changes::keys`], given their newest texts. `None` deletes a
    /// record. The flag is true if someone else had changed one of them.
    pub fn on(&self, newest: &[Option<String>]) -> (Vec<Option<String>>, bool) {
        let mut is_mixed = false;
        let mut newest = newest.iter().map(Option::as_deref);
        let mut texts = Vec::with_capacity(newest.len());
        for of in &self.pieces {
            let newest = newest.next().flatten();
            texts.push(of.now.map(|now| {
                let base = of.before.map(|piece| piece_text(piece));
                let normal = |text: &str| {
                    let read = piece_of(&now.id.0, Some(text), &self.now.materials, &mut vec![])?;
                    Some(piece_text(&read.piece))
                };
                again(base, piece_text(now), newest, normal, &mut is_mixed)
            }));
        }
        if self.of_workshop {
            let newest = newest.next().flatten();
            let (base, ours) = (workshop_text(self.before), workshop_text(self.now));
            texts.push(Some(again(
                Some(base),
                ours,
                newest,
                normal_workshop,
                &mut is_mixed,
            )));
        }
        (texts, is_mixed)
    }
}

/// Applies the change from `base` to `ours` to the newest text of a record. `normal` rewrites a record in the
/// current format if it can be read, because a record in an older format cannot be merged.
fn again(
    base: Option<String>,
    ours: String,
    newest: Option<&str>,
    normal: impl Fn(&str) -> Option<String>,
    is_mixed: &mut bool,
) -> String {
    // Usually nobody else has written.
    let Some(newest) = newest.filter(|newest| Some(*newest) != base.as_deref()) else {
        return ours;
    };
    // A record that can no longer be read is not a change.
    let Some(theirs) = normal(newest).filter(|theirs| Some(theirs) != base.as_ref()) else {
        return ours;
    };
    let value = |text: &str| serde_json::from_str::<Value>(text).ok();
    let base = base.as_deref().and_then(value);
    let both = merged(base, value(&ours), value(&theirs));
    let both = both.and_then(|both| normal(&text_of(&both)));
    let both = both.unwrap_or_else(|| ours.clone());
    *is_mixed |= both != ours;
    both
}

/// Rewrites the record of a workshop in the current format.
fn normal_workshop(text: &str) -> Option<String> {
    let mut record = WorkshopRecord::<Value>::read(serde_json::from_str(text).ok()?).ok()?;
    let pieces = std::mem::take(&mut record.pieces);
    let workshop = record.into_workshop(&mut vec![]);
    let mut record = WorkshopRecord::of(&workshop, |_| Value::Null);
    record.pieces = pieces;
    Some(text_of(&record))
}

/// Returns true if two workshops have the same record, which excludes the contents of their pieces.
fn is_same_workshop(one: &Workshop, other: &Workshop) -> bool {
    let ids = |workshop: &Workshop| {
        workshop
            .pieces
            .iter()
            .map(|piece| piece.id.clone())
            .collect::<Vec<_>>()
    };
    one.title == other.title
        && one.note == other.note
        && one.units == other.units
        && one.settings == other.settings
        && one.materials == other.materials
        && one.books == other.books
        && one.beyond == other.beyond
        && ids(one) == ids(other)
}

fn piece_text(piece: &Piece) -> String {
    text_of(&PieceRecord::of(piece))
}

fn workshop_text(workshop: &Workshop) -> String {
    text_of(&WorkshopRecord::of(workshop, |piece| piece.id.0.to_string()))
}

/// Formats a record in the same way as the browser, so that equal records have equal texts.
fn text_of(record: &impl serde::Serialize) -> String {
    serde_json::to_string_pretty(record).unwrap_or_default()
}

#[cfg(test)]
mod tests;
