//! Which surfaces are painted, and the zone of each.

use geometry::{Exposure, Side, Surface, SurfaceId, View, Zone};
use units::Area;

use super::notice::Notice;
use crate::document::{Piece, SurfaceChoice};
use crate::edit::BrushTo;

/// A surface and whether it is painted.
#[derive(Clone, Debug, PartialEq)]
pub struct SurfaceLine {
    /// The surface with its math.
    pub surface: Surface,
    /// The key of its zone.
    pub zone: String,
    /// True if it is painted.
    pub painted: bool,
    /// True if its zone is painted. If this differs, the maker chose for this surface alone.
    pub painted_with_zone: bool,
}

/// A zone of one piece: surfaces with one finish.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneLine {
    /// Its key.
    pub key: String,
    /// Its label.
    pub label: String,
    /// True if it is painted.
    pub painted: bool,
    /// The net area of its painted surfaces by orientation, in the order of [`geometry::Orientation::ALL`].
    pub areas: [Area; 3],
    /// The net area of its surfaces that are not painted.
    pub left: Area,
}

/// Returns true if most of these faces are painted, by area. A leg that belongs to a side does not decide for
/// the side.
pub fn are_finished(faces: &[&SurfaceLine]) -> bool {
    let area = |painted: bool| -> Area {
        let of = faces.iter().filter(|line| line.painted == painted);
        of.map(|line| line.surface.net).sum()
    };
    area(true) > area(false)
}

/// Returns the faces of boards and legs that are visible from a side of the piece. These are the faces a
/// maker skips when the left or right side is against a wall. Edges of tops and fronts are not included,
/// because they are visible from the front.
pub fn side_faces(surfaces: &[SurfaceLine], side: Side) -> impl Iterator<Item = &SurfaceLine> {
    let faces: Vec<&SurfaceLine> = surfaces
        .iter()
        .filter(|line| {
            let of = &line.surface;
            let is_there = of.id.side == side && of.id.exposure == Exposure::Outside && !of.is_edge;
            let is_of_case = matches!(of.id.part.kind.zone(), Zone::Body | Zone::Base);
            is_there && is_of_case && of.takes_finish()
        })
        .collect();
    let view = if side == Side::Left {
        View::Left
    } else {
        View::Side
    };
    let near = move |line: &SurfaceLine| view.nearness(&line.surface);
    let (low, high) = faces
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), line| {
            (low.min(near(line)), high.max(near(line)))
        });
    // The legs at the other end have such faces too.
    faces
        .into_iter()
        .filter(move |line| near(line) >= (low + high) / 2.0)
}

/// Returns the faces that one touch in the drawing selects: all visible faces of an open row if the touched
/// face is its back, otherwise the face alone. Only faces that can be painted.
pub fn touched_faces<'a>(piece: &Piece, surfaces: &'a [SurfaceLine], touched: &str) -> Vec<&'a SurfaceLine> {
    let all = surfaces.iter().map(|line| &line.surface);
    let Some(face) = all.clone().find(|surface| surface.id.to_string() == touched) else {
        return vec![];
    };
    let furniture = piece.furniture();
    let together = furniture
        .checked()
        .map_or_else(|_| vec![face.id], |checked| checked.touched_with(all, &face.id));
    let is_meant = |line: &&SurfaceLine| line.surface.takes_finish() && together.contains(&line.surface.id);
    surfaces.iter().filter(is_meant).collect()
}

/// Returns what a switch does with these faces. If they are painted, it skips them. Otherwise it paints them,
/// with their zones if those are painted.
pub fn switched(faces: &[&SurfaceLine], finished: bool) -> BrushTo {
    match finished {
        true => BrushTo::Left,
        false if faces.iter().all(|line| line.painted_with_zone) => BrushTo::WithZone,
        false => BrushTo::Painted,
    }
}

/// Returns the maker's choices for surfaces that the piece does not have.
pub(super) fn idle_choices(piece: &Piece, surfaces: &[SurfaceLine]) -> Vec<Notice> {
    if piece.choices.is_empty() {
        return vec![];
    }
    let known: Vec<String> = surfaces.iter().map(|line| line.surface.id.to_string()).collect();
    let idle = piece.choices.keys().filter(|name| !known.contains(name));
    idle.map(|surface| Notice::NoSurface {
        surface: surface.clone(),
    })
    .collect()
}

pub(super) fn surface_lines(piece: &Piece, surfaces: Vec<Surface>) -> Vec<SurfaceLine> {
    let lines = surfaces.into_iter();
    lines.map(|surface| surface_line(piece, surface)).collect()
}

fn surface_line(piece: &Piece, surface: Surface) -> SurfaceLine {
    let zone = zone_of(piece, &surface.id, choice(piece, &surface.id));
    SurfaceLine {
        painted: painted_zone(piece, &surface.id, surface.net).is_some(),
        painted_with_zone: surface.takes_finish() && is_zone_painted(piece, zone),
        zone: zone.to_owned(),
        surface,
    }
}

fn choice<'a>(piece: &'a Piece, surface: &SurfaceId) -> Option<&'a SurfaceChoice> {
    if piece.choices.is_empty() {
        return None;
    }
    piece.choices.get(&surface.to_string())
}

fn zone_of<'a>(piece: &Piece, surface: &SurfaceId, choice: Option<&'a SurfaceChoice>) -> &'a str {
    choice
        .and_then(|choice| choice.zone.as_deref())
        .unwrap_or_else(|| surface.usual_zone(piece.styles.stand).key())
}

fn is_zone_painted(piece: &Piece, key: &str) -> bool {
    let chosen = piece.zones.get(key).and_then(|zone| zone.painted);
    chosen.unwrap_or_else(|| piece.usually_paints(key))
}

/// Returns the zone of a surface with this net area, or `None` if it is not painted.
pub(super) fn painted_zone<'a>(piece: &'a Piece, surface: &SurfaceId, net: Area) -> Option<&'a str> {
    let choice = choice(piece, surface);
    let zone = zone_of(piece, surface, choice);
    let painted = choice.and_then(|choice| choice.painted);
    (surface.takes_finish(net) && painted.unwrap_or_else(|| is_zone_painted(piece, zone))).then_some(zone)
}

/// Returns the built-in zones in order, then the added ones.
pub(super) fn keys(piece: &Piece) -> impl Iterator<Item = &str> {
    let usual = Zone::ALL.into_iter().map(|zone| zone.key());
    let own = piece
        .zones
        .keys()
        .map(String::as_str)
        .filter(|key| Zone::by_key(key).is_none());
    usual.chain(own)
}

/// Returns every zone that has a surface, and all added ones.
pub(super) fn zones(piece: &Piece, surfaces: &[SurfaceLine]) -> Vec<ZoneLine> {
    keys(piece)
        .filter_map(|key| {
            let of_zone = surfaces
                .iter()
                .filter(|line| line.zone == key && line.surface.takes_finish());
            let mut line = ZoneLine {
                key: key.to_owned(),
                label: piece.zone_label(key),
                painted: is_zone_painted(piece, key),
                areas: [Area::ZERO; 3],
                left: Area::ZERO,
            };
            let mut count = 0;
            for surface in of_zone {
                count += 1;
                if surface.painted {
                    for (sum, area) in line.areas.iter_mut().zip(surface.surface.by_orientation()) {
                        *sum += area;
                    }
                } else {
                    line.left += surface.surface.net;
                }
            }
            (count > 0 || Zone::by_key(key).is_none()).then_some(line)
        })
        .collect()
}
