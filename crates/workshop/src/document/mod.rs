//! The document: what a maker has told the tool, as told.

use std::collections::BTreeMap;
use std::rc::Rc;

use coatings::{Basis, Ground, Stage};
use geometry::{
    BackStyle, BaseStyle, DrawerRow, FieldId, FrontStyle, Furniture, Kind, LengthField, Measures, fields,
};
use serde_json::{Map, Value};
use units::{Length, LengthError, LengthUnit, System, read_length};

/// The name of a piece within its workshop, given once and never used again.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PieceId(pub Rc<str>);

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
    /// Reads what was typed; a lone number has the unit `tape`.
    ///
    /// # Errors
    /// Where the text is not a length.
    pub fn new(typed: &str, tape: LengthUnit) -> Result<Self, LengthError> {
        let length = read_length(typed, tape)?;
        Ok(Reading {
            typed: typed.trim().into(),
            unit: tape,
            length,
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
        let bare = self
            .typed
            .chars()
            .all(|c| !c.is_alphabetic() && !matches!(c, '\'' | '"' | '′' | '″' | '’' | '”'));
        if bare {
            format!("{} {}", self.typed, self.unit.sign())
        } else {
            self.typed.clone()
        }
    }
}

/// A row of drawers.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// How many drawers stand side by side.
    pub columns: usize,
    /// The measured height of their fronts.
    pub height: Option<Reading>,
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
    /// What was measured, by the key of the field.
    pub readings: BTreeMap<&'static str, Reading>,
    /// The rows of drawers from the top.
    pub rows: Vec<Row>,
    /// How the drawer fronts sit.
    pub fronts: FrontStyle,
    /// How the back is fixed.
    pub back: BackStyle,
    /// What the carcass stands on.
    pub base: BaseStyle,
    /// Surfaces that the maker paints or leaves against the default, by the name of the surface.
    pub choices: BTreeMap<String, bool>,
    /// How it is finished.
    pub scheme: Scheme,
    /// What a save file held beyond this; kept and written back.
    pub beyond: Map<String, Value>,
}

/// A colour of the screen, which stands for the maker's paint: red, green, blue.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub [u8; 3]);

impl Colour {
    /// Reads `#rrggbb`.
    pub fn read(text: &str) -> Option<Self> {
        let digits = text
            .strip_prefix('#')
            .filter(|d| d.len() == 6 && d.bytes().all(|b| b.is_ascii_hexdigit()))?;
        let value = u32::from_str_radix(digits, 16).ok()?;
        let [_, red, green, blue] = value.to_be_bytes();
        Some(Colour([red, green, blue]))
    }

    /// Writes `#rrggbb`.
    pub fn write(self) -> String {
        let [red, green, blue] = self.0;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

/// What goes on a piece, in which order and with what.
#[derive(Clone, Debug, PartialEq)]
pub struct Scheme {
    /// The colour of the paint.
    pub colour: Colour,
    /// What the first coat goes onto.
    pub ground: Ground,
    /// What the volumes are worked out from.
    pub basis: Basis,
    /// The coats of each stage.
    pub stages: [StageCoats; 3],
}

/// The coats of one stage.
#[derive(Clone, Debug, PartialEq)]
pub struct StageCoats {
    /// The key of the material.
    pub material: &'static str,
    /// How many coats.
    pub coats: u32,
    /// The key of the tool.
    pub tool: &'static str,
    /// The key of the can in question.
    pub can: &'static str,
}

impl Scheme {
    /// One coat of primer, two of paint, two of clear: the common scheme for painted furniture (common
    /// practice, no source).
    pub fn usual(system: System) -> Self {
        let can = match system {
            System::UsCustomary => "us-quart",
            System::Metric => "metric-750-ml",
        };
        let stage = |material, coats| StageCoats {
            material,
            coats,
            tool: "brush",
            can,
        };
        Scheme {
            colour: Colour([0x4a, 0x6b, 0x61]),
            ground: Ground::Sealed,
            basis: Basis::WetFilm,
            stages: [
                stage("bonding-primer", 1),
                stage("trim-enamel", 2),
                stage("water-polyurethane", 2),
            ],
        }
    }

    /// The coats of a stage.
    pub fn of(&self, stage: Stage) -> &StageCoats {
        &self.stages[place(stage)]
    }

    /// The coats of a stage, to change.
    pub(crate) fn of_mut(&mut self, stage: Stage) -> &mut StageCoats {
        &mut self.stages[place(stage)]
    }
}

fn place(stage: Stage) -> usize {
    match stage {
        Stage::Primer => 0,
        Stage::Paint => 1,
        Stage::Topcoat => 2,
    }
}

impl Piece {
    /// A piece of this kind of which nothing was measured yet.
    pub fn new(id: PieceId, kind: Kind, system: System) -> Self {
        let usual = Furniture::usual(kind);
        Piece {
            id,
            name: kind.label().into(),
            count: 1,
            kind,
            readings: BTreeMap::new(),
            rows: usual
                .rows
                .iter()
                .map(|row| Row {
                    columns: row.columns,
                    height: None,
                })
                .collect(),
            fronts: usual.fronts,
            back: usual.back,
            base: usual.base,
            choices: BTreeMap::new(),
            scheme: Scheme::usual(system),
            beyond: Map::new(),
        }
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
        Furniture {
            kind: self.kind,
            measures: measured.collect::<Measures>(),
            rows: self
                .rows
                .iter()
                .map(|row| DrawerRow {
                    columns: row.columns,
                    height: row.height.as_ref().map(Reading::length),
                })
                .collect(),
            fronts: self.fronts,
            back: self.back,
            base: self.base,
        }
    }

    /// The reading of a field, if it was measured.
    pub fn reading(&self, field: FieldId) -> Option<&Reading> {
        match field {
            FieldId::Of(key) => self.readings.get(key),
            FieldId::RowHeight(row) => self.rows.get(row.checked_sub(1)?)?.height.as_ref(),
        }
    }

    /// The field with its limits.
    pub fn field(field: FieldId) -> Option<&'static LengthField> {
        match field {
            FieldId::Of(key) => fields::by_key(key),
            FieldId::RowHeight(_) => Some(&fields::ROW_HEIGHT),
        }
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
    fn the_usual_scheme_names_what_is_known() {
        for system in [System::UsCustomary, System::Metric] {
            for stage in Stage::ALL {
                let coats = Scheme::usual(system).of(stage).clone();
                assert!(coatings::can(coats.can).is_some() && coatings::tool(coats.tool).is_some());
                assert_eq!(coatings::material(coats.material).map(|m| m.stage), Some(stage));
            }
        }
    }

    #[test]
    fn colours_are_read_as_they_are_written() {
        let colour = Colour([0x0a, 0xff, 0x80]);
        assert_eq!(Colour::read(&colour.write()), Some(colour));
        for bad in ["", "#12345", "123456", "#12345g", "#1234567", "#+12345"] {
            assert_eq!(Colour::read(bad), None, "{bad}");
        }
    }
}
