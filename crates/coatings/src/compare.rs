//! The same job with other tools, at equal coats or at equal dry film.

use units::{Area, Length};

use crate::area::Patch;
use crate::basis::Basis;
use crate::dry_film::{DryFilm, coats_for};
use crate::job::{Job, Layer};
use crate::material::Stage;
use crate::tool::Tool;

/// With which tools a job is done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// As the scheme says.
    AsPlanned,
    /// With one tool wherever it can put the material on.
    With(&'static Tool),
    /// With one tool on broad surfaces and another on narrow parts.
    Split {
        /// On broad surfaces.
        broad: &'static Tool,
        /// On legs, stretchers and rails.
        narrow: &'static Tool,
    },
}

impl Job {
    /// The job with other tools. A material that a tool cannot apply keeps its planned tool.
    pub fn with_tools(&self, way: Way) -> Job {
        let (broad, narrow) = match way {
            Way::AsPlanned => return self.clone(),
            Way::With(tool) => (tool, tool),
            Way::Split { broad, narrow } => (broad, narrow),
        };
        let mut job = self.clone();
        for layer in job.zones.iter_mut().flat_map(|zone| &mut zone.layers) {
            let body = layer.material.body;
            if broad.film(body).is_some() {
                layer.tool = broad;
            }
            if narrow.film(body).is_some() {
                layer.narrow_tool = narrow;
            }
        }
        job
    }

    /// The job with enough coats of each layer to reach the dry film that the layer has in another job, at
    /// the best estimates, on broad and on narrow parts. No layer gets fewer coats than planned. The film of
    /// the tools counts, even where volumes come from a label. Only paint and topcoats protect by their
    /// film, so cleaners, stains and primers get no more coats (common practice, no source).
    pub fn at_equal_film(&self, other: &Job) -> Job {
        let mut job = self.clone();
        for (zone, others) in job.zones.iter_mut().zip(&other.zones) {
            let exists = |narrow: &bool| {
                let has = |patch: &Patch| patch.narrow == *narrow && patch.area > Area::ZERO;
                zone.patches.iter().any(has)
            };
            for (layer, other) in zone.layers.iter_mut().zip(&others.layers) {
                let one = Layer {
                    coats: 1,
                    ..layer.clone()
                };
                let reached = |narrow| coats_for(film(other, narrow)?, film(&one, narrow)?);
                let wanted = [false, true].into_iter().filter(exists).filter_map(reached).max();
                let builds = matches!(layer.material.stage, Stage::Paint | Stage::Topcoat);
                if layer.coats > 0 && builds {
                    layer.coats = layer.coats.max(wanted.unwrap_or(0));
                }
            }
        }
        job
    }
}

fn film(layer: &Layer, narrow: bool) -> Option<Length> {
    Some(DryFilm::of(layer, Basis::WetFilm, narrow)?.thickness().value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::examples::{broad, enamel, job, layer, narrow, zone};
    use crate::tool::tool;

    #[test]
    fn three_rolled_coats_reach_the_film_of_two_brushed_ones() {
        let (brush, roller) = (enamel("brush", 2), enamel("foam-roller", 2));
        assert_eq!(roller.at_equal_film(&brush).zones[0].layers[0].coats, 3);
        assert_eq!(brush.at_equal_film(&roller).zones[0].layers[0].coats, 2);
    }

    #[test]
    fn a_primer_gets_no_more_coats_for_its_film() {
        let with = |tool| {
            let layers = vec![layer("bonding-primer", 1, tool), layer("trim-enamel", 2, tool)];
            job(vec![zone("body", vec![broad(1.0)], layers)])
        };
        let layers = &with("foam-roller").at_equal_film(&with("brush")).zones[0].layers;
        assert_eq!((layers[0].coats, layers[1].coats), (1, 3));
    }

    #[test]
    fn a_tool_for_narrow_parts_counts_only_where_there_are_some() {
        let (roller, brush) = (tool("foam-roller").unwrap(), tool("brush").unwrap());
        let coats = |patches| {
            let planned = job(vec![zone(
                "body",
                patches,
                vec![layer("trim-enamel", 2, "brush")],
            )]);
            let split = planned.with_tools(Way::Split {
                broad: brush,
                narrow: roller,
            });
            split.at_equal_film(&planned).zones[0].layers[0].coats
        };
        assert_eq!(coats(vec![broad(1.0)]), 2);
        assert_eq!(coats(vec![broad(1.0), narrow(0.0)]), 2);
        assert_eq!(coats(vec![broad(1.0), narrow(0.2)]), 3);
    }

    #[test]
    fn a_way_changes_tools_where_they_can_do_the_work() {
        let planned = job(vec![zone(
            "body",
            vec![broad(1.0), narrow(0.5)],
            vec![layer("trim-enamel", 2, "brush"), layer("clear-wax", 1, "pad")],
        )]);
        let (roller, brush) = (tool("foam-roller").unwrap(), tool("brush").unwrap());
        let split = planned.with_tools(Way::Split {
            broad: roller,
            narrow: brush,
        });
        let tools: Vec<_> = split.zones[0]
            .layers
            .iter()
            .map(|layer| (layer.tool.key, layer.narrow_tool.key))
            .collect();
        assert_eq!(tools[0], ("foam-roller", "brush"));
        assert_eq!(tools[1].0, "pad");
        assert_eq!(planned.with_tools(Way::AsPlanned), planned);
    }
}
