//! Figures of materials of the maker's own, as fields of the page.

use std::rc::Rc;

/// A figure of a material of the maker's own: the key of the material, and which figure.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FigureId {
    /// What stands on its label, by the key of the field.
    Label(Rc<str>, &'static str),
    /// What a can of it costs, by the key of the can.
    Price(Rc<str>, &'static str),
}

impl FigureId {
    /// The name of its element on the page.
    pub fn element(&self) -> String {
        match self {
            FigureId::Label(material, key) => format!("label-{material}-{key}"),
            FigureId::Price(material, can) => format!("price-{material}-{can}"),
        }
    }
}
