//! A piece of furniture as measured.

use units::Length;

use super::alteration::Alteration;
use super::bay::Bay;
use super::counts::{CountField, Counts};
use super::edition::Edition;
use super::fields::{self, LengthField, Measures};
use super::girth;
use super::kind::{Construction, Kind};
use super::styles::{BaseStyle, CornerColumns, Edge, FaceFrame, Styles, TapeOver};

/// The usual width of a half column, as a share of the stile that it is on (common practice, no source).
const COLUMN_OF_STILE: f64 = 5.0 / 6.0;

/// A piece of furniture as measured.
///
/// # Example
/// ```
/// use geometry::{Furniture, Kind, fields};
/// use units::Length;
/// let mut dresser = Furniture::usual(Kind::Dresser);
/// dresser.measures.set(&fields::WIDTH, Length::inches(60.0));
/// let surfaces = dresser.assembly().unwrap().surfaces();
/// assert!(surfaces.iter().any(|surface| surface.id.to_string() == "drawer-front-1-1/front"));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Furniture {
    /// What kind of piece it is.
    pub kind: Kind,
    /// The source of everything that was not measured, chosen or counted.
    pub edition: Edition,
    /// What was measured.
    pub measures: Measures,
    /// How it is made.
    pub styles: Styles,
    /// What was counted.
    pub counts: Counts,
    /// How the front is divided; of a desk, one bay for each pedestal.
    pub bays: Vec<Bay>,
    /// How the front of the upper case is divided, if there is one.
    pub upper: Vec<Bay>,
    /// What the maker altered, in order.
    pub changes: Vec<Alteration>,
}

impl Furniture {
    /// A new piece of this kind before anything was measured.
    pub fn usual(kind: Kind) -> Self {
        Furniture::of_edition(kind, Edition::LATEST)
    }

    /// A piece of this kind before anything was measured, as an edition has it.
    pub fn of_edition(kind: Kind, edition: Edition) -> Self {
        Furniture {
            kind,
            edition,
            measures: Measures::default(),
            styles: edition.styles(kind),
            counts: Counts::default(),
            bays: edition.bays(kind, false),
            upper: edition.bays(kind, true),
            changes: vec![],
        }
    }

    /// The measured length, or the usual one.
    pub fn length(&self, field: &LengthField) -> Length {
        let measured = self
            .measures
            .get(field)
            .map(|read| read - self.beyond_case(field));
        measured.unwrap_or_else(|| match self.edition {
            Edition::First => self.usual_length(field),
        })
    }

    /// Whether the width and the depth can be measured over the top as well, with [`TAPE_OVER`](super::styles::TAPE_OVER).
    pub fn has_top_over_case(&self) -> bool {
        matches!(
            self.kind.construction(),
            Construction::Case | Construction::TwoCases | Construction::Chest
        )
    }

    /// Whether the piece may stand against a wall, with [`STAND`](super::styles::STAND). Tables and frames have no such back.
    pub fn may_stand_at_wall(&self) -> bool {
        !matches!(
            self.kind.construction(),
            Construction::Table | Construction::Frame
        )
    }

    /// How much further than the case a reading goes: the overhang of the top, if the tape went over it.
    pub fn beyond_case(&self, field: &LengthField) -> Length {
        let is_over_top = self.styles.tape_over == TapeOver::Top && self.has_top_over_case();
        match field.key {
            key if is_over_top && key == fields::WIDTH.key => self.length(&fields::OVERHANG_SIDE) * 2.0,
            key if is_over_top && key == fields::DEPTH.key => self.length(&fields::OVERHANG_FRONT),
            _ => Length::ZERO,
        }
    }

    /// The usual length in the first edition.
    fn usual_length(&self, field: &LengthField) -> Length {
        match field.key {
            key if key == fields::EDGE_WIDTH.key && self.has_measured_edge() => {
                let [around, thick] = [&fields::EDGE_GIRTH, &fields::TOP_THICKNESS].map(|f| self.length(f));
                girth::likely_width(around, thick).max(fields::EDGE_WIDTH.min)
            }
            key if key == fields::EDGE_WIDTH.key => self.length(&fields::EDGE_HEIGHT),
            key if key == fields::EDGE_GIRTH.key => {
                let thick = self.length(&fields::TOP_THICKNESS);
                let width = self.measures.get(&fields::EDGE_WIDTH);
                width.map_or(thick, |width| girth::round_over_girth(width, thick))
            }
            key if key == fields::FRAME.key => self.kind.usual(field).max(self.frame_beside_columns()),
            key if key == fields::COLUMN_DIAMETER.key => {
                let stile = self.length(&fields::STILE);
                self.kind.usual(field).min(stile * COLUMN_OF_STILE)
            }
            key if key == fields::LEG_WIDTH.key && self.has_bun_feet() => Length::inches(3.0),
            key if key == fields::LEG_HEIGHT.key && self.has_bun_feet() => Length::inches(2.0),
            key if key == fields::PLINTH_SETBACK.key && self.styles.base != BaseStyle::Plinth => {
                Length::metres(0.0)
            }
            _ => self.kind.usual(field),
        }
    }

    /// How far inside the outside of the case overlay fronts end on a frame with half columns: they end beside the
    /// columns, which are on the middle of the stiles. Zero without columns.
    fn frame_beside_columns(&self) -> Length {
        let styles = &self.styles;
        if styles.face_frame == FaceFrame::None || styles.corner_columns == CornerColumns::None {
            return Length::ZERO;
        }
        (self.length(&fields::STILE) + self.length(&fields::COLUMN_DIAMETER)) / 2.0
    }

    fn has_measured_edge(&self) -> bool {
        self.styles.top_edge == Edge::Measured && self.kind.construction() != Construction::Frame
    }

    pub(super) fn has_bun_feet(&self) -> bool {
        let stands_on_base = matches!(
            self.kind.construction(),
            Construction::Case | Construction::TwoCases | Construction::Pedestals | Construction::Chest
        );
        stands_on_base && self.styles.base == BaseStyle::BunFeet
    }

    /// The counted number, or the usual one of the kind.
    pub fn count(&self, field: &CountField) -> u32 {
        self.counts
            .get(field)
            .unwrap_or_else(|| self.edition.count(self.kind, field))
    }

    /// The bays of one of the cases.
    pub fn bays_of(&self, upper: bool) -> &[Bay] {
        if upper { &self.upper } else { &self.bays }
    }
}
