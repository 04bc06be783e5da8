//! Details of one material: the cans to buy, where it goes, why its amount is a range, and the calculation.

use std::borrow::Cow;

use coatings::{Contribution, LayerWorking, Quantity, Share, Working};
use units::{System, Volume};
use workshop::{MaterialLine, Takeoff};
use yew::prelude::*;

use super::{Bought, Shown, money, weighed};
use crate::words;

/// Causes with a smaller share of the variance are not listed, because they do not affect the displayed
/// figures.
const WORTH_NAMING: f64 = 0.01;

/// Shows the section under an amount.
pub fn detail(shown: &Shown, takeoff: &Takeoff, line: &MaterialLine, buy: &Bought) -> Html {
    let workshop = &shown.app.workshop;
    let system = workshop.units;
    let need = &line.need;
    let all = need.linear();
    let share = |share: &Share| {
        let hundredths = share.volume / all.value * 100.0;
        let volume = words::volume(share.volume, system);
        row(
            words::place(share.place).into(),
            format!("{volume}, {hundredths:.0}%"),
        )
    };
    let cause =
        |given: &Contribution| row(given.cause.label().into(), format!("{:.0}%", given.share * 100.0));
    let causes = need.budget.iter().filter(|given| given.share >= WORTH_NAMING);
    html! {
        <>
            <h3>{ "Buy" }</h3>
            <p id={format!("buy-{}", line.id)}>{ words::buy(buy, line.on_hand.is_some(), workshop, &money(&shown.app)) }</p>
            <h3>{ "What it really took" }</h3>
            <p>{ "Weigh the can before and after the job. Later amounts then use what you used." }</p>
            { weighed::can(shown, takeoff, line, "weigh-now") }
            <h3>{ "Where it goes" }</h3>
            <dl class="shares">{ for need.shares.iter().map(share) }</dl>
            <h3>{ "Why it\u{2019}s a range" }</h3>
            <dl class="shares">{ for causes.map(cause) }</dl>
            <p class="range">{ words::linear(all, system) }</p>
            <h3>{ "Math" }</h3>
            { working(takeoff, line, system) }
        </>
    }
}

fn row(what: Cow<'static, str>, figure: String) -> Html {
    html! { <div><dt>{ what }</dt>{ " " }<dd>{ figure }</dd></div> }
}

/// Shows the best estimate for every zone and layer, with its formula and inputs.
fn working(takeoff: &Takeoff, line: &MaterialLine, system: System) -> Html {
    let Some(working) = takeoff.working_of(line) else {
        return Html::default();
    };
    html! {
        <>
            { for working.layers.iter().map(|layer| of_layer(takeoff, layer, system)) }
            <dl class="shares">
                { for working.kept.iter().map(|kept| quantity(kept, system)) }
                { row("total".into(), words::volume(Volume::litres(working.litres), system)) }
            </dl>
        </>
    }
}

fn of_layer(takeoff: &Takeoff, layer: &LayerWorking, system: System) -> Html {
    let narrow = if layer.narrow { ", narrow parts" } else { "" };
    html! {
        <>
            <p class="of">{ takeoff.zone_label(layer.zone) }{ narrow }</p>
            <p>{ words::in_brief(layer, system) }</p>
            { formula(&layer.litres, system) }
            { layer.dry_film.as_ref().map(|film| formula(film, system)) }
        </>
    }
}

fn formula(working: &Working, system: System) -> Html {
    html! {
        <>
            <p class="formula">{ working.result.symbol }{ " = " }{ working.formula }</p>
            <dl class="shares">
                { for working.terms.iter().map(|term| quantity(term, system)) }
                { quantity(&working.result, system) }
            </dl>
        </>
    }
}

/// Shows a number of a formula with its source.
fn quantity(quantity: &Quantity, system: System) -> Html {
    let source = quantity
        .source
        .map(|(source, certainty)| words::source(source, certainty));
    html! {
        <div>
            <dt>
                <i>{ quantity.symbol }</i>{ ", " }{ quantity.meaning.to_string() }
                { " " }<span class="label">{ source }</span>
            </dt>
            <dd>{ words::told(quantity, system) }</dd>
        </div>
    }
}
