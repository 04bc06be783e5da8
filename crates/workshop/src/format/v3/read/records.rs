//! Records of format 3 from JSON.

use geometry::Edition;
use serde_json::Value;

use crate::format::record::{Entries, Named, Readable, Record, RecordError};
use crate::format::v3::{
    BayRecord, ChangeKindRecord, ChangeRecord, LayerRecord, LineRecord, MaterialRecord, MemberRecord,
    PieceRecord, PointRecord, ReadingRecord, RowRecord, SchemeRecord, SurfaceRecord, WorkshopRecord,
    ZoneRecord,
};

impl WorkshopRecord<Value> {
    /// Reads the record of a workshop, of this version or an older one: nothing that it had since format 1 has changed.
    ///
    /// # Errors
    /// If it is not the record of a workshop.
    pub fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(WorkshopRecord {
            kind: entries.need("kind")?,
            version: entries.need("version")?,
            title: entries.take("title")?,
            note: entries.take("note")?,
            units: entries.take("units")?,
            confidence: entries.take("confidence")?,
            inches: entries.take("inches")?,
            currency: entries.take("currency")?,
            finish: entries.take("finish")?,
            materials: entries.take("materials")?,
            books: entries.take("books")?,
            pieces: entries.take("pieces")?,
            beyond: entries.rest(),
        })
    }
}

impl Record for PieceRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(PieceRecord {
            id: entries.need("id")?,
            name: entries.take("name")?,
            count: entries.take_or("count", 1)?,
            furniture: entries.need("furniture")?,
            edition: entries.take_or("edition", Edition::First)?,
            shown: entries.take("shown")?,
            readings: entries.take("readings")?,
            styles: entries.take("styles")?,
            counts: entries.take("counts")?,
            bays: entries.take("bays")?,
            upper: entries.take("upper")?,
            changes: entries.take("changes")?,
            zones: entries.take("zones")?,
            surfaces: entries.take("surfaces")?,
            scheme: entries.take("scheme")?,
            books: entries.take("books")?,
            beyond: entries.rest(),
        })
    }
}

impl Record for Edition {
    fn read(value: Value) -> Result<Self, RecordError> {
        let edition = Edition::by_number(u64::read(value)?);
        edition.ok_or(RecordError::wanted("an edition that is known here"))
    }
}

impl Record for ReadingRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(ReadingRecord {
            typed: entries.need("typed")?,
            unit: entries.need("unit")?,
            value: entries.take("value")?,
        })
    }
}

impl Record for BayRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(BayRecord {
            width: entries.take("width")?,
            rows: entries.take("rows")?,
        })
    }
}

impl Record for RowRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(RowRecord {
            fill: entries.take("fill")?,
            columns: entries.take_or("columns", 1)?,
            shelves: entries.take("shelves")?,
            height: entries.take("height")?,
        })
    }
}

impl Record for ChangeRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        let kind: String = entries.need("change")?;
        Ok(ChangeRecord {
            kind: change_kind(&kind, &mut entries)?,
            readings: entries.take("readings")?,
        })
    }
}

fn change_kind(kind: &str, entries: &mut Entries) -> Result<ChangeKindRecord, RecordError> {
    Ok(match kind {
        "remove" => ChangeKindRecord::Remove {
            part: entries.need("part")?,
        },
        "resize" => ChangeKindRecord::Resize {
            part: entries.need("part")?,
            along: entries.need("along")?,
        },
        "move" => ChangeKindRecord::Move {
            part: entries.need("part")?,
            towards: entries.need("towards")?,
        },
        "repeat" => ChangeKindRecord::Repeat {
            part: entries.need("part")?,
            times: entries.need("times")?,
            towards: entries.need("towards")?,
        },
        "hole" => ChangeKindRecord::Hole {
            surface: entries.need("surface")?,
        },
        "add" => ChangeKindRecord::Add {
            number: entries.need("number")?,
            shape: entries.need("shape")?,
            placed: entries.take("placed")?,
            flutes: entries.take("flutes")?,
            members: entries.take("members")?,
            points: entries.take("points")?,
        },
        _ => return Err(RecordError::wanted("a change that is known here")),
    })
}

impl Record for MemberRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(MemberRecord {
            shape: entries.need("shape")?,
            readings: entries.take("readings")?,
        })
    }
}

impl Record for PointRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(PointRecord {
            readings: entries.take("readings")?,
        })
    }
}

impl Record for ZoneRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(ZoneRecord {
            name: entries.take("name")?,
            painted: entries.take("painted")?,
            scheme: entries.take("scheme")?,
        })
    }
}

impl Record for SurfaceRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(SurfaceRecord {
            zone: entries.take("zone")?,
            painted: entries.take("painted")?,
        })
    }
}

impl Record for SchemeRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(SchemeRecord {
            colour: entries.take("colour")?,
            ground: entries.take("ground")?,
            wood: entries.take("wood")?,
            signs: entries.take("signs")?,
            basis: entries.take("basis")?,
            layers: entries.take("layers")?,
        })
    }
}

impl Record for LayerRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(LayerRecord {
            material: entries.need("material")?,
            coats: entries.take_or("coats", 1)?,
            tool: entries.take("tool")?,
            narrow: entries.take("narrow")?,
            thinned: entries.take("thinned")?,
            can: entries.take("can")?,
            level: entries.take("level")?,
        })
    }
}

impl Record for MaterialRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        Ok(MaterialRecord {
            id: entries.need("id")?,
            of: entries.need("of")?,
            name: entries.take("name")?,
            label: entries.take("label")?,
            prices: entries.take("prices")?,
            meant: entries.take("values")?,
        })
    }
}

impl Record for LineRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        let id = entries.need("id")?;
        let beside: Value = entries.take("values")?;
        let values = entries.rest().into_iter();
        let values = values.map(|(key, value)| Ok((key, Readable::read(value)?)));
        let mut values: Named<_> = values.collect::<Result<_, _>>()?;
        let meant = match Named::read(beside.clone()) {
            Ok(meant) => meant,
            // A book that is not known here may have a field of this name.
            Err(_) => {
                if !beside.is_null() {
                    values.0.insert("values".into(), Readable::read(beside)?);
                }
                Named::default()
            }
        };
        Ok(LineRecord { id, meant, values })
    }
}
