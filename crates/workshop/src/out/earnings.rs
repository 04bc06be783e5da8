//! The earnings from every piece that has a price, as a table for a spreadsheet.

use super::csv::{Cell, Table, number, text};
use crate::document::Workshop;
use crate::money::{Earning, Earnings};

/// Returns the earnings as CSV (RFC 4180): a line for each piece with a price, then one for all sold pieces
/// together. Money is in the currency of the workshop, as the heading says if there is one. Times are in hours.
///
/// # Example
/// ```
/// use std::rc::Rc;
/// use workshop::{Analysis, out::earnings_csv};
/// let workshop = Rc::new(workshop::invented_workshop());
/// let earnings = Analysis::of(Rc::clone(&workshop)).earnings();
/// assert!(earnings_csv(&workshop, &earnings).starts_with("Piece,Number,Status,Price"));
/// ```
pub fn earnings_csv(workshop: &Workshop, earnings: &Earnings) -> String {
    let code = workshop
        .settings
        .currency
        .as_ref()
        .map(|currency| currency.code());
    let money = |what: &str| match code {
        Some(code) => format!("{what} ({code})"),
        None => what.to_owned(),
    };
    let [price, left, per_hour] = ["Price", "Left for your time", "Per hour"].map(money);
    let mut table = Table::new(&["Piece", "Number", "Status", &price, "Hours", &left, &per_hour]);
    for each in &earnings.each {
        table.line(cells(each));
    }
    if let Some((left, per_hour)) = earnings.together {
        let sold = || earnings.each.iter().filter(|each| each.is_sold);
        table.line(vec![
            text("All sold pieces"),
            number(sold().map(|each| f64::from(each.count)).sum(), 0),
            text("sold"),
            hundredths(sold().map(|each| each.outcome.price as f64).sum()),
            hours(sold().map(|each| each.minutes).sum()),
            hundredths(left as f64),
            per_hour.map_or_else(|| text(""), |sum| hundredths(sum as f64)),
        ]);
    }
    table.into_text()
}

fn cells(each: &Earning) -> Vec<Cell> {
    vec![
        text(&each.name),
        number(f64::from(each.count), 0),
        text(if each.is_sold { "sold" } else { "asking" }),
        hundredths(each.outcome.price as f64),
        hours(each.minutes),
        hundredths(each.outcome.left as f64),
        each.outcome
            .per_hour
            .map_or_else(|| text(""), |sum| hundredths(sum as f64)),
    ]
}

fn hundredths(sum: f64) -> Cell {
    number(sum / 100.0, 2)
}

fn hours(minutes: u32) -> Cell {
    number(f64::from(minutes) / 60.0, 2)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Analysis;
    use crate::out::csv::tests::read;
    use crate::samples::written_down;
    use std::rc::Rc;

    #[test]
    fn the_table_has_the_earnings_of_the_page_and_their_sum() {
        let facts = [
            ("sold", "140"),
            ("bought", "20"),
            ("materials", "25"),
            ("hours", "5"),
        ];
        let workshop = Rc::new(written_down(&facts, &[]));
        let earnings = Analysis::of(Rc::clone(&workshop)).earnings();
        let table = read(&earnings_csv(&workshop, &earnings));
        let name = workshop.pieces[0].name.as_str();
        assert_eq!(table[1], [name, "1", "sold", "140.00", "5.00", "95.00", "19.00"]);
        let last = table.last().unwrap();
        assert_eq!(
            last[..],
            ["All sold pieces", "1", "sold", "140.00", "5.00", "95.00", "19.00"]
        );
    }
}
