//! Color drift, chalk-type paint and thinning, in words.

use coatings::mix::{Scale, Step};
use coatings::unit::KilogramsPerLitre;
use coatings::{Estimate, Provenance, SourcedRange};
use colour::Perceptibility;
use units::{Mass, System, exact, show_pounds};
use workshop::mixing::chalk::Chalk;
use workshop::mixing::thin::ThinnedPaint;
use workshop::mixing::{Pouring, Shade};

use super::{measured, number};

/// Formats a weight as the scale shows it. In US units, pounds and ounces come first: `1 lb 6.5 oz (638 g)`.
pub fn weight(mass: Mass, scale: &Scale, system: System) -> String {
    let grams = measured(&scale.show(mass)).replace(' ', "\u{a0}");
    if system == System::Metric {
        return grams;
    }
    // A kitchen scale with steps of 1 g shows tenths of an ounce.
    let ounces = match show_pounds(mass, scale.resolution < Mass::grams(1.0)) {
        (0, ounces) => format!("{}\u{a0}oz", number(&ounces)),
        (pounds, ounces) => format!("{pounds}\u{a0}lb {}\u{a0}oz", number(&ounces)),
    };
    format!("{ounces} ({grams})")
}

/// Says between which limits a batch weighs that was given as a volume, and whether that rests on a guess. Empty
/// if it was weighed.
pub fn doubt(shade: &Shade, scale: &Scale) -> String {
    let likely = shade.wanted.value;
    let either_way = shade.wanted.expanded_uncertainty();
    let is_guess = |density: &SourcedRange<_>| density.certainty != Provenance::Maker;
    let guessed = shade.densities.iter().flatten().any(is_guess);
    let weight = |mass| weight(mass, scale, shade.system);
    let weighs = match either_way > scale.resolution {
        true => format!(
            "The batch should weigh {} to {}.",
            weight(likely - either_way),
            weight(likely + either_way)
        ),
        false => String::new(),
    };
    match guessed {
        true => format!("{weighs} Each paint\u{2019}s weight is a guess. If its can says, enter it below."),
        false => weighs,
    }
    .trim()
    .to_owned()
}

/// Names the density of a part for its field: `1.30 kg/L`, or `10.8 lb/gal` in US units.
pub fn density(of: SourcedRange<KilogramsPerLitre>, system: System) -> String {
    let (figure, unit) = match system {
        System::Metric => (format!("{:.2}", of.middle()), "kg/L"),
        System::UsCustomary => (format!("{:.1}", of.middle() / exact::POUND_PER_GALLON), "lb/gal"),
    };
    format!("{} {unit}", number(&figure))
}

/// Says how weighing affects the shade, and which part matters most.
pub fn drift(shade: &Shade, pouring: &Pouring) -> String {
    let Some(drift) = &pouring.drift else {
        return "Add the color of every can to see how far a second batch could be off.".into();
    };
    let decides = drift.dominant().and_then(|place| {
        let step = pouring.steps.get(place)?;
        let part = shade.recipe.components().get(step.component)?;
        Some(format!(" Weigh {} most carefully.", part.name))
    });
    let topped_up = match shade.rest > Mass::ZERO {
        true => " Topping up adds the errors of both batches. Stir the jar well, then compare a dry dab.",
        false => "",
    };
    format!(
        "95% chance a batch stays within {} of the color (CIEDE2000): {}.{}{topped_up}",
        number(&format!("{:.1}", drift.high)),
        Perceptibility::of(drift.high).label(),
        decides.unwrap_or_default()
    )
}

/// Says how to get back to the ratio after too much or too little of one can was poured: a sentence, then a
/// line for each other can. `grown` is the larger batch, if there was too much.
pub fn put_right(shade: &Shade, planned: &Pouring, grown: Option<&Pouring>, scale: &Scale) -> Vec<String> {
    let Some((part, really)) = shade.poured else {
        return Vec::new();
    };
    let weight = |mass| weight(mass, scale, shade.system);
    let components = shade.recipe.components();
    let name = |place: usize| components.get(place).map_or("", |part| part.name.as_str());
    let dose = |of: &Pouring, place: usize| {
        let step = of.steps.iter().find(|step| step.component == place);
        step.map_or(Mass::ZERO, |step| step.dose)
    };
    let over = really - dose(planned, part);
    let Some(grown) = grown.filter(|_| over >= scale.resolution) else {
        return match over <= scale.resolution * -1.0 {
            true => vec![format!("Pour {} more {}.", weight(over * -1.0), name(part))],
            false => vec![format!("{} is right. Add nothing.", name(part))],
        };
    };
    let first = format!("{} is {} over. To get the color back:", name(part), weight(over));
    let others = grown.steps.iter().filter(|step| step.component != part);
    let others = others.map(|step| {
        format!(
            "{}: {} more than planned, {} in all",
            name(step.component),
            weight(step.dose - dose(planned, step.component)),
            weight(step.dose)
        )
    });
    let makes = format!("That makes {}.", weight(grown.total));
    std::iter::once(first).chain(others).chain([makes]).collect()
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
    use workshop::mixing::pouring;
    use workshop::mixing::{chalk::chalk as batch, thin::thinned as thin};
    use workshop::{BookEdit, Edit, Workshop};

    fn shade(more: &[(&'static str, &str)]) -> Shade {
        let parts = [
            ("part-1", "White"),
            ("weight-1", "2"),
            ("part-2", "Black"),
            ("weight-2", "1"),
        ];
        let workshop = written("recipes", &[&parts, more].concat());
        workshop::mixing::shade(&workshop, &workshop.books.lines("recipes")[0]).unwrap()
    }

    fn planned(shade: &Shade) -> Pouring {
        pouring(shade, Scale::KITCHEN, shade.wanted.value).unwrap()
    }

    fn plain(text: &str) -> String {
        text.replace('\u{a0}', " ")
    }

    #[test]
    fn the_part_that_decides_is_named() {
        let colours = [
            ("wanted", "452 g"),
            ("colour-1", "#f5f5f5"),
            ("colour-2", "#1e1e1e"),
        ];
        let say = |values: &[(&'static str, &str)]| {
            let shade = shade(values);
            drift(&shade, &planned(&shade))
        };
        let fresh = say(&colours);
        assert!(
            fresh.starts_with("95% chance") && fresh.ends_with("most carefully."),
            "{fresh}"
        );
        let topped = say(&[&colours[..], &[("rest", "100 g")]].concat());
        assert!(topped.ends_with("compare a dry dab."), "{topped}");
        assert!(say(&colours[..2]).starts_with("Add the color"));
    }

    /// By hand: 638 g are 22.504 oz.
    #[test]
    fn weights_are_in_the_units_of_the_batch() {
        let say = |grams: f64, scale, system| plain(&weight(Mass::grams(grams), &scale, system));
        let (us, metric) = (System::UsCustomary, System::Metric);
        assert_eq!(say(638.0, Scale::KITCHEN, us), "1 lb 6.5 oz (638 g)");
        assert_eq!(say(8.0, Scale::FINE, us), "0.28 oz (8.0 g)");
        assert_eq!(say(638.0, Scale::KITCHEN, metric), "638 g");
    }

    /// By hand: 24 fl oz at 1.3 kg/L are 922.7 g, twice 30.5 g either way.
    #[test]
    fn the_doubt_of_a_volume_is_told() {
        let say = |shade: &Shade| plain(&doubt(shade, &Scale::KITCHEN));
        assert_eq!(
            say(&shade(&[("wanted", "24 fl oz")])),
            "The batch should weigh 1 lb 14.4 oz (862 g) to 2 lb 2.7 oz (984 g). Each paint\u{2019}s weight is a \
             guess. If its can says, enter it below."
        );
        let known = [
            ("wanted", "1 L"),
            ("density-1", "1.3 kg/l"),
            ("density-2", "1.3 kg/l"),
        ];
        assert_eq!(say(&shade(&known)), "");
        assert_eq!(say(&shade(&[("wanted", "500 g")])), "");
        let usual = coatings::mix::Latex::DENSITY;
        assert_eq!(density(usual, System::UsCustomary), "10.8 lb/gal");
        assert_eq!(density(usual, System::Metric), "1.30 kg/L");
    }

    /// By hand: 420 g of white take 210 g of black, 60 g more than the 150 g of a batch of 450 g.
    #[test]
    fn too_much_of_one_can_is_put_right() {
        let say = |really: &str| {
            let shade = shade(&[("wanted", "450 g"), ("over", "1"), ("poured", really)]);
            let grown = shade
                .grown()
                .map(|total| pouring(&shade, Scale::KITCHEN, total).unwrap());
            let lines = put_right(&shade, &planned(&shade), grown.as_ref(), &Scale::KITCHEN);
            plain(&lines.join(" "))
        };
        assert_eq!(
            say("420 g"),
            "White is 120 g over. To get the color back: Black: 60 g more than planned, 210 g in all That makes 630 g."
        );
        assert_eq!(say("280 g"), "Pour 20 g more White.");
        assert_eq!(say("300 g"), "White is right. Add nothing.");
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
