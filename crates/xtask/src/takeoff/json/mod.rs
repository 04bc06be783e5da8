//! The takeoff for programs. The unit stands in the name of each figure: metres, square metres, litres, minutes.

mod materials;
mod schemes;
mod ways;
mod working;

use geometry::{Edges, Overlap};
use serde_json::{Value, json};
use units::{Area, Length, show_length};
use workshop::{
    Colour, Piece, SurfaceLine, Takeoff, Workshop, ZoneLine, compare, edges_by_zone, shopping, takeoff_in,
    takeoffs,
};

/// The takeoff of every piece; with the working of each amount if that is wanted.
pub fn of(workshop: &Workshop, working: bool) -> Value {
    let pieces = workshop
        .pieces
        .iter()
        .map(|piece| of_piece(workshop, piece, working));
    let shopping = shopping(workshop, &takeoffs(workshop));
    let shopping = shopping.iter().map(|line| {
        json!({
            "material": line.material.key,
            "colour": line.colour.map(|colour| Colour(colour).write()),
            "pieces": line.pieces,
            "to_buy": materials::to_buy(&line.buy),
        })
    });
    json!({
        "title": workshop.title,
        "pieces": pieces.collect::<Vec<_>>(),
        "together": shopping.collect::<Vec<_>>(),
    })
}

fn of_piece(workshop: &Workshop, piece: &Piece, working: bool) -> Value {
    match takeoff_in(workshop, piece) {
        Ok(takeoff) => {
            let mut value = of_takeoff(workshop, piece, &takeoff);
            if working {
                value["workings"] = working::of(&takeoff);
            }
            value
        }
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

fn of_takeoff(workshop: &Workshop, piece: &Piece, takeoff: &Takeoff) -> Value {
    let edges = edges_by_zone(piece).unwrap_or_default();
    let ways = compare(workshop, piece, takeoff, &edges);
    let edges: Edges = edges.into_iter().map(|(_, edges)| edges).sum();
    let materials = takeoff.materials.iter();
    let materials = materials.map(|line| materials::line(workshop, takeoff, line));
    json!({
        "name": piece.name,
        "count": piece.count,
        "painted_each_m2": takeoff.painted_each.as_square_metres(),
        "painted_m2": takeoff.painted.value.as_square_metres(),
        "painted_standard_uncertainty_m2": takeoff.painted.standard_uncertainty.as_square_metres(),
        "surfaces": takeoff.surfaces.iter().map(surface).collect::<Vec<_>>(),
        "zones": takeoff.zones.iter().map(|line| zone(piece, line)).collect::<Vec<_>>(),
        "scheme": schemes::scheme(&piece.scheme),
        "edges_each": edge_lengths(edges),
        "overlaps": takeoff.overlaps.iter().map(overlap).collect::<Vec<_>>(),
        "materials": materials.collect::<Vec<_>>(),
        "ways": ways.iter().map(ways::way).collect::<Vec<_>>(),
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

fn zone(piece: &Piece, line: &ZoneLine) -> Value {
    let own = piece.zones.get(&line.key).and_then(|zone| zone.scheme.as_ref());
    json!({
        "zone": line.key,
        "label": line.label,
        "painted": line.painted,
        "painted_by_orientation": orientations(line.areas),
        "left_m2": line.left.as_square_metres(),
        "own_scheme": own.map(schemes::scheme),
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
