//! The list of the maker's changes: their measurements, and buttons to delete them.

use geometry::{FieldId, LengthField, StandIn};
use units::Length;
use workshop::{ChangeKind, PieceChange, PieceEdit};
use yew::prelude::*;

use super::super::Shown;
use super::super::tape::{Tape, error, tape_field};
use super::options::{self, options};
use crate::parts::button_for;
use crate::words::{self, Names};

/// Shows all changes in order.
pub fn changes(shown: &Shown) -> Html {
    let names = Names::of(&shown.piece, shown.takeoff());
    let changes = shown.piece.changes.iter().enumerate();
    html! { <ol class="changes">{ for changes.map(|(place, of)| change(shown, place, of, &names)) }</ol> }
}

fn change(shown: &Shown, place: usize, change: &PieceChange, names: &Names) -> Html {
    let number = place + 1;
    let title = words::change_title(&change.kind, names);
    let back = shown.change(move |_: MouseEvent| Some(PieceEdit::RemoveChange(place)));
    html! {
        <li id={format!("change-{number}")}>
            <div class="change-head">
                <b>{ format!("{number}. {title}") }</b>
                { button_for(format!("take-back-{number}"), "Delete change", format!("Delete change: {title}"), back) }
            </div>
            { error(shown, &|problem| words::change_of(problem) == Some(place)) }
            <div class="fields" role="group" aria-label={title}>
                { options(shown, place, &change.kind) }
                { for fields(change, 0).map(|(field, usual)| measure(shown, (place, 0), field, usual)) }
            </div>
            { steps(shown, place, change) }
        </li>
    }
}

/// Returns the measurements of a change, or of one of its members or points.
fn fields(change: &PieceChange, item: usize) -> impl Iterator<Item = (&'static LengthField, Length)> {
    let all = change.fields().into_iter();
    all.filter(move |(of, ..)| *of == item)
        .map(|(_, field, usual)| (field, usual))
}

fn measure(shown: &Shown, (change, item): (usize, usize), field: &LengthField, usual: Length) -> Html {
    let id = FieldId::Alteration {
        change,
        item,
        key: field.key,
    };
    let tape = Tape {
        id,
        label: field.label.into(),
        usual: Some((usual, StandIn::Usual)),
        with_hint: item == 0,
    };
    tape_field(shown, tape)
}

/// Shows the members of a molding or the points of a turning, from the bottom up.
fn steps(shown: &Shown, place: usize, change: &PieceChange) -> Html {
    let ChangeKind::Add { members, points, .. } = &change.kind else {
        return Html::default();
    };
    let what = if members.is_empty() { "Point" } else { "Member" };
    let step = |item: usize| {
        html! {
            <div class="row" role="group" aria-label={format!("{what} {item}")}>
                <span class="label">{ format!("{what} {item}") }</span>
                { options::member(shown, place, &change.kind, item) }
                { for fields(change, item).map(|(field, usual)| measure(shown, (place, item), field, usual)) }
            </div>
        }
    };
    let count = members.len().max(*points);
    html! {
        if count > 0 {
            <p class="hint">{ format!("{what}s from the bottom up.") }</p>
            <div class="rows">{ for (1..=count).map(step) }</div>
        }
    }
}
