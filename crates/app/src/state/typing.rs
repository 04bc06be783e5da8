//! Typing with the tape keypad. The text is not part of the document until it can be read.

use super::order::in_order;
use geometry::{FieldId, LengthField};
use units::{Length, System, show_length};
use workshop::{Piece, Reading, Workshop};

use super::{App, DraftId, RowPlace};

/// The name of the section with the sizes that are rarely measured.
pub const MORE_SIZES: &str = "more-sizes";

/// The key that deletes the last character.
pub const BACK: &str = "\u{8}";

impl App {
    /// Starts a measurement and turns the drawing to show where it is taken.
    pub(super) fn enter(&mut self, field: FieldId) {
        if self.field != Some(field) {
            self.history.part();
        }
        // Entering a field selects its text, and typing replaces a selection.
        self.fresh = true;
        if let Some(piece) = self.piece() {
            self.look = self.look.at(piece, field);
        }
        self.field = Some(field);
        self.show_in_list(field);
    }

    /// Opens the part of the list that holds a field.
    fn show_in_list(&mut self, field: FieldId) {
        match field {
            FieldId::RowHeight(bay, row) => self.row = Some(RowPlace { bay, row }),
            FieldId::Of(_) if self.group(field) == 2 => drop(self.unfolded.insert(MORE_SIZES.into())),
            _ => {}
        }
    }

    pub(super) fn leave(&mut self, field: FieldId) {
        self.leave_draft(&DraftId::Field(field));
    }

    /// Leaves a field that is not a measurement.
    pub(super) fn leave_other(&mut self, id: DraftId) {
        self.leave_draft(&id);
        self.history.part();
    }

    /// Returns the next measurement, or the previous one.
    pub fn next_field(&self, on: bool) -> Option<FieldId> {
        let order = in_order(self.piece()?);
        let place = order.iter().position(|other| Some(*other) == self.field)?;
        let next = if on { place + 1 } else { place.checked_sub(1)? };
        order.get(next).copied()
    }

    /// Returns the next measurement of the same group: the overall sizes, the rows, or the rest. At the end of a
    /// group the keypad offers to close, because what comes next depends on what the piece is like.
    pub fn next_in_group(&self) -> Option<FieldId> {
        let next = self.next_field(true)?;
        (self.group(self.field?) == self.group(next)).then_some(next)
    }

    fn group(&self, field: FieldId) -> u8 {
        let is_whole = |field: FieldId| Piece::field(field).is_some_and(LengthField::is_of_whole);
        match field {
            FieldId::Of(_) if is_whole(field) => 0,
            FieldId::RowHeight(..) | FieldId::BayWidth(_) => 1,
            FieldId::Of(_) | FieldId::Alteration { .. } => 2,
        }
    }

    /// Moves to the next measurement, or to the previous one.
    pub(super) fn go_on(&mut self, on: bool) {
        match (self.next_field(on), self.field) {
            (Some(next), Some(field)) => {
                self.leave(field);
                self.enter(next);
            }
            _ => self.put_tape_away(),
        }
    }

    pub(super) fn put_tape_away(&mut self) {
        if let Some(field) = self.field.take() {
            self.leave(field);
        }
        self.history.part();
    }

    pub(super) fn type_in(&mut self, field: FieldId, text: String) {
        self.type_into(DraftId::Field(field), text, "");
        self.field = Some(field);
        self.fresh = false;
    }

    /// During measuring, moves to the measurement that changed since `before`.
    pub(super) fn follow(&mut self, before: &Workshop) {
        let Some(now) = self.piece().filter(|_| self.field.is_some()).cloned() else {
            return;
        };
        let Some(before) = before.piece(&now.id) else {
            return;
        };
        let typed = |piece: &Piece, field| piece.reading(field).map(Reading::with_unit);
        let changed = |field: &FieldId| typed(&now, *field) != typed(before, *field);
        if let Some(field) = in_order(&now).into_iter().find(changed) {
            self.enter(field);
        }
        self.fresh = true;
    }

    /// Makes the reading longer or shorter by sixteenths of an inch, or by millimeters.
    pub(super) fn nudge(&mut self, steps: i32) {
        let Some((field, reading)) = self
            .field
            .and_then(|field| Some((field, self.piece()?.reading(field)?)))
        else {
            return;
        };
        let units = self.workshop.units;
        let finest = match units {
            System::UsCustomary => Length::inches(1.0 / 16.0),
            System::Metric => Length::millimetres(1.0),
        };
        let marks = (reading.length() / finest).round() + f64::from(steps);
        if marks >= 1.0 {
            let text = show_length(finest * marks, units);
            let unit = format!(" {}", units.tape_unit().sign());
            self.type_in(field, text.strip_suffix(&unit).unwrap_or(&text).to_owned());
        }
    }

    /// Forgets the reading, so that a guess is used, and moves on.
    pub(super) fn guess(&mut self) {
        if let Some(field) = self.field {
            self.type_in(field, String::new());
        }
        self.go_on(true);
    }

    pub(super) fn press(&mut self, text: &'static str) {
        let Some(field) = self.field else { return };
        let is_digit = text.len() == 1 && text.starts_with(|c: char| c.is_ascii_digit());
        // The delete key removes a selected reading entirely.
        let before = if self.fresh && (is_digit || text == BACK) {
            String::new()
        } else {
            self.text_of(&DraftId::Field(field))
        };
        let text = match text {
            BACK => before
                .chars()
                .take(before.chars().count().saturating_sub(1))
                .collect(),
            // Put a space between a whole number and its fraction. Another fraction replaces the one that is there.
            text if is_fraction(text) => match without_fraction(&before) {
                whole if ends_with_digit(whole) => format!("{whole} {text}"),
                whole => format!("{whole}{text}"),
            },
            text => format!("{before}{text}"),
        };
        self.type_in(field, text);
    }
}

fn is_fraction(text: &str) -> bool {
    text.contains('/')
}

/// Returns a reading without the fraction at its end.
fn without_fraction(text: &str) -> &str {
    match text.rsplit_once(' ') {
        Some((whole, last)) if is_fraction(last) => whole,
        None if is_fraction(text) => "",
        _ => text,
    }
}

fn ends_with_digit(text: &str) -> bool {
    text.ends_with(|c: char| c.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::super::tests::{FIRST_BAY, text, typed, width, with_piece};
    use super::*;
    use crate::state::Action;
    use geometry::fields;
    use workshop::{Edit, PieceEdit};

    #[test]
    fn a_half_typed_fraction_stays_in_the_field_and_the_last_good_reading_in_the_piece() {
        let app = typed(&with_piece(), &["33", "33 ", "33 7", "33 7/"]);
        assert_eq!(
            (text(&app, fields::WIDTH.id()).as_str(), width(&app).as_deref()),
            ("33 7/", None),
            "a part of what cannot be read is no reading"
        );
        let is_wrong = |app: &App| app.fault(&DraftId::Field(fields::WIDTH.id())).is_some();
        assert!(!is_wrong(&app), "while somebody is typing nothing is said");
        assert!(is_wrong(&app.update(Action::Pause)));
        let app = app.update(Action::Leave(fields::WIDTH.id()));
        assert!(is_wrong(&app));
        assert_eq!(
            text(&app, fields::WIDTH.id()),
            "33 7/",
            "a text that cannot be read is not thrown away"
        );
        let app = typed(&app, &["33 7/8"]).update(Action::Leave(fields::WIDTH.id()));
        assert_eq!((width(&app).as_deref(), app.drafts.len()), (Some("33 7/8"), 0));
    }

    #[test]
    fn a_text_that_cannot_be_read_outlives_a_change_elsewhere() {
        let app = typed(&with_piece(), &["33 7/"]).update(Action::Type(fields::DEPTH.id(), "18".into()));
        assert_eq!(text(&app, fields::WIDTH.id()), "33 7/");
    }

    #[test]
    fn a_text_for_a_row_goes_when_rows_get_other_numbers() {
        let row = FieldId::RowHeight(FIRST_BAY, 2);
        let app = typed(&with_piece(), &["33 7/"])
            .update(Action::Type(row, "7 1/".into()))
            .update(Action::Change(PieceEdit::RepeatRow {
                bay: FIRST_BAY,
                row: 1,
            }));
        assert_eq!((text(&app, row).as_str(), app.field), ("", None));
        assert_eq!(text(&app, fields::WIDTH.id()), "33 7/");
    }

    #[test]
    fn an_emptied_field_is_not_measured_any_more() {
        let app = typed(&with_piece(), &["33", ""]);
        assert_eq!(width(&app), None);
    }

    #[test]
    fn a_reading_keeps_its_unit_when_the_maker_changes_units() {
        let app = typed(&with_piece(), &["33 7/8"]).update(Action::Leave(fields::WIDTH.id()));
        let metric = app.update(Action::Edit(Edit::Units(units::System::Metric)));
        assert_eq!(text(&metric, fields::WIDTH.id()), "33 7/8 in");
        let again = metric.update(Action::Type(
            fields::WIDTH.id(),
            text(&metric, fields::WIDTH.id()),
        ));
        let length = |app: &App| app.piece().unwrap().reading(fields::WIDTH.id()).unwrap().length();
        assert_eq!(length(&again), length(&app));
    }

    #[test]
    fn a_reading_is_nudged_by_the_finest_marks_of_the_tape() {
        let nudged = |app: &App, steps| {
            width(
                &app.update(Action::Enter(fields::WIDTH.id()))
                    .update(Action::Nudge(steps)),
            )
        };
        let app = typed(&with_piece(), &["33 7/8"]);
        assert_eq!(nudged(&app, 1).as_deref(), Some("33 15/16"));
        assert_eq!(nudged(&app, -14).as_deref(), Some("33"));
        let metric = app.update(Action::Edit(Edit::Units(units::System::Metric)));
        let metric = metric.update(Action::Type(fields::WIDTH.id(), "80".into()));
        let one_more = metric.update(Action::Nudge(1));
        let more = one_more
            .piece()
            .unwrap()
            .reading(fields::WIDTH.id())
            .unwrap()
            .length();
        let before = metric
            .piece()
            .unwrap()
            .reading(fields::WIDTH.id())
            .unwrap()
            .length();
        assert!((more.as_millimetres() - before.as_millimetres() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn another_fraction_replaces_the_first() {
        let app = typed(&with_piece(), &["33"])
            .update(Action::Key("7/8"))
            .update(Action::Key("1/4"));
        assert_eq!(width(&app).as_deref(), Some("33 1/4"));
    }

    #[test]
    fn a_guess_forgets_the_reading_and_moves_on() {
        let app = typed(&with_piece(), &["33 7/8"]).update(Action::Guess);
        assert_eq!((width(&app), app.field), (None, Some(fields::DEPTH.id())));
    }

    #[test]
    fn the_tape_keys_put_a_space_before_a_fraction() {
        let pad =
            |app: App, keys: &[&'static str]| keys.iter().fold(app, |app, key| app.update(Action::Key(key)));
        let app = pad(typed(&with_piece(), &["33"]), &["7/8"]);
        assert_eq!(width(&app).as_deref(), Some("33 7/8"));
        let app = pad(app, &[BACK, BACK, BACK, BACK]);
        assert_eq!(width(&app).as_deref(), Some("33"));
        let app = pad(typed(&with_piece(), &["2"]), &[" ft ", "7/8"]);
        assert_eq!(width(&app).as_deref(), Some("2 ft 7/8"));
    }

    /// Entering a field again selects its text. The same holds for the keypad's own field.
    #[test]
    fn what_is_marked_is_replaced_also_in_the_measurement_that_is_being_taken() {
        for again in [Action::Enter(fields::WIDTH.id()), Action::Marked] {
            let app = typed(
                &with_piece().update(Action::Enter(fields::WIDTH.id())),
                &["52 1/4"],
            );
            let app = app.update(Action::Key("1"));
            assert_eq!(text(&app, fields::WIDTH.id()), "52 1/41");
            assert_eq!(
                text(&app.update(again).update(Action::Key("9")), fields::WIDTH.id()),
                "9"
            );
        }
    }

    #[test]
    fn the_first_digit_takes_the_place_of_what_stands_there() {
        let (width, depth) = (fields::WIDTH.id(), fields::DEPTH.id());
        let app = with_piece()
            .update(Action::Enter(width))
            .update(Action::Key("1"))
            .update(Action::Key("0"));
        assert_eq!(text(&app, width), "10");
        let again = app.update(Action::Enter(depth)).update(Action::Enter(width));
        assert_eq!(
            text(&again.update(Action::Key("1")).update(Action::Key("9")), width),
            "19"
        );
        // A fraction is added to a reading. Deleting removes a selection entirely, and afterward one
        // character at a time.
        assert_eq!(text(&again.update(Action::Key("7/8")), width), "10 7/8");
        assert_eq!(text(&again.update(Action::Key(BACK)), width), "");
        let typed = again.update(Action::Key("1")).update(Action::Key("2"));
        assert_eq!(text(&typed.update(Action::Key(BACK)), width), "1");
    }

    #[test]
    fn the_tape_follows_what_is_taken_back() {
        let (width, depth) = (fields::WIDTH.id(), fields::DEPTH.id());
        let app = with_piece()
            .update(Action::Enter(width))
            .update(Action::Key("9"))
            .update(Action::GoOn(true));
        assert_eq!(app.field, Some(depth));
        let back = app.update(Action::Undo);
        assert_eq!((back.field, text(&back, width).as_str()), (Some(width), ""));
        let away = app.update(Action::PutTapeAway).update(Action::Undo);
        assert_eq!(away.field, None, "the tape stays away");
    }
}
