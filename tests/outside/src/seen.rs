//! The pieces of which a second witness says what each surface looks at, and their solids for it.
//!
//! `tests/cad/seen.py` reads the solids and casts rays; `tests/outside/tests/seen.rs` builds the same pieces again and
//! compares.

use geometry::{
    Added, AddedShape, Along, Alteration, Furniture, Kind, Part, PartId, PartKind, Towards, fields,
};
use serde_json::{Value, json};
use units::Length;

/// How many altered pieces there are.
pub const ALTERED: usize = 200;

/// Every kind as it usually is, every answer to every choice of every kind, and pieces that were altered at random, each
/// with its name.
pub fn pieces() -> Vec<(String, Furniture)> {
    let mut list: Vec<(String, Furniture)> = Vec::new();
    for kind in Kind::ALL {
        let usual = Furniture::usual(kind);
        list.push((kind.key().into(), usual.clone()));
        for framed in [false, true] {
            let mut base = usual.clone();
            if framed && !choose(&mut base, "face-frame", "frame") {
                continue;
            }
            for field in base.style_fields() {
                // What a frame brings with it is all that it adds here.
                let is_of_frame = field.key == "corner-columns" || field.key == "fronts";
                if framed && !is_of_frame {
                    continue;
                }
                for option in field.options {
                    let mut piece = base.clone();
                    field.choose(&mut piece.styles, option.key);
                    let frame = if framed { " frame" } else { "" };
                    if piece != base && piece.assembly().is_ok() {
                        list.push((
                            format!("{}{frame} {} {}", kind.key(), field.key, option.key),
                            piece,
                        ));
                    }
                }
            }
        }
    }
    list.extend(altered());
    list
}

fn choose(piece: &mut Furniture, key: &str, option: &str) -> bool {
    let fields = piece.style_fields();
    let field = fields.iter().find(|field| field.key == key);
    field.is_some_and(|field| field.choose(&mut piece.styles, option))
}

/// A generator of the family of Marsaglia (xorshift64*): the same numbers on every machine.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11
    }

    fn of<T: Clone>(&mut self, all: &[T]) -> T {
        all[(self.next() % all.len() as u64) as usize].clone()
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() % 1001) as f64 / 1000.0
    }
}

/// Pieces with one to three changes of which no part runs into another.
fn altered() -> Vec<(String, Furniture)> {
    let mut dice = Dice(0x5EED_0F5E_E9AF_ACE5);
    let mut list = Vec::new();
    while list.len() < ALTERED {
        let mut piece = Furniture::usual(dice.of(&Kind::ALL));
        for field in piece.fields() {
            if dice.next().is_multiple_of(4) {
                // A sixteenth of an inch, or several, more or less.
                let steps = dice.between(-6.0, 6.0).round();
                let length = piece.length(field) + Length::inches(steps / 16.0);
                if length >= field.min && length <= field.max {
                    piece.measures.set(field, length);
                }
            }
        }
        for _ in 0..=dice.next() % 3 {
            let Ok(assembly) = piece.assembly() else { break };
            let change = change(&mut dice, &assembly.parts, piece.changes.len());
            let mut next = piece.clone();
            next.changes.push(change);
            let sound = next.assembly();
            if sound.is_ok_and(|sound| !sound.parts.is_empty() && sound.overlaps().is_empty()) {
                piece = next;
            }
        }
        let is_sound = piece.assembly().is_ok_and(|sound| sound.overlaps().is_empty());
        if !piece.changes.is_empty() && is_sound {
            list.push((format!("altered {}", list.len() + 1), piece));
        }
    }
    list
}

fn change(dice: &mut Dice, parts: &[Part], count: usize) -> Alteration {
    let part = dice.of(parts);
    let name = part.id.to_string();
    let (low, high) = part.bounds();
    let towards = [
        Towards::Left,
        Towards::Right,
        Towards::Front,
        Towards::Back,
        Towards::Up,
        Towards::Down,
    ];
    match dice.next() % 8 {
        0 | 1 => Alteration::Remove { part: name },
        2..=4 => {
            let sizes = [0, 1, 2].map(|axis| high[axis] - low[axis]);
            let thinnest = (0..3).fold(
                0,
                |best, axis| if sizes[axis] < sizes[best] { axis } else { best },
            );
            let along = [Along::Width, Along::Depth, Along::Height];
            Alteration::Resize {
                part: name,
                along: along[thinnest],
                to: Length::metres((sizes[thinnest] * dice.between(0.4, 1.0)).max(0.002)),
            }
        }
        5 | 6 => Alteration::Move {
            part: name,
            towards: dice.of(&towards),
            by: Length::millimetres(dice.between(2.0, 60.0)),
        },
        _ => {
            let mut added = Added::usual(count + 1, dice.of(&AddedShape::ALL));
            if added.shape == AddedShape::Board && dice.next().is_multiple_of(2) {
                // On top of another part, or before it.
                added.measures.set(&fields::PART_WIDTH, Length::millimetres(60.0));
                added.measures.set(&fields::PART_DEPTH, Length::millimetres(10.0));
                let at = [(low[0] + high[0]) / 2.0, low[1].max(0.0), high[2]];
                added.place = Some(at.map(Length::metres));
            }
            Alteration::Add(added)
        }
    }
}

/// What the maker added, if the part is of the maker's own.
fn added<'a>(piece: &'a Furniture, part: &PartId) -> Option<&'a Added> {
    let mut added = piece.changes.iter().filter_map(|change| match change {
        Alteration::Add(added) => Some(added),
        _ => None,
    });
    added.find(|added| part.kind == PartKind::Added && added.number == usize::from(part.row))
}

/// The solids of a piece, each face with the outlines of its flat pieces in meters, for the witness.
pub fn solids(name: &str, piece: &Furniture) -> Option<Value> {
    let assembly = piece.assembly().ok()?;
    let parts = assembly.parts.iter().map(|part| {
        let faces = part.faces.iter().map(|face| {
            let facets = face.facets().iter().map(|facet| {
                let contours = facet.region.contours();
                let points = contours.map(|contour| {
                    let corners = contour.iter().map(|corner| facet.plane.at(*corner));
                    corners
                        .map(|point| [point.x, point.y, point.z])
                        .collect::<Vec<_>>()
                });
                json!({"normal": facet.plane.normal().as_slice(), "contours": points.collect::<Vec<_>>()})
            });
            json!({
                "side": face.side.word(),
                "curved": matches!(face.patch, geometry::FaceShape::Curved(_)),
                "stretch": face.stretch,
                "facets": facets.collect::<Vec<_>>(),
            })
        });
        json!({
            "name": part.id.to_string(),
            "kind": part.id.kind.key(),
            "loose": added(piece, &part.id).is_some_and(|added| added.place.is_none()),
            "shape": added(piece, &part.id).map(|added| added.shape.key()),
            "faces": faces.collect::<Vec<_>>(),
        })
    });
    Some(json!({
        "name": name,
        "kind": piece.kind.key(),
        "construction": format!("{:?}", piece.kind.construction()),
        "gap": piece.length(&fields::GAP).as_metres(),
        "parts": parts.collect::<Vec<_>>(),
    }))
}
