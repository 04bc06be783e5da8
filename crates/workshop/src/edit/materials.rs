//! Edits of the maker's own materials.

use std::rc::Rc;

use units::SortedMap;

use super::{EditError, shortened};
use crate::document::{LabelReading, OwnMaterial, Piece, Price, Workshop, label_field};

/// The maximum number of the maker's own materials.
pub(crate) const MAX_MATERIALS: usize = 500;

/// A change to one of the maker's own materials.
#[derive(Clone, Debug, PartialEq)]
pub enum MaterialEdit {
    /// Sets the name. An empty one is that of the built-in material.
    Name(String),
    /// Sets a value of its label, by field key, or clears it.
    Label(&'static str, Option<LabelReading>),
    /// Sets the price of a can, by the key of the can, or clears it.
    Price(&'static str, Option<Price>),
}

impl Workshop {
    /// Adds a copy of a built-in material, for label values.
    pub(super) fn add_material(&mut self, key: Rc<str>, of: &str) -> Result<(), EditError> {
        let known = coatings::material(of).ok_or(EditError::Unknown("material"))?;
        if self.materials.len() >= MAX_MATERIALS {
            return Err(EditError::TooMany {
                what: "materials",
                most: MAX_MATERIALS,
            });
        }
        if coatings::material(&key).is_some() || self.materials.iter().any(|own| own.key == key) {
            return Err(EditError::IdTaken);
        }
        let mut prices = SortedMap::default();
        for (can, _) in self.offers(of) {
            if let Some(price) = self.price_of(of, can) {
                prices.insert(can, price);
            }
        }
        self.materials.push(Rc::new(OwnMaterial {
            key,
            of: &known.key,
            name: known.name.to_string(),
            label: Default::default(),
            prices,
        }));
        Ok(())
    }

    pub(super) fn edit_material(&mut self, key: &str, edit: MaterialEdit) -> Result<(), EditError> {
        let Some(place) = self.materials.iter().position(|own| &*own.key == key) else {
            return self.edit_known(key, edit);
        };
        let mut own = (*self.materials[place]).clone();
        match edit {
            MaterialEdit::Name(name) if name.is_empty() => {
                own.name = coatings::material(own.of).map_or(name, |of| of.name.to_string());
            }
            MaterialEdit::Name(name) => own.name = shortened(&name),
            MaterialEdit::Label(field, reading) => {
                let key = label_field(field).ok_or(EditError::Unknown("figure"))?.key;
                match reading {
                    Some(reading) => own.label.insert(key, reading),
                    None => own.label.remove(key),
                };
            }
            MaterialEdit::Price(can, price) => {
                let key = coatings::can(can).ok_or(EditError::Unknown("can size"))?.key;
                match price {
                    Some(price) => own.prices.insert(key, price),
                    None => own.prices.remove(key),
                };
            }
        }
        self.materials[place] = Rc::new(own);
        Ok(())
    }

    /// Only prices can be set for a built-in material, because its values are those of its kind.
    fn edit_known(&mut self, key: &str, edit: MaterialEdit) -> Result<(), EditError> {
        let known = coatings::material(key).ok_or(EditError::Unknown("material"))?;
        let MaterialEdit::Price(can, price) = edit else {
            return Err(EditError::Unknown("material"));
        };
        let can = coatings::can(can).ok_or(EditError::Unknown("can size"))?.key;
        for edit in self.price_edits(&known.key, can, price.as_ref()) {
            self.books.apply(edit, false, self.units)?;
        }
        Ok(())
    }

    /// Deletes the material. The material that it was copied from replaces it wherever it is planned.
    pub(super) fn remove_material(&mut self, key: &str) -> Result<(), EditError> {
        let place = self.materials.iter().position(|own| &*own.key == key);
        let own = self
            .materials
            .remove(place.ok_or(EditError::Unknown("material"))?);
        let of: Rc<str> = own.of.into();
        for piece in &mut self.pieces {
            renamed(piece, key, &of);
        }
        let finish = self.settings.finish.iter_mut();
        let layers = finish.flat_map(|finish| &mut finish.layers);
        for layer in layers.filter(|layer| &*layer.material == key) {
            layer.material = Rc::clone(&of);
        }
        Ok(())
    }

    /// Adds the materials of another workshop. If the key of one is taken, it gets a new key, also in the
    /// pieces that come with it.
    pub(super) fn gather_materials(&mut self, other: &mut Workshop) -> Renamed {
        let mut all = Renamed::new();
        let theirs = std::mem::take(&mut other.materials);
        for own in &theirs {
            if self.materials.contains(own) || self.materials.len() >= MAX_MATERIALS {
                continue;
            }
            // The new key must not be the key of another incoming material, which would replace that one.
            let others = || theirs.iter().filter(|other| other.key != own.key);
            let is_free = |key: &str| self.materials.iter().chain(others()).all(|own| &*own.key != key);
            let names = std::iter::once(own.key.to_string()).chain((2..).map(|n| format!("{}-{n}", own.key)));
            let Some(key) = names.into_iter().find(|key| is_free(key)) else {
                continue;
            };
            let key: Rc<str> = key.into();
            if key != own.key {
                for piece in &mut other.pieces {
                    renamed(piece, &own.key, &key);
                }
                all.push((Rc::clone(&own.key), Rc::clone(&key)));
            }
            self.materials.push(Rc::new(OwnMaterial {
                key,
                ..(**own).clone()
            }));
        }
        all
    }
}

/// Ids that were taken, each with its replacement.
pub(super) type Renamed = Vec<(Rc<str>, Rc<str>)>;

/// Replaces a material wherever a piece plans it.
fn renamed(piece: &mut Rc<Piece>, from: &str, to: &Rc<str>) {
    let planned = |piece: &Piece| {
        let layers = piece.schemes().flat_map(|scheme| &scheme.layers);
        layers.into_iter().any(|layer| &*layer.material == from)
    };
    if planned(piece) {
        let mut changed = (**piece).clone();
        for layer in changed.layers_of(from, None) {
            layer.material = Rc::clone(to);
        }
        *piece = Rc::new(changed);
    }
}
