//! The order of the coats on a piece. In every zone, each coat comes after the coats under it.

use coatings::Stage;

use crate::takeoff::{MaterialLine, Takeoff};

/// A coat of one material.
pub(super) struct Coat<'a> {
    pub(super) line: &'a MaterialLine,
    /// The number of this coat of the material, starting at 1.
    pub(super) number: u32,
    /// The list indexes of the coats directly under this one, in any zone.
    pub(super) after: Vec<usize>,
}

/// Returns all coats in order. Each comes after the coats under it, and as early as possible. For example,
/// the stain on the top goes on while the paint on the body dries.
pub(super) fn coats(takeoff: &Takeoff) -> Vec<Coat<'_>> {
    let lines = takeoff
        .materials
        .iter()
        .filter(|line| line.need.material.stage != Stage::Clean);
    let mut left: Vec<Coat<'_>> = lines
        .flat_map(|line| {
            (1..=line.coats).map(move |number| Coat {
                line,
                number,
                after: Vec::new(),
            })
        })
        .collect();
    for zone in &takeoff.job.zones {
        let numbers = zone
            .layers
            .iter()
            .flat_map(|layer| (1..=layer.coats).map(move |number| (layer, number)));
        let of_zone: Vec<usize> = numbers
            .filter_map(|(layer, number)| {
                left.iter()
                    .position(|coat| coat.number == number && coat.line.need.is_of(layer))
            })
            .collect();
        for pair in of_zone.windows(2) {
            if !left[pair[1]].after.contains(&pair[0]) {
                left[pair[1]].after.push(pair[0]);
            }
        }
    }
    in_order(left)
}

/// Sorts coats into the order in which they can go on.
fn in_order(mut all: Vec<Coat<'_>>) -> Vec<Coat<'_>> {
    // The index of each coat already applied, and the hours from the first coat until it can be recoated.
    let mut gone: Vec<(usize, f64)> = Vec::new();
    while gone.len() < all.len() {
        let over = |place: usize| gone.iter().find(|(of, _)| *of == place).map(|(_, over)| *over);
        let may_go_on = |place: usize| {
            let mut waits = all[place].after.iter().map(|before| over(*before));
            waits.try_fold(0.0, |most: f64, over| Some(most.max(over?)))
        };
        let left = || (0..all.len()).filter(|place| over(*place).is_none());
        let next = left()
            .filter_map(|place| Some((place, may_go_on(place)?)))
            .min_by(|(_, one), (_, other)| one.total_cmp(other));
        // Two zones use the same materials in opposite order. In that case, the next coat waits for all coats
        // before it.
        let latest = gone.iter().fold(0.0, |most: f64, (_, over)| most.max(*over));
        let Some((place, from)) = next.or_else(|| Some((left().next()?, latest))) else {
            break;
        };
        if next.is_none() {
            all[place].after = gone.iter().map(|(of, _)| *of).collect();
        }
        gone.push((place, from + all[place].line.need.material.recoat.high));
    }
    let new_place = |old: usize| gone.iter().position(|(of, _)| *of == old);
    for coat in &mut all {
        coat.after = coat.after.iter().filter_map(|old| new_place(*old)).collect();
    }
    let mut placed: Vec<(Option<usize>, Coat<'_>)> = all
        .into_iter()
        .enumerate()
        .map(|(old, coat)| (new_place(old), coat))
        .collect();
    units::sort_few(&mut placed, |(one, _), (other, _)| one < other);
    placed.into_iter().map(|(_, coat)| coat).collect()
}
