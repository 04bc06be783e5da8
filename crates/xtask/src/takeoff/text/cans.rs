//! Whether the cans in hand are enough, what they do instead, and which to buy.

use coatings::Verdict;
use coatings::can::{ChoiceError, show_price};
use units::{System, Volume};
use workshop::{Buy, Colour, Piece, Takeoff, Workshop, cans_to_buy, shopping, takeoffs};

use super::show::{short, some, verdict, volume, wrapped};
use super::zones::zone_label;
use crate::table::{Align, Table};

/// The longest list of cans in the table, in characters.
const CANS: usize = 40;
/// The longest name of a material in the table of all pieces, in characters.
const MATERIAL: usize = 28;

/// A line for the can in hand of each material; nothing if there is none at all.
pub fn table(takeoff: &Takeoff, system: System) -> String {
    if takeoff.materials.iter().all(|line| line.in_hand.is_none()) {
        return String::new();
    }
    let mut table = Table::new(&[
        ("Stage", Align::Left),
        ("Can", Align::Left),
        ("How full", Align::Left),
        ("Is it enough", Align::Left),
        ("Left", Align::Right),
        ("Lacking", Align::Right),
        ("Most coats", Align::Right),
    ]);
    let in_hand = takeoff
        .materials
        .iter()
        .filter_map(|line| Some((line, line.in_hand.as_ref()?)));
    for (line, hand) in in_hand {
        let some = |amount| some(amount, Volume::ZERO, |amount| volume(amount, system));
        table.row([
            line.id.clone(),
            hand.can.label.into(),
            hand.level_label().into(),
            verdict(hand.enough.verdict, hand.enough.probability),
            some(hand.enough.left),
            some(hand.enough.lacking),
            hand.enough.most_coats.to_string(),
        ]);
    }
    table.to_string()
}

/// The zones that a can does which is not enough for all.
pub fn instead(piece: &Piece, takeoff: &Takeoff) -> String {
    let in_hand = takeoff
        .materials
        .iter()
        .filter_map(|line| Some((line, line.in_hand.as_ref()?)));
    let not_enough = in_hand.filter(|(_, hand)| hand.enough.verdict != Verdict::Enough);
    let lines = not_enough.map(|(line, hand)| {
        let zones = hand.enough.zones.iter();
        let zones: Vec<String> = zones
            .filter_map(|zone| takeoff.job.zones.get(*zone))
            .map(|zone| zone_label(&piece.zone_label(&zone.key)))
            .collect();
        if zones.is_empty() {
            format!("{}: this can does no whole zone.\n", line.id)
        } else {
            wrapped(
                &format!("{}: this can does instead: {}.", line.id, zones.join("; ")),
                2,
            )
        }
    });
    lines.collect()
}

/// The cans to buy of each material, besides what is in hand.
pub fn to_buy(workshop: &Workshop, takeoff: &Takeoff) -> String {
    let lines = takeoff
        .materials
        .iter()
        .map(|line| (line.id.clone(), cans_to_buy(workshop, line)));
    bought("Stage", lines.collect(), workshop)
}

/// The cans to buy for all pieces together, where there are several.
pub fn together(workshop: &Workshop) -> String {
    if workshop.pieces.len() < 2 {
        return String::new();
    }
    let lines = shopping(workshop, &takeoffs(workshop)).into_iter().map(|line| {
        let colour = line
            .colour
            .map_or_else(String::new, |colour| format!(", {}", Colour(colour).write()));
        (
            format!("{}{colour}", short(&line.material.name, MATERIAL)),
            line.buy,
        )
    });
    let table = bought("All pieces", lines.collect(), workshop);
    if table.is_empty() {
        table
    } else {
        format!("\n\n{table}")
    }
}

fn bought(what: &str, lines: Vec<(String, Result<Buy, ChoiceError>)>, workshop: &Workshop) -> String {
    if lines.is_empty() {
        return String::new();
    }
    let sure = format!("For {} %", workshop.settings.confidence.percent());
    let mut table = Table::new(&[
        (what, Align::Left),
        (&sure, Align::Right),
        ("To buy", Align::Left),
        ("Price", Align::Right),
        ("Left", Align::Right),
    ]);
    let mut remarks = String::new();
    for (name, buy) in lines {
        let shown = |amount| volume(amount, workshop.units);
        match buy {
            Ok(buy) => {
                if !buy.purchase.proven {
                    remarks.push_str(&format!("{name}: there may be a better choice of cans.\n"));
                }
                let cans: Vec<String> = buy
                    .cans
                    .iter()
                    .map(|(can, count)| format!("{count} \u{d7} {}", can.label))
                    .collect();
                table.row([
                    name,
                    shown(buy.need),
                    short(&cans.join(", "), CANS),
                    buy.price.map_or_else(|| "-".into(), show_price),
                    some(buy.left.unwrap_or_default().likely, Volume::ZERO, shown),
                ]);
            }
            Err(error) => remarks.push_str(&wrapped(&format!("{name}: {error}"), 2)),
        }
    }
    format!("{table}{remarks}")
}
