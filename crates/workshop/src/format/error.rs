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
                "Choose another file. This one is {} MB; the limit is {} MB.",
                bytes / 1_048_576,
                super::MAX_BYTES / 1_048_576
            ),
            LoadError::NotJson { line, column } => write!(
                f,
                "Choose another file. This one is damaged, or isn't a workshop file (line {line}, character {column})."
            ),
            LoadError::NotAWorkshop => {
                write!(f, "Choose a file saved from Coatwright. This isn't one.")
            }
            LoadError::Newer { version } => write!(
                f,
                "Reload the page, then open the file again. The file has format {version}; this page reads up to {}.",
                super::VERSION
            ),
            LoadError::TooManyPieces { pieces } => write!(
                f,
                "Split this file. It has {pieces} pieces; the limit is {}.",
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
                write!(f, "Piece {number} couldn't be read, so it was skipped: {reason}.")
            }
            Notice::UnknownMeasurement { piece, key } => {
                write!(
                    f,
                    "{piece}: skipped the unknown measurement \u{201c}{key}\u{201d}."
                )
            }
            Notice::ReadingLeftOut {
                piece,
                field,
                typed,
                error,
            } => {
                write!(f, "{piece}: skipped the {field} \u{201c}{typed}\u{201d}. {error}")
            }
            Notice::UnknownWord { piece, what, given } => {
                write!(
                    f,
                    "{piece}: unknown {what} \u{201c}{given}\u{201d}. The default is used."
                )
            }
            Notice::UnknownAnswer { piece, choice, given } => {
                write!(
                    f,
                    "{piece}: unknown choice \u{201c}{given}\u{201d} for \u{201c}{choice}\u{201d}. The default is used."
                )
            }
            Notice::ChangeLeftOut { piece, number } => {
                write!(f, "{piece}: change {number} couldn't be read, so it was skipped.")
            }
            Notice::LayerLeftOut {
                piece,
                number,
                material,
            } => {
                write!(
                    f,
                    "{piece}: skipped coat {number}. Its material \u{201c}{material}\u{201d} is unknown."
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
                    "{material}: skipped the {figure} \u{201c}{typed}\u{201d}. {reason}"
                )
            }
            Notice::MaterialLeftOut { number } => {
                write!(f, "Your material {number} couldn't be read, so it was skipped.")
            }
            Notice::LineLeftOut { book } => {
                write!(
                    f,
                    "A line of \u{201c}{book}\u{201d} couldn't be read, so it was skipped."
                )
            }
            Notice::ValueLeftOut { book, field } => {
                write!(
                    f,
                    "\u{201c}{field}\u{201d} in a line of \u{201c}{book}\u{201d} couldn't be read, so it was skipped."
                )
            }
            Notice::SettingLeftOut { what } => {
                write!(f, "The workshop's {what} couldn't be read, so it was skipped.")
            }
            Notice::CoatsLeftOut { piece } => {
                write!(
                    f,
                    "{piece}: check the coats. This older link doesn't list them, so the recommended ones are used."
                )
            }
            Notice::OutOfLimits { piece, what, taken } => {
                let what = what.to_ascii_lowercase();
                write!(
                    f,
                    "{piece}: the number of {what} was out of range. It is now {taken}."
                )
            }
        }
    }
}
