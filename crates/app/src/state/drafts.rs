//! Texts being typed in any field of the page. A text that its field refuses is not part of the document. The
//! field keeps it to be corrected, and the document keeps the value from before typing started. There are no
//! errors while somebody is typing.

use std::rc::Rc;

use geometry::FieldId;
use workshop::book::{BookField, Entered, book};
use workshop::reads::{AMOUNTS, DAYS, GOODS, LIST, MONEY, Reads};
use workshop::{
    BookEdit, Edit, LABEL_FIELDS, LabelReading, MaterialEdit, OwnMaterial, PieceEdit, Price, Reading,
    label_field,
};

use super::{App, EntryId, FigureId, in_order};
use crate::words::fields::{field_element, field_label, sentence};

/// A text field.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DraftId {
    /// A measurement of the open piece.
    Field(FieldId),
    /// A label value, or the price of a can.
    Figure(FigureId),
    /// A field of a book.
    Entry(EntryId),
}

impl DraftId {
    /// Returns the id of its element.
    pub fn element(&self) -> String {
        match self {
            DraftId::Field(field) => field_element(*field),
            DraftId::Figure(figure) => figure.element(),
            DraftId::Entry(entry) => entry.element(),
        }
    }

    /// Returns true if it is a field of this book.
    pub fn is_of(&self, key: &str) -> bool {
        matches!(self, DraftId::Entry(entry) if entry.book == key)
    }

    /// Returns true if it is one of these fields of a book.
    pub fn is_one_of(&self, key: &str, fields: &[&str]) -> bool {
        matches!(self, DraftId::Entry(entry) if entry.book == key && fields.contains(&entry.field.as_str()))
    }

    /// Returns true if it is a field of this line of a book.
    pub fn is_of_line(&self, key: &str, line: &str) -> bool {
        matches!(self, DraftId::Entry(entry) if entry.book == key && &*entry.line == line)
    }

    /// Returns true if areas and amounts depend on it.
    pub fn is_of_amounts(&self) -> bool {
        self.is_read_by(&AMOUNTS)
    }

    /// Returns true if the preparation steps, or the amounts for them or for art, depend on it.
    pub fn is_of_preparing(&self) -> bool {
        self.is_read_by(&GOODS)
    }

    /// Returns true if the account of a piece depends on it.
    pub fn is_of_money(&self) -> bool {
        self.is_read_by(&MONEY)
    }

    /// Returns true if the shopping list depends on it.
    pub fn is_of_list(&self) -> bool {
        self.is_read_by(&LIST)
    }

    /// Returns true if the schedule depends on it.
    pub fn is_of_days(&self) -> bool {
        self.is_read_by(&DAYS)
    }

    /// Returns true if a result depends on it. All results depend on measurements and labels.
    fn is_read_by(&self, reads: &Reads) -> bool {
        match self {
            DraftId::Field(_) | DraftId::Figure(_) => true,
            DraftId::Entry(entry) => reads.has(entry.book, &entry.field),
        }
    }

    fn entry_field(&self) -> Option<&'static BookField> {
        let DraftId::Entry(id) = self else { return None };
        book(id.book)?.field(&id.field)
    }
}

/// A text being typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// The text as typed.
    pub text: String,
    /// The unit of a label value.
    pub unit: &'static str,
    /// The edit that restores the previous value.
    back: Edit,
    /// True if there was a previous value.
    had: bool,
}

/// A text that its field refuses.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// The label of the field.
    pub label: String,
    /// The text.
    pub text: String,
    /// The value used instead, or `None` if there was no previous value.
    pub used: Option<String>,
    /// How to correct it.
    pub error: String,
}

impl App {
    /// Returns the text being typed in a field.
    pub fn draft(&self, id: &DraftId) -> Option<&Draft> {
        self.drafts.get(id)
    }

    /// Returns true if somebody is typing and the page still shows results for a different text.
    pub fn is_half_typed(&self) -> bool {
        let draft = self
            .typing
            .as_ref()
            .and_then(|id| Some((id, self.drafts.get(id)?)));
        draft.is_some_and(|(id, draft)| self.read(id, &draft.text, draft.unit).is_err())
    }

    /// Returns the error for the text in a field, unless somebody is typing there.
    pub fn fault(&self, id: &DraftId) -> Option<String> {
        let draft = self.drafts.get(id).filter(|_| self.typing.as_ref() != Some(id))?;
        self.read(id, &draft.text, draft.unit).err()
    }

    /// Returns the refused texts among the selected fields.
    pub fn refused(&self, is_asked: impl Fn(&DraftId) -> bool) -> Vec<Refused> {
        let drafts = self.drafts.iter().filter(|(id, _)| is_asked(id));
        let refused = drafts.filter_map(|(id, draft)| {
            let error = self.fault(id)?;
            let used = self.used(id).filter(|_| draft.had);
            // A can without weights teaches nothing, so amounts do not need to wait for it.
            let matters = used.is_some() || !id.is_of("weighings");
            matters.then(|| Refused {
                label: self.label(id),
                text: draft.text.trim().to_owned(),
                used,
                error,
            })
        });
        let mut refused: Vec<Refused> = refused.collect();
        refused.extend(self.impossible(is_asked));
        refused
    }

    /// Returns impossible label values from a file. The whole label is replaced by the usual values.
    fn impossible(&self, is_asked: impl Fn(&DraftId) -> bool) -> Vec<Refused> {
        let planned = |own: &&Rc<OwnMaterial>| {
            let mut schemes = self.piece().into_iter().flat_map(|piece| piece.schemes());
            schemes.any(|scheme| scheme.layers.iter().any(|layer| layer.material == own.key))
        };
        let mut found = Vec::new();
        for own in self.workshop.materials.iter().filter(planned) {
            for fault in own.check().err().unwrap_or_default() {
                let field = LABEL_FIELDS.iter().find(|field| field.field == fault.field());
                let reading = field.and_then(|field| Some((field, own.label.get(field.key)?)));
                found.extend(reading.and_then(|(field, reading)| {
                    let id = DraftId::Figure(FigureId::Label(Rc::clone(&own.key), field.key));
                    (is_asked(&id) && !self.drafts.contains_key(&id)).then(|| Refused {
                        label: self.label(&id),
                        text: reading.typed().to_owned(),
                        used: None,
                        error: fault.to_string(),
                    })
                }));
            }
        }
        found
    }

    /// Returns true if a selected field refuses its text and had no previous value.
    pub fn is_blocked(&self, is_asked: impl Fn(&DraftId) -> bool) -> bool {
        self.refused(is_asked)
            .iter()
            .any(|refused| refused.used.is_none())
    }

    /// Returns the text being typed in a field, or else its text in the document.
    pub fn text_of(&self, id: &DraftId) -> String {
        let draft = self.drafts.get(id).map(|draft| draft.text.clone());
        draft.or_else(|| self.document_text(id)).unwrap_or_default()
    }

    /// Returns the text of a field in the document, in the locale's format.
    fn document_text(&self, id: &DraftId) -> Option<String> {
        match id {
            DraftId::Field(field) => {
                let reading = self.piece()?.reading(*field)?;
                // A reading in another unit system shows its unit, because it would be a different length
                // without it.
                Some(match reading.unit() == self.workshop.units.tape_unit() {
                    true => reading.written_here(self.decimals),
                    false => reading.with_unit_here(self.decimals),
                })
            }
            DraftId::Figure(FigureId::Name(key)) => {
                let own = self.own(key)?;
                own.is_named().then(|| own.name.clone())
            }
            DraftId::Figure(FigureId::Label(key, field)) => {
                let reading = self.own(key)?.label.get(*field)?;
                Some(reading.written_here(self.decimals))
            }
            DraftId::Figure(FigureId::Price(key, can)) => {
                Some(self.workshop.price_of(key, can)?.written_here(self.decimals))
            }
            DraftId::Entry(id) => {
                let books = self.books(book(id.book)?.of_piece)?;
                let line = books.line(id.book, &id.line)?;
                let text = line.written_here(id.book, &id.field, self.decimals);
                Some(text).filter(|text| !text.is_empty())
            }
        }
    }

    /// Returns the value in use for a field. Lengths include their unit.
    fn used(&self, id: &DraftId) -> Option<String> {
        match id {
            DraftId::Field(field) => Some(self.piece()?.reading(*field)?.with_unit_here(self.decimals)),
            _ => self.document_text(id),
        }
    }

    fn own(&self, key: &str) -> Option<&Rc<OwnMaterial>> {
        self.workshop.materials.iter().find(|own| &*own.key == key)
    }

    /// Returns the label of a field.
    fn label(&self, id: &DraftId) -> String {
        match id {
            DraftId::Field(field) => {
                let label = self.piece().map(|piece| field_label(piece.kind, *field));
                sentence(label.unwrap_or_default())
            }
            DraftId::Figure(FigureId::Name(_)) => "Name".into(),
            DraftId::Figure(FigureId::Label(_, key)) => label_field(key)
                .map_or("", |field| field.field.label())
                .to_owned(),
            DraftId::Figure(FigureId::Price(_, can)) => {
                format!("Price of {}", coatings::can(can).map_or("", |can| can.label))
            }
            DraftId::Entry(_) => id.entry_field().map_or("", |field| field.label).to_owned(),
        }
    }

    /// Returns the edit for a text in a field. An empty text removes the value.
    ///
    /// # Errors
    /// Why the text is refused, in words.
    fn read(&self, id: &DraftId, text: &str, unit: &str) -> Result<Edit, String> {
        let typed = Some(text.trim()).filter(|text| !text.is_empty());
        match id {
            DraftId::Field(field) => {
                let tape = self.workshop.units.tape_unit();
                let reading = typed.map(|text| Reading::typed_with(text, tape, self.decimals));
                let reading = reading.transpose().map_err(|error| error.to_string())?;
                Ok(self.of_piece(PieceEdit::Measure(*field, reading)))
            }
            DraftId::Figure(FigureId::Name(key)) => Ok(Edit::Material(
                Rc::clone(key),
                MaterialEdit::Name(text.trim().to_owned()),
            )),
            DraftId::Figure(FigureId::Label(key, field)) => {
                let field = label_field(field).ok_or_else(String::new)?;
                let read = |text| LabelReading::typed_with(field, text, unit, self.decimals);
                let reading = typed.map(read).transpose().map_err(|error| error.to_string())?;
                if let Some((own, reading)) = self.own(key).zip(reading.as_ref()) {
                    own.may_be(field, reading).map_err(|fault| fault.to_string())?;
                }
                Ok(Edit::Material(
                    Rc::clone(key),
                    MaterialEdit::Label(field.key, reading),
                ))
            }
            DraftId::Figure(FigureId::Price(key, can)) => {
                let price = typed.map(|text| Price::typed_with(text, self.decimals));
                let price = price.transpose().map_err(|error| error.to_string())?;
                Ok(Edit::Material(Rc::clone(key), MaterialEdit::Price(can, price)))
            }
            DraftId::Entry(entry) => {
                let entered = Entered {
                    text: text.to_owned(),
                    decimals: self.decimals,
                };
                let field = id.entry_field().filter(|_| typed.is_some());
                let taken = field.map(|field| field.kind.take(&entered, self.workshop.units));
                taken.transpose().map_err(|error| error.to_string())?;
                Ok(self.write_edit(entry, entered))
            }
        }
    }

    /// Returns the edit that restores the current value of a field, and whether it has one.
    fn present(&self, id: &DraftId) -> (Edit, bool) {
        match id {
            DraftId::Field(field) => {
                let reading = self.piece().and_then(|piece| piece.reading(*field)).cloned();
                let had = reading.is_some();
                (self.of_piece(PieceEdit::Measure(*field, reading)), had)
            }
            DraftId::Figure(FigureId::Name(key)) => {
                let name = self.document_text(id);
                let had = name.is_some();
                let edit = MaterialEdit::Name(name.unwrap_or_default());
                (Edit::Material(Rc::clone(key), edit), had)
            }
            DraftId::Figure(FigureId::Label(key, field)) => {
                let reading = self.own(key).and_then(|own| own.label.get(*field)).cloned();
                let had = reading.is_some();
                (
                    Edit::Material(Rc::clone(key), MaterialEdit::Label(field, reading)),
                    had,
                )
            }
            DraftId::Figure(FigureId::Price(key, can)) => {
                let price = self.workshop.price_of(key, can);
                let had = price.is_some();
                (
                    Edit::Material(Rc::clone(key), MaterialEdit::Price(can, price)),
                    had,
                )
            }
            DraftId::Entry(entry) => {
                let books = book(entry.book).and_then(|book| self.books(book.of_piece));
                let line = books.and_then(|books| books.line(entry.book, &entry.line));
                let entered = line.map(|line| line.entered(entry.book, &entry.field));
                let entered = entered.unwrap_or_else(|| "".into());
                let had = !entered.text.is_empty();
                (self.write_edit(entry, entered), had)
            }
        }
    }

    fn of_piece(&self, edit: PieceEdit) -> Edit {
        match &self.open {
            Some(id) => Edit::Piece(id.clone(), edit),
            // Without an open piece, the page has no fields for one.
            None => Edit::Units(self.workshop.units),
        }
    }

    fn write_edit(&self, id: &EntryId, entered: Entered) -> Edit {
        let edit = BookEdit::Write(id.book, Rc::clone(&id.line), id.field.clone(), entered);
        match book(id.book).is_some_and(|book| book.of_piece) {
            true => self.of_piece(PieceEdit::Book(edit)),
            false => Edit::Book(edit),
        }
    }

    /// Updates the text of a field while somebody is typing. A readable text takes effect at once. Otherwise
    /// the previous value is used.
    pub(super) fn type_into(&mut self, id: DraftId, text: String, unit: &'static str) {
        let known = self
            .drafts
            .get(&id)
            .filter(|draft| !self.is_another(&id, draft, &text));
        let known = known.map(|draft| (draft.back.clone(), draft.had));
        let (back, had) = known.unwrap_or_else(|| self.present(&id));
        let edit = self.read(&id, &text, unit).unwrap_or_else(|_| back.clone());
        self.edit(edit, Some(id.element()));
        let draft = Draft {
            text,
            unit,
            back,
            had,
        };
        self.drafts.insert(id.clone(), draft);
        self.typing = Some(id);
    }

    /// Returns true if a text replaces an accepted one instead of extending or shortening it. In that case
    /// the accepted text was complete and becomes the previous value.
    fn is_another(&self, id: &DraftId, draft: &Draft, text: &str) -> bool {
        let (before, text) = (draft.text.trim(), text.trim());
        let goes_on = before.starts_with(text) || text.starts_with(before);
        !goes_on && self.read(id, before, draft.unit).is_ok()
    }

    /// Leaves a field. An accepted text is in the document, and a refused one stays to be corrected.
    pub(super) fn leave_draft(&mut self, id: &DraftId) {
        if self.typing.as_ref() == Some(id) {
            self.typing = None;
        }
        if self.fault(id).is_none() {
            self.drafts.remove(id);
        } else {
            self.history.forget_nothing(&self.workshop);
        }
    }

    /// Drops the drafts of fields that no longer exist, so that they do not block results.
    pub(super) fn keep_drafts(&mut self) {
        if self.drafts.is_empty() {
            return;
        }
        let fields = self.piece().map(|piece| in_order(piece)).unwrap_or_default();
        let is_there = |id: &DraftId| match id {
            DraftId::Field(field) => fields.contains(field),
            DraftId::Figure(FigureId::Name(key) | FigureId::Label(key, _)) => self.own(key).is_some(),
            DraftId::Figure(FigureId::Price(..)) => true,
            DraftId::Entry(entry) => book(entry.book).is_some_and(|book| {
                let line = self
                    .books(book.of_piece)
                    .and_then(|books| books.line(book.key, &entry.line));
                book.is_single || line.is_some()
            }),
        };
        let gone: Vec<DraftId> = self
            .drafts
            .iter()
            .map(|(id, _)| id)
            .filter(|id| !is_there(id))
            .cloned()
            .collect();
        for id in gone {
            self.drafts.remove(&id);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::{text, typed, width, with_piece};
    use super::*;
    use crate::state::Action;
    use geometry::{AddedShape, fields};
    use units::Decimals;
    use workshop::book::Facts;
    use workshop::book::ShelfCan;

    fn here(decimals: Decimals) -> App {
        App {
            decimals,
            ..with_piece()
        }
    }

    fn fact(key: &str) -> EntryId {
        EntryId {
            book: "facts",
            line: "only".into(),
            field: key.into(),
        }
    }

    /// Types key by key, and then leaves the field.
    fn entered(app: &App, id: &EntryId, text: &str) -> App {
        let keys = text.char_indices().map(|(at, c)| &text[..at + c.len_utf8()]);
        let typed = keys.fold(app.clone(), |app, text| {
            app.update(Action::Write(id.clone(), text.into()))
        });
        typed.update(Action::LeaveEntry(id.clone()))
    }

    fn measured(app: &App, field: FieldId, text: &str) -> App {
        let keys = text.char_indices().map(|(at, c)| &text[..at + c.len_utf8()]);
        let typed = keys.fold(app.clone(), |app, text| {
            app.update(Action::Type(field, text.into()))
        });
        typed.update(Action::Leave(field))
    }

    #[test]
    fn money_and_hours_are_read_as_they_are_written_here() {
        for (decimals, text, hundredths) in [
            (Decimals::Point, "1,250", 125_000),
            (Decimals::Point, "1.250,00", 125_000),
            (Decimals::Comma, "1.250", 125_000),
            (Decimals::Comma, "1.250,00", 125_000),
            (Decimals::Point, "$45", 4500),
            (Decimals::Point, "$55", 5500),
            (Decimals::Point, "1,200", 120_000),
            (Decimals::Point, "forty five dollars", 4500),
        ] {
            let app = entered(&here(decimals), &fact("asking"), text);
            assert_eq!(app.one::<Facts>().asking, Some(hundredths), "{text}");
            assert_eq!(app.refused(|_| true), [], "{text}");
        }
        let app = entered(&here(Decimals::Point), &fact("hours"), "1,250");
        assert_eq!(app.one::<Facts>().hours.map(|time| time.hours), Some(1250.0));
        let elsewhere = App {
            decimals: Decimals::Comma,
            ..app
        };
        assert_eq!(elsewhere.text_of(&DraftId::Entry(fact("hours"))), "1.250 h");
    }

    /// The document never contains the start of a text that is refused in the end.
    #[test]
    fn what_is_refused_leaves_what_was_there_before() {
        let app = entered(&here(Decimals::Point), &fact("asking"), "60");
        for wrong in ["55 or so", "3/0", "abc", "1,250,0", "-3"] {
            let app = entered(&app, &fact("asking"), wrong);
            assert_eq!(app.one::<Facts>().asking, Some(6000), "{wrong}");
            let refused = app.refused(DraftId::is_of_money);
            assert_eq!(refused.len(), 1, "{wrong}");
            assert_eq!(
                (refused[0].text.as_str(), refused[0].used.as_deref()),
                (wrong, Some("60"))
            );
            assert!(!app.is_blocked(|_| true) && app.refused(DraftId::is_of_amounts).is_empty());
        }
        let never = entered(&here(Decimals::Point), &fact("asking"), "3/0");
        assert_eq!(never.one::<Facts>().asking, None);
        assert!(never.is_blocked(DraftId::is_of_money));
        assert!(never.workshop.pieces[0].books.lines("facts").is_empty());
    }

    #[test]
    fn a_refused_value_is_named_beside_each_answer_that_reads_it() {
        let of = |book, field: &str| {
            DraftId::Entry(EntryId {
                book,
                line: "only".into(),
                field: field.into(),
            })
        };
        let told = |id: DraftId| {
            [
                id.is_of_amounts(),
                id.is_of_list(),
                id.is_of_money(),
                id.is_of_days(),
            ]
        };
        assert_eq!(told(of("cans", "price")), [false, true, true, false]);
        assert_eq!(told(of("shelf", "weight")), [true, true, true, false]);
        assert_eq!(told(of("habits", "scale-step")), [true; 4]);
        assert_eq!(told(of("habits", "dilution")), [false, true, true, true]);
        assert_eq!(told(of("habits", "hourly")), [false, false, true, false]);
        assert_eq!(told(of("art", "width")), [false, true, true, false]);
        assert_eq!(told(of("facts", "due")), [false, false, false, true]);
    }

    #[test]
    fn a_refused_size_is_not_used() {
        let width_field = fields::WIDTH.id();
        let app = measured(&here(Decimals::Point), width_field, "33");
        for wrong in ["abc", "3/0", "3 yards", "33 7 8"] {
            let app = measured(&app, width_field, wrong);
            assert_eq!(width(&app).as_deref(), Some("33"), "{wrong}");
            assert_eq!(
                app.refused(DraftId::is_of_amounts)[0].used.as_deref(),
                Some("33 in")
            );
            let fresh = measured(&with_piece(), width_field, wrong);
            assert_eq!(width(&fresh), None, "{wrong}");
            assert!(fresh.is_blocked(DraftId::is_of_amounts), "{wrong}");
        }
        let asked = measured(&app, width_field, "33 7 8").refused(|_| true);
        assert_eq!(asked[0].error, "Did you mean 33 7/8?");
        let said = measured(&app, width_field, "62 and 3 quarters");
        assert_eq!(width(&said).as_deref(), Some("62 3/4"));
        assert_eq!(
            measured(&app, width_field, "1,250 mm")
                .piece()
                .unwrap()
                .reading(width_field)
                .unwrap()
                .length()
                .as_millimetres(),
            1250.0
        );
    }

    /// Dictation replaces one text with another. Typing extends or shortens it.
    #[test]
    fn a_text_that_is_replaced_was_whole() {
        let said = typed(&with_piece(), &["eighteen and a half", "eighteen and a calf"]);
        assert_eq!(width(&said).as_deref(), Some("18 1/2"));
        let paused = said.update(Action::Pause);
        assert_eq!(paused.refused(|_| true)[0].used.as_deref(), Some("18 1/2 in"));
        for texts in [
            vec!["3", "3/", "3/0"],
            vec!["26", "2", "", "a"],
            vec!["33 7/8", "33 7/"],
        ] {
            let app = typed(&with_piece(), &texts);
            assert_eq!(width(&app), None, "{texts:?}");
        }
        let slow = typed(&typed(&with_piece(), &["3"]).update(Action::Pause), &["3/"]);
        assert_eq!(width(&slow), None);
    }

    #[test]
    fn a_place_that_is_less_than_nothing_shows_no_answer() {
        let app = with_piece().update(Action::Change(PieceEdit::AddPart(AddedShape::Board)));
        let change = app.piece().unwrap().changes.len() - 1;
        let mut kind = app.piece().unwrap().changes[change].kind.clone();
        if let workshop::ChangeKind::Add { placed, .. } = &mut kind {
            *placed = true;
        }
        let app = app.update(Action::Change(PieceEdit::AlterChange { change, kind }));
        let place = FieldId::Alteration {
            change,
            item: 0,
            key: fields::PART_RIGHT.key,
        };
        for wrong in ["-20", "-0.5"] {
            let app = measured(&app, place, wrong);
            assert_eq!(text(&app, place), wrong);
            assert!(app.is_blocked(DraftId::is_of_amounts), "{wrong}");
            let once = measured(&measured(&app, place, "3"), place, wrong);
            assert_eq!(once.refused(|_| true)[0].used.as_deref(), Some("3 in"), "{wrong}");
            let gone = once.update(Action::Change(PieceEdit::RemoveChange(change)));
            assert_eq!(
                gone.refused(|_| true),
                [],
                "with the part goes what stood in its fields"
            );
        }
    }

    #[test]
    fn a_weight_takes_pounds_and_ounces() {
        let app = with_piece();
        let add = BookEdit::Add("shelf", "s1".into(), vec![("material", "trim-enamel".into())]);
        let app = app.update(Action::Book(add));
        let weight = EntryId {
            book: "shelf",
            line: "s1".into(),
            field: "weight".into(),
        };
        let kilograms = |app: &App| {
            app.workshop
                .books
                .all::<ShelfCan>()
                .next()
                .and_then(|can| can.weight)
                .map(units::Mass::as_kilograms)
        };
        let app = entered(&app, &weight, "2 lb 14 oz");
        assert!((kilograms(&app).unwrap() - 1.304_078_063_75).abs() < 1e-12);
        let app = entered(&app, &weight, "2 lb 14 stone");
        assert!(
            (kilograms(&app).unwrap() - 1.304_078_063_75).abs() < 1e-12,
            "2 lb is not used"
        );
    }

    /// An impossible label value is not used. The previous one is.
    #[test]
    fn a_figure_that_cannot_be_so_is_refused() {
        let solids = FigureId::Label("own-1".into(), "solids");
        let own = Action::OwnLabel(None, 1, solids.clone(), "38".into(), "%");
        let app = with_piece().update(own);
        let type_in = |app: &App, text: &str| {
            app.update(Action::Figure(solids.clone(), text.into(), "%"))
                .update(Action::LeaveFigure(solids.clone()))
        };
        let app = type_in(&app.update(Action::LeaveFigure(solids.clone())), "140");
        let refused = app.refused(DraftId::is_of_amounts);
        assert_eq!(refused[0].used.as_deref(), Some("38"));
        assert_eq!(app.workshop.materials[0].check(), Ok(vec![]));
        let price = FigureId::Price("own-1".into(), "us-quart");
        let app = app
            .update(Action::Figure(price.clone(), "-3".into(), ""))
            .update(Action::LeaveFigure(price.clone()));
        assert!(
            app.fault(&DraftId::Figure(price))
                .is_some_and(|reason| !reason.is_empty())
        );
    }

    #[test]
    fn while_somebody_types_nothing_is_said() {
        let app = typed(&with_piece(), &["a", "ab"]);
        assert!(app.is_half_typed() && app.refused(|_| true).is_empty());
        let paused = app.update(Action::Pause);
        assert!(!paused.is_half_typed() && paused.refused(|_| true).len() == 1);
        let again = typed(&paused, &["3"]);
        assert!(!again.is_half_typed() && again.refused(|_| true).is_empty());
    }
}
