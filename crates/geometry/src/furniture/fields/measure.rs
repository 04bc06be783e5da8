//! A measurement as a type: its name, its field, and what was measured.

use units::{Length, SortedMap};

use super::{DEPTH, HEIGHT, TOP_DEPTH, TOP_WIDTH, UPPER_DEPTH, UPPER_HEIGHT, WIDTH, by_key};

/// The name of a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum FieldId {
    /// A measurement of the piece as a whole, by its key in [`fields::ALL`](super::ALL).
    Of(&'static str),
    /// The height of a row of a bay, counted from the top, from 1.
    RowHeight(BayPlace, usize),
    /// The clear width of a bay.
    BayWidth(BayPlace),
    /// A measurement of one of the maker's own changes.
    Alteration {
        /// The place of the change in the list, from 0.
        change: usize,
        /// 0 for the change itself, from 1 for the members of a molding or the points of a turning.
        item: usize,
        /// The key of the measurement.
        key: &'static str,
    },
}

/// Which bay of which case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct BayPlace {
    /// Whether it is the upper of two cases.
    pub upper: bool,
    /// The bay or pedestal from the left, from 1.
    pub bay: usize,
}

/// A length that a maker can measure.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthField {
    /// Its name in saved files.
    pub key: &'static str,
    /// What the trade calls it.
    pub label: &'static str,
    /// Where to hold the tape.
    pub hint: &'static str,
    /// The smallest value that makes sense.
    pub min: Length,
    /// The largest value that makes sense.
    pub max: Length,
}

impl LengthField {
    /// The name of this measurement.
    pub const fn id(&self) -> FieldId {
        FieldId::Of(self.key)
    }

    /// Whether it is a size of the whole piece, or of one of its two cases: these are taken first.
    pub fn is_of_whole(&self) -> bool {
        let of_whole = [
            &WIDTH,
            &TOP_WIDTH,
            &DEPTH,
            &TOP_DEPTH,
            &HEIGHT,
            &UPPER_HEIGHT,
            &UPPER_DEPTH,
        ];
        of_whole.iter().any(|field| field.key == self.key)
    }
}

/// What was measured; a measurement that is missing takes the usual value of the kind of piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measures(SortedMap<&'static str, Length>);

impl Measures {
    /// The measured length, if it was measured.
    pub fn get(&self, field: &LengthField) -> Option<Length> {
        self.0.get(field.key).copied()
    }

    /// Notes a measured length.
    pub fn set(&mut self, field: &'static LengthField, length: Length) {
        self.0.insert(field.key, length);
    }

    /// Every measured length with its field.
    pub fn iter(&self) -> impl Iterator<Item = (&'static LengthField, Length)> {
        self.0
            .iter()
            .filter_map(|(key, length)| Some((by_key(key)?, *length)))
    }
}

impl FromIterator<(&'static LengthField, Length)> for Measures {
    fn from_iter<I: IntoIterator<Item = (&'static LengthField, Length)>>(items: I) -> Self {
        let mut measures = Measures::default();
        for (field, length) in items {
            measures.set(field, length);
        }
        measures
    }
}
