//! How records are read from JSON and written to it. [`record`] declares a record once: its entries, which of them must be
//! there, and what stands in for those that may be missing. The code that serde derives for reading is ten times as large.

use std::fmt;

use serde::{Serialize, Serializer};
use serde_json::{Map, Value};
use units::SortedMap;

/// Why a value is not the record that it should be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordError {
    /// The entry that is wrong; empty for the record itself.
    entry: &'static str,
    /// What should stand there.
    wanted: &'static str,
}

impl RecordError {
    /// Something else than this.
    pub(super) fn wanted(wanted: &'static str) -> Self {
        RecordError { entry: "", wanted }
    }

    /// The same for the entry of a record; the innermost entry is the one that is named.
    fn within(self, entry: &'static str) -> Self {
        let is_named = !self.entry.is_empty();
        if is_named {
            self
        } else {
            RecordError { entry, ..self }
        }
    }
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.entry {
            "" => write!(f, "it must be {}", self.wanted),
            entry => write!(f, "\u{201c}{entry}\u{201d} must be {}", self.wanted),
        }
    }
}

impl std::error::Error for RecordError {}

/// Something that is read from JSON.
pub(crate) trait Record: Sized {
    /// Reads it.
    ///
    /// # Errors
    /// If the value is something else.
    fn read(value: Value) -> Result<Self, RecordError>;
}

impl Record for Value {
    fn read(value: Value) -> Result<Self, RecordError> {
        Ok(value)
    }
}

impl Record for String {
    fn read(value: Value) -> Result<Self, RecordError> {
        match value {
            Value::String(text) => Ok(text),
            _ => Err(RecordError::wanted("text")),
        }
    }
}

impl Record for u64 {
    fn read(value: Value) -> Result<Self, RecordError> {
        value.as_u64().ok_or(RecordError::wanted("a whole number"))
    }
}

impl Record for bool {
    fn read(value: Value) -> Result<Self, RecordError> {
        value.as_bool().ok_or(RecordError::wanted("true or false"))
    }
}

impl Record for f64 {
    fn read(value: Value) -> Result<Self, RecordError> {
        value.as_f64().ok_or(RecordError::wanted("a number"))
    }
}

impl<T: Record> Record for Option<T> {
    fn read(value: Value) -> Result<Self, RecordError> {
        if value.is_null() {
            return Ok(None);
        }
        T::read(value).map(Some)
    }
}

impl<T: Record> Record for Vec<T> {
    fn read(value: Value) -> Result<Self, RecordError> {
        match value {
            Value::Array(list) => list.into_iter().map(T::read).collect(),
            _ => Err(RecordError::wanted("a list")),
        }
    }
}

/// Records by their names.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Named<T>(pub(super) SortedMap<String, T>);

impl<T> Named<T> {
    /// Whether there are none.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl<T> Default for Named<T> {
    fn default() -> Self {
        Named(SortedMap::new())
    }
}

impl<T> FromIterator<(String, T)> for Named<T> {
    fn from_iter<I: IntoIterator<Item = (String, T)>>(records: I) -> Self {
        Named(records.into_iter().collect())
    }
}

impl<T: Serialize> Serialize for Named<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, record)| (name, record)))
    }
}

impl<T: Record> Record for Named<T> {
    fn read(value: Value) -> Result<Self, RecordError> {
        let read = |(name, value)| Ok((name, T::read(value)?));
        Entries::of(value)?.0.into_iter().map(read).collect()
    }
}

/// Something that is left out alone if it cannot be read; it is nothing then.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(transparent)]
pub(super) struct Readable<T>(pub(super) Option<T>);

impl<T: Record> Record for Readable<T> {
    fn read(value: Value) -> Result<Self, RecordError> {
        Ok(Readable(T::read(value).ok()))
    }
}

/// Declares records: what is saved of something, entry by entry.
///
/// - `must`: an entry that must be there.
/// - `kept`: an entry that is always written; where it is not there, what follows `=` stands in, or else the default.
/// - `spare`: an entry that is only written where it is not the default, which stands in where it is not there.
/// - `..`: all entries that are not known here. They are kept and written back.
///
/// `RECORDS` lists the entries of them all, which SAVE-FILE.md describes.
macro_rules! records {
    ($(
        $(#[$meta:meta])*
        $vis:vis struct $name:ident $(<$part:ident>)? {
            $($(#[$of_entry:meta])* $entry_vis:vis $how:ident $entry:ident: $type:ty $(= $usual:expr)?;)*
            $(..$others:ident;)?
        }
    )*) => { $(
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq)]
        $vis struct $name $(<$part>)? {
            $($(#[$of_entry])* $entry_vis $entry: $type,)*
            $(pub(super) $others: serde_json::Map<String, serde_json::Value>,)?
        }

        impl$(<$part: $crate::format::record::Record>)? $crate::format::record::Record for $name $(<$part>)? {
            fn read(value: serde_json::Value) -> Result<Self, $crate::format::record::RecordError> {
                let mut entries = $crate::format::record::Entries::of(value)?;
                Ok($name {
                    $($entry: records!(@read $how entries, stringify!($entry) $(, $usual)?)?,)*
                    $($others: entries.rest(),)?
                })
            }
        }

        impl$(<$part: serde::Serialize>)? serde::Serialize for $name $(<$part>)? {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let mut map = serializer.serialize_map(None)?;
                $(records!(@write $how map, stringify!($entry), &self.$entry);)*
                $(for (entry, value) in &self.$others {
                    serde::ser::SerializeMap::serialize_entry(&mut map, entry, value)?;
                })?
                serde::ser::SerializeMap::end(map)
            }
        }
    )*
        /// The names of the records, each with those of its entries.
        #[cfg(test)]
        pub(super) const RECORDS: &[(&str, &[&str])] = &[$((stringify!($name), &[$(stringify!($entry)),*])),*];
    };
    (@read must $entries:ident, $entry:expr) => { $entries.need($entry) };
    (@read kept $entries:ident, $entry:expr, $usual:expr) => { $entries.take_or($entry, $usual) };
    (@read $how:ident $entries:ident, $entry:expr) => { $entries.take($entry) };
    (@write spare $map:ident, $entry:expr, $value:expr) => {
        if !$crate::format::record::Spare::is_nothing($value) {
            serde::ser::SerializeMap::serialize_entry(&mut $map, $entry, $value)?;
        }
    };
    (@write $how:ident $map:ident, $entry:expr, $value:expr) => {
        serde::ser::SerializeMap::serialize_entry(&mut $map, $entry, $value)?;
    };
}
pub(super) use records;

/// What is not written where it is the default. Asking for that is less code than comparing whole records.
pub(super) trait Spare {
    /// Whether it is the default.
    fn is_nothing(&self) -> bool;
}

impl<T> Spare for Option<T> {
    fn is_nothing(&self) -> bool {
        self.is_none()
    }
}

impl<T> Spare for Vec<T> {
    fn is_nothing(&self) -> bool {
        self.is_empty()
    }
}

impl<T> Spare for Named<T> {
    fn is_nothing(&self) -> bool {
        self.0.is_empty()
    }
}

impl Spare for String {
    fn is_nothing(&self) -> bool {
        self.is_empty()
    }
}

impl Spare for u64 {
    fn is_nothing(&self) -> bool {
        *self == 0
    }
}

/// The entries of a record that were not taken yet.
pub(super) struct Entries(Map<String, Value>);

impl Entries {
    /// The entries of a value.
    pub(super) fn of(value: Value) -> Result<Self, RecordError> {
        match value {
            Value::Object(entries) => Ok(Entries(entries)),
            _ => Err(RecordError::wanted("a record")),
        }
    }

    /// An entry that must be there.
    pub(super) fn need<T: Record>(&mut self, entry: &'static str) -> Result<T, RecordError> {
        let missing = RecordError {
            entry,
            wanted: "present",
        };
        let value = self.0.remove(entry).ok_or(missing)?;
        T::read(value).map_err(|error| error.within(entry))
    }

    /// An entry, or this where it is not there.
    pub(super) fn take_or<T: Record>(&mut self, entry: &'static str, usual: T) -> Result<T, RecordError> {
        if self.0.contains_key(entry) {
            self.need(entry)
        } else {
            Ok(usual)
        }
    }

    /// An entry, or nothing where it is not there.
    pub(super) fn take<T: Record + Default>(&mut self, entry: &'static str) -> Result<T, RecordError> {
        self.take_or(entry, T::default())
    }

    /// What was not taken.
    pub(super) fn rest(self) -> Map<String, Value> {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn an_error_names_the_innermost_entry() {
        let mut entries = Entries::of(json!({"a": {"x": 1}, "b": [1, -2], "c": null})).unwrap();
        let mut inner = Entries::of(entries.need("a").unwrap()).unwrap();
        let error = inner.need::<String>("x").unwrap_err();
        assert_eq!(error.to_string(), "\u{201c}x\u{201d} must be text");
        assert_eq!(error.clone().within("a"), error);
        let error = entries.take::<Vec<u64>>("b").unwrap_err();
        assert_eq!(error.to_string(), "\u{201c}b\u{201d} must be a whole number");
        let error = entries.need::<u64>("d").unwrap_err();
        assert_eq!(error.to_string(), "\u{201c}d\u{201d} must be present");
        let error = Entries::of(json!(7)).err().unwrap();
        assert_eq!(error.to_string(), "it must be a record");
    }

    #[test]
    fn what_is_not_there_is_the_usual_and_the_rest_stays() {
        let mut entries = Entries::of(json!({"a": null, "b": true, "c": 1.0, "z": 1})).unwrap();
        assert_eq!(entries.take::<Option<bool>>("a"), Ok(None));
        assert_eq!(entries.take_or("b", false), Ok(true));
        assert!(entries.take::<u64>("c").is_err());
        assert_eq!(entries.take_or("e", 5), Ok(5));
        assert_eq!(Value::from(entries.rest()), json!({"z": 1}));
    }
}
