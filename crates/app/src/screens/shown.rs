//! What screens are given to show, and where they say what was done.

use crate::browser::{self};
use crate::state::{Action, App};
use coatings::can::ChoiceError;
use geometry::Problem;
use std::rc::Rc;
use workshop::{Buy, MaterialLine, Piece, PieceEdit, Takeoff};
use yew::prelude::*;

/// What the screens send when something was done.
pub type Send = Callback<Action>;

/// Says what was done if an event means anything.
pub(super) fn say_if<E: 'static>(send: &Send, act: impl Fn(E) -> Option<Action> + 'static) -> Callback<E> {
    let send = send.clone();
    Callback::from(move |event| {
        if let Some(act) = act(event) {
            send.emit(act);
        }
    })
}

/// How prices are written, given in hundredths of the currency of the workshop.
pub(super) fn money(app: &App) -> impl Fn(u64) -> String {
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
        say_if(&self.send, move |event| edit(event).map(Action::Change))
    }
}
