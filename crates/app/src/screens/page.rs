//! The whole page. It holds the state, and the screens display it.

use super::Send;
use super::Shown;
use super::answer::{Answer, use_answer};
use super::drawing;
use super::head;
use super::job;
use super::links;
use super::messages;
use super::room;
use super::spoken;
use super::start;
use super::strip;
use super::tape_focus;
use super::tape_keys;
use super::unread;
use super::{amounts, card};
use crate::browser::{self, Shortcut, saver::Saver};
use crate::state::{Action, App, DraftId, Screen};
use crate::words;
use gloo::timers::callback::Timeout;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use yew::prelude::*;

/// The state in the form that Yew needs.
#[derive(Clone)]
pub struct State(Rc<App>);

impl Default for State {
    fn default() -> Self {
        let last = browser::last_screen().and_then(|key| Screen::by_key(&key));
        State(Rc::new(App::begun(
            browser::light(),
            browser::device::decimals(),
            browser::last_piece(),
            browser::unfinished(),
            last.unwrap_or_default(),
        )))
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, act: Action) -> Rc<Self> {
        Rc::new(State(Rc::new(self.0.update(act))))
    }
}

/// The whole page. It holds the state and everything derived from it, and the screens display them.
#[component]
pub fn Page() -> Html {
    let state = use_reducer(State::default);
    let send: Send = {
        let dispatcher = state.dispatcher();
        use_callback((), move |act, ()| dispatcher.dispatch(act))
    };
    let saver = use_memo((), |()| Saver::start(send.clone()));
    use_effect_with((), {
        let send = send.clone();
        |()| browser::device_status::start_telling(send)
    });
    let app = state.0.clone();
    let is_there = app.is_there();
    links::use_links(&send, !is_there);
    use_effect_with(app.workshop.clone(), {
        let saver = saver.clone();
        move |workshop| saver.keep(workshop)
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
    let piece = app.piece().cloned();
    let held = use_answer(&app, piece.as_ref());
    let typed = app.typing.clone().map(|id| (app.text_of(&id), id));
    use_effect_with(typed, {
        let send = send.clone();
        move |typed| {
            let pause = typed
                .is_some()
                .then(|| Timeout::new(PAUSE, move || send.emit(Action::Pause)));
            move || drop(pause)
        }
    });
    use_effect_with(app.screen, |screen| browser::keep_last_screen(screen.key()));
    // When a piece or another screen is opened, scroll to its top.
    use_effect_with((app.open.clone(), app.screen, is_there), |(open, ..)| {
        browser::keep_last_piece(open.as_ref());
        browser::to_head();
    });
    let room_for = drawing::use_room(app.field.is_some());
    let drawn = drawing::use_drawn(
        held.piece.as_ref(),
        held.result.as_ref(),
        app.look,
        app.rows_of(),
        room_for,
    );
    // While the tape keypad is open, keep the field visible in the list.
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
                Shortcut::Undo => Action::Undo,
                Shortcut::Redo => Action::Redo,
                Shortcut::Close => Action::Escape,
            })
        })
    });
    let printing = send.clone();
    use_effect_with((), move |()| {
        browser::on_print(move |printing_now| printing.emit(Action::Printing(printing_now)))
    });
    if !is_there {
        return unread::instead(&app, &send, &saver);
    }
    whole(
        &app,
        &send,
        &saver,
        piece.map(|piece| shown(&app, &send, piece, held)).as_ref(),
        &drawn,
    )
}

/// Returns the data for the screens of the open piece.
fn shown(app: &Rc<App>, send: &Send, piece: Rc<workshop::Piece>, held: Answer) -> Shown {
    Shown {
        app: app.clone(),
        piece,
        result: held.result.filter(|_| !app.is_blocked(DraftId::is_of_amounts)),
        cans: held.cans,
        send: send.clone(),
        waiting: held.piece.filter(|_| held.waits),
    }
}

/// Shows the header, the stages, the current screen, the strip, and the tape keypad during a measurement.
fn whole(app: &Rc<App>, send: &Send, saver: &Saver, shown: Option<&Shown>, drawn: &drawing::Drawn) -> Html {
    let told = shown.map(Shown::told);
    let is_start = app.workshop.pieces.is_empty() && (app.screen.is_of_piece() || is_list(app.screen));
    let screen = if is_start { "start" } else { app.screen.key() };
    let stage = app
        .screen
        .stage()
        .or_else(|| app.back.stage())
        .filter(|_| !is_start);
    let is_taking = app.field.is_some() && shown.is_some();
    html! {
        <div class={classes!("page", is_taking.then_some("taking"))} data-screen={screen} onclick={turned_away::<MouseEvent>(app, send)}
            onfocusin={turned_away::<FocusEvent>(app, send)}>
            { head::head(app, send) }
            { job::job(stage, shown, send) }
            <div class="status">
                { head::status(app) }
                { unread::notice(app, send, saver) }
            </div>
            <main id="main">
                { messages::messages(app, send) }
                if matches!(app.screen, Screen::Measure | Screen::Pieces) { { head::invented(app, send) } }
                if is_start {
                    { start::start(app, send) }
                } else {
                    { room::room(app, send, shown, drawn) }
                }
            </main>
            if let Some(told) = &told {
                <spoken::Spoken text={amounts::in_words(told)} />
                { strip::strip(told) }
            }
            // Always emit one node, or the fields in the list would be rebuilt and lose the focus.
            { shown.filter(|_| is_taking).map(tape_keys::tape_keys).unwrap_or_default() }
            if let Some(shown) = shown.filter(|_| app.printing && prints_card(app.screen)) { { card::card(shown) } }
        </div>
    }
}

/// Returns true for lists of pieces, which have nothing to show in an empty workshop.
fn is_list(screen: Screen) -> bool {
    matches!(screen, Screen::Shop | Screen::Pieces)
}

/// Returns true for screens from which the job card is printed.
fn prints_card(screen: Screen) -> bool {
    screen.is_of_piece() && screen != Screen::Card
}

/// How long to wait after typing before showing an error, in milliseconds.
pub(super) const PAUSE: u32 = 1500;

/// Ends the measurement when anything other than a measurement, the keypad or the drawing is touched or
/// focused. A touch takes effect when it ends, so that nothing moves under the finger. While a measurement
/// has the focus, the measurement continues, wherever the touch ended.
pub(super) fn turned_away<E: AsRef<web_sys::Event> + 'static>(app: &App, send: &Send) -> Callback<E> {
    let is_out = app.field.is_some();
    super::say_if(send, move |event: E| {
        let event: &web_sys::Event = event.as_ref();
        let into: web_sys::Element = event.target()?.dyn_into().ok()?;
        let is_in = |element: &web_sys::Element, what: &str| element.closest(what).ok().flatten().is_some();
        let cursor = web_sys::window().and_then(|w| w.document()?.active_element());
        let stays = is_in(&into, "[data-tape], #drawing, #undo, #redo")
            || cursor.is_some_and(|cursor| is_in(&cursor, "[data-tape]"));
        let is_by_touch = event.type_() == "focusin" && !into.matches(":focus-visible").unwrap_or(false);
        (is_out && !stays && !is_by_touch).then_some(Action::PutTapeAway)
    })
}
