//! The amounts of each material for a piece, as a table for a spreadsheet.

use coatings::can::show_price;
use coatings::{Contents, Verdict};
use units::{System, Volume, VolumeUnit};

use super::csv::{Cell, Table, number, text};
use crate::document::{Colour, Workshop};
use crate::stock::Stock;
use crate::takeoff::{MaterialLine, Takeoff, cans_to_buy};

/// Returns the unit of volumes in the table, its symbol and its number of decimals.
fn unit(system: System) -> (VolumeUnit, &'static str, usize) {
    match system {
        System::UsCustomary => (VolumeUnit::UsFluidOunce, "US fl oz", 2),
        System::Metric => (VolumeUnit::Millilitre, "mL", 1),
    }
}

/// Returns the amounts of each material for the whole set as CSV (RFC 4180). The columns are the coats, the
/// tools, the low, likely and high amount, the cans on hand and their contents, the verdict and its
/// probability, the cans to buy and their cost. Volumes are in US fluid ounces or milliliters, as the heading
/// says. Prices are in the currency of the workshop, if it has one.
///
/// # Example
/// ```
/// use workshop::{out::amounts_csv, takeoff};
/// let workshop = workshop::invented_workshop();
/// let taken = takeoff(&workshop, &workshop.pieces[0], &[]).unwrap();
/// assert!(amounts_csv(&workshop, &taken).starts_with("Material,Colour,Coats,Tools,Low (US fl oz),"));
/// ```
pub fn amounts_csv(workshop: &Workshop, takeoff: &Takeoff) -> String {
    let (_, sign, _) = unit(workshop.units);
    let [low, likely, high] = ["Low", "Likely", "High"].map(|what| format!("{what} ({sign})"));
    let on_hand = format!("On hand ({sign})");
    let buy = format!("Cans to buy for {} %", workshop.settings.confidence.percent());
    let price = match &workshop.settings.currency {
        Some(currency) => format!("Price ({})", currency.code()),
        None => "Price".into(),
    };
    let mut table = Table::new(&[
        "Material",
        "Colour",
        "Coats",
        "Tools",
        &low,
        &likely,
        &high,
        "Cans on hand",
        &on_hand,
        "Verdict",
        "Probability (%)",
        &buy,
        &price,
    ]);
    for line in &takeoff.materials {
        table.line(cells(workshop, line));
    }
    table.into_text()
}

fn cells(workshop: &Workshop, line: &MaterialLine) -> Vec<Cell> {
    let (unit, _, decimals) = unit(workshop.units);
    let volume = |volume: Volume| number(unit.count(volume), decimals);
    // Two decimals are enough to tell single trials apart.
    let percent = |probability: f64| number(probability * 100.0, 2);
    let nothing = || text("");
    let need = &line.need;
    let hand = line.on_hand.as_ref();
    let (cans, price) = match cans_to_buy(workshop, line) {
        Ok(buy) if buy.cans.is_empty() => ("none".into(), String::new()),
        Ok(buy) => {
            let cans: Vec<String> = buy
                .cans
                .iter()
                .map(|(can, count)| format!("{count} x {}", can.label))
                .collect();
            (cans.join("; "), buy.price.map(show_price).unwrap_or_default())
        }
        Err(error) => (error.to_string(), String::new()),
    };
    vec![
        text(&need.material.name),
        text(
            &need
                .colour
                .map_or_else(String::new, |colour| Colour(colour).write()),
        ),
        number(f64::from(line.coats), 0),
        text(&line.tools.join("; ")),
        volume(need.low()),
        volume(need.likely()),
        volume(need.high()),
        text(&hand.map_or_else(|| "none".into(), |hand| on_hand(&hand.cans))),
        volume(hand.map_or(Volume::ZERO, |hand| {
            hand.contents().iter().map(Contents::likely).sum()
        })),
        text(hand.map_or("", |hand| match hand.enough.verdict {
            Verdict::Enough => "enough",
            Verdict::Tight => "tight",
            Verdict::Short => "not enough",
        })),
        hand.map_or_else(nothing, |hand| percent(hand.enough.probability)),
        text(&cans),
        text(&price),
    ]
}

/// Formats the cans on hand, like `quart, full; half-pint, about half`.
fn on_hand(cans: &[Stock]) -> String {
    let can = |stock: &Stock| {
        let size = stock.can.map_or("can", |can| can.label);
        format!("{size}, {}", stock.level_label())
    };
    cans.iter().map(can).collect::<Vec<_>>().join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::out::csv::tests::read;
    use crate::{
        Confidence, Currency, Edit, HaveEdit, MaterialEdit, PieceEdit, PieceId, Price, SchemeEdit,
        SettingEdit,
    };
    use geometry::Kind;
    use std::rc::Rc;

    #[test]
    fn amounts_come_back_with_their_units_and_prices() {
        let id = PieceId("a".into());
        let own: Rc<str> = "own-1".into();
        for system in [System::UsCustomary, System::Metric] {
            let edits = [
                Edit::Units(system),
                Edit::Add {
                    id: id.clone(),
                    kind: Kind::Dresser,
                },
                Edit::AddMaterial(own.clone(), "trim-enamel".into()),
                Edit::Material(own.clone(), MaterialEdit::Name("=2, \"green\"".into())),
                Edit::Material(
                    own.clone(),
                    MaterialEdit::Price("us-quart", Price::new("24.50").ok()),
                ),
                Edit::Piece(
                    id.clone(),
                    PieceEdit::Finish(None, SchemeEdit::Material(2, own.clone())),
                ),
                Edit::Have {
                    piece: id.clone(),
                    material: "bonding-primer".into(),
                    colour: None,
                    edit: HaveEdit::Can(Some("us-pint")),
                },
                Edit::Settings(SettingEdit::Currency(Currency::new("USD").ok())),
                Edit::Settings(SettingEdit::Confidence(Confidence::Percent95)),
            ];
            let workshop = edits.into_iter().fold(Workshop::default(), |workshop, edit| {
                workshop.apply(edit).unwrap()
            });
            let taken = crate::samples::takeoff_in(&workshop, &workshop.pieces[0]).unwrap();
            let table = read(&amounts_csv(&workshop, &taken));
            let (heading, lines) = table.split_first().unwrap();
            let (unit, sign, decimals) = unit(system);
            assert_eq!(heading[5], format!("Likely ({sign})"));
            assert_eq!(
                (&*heading[11], &*heading[12]),
                ("Cans to buy for 95 %", "Price (USD)")
            );
            assert_eq!(lines.len(), 4);
            for (line, material) in lines.iter().zip(&taken.materials) {
                let need = &material.need;
                for (place, amount) in [(4, need.low()), (5, need.likely()), (6, need.high())] {
                    let off = line[place].parse::<f64>().unwrap() - unit.count(amount);
                    assert!(off.abs() <= 0.51 * libm::pow(0.1, decimals as f64), "{line:?}");
                }
                let hand = material.on_hand.as_ref();
                let probability = hand.map(|hand| hand.enough.probability * 100.0);
                let written = line[10].parse::<f64>().ok();
                assert_eq!(written.is_some(), probability.is_some());
                assert!((written.unwrap_or(0.0) - probability.unwrap_or(0.0)).abs() < 1e-7);
            }
            assert_eq!((&*lines[1][7], &*lines[2][7]), ("1 pint, full", "none"));
            let paint = &lines[2];
            assert_eq!(paint[0], "'=2, \"green\"");
            let count: u64 = paint[11].split(" x ").next().unwrap().parse().unwrap();
            assert_eq!(paint[12], show_price(count * 2450));
            assert_eq!(lines[0][12], "");
            assert_eq!(
                (&*paint[8], &*paint[10]),
                (format!("{:.decimals$}", 0.0).as_str(), "")
            );
        }
    }

    /// Two full gallons of each material are on the shelf, so there is nothing to buy and no price.
    #[test]
    fn what_is_on_the_shelf_is_not_bought_and_not_priced() {
        let mut workshop = Workshop::default()
            .apply(Edit::Add {
                id: PieceId("a".into()),
                kind: Kind::Nightstand,
            })
            .unwrap();
        let layers = workshop.pieces[0].scheme.layers.clone();
        let colour = Colour(workshop.pieces[0].scheme.colour.0).write();
        for (place, layer) in layers.iter().enumerate() {
            let values = [
                ("material", layer.material.to_string()),
                ("colour", colour.clone()),
                ("can", "us-gallon".into()),
                ("level", "nearly-full".into()),
            ];
            let add = crate::BookEdit::Add("shelf", format!("can-{place}").into(), values.to_vec());
            workshop = workshop.apply(Edit::Book(add)).unwrap();
            let price = Price::new("30").ok();
            let price = MaterialEdit::Price("us-quart", price);
            workshop = workshop
                .apply(Edit::Material(layer.material.clone(), price))
                .unwrap();
        }
        let taken = crate::samples::takeoff_in(&workshop, &workshop.pieces[0]).unwrap();
        let table = read(&amounts_csv(&workshop, &taken));
        assert_eq!(table.len(), layers.len() + 1);
        for line in &table[1..] {
            assert!(line[8].parse::<f64>().unwrap() > 100.0, "{line:?}");
            assert_eq!(
                (&*line[10], &*line[11], &*line[12]),
                ("100.00", "none", ""),
                "{line:?}"
            );
        }
    }
}
