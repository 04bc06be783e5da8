//! The amounts in full: each material with its cans drawn to scale, whether they are enough, and the math.

use coatings::Verdict;
use coatings::can::LEVELS;
use units::{Volume, show_area};
use workshop::shelf::{OnHand, also_planned_for};
use workshop::{Colour, Edit, HaveEdit, MaterialLine, Takeoff};
use yew::prelude::*;

use super::{Bought, Shown, detail, refused, vessel};
use crate::browser::focus_soon;
use crate::parts::{fold, select};
use crate::state::{Action, DraftId, Screen};
use crate::words;

/// Shows the area and all amounts.
pub fn amounts(shown: &Shown) -> Html {
    let send = shown.send.clone();
    let close = Callback::from(move |_: MouseEvent| {
        send.emit(Action::Back);
        focus_soon("strip".into());
    });
    html! {
        <section class="amounts-screen" aria-labelledby="amounts-title">
            <div class="top">
                <h2 id="amounts-title">{ "Amounts" }</h2>
                <button type="button" id="close-amounts" class="act" onclick={close}>{ "Close" }</button>
            </div>
            { match shown.takeoff() {
                Some(takeoff) => refused::answer(&shown.app, DraftId::is_of_amounts, || answer(shown, takeoff)),
                None => problems(shown),
            } }
        </section>
    }
}

/// Says why there are no amounts.
pub fn problems(shown: &Shown) -> Html {
    let problems = shown.problems().iter();
    let sentences = problems.map(|problem| problem.message(|length| shown.app.length(length)));
    let refused = shown.app.refused(DraftId::is_of_amounts);
    let sentences = refused.iter().map(words::refused).chain(sentences);
    html! {
        <div class="against" role="alert">
            <h3>{ words::no_answer(shown.problems().is_empty()) }</h3>
            <ul>{ for sentences.map(|sentence| html! { <li>{ sentence }</li> }) }</ul>
        </div>
    }
}

fn answer(shown: &Shown, takeoff: &Takeoff) -> Html {
    let largest = shown.lines().map(|(line, buy)| drawn_can(line, buy));
    let largest = largest.fold(Volume::ZERO, Volume::max);
    html! {
        <div class={classes!("mats", shown.waits())} aria-busy={shown.waiting.is_some().to_string()}>
            { area(shown, takeoff) }
            { for shown.lines().map(|(line, buy)| material(shown, takeoff, line, buy, largest)) }
        </div>
    }
}

fn area(shown: &Shown, takeoff: &Takeoff) -> Html {
    let system = shown.app.workshop.units;
    let (figure, unit) = show_area(takeoff.painted.value, system);
    let zones = takeoff.zones.iter().filter_map(|zone| {
        let area: units::Area = zone.areas.into_iter().sum();
        (area > units::Area::ZERO).then(|| {
            html! {
                <div class="own"><span>{ &zone.label }</span>{ " " }<b>{ words::area(area, system) }</b></div>
            }
        })
    });
    let surfaces = shown
        .send
        .reform(|_: MouseEvent| Action::Screen(Screen::Surfaces));
    html! {
        <article class="mat area">
            <h3>{ words::number(&figure) }{ " " }<i>{ unit }</i></h3>
            <p class="range">{ words::sureness(&shown.piece, takeoff) }</p>
            { words::set_of(shown.piece.count).map(|set| html! { <p class="range">{ set }</p> }) }
            { for zones }
            <button type="button" id="see-surfaces" class="fold" onclick={surfaces}>{ "Every surface" }</button>
        </article>
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
    let name = format!("how-{id}");
    let is_open = shown.app.unfolded.contains(&name);
    let is_enough = line
        .on_hand
        .as_ref()
        .is_some_and(|hand| hand.enough.verdict == Verdict::Enough);
    let title = if is_enough {
        "Enough".to_owned()
    } else {
        words::sentence(words::short_cans(buy))
    };
    html! {
        <article class="mat" key={id.clone()} id={format!("of-{id}")} tabindex="-1" aria-labelledby={format!("name-{id}")}>
            { vessel::vessel(line, drawn_can(line, buy), largest) }
            <h3 class="title">{ title }</h3>
            <h4 id={format!("name-{id}")}>
                { line.need.colour.map(swatch) }
                { &*line.need.material.name }
                <small>{ format!("{}, {}{}", words::coats(line.coats), words::tools(&line.tools), words::by_own_jobs(line.jobs)) }</small>
            </h4>
            <p>{ words::likely(&line.need, system) }{ " " }<span id={format!("range-{id}")}>{ words::range(&line.need, system) }</span></p>
            if let Some(both) = words::by_label(line, system) {
                <p id={format!("label-{id}")}>{ both }</p>
            }
            { on_hand(shown, takeoff, line) }
            <p class="range">{ shelf(shown, line) }</p>
            { fold(&name, ("Show the math".into(), String::new()), is_open, shown.send.reform(Action::Fold), &|| detail::detail(shown, takeoff, line, buy)) }
        </article>
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

/// Shows the can on hand and what it is enough for.
fn on_hand(shown: &Shown, takeoff: &Takeoff, line: &MaterialLine) -> Html {
    let system = shown.app.workshop.units;
    let id = &line.id;
    html! {
        <>
            { can(shown, line) }
            if let Some(hand) = &line.on_hand {
                <p>
                    <span id={format!("answer-{id}")}>{ words::enough(&hand.enough, system) }</span>{ " " }
                    <span id={format!("instead-{id}")}>{ words::instead(line, &hand.enough, takeoff) }</span>
                </p>
            }
        </>
    }
}

fn can(shown: &Shown, line: &MaterialLine) -> Html {
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
    let sizes = std::iter::once(("", "None")).chain(sizes);
    let is_weighed = only.flatten().is_some_and(|stock| stock.is_weighed);
    let levels = LEVELS.iter().map(|level| (level.key, level.label));
    let levels = std::iter::once(("", if is_weighed { "as weighed" } else { "full" })).chain(levels);
    html! {
        if let Some(stock) = only {
            <div class="own have">
                { select("I have", format!("can-{id}"), sizes, size.map_or("", |can| can.key), choose) }
                if let Some(stock) = stock {
                    { select("How full", format!("level-{id}"), levels, stock.level.filter(|_| !is_weighed).map_or("", |level| level.key), fill) }
                }
            </div>
        }
    }
}

/// Describes the area and the amounts for screen readers.
pub fn in_words(shown: &Shown) -> String {
    let of = |takeoff| words::spoken(takeoff, shown.app.workshop.units);
    shown.takeoff().map(of).unwrap_or_default()
}
