//! Checks changes against their limits.

use units::Length;

use super::added::{Added, AddedShape, MAX_STEPS};
use super::kinds::{Along, Alteration, MAX_CHANGES, MAX_REPEATS};
use crate::furniture::check::outside;
use crate::furniture::columns;
use crate::furniture::fields::{
    FLUTE_RADIUS, FieldId, LengthField, PART_BEHIND, PART_DEPTH, PART_DIAMETER, PART_HEIGHT, PART_PLACE,
    PART_RIGHT, PART_UP, PART_WIDTH, POINT_HEIGHT,
};
use crate::furniture::problem::Problem;

pub(super) fn limits(changes: &[Alteration]) -> Vec<Problem> {
    let mut found = Vec::new();
    let count = |what, given: usize, least, most: usize| {
        (given > most || given < least).then_some(Problem::Count {
            what,
            given,
            least,
            most,
        })
    };
    found.extend(count("Changes to a piece", changes.len(), 0, MAX_CHANGES));
    for (i, change) in changes.iter().enumerate() {
        let mut check_item = |item, field: &'static LengthField, given| {
            let id = FieldId::Alteration {
                change: i,
                item,
                key: field.key,
            };
            found.extend(outside(id, field, given));
        };
        let mut check = |field, given| check_item(0, field, given);
        match change {
            Alteration::Remove { .. } => {}
            Alteration::Resize { along, to, .. } => {
                let field = match along {
                    Along::Width => &PART_WIDTH,
                    Along::Depth => &PART_DEPTH,
                    Along::Height => &PART_HEIGHT,
                };
                check(field, *to);
            }
            Alteration::Move { by, .. } => check(&PART_PLACE, *by),
            Alteration::Repeat { times, every, .. } => {
                check(&PART_PLACE, *every);
                found.extend(count("Repeats of a part", *times, 1, MAX_REPEATS));
            }
            Alteration::Hole { width, height, .. } => {
                check(&PART_WIDTH, *width);
                check(&PART_HEIGHT, *height);
            }
            Alteration::Add(added) => {
                for (field, _) in added.shape.fields() {
                    check(field, added.length(field));
                }
                for place in added.place.iter() {
                    for (field, length) in [&PART_RIGHT, &PART_BEHIND, &PART_UP].into_iter().zip(place) {
                        check(field, *length);
                    }
                }
                for (member, (_, out, up)) in added.members.iter().enumerate() {
                    check_item(member + 1, &PART_WIDTH, *out);
                    check_item(member + 1, &PART_HEIGHT, *up);
                }
                for (point, (height, diameter)) in added.turning.iter().enumerate() {
                    check_item(point + 1, &POINT_HEIGHT, *height);
                    check_item(point + 1, &PART_DIAMETER, *diameter);
                }
                found.extend(added_problems(i, added));
            }
        }
    }
    found
}

fn added_problems(change: usize, added: &Added) -> Vec<Problem> {
    let mut found = Vec::new();
    let steps = added.members.len().max(added.turning.len());
    let least = usize::from(added.shape == AddedShape::Moulding);
    if steps > MAX_STEPS || steps < least {
        found.push(Problem::Count {
            what: "Molding members or turning points",
            given: steps,
            least,
            most: MAX_STEPS,
        });
    }
    let rises = added.turning.is_sorted_by(|below, above| below.0 < above.0);
    if !rises || added.turning.len() == 1 {
        found.push(Problem::TurningOutOfOrder { change });
    }
    let is_column = matches!(added.shape, AddedShape::Column | AddedShape::HalfColumn);
    if is_column && added.flutes > 0 {
        let radius = added.metres(&PART_DIAMETER) / 2.0;
        let around = if added.shape == AddedShape::Column {
            added.flutes.div_ceil(2)
        } else {
            added.flutes
        };
        let room = columns::widest_flute(radius, around);
        if added.metres(&FLUTE_RADIUS) > room {
            found.push(Problem::NoRoom {
                field: FieldId::Alteration {
                    change,
                    item: 0,
                    key: FLUTE_RADIUS.key,
                },
                given: added.length(&FLUTE_RADIUS),
                room: Length::metres(room),
                beside: "the number of flutes",
            });
        }
    }
    found
}
