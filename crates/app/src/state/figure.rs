//! Names, label values and prices of the maker's own materials, as fields of the page.

use std::rc::Rc;

/// A value of one of the maker's own materials: the key of the material, and the value.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FigureId {
    /// Its name.
    Name(Rc<str>),
    /// A value on its label, by field key.
    Label(Rc<str>, &'static str),
    /// The price of a can, by can key.
    Price(Rc<str>, &'static str),
}

impl FigureId {
    /// Returns the id of its element.
    pub fn element(&self) -> String {
        match self {
            FigureId::Name(material) => format!("name-{material}"),
            FigureId::Label(material, key) => format!("label-{material}-{key}"),
            FigureId::Price(material, can) => format!("price-{material}-{can}"),
        }
    }
}
