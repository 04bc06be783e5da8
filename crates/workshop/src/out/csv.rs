//! Tables as text with commas (RFC 4180): a heading, a line for each record with CR LF at its end, quotes doubled.

/// A table that is being written.
pub(super) struct Table {
    text: String,
}

impl Table {
    /// A table with this heading.
    pub(super) fn new(heading: &[&str]) -> Self {
        let mut table = Table { text: String::new() };
        table.line(heading.iter().map(|cell| text(cell)).collect());
        table
    }

    /// One more line; its cells come from [`text`] or [`number`].
    pub(super) fn line(&mut self, cells: Vec<Cell>) {
        for (place, Cell(cell)) in cells.iter().enumerate() {
            if place > 0 {
                self.text.push(',');
            }
            if cell.contains([',', ';', '"', '\r', '\n', '\t']) {
                self.text.push('"');
                self.text.push_str(&cell.replace('"', "\"\""));
                self.text.push('"');
            } else {
                self.text.push_str(cell);
            }
        }
        self.text.push_str("\r\n");
    }

    /// What was written.
    pub(super) fn into_text(self) -> String {
        self.text
    }
}

/// A cell that can be written as it is.
pub(super) struct Cell(String);

/// A text that a spreadsheet takes as a text. What begins like a formula gets an apostrophe before it (CWE-1236). So does
/// what stands behind a sign that may divide cells: some spreadsheets divide at other signs than the comma, and then see
/// a cell begin there.
pub(super) fn text(given: &str) -> Cell {
    let mut cell = String::with_capacity(given.len());
    let mut begins = true;
    for (place, sign) in given.chars().enumerate() {
        let is_formula = matches!(
            sign,
            '=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}'
        );
        if (begins && is_formula) || (place == 0 && sign.is_control()) {
            cell.push('\'');
        }
        cell.push(sign);
        begins = matches!(sign, ',' | ';' | '"' | '\t' | '\r' | '\n');
    }
    Cell(cell)
}

/// A number with so many decimals behind a point.
pub(super) fn number(value: f64, decimals: usize) -> Cell {
    Cell(format!("{value:.decimals$}"))
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// The lines of a table as a library of others reads them; the heading is the first.
    pub(crate) fn read(text: &str) -> Vec<Vec<String>> {
        assert!(text.ends_with("\r\n"));
        let reader = ::csv::ReaderBuilder::new()
            .has_headers(false)
            .from_reader(text.as_bytes());
        reader
            .into_records()
            .map(|record| record.unwrap().iter().map(Into::into).collect())
            .collect()
    }

    fn written(cells: &[&str]) -> Vec<String> {
        let mut table = Table::new(&["A"; 1]);
        table.text.clear();
        table.line(cells.iter().map(|cell| text(cell)).collect());
        read(&table.into_text()).remove(0)
    }

    #[test]
    fn commas_quotes_and_lines_come_back() {
        let cells = [
            "plain",
            "a, b",
            "33 7/8\"",
            "two\r\nlines",
            "",
            "\u{e9}\u{b2}",
            " - not one",
            "a;b",
        ];
        assert_eq!(written(&cells), cells);
        let mut table = Table::new(&["Name", "33\""]);
        table.line(vec![text("x,y"), number(1.5, 2)]);
        assert_eq!(table.into_text(), "Name,\"33\"\"\"\r\n\"x,y\",1.50\r\n");
    }

    #[test]
    fn what_looks_like_a_formula_is_a_text() {
        let cells = [
            "=1+1",
            "+1",
            "-1",
            "@x",
            "\tx",
            "\r=x",
            "\u{0}x",
            "\u{ff1d}1",
            "a;=1",
            "\"=1",
            "a,-1",
        ];
        let read = written(&cells);
        let expected = [
            "'=1+1",
            "'+1",
            "'-1",
            "'@x",
            "'\tx",
            "'\r'=x",
            "'\u{0}x",
            "'\u{ff1d}1",
            "a;'=1",
            "\"'=1",
            "a,'-1",
        ];
        assert_eq!(read, expected);
    }
}
