//! The takeoff for people: the answer first, and tables of at most 110 columns, in the units of the file.

mod finish;
mod materials;
mod show;
mod summary;
mod surfaces;
mod ways;
mod working;
mod zones;

use std::rc::Rc;

use geometry::{Edges, Overlap};
use units::{System, show_length};
use workshop::{Analysis, Notice, Piece, Takeoff};

use super::{Form, plain};
use show::{long, wrapped};

/// The takeoff of every piece, and what to buy for all of them.
pub(super) fn of(analysis: &Analysis, form: Form) -> String {
    let pieces = analysis.workshop().pieces.iter();
    let pieces = pieces.map(|piece| of_piece(analysis, piece, form));
    let mut texts: Vec<String> = pieces.chain([summary::shopping_list(analysis)]).collect();
    texts.retain(|text| !text.is_empty());
    texts.join(if form.faces || form.math { "\n\n" } else { "\n" })
}

fn of_piece(analysis: &Analysis, piece: &Rc<Piece>, form: Form) -> String {
    let workshop = analysis.workshop();
    let system = workshop.units;
    let takeoff = analysis.takeoff(piece);
    let takeoff = match &*takeoff {
        Ok(takeoff) => takeoff,
        Err(problems) => {
            let show = |length| show_length(length, system);
            let lines = problems
                .iter()
                .map(|problem| format!("  {}\n", problem.message(show)));
            return format!(
                "{}: the measurements don't fit.\n{}",
                plain(&piece.name),
                lines.collect::<String>()
            );
        }
    };
    let mut sections = vec![head(analysis, piece, takeoff)];
    if form.faces {
        let edges: Edges = analysis.edges(piece).iter().map(|(_, edges)| *edges).sum();
        sections.extend([
            surfaces::table(takeoff, system),
            zones::table(takeoff, system),
            finish::of(workshop, piece, takeoff),
            edge_lengths(edges, system),
        ]);
    }
    if form.math {
        let ways = analysis.ways(piece);
        sections.extend([
            materials::table(takeoff, system),
            materials::whys(takeoff, system),
            ways::table(&ways, system),
            ways::whole(&ways, system),
            working::of(piece, takeoff),
        ]);
    }
    sections.retain(|section| !section.is_empty());
    sections.join("\n")
}

fn head(analysis: &Analysis, piece: &Rc<Piece>, takeoff: &Takeoff) -> String {
    let workshop = analysis.workshop();
    let name = plain(&piece.name);
    let line = "=".repeat(name.chars().count());
    format!(
        "{name}\n{line}\n{}{}{}{}",
        summary::area_to_coat(workshop, piece, takeoff),
        summary::materials(workshop, takeoff, &analysis.cans(piece)),
        overlaps(&takeoff.overlaps, workshop.units),
        notices(&takeoff.notices, workshop.units),
    )
}

/// What is sanded round, cleaned out and taped off on one piece.
fn edge_lengths(edges: Edges, system: System) -> String {
    let [arrises, corners, borders] =
        [edges.arrises, edges.corners, edges.borders].map(|length| long(length, system));
    format!("Edges of one piece: {arrises} outer edges, {corners} inside corners, {borders} edges to tape\n")
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
            "Warning: {} and {} overlap by {}. Both areas are too large.\n",
            overlap.a.label(),
            overlap.b.label(),
            show_length(overlap.depth, system)
        )
    };
    let mut text: String = overlaps.iter().take(MOST_OVERLAPS).map(warning).collect();
    if let Some(more) = overlaps.len().checked_sub(MOST_OVERLAPS).filter(|more| *more > 0) {
        text.push_str(&format!("Warning: {more} more pairs of parts overlap.\n"));
    }
    text
}
