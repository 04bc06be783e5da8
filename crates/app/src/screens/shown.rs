//! The data that screens display, and the callback for their actions.

use crate::browser;
use crate::parts::fold;
use crate::state::{Action, App};
use coatings::can::ChoiceError;
use geometry::Problem;
use std::rc::Rc;
use workshop::money::Account;
use workshop::{Buy, MaterialLine, Piece, PieceEdit, Takeoff};
use yew::prelude::*;

/// The callback for actions of the screens.
pub type Send = Callback<Action>;

/// Returns a callback that sends an action if `act` returns one for the event.
pub(super) fn say_if<E: 'static>(send: &Send, act: impl Fn(E) -> Option<Action> + 'static) -> Callback<E> {
    let send = send.clone();
    Callback::from(move |event| {
        if let Some(act) = act(event) {
            send.emit(act);
        }
    })
}

/// Returns a function that formats prices in hundredths of the workshop's currency.
pub(super) fn money(app: &App) -> impl Fn(u64) -> String {
    let currency = app.workshop.settings.currency;
    move |hundredths| browser::device::money(hundredths, currency)
}

/// Returns a function that formats prices of an account, which shows guesses in their own currency.
pub(super) fn money_of(account: &Account) -> impl Fn(u64) -> String + use<> {
    let currency = account.currency;
    move |hundredths| browser::device::money(hundredths, currency)
}

/// The takeoff of the open piece, or the problems with its measurements.
pub type Result = Rc<std::result::Result<Rc<Takeoff>, Vec<Problem>>>;

/// The cans to buy of a material, or why that is unknown.
pub type Bought = std::result::Result<Buy, ChoiceError>;

/// The data for most screens.
#[derive(Clone)]
pub struct Shown {
    /// The state of the page.
    pub app: Rc<App>,
    /// The open piece.
    pub piece: Rc<Piece>,
    /// Its takeoff.
    pub result: Option<Result>,
    /// The cans to buy for each of its materials, in order.
    pub cans: Rc<Vec<Bought>>,
    /// The callback for actions.
    pub send: Send,
    /// The piece that the results belong to, if they are waiting for a complete text.
    pub waiting: Option<Rc<Piece>>,
}

impl Shown {
    /// Returns the data for the results. While a text is incomplete, these are the last valid results.
    pub fn told(&self) -> Shown {
        Shown {
            piece: self.waiting.clone().unwrap_or_else(|| self.piece.clone()),
            ..self.clone()
        }
    }

    /// Returns the CSS class for results that are waiting.
    pub fn waits(&self) -> Option<&'static str> {
        self.waiting.is_some().then_some("waiting")
    }

    /// Returns the takeoff of the open piece, if its measurements fit.
    pub fn takeoff(&self) -> Option<&Takeoff> {
        Some(self.result.as_deref()?.as_ref().ok()?)
    }

    /// Returns its materials, each with the cans to buy.
    pub fn lines(&self) -> impl Iterator<Item = (&MaterialLine, &Bought)> {
        let lines = self.takeoff().into_iter().flat_map(|takeoff| &takeoff.materials);
        lines.zip(&*self.cans)
    }

    /// Returns the problems with the measurements.
    pub fn problems(&self) -> &[Problem] {
        match self.result.as_deref() {
            Some(Err(problems)) => problems,
            _ => &[],
        }
    }

    /// Returns a callback that changes the open piece if `edit` returns an edit for the event.
    pub fn change<E: 'static>(&self, edit: impl Fn(E) -> Option<PieceEdit> + 'static) -> Callback<E> {
        say_if(&self.send, move |event| edit(event).map(Action::Change))
    }
}

/// Shows a part of a screen that opens and closes, under a title.
pub(super) fn folded(shown: &Shown, name: &str, title: &str, content: &dyn Fn() -> Html) -> Html {
    let is_open = shown.app.unfolded.contains(name);
    fold(
        name,
        (title.into(), String::new()),
        is_open,
        shown.send.reform(Action::Fold),
        content,
    )
}

/// The properties of a screen of the whole workshop.
#[derive(Properties)]
pub struct OfApp {
    /// The state.
    pub app: Rc<App>,
    /// Sends actions.
    pub send: Send,
}

/// To compare by content would compare the whole workshop.
impl PartialEq for OfApp {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.app, &other.app) && self.send == other.send
    }
}
