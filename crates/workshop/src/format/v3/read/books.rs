//! Reading books from records of format 3.

use std::rc::Rc;

use super::{Reader, shown};
use crate::book::{Book, Books, Line, MAX_LINES, MAX_PICTURE, MAX_VALUES, book};
use crate::format::Notice;
use crate::format::v3::{BookRecords, LineRecord};

/// The maximum number of unknown books.
const MAX_UNKNOWN: usize = 20;
/// The maximum length of the key of a value, in characters.
const MAX_KEY: usize = 60;

impl Reader<'_> {
    /// Reads the books of a piece, or of the workshop. Invalid lines and values are left out. Unknown ones
    /// are kept.
    pub(super) fn books(&mut self, records: BookRecords, of_piece: bool) -> Books {
        let mut books = Books::default();
        let mut unknown = 0;
        for (key, lines) in records.0 {
            let known = book(&key).filter(|book| book.of_piece == of_piece);
            unknown += usize::from(known.is_none());
            if known.is_none() && (unknown > MAX_UNKNOWN || key.len() > MAX_KEY) {
                self.notices.push(Notice::LineLeftOut { book: shown(&key) });
                continue;
            }
            let most = if known.is_some_and(|book| book.is_single) {
                1
            } else {
                MAX_LINES
            };
            let mut read: Vec<Rc<Line>> = Vec::with_capacity(lines.len().min(most));
            for record in lines {
                let line = record.0.filter(|line| {
                    let is_new = read.iter().all(|before| *before.id != *line.id);
                    is_new && read.len() < most && line.id.len() <= MAX_KEY && !line.id.is_empty()
                });
                match line {
                    Some(line) => read.push(Rc::new(self.line(&key, known, line))),
                    None => self.notices.push(Notice::LineLeftOut { book: shown(&key) }),
                }
            }
            if !read.is_empty() {
                books.0.insert(key, read);
            }
        }
        books
    }

    fn line(&mut self, name: &str, book: Option<&Book>, record: LineRecord) -> Line {
        let mut line = Line::new(record.id.into());
        for (key, text) in record.values.0 {
            let field = book.and_then(|book| book.field(&key));
            let beside = record.meant.0.get(&key).and_then(|number| number.0);
            let text = text.0.filter(|text| {
                key.len() <= MAX_KEY && text.len() <= MAX_PICTURE && line.values.len() < MAX_VALUES
            });
            let taken = text.and_then(|text| match field {
                Some(field) => Some((field.kind.check(&text, beside).ok()?, text)),
                // The number beside a text is kept if its field is unknown.
                None => Some((beside, text)),
            });
            match taken {
                Some((beside, text)) => {
                    line.meant.extend(beside.map(|number| (key.clone(), number)));
                    line.values.insert(key, text);
                }
                None => self.notices.push(Notice::ValueLeftOut {
                    book: name.to_owned(),
                    field: field.map_or_else(|| shown(&key), |field| field.label.to_owned()),
                }),
            }
        }
        line
    }
}

#[cfg(test)]
mod tests {
    use crate::book::Facts;
    use crate::book::PriceNote;
    use crate::book::Record;
    use crate::book::WorkTime;
    use serde_json::{Value, json};

    use crate::format::{Loaded, load, save};

    fn read(books: Value, of_piece: Value) -> Loaded {
        let file = json!({
            "kind": crate::format::KIND, "version": 3, "books": books,
            "pieces": [{"id": "a", "name": "A", "furniture": "dresser", "books": of_piece}],
        });
        let loaded = load(&file.to_string()).unwrap();
        assert_eq!(load(&save(&loaded.workshop)).unwrap().workshop, loaded.workshop);
        loaded
    }

    #[test]
    fn books_come_back_and_what_is_not_known_is_kept() {
        let of_workshop = json!({
            "prices": [{"id": "n1", "furniture": "dresser", "price": "85", "weather": "fine"}],
            "looms": [{"id": "x", "warp": "3", "values": "even"}],
        });
        let of_piece =
            json!({"facts": [{"id": "only", "bought": "20"}], "log": [{"id": "1", "note": "dull"}]});
        let Loaded { workshop, notices } = read(of_workshop.clone(), of_piece.clone());
        assert!(notices.is_empty(), "{notices:?}");
        assert_eq!(
            workshop.books.all::<PriceNote>().next().unwrap().price,
            Some(8500)
        );
        let written: Value = serde_json::from_str(&save(&workshop)).unwrap();
        assert_eq!(written["books"], of_workshop);
        assert_eq!(written["pieces"][0]["books"], of_piece);
    }

    #[test]
    fn a_number_beside_a_text_says_which_is_meant() {
        let of_piece = json!({"facts": [{"id": "only", "asking": "1,250", "hours": "1,250 h", "bought": "1,5",
            "values": {"asking": 125_000.0, "hours": 1250.0}}]});
        let Loaded { workshop, notices } = read(json!({}), of_piece.clone());
        assert!(notices.is_empty(), "{notices:?}");
        let facts: Facts = workshop.pieces[0].books.one();
        assert_eq!(facts.asking, Some(125_000));
        assert_eq!(facts.hours, Some(WorkTime { hours: 1250.0 }));
        assert_eq!(
            facts.bought,
            Some(150),
            "without a number the comma stands before decimals"
        );
        let written: Value = serde_json::from_str(&save(&workshop)).unwrap();
        assert_eq!(written["pieces"][0]["books"], of_piece);
        // An old file has no numbers, and reads as before.
        let Loaded { workshop, .. } = read(json!({}), json!({"facts": [{"id": "only", "hours": "1,250 h"}]}));
        assert_eq!(
            workshop.pieces[0]
                .books
                .one::<Facts>()
                .hours
                .map(|time| time.hours),
            Some(1.25)
        );
    }

    #[test]
    fn one_bad_value_or_line_is_said_and_the_rest_kept() {
        let Loaded { workshop, notices } = read(
            json!({"prices": [{"id": "n1", "price": "lots", "style": "plain", "gone": 7}, 7, {"id": "n1"}]}),
            json!({"facts": [{"id": "only", "age": "roman"}]}),
        );
        let line = &workshop.books.lines("prices")[0];
        assert_eq!((line.text("style"), PriceNote::read(line).price), ("plain", None));
        let notices: Vec<String> = notices.iter().map(ToString::to_string).collect();
        assert_eq!(notices.len(), 5, "{notices:?}");
        assert!(
            notices
                .iter()
                .any(|n| n.contains("Price") && n.contains("prices")),
            "{notices:?}"
        );
    }

    #[test]
    fn a_file_without_books_gets_none() {
        let Loaded { workshop, notices } = read(json!({}), json!({}));
        assert!(notices.is_empty() && workshop.books.is_empty());
        assert!(!save(&workshop).contains("books"));
    }
}
