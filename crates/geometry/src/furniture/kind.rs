//! Kinds of furniture: how each is made, and its usual sizes.
//!
//! Widths, depths and heights follow the figures in architectural handbooks (from memory, not confirmed); the rest is
//! common practice, no source.
//!
//! The tables of usual sizes, styles, rows and counts are those of the first edition. Saved pieces rely on them, so
//! they never change: see `edition.rs`.

mod facts;
mod sizes;

use units::Length;

use super::bay::Bay;
use super::counts::{self, CountField};
use super::fields::{self, LengthField};
use super::styles::Styles;
use facts::{Bays, KindFacts};
use sizes::usual_of_any_kind;

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
    /// Four mitered members.
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

    /// Its table entry.
    const fn facts(self) -> &'static KindFacts {
        match self {
            Kind::Dresser => &facts::DRESSER,
            Kind::ChestOfDrawers => &facts::CHEST_OF_DRAWERS,
            Kind::Nightstand => &facts::NIGHTSTAND,
            Kind::Sideboard => &facts::SIDEBOARD,
            Kind::Wardrobe => &facts::WARDROBE,
            Kind::Bookcase => &facts::BOOKCASE,
            Kind::OpenShelf => &facts::OPEN_SHELF,
            Kind::GlazedCabinet => &facts::GLAZED_CABINET,
            Kind::Hutch => &facts::HUTCH,
            Kind::PedestalDesk => &facts::PEDESTAL_DESK,
            Kind::Desk => &facts::DESK,
            Kind::Vanity => &facts::VANITY,
            Kind::Console => &facts::CONSOLE,
            Kind::SideTable => &facts::SIDE_TABLE,
            Kind::BlanketBox => &facts::BLANKET_BOX,
            Kind::Bench => &facts::BENCH,
            Kind::Headboard => &facts::HEADBOARD,
            Kind::Frame => &facts::FRAME,
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

fn bays(bays: Bays) -> Vec<Bay> {
    let each = bays.iter();
    each.flat_map(|(alike, rows)| std::iter::repeat_n(Bay::of(rows.to_vec()), *alike))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::sizes::USUAL;
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

    /// A key that is misspelled or left out would silently become three quarters of an inch.
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
