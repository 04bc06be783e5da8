//! The math of each amount: formulas and their inputs.

use coatings::{DemandWorking, LayerWorking, Provenance, Quantity, Working};
use units::show_number;
use workshop::{Piece, Takeoff};

use super::materials::name;
use super::show::{WIDTH, short, wrapped};
use super::zones::zone_label;

/// The math of every amount, in the units of the formulas.
pub(super) fn of(piece: &Piece, takeoff: &Takeoff) -> String {
    let mut text = String::from("Math\n");
    for line in &takeoff.materials {
        if let Some(working) = takeoff.working_of(line) {
            text.push_str(&format!("\n{}\n", name(line)));
            need(&mut text, piece, takeoff, &working);
        }
    }
    text
}

fn need(text: &mut String, piece: &Piece, takeoff: &Takeoff, working: &DemandWorking) {
    for of_layer in &working.layers {
        layer(text, piece, takeoff, of_layer);
    }
    if !working.kept.is_empty() {
        text.push_str("  Left in the tools\n");
    }
    for kept in &working.kept {
        quantity(text, kept);
    }
    text.push_str(&format!("  Total {} L\n", show_number(working.litres)));
}

fn layer(text: &mut String, piece: &Piece, takeoff: &Takeoff, layer: &LayerWorking) {
    let zone = takeoff.job.zones.get(layer.zone);
    let label = zone.map_or_else(String::new, |zone| zone_label(&piece.zone_label(&zone.key)));
    let narrow = if layer.narrow { ", narrow parts" } else { "" };
    text.push_str(&format!("  {label}{narrow}\n"));
    for working in std::iter::once(&layer.litres).chain(&layer.dry_film) {
        formula(text, working);
    }
}

fn formula(text: &mut String, working: &Working) {
    let result = &working.result;
    text.push_str(&format!("    {} = {}\n", result.symbol, working.formula));
    for term in &working.terms {
        quantity(text, term);
    }
    quantity(text, result);
}

/// A line with the value, and below it where the value comes from.
fn quantity(text: &mut String, quantity: &Quantity) {
    let unit = quantity.measure.sign();
    let uncertainty = if quantity.standard_uncertainty > 0.0 {
        format!("\u{b1} {}", show_number(quantity.standard_uncertainty))
    } else {
        String::new()
    };
    let head = format!(
        "      {:<8} {:>10} {unit:<5} {uncertainty:<12} ",
        quantity.symbol,
        show_number(quantity.value)
    );
    let room = WIDTH - head.chars().count();
    text.push_str(&format!("{head}{}\n", short(&quantity.meaning, room)));
    if let Some((source, certainty)) = quantity.source {
        text.push_str(&wrapped(
            &format!("{}{}", " ".repeat(10), from(source, certainty)),
            12,
        ));
    }
}

fn from(source: &str, certainty: Provenance) -> String {
    format!("{source} ({})", certainty.label())
}
