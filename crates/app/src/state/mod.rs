//! The state of the page, and the one function that changes it.

mod action;
mod drafts;
mod figure;
mod history;
mod look;
mod message;
mod order;
mod row;
mod saving;
mod screen;
mod typing;
mod writing;

use std::rc::Rc;

use crate::device_status::DeviceStatus;
use crate::words::numerals::measured;
use geometry::{BayPlace, FieldId};
use units::{Decimals, Inches, Length, SortedMap, SortedSet, System, show_length_in};
use workshop::results::news;
use workshop::{Analysis, BrushTo, Edit, EditError, Piece, PieceEdit, PieceId, Workshop, left_out};

pub use action::Action;
pub use drafts::{Draft, DraftId, Refused};
pub use figure::FigureId;
pub use look::Look;
pub use message::{Message, Stepped};
pub use order::{has_free_bays, in_order};
pub use row::RowPlace;
pub use saving::{Load, SaveStatus};
pub use screen::{Light, Screen, Stage};
pub use typing::{BACK, MORE_SIZES};

pub use writing::EntryId;

use history::History;

/// The state of the page. Only the workshop is saved and has an undo history. The device remembers the
/// brightness. Everything else is lost when the page closes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct App {
    /// The document.
    pub workshop: Rc<Workshop>,
    /// The current screen.
    pub screen: Screen,
    /// The open piece.
    pub open: Option<PieceId>,
    /// The view of the drawing.
    pub look: Look,
    /// The screen to return to from one that is reached from every stage.
    pub back: Screen,
    /// The name of the selected surface.
    pub picked: Option<String>,
    /// The name of the selected part.
    pub part: Option<String>,
    /// The selected row.
    pub row: Option<RowPlace>,
    /// True if the next piece that is added is one that the maker may buy.
    pub deciding: bool,
    /// The pieces that the maker put on the shopping list or took off it, whatever their status.
    pub listed: SortedMap<PieceId, bool>,
    /// The names of the expanded sections.
    pub unfolded: SortedSet<String>,
    /// The key of the zone whose finish is shown, or `None` for the piece.
    pub finished: Option<String>,
    /// The current measurement.
    pub field: Option<FieldId>,
    /// True if nothing was typed for it yet, so that the first digit replaces the text.
    pub fresh: bool,
    /// True if the device keyboard is used for measurements, in addition to the tape keypad.
    pub keyboard: bool,
    /// The decimal sign of the locale.
    pub decimals: Decimals,
    /// Texts that are being typed or were refused.
    drafts: SortedMap<DraftId, Draft>,
    /// The field in which somebody is typing.
    pub typing: Option<DraftId>,
    /// The messages to the maker.
    pub messages: Vec<Message>,
    /// How much of the saved document was read.
    pub load: Load,
    /// True if the maker continues although nothing could be read and nothing is saved.
    pub goes_on: bool,
    /// The piece that is not opened automatically, because opening it did not finish the last time.
    pub skipped: Option<PieceId>,
    /// The save status of the document.
    pub save_status: SaveStatus,
    /// The status of the page on this device.
    pub device_status: DeviceStatus,
    /// The brightness of the page.
    pub light: Light,
    /// The effect of brushing over faces. With `None`, a face shows its calculation.
    pub brush: Option<BrushTo>,
    /// The link to the open piece, until the piece changes.
    pub link: Option<Rc<str>>,
    /// The last undo or redo, until the next change.
    pub stepped: Option<Stepped>,
    /// True while the page is printing. The printed page shows the job card, whatever the screen.
    pub printing: bool,
    history: History,
    analysis: Analysis,
}

impl App {
    /// Returns the initial state with this brightness and decimal sign. It opens `open` on this screen if the
    /// piece still exists, except for a piece whose last opening did not finish.
    pub fn begun(
        light: Light,
        decimals: Decimals,
        open: Option<PieceId>,
        unfinished: Option<PieceId>,
        screen: Screen,
    ) -> App {
        App {
            light,
            decimals,
            open: open.filter(|open| Some(open) != unfinished.as_ref()),
            skipped: unfinished,
            screen,
            ..App::default()
        }
    }

    /// Returns everything derived from the document.
    pub fn analysis(&self) -> Analysis {
        self.analysis.after(Rc::clone(&self.workshop))
    }

    /// Returns the state after an action.
    #[expect(clippy::too_many_lines, reason = "one arm for each act")]
    pub fn update(&self, act: Action) -> App {
        let mut next = self.clone();
        match act {
            Action::Loaded(workshop) => {
                next.tell_news(&workshop);
                next.workshop = workshop;
                next.history.forget();
                next.forget_typing();
                next.keep_open_piece();
                next.tell_skipped(&self.workshop);
            }
            Action::Told => {
                let told = Workshop::clone(&next.workshop).told();
                if told != *next.workshop {
                    next.workshop = Rc::new(told);
                    next.is_to_be_kept();
                }
            }
            Action::Edit(edit) => {
                // Unlike a change to the open piece, this can change the fields that the drafts belong to.
                next.forget_typing();
                next.edit(edit, None);
            }
            Action::Start(edit, id) => {
                next.edit(edit, None);
                next.begin(id);
            }
            Action::Open(id) => next.open_piece(id),
            Action::Change(edit) => next.change(edit, None),
            Action::Stroke(edit, of) => next.change(edit, Some(of.into())),
            Action::Rest => next.history.part(),
            Action::Type(field, text) => next.type_in(field, text),
            Action::TypeHere(text) => {
                if let Some(field) = next.field {
                    next.type_in(field, text);
                }
            }
            Action::Figure(id, text, unit) => next.type_into(DraftId::Figure(id), text, unit),
            Action::LeaveFigure(id) => next.leave_other(DraftId::Figure(id)),
            Action::Write(id, text) => next.type_into(DraftId::Entry(id), text, ""),
            Action::LeaveEntry(id) => next.leave_other(DraftId::Entry(id)),
            Action::Pause => next.typing = None,
            Action::Book(edit) => next.change_book(edit, None),
            Action::OwnLabel(zone, place, id, text, unit) => {
                next.own_label(zone, place, &id);
                next.type_into(DraftId::Figure(id), text, unit);
            }
            Action::Key(text) => next.press(text),
            Action::Nudge(steps) => next.nudge(steps),
            Action::Guess => next.guess(),
            Action::Enter(field) => next.enter(field),
            Action::Marked => next.fresh = true,
            Action::Leave(field) => next.leave(field),
            Action::GoOn(on) => next.go_on(on),
            Action::PutTapeAway => next.put_tape_away(),
            Action::Keyboard(keyboard) => next.keyboard = keyboard,
            Action::Look(look) => next.look = look,
            Action::Screen(screen) => next.go_to(screen),
            Action::Back => next.go_to(next.back),
            Action::Escape if self.screen.stage().is_none() => next.go_to(next.back),
            Action::Escape => {}
            Action::Pick(surface) => next.pick(surface),
            Action::Part(part) => {
                next.picked = None;
                next.part = part;
            }
            Action::Decide(deciding) => next.deciding = deciding,
            Action::Row(row) => next.row = row,
            Action::OnList(piece, is_on) => drop(next.listed.insert(piece, is_on)),
            Action::Fold(name) => {
                if !next.unfolded.remove(&name) {
                    next.unfolded.insert(name);
                }
            }
            Action::Finished(zone) => next.finished = zone,
            Action::Tell(message) => {
                next.messages.retain(|other| !matches!(other, Message::Done(_)));
                let message = match message {
                    Message::Opened(workshop) => {
                        next.tell_news(&workshop);
                        Message::Opened(Box::new(workshop.told()))
                    }
                    message => message,
                };
                next.messages.push(message);
            }
            Action::PutAway(place) => {
                if place < next.messages.len() {
                    next.messages.remove(place);
                }
            }
            // After a response, loading is no longer slow.
            Action::Load(Load::Slow) if next.load != Load::Opening => {}
            Action::Load(load) => next.load = load,
            Action::GoOnUnsaved => next.goes_on = true,
            Action::SaveStatus(status) => next.save_status = status,
            Action::Hear(news) => next.device_status.hear(news),
            Action::Light(light) => next.light = light,
            Action::Brush(brush) => next.brush = brush,
            Action::Linked(link) => next.link = Some(link),
            Action::Printing(printing) => next.printing = printing,
            Action::Undo => {
                let found = next.history.back(&next.workshop);
                next.step(found, true);
            }
            Action::Redo => {
                let found = next.history.forth(&next.workshop);
                next.step(found, false);
            }
        }
        next
    }

    /// Returns the open piece.
    pub fn piece(&self) -> Option<&Rc<Piece>> {
        self.workshop.piece(self.open.as_ref()?)
    }

    /// Returns the pieces that are not on the shopping list: by their status, unless the maker said otherwise.
    pub fn off_the_list(&self) -> Vec<PieceId> {
        let by_status = left_out(&self.workshop, self.open.as_ref());
        let is_off = |id: &PieceId| match self.listed.get(id) {
            Some(is_on) => !is_on,
            None => by_status.contains(id),
        };
        let ids = self.workshop.pieces.iter().map(|piece| &piece.id);
        ids.filter(|id| is_off(id)).cloned().collect()
    }

    /// Returns the bay whose rows the drawing shows: that of the current measurement, or of the selected row.
    pub fn rows_of(&self) -> Option<BayPlace> {
        match self.field {
            Some(FieldId::RowHeight(place, _) | FieldId::BayWidth(place)) => Some(place),
            _ => self.row.map(|row| row.bay),
        }
    }

    /// Returns true if there is a change to undo.
    pub fn can_undo(&self) -> bool {
        self.history.can_go_back()
    }

    /// Returns true if there is a change to redo.
    pub fn can_redo(&self) -> bool {
        self.history.can_go_forth()
    }

    /// Formats a length in the maker's units and style.
    pub fn length(&self, length: Length) -> String {
        let (units, inches) = (self.workshop.units, self.workshop.settings.inches);
        let shown = show_length_in(length, units, inches);
        // Millimeters are never written with a thousands separator.
        match (units, inches) {
            (System::UsCustomary, Inches::Decimals) => measured(&shown),
            _ => shown,
        }
    }

    /// Changes the document. Consecutive changes `about` the same thing are one undo step.
    fn edit(&mut self, edit: Edit, about: Option<String>) {
        self.take(self.workshop.apply(edit), about);
    }

    fn take(&mut self, changed: Result<Workshop, EditError>, about: Option<String>) {
        match changed {
            Ok(workshop) if workshop == *self.workshop => {}
            Ok(workshop) => {
                let before = std::mem::replace(&mut self.workshop, Rc::new(workshop));
                self.link = None;
                self.stepped = None;
                self.is_to_be_kept();
                self.history.note(before, about);
                self.keep_open_piece();
                self.keep_row();
                self.keep_drafts();
            }
            Err(error) => self.messages.push(Message::Plain(error.to_string())),
        }
    }

    /// Tells which pieces have new results, and why.
    fn tell_news(&mut self, workshop: &Workshop) {
        for sentence in news(workshop) {
            let message = Message::Plain(sentence);
            if !self.messages.contains(&message) {
                self.messages.push(message);
            }
        }
    }

    /// Marks a change as being written from the moment it is made.
    fn is_to_be_kept(&mut self) {
        if self.save_status == SaveStatus::Saved {
            self.save_status = SaveStatus::Writing;
        }
    }

    fn change(&mut self, edit: PieceEdit, about: Option<String>) {
        if moves_fields(&edit) {
            let stays = |field: &FieldId| matches!(field, FieldId::Of(_));
            let goes = |id: &DraftId| matches!(id, DraftId::Field(field) if !stays(field));
            self.drafts.retain(|id, _| !goes(id));
            self.field = self.field.filter(stays);
        }
        if let Some(id) = self.open.clone() {
            self.edit(Edit::Piece(id, edit), about);
        }
    }

    /// Selects a surface and the part that it belongs to.
    fn pick(&mut self, surface: Option<String>) {
        self.part = surface.as_deref().map(|name| part_of(name).to_owned());
        self.picked = surface;
    }

    fn open_piece(&mut self, id: PieceId) {
        if self.open.as_ref() != Some(&id) {
            self.forget_typing();
            self.pick(None);
            self.unfolded.clear();
            self.finished = None;
            self.row = None;
            self.look = Look::default();
        }
        if !self.screen.is_of_piece() {
            self.screen = Screen::Measure;
        }
        self.link = None;
        self.skipped = self.skipped.take().filter(|skipped| *skipped != id);
        self.open = Some(id);
    }

    /// Starts measuring a piece that was just added.
    fn begin(&mut self, id: PieceId) {
        self.open_piece(id);
        if std::mem::take(&mut self.deciding) {
            self.screen = Screen::Verdict;
            self.back = Screen::Measure;
            return;
        }
        self.screen = Screen::Measure;
        let first = self.piece().and_then(|piece| in_order(piece).first().copied());
        if let Some(first) = first {
            self.enter(first);
        }
    }

    fn go_to(&mut self, screen: Screen) {
        self.put_tape_away();
        self.brush = None;
        if self.screen.stage().is_some() {
            self.back = self.screen;
        }
        self.screen = screen;
    }

    fn forget_typing(&mut self) {
        self.drafts.clear();
        self.typing = None;
        self.field = None;
    }

    /// Opens the first piece if a change from elsewhere deleted the open one.
    fn keep_open_piece(&mut self) {
        if self.piece().is_none() {
            self.pick(None);
            self.field = None;
            let mut ids = self.workshop.pieces.iter().map(|piece| &piece.id);
            self.open = ids.find(|id| Some(*id) != self.skipped.as_ref()).cloned();
        }
    }

    /// Deselects a row that no longer exists.
    fn keep_row(&mut self) {
        let exists = |row: &RowPlace| {
            let bay = self.piece()?.bay(row.bay)?;
            Some(row.row <= bay.rows.len())
        };
        self.row = self.row.filter(|row| exists(row).unwrap_or_default());
    }

    /// Tells once which piece was not opened.
    fn tell_skipped(&mut self, before: &Workshop) {
        let Some(id) = &self.skipped else { return };
        let Some(piece) = self.workshop.piece(id) else {
            return;
        };
        if before.piece(id).is_none() {
            let words = format!(
                "\u{201c}{}\u{201d} did not finish opening last time. Choose it to try again.",
                piece.name
            );
            self.messages.push(Message::Plain(words));
        }
    }

    /// Returns true if there is a document to show.
    pub fn is_there(&self) -> bool {
        matches!(self.load, Load::Partly(_) | Load::Whole) || self.goes_on
    }

    /// Returns the key of the next material of the maker's own.
    pub fn free_material(&self) -> Rc<str> {
        let is_free = |key: &String| self.workshop.materials.iter().all(|own| *own.key != **key);
        let mut keys = (1..).map(|n| format!("own-{n}"));
        keys.find(is_free).unwrap_or_default().into()
    }

    /// Adds the material and selects it for the layer, in one undo step with the value that is typed.
    fn own_label(&mut self, zone: Option<String>, place: usize, typed: &FigureId) {
        let scheme = self.piece().map(|piece| match &zone {
            Some(key) => piece.scheme_of(key),
            None => &piece.scheme,
        });
        let layer = scheme.and_then(|scheme| scheme.layers.get(place));
        let Some((of, id)) = layer
            .map(|layer| layer.material.to_string())
            .zip(self.open.clone())
        else {
            return;
        };
        let key = self.free_material();
        let planned = PieceEdit::Exchange {
            from: of.as_str().into(),
            to: Rc::clone(&key),
        };
        let copied = self.workshop.apply(Edit::AddMaterial(key, of));
        self.take(
            copied.and_then(|workshop| workshop.apply(Edit::Piece(id, planned))),
            Some(typed.element()),
        );
    }

    /// Replaces the document with another one, if there is one.
    fn step(&mut self, found: Option<Rc<Workshop>>, is_back: bool) {
        let Some(workshop) = found else { return };
        let before = std::mem::replace(&mut self.workshop, workshop);
        self.link = None;
        self.is_to_be_kept();
        self.drafts.clear();
        self.typing = None;
        self.keep_open_piece();
        self.keep_row();
        self.follow(&before);
        self.stepped = Some(Stepped {
            is_back,
            from: before,
        });
    }
}

/// Returns the name of the part in the name of a surface.
pub fn part_of(surface: &str) -> &str {
    surface.split_once('/').map_or(surface, |(part, _)| part)
}

/// Returns true if an edit may renumber rows, bays or changes, which changes the meaning of their fields.
fn moves_fields(edit: &PieceEdit) -> bool {
    matches!(
        edit,
        PieceEdit::Bays { .. }
            | PieceEdit::Rows { .. }
            | PieceEdit::RepeatRow { .. }
            | PieceEdit::RemoveRow { .. }
            | PieceEdit::AlterChange { .. }
            | PieceEdit::RemoveChange(_)
    )
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use geometry::{BayPlace, Kind, fields};

    pub const FIRST_BAY: BayPlace = BayPlace { upper: false, bay: 1 };

    pub fn with_piece() -> App {
        let id = PieceId("a".into());
        App::default().update(Action::Start(
            Edit::Add {
                id: id.clone(),
                kind: Kind::Dresser,
            },
            id,
        ))
    }

    pub fn typed(app: &App, texts: &[&str]) -> App {
        texts.iter().fold(app.clone(), |app, text| {
            app.update(Action::Type(fields::WIDTH.id(), (*text).into()))
        })
    }

    pub fn text(app: &App, field: FieldId) -> String {
        app.text_of(&DraftId::Field(field))
    }

    pub fn width(app: &App) -> Option<String> {
        app.piece()?
            .reading(fields::WIDTH.id())
            .map(|reading| reading.typed().to_owned())
    }

    #[test]
    fn a_change_is_on_its_way_until_it_is_kept() {
        let kept = Action::SaveStatus(SaveStatus::Saved);
        let app = with_piece().update(kept.clone());
        let typed = typed(&app, &["33"]);
        assert_eq!(typed.save_status, SaveStatus::Writing);
        assert_eq!(typed.update(kept.clone()).save_status, SaveStatus::Saved);
        assert_eq!(
            typed.update(kept).update(Action::Undo).save_status,
            SaveStatus::Writing
        );
        // Navigation does not need saving, and an error stays visible.
        assert_eq!(
            app.update(Action::Screen(Screen::Tools)).save_status,
            SaveStatus::Saved
        );
        let failed = SaveStatus::Failed("full".into());
        let app = app.update(Action::SaveStatus(failed.clone()));
        assert_eq!(super::tests::typed(&app, &["33"]).save_status, failed);
    }

    /// A workshop with a piece from before result versions.
    fn of_old() -> Workshop {
        let mut old = Workshop::clone(&with_piece().workshop);
        Rc::make_mut(&mut old.pieces[0]).shown = 1;
        old
    }

    #[test]
    fn other_numbers_are_told_once_and_that_is_kept() {
        let loaded = Action::Loaded(Rc::new(of_old()));
        let app = App::default()
            .update(loaded.clone())
            .update(Action::SaveStatus(SaveStatus::Saved));
        assert!(matches!(&app.messages[..], [Message::Plain(sentence)] if sentence.contains("Dresser")));
        assert_eq!(
            *app.workshop,
            of_old(),
            "what could not be read whole is not written over"
        );
        // Another tab has saved something in the meantime.
        assert_eq!(app.update(loaded).messages.len(), 1);
        let told = app.update(Action::Told);
        assert_eq!(
            (told.save_status.clone(), told.can_undo()),
            (SaveStatus::Writing, false)
        );
        let next = App::default().update(Action::Loaded(Rc::clone(&told.workshop)));
        assert!(next.messages.is_empty());
        let kept = next.update(Action::SaveStatus(SaveStatus::Saved));
        assert_eq!(
            kept.update(Action::Told).save_status,
            SaveStatus::Saved,
            "nothing to write"
        );
    }

    #[test]
    fn other_numbers_of_a_file_are_told_when_it_is_opened_and_not_when_it_comes_in() {
        let app = App::default().update(Action::Tell(Message::Opened(Box::new(of_old()))));
        let [Message::Plain(_), Message::Opened(opened)] = &app.messages[..] else {
            panic!("{:?}", app.messages)
        };
        assert_eq!(news(opened), [""; 0]);
    }

    #[test]
    fn a_tapped_surface_shows_its_part() {
        let app = with_piece().update(Action::Pick(Some("leg-1/top/floor".into())));
        assert_eq!(app.part.as_deref(), Some("leg-1"));
        assert_eq!(app.update(Action::Pick(None)).part, None);
    }

    #[test]
    fn a_piece_stays_off_the_list_while_another_is_looked_at() {
        let add = |id: &str| {
            let id = PieceId(id.into());
            Action::Start(
                Edit::Consider {
                    id: id.clone(),
                    kind: Kind::Desk,
                },
                id,
            )
        };
        let id = |name: &str| PieceId(name.into());
        let app = App::default().update(add("a")).update(add("b"));
        // Of pieces that may be bought, the open one is on the list.
        assert_eq!(app.off_the_list(), [id("a")]);
        let both = app.update(Action::OnList(id("a"), true));
        assert_eq!(both.off_the_list(), []);
        let off = both.update(Action::OnList(id("b"), false));
        assert_eq!(off.off_the_list(), [id("b")]);
        assert_eq!(off.update(Action::Open(id("a"))).off_the_list(), [id("b")]);
    }

    #[test]
    fn what_is_unfolded_is_folded_by_the_next_touch() {
        let fold = || Action::Fold("zone-top".into());
        let app = with_piece().update(fold());
        assert!(app.unfolded.contains("zone-top") && app.update(fold()).unfolded.is_empty());
    }

    #[test]
    fn a_screen_that_every_stage_opens_leads_back_to_that_stage() {
        let app = with_piece().update(Action::Screen(Screen::Finish));
        let open = app
            .update(Action::Screen(Screen::Amounts))
            .update(Action::Screen(Screen::Verdict));
        assert_eq!(open.update(Action::Back).screen, Screen::Finish);
        let closed = open.update(Action::Escape);
        assert_eq!(
            (closed.screen, closed.update(Action::Escape).screen),
            (Screen::Finish, Screen::Finish)
        );
    }

    #[test]
    fn a_piece_to_decide_about_opens_with_the_verdict() {
        let start = App::default().update(Action::Decide(true));
        let id = PieceId("a".into());
        let add = Edit::Consider {
            id: id.clone(),
            kind: Kind::Dresser,
        };
        let app = start.update(Action::Start(add, id));
        assert_eq!(
            (app.screen, app.field, app.deciding),
            (Screen::Verdict, None, false)
        );
    }

    #[test]
    fn an_opened_piece_is_seen() {
        let open = || Action::Open(PieceId("a".into()));
        let of = |screen| with_piece().update(Action::Screen(screen)).update(open()).screen;
        assert_eq!(
            [of(Screen::Pieces), of(Screen::Work)],
            [Screen::Measure, Screen::Work]
        );
    }

    #[test]
    fn a_label_is_entered_on_a_copy_and_taken_back_in_one_step() {
        let before = with_piece();
        let rate = FigureId::Label("own-1".into(), "rate");
        let own = Action::OwnLabel(None, 1, rate.clone(), "3".into(), "ft2/gal");
        let app = before.update(own);
        let planned = |app: &App| app.piece().unwrap().scheme.layers[1].material.to_string();
        assert_eq!(
            (planned(&app).as_str(), app.workshop.materials.len()),
            ("own-1", 1)
        );
        let type_in =
            |app: &App, text: &str| app.update(Action::Figure(rate.clone(), text.into(), "ft2/gal"));
        let app = type_in(&type_in(&app, "350"), "350-");
        let typed = |app: &App| app.workshop.materials[0].label["rate"].typed().to_owned();
        assert!(
            app.workshop.materials[0].label.is_empty(),
            "a part of what cannot be read is no figure"
        );
        let left = app.update(Action::LeaveFigure(rate.clone()));
        assert_eq!(left.drafts.len(), 1, "and stays to be mended");
        let app = type_in(&left, "350-450").update(Action::LeaveFigure(rate.clone()));
        assert_eq!((typed(&app).as_str(), app.drafts.len()), ("350-450", 0));
        let back = (0..2).fold(app, |app, _| app.update(Action::Undo));
        assert_eq!(back.workshop, before.workshop);
    }

    /// A name used to be lost if the page changed before the maker left its field.
    #[test]
    fn a_name_counts_while_it_is_typed() {
        let name = FigureId::Name("own-1".into());
        let type_in = |app: &App, text: &str| app.update(Action::Figure(name.clone(), text.into(), ""));
        let first = Action::OwnLabel(None, 1, name.clone(), "H".into(), "");
        let app = type_in(&with_piece().update(first), "Harbor ");
        let text = |app: &App| app.text_of(&DraftId::Figure(name.clone()));
        assert_eq!(text(&app), "Harbor ");
        assert_eq!(app.workshop.materials[0].name, "Harbor");
        let app = app.update(Action::Figure(
            FigureId::Price("own-1".into(), "us-quart"),
            "2".into(),
            "",
        ));
        assert_eq!(text(&app.update(Action::LeaveFigure(name.clone()))), "Harbor");
        let of = coatings::material(app.workshop.materials[0].of).unwrap();
        let app = type_in(&app, "").update(Action::LeaveFigure(name.clone()));
        assert_eq!(
            (&*app.workshop.materials[0].name, text(&app)),
            (&*of.name, String::new())
        );
    }

    #[test]
    fn undo_takes_back_a_reading_at_a_time() {
        let start = with_piece();
        let app = typed(&start, &["3", "33", "33 ", "33 7/8"]).update(Action::GoOn(true));
        let depth = |app: &App, text: &str| app.update(Action::Type(fields::DEPTH.id(), text.into()));
        let app = depth(&depth(&app, "1"), "18");
        let back = app.update(Action::Undo);
        assert_eq!(text(&back, fields::DEPTH.id()), "", "the whole reading went");
        assert_eq!(width(&back).as_deref(), Some("33 7/8"));
        let before = back.update(Action::Undo);
        assert_eq!(width(&before), None);
        let again = before.update(Action::Redo).update(Action::Redo);
        assert_eq!(text(&again, fields::DEPTH.id()), "18");
        let empty = (0..9).fold(app, |app, _| app.update(Action::Undo));
        assert!(empty.workshop.pieces.is_empty() && !empty.can_undo() && empty.can_redo());
    }

    #[test]
    fn a_stroke_is_one_step_and_the_next_another() {
        let left = |name: &str| {
            Action::Stroke(
                PieceEdit::Painted {
                    surface: name.into(),
                    painted: Some(false),
                },
                "stroke",
            )
        };
        let start = with_piece();
        let app = [left("top/top"), left("top/front"), Action::Rest, left("top/left")]
            .into_iter()
            .fold(start.clone(), |app, act| app.update(act));
        let back = app.update(Action::Undo);
        assert_eq!(back.piece().unwrap().choices.len(), 2);
        assert_eq!(back.update(Action::Undo).workshop, start.workshop);
    }

    #[test]
    fn a_new_piece_is_measured_at_once_and_one_reading_leads_to_the_next() {
        let app = with_piece();
        assert_eq!(app.field, Some(fields::WIDTH.id()));
        let order = in_order(app.piece().unwrap());
        let next = app.update(Action::GoOn(true));
        assert_eq!((next.field, next.look), (Some(order[1]), Look::Cabinet));
        assert_eq!(next.update(Action::GoOn(false)).field, app.field);
        // The keypad offers to close after the three sizes, and after the last row.
        let ends = |from: FieldId| app.update(Action::Enter(from)).next_in_group().is_none();
        let ended = order.iter().filter(|field| ends(**field));
        let ended: Vec<usize> = ended
            .map(|end| order.iter().position(|of| of == end).unwrap())
            .collect();
        assert_eq!(ended.len(), 3);
        assert_eq!(ended[0], 2);
        assert!(matches!(order[ended[1]], FieldId::RowHeight(..)));
        assert_eq!(ended[2], order.len() - 1);
        let end = order.iter().fold(app, |app, _| app.update(Action::GoOn(true)));
        assert_eq!(end.field, None, "behind the last one the tape is put away");
    }

    #[test]
    fn what_changes_nothing_is_no_step() {
        let app = with_piece().update(Action::Change(PieceEdit::Count(1)));
        assert_eq!(app, with_piece());
    }

    #[test]
    fn a_refused_change_is_told() {
        let app = with_piece().update(Action::Change(PieceEdit::Rows {
            bay: FIRST_BAY,
            count: 99,
        }));
        assert_eq!(app.messages.len(), 1);
        assert_eq!(app.update(Action::PutAway(0)).messages.len(), 0);
    }

    #[test]
    fn a_piece_whose_opening_did_not_end_is_not_opened_by_itself() {
        let [a, b] = ["a", "b"].map(|name| PieceId(name.into()));
        let add = |workshop: Workshop, id: &PieceId| {
            let (id, kind) = (id.clone(), Kind::Desk);
            workshop.apply(Edit::Add { id, kind }).unwrap()
        };
        let one = Rc::new(add(Workshop::default(), &a));
        let two = Rc::new(add((*one).clone(), &b));
        let begun = App::begun(
            Light::Device,
            units::Decimals::default(),
            Some(a.clone()),
            Some(a.clone()),
            Screen::Measure,
        );
        let alone = begun.update(Action::Loaded(one));
        assert_eq!((alone.piece(), alone.messages.len()), (None, 1));
        let beside = begun.update(Action::Loaded(two.clone()));
        assert_eq!((beside.open.clone(), beside.messages.len()), (Some(b), 1));
        assert_eq!(
            beside.update(Action::Loaded(two)).messages.len(),
            1,
            "it is said once"
        );
        let opened = beside.update(Action::Open(a.clone()));
        assert_eq!((opened.open, opened.skipped), (Some(a.clone()), None));
        let usual = App::begun(
            Light::Device,
            units::Decimals::default(),
            Some(a.clone()),
            None,
            Screen::Measure,
        );
        assert_eq!(usual.open, Some(a));
    }

    #[test]
    fn there_is_a_document_once_it_was_read_or_the_maker_goes_on() {
        let app = App::default();
        assert!(!app.is_there() && !app.update(Action::Load(Load::Slow)).is_there());
        let failed = app.update(Action::Load(Load::Failed("x".into())));
        assert!(!failed.is_there() && failed.update(Action::GoOnUnsaved).is_there());
        assert!(app.update(Action::Load(Load::Partly(Rc::default()))).is_there());
        let whole = app.update(Action::Load(Load::Whole));
        assert!(whole.is_there() && whole.update(Action::Load(Load::Slow)).is_there());
    }

    #[test]
    fn when_the_open_piece_goes_the_first_is_opened() {
        let b = PieceId("b".into());
        let app = with_piece().update(Action::Start(
            Edit::Add {
                id: b.clone(),
                kind: Kind::Nightstand,
            },
            b.clone(),
        ));
        let app = app.update(Action::Edit(Edit::Remove(b)));
        assert_eq!(app.open, Some(PieceId("a".into())));
    }
}
