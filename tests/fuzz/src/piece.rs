//! Any piece of furniture, made by bytes.

use geometry::{
    Added, AddedShape, Along, Alteration, Bay, Edition, Fill, Furniture, Kind, LengthField, Row, Shape,
    Towards,
};
use units::Length;

use crate::bytes::Bytes;

pub(crate) fn any(bytes: &mut Bytes) -> Furniture {
    let mut piece = Furniture::usual(bytes.one_of(&Kind::ALL));
    if bytes.yes() {
        piece.bays = bays(bytes);
    }
    if bytes.yes() && !piece.upper.is_empty() {
        piece.upper = bays(bytes);
    }
    for _ in 0..bytes.below(8) {
        let fields = piece.style_fields();
        let field = bytes.one_of(&fields);
        field.choose(&mut piece.styles, bytes.one_of(field.options).key);
    }
    for field in piece.count_fields() {
        if bytes.yes() {
            piece.counts.set(field, u32::from(bytes.next()));
        }
    }
    for field in piece.fields() {
        if bytes.yes() {
            piece.measures.set(field, length(bytes, field));
        }
    }
    piece.changes = (0..bytes.below(5)).map(|_| change(bytes, &piece)).collect();
    piece
}

/// Around the usual size of a field as often as anywhere between its limits.
fn length(bytes: &mut Bytes, field: &LengthField) -> Length {
    let usual = Edition::LATEST.size(Kind::Dresser, field).as_millimetres();
    Length::millimetres(if bytes.yes() {
        bytes.millimetres(usual * 0.7, usual * 1.4)
    } else {
        bytes.millimetres(field.min.as_millimetres(), field.max.as_millimetres())
    })
}

fn bays(bytes: &mut Bytes) -> Vec<Bay> {
    let bay = |bytes: &mut Bytes| Bay {
        width: bytes
            .yes()
            .then(|| Length::millimetres(bytes.millimetres(100.0, 900.0))),
        rows: (0..bytes.below(6)).map(|_| row(bytes)).collect(),
    };
    (0..bytes.below(4)).map(|_| bay(bytes)).collect()
}

fn row(bytes: &mut Bytes) -> Row {
    let columns = match bytes.next() {
        250.. => 10_000,
        n => usize::from(n % 5),
    };
    Row {
        fill: bytes.one_of(&Fill::ALL),
        columns,
        shelves: usize::from(bytes.next() % 5),
        height: bytes
            .yes()
            .then(|| Length::millimetres(bytes.millimetres(60.0, 500.0))),
    }
}

const TOWARDS: [Towards; 6] = [
    Towards::Left,
    Towards::Right,
    Towards::Front,
    Towards::Back,
    Towards::Up,
    Towards::Down,
];

fn change(bytes: &mut Bytes, piece: &Furniture) -> Alteration {
    let part = part(bytes, piece);
    let towards = bytes.one_of(&TOWARDS);
    let mut far = |low, high| Length::millimetres(bytes.millimetres(low, high));
    match far(0.0, 6.0).as_millimetres() as usize {
        0 => Alteration::Remove { part },
        1 => Alteration::Move {
            part,
            towards,
            by: far(0.0, 500.0),
        },
        2 => Alteration::Resize {
            part,
            to: far(5.0, 900.0),
            along: bytes.one_of(&[Along::Width, Along::Depth, Along::Height]),
        },
        3 => Alteration::Repeat {
            part,
            towards,
            every: far(0.0, 300.0),
            times: bytes.below(12),
        },
        4 => Alteration::Hole {
            surface: format!("{part}/front"),
            width: far(10.0, 90.0),
            height: far(10.0, 90.0),
        },
        _ => Alteration::Add(added(bytes)),
    }
}

/// A part of the piece as it is usually made, or one that it does not have.
fn part(bytes: &mut Bytes, piece: &Furniture) -> String {
    let parts = Furniture::usual(piece.kind).assembly().map(|piece| piece.parts);
    let names: Vec<String> = parts
        .unwrap_or_default()
        .iter()
        .map(|part| part.id.to_string())
        .collect();
    let place = bytes.below(names.len() + 1);
    names.get(place).cloned().unwrap_or_else(|| "no-such-part".into())
}

fn added(bytes: &mut Bytes) -> Added {
    let mut added = Added::usual(usize::from(bytes.next()) + 1, bytes.one_of(&AddedShape::ALL));
    for (field, usual) in added.shape.fields() {
        if bytes.yes() {
            added.measures.set(
                field,
                Length::millimetres(bytes.millimetres(usual * 0.3, usual * 3.0)),
            );
        }
    }
    let far = |bytes: &mut Bytes, high| Length::millimetres(bytes.millimetres(0.5, high));
    if bytes.yes() {
        added.members = (0..bytes.below(5))
            .map(|_| (bytes.one_of(&Shape::ALL), far(bytes, 60.0), far(bytes, 60.0)))
            .collect();
    }
    added.turning = (0..bytes.below(5))
        .map(|_| (far(bytes, 700.0), far(bytes, 90.0)))
        .collect();
    added.flutes = u32::from(bytes.next() % 30);
    added.place = bytes.yes().then(|| std::array::from_fn(|_| far(bytes, 900.0)));
    added
}
