//! The ways of doing the same finish, as JSON.

use serde_json::{Value, json};
use workshop::{WayColumn, WayFigure};

use super::materials::to_buy;
use crate::takeoff::verdict_word;

pub fn way(way: &WayColumn) -> Value {
    let lost = way.planned.lost.iter();
    let lost = lost.map(|(place, volume)| json!({ "place": place, "volume_l": volume.as_litres() }));
    json!({
        "way": way.key,
        "label": way.label,
        "materials": way.figures.iter().map(figure).collect::<Vec<_>>(),
        "lost": lost.collect::<Vec<_>>(),
        "time_min": way.planned.minutes.value,
        "time_standard_uncertainty_min": way.planned.minutes.standard_uncertainty,
        "remarks": way.remarks,
    })
}

fn figure(figure: &WayFigure) -> Value {
    let film = figure.film;
    json!({
        "id": figure.id,
        "likely_l": figure.likely.as_litres(),
        "verdict": figure.verdict.map(verdict_word),
        "to_buy": to_buy(&figure.buy),
        "dry_film_m": film.map(|film| film.value.as_metres()),
        "dry_film_standard_uncertainty_m": film.map(|film| film.standard_uncertainty.as_metres()),
        "coats_for_equal_film": figure.coats_for_equal_film,
        "likely_at_equal_film_l": figure.likely_at_equal_film.as_litres(),
    })
}
