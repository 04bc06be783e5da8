//! The last open piece and screen, reopened at the next start because tablets unload pages that are not in use.
//! The device stores them because they are not part of the document.
//!
//! Opening a piece sets a mark, and painting its first results clears it. If the mark is still there at the
//! next start, the piece made the page hang, so it is not opened automatically.

use workshop::PieceId;

use super::device::after_next_frame;

const PIECE: &str = "coatwright piece";
const SCREEN: &str = "coatwright sheet";
const OPENING: &str = "coatwright opening";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok()?)
}

/// Stores a text for the next start. If the browser cannot, the next start uses the defaults.
fn keep(name: &str, text: &str) {
    let _ = storage().map(|storage| storage.set_item(name, text));
}

fn kept_piece(name: &str) -> Option<PieceId> {
    let kept = storage()?.get_item(name).ok()??;
    Some(PieceId(kept.into()))
}

/// Returns the piece whose last opening did not finish.
pub fn unfinished() -> Option<PieceId> {
    kept_piece(OPENING)
}

/// Marks a piece as being opened.
pub fn mark_opening(piece: &PieceId) {
    keep(OPENING, &piece.0);
}

/// Clears the mark after the next frame, which paints the first results of the open piece.
pub fn unmark_opening_soon() {
    after_next_frame(|| {
        let _ = storage().map(|storage| storage.remove_item(OPENING));
    });
}

/// Returns the piece that was open last, if the device stored it. It may no longer exist.
pub fn last_piece() -> Option<PieceId> {
    kept_piece(PIECE)
}

/// Stores the open piece.
pub fn keep_last_piece(piece: Option<&PieceId>) {
    if let Some(piece) = piece {
        keep(PIECE, &piece.0);
    }
}

/// Returns the key of the screen that was open last.
pub fn last_screen() -> Option<String> {
    storage()?.get_item(SCREEN).ok()?
}

/// Stores the key of the open screen.
pub fn keep_last_screen(key: &str) {
    keep(SCREEN, key);
}
