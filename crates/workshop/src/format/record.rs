//! Reading records from JSON and writing them. [`records`] declares each record once: its entries, which are
//! required, and the defaults of the others. The reader that serde derives is ten times as large.

use std::fmt;

use serde::{Serialize, Serializer};
use serde_json::{Map, Value};
use units::SortedMap;

/// The reason that a value is not a valid record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordError {
    /// The invalid entry. Empty for the record itself.
    entry: &'static str,
    /// The expected content.
    wanted: &'static str,
}

impl RecordError {
    /// Creates an error about the value itself.
    pub(super) fn wanted(wanted: &'static str) -> Self {
        RecordError { entry: "", wanted }
    }

    /// Adds the entry to the error. The innermost entry is reported.
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

/// A type that can be read from JSON.
pub(crate) trait Record: Sized {
    /// Reads the value.
    ///
    /// # Errors
    /// If the value has another type.
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

/// Records by name.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Named<T>(pub(super) SortedMap<String, T>);

impl<T> Named<T> {
    /// Returns true if there are none.
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

/// A value that becomes `None` if it cannot be read, without affecting the rest.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(transparent)]
pub(super) struct Readable<T>(pub(super) Option<T>);

impl<T: Record> Record for Readable<T> {
    fn read(value: Value) -> Result<Self, RecordError> {
        Ok(Readable(T::read(value).ok()))
    }
}

/// Declares records, entry by entry.
///
/// - `must`: a required entry.
/// - `kept`: an entry that is always written. If it is missing, the value after `=` is used, or the default.
/// - `spare`: an entry that is only written if it is not the default. If it is missing, the default is used.
/// - `..`: all unknown entries. They are kept and written back.
///
/// `RECORDS` lists all entries, for the tests.
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
        /// The names of the records with those of their entries.
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

/// A value that is not written if it is the default. This takes less code than comparing whole records.
pub(super) trait Spare {
    /// Returns true if it is the default.
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
    /// Returns the entries of a value.
    pub(super) fn of(value: Value) -> Result<Self, RecordError> {
        match value {
            Value::Object(entries) => Ok(Entries(entries)),
            _ => Err(RecordError::wanted("a record")),
        }
    }

    /// Takes a required entry.
    pub(super) fn need<T: Record>(&mut self, entry: &'static str) -> Result<T, RecordError> {
        let missing = RecordError {
            entry,
            wanted: "present",
        };
        let value = self.0.remove(entry).ok_or(missing)?;
        T::read(value).map_err(|error| error.within(entry))
    }

    /// Takes an entry, or this value if it is missing.
    pub(super) fn take_or<T: Record>(&mut self, entry: &'static str, usual: T) -> Result<T, RecordError> {
        if self.0.contains_key(entry) {
            self.need(entry)
        } else {
            Ok(usual)
        }
    }

    /// Takes an entry, or the default if it is missing.
    pub(super) fn take<T: Record + Default>(&mut self, entry: &'static str) -> Result<T, RecordError> {
        self.take_or(entry, T::default())
    }

    /// Returns the entries that were not taken.
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
