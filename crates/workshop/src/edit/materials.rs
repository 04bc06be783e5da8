//! Edits of the materials of the maker's own.

use std::rc::Rc;

use units::SortedMap;

use super::{EditError, shortened};
use crate::document::{LabelReading, OwnMaterial, Piece, Price, Workshop, label_field};

/// The most materials of the maker's own.
pub(crate) const MAX_MATERIALS: usize = 500;

/// A change of a material of the maker's own.
#[derive(Clone, Debug, PartialEq)]
pub enum MaterialEdit {
    /// What the maker calls it.
    Name(String),
    /// A figure of its label, by the key of the field, or none any more.
    Label(&'static str, Option<LabelReading>),
    /// What a can costs, by the key of the can, or nothing any more.
    Price(&'static str, Option<Price>),
}

impl Workshop {
    /// A copy of a known material, to be given the figures of a label.
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
            // Where both are to be chosen from, the maker has to see which is which.
            name: format!("{} (own)", known.name),
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

    /// Of a known material only prices can be noted: its figures are those of its kind.
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

    /// The material goes; where it was planned, the one that it was copied from stands in its place.
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

    /// Takes in the materials of another workshop; one whose key is taken by another material gets a new key, in its
    /// pieces as well.
    pub(super) fn gather_materials(&mut self, other: &mut Workshop) -> Renamed {
        let mut all = Renamed::new();
        let theirs = std::mem::take(&mut other.materials);
        for own in &theirs {
            if self.materials.contains(own) || self.materials.len() >= MAX_MATERIALS {
                continue;
            }
            // A key that another of theirs has would put that one in its place.
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

/// Names that were taken, each with the one that was given instead.
pub(super) type Renamed = Vec<(Rc<str>, Rc<str>)>;

/// Puts another material in the place of one wherever a piece plans it.
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
