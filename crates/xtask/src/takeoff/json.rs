//! The takeoff for programs. The unit stands in the name of each figure: metres, square metres, litres.

use geometry::{Edges, Overlap};
use serde_json::{Value, json};
use units::{Area, Length, show_length};
use workshop::{
    MaterialLine, Piece, SurfaceLine, Takeoff, ToolColumn, ToolFigure, Workshop, ZoneLine, edges, takeoff,
};

use super::{stage_word, verdict_word};

/// The takeoff of every piece.
pub fn of(workshop: &Workshop) -> Value {
    let pieces = workshop.pieces.iter().map(|piece| of_piece(workshop, piece));
    json!({ "title": workshop.title, "pieces": pieces.collect::<Vec<_>>() })
}

fn of_piece(workshop: &Workshop, piece: &Piece) -> Value {
    match takeoff(piece) {
        Ok(takeoff) => of_takeoff(piece, &takeoff),
        Err(problems) => {
            let show = |length| show_length(length, workshop.units);
            let sentences = problems.iter().map(|problem| problem.message(show));
            json!({
                "name": piece.name,
                "count": piece.count,
                "problems": sentences.collect::<Vec<_>>(),
            })
        }
    }
}

fn of_takeoff(piece: &Piece, takeoff: &Takeoff) -> Value {
    json!({
        "name": piece.name,
        "count": piece.count,
        "painted_each_m2": takeoff.painted_each.as_square_metres(),
        "painted_m2": takeoff.painted.area.as_square_metres(),
        "painted_standard_uncertainty_m2": takeoff.painted.standard_uncertainty.as_square_metres(),
        "surfaces": takeoff.surfaces.iter().map(surface).collect::<Vec<_>>(),
        "zones": takeoff.zones.iter().map(zone).collect::<Vec<_>>(),
        "edges_each": edges(piece).ok().map(edge_lengths),
        "overlaps": takeoff.overlaps.iter().map(overlap).collect::<Vec<_>>(),
        "materials": takeoff.materials.iter().map(material).collect::<Vec<_>>(),
        "tools": takeoff.tools.iter().map(tool).collect::<Vec<_>>(),
    })
}

fn surface(line: &SurfaceLine) -> Value {
    let surface = &line.surface;
    let deductions = surface.deductions.iter().map(|deduction| {
        json!({
            "by": deduction.by.to_string(),
            "by_label": deduction.by.label(),
            "area_m2": deduction.area.as_square_metres(),
        })
    });
    json!({
        "name": surface.id.to_string(),
        "part": surface.id.part.to_string(),
        "part_label": surface.id.part.label(),
        "label": surface.side_label(),
        "gross_m2": surface.gross.as_square_metres(),
        "deductions": deductions.collect::<Vec<_>>(),
        "profile_multiplier": surface.multiplier,
        "net_m2": surface.net.as_square_metres(),
        "net_by_orientation": orientations(surface.by_orientation()),
        "takes_finish": surface.takes_finish(),
        "zone": line.zone,
        "painted": line.painted,
        "painted_with_zone": line.painted_with_zone,
    })
}

fn zone(line: &ZoneLine) -> Value {
    json!({
        "zone": line.key,
        "label": line.label,
        "painted": line.painted,
        "painted_by_orientation": orientations(line.areas),
        "left_m2": line.left.as_square_metres(),
    })
}

fn orientations(areas: [Area; 3]) -> Value {
    let [up, upright, down] = areas.map(Area::as_square_metres);
    json!({ "up_m2": up, "upright_m2": upright, "down_m2": down })
}

fn edge_lengths(edges: Edges) -> Value {
    let [arrises, corners, borders] = [edges.arrises, edges.corners, edges.borders].map(Length::as_metres);
    json!({ "arrises_m": arrises, "corners_m": corners, "borders_m": borders })
}

fn overlap(overlap: &Overlap) -> Value {
    json!({
        "parts": [overlap.a.to_string(), overlap.b.to_string()],
        "labels": [overlap.a.label(), overlap.b.label()],
        "depth_m": overlap.depth.as_metres(),
    })
}

fn material(line: &MaterialLine) -> Value {
    json!({
        "stage": stage_word(line.stage),
        "material": line.material.key,
        "tool": line.tool.key,
        "coats": line.coats,
        "low_l": line.amount.low().as_litres(),
        "likely_l": line.amount.likely().as_litres(),
        "high_l": line.amount.high().as_litres(),
        "can": line.can.key,
        "can_l": line.can.volume().as_litres(),
        "verdict": verdict_word(line.enough.verdict),
        "probability_enough": line.enough.probability,
    })
}

fn tool(column: &ToolColumn) -> Value {
    let figures = column.figures.iter().map(figure);
    json!({ "tool": column.tool.key, "stages": figures.collect::<Vec<_>>() })
}

fn figure(figure: &ToolFigure) -> Value {
    let ToolFigure { amount, enough, .. } = figure;
    json!({
        "stage": stage_word(figure.stage),
        "coats": figure.coats,
        "coats_for_equal_film": figure.coats_for_equal_film,
        "low_l": amount.low().as_litres(),
        "likely_l": amount.likely().as_litres(),
        "high_l": amount.high().as_litres(),
        "verdict": verdict_word(enough.verdict),
        "probability_enough": enough.probability,
    })
}
