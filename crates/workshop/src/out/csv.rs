//! CSV tables (RFC 4180): a heading, and one line for each record. Lines end in CR LF, and quotes are
//! doubled.

/// A table being written.
pub(super) struct Table {
    text: String,
}

impl Table {
    /// Creates a table with this heading.
    pub(super) fn new(heading: &[&str]) -> Self {
        let mut table = Table { text: String::new() };
        table.line(heading.iter().map(|cell| text(cell)).collect());
        table
    }

    /// Adds a line. Its cells come from [`text`] or [`number`].
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

    /// Returns the table as text.
    pub(super) fn into_text(self) -> String {
        self.text
    }
}

/// A cell that is ready to write.
pub(super) struct Cell(String);

/// Formats a text so that spreadsheets treat it as text. An apostrophe goes before anything that starts like
/// a formula (CWE-1236), and also inside the cell after any separator character. Some spreadsheets split
/// cells at other characters than commas, and would start a new cell there.
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

/// Formats a number with a decimal point and a fixed number of decimals.
pub(super) fn number(value: f64, decimals: usize) -> Cell {
    Cell(format!("{value:.decimals$}"))
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// Parses a table with an independent library. The heading is the first line.
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
