//! What is under the coats: the old finish, the wood, and signs of trouble.

use coatings::{SPECIES, Substrate};
use workshop::book::Facts;
use workshop::{SchemeEdit, Sign};
use yew::prelude::*;

use super::super::book::Form;
use super::Planned;
use crate::parts::select;

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
                if planned.zone.is_none() && condition.substrate.may_be_paint() { { old_color(planned) } }
                { select("Wood", "wood".into(), woods, condition.species.map_or("", |wood| wood.key), set_wood) }
            </div>
            <div class="checks" role="group" aria-label="Signs of trouble">{ for Sign::ALL.into_iter().map(sign) }</div>
        </div>
    }
}

/// Shows the color of the old paint, for one touch or as any color.
fn old_color(planned: &Planned<'_>) -> Html {
    let shown = planned.shown;
    let Some(form) = Form::of(&shown.app, &shown.send, "facts", "only".into()) else {
        return Html::default();
    };
    let chosen = shown.piece.books.one::<Facts>().old_color;
    html! {
        <div class="colours">
            { form.field("old-color") }
            { form.palette("old-color", chosen) }
        </div>
    }
}
