//! Bays and rows of a piece, as measured.

use geometry::Fill;
use units::{Length, System};

use super::Reading;

/// A row of a bay.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What fills it.
    pub fill: Fill,
    /// How many drawers, doors or compartments stand side by side.
    pub columns: usize,
    /// How many shelves lie in each.
    pub shelves: usize,
    /// The measured height.
    pub height: Option<Reading>,
}

/// A bay of a case.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// The measured clear width.
    pub width: Option<Reading>,
    /// Its rows from the top.
    pub rows: Vec<Row>,
}

impl Bay {
    /// The bay as a kind of furniture usually has it, its sizes written in a system of units.
    pub(crate) fn usual(bay: &geometry::Bay, system: System) -> Self {
        let written = |length: Length| {
            let unit = system.tape_unit();
            let number = match system {
                System::UsCustomary => format!("{}", length.as_inches()),
                System::Metric => format!("{}", length.as_millimetres().round()),
            };
            Reading::new(&number, unit).ok()
        };
        Bay {
            width: bay.width.and_then(written),
            rows: bay
                .rows
                .iter()
                .map(|row| Row {
                    fill: row.fill,
                    columns: row.columns,
                    shelves: row.shelves,
                    height: row.height.and_then(written),
                })
                .collect(),
        }
    }

    /// The bay as geometry takes it.
    pub(crate) fn geometry(&self) -> geometry::Bay {
        geometry::Bay {
            width: self.width.as_ref().map(Reading::length),
            rows: self
                .rows
                .iter()
                .map(|row| geometry::Row {
                    fill: row.fill,
                    columns: row.columns,
                    shelves: row.shelves,
                    height: row.height.as_ref().map(Reading::length),
                })
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_rows_are_written_in_the_units_of_the_maker() {
        let bay = geometry::Bay::of(vec![geometry::Row {
            height: Some(Length::inches(8.0)),
            ..geometry::Row::of(Fill::Drawers, 1, 0)
        }]);
        let typed = |system| {
            Bay::usual(&bay, system).rows[0]
                .height
                .as_ref()
                .map(Reading::with_unit)
        };
        assert_eq!(typed(System::UsCustomary).as_deref(), Some("8 in"));
        assert_eq!(typed(System::Metric).as_deref(), Some("203 mm"));
    }
}
