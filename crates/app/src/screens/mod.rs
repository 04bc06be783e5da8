//! The screens. [`Page`] holds the state and hands it down; the others only show it and say what was done.

mod alter;
mod amounts;
mod bench;
mod compare;
mod detail;
mod drawing;
mod finish;
mod head;
mod measure;
mod messages;
mod pad;
mod start;
mod surfaces;
mod tape;

use std::rc::Rc;

use geometry::{Edges, Problem};
use workshop::{Piece, PieceEdit, Takeoff, WayColumn, Workshop, edges, edges_by_zone, takeoff};
use yew::prelude::*;

use crate::browser::keeper::Keeper;
use crate::parts::choice;
use crate::state::{Act, App, Keeping, Sheet};

/// The state as Yew keeps it.
#[derive(Clone, PartialEq)]
pub struct State(Rc<App>);

impl Default for State {
    fn default() -> Self {
        State(Rc::new(App::default()))
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

/// The takeoff of the open piece, or what stands against it.
pub type Result = std::result::Result<Takeoff, Vec<Problem>>;

/// What most screens are given.
pub struct Shown {
    /// The state of the page.
    pub app: Rc<App>,
    /// The open piece.
    pub piece: Rc<Piece>,
    /// Its takeoff.
    pub result: Rc<Option<Result>>,
    /// Where to say what was done.
    pub send: Send,
}

impl Shown {
    /// The takeoff of the open piece, if its measurements fit.
    pub fn takeoff(&self) -> Option<&Takeoff> {
        self.result.as_ref().as_ref()?.as_ref().ok()
    }

    /// What stands against the measurements.
    pub fn problems(&self) -> &[Problem] {
        match self.result.as_ref() {
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
    let app = state.0.clone();
    use_effect_with(app.workshop.clone(), move |workshop| keeper.keep(workshop));
    let piece = app.piece().cloned();
    let of = (piece.clone(), app.workshop.materials.clone());
    let result = use_memo(of.clone(), |(piece, own)| Some(takeoff(piece.as_deref()?, own)));
    // A piece that is opened is seen from its head, wherever the page stood before.
    use_effect_with(app.open.clone(), |_| {
        if let Some(window) = web_sys::window() {
            window.scroll_to_with_x_and_y(0.0, 0.0);
        }
    });
    let drawn = drawing::use_drawn(piece.as_ref(), &result, app.look);
    // Edges take longer than areas and are shown on one sheet only.
    let measured = piece.clone().filter(|_| app.sheet == Sheet::Surfaces);
    let edges = use_memo(measured, |piece| edges(piece.as_deref()?).ok());
    // So do all the ways of doing it.
    let compared = (app.sheet == Sheet::Tools).then_some((of.0, of.1, app.workshop.units));
    let workshop = Rc::clone(&app.workshop);
    let ways = use_memo(compared, |of| {
        ways(&workshop, of.as_ref()?.0.as_deref()?, result.as_ref().as_ref()?)
    });
    match piece {
        _ if app.keeping == Keeping::Opening => {
            html! { <p class="opening">{ "Opening the workshop\u{2026} If it takes long, close its other tabs." }</p> }
        }
        Some(piece) => {
            let shown = Shown {
                app,
                piece,
                result,
                send,
            };
            bench(&shown, &drawn, *edges, ways.as_deref().unwrap_or_default())
        }
        None => html! {
            <div class="page">
                { head::head(&app, &send) }
                <main class="empty">
                    { messages::messages(&app, &send) }
                    { start::start(&app, &send) }
                </main>
            </div>
        },
    }
}

/// The piece done in each of the ways; nothing while its measurements do not fit.
fn ways(workshop: &Workshop, piece: &Piece, result: &Result) -> Option<Vec<WayColumn>> {
    let takeoff = result.as_ref().ok()?;
    Some(workshop::compare(
        workshop,
        piece,
        takeoff,
        &edges_by_zone(piece).ok()?,
    ))
}

/// The page with a piece on it.
fn bench(shown: &Shown, drawn: &drawing::Drawn, edges: Option<Edges>, ways: &[WayColumn]) -> Html {
    let Shown { app, send, .. } = shown;
    html! {
        <div class="page">
            { head::head(app, send) }
            { bench::pieces(app, send) }
            <main>
                { messages::messages(app, send) }
                { drawing::board(shown, drawn) }
                <div class="questions">
                    { sheets(app, send) }
                    { match app.sheet {
                        Sheet::Measure => measure::measure(shown),
                        Sheet::Parts => alter::alter(shown),
                        Sheet::Surfaces => surfaces::surfaces(shown, edges),
                        Sheet::Finish => finish::finish(shown),
                        Sheet::Tools => compare::compare(shown, ways),
                    } }
                </div>
                <aside class="answers" id="answers" aria-label="Amounts">
                    { amounts::amounts(shown) }
                </aside>
            </main>
            { amounts::in_short(shown) }
        </div>
    }
}

fn sheets(app: &App, send: &Send) -> Html {
    let options = [
        (Sheet::Measure, "measure", "Measure"),
        (Sheet::Parts, "parts", "Parts"),
        (Sheet::Surfaces, "surfaces", "Surfaces"),
        (Sheet::Finish, "finish", "Finish"),
        (Sheet::Tools, "tools", "Tools"),
    ];
    choice("Questions", "sheet", &options, app.sheet, send.reform(Act::Sheet))
}
