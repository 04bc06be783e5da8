//! Reading the maker's own materials from records of format 3.

use std::rc::Rc;

use serde_json::Value;
use units::SortedMap;

use super::{Reader, shown};
use crate::document::{LabelReading, OwnMaterial, Price, label_field};
use crate::edit::{MAX_MATERIALS, shortened};
use crate::format::Notice;
use crate::format::record::Readable;
use crate::format::v3::MaterialRecord;

impl Reader<'_> {
    pub(super) fn materials(&mut self, records: Vec<Readable<MaterialRecord>>) -> Vec<Rc<OwnMaterial>> {
        let records = self.first(records, MAX_MATERIALS, "materials");
        let mut materials: Vec<Rc<OwnMaterial>> = Vec::with_capacity(records.len());
        for (index, Readable(record)) in records.into_iter().enumerate() {
            match record.and_then(|record| self.material(record, &materials)) {
                Some(material) => materials.push(Rc::new(material)),
                None => self.notices.push(Notice::MaterialLeftOut { number: index + 1 }),
            }
        }
        materials
    }

    /// Reads a material. Returns `None` if it is a copy of an unknown one, or if its key is taken.
    fn material(&mut self, record: MaterialRecord, before: &[Rc<OwnMaterial>]) -> Option<OwnMaterial> {
        let of = coatings::material(&record.of)?;
        let is_taken = before.iter().any(|own| *own.key == *record.id);
        if record.id.is_empty() || is_taken || coatings::material(&record.id).is_some() {
            return None;
        }
        let name = shortened(&record.name);
        let mut label = SortedMap::new();
        for (key, reading) in record.label.0 {
            let Some(field) = label_field(&key) else {
                self.figure(&name, key, &reading.typed, "That value is unknown.".into());
                continue;
            };
            match LabelReading::saved(field, &reading.typed, &reading.unit, both(&reading.value)) {
                Ok(reading) => {
                    label.insert(field.key, reading);
                }
                Err(error) => self.figure(
                    &name,
                    field.field.label().to_ascii_lowercase(),
                    &reading.typed,
                    error.to_string(),
                ),
            }
        }
        let mut prices = SortedMap::new();
        for (key, typed) in record.prices.0 {
            let price = coatings::can(&key)
                .map(|can| (can, Price::saved(&typed, record.values.0.get(&key).copied())));
            match price {
                Some((can, Ok(price))) => {
                    prices.insert(can.key, price);
                }
                Some((can, Err(error))) => {
                    self.figure(
                        &name,
                        format!("price of {}", can.label),
                        &typed,
                        error.to_string(),
                    );
                }
                None => self.figure(&name, "price".into(), &typed, "That can size is unknown.".into()),
            }
        }
        Some(OwnMaterial {
            key: record.id.into(),
            of: &of.key,
            name,
            label,
            prices,
        })
    }

    fn figure(&mut self, material: &str, figure: String, typed: &str, reason: String) {
        self.notices.push(Notice::FigureLeftOut {
            material: material.to_owned(),
            figure: shown(&figure),
            typed: shown(typed),
            reason,
        });
    }
}

/// Reads a number, or the minimum and maximum of a range.
fn both(value: &Option<Value>) -> Option<(f64, f64)> {
    let of = value.as_ref()?;
    let one = of.as_f64().map(|number| (number, number));
    one.or_else(|| Some((of.get(0)?.as_f64()?, of.get(1)?.as_f64()?)))
}
