//! The document: everything the maker entered.

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

use coatings::suggest::Suggestion;
use coatings::{Substrate, Wish};
use geometry::{
    BayPlace, Counts, Edition, FieldId, Furniture, Kind, LengthField, Measures, Styles, Zone, fields,
};
use serde_json::{Map, Value};
use units::{
    Decimals, Length, LengthError, LengthUnit, SortedMap, System, as_typed, read_length, read_length_with,
};

use crate::book::{Books, Facts};
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

/// The id of a piece within its workshop. It is never reused.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PieceId(pub Rc<str>);

/// The version of the results of this program. `results.rs` lists the changes.
pub const RESULTS: u64 = 2;
/// The version of the results for a piece that was saved without one.
pub(crate) const FIRST_RESULTS: u64 = 1;

/// The prefix of the ids of sample pieces. The maker's pieces never get such an id.
const INVENTED: &str = "invented-";

/// A workshop with all its pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workshop {
    /// The title.
    pub title: String,
    /// A note below the title, such as that the data is invented.
    pub note: String,
    /// The units for reading and writing.
    pub units: System,
    /// The settings for all pieces.
    pub settings: Settings,
    /// The maker's own materials.
    pub materials: Vec<Rc<OwnMaterial>>,
    /// The books: price notes, the shelf, recipes and more.
    pub books: Books,
    /// The pieces in the maker's order.
    pub pieces: Vec<Rc<Piece>>,
    /// Unknown entries of the save file. They are kept and written back.
    pub beyond: Map<String, Value>,
}

/// A length as typed, with its value.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    typed: String,
    unit: LengthUnit,
    length: Length,
}

impl Reading {
    /// Reads a length from a program or an old save file, with either decimal sign. A number without a unit
    /// is in `tape`.
    ///
    /// # Errors
    /// If the text is not a length.
    pub fn new(typed: &str, tape: LengthUnit) -> Result<Self, LengthError> {
        Self::typed_with(typed, tape, Decimals::Either)
    }

    /// Reads a typed length with this decimal sign. Spoken numbers are stored as digits, which fit in the
    /// drawing and show what was understood.
    ///
    /// # Errors
    /// If the text is not a length.
    pub fn typed_with(typed: &str, tape: LengthUnit, decimals: Decimals) -> Result<Self, LengthError> {
        let length = read_length_with(typed, tape, decimals)?;
        Ok(Reading {
            typed: as_typed(typed),
            unit: tape,
            length,
        })
    }

    /// Reads a saved text, with the meters saved beside it.
    ///
    /// # Errors
    /// If the text is not a length.
    pub fn saved(typed: &str, tape: LengthUnit, beside: Option<f64>) -> Result<Self, LengthError> {
        let is_meant =
            |reading: &Reading| beside.is_some_and(|metres| is_near(reading.length.as_metres(), metres));
        read_meant(|decimals| Self::typed_with(typed, tape, decimals), is_meant)
    }

    /// Returns the meters, if the text alone could mean another length.
    pub fn beside(&self) -> Option<f64> {
        let alone = read_length(&self.typed, self.unit);
        (alone != Ok(self.length)).then(|| self.length.as_metres())
    }

    /// Returns the text in a locale with this decimal sign.
    pub fn written_here(&self, decimals: Decimals) -> String {
        written_here(&self.typed, decimals, |text, decimals| {
            read_length_with(text, self.unit, decimals) == Ok(self.length)
        })
    }

    /// Returns the text as typed.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// Returns the unit for numbers without one when it was typed.
    pub fn unit(&self) -> LengthUnit {
        self.unit
    }

    /// Returns the length.
    pub fn length(&self) -> Length {
        self.length
    }

    /// Returns the text as typed, with the unit added if none was typed.
    pub fn with_unit(&self) -> String {
        self.with_unit_here(Decimals::Either)
    }

    /// Returns the same in a locale with this decimal sign.
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

/// A piece of furniture, or a set of identical pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// The id within the workshop.
    pub id: PieceId,
    /// The name.
    pub name: String,
    /// The number of identical pieces.
    pub count: u32,
    /// The kind of furniture.
    pub kind: Kind,
    /// The edition of the defaults. It never changes for a piece.
    pub edition: Edition,
    /// The last id given to an entry.
    pub last_id: EntryId,
    /// The version of the results that the maker last saw ([`crate::results`]).
    pub shown: u64,
    /// The readings, by field key.
    pub readings: SortedMap<&'static str, Reading>,
    /// The choices of how it is made.
    pub styles: Styles,
    /// The counted numbers.
    pub counts: Counts,
    /// The bays of the front. A desk has one for each pedestal.
    pub bays: Vec<Bay>,
    /// The bays of the upper case, if it has one.
    pub upper: Vec<Bay>,
    /// The maker's changes, in order.
    pub changes: Vec<PieceChange>,
    /// The maker's choices for zones, by zone key, and the added zones.
    pub zones: SortedMap<String, ZoneChoice>,
    /// The maker's choices for surfaces, by the name of the surface.
    pub choices: SortedMap<String, SurfaceChoice>,
    /// The finish.
    pub scheme: Scheme,
    /// The books of the piece: prices paid, steps done, cans weighed.
    pub books: Books,
    /// Unknown entries of the save file. They are kept and written back.
    pub beyond: Map<String, Value>,
}

/// The maker's choices for a zone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ZoneChoice {
    /// The name. Empty for a built-in zone.
    pub name: String,
    /// Whether it is painted. `None` is the default of the zone.
    pub painted: Option<bool>,
    /// The finish, if it differs from that of the piece.
    pub scheme: Option<Scheme>,
}

/// The maker's choices for a surface.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SurfaceChoice {
    /// The key of its zone. `None` is the default one.
    pub zone: Option<String>,
    /// Whether it is painted. `None` follows the zone.
    pub painted: Option<bool>,
}

impl Piece {
    /// Creates an unmeasured piece.
    pub fn new(id: PieceId, kind: Kind) -> Self {
        Piece::of_edition(id, kind, Edition::LATEST)
    }

    /// Creates an unmeasured piece with the defaults of an edition.
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

    /// Returns true if the piece is a sample.
    pub fn is_invented(&self) -> bool {
        self.id.0.starts_with(INVENTED)
    }

    /// Converts the piece for `geometry`.
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

    /// Returns the bays of one of the cases.
    pub fn bays_of(&self, upper: bool) -> &[Bay] {
        if upper { &self.upper } else { &self.bays }
    }

    /// Returns the bay at a place.
    pub fn bay(&self, place: BayPlace) -> Option<&Bay> {
        self.bays_of(place.upper).get(place.bay.checked_sub(1)?)
    }

    /// Returns the reading of a field, if it was measured.
    pub fn reading(&self, field: FieldId) -> Option<&Reading> {
        match field {
            FieldId::Of(key) => self.readings.get(key),
            FieldId::RowHeight(place, row) => self.bay(place)?.rows.get(row.checked_sub(1)?)?.height.as_ref(),
            FieldId::BayWidth(place) => self.bay(place)?.width.as_ref(),
            FieldId::Alteration { change, item, key } => self.changes.get(change)?.reading(item, key),
        }
    }

    /// Returns the field with its limits.
    pub fn field(field: FieldId) -> Option<&'static LengthField> {
        match field {
            FieldId::Of(key) | FieldId::Alteration { key, .. } => fields::by_key(key),
            FieldId::RowHeight(..) => Some(&fields::ROW_HEIGHT),
            FieldId::BayWidth(_) => Some(&fields::BAY_WIDTH),
        }
    }

    /// Returns the bay at a place, mutably.
    pub(crate) fn bay_at(&mut self, place: BayPlace) -> Option<&mut Bay> {
        let bays = if place.upper {
            &mut self.upper
        } else {
            &mut self.bays
        };
        bays.get_mut(place.bay.checked_sub(1)?)
    }

    /// Lengthens a reading of a row, a bay or a change, to find its effect.
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

    /// Returns the scheme of a zone.
    pub fn scheme_of(&self, zone: &str) -> &Scheme {
        let own = self.zones.get(zone).and_then(|zone| zone.scheme.as_ref());
        own.unwrap_or(&self.scheme)
    }

    /// Returns true if a zone is painted by default. Added zones are.
    pub fn usually_paints(&self, zone: &str) -> bool {
        Zone::by_key(zone).is_none_or(|zone| self.edition.paints(zone))
    }

    /// Returns the recommended layers for one of the piece's schemes. The color of the old paint counts where the
    /// surface may be painted.
    pub fn suggestion(&self, scheme: &Scheme, own: &[Rc<OwnMaterial>]) -> Suggestion {
        let suggestion = scheme.suggestion(own);
        match self.books.one::<Facts>().old_color {
            Some(Colour(old)) if scheme.condition.substrate.may_be_paint() => {
                suggestion.over(old, scheme.colour.0)
            }
            _ => suggestion,
        }
    }

    /// Returns true if a light paint goes over an old paint of unknown color, which may take more coats to hide.
    pub fn lacks_old_color(&self, scheme: &Scheme, own: &[Rc<OwnMaterial>]) -> bool {
        scheme.condition.substrate == Substrate::PaintedSound
            && scheme.wish(own) == Wish::Painted { light: true }
            && self.books.one::<Facts>().old_color.is_none()
    }

    /// Returns every scheme of the piece: its own, then those of its zones.
    pub fn schemes(&self) -> impl Iterator<Item = &Scheme> {
        let of_zones = self.zones.values().filter_map(|zone| zone.scheme.as_ref());
        std::iter::once(&self.scheme).chain(of_zones)
    }

    /// Returns the label of a zone of this piece.
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
    /// Returns the piece with this id.
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
