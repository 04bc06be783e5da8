//! Bays and rows: how the front of a case is divided.

use units::Length;

/// The most rows in a bay.
pub const MAX_ROWS: usize = 12;
/// The most drawers or doors side by side in a row.
pub const MAX_COLUMNS: usize = 6;
/// The most bays side by side.
pub const MAX_BAYS: usize = 6;
/// The most shelves in a row.
pub const MAX_SHELVES: usize = 12;

/// What fills a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fill {
    /// Drawers.
    Drawers,
    /// Doors.
    Doors,
    /// Nothing: the row is open to view.
    Open,
}

impl Fill {
    /// Every fill.
    pub const ALL: [Fill; 3] = [Fill::Drawers, Fill::Doors, Fill::Open];

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            Fill::Drawers => "Drawers",
            Fill::Doors => "Doors",
            Fill::Open => "Open shelf",
        }
    }
}

/// A row of a bay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// What fills it.
    pub fill: Fill,
    /// How many drawers, doors or open compartments stand side by side.
    pub columns: usize,
    /// How many shelves lie in each; none in a row of drawers.
    pub shelves: usize,
    /// The height of the fronts, or of the opening; `None` shares what the other rows leave.
    pub height: Option<Length>,
}

impl Row {
    /// A row that was not measured.
    pub const fn of(fill: Fill, columns: usize, shelves: usize) -> Self {
        Row {
            fill,
            columns,
            shelves,
            height: None,
        }
    }
}

/// A bay of a case: what stands between two uprights of its full height.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// The clear width between its uprights; `None` shares what the other bays leave.
    pub width: Option<Length>,
    /// Its rows from the top.
    pub rows: Vec<Row>,
}

impl Bay {
    /// A bay that was not measured.
    pub fn of(rows: Vec<Row>) -> Self {
        Bay { width: None, rows }
    }
}
