//! Format 3 of the save file: layers, zones with their own finish, and the maker's own materials. It never
//! changes once a version was published. A new format gets a file of its own, and a conversion from this one.

mod read;
mod write;

use geometry::Edition;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};
use serde_json::Value;

pub(crate) use read::ReadPiece;
pub(super) use read::load;

use super::record::{Entries, Named, Readable, Record, RecordError, records};

/// Readings by field key.
type Readings = Named<ReadingRecord>;

/// Lines of books by book key. An invalid line is left out alone.
pub(super) type BookRecords = Named<Vec<Readable<LineRecord>>>;

records! {
    /// A workshop. A file holds its pieces in full, and the database their ids.
    pub struct WorkshopRecord<P> {
        must kind: String;
        must version: u64;
        kept title: String;
        kept note: String;
        kept units: String;
        spare confidence: Option<Readable<u64>>;
        spare inches: Option<Readable<String>>;
        spare currency: Option<Readable<String>>;
        spare finish: Option<Readable<SchemeRecord>>;
        spare materials: Vec<Readable<MaterialRecord>>;
        spare books: BookRecords;
        /// The pieces, in the maker's order.
        pub kept pieces: Vec<P>;
        ..beyond;
    }

    /// A piece.
    pub struct PieceRecord {
        pub(super) must id: String;
        pub(super) kept name: String;
        pub(super) kept count: u64 = 1;
        pub(super) must furniture: String;
        /// The last id given to an entry.
        pub(super) spare ids: u64;
        pub(super) kept edition: EditionNumber = EditionNumber(Edition::First);
        /// If missing, the first results.
        pub(super) kept shown: Option<Readable<u64>>;
        pub(super) kept readings: Readings;
        pub(super) kept styles: Named<String>;
        pub(super) spare counts: Named<u64>;
        pub(super) spare bays: Option<Vec<BayRecord>>;
        pub(super) spare upper: Vec<BayRecord>;
        pub(super) spare changes: Vec<Readable<ChangeRecord>>;
        pub(super) spare zones: Named<ZoneRecord>;
        pub(super) spare surfaces: Named<SurfaceRecord>;
        pub(super) kept scheme: SchemeRecord;
        pub(super) spare books: BookRecords;
        ..beyond;
    }

    /// A reading. Its text and unit have not changed since format 1.
    pub(super) struct ReadingRecord {
        must typed: String;
        must unit: String;
        /// The number, if the text alone could mean another one.
        spare value: Option<Value>;
    }

    pub(super) struct BayRecord {
        pub(super) spare id: u64;
        pub(super) spare width: Option<ReadingRecord>;
        pub(super) kept rows: Vec<RowRecord>;
    }

    pub(super) struct RowRecord {
        pub(super) spare id: u64;
        pub(super) spare fill: Option<String>;
        pub(super) kept columns: u64 = 1;
        pub(super) kept shelves: u64;
        pub(super) spare height: Option<ReadingRecord>;
    }

    /// A change. Its kind determines which of the other entries it has.
    pub(super) struct ChangeRecord {
        spare id: u64;
        must change: String;
        spare part: Option<String>;
        spare along: Option<String>;
        spare times: Option<u64>;
        spare towards: Option<String>;
        spare surface: Option<String>;
        spare number: Option<u64>;
        spare shape: Option<String>;
        spare placed: Option<bool>;
        spare flutes: u64;
        spare members: Vec<MemberRecord>;
        spare points: Vec<PointRecord>;
        spare readings: Readings;
    }

    pub(super) struct MemberRecord {
        must shape: String;
        spare readings: Readings;
    }

    pub(super) struct PointRecord {
        spare readings: Readings;
    }

    pub(super) struct ZoneRecord {
        spare name: String;
        spare painted: Option<bool>;
        spare scheme: Option<SchemeRecord>;
    }

    /// A scheme. Without `layers` it has the default ones of the piece's edition, and with an empty list it
    /// has none.
    #[derive(Default)]
    pub(crate) struct SchemeRecord {
        pub(super) spare colour: Option<String>;
        pub(super) spare ground: Option<String>;
        pub(super) spare wood: Option<String>;
        pub(super) spare signs: Vec<String>;
        pub(super) spare basis: Option<String>;
        pub(super) spare layers: Option<Vec<Readable<LayerRecord>>>;
    }

    pub(super) struct LayerRecord {
        pub(super) spare id: u64;
        pub(super) must material: String;
        pub(super) kept coats: u64 = 1;
        pub(super) kept tool: String;
        pub(super) spare narrow: Option<String>;
        pub(super) spare thinned: u64;
        /// The can that the maker has. Only older versions write it.
        pub(super) spare can: Option<String>;
        /// How full that can is. Only older versions write it.
        pub(super) spare level: Option<String>;
    }

    struct MaterialRecord {
        must id: String;
        must of: String;
        kept name: String;
        spare label: Readings;
        spare prices: Named<String>;
        /// The hundredths of prices whose text alone could mean another number.
        spare values: Named<u64>;
    }

    pub(super) struct SurfaceRecord {
        pub(super) spare zone: Option<String>;
        pub(super) spare painted: Option<bool>;
    }
}

/// The edition of a piece, saved as its number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct EditionNumber(pub(super) Edition);

impl Serialize for EditionNumber {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_u64(self.0.number())
    }
}

impl Record for EditionNumber {
    fn read(value: Value) -> Result<Self, RecordError> {
        let edition = Edition::by_number(u64::read(value)?);
        let edition = edition.ok_or(RecordError::wanted("a known edition"))?;
        Ok(EditionNumber(edition))
    }
}

/// A line: texts by field key. An invalid value is left out alone.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LineRecord {
    id: String,
    /// The numbers of texts that alone could mean another number.
    meant: Named<Readable<f64>>,
    values: Named<Readable<String>>,
}

impl Serialize for LineRecord {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("id", &self.id)?;
        if !self.meant.is_empty() {
            map.serialize_entry("values", &self.meant)?;
        }
        for (key, text) in self.values.0.iter() {
            map.serialize_entry(key, text)?;
        }
        map.end()
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
            // A book of a newer version may have a field with this name.
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

#[cfg(test)]
mod tests;
