//! The alternative ways to apply the same finish.

use serde::Serialize;

use super::materials::{PlaceReport, ToBuy, verdict_word};
use crate::takeoff::{WayColumn, WayFigure};

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct WayReport {
    way: &'static str,
    label: &'static str,
    materials: Vec<FigureReport>,
    lost: Vec<PlaceReport>,
    minutes: f64,
    minutes_standard_uncertainty: f64,
    remarks: Vec<&'static str>,
    at_hand: bool,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct FigureReport {
    id: String,
    likely_litres: f64,
    minutes: f64,
    minutes_standard_uncertainty: f64,
    verdict: Option<&'static str>,
    to_buy: ToBuy,
    dry_film_metres: Option<f64>,
    dry_film_standard_uncertainty_metres: Option<f64>,
    coats_for_equal_film: u32,
    likely_at_equal_film_litres: f64,
}

impl WayReport {
    pub(super) fn of(way: &WayColumn) -> Self {
        let lost = way.planned.lost.iter().map(|(place, volume)| PlaceReport {
            place: place.name(),
            litres: volume.as_litres(),
        });
        WayReport {
            way: way.key,
            label: way.label,
            materials: way.figures.iter().map(FigureReport::of).collect(),
            lost: lost.collect(),
            minutes: way.planned.minutes.value,
            minutes_standard_uncertainty: way.planned.minutes.standard_uncertainty,
            remarks: way.remarks.clone(),
            at_hand: way.is_at_hand,
        }
    }
}

impl FigureReport {
    fn of(figure: &WayFigure) -> Self {
        let film = figure.film;
        FigureReport {
            id: figure.id.clone(),
            likely_litres: figure.likely.as_litres(),
            minutes: figure.minutes.value,
            minutes_standard_uncertainty: figure.minutes.standard_uncertainty,
            verdict: figure.verdict.map(verdict_word),
            to_buy: ToBuy::of(&figure.buy),
            dry_film_metres: film.map(|film| film.value.as_metres()),
            dry_film_standard_uncertainty_metres: film.map(|film| film.standard_uncertainty.as_metres()),
            coats_for_equal_film: figure.coats_for_equal_film,
            likely_at_equal_film_litres: figure.likely_at_equal_film.as_litres(),
        }
    }
}
