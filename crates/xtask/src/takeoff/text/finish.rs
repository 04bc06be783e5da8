//! What goes on each group: the lines of the job card.

use units::System;
use workshop::out::{CardPart, CardStep, job_card};
use workshop::{Colour, Piece, Takeoff, Workshop};

use super::show::{area, short, wrapped};
use crate::takeoff::plain;

/// The longest name of a material on a line, in characters.
const MATERIAL: usize = 40;

/// A line for the groups that are finished alike.
pub(super) fn of(workshop: &Workshop, piece: &Piece, takeoff: &Takeoff) -> String {
    let card = job_card(piece, &workshop.materials, takeoff);
    let parts = card.parts.iter();
    parts
        .map(|part| wrapped(&line(part, workshop.units), 2))
        .collect()
}

fn line(part: &CardPart, system: System) -> String {
    let steps: Vec<String> = part.steps.iter().map(step).collect();
    let steps = if steps.is_empty() {
        "no coats".into()
    } else {
        steps.join("; ")
    };
    let colour = part.colour.map_or_else(String::new, |colour| {
        format!("; color {}", Colour(colour).write())
    });
    format!(
        "{}, {}: {steps}{colour}.",
        plain(&part.zones.join(", ")),
        area(part.area, system)
    )
}

fn step(step: &CardStep) -> String {
    let CardStep {
        coats,
        material,
        with,
        ..
    } = step;
    format!("{coats} \u{d7} {}, {with}", short(material, MATERIAL))
}
