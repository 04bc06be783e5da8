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

    /// Its name in saved files; it never changes.
    pub fn key(self) -> &'static str {
        match self {
            Kind::Dresser => "dresser",
            Kind::ChestOfDrawers => "chest-of-drawers",
            Kind::Nightstand => "nightstand",
            Kind::Sideboard => "sideboard",
            Kind::Wardrobe => "wardrobe",
            Kind::Bookcase => "bookcase",
            Kind::OpenShelf => "open-shelf",
            Kind::GlazedCabinet => "glazed-cabinet",
            Kind::Hutch => "hutch",
            Kind::PedestalDesk => "pedestal-desk",
            Kind::Desk => "desk",
            Kind::Vanity => "vanity",
            Kind::Console => "console",
            Kind::SideTable => "side-table",
            Kind::BlanketBox => "blanket-box",
            Kind::Bench => "bench",
            Kind::Headboard => "headboard",
            Kind::Frame => "frame",
        }
    }

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            Kind::Dresser => "Dresser",
            Kind::ChestOfDrawers => "Chest of drawers",
            Kind::Nightstand => "Nightstand",
            Kind::Sideboard => "Sideboard",
            Kind::Wardrobe => "Wardrobe",
            Kind::Bookcase => "Bookcase",
            Kind::OpenShelf => "Open shelf",
            Kind::GlazedCabinet => "Glazed cabinet",
            Kind::Hutch => "Hutch",
            Kind::PedestalDesk => "Pedestal desk",
            Kind::Desk => "Desk on legs",
            Kind::Vanity => "Vanity table",
            Kind::Console => "Console table",
            Kind::SideTable => "Side table",
            Kind::BlanketBox => "Blanket box",
            Kind::Bench => "Bench",
            Kind::Headboard => "Headboard",
            Kind::Frame => "Picture or mirror frame",
        }
    }

    /// The kind with this name in saved files.
    pub fn by_key(key: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|kind| kind.key() == key)
    }

    /// How it is put together.
    pub fn construction(self) -> Construction {
        match self {
            Kind::Hutch => Construction::TwoCases,
            Kind::PedestalDesk => Construction::Pedestals,
            Kind::Desk | Kind::Vanity | Kind::Console | Kind::SideTable | Kind::Bench => Construction::Table,
            Kind::BlanketBox => Construction::Chest,
            Kind::Headboard => Construction::Headboard,
            Kind::Frame => Construction::Frame,
            _ => Construction::Case,
        }
    }

    /// Width, depth and height, inches.
    fn usual_size(self) -> [f64; 3] {
        match self {
            Kind::Dresser => [60.0, 18.0, 32.0],
            Kind::ChestOfDrawers => [36.0, 18.0, 48.0],
            Kind::Nightstand => [20.0, 16.0, 26.0],
            Kind::Sideboard => [60.0, 18.0, 34.0],
            Kind::Wardrobe => [40.0, 22.0, 72.0],
            Kind::Bookcase | Kind::OpenShelf => [36.0, 12.0, 60.0],
            Kind::GlazedCabinet => [36.0, 14.0, 60.0],
            Kind::Hutch => [48.0, 18.0, 34.0],
            Kind::PedestalDesk => [60.0, 28.0, 30.0],
            Kind::Desk => [48.0, 24.0, 30.0],
            Kind::Vanity => [42.0, 18.0, 30.0],
            Kind::Console => [48.0, 14.0, 30.0],
            Kind::SideTable => [20.0, 20.0, 24.0],
            Kind::BlanketBox => [40.0, 18.0, 20.0],
            Kind::Bench => [42.0, 14.0, 18.0],
            Kind::Headboard => [60.0, 2.5, 48.0],
            Kind::Frame => [24.0, 0.75, 36.0],
        }
    }

    /// How it is usually made.
    pub(super) fn usual_styles(self) -> Styles {
        let plain = Styles::default();
        match self {
            Kind::Nightstand => Styles {
                base: BaseStyle::Legs,
                ..plain
            },
            Kind::Bookcase => Styles {
                base: BaseStyle::Floor,
                ..plain
            },
            Kind::OpenShelf => Styles {
                base: BaseStyle::Floor,
                back: BackStyle::None,
                ..plain
            },
            Kind::Sideboard | Kind::Hutch => Styles {
                doors: DoorStyle::FlatPanel,
                ..plain
            },
            Kind::Wardrobe => Styles {
                doors: DoorStyle::FlatPanel,
                crown: Edge::Shaped(Shape::Ogee),
                ..plain
            },
            Kind::GlazedCabinet => Styles {
                doors: DoorStyle::Glazed,
                ..plain
            },
            Kind::BlanketBox => Styles {
                base: BaseStyle::BunFeet,
                ..plain
            },
            Kind::Bench => Styles {
                legs: LegStyle::Square,
                ..plain
            },
            _ => plain,
        }
    }

    /// How its front is usually divided.
    pub(super) fn usual_bays(self) -> Vec<Bay> {
        let drawers = |columns| Row::of(Fill::Drawers, columns, 0);
        let doors = |columns, shelves| Row::of(Fill::Doors, columns, shelves);
        let high = |row: Row, inches| Row {
            height: Some(Length::inches(inches)),
            ..row
        };
        match self {
            Kind::Dresser => vec![Bay::of(vec![drawers(2); 3])],
            Kind::ChestOfDrawers => vec![Bay::of(vec![drawers(1); 5])],
            Kind::Nightstand => vec![Bay::of(vec![drawers(1); 2])],
            Kind::Sideboard => vec![Bay::of(vec![high(drawers(1), 6.0), doors(1, 1)]); 3],
            Kind::Wardrobe => vec![Bay::of(vec![doors(2, 0), high(drawers(1), 8.0)])],
            Kind::Bookcase | Kind::OpenShelf => vec![Bay::of(vec![Row::of(Fill::Open, 1, 4)])],
            Kind::GlazedCabinet => vec![Bay::of(vec![doors(2, 3)])],
            Kind::Hutch => vec![Bay::of(vec![high(drawers(2), 6.0), doors(2, 1)])],
            Kind::PedestalDesk => vec![Bay::of(vec![drawers(1); 3]); 2],
            _ => vec![],
        }
    }

    /// How the front of its upper case is usually divided.
    pub(super) fn usual_upper_bays(self) -> Vec<Bay> {
        match self {
            Kind::Hutch => vec![Bay::of(vec![Row::of(Fill::Open, 1, 2)])],
            _ => vec![],
        }
    }

    /// The usual number of something that was not counted.
    pub(super) fn usual_count(self, field: &CountField) -> u32 {
        match field.key {
            key if key == counts::DRAWERS.key => u32::from(self != Kind::Bench),
            key if key == counts::SLATS.key => 9,
            _ => 5,
        }
    }

    /// The usual size of a measurement that was not taken; see also [`super::Furniture::length`].
    pub(super) fn usual(self, field: &LengthField) -> Length {
        let [width, depth, height] = self.usual_size();
        let inches = match field.key {
            key if key == fields::WIDTH.key || key == fields::TOP_WIDTH.key => width,
            key if key == fields::DEPTH.key || key == fields::TOP_DEPTH.key => depth,
            key if key == fields::HEIGHT.key => height,
            key if key == fields::LEG_WIDTH.key && self == Kind::Headboard => 2.5,
            key => usual_of_any_kind(key),
        };
        Length::inches(inches)
    }
}

/// Usual sizes, inches, that are the same for every kind.
fn usual_of_any_kind(key: &str) -> f64 {
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
        ("leg-width", 1.5),
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
    ];
    // Boards and fronts: three quarters of an inch, the common finished thickness of a one-inch board.
    USUAL
        .iter()
        .find(|(known, _)| *known == key)
        .map_or(0.75, |(_, inches)| *inches)
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

    #[test]
    fn every_usual_size_belongs_to_a_measurement() {
        // A key that is misspelt would silently become three quarters of an inch.
        for key in ["leg-splay", "member-width", "upper-height"] {
            assert!(fields::by_key(key).is_some() && usual_of_any_kind(key) > 0.75);
        }
    }
}
