//! The way from a usual piece to one that is made like another: which buttons a hand presses on the sheet of measurements.
//! The crate makes the same answers at the same time, since one answer can bring other questions.

use anyhow::{Context, Result};
use geometry::{BayPlace, FieldId, Fill};
use workshop::{Case, Edit, Piece, PieceEdit, PieceId, Workshop};

/// What the tape says, by the names of the fields.
pub fn readings(piece: &Piece) -> Vec<(String, String)> {
    let mut readings = Vec::new();
    let mut read = |field: String, of: FieldId| {
        if let Some(reading) = piece.reading(of) {
            let text = match reading.unit() {
                units::LengthUnit::Inch => reading.typed().to_owned(),
                _ => reading.with_unit(),
            };
            readings.push((field, text));
        }
    };
    for field in piece.furniture().fields() {
        read(format!("field-{}", field.key), field.id());
    }
    for place in places(piece) {
        let upper = if place.upper { "upper-" } else { "" };
        read(
            format!("field-{upper}bay-{}", place.bay),
            FieldId::BayWidth(place),
        );
        let rows = piece.bay(place).map_or(0, |bay| bay.rows.len());
        for row in 1..=rows {
            read(
                format!("field-{}row-{row}", prefix(place)),
                FieldId::RowHeight(place, row),
            );
        }
    }
    readings
}

fn places(piece: &Piece) -> Vec<BayPlace> {
    let of_case = |upper: bool| (1..=piece.bays_of(upper).len()).map(move |bay| BayPlace { upper, bay });
    [true, false].into_iter().flat_map(of_case).collect()
}

/// How the names of elements in a bay begin.
fn prefix(BayPlace { upper, bay }: BayPlace) -> String {
    let upper = if upper { "upper-" } else { "" };
    match bay {
        1 => upper.into(),
        bay => format!("{upper}b{bay}-"),
    }
}

/// What a hand does on the sheet.
pub enum Hand {
    /// It presses what the selector names.
    Press(String),
    /// It chooses from a list: the selector and the value of the option.
    Choose(String, &'static str),
}

/// A piece that is made like another one, hand by hand.
struct Way {
    workshop: Workshop,
    id: PieceId,
    hands: Vec<Hand>,
}

impl Way {
    fn piece(&self) -> Result<&Piece> {
        Ok(self.workshop.piece(&self.id).context("the piece is gone")?)
    }

    fn take(&mut self, hand: Hand, edit: PieceEdit) -> Result<()> {
        self.workshop = self.workshop.apply(Edit::Piece(self.id.clone(), edit))?;
        self.hands.push(hand);
        Ok(())
    }

    /// Presses the buttons of a small count until it is as wanted.
    fn count(
        &mut self,
        id: &str,
        present: impl Fn(&Piece) -> usize,
        wanted: usize,
        edit: impl Fn(usize) -> PieceEdit,
    ) -> Result<()> {
        loop {
            let now = present(self.piece()?);
            let (word, next) = match now.cmp(&wanted) {
                std::cmp::Ordering::Less => ("more", now + 1),
                std::cmp::Ordering::Equal => return Ok(()),
                std::cmp::Ordering::Greater => ("fewer", now - 1),
            };
            self.take(Hand::Press(format!("#{id}-{word}")), edit(next))?;
        }
    }
}

/// What a maker answers, from a usual piece of the kind to one that is made like another; its measurements are not part of
/// it.
///
/// # Errors
/// If the crate refuses an answer.
pub fn way_to(wanted: &Piece) -> Result<Vec<Hand>> {
    let id = PieceId("a".into());
    let kind = wanted.kind;
    let mut way = Way {
        workshop: Workshop::default().apply(Edit::Add { id: id.clone(), kind })?,
        id,
        hands: Vec::new(),
    };
    styles(&mut way, wanted)?;
    let counts = wanted.furniture();
    for field in counts.count_fields() {
        let present = |piece: &Piece| piece.furniture().count(field) as usize;
        let edit = |count| PieceEdit::Counted(field.key, Some(count as u32));
        let id = format!("count-{}", field.key);
        way.count(&id, present, counts.count(field) as usize, edit)?;
    }
    for upper in [true, false] {
        let id = if upper { "upper-bays" } else { "bays" };
        let present = |piece: &Piece| piece.bays_of(upper).len();
        way.count(id, present, present(wanted), |bays| PieceEdit::Bays {
            case: Case::from_upper(upper),
            count: bays,
        })?;
    }
    for place in places(wanted) {
        rows(&mut way, wanted, place)?;
    }
    Ok(way.hands)
}

/// One answer can bring other questions, so they are looked at anew after each.
fn styles(way: &mut Way, wanted: &Piece) -> Result<()> {
    loop {
        let piece = way.piece()?;
        let differs =
            |field: &&geometry::StyleField| field.of(&piece.styles).key != field.of(&wanted.styles).key;
        let Some(field) = piece.furniture().style_fields().into_iter().find(differs) else {
            return Ok(());
        };
        let option = field.of(&wanted.styles).key;
        // More answers than stand side by side are in a list.
        let hand = if field.options.len() > 4 {
            Hand::Choose(format!("#{}", field.key), option)
        } else {
            Hand::Press(format!("#{}-{option}", field.key))
        };
        way.take(
            hand,
            PieceEdit::Style {
                choice: field.key,
                answer: option,
            },
        )?;
    }
}

fn rows(way: &mut Way, wanted: &Piece, place: BayPlace) -> Result<()> {
    let bay = wanted.bay(place).context("the bay is missing")?;
    let prefix = prefix(place);
    let of_bay = |piece: &Piece| piece.bay(place).map_or(0, |bay| bay.rows.len());
    way.count(&format!("{prefix}rows"), of_bay, bay.rows.len(), |rows| {
        PieceEdit::Rows {
            bay: place,
            count: rows,
        }
    })?;
    for (row, number) in bay.rows.iter().zip(1..) {
        let now = |piece: &Piece| piece.bay(place).and_then(|bay| bay.rows.get(number - 1)).cloned();
        // A row is changed where it is opened.
        let pick = format!("#pick-{prefix}row-{number}[aria-expanded=false]");
        way.hands.push(Hand::Press(pick));
        let present = now(way.piece()?).context("the row is missing")?;
        if present.fill != row.fill {
            let key = match row.fill {
                Fill::Drawers => "drawers",
                Fill::Doors => "doors",
                Fill::Open => "open",
            };
            let hand = Hand::Press(format!("#{prefix}fill-{number}-{key}"));
            way.take(
                hand,
                PieceEdit::Fill {
                    bay: place,
                    row: number,
                    fill: row.fill,
                },
            )?;
        }
        let columns = |piece: &Piece| now(piece).map_or(0, |row| row.columns);
        way.count(&format!("{prefix}columns-{number}"), columns, row.columns, |n| {
            PieceEdit::Columns {
                bay: place,
                row: number,
                columns: n,
            }
        })?;
        if row.fill != Fill::Drawers {
            let shelves = |piece: &Piece| now(piece).map_or(0, |row| row.shelves);
            way.count(&format!("{prefix}shelves-{number}"), shelves, row.shelves, |n| {
                PieceEdit::Shelves {
                    bay: place,
                    row: number,
                    shelves: n,
                }
            })?;
        }
    }
    Ok(())
}
