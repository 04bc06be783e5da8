//! What a piece takes of each material, what makes that unsure, and where it goes.

use coatings::Demand;
use units::System;
use workshop::{MaterialLine, Takeoff};

use super::show::{short, volume, wrapped};
use crate::table::{Align, Table};

/// The longest name of a material in the table, in characters.
const MATERIAL_NAME: usize = 28;
/// The longest list of tools in the table, in characters.
const TOOLS: usize = 24;
/// The longest name of a material, and the longest cause, on a line of their own, in characters.
const LINE: usize = 80;
/// The most causes that are named.
const MOST_CAUSES: usize = 3;

/// A line for each material in each colour.
pub(super) fn table(takeoff: &Takeoff, system: System) -> String {
    let mut table = Table::new(&[
        ("Stage", Align::Left),
        ("Material", Align::Left),
        ("Tools", Align::Left),
        ("Coats", Align::Right),
        ("Low", Align::Right),
        ("Likely", Align::Right),
        ("High", Align::Right),
    ]);
    for line in &takeoff.materials {
        let need = &line.need;
        let cells = [
            line.id.clone(),
            short(&need.material.name, MATERIAL_NAME),
            short(&line.tools.join(", "), TOOLS),
            line.coats.to_string(),
        ];
        let amounts = [need.low(), need.likely(), need.high()].map(|amount| volume(amount, system));
        table.row(cells.into_iter().chain(amounts));
    }
    table.to_string()
}

/// What makes each amount unsure, the largest causes first, and where the material goes.
pub(super) fn whys(takeoff: &Takeoff, system: System) -> String {
    let whys = takeoff.materials.iter().map(|line| {
        format!(
            "Why it's a range: {}\n{}{}",
            name(line),
            causes(&line.need),
            shares(&line.need, system)
        )
    });
    whys.collect()
}

/// A material with its colour, which tells two cans of it apart.
pub(super) fn name(line: &MaterialLine) -> String {
    let colour = line.need.colour.map_or_else(String::new, |colour| {
        format!(", {}", workshop::Colour(colour).write())
    });
    format!("{}: {}{colour}", line.id, short(&line.need.material.name, LINE))
}

fn causes(need: &Demand) -> String {
    let largest = need.budget.iter().take(MOST_CAUSES);
    // What rounds to nothing explains nothing.
    let told = largest.filter(|part| part.share >= 0.005);
    let lines = told.map(|part| {
        format!(
            "  {:>3.0}% {}\n",
            part.share * 100.0,
            short(&part.cause.label(), LINE)
        )
    });
    lines.collect()
}

fn shares(need: &Demand, system: System) -> String {
    let shares = need.shares.iter();
    let shares: Vec<String> = shares
        .map(|share| format!("{} {}", share.place.name(), volume(share.volume, system)))
        .collect();
    wrapped(&format!("  Where it goes: {}", shares.join(", ")), 4)
}
