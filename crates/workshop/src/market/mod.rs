//! Prices noted down nearby, and what they tell: the usual price, how fast pieces go, whether prices move.

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

/// Notes under which no statistic is given. Common practice, no source.
pub const FEWEST: usize = 5;

/// One price noted down.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// What kind of piece it is.
    pub kind: Kind,
    /// How it looks, in the maker's words.
    pub style: String,
    /// Whether the price was asked or paid.
    pub side: Side,
    /// The price in hundredths of the currency unit.
    pub price: u64,
    /// Days from the day of the note until it was gone; nothing while it still stands.
    pub gone: Option<u32>,
    /// The day it was first seen.
    pub day: Day,
}

/// A statistic, or too few notes for one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Told<T> {
    /// Fewer than [`FEWEST`] notes.
    TooFew {
        /// How many there are.
        count: usize,
    },
    /// Enough notes.
    Known(T),
}

/// What the prices of one side tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// Lowest, quartiles and highest, in hundredths.
    pub quartiles: Quartiles,
    /// Where the median of all such prices lies.
    pub interval: MedianInterval,
    /// Change of price in hundredths per day; nothing if all notes are of one day.
    pub slope: Option<Slope>,
    /// Whether prices move with time at all; nothing if all days or all prices are the same.
    pub tau: Option<Tau>,
}

/// Which way prices move with time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trend {
    /// Later prices are higher.
    Rising,
    /// Later prices are lower.
    Falling,
}

/// Below this p-value a trend is told. The level of 5 % is common practice, no source.
const SIGNIFICANT: f64 = 0.05;

impl Prices {
    /// Which way prices move, where chance alone would hardly make it look so.
    pub fn trend(&self) -> Option<Trend> {
        let tau = self.tau.filter(|tau| tau.p < SIGNIFICANT)?;
        Some(if tau.tau > 0.0 {
            Trend::Rising
        } else {
            Trend::Falling
        })
    }
}

/// A row of what sells here: one kind, or all.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The kind; nothing for all notes together.
    pub kind: Option<Kind>,
    /// What the asked prices tell.
    pub asked: Told<Prices>,
    /// What the paid prices tell.
    pub sold: Told<Prices>,
    /// Median paid over median asked; nothing unless both are known and the asked one is not nought.
    pub reached: Option<f64>,
    /// Median days until gone. Nothing inside while more than half still stand.
    pub pace: Told<Option<u32>>,
    /// Every note as a point: day, price in hundredths, side; in the order of the days.
    pub points: Vec<(Day, u64, Side)>,
}

impl Row {
    /// Where each note lies in a picture: by its day from 0 for the first to 1 for the last, and by its price from 0 to 1 for
    /// the highest. Notes of one day stand in the middle.
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

/// One row for each kind in the order first noted, after one for all. `today` says how long the rest have stood.
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

/// What the notes of one kind tell, or all notes if no kind is named.
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
    let mut standing: Vec<Standing> = of_kind.iter().map(|note| note.standing(today)).collect();
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
    /// How long it stood, or has stood by `today`. A note of a later day has stood no day.
    fn standing(&self, today: Day) -> Standing {
        match self.gone {
            Some(days) => Standing { days, is_gone: true },
            None => {
                let days = i64::from(today.days()) - i64::from(self.day.days());
                Standing {
                    days: u32::try_from(days).unwrap_or(0),
                    is_gone: false,
                }
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
