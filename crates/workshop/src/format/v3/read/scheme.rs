//! Schemes, from records of format 3.

use std::rc::Rc;

use coatings::Substrate;

use super::{Reader, shown};
use crate::document::{Colour, LayerPlan, OwnMaterial, Scheme, material_of};
use crate::edit::{MAX_COATS, MAX_LAYERS, MAX_THINNED, Sign};
use crate::format::Notice;
use crate::format::record::Readable;
use crate::format::v3::{LayerRecord, SchemeRecord};

impl Reader<'_> {
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
                Some(ground) => condition.ground = ground,
                None => self.unknown_word("ground", &key),
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
                None => self.unknown_word("sign of the surface", &key),
            }
        }
        Scheme {
            colour: colour.unwrap_or(usual.colour),
            condition,
            basis: self.word(record.basis, usual.basis),
            layers: match record.layers {
                Some(layers) => self.layers(layers, own),
                None => usual.layers,
            },
        }
    }

    fn layers(&mut self, records: Vec<Readable<LayerRecord>>, own: &[Rc<OwnMaterial>]) -> Vec<LayerPlan> {
        let records = self.first(records, MAX_LAYERS, "layers");
        let mut layers = Vec::with_capacity(records.len());
        for (index, Readable(record)) in records.into_iter().enumerate() {
            let (layer, material) = match record {
                Some(record) => {
                    let material = shown(&record.material);
                    (self.layer(record, own), material)
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

    fn layer(&mut self, record: LayerRecord, own: &[Rc<OwnMaterial>]) -> Option<LayerPlan> {
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
        let can = record.can.filter(|key| !key.is_empty()).and_then(|key| {
            let known = coatings::can(&key).map(|can| can.key);
            if known.is_none() {
                self.unknown_word("can size", &key);
            }
            known
        });
        let level = record.level.and_then(|key| {
            let known = coatings::can::level(&key).map(|level| level.key);
            if known.is_none() {
                self.unknown_word("level of a can", &key);
            }
            known
        });
        Some(LayerPlan {
            coats: self.count(record.coats, 0, u64::from(MAX_COATS), "coats") as u32,
            tool: known_tool,
            narrow_tool: narrow,
            thinned: self.count(record.thinned, 0, u64::from(MAX_THINNED), "hundredths of thinner") as u32,
            can,
            level: level.filter(|_| can.is_some()),
            ..usual
        })
    }

    /// A known key; for one that was not written, the usual one without a word.
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
