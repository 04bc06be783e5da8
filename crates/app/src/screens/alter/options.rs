//! The choices and counts of a change.

use geometry::{AddedShape, MAX_REPEATS, MAX_STEPS, Shape, Towards, styles};
use workshop::{ChangeKind, PieceEdit};
use yew::prelude::*;

use super::super::Shown;
use crate::parts::{choice, select, stepper};
use crate::words::towards;

/// The maximum number of flutes offered for a column.
const MAX_FLUTES: u32 = 32;

/// Returns a callback that modifies a change.
fn altered<E: 'static>(
    shown: &Shown,
    place: usize,
    kind: &ChangeKind,
    set: impl Fn(&mut ChangeKind, E) + 'static,
) -> Callback<E> {
    let kind = kind.clone();
    shown.change(move |event| {
        let mut next = kind.clone();
        set(&mut next, event);
        Some(PieceEdit::AlterChange {
            change: place,
            kind: next,
        })
    })
}

/// Shows the choices that apply to the change as a whole.
pub fn options(shown: &Shown, place: usize, kind: &ChangeKind) -> Html {
    match kind {
        ChangeKind::Move { towards, .. } => direction(shown, place, kind, *towards),
        ChangeKind::Repeat { times, towards, .. } => {
            let set = |kind: &mut ChangeKind, count: u32| {
                if let ChangeKind::Repeat { times, .. } = kind {
                    *times = count as usize;
                }
            };
            html! {
                <>
                    { stepper(("How many in all", ""), &format!("times-{}", place + 1), *times as u32,
                        (2, MAX_REPEATS as u32), altered(shown, place, kind, set)) }
                    { direction(shown, place, kind, *towards) }
                </>
            }
        }
        ChangeKind::Add { .. } => added(shown, place, kind),
        ChangeKind::Remove { .. } | ChangeKind::Resize { .. } | ChangeKind::Hole { .. } => Html::default(),
    }
}

fn direction(shown: &Shown, place: usize, kind: &ChangeKind, chosen: Towards) -> Html {
    let set = |kind: &mut ChangeKind, key: String| {
        let found = towards().into_iter().find(|(_, known, _)| *known == key);
        if let (Some((next, ..)), ChangeKind::Move { towards, .. } | ChangeKind::Repeat { towards, .. }) =
            (found, kind)
        {
            *towards = next;
        }
    };
    let value = towards().into_iter().find(|(of, ..)| *of == chosen);
    let options = towards().map(|(_, key, word)| (key, word));
    let change = altered(shown, place, kind, set);
    let id = format!("towards-{}", place + 1);
    select(
        "Direction",
        id,
        options,
        value.map_or("", |(_, key, _)| key),
        change,
    )
}

/// Shows the placement and the counts of an added part.
fn added(shown: &Shown, place: usize, kind: &ChangeKind) -> Html {
    let ChangeKind::Add {
        shape,
        placed,
        flutes,
        members,
        points,
        ..
    } = kind
    else {
        return Html::default();
    };
    let number = place + 1;
    let places = [
        (false, "beside", "Next to the piece"),
        (true, "on", "On the piece"),
    ];
    let set_placed = |kind: &mut ChangeKind, to: bool| {
        if let ChangeKind::Add { placed, .. } = kind {
            *placed = to;
        }
    };
    let counted = match shape {
        AddedShape::Column | AddedShape::HalfColumn => stepper(
            ("Flutes", ""),
            &format!("flutes-{number}"),
            *flutes,
            (0, MAX_FLUTES),
            altered(shown, place, kind, set_flutes),
        ),
        AddedShape::Moulding => {
            let limits = (1, MAX_STEPS as u32);
            let change = altered(shown, place, kind, set_members);
            stepper(
                ("Members", ""),
                &format!("members-{number}"),
                members.len() as u32,
                limits,
                change,
            )
        }
        AddedShape::Turned => {
            let limits = (0, MAX_STEPS as u32);
            let change = altered(shown, place, kind, set_points);
            stepper(
                ("Points along it", ""),
                &format!("points-{number}"),
                *points as u32,
                limits,
                change,
            )
        }
        _ => Html::default(),
    };
    html! {
        <>
            { choice("Place", &format!("place-{number}"), &places, *placed,
                altered(shown, place, kind, set_placed)) }
            { counted }
        </>
    }
}

fn set_flutes(kind: &mut ChangeKind, to: u32) {
    if let ChangeKind::Add { flutes, .. } = kind {
        *flutes = to;
    }
}

/// New members copy the last one.
fn set_members(kind: &mut ChangeKind, to: u32) {
    if let ChangeKind::Add { members, .. } = kind {
        let last = members.last().copied().unwrap_or(Shape::Ogee);
        members.resize(to as usize, last);
    }
}

/// A turning has no points or at least two, so a step to one continues in the same direction.
fn set_points(kind: &mut ChangeKind, to: u32) {
    if let ChangeKind::Add { points, .. } = kind {
        *points = match (*points, to) {
            (0, 1) => 2,
            (_, 1) => 0,
            _ => to as usize,
        };
    }
}

/// Shows the shape of a molding member.
pub fn member(shown: &Shown, place: usize, kind: &ChangeKind, item: usize) -> Html {
    let ChangeKind::Add { members, .. } = kind else {
        return Html::default();
    };
    let Some(shape) = members.get(item - 1) else {
        return Html::default();
    };
    let set = move |kind: &mut ChangeKind, key: String| {
        if let (Some(next), ChangeKind::Add { members, .. }) = (Shape::by_key(&key), kind) {
            members[item - 1] = next;
        }
    };
    // Only shapes that a crown can have are offered for a molding that rises from the wall.
    let offered = styles::CROWN
        .options
        .iter()
        .map(|option| (option.key, option.label));
    let offered = offered.filter(|(key, _)| Shape::by_key(key).is_some());
    let id = format!("member-{}-{item}", place + 1);
    select(
        "Shape",
        id,
        offered,
        shape.key(),
        altered(shown, place, kind, set),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn turned(points: usize) -> ChangeKind {
        ChangeKind::Add {
            number: 1,
            shape: AddedShape::Turned,
            placed: false,
            flutes: 0,
            members: vec![],
            points,
        }
    }

    #[test]
    fn a_turning_never_has_a_single_point() {
        for (before, to, after) in [(0, 1, 2), (2, 1, 0), (2, 3, 3), (3, 2, 2)] {
            let mut kind = turned(before);
            set_points(&mut kind, to);
            assert_eq!(kind, turned(after));
        }
    }
}
