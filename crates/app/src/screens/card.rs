//! The job card: one page for the bench, to print and check off. It prints exactly as shown.

use super::Bought;
use workshop::art::{Art, art};
use workshop::out::{CardPart, CardStep, job_card};
use workshop::preparing::{Amount, Much, PrepareStep};
use workshop::{MaterialLine, Piece, Takeoff};
use yew::prelude::*;

use super::amounts::swatch;
use super::drawing::CardDrawings;
use super::{Shown, money, refused, work};
use crate::state::DraftId;
use crate::words;
use workshop::book::DoneStep;

/// Shows the job card of the open piece, or a hint if its measurements do not fit.
pub fn card(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Correct the sizes to see the job card." }</p> };
    };
    let card = job_card(&shown.piece, &shown.app.workshop.materials, takeoff);
    let system = shown.app.workshop.units;
    html! {
        <article class="job-card" aria-label="Job card">
            <header>
                <h2>{ &shown.piece.name }</h2>
                <p>{ about(shown, takeoff) }</p>
                <p class="by-hand">{ "Started" }<span></span>{ "Done" }<span></span></p>
            </header>
            { refused::lines(&shown.app, DraftId::is_of_amounts) }
            <CardDrawings app={shown.app.clone()} piece={shown.piece.clone()} result={shown.result.clone()} />
            <h3>{ "Materials" }</h3>
            <table>
                <thead><tr>
                    <th scope="col">{ "Material" }</th><th scope="col">{ "Likely" }</th>
                    <th scope="col">{ "Range" }</th><th scope="col">{ "Buy" }</th>
                </tr></thead>
                <tbody>{ for shown.lines().map(|(line, cans)| material(shown, line, cans)) }</tbody>
            </table>
            <h3>{ "Prep" }</h3>
            <section class="part"><ul>{ for work::steps(shown).iter().map(|of| preparing(shown, of)) }</ul></section>
            <h3>{ "Coats" }</h3>
            if !card.left_out.is_empty() { <p class="left-out">{ format!("Not painted: {}.", card.left_out.join("; ")) }</p> }
            { for card.parts.iter().map(|of| part(of, system)) }
            { laid_on(&shown.piece) }
            <h3>{ "Safety" }</h3>
            <ul class="cautions">{ for card.cautions.iter().map(|caution| html! { <li>{ caution.to_string() }</li> }) }</ul>
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

fn material(shown: &Shown, line: &MaterialLine, cans: &Bought) -> Html {
    let system = shown.app.workshop.units;
    html! {
        <tr>
            <th scope="row">{ line.need.colour.map(swatch) }{ &*line.need.material.name }</th>
            <td>{ words::volume(line.need.likely(), system) }</td>
            <td>{ words::range(&line.need, system) }</td>
            <td>
                { words::cans(cans, &money(&shown.app)) }
                { line.on_hand.as_ref().map(|hand| format!(". {}", words::on_hand(&hand.cans, &[], system))) }
            </td>
        </tr>
    }
}

fn part(part: &CardPart, system: units::System) -> Html {
    let zones: Vec<&str> = part.zones.iter().map(String::as_str).collect();
    let area = words::area(part.area, system);
    let colour = part.colour.map(|colour| format!(", {}", words::colour(colour)));
    html! {
        <section class="part">
            <h4>{ words::and(&zones) }<span class="with">{ format!(" {area}") }{ colour }</span></h4>
            <p class="before">{ part.before.join(" ") }</p>
            <ul>{ for part.steps.iter().enumerate().map(|(n, of)| step(of, n + 1 == part.steps.len())) }</ul>
        </section>
    }
}

/// Shows leaf, stencils, transfers and paper, each with a checkbox.
fn laid_on(piece: &Piece) -> Html {
    let all = art(piece);
    if all.is_empty() {
        return Html::default();
    }
    let line = |art: &Art| {
        let sheets = words::sheets(art).map(|sheets| format!(", {sheets}"));
        let place = Some(format!(", {}", art.place)).filter(|_| !art.place.is_empty());
        html! {
            <li>
                <span class="boxes"><span class="box"></span></span>
                <span><b>{ art.kind.label() }</b>{ place }<span class="with">{ sheets }</span></span>
            </li>
        }
    };
    html! {
        <section class="part">
            <h4>{ "Art" }</h4>
            <ul>{ for all.iter().map(line) }</ul>
        </section>
    }
}

/// Shows a preparation step with its supplies. The instructions are on the preparation tab.
fn preparing(shown: &Shown, step: &PrepareStep) -> Html {
    let system = shown.app.workshop.units;
    let is_done = shown.piece.books.has::<DoneStep>(&step.key);
    let amount = |of: &Amount| format!("{} {}", of.what, words::much(of.much, system));
    // Only supplies to fetch are listed. Areas and edges are on the preparation tab.
    let is_fetched =
        |of: &&Amount| of.good.is_some() || matches!(of.much, Much::Volume(..) | Much::Hours(..));
    let amounts = step.taken().iter();
    let amounts: Vec<String> = amounts.filter(is_fetched).map(amount).collect();
    html! {
        <li>
            <span class="boxes"><span class="box">{ if is_done { "\u{2713}" } else { "" } }</span></span>
            <span>
                <b>{ &step.title }</b>
                <span class="with">{ format!(" {}", amounts.join("; ")) }</span>
                { step.held.map(|held| format!(". {}", held.message())) }
            </span>
        </li>
    }
}

fn step(step: &CardStep, is_last: bool) -> Html {
    // The curing of the last coat is part of the curing step.
    let wait = match is_last {
        true => ".".to_owned(),
        false => format!(". Next coat after {}.", words::hours(step.recoat)),
    };
    let thinned = step.thinned.map(|share| format!(", thinned by {share}%"));
    html! {
        <li>
            <span class="boxes">{ for (1..=step.coats).map(|coat| html! {
                <span class="box">{ match (coat <= step.done, step.coats) {
                    (true, _) => "\u{2713}".to_owned(),
                    (false, 1) => String::new(),
                    (false, _) => coat.to_string(),
                } }</span>
            }) }</span>
            <span>
                <b>{ &step.material }</b>
                { format!(", {}, {}", words::coats(step.coats), step.with) }{ thinned }
                <span class="with">{ wait }</span>
            </span>
        </li>
    }
}
