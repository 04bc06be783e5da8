//! Reading a document from records of format 3. Invalid parts are repaired or left out, with a notice.

mod books;
mod changes;
mod materials;
mod scheme;
mod settings;

use std::rc::Rc;

use geometry::{
    Edition, Fill, Kind, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES, Zone, counts, fields, styles,
};
use serde_json::Value;
use units::{LengthUnit, SortedMap, System};

use super::{
    BayRecord, PieceRecord, ReadingRecord, Readings, RowRecord, SurfaceRecord, WorkshopRecord, ZoneRecord,
};
use crate::document::FIRST_RESULTS;
use crate::document::{
    Bay, EntryId, OwnMaterial, Piece, PieceId, Reading, Row, Settings, SurfaceChoice, Workshop, ZoneChoice,
};
use crate::edit::{MAX_COUNT, MAX_ZONES, may_be_key, shortened};
use crate::format::record::{Named, Record, RecordError};
use crate::format::words::Word;
use crate::format::{LoadError, Loaded, Notice, check_count};
use crate::stock::OldCan;

/// The maximum length of a text repeated in a notice, in characters.
const SHOWN: usize = 60;

/// Reads a file. `piece` reads each piece.
pub(in crate::format) fn load(
    value: Value,
    piece: fn(Value) -> Result<PieceRecord, RecordError>,
) -> Result<Loaded, LoadError> {
    // Kind and version were checked before, so only a title or pieces of the wrong type can fail here.
    let mut file = WorkshopRecord::read(value).map_err(|_| LoadError::NotAWorkshop)?;
    check_count(file.pieces.len())?;
    let mut notices = Vec::new();
    let values = std::mem::take(&mut file.pieces);
    let mut workshop = file.into_workshop(&mut notices);
    let mut cans = Vec::new();
    let mut pieces: Vec<Rc<Piece>> = Vec::with_capacity(values.len());
    for (index, value) in values.into_iter().enumerate() {
        match piece(value) {
            Ok(record) => {
                let mut read = record.into_piece(&workshop.materials, &mut notices);
                read.call(free_id(&pieces, read.piece.id.clone()));
                cans.extend(read.cans);
                pieces.push(Rc::new(read.piece));
            }
            Err(error) => notices.push(Notice::PieceLeftOut {
                number: index + 1,
                reason: shown(&error.to_string()),
            }),
        }
    }
    workshop.pieces = pieces;
    workshop.take_over(cans);
    Ok(Loaded { workshop, notices })
}

/// Returns the id of a piece, with a number if another piece has it.
fn free_id(pieces: &[Rc<Piece>], id: PieceId) -> PieceId {
    let is_free = |id: &PieceId| pieces.iter().all(|piece| piece.id != *id);
    if is_free(&id) {
        return id;
    }
    // Among one more names than pieces, one is free.
    let names = (2..pieces.len() + 3).map(|number| PieceId(format!("{}-{number}", id.0).into()));
    names.into_iter().find(is_free).unwrap_or(id)
}

fn shown(text: &str) -> String {
    text.chars().take(SHOWN).collect()
}

impl<P> WorkshopRecord<P> {
    /// Reads the workshop without its pieces. Adds a notice for each repair.
    pub fn into_workshop(self, notices: &mut Vec<Notice>) -> Workshop {
        // These defaults for missing entries were the same in every version.
        let mut reader = Reader {
            name: "Workshop".into(),
            edition: Edition::First,
            id: PieceId("".into()),
            cans: Vec::new(),
            notices,
        };
        let units = Some(self.units).filter(|units| !units.is_empty());
        let units = reader.word(units, System::UsCustomary);
        let [title, note] = [shortened(&self.title), shortened(&self.note)];
        let materials = reader.materials(self.materials);
        let settings = Settings {
            confidence: reader.confidence(self.confidence),
            inches: reader.inches(self.inches),
            currency: reader.currency(self.currency),
            finish: reader.finish(self.finish, &materials),
        };
        Workshop {
            title,
            note,
            units,
            settings,
            materials,
            books: reader.books(self.books, false),
            pieces: vec![],
            beyond: self.beyond,
        }
    }
}

impl PieceRecord {
    /// Reads the piece, in a workshop with these materials of the maker's own. Adds a notice for each repair.
    pub(crate) fn into_piece(self, own: &[Rc<OwnMaterial>], notices: &mut Vec<Notice>) -> ReadPiece {
        let id = PieceId(self.id.into());
        let name = shortened(&self.name);
        let mut reader = Reader {
            name: if name.is_empty() {
                "A piece".into()
            } else {
                name.clone()
            },
            edition: self.edition.0,
            id: id.clone(),
            cans: Vec::new(),
            notices,
        };
        let kind = reader.kind(self.furniture);
        let mut piece = Piece::of_edition(id, kind, self.edition.0);
        piece.name = name;
        piece.shown = self.shown.and_then(|shown| shown.0).unwrap_or(FIRST_RESULTS);
        piece.count = reader.count(self.count, 1, u64::from(MAX_COUNT), "identical pieces") as u32;
        reader.readings(self.readings, &mut piece);
        reader.styles(self.styles, &mut piece);
        reader.counts(self.counts, &mut piece);
        reader.bays(self.bays.unwrap_or_default(), &mut piece.bays);
        reader.bays(self.upper, &mut piece.upper);
        piece.changes = reader.changes(self.changes);
        piece.zones = reader.zones(self.zones, own);
        piece.choices = reader.choices(self.surfaces, &piece.zones);
        piece.scheme = reader.scheme(self.scheme, own);
        piece.books = reader.books(self.books, true);
        piece.beyond = self.beyond;
        piece.last_id = EntryId(self.ids);
        piece.give_ids();
        ReadPiece {
            piece,
            cans: reader.cans,
        }
    }
}

/// A piece that was read, with the cans that older versions saved in its layers. They belong on the shelf.
pub(crate) struct ReadPiece {
    pub(crate) piece: Piece,
    pub(crate) cans: Vec<OldCan>,
}

impl ReadPiece {
    /// Sets the id of the piece.
    fn call(&mut self, id: PieceId) {
        self.cans.iter_mut().for_each(|can| can.piece = id.clone());
        self.piece.id = id;
    }
}

/// Reads the parts of one piece and notes the repairs.
struct Reader<'a> {
    name: String,
    /// The edition that gives the defaults of missing entries.
    edition: Edition,
    /// The id of the piece.
    id: PieceId,
    /// The cans on hand for it.
    cans: Vec<OldCan>,
    notices: &'a mut Vec<Notice>,
}

impl Reader<'_> {
    fn unknown_word(&mut self, what: &'static str, given: &str) {
        self.notices.push(Notice::UnknownWord {
            piece: self.name.clone(),
            what,
            given: shown(given),
        });
    }

    fn unknown_measurement(&mut self, key: &str) {
        self.notices.push(Notice::UnknownMeasurement {
            piece: self.name.clone(),
            key: shown(key),
        });
    }

    fn out_of_limits(&mut self, what: &'static str, taken: usize) {
        self.notices.push(Notice::OutOfLimits {
            piece: self.name.clone(),
            what,
            taken,
        });
    }

    fn word<W: Word>(&mut self, given: Option<String>, usual: W) -> W {
        let Some(given) = given else { return usual };
        W::of(&given).unwrap_or_else(|| {
            self.unknown_word(W::WHAT, &given);
            usual
        })
    }

    fn kind(&mut self, given: String) -> Kind {
        Kind::by_key(&given).unwrap_or_else(|| {
            self.unknown_word("kind of piece", &given);
            Kind::Dresser
        })
    }

    fn key(
        &mut self,
        known: Option<&'static str>,
        what: &'static str,
        given: &str,
        usual: &'static str,
    ) -> &'static str {
        known.unwrap_or_else(|| {
            self.unknown_word(what, given);
            usual
        })
    }

    fn count(&mut self, given: u64, least: u64, most: u64, what: &'static str) -> u64 {
        let taken = given.clamp(least, most);
        if taken != given {
            self.out_of_limits(what, taken as usize);
        }
        taken
    }

    /// Returns the first items, up to the maximum.
    fn first<T>(&mut self, mut given: Vec<T>, most: usize, what: &'static str) -> Vec<T> {
        if given.len() > most {
            self.out_of_limits(what, most);
            given.truncate(most);
        }
        given
    }

    fn reading(&mut self, record: ReadingRecord, field: &str) -> Option<Reading> {
        let unit = self.word(Some(record.unit), LengthUnit::Inch);
        let beside = record.value.as_ref().and_then(Value::as_f64);
        match Reading::saved(&record.typed, unit, beside) {
            Ok(reading) => Some(reading),
            Err(error) => {
                self.notices.push(Notice::ReadingLeftOut {
                    piece: self.name.clone(),
                    field: field.to_ascii_lowercase(),
                    typed: shown(&record.typed),
                    error,
                });
                None
            }
        }
    }

    fn readings(&mut self, Named(records): Readings, piece: &mut Piece) {
        for (key, record) in records {
            match fields::by_key(&key) {
                Some(field) => {
                    let reading = self.reading(record, field.label);
                    piece.readings.extend(reading.map(|reading| (field.key, reading)));
                }
                None => self.unknown_measurement(&key),
            }
        }
    }

    fn styles(&mut self, Named(records): Named<String>, piece: &mut Piece) {
        for (key, answer) in records {
            match styles::by_key(&key) {
                Some(field) if field.choose(&mut piece.styles, &answer) => {}
                Some(field) => self.notices.push(Notice::UnknownAnswer {
                    piece: self.name.clone(),
                    choice: field.label,
                    given: shown(&answer),
                }),
                None => self.unknown_word("choice", &key),
            }
        }
    }

    fn counts(&mut self, Named(records): Named<u64>, piece: &mut Piece) {
        for (key, count) in records {
            match counts::by_key(&key) {
                Some(field) => {
                    let [least, most] = [field.min, field.max].map(u64::from);
                    let count = self.count(count, least, most, field.label);
                    piece.counts.set(field, count as u32);
                }
                None => self.unknown_measurement(&key),
            }
        }
    }

    /// Reads bays. If there are none, the default ones stay.
    fn bays(&mut self, records: Vec<BayRecord>, bays: &mut Vec<Bay>) {
        let records = self.first(records, MAX_BAYS, "bays");
        if !records.is_empty() {
            *bays = records.into_iter().map(|record| self.bay(record)).collect();
        }
    }

    fn bay(&mut self, record: BayRecord) -> Bay {
        let mut rows = self.first(record.rows, MAX_ROWS, "rows");
        if rows.is_empty() {
            self.out_of_limits("rows", 1);
            rows.push(RowRecord {
                id: 0,
                fill: None,
                columns: 1,
                shelves: 0,
                height: None,
            });
        }
        Bay {
            id: EntryId(record.id),
            width: record
                .width
                .and_then(|width| self.reading(width, fields::BAY_WIDTH.label)),
            rows: rows.into_iter().map(|row| self.row(row)).collect(),
        }
    }

    fn row(&mut self, record: RowRecord) -> Row {
        let columns = self.count(record.columns, 1, MAX_COLUMNS as u64, "drawers or doors per row");
        let shelves = self.count(record.shelves, 0, MAX_SHELVES as u64, "shelves per row");
        Row {
            id: EntryId(record.id),
            fill: self.word(record.fill, Fill::Drawers),
            columns: columns as usize,
            shelves: shelves as usize,
            height: record
                .height
                .and_then(|height| self.reading(height, fields::ROW_HEIGHT.label)),
        }
    }

    fn zones(
        &mut self,
        Named(records): Named<ZoneRecord>,
        own_materials: &[Rc<OwnMaterial>],
    ) -> SortedMap<String, ZoneChoice> {
        let mut zones = SortedMap::new();
        let mut own = 0;
        for (key, record) in records {
            let zone = ZoneChoice {
                name: shortened(&record.name),
                painted: record.painted,
                scheme: record.scheme.map(|scheme| self.scheme(scheme, own_materials)),
            };
            if Zone::by_key(&key).is_some() {
                if zone != ZoneChoice::default() {
                    zones.insert(key, zone);
                }
            } else if may_be_key(&key) {
                own += 1;
                if own <= MAX_ZONES {
                    zones.insert(key, zone);
                }
            } else {
                self.unknown_word("group", &key);
            }
        }
        if own > MAX_ZONES {
            self.out_of_limits("zones", MAX_ZONES);
        }
        zones
    }

    fn choices(
        &mut self,
        Named(records): Named<SurfaceRecord>,
        zones: &SortedMap<String, ZoneChoice>,
    ) -> SortedMap<String, SurfaceChoice> {
        let mut choices = SortedMap::new();
        for (surface, record) in records {
            let zone = record.zone.filter(|key| {
                let is_known = Zone::by_key(key).is_some() || zones.contains_key(key);
                if !is_known {
                    self.unknown_word("group", key);
                }
                is_known
            });
            let painted = record.painted;
            let choice = SurfaceChoice { zone, painted };
            if choice != SurfaceChoice::default() {
                choices.insert(surface, choice);
            }
        }
        choices
    }
}
