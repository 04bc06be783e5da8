//! What the stages of the job say about a piece.

use coatings::can::ChoiceError;
use coatings::{Substrate, Wish};
use geometry::Fill;
use workshop::{Buy, Row};

/// Says how many sizes are guesses.
pub fn guesses(count: usize) -> String {
    match count {
        0 => "Measured".into(),
        1 => "1 guess".into(),
        count => format!("{count} guesses"),
    }
}

/// Offers to measure the guesses.
pub fn measure_guesses(count: usize) -> String {
    match count {
        1 => "Measure the last guess".into(),
        count => format!("Measure the {count} guessed sizes"),
    }
}

/// Returns a wanted look in one word.
pub fn wish(wish: Wish) -> &'static str {
    match wish {
        Wish::Painted { .. } => "Painted",
        Wish::Clear => "Clear",
        Wish::StainedClear => "Stained",
    }
}

/// Returns a surface in a word or two, for a narrow place.
pub fn surface(substrate: Substrate) -> &'static str {
    match substrate {
        Substrate::Sealed => "Old finish",
        Substrate::PaintedSound => "Old paint",
        Substrate::Glossy => "Glossy",
        Substrate::Laminate => "Laminate",
        Substrate::Bare => "Bare wood",
        Substrate::Porous => "Porous wood",
    }
}

/// Says how many cans to buy.
pub fn to_buy<'a>(each: impl Iterator<Item = &'a Result<Buy, ChoiceError>>) -> String {
    let bought = each.flatten().flat_map(|buy| &buy.cans);
    match bought.map(|(_, count)| count).sum::<u32>() {
        0 => "Nothing to buy".into(),
        1 => "Buy 1 can".into(),
        count => format!("Buy {count} cans"),
    }
}

/// Says how many steps are checked off.
pub fn checked_off(count: usize) -> String {
    match count {
        0 => "Not started".into(),
        count => format!("{count} done"),
    }
}

/// Says that the amounts are for a set of pieces.
pub fn set_of(count: u32) -> Option<String> {
    (count > 1).then(|| format!("Set of {count}."))
}

/// Says what a row holds: `3 drawers`, `2 doors, 1 shelf each`, `open`.
pub fn row_holds(row: &Row) -> String {
    let many = |one: &str, count: usize| match count {
        1 => format!("1 {one}"),
        count => format!("{count} {one}s"),
    };
    let shelves = match row.shelves {
        0 => String::new(),
        count => {
            let each = if row.columns > 1 { " each" } else { "" };
            format!(", {}{each}", many("shelf", count).replace("shelfs", "shelves"))
        }
    };
    match row.fill {
        Fill::Drawers => many("drawer", row.columns),
        Fill::Doors => format!("{}{shelves}", many("door", row.columns)),
        Fill::Open if row.columns > 1 => format!("{}{shelves}", many("opening", row.columns)),
        Fill::Open => format!("open{shelves}"),
    }
}

/// Returns what a row holds, as a choice.
pub fn fill(fill: Fill) -> &'static str {
    match fill {
        Fill::Drawers => "Drawers",
        Fill::Doors => "Doors",
        Fill::Open => "Open shelf",
    }
}

/// Labels the number of fronts in a row.
pub fn how_many(fill: Fill) -> &'static str {
    match fill {
        Fill::Drawers => "Drawers across",
        Fill::Doors => "Doors across",
        Fill::Open => "Openings across",
    }
}

/// Says that a piece was deleted.
pub fn deleted(name: &str) -> String {
    format!("{name} deleted. Undo brings it back until you close this page.")
}

/// Returns a length without its unit, for the drawing.
pub fn without_unit(length: &str) -> &str {
    length.trim_end_matches(|sign: char| sign.is_alphabetic() || sign.is_whitespace())
}
