//! The strip at the bottom: the area to coat, and each coating with its amount and whether there is enough.
//!
//! Each gauge is as long as one or more cans of the usual size. A bar shows the likely amount, hatching goes on to the most, and
//! a tick marks what is on hand.

use coatings::{Stage, Verdict};
use units::{System, Volume, show_area, show_volume};
use workshop::book::InBasket;
use workshop::shelf::OnHand;
use workshop::{Colour, MaterialLine, Takeoff, basket_key};
use yew::prelude::*;

use super::{Bought, Shown, refused};
use crate::browser::focus_soon;
use crate::state::{Action, DraftId, Screen};
use crate::words;

/// The width and height of a rule, in drawing units.
const RULE: [f64; 2] = [260.0, 16.0];

/// Shows the strip. It opens the amounts in full.
pub fn strip(shown: &Shown) -> Html {
    let is_open = shown.app.screen == Screen::Amounts;
    // The focus goes along, or it would stay at the end of the page.
    let (next, focused) = match is_open {
        true => (Action::Back, "strip"),
        false => (Action::Screen(Screen::Amounts), "close-amounts"),
    };
    let send = shown.send.clone();
    let toggle = Callback::from(move |event: MouseEvent| {
        send.emit(next.clone());
        // A touch on one amount goes on to its details.
        let touched = event.target_dyn_into::<web_sys::Element>();
        let cell = touched.and_then(|element| element.closest("[data-of]").ok()?);
        let of = cell
            .filter(|_| !is_open)
            .and_then(|cell| cell.get_attribute("data-of"));
        focus_soon(of.unwrap_or_else(|| focused.into()));
    });
    let content = match shown.takeoff() {
        Some(takeoff) if !shown.app.is_blocked(DraftId::is_of_amounts) => cells(shown, takeoff),
        _ => {
            html! { <span class="cell none"><span class="v">{ words::no_answer(shown.problems().is_empty()) }</span></span> }
        }
    };
    html! {
        <footer class="strip">
            <button type="button" id="strip" class={classes!("cells", shown.waits())} aria-expanded={is_open.to_string()}
                aria-busy={shown.waiting.is_some().to_string()} onclick={toggle}>
                <span class="unseen">{ "Amounts in full: " }</span>
                { content }
            </button>
            { refused::lines(&shown.app, DraftId::is_of_amounts) }
        </footer>
    }
}

fn cells(shown: &Shown, takeoff: &Takeoff) -> Html {
    let system = shown.app.workshop.units;
    let (figure, unit) = show_area(takeoff.painted.value, system);
    let coatings = shown
        .lines()
        .filter(|(line, _)| line.need.material.stage != Stage::Clean);
    html! {
        <>
            <svg class="unseen" aria-hidden="true"><defs>
                <pattern id="range" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <rect class="hatch" width="1.4" height="5" />
                </pattern>
            </defs></svg>
            <span class="cell area">
                <svg class="gauge" viewBox={view_box()} preserveAspectRatio="none" aria-hidden="true">{ base(RULE[0]) }</svg>
                <span class="k">{ "Area" }<span class="long">{ " to coat" }</span></span>
                <span class="v" id="painted-area">{ words::number(&figure) }{ " " }<i>{ unit }</i></span>
            </span>
            { for coatings.map(|(line, buy)| cell(shown, takeoff, line, buy)) }
        </>
    }
}

fn cell(shown: &Shown, takeoff: &Takeoff, line: &MaterialLine, buy: &Bought) -> Html {
    let system = shown.app.workshop.units;
    let key = basket_key(&line.need.material.key, line.need.colour);
    let is_in_cart = shown.app.workshop.books.has::<InBasket>(&key);
    let (figure, unit) = show_volume(line.need.likely(), system);
    let verdict = line.on_hand.as_ref().map(|hand| hand.enough.verdict);
    let is_enough = verdict == Some(Verdict::Enough);
    let data_verdict = verdict.map(|verdict| match verdict {
        Verdict::Enough => "enough",
        Verdict::Tight => "tight",
        Verdict::Short => "short",
    });
    let class = classes!("cell", (!is_enough).then_some("buy"));
    html! {
        <span {class} key={line.id.clone()} data-of={format!("of-{}", line.id)}>
            { gauge(line, system) }
            <span class="k">{ words::short_name(takeoff, line) }</span>
            <span class="v" id={format!("amount-{}", line.id)}>{ words::number(&figure) }{ " " }<i>{ unit }</i></span>
            <span class="say" id={format!("verdict-{}", line.id)} data-verdict={data_verdict}>{ match (is_enough, is_in_cart) {
                (true, _) => "Enough".into(),
                (false, true) => "In the cart".into(),
                (false, false) => words::short_cans(buy),
            } }</span>
        </span>
    }
}

fn view_box() -> String {
    format!("0 0 {} {}", RULE[0], RULE[1])
}

fn base(to: f64) -> Html {
    html! { <path class="base" d={format!("M0 9H{to}")} /> }
}

/// Draws a rule as long as one usual can, or as all the cans that the most takes.
fn gauge(line: &MaterialLine, system: System) -> Html {
    // The usual can of each system.
    let can = coatings::can(match system {
        System::UsCustomary => "us-quart",
        System::Metric => "metric-1-l",
    });
    let held: Volume = line
        .on_hand
        .iter()
        .flat_map(OnHand::contents)
        .map(|of| of.likely())
        .sum();
    let most = line.need.high().max(held);
    let can = can.map_or(most, |can| can.volume());
    let cans = (most / can).ceil().max(1.0);
    let at = |volume: Volume| (volume / can / cans).min(1.0) * RULE[0];
    let (likely, high) = (at(line.need.likely()), at(line.need.high()));
    let fill = line.need.colour.map(|colour| Colour(colour).write());
    let fill = fill.unwrap_or_else(|| fill_of(line.need.material.stage).into());
    let ticks = (1..cans as u32).map(|n| {
        let x = RULE[0] * f64::from(n) / cans;
        html! { <path class="base" d={format!("M{x:.1} 5V13")} /> }
    });
    html! {
        <svg class="gauge" viewBox={view_box()} preserveAspectRatio="none" aria-hidden="true">
            { base(RULE[0]) }
            { for ticks }
            <rect class="fill" x="0.5" y="3" width={format!("{likely:.1}")} height="9" {fill} />
            <rect x={format!("{likely:.1}")} y="3" width={format!("{:.1}", (high - likely).max(0.0))} height="9" fill="url(#range)" />
            if line.on_hand.is_some() { <path class="can" d={format!("M{:.1} 1V16", at(held))} /> }
        </svg>
    }
}

/// Returns the fill for a material without a color of its own.
pub fn fill_of(stage: Stage) -> &'static str {
    match stage {
        Stage::Primer => "var(--primer)",
        _ => "var(--clear)",
    }
}
