//! The same finish done with a brush, a roller or a sprayer.

use units::System;
use workshop::WayColumn;
use workshop::out::verdict_word;

use super::show::{film, volume, wrapped};
use crate::table::{Align, Table};

/// What each way takes of each material, at the planned coats and at equal film.
pub(super) fn table(ways: &[WayColumn], system: System) -> String {
    let mut table = Table::new(&[
        ("Tool", Align::Left),
        ("Stage", Align::Left),
        ("Likely", Align::Right),
        ("Can", Align::Left),
        ("Dry film", Align::Right),
        ("Same-film coats", Align::Right),
        ("Same-film likely", Align::Right),
    ]);
    for way in ways {
        for (place, figure) in way.figures.iter().enumerate() {
            let label = if place == 0 { way.label } else { "" };
            let thickness = figure.film.map(|estimate| film(estimate.value, system));
            table.row([
                label.into(),
                figure.id.clone(),
                volume(figure.likely, system),
                figure.verdict.map_or("-", verdict_word).into(),
                thickness.unwrap_or_else(|| "-".into()),
                figure.coats_for_equal_film.to_string(),
                volume(figure.likely_at_equal_film, system),
            ]);
        }
    }
    table.to_string()
}

/// How long each way takes, and what never stays on the piece.
pub(super) fn whole(ways: &[WayColumn], system: System) -> String {
    let lines = ways.iter().map(|way| {
        let lost = way.planned.lost.iter();
        let lost: Vec<String> = lost
            .map(|(place, amount)| format!("{} {}", place.name(), volume(*amount, system)))
            .collect();
        let lost = if lost.is_empty() {
            "nothing".into()
        } else {
            lost.join(", ")
        };
        let (value, spread) = (
            way.planned.minutes.value,
            way.planned.minutes.expanded_uncertainty(),
        );
        wrapped(
            &format!(
                "{}: {:.0} to {:.0} minutes of work. Wasted: {lost}.",
                way.label,
                (value - spread).max(0.0),
                value + spread
            ),
            2,
        )
    });
    lines.collect()
}
