//! The groups of surfaces: which share the finish of the piece, which have their own, and which are not painted.

use units::Area;
use workshop::{PieceEdit, ZoneLine};
use yew::prelude::*;

use super::Shown;
use crate::parts::button;
use crate::state::{Action, Screen};
use crate::words;

/// Returns true if a zone has its own finish.
pub fn is_apart(shown: &Shown, key: &str) -> bool {
    shown
        .piece
        .zones
        .get(key)
        .is_some_and(|zone| zone.scheme.is_some())
}

/// Shows the piece and its zones. A touch opens the finish of one.
pub fn groups(shown: &Shown) -> Html {
    let zones = shown.takeoff().map(|takeoff| &*takeoff.zones).unwrap_or_default();
    let has_surface = |zone: &&ZoneLine| zone.areas.into_iter().sum::<Area>() + zone.left > Area::ZERO;
    let with_piece: Area = zones
        .iter()
        .filter(|zone| zone.painted && !is_apart(shown, &zone.key))
        .map(|zone| zone.areas.into_iter().sum::<Area>())
        .sum();
    let surfaces = shown
        .send
        .reform(|_: MouseEvent| Action::Screen(Screen::Surfaces));
    html! {
        <>
            <ul class="groups" aria-label="Groups">
                { group(shown, None, "Everything without its own finish".into(), with_piece) }
                { for zones.iter().filter(has_surface).map(|zone| of_zone(shown, zone)) }
            </ul>
            { button("choose-surfaces", "Choose surface by surface", surfaces) }
        </>
    }
}

fn of_zone(shown: &Shown, zone: &ZoneLine) -> Html {
    let how = match (zone.painted, is_apart(shown, &zone.key)) {
        (false, _) => "Not painted".into(),
        (true, true) => {
            let scheme = shown.piece.scheme_of(&zone.key);
            format!(
                "Its own finish: {}",
                coatings::in_sentence(words::wish(scheme.wish(&shown.app.workshop.materials)))
            )
        }
        (true, false) => "Like the rest".into(),
    };
    group(shown, Some(zone), how, zone.areas.into_iter().sum())
}

fn group(shown: &Shown, zone: Option<&ZoneLine>, how: String, area: Area) -> Html {
    let key = zone.map(|zone| zone.key.clone());
    let is_current = shown.app.finished == key;
    let scheme = match &key {
        Some(key) => shown.piece.scheme_of(key),
        None => &shown.piece.scheme,
    };
    let own = &shown.app.workshop.materials;
    let fill = match zone {
        Some(zone) if !zone.painted => None,
        _ if scheme.is_coloured(own) => Some(scheme.colour.write()),
        _ => Some("var(--clear)".to_owned()),
    };
    let id = format!("finish-of-{}", key.as_deref().unwrap_or("piece"));
    let label = zone.map_or("Whole piece".into(), |zone| zone.label.clone());
    html! {
        <li>
            <button type="button" {id} aria-current={is_current.then_some("true")}
                onclick={shown.send.reform(move |_| Action::Finished(key.clone()))}>
                <svg class={classes!("swatch", fill.is_none().then_some("none"))} viewBox="0 0 10 10" aria-hidden="true">
                    <rect width="10" height="10" fill={fill.unwrap_or("none".into())} />
                </svg>
                <span>{ label }<small>{ how }</small></span>
                <b>{ (area > Area::ZERO).then(|| words::area(area, shown.app.workshop.units)) }</b>
            </button>
        </li>
    }
}

/// Shows the ways to finish a zone: like the rest, on its own, or not at all.
pub fn ways(shown: &Shown, key: &str) -> Html {
    let zones = shown.takeoff().map(|takeoff| &*takeoff.zones).unwrap_or_default();
    let is_painted = zones.iter().any(|zone| zone.key == key && zone.painted);
    let is_apart = is_apart(shown, key);
    let (of_apart, of_paint) = (key.to_owned(), key.to_owned());
    let set_apart = shown.change(move |_: MouseEvent| {
        Some(PieceEdit::Apart {
            zone: of_apart.clone(),
            apart: !is_apart,
        })
    });
    let usual = shown.piece.usually_paints(key);
    let choice = (is_painted == usual).then_some(!is_painted);
    let paint = shown.change(move |_: MouseEvent| {
        Some(PieceEdit::ZonePainted {
            zone: of_paint.clone(),
            painted: choice,
        })
    });
    html! {
        <div class="buttons">
            if is_painted {
                if is_apart {
                    { button("as-the-piece", "Finish it like the rest", set_apart) }
                } else {
                    { button("on-its-own", "Give it its own finish", set_apart) }
                }
                { button("dont-paint", "Don\u{2019}t paint it", paint) }
            } else {
                { button("paint-it", "Paint it", paint) }
            }
        </div>
    }
}
