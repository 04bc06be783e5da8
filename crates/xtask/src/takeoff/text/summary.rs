//! The answer: area, amounts, and whether what is on hand is enough or what to buy.

use coatings::can::{ChoiceError, show_price};
use units::Volume;
use workshop::{Analysis, Buy, Colour, MaterialLine, Piece, Takeoff, Workshop, unmeasured};

use super::show::{area, percent, short, volume, wrapped};
use crate::table::{Align, Table};

/// The longest name of a material in a table, in characters.
const MATERIAL: usize = 40;
/// Less than this left over is nothing to keep.
const A_DROP: Volume = Volume::millilitres(1.0);

/// The area to coat, and how sure it is.
pub(super) fn area_to_coat(workshop: &Workshop, piece: &Piece, takeoff: &Takeoff) -> String {
    let shown = |of| area(of, workshop.units);
    let whole = shown(takeoff.painted.value);
    let whole = match piece.count {
        1 => whole,
        count => format!("{whole} for {count}, {} each", shown(takeoff.painted_each)),
    };
    let share = takeoff.painted.give_or_take() * 100.0;
    let decimals = usize::from(share < 1.0);
    let guesses = match unmeasured(piece).len() {
        0 => String::new(),
        1 => " 1 size is a guess.".into(),
        count => format!(" {count} sizes are guesses."),
    };
    format!("Area to coat: {whole}. Within {share:.decimals$}%.{guesses}\n")
}

/// A line for each material: the answer, then what to plan on.
pub(super) fn materials(workshop: &Workshop, takeoff: &Takeoff, cans: &[Result<Buy, ChoiceError>]) -> String {
    if takeoff.materials.is_empty() {
        return "No coats are planned.\n".into();
    }
    let lines = takeoff.materials.iter().zip(cans).map(|(line, buy)| {
        let name = name(&takeoff.name_of(line), line.need.colour);
        let answer = answer(workshop, line, buy);
        format!(
            "{}{}",
            wrapped(&format!("{name}: {answer}"), 2),
            remark(&name, buy)
        )
    });
    format!("{}{}", lines.collect::<String>(), instead(workshop, takeoff))
}

fn answer(workshop: &Workshop, line: &MaterialLine, buy: &Result<Buy, ChoiceError>) -> String {
    let shown = |of| volume(of, workshop.units);
    let wanted = workshop.settings.confidence.probability();
    let mut sentences: Vec<String> = Vec::new();
    sentences.extend(line.on_hand.as_ref().map(|hand| match hand.enough.probability {
        p if p >= wanted => "Enough.".into(),
        p if p >= 0.5 => format!("{} chance it's enough.", percent(p)),
        _ => "You'll run out.".into(),
    }));
    if let Some(buy) = buy.as_ref().ok().filter(|buy| !buy.cans.is_empty()) {
        let price = buy
            .price
            .map_or_else(String::new, |price| format!(", {}", show_price(price)));
        sentences.push(format!("Buy {}{price}.", cans(buy)));
    }
    let coats = match line.coats {
        1 => "1 coat".into(),
        coats => format!("{coats} coats"),
    };
    sentences.push(format!("Plan on {} for {coats}.", shown(line.need.at(wanted))));
    let left = buy.as_ref().ok().and_then(|buy| buy.left);
    if let Some(left) = left.filter(|left| left.likely > A_DROP) {
        sentences.push(format!("About {} left over.", shown(left.likely)));
    }
    sentences.join(" ")
}

fn cans(buy: &Buy) -> String {
    let cans = buy.cans.iter().map(|(can, count)| match count {
        1 => can.label.to_owned(),
        count => format!("{count} \u{d7} {}", can.label),
    });
    cans.collect::<Vec<_>>().join(" and ")
}

/// What makes a choice of cans worth a second look, or impossible.
fn remark(name: &str, buy: &Result<Buy, ChoiceError>) -> String {
    match buy {
        Ok(buy) if buy.purchase.proven => String::new(),
        Ok(_) => format!("{name}: a different set of cans may be cheaper.\n"),
        Err(error) => wrapped(&format!("{name}: {error}"), 2),
    }
}

/// The groups that a can is enough for where it is not enough for all.
fn instead(workshop: &Workshop, takeoff: &Takeoff) -> String {
    let wanted = workshop.settings.confidence.probability();
    let lines = takeoff.materials.iter().filter_map(|line| {
        let hand = line.on_hand.as_ref()?;
        let zones: Vec<&str> = hand
            .enough
            .zones
            .iter()
            .map(|zone| takeoff.zone_label(*zone))
            .collect();
        if hand.enough.probability >= wanted || zones.is_empty() {
            return None;
        }
        let name = name(&takeoff.name_of(line), line.need.colour);
        let zones = super::plain(&zones.join(", "));
        Some(wrapped(
            &format!("{name}: what you have is enough for {zones}."),
            2,
        ))
    });
    lines.collect()
}

/// A material with its color, which tells two cans of it apart.
fn name(material: &str, colour: Option<coatings::Rgb>) -> String {
    let colour = colour.map_or_else(String::new, |colour| format!(", {}", Colour(colour).write()));
    format!("{}{colour}", short(material, MATERIAL - colour.len()))
}

/// What to buy for all pieces together, where there are several.
pub(super) fn shopping_list(analysis: &Analysis) -> String {
    let workshop = analysis.workshop();
    if workshop.pieces.len() < 2 {
        return String::new();
    }
    let mut table = Table::new(&[
        ("Shopping list", Align::Left),
        ("Buy", Align::Left),
        ("Price", Align::Right),
        ("Left over", Align::Right),
    ]);
    let mut remarks = String::new();
    let mut nothing = true;
    for line in analysis.shopping(&[]).iter() {
        let name = name(&line.material.name, line.colour);
        remarks.push_str(&remark(&name, &line.buy));
        let Ok(buy) = &line.buy else { continue };
        if buy.cans.is_empty() {
            continue;
        }
        nothing = false;
        let left = buy.left.filter(|left| left.likely > A_DROP);
        table.row([
            name,
            cans(buy),
            buy.price.map_or_else(|| "-".into(), show_price),
            left.map_or_else(|| "-".into(), |left| volume(left.likely, workshop.units)),
        ]);
    }
    match nothing {
        true => format!("Nothing to buy.\n{remarks}"),
        false => format!("{table}{remarks}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_name_leaves_room_for_its_color() {
        let name = name(&"long ".repeat(20), Some([1, 2, 3]));
        assert!(name.chars().count() <= MATERIAL, "{name}");
        assert!(name.ends_with("\u{2026}, #010203"));
    }
}
