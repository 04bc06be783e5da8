//! The table of kinds: construction, sizes, styles and rows.

use units::Length;

use super::Construction;
use crate::furniture::bay::{Fill, Row};
use crate::furniture::styles::{BackStyle, BaseStyle, DoorStyle, Edge, LegStyle, Styles};
use crate::profile::Shape;

/// The table entry of a kind.
pub(super) struct KindFacts {
    /// Its name in saved files; it never changes.
    pub(super) key: &'static str,
    /// What a maker calls it.
    pub(super) label: &'static str,
    /// How it is put together.
    pub(super) construction: Construction,
    /// Usual width, depth and height, inches.
    pub(super) size: [f64; 3],
    /// Usual width of a leg or a post, inches.
    pub(super) leg_width: f64,
    /// How many drawers an apron usually has.
    pub(super) drawers: u32,
    /// How it is usually made.
    pub(super) styles: Styles,
    /// How its front is usually divided.
    pub(super) bays: Bays,
    /// How the front of its upper case is usually divided.
    pub(super) upper: Bays,
}

/// The number of equal bays, and the rows of each from the top.
pub(super) type Bays = &'static [(usize, &'static [Row])];

const PLAIN: Styles = Styles::USUAL;

const fn drawers(columns: usize) -> Row {
    Row::of(Fill::Drawers, columns, 0)
}

const fn doors(columns: usize, shelves: usize) -> Row {
    Row::of(Fill::Doors, columns, shelves)
}

const fn open(shelves: usize) -> Row {
    Row::of(Fill::Open, 1, shelves)
}

/// A row of this height, inches.
const fn high(row: Row, inches: f64) -> Row {
    Row {
        height: Some(Length::inches(inches)),
        ..row
    }
}

pub(super) const DRESSER: KindFacts = KindFacts {
    key: "dresser",
    label: "Dresser",
    construction: Construction::Case,
    size: [60.0, 18.0, 32.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[(1, &[drawers(2), drawers(2), drawers(2)])],
    upper: &[],
};

pub(super) const CHEST_OF_DRAWERS: KindFacts = KindFacts {
    key: "chest-of-drawers",
    label: "Chest of drawers",
    construction: Construction::Case,
    size: [36.0, 18.0, 48.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[(1, &[drawers(1), drawers(1), drawers(1), drawers(1), drawers(1)])],
    upper: &[],
};

pub(super) const NIGHTSTAND: KindFacts = KindFacts {
    key: "nightstand",
    label: "Nightstand",
    construction: Construction::Case,
    size: [20.0, 16.0, 26.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        base: BaseStyle::Legs,
        ..PLAIN
    },
    bays: &[(1, &[drawers(1), drawers(1)])],
    upper: &[],
};

pub(super) const SIDEBOARD: KindFacts = KindFacts {
    key: "sideboard",
    label: "Sideboard",
    construction: Construction::Case,
    size: [60.0, 18.0, 34.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        doors: DoorStyle::FlatPanel,
        ..PLAIN
    },
    bays: &[(3, &[high(drawers(1), 6.0), doors(1, 1)])],
    upper: &[],
};

pub(super) const WARDROBE: KindFacts = KindFacts {
    key: "wardrobe",
    label: "Wardrobe",
    construction: Construction::Case,
    size: [40.0, 22.0, 72.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        doors: DoorStyle::FlatPanel,
        crown: Edge::Shaped(Shape::Ogee),
        ..PLAIN
    },
    bays: &[(1, &[doors(2, 0), high(drawers(1), 8.0)])],
    upper: &[],
};

pub(super) const BOOKCASE: KindFacts = KindFacts {
    key: "bookcase",
    label: "Bookcase",
    construction: Construction::Case,
    size: [36.0, 12.0, 60.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        base: BaseStyle::Floor,
        ..PLAIN
    },
    bays: &[(1, &[open(4)])],
    upper: &[],
};

pub(super) const OPEN_SHELF: KindFacts = KindFacts {
    key: "open-shelf",
    label: "Open shelf",
    construction: Construction::Case,
    size: [36.0, 12.0, 60.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        base: BaseStyle::Floor,
        back: BackStyle::None,
        ..PLAIN
    },
    bays: &[(1, &[open(4)])],
    upper: &[],
};

pub(super) const GLAZED_CABINET: KindFacts = KindFacts {
    key: "glazed-cabinet",
    label: "Glazed cabinet",
    construction: Construction::Case,
    size: [36.0, 14.0, 60.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        doors: DoorStyle::Glazed,
        ..PLAIN
    },
    bays: &[(1, &[doors(2, 3)])],
    upper: &[],
};

pub(super) const HUTCH: KindFacts = KindFacts {
    key: "hutch",
    label: "Hutch",
    construction: Construction::TwoCases,
    size: [48.0, 18.0, 34.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        doors: DoorStyle::FlatPanel,
        ..PLAIN
    },
    bays: &[(1, &[high(drawers(2), 6.0), doors(2, 1)])],
    upper: &[(1, &[open(2)])],
};

pub(super) const PEDESTAL_DESK: KindFacts = KindFacts {
    key: "pedestal-desk",
    label: "Pedestal desk",
    construction: Construction::Pedestals,
    size: [60.0, 28.0, 30.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[(2, &[drawers(1), drawers(1), drawers(1)])],
    upper: &[],
};

pub(super) const DESK: KindFacts = KindFacts {
    key: "desk",
    label: "Desk on legs",
    construction: Construction::Table,
    size: [48.0, 24.0, 30.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[],
    upper: &[],
};

pub(super) const VANITY: KindFacts = KindFacts {
    key: "vanity",
    label: "Vanity table",
    construction: Construction::Table,
    size: [42.0, 18.0, 30.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[],
    upper: &[],
};

pub(super) const CONSOLE: KindFacts = KindFacts {
    key: "console",
    label: "Console table",
    construction: Construction::Table,
    size: [48.0, 14.0, 30.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[],
    upper: &[],
};

pub(super) const SIDE_TABLE: KindFacts = KindFacts {
    key: "side-table",
    label: "Side table",
    construction: Construction::Table,
    size: [20.0, 20.0, 24.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[],
    upper: &[],
};

pub(super) const BLANKET_BOX: KindFacts = KindFacts {
    key: "blanket-box",
    label: "Blanket box",
    construction: Construction::Chest,
    size: [40.0, 18.0, 20.0],
    leg_width: 1.5,
    drawers: 1,
    styles: Styles {
        base: BaseStyle::BunFeet,
        ..PLAIN
    },
    bays: &[],
    upper: &[],
};

pub(super) const BENCH: KindFacts = KindFacts {
    key: "bench",
    label: "Bench",
    construction: Construction::Table,
    size: [42.0, 14.0, 18.0],
    leg_width: 1.5,
    drawers: 0,
    styles: Styles {
        legs: LegStyle::Square,
        ..PLAIN
    },
    bays: &[],
    upper: &[],
};

pub(super) const HEADBOARD: KindFacts = KindFacts {
    key: "headboard",
    label: "Headboard",
    construction: Construction::Headboard,
    size: [60.0, 2.5, 48.0],
    leg_width: 2.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[],
    upper: &[],
};

pub(super) const FRAME: KindFacts = KindFacts {
    key: "frame",
    label: "Picture or mirror frame",
    construction: Construction::Frame,
    size: [24.0, 0.75, 36.0],
    leg_width: 1.5,
    drawers: 1,
    styles: PLAIN,
    bays: &[],
    upper: &[],
};
