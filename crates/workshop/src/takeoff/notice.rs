//! Notices about entries that do not count as entered.

use units::System;

/// An entry that does not count, or only in part.
#[derive(Clone, Debug, PartialEq)]
pub enum Notice {
    /// A notice about the measurements and changes of the piece.
    Piece(geometry::Notice),
    /// A choice of finish or zone for a surface that the piece does not have under this name.
    NoSurface {
        /// The name of the surface.
        surface: String,
    },
}

impl Notice {
    /// Returns the sentence for the maker.
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
