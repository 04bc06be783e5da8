//! How the piece is built: its choices and counts.

use geometry::styles::{STAND, TAPE_OVER};
use geometry::{CountField, Furniture, StyleField};
use workshop::PieceEdit;
use yew::prelude::*;

use super::super::Shown;
use crate::parts::{choice, select, stepper};

/// The maximum number of answers shown as buttons. More go into a list.
const IN_SIGHT: usize = 4;

/// Shows the choices and counts that apply to this piece.
pub fn built(shown: &Shown, furniture: &Furniture) -> Html {
    let styles = furniture.style_fields().into_iter();
    let styles = styles.map(|field| style(shown, field));
    let counts = furniture
        .count_fields()
        .into_iter()
        .map(|field| count(shown, furniture, field));
    styles.chain(counts).collect()
}

/// Asks once whether the sizes include the top, if it has an overhang.
pub fn tape_over(shown: &Shown, furniture: &Furniture) -> Html {
    match furniture.has_top_over_case() {
        true => style(shown, &TAPE_OVER),
        false => Html::default(),
    }
}

/// Asks once whether the back is seen.
pub fn stand(shown: &Shown, furniture: &Furniture) -> Html {
    match furniture.may_stand_at_wall() {
        true => style(shown, &STAND),
        false => Html::default(),
    }
}

fn style(shown: &Shown, field: &'static StyleField) -> Html {
    let value = field.of(&shown.piece.styles).key;
    if field.options.len() > IN_SIGHT {
        let options = field.options.iter().map(|option| (option.key, option.label));
        let choose = shown.change(move |key: String| {
            let option = field.options.iter().find(|option| option.key == key)?;
            Some(PieceEdit::Style {
                choice: field.key,
                answer: option.key,
            })
        });
        return select(field.label, field.key.into(), options, value, choose);
    }
    let options = field
        .options
        .iter()
        .map(|option| (option.key, option.key, option.label));
    let choose = shown.change(move |option| {
        Some(PieceEdit::Style {
            choice: field.key,
            answer: option,
        })
    });
    choice(
        field.label,
        field.key,
        &options.collect::<Vec<_>>(),
        value,
        choose,
    )
}

fn count(shown: &Shown, furniture: &Furniture, field: &'static CountField) -> Html {
    let change = shown.change(move |count| Some(PieceEdit::Counted(field.key, Some(count))));
    let id = format!("count-{}", field.key);
    let limits = (field.min, field.max);
    stepper((field.label, ""), &id, furniture.count(field), limits, change)
}
