//! The screen of a piece: its drawing, the tabs and the results.

use super::Send;
use super::Shown;
use super::alter;
use super::amounts;
use super::card;
use super::compare;
use super::drawing;
use super::finish;
use super::measure;
use super::messages;
use super::money;
use super::out;
use super::prepare;
use super::spoken;
use super::surfaces;
use super::tape_keys;
use crate::parts::choice;
use crate::state::{Action, App, Tab};
use crate::words;
use yew::prelude::*;

/// Shows the drawing, the tab under it, the results beside it, and the tape keypad during a measurement.
pub(super) fn board(shown: &Shown, drawn: &drawing::Drawn) -> Html {
    let Shown { app, send, .. } = shown;
    let sheet = words::sheet(app.tab);
    let word = SHEETS.iter().find(|(other, _)| *other == app.tab);
    let word = word.map_or("", |(_, word)| *word);
    let taking = app.field.is_some().then_some("taking");
    let told = shown.told();
    // Tabs without measurements or colors do not need the drawing.
    let is_drawn = shown.takeoff().is_none()
        || matches!(
            app.tab,
            Tab::Measure | Tab::Parts | Tab::Surfaces | Tab::Finish | Tab::Card
        );
    html! {
        <>
            <main class={classes!("board", sheet, taking)}>
                { messages::messages(app, send) }
                <div class="sheets">{ sheets(app, send) }</div>
                if is_drawn { { drawing::board(shown, drawn) } }
                <div class="questions">
                    <h2 class="unseen">{ word }</h2>
                    { match app.tab {
                        Tab::Measure => measure::measure(shown),
                        Tab::Parts => alter::alter(shown),
                        Tab::Surfaces => surfaces::surfaces(shown),
                        Tab::Finish => finish::finish(shown),
                        Tab::Prepare => prepare::prepare(shown),
                        Tab::Tools => compare::compare(shown),
                        Tab::Money => money::sheet(shown),
                        Tab::Card => out::out(shown),
                    } }
                </div>
                // It scrolls, and it takes no focus during a measurement.
                <aside class={classes!("answers", shown.waits())} id="answers" aria-label="Amounts" tabindex="0"
                    aria-busy={shown.waiting.is_some().to_string()}>
                    { amounts::amounts(&told) }
                </aside>
                <spoken::Spoken text={amounts::in_words(shown)} />
            </main>
            if app.printing && app.tab != Tab::Card { { card::card(shown) } }
            <div class="foot">
                { amounts::in_short(&told) }
                { tape_keys::tape_keys(shown) }
            </div>
        </>
    }
}

/// The tabs in the order of the work, with their words.
pub(super) const SHEETS: [(Tab, &str); 8] = [
    (Tab::Measure, "Measure"),
    (Tab::Parts, "Parts"),
    (Tab::Surfaces, "Surfaces"),
    (Tab::Finish, "Finish"),
    (Tab::Prepare, "Prepare"),
    (Tab::Tools, "Tools"),
    (Tab::Money, "Money"),
    (Tab::Card, "Job card"),
];

pub(super) fn sheets(app: &App, send: &Send) -> Html {
    let options = SHEETS.map(|(sheet, word)| (sheet, words::sheet(sheet), word));
    choice("Questions", "sheet", &options, app.tab, send.reform(Action::Tab))
}
