//! The measured bays and rows of a piece.

use super::{EntryId, Reading};
use geometry::Fill;

/// A row of a bay.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The id of the row.
    pub id: EntryId,
    /// The contents of the row.
    pub fill: Fill,
    /// The number of drawers, doors or compartments side by side.
    pub columns: usize,
    /// The number of shelves in each compartment.
    pub shelves: usize,
    /// The measured height.
    pub height: Option<Reading>,
}

/// A bay of a case.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// The id of the bay.
    pub id: EntryId,
    /// The measured clear width.
    pub width: Option<Reading>,
    /// The rows, from the top.
    pub rows: Vec<Row>,
}

impl Bay {
    /// Returns an unmeasured bay with the defaults of a kind of furniture.
    pub(crate) fn usual(bay: &geometry::Bay) -> Self {
        Bay {
            id: EntryId::default(),
            width: None,
            rows: bay
                .rows
                .iter()
                .map(|row| Row {
                    id: EntryId::default(),
                    fill: row.fill,
                    columns: row.columns,
                    shelves: row.shelves,
                    height: None,
                })
                .collect(),
        }
    }

    /// Converts the bay for `geometry`. If no row was measured and the bay is filled like `usual`, its rows
    /// get the heights of `usual`. Otherwise unmeasured rows have equal heights.
    pub(crate) fn geometry(&self, usual: Option<&geometry::Bay>) -> geometry::Bay {
        let untouched = self.rows.iter().all(|row| row.height.is_none());
        let usual = usual.filter(|usual| {
            let fills = self.rows.iter().map(|row| row.fill);
            untouched && fills.eq(usual.rows.iter().map(|row| row.fill))
        });
        geometry::Bay {
            width: self.width.as_ref().map(Reading::length),
            rows: self
                .rows
                .iter()
                .enumerate()
                .map(|(i, row)| geometry::Row {
                    fill: row.fill,
                    columns: row.columns,
                    shelves: row.shelves,
                    height: match usual {
                        Some(usual) => usual.rows[i].height,
                        None => row.height.as_ref().map(Reading::length),
                    },
                })
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use units::{Length, LengthUnit};

    #[test]
    fn usual_heights_hold_until_a_row_is_measured() {
        let usual = geometry::Bay::of(vec![
            geometry::Row {
                height: Some(Length::inches(6.0)),
                ..geometry::Row::of(Fill::Drawers, 1, 0)
            },
            geometry::Row::of(Fill::Doors, 1, 1),
        ]);
        let mut bay = Bay::usual(&usual);
        assert!(bay.rows.iter().all(|row| row.height.is_none()));
        assert_eq!(bay.geometry(Some(&usual)), usual);
        bay.rows[1].height = Reading::new("20", LengthUnit::Inch).ok();
        assert_eq!(bay.geometry(Some(&usual)).rows[0].height, None);
        let mut other = Bay::usual(&usual);
        other.rows[0].fill = Fill::Open;
        assert_eq!(other.geometry(Some(&usual)).rows[0].height, None);
    }
}
