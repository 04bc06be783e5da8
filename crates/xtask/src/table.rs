//! Text tables: columns as wide as what stands in them.

use std::fmt;

/// On which side the text of a column is even.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Align {
    /// For words.
    Left,
    /// For figures.
    Right,
}

/// A table with a head line.
pub(crate) struct Table {
    aligns: Vec<Align>,
    rows: Vec<Vec<String>>,
}

impl Table {
    /// An empty table with these column heads.
    pub(crate) fn new(columns: &[(&str, Align)]) -> Self {
        Table {
            aligns: columns.iter().map(|(_, align)| *align).collect(),
            rows: vec![columns.iter().map(|(head, _)| (*head).into()).collect()],
        }
    }

    /// Adds a row; cells that are left out are empty.
    pub(crate) fn row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(cells.into_iter().collect());
    }

    fn widths(&self) -> Vec<usize> {
        let width = |column: usize| {
            let cells = self.rows.iter().filter_map(|row| row.get(column));
            cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
        };
        (0..self.aligns.len()).map(width).collect()
    }
}

impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let widths = self.widths();
        for row in &self.rows {
            let cells = row.iter().zip(&widths).zip(&self.aligns);
            let cells = cells.map(|((cell, width), align)| match align {
                Align::Left => format!("{cell:<width$}"),
                Align::Right => format!("{cell:>width$}"),
            });
            writeln!(f, "{}", cells.collect::<Vec<_>>().join("  ").trim_end())?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_as_wide_as_their_widest_cell() {
        let mut table = Table::new(&[("what", Align::Left), ("m²", Align::Right), ("", Align::Left)]);
        table.row(["a long name".into(), "0.5".into(), "painted".into()]);
        table.row(["b".into(), "12.25".into()]);
        assert_eq!(
            table.to_string(),
            "what            m²\na long name    0.5  painted\nb            12.25\n"
        );
    }
}
