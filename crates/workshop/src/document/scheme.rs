//! How a piece or a zone is finished, as planned.

use std::rc::Rc;

use coatings::suggest::{SuggestedLayer, Suggestion, suggest};
use coatings::{Basis, Condition, FilmClass, Stage, Wish};
use geometry::Edition;

use super::{Colour, EntryId, OwnMaterial, generic, material_of};

/// What goes on, in which order and with what, and what it goes onto.
#[derive(Clone, Debug, PartialEq)]
pub struct Scheme {
    /// The colour of what comes in colours.
    pub colour: Colour,
    /// What the surface is like.
    pub condition: Condition,
    /// What the volumes are worked out from.
    pub basis: Basis,
    /// What goes on, in order.
    pub layers: Vec<LayerPlan>,
}

/// Coats of one material, as planned.
#[derive(Clone, Debug, PartialEq)]
pub struct LayerPlan {
    /// Which layer it is.
    pub id: EntryId,
    /// The key of the material, known to the trade or the maker's own.
    pub material: Rc<str>,
    /// How many coats; none is not now.
    pub coats: u32,
    /// The key of the tool.
    pub tool: &'static str,
    /// The key of the tool for narrow parts, if it is another.
    pub narrow_tool: Option<&'static str>,
    /// How much thinner is added for a sprayer, in hundredths of the volume.
    pub thinned: u32,
}

impl LayerPlan {
    /// One coat with the tool that the material is usually put on with.
    pub fn usual(material: &coatings::Material) -> Self {
        LayerPlan::of_edition(material, Edition::LATEST)
    }

    /// The same as an edition has it.
    pub fn of_edition(material: &coatings::Material, edition: Edition) -> Self {
        let tools = match (edition, material.body) {
            // What is wiped is wiped; all else is brushed.
            (Edition::First, FilmClass::Wash | FilmClass::Penetrating | FilmClass::Paste) => ["pad", "brush"],
            (Edition::First, FilmClass::Varnish | FilmClass::Paint) => ["brush", "pad"],
        };
        let tool = tools.into_iter().find(|key| {
            let tool = coatings::tool(key);
            tool.is_some_and(|tool| tool.film(material.body).is_some())
        });
        LayerPlan {
            id: EntryId::default(),
            material: material.key.as_ref().into(),
            coats: 1,
            tool: tool.unwrap_or("brush"),
            narrow_tool: None,
            thinned: 0,
        }
    }
}

impl Scheme {
    /// The colour of a paint that nobody chose yet.
    const USUAL_PAINT: Colour = Colour([0x4a, 0x6b, 0x61]);
    /// The colour of a stain that nobody chose yet.
    const USUAL_STAIN: Colour = Colour([0x6e, 0x45, 0x2a]);

    /// The colour of a paint is none of a stain, nor the other way round: what is wanted anew begins with a usual one.
    pub(crate) fn colour_for(&mut self, wish: Wish, own: &[Rc<OwnMaterial>]) {
        match (self.wish(own), wish) {
            (Wish::StainedClear, Wish::Painted { .. }) => self.colour = Self::USUAL_PAINT,
            (Wish::Painted { .. } | Wish::Clear, Wish::StainedClear) => self.colour = Self::USUAL_STAIN,
            _ => {}
        }
    }

    /// How a new piece is usually finished.
    pub fn usual() -> Self {
        Scheme::of_edition(Edition::LATEST)
    }

    /// How a piece of an edition is finished if nobody says otherwise. Clean, one coat of primer, two of paint, two of
    /// clear: the common scheme for painted furniture (common practice, no source).
    pub fn of_edition(edition: Edition) -> Self {
        let layers = match edition {
            Edition::First => [
                ("degreaser", 1),
                ("bonding-primer", 1),
                ("trim-enamel", 2),
                ("water-polyurethane", 2),
            ],
        };
        let layers = layers.into_iter().filter_map(|(key, coats)| {
            let usual = LayerPlan::of_edition(coatings::material(key)?, edition);
            Some(LayerPlan { coats, ..usual })
        });
        Scheme {
            colour: Scheme::USUAL_PAINT,
            condition: Condition::default(),
            basis: Basis::WetFilm,
            layers: layers.collect(),
        }
    }

    /// What the maker wants to see, by what is planned: a stain or a paint, or else the wood as it is.
    pub fn wish(&self, own: &[Rc<OwnMaterial>]) -> Wish {
        let has = |stage: Stage| {
            let mut planned = self.layers.iter().filter(|layer| layer.coats > 0);
            planned.any(|layer| material_of(own, &layer.material).is_some_and(|of| of.stage == stage))
        };
        if has(Stage::Paint) {
            Wish::Painted {
                light: self.colour.is_light(),
            }
        } else if has(Stage::Stain) {
            Wish::StainedClear
        } else {
            Wish::Clear
        }
    }

    /// Whether anything that is planned comes in a colour; if not, the wood shows.
    pub fn is_coloured(&self, own: &[Rc<OwnMaterial>]) -> bool {
        let mut planned = self.layers.iter().filter(|layer| layer.coats > 0);
        planned.any(|layer| material_of(own, &layer.material).is_some_and(|of| of.coloured))
    }

    /// What the trade would put on this surface for what the maker wants to see.
    pub fn suggestion(&self, own: &[Rc<OwnMaterial>]) -> Suggestion {
        suggest(&self.condition, self.wish(own))
    }

    /// Whether the planned layers are those of a suggestion; a maker's own material stands for what it is a copy of, and of
    /// paint and clear coats there may be more or fewer.
    pub fn is_as_suggested(&self, own: &[Rc<OwnMaterial>], suggestion: &Suggestion) -> bool {
        let planned = self.layers.iter().filter(|layer| layer.coats > 0);
        let is_so = |planned: &LayerPlan, layer: &SuggestedLayer| {
            let has_coats = layer.is_free_in_coats() || planned.coats == layer.coats;
            generic(own, &planned.material) == layer.material && has_coats
        };
        let planned: Vec<&LayerPlan> = planned.collect();
        planned.len() == suggestion.layers.len()
            && planned
                .iter()
                .zip(&suggestion.layers)
                .all(|(planned, layer)| is_so(planned, layer))
    }

    /// Where a new layer of a stage goes: behind all of the same or an earlier one, whose stages `of` tells.
    pub(crate) fn place_of(&self, stage: Stage, of: impl Fn(&str) -> Option<Stage>) -> usize {
        let before = |layer: &LayerPlan| of(&layer.material).is_none_or(|other| other <= stage);
        self.layers.iter().rposition(before).map_or(0, |last| last + 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_scheme_names_what_is_known() {
        let scheme = Scheme::usual();
        let stages = scheme.layers.iter().map(|layer| {
            let material = coatings::material(&layer.material).unwrap();
            let tool = coatings::tool(layer.tool).unwrap();
            assert!(tool.film(material.body).is_some());
            material.stage
        });
        assert!(stages.eq([Stage::Clean, Stage::Primer, Stage::Paint, Stage::Topcoat]));
    }

    #[test]
    fn a_usual_layer_can_be_put_on() {
        for material in coatings::materials() {
            let layer = LayerPlan::usual(material);
            let tool = coatings::tool(layer.tool).unwrap();
            assert!(tool.film(material.body).is_some(), "{}", material.key);
        }
    }

    #[test]
    fn what_is_planned_tells_what_is_wanted() {
        let mut scheme = Scheme::usual();
        // A bleed shows through a middling green as through cream, and not through navy.
        for (colour, light) in [
            ([0x46, 0x68, 0x5f], true),
            ([0xf2, 0xee, 0xe0], true),
            ([0x28, 0x38, 0x58], false),
        ] {
            scheme.colour = Colour(colour);
            assert_eq!(scheme.wish(&[]), Wish::Painted { light });
        }
        assert!(scheme.is_coloured(&[]));
        scheme.layers[2].coats = 0;
        assert_eq!((scheme.wish(&[]), scheme.is_coloured(&[])), (Wish::Clear, false));
    }

    #[test]
    fn the_usual_scheme_is_what_is_suggested_for_a_usual_surface() {
        let mut scheme = Scheme::usual();
        let suggestion = scheme.suggestion(&[]);
        assert!(scheme.is_as_suggested(&[], &suggestion), "{suggestion:?}");
        scheme.condition.odour = true;
        let suggestion = scheme.suggestion(&[]);
        assert!(!scheme.is_as_suggested(&[], &suggestion), "{suggestion:?}");
        // One clear coat more or less is the maker's own affair; a coat of primer less is not.
        let mut scheme = Scheme::usual();
        let suggestion = scheme.suggestion(&[]);
        scheme.layers[3].coats = 1;
        assert!(scheme.is_as_suggested(&[], &suggestion));
        scheme.layers[1].coats = 3;
        assert!(!scheme.is_as_suggested(&[], &suggestion));
    }

    #[test]
    fn a_new_layer_stands_behind_its_stage() {
        let scheme = Scheme::usual();
        let of = |key: &str| coatings::material(key).map(|material| material.stage);
        assert_eq!(scheme.place_of(Stage::Clean, of), 1);
        assert_eq!(scheme.place_of(Stage::Primer, of), 2);
        assert_eq!(scheme.place_of(Stage::Topcoat, of), 4);
    }
}
