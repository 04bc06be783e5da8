//! Sentences and labels that depend on values. Fixed labels are in the screens.

pub mod calendar;
mod changes;
mod colour;
mod days;
mod device_status;
pub mod fields;
mod learning;
mod list;
mod mixing;
mod money;
pub mod numerals;
mod piece;
mod preparing;
mod shelf;
mod step;
mod surfaces;
mod ways;
mod worked;

use crate::state::Refused;
use coatings::can::ChoiceError;
use coatings::suggest::{SuggestedLayer, Suggestion};
use coatings::{
    Demand, Enough, Estimate, Leftover, Place, Provenance, SourcedRange, Stage, Verdict, in_sentence,
};
use units::{Area, Length, System, Volume, show_area, show_volume_beside};
use workshop::{Buy, MaterialLine, Piece, Takeoff, Workshop, unmeasured};

pub use calendar::{weekday_and_day, weekday_and_number};
pub use changes::{Names, change_of, change_title, towards};
pub use colour::{colour, colour_name, tint};
pub use days::{
    air, air_in_brief, clock, dries, dry_time, minutes, ready, ready_on, ready_to_sell, remarks, starts,
    stretch, understood, usual_hours,
};
pub use device_status::{file_saved, gathered, offline, safety, saving, too_large};
pub use fields::{bay_label, field_element, field_label, place_prefix, sentence, stand_in, where_to_hold};
pub use learning::{by_own_jobs, changed, taught, weighed};
pub use list::{
    cans_and_price, coated, for_pieces, good, good_here, list, one_less, price_of_list, sheets, why_so_many,
};
pub use mixing::{against, binder, chalk, density, dose, doubt, drift, mind, put_right, thinned, weight};
pub use money::{
    buy_or_leave, earns, hours_of, lacking, nearby, outcome, part_of_costs, points, rests_on, signed,
    together, unpriced, verdict_on_buying, wanted_for, with_the_hours,
};
pub use numerals::{measured, number, reading, write_numbers_as};
pub use piece::{
    checked_off, deleted, fill, guesses, how_many, measure_guesses, row_holds, set_of, surface, to_buy, wish,
    without_unit,
};
pub use preparing::{lead_test, much, sentences};
pub use shelf::{left, on_hand, store};
pub use step::stepped;
pub use surfaces::{lying, overlap, run, working};
pub use ways::{in_hours, least_of, minutes_as, more_coats, planned_way, which_way};
pub use worked::{in_brief, told};

/// Says why there are no amounts: either refused texts, or measurements that do not fit.
pub fn no_answer(fits: bool) -> &'static str {
    match fits {
        true => "No amounts yet",
        false => "These sizes don\u{2019}t fit together",
    }
}

/// Says what is used instead of a refused text, or how to correct it.
pub fn refused(refused: &Refused) -> String {
    let Refused {
        label,
        text,
        used,
        error,
    } = refused;
    match used {
        Some(used) => format!("{label}: using {used}, not \u{201c}{text}\u{201d}."),
        None => format!("{label}: {error}"),
    }
}

/// Formats a volume with its unit, such as `8.0 fl oz`, without line breaks.
pub fn volume(volume: Volume, system: System) -> String {
    volume_beside(volume, volume, system)
}

/// Formats a volume in the unit of the smallest volume next to it.
pub fn volume_beside(volume: Volume, least: Volume, system: System) -> String {
    let (figure, unit) = show_volume_beside(volume, least, system);
    format!("{} {unit}", number(&figure)).replace(' ', "\u{a0}")
}

/// Formats an area with its unit, such as `25.2 ft²`.
pub fn area(area: Area, system: System) -> String {
    let (figure, unit) = show_area(area, system);
    format!("{} {unit}", number(&figure))
}

/// Formats the range of an amount, in the unit of the likely value: `9.8 to 15 fl oz`.
pub fn range(need: &Demand, system: System) -> String {
    volumes(need.low(), need.high(), need.likely(), system)
}

/// Formats a range of volumes in the unit of its middle: `9.2 to 10 fl oz`.
fn span(low: Volume, high: Volume, system: System) -> String {
    let low = low.max(Volume::ZERO);
    let middle = low + (high - low) * 0.5;
    let [least, most] = [low, high].map(|end| volume_beside(end, middle, system));
    match least == most {
        true => most,
        false => volumes(low, high, middle, system),
    }
}

fn volumes(low: Volume, high: Volume, beside: Volume, system: System) -> String {
    let show = |volume| show_volume_beside(volume, beside, system);
    let ((low, unit), (high, _)) = (show(low), show(high));
    let [low, high] = [low, high].map(|figure| number(&figure).replace(' ', "\u{a0}"));
    format!("{low} to {high}\u{a0}{}", unit.replace(' ', "\u{a0}"))
}

/// Says how uncertain the area of a piece is, and why.
pub fn sureness(piece: &Piece, takeoff: &Takeoff) -> String {
    let share = takeoff.painted.give_or_take() * 100.0;
    let share = if share < 1.0 {
        number(&format!("{share:.1}"))
    } else {
        format!("{share:.0}")
    };
    let guessed = unmeasured(piece);
    if guessed.is_empty() {
        return format!("Within {share}%. Everything is measured.");
    }
    let heavy = takeoff
        .unsure_by
        .iter()
        .filter(|(field, share)| *share >= HEAVY && guessed.contains(field));
    let heavy: Vec<String> = heavy
        .take(3)
        .map(|(field, _)| coatings::in_sentence(&field_label(piece.kind, *field)))
        .collect();
    let heavy: Vec<&str> = heavy.iter().map(String::as_str).collect();
    let rest = match guessed.len() {
        1 => "1 size is a guess".to_owned(),
        n => format!("{n} sizes are guesses"),
    };
    match (heavy.as_slice(), guessed.len()) {
        ([], 1) => format!("Within {share}%. {rest}; it doesn\u{2019}t matter much."),
        ([], _) => format!("Within {share}%. {rest}; none matters much."),
        (heavy, _) => format!(
            "Within {share}%. {rest}. Measure the {} to narrow it down.",
            and(heavy)
        ),
    }
}

/// Returns the results for a screen reader: the area, and for each material the likely amount and whether the
/// cans on hand are enough.
pub fn spoken(takeoff: &Takeoff, system: System) -> String {
    let (figure, unit) = show_area(takeoff.painted.value, system);
    let mut said = format!("Area {} {unit}.", number(&figure));
    for line in &takeoff.materials {
        let amount = volume(line.need.likely(), system);
        said.push_str(&format!(" {} {amount}", short_name(takeoff, line)));
        if let Some(hand) = &line.on_hand {
            let verdict = verdict(hand.enough.verdict).to_ascii_lowercase();
            said.push_str(&format!(", {verdict}"));
        }
        said.push('.');
    }
    said
}

/// Compares the amount by the label with the amount by the usual film of the tool.
pub fn by_label(line: &MaterialLine, system: System) -> Option<String> {
    let by_tools = line.by_tools?;
    Some(format!(
        "{} by your label; {} is typical with {}.",
        volume(line.need.likely(), system),
        volume(by_tools, system),
        tools(&line.tools)
    ))
}

/// Measurements with at least this share of the variance are named.
const HEAVY: f64 = 0.1;

/// States the result of the linear law, for comparison with the trials.
pub fn linear(estimate: Estimate<Volume>, system: System) -> String {
    format!(
        "The formulas below give {}, with a standard uncertainty of {}. The range above is from thousands of trials.",
        volume(estimate.value, system),
        volume(estimate.standard_uncertainty, system)
    )
}

/// Returns a verdict in one or two words.
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Enough => "Enough",
        Verdict::Tight => "Maybe not enough",
        Verdict::Short => "Not enough",
    }
}

/// States a verdict in a sentence, with its probability.
pub fn enough(enough: &Enough, system: System) -> String {
    let remainder = if enough.lacking > Volume::ZERO {
        format!("About {} short", volume(enough.lacking, system))
    } else {
        format!("About {} left over", volume(enough.left, system))
    };
    match enough.verdict {
        Verdict::Enough => format!("{remainder}."),
        _ if enough.probability < EVEN => format!("{remainder}. You\u{2019}ll run out."),
        _ => format!(
            "{remainder}. {} chance it\u{2019}s enough.",
            percent(enough.probability)
        ),
    }
}

/// Below this probability, running out is more likely than not.
const EVEN: f64 = 0.5;

/// Returns the stage of a material, such as `Primer`, or its name if the piece has two materials of that
/// stage.
pub fn short_name(takeoff: &Takeoff, line: &MaterialLine) -> String {
    let of_kind = |other: &&MaterialLine| other.need.material.stage == line.need.material.stage;
    match takeoff.materials.iter().filter(of_kind).count() {
        0 | 1 => stage(line.need.material.stage).into(),
        _ => takeoff.name_of(line),
    }
}

/// Formats a probability in whole percent, without claiming certainty either way.
pub fn percent(probability: f64) -> String {
    format!("{:.0}%", (probability * 100.0).round().clamp(1.0, 99.0))
}

/// States the likely amount: `About 11 fl oz.`
pub fn likely(need: &Demand, system: System) -> String {
    format!("About {}.", volume(need.likely(), system))
}

/// Formats a number of coats: `no coat`, `1 coat`, `2 coats`.
pub fn coats(coats: u32) -> String {
    match coats {
        0 => "no coat".into(),
        1 => "1 coat".into(),
        more => format!("{more} coats"),
    }
}

/// Lists the suggested layers in one line: `Degreaser, 1 coat; acrylic trim enamel, 2 coats.`
pub fn asked_for(suggestion: &Suggestion) -> String {
    let layer = |layer: &SuggestedLayer| {
        let name = coatings::material(layer.material).map_or("", |material| &*material.name);
        format!("{}, {}", in_sentence(name), coats(layer.coats))
    };
    let strip = suggestion
        .wants_bare_wood()
        .then(|| "strip the old finish".to_owned());
    let layers: Vec<String> = strip
        .into_iter()
        .chain(suggestion.layers.iter().map(layer))
        .collect();
    sentence(format!("{}.", layers.join("; ")))
}

/// Says what else the can is enough for at the wanted confidence: fewer or more coats, or some of the groups.
pub fn instead(line: &MaterialLine, enough: &Enough, takeoff: &Takeoff) -> String {
    if enough.verdict == Verdict::Enough {
        return match enough.most_coats {
            most if most > line.coats && line.need.material.stage != Stage::Clean => {
                format!("Enough for {}.", coats(most))
            }
            _ => String::new(),
        };
    }
    let zones: Vec<&str> = enough
        .zones
        .iter()
        .map(|zone| takeoff.zone_label(*zone))
        .collect();
    // Only what the wanted confidence covers, so that it does not contradict the likely amount left over.
    let fewer =
        (enough.most_coats > 0).then(|| format!("Sure to cover {} on all of it", coats(enough.most_coats)));
    let some = (!zones.is_empty()).then(|| format!("{} on {}", coats(line.coats), and(&zones)));
    match (fewer, some) {
        (Some(fewer), Some(some)) => format!("{fewer}, or {some}."),
        (Some(fewer), None) => format!("{fewer}."),
        (None, Some(some)) => format!("Sure to cover {some}."),
        (None, None) => String::new(),
    }
}

/// A function that formats a price in hundredths of the currency.
pub type Money<'a> = &'a dyn Fn(u64) -> String;

/// Lists the cans to buy, with the cost if it is known: `1 quart, 24.50 in all`. Without cans, it is
/// `nothing`.
pub fn cans(buy: &Result<Buy, ChoiceError>, money: Money<'_>) -> String {
    let buy = match buy {
        Ok(buy) => buy,
        Err(error) => return error.to_string(),
    };
    if buy.cans.is_empty() {
        return "nothing".into();
    }
    let price = buy
        .price
        .map_or_else(String::new, |price| format!(", {} in all", money(price)));
    format!("{}{price}", cans_by_size(buy))
}

/// Lists the cans to buy by their size: `1 quart and 2 × 8 fl oz`.
fn cans_by_size(buy: &Buy) -> String {
    let cans: Vec<String> = buy
        .cans
        .iter()
        .map(|(can, count)| match count {
            1 => can.label.to_owned(),
            count => format!("{count} \u{d7} {}", can.label),
        })
        .collect();
    let cans: Vec<&str> = cans.iter().map(String::as_str).collect();
    and(&cans)
}

/// Lists the cans to buy in a few words: `Buy 1 quart`, or the number of cans if they differ in size.
pub fn short_cans(buy: &Result<Buy, ChoiceError>) -> String {
    match buy.as_ref().map(|buy| buy.cans.as_slice()) {
        Ok([]) => "Enough".into(),
        Ok([(can, 1)]) => format!("Buy {}", short_can(can.label)),
        Ok([(can, count)]) => format!("Buy {count} \u{d7} {}", short_can(can.label)),
        Ok(cans) => format!("Buy {} cans", cans.iter().map(|(_, count)| count).sum::<u32>()),
        Err(_) => String::new(),
    }
}

/// Shortens the name of a can for the strip: `1 qt`, `8 fl oz`.
fn short_can(label: &str) -> String {
    let short = label
        .replace("quart", "qt")
        .replace("gallon", "gal")
        .replace("pint", "pt");
    short.replace(' ', "\u{a0}")
}

/// Says which cans to buy, what they are for and what is left over. `has_some` is true if some is on hand.
pub fn buy(buy: &Result<Buy, ChoiceError>, has_some: bool, workshop: &Workshop, money: Money<'_>) -> String {
    let cans = cans(buy, money);
    let Ok(buy) = buy else { return cans };
    if buy.cans.is_empty() {
        return "Nothing. What you have is enough.".into();
    }
    let besides = if has_some { " more" } else { "" };
    let smaller = if buy.no_smaller {
        " That\u{2019}s the smallest usual can."
    } else {
        ""
    };
    format!(
        "{cans}. Plan on {}{besides}.{}{smaller}",
        volume(buy.need, workshop.units),
        buy.left
            .map_or_else(String::new, |of| left_over(of, workshop.units))
    )
}

/// Says how much is left over: ` About 11 fl oz left over, at least 6.8 fl oz.`
fn left_over(left: Leftover, system: System) -> String {
    let likely = volume(left.likely, system);
    match left.least > A_DROP {
        true => format!(
            " About {likely} left over, {} at least.",
            volume(left.least, system)
        ),
        false => format!(" About {likely} left over, maybe none."),
    }
}

/// Anything less is not worth keeping.
const A_DROP: Volume = Volume::millilitres(1.0);

/// Joins words: `sleeve, tray and bristles`.
pub fn and(words: &[&str]) -> String {
    match words.split_last() {
        None => String::new(),
        Some((only, [])) => (*only).into(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
    }
}

/// Joins the names of tools for use within a sentence.
pub fn tools(names: &[&str]) -> String {
    let names: Vec<String> = names.iter().map(|name| in_sentence(name)).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    and(&names)
}

/// Describes where part of an amount goes: `on the piece`, `in the sleeve`.
pub fn place(place: Place) -> String {
    match place {
        Place::InTool(part) => format!("in the {part}"),
        place => place.name().into(),
    }
}

/// Names the source of a value.
pub fn source(source: &str, certainty: Provenance) -> String {
    match certainty {
        Provenance::Read | Provenance::Calculated => format!("{source} ({})", certainty.label()),
        Provenance::Memory | Provenance::Practice | Provenance::Maker => certainty.label().into(),
    }
}

/// Formats a value as a range: `8.6 to 11`, or `1.2` if both ends are equal. `factor` is the size of the
/// unit.
pub fn figure<U: coatings::unit::Unit>(figure: SourcedRange<U>, factor: f64) -> String {
    range_of(figure.low / factor, figure.high / factor)
}

/// Formats a wet film, in mils for US units and in micrometers otherwise.
pub fn wet_film(film: SourcedRange<coatings::unit::Metres>, system: System) -> String {
    match system {
        System::UsCustomary => format!("{} mil", figure(film, units::exact::MIL)),
        System::Metric => format!("{} \u{b5}m", figure(film, 1e-6)),
    }
}

/// Formats a whole number.
fn whole(value: f64) -> String {
    number(&format!("{value:.0}"))
}

fn range_of(low: f64, high: f64) -> String {
    let [low, high] = [low, high].map(|end| number(&to_two_digits(end)));
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}

/// Formats two significant digits, or all digits before the decimal sign.
fn to_two_digits(value: f64) -> String {
    let decimals = match value {
        v if v >= 9.95 || v == 0.0 => 0,
        v if v >= 0.995 => 1,
        _ => 2,
    };
    format!("{value:.decimals$}")
}

/// Returns the name of a stage.
pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Clean => "Cleaner",
        Stage::Stain => "Stain",
        Stage::Primer => "Primer",
        Stage::Paint => "Paint",
        Stage::Topcoat => "Topcoat",
    }
}

/// Formats a dry film as a range with 95% coverage, in mils for US units and in micrometers otherwise.
pub fn film(film: Estimate<Length>, system: System) -> String {
    match system {
        System::UsCustomary => {
            let mils = |length: Length| length.as_inches() * 1000.0;
            let [low, high] = ends(mils(film.value), mils(film.expanded_uncertainty()))
                .map(|mils| number(&format!("{mils:.1}")));
            format!("{low} to {high} mil")
        }
        System::Metric => {
            let micrometres = |length: Length| length.as_millimetres() * 1000.0;
            let [low, high] = ends(micrometres(film.value), micrometres(film.expanded_uncertainty()));
            format!("{low:.0} to {high:.0} \u{b5}m")
        }
    }
}

/// Returns the ends of a range around a value that cannot be negative.
fn ends(value: f64, either_way: f64) -> [f64; 2] {
    [(value - either_way).max(0.0), value + either_way]
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{PieceId, Workshop, takeoff};

    #[test]
    fn nothing_is_ever_certain() {
        let half = Volume::litres(0.5);
        let short = Enough {
            verdict: Verdict::Short,
            probability: 0.2,
            left: Volume::ZERO,
            lacking: half,
            extra_needed: half,
            most_coats: 1,
            zones: vec![],
        };
        assert!(enough(&short, System::Metric).starts_with("About 500\u{a0}mL short."));
        let likely = Enough {
            verdict: Verdict::Tight,
            probability: 0.64,
            ..short
        };
        assert!(enough(&likely, System::Metric).contains("64%"));
        assert_eq!([0.9999, 0.001, 0.874].map(percent), ["99%", "1%", "87%"]);
    }

    #[test]
    fn what_is_left_is_told_as_likely_and_as_least() {
        let left = |likely, least| {
            let [likely, least] = [likely, least].map(Volume::millilitres);
            left_over(Leftover { likely, least }, System::Metric)
        };
        assert_eq!(
            left(330.0, 200.0),
            " About 330\u{a0}mL left over, 200\u{a0}mL at least."
        );
        assert_eq!(left(30.0, 0.0), " About 30\u{a0}mL left over, maybe none.");
    }

    #[test]
    fn words_stand_side_by_side() {
        assert_eq!(and(&["tray"]), "tray");
        assert_eq!(and(&["sleeve", "tray", "bristles"]), "sleeve, tray and bristles");
        assert_eq!(
            tools(&["Mini foam roller", "HVLP sprayer"]),
            "mini foam roller and HVLP sprayer"
        );
        assert_eq!(
            (place(Place::InTool("tray")), place(Place::InAir)),
            ("in the tray".into(), "in the air".into())
        );
    }

    #[test]
    fn figures_are_ranges_with_two_digits() {
        let film = SourcedRange::practice(75e-6, 125e-6);
        assert_eq!(wet_film(film, System::Metric), "75 to 125 \u{b5}m");
        assert_eq!(wet_film(film, System::UsCustomary), "3.0 to 4.9 mil");
        assert_eq!(figure(<SourcedRange>::practice(0.38, 0.38), 0.01), "38");
    }

    /// A pint of enamel is not enough for two coats on a dresser. It is enough for one coat, or for two on
    /// part of it.
    #[test]
    fn a_can_that_is_short_says_what_it_would_do() {
        let piece = Piece::new(PieceId("a".into()), Kind::Dresser);
        let enough = |verdict, most_coats, zones| {
            let takeoff = takeoff(&Workshop::default(), &piece, &[]).unwrap();
            let enough = Enough {
                verdict,
                probability: 0.5,
                left: Volume::ZERO,
                lacking: Volume::ZERO,
                extra_needed: Volume::ZERO,
                most_coats,
                zones,
            };
            instead(&takeoff.materials[2], &enough, &takeoff)
        };
        let labels = takeoff(&Workshop::default(), &piece, &[]).unwrap().zones;
        let first = &labels[0].label;
        assert_eq!(
            enough(Verdict::Short, 1, vec![0]),
            format!("Sure to cover 1 coat on all of it, or 2 coats on {first}.")
        );
        assert_eq!(
            enough(Verdict::Short, 0, vec![0]),
            format!("Sure to cover 2 coats on {first}.")
        );
        assert_eq!(enough(Verdict::Short, 0, vec![]), "");
        assert_eq!(enough(Verdict::Enough, 3, vec![0]), "Enough for 3 coats.");
        assert_eq!(enough(Verdict::Enough, 2, vec![0]), "");
    }
}
