//! The list of what to buy as plain text, to be handed on.

use workshop::Shopping;
use workshop::art::Art;

use super::{Money, cans, colour};

/// One line for each material that has to be bought, and for the sheets of all art.
pub fn list(bought: &[Shopping], art: &[(String, Art)], money: Money<'_>) -> String {
    let lots = bought
        .iter()
        .filter(|lot| lot.buy.as_ref().is_ok_and(|buy| !buy.cans.is_empty()));
    let lots = lots.map(|lot| {
        let tint = lot
            .colour
            .map_or_else(String::new, |of| format!(", {}", colour(of)));
        format!("{}{tint}: {}", lot.material.name, cans(&lot.buy, money))
    });
    let sheets = art
        .iter()
        .filter_map(|(piece, art)| Some(format!("{} ({piece})", sheets(art)?)));
    lots.chain(sheets).collect::<Vec<_>>().join("\n")
}

/// How many sheets a piece of art takes: `55 to 66 leaves`; nothing for what takes none, or is not known yet.
pub fn sheets(art: &Art) -> Option<String> {
    let (low, high) = art.takes.as_ref().ok()?.sheets?;
    let (one, many) = art.kind.sheet();
    Some(match (low, high) {
        (1, 1) => format!("1 {one}"),
        (low, high) if low == high => format!("{high} {many}"),
        (low, high) => format!("{low} to {high} {many}"),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use workshop::art::all_art;
    use workshop::{BookEdit, Edit, PieceEdit, invented_workshop, shopping, takeoffs};

    #[test]
    fn the_list_names_what_is_bought_and_the_sheets() {
        let workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        let values = [("kind", "leaf"), ("width", "700 mm"), ("height", "1400 mm")];
        let values = values
            .iter()
            .map(|(key, text)| (*key, (*text).to_owned()))
            .collect();
        let add = PieceEdit::Book(BookEdit::Add("art", "a".into(), values));
        let workshop = workshop.apply(Edit::Piece(id, add)).unwrap();
        let bought = shopping(&workshop, &takeoffs(&workshop));
        let text = list(&bought, &all_art(&workshop), &|hundredths| hundredths.to_string());
        let lines: Vec<&str> = text.lines().collect();
        let to_buy = bought
            .iter()
            .filter(|lot| !lot.buy.as_ref().unwrap().cans.is_empty());
        assert_eq!(lines.len(), to_buy.count() + 1);
        assert_eq!(lines[lines.len() - 1], "55 to 66 leaves (Six-drawer dresser)");
    }
}
