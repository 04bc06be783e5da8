//! A comparison of the ways to do the work, in words.

use coatings::Estimate;
use units::System;
use workshop::{ComparedAt, MaterialLine, WayColumn, about_as_soon, soonest_and_least};

use super::{and, number, sentence, volume};

/// Says which way is fastest and which uses the least material.
pub fn which_way(columns: &[WayColumn], compared: ComparedAt, system: System) -> String {
    let Some((soonest, least)) = soonest_and_least(columns, compared) else {
        return String::new();
    };
    let in_hours = in_hours(columns.iter().map(|column| column.whole(compared).minutes));
    let time = minutes_as(soonest.whole(compared).minutes, in_hours);
    let all = volume(least.whole(compared).all(), system);
    let name = |column: &WayColumn| coatings::in_sentence(column.label);
    let at_hand = columns.iter().filter(|column| column.is_at_hand);
    let alike: Vec<String> = at_hand
        .filter(|column| column.key != soonest.key && about_as_soon(soonest, column, compared))
        .map(name)
        .collect();
    let alike: Vec<&str> = alike.iter().map(String::as_str).collect();
    let (soon, little) = (name(soonest), name(least));
    let text = match (alike.as_slice(), soonest.key == least.key) {
        ([], true) => format!("{soon} is soonest, {time} of coating, and takes the least, {all}"),
        ([], false) => format!("{soon} is soonest, {time} of coating; {little} takes the least, {all}"),
        (alike, _) => format!(
            "{soon} is soonest, {time} of coating, but {} may be as quick; {little} takes the least, {all}",
            and(alike)
        ),
    };
    let at = match compared {
        ComparedAt::EqualFilm => "For coats of the same thickness",
        ComparedAt::Planned => "At the planned coats",
    };
    format!("{at}, all materials together: {text}.")
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

/// Formats a time with its expanded uncertainty, in hours or minutes.
pub fn minutes_as(minutes: Estimate<f64>, in_hours: bool) -> String {
    let (value, either_way) = (minutes.value, minutes.expanded_uncertainty());
    if in_hours {
        let [value, either_way] =
            [value, either_way].map(|minutes| number(&format!("{:.1}", minutes / 60.0)));
        format!("{value}\u{a0}\u{b1}\u{a0}{either_way}\u{a0}h")
    } else {
        format!("{value:.0}\u{a0}\u{b1}\u{a0}{either_way:.0}\u{a0}min")
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
        assert_eq!(minutes_as(both[0], false), "95\u{a0}\u{b1}\u{a0}24\u{a0}min");
        assert_eq!(minutes_as(both[0], true), "1.6\u{a0}\u{b1}\u{a0}0.4\u{a0}h");
        assert_eq!(minutes_as(both[1], true), "2.5\u{a0}\u{b1}\u{a0}0.5\u{a0}h");
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
            let said = which_way(&columns, compared, System::UsCustomary);
            let (soonest, least) = soonest_and_least(&columns, compared).unwrap();
            for column in [soonest, least] {
                assert!(said.contains(&coatings::in_sentence(column.label)), "{said}");
            }
            let planned = said.starts_with("At the planned coats");
            assert_eq!(planned, compared == ComparedAt::Planned, "{said}");
        }
    }
}
