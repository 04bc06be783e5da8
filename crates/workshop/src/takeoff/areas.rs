//! The painted areas of a piece by zone and by the width of the parts, and how measuring affects each of
//! them.

use coatings::{Estimate, Patch};
use geometry::{Assembly, BayPlace, FieldId, Furniture, PartId, PlausibleRange, SurfaceId};
use units::{Area, Length};

use super::zones::{self, SurfaceLine};
use crate::document::{Piece, Reading};
use crate::tape::standard_uncertainty;

/// A part is narrow if two of its sizes are below this, because a sprayer's fan is wider. Rules of measuring
/// use the same width (10 cm of girth, IS 1200-15 as reported by several pages). That the fan is as wide is
/// common practice.
const NARROW: f64 = 0.1;

/// How the painted areas of a piece are split: by zone, then into broad and narrow parts.
pub(super) struct Division<'a> {
    /// The keys of zones with a painted surface.
    zones: Vec<&'a str>,
    /// The narrow parts.
    narrow: Vec<PartId>,
}

/// The split areas: the broad parts of each zone, then its narrow ones.
pub(super) struct Areas<'a> {
    /// The keys of the zones.
    pub(super) zones: Vec<&'a str>,
    /// Two patches for each zone, for the whole set.
    pub(super) patches: Vec<Patch>,
    /// The measurement behind each step of a patch.
    causes: Vec<FieldId>,
}

impl Areas<'_> {
    /// Returns the whole painted area.
    pub(super) fn together(&self) -> Estimate<Area> {
        Patch::together(self.patches.iter())
    }

    /// Returns the share of each measurement in the variance of the painted area (JCGM 100, 5.1.2), the
    /// largest first.
    pub(super) fn unsure_by(&self) -> Vec<(FieldId, f64)> {
        let step = |cause: usize| -> f64 {
            let steps = self
                .patches
                .iter()
                .map(|patch| patch.steps[cause].as_square_metres());
            steps.sum()
        };
        let squares = (0..self.causes.len()).map(|cause| step(cause) * step(cause));
        let squares: Vec<f64> = squares.collect();
        let all: f64 = squares.iter().sum();
        let mut shares: Vec<(FieldId, f64)> = Vec::new();
        for (field, square) in self.causes.iter().zip(squares) {
            let share = if all > 0.0 { square / all } else { 0.0 };
            // The causes of one measurement are adjacent.
            match shares.last_mut() {
                Some((last, sum)) if last == field => *sum += share,
                _ => shares.push((*field, share)),
            }
        }
        units::sort_few(&mut shares, |one, other| one.1 > other.1);
        shares
    }
}

impl<'a> Division<'a> {
    pub(super) fn of(assembly: &Assembly, surfaces: &'a [SurfaceLine]) -> Self {
        let mut zones: Vec<&str> = Vec::new();
        for line in surfaces.iter().filter(|line| line.painted) {
            if !zones.contains(&line.zone.as_str()) {
                zones.push(&line.zone);
            }
        }
        let narrow = assembly.parts.iter().filter(|part| {
            let (low, high) = part.bounds();
            let sizes = [0, 1, 2].map(|axis: usize| high[axis] - low[axis]);
            sizes.iter().filter(|size| **size < NARROW).count() >= 2
        });
        Division {
            zones,
            narrow: narrow.map(|part| part.id).collect(),
        }
    }

    /// Returns the painted area of each patch, from the painted surfaces and their zones.
    fn areas<'b>(&self, painted: impl Iterator<Item = (SurfaceId, &'b str, Area)>) -> Vec<Area> {
        let mut areas = vec![Area::ZERO; 2 * self.zones.len()];
        // The surfaces of one part are adjacent.
        let mut last: Option<(PartId, bool)> = None;
        for (SurfaceId { part, .. }, zone, net) in painted {
            let narrow = match last {
                Some((known, narrow)) if known == part => narrow,
                _ => self.narrow.contains(&part),
            };
            last = Some((part, narrow));
            if let Some(place) = self.zones.iter().position(|key| *key == zone) {
                areas[2 * place + usize::from(narrow)] += net;
            }
        }
        areas
    }
}

/// Returns the areas of the whole set without their uncertainty.
pub(super) fn plain<'a>(piece: &Piece, surfaces: &[SurfaceLine], division: &Division<'a>) -> Areas<'a> {
    let count = f64::from(piece.count);
    let painted = surfaces.iter().filter(|line| line.painted);
    let painted = painted.map(|line| (line.surface.id, line.zone.as_str(), line.surface.net));
    let patch = |(place, area): (usize, Area)| Patch {
        area: area * count,
        narrow: place % 2 == 1,
        steps: Vec::new(),
    };
    Areas {
        zones: division.zones.clone(),
        patches: division
            .areas(painted)
            .into_iter()
            .enumerate()
            .map(patch)
            .collect(),
        causes: Vec::new(),
    }
}

/// Returns the areas of the whole set, and how much each changes with each measurement (JCGM 100, 5.1.2). For
/// a reading, the piece is calculated again with the reading increased by its standard uncertainty. A guess
/// is moved to the end of its range on real pieces, and the change of the area is scaled to the root mean
/// square distance. If some pieces do not have the size at all, that is a separate cause, because the area
/// jumps: legs that are not set back end at the wall.
pub(super) fn measured<'a>(
    piece: &Piece,
    furniture: &Furniture,
    surfaces: &[SurfaceLine],
    division: &Division<'a>,
    most_steps: usize,
) -> Areas<'a> {
    let count = f64::from(piece.count);
    let painted = surfaces.iter().filter(|line| line.painted);
    let now = division.areas(painted.map(|line| (line.surface.id, line.zone.as_str(), line.surface.net)));
    let again = |changed: &Furniture| {
        let nets = changed.assembly().ok()?.net_areas().into_iter();
        let painted = nets.filter_map(|(id, net)| Some((id, zones::painted_zone(piece, &id, net)?, net)));
        Some(division.areas(painted))
    };
    let mut patches: Vec<Patch> = now
        .iter()
        .enumerate()
        .map(|(place, area)| Patch {
            area: *area * count,
            narrow: place % 2 == 1,
            steps: Vec::new(),
        })
        .collect();
    let mut causes = Vec::new();
    let mut add = |cause: FieldId, step: Option<Step>| {
        causes.push(cause);
        for (place, patch) in patches.iter_mut().enumerate() {
            let change = step
                .as_ref()
                .map_or(Area::ZERO, |step| (step.areas[place] - now[place]) * step.times);
            patch.steps.push(change * count);
        }
    };
    for field in furniture.fields() {
        let length = furniture.length(field);
        let at = |to: Length| {
            let mut changed = furniture.clone();
            changed.measures.set(field, to);
            again(&changed)
        };
        if furniture.measures.get(field).is_some() {
            let step = stepped(standard_uncertainty(length), |step| at(length + step));
            add(field.id(), step);
            continue;
        }
        let spread = furniture.spread(field);
        add(field.id(), guessed(&spread, length, at));
        if spread.none > 0.0 && length > Length::ZERO {
            let times = spread.none.sqrt();
            add(field.id(), at(Length::ZERO).map(|areas| Step { areas, times }));
        }
    }
    // Only measured rows, bays and changes have an uncertainty of their own.
    let apart = |steps: &[(FieldId, Length)], times: f64| {
        let mut changed = piece.clone();
        for (field, step) in steps {
            changed.stretch(*field, *step * times);
        }
        again(&changed.furniture())
    };
    for steps in in_groups(measured_apart(piece), most_steps) {
        let areas = apart(&steps, 1.0).or_else(|| apart(&steps, -1.0));
        add(steps[0].0, areas.map(|areas| Step { areas, times: 1.0 }));
    }
    Areas {
        zones: division.zones.clone(),
        patches,
        causes,
    }
}

/// The maximum number of steps for readings of rows, bays and changes. Each step calculates the piece again
/// at every key press.
pub(super) const MOST_STEPS: usize = 48;

/// Returns the steps of the readings, by their standard uncertainties. With too many readings, several share
/// a step. Their signs are random, so the squares of the shared steps add up to nearly those of single ones.
fn in_groups(readings: Vec<(FieldId, Length)>, most: usize) -> Vec<Vec<(FieldId, Length)>> {
    let mut groups: Vec<Vec<_>> = Vec::new();
    for (place, (field, length)) in readings.into_iter().enumerate() {
        let step = standard_uncertainty(length);
        match groups.get_mut(place % most) {
            Some(group) if place >= most => group.push((field, step * sign(place))),
            _ => groups.push(vec![(field, step)]),
        }
    }
    groups
}

/// Returns +1 or -1 from a well-mixed bit of the index (the finisher of SplitMix64).
fn sign(place: usize) -> f64 {
    let mut bits = (place as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    if (bits ^ (bits >> 31)) & 1 == 0 { 1.0 } else { -1.0 }
}

/// Returns every measured length of rows, bays and changes.
fn measured_apart(piece: &Piece) -> Vec<(FieldId, Length)> {
    let mut list = Vec::new();
    for upper in [false, true] {
        for (i, bay) in piece.bays_of(upper).iter().enumerate() {
            let place = BayPlace { upper, bay: i + 1 };
            list.extend(
                bay.width
                    .as_ref()
                    .map(|width| (FieldId::BayWidth(place), width.length())),
            );
            for (r, row) in bay.rows.iter().enumerate() {
                let height = row.height.as_ref().map(Reading::length);
                list.extend(height.map(|height| (FieldId::RowHeight(place, r + 1), height)));
            }
        }
    }
    for (change, of) in piece.changes.iter().enumerate() {
        for ((item, key), reading) in &of.readings {
            let field = FieldId::Alteration {
                change,
                item: *item,
                key,
            };
            list.push((field, reading.length()));
        }
    }
    list
}

/// The areas of the piece with one size changed.
struct Step {
    areas: Vec<Area>,
    /// The number of such changes in a standard uncertainty.
    times: f64,
}

/// Steps up, or down if a step up does not fit.
fn stepped(step: Length, areas: impl Fn(Length) -> Option<Vec<Area>>) -> Option<Step> {
    let areas = areas(step).or_else(|| areas(step * -1.0))?;
    Some(Step { areas, times: 1.0 })
}

/// Moves a guess to an end of its range. If neither end fits the other sizes, moves it less far.
fn guessed(
    spread: &PlausibleRange,
    guess: Length,
    areas: impl Fn(Length) -> Option<Vec<Area>>,
) -> Option<Step> {
    let around = spread.around(guess) * (1.0 - spread.none).sqrt();
    let mut closer = [1.0, 0.5, 0.25, 0.125].into_iter();
    closer.find_map(|share| {
        let mut ends = spread.ends(guess).into_iter();
        ends.find_map(|end| {
            let off = (end - guess) * share;
            let areas = areas(guess + off)?;
            let times = around / off;
            Some(Step { areas, times })
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{ChangeKind, PieceChange, PieceId};
    use geometry::{AddedShape, Kind, fields};
    use units::LengthUnit;

    /// Returns a nightstand with this many loose boards, each measured with a tape.
    fn with_boards(boards: usize) -> Piece {
        let mut piece = Piece::new(PieceId("n".into()), Kind::Nightstand);
        for number in 1..=boards {
            let mut board = PieceChange::new(ChangeKind::Add {
                number,
                shape: AddedShape::Board,
                flutes: 0,
                members: vec![],
                points: 0,
                placed: false,
            });
            for (field, inches) in [
                (&fields::PART_WIDTH, 12),
                (&fields::PART_DEPTH, 6),
                (&fields::PART_HEIGHT, 1),
            ] {
                let typed = format!("{}", inches + number % 5);
                board
                    .readings
                    .insert((0, field.key), Reading::new(&typed, LengthUnit::Inch).unwrap());
            }
            piece.changes.push(board);
        }
        piece
    }

    /// Readings that share steps give nearly the same uncertainty as single ones.
    #[test]
    fn readings_in_groups_are_as_sure_as_single_ones() {
        let piece = with_boards(60);
        let furniture = piece.furniture();
        let assembly = furniture.assembly().unwrap();
        let surfaces = zones::surface_lines(&piece, assembly.surfaces());
        let division = Division::of(&assembly, &surfaces);
        let spread = |most| {
            let areas = measured(&piece, &furniture, &surfaces, &division, most);
            let of_changes = areas
                .causes
                .iter()
                .enumerate()
                .filter(|(_, field)| matches!(field, FieldId::Alteration { .. }));
            let squares = of_changes.map(|(cause, _)| {
                let steps = areas
                    .patches
                    .iter()
                    .map(|patch| patch.steps[cause].as_square_metres());
                libm::pow(steps.sum::<f64>(), 2.0)
            });
            squares.sum::<f64>().sqrt()
        };
        let (single, grouped) = (spread(usize::MAX), spread(MOST_STEPS));
        // The mean of 48 squared sums is off by a fifth once in three times, and its root by a tenth.
        assert!((grouped / single - 1.0).abs() < 0.3, "{grouped} for {single}");
    }
}
