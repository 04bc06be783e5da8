//! A workshop with the most pieces and the most photos goes into a file and comes back.
#![allow(missing_docs, reason = "test names say it")]

use std::rc::Rc;

use workshop::book::MAX_PICTURE;
use workshop::format::{MAX_BYTES, load, save};
use workshop::{BookEdit, Edit, EditError, Piece, PieceEdit, PieceId, Workshop, invented_workshop};

/// The most of each, as `SAVE-FILE.md` states them.
const PIECES: usize = 5_000;
const PHOTOS: usize = 500;

fn photo_of(piece: &Piece, number: usize) -> Edit {
    let start = "data:image/jpeg;base64,";
    // Each photo is another one.
    let dots = "A".repeat(MAX_PICTURE - start.len() - 6);
    let dots = format!("{start}{dots}{number:06}");
    let line = BookEdit::Add("log", format!("photo-{number}").into(), vec![("photo", dots)]);
    Edit::Piece(piece.id.clone(), PieceEdit::Book(line))
}

#[test]
fn the_fullest_workshop_comes_back_from_its_file() {
    let invented = invented_workshop();
    let pieces = (0..PIECES).map(|number| {
        Rc::new(Piece {
            id: PieceId(format!("piece-{number}").into()),
            ..(*invented.pieces[number % invented.pieces.len()]).clone()
        })
    });
    let mut full = Workshop {
        pieces: pieces.collect(),
        ..invented.clone()
    };
    for number in 0..PHOTOS {
        let piece = Rc::clone(&full.pieces[number / 4]);
        full = full.apply(photo_of(&piece, number)).unwrap();
    }
    let [first, last] = [&full.pieces[0], &full.pieces[PIECES - 1]];
    let too_many = |edit| matches!(full.apply(edit), Err(EditError::TooMany { .. }));
    assert!(too_many(photo_of(last, PHOTOS)));
    let id = PieceId("another".into());
    let of = first.id.clone();
    assert!(too_many(Edit::Copy { of, id }));
    let gone = full.apply(Edit::Remove(last.id.clone())).unwrap();
    assert!(matches!(
        gone.apply(Edit::Gather(Workshop {
            pieces: vec![first.clone()],
            ..Workshop::default()
        })),
        Err(EditError::TooMany { what: "photos", .. })
    ));

    let text = save(&full);
    assert!(text.len() <= MAX_BYTES, "{} bytes", text.len());
    let loaded = load(&text).unwrap();
    assert!(loaded.notices.is_empty(), "{:?}", loaded.notices.len());
    assert!(loaded.workshop == full);
}
