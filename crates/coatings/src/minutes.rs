//! The working time with the tools, without waits.

use crate::distribution::Distribution;
use crate::estimate::Estimate;
use crate::job::{Job, Rgb};
use crate::propagate::linear_estimate;
use crate::tool::Tool;

/// What one tool does in a job.
pub(crate) struct ToolTime {
    pub(crate) tool: &'static Tool,
    /// Square meters of broad surface, each coat for itself.
    pub(crate) broad: f64,
    /// Square meters of narrow parts, each coat for itself.
    pub(crate) narrow: f64,
    /// Meters of edges, each coat for itself.
    pub(crate) edges: f64,
    /// How often it is made ready and cleaned.
    pub(crate) washes: u32,
}

impl ToolTime {
    /// Its minutes with their standard uncertainty, by the linear law (JCGM 100, 5.1.2).
    pub(crate) fn estimate(&self) -> Estimate<f64> {
        let tool = self.tool;
        let inputs: [Distribution; 4] = [
            tool.minutes_per_square_metre.distribution(),
            tool.narrow_minutes.distribution(),
            tool.minutes_per_metre_of_edge.distribution(),
            tool.minutes_to_clean.distribution(),
        ];
        linear_estimate(&inputs, &|x| {
            (self.broad + self.narrow * x[1]) * x[0] + self.edges * x[2] + f64::from(self.washes) * x[3]
        })
    }
}

/// The work of each tool in a job. A layer that a tool cannot apply does not count.
pub(crate) fn of_tools(job: &Job) -> Vec<ToolTime> {
    let mut times: Vec<ToolTime> = Vec::new();
    let mut washes: Vec<(&str, Option<Rgb>, &str)> = Vec::new();
    for zone in &job.zones {
        for layer in zone.layers.iter().filter(|layer| layer.coats > 0) {
            let coats = f64::from(layer.coats);
            let works = |tool: &Tool| tool.film(layer.material.body).is_some();
            for patch in &zone.patches {
                let tool = layer.tool_on(patch.narrow);
                let area = coats * patch.area.as_square_metres();
                if area <= 0.0 || !works(tool) {
                    continue;
                }
                let time = of_tool(&mut times, tool);
                if patch.narrow {
                    time.narrow += area;
                } else {
                    time.broad += area;
                }
                let wash = (&*layer.material.key, layer.can_colour(), tool.key);
                if !washes.contains(&wash) {
                    washes.push(wash);
                    time.washes += 1;
                }
            }
            let edges = coats * zone.edges.as_metres();
            if edges > 0.0 && works(layer.tool) {
                of_tool(&mut times, layer.tool).edges += edges;
            }
        }
    }
    times
}

fn of_tool<'a>(times: &'a mut Vec<ToolTime>, tool: &'static Tool) -> &'a mut ToolTime {
    let place = times.iter().position(|time| time.tool.key == tool.key);
    let place = place.unwrap_or_else(|| {
        times.push(ToolTime {
            tool,
            broad: 0.0,
            narrow: 0.0,
            edges: 0.0,
            washes: 0,
        });
        times.len() - 1
    });
    &mut times[place]
}

/// The minutes of brushing, rolling or spraying, edges and cleaning of a job, with their standard uncertainty (JCGM 100).
///
/// `minutes = coats x (broad area + narrow area x what narrow parts take more) x minutes per square meter
///  + coats x edges x minutes per meter + cleaning, once for each material, color and tool`
///
/// The pace of a tool is one input for all zones. The uncertainty of the areas is small beside it and left
/// out.
pub fn minutes(job: &Job) -> Estimate<f64> {
    let (mut value, mut variance) = (0.0, 0.0);
    for time in of_tools(job) {
        let one = time.estimate();
        value += one.value;
        variance += one.standard_uncertainty * one.standard_uncertainty;
    }
    Estimate {
        value,
        standard_uncertainty: variance.sqrt(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::examples::{broad, job, layer, narrow, zone};
    use crate::tool::tool;
    use units::Length;

    #[test]
    fn minutes_are_areas_edges_and_one_cleaning_for_each_colour() {
        let brush = tool("brush").unwrap();
        let mut body = zone(
            "body",
            vec![broad(1.5), narrow(0.5)],
            vec![layer("trim-enamel", 2, "brush")],
        );
        body.edges = Length::metres(4.0);
        let one = minutes(&job(vec![body.clone()])).value;
        let coat = (1.5 + 0.5 * brush.narrow_minutes.middle()) * brush.minutes_per_square_metre.middle()
            + 4.0 * brush.minutes_per_metre_of_edge.middle();
        let clean = brush.minutes_to_clean.middle();
        assert!((one - (2.0 * coat + clean)).abs() < 1e-9);
        let twice = minutes(&job(vec![body.clone(), body])).value;
        assert!((twice - (4.0 * coat + clean)).abs() < 1e-9);
    }

    #[test]
    fn no_work_takes_no_time() {
        assert_eq!(minutes(&job(vec![])).value, 0.0);
    }

    /// By hand, of one square meter: with a pace `p` and a factor `f`, `u^2 = (f u(p))^2 + (p u(f))^2`.
    #[test]
    fn what_narrow_parts_take_more_is_unsure_too() {
        let brush = tool("brush").unwrap();
        let legs = zone("legs", vec![narrow(1.0)], vec![layer("trim-enamel", 1, "brush")]);
        let u = |figure: crate::SourcedRange| figure.distribution().standard_uncertainty();
        let parts = [
            u(brush.minutes_per_square_metre.as_numbers()) * brush.narrow_minutes.middle(),
            u(brush.narrow_minutes) * brush.minutes_per_square_metre.middle(),
            u(brush.minutes_to_clean.as_numbers()),
        ];
        let wanted = parts.iter().map(|part| part * part).sum::<f64>().sqrt();
        assert!((minutes(&job(vec![legs])).standard_uncertainty - wanted).abs() < 1e-9);
    }

    #[test]
    fn what_comes_in_one_colour_is_washed_out_once_and_what_a_tool_cannot_do_takes_no_time() {
        let mut one = zone(
            "body",
            vec![broad(1.0)],
            vec![layer("bonding-primer", 1, "brush")],
        );
        one.layers[0].colour = Some([1, 2, 3]);
        let mut other = one.clone();
        other.layers[0].colour = Some([4, 5, 6]);
        let single = minutes(&job(vec![one.clone()])).value;
        let clean = tool("brush").unwrap().minutes_to_clean.middle();
        assert!((minutes(&job(vec![one, other])).value - (2.0 * single - clean)).abs() < 1e-9);
        let mut waxed = zone("top", vec![broad(1.0)], vec![layer("clear-wax", 1, "airless")]);
        waxed.edges = Length::metres(2.0);
        assert_eq!(minutes(&job(vec![waxed])).value, 0.0);
    }
}
