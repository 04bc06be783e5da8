//! What goes on the piece: the ground, the coats of each stage, the tools.

use coatings::{Basis, Ground, MATERIALS, Stage, TOOLS};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use workshop::{Colour, PieceEdit};
use yew::prelude::*;

use super::{Shown, say_if};
use crate::parts::{Choice, Stepper};
use crate::state::Act;
use crate::words;

/// The sheet of the finish.
#[component]
pub fn Finish(shown: &Shown) -> Html {
    let Shown { piece, send, .. } = shown;
    let ground = vec![
        (Ground::Sealed, "sealed", "Sealed, sound"),
        (Ground::Porous, "porous", "Bare or thirsty"),
    ];
    let basis = vec![
        (Basis::WetFilm, "wet-film", "Film of the tool"),
        (Basis::LabelRate, "label-rate", "Rate on the label"),
    ];
    let colour = say_if(send, |event: InputEvent| {
        let read = Colour::read(&event.target_unchecked_into::<HtmlInputElement>().value());
        read.map(|colour| Act::Change(PieceEdit::Colour(colour)))
    });
    html! {
        <section aria-label="Finish">
            <p class="caution">{ "Old paint may hold lead. Test before any sanding; until it is clear, no dry sanding and no heat. Labels and local rules come first." }</p>
            { for Stage::ALL.into_iter().map(|s| stage(shown, s)) }
            <div class="styles">
                <Choice<Ground> label="The first coat goes onto" id="ground" options={ground} value={piece.scheme.ground}
                    on_choose={send.reform(|ground| Act::Change(PieceEdit::Ground(ground)))} />
                <Choice<Basis> label="Work it out from" id="basis" options={basis} value={piece.scheme.basis}
                    on_choose={send.reform(|basis| Act::Change(PieceEdit::Basis(basis)))} />
                <div class="field">
                    <label for="colour">{ "Colour in the drawing" }</label>
                    <input id="colour" type="color" value={piece.scheme.colour.write()} oninput={colour} />
                </div>
            </div>
        </section>
    }
}

fn stage(shown: &Shown, stage: Stage) -> Html {
    let Shown { piece, send, .. } = shown;
    let coats = piece.scheme.of(stage);
    let key = words::stage_key(stage);
    let material = coatings::material(coats.material);
    let choose = say_if(send, move |event: Event| {
        let key = event.target_unchecked_into::<HtmlSelectElement>().value();
        coatings::material(&key).map(|material| Act::Change(PieceEdit::Material(stage, material.key)))
    });
    let options = MATERIALS.iter().filter(|material| material.stage == stage).map(|material| {
        html! { <option value={material.key} selected={material.key == coats.material}>{ material.name }</option> }
    });
    let tools: Vec<_> = TOOLS.iter().map(|tool| (tool.key, tool.key, tool.name)).collect();
    html! {
        <fieldset class="stage">
            <legend>{ stage.label() }</legend>
            <div class="field">
                <label for={format!("material-{key}")}>{ "Material" }</label>
                <select id={format!("material-{key}")} onchange={choose}>{ for options }</select>
            </div>
            <div class="line">
                <span class="label">{ "Coats" }</span>
                <Stepper label={format!("coats of {}", stage.label().to_lowercase())} id={format!("coats-{key}")}
                    value={coats.coats} limits={(0, 9)}
                    on_change={send.reform(move |coats| Act::Change(PieceEdit::Coats(stage, coats)))} />
            </div>
            <Choice<&'static str> label="Tool" id={format!("tool-{key}")} options={tools} value={coats.tool}
                on_choose={send.reform(move |tool| Act::Change(PieceEdit::Tool(stage, tool)))} />
            if let Some(material) = material {
                <p class="caution">{ material.caution }</p>
            }
        </fieldset>
    }
}
