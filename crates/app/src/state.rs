//! The state of the page and the one function that changes it.

use std::rc::Rc;

use geometry::FieldId;
use units::{LengthError, SortedMap, SortedSet, read_length};
use workshop::{
    Edit, EditError, LabelReading, MaterialEdit, Piece, PieceEdit, PieceId, Price, Reading, SchemeEdit,
    Workshop, label_field,
};

/// How many steps can be taken back.
const UNDO_STEPS: usize = 200;

/// From where the drawing looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Look {
    /// From the front.
    #[default]
    Front,
    /// From the right.
    Side,
    /// From above.
    Above,
    /// From the front corner, a number of steps around; a step is 15 degrees.
    Corner(i8),
}

/// Which sheet of questions lies under the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sheet {
    /// The tape readings.
    #[default]
    Measure,
    /// The parts, and what the maker changed about them.
    Parts,
    /// Which surfaces get the finish.
    Surfaces,
    /// What goes on, how often, with what.
    Finish,
    /// What brush, roller and sprayer would make of it.
    Tools,
}

/// How the document stands in the browser's database.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Keeping {
    /// Nothing was read yet.
    #[default]
    Opening,
    /// A change is on its way.
    Writing,
    /// All is kept.
    Kept,
    /// It could not be kept; the reason in words.
    Failed(String),
}

/// Something to tell the maker.
#[derive(Clone, Debug, PartialEq)]
pub enum Message {
    /// A sentence that stays until it is put away.
    Plain(String),
    /// A file was read; what should become of it?
    Opened(Workshop),
}

/// A figure of a material of the maker's own: the key of the material, and which figure.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FigureId {
    /// What stands on its label, by the key of the field.
    Label(Rc<str>, &'static str),
    /// What a can of it costs, by the key of the can.
    Price(Rc<str>, &'static str),
}

/// The state of the page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct App {
    /// The document.
    pub workshop: Rc<Workshop>,
    /// The piece on the sheet.
    pub open: Option<PieceId>,
    /// From where the drawing looks.
    pub look: Look,
    /// What lies under the drawing.
    pub sheet: Sheet,
    /// The surface that was tapped, by its name.
    pub picked: Option<String>,
    /// The part that is looked at, by its name.
    pub part: Option<String>,
    /// Whether the maker is about to begin another piece.
    pub adding: bool,
    /// What is unfolded on the sheets, by name.
    pub unfolded: SortedSet<String>,
    /// The zone whose finish is on the sheet, by its key; nothing is that of the piece.
    pub finished: Option<String>,
    /// The field that the maker is in.
    pub field: Option<FieldId>,
    /// Texts that are being typed, as typed; they are no part of the document until they can be read.
    pub drafts: SortedMap<FieldId, String>,
    /// Figures that are being typed, as typed, and their units.
    pub figures: SortedMap<FigureId, (String, &'static str)>,
    /// What to tell the maker.
    pub messages: Vec<Message>,
    /// How the document stands in the database.
    pub keeping: Keeping,
    past: Vec<Rc<Workshop>>,
    future: Vec<Rc<Workshop>>,
}

/// Everything that can happen to the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// The document came out of the database, or was changed in another tab.
    Loaded(Rc<Workshop>),
    /// The maker changes the document.
    Edit(Edit),
    /// The maker adds a piece and opens it.
    Start(Edit, PieceId),
    /// The maker opens a piece.
    Open(PieceId),
    /// The maker changes the open piece.
    Change(PieceEdit),
    /// The maker types in a field.
    Type(FieldId, String),
    /// The maker types a figure in a unit, or chooses another unit for it.
    Figure(FigureId, String, &'static str),
    /// The maker leaves a figure.
    LeaveFigure(FigureId),
    /// A layer of the open piece, or of one of its zones, gets a material of the maker's own, a copy of the one that it
    /// has.
    OwnLabel(Option<String>, usize),
    /// The maker presses a key of the tape pad: text to put behind what stands in the field.
    Pad(&'static str),
    /// The maker goes into a field.
    Enter(FieldId),
    /// The maker leaves a field.
    Leave(FieldId),
    /// The drawing looks from elsewhere.
    Look(Look),
    /// Another sheet comes on top.
    Sheet(Sheet),
    /// A surface is tapped, or none any more.
    Pick(Option<String>),
    /// A part is looked at, or none any more.
    Part(Option<String>),
    /// The kinds of pieces to begin with are shown, or put away.
    Adding(bool),
    /// Something on a sheet is unfolded, or folded again, by its name.
    Fold(String),
    /// The finish of a zone comes on the sheet, or that of the piece.
    Finished(Option<String>),
    /// There is something to tell.
    Tell(Message),
    /// The maker puts away what was told, by its place.
    PutAway(usize),
    /// The database answered.
    Keeping(Keeping),
    /// The last change is taken back.
    Undo,
    /// The last change that was taken back is made again.
    Redo,
}

impl App {
    /// The state after something happened.
    pub fn update(&self, act: Act) -> App {
        let mut next = self.clone();
        match act {
            Act::Loaded(workshop) => {
                next.workshop = workshop;
                next.past.clear();
                next.future.clear();
                next.drafts.clear();
                next.figures.clear();
                next.keep_open_piece();
            }
            Act::Edit(edit) => {
                // Only a change of the open piece leaves what is being typed meaning what it meant.
                next.drafts.clear();
                next.figures.clear();
                next.edit(edit);
            }
            Act::Start(edit, id) => {
                next.edit(edit);
                next.open_piece(id);
            }
            Act::Open(id) => next.open_piece(id),
            Act::Change(edit) => next.change(edit),
            Act::Type(field, text) => next.type_in(field, text),
            Act::Figure(id, text, unit) => next.type_figure(id, text, unit),
            Act::LeaveFigure(id) => {
                let is_read = next.figures.get(&id).is_some_and(|(text, unit)| {
                    !text.trim().is_empty() && read_figure(&id, text, unit).is_ok()
                });
                if is_read {
                    next.figures.remove(&id);
                }
            }
            Act::OwnLabel(zone, place) => next.own_label(zone, place),
            Act::Pad(text) => next.pad(text),
            Act::Enter(field) => next.field = Some(field),
            Act::Leave(field) => {
                if next.fault(field).is_none() {
                    next.drafts.remove(&field);
                }
            }
            Act::Look(look) => next.look = look,
            Act::Sheet(sheet) => next.sheet = sheet,
            Act::Pick(surface) => next.pick(surface),
            Act::Part(part) => {
                next.picked = None;
                next.part = part;
            }
            Act::Adding(adding) => next.adding = adding,
            Act::Fold(name) => {
                if !next.unfolded.remove(&name) {
                    next.unfolded.insert(name);
                }
            }
            Act::Finished(zone) => next.finished = zone,
            Act::Tell(message) => next.messages.push(message),
            Act::PutAway(place) => {
                if place < next.messages.len() {
                    next.messages.remove(place);
                }
            }
            Act::Keeping(keeping) => next.keeping = keeping,
            Act::Undo => next.step(|app| (&mut app.past, &mut app.future)),
            Act::Redo => next.step(|app| (&mut app.future, &mut app.past)),
        }
        next
    }

    /// The open piece.
    pub fn piece(&self) -> Option<&Rc<Piece>> {
        self.workshop.piece(self.open.as_ref()?)
    }

    /// Whether there is a change to take back.
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is a change to make again.
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    /// What stands in a field: what is being typed, or else what was measured.
    pub fn text(&self, field: FieldId) -> String {
        let tape = self.workshop.units.tape_unit();
        // A reading that was taken in other units says so; without its unit it would be read as another length.
        let written = |reading: &Reading| {
            if reading.unit() == tape {
                reading.typed().to_owned()
            } else {
                reading.with_unit()
            }
        };
        let measured = || self.piece()?.reading(field).map(written);
        self.drafts
            .get(&field)
            .cloned()
            .or_else(measured)
            .unwrap_or_default()
    }

    /// Why the text in a field cannot be read, if it cannot.
    pub fn fault(&self, field: FieldId) -> Option<LengthError> {
        let draft = self.drafts.get(&field).filter(|text| !text.trim().is_empty())?;
        read_length(draft, self.workshop.units.tape_unit()).err()
    }

    fn edit(&mut self, edit: Edit) {
        self.take(self.workshop.apply(edit));
    }

    fn take(&mut self, changed: Result<Workshop, EditError>) {
        match changed {
            Ok(workshop) if workshop == *self.workshop => {}
            Ok(workshop) => {
                self.past
                    .push(std::mem::replace(&mut self.workshop, Rc::new(workshop)));
                if self.past.len() > UNDO_STEPS {
                    self.past.remove(0);
                }
                self.future.clear();
                self.keep_open_piece();
            }
            Err(error) => self.messages.push(Message::Plain(error.to_string())),
        }
    }

    fn change(&mut self, edit: PieceEdit) {
        if moves_fields(&edit) {
            let stays = |field: &FieldId| matches!(field, FieldId::Of(_));
            self.drafts.retain(|field, _| stays(field));
            self.field = self.field.filter(stays);
        }
        if let Some(id) = self.open.clone() {
            self.edit(Edit::Piece(id, edit));
        }
    }

    /// A surface that is tapped shows the part that it belongs to.
    fn pick(&mut self, surface: Option<String>) {
        self.part = surface.as_deref().map(|name| part_of(name).to_owned());
        self.picked = surface;
    }

    fn open_piece(&mut self, id: PieceId) {
        if self.open.as_ref() != Some(&id) {
            self.drafts.clear();
            self.pick(None);
            self.field = None;
            self.unfolded.clear();
            self.finished = None;
        }
        // Once a piece was begun, or another one opened, the kinds are in the way.
        self.adding = false;
        self.open = Some(id);
    }

    /// After a change from elsewhere the open piece may be gone: then the first one is opened.
    fn keep_open_piece(&mut self) {
        if self.piece().is_none() {
            self.pick(None);
            self.open = self.workshop.pieces.first().map(|piece| piece.id.clone());
        }
    }

    fn type_in(&mut self, field: FieldId, text: String) {
        let reading = match text.trim() {
            "" => Some(None),
            typed => Reading::new(typed, self.workshop.units.tape_unit())
                .ok()
                .map(Some),
        };
        if let Some(reading) = reading {
            self.change(PieceEdit::Measure(field, reading));
        }
        self.drafts.insert(field, text);
        self.field = Some(field);
    }

    fn type_figure(&mut self, id: FigureId, text: String, unit: &'static str) {
        if let Ok(edit) = read_figure(&id, &text, unit) {
            let (FigureId::Label(material, _) | FigureId::Price(material, _)) = &id;
            self.edit(Edit::Material(Rc::clone(material), edit));
        }
        self.figures.insert(id, (text, unit));
    }

    /// Both changes are one step.
    fn own_label(&mut self, zone: Option<String>, place: usize) {
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
        let is_free = |key: &String| self.workshop.materials.iter().all(|own| *own.key != **key);
        let key: Rc<str> = (1..)
            .map(|n| format!("own-{n}"))
            .find(is_free)
            .unwrap_or_default()
            .into();
        let copied = self.workshop.apply(Edit::AddMaterial(Rc::clone(&key), of));
        let planned = PieceEdit::Finish(zone, SchemeEdit::Material(place, key));
        self.take(copied.and_then(|workshop| workshop.apply(Edit::Piece(id, planned))));
    }

    fn pad(&mut self, text: &'static str) {
        let Some(field) = self.field else { return };
        let before = self.text(field);
        let text = match text {
            BACK => before
                .chars()
                .take(before.chars().count().saturating_sub(1))
                .collect(),
            text if text.starts_with(|c: char| c.is_ascii_digit()) && ends_with_digit(&before) => {
                format!("{before} {text}")
            }
            text => format!("{before}{text}"),
        };
        self.type_in(field, text);
    }

    fn step(&mut self, sides: impl Fn(&mut App) -> (&mut Vec<Rc<Workshop>>, &mut Vec<Rc<Workshop>>)) {
        let Some(workshop) = sides(self).0.pop() else {
            return;
        };
        let now = std::mem::replace(&mut self.workshop, workshop);
        sides(self).1.push(now);
        self.drafts.clear();
        self.figures.clear();
        self.keep_open_piece();
    }
}

/// The key of the tape pad that takes the last character away.
pub const BACK: &str = "\u{8}";

/// The change that a typed figure means; an empty one takes the figure away.
///
/// # Errors
/// Why it cannot be read, in words.
pub fn read_figure(id: &FigureId, text: &str, unit: &str) -> Result<MaterialEdit, String> {
    let typed = Some(text).filter(|text| !text.trim().is_empty());
    match id {
        FigureId::Label(_, key) => {
            let field = label_field(key).ok_or_else(String::new)?;
            let read = typed.map(|text| LabelReading::new(field, text, unit)).transpose();
            let reading = read.map_err(|error| error.to_string())?;
            Ok(MaterialEdit::Label(field.key, reading))
        }
        FigureId::Price(_, can) => {
            let price = typed
                .map(Price::new)
                .transpose()
                .map_err(|error| error.to_string())?;
            Ok(MaterialEdit::Price(can, price))
        }
    }
}

fn ends_with_digit(text: &str) -> bool {
    text.ends_with(|c: char| c.is_ascii_digit())
}

/// The name of the part that a surface belongs to, out of the name of the surface.
pub fn part_of(surface: &str) -> &str {
    surface.split_once('/').map_or(surface, |(part, _)| part)
}

/// Whether a row, a bay or a change may have another number afterwards, and its fields another meaning.
fn moves_fields(edit: &PieceEdit) -> bool {
    matches!(
        edit,
        PieceEdit::Bays(..)
            | PieceEdit::Rows(..)
            | PieceEdit::RepeatRow(..)
            | PieceEdit::AlterChange(..)
            | PieceEdit::RemoveChange(_)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::{BayPlace, Kind, fields};

    const FIRST_BAY: BayPlace = BayPlace { upper: false, bay: 1 };

    fn with_piece() -> App {
        let id = PieceId("a".into());
        App::default().update(Act::Start(
            Edit::Add {
                id: id.clone(),
                kind: Kind::Dresser,
            },
            id,
        ))
    }

    fn typed(app: &App, texts: &[&str]) -> App {
        texts.iter().fold(app.clone(), |app, text| {
            app.update(Act::Type(fields::WIDTH.id(), (*text).into()))
        })
    }

    fn width(app: &App) -> Option<String> {
        app.piece()?
            .reading(fields::WIDTH.id())
            .map(|reading| reading.typed().to_owned())
    }

    #[test]
    fn a_half_typed_fraction_stays_in_the_field_and_the_last_good_reading_in_the_piece() {
        let app = typed(&with_piece(), &["33", "33 ", "33 7", "33 7/"]);
        assert_eq!(
            (app.text(fields::WIDTH.id()).as_str(), width(&app).as_deref()),
            ("33 7/", Some("33"))
        );
        assert!(app.fault(fields::WIDTH.id()).is_some());
        let app = app.update(Act::Leave(fields::WIDTH.id()));
        assert_eq!(
            app.text(fields::WIDTH.id()),
            "33 7/",
            "a text that cannot be read is not thrown away"
        );
        let app = typed(&app, &["33 7/8"]).update(Act::Leave(fields::WIDTH.id()));
        assert_eq!((width(&app).as_deref(), app.drafts.len()), (Some("33 7/8"), 0));
    }

    #[test]
    fn a_text_that_cannot_be_read_outlives_a_change_elsewhere() {
        let app = typed(&with_piece(), &["33 7/"]).update(Act::Type(fields::DEPTH.id(), "18".into()));
        assert_eq!(app.text(fields::WIDTH.id()), "33 7/");
    }

    #[test]
    fn a_text_for_a_row_goes_when_rows_get_other_numbers() {
        let row = FieldId::RowHeight(FIRST_BAY, 2);
        let app = typed(&with_piece(), &["33 7/"])
            .update(Act::Type(row, "7 1/".into()))
            .update(Act::Change(PieceEdit::RepeatRow(FIRST_BAY, 1)));
        assert_eq!((app.text(row).as_str(), app.field), ("", None));
        assert_eq!(app.text(fields::WIDTH.id()), "33 7/");
    }

    #[test]
    fn a_tapped_surface_shows_its_part() {
        let app = with_piece().update(Act::Pick(Some("leg-1/top/floor".into())));
        assert_eq!(app.part.as_deref(), Some("leg-1"));
        assert_eq!(app.update(Act::Pick(None)).part, None);
    }

    #[test]
    fn what_is_unfolded_is_folded_by_the_next_touch() {
        let fold = || Act::Fold("zone-top".into());
        let app = with_piece().update(fold());
        assert!(app.unfolded.contains("zone-top") && app.update(fold()).unfolded.is_empty());
    }

    #[test]
    fn a_new_piece_puts_the_kinds_away() {
        let app = with_piece().update(Act::Adding(true));
        assert!(app.adding && !app.update(Act::Open(PieceId("a".into()))).adding);
    }

    #[test]
    fn an_emptied_field_is_not_measured_any_more() {
        let app = typed(&with_piece(), &["33", ""]);
        assert_eq!(width(&app), None);
    }

    #[test]
    fn a_reading_keeps_its_unit_when_the_maker_changes_units() {
        let app = typed(&with_piece(), &["33 7/8"]).update(Act::Leave(fields::WIDTH.id()));
        let metric = app.update(Act::Edit(Edit::Units(units::System::Metric)));
        assert_eq!(metric.text(fields::WIDTH.id()), "33 7/8 in");
        let again = metric.update(Act::Type(fields::WIDTH.id(), metric.text(fields::WIDTH.id())));
        let length = |app: &App| app.piece().unwrap().reading(fields::WIDTH.id()).unwrap().length();
        assert_eq!(length(&again), length(&app));
    }

    #[test]
    fn the_pad_puts_a_space_before_a_fraction() {
        let pad =
            |app: App, keys: &[&'static str]| keys.iter().fold(app, |app, key| app.update(Act::Pad(key)));
        let app = pad(typed(&with_piece(), &["33"]), &["7/8"]);
        assert_eq!(width(&app).as_deref(), Some("33 7/8"));
        let app = pad(app, &[BACK, BACK, BACK, BACK]);
        assert_eq!(width(&app).as_deref(), Some("33"));
        let app = pad(typed(&with_piece(), &["2"]), &[" ft ", "7/8"]);
        assert_eq!(width(&app).as_deref(), Some("2 ft 7/8"));
    }

    #[test]
    fn a_label_is_entered_on_a_copy_and_taken_back_in_one_step() {
        let before = with_piece();
        let app = before.update(Act::OwnLabel(None, 1));
        let planned = |app: &App| app.piece().unwrap().scheme.layers[1].material.to_string();
        assert_eq!(
            (planned(&app).as_str(), app.workshop.materials.len()),
            ("own-1", 1)
        );
        let rate = FigureId::Label("own-1".into(), "rate");
        let type_in = |app: &App, text: &str| app.update(Act::Figure(rate.clone(), text.into(), "ft2/gal"));
        let app = type_in(&type_in(&app, "350"), "350-");
        let typed = |app: &App| app.workshop.materials[0].label["rate"].typed().to_owned();
        assert_eq!(
            typed(&app),
            "350",
            "what cannot be read yet leaves the last reading"
        );
        let left = app.update(Act::LeaveFigure(rate.clone()));
        assert_eq!(left.figures.len(), 1, "and stays to be mended");
        let app = type_in(&left, "350-450").update(Act::LeaveFigure(rate.clone()));
        assert_eq!((typed(&app).as_str(), app.figures.len()), ("350-450", 0));
        let back = (0..3).fold(app, |app, _| app.update(Act::Undo));
        assert_eq!(back.workshop, before.workshop);
    }

    #[test]
    fn a_price_that_is_none_says_so() {
        let price = FigureId::Price("own-1".into(), "us-quart");
        assert!(read_figure(&price, "-3", "").is_err_and(|reason| !reason.is_empty()));
        let nothing = MaterialEdit::Price("us-quart", None);
        assert_eq!(read_figure(&price, " ", ""), Ok(nothing));
    }

    #[test]
    fn undo_and_redo_go_through_every_change() {
        let start = with_piece();
        let app = typed(&start, &["33", "34"]);
        let back = app.update(Act::Undo);
        assert_eq!(width(&back).as_deref(), Some("33"));
        assert_eq!(back.text(fields::WIDTH.id()), "33");
        assert_eq!(width(&back.update(Act::Redo)).as_deref(), Some("34"));
        let empty = (0..9).fold(app, |app, _| app.update(Act::Undo));
        assert!(empty.workshop.pieces.is_empty() && !empty.can_undo() && empty.can_redo());
    }

    #[test]
    fn what_changes_nothing_is_no_step() {
        let app = with_piece().update(Act::Change(PieceEdit::Count(1)));
        assert_eq!(app, with_piece());
    }

    #[test]
    fn a_refused_change_is_told() {
        let app = with_piece().update(Act::Change(PieceEdit::Rows(FIRST_BAY, 99)));
        assert_eq!(app.messages.len(), 1);
        assert_eq!(app.update(Act::PutAway(0)).messages.len(), 0);
    }

    #[test]
    fn when_the_open_piece_goes_the_first_is_opened() {
        let b = PieceId("b".into());
        let app = with_piece().update(Act::Start(
            Edit::Add {
                id: b.clone(),
                kind: Kind::Nightstand,
            },
            b.clone(),
        ));
        let app = app.update(Act::Edit(Edit::Remove(b)));
        assert_eq!(app.open, Some(PieceId("a".into())));
    }
}
