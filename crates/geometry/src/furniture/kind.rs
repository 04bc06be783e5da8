//! Kinds of furniture: how each is made, and what it usually measures where nobody measured.
//!
//! Widths, depths and heights lie within the class of data that architectural handbooks give (from memory, not
//! confirmed); the rest is common practice, no source.
//!
//! The tables of usual sizes, styles, rows and counts here are those of the first edition. Saved pieces rest on them,
//! so they never change: see `edition.rs`.

use units::Length;

use super::bay::{Bay, Fill, Row};
use super::counts::{self, CountField};
use super::fields::{self, LengthField};
use super::styles::{BackStyle, BaseStyle, DoorStyle, Edge, LegStyle, Styles};
use crate::profile::Shape;

/// What kind of piece it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Low and wide, drawers side by side.
    Dresser,
    /// Tall, one drawer above the other.
    ChestOfDrawers,
    /// Small, beside a bed.
    Nightstand,
    /// Doors and drawers side by side.
    Sideboard,
    /// Tall, with doors.
    Wardrobe,
    /// Shelves with a back.
    Bookcase,
    /// Shelves without a back.
    OpenShelf,
    /// Behind glass.
    GlazedCabinet,
    /// A case with a second one on its counter.
    Hutch,
    /// A top on two cases of drawers.
    PedestalDesk,
    /// A table to write on.
    Desk,
    /// A table to sit at before a mirror.
    Vanity,
    /// A shallow table against a wall.
    Console,
    /// A small table.
    SideTable,
    /// A box with a lid.
    BlanketBox,
    /// To sit on.
    Bench,
    /// Of a bed.
    Headboard,
    /// Of a picture or a mirror.
    Frame,
}

/// How a piece is put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Construction {
    /// A case of boards.
    Case,
    /// A case with a second one on its counter.
    TwoCases,
    /// A top on two cases.
    Pedestals,
    /// A top on legs.
    Table,
    /// A box with a lid.
    Chest,
    /// Posts and rails.
    Headboard,
    /// Four mitred members.
    Frame,
}

impl Kind {
    /// Every kind, in the order in which they are offered.
    pub const ALL: [Kind; 18] = [
        Kind::Dresser,
        Kind::ChestOfDrawers,
        Kind::Nightstand,
        Kind::Sideboard,
        Kind::Wardrobe,
        Kind::Bookcase,
        Kind::OpenShelf,
        Kind::GlazedCabinet,
        Kind::Hutch,
        Kind::PedestalDesk,
        Kind::Desk,
        Kind::Vanity,
        Kind::Console,
        Kind::SideTable,
        Kind::BlanketBox,
        Kind::Bench,
        Kind::Headboard,
        Kind::Frame,
    ];

    /// All that is known of it.
    const fn facts(self) -> &'static KindFacts {
        match self {
            Kind::Dresser => &DRESSER,
            Kind::ChestOfDrawers => &CHEST_OF_DRAWERS,
            Kind::Nightstand => &NIGHTSTAND,
            Kind::Sideboard => &SIDEBOARD,
            Kind::Wardrobe => &WARDROBE,
            Kind::Bookcase => &BOOKCASE,
            Kind::OpenShelf => &OPEN_SHELF,
            Kind::GlazedCabinet => &GLAZED_CABINET,
            Kind::Hutch => &HUTCH,
            Kind::PedestalDesk => &PEDESTAL_DESK,
            Kind::Desk => &DESK,
            Kind::Vanity => &VANITY,
            Kind::Console => &CONSOLE,
            Kind::SideTable => &SIDE_TABLE,
            Kind::BlanketBox => &BLANKET_BOX,
            Kind::Bench => &BENCH,
            Kind::Headboard => &HEADBOARD,
            Kind::Frame => &FRAME,
        }
    }

    /// Its name in saved files; it never changes.
    pub fn key(self) -> &'static str {
        self.facts().key
    }

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        self.facts().label
    }

    /// The kind with this name in saved files.
    pub fn by_key(key: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|kind| kind.key() == key)
    }

    /// How it is put together.
    pub fn construction(self) -> Construction {
        self.facts().construction
    }

    /// How it is usually made.
    pub(super) fn usual_styles(self) -> Styles {
        self.facts().styles
    }

    /// How its front is usually divided.
    pub(super) fn usual_bays(self) -> Vec<Bay> {
        bays(self.facts().bays)
    }

    /// How the front of its upper case is usually divided.
    pub(super) fn usual_upper_bays(self) -> Vec<Bay> {
        bays(self.facts().upper)
    }

    /// The usual number of something that was not counted.
    pub(super) fn usual_count(self, field: &CountField) -> u32 {
        match field.key {
            key if key == counts::DRAWERS.key => self.facts().drawers,
            key if key == counts::SLATS.key => 9,
            _ => 5,
        }
    }

    /// The usual size of a measurement that was not taken; see also [`super::Furniture::length`].
    pub(super) fn usual(self, field: &LengthField) -> Length {
        let facts = self.facts();
        let [width, depth, height] = facts.size;
        let inches = match field.key {
            key if key == fields::WIDTH.key || key == fields::TOP_WIDTH.key => width,
            key if key == fields::DEPTH.key || key == fields::TOP_DEPTH.key => depth,
            key if key == fields::HEIGHT.key => height,
            key if key == fields::LEG_WIDTH.key => facts.leg_width,
            key => usual_of_any_kind(key),
        };
        Length::inches(inches)
    }
}

/// All that is known of a kind. A kind that is new is one of these.
struct KindFacts {
    /// Its name in saved files; it never changes.
    key: &'static str,
    /// What a maker calls it.
    label: &'static str,
    /// How it is put together.
    construction: Construction,
    /// Usual width, depth and height, inches.
    size: [f64; 3],
    /// Usual width of a leg or a post, inches.
    leg_width: f64,
    /// How many drawers an apron usually has.
    drawers: u32,
    /// How it is usually made.
    styles: Styles,
    /// How its front is usually divided.
    bays: Bays,
    /// How the front of its upper case is usually divided.
    upper: Bays,
}

/// How many bays are alike, and the rows of each from the top.
type Bays = &'static [(usize, &'static [Row])];

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

fn bays(bays: Bays) -> Vec<Bay> {
    let each = bays.iter();
    each.flat_map(|(alike, rows)| std::iter::repeat_n(Bay::of(rows.to_vec()), *alike))
        .collect()
}

const DRESSER: KindFacts = KindFacts {
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

const CHEST_OF_DRAWERS: KindFacts = KindFacts {
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

const NIGHTSTAND: KindFacts = KindFacts {
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

const SIDEBOARD: KindFacts = KindFacts {
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

const WARDROBE: KindFacts = KindFacts {
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

const BOOKCASE: KindFacts = KindFacts {
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

const OPEN_SHELF: KindFacts = KindFacts {
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

const GLAZED_CABINET: KindFacts = KindFacts {
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

const HUTCH: KindFacts = KindFacts {
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

const PEDESTAL_DESK: KindFacts = KindFacts {
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

const DESK: KindFacts = KindFacts {
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

const VANITY: KindFacts = KindFacts {
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

const CONSOLE: KindFacts = KindFacts {
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

const SIDE_TABLE: KindFacts = KindFacts {
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

const BLANKET_BOX: KindFacts = KindFacts {
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

const BENCH: KindFacts = KindFacts {
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

const HEADBOARD: KindFacts = KindFacts {
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

const FRAME: KindFacts = KindFacts {
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

/// Usual sizes, inches, that are the same for every kind. Boards and fronts: three quarters of an inch, the common finished
/// thickness of a one-inch board.
const USUAL: &[(&str, f64)] = &[
    ("top-thickness", 1.0),
    ("overhang-front", 1.0),
    ("overhang-side", 1.0),
    ("rail-thickness", 1.0),
    ("stretcher-size", 1.0),
    ("gap", 0.125),
    ("frame", 0.5),
    ("back-thickness", 0.25),
    ("back-recess", 0.5),
    ("plinth-height", 4.0),
    ("plinth-setback", 2.0),
    ("leg-height", 6.0),
    ("leg-inset", 0.5),
    ("leg-foot", 0.875),
    ("leg-splay", 1.5),
    ("foot-width", 1.5),
    ("cutout-height", 2.0),
    ("stile", 1.5),
    ("frame-rail", 1.5),
    ("crown-height", 2.0),
    ("crown-projection", 1.5),
    ("edge-height", 0.5),
    ("front-edge-size", 0.25),
    ("lip", 0.375),
    ("lip-thickness", 0.375),
    ("door-stile", 2.25),
    ("door-rail", 2.25),
    ("panel-recess", 0.25),
    ("panel-thickness", 0.25),
    ("panel-raise", 0.25),
    ("sticking-width", 0.25),
    ("panel-bevel", 1.5),
    ("applied-inset", 1.5),
    ("applied-width", 0.75),
    ("applied-height", 0.375),
    ("box-thickness", 0.5),
    ("column-diameter", 1.25),
    ("flute-radius", 0.0625),
    ("apron-height", 4.0),
    ("apron-setback", 0.25),
    ("apron-rise", 1.0),
    ("stretcher-height", 4.0),
    ("shelf-height", 6.0),
    ("pedestal-width", 15.0),
    ("modesty-foot", 8.0),
    ("upper-depth", 12.0),
    ("upper-height", 40.0),
    ("headboard-rail", 4.0),
    ("panel-foot", 16.0),
    ("slat-width", 2.0),
    ("member-width", 3.0),
    ("board", 0.75),
    ("front-thickness", 0.75),
    ("edge-width", 0.75),
    ("edge-girth", 0.75),
    ("frame-thickness", 0.75),
    ("apron-thickness", 0.75),
    ("apron-rail", 0.75),
    ("member-thickness", 0.75),
    ("part-width", 0.75),
    ("part-depth", 0.75),
    ("part-height", 0.75),
    ("part-length", 0.75),
    ("part-girth", 0.75),
    ("part-diameter", 0.75),
    ("part-foot", 0.75),
    ("part-place", 0.75),
    ("part-right", 0.75),
    ("part-behind", 0.75),
    ("part-up", 0.75),
    ("point-height", 0.75),
];

/// The usual size of a measurement that is the same for every kind, inches. A test keeps every measurement in the table.
fn usual_of_any_kind(key: &str) -> f64 {
    let known = USUAL.iter().find(|(known, _)| *known == key);
    known.map_or(0.75, |(_, inches)| *inches)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_comes_back_from_its_key() {
        for kind in Kind::ALL {
            assert_eq!(Kind::by_key(kind.key()), Some(kind));
        }
    }

    #[test]
    fn usual_sizes_are_within_their_limits() {
        for kind in Kind::ALL {
            for field in fields::ALL {
                let usual = kind.usual(field);
                if field != &fields::DEPTH && field != &fields::TOP_DEPTH {
                    assert!(
                        usual >= field.min && usual <= field.max,
                        "{} {}",
                        kind.key(),
                        field.key
                    );
                }
            }
        }
    }

    /// A key that is misspelt or left out would silently become three quarters of an inch.
    #[test]
    fn every_measurement_has_one_usual_size() {
        let of_each_kind = [
            &fields::WIDTH,
            &fields::TOP_WIDTH,
            &fields::DEPTH,
            &fields::TOP_DEPTH,
            &fields::HEIGHT,
            &fields::LEG_WIDTH,
        ];
        let mut wanted: Vec<&str> = fields::ALL.iter().map(|field| field.key).collect();
        wanted.retain(|key| of_each_kind.iter().all(|field| field.key != *key));
        let mut given: Vec<&str> = USUAL.iter().map(|(key, _)| *key).collect();
        wanted.sort_unstable();
        given.sort_unstable();
        assert_eq!(given, wanted);
    }
}
