//! What must hold for any input, however absurd: nothing panics, and what is accepted is sound.
//!
//! Each function takes bytes and tells whether they were accepted. `cargo fuzz run --fuzz-dir tests/fuzz TARGET`, with
//! a nightly compiler, makes up bytes and looks for a panic; `cargo test -p fuzz` runs the committed corpus and some
//! thousand inputs of a fixed seed.

#![allow(clippy::panic, reason = "a broken promise must stop the fuzzer")]

mod bytes;
mod piece;

use bytes::Bytes;
use geometry::{Drawing, View};
use units::{Length, LengthUnit};

const UNITS: [LengthUnit; 5] = [
    LengthUnit::Inch,
    LengthUnit::Foot,
    LengthUnit::Millimetre,
    LengthUnit::Centimetre,
    LengthUnit::Metre,
];

/// Any text in any unit: refused with words, or a length that is a number and not negative.
pub fn read_length(data: &[u8]) -> bool {
    let Some((unit, text)) = data.split_first() else {
        return false;
    };
    let text = String::from_utf8_lossy(text);
    match units::read_length(&text, UNITS[usize::from(*unit) % UNITS.len()]) {
        Ok(length) => {
            let metres = length.as_metres();
            assert!(metres.is_finite() && metres >= 0.0, "{text:?} became {metres} m");
            true
        }
        Err(error) => {
            assert!(
                !error.to_string().is_empty(),
                "{text:?} was refused without a word"
            );
            false
        }
    }
}

/// Any piece with any measurements: refused with the field and the fix, or surfaces that are sound.
pub fn build_piece(data: &[u8]) -> bool {
    let furniture = piece::any(&mut Bytes::of(data));
    match furniture.assembly() {
        Err(problems) => {
            assert!(!problems.is_empty(), "refused without a word");
            for problem in problems {
                assert!(!problem.to_string().is_empty(), "{problem:?} has no words");
            }
            false
        }
        Ok(assembly) => {
            for surface in assembly.surfaces() {
                let [gross, net] = [surface.gross, surface.net].map(|area| area.as_square_metres());
                assert!(gross.is_finite() && net.is_finite(), "{} is {net} m2", surface.id);
                assert!(
                    0.0 <= net && net <= gross * (1.0 + 1e-9) + 1e-9,
                    "{}: {net} of {gross}",
                    surface.id
                );
            }
            true
        }
    }
}

/// What is shown of any piece: overlaps, lengths of edges and drawings are sound, and come to an end.
pub fn show_piece(data: &[u8]) -> bool {
    let furniture = piece::any(&mut Bytes::of(data));
    let Ok(assembly) = furniture.assembly() else {
        return false;
    };
    for overlap in assembly.overlaps() {
        let depth = overlap.depth.as_metres();
        assert!(depth.is_finite() && depth > 0.0, "{} in {}", overlap.a, overlap.b);
    }
    for (surface, edges) in assembly.edges(|_| true) {
        for length in [edges.arrises, edges.corners, edges.borders] {
            assert!(
                length.as_metres().is_finite() && length >= Length::ZERO,
                "{surface}: {edges:?}"
            );
        }
    }
    let surfaces = assembly.surfaces();
    let corner = View::Turned {
        turn: 0.5,
        tilt: 0.35,
    };
    for view in [View::Front, View::Side, View::Top, corner] {
        let drawing = Drawing::of(&surfaces, view);
        assert!(drawing.outline.area().is_finite(), "{view:?}");
        let dimensions = furniture.checked().map(|piece| piece.dimensions(view));
        assert!(dimensions.is_ok(), "{view:?}");
    }
    true
}

/// Any file: refused with words, or a workshop that is written and read back as it is.
pub fn load_workshop(data: &[u8]) -> bool {
    let text = String::from_utf8_lossy(data);
    match workshop::format::load(&text) {
        Err(error) => {
            assert!(!error.to_string().is_empty(), "refused without a word");
            false
        }
        Ok(loaded) => {
            let again = workshop::format::load(&workshop::format::save(&loaded.workshop));
            assert!(
                again.is_ok_and(|again| again.workshop == loaded.workshop),
                "what was loaded is not what is written"
            );
            true
        }
    }
}
