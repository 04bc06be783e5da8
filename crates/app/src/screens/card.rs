//! The job card: one page for the bench, to print and check off. It prints exactly as shown.

use coatings::{Stage, in_sentence};
use timetable::{Job, Step};
use workshop::art::{Art, art};
use workshop::book::{DoneStep, InBasket};
use workshop::goods::Good;
use workshop::out::{CardPart, CardStep, job_card};
use workshop::{Piece, PieceId, Shopping, Takeoff};
use yew::prelude::*;

use super::amounts::swatch;
use super::drawing::CardDrawings;
use super::{Shown, money, refused, work};
use crate::browser::now;
use crate::state::DraftId;
use crate::words;

/// The number of lines for notes.
const NOTES: usize = 3;

/// Shows the job card of the open piece, or a hint if its measurements do not fit.
pub fn card(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Correct the sizes to see the job card." }</p> };
    };
    let card = job_card(&shown.piece, &shown.app.workshop.materials, takeoff);
    html! {
        <article class="job-card" aria-label="Job card">
            <header>
                <h2>{ &shown.piece.name }</h2>
                <p class="by-hand">{ "Started" }<span></span>{ "Done" }<span></span></p>
                <p>{ about(shown, takeoff) }</p>
            </header>
            { refused::lines(&shown.app, DraftId::is_of_amounts) }
            <ul class="cautions" aria-label="Safety">{ for card.cautions.iter().map(|caution| html! { <li>{ caution.to_string() }</li> }) }</ul>
            <CardDrawings app={shown.app.clone()} piece={shown.piece.clone()} result={shown.result.clone()} />
            <h3>{ "Finish" }</h3>
            { for card.parts.iter().map(|of| part(shown, of)) }
            if !card.left_out.is_empty() { <p>{ format!("Not painted: {}.", card.left_out.join("; ")) }</p> }
            { laid_on(&shown.piece) }
            <h3>{ "Shopping list" }</h3>
            { shopping(shown) }
            <h3>{ "Steps" }</h3>
            { checklist(shown) }
            <h3>{ "Notes" }</h3>
            <div class="notes">{ for (0..NOTES).map(|_| html! { <span></span> }) }</div>
        </article>
    }
}

fn about(shown: &Shown, takeoff: &Takeoff) -> String {
    let area = words::area(takeoff.painted.value, shown.app.workshop.units);
    let count = match shown.piece.count {
        1 => String::new(),
        more => format!("Set of {more}. "),
    };
    let kind = shown.piece.kind.label();
    let sureness = words::sureness(&shown.piece, takeoff);
    format!("{kind}. {count}{area} to coat. {sureness}")
}

/// Shows groups with the same finish, and what goes on them.
fn part(shown: &Shown, part: &CardPart) -> Html {
    let system = shown.app.workshop.units;
    let zones: Vec<&str> = part.zones.iter().map(String::as_str).collect();
    let area = words::area(part.area, system);
    let own = &shown.app.workshop.materials;
    let is_named = |step: &CardStep| {
        step.stage == Stage::Paint && words::tint(own, &step.material, part.colour).is_empty()
    };
    let colour = part.colour.filter(|_| !part.steps.iter().any(is_named));
    let colour = colour.map(|colour| format!(", {}", words::colour_name(colour)));
    let coats: Vec<String> = part.steps.iter().map(coats).collect();
    html! {
        <p class="part">
            { part.colour.map(swatch) }<b>{ words::and(&zones) }</b>{ format!(", {area}") }{ colour }{ ": " }
            { for part.against.iter().map(|text| html! { <b>{ *text }{ " " }</b> }) }
            { coats.join("; ") }{ "." }
            <small>{ part.before.join(" ") }</small>
        </p>
    }
}

/// Says how a material goes on: `acrylic trim enamel, 2 coats, mini foam roller`.
fn coats(step: &CardStep) -> String {
    let thinned = step.thinned.map(|share| format!(", thinned by {share}%"));
    let coats = words::coats(step.coats);
    format!(
        "{}, {coats}, {}{}",
        in_sentence(&step.material),
        step.with,
        thinned.unwrap_or_default()
    )
}

/// Lists leaf, stencils, transfers and paper.
fn laid_on(piece: &Piece) -> Html {
    let line = |art: &Art| {
        let sheets = words::sheets(art).map(|sheets| format!(", {sheets}"));
        let place = Some(format!(", {}", art.place)).filter(|_| !art.place.is_empty());
        html! { <p class="part"><b>{ art.kind.label() }</b>{ place }{ sheets }</p> }
    };
    art(piece).iter().map(line).collect()
}

/// Shows the shopping list of this piece alone.
fn shopping(shown: &Shown) -> Html {
    let analysis = shown.app.analysis();
    let pieces = shown.app.workshop.pieces.iter().map(|piece| &piece.id);
    let others: Vec<PieceId> = pieces.filter(|id| **id != shown.piece.id).cloned().collect();
    let (lots, goods) = (analysis.shopping(&others), analysis.goods(&others));
    html! {
        <ul class="ticks narrow">
            { for lots.iter().map(|lot| material(shown, lot)) }
            { for goods.iter().filter(|good| good.to_buy().is_some()).map(|of| good(shown, of)) }
        </ul>
    }
}

fn material(shown: &Shown, lot: &Shopping) -> Html {
    let system = shown.app.workshop.units;
    let (cans, _) = words::cans_and_price(&lot.buy, &money(&shown.app));
    let is_bought = shown.app.workshop.books.has::<InBasket>(&lot.basket_key());
    // What is on the shelf already needs no check mark.
    let is_here = lot.buy.as_ref().is_ok_and(|buy| buy.cans.is_empty());
    let own = &shown.app.workshop.materials;
    let colour = words::tint(own, &lot.material.name, lot.colour);
    let cans = Some(format!("{cans} ")).filter(|_| !is_here);
    let likely = words::volume(lot.likely, system);
    ticked(
        is_bought || is_here,
        html! { <><b>{ cans }{ &*lot.material.name }{ colour }</b>{ format!(", {likely} likely. ") }{ words::on_hand(&lot.on_shelf, &[], system) }</> },
    )
}

fn good(shown: &Shown, good: &Good) -> Html {
    let (most, _) = words::good(good, shown.app.workshop.units).unwrap_or_default();
    let is_bought = shown.app.workshop.books.has::<InBasket>(&good.key);
    ticked(is_bought, html! { <><b>{ &good.name }</b>{ ", " }{ most }</> })
}

/// Shows the steps of the work, the same as on the Work screen.
fn checklist(shown: &Shown) -> Html {
    let days = shown.app.analysis().days(now(), shown.app.open.as_ref());
    let job = days.jobs.iter().find(|job| job.key == *shown.piece.id.0);
    let steps = |job: &Job| job.steps.iter().map(|of| step(shown, of)).collect::<Html>();
    html! { <ol class="ticks">{ job.map(steps) }</ol> }
}

fn step(shown: &Shown, step: &Step) -> Html {
    let prepared = work::steps(shown);
    let of = prepared.iter().find(|of| of.key == step.key);
    let is_done = shown.piece.books.has::<DoneStep>(&step.key);
    let takes = work::amount_of(shown, step, of);
    let time = words::minutes(step.minutes);
    let wait = Some(step.wait).filter(|wait| *wait > 0);
    let dries = wait.map_or_else(String::new, |wait| format!(". {}", words::dry_time(wait)));
    let takes = match takes.is_empty() {
        true => takes,
        false => format!(", {takes}"),
    };
    ticked(
        is_done,
        html! { <><b>{ &step.name }</b>{ format!("{takes}, {time}{dries}") }</> },
    )
}

/// Shows a line with a checkbox to check off by hand.
fn ticked(is_done: bool, text: Html) -> Html {
    html! { <li><span class="box">{ if is_done { "\u{2713}" } else { "" } }</span><span>{ text }</span></li> }
}
