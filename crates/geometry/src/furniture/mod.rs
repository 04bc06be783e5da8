//! Furniture as a maker measures it, and how it becomes placed parts.

mod case;
mod check;
mod dimensions;
pub mod fields;
mod layout;
mod problem;

use units::Length;

pub use fields::{FieldId, LengthField, Measures};
pub use problem::Problem;

use crate::assembly::Assembly;
use crate::drawing::{Dimension, View};

/// The most rows of drawers in a piece.
pub const MAX_ROWS: usize = 12;
/// The most drawers in a row.
pub const MAX_COLUMNS: usize = 6;

/// What kind of piece it is: which usual sizes it has where nothing was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Low and wide, drawers side by side.
    Dresser,
    /// Small, beside a bed.
    Nightstand,
    /// Tall, one drawer above the other.
    ChestOfDrawers,
}

/// How drawer fronts sit on the carcass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FrontStyle {
    /// Before the front edges of the carcass.
    Overlay,
    /// Between the boards of the carcass, flush with their front edges.
    Inset,
}

/// How the back panel is fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BackStyle {
    /// On the rear edges of the carcass.
    Flush,
    /// Between the sides, set in from the rear.
    Recessed,
}

/// What the carcass stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BaseStyle {
    /// The floor.
    Floor,
    /// A plinth of four boards.
    Plinth,
    /// Four square legs.
    Legs,
}

/// A row of drawers, all of one height.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawerRow {
    /// How many drawers stand side by side.
    pub columns: usize,
    /// The height of their fronts; `None` shares what the other rows leave.
    pub height: Option<Length>,
}

/// A piece of case furniture as measured.
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
    /// What was measured.
    pub measures: Measures,
    /// The rows of drawers from the top.
    pub rows: Vec<DrawerRow>,
    /// How the drawer fronts sit.
    pub fronts: FrontStyle,
    /// How the back is fixed.
    pub back: BackStyle,
    /// What the carcass stands on.
    pub base: BaseStyle,
}

impl Furniture {
    /// A piece of this kind before anything was measured.
    pub fn usual(kind: Kind) -> Self {
        let row = |columns| DrawerRow {
            columns,
            height: None,
        };
        let (rows, base) = match kind {
            Kind::Dresser => (vec![row(2), row(2), row(2)], BaseStyle::Plinth),
            Kind::Nightstand => (vec![row(1), row(1)], BaseStyle::Legs),
            Kind::ChestOfDrawers => (vec![row(1), row(1), row(1), row(1), row(1)], BaseStyle::Plinth),
        };
        Furniture {
            kind,
            measures: Measures::default(),
            rows,
            fronts: FrontStyle::Overlay,
            back: BackStyle::Recessed,
            base,
        }
    }

    /// The measurements that matter for this piece, in the order in which one takes them.
    pub fn fields(&self) -> Vec<&'static LengthField> {
        let mut list = vec![
            &fields::WIDTH,
            &fields::DEPTH,
            &fields::HEIGHT,
            &fields::BOARD,
            &fields::TOP_THICKNESS,
            &fields::OVERHANG_FRONT,
            &fields::OVERHANG_SIDE,
            &fields::FRONT_THICKNESS,
            &fields::GAP,
        ];
        if self.fronts == FrontStyle::Overlay {
            list.push(&fields::FRAME);
        }
        list.push(&fields::BACK_THICKNESS);
        if self.back == BackStyle::Recessed {
            list.push(&fields::BACK_RECESS);
        }
        match self.base {
            BaseStyle::Floor => {}
            BaseStyle::Plinth => list.extend([&fields::PLINTH_HEIGHT, &fields::PLINTH_SETBACK]),
            BaseStyle::Legs => list.extend([&fields::LEG_HEIGHT, &fields::LEG_WIDTH, &fields::LEG_INSET]),
        }
        list
    }

    /// The measured length, or the usual one of the kind.
    pub fn length(&self, field: &LengthField) -> Length {
        self.measures.get(field).unwrap_or_else(|| self.kind.usual(field))
    }

    /// The piece as placed parts with the spaces around them.
    ///
    /// # Errors
    /// Every measurement that is out of its limits or does not fit beside the others.
    pub fn assembly(&self) -> Result<Assembly, Vec<Problem>> {
        let problems = check::problems(self);
        if problems.is_empty() {
            Ok(case::build(self, &layout::Layout::of(self)))
        } else {
            Err(problems)
        }
    }

    /// The dimension lines of a drawing of this piece; none in a turned view, where they would not be true.
    ///
    /// # Errors
    /// As for [`Furniture::assembly`].
    pub fn dimensions(&self, view: View) -> Result<Vec<Dimension>, Vec<Problem>> {
        let problems = check::problems(self);
        if problems.is_empty() {
            Ok(dimensions::of(self, view))
        } else {
            Err(problems)
        }
    }

    /// The height of the fronts in each row, measured or shared out.
    ///
    /// # Errors
    /// As for [`Furniture::assembly`].
    pub fn row_heights(&self) -> Result<Vec<Length>, Vec<Problem>> {
        let problems = check::problems(self);
        if !problems.is_empty() {
            return Err(problems);
        }
        let layout = layout::Layout::of(self);
        Ok(layout
            .rows
            .iter()
            .map(|row| Length::metres(row.front[1] - row.front[0]))
            .collect())
    }
}

impl Kind {
    /// Every kind.
    pub const ALL: [Kind; 3] = [Kind::Dresser, Kind::ChestOfDrawers, Kind::Nightstand];

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            Kind::Dresser => "Dresser",
            Kind::Nightstand => "Nightstand",
            Kind::ChestOfDrawers => "Chest of drawers",
        }
    }

    /// The usual size of a measurement that was not taken.
    ///
    /// Widths, depths and heights lie within the class of data that architectural handbooks give (from memory,
    /// not confirmed); the rest is common practice, no source.
    pub fn usual(self, field: &LengthField) -> Length {
        let [width, depth, height] = match self {
            Kind::Dresser => [60.0, 18.0, 32.0],
            Kind::Nightstand => [20.0, 16.0, 26.0],
            Kind::ChestOfDrawers => [36.0, 18.0, 48.0],
        };
        Length::inches(match field.key {
            key if key == fields::WIDTH.key => width,
            key if key == fields::DEPTH.key => depth,
            key if key == fields::HEIGHT.key => height,
            key if key == fields::TOP_THICKNESS.key => 1.0,
            key if key == fields::OVERHANG_FRONT.key || key == fields::OVERHANG_SIDE.key => 1.0,
            key if key == fields::GAP.key => 0.125,
            key if key == fields::FRAME.key => 0.5,
            key if key == fields::BACK_THICKNESS.key => 0.25,
            key if key == fields::BACK_RECESS.key => 0.5,
            key if key == fields::PLINTH_HEIGHT.key => 4.0,
            key if key == fields::PLINTH_SETBACK.key => 2.0,
            key if key == fields::LEG_HEIGHT.key => 6.0,
            key if key == fields::LEG_WIDTH.key => 1.5,
            key if key == fields::LEG_INSET.key => 0.5,
            // Boards and fronts: three quarters of an inch, the common finished thickness of a one-inch board.
            _ => 0.75,
        })
    }
}
