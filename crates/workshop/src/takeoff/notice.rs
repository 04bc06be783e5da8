//! What a maker should know about a takeoff that is not as it was entered.

use units::System;

/// Something that was entered and does not count, or not wholly.
#[derive(Clone, Debug, PartialEq)]
pub enum Notice {
    /// About the measurements and the changes of the piece.
    Piece(geometry::Notice),
    /// A choice of finish or zone for a surface that the piece does not have, or not under this name any more.
    NoSurface {
        /// The name of the surface.
        surface: String,
    },
}

impl Notice {
    /// The sentence for the maker.
    pub fn message(&self, system: System) -> String {
        match self {
            Notice::Piece(notice) => notice.message(system),
            Notice::NoSurface { surface } => format!(
                "Your choice for \"{}\" has no effect. That surface is gone.",
                geometry::surface_words(surface)
            ),
        }
    }
}
