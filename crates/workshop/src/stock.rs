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
    /// The id of its line.
    pub id: Rc<str>,
    /// The material in it.
    pub material: Rc<Material>,
    /// Its color, if the material comes in colors.
    pub colour: Option<Rgb>,
    /// The id of the piece it is reserved for. It then has the color of that piece.
    pub piece: Option<Rc<str>>,
    /// Its size, if entered.
    pub can: Option<&'static CanSize>,
    /// How full it looks, if entered. A can with only a size is full.
    pub level: Option<&'static Level>,
    /// True if it was weighed.
    pub is_weighed: bool,
    /// The contents.
    pub contents: Result<Contents, StockFault>,
}

/// The reason that the contents of a can are unknown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StockFault {
    /// Neither its size nor its weight was entered.
    Unknown,
    /// It was weighed, but the empty can was not.
    NoTare,
    /// The entries are impossible.
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
    /// Returns true if it holds what is needed.
    pub fn is_for(&self, need: &Demand) -> bool {
        self.material.key == need.material.key && self.colour == need.colour
    }

    /// Describes how full it is.
    pub fn level_label(&self) -> &'static str {
        match (self.is_weighed, self.level) {
            (true, _) => "weighed",
            (false, Some(level)) => level.label,
            (false, None) => "full",
        }
    }
}

/// Returns every can on the shelf with a known material.
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

/// Returns the color of the material on a piece, for a can reserved for the piece.
fn colour_for(workshop: &Workshop, can: &ShelfCan) -> Option<Colour> {
    let piece = workshop.piece(&PieceId(can.piece.as_str().into()))?;
    let takes_it = |scheme: &&Scheme| scheme.layers.iter().any(|layer| *layer.material == *can.material);
    piece.schemes().find(takes_it).map(|scheme| scheme.colour)
}

/// Returns the shelf lines with these materials, with the color filled in.
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

/// A can saved in a layer by an older version.
#[derive(Clone)]
pub(crate) struct OldCan {
    pub(crate) piece: PieceId,
    pub(crate) material: Rc<str>,
    pub(crate) colour: Colour,
    pub(crate) can: &'static str,
    pub(crate) level: Option<&'static str>,
}

/// The cans on the shelf with a needed material, and the verdict on them.
#[derive(Clone, Debug, PartialEq)]
pub struct OnHand {
    /// The cans, if their contents are known.
    pub cans: Vec<Stock>,
    /// The verdict.
    pub enough: Enough,
}

impl OnHand {
    /// Returns the contents of the cans.
    pub fn contents(&self) -> Vec<Contents> {
        known_contents(&self.cans)
    }
}

/// Returns the contents of the cans that are known.
pub(crate) fn known_contents(cans: &[Stock]) -> Vec<Contents> {
    let known = cans.iter().filter_map(|stock| stock.contents.as_ref().ok());
    known.copied().collect()
}

/// Returns the cans on a shelf that hold what is needed, in a known amount.
pub(crate) fn alike(shelf: &[Stock], need: &Demand) -> Vec<Stock> {
    let is_known = |stock: &&Stock| stock.is_for(need) && stock.contents.is_ok();
    shelf.iter().filter(is_known).cloned().collect()
}

/// Returns the contents. A weighed can uses the density of its label, or of its kind. Otherwise the level
/// counts, and a can with only a size is full.
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
