//! The condition before work: what is on the piece, what is wrong with it, and what that calls for.

use coatings::{SPECIES, Substrate};
use workshop::{SchemeEdit, Sign};
use yew::prelude::*;

use super::Shown;
use super::book::only;
use super::finish::{Planned, recommended};
use crate::parts::{button, fold, select};
use crate::state::{Action, Screen};

/// The repairs that are counted or checked.
const REPAIRS: [&str; 7] = ["holes", "dents", "hardware", "stickers", "loose", "loose-joints", "rust"];

/// Shows the condition of the piece.
pub fn condition(shown: &Shown) -> Html {
    let Shown { app, send, piece, .. } = shown;
    let planned = Planned {
        shown,
        zone: None,
        scheme: &piece.scheme,
    };
    let sizes = || only(app, send, "facts", &["hole-width", "hole-depth", "dent-width", "dent-depth"]);
    let toggle = send.reform(Action::Fold);
    let is_open = app.unfolded.contains("pits");
    let go_on = send.reform(|_: MouseEvent| Action::Screen(Screen::Finish));
    html! {
        <section class="condition columns" aria-labelledby="condition-title">
            <div>
                <h2 id="condition-title">{ "Condition" }</h2>
                <p class="caution">{ workshop::preparing::of_lead(piece) }</p>
                { ground(&planned) }
                <h3>{ "Lead" }</h3>
                { only(app, send, "facts", &["age", "lead"]) }
                if piece.scheme.condition.substrate == Substrate::PaintedSound { { only(app, send, "facts", &["old-color"]) } }
            </div>
            <div>
                <h3>{ "Repairs" }</h3>
                { only(app, send, "facts", &REPAIRS) }
                { fold("pits", ("Size of holes and dents".into(), String::new()), is_open, toggle, &sizes) }
                <h3>{ "Recommended" }</h3>
                { recommended(&planned) }
                { button("go-on", "Next: finish", go_on) }
            </div>
        </section>
    }
}

/// Shows what is on the surface: the old finish, the wood, and signs of trouble.
pub fn ground(planned: &Planned<'_>) -> Html {
    let condition = &planned.scheme.condition;
    let grounds = Substrate::ALL.map(|ground| (ground.key(), ground.label()));
    let set_ground = planned.change(|key: String| {
        let ground = Substrate::ALL.into_iter().find(|ground| ground.key() == key);
        ground.map(SchemeEdit::Substrate)
    });
    let mut woods: Vec<_> = SPECIES.iter().map(|wood| (wood.key, wood.name)).collect();
    units::sort_few(&mut woods, |(_, one), (_, other)| one < other);
    let woods = std::iter::once(("", "Not sure")).chain(woods);
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
        <div class="ground">
            <div class="fields">
                { select("Surface now", "ground".into(), grounds, condition.substrate.key(), set_ground) }
                { select("Wood", "wood".into(), woods, condition.species.map_or("", |wood| wood.key), set_wood) }
            </div>
            <div class="checks" role="group" aria-label="Signs of trouble">{ for Sign::ALL.into_iter().map(sign) }</div>
        </div>
    }
}
