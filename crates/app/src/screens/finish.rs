//! What goes on the piece: the ground, the coats of each stage, the tools.

use coatings::{Basis, Ground, MATERIALS, Stage, TOOLS};
use web_sys::HtmlInputElement;
use workshop::{Colour, PieceEdit};
use yew::prelude::*;

use super::{Shown, say_if};
use crate::parts::{choice, select, stepper};
use crate::state::Act;
use crate::words;

/// The sheet of the finish.
pub fn finish(shown: &Shown) -> Html {
    let Shown { piece, send, .. } = shown;
    let ground = [
        (Ground::Sealed, "sealed", "Sealed, sound"),
        (Ground::Porous, "porous", "Bare or thirsty"),
    ];
    let basis = [
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
                { choice("The first coat goes onto", "ground", &ground, piece.scheme.ground,
                    send.reform(|ground| Act::Change(PieceEdit::Ground(ground)))) }
                { choice("Work it out from", "basis", &basis, piece.scheme.basis,
                    send.reform(|basis| Act::Change(PieceEdit::Basis(basis)))) }
                <div class="field">
                    <label for="colour">{ "Colour in the drawing" }</label>
                    <input id="colour" type="color" value={piece.scheme.colour.write()} oninput={colour} />
                </div>
            </div>
        </section>
    }
}

fn stage(shown: &Shown, stage: Stage) -> Html {
    let coats = shown.piece.scheme.of(stage);
    let key = words::stage_key(stage);
    let material = coatings::material(coats.material);
    let choose =
        shown.change(move |key: String| Some(PieceEdit::Material(stage, coatings::material(&key)?.key)));
    let materials = MATERIALS.iter().filter(|material| material.stage == stage);
    let materials = materials.map(|material| (material.key, material.name));
    let tools: Vec<_> = TOOLS.iter().map(|tool| (tool.key, tool.key, tool.name)).collect();
    html! {
        <fieldset class="stage">
            <legend>{ stage.label() }</legend>
            { select("Material", format!("material-{key}"), materials, coats.material, choose) }
            { stepper(("Coats", &format!(" of {}", stage.label().to_ascii_lowercase())), &format!("coats-{key}"),
                coats.coats, (0, 9), shown.change(move |coats| Some(PieceEdit::Coats(stage, coats)))) }
            { choice("Tool", &format!("tool-{key}"), &tools, coats.tool,
                shown.change(move |tool| Some(PieceEdit::Tool(stage, tool)))) }
            if let Some(material) = material {
                <p class="caution">{ material.caution }</p>
            }
        </fieldset>
    }
}
