//! The screens. [`Page`] holds the state and hands it down; the others only show it and say what was done.

mod alter;
mod amounts;
mod book;
mod card;
mod compare;
mod days;
mod detail;
mod drawing;
mod figure;
mod files;
mod finish;
mod head;
mod lead_test;
mod links;
mod measure;
mod messages;
mod mixing;
mod money;
mod out;
mod prepare;
mod prices;
mod refused;
mod settings;
mod shelf;
mod spoken;
mod start;
mod surfaces;
mod tape;
mod tape_focus;
mod tape_keys;
mod together;
mod unread;
mod vessel;
mod weighed;

use std::rc::Rc;

use coatings::can::ChoiceError;
use geometry::Problem;
use gloo::timers::callback::Timeout;
use wasm_bindgen::JsCast;
use workshop::{Buy, MaterialLine, Piece, PieceEdit, Takeoff};
use yew::prelude::*;

use crate::browser::{self, Shortcut, keeper::Keeper};
use crate::parts::{button, choice};
use crate::state::{Act, App, DraftId, Room, Sheet};
use crate::words;

/// The state as Yew keeps it.
#[derive(Clone, PartialEq)]
pub struct State(Rc<App>);

impl Default for State {
    fn default() -> Self {
        let last = browser::last_sheet();
        let sheet = SHEETS
            .iter()
            .find(|(sheet, _)| last.as_deref() == Some(words::sheet(*sheet)))
            .map_or_else(Sheet::default, |(sheet, _)| *sheet);
        State(Rc::new(App::begun(
            browser::light(),
            browser::device::decimals(),
            browser::last_piece(),
            browser::unfinished(),
            sheet,
        )))
    }
}

impl Reducible for State {
    type Action = Act;

    fn reduce(self: Rc<Self>, act: Act) -> Rc<Self> {
        Rc::new(State(Rc::new(self.0.update(act))))
    }
}

/// What the screens send when something was done.
pub type Send = Callback<Act>;

/// Says what was done if an event means anything.
fn say_if<E: 'static>(send: &Send, act: impl Fn(E) -> Option<Act> + 'static) -> Callback<E> {
    let send = send.clone();
    Callback::from(move |event| {
        if let Some(act) = act(event) {
            send.emit(act);
        }
    })
}

/// How prices are written, given in hundredths of the currency of the workshop.
fn money(app: &App) -> impl Fn(u64) -> String {
    let currency = app.workshop.settings.currency;
    move |hundredths| browser::device::money(hundredths, currency)
}

/// The takeoff of the open piece, or what does not fit about its measurements.
pub type Result = Rc<std::result::Result<Rc<Takeoff>, Vec<Problem>>>;

/// Which cans to buy of a material, or why that cannot be said.
pub type Bought = std::result::Result<Buy, ChoiceError>;

/// What most screens are given.
#[derive(Clone)]
pub struct Shown {
    /// The state of the page.
    pub app: Rc<App>,
    /// The open piece.
    pub piece: Rc<Piece>,
    /// Its takeoff.
    pub result: Option<Result>,
    /// Which cans to buy of each of its materials, in their order.
    pub cans: Rc<Vec<Bought>>,
    /// Where to say what was done.
    pub send: Send,
    /// The piece of which the answers tell, if they wait for a text that is not whole yet.
    pub waiting: Option<Rc<Piece>>,
}

impl Shown {
    /// What the answers tell: as long as a text is not whole, the last that they told.
    pub fn told(&self) -> Shown {
        Shown {
            piece: self.waiting.clone().unwrap_or_else(|| self.piece.clone()),
            ..self.clone()
        }
    }

    /// The words for the classes of what waits.
    pub fn waits(&self) -> Option<&'static str> {
        self.waiting.is_some().then_some("waiting")
    }

    /// The takeoff of the open piece, if its measurements fit.
    pub fn takeoff(&self) -> Option<&Takeoff> {
        Some(self.result.as_deref()?.as_ref().ok()?)
    }

    /// Its materials, each with the cans to buy of it.
    pub fn lines(&self) -> impl Iterator<Item = (&MaterialLine, &Bought)> {
        let lines = self.takeoff().into_iter().flat_map(|takeoff| &takeoff.materials);
        lines.zip(&*self.cans)
    }

    /// What stands against the measurements.
    pub fn problems(&self) -> &[Problem] {
        match self.result.as_deref() {
            Some(Err(problems)) => problems,
            _ => &[],
        }
    }

    /// Sends a change of the open piece, if an event means one.
    pub fn change<E: 'static>(&self, edit: impl Fn(E) -> Option<PieceEdit> + 'static) -> Callback<E> {
        say_if(&self.send, move |event| edit(event).map(Act::Change))
    }
}

/// The whole page: it keeps the state and what follows from it, and the screens show that.
#[component]
pub fn Page() -> Html {
    let state = use_reducer(State::default);
    let send: Send = {
        let dispatcher = state.dispatcher();
        use_callback((), move |act, ()| dispatcher.dispatch(act))
    };
    let keeper = use_memo((), |()| Keeper::start(send.clone()));
    use_effect_with((), {
        let send = send.clone();
        |()| browser::standing::start_telling(send)
    });
    let app = state.0.clone();
    let is_there = app.is_there();
    links::use_links(&send, !is_there);
    use_effect_with(app.workshop.clone(), {
        let keeper = keeper.clone();
        move |workshop| keeper.keep(workshop)
    });
    let opens = app.piece().map(|piece| piece.id.clone());
    let opened = use_mut_ref(|| None);
    if let Some(id) = opens.as_ref().filter(|_| *opened.borrow() != opens) {
        browser::mark_opening(id);
        *opened.borrow_mut() = opens.clone();
    }
    use_effect_with(opens, |opens| {
        if opens.is_some() {
            browser::unmark_opening_soon();
        }
    });
    // In the rooms nothing of the open piece is shown.
    let piece = app.piece().filter(|_| app.room == Room::Board).cloned();
    let held = use_answer(&app, piece.as_ref());
    let typed = app.typing.clone().map(|id| (app.text_of(&id), id));
    use_effect_with(typed, {
        let send = send.clone();
        move |typed| {
            let pause = typed
                .is_some()
                .then(|| Timeout::new(PAUSE, move || send.emit(Act::Pause)));
            move || drop(pause)
        }
    });
    use_effect_with(app.sheet, |sheet| browser::keep_last_sheet(words::sheet(*sheet)));
    // A piece that is opened is seen from its head, wherever the page stood before.
    use_effect_with((app.open.clone(), is_there), |(open, _)| {
        browser::keep_last_piece(open.as_ref());
        browser::bring_piece_into_sight();
        if let Some(window) = web_sys::window() {
            window.scroll_to_with_x_and_y(0.0, 0.0);
        }
    });
    // So is a sheet or a room.
    use_effect_with((app.sheet, app.room), |_| browser::to_head());
    let drawn = drawing::use_drawn(held.piece.as_ref(), held.result.as_ref(), app.look);
    // Beside the keys the field of the list stays in sight, wherever the tape was taken out.
    use_effect_with(app.field, |field| {
        if let Some(field) = field {
            browser::bring_into_sight(&words::field_element(*field));
        }
    });
    use_effect_with((app.field, app.fresh), |(_, fresh)| {
        if *fresh {
            browser::mark_all_in(tape_focus::READING);
        }
    });
    use_effect_with(app.light, |light| browser::shine(*light));
    let shortcuts = send.clone();
    use_effect_with((), move |()| {
        browser::on_shortcut(move |shortcut| {
            shortcuts.emit(match shortcut {
                Shortcut::Undo => Act::Undo,
                Shortcut::Redo => Act::Redo,
            })
        })
    });
    let printing = send.clone();
    use_effect_with((), move |()| {
        browser::on_print(move |printing_now| printing.emit(Act::Printing(printing_now)))
    });
    if !is_there {
        return unread::instead(&app, &send, &keeper);
    }
    let room = match (room(&app, &send), piece) {
        (Some(room), _) => html! {
            <main class="room">
                { messages::messages(&app, &send) }
                { ways(&app, &send) }
                { room }
            </main>
        },
        (None, Some(piece)) => {
            let shown = Shown {
                app: app.clone(),
                piece,
                result: held.result.filter(|_| !app.is_blocked(DraftId::is_of_amounts)),
                cans: held.cans,
                send: send.clone(),
                waiting: held.piece.filter(|_| held.waits),
            };
            board(&shown, &drawn)
        }
        (None, None) => html! {
            <main class="room">
                { messages::messages(&app, &send) }
                { start::start(&send) }
            </main>
        },
    };
    html! {
        <div class="page" onclick={turned_away::<MouseEvent>(&app, &send)}
            onfocusin={turned_away::<FocusEvent>(&app, &send)}>
            { head::head(&app, &send) }
            { unread::notice(&app, &send, &keeper) }
            { room }
        </div>
    }
}

/// So long nobody types before something is said against a text, in milliseconds.
const PAUSE: u32 = 1500;

/// A piece and what is told of it.
#[derive(Clone, Default)]
struct Answer {
    piece: Option<Rc<Piece>>,
    result: Option<Result>,
    cans: Rc<Vec<Bought>>,
    /// Whether it is the last that could be told, while somebody types what cannot be read or does not fit yet.
    waits: bool,
}

/// What is told of the open piece. Of a size of 26 the first figure alone fits nowhere: as long as somebody is typing, what
/// was told last stays.
#[hook]
fn use_answer(app: &App, piece: Option<&Rc<Piece>>) -> Answer {
    let analysis = app.analysis();
    let result = piece.map(|piece| analysis.takeoff(piece));
    let last = use_mut_ref(Answer::default);
    let mut last = last.borrow_mut();
    let is_good = result.as_ref().is_some_and(|result| result.is_ok());
    let is_of_it = last.piece.as_ref().map(|of| &of.id) == piece.map(|of| &of.id);
    if is_of_it && app.typing.is_some() && (app.is_half_typed() || !is_good) {
        return Answer {
            waits: true,
            ..last.clone()
        };
    }
    let now = Answer {
        piece: piece.cloned(),
        result,
        cans: piece.map(|piece| analysis.cans(piece)).unwrap_or_default(),
        waits: false,
    };
    if is_good {
        *last = now.clone();
    }
    now
}

/// The room that is open besides the board; of an empty workshop some have nothing to show.
fn room(app: &Rc<App>, send: &Send) -> Option<Html> {
    let is_empty = app.workshop.pieces.is_empty();
    let props = || (app.clone(), send.clone());
    Some(match app.room {
        Room::Board => return None,
        Room::Together if is_empty => return None,
        Room::Together => {
            let (app, send) = props();
            html! { <together::Together {app} {send} /> }
        }
        Room::Days => {
            let (app, send) = props();
            html! { <days::DaysRoom {app} {send} /> }
        }
        Room::Mixing => mixing::bench(app, send),
        Room::Shelf => {
            let (app, send) = props();
            html! { <shelf::Shelf {app} {send} /> }
        }
        Room::Prices => prices::prices(app, send),
        Room::Settings => settings::settings(app, send),
    })
}

/// The rooms besides the board, with the word for each. What is of no piece lies there.
const ROOMS: [(Room, &str, &str); 6] = [
    (Room::Together, "to-buy", "To buy"),
    (Room::Days, "days", "Days"),
    (Room::Mixing, "mixing", "Mixing bench"),
    (Room::Shelf, "shelf", "Shelf"),
    (Room::Prices, "prices", "Price notes"),
    (Room::Settings, "settings", "Settings, files"),
];

/// The way back from another room, and to the others.
fn ways(app: &App, send: &Send) -> Html {
    let back = send.reform(|_: MouseEvent| Act::Room(Room::Board));
    let word = match app.piece() {
        Some(_) => "Back to the piece",
        None => "Back to the start",
    };
    let rooms = match app.workshop.pieces.is_empty() {
        true => &ROOMS[1..],
        false => &ROOMS[..],
    };
    html! {
        <nav class="rooms" aria-label="Rooms">
            { button("to-board", word, back) }
            <div class="sheets">{ choice("Rooms", "room", rooms, app.room, send.reform(Act::Room)) }</div>
        </nav>
    }
}

/// What else is touched or gone into than a measurement, its keys or its drawing puts the tape away. A touch does so when
/// it is over: what is under the finger must not move before. As long as the cursor is in a measurement the tape stays
/// out, wherever the touch that brought it there came to an end.
fn turned_away<E: AsRef<web_sys::Event> + 'static>(app: &App, send: &Send) -> Callback<E> {
    let is_out = app.field.is_some();
    say_if(send, move |event: E| {
        let event: &web_sys::Event = event.as_ref();
        let into: web_sys::Element = event.target()?.dyn_into().ok()?;
        let is_in = |element: &web_sys::Element, what: &str| element.closest(what).ok().flatten().is_some();
        let cursor = web_sys::window().and_then(|w| w.document()?.active_element());
        let stays = is_in(&into, "[data-tape], #drawing, #undo, #redo")
            || cursor.is_some_and(|cursor| is_in(&cursor, "[data-tape]"));
        let is_by_touch = event.type_() == "focusin" && !into.matches(":focus-visible").unwrap_or(false);
        (is_out && !stays && !is_by_touch).then_some(Act::PutTapeAway)
    })
}

/// A piece on the board: its drawing, the questions under it, the answers beside it, and the tape keys when they are asked
/// for.
fn board(shown: &Shown, drawn: &drawing::Drawn) -> Html {
    let Shown { app, send, .. } = shown;
    let sheet = words::sheet(app.sheet);
    let word = SHEETS.iter().find(|(other, _)| *other == app.sheet);
    let word = word.map_or("", |(_, word)| *word);
    let taking = app.field.is_some().then_some("taking");
    let told = shown.told();
    // Where nothing is measured or coloured, the drawing would only be in the way.
    let is_drawn = shown.takeoff().is_none()
        || matches!(
            app.sheet,
            Sheet::Measure | Sheet::Parts | Sheet::Surfaces | Sheet::Finish | Sheet::Card
        );
    html! {
        <>
            <main class={classes!("board", sheet, taking)}>
                { messages::messages(app, send) }
                <div class="sheets">{ sheets(app, send) }</div>
                if is_drawn { { drawing::board(shown, drawn) } }
                <div class="questions">
                    <h2 class="unseen">{ word }</h2>
                    { match app.sheet {
                        Sheet::Measure => measure::measure(shown),
                        Sheet::Parts => alter::alter(shown),
                        Sheet::Surfaces => surfaces::surfaces(shown),
                        Sheet::Finish => finish::finish(shown),
                        Sheet::Prepare => prepare::prepare(shown),
                        Sheet::Tools => compare::compare(shown),
                        Sheet::Money => money::sheet(shown),
                        Sheet::Card => out::out(shown),
                    } }
                </div>
                // It scrolls, and while one measures nothing in it takes the focus.
                <aside class={classes!("answers", shown.waits())} id="answers" aria-label="Amounts" tabindex="0"
                    aria-busy={shown.waiting.is_some().to_string()}>
                    { amounts::amounts(&told) }
                </aside>
                <spoken::Spoken text={amounts::in_words(shown)} />
            </main>
            if app.printing && app.sheet != Sheet::Card { { card::card(shown) } }
            <div class="foot">
                { amounts::in_short(&told) }
                { tape_keys::tape_keys(shown) }
            </div>
        </>
    }
}

/// The sheets in the order of the work, with the word for each.
const SHEETS: [(Sheet, &str); 8] = [
    (Sheet::Measure, "Measure"),
    (Sheet::Parts, "Parts"),
    (Sheet::Surfaces, "Surfaces"),
    (Sheet::Finish, "Finish"),
    (Sheet::Prepare, "Prepare"),
    (Sheet::Tools, "Tools"),
    (Sheet::Money, "Money"),
    (Sheet::Card, "Job card"),
];

fn sheets(app: &App, send: &Send) -> Html {
    let options = SHEETS.map(|(sheet, word)| (sheet, words::sheet(sheet), word));
    choice("Questions", "sheet", &options, app.sheet, send.reform(Act::Sheet))
}
