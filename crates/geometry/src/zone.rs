//! Zones: the groups of surfaces that are usually finished alike.

/// A group of surfaces that most makers finish alike (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Zone {
    /// The top, the lid, the seat.
    Top,
    /// The carcass with its frame and moldings; posts and members of frames.
    Body,
    /// Drawer fronts and doors.
    Fronts,
    /// What the piece stands on, aprons and stretchers.
    Base,
    /// The inside of the case, and drawer boxes.
    Inside,
    /// What looks at the wall, at the floor, or is seen only by lying down.
    Unseen,
}

impl Zone {
    /// Every zone, in display order.
    pub const ALL: [Zone; 6] = [
        Zone::Top,
        Zone::Body,
        Zone::Fronts,
        Zone::Base,
        Zone::Inside,
        Zone::Unseen,
    ];

    /// Its name in saved files.
    pub fn key(self) -> &'static str {
        match self {
            Zone::Top => "top",
            Zone::Body => "body",
            Zone::Fronts => "fronts",
            Zone::Base => "base",
            Zone::Inside => "inside",
            Zone::Unseen => "unseen",
        }
    }

    /// The zone with this name in saved files.
    pub fn by_key(key: &str) -> Option<Zone> {
        Zone::ALL.into_iter().find(|zone| zone.key() == key)
    }

    /// Whether it gets the finish if nobody says otherwise (common practice, no source), in the first edition.
    pub(crate) fn painted_by_default(self) -> bool {
        !matches!(self, Zone::Inside | Zone::Unseen)
    }

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            Zone::Top => "Top",
            Zone::Body => "Body",
            Zone::Fronts => "Drawers and doors",
            Zone::Base => "Legs and base",
            Zone::Inside => "Inside",
            Zone::Unseen => "Back and underneath",
        }
    }
}
