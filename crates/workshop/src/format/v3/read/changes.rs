//! Reading changes to a piece from records of format 3.

use geometry::{AddedShape, MAX_CHANGES, MAX_REPEATS, MAX_STEPS, Shape};

use super::Reader;
use crate::document::{ChangeKind, EntryId, PieceChange};
use crate::edit::MAX_FLUTES;
use crate::format::Notice;
use crate::format::record::{Named, Readable};
use crate::format::v3::{ChangeRecord, Readings};
use crate::format::words::Word;

/// The maximum number of an added part.
const MAX_NUMBER: u64 = 9999;

impl Reader<'_> {
    pub(super) fn changes(&mut self, records: Vec<Readable<ChangeRecord>>) -> Vec<PieceChange> {
        let records = self.first(records, MAX_CHANGES, "changes");
        let mut changes: Vec<PieceChange> = Vec::with_capacity(records.len());
        for (index, Readable(record)) in records.into_iter().enumerate() {
            let change = record.and_then(|record| self.change(record, &changes));
            if change.is_none() {
                self.notices.push(Notice::ChangeLeftOut {
                    piece: self.name.clone(),
                    number: index + 1,
                });
            }
            changes.extend(change);
        }
        changes
    }

    fn change(&mut self, record: ChangeRecord, before: &[PieceChange]) -> Option<PieceChange> {
        let mut items = vec![record.readings.clone()];
        let (id, part) = (EntryId(record.id), record.part.clone());
        let kind = match record.change.as_str() {
            "remove" => ChangeKind::Remove { part: part? },
            "resize" => ChangeKind::Resize {
                part: part?,
                along: Word::of(&record.along?)?,
            },
            "move" => ChangeKind::Move {
                part: part?,
                towards: Word::of(&record.towards?)?,
            },
            "repeat" => ChangeKind::Repeat {
                part: part?,
                times: self.count(record.times?, 1, MAX_REPEATS as u64, "repeats per part") as usize,
                towards: Word::of(&record.towards?)?,
            },
            "hole" => ChangeKind::Hole {
                surface: record.surface?,
            },
            "add" => self.added(record, before, &mut items)?,
            _ => return None,
        };
        let mut change = PieceChange::new(kind);
        change.id = id;
        for (item, readings) in items.into_iter().enumerate() {
            self.item(&mut change, item, readings);
        }
        Some(change)
    }

    /// Reads an added part. The readings of its members and points go to `items`.
    fn added(
        &mut self,
        record: ChangeRecord,
        before: &[PieceChange],
        items: &mut Vec<Readings>,
    ) -> Option<ChangeKind> {
        let key = record.shape?;
        let shape = AddedShape::ALL.into_iter().find(|known| known.key() == key)?;
        // Only a molding has members, and only a turning has points.
        let members = if shape == AddedShape::Moulding {
            record.members
        } else {
            vec![]
        };
        let points = if shape == AddedShape::Turned {
            record.points
        } else {
            vec![]
        };
        let members = self.first(members, MAX_STEPS, "molding members");
        let points = self.first(points, MAX_STEPS, "turning points");
        let shapes = members.iter().map(|member| Shape::by_key(&member.shape));
        let shapes: Option<Vec<Shape>> = shapes.collect();
        let count = points.len();
        items.extend(members.into_iter().map(|member| member.readings));
        items.extend(points.into_iter().map(|point| point.readings));
        Some(ChangeKind::Add {
            number: self.number(record.number?, before),
            shape,
            placed: record.placed.unwrap_or_default(),
            flutes: self.count(record.flutes, 0, u64::from(MAX_FLUTES), "flutes") as u32,
            members: shapes?,
            points: count,
        })
    }

    /// Returns the number of an added part. No two parts have the same number.
    fn number(&mut self, given: u64, before: &[PieceChange]) -> usize {
        let is_free = |free: &usize| {
            let mut kinds = before.iter().map(|change| &change.kind);
            !kinds.any(|kind| matches!(kind, ChangeKind::Add { number, .. } if number == free))
        };
        let number = self.count(given, 1, MAX_NUMBER, "an added part") as usize;
        if is_free(&number) {
            return number;
        }
        // Among one more numbers than changes, one is free.
        let free = (1..before.len() + 2).find(is_free).unwrap_or(number);
        self.out_of_limits("an added part", free);
        free
    }

    fn item(&mut self, change: &mut PieceChange, item: usize, Named(records): Readings) {
        let known = change.fields();
        for (key, record) in records {
            match known.iter().find(|(i, field, _)| *i == item && field.key == key) {
                Some((_, field, _)) => {
                    let reading = self.reading(record, field.label);
                    let place = (item, field.key);
                    change.readings.extend(reading.map(|reading| (place, reading)));
                }
                None => self.unknown_measurement(&key),
            }
        }
    }
}
