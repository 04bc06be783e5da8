//! Numbers that a maker counts instead of measuring.

use units::SortedMap;

/// Something that is counted.
#[derive(Debug, PartialEq)]
pub struct CountField {
    /// Its name in saved files; it never changes.
    pub key: &'static str,
    /// What a maker calls it.
    pub label: &'static str,
    /// The smallest number.
    pub min: u32,
    /// The largest number.
    pub max: u32,
}

/// Drawers in the apron of a table.
pub const DRAWERS: CountField = CountField {
    key: "drawers",
    label: "Drawers in the apron",
    min: 0,
    max: 6,
};
/// Slats of a headboard.
pub const SLATS: CountField = CountField {
    key: "slats",
    label: "Slats",
    min: 1,
    max: 40,
};
/// Flutes of a half column.
pub const FLUTES: CountField = CountField {
    key: "flutes",
    label: "Flutes per half column",
    min: 1,
    max: 16,
};

/// Everything that is counted.
pub const ALL: [&CountField; 3] = [&DRAWERS, &SLATS, &FLUTES];

/// What is counted under this name in saved files.
pub fn by_key(key: &str) -> Option<&'static CountField> {
    ALL.into_iter().find(|field| field.key == key)
}

/// What was counted; a count that is missing takes the usual number of the kind of piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Counts(SortedMap<&'static str, u32>);

impl Counts {
    /// The count, if it was given.
    pub fn get(&self, field: &CountField) -> Option<u32> {
        self.0.get(field.key).copied()
    }

    /// Notes a count.
    pub fn set(&mut self, field: &'static CountField, count: u32) {
        self.0.insert(field.key, count);
    }

    /// Forgets a count.
    pub fn clear(&mut self, field: &CountField) {
        self.0.remove(field.key);
    }

    /// Every count that was given, with what is counted.
    pub fn iter(&self) -> impl Iterator<Item = (&'static CountField, u32)> {
        self.0
            .iter()
            .filter_map(|(key, count)| Some((by_key(key)?, *count)))
    }
}
