//! Color drift, chalk-type paint and thinning, in words.

use coatings::Estimate;
use coatings::mix::{Scale, Step};
use colour::Perceptibility;
use units::System;
use workshop::mixing::chalk::Chalk;
use workshop::mixing::thin::ThinnedPaint;
use workshop::mixing::{Pouring, Shade};

use super::{measured, number};

/// Says how weighing affects the shade, and which part matters most.
pub fn drift(shade: &Shade, pouring: &Pouring) -> String {
    let Some(drift) = &pouring.drift else {
        return match pouring.colour {
            Some(_) => "Topped up. The color depends on what was left over.".into(),
            None => "Add the color of every part to see how much two batches may differ.".into(),
        };
    };
    let decides = drift.dominant().and_then(|place| {
        let step = pouring.steps.get(place)?;
        let part = shade.recipe.components().get(step.component)?;
        Some(format!(" Weigh {} most carefully.", part.name))
    });
    format!(
        "95% chance a batch stays within {} of the color (CIEDE2000): {}.{}",
        number(&format!("{:.1}", drift.high)),
        Perceptibility::of(drift.high).label(),
        decides.unwrap_or_default()
    )
}

/// Returns the properties of a batch of chalk-type paint, with their labels.
pub fn chalk(of: &Chalk, system: System) -> Vec<(&'static str, String)> {
    let (likely, either_way) = (of.mix.volume.value, of.mix.volume.expanded_uncertainty());
    let volume = super::span(likely - either_way, likely + either_way, system);
    let mut lines = vec![("Makes", volume), ("Volume solids", share(of.mix.volume_solids))];
    // Without a sheen, the pigment share is unknown.
    if of.binder.is_some() {
        lines.push(("Pigment in the dry paint (PVC)", share(of.mix.pvc)));
    }
    lines
}

/// Formats a share in percent, as a range if it is uncertain: `33.1% to 39.5%`.
fn share(of: Estimate<f64>) -> String {
    let (value, give) = (of.value * 100.0, of.standard_uncertainty * 200.0);
    let tenths = |value: f64| number(&format!("{value:.1}"));
    match give < 0.05 {
        true => format!("{}%", tenths(value)),
        false => format!(
            "{}% to {}%",
            tenths((value - give).max(0.0)),
            tenths((value + give).min(100.0))
        ),
    }
}

/// Says whether there is enough binder, and how inaccurate measuring in cups is.
pub fn binder(of: &Chalk, scale: &Scale) -> String {
    let binder = match of.binder {
        Some(binder) => binder.words(),
        None => "Choose the sheen of the paint to see if there is enough binder.",
    };
    let cups = of.in_cups.map(|(least, most)| {
        format!(
            " Measured in cups, the powder weighs {} to {}.",
            measured(&scale.show(least)),
            measured(&scale.show(most))
        )
    });
    let dries = of.dries.map(|sheen| format!(" It dries about {}.", sheen.label));
    format!(
        "{binder}{}{}",
        dries.unwrap_or_default(),
        cups.unwrap_or_default()
    )
}

/// Formats a dose of a batch: its weight, or its volume followed by the weight if it is measured in a jug.
pub fn dose(of: &Chalk, step: &Step, scale: &Scale, system: System) -> String {
    let weight = measured(&scale.show(step.display));
    match of.jug {
        Some((part, volume)) if part == step.component => {
            format!("{} by volume, about {weight}", super::volume(volume, system))
        }
        _ => weight,
    }
}

/// Returns the properties of thinned paint, with their labels.
pub fn thinned(of: &ThinnedPaint, scale: &Scale, system: System) -> Vec<(&'static str, String)> {
    let thinned = &of.thinned;
    let goes_in = format!(
        "{} of {}, {}",
        super::volume(thinned.thinner, system),
        of.thinner.label,
        measured(&scale.show(thinned.thinner_mass.value))
    );
    let (planned, wanted) = of.coats;
    let mut lines = vec![
        ("Add", goes_in),
        ("Makes", super::volume(thinned.liquid, system)),
        ("Volume solids", share(thinned.volume_solids)),
    ];
    if let Some(film) = of.dry_film {
        lines.push(("Dry thickness of a coat, HVLP", super::film(film, system)));
    }
    let coats = format!(
        "{}, for the film of {} without thinner",
        super::coats(wanted),
        super::coats(planned)
    );
    lines.push(("Coats", coats));
    lines
}

/// Returns the objections to thinning: more than the label allows, another thinner, more than usual.
pub fn against(of: &ThinnedPaint) -> String {
    let warning = of.thinned.warning.map(|warning| warning.to_string());
    let other = of.usual.map(|usual| {
        format!(
            "{} is usually thinned with {}. {} may spoil it.",
            of.material.name,
            usual.label,
            super::sentence(of.thinner.label.to_owned())
        )
    });
    let parts: Vec<String> = [warning, other].into_iter().flatten().collect();
    parts.join(" ")
}

/// Returns the advice for thinning: the usual maximum if no label was entered, and the caution for the
/// thinner.
pub fn mind(of: &ThinnedPaint) -> String {
    let usual = match of.usual_most.map(|most| most * 100.0) {
        Some(0.0) => "It\u{2019}s usually not thinned. Check the label first. ".to_owned(),
        Some(most) => format!("{most:.0}% at most is usual. Check the label. "),
        None => String::new(),
    };
    usual + of.thinner.caution
}

#[cfg(test)]
mod tests {
    use super::*;
    use coatings::mix::{By, Component, Recipe};
    use units::Mass;
    use workshop::mixing::pouring;
    use workshop::mixing::{chalk::chalk as batch, thin::thinned as thin};
    use workshop::{BookEdit, Edit, Workshop};

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
            say(&known, 0.0).ends_with("Weigh black most carefully."),
            "{}",
            say(&known, 0.0)
        );
        assert!(say(&known, 100.0).starts_with("Topped up"));
        assert!(say(&shade([None, Some([30; 3])]), 0.0).starts_with("Add the color"));
    }

    fn written(book: &'static str, values: &[(&'static str, &str)]) -> Workshop {
        let values = values.iter().map(|(key, text)| (*key, (*text).to_owned()));
        let add = BookEdit::Add(book, "l".into(), values.collect());
        Workshop::default().apply(Edit::Book(add)).unwrap()
    }

    /// By hand, for a cup of 236.59 mL: 78.86 g of powder, 36.89 g of water, 307.57 g of paint. The total is
    /// 423 g, so powder and water, with the largest remainders, are each rounded up by a step.
    #[test]
    fn a_jug_is_told_by_its_volume_and_cups_by_what_they_leave_open() {
        let workshop = written(
            "chalk",
            &[
                ("volume", "1 cup"),
                ("density", "1.3 kg/l"),
                ("recipe", "chalk-third"),
            ],
        );
        let of = batch(&workshop, &workshop.books.lines("chalk")[0]).unwrap();
        let say = |place: usize| dose(&of, &of.steps[place], &Scale::KITCHEN, System::UsCustomary);
        assert_eq!(
            [say(0), say(2)],
            ["79 g", "8.0\u{a0}fl\u{a0}oz by volume, about 307 g"]
        );
        // A third of 236.6 mL at 0.4 to 1.2 kg/L.
        assert_eq!(
            binder(&of, &Scale::KITCHEN),
            "Choose the sheen of the paint to see if there is enough binder. Measured in cups, the powder weighs 32 g to \
             95 g."
        );
        assert_eq!(chalk(&of, System::UsCustomary).len(), 2);
    }

    #[test]
    fn what_stands_against_a_thinning_is_said() {
        let values = [
            ("material", "alkyd-enamel"),
            ("paint", "1 l"),
            ("share", "20 %"),
            ("thinner", "water"),
        ];
        let workshop = written("thinning", &values);
        let of = thin(&workshop, &workshop.books.lines("thinning")[0]).unwrap();
        assert_eq!(
            against(&of),
            "Alkyd enamel is usually thinned with mineral spirits. Water may spoil it."
        );
        assert!(mind(&of).starts_with("15% at most"), "{}", mind(&of));
    }
}
