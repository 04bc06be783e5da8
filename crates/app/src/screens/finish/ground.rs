//! The surface under the finish, and the coats it needs.

use coatings::suggest::{Reason, SuggestedLayer, Suggestion};
use coatings::{SPECIES, Substrate, Wish};
use web_sys::HtmlInputElement;
use workshop::{Colour, SchemeEdit, Sign};
use yew::prelude::*;

use super::{Planned, Shown};
use crate::parts::{button, choice, fold, palette, select};
use crate::state::Action;
use crate::words;

/// Shows the condition of the surface: substrate, wood species and stains.
pub fn ground(planned: &Planned<'_>) -> Html {
    let condition = &planned.scheme.condition;
    let grounds = Substrate::ALL.map(|ground| (ground.key(), ground.label()));
    let set_ground = planned.change(|key: String| {
        let ground = Substrate::ALL.into_iter().find(|ground| ground.key() == key);
        ground.map(SchemeEdit::Substrate)
    });
    let mut woods: Vec<_> = SPECIES.iter().map(|wood| (wood.key, wood.name)).collect();
    units::sort_few(&mut woods, |(_, one), (_, other)| one < other);
    let woods = std::iter::once(("", "Not known")).chain(woods);
    let set_wood = planned.change(|key: String| {
        let wood = coatings::species(&key).map(|wood| wood.key);
        Some(SchemeEdit::Species(wood))
    });
    let sign = |sign: Sign| {
        let seen = sign.of(condition);
        let set = planned.change(move |_: Event| Some(SchemeEdit::Sign(sign, !seen)));
        html! {
            <label class="switch">
                <input type="checkbox" id={format!("sign-{}", sign.key())} checked={seen} onchange={set} />
                { sign.label() }
            </label>
        }
    };
    html! {
        <fieldset class="ground">
            <legend>{ "As it was found" }</legend>
            <div class="row">
                { select("Surface", "ground".into(), grounds, condition.substrate.key(), set_ground) }
                { select("Wood", "wood".into(), woods, condition.species.map_or("", |wood| wood.key), set_wood) }
            </div>
            <div class="row" role="group" aria-label="Seen on it">{ for Sign::ALL.into_iter().map(sign) }</div>
        </fieldset>
    }
}

/// Shows the choice of the final look, and objections to it.
pub fn wanted(planned: &Planned<'_>) -> Html {
    let own = &planned.shown.app.workshop.materials;
    let light = planned.scheme.colour.is_light();
    let wishes = [
        (Wish::Painted { light }, "painted", "Painted"),
        (Wish::Clear, "clear", "Clear"),
        (Wish::StainedClear, "stained", "Stained, then clear"),
    ];
    let plan = planned.change(|wish| Some(SchemeEdit::Suggested(wish)));
    let colour = planned.change(|event: InputEvent| {
        let read = Colour::read(&event.target_unchecked_into::<HtmlInputElement>().value());
        read.map(SchemeEdit::Colour)
    });
    let choose = planned.change(|colour| Some(SchemeEdit::Colour(colour)));
    let colours = workshop::palette(&planned.shown.app.workshop);
    let against = planned.scheme.suggestion(own).against;
    html! {
        <>
            <div class="row">
                { choice("It is to be", "wish", &wishes, planned.scheme.wish(own), plan) }
                <div class="colour">
                    <label for="colour" class="label">{ "Its colour" }</label>
                    <input id="colour" type="color" value={planned.scheme.colour.write()} oninput={colour} />
                </div>
            </div>
            { palette("colour", &colours, Some(planned.scheme.colour), &choose) }
            <div class="against" id="against" role="status">
                { for against.iter().map(|reason| html! { <p>{ reason.text }</p> }) }
            </div>
        </>
    }
}

/// Shows the recommended coats with the reasons. The maker can accept them.
pub fn asks(planned: &Planned<'_>, shown: &Shown) -> Html {
    let own = &shown.app.workshop.materials;
    let suggestion = planned.scheme.suggestion(own);
    let is_planned = planned.scheme.is_as_suggested(own, &suggestion);
    let title = match is_planned {
        true => "What this surface asks for, and why",
        false => "This surface asks for something else",
    };
    let figure = if is_planned { "planned so" } else { "why" };
    let is_open = shown.app.unfolded.contains("asks");
    let toggle = shown.send.reform(Action::Fold);
    let wish = planned.scheme.wish(own);
    let plan = planned.change(move |_: MouseEvent| Some(SchemeEdit::Suggested(wish)));
    html! {
        <div class="plan-so">
            { fold("asks", (title.into(), figure.into()), is_open, toggle, &|| content(&suggestion)) }
            if !is_planned {
                <p>{ words::asked_for(&suggestion) }</p>
                { button("plan-it-so", "Plan it so", plan) }
            }
        </div>
    }
}

fn content(suggestion: &Suggestion) -> Html {
    html! {
        <div class="asks">
            if suggestion.wants_bare_wood() {
                <p>{ "First the old finish comes off: its step stands on Prepare." }</p>
            }
            <ol>{ for suggestion.layers.iter().map(suggested) }</ol>
            <ul>{ for suggestion.against.iter().chain(&suggestion.notes).map(reason) }</ul>
        </div>
    }
}

fn suggested(layer: &SuggestedLayer) -> Html {
    let name = coatings::material(layer.material).map_or("", |material| &material.name);
    html! {
        <li>
            <b>{ name }</b>{ format!(", {}", words::coats(layer.coats)) }
            <ul>{ for layer.reasons.iter().map(reason) }</ul>
        </li>
    }
}

fn reason(reason: &Reason) -> Html {
    html! {
        <li>
            { reason.text }
            <span class="label">{ words::source(reason.source, reason.certainty) }</span>
        </li>
    }
}
