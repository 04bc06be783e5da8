//! Reading schemes from records of format 3.

use std::rc::Rc;

use coatings::Substrate;

use super::{Reader, shown};
use crate::document::{Colour, EntryId, LayerPlan, OwnMaterial, Scheme, material_of};
use crate::edit::{MAX_COATS, MAX_LAYERS, MAX_THINNED, Sign};
use crate::format::Notice;
use crate::format::record::Readable;
use crate::format::v3::{LayerRecord, SchemeRecord};
use crate::stock::OldCan;

impl Reader<'_> {
    /// Reads a scheme. Cans in the layers of older versions are added to the cans of the reader.
    pub(super) fn scheme(&mut self, record: SchemeRecord, own: &[Rc<OwnMaterial>]) -> Scheme {
        let usual = Scheme::of_edition(self.edition);
        let colour = record.colour.and_then(|text| {
            let colour = Colour::read(&text);
            if colour.is_none() {
                self.unknown_word("colour", &text);
            }
            colour
        });
        let mut condition = usual.condition;
        if let Some(key) = record.ground {
            match Substrate::ALL.into_iter().find(|ground| ground.key() == key) {
                Some(ground) => condition.substrate = ground,
                None => self.unknown_word("surface", &key),
            }
        }
        if let Some(key) = record.wood {
            condition.species = coatings::species(&key);
            if condition.species.is_none() {
                self.unknown_word("wood", &key);
            }
        }
        for key in record.signs {
            match Sign::ALL.into_iter().find(|sign| sign.key() == key) {
                Some(sign) => *sign.of_mut(&mut condition) = true,
                None => self.unknown_word("condition", &key),
            }
        }
        let colour = colour.unwrap_or(usual.colour);
        let layers = match record.layers {
            Some(layers) => self.layers(layers, colour, own),
            None => usual.layers,
        };
        Scheme {
            colour,
            condition,
            basis: self.word(record.basis, usual.basis),
            layers,
        }
    }

    fn layers(
        &mut self,
        records: Vec<Readable<LayerRecord>>,
        colour: Colour,
        own: &[Rc<OwnMaterial>],
    ) -> Vec<LayerPlan> {
        let records = self.first(records, MAX_LAYERS, "layers");
        let mut layers = Vec::with_capacity(records.len());
        for (index, Readable(record)) in records.into_iter().enumerate() {
            let (layer, material) = match record {
                Some(record) => {
                    let material = shown(&record.material);
                    (self.layer(record, colour, own), material)
                }
                None => (None, String::new()),
            };
            if layer.is_none() {
                self.notices.push(Notice::LayerLeftOut {
                    piece: self.name.clone(),
                    number: index + 1,
                    material,
                });
            }
            layers.extend(layer);
        }
        layers
    }

    fn layer(&mut self, record: LayerRecord, colour: Colour, own: &[Rc<OwnMaterial>]) -> Option<LayerPlan> {
        let material = material_of(own, &record.material)?;
        let usual = LayerPlan::of_edition(&material, self.edition);
        let tool = |key: &str| {
            let tool = coatings::tool(key).filter(|tool| tool.film(material.body).is_some());
            tool.map(|tool| tool.key)
        };
        let known_tool = self.key_or_usual(tool(&record.tool), "tool", &record.tool, usual.tool);
        let narrow = record.narrow.and_then(|key| {
            let known = tool(&key);
            if known.is_none() {
                self.unknown_word("tool", &key);
            }
            known.filter(|key| *key != known_tool)
        });
        self.old_can(&usual.material, colour, record.can, record.level);
        Some(LayerPlan {
            id: EntryId(record.id),
            coats: self.count(record.coats, 0, u64::from(MAX_COATS), "coats") as u32,
            tool: known_tool,
            narrow_tool: narrow,
            thinned: self.count(record.thinned, 0, u64::from(MAX_THINNED), "percent of thinner") as u32,
            ..usual
        })
    }

    /// Reads the can in a layer of an older version, and how full it is.
    fn old_can(&mut self, material: &Rc<str>, colour: Colour, can: Option<String>, level: Option<String>) {
        let Some(key) = can.filter(|key| !key.is_empty()) else {
            return;
        };
        let Some(can) = coatings::can(&key) else {
            return self.unknown_word("can size", &key);
        };
        let known = level.as_deref().and_then(coatings::can::level);
        if let (Some(key), None) = (&level, known) {
            self.unknown_word("can level", key);
        }
        // The first layer of a material in a color holds the can.
        let is_it = |other: &OldCan| other.material == *material && other.colour == colour;
        if !self.cans.iter().any(is_it) {
            self.cans.push(OldCan {
                piece: self.id.clone(),
                material: Rc::clone(material),
                colour,
                can: can.key,
                level: known.map(|level| level.key),
            });
        }
    }

    /// Returns the value for a key. A missing key gives the default without a notice.
    fn key_or_usual(
        &mut self,
        known: Option<&'static str>,
        what: &'static str,
        given: &str,
        usual: &'static str,
    ) -> &'static str {
        if given.is_empty() {
            usual
        } else {
            self.key(known, what, given, usual)
        }
    }
}
