//! Changes: what a maker alters on a piece after it was built from its measurements.
//!
//! A piece is opened into its parts: parts go, boards grow, parts move or repeat, parts of one's own come in, holes
//! are deducted. Changes are applied in order, each to what the ones before have left.

use std::f64::consts::PI;

use units::Length;

use super::check::outside;
use super::fields::{
    FLUTE_RADIUS, FieldId, LengthField, Measures, PART_BEHIND, PART_DEPTH, PART_DIAMETER, PART_FOOT,
    PART_GIRTH, PART_HEIGHT, PART_LENGTH, PART_PLACE, PART_RIGHT, PART_UP, PART_WIDTH, POINT_HEIGHT,
};
use super::problem::Problem;
use crate::assembly::Assembly;
use crate::face::{Face, Facet, Plane, Side};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::{Profile, Shape, equal_area_arc};
use crate::solid::{CHORD, Cut, Prism, Run, Turning, frustum};
use crate::{Point3, Vector3};

/// The most changes of one piece.
pub const MAX_CHANGES: usize = 200;
/// The most times that a part is repeated.
pub const MAX_REPEATS: usize = 100;
/// The most members of a moulding that is put together, and the most points of a turning.
pub const MAX_STEPS: usize = 24;
/// The most parts of a piece with all that its maker added and repeated.
const MAX_PARTS: usize = 1000;
/// How far apart parts stand that belong to no place, metres.
const APART: f64 = 0.1;

/// A direction along which a board grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Along {
    /// Left to right.
    Width,
    /// Front to back.
    Depth,
    /// Bottom to top.
    Height,
}

/// A direction in which a part goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Towards {
    /// To the left hand.
    Left,
    /// To the right hand.
    Right,
    /// Towards the person.
    Front,
    /// Towards the wall.
    Back,
    /// Up.
    Up,
    /// Down.
    Down,
}

/// A change of a piece.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// A part goes.
    Remove {
        /// Its name.
        part: String,
    },
    /// A plain board gets another size along one direction; its middle stays.
    Resize {
        /// Its name.
        part: String,
        /// Along which direction.
        along: Along,
        /// Its new size.
        to: Length,
    },
    /// A part goes elsewhere.
    Move {
        /// Its name.
        part: String,
        /// In which direction.
        towards: Towards,
        /// How far.
        by: Length,
    },
    /// A part comes again at even steps.
    Repeat {
        /// Its name.
        part: String,
        /// How many there are in the end, with the part itself.
        times: usize,
        /// In which direction.
        towards: Towards,
        /// From one to the next.
        every: Length,
    },
    /// A hole is deducted from a surface.
    Hole {
        /// The name of the surface.
        surface: String,
        /// Its width.
        width: Length,
        /// Its height.
        height: Length,
    },
    /// A part comes in.
    Add(Added),
}

/// A part of the maker's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Added {
    /// Its number among the added parts of the piece; it stays when others go.
    pub number: usize,
    /// What it is.
    pub shape: AddedShape,
    /// Its measurements.
    pub measures: Measures,
    /// The members of a moulding from its foot up, each with how far it comes out and how high it is.
    pub members: Vec<(Shape, Length, Length)>,
    /// The points of a turning from the foot up: height above the foot, and diameter.
    pub turning: Vec<(Length, Length)>,
    /// How many flutes a column has.
    pub flutes: u32,
    /// Where it begins: from the left, from the front (to its back where that is planted on something) and from
    /// the floor; `None` stands beside the piece and touches nothing.
    pub place: Option<[Length; 3]>,
}

/// What a part of the maker's own is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AddedShape {
    /// A board: width, depth, height.
    Board,
    /// One face only: width and height.
    Panel,
    /// A bar of any section: girth and length, without its ends.
    Bar,
    /// A straight moulding: its members and its length; its back is to the wall.
    Moulding,
    /// A turned part: its points, or a plain taper between two diameters.
    Turned,
    /// A square leg tapered on four sides.
    Tapered,
    /// A round column, plain or fluted.
    Column,
    /// A half round column, its flat side to the wall.
    HalfColumn,
}

impl AddedShape {
    /// Every shape.
    pub const ALL: [AddedShape; 8] = [
        AddedShape::Board,
        AddedShape::Panel,
        AddedShape::Bar,
        AddedShape::Moulding,
        AddedShape::Turned,
        AddedShape::Tapered,
        AddedShape::Column,
        AddedShape::HalfColumn,
    ];

    /// Its name in saved files; it never changes.
    pub fn key(self) -> &'static str {
        match self {
            AddedShape::Board => "board",
            AddedShape::Panel => "panel",
            AddedShape::Bar => "bar",
            AddedShape::Moulding => "moulding",
            AddedShape::Turned => "turned",
            AddedShape::Tapered => "tapered",
            AddedShape::Column => "column",
            AddedShape::HalfColumn => "half-column",
        }
    }

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            AddedShape::Board => "Board",
            AddedShape::Panel => "Single face",
            AddedShape::Bar => "Bar, by its girth",
            AddedShape::Moulding => "Moulding",
            AddedShape::Turned => "Turned part",
            AddedShape::Tapered => "Tapered leg",
            AddedShape::Column => "Column",
            AddedShape::HalfColumn => "Half column",
        }
    }

    /// The sides with which a part of this shape is planted on something, where nobody says on what: the back of a
    /// moulding, and its ends, where it meets the next one; the flat side of a half column.
    fn glued(self) -> &'static [Side] {
        match self {
            AddedShape::Moulding => &[Side::Back, Side::Left, Side::Right],
            AddedShape::HalfColumn => &[Side::Back],
            _ => &[],
        }
    }

    /// Its measurements, each with its usual size in millimetres (common practice, no source).
    pub fn fields(self) -> &'static [(&'static LengthField, f64)] {
        match self {
            AddedShape::Board => &[(&PART_WIDTH, 400.0), (&PART_DEPTH, 300.0), (&PART_HEIGHT, 19.0)],
            AddedShape::Panel => &[(&PART_WIDTH, 400.0), (&PART_HEIGHT, 300.0)],
            AddedShape::Bar => &[(&PART_GIRTH, 100.0), (&PART_LENGTH, 600.0)],
            AddedShape::Moulding => &[(&PART_LENGTH, 1000.0)],
            AddedShape::Turned => &[(&PART_HEIGHT, 400.0), (&PART_DIAMETER, 50.0), (&PART_FOOT, 25.0)],
            AddedShape::Tapered => &[(&PART_HEIGHT, 400.0), (&PART_WIDTH, 40.0), (&PART_FOOT, 22.0)],
            AddedShape::Column | AddedShape::HalfColumn => &[
                (&PART_HEIGHT, 600.0),
                (&PART_DIAMETER, 50.0),
                (&FLUTE_RADIUS, 2.0),
            ],
        }
    }
}

impl Added {
    /// A part of this shape of which nothing was measured yet.
    pub fn usual(number: usize, shape: AddedShape) -> Self {
        Added {
            number,
            shape,
            measures: Measures::default(),
            members: match shape {
                AddedShape::Moulding => {
                    vec![(Shape::Ogee, Length::millimetres(20.0), Length::millimetres(30.0))]
                }
                _ => vec![],
            },
            turning: vec![],
            flutes: 0,
            place: None,
        }
    }

    /// The measured length, or the usual one.
    pub fn length(&self, field: &LengthField) -> Length {
        let usual = self
            .shape
            .fields()
            .iter()
            .find(|(known, _)| known.key == field.key);
        self.measures
            .get(field)
            .unwrap_or_else(|| Length::millimetres(usual.map_or(0.0, |(_, mm)| *mm)))
    }

    fn metres(&self, field: &LengthField) -> f64 {
        self.length(field).as_metres()
    }
}

/// How far right a piece reaches, metres; kept while parts are added, as it takes every facet to find out.
struct Ends {
    /// Its parts that are placed.
    placed: f64,
    /// All its parts.
    all: f64,
}

impl Ends {
    fn of(piece: &Assembly) -> Self {
        let mut ends = Ends {
            placed: 0.0,
            all: 0.0,
        };
        piece.parts.iter().for_each(|part| ends.add(part));
        ends
    }

    fn add(&mut self, part: &Part) {
        let right = part.bounds().1[0];
        self.all = self.all.max(right);
        if !part.is_loose {
            self.placed = self.placed.max(right);
        }
    }
}

/// The piece with all changes made.
pub(super) fn applied(mut piece: Assembly, changes: &[Change]) -> Result<Assembly, Vec<Problem>> {
    let problems = limits(changes);
    if !problems.is_empty() {
        return Err(problems);
    }
    piece.by_parts |= changes.iter().any(alters);
    let mut ends = None;
    for (i, change) in changes.iter().enumerate() {
        apply(&mut piece, &mut ends, i, change).map_err(|problem| vec![problem])?;
        if piece.parts.len() > MAX_PARTS {
            return Err(vec![Problem::Count {
                what: "Parts of a piece",
                given: piece.parts.len(),
                least: 1,
                most: MAX_PARTS,
            }]);
        }
    }
    Ok(piece)
}

/// Whether a change alters the parts that stand in their places. Holes do not, nor do parts that are added without a place.
fn alters(change: &Change) -> bool {
    match change {
        Change::Hole { .. } => false,
        Change::Add(added) => added.place.is_some(),
        _ => true,
    }
}

fn limits(changes: &[Change]) -> Vec<Problem> {
    let mut found = Vec::new();
    let count = |what, given: usize, least, most: usize| {
        (given > most || given < least).then_some(Problem::Count {
            what,
            given,
            least,
            most,
        })
    };
    found.extend(count("Changes of a piece", changes.len(), 0, MAX_CHANGES));
    for (i, change) in changes.iter().enumerate() {
        let mut check_item = |item, field: &'static LengthField, given| {
            let id = FieldId::Change {
                change: i,
                item,
                key: field.key,
            };
            found.extend(outside(id, field, given));
        };
        let mut check = |field, given| check_item(0, field, given);
        match change {
            Change::Remove { .. } => {}
            Change::Resize { along, to, .. } => {
                let field = match along {
                    Along::Width => &PART_WIDTH,
                    Along::Depth => &PART_DEPTH,
                    Along::Height => &PART_HEIGHT,
                };
                check(field, *to);
            }
            Change::Move { by, .. } => check(&PART_PLACE, *by),
            Change::Repeat { times, every, .. } => {
                check(&PART_PLACE, *every);
                found.extend(count("Repeats of a part", *times, 1, MAX_REPEATS));
            }
            Change::Hole { width, height, .. } => {
                check(&PART_WIDTH, *width);
                check(&PART_HEIGHT, *height);
            }
            Change::Add(added) => {
                for (field, _) in added.shape.fields() {
                    check(field, added.length(field));
                }
                for place in added.place.iter() {
                    for (field, length) in [&PART_RIGHT, &PART_BEHIND, &PART_UP].into_iter().zip(place) {
                        check(field, *length);
                    }
                }
                for (member, (_, out, up)) in added.members.iter().enumerate() {
                    check_item(member + 1, &PART_WIDTH, *out);
                    check_item(member + 1, &PART_HEIGHT, *up);
                }
                for (point, (height, diameter)) in added.turning.iter().enumerate() {
                    check_item(point + 1, &POINT_HEIGHT, *height);
                    check_item(point + 1, &PART_DIAMETER, *diameter);
                }
                found.extend(added_problems(i, added));
            }
        }
    }
    found
}

fn added_problems(change: usize, added: &Added) -> Vec<Problem> {
    let mut found = Vec::new();
    let steps = added.members.len().max(added.turning.len());
    let least = usize::from(added.shape == AddedShape::Moulding);
    if steps > MAX_STEPS || steps < least {
        found.push(Problem::Count {
            what: "Members of a moulding, or points of a turning",
            given: steps,
            least,
            most: MAX_STEPS,
        });
    }
    let rises = added.turning.windows(2).all(|pair| pair[1].0 > pair[0].0);
    if !rises || added.turning.len() == 1 {
        found.push(Problem::TurningOutOfOrder { change });
    }
    let is_column = matches!(added.shape, AddedShape::Column | AddedShape::HalfColumn);
    if is_column && added.flutes > 0 {
        let radius = added.metres(&PART_DIAMETER) / 2.0;
        let around = if added.shape == AddedShape::Column {
            added.flutes.div_ceil(2)
        } else {
            added.flutes
        };
        let room = super::columns::widest_flute(radius, around);
        if added.metres(&FLUTE_RADIUS) > room {
            found.push(Problem::NoRoom {
                field: FieldId::Change {
                    change,
                    item: 0,
                    key: FLUTE_RADIUS.key,
                },
                given: added.length(&FLUTE_RADIUS),
                room: Length::metres(room),
                beside: "the next flute",
            });
        }
    }
    found
}

fn apply(
    piece: &mut Assembly,
    ends: &mut Option<Ends>,
    place: usize,
    change: &Change,
) -> Result<(), Problem> {
    if !matches!(change, Change::Add(_) | Change::Hole { .. }) {
        *ends = None;
    }
    let find = |piece: &Assembly, name: &str| {
        let found = piece.parts.iter().position(|part| part.id.to_string() == name);
        found.ok_or_else(|| Problem::NoSuchPart {
            change: place,
            name: name.to_owned(),
        })
    };
    match change {
        Change::Remove { part } => {
            let at = find(piece, part)?;
            piece.parts.remove(at);
        }
        Change::Resize { part, along, to } => {
            let at = find(piece, part)?;
            piece.parts[at] =
                resized(&piece.parts[at], *along, to.as_metres()).ok_or_else(|| Problem::NotABoard {
                    change: place,
                    part: piece.parts[at].id.label(),
                })?;
        }
        Change::Move { part, towards, by } => {
            let at = find(piece, part)?;
            let moved = piece.parts[at].clone().moved(&shift(*towards, by.as_metres()));
            piece.parts[at] = moved;
        }
        Change::Repeat {
            part,
            times,
            towards,
            every,
        } => {
            let at = find(piece, part)?;
            let original = piece.parts[at].clone();
            // A part that was repeated before, or is a repeat itself, goes on counting, so that names stay apart.
            let last = last_repeat(piece, original.id);
            let repeats = (1..*times).map(|n| {
                let step = every.as_metres() * n as f64;
                Part {
                    id: original.id.repeated(last + n),
                    ..original.clone().moved(&shift(*towards, step))
                }
            });
            piece.parts.splice(at + 1..at + 1, repeats.collect::<Vec<_>>());
        }
        Change::Hole {
            surface,
            width,
            height,
        } => {
            let number = piece.holes.len() + 1;
            let id = PartId::nth(PartKind::Hole, number);
            piece.holes.push((id, surface.clone(), *width * *height));
        }
        Change::Add(added) => {
            let part = built(added);
            let ends = ends.get_or_insert_with(|| Ends::of(piece));
            if let Some(problem) = longer_than_piece(ends, place, added) {
                return Err(problem);
            }
            let part = match added.place {
                Some(_) => part,
                None => Part {
                    is_loose: true,
                    glued: added.shape.glued(),
                    ..beside(ends, part)
                },
            };
            // Two parts of one number, which only a damaged file has, keep their names apart too.
            let id = part.id.repeated(last_repeat(piece, part.id) + 1);
            ends.add(&part);
            piece.parts.push(Part { id, ..part });
        }
    }
    Ok(())
}

/// The highest number among the repeats of a part; 0 if there is no such part.
fn last_repeat(piece: &Assembly, id: PartId) -> usize {
    let family = piece
        .parts
        .iter()
        .filter(|part| part.id.repeated(1) == id.repeated(1));
    family.map(|part| usize::from(part.id.repeat)).max().unwrap_or(0)
}

/// A moulding that is planted on a piece may stand out at both ends by as much as it comes out of the wall, for its
/// mitres, and no further.
fn longer_than_piece(ends: &Ends, change: usize, added: &Added) -> Option<Problem> {
    let [left, ..] = added.place?;
    if added.shape != AddedShape::Moulding {
        return None;
    }
    let out: f64 = added.members.iter().map(|(_, out, _)| out.as_metres()).sum();
    let room = ends.placed + out - left.as_metres();
    (added.metres(&PART_LENGTH) > room + 1e-9).then(|| Problem::NoRoom {
        field: FieldId::Change {
            change,
            item: 0,
            key: PART_LENGTH.key,
        },
        given: added.length(&PART_LENGTH),
        room: Length::metres(room.max(0.0)),
        beside: "where it begins, up to the end of the piece,",
    })
}

fn shift(towards: Towards, by: f64) -> nalgebra::Isometry3<f64> {
    let [x, y, z] = match towards {
        Towards::Left => [-by, 0.0, 0.0],
        Towards::Right => [by, 0.0, 0.0],
        Towards::Front => [0.0, -by, 0.0],
        Towards::Back => [0.0, by, 0.0],
        Towards::Up => [0.0, 0.0, by],
        Towards::Down => [0.0, 0.0, -by],
    };
    nalgebra::Isometry3::translation(x, y, z)
}

fn resized(part: &Part, along: Along, to: f64) -> Option<Part> {
    if !part.is_block() {
        return None;
    }
    let (mut low, mut high) = part.bounds();
    let axis = match along {
        Along::Width => 0,
        Along::Depth => 1,
        Along::Height => 2,
    };
    let middle = (low[axis] + high[axis]) / 2.0;
    (low[axis], high[axis]) = (middle - to / 2.0, middle + to / 2.0);
    Some(Part {
        is_loose: part.is_loose,
        glued: part.glued,
        ..Part::block(part.id, low, high)
    })
}

/// The part to the right of everything that is there.
fn beside(ends: &Ends, part: Part) -> Part {
    let left = part.bounds().0[0];
    part.moved(&shift(Towards::Right, ends.all + APART - left))
}

fn built(added: &Added) -> Part {
    let id = PartId::nth(PartKind::Added, added.number);
    let [x, y, z] = added.place.map_or([0.0; 3], |place| place.map(Length::as_metres));
    let m = |field| added.metres(field);
    match added.shape {
        AddedShape::Board => Part::block(
            id,
            [x, y, z],
            [x + m(&PART_WIDTH), y + m(&PART_DEPTH), z + m(&PART_HEIGHT)],
        ),
        AddedShape::Panel => {
            let board = Part::block(
                id,
                [x, y, z],
                [x + m(&PART_WIDTH), y + 0.001, z + m(&PART_HEIGHT)],
            );
            Part::of(
                id,
                board.faces.into_iter().filter(|face| face.side == Side::Front),
            )
        }
        AddedShape::Bar => bar(id, [x, y, z], m(&PART_GIRTH), m(&PART_LENGTH)),
        AddedShape::Moulding => moulding(id, added, [x, y, z]),
        AddedShape::Turned => turned(id, added, [x, y, z]),
        AddedShape::Tapered => {
            let (head, foot) = (m(&PART_WIDTH), m(&PART_FOOT));
            let widest = head.max(foot) / 2.0;
            let square = |size: f64| {
                let [cx, cy] = [x + widest, y + widest];
                [
                    [cx - size / 2.0, cy - size / 2.0],
                    [cx + size / 2.0, cy + size / 2.0],
                ]
            };
            frustum(id, (square(foot), z), (square(head), z + m(&PART_HEIGHT)))
        }
        AddedShape::Column => column(id, added, [x, y, z], true),
        AddedShape::HalfColumn => column(id, added, [x, y, z], false),
    }
}

/// A bar of which only the girth is known: drawn square, counted around and not at its ends.
fn bar(id: PartId, [x, y, z]: [f64; 3], girth: f64, length: f64) -> Part {
    let side = girth / 4.0;
    let block = Part::block(id, [x, y, z], [x + length, y + side, z + side]);
    let facets: Vec<Facet> = block
        .faces
        .iter()
        .filter(|face| !matches!(face.side, Side::Left | Side::Right))
        .flat_map(|face| face.facets().to_vec())
        .collect();
    Part::of(id, [Face::folded(Side::Around, facets)])
}

/// A straight moulding with its back to the wall; it runs along x.
fn moulding(id: PartId, added: &Added, [x, y, z]: [f64; 3]) -> Part {
    let mut points = vec![[0.0, 0.0]];
    let (mut out, mut up, mut girth) = (0.0, 0.0, 0.0);
    for (shape, width, height) in &added.members {
        let profile = Profile::crown(*shape, width.as_metres(), height.as_metres());
        let line = profile.line(CHORD).into_iter().skip(1);
        points.extend(line.map(|[inward, rise]| [out - inward, up + rise]));
        let [inward, rise] = profile.size();
        (out, up, girth) = (out - inward, up + rise, girth + profile.girth());
    }
    let mut outline = vec![Run::curved(Side::Moulded, points, girth, 0.0).with_multiplier(girth / up)];
    // What ends in a bead comes back to the wall.
    if out > 0.0 {
        outline.push(Run::straight(Side::Top, vec![[out, up], [0.0, up]]));
    }
    outline.push(Run::straight(Side::Back, vec![[0.0, up], [0.0, 0.0]]));
    let prism = Prism {
        plane: Plane {
            origin: Point3::new(x + added.metres(&PART_LENGTH), y, z),
            u: -Vector3::y(),
            v: Vector3::z(),
        },
        outline,
        holes: vec![],
        start: Cut::square(0.0),
        end: Cut::square(added.metres(&PART_LENGTH)),
    };
    prism.part(id)
}

fn turned(id: PartId, added: &Added, [x, y, z]: [f64; 3]) -> Part {
    let points: Vec<[f64; 2]> = if added.turning.is_empty() {
        let [high, wide, foot] = [&PART_HEIGHT, &PART_DIAMETER, &PART_FOOT].map(|f| added.metres(f));
        vec![[foot / 2.0, 0.0], [wide / 2.0, high]]
    } else {
        let point = |(height, diameter): &(Length, Length)| [diameter.as_metres() / 2.0, height.as_metres()];
        added.turning.iter().map(point).collect()
    };
    let widest = points.iter().map(|[r, _]| *r).fold(0.0, f64::max);
    let [head_radius, head] = points[points.len() - 1];
    let start = Turning::from(head_radius, head);
    let turning = points
        .iter()
        .rev()
        .skip(1)
        .fold(start, |turning, [radius, height]| {
            turning.line_to(*radius, *height)
        });
    turning.part(id, Point3::new(x + widest, y + widest, z))
}

fn column(id: PartId, added: &Added, [x, y, z]: [f64; 3], is_whole: bool) -> Part {
    let radius = added.metres(&PART_DIAMETER) / 2.0;
    let flute = added.metres(&FLUTE_RADIUS);
    let half = |count: u32| {
        if count == 0 {
            (equal_area_arc([0.0, 0.0], radius, 0.0, PI, CHORD), PI * radius)
        } else {
            super::columns::fluted(radius, count, flute)
        }
    };
    let (mut points, mut girth) = half(if is_whole {
        added.flutes.div_ceil(2)
    } else {
        added.flutes
    });
    let mut outline = Vec::new();
    if is_whole {
        // The other half is the same, turned about the axis; an odd count of flutes goes to the first half.
        let (other, other_girth) = half(added.flutes / 2);
        points.extend(other.into_iter().skip(1).map(|[a, b]| [-a, -b]));
        girth += other_girth;
    } else {
        outline.push(Run::straight(Side::Back, vec![[-radius, 0.0], [radius, 0.0]]));
    }
    outline.push(Run::curved(Side::Around, points, girth, 0.0));
    let prism = Prism {
        plane: Plane {
            origin: Point3::new(x + radius, if is_whole { y + radius } else { y }, z),
            u: -Vector3::x(),
            v: -Vector3::y(),
        },
        outline,
        holes: vec![],
        start: Cut::square(0.0),
        end: Cut::square(added.metres(&PART_HEIGHT)),
    };
    prism.part(id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Furniture, Kind};

    fn net(changes: Vec<Change>) -> Result<f64, Vec<Problem>> {
        let mut table = Furniture::usual(Kind::SideTable);
        table.changes = changes;
        let surfaces = table.assembly()?.surfaces();
        Ok(surfaces
            .iter()
            .map(|surface| surface.net.as_square_metres())
            .sum())
    }

    #[test]
    fn a_part_that_stands_alone_adds_its_whole_surface() {
        let before = net(vec![]).unwrap();
        let bar = Added::usual(1, AddedShape::Bar);
        let board = Added::usual(2, AddedShape::Board);
        let column = Added::usual(3, AddedShape::Column);
        let after = net(vec![Change::Add(bar), Change::Add(board), Change::Add(column)]).unwrap();
        let bar = 0.1 * 0.6;
        let board = 2.0 * (0.4 * 0.3 + 0.4 * 0.019 + 0.3 * 0.019);
        let column = PI * 0.05 * 0.6 + 2.0 * PI * 0.025 * 0.025;
        assert!(
            (after - before - bar - board - column).abs() < 1e-9,
            "{}",
            after - before
        );
    }

    #[test]
    fn a_fluted_column_has_more_around_it() {
        let plain = Added::usual(1, AddedShape::Column);
        let fluted = Added {
            flutes: 12,
            ..plain.clone()
        };
        let [plain, fluted] = [plain, fluted].map(|added| net(vec![Change::Add(added)]).unwrap());
        assert!(fluted > plain, "{fluted} {plain}");
    }

    #[test]
    fn boards_grow_and_shaped_parts_do_not() {
        let resize = |part: &str| Change::Resize {
            part: part.into(),
            along: Along::Height,
            to: Length::millimetres(50.0),
        };
        assert!(net(vec![resize("apron-back")]).is_ok());
        let problems = net(vec![resize("leg-1")]).unwrap_err();
        assert!(
            problems[0].to_string().contains("only plain boards"),
            "{}",
            problems[0]
        );
    }

    #[test]
    fn a_change_of_what_is_gone_says_so() {
        let remove = Change::Remove {
            part: "apron-back".into(),
        };
        let problems = net(vec![remove.clone(), remove]).unwrap_err();
        assert_eq!(
            problems[0].to_string(),
            "Change 2 is about \"apron-back\", which this piece does not have any more. Take the change back or \
             bring the part back."
        );
    }

    #[test]
    fn a_moulding_is_not_longer_than_its_piece() {
        let planted = |inches| {
            let mut moulding = Added::usual(1, AddedShape::Moulding);
            moulding.measures.set(&PART_LENGTH, Length::inches(inches));
            moulding.place = Some([Length::inches(1.0), Length::inches(1.0), Length::inches(20.0)]);
            net(vec![Change::Add(moulding)])
        };
        assert!(planted(18.0).is_ok());
        let problem = planted(30.0).unwrap_err()[0].to_string();
        assert!(problem.starts_with("Change 1: length is 762 mm"), "{problem}");
    }

    #[test]
    fn repeats_have_names_of_their_own() {
        let mut table = Furniture::usual(Kind::SideTable);
        table.changes = vec![Change::Repeat {
            part: "apron-left".into(),
            times: 3,
            towards: Towards::Right,
            every: Length::millimetres(60.0),
        }];
        let names: Vec<String> = table
            .assembly()
            .unwrap()
            .parts
            .iter()
            .map(|part| part.id.to_string())
            .collect();
        assert!(
            names.contains(&"apron-left~2".into()) && names.contains(&"apron-left~3".into()),
            "{names:?}"
        );
    }

    #[test]
    fn a_hole_is_deducted_and_named() {
        let mut table = Furniture::usual(Kind::SideTable);
        table.changes = vec![Change::Hole {
            surface: "top/top".into(),
            width: Length::millimetres(60.0),
            height: Length::millimetres(60.0),
        }];
        let surfaces = table.assembly().unwrap().surfaces();
        let top = surfaces
            .iter()
            .find(|surface| surface.id.to_string() == "top/top")
            .unwrap();
        assert_eq!(top.deductions[0].by.to_string(), "hole-1");
        assert!((top.deductions[0].area.as_square_metres() - 0.0036).abs() < 1e-12);
    }
}
