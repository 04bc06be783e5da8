//! Can prices. For the maker's own materials, they are stored with the label. For others, they are in a book.

use std::rc::Rc;

use coatings::can::Offer;

use crate::BookEdit;
use crate::book::{CanPrice, Entered, Record};
use crate::document::{OwnMaterial, Price, Workshop};

const BOOK: &str = CanPrice::BOOK;

/// Returns the id of the line for a can of a material.
pub(crate) fn line(material: &str, can: &str) -> String {
    format!("{material}-{can}")
}

impl Workshop {
    fn own(&self, material: &str) -> Option<&OwnMaterial> {
        let own = self.materials.iter().find(|own| &*own.key == material);
        own.map(Rc::as_ref)
    }

    /// Returns the cans of a material that have a price, with their keys.
    pub fn offers(&self, material: &str) -> Vec<(&'static str, Offer)> {
        if let Some(own) = self.own(material) {
            return own.offers();
        }
        let offer = |of: CanPrice| {
            let (can, price) = of.can.zip(of.price)?;
            let size = can.volume();
            Some((can.key, Offer { size, price }))
        };
        let prices = self.books.all().filter(|of: &CanPrice| of.material == material);
        prices.filter_map(offer).collect()
    }

    /// Returns the price of a can of a material.
    pub fn price_of(&self, material: &str, can: &str) -> Option<Price> {
        if let Some(own) = self.own(material) {
            return own.prices.get(can).cloned();
        }
        let line = self.books.line(BOOK, &line(material, can))?;
        let Entered { text, decimals } = line.entered(BOOK, "price");
        Price::typed_with(&text, decimals).ok()
    }

    /// Returns the edits that set or clear the price of a can of a built-in material.
    pub(crate) fn price_edits(&self, material: &str, can: &str, price: Option<&Price>) -> Vec<BookEdit> {
        let id: Rc<str> = line(material, can).into();
        let is_there = self.books.line(BOOK, &id).is_some();
        let strike = is_there.then(|| BookEdit::Strike(BOOK, Rc::clone(&id)));
        let add = price.map(|price| {
            let values = vec![("material", material.to_owned()), ("can", can.to_owned())];
            let (line, key) = (Rc::clone(&id), "price".to_owned());
            [
                BookEdit::Add(BOOK, Rc::clone(&id), values),
                BookEdit::Write(BOOK, line, key, price.entered()),
            ]
        });
        strike.into_iter().chain(add.into_iter().flatten()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Edit, MaterialEdit, invented_workshop};

    fn priced(workshop: &Workshop, material: &str, can: &'static str, price: Option<&str>) -> Workshop {
        let price = price.map(|text| Price::new(text).unwrap());
        let edit = Edit::Material(material.into(), MaterialEdit::Price(can, price));
        workshop.apply(edit).unwrap()
    }

    #[test]
    fn any_material_can_have_prices() {
        let bare = invented_workshop();
        assert!(bare.offers("trim-enamel").is_empty());
        let quart = priced(&bare, "trim-enamel", "us-quart", Some("24.50"));
        let both = priced(&quart, "trim-enamel", "us-gallon", Some("70"));
        let keys: Vec<_> = both
            .offers("trim-enamel")
            .iter()
            .map(|(key, offer)| (*key, offer.price))
            .collect();
        assert_eq!(keys, [("us-quart", 2450), ("us-gallon", 7000)]);
        let typed = |of: &Workshop, can| {
            of.price_of("trim-enamel", can)
                .map(|price| price.typed().to_owned())
        };
        assert_eq!(typed(&both, "us-quart").as_deref(), Some("24.50"));
        let dearer = priced(&both, "trim-enamel", "us-gallon", Some("80"));
        assert_eq!(typed(&dearer, "us-gallon").as_deref(), Some("80"));
        let again = priced(&dearer, "trim-enamel", "us-gallon", None);
        assert_eq!(again.offers("trim-enamel").len(), 1);
        assert!(again.offers("shellac-primer").is_empty());
    }

    /// A new material of the maker's own starts with the prices of the material it was copied from, and then
    /// keeps its own.
    #[test]
    fn a_label_of_ones_own_begins_with_the_prices_that_are_known() {
        let bare = priced(&invented_workshop(), "trim-enamel", "us-quart", Some("24.50"));
        let of: Rc<str> = "own-1".into();
        let with = bare
            .apply(Edit::AddMaterial(Rc::clone(&of), "trim-enamel".into()))
            .unwrap();
        let typed = |of: &Workshop, key| of.price_of(key, "us-quart").map(|price| price.typed().to_owned());
        assert_eq!(typed(&with, "own-1").as_deref(), Some("24.50"));
        let own = priced(&with, "own-1", "us-quart", Some("30"));
        assert_eq!(typed(&own, "own-1").as_deref(), Some("30"));
        assert_eq!(typed(&own, "trim-enamel").as_deref(), Some("24.50"));
    }
}
