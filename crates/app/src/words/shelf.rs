//! What is left in a can on the shelf.

use coatings::Contents;
use units::{System, Volume};
use workshop::shelf::Stock;
use workshop::stores::Store;

use super::{and, volume};

/// How much is in it, give or take what weighing leaves open; or what is lacking to know it.
pub fn left(stock: &Stock, system: System) -> String {
    match &stock.contents {
        Ok(contents) => {
            let of = contents.estimate();
            let give = of.expanded_uncertainty();
            let colour = match stock.material.coloured && stock.colour.is_none() {
                true => " Choose its colour: then it says for which pieces it is.",
                false => "",
            };
            let give = match give > Volume::ZERO {
                true => format!(", give or take {}", volume(give, system)),
                false => String::new(),
            };
            format!("{} left{give}.{colour}", volume(of.value, system))
        }
        Err(fault) => fault.to_string(),
    }
}

/// What all pieces take of it, and what is lacking; nothing where that is not known.
pub fn store(store: &Store) -> String {
    let span = |(low, high): (u32, u32)| match low == high {
        true => high.to_string(),
        false => format!("{low} to {high}"),
    };
    match (store.needed, store.lacking()) {
        (Some(needed), Some((_, 0))) => format!("All pieces take {}: enough.", span(needed)),
        (Some(needed), Some(lacking)) => {
            format!("All pieces take {}: {} to buy.", span(needed), span(lacking))
        }
        _ => String::new(),
    }
}

/// What stands on the shelf of one material, and who else takes from it: ` On the shelf: 17 fl oz, for the nightstand too: To
/// buy reckons for all.`
pub fn on_shelf(cans: &[Contents], others: &[String], system: System) -> String {
    if cans.is_empty() {
        return String::new();
    }
    let all: Volume = cans.iter().map(|can| can.likely()).sum();
    let others: Vec<&str> = others.iter().map(String::as_str).collect();
    let others = match others.as_slice() {
        [] => String::new(),
        others => format!(", for {} too: To buy reckons for all", and(others)),
    };
    format!(" On the shelf: {}{others}.", volume(all, system))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cans_of_one_material_are_told_together() {
        let can = |litres: f64| Contents::full(Volume::litres(litres)).unwrap();
        assert_eq!(
            on_shelf(&[can(0.5), can(0.25)], &[], System::Metric),
            " On the shelf: 750\u{a0}mL."
        );
        assert_eq!(
            on_shelf(&[can(0.5)], &["Box".into(), "Bed".into()], System::Metric),
            " On the shelf: 500\u{a0}mL, for Box and Bed too: To buy reckons for all."
        );
        assert_eq!(on_shelf(&[], &["Box".into()], System::Metric), "");
    }
}
