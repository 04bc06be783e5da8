//! The cans on the shelf, and what is in each.

use std::rc::Rc;

use coatings::can::{ContentsError, Level, Weighing};
use coatings::{CanSize, Contents, Demand, Enough, Material, Rgb, SourcedRange};
use units::{Density, Mass};

use crate::book::{Line, Record, ShelfCan};
use crate::document::{Colour, PieceId, Scheme, Workshop, material_of};
use crate::mixing::scale;

/// A can on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// The name of its line.
    pub id: Rc<str>,
    /// The material in it.
    pub material: Rc<Material>,
    /// Its colour, of a material that comes in colours.
    pub colour: Option<Rgb>,
    /// The name of the piece that it is for, if it is for one: then it has the color of that piece.
    pub piece: Option<Rc<str>>,
    /// Its size, where that is written down.
    pub can: Option<&'static CanSize>,
    /// How full it looks, where that is written down; a can of which only the size is known is full.
    pub level: Option<&'static Level>,
    /// Whether it was weighed.
    pub is_weighed: bool,
    /// What is left in it.
    pub contents: Result<Contents, StockFault>,
}

/// Why it is not known what is left in a can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StockFault {
    /// Neither its size nor its weight is written down.
    Unknown,
    /// It was weighed, and the empty can was not.
    NoTare,
    /// What was written down cannot be so.
    Contents(ContentsError),
}

impl std::fmt::Display for StockFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            StockFault::Unknown => f.write_str("Pick its size and how full it is, or weigh it."),
            StockFault::NoTare => f.write_str("Weigh an empty can of the same kind too."),
            StockFault::Contents(fault) => fault.fmt(f),
        }
    }
}

impl Stock {
    /// Whether it is what is needed.
    pub fn is_for(&self, need: &Demand) -> bool {
        self.material.key == need.material.key && self.colour == need.colour
    }

    /// How full it is, in words.
    pub fn level_label(&self) -> &'static str {
        match (self.is_weighed, self.level) {
            (true, _) => "weighed",
            (false, Some(level)) => level.label,
            (false, None) => "full",
        }
    }
}

/// Every can on the shelf whose material is known.
pub fn stock(workshop: &Workshop) -> Vec<Stock> {
    let of = |can: ShelfCan| {
        let material = material_of(&workshop.materials, &can.material)?;
        let colour = can.colour.or_else(|| colour_for(workshop, &can));
        Some(Stock {
            contents: contents(workshop, &can, &material),
            can: can.can,
            level: can.level,
            is_weighed: can.weight.is_some(),
            id: can.id,
            piece: Some(can.piece.into()).filter(|piece: &Rc<str>| !piece.is_empty()),
            colour: colour.map(|colour| colour.0).filter(|_| material.coloured),
            material,
        })
    };
    workshop.books.all().filter_map(of).collect()
}

/// The color that a piece gets of the material in a can that is for this piece.
fn colour_for(workshop: &Workshop, can: &ShelfCan) -> Option<Colour> {
    let piece = workshop.piece(&PieceId(can.piece.as_str().into()))?;
    let takes_it = |scheme: &&Scheme| scheme.layers.iter().any(|layer| *layer.material == *can.material);
    piece.schemes().find(takes_it).map(|scheme| scheme.colour)
}

/// The lines of the shelf with these materials, each with its color written into it.
pub(crate) fn lines(workshop: &Workshop, is_wanted: impl Fn(&str) -> bool) -> Vec<Rc<Line>> {
    let all = workshop.books.lines(ShelfCan::BOOK).iter();
    let lines = all.filter_map(|line| {
        let can = ShelfCan::read(line);
        if !is_wanted(&can.material) {
            return None;
        }
        let is_coloured = material_of(&workshop.materials, &can.material)?.coloured;
        match colour_for(workshop, &can).filter(|_| is_coloured && can.colour.is_none()) {
            None => Some(Rc::clone(line)),
            Some(colour) => {
                let mut line = (**line).clone();
                line.values.insert("colour".into(), colour.write());
                Some(Rc::new(line))
            }
        }
    });
    lines.collect()
}

/// A can that a layer of a piece has in a record of an older version.
#[derive(Clone)]
pub(crate) struct OldCan {
    pub(crate) piece: PieceId,
    pub(crate) material: Rc<str>,
    pub(crate) colour: Colour,
    pub(crate) can: &'static str,
    pub(crate) level: Option<&'static str>,
}

/// The cans on the shelf with a material that is needed, and what they are good for.
#[derive(Clone, Debug, PartialEq)]
pub struct OnHand {
    /// The cans, as far as it is known what is in them.
    pub cans: Vec<Stock>,
    /// Whether they are enough.
    pub enough: Enough,
}

impl OnHand {
    /// What is in the cans.
    pub fn contents(&self) -> Vec<Contents> {
        known_contents(&self.cans)
    }
}

/// What is in the cans that something is known of.
pub(crate) fn known_contents(cans: &[Stock]) -> Vec<Contents> {
    let known = cans.iter().filter_map(|stock| stock.contents.as_ref().ok());
    known.copied().collect()
}

/// The cans of a shelf with what is needed in them, and some known amount of it.
pub(crate) fn alike(shelf: &[Stock], need: &Demand) -> Vec<Stock> {
    let is_known = |stock: &&Stock| stock.is_for(need) && stock.contents.is_ok();
    shelf.iter().filter(is_known).cloned().collect()
}

/// What is left: weighed with the can and without, by the density of the label or else of its kind; else as full as it
/// looks; a can of which only the size is known is full.
fn contents(workshop: &Workshop, shelf: &ShelfCan, material: &Material) -> Result<Contents, StockFault> {
    let can = shelf.can.map(|can| can.volume());
    let Some(gross) = shelf.weight else {
        let can = can.ok_or(StockFault::Unknown)?;
        let contents = match shelf.level {
            Some(level) => Contents::part(can, level.share.low, level.share.high),
            None => Contents::full(can),
        };
        return contents.map_err(StockFault::Contents);
    };
    let tare = shelf.tare.ok_or(StockFault::NoTare)?;
    let own = shelf.density.map(Density::as_kilograms_per_litre);
    let own = own.filter(|density| *density > 0.0);
    let density = own.map_or(material.density, |own| SourcedRange::own(own, own));
    let scale = scale(workshop);
    let weighing = |mass: Mass| Weighing { mass, scale };
    Contents::weighed(weighing(gross), weighing(tare), density, can).map_err(StockFault::Contents)
}
