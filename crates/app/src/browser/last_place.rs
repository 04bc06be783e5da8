//! Where the maker was last: which piece was on the board, on which sheet. That is opened again the next time, as tablets put
//! pages away that were not looked at for a while. The device keeps it, as it is no part of the document.

use workshop::PieceId;

const PIECE: &str = "coatwright piece";
const SHEET: &str = "coatwright sheet";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok()?)
}

/// Keeps a text for the next time. A browser that keeps nothing begins anew then; that is no reason to stop.
fn keep(name: &str, text: &str) {
    let _ = storage().map(|storage| storage.set_item(name, text));
}

/// The piece that was open before, if the device kept it; it may be gone by now.
pub fn last_piece() -> Option<PieceId> {
    let kept = storage()?.get_item(PIECE).ok()??;
    Some(PieceId(kept.into()))
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
