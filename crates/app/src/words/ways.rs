//! A comparison of the ways to do the work, in words.

use coatings::{Estimate, Stage, in_sentence};
use units::{System, Volume, show_volume_beside};
use workshop::{MaterialLine, WayColumn, about_as_soon};

use super::{and, coats, number, sentence, stage, tools};

/// Compares brush and roller in two sentences: their times, then texture and paint, by the figures that stand below.
/// Empty if either is missing.
pub fn which_way(columns: &[&WayColumn], of: Stage, system: System) -> String {
    let with = |keys: &[&str]| columns.iter().find(|column| keys.contains(&column.key));
    let Some((brush, roller)) = with(&["brush"]).zip(with(&["rolled", "foam-roller"])) else {
        return String::new();
    };
    let in_hours = in_hours(columns.iter().map(|column| column.coat.minutes));
    let [by_brush, by_roller] = [brush, roller].map(|column| ends(column.coat.minutes));
    let say = |minutes| time_in_words(minutes, in_hours);
    let times = if about_as_soon(brush.coat.minutes, roller.coat.minutes) {
        let both = [by_brush[0].min(by_roller[0]), by_brush[1].max(by_roller[1])];
        format!("Brush or roller: about the same time, {}.", say(both))
    } else if by_roller[1] < by_brush[1] {
        let (roller, brush) = (say(by_roller), say(by_brush));
        format!("The roller is faster: {roller}. A brush takes {brush}.")
    } else {
        let (roller, brush) = (say(by_roller), say(by_brush));
        format!("The brush is faster: {brush}. A roller takes {roller}.")
    };
    let least = least_of(columns);
    let shown = |column: &WayColumn| {
        let (figure, _) = show_volume_beside(column.coat.volume, least, system);
        figure.parse().unwrap_or(0.0)
    };
    let [with_brush, with_roller]: [f64; 2] = [shown(brush), shown(roller)];
    let less = ((1.0 - with_roller / with_brush) * 100.0).round();
    let what = in_sentence(stage(of));
    let paint = match less {
        less if less >= 1.0 => format!("uses {less:.0}% less {what}"),
        less if less <= -1.0 => format!("uses {:.0}% more {what}", -less),
        _ => format!("uses the same amount of {what}"),
    };
    format!("{times} Roller leaves a finer texture and {paint}.")
}

/// Returns the least amount among ways, whose unit all of them are shown in.
pub fn least_of(columns: &[&WayColumn]) -> Volume {
    let volumes = columns.iter().map(|column| column.coat.volume);
    volumes.reduce(Volume::min).unwrap_or(Volume::ZERO)
}

/// Says which coats are compared, and with which tools they are planned: `For 2 coats of acrylic trim enamel. Your plan:
/// brush.`
pub fn planned_way(lines: &[MaterialLine], of: Stage) -> String {
    let lines = lines.iter().filter(|line| line.need.material.stage == of);
    let (mut what, mut with): (Vec<String>, Vec<&str>) = (vec![], vec![]);
    for line in lines {
        let coats = format!(
            "{} of {}",
            coats(line.coats),
            in_sentence(&line.need.material.name)
        );
        if !what.contains(&coats) {
            what.push(coats);
        }
        for tool in &line.tools {
            if !with.contains(tool) {
                with.push(tool);
            }
        }
    }
    let what: Vec<&str> = what.iter().map(String::as_str).collect();
    format!("For {}. Your plan: {}.", and(&what), tools(&with))
}

/// Returns the ends of a time in minutes, with 95% coverage.
fn ends(minutes: Estimate<f64>) -> [f64; 2] {
    super::ends(minutes.value, minutes.expanded_uncertainty())
}

/// Formats a range of minutes roughly, in half hours or five minutes: `1 1/2 to 3 hours`, `35 to 50 minutes`.
fn time_in_words(minutes: [f64; 2], in_hours: bool) -> String {
    let (step, unit) = if in_hours {
        (30.0, "hours")
    } else {
        (5.0, "minutes")
    };
    let [low, high] = minutes.map(|minutes| (minutes / step).round().max(1.0));
    let say = |steps: f64| match in_hours {
        false => format!("{:.0}", steps * step),
        true if steps % 2.0 == 0.0 => format!("{:.0}", steps / 2.0),
        true if steps < 2.0 => "1/2".into(),
        true => format!("{:.0} 1/2", (steps / 2.0).floor()),
    };
    match low < high {
        true => format!("{} to {} {unit}", say(low), say(high)),
        false if in_hours && high <= 2.0 => format!("about {} hour", say(high)),
        false => format!("about {} {unit}", say(high)),
    }
}

/// Lists the materials that need more coats than planned for the same film: `3 coats of acrylic trim enamel
/// instead of 2. `
pub fn more_coats(lines: &[MaterialLine], column: &WayColumn) -> String {
    let more = lines.iter().filter_map(|line| {
        let figure = column.figures.iter().find(|figure| figure.id == line.id)?;
        let coats = figure.coats_for_equal_film;
        let name = in_sentence(&line.need.material.name);
        (coats > line.coats).then(|| format!("{coats} coats of {name} instead of {}", line.coats))
    });
    // Two colors of the same paint need the same number.
    let mut more: Vec<String> = more.collect();
    more.dedup();
    let more: Vec<&str> = more.iter().map(String::as_str).collect();
    match more.as_slice() {
        [] => "The planned coats. ".into(),
        more => format!("{}. ", sentence(and(more))),
    }
}

/// Returns true if times shown together should be in hours, because one is at least two hours.
pub fn in_hours(minutes: impl IntoIterator<Item = Estimate<f64>>) -> bool {
    minutes.into_iter().any(|minutes| minutes.value >= 120.0)
}

/// Formats a time as a range with 95% coverage, in hours or minutes: `3.7 to 6.7 h`.
pub fn minutes_as(minutes: Estimate<f64>, in_hours: bool) -> String {
    let [low, high] = ends(minutes);
    if in_hours {
        let [low, high] = [low, high].map(|minutes| number(&format!("{:.1}", minutes / 60.0)));
        format!("{low} to {high}\u{a0}h")
    } else {
        format!("{low:.0} to {high:.0}\u{a0}min")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{Piece, PieceId, Workshop, compare, edges_by_zone, takeoff};

    #[test]
    fn times_that_stand_beside_each_other_have_one_unit() {
        let estimate = |value, standard_uncertainty| Estimate {
            value,
            standard_uncertainty,
        };
        let both = [estimate(95.0, 12.0), estimate(150.0, 15.0)];
        assert!(in_hours(both) && !in_hours([both[0]]));
        assert_eq!(minutes_as(both[0], false), "71 to 119\u{a0}min");
        assert_eq!(minutes_as(both[0], true), "1.2 to 2.0\u{a0}h");
        assert_eq!(minutes_as(both[1], true), "2.0 to 3.0\u{a0}h");
    }

    #[test]
    fn a_thin_film_is_told_as_more_coats() {
        let piece = Piece::new(PieceId("a".into()), Kind::Dresser);
        let takeoff = takeoff(&Workshop::default(), &piece, &[]).unwrap();
        let edges = edges_by_zone(&piece).unwrap();
        let columns = compare(&Workshop::default(), &piece, &takeoff, &edges);
        let of = |key: &str| {
            let column = columns.iter().find(|column| column.key == key).unwrap();
            more_coats(&takeoff.materials, column)
        };
        assert_eq!(of("brush"), "The planned coats. ");
        assert!(
            of("foam-roller").contains("3 coats of acrylic trim enamel instead of 2"),
            "{}",
            of("foam-roller")
        );
        let main = workshop::main_ways(&columns, &takeoff);
        let said = which_way(&main, Stage::Paint, System::UsCustomary);
        assert!(said.contains(" hours") && said.contains(" paint."), "{said}");
        assert_eq!(which_way(&main[..1], Stage::Paint, System::UsCustomary), "");
        assert_eq!(
            planned_way(&takeoff.materials, Stage::Paint),
            "For 2 coats of acrylic trim enamel. Your plan: brush."
        );
    }

    #[test]
    fn rough_times_have_a_low_and_a_high() {
        let say = |low, high| time_in_words([low, high], high >= 120.0);
        assert_eq!(say(222.0, 402.0), "3 1/2 to 6 1/2 hours");
        assert_eq!(say(170.0, 190.0), "about 3 hours");
        assert_eq!(say(33.0, 51.0), "35 to 50 minutes");
        // 1.6 to 2.8 hours.
        assert_eq!(say(96.0, 168.0), "1 1/2 to 3 hours");
        assert_eq!(time_in_words([29.0, 62.0], true), "1/2 to 1 hours");
        assert_eq!(time_in_words([58.0, 62.0], true), "about 1 hour");
    }
}
