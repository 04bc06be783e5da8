//! Applies changes to the parts of a piece, in order.

use units::Length;

use super::added::{Added, AddedShape};
use super::build::built;
use super::kinds::{Along, Alteration, Towards};
use super::limits::limits;
use crate::assembly::Assembly;
use crate::furniture::fields::{FieldId, PART_LENGTH};
use crate::furniture::problem::Problem;
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;

/// The most parts of a piece with all that its maker added and repeated.
const MAX_PARTS: usize = 1000;
/// The distance between parts without a place, meters.
const APART: f64 = 0.1;

/// How far right a piece reaches, meters. It is kept while parts are added, because finding it takes every facet.
struct Ends {
    /// Its parts with a place.
    placed: f64,
    /// All its parts.
    all: f64,
}

impl Ends {
    fn of(piece: &Assembly) -> Self {
        let mut ends = Ends {
            placed: 0.0,
            all: 0.0,
        };
        piece.parts.iter().for_each(|part| ends.add(part));
        ends
    }

    fn add(&mut self, part: &Part) {
        let right = part.bounds().1[0];
        self.all = self.all.max(right);
        if !part.is_loose {
            self.placed = self.placed.max(right);
        }
    }
}

/// The piece with all changes made.
pub(in crate::furniture) fn applied(
    mut piece: Assembly,
    changes: &[Alteration],
) -> Result<Assembly, Vec<Problem>> {
    let problems = limits(changes);
    if !problems.is_empty() {
        return Err(problems);
    }
    piece.by_parts |= changes.iter().any(alters);
    let mut ends = None;
    for (i, change) in changes.iter().enumerate() {
        apply(&mut piece, &mut ends, i, change).map_err(|problem| vec![problem])?;
        if piece.parts.len() > MAX_PARTS {
            return Err(vec![Problem::Count {
                what: "Parts of a piece",
                given: piece.parts.len(),
                least: 1,
                most: MAX_PARTS,
            }]);
        }
    }
    Ok(piece)
}

/// Whether a change alters the parts in their places. Holes do not, nor do added parts without a place.
fn alters(change: &Alteration) -> bool {
    match change {
        Alteration::Hole { .. } => false,
        Alteration::Add(added) => added.place.is_some(),
        _ => true,
    }
}

fn apply(
    piece: &mut Assembly,
    ends: &mut Option<Ends>,
    place: usize,
    change: &Alteration,
) -> Result<(), Problem> {
    if !matches!(change, Alteration::Add(_) | Alteration::Hole { .. }) {
        *ends = None;
    }
    match change {
        Alteration::Remove { part } => {
            let (at, _) = find(piece, place, part)?;
            piece.parts.remove(at);
        }
        Alteration::Resize { part, along, to } => {
            let (_, part) = find(piece, place, part)?;
            *part = resized(part, *along, to.as_metres()).ok_or_else(|| Problem::NotABoard {
                change: place,
                part: part.id.label(),
            })?;
        }
        Alteration::Move { part, towards, by } => {
            let (_, part) = find(piece, place, part)?;
            *part = part.clone().moved(&shift(*towards, by.as_metres()));
        }
        Alteration::Repeat {
            part,
            times,
            towards,
            every,
        } => {
            let (at, part) = find(piece, place, part)?;
            let original = part.clone();
            let repeats = repeats(piece, &original, *times, (*towards, *every));
            piece.parts.splice(at + 1..at + 1, repeats);
        }
        Alteration::Hole {
            surface,
            width,
            height,
        } => {
            let number = piece.holes.len() + 1;
            let id = PartId::nth(PartKind::Hole, number);
            piece.holes.push((id, surface.clone(), *width * *height));
        }
        Alteration::Add(added) => add(piece, ends, place, added)?,
    }
    Ok(())
}

/// The part with this name, and its index.
fn find<'a>(piece: &'a mut Assembly, change: usize, name: &str) -> Result<(usize, &'a mut Part), Problem> {
    let mut parts = piece.parts.iter_mut().enumerate();
    let found = parts.find(|(_, part)| part.id.to_string() == name);
    found.ok_or_else(|| Problem::NoSuchPart {
        change,
        name: name.to_owned(),
    })
}

/// The repeats of a part, without the part itself.
fn repeats(
    piece: &Assembly,
    original: &Part,
    times: usize,
    (towards, every): (Towards, Length),
) -> Vec<Part> {
    // If a part was repeated before, or is a repeat itself, numbering continues, so that names stay unique.
    let last = last_repeat(piece, original.id);
    let repeat = |n: usize| {
        let step = every.as_metres() * n as f64;
        Part {
            id: original.id.repeated(last + n),
            ..original.clone().moved(&shift(towards, step))
        }
    };
    (1..times).map(repeat).collect()
}

fn add(piece: &mut Assembly, ends: &mut Option<Ends>, place: usize, added: &Added) -> Result<(), Problem> {
    let part = built(added);
    let ends = ends.get_or_insert_with(|| Ends::of(piece));
    if let Some(problem) = longer_than_piece(ends, place, added) {
        return Err(problem);
    }
    let part = match added.place {
        Some(_) => part,
        None => Part {
            is_loose: true,
            glued: added.shape.glued(),
            ..beside(ends, part)
        },
    };
    // Two parts with one number, which only a damaged file has, get different names too.
    let id = part.id.repeated(last_repeat(piece, part.id) + 1);
    ends.add(&part);
    piece.parts.push(Part { id, ..part });
    Ok(())
}

/// The highest number among the repeats of a part; 0 if there is no such part.
fn last_repeat(piece: &Assembly, id: PartId) -> usize {
    let family = piece
        .parts
        .iter()
        .filter(|part| part.id.repeated(1) == id.repeated(1));
    family.map(|part| usize::from(part.id.repeat)).max().unwrap_or(0)
}

/// A molding planted on a piece may stick out at both ends by as much as it projects from the wall, for its miters, and
/// no further.
fn longer_than_piece(ends: &Ends, change: usize, added: &Added) -> Option<Problem> {
    let [left, ..] = added.place?;
    if added.shape != AddedShape::Moulding {
        return None;
    }
    let out: f64 = added.members.iter().map(|(_, out, _)| out.as_metres()).sum();
    let room = ends.placed + out - left.as_metres();
    (added.metres(&PART_LENGTH) > room + 1e-9).then(|| Problem::NoRoom {
        field: FieldId::Alteration {
            change,
            item: 0,
            key: PART_LENGTH.key,
        },
        given: added.length(&PART_LENGTH),
        room: Length::metres(room.max(0.0)),
        beside: "where it starts",
    })
}

fn shift(towards: Towards, by: f64) -> nalgebra::Isometry3<f64> {
    let [x, y, z] = match towards {
        Towards::Left => [-by, 0.0, 0.0],
        Towards::Right => [by, 0.0, 0.0],
        Towards::Front => [0.0, -by, 0.0],
        Towards::Back => [0.0, by, 0.0],
        Towards::Up => [0.0, 0.0, by],
        Towards::Down => [0.0, 0.0, -by],
    };
    nalgebra::Isometry3::translation(x, y, z)
}

fn resized(part: &Part, along: Along, to: f64) -> Option<Part> {
    if !part.is_block() {
        return None;
    }
    let (mut low, mut high) = part.bounds();
    let (from, upto) = match along {
        Along::Width => (&mut low[0], &mut high[0]),
        Along::Depth => (&mut low[1], &mut high[1]),
        Along::Height => (&mut low[2], &mut high[2]),
    };
    let middle = (*from + *upto) / 2.0;
    (*from, *upto) = (middle - to / 2.0, middle + to / 2.0);
    Some(Part {
        is_loose: part.is_loose,
        glued: part.glued,
        ..Part::block(part.id, low, high)
    })
}

/// Moves the part to the right of everything else.
fn beside(ends: &Ends, part: Part) -> Part {
    let left = part.bounds().0[0];
    part.moved(&shift(Towards::Right, ends.all + APART - left))
}
