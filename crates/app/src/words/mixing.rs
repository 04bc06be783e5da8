//! How far a shade drifts, in a sentence.

use colour::Seen;
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
