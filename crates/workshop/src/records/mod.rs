//! The records of a database: a record for each piece, and one of the workshop that says how they hang together.
//!
//! [`read`] says what they come to, and what of them could not be read: as long as there is something of that kind,
//! nothing may be written over them. [`Changes`] says what a change of the document writes. A page may have an older
//! document than the database has by now, as two tabs save at the same moment; so a change is done again on the newest
//! records, and no whole old record is written over a newer one.

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

/// The records as they were found: the text of each, or nothing where the browser could not give it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// The record of the workshop; nothing if there is none.
    pub workshop: Option<Option<String>>,
    /// The records of the pieces, by their names.
    pub pieces: Vec<(String, Option<String>)>,
}

/// What records come to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Saved {
    /// The workshop, as far as it could be read.
    pub workshop: Rc<Workshop>,
    /// What the records hold, where that is another workshop: what lies between is to be written.
    pub as_found: Rc<Workshop>,
    /// What could not be read as it was; nothing if all of it could.
    pub unread: Option<Unread>,
}

/// What could not be read as it was saved.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unread {
    /// What is wrong, a sentence each.
    pub faults: Vec<Fault>,
    /// The records with a fault as they were found, by their names, as far as they are text at all.
    records: Map<String, Value>,
}

/// What is wrong with records.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Fault {
    /// There are pieces, and no record of the workshop.
    NoWorkshop,
    /// The record of the workshop cannot be read.
    Workshop,
    /// Some of the record of the workshop cannot be read.
    Entry(String),
    /// The record of a piece cannot be read: its name for the maker, or else the one in the database.
    Piece(String),
    /// The records are of a newer version of the tool.
    Newer,
    /// Something in a record was mended or left out.
    Mended(Notice),
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::NoWorkshop => f.write_str("The settings, the shelf and the price notes are missing."),
            Fault::Workshop => {
                f.write_str("The settings, the shelf and the price notes can\u{2019}t be read.")
            }
            Fault::Entry(entry) => write!(f, "\u{201c}{entry}\u{201d} of the workshop can\u{2019}t be read."),
            Fault::Piece(name) => write!(f, "The piece \u{201c}{name}\u{201d} can\u{2019}t be read."),
            Fault::Newer => {
                f.write_str("A newer version of this page saved your work. Reload to get that version.")
            }
            Fault::Mended(notice) => notice.fmt(f),
        }
    }
}

/// The entry of a save file that holds records which could not be read. It is kept as every entry that is not known.
const UNREAD: &str = "unread";

impl Unread {
    /// A workshop to be saved to a file, with the records that could not be read beside it.
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
            // What is no JSON is kept as the text that it is.
            let value = serde_json::from_str(text).unwrap_or_else(|_| text.into());
            self.records.insert(name.to_owned(), value);
        }
    }
}

/// What the record of the workshop is called in a file of what could not be read. No piece has this name, as those are
/// given by the browser.
const WORKSHOP: &str = "workshop";

/// What the records come to; nothing if nothing was ever saved.
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
    // A piece that another tab added while this one wrote its list stands in no list: it comes last.
    workshop.pieces.extend(pieces.into_iter().map(|(_, piece)| piece));
    let as_found = Rc::new(workshop);
    let moved = (!cans.is_empty()).then(|| Rc::new(with_cans(&as_found, &cans)));
    Some(Saved {
        workshop: moved.unwrap_or_else(|| Rc::clone(&as_found)),
        as_found,
        unread: Some(unread).filter(|unread| !unread.faults.is_empty()),
    })
}

/// A workshop with the cans of older records on its shelf. The pieces that these records are of are other ones then, so
/// that their records are written anew.
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

/// The workshop without its pieces, and their names in its order.
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
    // One entry that cannot be read does not take the others along.
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

/// The piece of a record; its name is that of the record.
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

/// What the maker calls the piece of a record that cannot be read, as far as it says.
fn called(name: &str, text: Option<&str>) -> String {
    let value: Option<Value> = text.and_then(|text| serde_json::from_str(text).ok());
    let called = value.as_ref().and_then(|value| value.get("name")?.as_str());
    let called = called.filter(|called| !called.is_empty()).unwrap_or(name);
    crate::edit::shortened(called)
}

/// The name of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Key {
    /// That of the workshop.
    Workshop,
    /// That of a piece.
    Piece(PieceId),
}

/// What a change of the document writes.
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
    /// The change from a document to another one.
    pub fn between(before: &'a Workshop, now: &'a Workshop) -> Self {
        // Nearly all pieces are the very same, in the same place.
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
            // Another tab may have changed the settings since: they are written only if they were changed here.
            of_workshop: !is_same_workshop(before, now),
        }
    }

    /// Every record of a document, whatever was saved before.
    pub fn whole(now: &Workshop) -> Vec<(Key, String)> {
        let pieces = now.pieces.iter();
        let pieces = pieces.map(|piece| (Key::Piece(piece.id.clone()), piece_text(piece)));
        pieces.chain([(Key::Workshop, workshop_text(now))]).collect()
    }

    /// The records that are to be written, or taken away.
    pub fn keys(&self) -> Vec<Key> {
        let pieces = self.pieces.iter().filter_map(|of| of.now.or(of.before));
        let pieces = pieces.map(|piece| Key::Piece(piece.id.clone()));
        pieces.chain(self.of_workshop.then_some(Key::Workshop)).collect()
    }

    /// What to write for the records of [`Changes::keys`], of which these are the newest texts; nothing takes a record
    /// away. Tells besides whether someone else had changed one of them.
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

/// The change from `base` to `ours` made on the newest text of a record. `normal` gives a record as this version writes
/// it, if it can be read: what an older version wrote cannot be put together with it.
fn again(
    base: Option<String>,
    ours: String,
    newest: Option<&str>,
    normal: impl Fn(&str) -> Option<String>,
    is_mixed: &mut bool,
) -> String {
    // Mostly nobody else wrote.
    let Some(newest) = newest.filter(|newest| Some(*newest) != base.as_deref()) else {
        return ours;
    };
    // A record that cannot be read by now is no change of anybody.
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

/// The record of a workshop as this version writes it.
fn normal_workshop(text: &str) -> Option<String> {
    let mut record = WorkshopRecord::<Value>::read(serde_json::from_str(text).ok()?).ok()?;
    let pieces = std::mem::take(&mut record.pieces);
    let workshop = record.into_workshop(&mut vec![]);
    let mut record = WorkshopRecord::of(&workshop, |_| Value::Null);
    record.pieces = pieces;
    Some(text_of(&record))
}

/// Whether two workshops have the same record, that is all but what is in their pieces.
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

/// As the browser writes it too: two texts of one record are the same.
fn text_of(record: &impl serde::Serialize) -> String {
    serde_json::to_string_pretty(record).unwrap_or_default()
}

#[cfg(test)]
mod tests;
