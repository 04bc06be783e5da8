//! Which piece was on the board last: it is opened again the next time. The device keeps it, as it is no part of the document.

use workshop::PieceId;

const KEPT: &str = "coatwright piece";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok()?)
}

/// The piece that was open before, if the device kept it; it may be gone by now.
pub fn last_piece() -> Option<PieceId> {
    let kept = storage()?.get_item(KEPT).ok()??;
    Some(PieceId(kept.into()))
}

/// Keeps it for the next time. A browser that keeps nothing opens the first piece then; that is no reason to stop.
pub fn keep_last_piece(piece: Option<&PieceId>) {
    let storage = storage();
    let _ = storage
        .zip(piece)
        .map(|(storage, piece)| storage.set_item(KEPT, &piece.0));
}
