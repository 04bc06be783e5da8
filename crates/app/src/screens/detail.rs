//! Of one material: where it goes, and what makes its amount unsure.

use coatings::{Contribution, Share};
use workshop::MaterialLine;
use yew::prelude::*;

use super::Shown;
use crate::words;

/// Causes that give less of the variance than this are left out of the list: they move no figure that is shown.
const WORTH_NAMING: f64 = 0.01;

/// The fold under an amount.
pub fn detail(shown: &Shown, line: &MaterialLine) -> Html {
    let system = shown.app.workshop.units;
    let all = line.need.linear();
    let share = |share: &Share| {
        let hundredths = share.volume / all.value * 100.0;
        html! {
            <div>
                <dt>{ words::place(share.place) }</dt>
                <dd>{ words::volume(share.volume, system) }{ format!(", {hundredths:.0} %") }</dd>
            </div>
        }
    };
    let cause = |given: &Contribution| {
        html! {
            <div>
                <dt>{ given.cause.label() }</dt>
                <dd>{ format!("{:.0} %", given.share * 100.0) }</dd>
            </div>
        }
    };
    let causes = line
        .need
        .budget
        .iter()
        .filter(|given| given.share >= WORTH_NAMING);
    html! {
        <>
            <h3>{ "Where it goes" }</h3>
            <dl class="shares">{ for line.need.shares.iter().map(share) }</dl>
            <h3>{ "What makes it unsure" }</h3>
            <dl class="shares">{ for causes.map(cause) }</dl>
            <p class="range">{ words::linear(all, system) }</p>
        </>
    }
}
