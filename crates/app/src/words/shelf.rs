//! The contents of a can on the shelf.

use units::{System, Volume};
use workshop::shelf::Stock;
use workshop::stores::Store;

use super::{and, volume};

/// Says how much is left with its uncertainty, or what is missing to determine it.
pub fn left(stock: &Stock, system: System) -> String {
    match &stock.contents {
        Ok(contents) => {
            let of = contents.estimate();
            let give = of.expanded_uncertainty();
            let colour = match stock.material.coloured && stock.colour.is_none() {
                true => " Choose its color to see which pieces it\u{2019}s enough for.",
                false => "",
            };
            let give = match give > Volume::ZERO {
                true => format!(", {}", super::span(of.value - give, of.value + give, system)),
                false => String::new(),
            };
            format!("{} left{give}.{colour}", volume(of.value, system))
        }
        Err(fault) => fault.to_string(),
    }
}

/// Says how many all pieces take and how many are missing. Empty if unknown.
pub fn store(store: &Store) -> String {
    let span = |(low, high): (u32, u32)| match low == high {
        true => high.to_string(),
        false => format!("{low} to {high}"),
    };
    match (store.needed, store.lacking()) {
        (Some(needed), Some((_, 0))) => format!("All pieces take {}. You have enough.", span(needed)),
        (Some(needed), Some(lacking)) => {
            format!("All pieces take {}. Buy {}.", span(needed), span(lacking))
        }
        _ => String::new(),
    }
}

/// Lists the maker's cans of one material and the other pieces that use it: `You have 1 quart, about half.
/// The nightstand uses it too.`
pub fn on_hand(cans: &[Stock], others: &[String], system: System) -> String {
    let can = |stock: &Stock| {
        let size = match (&stock.contents, stock.can) {
            // What was weighed says how much it is.
            (Ok(contents), _) if stock.is_weighed => volume(contents.likely(), system),
            (_, Some(can)) => can.label.to_owned(),
            (_, None) => "a can".to_owned(),
        };
        format!("{size}, {}", stock.level_label())
    };
    let told: Vec<String> = cans.iter().map(can).collect();
    let told: Vec<&str> = told.iter().map(String::as_str).collect();
    if told.is_empty() {
        return String::new();
    }
    let others: Vec<&str> = others.iter().map(String::as_str).collect();
    let it = if cans.len() == 1 { "it" } else { "them" };
    let others = match others.as_slice() {
        [] => String::new(),
        [one] => format!(" {one} uses {it} too."),
        more => format!(" {} use {it} too.", and(more)),
    };
    format!("You have {}.{others}", and(&told))
}

#[cfg(test)]
mod tests {
    use super::*;
    use workshop::shelf::stock;
    use workshop::{BookEdit, Edit, Workshop};

    #[test]
    fn cans_of_one_material_are_told_together() {
        let add = |workshop: Workshop, (id, level): (&str, &str)| {
            let values = [("material", "trim-enamel"), ("can", "us-quart"), ("level", level)];
            let values = values.map(|(key, text)| (key, text.to_owned()));
            let add = BookEdit::Add("shelf", id.into(), values.to_vec());
            workshop.apply(Edit::Book(add)).unwrap()
        };
        let cans = [("a", ""), ("b", "half")];
        let cans = stock(&cans.into_iter().fold(Workshop::default(), add));
        assert_eq!(
            on_hand(&cans, &[], System::UsCustomary),
            "You have 1 quart, full and 1 quart, about half."
        );
        assert_eq!(
            on_hand(&cans[..1], &["Box".into(), "Bed".into()], System::UsCustomary),
            "You have 1 quart, full. Box and Bed use it too."
        );
        assert_eq!(on_hand(&[], &["Box".into()], System::UsCustomary), "");
    }
}
