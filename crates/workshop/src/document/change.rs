//! The maker's changes to a piece, as measured.

use geometry::{Added, AddedShape, Along, Alteration, LengthField, Measures, Shape, Towards, fields};
use units::{Length, SortedMap};

use super::{EntryId, Reading};

/// The effect of a change. Its lengths are in the readings of the change.
#[derive(Clone, Debug, PartialEq)]
pub enum ChangeKind {
    /// Removes a part.
    Remove {
        /// The name of the part.
        part: String,
    },
    /// Resizes a plain board.
    Resize {
        /// The name of the part.
        part: String,
        /// The direction of the new size.
        along: Along,
    },
    /// Moves a part.
    Move {
        /// The name of the part.
        part: String,
        /// The direction.
        towards: Towards,
    },
    /// Repeats a part at even steps.
    Repeat {
        /// The name of the part.
        part: String,
        /// The total number of copies, including the original.
        times: usize,
        /// The direction.
        towards: Towards,
    },
    /// Deducts a hole.
    Hole {
        /// The name of the surface.
        surface: String,
    },
    /// Adds a part.
    Add {
        /// Its number among the added parts.
        number: usize,
        /// The shape.
        shape: AddedShape,
        /// True if the part is attached to the piece. Otherwise it is placed beside it.
        placed: bool,
        /// The number of flutes in a column.
        flutes: u32,
        /// The members of a molding, from the bottom up.
        members: Vec<Shape>,
        /// The number of points in a turning. With none, it is a plain taper.
        points: usize,
    },
}

/// A change to a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceChange {
    /// The id of the change.
    pub id: EntryId,
    /// The effect.
    pub kind: ChangeKind,
    /// The readings, by item and field key. Item 0 is the change itself, and items from 1 on are its members
    /// or points.
    pub readings: SortedMap<(usize, &'static str), Reading>,
}

impl PieceChange {
    /// Creates a change without readings.
    pub fn new(kind: ChangeKind) -> Self {
        PieceChange {
            id: EntryId::default(),
            kind,
            readings: SortedMap::new(),
        }
    }

    /// Returns a reading, if it was taken.
    pub fn reading(&self, item: usize, key: &str) -> Option<&Reading> {
        let found = self.readings.iter().find(|((i, k), _)| *i == item && *k == key);
        found.map(|(_, reading)| reading)
    }

    /// Returns the measurements of this change, each with its item and its default length.
    pub fn fields(&self) -> Vec<(usize, &'static LengthField, Length)> {
        let mm = Length::millimetres;
        match &self.kind {
            ChangeKind::Remove { .. } => vec![],
            ChangeKind::Resize { along, .. } => vec![(0, size_field(*along), mm(100.0))],
            ChangeKind::Move { .. } => vec![(0, &fields::PART_PLACE, mm(0.0))],
            ChangeKind::Repeat { .. } => vec![(0, &fields::PART_PLACE, mm(100.0))],
            ChangeKind::Hole { .. } => {
                vec![
                    (0, &fields::PART_WIDTH, mm(60.0)),
                    (0, &fields::PART_HEIGHT, mm(60.0)),
                ]
            }
            ChangeKind::Add {
                shape,
                placed,
                flutes,
                members,
                points,
                ..
            } => {
                let own = shape.fields().iter().filter(|(field, _)| {
                    let is_flute = field.key == fields::FLUTE_RADIUS.key;
                    (!is_flute || *flutes > 0) && (*points == 0 || *shape != AddedShape::Turned)
                });
                let mut list: Vec<_> = own.map(|(field, usual)| (0, *field, mm(*usual))).collect();
                for item in 1..=members.len() {
                    list.push((item, &fields::PART_WIDTH, mm(20.0)));
                    list.push((item, &fields::PART_HEIGHT, mm(20.0)));
                }
                for item in 1..=*points {
                    list.push((item, &fields::POINT_HEIGHT, mm(100.0 * (item - 1) as f64)));
                    list.push((item, &fields::PART_DIAMETER, mm(40.0)));
                }
                if *placed {
                    list.extend([
                        (0, &fields::PART_RIGHT, mm(0.0)),
                        (0, &fields::PART_BEHIND, mm(0.0)),
                        (0, &fields::PART_UP, mm(0.0)),
                    ]);
                }
                list
            }
        }
    }

    /// Returns the measured length, or the default.
    pub fn length(&self, item: usize, field: &LengthField) -> Length {
        let usual = || {
            let all = self.fields().into_iter();
            all.filter(|(i, known, _)| *i == item && known.key == field.key)
                .map(|(_, _, usual)| usual)
                .next()
                .unwrap_or(field.min)
        };
        self.reading(item, field.key).map_or_else(usual, Reading::length)
    }

    /// Converts the change for `geometry`.
    pub(crate) fn geometry(&self) -> Alteration {
        let of = |field| self.length(0, field);
        match self.kind.clone() {
            ChangeKind::Remove { part } => Alteration::Remove { part },
            ChangeKind::Resize { part, along } => Alteration::Resize {
                part,
                along,
                to: of(size_field(along)),
            },
            ChangeKind::Move { part, towards } => Alteration::Move {
                part,
                towards,
                by: of(&fields::PART_PLACE),
            },
            ChangeKind::Repeat { part, times, towards } => Alteration::Repeat {
                part,
                times,
                towards,
                every: of(&fields::PART_PLACE),
            },
            ChangeKind::Hole { surface } => Alteration::Hole {
                surface,
                width: of(&fields::PART_WIDTH),
                height: of(&fields::PART_HEIGHT),
            },
            ChangeKind::Add {
                number,
                shape,
                placed,
                flutes,
                members,
                points,
            } => Alteration::Add(Added {
                number,
                shape,
                measures: shape
                    .fields()
                    .iter()
                    .map(|(field, _)| (*field, of(field)))
                    .collect::<Measures>(),
                members: members
                    .into_iter()
                    .enumerate()
                    .map(|(i, shape)| {
                        let [out, up] = [&fields::PART_WIDTH, &fields::PART_HEIGHT]
                            .map(|field| self.length(i + 1, field));
                        (shape, out, up)
                    })
                    .collect(),
                turning: (1..=points)
                    .map(|i| {
                        (
                            self.length(i, &fields::POINT_HEIGHT),
                            self.length(i, &fields::PART_DIAMETER),
                        )
                    })
                    .collect(),
                flutes,
                place: placed.then(|| [&fields::PART_RIGHT, &fields::PART_BEHIND, &fields::PART_UP].map(of)),
            }),
        }
    }
}

fn size_field(along: Along) -> &'static LengthField {
    match along {
        Along::Width => &fields::PART_WIDTH,
        Along::Depth => &fields::PART_DEPTH,
        Along::Height => &fields::PART_HEIGHT,
    }
}
