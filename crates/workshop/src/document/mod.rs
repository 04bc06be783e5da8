//! The document: what a maker has told the tool, as told.

mod bay;
mod change;
mod colour;
mod entries;
mod entry_id;
mod fitting;
mod own;
mod scheme;
mod settings;

use std::rc::Rc;

use geometry::{
    BayPlace, Counts, Edition, FieldId, Furniture, Kind, LengthField, Measures, Styles, Zone, fields,
};
use serde_json::{Map, Value};
use units::{
    Decimals, Length, LengthError, LengthUnit, SortedMap, System, as_typed, read_length, read_length_with,
};

use crate::book::Books;
use crate::meant::{is_near, read_meant, written_here};

pub use bay::{Bay, Row};
pub use change::{ChangeKind, PieceChange};
pub use colour::Colour;
pub use entry_id::EntryId;
pub use fitting::as_far_as_it_fits;
pub(crate) use own::generic;
pub use own::{
    LABEL_FIELDS, LabelError, LabelField, LabelReading, OwnMaterial, Price, label_field, material_of,
};
pub use scheme::{LayerPlan, Scheme};
pub use settings::{Confidence, Currency, CurrencyError, Settings};

/// The name of a piece within its workshop, given once and never used again.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PieceId(pub Rc<str>);

/// The results of this program; `results.rs` says what changed from one to the next.
pub const RESULTS: u64 = 2;
/// The results of a piece that does not say which ones it was shown with.
pub(crate) const FIRST_RESULTS: u64 = 1;

/// How the names of invented pieces begin; a piece of a maker is never given such a name.
const INVENTED: &str = "invented-";

/// A workshop with all its pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workshop {
    /// What the maker calls it.
    pub title: String,
    /// A remark that stands under the title, such as that the data is invented.
    pub note: String,
    /// The units that the maker reads and writes.
    pub units: System,
    /// What the maker settled once for all pieces.
    pub settings: Settings,
    /// Materials of the maker's own.
    pub materials: Vec<Rc<OwnMaterial>>,
    /// What the maker keeps in lines: price notes, the shelf, recipes and more.
    pub books: Books,
    /// The pieces in the maker's order.
    pub pieces: Vec<Rc<Piece>>,
    /// What a save file held beyond this; kept and written back.
    pub beyond: Map<String, Value>,
}

/// A length as it was written, next to its value.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    typed: String,
    unit: LengthUnit,
    length: Length,
}

impl Reading {
    /// Reads what a program or an old save file has: either sign may stand before decimals. A lone number has the unit
    /// `tape`.
    ///
    /// # Errors
    /// Where the text is not a length.
    pub fn new(typed: &str, tape: LengthUnit) -> Result<Self, LengthError> {
        Self::typed_with(typed, tape, Decimals::Either)
    }

    /// Reads what was typed where this sign stands before decimals. What was said in words is kept in figures: they fit
    /// in the drawing, and show what was understood.
    ///
    /// # Errors
    /// Where the text is not a length.
    pub fn typed_with(typed: &str, tape: LengthUnit, decimals: Decimals) -> Result<Self, LengthError> {
        let length = read_length_with(typed, tape, decimals)?;
        Ok(Reading {
            typed: as_typed(typed),
            unit: tape,
            length,
        })
    }

    /// Reads what was saved, with the metres beside it.
    ///
    /// # Errors
    /// Where the text is not a length.
    pub fn saved(typed: &str, tape: LengthUnit, beside: Option<f64>) -> Result<Self, LengthError> {
        let is_meant =
            |reading: &Reading| beside.is_some_and(|metres| is_near(reading.length.as_metres(), metres));
        read_meant(|decimals| Self::typed_with(typed, tape, decimals), is_meant)
    }

    /// Its metres, if the text alone would come to others.
    pub fn beside(&self) -> Option<f64> {
        let alone = read_length(&self.typed, self.unit);
        (alone != Ok(self.length)).then(|| self.length.as_metres())
    }

    /// As it is written where this sign stands before decimals.
    pub fn written_here(&self, decimals: Decimals) -> String {
        written_here(&self.typed, decimals, |text, decimals| {
            read_length_with(text, self.unit, decimals) == Ok(self.length)
        })
    }

    /// As it was typed.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// The unit that a lone number had when it was typed.
    pub fn unit(&self) -> LengthUnit {
        self.unit
    }

    /// Its value.
    pub fn length(&self) -> Length {
        self.length
    }

    /// As typed, with the unit behind it if none was typed.
    pub fn with_unit(&self) -> String {
        self.with_unit_here(Decimals::Either)
    }

    /// The same as it is written where this sign stands before decimals.
    pub fn with_unit_here(&self, decimals: Decimals) -> String {
        let typed = self.written_here(decimals);
        let bare = typed
            .chars()
            .all(|c| !c.is_alphabetic() && !matches!(c, '\'' | '"' | '′' | '″' | '’' | '”'));
        if bare {
            format!("{typed} {}", self.unit.sign())
        } else {
            typed
        }
    }
}

/// A piece of furniture, or a set of pieces that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Its name within the workshop.
    pub id: PieceId,
    /// What the maker calls it.
    pub name: String,
    /// How many there are of it.
    pub count: u32,
    /// What kind of piece it is.
    pub kind: Kind,
    /// What stands in for all that was not measured, chosen or counted. It stays with the piece for good.
    pub edition: Edition,
    /// The last id that an entry of it was given.
    pub last_id: EntryId,
    /// The results that the maker has seen, or was told about: see [`crate::results`].
    pub shown: u64,
    /// What was measured, by the key of the field.
    pub readings: SortedMap<&'static str, Reading>,
    /// How it is made.
    pub styles: Styles,
    /// What was counted.
    pub counts: Counts,
    /// How its front is divided; of a desk, one bay for each pedestal.
    pub bays: Vec<Bay>,
    /// How the front of its upper case is divided, if it has one.
    pub upper: Vec<Bay>,
    /// What the maker altered, in order.
    pub changes: Vec<PieceChange>,
    /// What the maker decided for a zone against the default, and zones of the maker's own, by the key of the zone.
    pub zones: SortedMap<String, ZoneChoice>,
    /// What the maker decided for a surface against the default, by the name of the surface.
    pub choices: SortedMap<String, SurfaceChoice>,
    /// How it is finished.
    pub scheme: Scheme,
    /// What the maker keeps in lines about it: what was paid, done, weighed.
    pub books: Books,
    /// What a save file held beyond this; kept and written back.
    pub beyond: Map<String, Value>,
}

/// What the maker decided for a zone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ZoneChoice {
    /// What the maker calls it; empty for a usual zone.
    pub name: String,
    /// Whether it gets the finish; `None` is the default of the zone.
    pub painted: Option<bool>,
    /// How it is finished, if that is not how the piece is.
    pub scheme: Option<Scheme>,
}

/// What the maker decided for a surface.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SurfaceChoice {
    /// The key of the zone it belongs to; `None` is the usual one.
    pub zone: Option<String>,
    /// Whether it gets the finish; `None` goes with the zone.
    pub painted: Option<bool>,
}

impl Piece {
    /// A new piece of this kind of which nothing was measured yet.
    pub fn new(id: PieceId, kind: Kind) -> Self {
        Piece::of_edition(id, kind, Edition::LATEST)
    }

    /// A piece of this kind of which nothing was measured yet, as an edition has it.
    pub fn of_edition(id: PieceId, kind: Kind, edition: Edition) -> Self {
        let usual = Furniture::of_edition(kind, edition);
        let bays = |bays: &[geometry::Bay]| bays.iter().map(Bay::usual).collect();
        let mut piece = Piece {
            id,
            name: kind.label().into(),
            count: 1,
            kind,
            edition,
            last_id: EntryId::default(),
            shown: RESULTS,
            readings: SortedMap::new(),
            styles: usual.styles,
            counts: usual.counts.clone(),
            bays: bays(&usual.bays),
            upper: bays(&usual.upper),
            changes: vec![],
            zones: SortedMap::new(),
            choices: SortedMap::new(),
            scheme: Scheme::of_edition(edition),
            books: Books::default(),
            beyond: Map::new(),
        };
        piece.give_ids();
        piece
    }

    /// Whether the piece belongs to the invented workshop.
    pub fn is_invented(&self) -> bool {
        self.id.0.starts_with(INVENTED)
    }

    /// What was measured, as geometry takes it.
    pub fn furniture(&self) -> Furniture {
        let measured = self
            .readings
            .iter()
            .filter_map(|(key, reading)| Some((fields::by_key(key)?, reading.length())));
        let usual = Furniture::of_edition(self.kind, self.edition);
        let built = |bays: &[Bay], usual: &[geometry::Bay]| {
            let bays = bays.iter().enumerate();
            bays.map(|(i, bay)| bay.geometry(usual.get(i))).collect()
        };
        Furniture {
            kind: self.kind,
            edition: self.edition,
            measures: measured.collect::<Measures>(),
            styles: self.styles,
            counts: self.counts.clone(),
            bays: built(&self.bays, &usual.bays),
            upper: built(&self.upper, &usual.upper),
            changes: self.changes.iter().map(PieceChange::geometry).collect(),
        }
    }

    /// The bays of one of the cases.
    pub fn bays_of(&self, upper: bool) -> &[Bay] {
        if upper { &self.upper } else { &self.bays }
    }

    /// The bay at a place.
    pub fn bay(&self, place: BayPlace) -> Option<&Bay> {
        self.bays_of(place.upper).get(place.bay.checked_sub(1)?)
    }

    /// The reading of a field, if it was measured.
    pub fn reading(&self, field: FieldId) -> Option<&Reading> {
        match field {
            FieldId::Of(key) => self.readings.get(key),
            FieldId::RowHeight(place, row) => self.bay(place)?.rows.get(row.checked_sub(1)?)?.height.as_ref(),
            FieldId::BayWidth(place) => self.bay(place)?.width.as_ref(),
            FieldId::Alteration { change, item, key } => self.changes.get(change)?.reading(item, key),
        }
    }

    /// The field with its limits.
    pub fn field(field: FieldId) -> Option<&'static LengthField> {
        match field {
            FieldId::Of(key) | FieldId::Alteration { key, .. } => fields::by_key(key),
            FieldId::RowHeight(..) => Some(&fields::ROW_HEIGHT),
            FieldId::BayWidth(_) => Some(&fields::BAY_WIDTH),
        }
    }

    /// The bay at a place, to change.
    pub(crate) fn bay_at(&mut self, place: BayPlace) -> Option<&mut Bay> {
        let bays = if place.upper {
            &mut self.upper
        } else {
            &mut self.bays
        };
        bays.get_mut(place.bay.checked_sub(1)?)
    }

    /// Makes a measured length of a row, a bay or a change longer, to see what hangs on it.
    pub(crate) fn stretch(&mut self, field: FieldId, by: Length) {
        let reading = match field {
            FieldId::Of(key) => self.readings.get_mut(key),
            FieldId::RowHeight(place, row) => self.bay_at(place).and_then(|bay| {
                let row = row.checked_sub(1)?;
                bay.rows.get_mut(row)?.height.as_mut()
            }),
            FieldId::BayWidth(place) => self.bay_at(place).and_then(|bay| bay.width.as_mut()),
            FieldId::Alteration { change, item, key } => {
                let change = self.changes.get_mut(change);
                change.and_then(|change| change.readings.get_mut(&(item, key)))
            }
        };
        if let Some(reading) = reading {
            reading.length += by;
        }
    }

    /// How a zone is finished.
    pub fn scheme_of(&self, zone: &str) -> &Scheme {
        let own = self.zones.get(zone).and_then(|zone| zone.scheme.as_ref());
        own.unwrap_or(&self.scheme)
    }

    /// Whether a zone gets the finish if nobody says otherwise. Zones of the maker's own do.
    pub fn usually_paints(&self, zone: &str) -> bool {
        Zone::by_key(zone).is_none_or(|zone| self.edition.paints(zone))
    }

    /// Every scheme of the piece: its own, then those of its zones.
    pub fn schemes(&self) -> impl Iterator<Item = &Scheme> {
        let of_zones = self.zones.values().filter_map(|zone| zone.scheme.as_ref());
        std::iter::once(&self.scheme).chain(of_zones)
    }

    /// What a maker calls a zone of this piece.
    pub fn zone_label(&self, key: &str) -> String {
        let own = self
            .zones
            .get(key)
            .map(|zone| zone.name.clone())
            .filter(|name| !name.is_empty());
        let usual = || Zone::by_key(key).map_or(key, |zone| zone.label()).to_owned();
        own.unwrap_or_else(usual)
    }
}

impl Workshop {
    /// The piece with this name.
    pub fn piece(&self, id: &PieceId) -> Option<&Rc<Piece>> {
        self.pieces.iter().find(|piece| piece.id == *id)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_said_is_kept_in_figures_and_keeps_its_unit() {
        let reading = Reading::new("Thirty three and seven eighths.", LengthUnit::Inch).unwrap();
        assert_eq!(
            (reading.typed(), reading.with_unit().as_str()),
            ("33 7/8", "33 7/8 in")
        );
        let again = Reading::new(&reading.with_unit(), LengthUnit::Millimetre).unwrap();
        assert_eq!(again.length(), reading.length());
    }

    #[test]
    fn what_was_typed_comes_back_as_typed() {
        let reading = Reading::new(" 33 7/8\" ", LengthUnit::Inch).unwrap();
        assert_eq!(
            (reading.typed(), reading.with_unit().as_str()),
            ("33 7/8\"", "33 7/8\"")
        );
        assert_eq!(
            Reading::new("33 7/8", LengthUnit::Inch).unwrap().with_unit(),
            "33 7/8 in"
        );
        assert_eq!(
            Reading::new("851", LengthUnit::Millimetre).unwrap().with_unit(),
            "851 mm"
        );
    }

    #[test]
    fn a_reading_means_everywhere_what_it_meant_where_it_was_typed() {
        let mm = |reading: &Reading| (reading.length().as_millimetres() * 1e6).round() / 1e6;
        for (text, decimals, millimetres, has_value) in [
            ("1,250", Decimals::Point, 1250.0, true),
            ("1.250", Decimals::Comma, 1250.0, true),
            ("1,250", Decimals::Comma, 1.25, false),
            ("1.250", Decimals::Point, 1.25, false),
            ("1.250,5", Decimals::Point, 1250.5, false),
            ("33,8", Decimals::Point, 33.8, false),
        ] {
            let reading = Reading::typed_with(text, LengthUnit::Millimetre, decimals).unwrap();
            assert_eq!(
                (mm(&reading), reading.beside().is_some()),
                (millimetres, has_value),
                "{text}"
            );
            let again = Reading::saved(reading.typed(), reading.unit(), reading.beside()).unwrap();
            assert_eq!(again, reading);
            for here in [Decimals::Point, Decimals::Comma] {
                let shown = reading.written_here(here);
                let typed = Reading::typed_with(&shown, LengthUnit::Millimetre, here).unwrap();
                assert_eq!(typed.length(), reading.length(), "{text} shown as {shown}");
            }
        }
    }
}
