//! Why a file was not read, and what was repaired in a file that was.

use std::fmt;

use units::LengthError;

/// Why a save file was not read. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LoadError {
    /// The file is larger than any workshop.
    TooLarge {
        /// Its size in bytes.
        bytes: usize,
    },
    /// The text is not JSON.
    NotJson {
        /// The line of the error, starting at 1.
        line: usize,
        /// The column in the line.
        column: usize,
    },
    /// The file is JSON but not a workshop.
    NotAWorkshop,
    /// The file was written by a newer version of the tool.
    Newer {
        /// The version of the file.
        version: u64,
    },
    /// There are more pieces than a workshop can hold.
    TooManyPieces {
        /// The number of pieces.
        pieces: usize,
    },
}

impl fmt::Display for LoadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LoadError::TooLarge { bytes } => write!(
                f,
                "This file has {} MB. A workshop file has at most {} MB. Choose another file.",
                bytes / 1_048_576,
                super::MAX_BYTES / 1_048_576
            ),
            LoadError::NotJson { line, column } => write!(
                f,
                "This file is damaged or is no workshop file: line {line}, character {column} makes no sense. Choose another file."
            ),
            LoadError::NotAWorkshop => {
                write!(
                    f,
                    "This is not a Coatwright workshop file. Choose one that was saved from here."
                )
            }
            LoadError::Newer { version } => write!(
                f,
                "This file has format {version}, and this page reads up to format {}. Reload the page to get the newer version, then open the file again.",
                super::VERSION
            ),
            LoadError::TooManyPieces { pieces } => write!(
                f,
                "This file holds {pieces} pieces. A workshop holds at most {}. Divide the file.",
                super::MAX_PIECES
            ),
        }
    }
}

impl std::error::Error for LoadError {}

/// Something in a file that could not be kept as it was.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Notice {
    /// A piece could not be read.
    PieceLeftOut {
        /// Its position in the file, starting at 1.
        number: usize,
        /// The reason.
        reason: String,
    },
    /// This version does not know a measurement.
    UnknownMeasurement {
        /// The name of the piece.
        piece: String,
        /// The name of the measurement.
        key: String,
    },
    /// A reading is not a length.
    ReadingLeftOut {
        /// The name of the piece.
        piece: String,
        /// The measurement.
        field: String,
        /// The text in the file.
        typed: String,
        /// The error.
        error: LengthError,
    },
    /// This version does not know a word, so the default was used.
    UnknownWord {
        /// The name of the piece, or `Workshop`.
        piece: String,
        /// The choice that the word is for.
        what: &'static str,
        /// The word in the file.
        given: String,
    },
    /// This version does not know an answer, so the default was used.
    UnknownAnswer {
        /// The name of the piece.
        piece: String,
        /// The label of the choice.
        choice: &'static str,
        /// The answer in the file.
        given: String,
    },
    /// A change to a piece could not be read.
    ChangeLeftOut {
        /// The name of the piece.
        piece: String,
        /// Its position among the changes to the piece, starting at 1.
        number: usize,
    },
    /// A layer of a scheme could not be read.
    LayerLeftOut {
        /// The name of the piece.
        piece: String,
        /// Its position in the scheme, starting at 1.
        number: usize,
        /// The material, if it can be determined.
        material: String,
    },
    /// A value or a price of one of the maker's own materials could not be read.
    FigureLeftOut {
        /// The name of the material.
        material: String,
        /// The value.
        figure: String,
        /// The text in the file.
        typed: String,
        /// The error, in words.
        reason: String,
    },
    /// One of the maker's own materials could not be read.
    MaterialLeftOut {
        /// Its position in the file, starting at 1.
        number: usize,
    },
    /// A line of a book could not be read.
    LineLeftOut {
        /// The book.
        book: String,
    },
    /// A value in a line could not be read.
    ValueLeftOut {
        /// The book.
        book: String,
        /// The field.
        field: String,
    },
    /// A setting of the workshop could not be read, so the default was used.
    SettingLeftOut {
        /// The setting.
        what: &'static str,
    },
    /// A link leaves out its coats and is too old to say which default coats it meant.
    CoatsLeftOut {
        /// The name of the piece.
        piece: String,
    },
    /// A number is out of range, so the nearest allowed one was used.
    OutOfLimits {
        /// The name of the piece.
        piece: String,
        /// The counted items.
        what: &'static str,
        /// The number used.
        taken: usize,
    },
}

impl fmt::Display for Notice {
    #[expect(clippy::too_many_lines, reason = "one sentence for each notice")]
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Notice::PieceLeftOut { number, reason } => {
                write!(f, "Piece {number} could not be read and was left out: {reason}.")
            }
            Notice::UnknownMeasurement { piece, key } => {
                write!(
                    f,
                    "{piece}: the measurement \u{201c}{key}\u{201d} is not known here and was left out."
                )
            }
            Notice::ReadingLeftOut {
                piece,
                field,
                typed,
                error,
            } => {
                write!(
                    f,
                    "{piece}: the {field} \u{201c}{typed}\u{201d} could not be read and was left out. {error}"
                )
            }
            Notice::UnknownWord { piece, what, given } => {
                write!(
                    f,
                    "{piece}: the {what} \u{201c}{given}\u{201d} is not known here; the usual one stands in its place."
                )
            }
            Notice::UnknownAnswer { piece, choice, given } => {
                write!(
                    f,
                    "{piece}: \u{201c}{given}\u{201d} is not known here for \u{201c}{choice}\u{201d}; the usual answer stands in its place."
                )
            }
            Notice::ChangeLeftOut { piece, number } => {
                write!(f, "{piece}: change {number} could not be read and was left out.")
            }
            Notice::LayerLeftOut {
                piece,
                number,
                material,
            } => {
                write!(
                    f,
                    "{piece}: layer {number} is of \u{201c}{material}\u{201d}, which is not known here, and was left out."
                )
            }
            Notice::FigureLeftOut {
                material,
                figure,
                typed,
                reason,
            } => {
                write!(
                    f,
                    "{material}: the {figure} \u{201c}{typed}\u{201d} could not be read and was left out. {reason}"
                )
            }
            Notice::MaterialLeftOut { number } => {
                write!(
                    f,
                    "Material {number} of your own could not be read and was left out."
                )
            }
            Notice::LineLeftOut { book } => {
                write!(
                    f,
                    "A line of \u{201c}{book}\u{201d} could not be read and was left out."
                )
            }
            Notice::ValueLeftOut { book, field } => {
                write!(
                    f,
                    "\u{201c}{field}\u{201d} in a line of \u{201c}{book}\u{201d} could not be read and was left out."
                )
            }
            Notice::SettingLeftOut { what } => {
                write!(
                    f,
                    "The {what} of the workshop could not be read and was left out."
                )
            }
            Notice::CoatsLeftOut { piece } => {
                write!(
                    f,
                    "{piece}: check the coats. This older link does not list them, so they are the usual ones."
                )
            }
            Notice::OutOfLimits { piece, what, taken } => {
                let what = what.to_ascii_lowercase();
                write!(
                    f,
                    "{piece}: the number of {what} was out of its limits; it is {taken} now."
                )
            }
        }
    }
}
