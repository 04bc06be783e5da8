//! Generated pieces: every kind, with any styles, counts, bays and rows, and with measurements near the usual ones,
//! equal ones, at their limits, or no measurements at all.
//!
//! What can be chosen, counted and measured is read from the tables of the crate, so that what is added there is
//! generated too.

use std::fmt;

use geometry::{
    Added, AddedShape, Along, Alteration, Assembly, Bay, FieldId, Fill, Furniture, Kind, LengthField, Row,
    Shape, Towards, counts, fields, styles,
};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use units::Length;

/// How a measurement comes about.
#[derive(Clone, Copy, Debug)]
enum Size {
    /// So many times the usual size.
    Usual(f64),
    /// The smallest or the largest that makes sense.
    Limit(bool),
    /// A size that other parts have too, in millimeters.
    Common(f64),
    /// Anything, in meters.
    Any(f64),
}

impl Size {
    fn of(self, field: &LengthField, usual: Length) -> Length {
        let within = |length: Length| length.max(field.min).min(field.max);
        match self {
            Size::Usual(times) => within(usual * times),
            Size::Limit(most) => [field.min, field.max][usize::from(most)],
            Size::Common(size) => within(Length::millimetres(size)),
            Size::Any(size) => Length::metres(size),
        }
    }
}

fn sound_size() -> BoxedStrategy<Size> {
    prop_oneof![
        8 => (0.5..2.0f64).prop_map(Size::Usual),
        1 => any::<bool>().prop_map(Size::Limit),
        2 => select(vec![0.0, 6.0, 18.0, 19.0, 19.0 + 1e-9, 19.05, 38.0]).prop_map(Size::Common),
    ]
    .boxed()
}

fn any_size() -> BoxedStrategy<Size> {
    let odd = vec![
        0.0,
        -0.0,
        -0.3,
        100.0,
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::MAX,
        f64::MIN_POSITIVE,
    ];
    prop_oneof![
        6 => sound_size(),
        1 => select(odd).prop_map(Size::Any),
        1 => (0.0..4.0f64).prop_map(Size::Any),
        1 => any::<f64>().prop_map(Size::Any),
    ]
    .boxed()
}

/// A row of a bay before its height is known.
#[derive(Clone, Debug)]
struct RowDraw {
    fill: Fill,
    columns: usize,
    shelves: usize,
    height: Option<Size>,
}

/// A bay before its width is known.
#[derive(Clone, Debug)]
struct BayDraw {
    width: Option<Size>,
    rows: Vec<RowDraw>,
}

impl BayDraw {
    fn bay(&self) -> Bay {
        Bay::of(
            self.rows
                .iter()
                .map(|row| Row::of(row.fill, row.columns, row.shelves))
                .collect(),
        )
    }
}

/// A change before the piece is built that it is about.
#[derive(Clone, Debug)]
struct ChangeDraw {
    what: usize,
    part: Index,
    towards: Towards,
    along: Along,
    sizes: [Size; 3],
    number: usize,
    placed: bool,
}

/// Everything that is chosen before a piece can be put together.
#[derive(Clone, Debug)]
struct Draw {
    kind: Kind,
    styles: Vec<Option<Index>>,
    counts: Vec<Option<Index>>,
    measures: Vec<Option<Size>>,
    bays: Option<[Vec<BayDraw>; 2]>,
    /// Whether every row and bay is measured, and their sum is right.
    all_measured: bool,
    changes: Vec<ChangeDraw>,
}

impl Draw {
    fn furniture(&self) -> Furniture {
        let mut piece = Furniture::usual(self.kind);
        for (field, choice) in styles::ALL.into_iter().zip(&self.styles) {
            if let Some(choice) = choice {
                field.choose(&mut piece.styles, choice.get(field.options).key);
            }
        }
        for (field, choice) in counts::ALL.into_iter().zip(&self.counts) {
            if let Some(choice) = choice {
                let choices = field.max - field.min + 1;
                piece
                    .counts
                    .set(field, field.min + choice.index(choices as usize) as u32);
            }
        }
        if let Some([bays, upper]) = &self.bays {
            // Pieces without a case get bays too now and then, which must be refused.
            piece.bays = bays.iter().map(BayDraw::bay).collect();
            piece.upper = upper.iter().map(BayDraw::bay).collect();
        }
        for field in piece.fields() {
            let place = fields::ALL.iter().position(|known| *known == field).unwrap();
            if let Some(size) = self.measures[place] {
                piece
                    .measures
                    .set(field, size.of(field, piece.edition.size(self.kind, field)));
            }
        }
        self.measure_bays(&mut piece);
        for (i, change) in self.changes.iter().enumerate() {
            let change = change.change(i, &piece);
            piece.changes.push(change);
        }
        piece
    }

    /// Rows and bays are measured as times what they would have if nobody measured them.
    fn measure_bays(&self, piece: &mut Furniture) {
        let Some(draws) = &self.bays else { return };
        let Ok(shared) = piece.checked().map(|piece| piece.shared_lengths()) else {
            return;
        };
        let pick = |size: Option<Size>, field: &LengthField, length| match size {
            _ if self.all_measured => Some(length),
            size => size.map(|size| size.of(field, length)),
        };
        for (id, length) in shared {
            let (FieldId::BayWidth(place) | FieldId::RowHeight(place, _)) = id else {
                continue;
            };
            let upper = usize::from(place.upper);
            let bays = if place.upper {
                &mut piece.upper
            } else {
                &mut piece.bays
            };
            let (bay, draw) = (&mut bays[place.bay - 1], &draws[upper][place.bay - 1]);
            match id {
                FieldId::RowHeight(_, row) => {
                    bay.rows[row - 1].height = pick(draw.rows[row - 1].height, &fields::ROW_HEIGHT, length);
                }
                _ => bay.width = pick(draw.width, &fields::BAY_WIDTH, length),
            }
        }
    }
}

impl ChangeDraw {
    fn change(&self, place: usize, piece: &Furniture) -> Alteration {
        let parts = piece.assembly().map(|built| built.parts).unwrap_or_default();
        let part = if parts.is_empty() {
            "nothing".into()
        } else {
            self.part.get(&parts).id.to_string()
        };
        let usual = Length::millimetres(200.0);
        let [a, b, c] = self.sizes.map(|size| size.of(&fields::PART_WIDTH, usual));
        let towards = self.towards;
        match self.what {
            0 => Alteration::Remove { part },
            1 => Alteration::Resize {
                part,
                along: self.along,
                to: a,
            },
            2 => Alteration::Move { part, towards, by: a },
            3 => Alteration::Repeat {
                part,
                times: self.number,
                towards,
                every: a,
            },
            4 => Alteration::Hole {
                surface: format!("{part}/front"),
                width: a,
                height: b,
            },
            _ => {
                let shape = AddedShape::ALL[self.number % AddedShape::ALL.len()];
                // Now and then the number of another part, as a damaged file may have it.
                let mut added = Added::usual(1 + place * (self.number % 4), shape);
                for ((field, usual), size) in shape.fields().iter().zip(self.sizes) {
                    added
                        .measures
                        .set(field, size.of(field, Length::millimetres(*usual)));
                }
                if shape == AddedShape::Moulding && self.number > 4 {
                    added.members = vec![(Shape::ALL[self.number % 9], a, b); self.number];
                }
                if shape == AddedShape::Turned && self.number > 4 {
                    added.turning = vec![(Length::ZERO, a), (b, a), (b + c, c)];
                }
                added.flutes = self.number as u32;
                added.place = self.placed.then_some([a, b, c]);
                Alteration::Add(added)
            }
        }
    }
}

fn row(
    columns: std::ops::RangeInclusive<usize>,
    size: BoxedStrategy<Size>,
) -> impl Strategy<Value = RowDraw> {
    let height = prop::option::weighted(0.2, size);
    let fill = select(Fill::ALL.to_vec());
    (fill, columns, 0usize..=2, height).prop_map(|(fill, columns, shelves, height)| RowDraw {
        fill,
        columns,
        shelves,
        height,
    })
}

fn bays(
    bays: std::ops::RangeInclusive<usize>,
    rows: std::ops::RangeInclusive<usize>,
    columns: std::ops::RangeInclusive<usize>,
    size: BoxedStrategy<Size>,
) -> impl Strategy<Value = Vec<BayDraw>> {
    let rows = prop::collection::vec(row(columns, size.clone()), rows);
    let bay = (prop::option::weighted(0.2, size), rows).prop_map(|(width, rows)| BayDraw { width, rows });
    prop::collection::vec(bay, bays)
}

fn change(size: BoxedStrategy<Size>) -> impl Strategy<Value = ChangeDraw> {
    let towards = select(vec![
        Towards::Left,
        Towards::Right,
        Towards::Front,
        Towards::Back,
        Towards::Up,
        Towards::Down,
    ]);
    let along = select(vec![Along::Width, Along::Depth, Along::Height]);
    let sizes = prop::array::uniform3(size);
    let draw = (
        0usize..8,
        any::<Index>(),
        towards,
        along,
        sizes,
        0usize..13,
        any::<bool>(),
    );
    draw.prop_map(|(what, part, towards, along, sizes, number, placed)| ChangeDraw {
        what,
        part,
        towards,
        along,
        sizes,
        number,
        placed,
    })
}

/// A strategy for pieces, given how their measurements, bays and changes come about.
fn drawn(
    size: BoxedStrategy<Size>,
    measured: f64,
    divided: BoxedStrategy<(Kind, Option<[Vec<BayDraw>; 2]>)>,
    changes: BoxedStrategy<Vec<ChangeDraw>>,
) -> impl Strategy<Value = Furniture> {
    let chosen = |share: f64, count: usize| {
        prop::collection::vec(prop::option::weighted(share, any::<Index>()), count)
    };
    let measures = prop::collection::vec(prop::option::weighted(measured, size), fields::ALL.len());
    let draw = (
        divided,
        chosen(0.6, styles::ALL.len()),
        chosen(0.3, counts::ALL.len()),
        measures,
        prop::bool::weighted(0.1),
        changes,
    );
    draw.prop_map(
        |((kind, bays), styles, counts, measures, all_measured, changes)| {
            let draw = Draw {
                kind,
                styles,
                counts,
                measures,
                bays,
                all_measured,
                changes,
            };
            draw.furniture()
        },
    )
}

/// A kind, and bays that it can have; `None` leaves the usual ones.
fn kinds() -> BoxedStrategy<(Kind, Option<[Vec<BayDraw>; 2]>)> {
    let of = |kind: Kind| {
        let usual = Furniture::usual(kind);
        let range = |usual: &[Bay]| match (kind, usual.len()) {
            (_, 0) => 0..=0,
            (Kind::PedestalDesk, _) => 2..=2,
            _ => 1..=3,
        };
        let few = |usual: &[Bay]| bays(range(usual), 1..=3, 1..=3, sound_size());
        let divided = (few(&usual.bays), few(&usual.upper)).prop_map(|(bays, upper)| [bays, upper]);
        (Just(kind), prop::option::weighted(0.8, divided))
    };
    select(Kind::ALL.to_vec()).prop_flat_map(of).boxed()
}

/// Measurements as a maker could take them, without changes.
pub(crate) fn furniture() -> impl Strategy<Value = Furniture> {
    drawn(sound_size(), 0.3, kinds(), Just(vec![]).boxed())
}

/// The same, with changes that may not fit the piece.
pub(crate) fn changed_furniture() -> impl Strategy<Value = Furniture> {
    let changes = prop::collection::vec(change(sound_size()), 1..5).boxed();
    drawn(sound_size(), 0.2, kinds(), changes)
}

/// Pieces of which a few things are anything at all.
pub(crate) fn any_furniture() -> impl Strategy<Value = Taken> {
    let odd = || bays(0..=8, 0..=14, 0..=8, any_size());
    let all = select(Kind::ALL.to_vec());
    let odd_bays = (all, odd(), odd()).prop_map(|(kind, bays, upper)| (kind, Some([bays, upper])));
    let divided = prop_oneof![4 => kinds(), 1 => odd_bays].boxed();
    let changes = prop_oneof![
        2 => Just(vec![]),
        1 => prop::collection::vec(change(any_size()), 1..4),
    ];
    drawn(any_size(), 0.15, divided, changes.boxed()).prop_map(Taken)
}

/// A piece that may be no piece at all.
#[derive(Clone)]
pub(crate) struct Taken(pub Furniture);

impl fmt::Debug for Taken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&told(&self.0))
    }
}

/// A piece that passed the check, with its parts.
#[derive(Clone)]
pub(crate) struct Built {
    pub furniture: Furniture,
    pub assembly: Assembly,
}

/// Only what is not as usual, so that a failure can be read.
impl fmt::Debug for Built {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&told(&self.furniture))
    }
}

/// What of a piece is not as usual.
pub(crate) fn told(piece: &Furniture) -> String {
    let usual = Furniture::usual(piece.kind);
    let mut words = vec![piece.kind.key().to_owned()];
    for field in styles::ALL {
        let option = field.of(&piece.styles);
        if option != field.of(&usual.styles) {
            words.push(format!("{}={}", field.key, option.key));
        }
    }
    words.extend(
        piece
            .counts
            .iter()
            .map(|(field, count)| format!("{}={count}", field.key)),
    );
    let measures = piece.measures.iter();
    words.extend(measures.map(|(field, length)| format!("{}={}mm", field.key, length.as_millimetres())));
    for (name, bays, usual) in [
        ("bays", &piece.bays, &usual.bays),
        ("upper", &piece.upper, &usual.upper),
    ] {
        if bays != usual {
            words.push(format!("{name}={bays:?}"));
        }
    }
    if !piece.changes.is_empty() {
        words.push(format!("{:?}", piece.changes));
    }
    words.join(" ")
}

fn built(furniture: Furniture) -> Option<Built> {
    let assembly = furniture.assembly().ok()?;
    Some(Built { furniture, assembly })
}

/// Pieces without changes that pass the check of their measurements.
pub(crate) fn piece() -> impl Strategy<Value = Built> {
    furniture().prop_filter_map("measurements that fit", built)
}

/// Pieces with changes that pass the check.
pub(crate) fn changed_piece() -> impl Strategy<Value = Built> {
    changed_furniture().prop_filter_map("changes that fit", built)
}
