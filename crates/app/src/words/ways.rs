//! A comparison of the ways to do the work, in words.

use coatings::Estimate;
use workshop::{ComparedAt, MaterialLine, WayColumn, about_as_soon};

use super::{and, number, sentence};

/// Compares brush and roller in two sentences: their times, then texture and paint. Empty if either is missing.
pub fn which_way(columns: &[WayColumn], compared: ComparedAt) -> String {
    let of = |key: &str| columns.iter().find(|column| column.key == key);
    let Some((brush, roller)) = of("brush").zip(of("foam-roller")) else {
        return String::new();
    };
    let [by_brush, by_roller] = [brush, roller].map(|column| ends(column.whole(compared).minutes));
    let times = if about_as_soon(brush, roller, compared) {
        let both = [by_brush[0].min(by_roller[0]), by_brush[1].max(by_roller[1])];
        format!("Brush or roller: about the same time, {}.", time_in_words(both))
    } else if by_roller[1] < by_brush[1] {
        format!(
            "The roller is faster: {}. A brush takes {}.",
            time_in_words(by_roller),
            time_in_words(by_brush)
        )
    } else {
        format!(
            "The brush is faster: {}. A roller takes {}.",
            time_in_words(by_brush),
            time_in_words(by_roller)
        )
    };
    let [with_brush, with_roller] = [brush, roller].map(|column| column.whole(compared).all());
    let less = ((1.0 - with_roller / with_brush) * 100.0).round();
    let paint = match less {
        less if less >= 1.0 => format!("uses {less:.0}% less paint"),
        less if less <= -1.0 => format!("uses {:.0}% more paint", -less),
        _ => "uses the same amount of paint".into(),
    };
    format!("{times} Roller leaves a finer texture and {paint}.")
}

/// Returns the ends of a time in minutes, with 95% coverage.
fn ends(minutes: Estimate<f64>) -> [f64; 2] {
    super::ends(minutes.value, minutes.expanded_uncertainty())
}

/// Formats a range of minutes roughly: `4 to 7 hours`, `35 to 50 minutes`.
fn time_in_words(minutes: [f64; 2]) -> String {
    let ([low, high], unit) = match minutes[1] >= 120.0 {
        true => (minutes.map(|minutes| (minutes / 60.0).round().max(1.0)), "hours"),
        false => (
            minutes.map(|minutes| (minutes / 5.0).round().max(1.0) * 5.0),
            "minutes",
        ),
    };
    match low < high {
        true => format!("{low:.0} to {high:.0} {unit}"),
        false => format!("about {high:.0} {unit}"),
    }
}

/// Lists the materials that need more coats than planned for the same film: `3 coats of acrylic trim enamel
/// instead of 2. `
pub fn more_coats(lines: &[MaterialLine], column: &WayColumn) -> String {
    let more = lines.iter().filter_map(|line| {
        let figure = column.figures.iter().find(|figure| figure.id == line.id)?;
        let coats = figure.coats_for_equal_film;
        let name = coatings::in_sentence(&line.need.material.name);
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
        for compared in [ComparedAt::EqualFilm, ComparedAt::Planned] {
            let said = which_way(&columns, compared);
            assert!(said.contains(" hours") && said.contains("% "), "{said}");
        }
        assert_eq!(which_way(&columns[..1], ComparedAt::Planned), "");
    }

    #[test]
    fn rough_times_have_a_low_and_a_high() {
        let say = |low, high| time_in_words([low, high]);
        assert_eq!(say(222.0, 402.0), "4 to 7 hours");
        assert_eq!(say(170.0, 190.0), "about 3 hours");
        assert_eq!(say(33.0, 51.0), "35 to 50 minutes");
    }
}
