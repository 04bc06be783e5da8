//! The planned finish of a piece or a zone.

use std::rc::Rc;

use coatings::suggest::{SuggestedLayer, Suggestion, suggest};
use coatings::{Basis, Condition, FilmClass, Stage, Wish};
use geometry::Edition;

use super::{Colour, EntryId, OwnMaterial, generic, material_of};

/// The layers of a finish, and the surface they go on.
#[derive(Clone, Debug, PartialEq)]
pub struct Scheme {
    /// The color of materials that come in colors.
    pub colour: Colour,
    /// The condition of the surface.
    pub condition: Condition,
    /// The basis for volumes.
    pub basis: Basis,
    /// The layers, in order.
    pub layers: Vec<LayerPlan>,
}

/// The planned coats of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct LayerPlan {
    /// The id of the layer.
    pub id: EntryId,
    /// The key of the material, built-in or the maker's own.
    pub material: Rc<str>,
    /// The number of coats. With zero, the layer is skipped for now.
    pub coats: u32,
    /// The key of the tool.
    pub tool: &'static str,
    /// The key of the tool for narrow parts, if it differs.
    pub narrow_tool: Option<&'static str>,
    /// The thinner added for a sprayer, in percent of the volume.
    pub thinned: u32,
}

impl LayerPlan {
    /// Creates a layer of one coat with the usual tool of the material.
    pub fn usual(material: &coatings::Material) -> Self {
        LayerPlan::of_edition(material, Edition::LATEST)
    }

    /// Creates a layer with the defaults of an edition.
    pub fn of_edition(material: &coatings::Material, edition: Edition) -> Self {
        let tools = match (edition, material.body) {
            // Wiped materials are wiped, and all others are brushed.
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
    /// The default color of paint.
    const USUAL_PAINT: Colour = Colour([0x4a, 0x6b, 0x61]);
    /// The default color of stain.
    const USUAL_STAIN: Colour = Colour([0x6e, 0x45, 0x2a]);

    /// Sets a default color when the finish changes between paint and stain, because a paint color is no
    /// stain color.
    pub(crate) fn colour_for(&mut self, wish: Wish, own: &[Rc<OwnMaterial>]) {
        match (self.wish(own), wish) {
            (Wish::StainedClear, Wish::Painted { .. }) => self.colour = Self::USUAL_PAINT,
            (Wish::Painted { .. } | Wish::Clear, Wish::StainedClear) => self.colour = Self::USUAL_STAIN,
            _ => {}
        }
    }

    /// Returns the default finish of a new piece.
    pub fn usual() -> Self {
        Scheme::of_edition(Edition::LATEST)
    }

    /// Returns the default finish of an edition: clean, one coat of primer, two of paint and two of clear.
    /// This is the common scheme for painted furniture (common practice, no source).
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

    /// Returns the kind of finish that the layers give: stain, paint, or clear wood.
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

    /// Returns true if any layer comes in a color. If not, the wood shows.
    pub fn is_coloured(&self, own: &[Rc<OwnMaterial>]) -> bool {
        let mut planned = self.layers.iter().filter(|layer| layer.coats > 0);
        planned.any(|layer| material_of(own, &layer.material).is_some_and(|of| of.coloured))
    }

    /// Returns the recommended layers for this surface and this kind of finish.
    pub fn suggestion(&self, own: &[Rc<OwnMaterial>]) -> Suggestion {
        suggest(&self.condition, self.wish(own))
    }

    /// Returns true if the layers match a recommendation. The maker's own material counts as the one it was
    /// copied from, and paint and clear coats may differ in number, but not fall short where an old color shows
    /// through.
    pub fn is_as_suggested(&self, own: &[Rc<OwnMaterial>], suggestion: &Suggestion) -> bool {
        let planned = self.layers.iter().filter(|layer| layer.coats > 0);
        let is_so = |planned: &LayerPlan, layer: &SuggestedLayer| {
            let has_coats = match layer.is_free_in_coats() {
                true => !layer.is_for_hiding() || planned.coats >= layer.coats,
                false => planned.coats == layer.coats,
            };
            generic(own, &planned.material) == layer.material && has_coats
        };
        let planned: Vec<&LayerPlan> = planned.collect();
        planned.len() == suggestion.layers.len()
            && planned
                .iter()
                .zip(&suggestion.layers)
                .all(|(planned, layer)| is_so(planned, layer))
    }

    /// Returns the index for a new layer of a stage: after all layers of this stage and earlier ones. `of`
    /// returns the stage of a layer.
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
        // A bleed shows through a medium green as it does through cream, but not through navy.
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
        // The number of clear coats is up to the maker. A missing coat of primer is not.
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
