//! Brushing over faces in the drawing, and the effect on them.

use geometry::Zone;
use workshop::{BrushTo, Piece};
use yew::prelude::*;

use super::super::Shown;
use crate::parts::{choice, select};
use crate::state::Action;

/// Shows the choice of what touching the drawing does.
pub fn brush(shown: &Shown) -> Html {
    let present = &shown.app.brush;
    let options = [
        (0, "look", "Show the math"),
        (1, "left", "Don\u{2019}t paint"),
        (2, "painted", "Paint"),
    ];
    let value = match present {
        None => 0,
        Some(BrushTo::Left) => 1,
        Some(BrushTo::Painted) => 2,
        Some(_) => 3,
    };
    let choose = shown.send.reform(|place: i32| {
        Action::Brush(match place {
            1 => Some(BrushTo::Left),
            2 => Some(BrushTo::Painted),
            _ => None,
        })
    });
    let zones = zone_keys(&shown.piece);
    let zones = zones.iter().map(|(key, label)| (key.as_str(), label.as_str()));
    let zone = match present {
        Some(BrushTo::Zone(key)) => key.as_str(),
        _ => "",
    };
    let into = shown
        .send
        .reform(|key: String| Action::Brush(Some(key).filter(|key| !key.is_empty()).map(BrushTo::Zone)));
    let options_of_zones = std::iter::once(("", "No group")).chain(zones);
    html! {
        <div class="row brush">
            { choice("A touch on the drawing", "brush", &options, value, choose) }
            { select("Adds to group", "brush-zone".into(), options_of_zones, zone, into) }
        </div>
    }
}

/// Returns the key and label of every zone that a surface can belong to.
pub fn zone_keys(piece: &Piece) -> Vec<(String, String)> {
    let own = piece.zones.keys().filter(|key| Zone::by_key(key).is_none());
    let usual = Zone::ALL.into_iter().map(|zone| zone.key().to_owned());
    usual
        .chain(own.cloned())
        .map(|key| {
            let label = piece.zone_label(&key);
            (key, label)
        })
        .collect()
}
