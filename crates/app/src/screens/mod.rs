//! The screens. [`Page`] holds the state and hands it down; the others only show it and say what was done.

mod amounts;
mod bench;
mod compare;
mod drawing;
mod finish;
mod head;
mod measure;
mod messages;
mod start;
mod surfaces;

use std::rc::Rc;

use geometry::Problem;
use workshop::{Piece, Takeoff, takeoff};
use yew::prelude::*;

use crate::browser::keeper::Keeper;
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
#[derive(Properties, Clone, PartialEq)]
pub struct Shown {
    /// The state of the page.
    pub app: Rc<App>,
    /// The open piece.
    pub piece: Rc<Piece>,
    /// Its takeoff.
    pub result: Rc<Result>,
    /// Where to say what was done.
    pub send: Send,
}

/// The whole page.
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
    match app.piece().cloned() {
        _ if app.keeping == Keeping::Opening => {
            html! { <p class="opening">{ "Opening the workshop\u{2026}" }</p> }
        }
        Some(piece) => html! { <Bench {app} {piece} {send} /> },
        None => html! {
            <div class="page">
                <head::Head app={app.clone()} send={send.clone()} />
                <main class="empty">
                    <messages::Messages app={app.clone()} send={send.clone()} />
                    <start::Start {app} {send} />
                </main>
            </div>
        },
    }
}

#[derive(Properties, PartialEq)]
struct BenchProps {
    app: Rc<App>,
    piece: Rc<Piece>,
    send: Send,
}

/// The page with a piece on it.
#[component]
fn Bench(BenchProps { app, piece, send }: &BenchProps) -> Html {
    let result = use_memo(piece.clone(), |piece| takeoff(piece));
    let shown = Shown {
        app: app.clone(),
        piece: piece.clone(),
        result,
        send: send.clone(),
    };
    let (app, send) = (app.clone(), send.clone());
    html! {
        <div class="page">
            <head::Head app={app.clone()} send={send.clone()} />
            <bench::Pieces app={app.clone()} send={send.clone()} />
            <main>
                <messages::Messages app={app.clone()} send={send.clone()} />
                <drawing::Board ..shown.clone() />
                <div class="questions">
                    { sheets(&app, &send) }
                    { match app.sheet {
                        Sheet::Measure => html! { <measure::Measure ..shown.clone() /> },
                        Sheet::Finish => html! { <finish::Finish ..shown.clone() /> },
                        Sheet::Surfaces => html! { <surfaces::Surfaces ..shown.clone() /> },
                    } }
                </div>
                <aside class="answers" id="answers" aria-label="Amounts">
                    <amounts::Amounts ..shown.clone() />
                    <compare::Compare ..shown.clone() />
                </aside>
            </main>
            <amounts::InShort ..shown />
        </div>
    }
}

fn sheets(app: &App, send: &Send) -> Html {
    let options = vec![
        (Sheet::Measure, "measure", "Measure"),
        (Sheet::Finish, "finish", "Finish"),
        (Sheet::Surfaces, "surfaces", "Surfaces"),
    ];
    let on_choose = send.reform(Act::Sheet);
    html! { <crate::parts::Choice<Sheet> label="Questions" id="sheet" {options} value={app.sheet} {on_choose} /> }
}
