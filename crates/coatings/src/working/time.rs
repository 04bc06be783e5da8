//! The working of the minutes that a job takes.

use std::borrow::Cow;

use super::{Measure, Quantity, Working, estimated, figure, given};
use crate::job::Job;
use crate::minutes::of_tools;

const BY_PACE: &str = "(broad + narrow * more) * pace + edges * edge_pace + washes * cleaning";

/// The workings of the minutes of a job, one for each tool; [`minutes`](crate::minutes) is their sum. The tools are
/// independent, so their standard uncertainties add in squares.
///
/// # Example
/// ```
/// let job = coatings::Job { name: "box".into(), zones: vec![] };
/// assert!(coatings::time_workings(&job).is_empty());
/// ```
pub fn time_workings(job: &Job) -> Vec<Working> {
    let of_tool = |time: crate::minutes::ToolTime| {
        let tool = time.tool;
        let terms = vec![
            given(
                "broad",
                "broad area, each coat for itself",
                time.broad,
                Measure::SquareMetres,
            ),
            given(
                "narrow",
                "narrow area, each coat for itself",
                time.narrow,
                Measure::SquareMetres,
            ),
            figure(
                "more",
                "how many times as long narrow parts take",
                tool.narrow_minutes,
                Measure::Count,
            ),
            figure(
                "pace",
                "time for a coat on a broad square metre",
                tool.minutes_per_square_metre,
                Measure::MinutesPerSquareMetre,
            ),
            given(
                "edges",
                "length of edges, each coat for itself",
                time.edges,
                Measure::Metres,
            ),
            figure(
                "edge_pace",
                "time for a coat along a metre of edge",
                tool.minutes_per_metre_of_edge,
                Measure::MinutesPerMetre,
            ),
            given(
                "washes",
                "how often it is made ready and cleaned",
                f64::from(time.washes),
                Measure::Count,
            ),
            figure(
                "cleaning",
                "time to make ready and clean",
                tool.minutes_to_clean,
                Measure::Minutes,
            ),
        ];
        let result = Quantity {
            meaning: Cow::Borrowed(tool.name),
            ..estimated(
                "minutes",
                "minutes with a tool",
                time.estimate(),
                Measure::Minutes,
            )
        };
        Working::by(BY_PACE, terms, result)
    };
    of_tools(job).into_iter().map(of_tool).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::minutes::minutes;
    use crate::samples::{broad, job, layer, narrow, zone};
    use crate::working::holds;

    #[test]
    fn the_minutes_are_those_of_the_formulas() {
        let mut body = zone(
            "body",
            vec![broad(1.5), narrow(0.4)],
            vec![
                layer("bonding-primer", 1, "foam-roller"),
                layer("trim-enamel", 2, "brush"),
            ],
        );
        body.edges = units::Length::metres(3.0);
        let job = job(vec![body]);
        let workings = time_workings(&job);
        assert_eq!(workings.len(), 2);
        workings.iter().for_each(holds);
        let whole = minutes(&job);
        let sum: f64 = workings.iter().map(|working| working.result.value).sum();
        let squares: f64 = workings
            .iter()
            .map(|working| working.result.standard_uncertainty * working.result.standard_uncertainty)
            .sum();
        assert!((sum - whole.value).abs() < 1e-9);
        assert!((squares.sqrt() - whole.standard_uncertainty).abs() < 1e-9);
    }
}
