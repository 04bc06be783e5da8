//! The cans that a recipe can be mixed from.

use std::rc::Rc;

use coatings::{Material, Rgb, Stage};

use crate::book::{Record, ShelfCan};
use crate::document::{Workshop, material_of};
use crate::stock::stock;

/// A paint that the maker may mix with.
#[derive(Clone, Debug, PartialEq)]
pub struct KnownCan {
    /// What is in it.
    pub material: Rc<Material>,
    /// Its color, if known.
    pub colour: Option<Rgb>,
    /// Its density by its label as written, or an empty string.
    pub density: String,
}

/// Returns the cans on the shelf, then every material that can go into a mix.
pub fn known_cans(workshop: &Workshop) -> Vec<KnownCan> {
    let of_shelf = stock(workshop).into_iter().map(|can| KnownCan {
        density: workshop
            .books
            .line(ShelfCan::BOOK, &can.id)
            .map_or("", |line| line.text("density"))
            .to_owned(),
        colour: can.colour,
        material: can.material,
    });
    let own = workshop.materials.iter().map(|own| &*own.key);
    let keys = own.chain(coatings::materials().map(|material| &*material.key));
    let materials = keys.filter_map(|key| material_of(&workshop.materials, key));
    let others = materials.map(|material| KnownCan {
        material,
        colour: None,
        density: String::new(),
    });
    of_shelf
        .chain(others)
        .filter(|can| can.material.stage != Stage::Clean)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit};

    #[test]
    fn the_cans_of_the_shelf_come_first() {
        let values = [
            ("material", "trim-enamel"),
            ("colour", "#808080"),
            ("density", "10.5 lb/gal"),
        ];
        let add = BookEdit::Add("shelf", "s1".into(), crate::samples::values(&values));
        let cans = known_cans(&Workshop::default().apply(Edit::Book(add)).unwrap());
        let first = &cans[0];
        assert_eq!(
            (&*first.material.key, first.colour),
            ("trim-enamel", Some([128; 3]))
        );
        assert_eq!(first.density, "10.5 lb/gal");
        assert!(cans.iter().all(|can| can.material.stage != Stage::Clean));
        let is_bare = |can: &KnownCan| &*can.material.key == "trim-enamel" && can.colour.is_none();
        assert_eq!(cans.iter().filter(|can| is_bare(can)).count(), 1);
    }
}
