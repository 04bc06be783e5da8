//! A job: zones with their areas, and what goes on each of them.

use std::rc::Rc;

use units::Length;

use crate::area::Patch;
use crate::basis::Basis;
use crate::material::{Material, Stage};
use crate::sourced_range::SourcedRange;
use crate::substrate::Substrate;
use crate::tool::{Tool, ToolKind};
use crate::unit::SquareMetresPerLitre;

/// A color, as red, green and blue; it tells two cans of one material apart.
pub type Rgb = [u8; 3];

/// Coats of one material, put on one after the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What is put on.
    pub material: Rc<Material>,
    /// Its color, of a material that comes in colors.
    pub colour: Option<Rgb>,
    /// The number of coats.
    pub coats: u32,
    /// With what.
    pub tool: &'static Tool,
    /// With what on narrow parts.
    pub narrow_tool: &'static Tool,
    /// How much thinner is added before it is sprayed, as a fraction of the material's volume; no part of brushing or
    /// rolling.
    pub thinned: f64,
    /// What this maker's own weighed jobs show of the material, tool by tool.
    pub own_rates: Rc<[OwnRate]>,
}

/// The spreading rate of a maker's own weighed jobs with one tool. It includes all losses except what is
/// washed out of the tool.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnRate {
    /// The key of the tool.
    pub tool: &'static str,
    /// The rate, m2/L; see [`Learned::range`](crate::learn::Learned::range).
    pub rate: SourcedRange<SquareMetresPerLitre>,
    /// How many jobs it comes from.
    pub jobs: u32,
}

impl Layer {
    /// What the maker's own jobs with this tool show, if there are any.
    pub fn own_rate(&self, tool: &Tool) -> Option<&OwnRate> {
        self.own_rates.iter().find(|own| own.tool == tool.key)
    }

    /// The tool on broad or on narrow parts.
    pub fn tool_on(&self, narrow: bool) -> &'static Tool {
        if narrow { self.narrow_tool } else { self.tool }
    }

    /// The color that tells two cans of the material apart; `None` for one that comes in no colors.
    pub(crate) fn can_colour(&self) -> Option<Rgb> {
        self.colour.filter(|_| self.material.coloured)
    }

    /// How much thinner is added for this tool, as a fraction of the material's volume.
    pub fn thinned_for(&self, tool: &Tool) -> f64 {
        if tool.kind == ToolKind::Sprayer {
            self.thinned
        } else {
            0.0
        }
    }
}

/// A zone: surfaces with the same finish.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneWork {
    /// Its key.
    pub key: String,
    /// Its areas.
    pub patches: Vec<Patch>,
    /// The length of edges that are cut in; it counts for the minutes only.
    pub edges: Length,
    /// What the first coat goes onto.
    pub substrate: Substrate,
    /// What the volumes are worked out from.
    pub basis: Basis,
    /// What goes on, in order.
    pub layers: Vec<Layer>,
}

impl ZoneWork {
    /// The substrate of a layer's first coat. Only the first layer that stays on the piece meets the bare
    /// substrate.
    pub fn substrate_under(&self, layer: usize) -> Substrate {
        let first = self
            .layers
            .iter()
            .position(|layer| layer.coats > 0 && layer.material.stage != Stage::Clean);
        if first == Some(layer) {
            self.substrate
        } else {
            Substrate::Sealed
        }
    }
}

/// A piece, or a set of pieces that are alike and done together.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// Its name; jobs of one name are measured with the same errors.
    pub name: String,
    /// What is finished, zone by zone.
    pub zones: Vec<ZoneWork>,
}
