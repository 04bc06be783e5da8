//! The answer: how much of each material, how sure, and whether the can in hand is enough.

use coatings::Verdict;
use coatings::can::LEVELS;
use units::{Volume, show_area, show_volume};
use workshop::shelf::also_planned_for;
use workshop::{Colour, MaterialLine, PieceEdit, Takeoff, on_shelf};
use yew::prelude::*;

use super::{Bought, Shown, detail, money, refused, vessel};
use crate::parts::{fold, select};
use crate::state::{Act, DraftId};
use crate::words;

/// Area and amounts in full.
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

/// The can that is drawn: the one in hand, or else the largest of those to buy.
fn drawn_can(line: &MaterialLine, buy: &Bought) -> Volume {
    let bought = buy.iter().flat_map(|buy| &buy.cans).map(|(can, _)| can.volume());
    let in_hand = line.in_hand.as_ref().map(|hand| hand.can.volume());
    in_hand
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
        .in_hand
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
            { fold(&name, title, is_open, shown.send.reform(Act::Fold), &|| detail::detail(shown, takeoff, line, buy)) }
        </section>
    }
}

/// What stands on the shelf of a material. To look who else takes from it is only worth while where there is some.
fn shelf(shown: &Shown, line: &MaterialLine) -> String {
    let workshop = &shown.app.workshop;
    let cans = on_shelf(workshop, &line.need);
    let others = match cans.is_empty() {
        true => Vec::new(),
        false => also_planned_for(workshop, &shown.piece.id, &line.need),
    };
    words::on_shelf(&cans, &others, workshop.units)
}

/// The colour beside a material that comes in colours. The name says which material it is; the colour only helps.
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
    let of = || {
        (
            std::rc::Rc::<str>::from(&*line.need.material.key),
            line.need.colour,
        )
    };
    let (material, colour) = of();
    let choose = shown.change(move |key: String| {
        let can = coatings::can(&key).map(|can| can.key);
        Some(PieceEdit::Can(material.clone(), colour, can))
    });
    let (material, colour) = of();
    let fill = shown.change(move |key: String| {
        let level = coatings::can::level(&key).map(|level| level.key);
        Some(PieceEdit::Level(material.clone(), colour, level))
    });
    // A can of the other system stays in the list while it is the chosen one.
    let sizes = coatings::can_sizes(system);
    let in_hand = line.in_hand.as_ref();
    let foreign = in_hand.map(|hand| hand.can).filter(|can| !sizes.contains(can));
    let sizes = sizes.iter().chain(foreign).map(|can| (can.key, can.label));
    let sizes = std::iter::once(("", "none")).chain(sizes);
    let levels = LEVELS.iter().map(|level| (level.key, level.label));
    let levels = std::iter::once(("", "full")).chain(levels);
    let class = match in_hand.map(|hand| hand.enough.verdict) {
        Some(Verdict::Enough) => "enough",
        Some(Verdict::Tight) => "tight",
        Some(Verdict::Short) => "short",
        None => "none",
    };
    html! {
        <div class={classes!("question", class)}>
            <div class="in-hand">
                <span class="label" aria-hidden="true">{ "In hand" }</span>
                { select("In hand, one can of", format!("can-{id}"), sizes, in_hand.map_or("", |hand| hand.can.key), choose) }
                if let Some(hand) = in_hand {
                    { select("It is", format!("level-{id}"), levels, hand.level.unwrap_or_default(), fill) }
                }
            </div>
            <p>
                if let Some(hand) = in_hand {
                    <strong id={format!("verdict-{id}")}>{ words::verdict(hand.enough.verdict) }</strong>
                    <span id={format!("answer-{id}")}>{ words::enough(&hand.enough, system) }</span>{ " " }
                    <span id={format!("instead-{id}")}>{ words::instead(line, &hand.enough, takeoff) }</span>
                }
            </p>
        </div>
    }
}

/// The area and the amounts in a few words, for one who hears the page.
pub fn in_words(shown: &Shown) -> String {
    let of = |takeoff| words::spoken(takeoff, shown.app.workshop.units);
    shown.takeoff().map(of).unwrap_or_default()
}

/// The amounts in one line, always in sight on a narrow screen; it leads to the full answer.
pub fn in_short(shown: &Shown) -> Html {
    let system = shown.app.workshop.units;
    let figures = match shown.takeoff() {
        Some(takeoff) => shown
            .lines()
            .map(|(line, buy)| {
                let verdict = match &line.in_hand {
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
