//! Format 1 of the save file. What stands in this file never changes once a version was published: a new
//! format gets a file of its own, and a step from this one to it.

use std::collections::BTreeMap;
use std::rc::Rc;

use coatings::Stage;
use geometry::{MAX_COLUMNS, MAX_ROWS, fields};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use units::{LengthUnit, System};

use super::words::Word;
use super::{KIND, LoadError, Loaded, Notice, VERSION, check_count};
use crate::document::{Colour, Piece, PieceId, Reading, Row, Scheme, StageCoats, Workshop};
use crate::edit::{MAX_COATS, MAX_COUNT, shortened};

/// What is saved of a workshop; its pieces are given in full in a file, by name in the database.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WorkshopRecord<P> {
    kind: String,
    version: u64,
    #[serde(default)]
    title: String,
    #[serde(default)]
    note: String,
    #[serde(default)]
    units: String,
    /// The pieces in the maker's order.
    #[serde(default = "Vec::new")]
    pub pieces: Vec<P>,
    #[serde(flatten)]
    beyond: Map<String, Value>,
}

/// What is saved of a piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PieceRecord {
    id: String,
    #[serde(default)]
    name: String,
    #[serde(default = "one")]
    count: u64,
    furniture: String,
    #[serde(default)]
    readings: BTreeMap<String, ReadingRecord>,
    #[serde(default)]
    rows: Vec<RowRecord>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    fronts: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    back: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    base: Option<String>,
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    surfaces: BTreeMap<String, bool>,
    #[serde(default)]
    scheme: SchemeRecord,
    #[serde(flatten)]
    beyond: Map<String, Value>,
}

fn one() -> u64 {
    1
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct ReadingRecord {
    typed: String,
    unit: String,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct RowRecord {
    columns: u64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    height: Option<ReadingRecord>,
}

#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
struct SchemeRecord {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    colour: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    ground: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    basis: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    primer: Option<StageRecord>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    paint: Option<StageRecord>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    topcoat: Option<StageRecord>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct StageRecord {
    material: String,
    coats: u64,
    tool: String,
    can: String,
}

impl<P> WorkshopRecord<P> {
    /// What is saved of this workshop, with its pieces as `piece` gives them.
    pub fn of(workshop: &Workshop, piece: impl Fn(&Piece) -> P) -> Self {
        WorkshopRecord {
            kind: KIND.into(),
            version: VERSION,
            title: workshop.title.clone(),
            note: workshop.note.clone(),
            units: workshop.units.word().into(),
            pieces: workshop.pieces.iter().map(|p| piece(p)).collect(),
            beyond: workshop.beyond.clone(),
        }
    }

    /// The workshop with these pieces; what cannot be kept as it was is said in a notice.
    pub fn into_workshop(self, pieces: Vec<Rc<Piece>>, notices: &mut Vec<Notice>) -> Workshop {
        let mut reader = Reader {
            name: "Workshop".into(),
            notices,
        };
        let units = if self.units.is_empty() {
            None
        } else {
            Some(self.units)
        };
        let units = reader.word(units, System::default());
        let [title, note] = [shortened(&self.title), shortened(&self.note)];
        Workshop {
            title,
            note,
            units,
            pieces,
            beyond: self.beyond,
        }
    }
}

pub(super) fn load(value: Value) -> Result<Loaded, LoadError> {
    // Its kind and version were read before, so only a wrong type of a title or the pieces can fail here.
    let mut file: WorkshopRecord<Value> =
        serde_json::from_value(value).map_err(|_| LoadError::NotAWorkshop)?;
    check_count(file.pieces.len())?;
    let mut notices = Vec::new();
    let mut pieces: Vec<Rc<Piece>> = Vec::with_capacity(file.pieces.len());
    for (index, value) in std::mem::take(&mut file.pieces).into_iter().enumerate() {
        let number = index + 1;
        let record: PieceRecord = match serde_json::from_value(value) {
            Ok(record) => record,
            Err(error) => {
                notices.push(Notice::PieceLeftOut {
                    number,
                    reason: error.to_string(),
                });
                continue;
            }
        };
        let mut piece = record.into_piece(&mut notices);
        if pieces.iter().any(|other| other.id == piece.id) {
            piece.id = PieceId(format!("{}-{number}", piece.id.0).into());
        }
        pieces.push(Rc::new(piece));
    }
    let workshop = file.into_workshop(pieces, &mut notices);
    Ok(Loaded { workshop, notices })
}

impl PieceRecord {
    /// What is saved of this piece.
    pub fn of(piece: &Piece) -> Self {
        let scheme = &piece.scheme;
        let stage = |stage| {
            let StageCoats {
                material,
                coats,
                tool,
                can,
            } = scheme.of(stage);
            Some(StageRecord {
                material: (*material).into(),
                coats: u64::from(*coats),
                tool: (*tool).into(),
                can: (*can).into(),
            })
        };
        PieceRecord {
            id: piece.id.0.as_ref().into(),
            name: piece.name.clone(),
            count: u64::from(piece.count),
            furniture: piece.kind.word().into(),
            readings: piece
                .readings
                .iter()
                .map(|(key, reading)| ((*key).into(), reading.into()))
                .collect(),
            rows: piece
                .rows
                .iter()
                .map(|row| RowRecord {
                    columns: row.columns as u64,
                    height: row.height.as_ref().map(Into::into),
                })
                .collect(),
            fronts: Some(piece.fronts.word().into()),
            back: Some(piece.back.word().into()),
            base: Some(piece.base.word().into()),
            surfaces: piece.choices.clone(),
            scheme: SchemeRecord {
                colour: Some(scheme.colour.write()),
                ground: Some(scheme.ground.word().into()),
                basis: Some(scheme.basis.word().into()),
                primer: stage(Stage::Primer),
                paint: stage(Stage::Paint),
                topcoat: stage(Stage::Topcoat),
            },
            beyond: piece.beyond.clone(),
        }
    }

    /// The piece; what cannot be kept as it was is said in a notice.
    pub fn into_piece(self, notices: &mut Vec<Notice>) -> Piece {
        let name = shortened(&self.name);
        let mut reader = Reader {
            name: if name.is_empty() {
                "A piece".into()
            } else {
                name.clone()
            },
            notices,
        };
        let kind = reader.word(Some(self.furniture), geometry::Kind::Dresser);
        let usual = Piece::new(PieceId(self.id.into()), kind, System::default());
        let rows = reader.rows(self.rows);
        let mut piece = Piece {
            name,
            count: reader.count(self.count, 1, u64::from(MAX_COUNT), "pieces in the set") as u32,
            fronts: reader.word(self.fronts, usual.fronts),
            back: reader.word(self.back, usual.back),
            base: reader.word(self.base, usual.base),
            rows: if rows.is_empty() { usual.rows.clone() } else { rows },
            choices: self.surfaces,
            beyond: self.beyond,
            ..usual
        };
        for (key, record) in self.readings {
            match fields::by_key(&key) {
                Some(field) => {
                    let reading = reader.reading(record, &field.label.to_lowercase());
                    piece.readings.extend(reading.map(|reading| (field.key, reading)));
                }
                None => reader.notices.push(Notice::UnknownMeasurement {
                    piece: reader.name.clone(),
                    key,
                }),
            }
        }
        piece.scheme = reader.scheme(self.scheme, piece.scheme);
        piece
    }
}

impl From<&Reading> for ReadingRecord {
    fn from(reading: &Reading) -> Self {
        ReadingRecord {
            typed: reading.typed().into(),
            unit: reading.unit().word().into(),
        }
    }
}

/// Reads the parts of one piece and notes what could not be kept.
struct Reader<'a> {
    name: String,
    notices: &'a mut Vec<Notice>,
}

impl Reader<'_> {
    fn word<W: Word>(&mut self, given: Option<String>, usual: W) -> W {
        let Some(given) = given else { return usual };
        W::of(&given).unwrap_or_else(|| {
            self.notices.push(Notice::UnknownWord {
                piece: self.name.clone(),
                what: W::WHAT,
                given,
            });
            usual
        })
    }

    fn count(&mut self, given: u64, least: u64, most: u64, what: &'static str) -> u64 {
        let taken = given.clamp(least, most);
        if taken != given {
            self.notices.push(Notice::OutOfLimits {
                piece: self.name.clone(),
                what,
                taken: taken as usize,
            });
        }
        taken
    }

    fn reading(&mut self, record: ReadingRecord, field: &str) -> Option<Reading> {
        let unit = self.word(Some(record.unit), LengthUnit::Inch);
        match Reading::new(&record.typed, unit) {
            Ok(reading) => Some(reading),
            Err(error) => {
                self.notices.push(Notice::ReadingLeftOut {
                    piece: self.name.clone(),
                    field: field.into(),
                    typed: record.typed.chars().take(60).collect(),
                    error,
                });
                None
            }
        }
    }

    fn rows(&mut self, records: Vec<RowRecord>) -> Vec<Row> {
        if records.len() > MAX_ROWS {
            self.count(records.len() as u64, 1, MAX_ROWS as u64, "rows of drawers");
        }
        let rows = records.into_iter().take(MAX_ROWS);
        rows.map(|record| Row {
            columns: self.count(record.columns, 1, MAX_COLUMNS as u64, "drawers in a row") as usize,
            height: record
                .height
                .and_then(|height| self.reading(height, "front height")),
        })
        .collect()
    }

    fn scheme(&mut self, record: SchemeRecord, usual: Scheme) -> Scheme {
        let colour = match record.colour.as_deref().map(|text| (text, Colour::read(text))) {
            Some((_, Some(colour))) => colour,
            Some((text, None)) => {
                let given = text.chars().take(60).collect();
                self.notices.push(Notice::UnknownWord {
                    piece: self.name.clone(),
                    what: "colour",
                    given,
                });
                usual.colour
            }
            None => usual.colour,
        };
        let [primer, paint, topcoat] = usual.stages;
        Scheme {
            colour,
            ground: self.word(record.ground, usual.ground),
            basis: self.word(record.basis, usual.basis),
            stages: [
                self.stage(Stage::Primer, record.primer, primer),
                self.stage(Stage::Paint, record.paint, paint),
                self.stage(Stage::Topcoat, record.topcoat, topcoat),
            ],
        }
    }

    fn stage(&mut self, stage: Stage, record: Option<StageRecord>, usual: StageCoats) -> StageCoats {
        let Some(record) = record else { return usual };
        let material = coatings::material(&record.material).filter(|material| material.stage == stage);
        StageCoats {
            material: self.key(
                material.map(|m| m.key),
                "material",
                record.material,
                usual.material,
            ),
            coats: self.count(record.coats, 0, u64::from(MAX_COATS), "coats") as u32,
            tool: self.key(
                coatings::tool(&record.tool).map(|t| t.key),
                "tool",
                record.tool,
                usual.tool,
            ),
            can: self.key(
                coatings::can(&record.can).map(|c| c.key),
                "can size",
                record.can,
                usual.can,
            ),
        }
    }

    fn key(
        &mut self,
        known: Option<&'static str>,
        what: &'static str,
        given: String,
        usual: &'static str,
    ) -> &'static str {
        known.unwrap_or_else(|| {
            self.notices.push(Notice::UnknownWord {
                piece: self.name.clone(),
                what,
                given,
            });
            usual
        })
    }
}
