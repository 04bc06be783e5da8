//! The results: the amount of each material, its uncertainty, and whether the cans on hand are enough.

use coatings::Verdict;
use coatings::can::LEVELS;
use units::{Volume, show_area, show_volume};
use workshop::shelf::{OnHand, also_planned_for};
use workshop::{Colour, Edit, HaveEdit, MaterialLine, Takeoff};
use yew::prelude::*;

use super::{Bought, Shown, detail, money, refused, vessel};
use crate::parts::{fold, select};
use crate::state::{Action, DraftId};
use crate::words;

/// Shows the area and all amounts.
pub fn amounts(shown: &Shown) -> Html {
    match shown.takeoff() {
        Some(takeoff) => refused::answer(&shown.app, DraftId::is_of_amounts, || answer(shown, takeoff)),
        None => {
            let problems = shown.problems().iter();
            let sentences = problems.map(|problem| problem.message(|length| shown.app.length(length)));
            let refused = shown.app.refused(DraftId::is_of_amounts);
            let sentences = refused.iter().map(words::refused).chain(sentences);
            html! {
                <section class="against" role="alert">
                    <h2>{ words::no_answer(shown.problems().is_empty()) }</h2>
                    <ul>{ for sentences.map(|sentence| html! { <li>{ sentence }</li> }) }</ul>
                </section>
            }
        }
    }
}

fn answer(shown: &Shown, takeoff: &Takeoff) -> Html {
    let system = shown.app.workshop.units;
    let (figure, unit) = show_area(takeoff.painted.value, system);
    let count = shown.piece.count;
    let what = if count > 1 {
        format!("to finish, {count} pieces")
    } else {
        "to finish".into()
    };
    let largest = shown.lines().map(|(line, buy)| drawn_can(line, buy));
    let largest = largest.fold(Volume::ZERO, Volume::max);
    html! {
        <>
            <section class="area">
                <h2 class="unseen">{ "Area" }</h2>
                <p class="big"><span id="painted-area"><b>{ words::number(&figure) }</b>{ " " }<span>{ unit }</span></span>{ " " }
                    <span class="what">{ what }</span></p>
                <p class="range">{ words::sureness(&shown.piece, takeoff) }</p>
            </section>
            { vessel::hatching() }
            { for shown.lines().map(|(line, buy)| material(shown, takeoff, line, buy, largest)) }
        </>
    }
}

/// Returns the volume of the can to draw: the first one on hand, or else the largest one to buy.
fn drawn_can(line: &MaterialLine, buy: &Bought) -> Volume {
    let bought = buy.iter().flat_map(|buy| &buy.cans).map(|(can, _)| can.volume());
    let mut cans = line.on_hand.iter().flat_map(|hand| &hand.cans);
    let on_hand = cans.find_map(|stock| Some(stock.can?.volume()));
    on_hand
        .or_else(|| bought.reduce(Volume::max))
        .unwrap_or_else(|| line.need.high())
}

fn material(shown: &Shown, takeoff: &Takeoff, line: &MaterialLine, buy: &Bought, largest: Volume) -> Html {
    let system = shown.app.workshop.units;
    let id = &line.id;
    let (figure, unit) = show_volume(line.need.likely(), system);
    let name = format!("how-{id}");
    let is_open = shown.app.unfolded.contains(&name);
    let cans = words::cans(buy, &money(&shown.app));
    let is_tight = line
        .on_hand
        .as_ref()
        .is_some_and(|hand| hand.enough.verdict == Verdict::Tight);
    let word = if is_tight { "To be sure, buy" } else { "Buy" };
    let title = (format!("{word} {cans}"), "the working".to_owned());
    html! {
        <section class="amount" aria-labelledby={format!("name-{id}")}>
            { vessel::vessel(line, drawn_can(line, buy), largest) }
            <div class="told">
                <h2 id={format!("name-{id}")}>
                    { line.need.colour.map(swatch) }
                    { &*line.need.material.name }
                    <span class="with">{ format!("{}, {}{}", words::coats(line.coats), words::tools(&line.tools), words::by_own_jobs(line.jobs)) }</span>
                </h2>
                <div class="figures">
                    <p id={format!("amount-{id}")} class="big"><b>{ words::number(&figure) }</b>{ " " }<span>{ unit }</span></p>
                    <p id={format!("range-{id}")} class="range">{ words::range(&line.need, system) }</p>
                    if let Some(both) = words::by_label(line, system) {
                        <p id={format!("label-{id}")} class="range">{ both }</p>
                    }
                </div>
            </div>
            { can(shown, takeoff, line) }
            <p class="with">{ shelf(shown, line) }</p>
            { fold(&name, title, is_open, shown.send.reform(Action::Fold), &|| detail::detail(shown, takeoff, line, buy)) }
        </section>
    }
}

/// Describes the maker's cans of a material and the other pieces that use it. Empty if there are none.
fn shelf(shown: &Shown, line: &MaterialLine) -> String {
    let of = |hand: &OnHand| {
        let others = also_planned_for(&shown.app.workshop, &shown.piece.id, &line.need);
        // The lists above say all of one can that nobody else takes from.
        match (hand.cans.as_slice(), others.is_empty()) {
            ([only], true) if !only.is_weighed => String::new(),
            _ => words::on_hand(&hand.cans, &others, shown.app.workshop.units),
        }
    };
    line.on_hand.as_ref().map(of).unwrap_or_default()
}

/// Shows a color next to a material. It is decorative because the name identifies the material.
pub fn swatch(colour: coatings::Rgb) -> Html {
    html! {
        <svg class="swatch" viewBox="0 0 10 10" aria-hidden="true">
            <rect width="10" height="10" fill={Colour(colour).write()} />
        </svg>
    }
}

fn can(shown: &Shown, takeoff: &Takeoff, line: &MaterialLine) -> Html {
    let system = shown.app.workshop.units;
    let id = &line.id;
    let (piece, material, colour) = (&shown.piece.id, &line.need.material.key, line.need.colour);
    let have = |edit: fn(&str) -> HaveEdit| {
        let (piece, material) = (piece.clone(), std::rc::Rc::<str>::from(&**material));
        shown.send.reform(move |key: String| {
            Action::Edit(Edit::Have {
                piece: piece.clone(),
                material: material.clone(),
                colour,
                edit: edit(&key),
            })
        })
    };
    let choose = have(|key| HaveEdit::Can(coatings::can(key).map(|can| can.key)));
    let fill = have(|key| HaveEdit::Level(coatings::can::level(key).map(|level| level.key)));
    let hand = line.on_hand.as_ref();
    // If there are several cans, they are edited on the shelf.
    let only = match hand.map(|hand| hand.cans.as_slice()) {
        None => Some(None),
        Some([one]) => Some(Some(one)),
        Some(_) => None,
    };
    // A can from the other unit system stays in the list while it is selected.
    let sizes = coatings::can_sizes(system);
    let size = only.flatten().and_then(|stock| stock.can);
    let foreign = size.filter(|can| !sizes.contains(can));
    let sizes = sizes.iter().chain(foreign).map(|can| (can.key, can.label));
    let sizes = std::iter::once(("", "none")).chain(sizes);
    let is_weighed = only.flatten().is_some_and(|stock| stock.is_weighed);
    let levels = LEVELS.iter().map(|level| (level.key, level.label));
    let levels = std::iter::once(("", if is_weighed { "as weighed" } else { "full" })).chain(levels);
    let class = match hand.map(|hand| hand.enough.verdict) {
        Some(Verdict::Enough) => "enough",
        Some(Verdict::Tight) => "tight",
        Some(Verdict::Short) => "short",
        None => "none",
    };
    html! {
        <div class={classes!("question", class)}>
            <div class="in-hand">
                <span class="label" aria-hidden="true">{ "I have" }</span>
                if let Some(stock) = only {
                    { select("I have one can of", format!("can-{id}"), sizes, size.map_or("", |can| can.key), choose) }
                    if let Some(stock) = stock {
                        { select("It is", format!("level-{id}"), levels, stock.level.filter(|_| !is_weighed).map_or("", |level| level.key), fill) }
                    }
                }
            </div>
            <p>
                if let Some(hand) = hand {
                    <strong id={format!("verdict-{id}")}>{ words::verdict(hand.enough.verdict) }</strong>
                    <span id={format!("answer-{id}")}>{ words::enough(&hand.enough, system) }</span>{ " " }
                    <span id={format!("instead-{id}")}>{ words::instead(line, &hand.enough, takeoff) }</span>
                }
            </p>
        </div>
    }
}

/// Describes the area and the amounts for screen readers.
pub fn in_words(shown: &Shown) -> String {
    let of = |takeoff| words::spoken(takeoff, shown.app.workshop.units);
    shown.takeoff().map(of).unwrap_or_default()
}

/// Shows the amounts in one line that stays visible on narrow screens and links to the full results.
pub fn in_short(shown: &Shown) -> Html {
    let system = shown.app.workshop.units;
    let figures = match shown.takeoff() {
        Some(takeoff) => shown
            .lines()
            .map(|(line, buy)| {
                let verdict = match &line.on_hand {
                    Some(hand) => words::verdict(hand.enough.verdict).to_owned(),
                    None => words::short_cans(buy),
                };
                html! {
                    <span class="one">
                        <span class="label">{ words::short_name(takeoff, line) }</span>
                        <b>{ words::volume(line.need.likely(), system) }</b>
                        <span class="label">{ verdict }</span>
                    </span>
                }
            })
            .collect::<Html>(),
        None => html! { <span class="one">{ words::no_answer(shown.problems().is_empty()) }</span> },
    };
    let refused = shown.app.refused(DraftId::is_of_amounts);
    let refused = refused
        .iter()
        .map(|refused| html! { <span class="one refused">{ words::refused(refused) }</span> });
    html! { <a class={classes!("in-short", shown.waits())} href="#answers"><span class="unseen">{ "To the amounts: " }</span>{ figures }{ for refused }</a> }
}
