//! The shopping list as plain text, for sharing.

use coatings::can::ChoiceError;
use units::System;
use workshop::art::Art;
use workshop::goods::Good;
use workshop::preparing::Much;
use workshop::{Buy, Shopping, Workshop};

use super::{Money, cans, colour, much, percent, tint};

/// Returns one line for each material to buy, then one for each other item.
pub fn list(bought: &[Shopping], goods: &[Good], workshop: &Workshop, money: Money<'_>) -> String {
    let lots = bought
        .iter()
        .filter(|lot| lot.buy.as_ref().is_ok_and(|buy| !buy.cans.is_empty()));
    let lots = lots.map(|lot| {
        let is_told = !tint(&workshop.materials, &lot.material.name, lot.colour).is_empty();
        let tint = lot.colour.filter(|_| is_told);
        let tint = tint.map_or_else(String::new, |of| format!(", {}", colour(of)));
        format!("{}{tint}: {}", lot.material.name, cans(&lot.buy, money))
    });
    let goods = goods.iter().filter_map(|of| {
        let price = price_of_good(of, workshop, money);
        let (most, maybe) = good(of, workshop.units)?;
        let maybe = if maybe.is_empty() {
            maybe
        } else {
            format!(", {}", coatings::in_sentence(maybe.trim_end_matches('.')))
        };
        Some(format!("{}: {most}{maybe}{price}", of.name))
    });
    lots.chain(goods).collect::<Vec<_>>().join("\n")
}

/// Returns the cans to buy of a material, and what they cost together if that is known.
pub fn cans_and_price(buy: &Result<Buy, ChoiceError>, money: Money<'_>) -> (String, String) {
    let Ok(buy) = buy else {
        return (String::new(), String::new());
    };
    (super::cans_by_size(buy), buy.price.map(money).unwrap_or_default())
}

/// Says how much of a material the pieces take: `About 11 fl oz, for Dresser and Nightstand`. With a single
/// piece on the list, its name says nothing.
pub fn why_so_many(lot: &Shopping, is_for_several: bool, system: System) -> String {
    if let Err(error) = &lot.buy {
        return error.to_string();
    }
    format!(
        "About {}{}",
        super::volume(lot.likely, system),
        for_pieces(&lot.pieces, is_for_several)
    )
}

/// Names the pieces that something is for, if the list has several.
pub fn for_pieces(pieces: &[String], is_for_several: bool) -> String {
    let names: Vec<&str> = pieces.iter().map(String::as_str).collect();
    match is_for_several {
        true => format!(", for {}", super::and(&names)),
        false => String::new(),
    }
}

/// Formats the cost of an item other than a can: `, about 4.50`. Empty without a price.
pub fn price_of_good(good: &Good, workshop: &Workshop, money: Money<'_>) -> String {
    let price = good.price(workshop);
    price.map_or_else(String::new, |(_, most)| format!(", about {}", money(most)))
}

/// States the total cost of cans with a price, including abrasive sheets, and how many
/// materials have no price. Empty if nothing has a price.
pub fn price_of_list(bought: &[Shopping], goods: &[Good], workshop: &Workshop, money: Money<'_>) -> String {
    let lots = bought.iter().filter_map(|lot| lot.buy.as_ref().ok());
    let lots: Vec<_> = lots.filter(|buy| !buy.cans.is_empty()).collect();
    let prices: Vec<u64> = lots.iter().filter_map(|buy| buy.price).collect();
    let of_goods: Vec<u64> = goods
        .iter()
        .filter_map(|good| Some(good.price(workshop)?.1))
        .collect();
    if prices.is_empty() && of_goods.is_empty() {
        return String::new();
    }
    let without = match lots.len() - prices.len() {
        0 => String::new(),
        1 => ", 1 without a price".into(),
        many => format!(", {many} without a price"),
    };
    format!("About {}{without}", money(prices.iter().chain(&of_goods).sum()))
}

/// Says that one can less may be enough.
pub fn one_less(lot: &Shopping) -> String {
    lot.one_less.map_or_else(String::new, |(can, likely)| {
        format!(
            " One {} less: {} chance it\u{2019}s enough.",
            can.label,
            percent(likely)
        )
    })
}

/// Lists what is left out because all its coats are checked off. Empty if there is nothing.
pub fn coated(done: &[(String, String)]) -> String {
    let each: Vec<String> = done
        .iter()
        .map(|(material, piece)| format!("{material} for {piece}"))
        .collect();
    match each.as_slice() {
        [] => String::new(),
        each => format!("Not on the list: every coat is checked off. {}.", each.join("; ")),
    }
}

/// Says how much of an item to buy to be sure, and how little may be enough: `66 leaves` and `55 may be enough.`.
/// Returns `None` if enough is on hand.
pub fn good(good: &Good, system: System) -> Option<(String, String)> {
    let say = |of: Much| match (of, good.unit) {
        (Much::Count(low, high), Some(unit)) => counted((low, high), unit),
        _ => much(of, system),
    };
    let left = good.to_buy()?;
    let (least, most) = match left {
        Much::Volume(low, high) => (Much::Volume(low, low), Much::Volume(high, high)),
        Much::Mass(low, high) => (Much::Mass(low, low), Much::Mass(high, high)),
        Much::Count(low, high) => (Much::Count(low, low), Much::Count(high, high)),
        Much::Sheets(grit, likely, most) => {
            (Much::Sheets(grit, likely, likely), Much::Sheets(grit, most, most))
        }
        _ => return Some((say(left), String::new())),
    };
    let (least, most) = (say(least), say(most));
    // Print a shared unit once.
    let split = |text: &str| -> (String, String) {
        let (figure, unit) = text.split_once([' ', '\u{a0}']).unwrap_or((text, ""));
        (figure.to_owned(), unit.trim_end_matches('s').to_owned())
    };
    let ((figure, unit), (_, of_most)) = (split(&least), split(&most));
    Some(match least == most {
        true => (most, String::new()),
        false if unit == of_most => (most, format!("{figure} may be enough.")),
        false => (most, format!("{least} may be enough.")),
    })
}

/// Says how many of an item are on hand: ` You have 25.`
pub fn good_here(good: &Good) -> String {
    match good.here {
        0 => String::new(),
        here => format!(" You have {here}."),
    }
}

/// Says how many sheets an item of art takes: `55 to 66 leaves`. Returns `None` if it takes none or the
/// number is unknown.
pub fn sheets(art: &Art) -> Option<String> {
    Some(counted(art.takes.as_ref().ok()?.sheets?, art.kind.sheet()))
}

fn counted((low, high): (u32, u32), (one, many): (&str, &str)) -> String {
    match (low, high) {
        (1, 1) => format!("1 {one}"),
        (low, high) if low == high => format!("{high} {many}"),
        (low, high) => format!("{low} to {high} {many}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::rc::Rc;
    use workshop::{Analysis, BookEdit, Edit, MaterialEdit, PieceEdit, Price, invented_workshop};

    fn analysis(workshop: &Workshop) -> Analysis {
        Analysis::of(Rc::new(workshop.clone()))
    }

    #[test]
    fn the_list_names_what_is_bought_and_the_rest_of_it() {
        let workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        let values = [("kind", "leaf"), ("width", "700 mm"), ("height", "1400 mm")];
        let values = values
            .iter()
            .map(|(key, text)| (*key, (*text).to_owned()))
            .collect();
        let add = PieceEdit::Book(BookEdit::Add("art", "a".into(), values));
        let workshop = workshop.apply(Edit::Piece(id, add)).unwrap();
        let all = analysis(&workshop);
        let (bought, besides) = (all.shopping(&[]), all.goods(&[]));
        let metric = Workshop {
            units: System::Metric,
            ..workshop
        };
        let text = list(&bought, &besides, &metric, &|hundredths| hundredths.to_string());
        let lines: Vec<&str> = text.lines().collect();
        let to_buy = bought
            .iter()
            .filter(|lot| !lot.buy.as_ref().unwrap().cans.is_empty());
        assert_eq!(lines.len(), to_buy.count() + besides.len());
        assert!(lines.contains(&"Leaf: 66 leaves, 55 may be enough"), "{text}");
        assert!(lines.contains(&"Lead test kit: 2"), "{text}");
    }

    /// The nightstands need more enamel than is on hand. A can of it costs 7.50.
    #[test]
    fn what_has_a_price_is_added() {
        let mut workshop = invented_workshop();
        let id = workshop.pieces[1].id.clone();
        let hundredths = |hundredths: u64| hundredths.to_string();
        let say = |workshop: &Workshop| {
            let all = analysis(workshop);
            price_of_list(&all.shopping(&[]), &all.goods(&[]), workshop, &hundredths)
        };
        assert_eq!(say(&workshop), "");
        let price = Some(Price::new("7.50").unwrap());
        for edit in [
            Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
            Edit::Piece(
                id,
                PieceEdit::Exchange {
                    from: "trim-enamel".into(),
                    to: "own-1".into(),
                },
            ),
            Edit::Material("own-1".into(), MaterialEdit::Price("us-8-fl-oz", price)),
        ] {
            workshop = workshop.apply(edit).unwrap();
        }
        let lots = analysis(&workshop).shopping(&[]);
        let pots = lots.iter().filter_map(|lot| lot.buy.as_ref().ok());
        let pots: u64 = pots
            .flat_map(|buy| &buy.cans)
            .map(|(_, count)| u64::from(*count))
            .sum();
        assert!(pots > 0);
        assert_eq!(say(&workshop), format!("About {}", pots * 750));
        // With a sheet of abrasive at 1.50, each line shows its likely cost, and the total includes them all.
        let write = BookEdit::Write("habits", "only".into(), "sheet-price".into(), "1.50".into());
        let priced = workshop.apply(Edit::Book(write)).unwrap();
        let besides = analysis(&priced).goods(&[]);
        let sheets = besides.iter().filter_map(|good| Some(good.price(&priced)?.1));
        assert_eq!(
            say(&priced),
            format!("About {}", pots * 750 + sheets.sum::<u64>())
        );
        let text = list(&lots, &besides, &priced, &hundredths);
        let line = text
            .lines()
            .find(|line| line.starts_with("180-grit sandpaper"))
            .unwrap();
        assert!(line.contains(" sheets, ") && line.contains(", about "), "{line}");
    }
}
