//! Local price notes and their statistics: the usual price, how fast pieces sell, and whether prices are
//! changing.

mod notes;
mod numbers;
mod pace;
mod trend;

pub use crate::book::Side;
use geometry::Kind;
use units::Day;

pub use notes::notes;
pub use numbers::{MedianInterval, Quartiles, median_interval, quantile, quartiles};
pub use pace::{Standing, median_days};
pub use trend::{Slope, Tau, kendall, theil_sen};

/// The minimum number of notes for a statistic (common practice, no source).
pub const FEWEST: usize = 5;

/// A price note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// The kind of piece.
    pub kind: Kind,
    /// The style, in the maker's words.
    pub style: String,
    /// Whether the price was asked or paid.
    pub side: Side,
    /// The price, in hundredths of the currency unit.
    pub price: u64,
    /// Days from the date of the note until the piece was gone, if that is known.
    pub gone: Option<u32>,
    /// True if it is known to be still for sale. A note with neither says nothing about the pace.
    pub listed: bool,
    /// The day it was first seen.
    pub day: Day,
}

/// A statistic, or the number of notes if there are too few.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Told<T> {
    /// Fewer than [`FEWEST`] notes.
    TooFew {
        /// The number of notes.
        count: usize,
    },
    /// The statistic.
    Known(T),
}

/// The statistics of the asked or the paid prices.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// The lowest price, the quartiles and the highest price, in hundredths.
    pub quartiles: Quartiles,
    /// A confidence interval for the median price.
    pub interval: MedianInterval,
    /// The change in price, in hundredths per day. `None` if all notes are from the same day.
    pub slope: Option<Slope>,
    /// The test for a trend. `None` if all days or all prices are the same.
    pub tau: Option<Tau>,
}

/// The direction of a price trend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trend {
    /// Later prices are higher.
    Rising,
    /// Later prices are lower.
    Falling,
}

/// A trend is reported if its p-value is below this (5% is common practice, no source).
const SIGNIFICANT: f64 = 0.05;

impl Prices {
    /// Returns the direction of the trend, if it is significant.
    pub fn trend(&self) -> Option<Trend> {
        let tau = self.tau.filter(|tau| tau.p < SIGNIFICANT)?;
        Some(if tau.tau > 0.0 {
            Trend::Rising
        } else {
            Trend::Falling
        })
    }
}

/// The statistics of one kind of piece, or of all kinds.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The kind, or `None` for all notes together.
    pub kind: Option<Kind>,
    /// The statistics of the asked prices.
    pub asked: Told<Prices>,
    /// The statistics of the paid prices.
    pub sold: Told<Prices>,
    /// The median paid price divided by the median asked price. `None` unless both are known and the asked
    /// price is not zero.
    pub reached: Option<f64>,
    /// The median days until a piece is gone. The inner `None` means that more than half are still for sale.
    pub pace: Told<Option<u32>>,
    /// Every note as a point: day, price in hundredths, and side. Sorted by day.
    pub points: Vec<(Day, u64, Side)>,
}

impl Row {
    /// Returns the position of each note in a chart. The first is the day, from 0 to 1. The second is the
    /// price, from 0 to 1 for the highest. If all notes are from the same day, they are placed in the middle.
    pub fn placed(&self) -> Vec<(f64, f64, Side)> {
        let days = || self.points.iter().map(|(day, ..)| day.days());
        let (first, last) = (days().min().unwrap_or(0), days().max().unwrap_or(0));
        let span = f64::from(last) - f64::from(first);
        let highest = self
            .points
            .iter()
            .map(|(_, price, _)| *price)
            .max()
            .unwrap_or(0)
            .max(1) as f64;
        let place = |(day, price, side): &(Day, u64, Side)| {
            let since = f64::from(day.days()) - f64::from(first);
            let across = if span > 0.0 { since / span } else { 0.5 };
            (across, *price as f64 / highest, *side)
        };
        self.points.iter().map(place).collect()
    }
}

/// Returns one row for all notes, then one for each kind in the order first noted. `today` determines how
/// long listed pieces have been for sale.
pub fn what_sells(notes: &[Note], today: Day) -> Vec<Row> {
    let mut kinds: Vec<Kind> = Vec::new();
    for note in notes {
        if !kinds.contains(&note.kind) {
            kinds.push(note.kind);
        }
    }
    let mut rows = vec![row(notes, None, today)];
    rows.extend(kinds.into_iter().map(|kind| row(notes, Some(kind), today)));
    rows
}

/// Returns the statistics of one kind, or of all notes without a kind.
pub fn row(notes: &[Note], kind: Option<Kind>, today: Day) -> Row {
    let of_kind: Vec<&Note> = notes
        .iter()
        .filter(|note| kind.is_none_or(|kind| kind == note.kind))
        .collect();
    let mut points: Vec<(Day, u64, Side)> = of_kind
        .iter()
        .map(|note| (note.day, note.price, note.side))
        .collect();
    units::sort_few(&mut points, |one, other| one.0 < other.0);
    let asked = prices(&points, Side::Asked);
    let sold = prices(&points, Side::Sold);
    let reached = match (&asked, &sold) {
        (Told::Known(asked), Told::Known(sold)) if asked.quartiles.median > 0.0 => {
            Some(sold.quartiles.median / asked.quartiles.median)
        }
        _ => None,
    };
    let mut standing: Vec<Standing> = of_kind.iter().filter_map(|note| note.standing(today)).collect();
    let pace = if standing.len() < FEWEST {
        Told::TooFew {
            count: standing.len(),
        }
    } else {
        Told::Known(median_days(&mut standing))
    };
    Row {
        kind,
        asked,
        sold,
        reached,
        pace,
        points,
    }
}

impl Note {
    /// Returns how long the piece was for sale, or has been by `today`, if it is known whether it is gone. A note
    /// dated later has been for sale for zero days.
    fn standing(&self, today: Day) -> Option<Standing> {
        match self.gone {
            Some(days) => Some(Standing { days, is_gone: true }),
            None => {
                let days = i64::from(today.days()) - i64::from(self.day.days());
                self.listed.then(|| Standing {
                    days: u32::try_from(days).unwrap_or(0),
                    is_gone: false,
                })
            }
        }
    }
}

fn prices(points: &[(Day, u64, Side)], side: Side) -> Told<Prices> {
    let (mut days, mut values) = (Vec::new(), Vec::new());
    for point in points.iter().filter(|point| point.2 == side) {
        days.push(f64::from(point.0.days()));
        values.push(point.1 as f64);
    }
    let count = values.len();
    let (slope, tau) = (theil_sen(&days, &values), kendall(&days, &values));
    units::sort_numbers(&mut values);
    match (quartiles(&values), median_interval(&values)) {
        (Some(quartiles), Some(interval)) if count >= FEWEST => Told::Known(Prices {
            quartiles,
            interval,
            slope,
            tau,
        }),
        _ => Told::TooFew { count },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn note(price: u64, side: Side, day: i32) -> Note {
        Note {
            kind: Kind::Dresser,
            style: String::new(),
            side,
            price,
            gone: None,
            listed: true,
            day: Day::since_1970(day),
        }
    }

    #[test]
    fn under_five_notes_only_the_points_are_shown() {
        let notes: Vec<Note> = (0..4).map(|i| note(2000, Side::Sold, i)).collect();
        let row = row(&notes, None, Day::since_1970(9));
        assert_eq!(row.sold, Told::TooFew { count: 4 });
        assert_eq!(row.pace, Told::TooFew { count: 4 });
        assert_eq!(row.points.len(), 4);
    }

    #[test]
    fn a_note_that_is_neither_gone_nor_listed_says_nothing_of_the_pace() {
        let gone = |days| Note {
            gone: Some(days),
            ..note(2000, Side::Sold, 0)
        };
        let unknown = |note: Note| Note {
            listed: false,
            ..note
        };
        let mut notes: Vec<Note> = [3, 5, 7, 9].map(gone).into();
        notes.extend((0..9).map(|day| unknown(note(2000, Side::Asked, day))));
        let pace = |notes: &[Note]| row(notes, None, Day::since_1970(9)).pace;
        assert_eq!(pace(&notes), Told::TooFew { count: 4 });
        // The fifth is known: half of them are gone by the seventh day.
        notes.push(note(2000, Side::Asked, 0));
        assert_eq!(pace(&notes), Told::Known(Some(7)));
        // What is gone is gone, whatever else is ticked.
        notes.push(unknown(gone(1)));
        assert_eq!(pace(&notes), Told::Known(Some(5)));
    }

    #[test]
    fn notes_have_their_place_in_a_picture() {
        let placed = |notes: &[Note]| row(notes, None, Day::since_1970(9)).placed();
        let three = [
            note(100, Side::Asked, 0),
            note(400, Side::Sold, 2),
            note(200, Side::Asked, 8),
        ];
        assert_eq!(
            placed(&three),
            [
                (0.0, 0.25, Side::Asked),
                (0.25, 1.0, Side::Sold),
                (1.0, 0.5, Side::Asked)
            ]
        );
        assert_eq!(placed(&three[1..2]), [(0.5, 1.0, Side::Sold)]);
    }

    #[test]
    fn asked_and_sold_are_kept_apart() {
        let mut notes: Vec<Note> = (0..5).map(|i| note(10_000, Side::Asked, i)).collect();
        notes.extend((0..5).map(|i| note(8000, Side::Sold, i)));
        let row = row(&notes, Some(Kind::Dresser), Day::since_1970(9));
        assert_eq!(row.reached, Some(0.8));
        assert_eq!(row.pace, Told::Known(None));
    }
}
