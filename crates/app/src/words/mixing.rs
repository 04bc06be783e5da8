//! How far a shade drifts, what chalk-type paint comes to, and what thinning does, in words.

use coatings::Estimate;
use coatings::mix::ChalkMix;
use colour::Seen;
use units::System;
use workshop::mixing::thin::ThinnedPaint;
use workshop::mixing::{Pouring, Shade};

use super::local;

/// What weighing does to the shade, and which part decides.
pub fn drift(shade: &Shade, pouring: &Pouring) -> String {
    let Some(drift) = &pouring.drift else {
        return match pouring.colour {
            Some(_) => "Topped up: how far it drifts hangs on the rest.".into(),
            None => "With the colour of every part it says how far two batches may differ.".into(),
        };
    };
    let decides = drift.dominant().and_then(|place| {
        let step = pouring.steps.get(place)?;
        let part = shade.recipe.components().get(step.component)?;
        Some(format!(" {} decides: weigh it with the most care.", part.name))
    });
    local(format!(
        "By weighing, 19 batches in 20 stay within {:.1} of the shade meant (CIEDE2000): {}.{}",
        drift.high,
        Seen::of(drift.high).label(),
        decides.unwrap_or_default()
    ))
}

/// What a batch of chalk-type paint comes to, each with its name.
pub fn chalk(mix: &ChalkMix, system: System) -> Vec<(&'static str, String)> {
    let volume = format!(
        "{}, give or take {}",
        super::volume(mix.volume.value, system),
        super::volume(mix.volume.standard_uncertainty * 2.0, system)
    );
    let share = |of: Estimate<f64>| {
        let (value, give) = (of.value * 100.0, of.standard_uncertainty * 200.0);
        format!("{value:.0} %, give or take {give:.0}")
    };
    vec![
        ("It comes to", volume),
        ("Volume solids", share(mix.volume_solids)),
        ("Pigment in the dry film (PVC)", share(mix.pvc)),
    ]
}

/// What thinning comes to, each with its name.
pub fn thinned(of: &ThinnedPaint, system: System) -> Vec<(&'static str, String)> {
    let thinned = &of.thinned;
    let goes_in = format!(
        "{} of {}, {}",
        super::volume(thinned.thinner, system),
        of.thinner.label,
        local(format!("{:.0} g", thinned.thinner_mass.value.as_grams()))
    );
    let (planned, wanted) = of.coats;
    let solids = thinned.volume_solids.value * 100.0;
    let mut lines = vec![
        ("Goes in", goes_in),
        ("To spray", super::volume(thinned.liquid, system)),
        ("Volume solids", format!("{solids:.0} %")),
    ];
    if let Some(film) = of.dry_film {
        lines.push(("Dry film of a coat", super::film(film, system)));
    }
    let coats = format!(
        "{} leave what {} would without thinner",
        super::coats(wanted),
        super::coats(planned)
    );
    lines.push(("Coats", coats));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use coatings::mix::{By, Component, Recipe, Scale};
    use units::Mass;
    use workshop::mixing::pouring;

    fn shade(colours: [Option<[u8; 3]>; 2]) -> Shade {
        let part = |name: &str, share| Component {
            name: name.into(),
            share,
        };
        Shade {
            name: "grey".into(),
            recipe: Recipe::new(vec![part("white", 450.0), part("black", 2.0)], By::Weight).unwrap(),
            colours: colours.to_vec(),
            written: Mass::grams(452.0),
        }
    }

    #[test]
    fn the_part_that_decides_is_named() {
        let known = shade([Some([245; 3]), Some([30; 3])]);
        let say = |shade: &Shade, rest: f64| {
            drift(
                shade,
                &pouring(shade, Scale::KITCHEN, Mass::grams(452.0), Mass::grams(rest)).unwrap(),
            )
        };
        assert!(
            say(&known, 0.0).ends_with("black decides: weigh it with the most care."),
            "{}",
            say(&known, 0.0)
        );
        assert!(say(&known, 100.0).starts_with("Topped up"));
        assert!(say(&shade([None, Some([30; 3])]), 0.0).starts_with("With the colour"));
    }
}
