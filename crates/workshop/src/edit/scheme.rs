//! Edits of the finish of a piece or a zone.

use std::rc::Rc;

use coatings::suggest::may_degrease;
use coatings::{Basis, Condition, Material, Rgb, Stage, Substrate, Tool, Wish, suggest};

use super::EditError;
use crate::document::{Colour, LayerPlan, OwnMaterial, Piece, Scheme, generic, material_of};

/// The maximum number of coats in a layer.
pub(crate) const MAX_COATS: u32 = 9;
/// The maximum number of layers in a scheme.
pub(crate) const MAX_LAYERS: usize = 12;
/// The maximum thinner, in percent of the volume.
pub(crate) const MAX_THINNED: u32 = 100;

/// A change to a scheme. Layers are counted from 0.
#[derive(Clone, Debug, PartialEq)]
pub enum SchemeEdit {
    /// Sets the color of materials that come in colors.
    Colour(Colour),
    /// Sets the ground for the first coat.
    Substrate(Substrate),
    /// Sets the wood, by its key. `None` if unknown.
    Species(Option<&'static str>),
    /// Sets whether a sign was seen on the surface.
    Sign(Sign, bool),
    /// Sets what volumes are calculated from.
    Basis(Basis),
    /// Adds a layer after the others of its stage.
    Add(Rc<str>),
    /// Deletes a layer.
    Remove(usize),
    /// Replaces the material of a layer. If the tool cannot apply it, the tool changes too. A can on hand
    /// stays only if it holds the same kind of material.
    Material(usize, Rc<str>),
    /// Sets the coats of a layer.
    Coats(usize, u32),
    /// Sets the tool of a layer, by its key.
    Tool(usize, &'static str),
    /// Sets the tool of a layer for narrow parts. `None` is the same tool.
    NarrowTool(usize, Option<&'static str>),
    /// Sets the thinner added for a sprayer, in percent.
    Thinned(usize, u32),
    /// Replaces all layers with the recommended ones.
    Suggested(Wish),
}

/// A sign on a surface that calls for a special primer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// An old red dye stain.
    OldRedStain,
    /// Knots.
    Knots,
    /// A lasting smell.
    Odour,
    /// Wax or polish.
    Wax,
    /// Spots where the finish is worn to the wood.
    BareSpots,
}

impl Sign {
    /// Every sign.
    pub const ALL: [Sign; 5] = [
        Sign::OldRedStain,
        Sign::Knots,
        Sign::Odour,
        Sign::Wax,
        Sign::BareSpots,
    ];

    /// Returns its key in save files.
    pub fn key(self) -> &'static str {
        match self {
            Sign::OldRedStain => "old-red-stain",
            Sign::Knots => "knots",
            Sign::Odour => "odour",
            Sign::Wax => "wax",
            Sign::BareSpots => "bare-spots",
        }
    }

    /// Returns its label.
    pub fn label(self) -> &'static str {
        match self {
            Sign::OldRedStain => "Old red stain or water stains that could bleed",
            Sign::Knots => "Knots",
            Sign::Odour => "Odor",
            Sign::Wax => "Wax or polish",
            Sign::BareSpots => "Bare spots",
        }
    }

    /// Returns true if it was seen.
    pub fn of(self, condition: &Condition) -> bool {
        let mut copy = *condition;
        *self.of_mut(&mut copy)
    }

    pub(crate) fn of_mut(self, condition: &mut Condition) -> &mut bool {
        match self {
            Sign::OldRedStain => &mut condition.old_red_stain,
            Sign::Knots => &mut condition.knots,
            Sign::Odour => &mut condition.odour,
            Sign::Wax => &mut condition.waxed,
            Sign::BareSpots => &mut condition.bare_spots,
        }
    }
}

impl Scheme {
    pub(super) fn apply(&mut self, edit: SchemeEdit, own: &[Rc<OwnMaterial>]) -> Result<(), EditError> {
        match edit {
            SchemeEdit::Colour(colour) => self.colour = colour,
            SchemeEdit::Substrate(ground) => self.found(ground, own),
            SchemeEdit::Species(None) => self.condition.species = None,
            SchemeEdit::Species(Some(key)) => {
                let species = coatings::species(key).ok_or(EditError::Unknown("wood"))?;
                self.condition.species = Some(species);
            }
            SchemeEdit::Sign(sign, seen) => *sign.of_mut(&mut self.condition) = seen,
            SchemeEdit::Basis(basis) => self.basis = basis,
            SchemeEdit::Add(key) => {
                if self.layers.len() >= MAX_LAYERS {
                    return Err(EditError::TooMany {
                        what: "layers",
                        most: MAX_LAYERS,
                    });
                }
                let material = known(own, &key)?;
                let layer = LayerPlan::usual(&material);
                self.layers.insert(self.place_for(material.stage, own), layer);
            }
            SchemeEdit::Remove(place) => {
                self.layer(place)?;
                self.layers.remove(place);
            }
            SchemeEdit::Material(place, key) => {
                let material = known(own, &key)?;
                let usual = LayerPlan::usual(&material);
                let layer = self.layer(place)?;
                layer.material = usual.material;
                let can_do =
                    |tool: &str| coatings::tool(tool).is_some_and(|tool| tool.film(material.body).is_some());
                if !can_do(layer.tool) {
                    layer.tool = usual.tool;
                }
                layer.narrow_tool = layer.narrow_tool.filter(|tool| can_do(tool));
            }
            SchemeEdit::Coats(place, coats) => {
                if coats > MAX_COATS {
                    return Err(EditError::TooMany {
                        what: "coats",
                        most: MAX_COATS as usize,
                    });
                }
                self.layer(place)?.coats = coats;
            }
            SchemeEdit::Tool(place, key) => {
                let tool = self.tool_for(place, key, own)?;
                self.layer(place)?.tool = tool;
            }
            SchemeEdit::NarrowTool(place, key) => {
                let tool = key.map(|key| self.tool_for(place, key, own)).transpose()?;
                let layer = self.layer(place)?;
                layer.narrow_tool = tool.filter(|tool| *tool != layer.tool);
            }
            SchemeEdit::Thinned(place, share) => {
                if share > MAX_THINNED {
                    return Err(EditError::TooMany {
                        what: "percent of thinner",
                        most: MAX_THINNED as usize,
                    });
                }
                self.layer(place)?.thinned = share;
            }
            SchemeEdit::Suggested(wish) => {
                self.colour_for(wish, own);
                self.take_suggestion(wish, own);
            }
        }
        Ok(())
    }

    /// Sets the ground and adjusts the degreaser: none on bare wood, and one coat on other grounds.
    fn found(&mut self, ground: Substrate, own: &[Rc<OwnMaterial>]) {
        let (before, after) = (may_degrease(self.condition.substrate), may_degrease(ground));
        self.condition.substrate = ground;
        let is_degreaser = |layer: &&mut LayerPlan| generic(own, &layer.material) == "degreaser";
        for layer in self.layers.iter_mut().filter(is_degreaser) {
            match (before, after) {
                (_, false) => layer.coats = 0,
                (false, true) => layer.coats = layer.coats.max(1),
                (true, true) => {}
            }
        }
    }

    fn layer(&mut self, place: usize) -> Result<&mut LayerPlan, EditError> {
        self.layers.get_mut(place).ok_or(EditError::Unknown("layer"))
    }

    fn place_for(&self, stage: Stage, own: &[Rc<OwnMaterial>]) -> usize {
        self.place_of(stage, |key| material_of(own, key).map(|material| material.stage))
    }

    /// Returns the tool with this key, if it can apply the material of a layer.
    fn tool_for(&self, place: usize, key: &str, own: &[Rc<OwnMaterial>]) -> Result<&'static str, EditError> {
        let tool: &'static Tool = coatings::tool(key).ok_or(EditError::Unknown("tool"))?;
        let layer = self.layers.get(place).ok_or(EditError::Unknown("layer"))?;
        let material = known(own, &layer.material)?;
        if tool.film(material.body).is_none() {
            return Err(EditError::WrongTool {
                tool: tool.name,
                material: material.name.to_string(),
            });
        }
        Ok(tool.key)
    }

    /// Replaces the layers. Those that stay keep their tools, cans and label, and paint and clear coats keep
    /// their number of coats.
    fn take_suggestion(&mut self, wish: Wish, own: &[Rc<OwnMaterial>]) {
        let before = std::mem::take(&mut self.layers);
        for suggested in suggest(&self.condition, wish).layers {
            let Some(material) = coatings::material(suggested.material) else {
                continue;
            };
            let known = before
                .iter()
                .find(|layer| generic(own, &layer.material) == suggested.material);
            let layer = known.cloned().unwrap_or_else(|| LayerPlan::usual(material));
            let coats = match known.map(|layer| layer.coats) {
                Some(coats) if coats > 0 && suggested.is_free_in_coats() => coats,
                _ => suggested.coats,
            };
            self.layers.push(LayerPlan { coats, ..layer });
        }
    }
}

fn known(own: &[Rc<OwnMaterial>], key: &str) -> Result<Rc<Material>, EditError> {
    material_of(own, key).ok_or(EditError::Unknown("material"))
}

impl Piece {
    /// Changes the scheme of the piece, or of a zone with its own. The condition found on the piece also
    /// applies to such a zone until somebody enters another one there.
    pub(crate) fn finish(
        &mut self,
        zone: Option<String>,
        edit: SchemeEdit,
        own: &[Rc<OwnMaterial>],
    ) -> Result<(), EditError> {
        let is_suggested = matches!(edit, SchemeEdit::Suggested(_));
        self.finish_zone(zone.as_deref(), edit, own)?;
        if is_suggested {
            self.hide_old_color(zone.as_deref(), own);
        }
        Ok(())
    }

    /// Raises the coats of paint to those that hide the old color.
    fn hide_old_color(&mut self, zone: Option<&str>, own: &[Rc<OwnMaterial>]) {
        let scheme = zone.map_or(&self.scheme, |key| self.scheme_of(key));
        let suggested = self.suggestion(scheme, own).layers.into_iter();
        for paint in suggested.filter(coatings::suggest::SuggestedLayer::is_for_hiding) {
            let of_zone = zone.and_then(|key| self.zones.get_mut(key)?.scheme.as_mut());
            let scheme = of_zone.unwrap_or(&mut self.scheme);
            let is_paint = |layer: &&mut LayerPlan| generic(own, &layer.material) == paint.material;
            for layer in scheme.layers.iter_mut().filter(is_paint) {
                layer.coats = layer.coats.max(paint.coats);
            }
        }
    }

    fn finish_zone(
        &mut self,
        zone: Option<&str>,
        edit: SchemeEdit,
        own: &[Rc<OwnMaterial>],
    ) -> Result<(), EditError> {
        let Some(key) = zone else {
            let found = self.scheme.condition;
            if let SchemeEdit::Substrate(_) | SchemeEdit::Species(_) | SchemeEdit::Sign(..) = edit {
                let zones = self.zones.values_mut().filter_map(|zone| zone.scheme.as_mut());
                for alike in zones.filter(|scheme| scheme.condition == found) {
                    alike.apply(edit.clone(), own)?;
                }
            }
            return self.scheme.apply(edit, own);
        };
        let zone = self.zones.get_mut(key).and_then(|zone| zone.scheme.as_mut());
        zone.ok_or(EditError::Unknown("group"))?.apply(edit, own)
    }

    /// Gives a zone its own scheme, a copy of that of the piece, or removes it.
    pub(super) fn set_apart(&mut self, key: String, apart: bool) -> Result<(), EditError> {
        let scheme = apart.then(|| self.scheme_of(&key).clone());
        self.choose_zone(key, |zone| zone.scheme = scheme)
    }

    /// Returns every layer that uses a material in a color.
    pub(super) fn layers_of<'a>(
        &'a mut self,
        material: &'a str,
        colour: Option<Rgb>,
    ) -> impl Iterator<Item = &'a mut LayerPlan> {
        let of_zones = self.zones.values_mut().filter_map(|zone| zone.scheme.as_mut());
        std::iter::once(&mut self.scheme)
            .chain(of_zones)
            .filter(move |scheme| colour.is_none_or(|colour| scheme.colour.0 == colour))
            .flat_map(|scheme| &mut scheme.layers)
            .filter(move |layer| &*layer.material == material)
    }
}
