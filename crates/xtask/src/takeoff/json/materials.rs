//! What is needed of each material, as JSON.

use coatings::can::ChoiceError;
use serde_json::{Value, json};
use workshop::{Buy, Colour, MaterialLine, Takeoff, Workshop, cans_to_buy};

use crate::takeoff::verdict_word;

pub fn line(workshop: &Workshop, takeoff: &Takeoff, line: &MaterialLine) -> Value {
    let need = &line.need;
    let linear = need.linear();
    let zone = |zone: &usize| takeoff.job.zones.get(*zone).map(|zone| zone.key.clone());
    let causes = need.budget.iter().map(|part| {
        json!({
            "cause": part.cause.label(),
            "share": part.share,
            "standard_uncertainty_l": part.standard_uncertainty.as_litres(),
        })
    });
    let goes = need
        .shares
        .iter()
        .map(|share| json!({ "place": share.place, "volume_l": share.volume.as_litres() }));
    let by_zone = need
        .by_zone
        .iter()
        .map(|(place, volume)| json!({ "zone": zone(place), "volume_l": volume.as_litres() }));
    json!({
        "id": line.id,
        "stage": need.material.stage.key(),
        "material": need.material.key,
        "name": need.material.name,
        "colour": need.colour.map(|colour| Colour(colour).write()),
        "tools": line.tools,
        "coats": line.coats,
        "low_l": need.low().as_litres(),
        "likely_l": need.likely().as_litres(),
        "high_l": need.high().as_litres(),
        "best_estimate_l": linear.value.as_litres(),
        "standard_uncertainty_l": linear.standard_uncertainty.as_litres(),
        "unsure_by": causes.collect::<Vec<_>>(),
        "goes": goes.collect::<Vec<_>>(),
        "by_zone": by_zone.collect::<Vec<_>>(),
        "in_hand": line.in_hand.as_ref().map(|hand| json!({
            "can": hand.can.key,
            "can_l": hand.can.volume().as_litres(),
            "level": hand.level,
            "verdict": verdict_word(hand.enough.verdict),
            "probability_enough": hand.enough.probability,
            "left_l": hand.enough.left.as_litres(),
            "lacking_l": hand.enough.lacking.as_litres(),
            "besides_l": hand.enough.besides.as_litres(),
            "most_coats": hand.enough.most_coats,
            "enough_for_zones": hand.enough.zones.iter().filter_map(zone).collect::<Vec<_>>(),
        })),
        "to_buy": to_buy(&cans_to_buy(workshop, line)),
    })
}

/// What to buy, or why that cannot be said.
pub fn to_buy(buy: &Result<Buy, ChoiceError>) -> Value {
    match buy {
        Ok(buy) => {
            let cans = buy.cans.iter();
            let cans = cans.map(|(can, count)| json!({ "can": can.key, "count": count }));
            json!({
                "need_l": buy.need.as_litres(),
                "cans": cans.collect::<Vec<_>>(),
                "price_hundredths": buy.price,
                "left_l": buy.purchase.left.as_litres(),
                "proven": buy.purchase.proven,
            })
        }
        Err(error) => json!({ "problem": error.to_string() }),
    }
}
