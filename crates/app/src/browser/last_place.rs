//! Where the maker was last: which piece was on the board, on which sheet. That is opened again the next time, as tablets put
//! pages away that were not looked at for a while. The device keeps it, as it is no part of the document.
//!
//! Before a piece is opened that is marked, and the mark goes when its first answer has been painted. A piece whose mark is
//! still there made the page hang: it is not opened by itself again.

use workshop::PieceId;

use super::device::after_next_frame;

const PIECE: &str = "coatwright piece";
const SHEET: &str = "coatwright sheet";
const OPENING: &str = "coatwright opening";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok()?)
}

/// Keeps a text for the next time. A browser that keeps nothing begins anew then; that is no reason to stop.
fn keep(name: &str, text: &str) {
    let _ = storage().map(|storage| storage.set_item(name, text));
}

fn kept_piece(name: &str) -> Option<PieceId> {
    let kept = storage()?.get_item(name).ok()??;
    Some(PieceId(kept.into()))
}

/// The piece whose last opening did not come to an end.
pub fn unfinished() -> Option<PieceId> {
    kept_piece(OPENING)
}

/// A piece is about to be opened.
pub fn mark_opening(piece: &PieceId) {
    keep(OPENING, &piece.0);
}

/// The first answer of the piece that was opened will be painted with the next frame.
pub fn unmark_opening_soon() {
    after_next_frame(|| {
        let _ = storage().map(|storage| storage.remove_item(OPENING));
    });
}

/// The piece that was open before, if the device kept it; it may be gone by now.
pub fn last_piece() -> Option<PieceId> {
    kept_piece(PIECE)
}

/// Keeps the piece that is open.
pub fn keep_last_piece(piece: Option<&PieceId>) {
    if let Some(piece) = piece {
        keep(PIECE, &piece.0);
    }
}

/// The name of the sheet that was open before.
pub fn last_sheet() -> Option<String> {
    storage()?.get_item(SHEET).ok()?
}

/// Keeps the name of the sheet that is open.
pub fn keep_last_sheet(name: &str) {
    keep(SHEET, name);
}
