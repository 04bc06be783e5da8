//! Small jobs for the tests of this crate.

use std::rc::Rc;

use units::{Area, Length};

use crate::area::Patch;
use crate::basis::Basis;
use crate::job::{Job, Layer, ZoneWork};
use crate::material::material;
use crate::substrate::Substrate;
use crate::tool::tool;

/// Coats of a material with one tool.
pub(crate) fn layer(material_key: &str, coats: u32, tool_key: &str) -> Layer {
    let tool = tool(tool_key).unwrap();
    Layer {
        material: Rc::new(material(material_key).unwrap().clone()),
        colour: None,
        coats,
        tool,
        narrow_tool: tool,
        thinned: 0.0,
        own_rates: Default::default(),
    }
}

/// A broad area without any error.
pub(crate) fn broad(square_metres: f64) -> Patch {
    Patch {
        area: Area::square_metres(square_metres),
        ..Patch::default()
    }
}

/// A narrow area without any error.
pub(crate) fn narrow(square_metres: f64) -> Patch {
    Patch {
        narrow: true,
        ..broad(square_metres)
    }
}

/// A zone on a sealed surface, worked out from the film of the tool.
pub(crate) fn zone(key: &str, patches: Vec<Patch>, layers: Vec<Layer>) -> ZoneWork {
    ZoneWork {
        key: key.into(),
        patches,
        edges: Length::ZERO,
        substrate: Substrate::Sealed,
        basis: Basis::WetFilm,
        layers,
    }
}

/// A job of these zones.
pub(crate) fn job(zones: Vec<ZoneWork>) -> Job {
    Job {
        name: "sample".into(),
        zones,
    }
}

/// Two square meters of enamel.
pub(crate) fn enamel(tool_key: &str, coats: u32) -> Job {
    job(vec![zone(
        "body",
        vec![broad(2.0)],
        vec![layer("trim-enamel", coats, tool_key)],
    )])
}
