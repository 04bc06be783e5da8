//! The takeoff for people: tables of at most 110 columns, in the units of the file.

mod cans;
mod materials;
mod schemes;
mod show;
mod surfaces;
mod ways;
mod working;
mod zones;

use geometry::{Edges, Overlap};
use units::{System, show_length};
use workshop::{Notice, Piece, Takeoff, Workshop, compare, edges_by_zone, takeoff_in};

use super::plain;
use show::{area, long, wrapped};

/// The takeoff of every piece; with the working of each amount if that is wanted.
pub fn of(workshop: &Workshop, working: bool) -> String {
    let pieces = workshop
        .pieces
        .iter()
        .map(|piece| of_piece(workshop, piece, working));
    format!(
        "{}{}",
        pieces.collect::<Vec<_>>().join("\n\n"),
        cans::together(workshop)
    )
}

fn of_piece(workshop: &Workshop, piece: &Piece, working: bool) -> String {
    let system = workshop.units;
    let takeoff = match takeoff_in(workshop, piece) {
        Ok(takeoff) => takeoff,
        Err(problems) => {
            let show = |length| show_length(length, system);
            let lines = problems
                .iter()
                .map(|problem| format!("  {}\n", problem.message(show)));
            return format!(
                "{}: cannot be measured up\n{}",
                plain(&piece.name),
                lines.collect::<String>()
            );
        }
    };
    let edges = edges_by_zone(piece).unwrap_or_default();
    let ways = compare(workshop, piece, &takeoff, &edges);
    let edges: Edges = edges.into_iter().map(|(_, edges)| edges).sum();
    let mut sections = vec![
        head(piece, &takeoff, edges, system),
        surfaces::table(&takeoff, system),
        zones::table(&takeoff, system),
        schemes::of_zones(workshop, piece, &takeoff),
        materials::table(&takeoff, system),
        materials::whys(&takeoff, system),
        cans::table(&takeoff, system),
        cans::instead(piece, &takeoff),
        cans::to_buy(workshop, &takeoff),
        ways::table(&ways, system),
        ways::whole(&ways, system),
    ];
    if working {
        sections.push(working::of(piece, &takeoff));
    }
    sections.retain(|section| !section.is_empty());
    sections.join("\n")
}

fn head(piece: &Piece, takeoff: &Takeoff, edges: Edges, system: System) -> String {
    let each = area(takeoff.painted_each, system);
    let uncertainty = area(takeoff.painted.standard_uncertainty, system);
    let painted = match piece.count {
        1 => each,
        count => format!(
            "{each} each, {} for all {count}",
            area(takeoff.painted.value, system)
        ),
    };
    let name = plain(&piece.name);
    let line = "=".repeat(name.chars().count());
    format!(
        "{name}\n{line}\nPainted area {painted}; standard uncertainty {uncertainty}\n{}{}{}",
        edge_lengths(edges, system),
        overlaps(&takeoff.overlaps, system),
        notices(&takeoff.notices, system),
    )
}

/// What is sanded round, cleaned out and cut in on one piece.
fn edge_lengths(edges: Edges, system: System) -> String {
    let [arrises, corners, borders] =
        [edges.arrises, edges.corners, edges.borders].map(|length| long(length, system));
    format!(
        "Painted edges of one: {arrises} of arrises, {corners} of inner corners, {borders} to cut in or mask\n"
    )
}

/// What was entered and does not count.
fn notices(notices: &[Notice], system: System) -> String {
    let warning = |notice: &Notice| wrapped(&format!("Warning: {}", plain(&notice.message(system))), 2);
    notices.iter().map(warning).collect()
}

/// The most overlaps that are listed.
const MOST_OVERLAPS: usize = 20;

fn overlaps(overlaps: &[Overlap], system: System) -> String {
    let warning = |overlap: &Overlap| {
        format!(
            "Warning: {} and {} run into each other by {}; the areas of both are too large.\n",
            overlap.a.label(),
            overlap.b.label(),
            show_length(overlap.depth, system)
        )
    };
    let mut text: String = overlaps.iter().take(MOST_OVERLAPS).map(warning).collect();
    if let Some(more) = overlaps.len().checked_sub(MOST_OVERLAPS).filter(|more| *more > 0) {
        text.push_str(&format!(
            "Warning: {more} more pairs of parts run into each other.\n"
        ));
    }
    text
}
