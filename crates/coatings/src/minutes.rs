//! How long the work with the tools takes; waiting is not in it.

use crate::estimate::Estimate;
use crate::figure::Figure;
use crate::job::Job;
use crate::propagate::{Input, Linear, linear};
use crate::tool::Tool;

/// Minutes as a sum of figures, each so many times.
#[derive(Default)]
struct Sum {
    terms: Vec<(Input, f64)>,
}

impl Sum {
    fn add(&mut self, name: String, figure: Figure, times: f64) {
        if times <= 0.0 {
            return;
        }
        match self.terms.iter_mut().find(|(input, _)| input.name == name) {
            Some((_, sum)) => *sum += times,
            None => {
                let distribution = figure.distribution();
                self.terms.push((Input { name, distribution }, times));
            }
        }
    }

    fn linear(self) -> Linear {
        let (inputs, times): (Vec<Input>, Vec<f64>) = self.terms.into_iter().unzip();
        linear(&inputs, |x| {
            let row = |row: usize| {
                x.iter()
                    .zip(&times)
                    .map(|(column, times)| column[row] * times)
                    .sum()
            };
            (0..x.first().map_or(1, Vec::len)).map(row).collect()
        })
    }
}

/// The minutes of brushing, rolling or spraying, edges and cleaning of a job, with their standard uncertainty (JCGM 100).
///
/// `minutes = coats x (broad area + narrow area x what narrow parts take more) x minutes per square metre
///  + coats x edges x minutes per metre + cleaning, once for each material, colour and tool`
///
/// A tool that is slow is slow on every zone: its figures are one input each.
pub fn minutes(job: &Job) -> Estimate<f64> {
    let mut sum = Sum::default();
    let mut washes: Vec<(&str, Option<crate::job::Rgb>, &str)> = Vec::new();
    for zone in &job.zones {
        for layer in zone.layers.iter().filter(|layer| layer.coats > 0) {
            let coats = f64::from(layer.coats);
            for patch in &zone.patches {
                let tool = layer.tool_on(patch.narrow);
                let more = if patch.narrow {
                    tool.narrow_minutes.middle()
                } else {
                    1.0
                };
                let times = coats * patch.area.as_square_metres() * more;
                sum.add(format!("area/{}", tool.key), tool.minutes_per_square_metre, times);
                let wash = (&*layer.material.key, layer.colour, tool.key);
                if times > 0.0 && !washes.contains(&wash) {
                    washes.push(wash);
                    clean(&mut sum, tool);
                }
            }
            let edges = coats * zone.edges.as_metres();
            sum.add(
                format!("edges/{}", layer.tool.key),
                layer.tool.minutes_per_metre_of_edge,
                edges,
            );
        }
    }
    sum.linear().estimate()
}

fn clean(sum: &mut Sum, tool: &Tool) {
    sum.add(format!("clean/{}", tool.key), tool.minutes_to_clean, 1.0);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::{broad, job, layer, narrow, zone};
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
}
