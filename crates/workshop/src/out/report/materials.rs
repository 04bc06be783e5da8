//! The amount needed of each material, the uses of the cans on hand, and what to buy.

use coatings::Verdict;
use coatings::can::ChoiceError;
use serde::Serialize;

use crate::document::Colour;
use crate::stock::{OnHand, Stock};
use crate::takeoff::{Buy, MaterialLine, Takeoff};

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct MaterialReport {
    id: String,
    stage: &'static str,
    material: String,
    name: String,
    colour: Option<String>,
    tools: Vec<&'static str>,
    coats: u32,
    weighed_jobs: u32,
    low_litres: f64,
    likely_litres: f64,
    high_litres: f64,
    best_estimate_litres: f64,
    standard_uncertainty_litres: f64,
    unsure_by: Vec<CauseReport>,
    goes: Vec<PlaceReport>,
    by_zone: Vec<ZoneVolume>,
    on_hand: Option<OnHandReport>,
    to_buy: ToBuy,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct CauseReport {
    cause: String,
    share: f64,
    standard_uncertainty_litres: f64,
}

/// The amount for one place.
#[derive(Clone, Debug, Serialize)]
pub(super) struct PlaceReport {
    pub(super) place: &'static str,
    pub(super) litres: f64,
}

#[derive(Clone, Debug, Serialize)]
struct ZoneVolume {
    zone: String,
    litres: f64,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct OnHandReport {
    cans: Vec<StockReport>,
    verdict: &'static str,
    probability_enough: f64,
    left_litres: f64,
    lacking_litres: f64,
    besides_litres: f64,
    most_coats: u32,
    enough_for_zones: Vec<String>,
}

/// A can on the shelf.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct StockReport {
    can: Option<&'static str>,
    can_litres: Option<f64>,
    level: Option<&'static str>,
    is_weighed: bool,
    likely_litres: Option<f64>,
}

/// The cans to buy, or why they are unknown.
#[derive(Clone, Debug, Serialize)]
#[serde(untagged)]
pub(super) enum ToBuy {
    Cans(Cans),
    Problem { problem: String },
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Cans {
    need_litres: f64,
    cans: Vec<CanReport>,
    price_hundredths: Option<u64>,
    left_litres: f64,
    left_at_least_litres: f64,
    proven: bool,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct CanReport {
    can: &'static str,
    can_litres: f64,
    count: u32,
}

impl MaterialReport {
    pub(super) fn of(takeoff: &Takeoff, line: &MaterialLine, cans: &Result<Buy, ChoiceError>) -> Self {
        let need = &line.need;
        let linear = need.linear();
        let causes = need.budget.iter().map(|part| CauseReport {
            cause: part.cause.label(),
            share: part.share,
            standard_uncertainty_litres: part.standard_uncertainty.as_litres(),
        });
        let goes = need.shares.iter().map(|share| PlaceReport {
            place: share.place.name(),
            litres: share.volume.as_litres(),
        });
        let by_zone = need.by_zone.iter().map(|(zone, volume)| ZoneVolume {
            zone: zone_key(takeoff, *zone),
            litres: volume.as_litres(),
        });
        MaterialReport {
            id: line.id.clone(),
            stage: need.material.stage.key(),
            material: need.material.key.to_string(),
            name: need.material.name.to_string(),
            colour: need.colour.map(|colour| Colour(colour).write()),
            tools: line.tools.clone(),
            coats: line.coats,
            weighed_jobs: line.jobs,
            low_litres: need.low().as_litres(),
            likely_litres: need.likely().as_litres(),
            high_litres: need.high().as_litres(),
            best_estimate_litres: linear.value.as_litres(),
            standard_uncertainty_litres: linear.standard_uncertainty.as_litres(),
            unsure_by: causes.collect(),
            goes: goes.collect(),
            by_zone: by_zone.collect(),
            on_hand: line.on_hand.as_ref().map(|hand| OnHandReport::of(takeoff, hand)),
            to_buy: ToBuy::of(cans),
        }
    }
}

/// Returns the key of a zone from its index in the job.
pub(super) fn zone_key(takeoff: &Takeoff, zone: usize) -> String {
    let zone = takeoff.job.zones.get(zone);
    zone.map_or_else(String::new, |zone| zone.key.clone())
}

impl StockReport {
    fn of(stock: &Stock) -> Self {
        let contents = stock.contents.as_ref().ok();
        StockReport {
            can: stock.can.map(|can| can.key),
            can_litres: stock.can.map(|can| can.volume().as_litres()),
            level: stock.level.map(|level| level.key),
            is_weighed: stock.is_weighed,
            likely_litres: contents.map(|contents| contents.likely().as_litres()),
        }
    }
}

impl OnHandReport {
    fn of(takeoff: &Takeoff, hand: &OnHand) -> Self {
        let enough = &hand.enough;
        let zones = enough.zones.iter();
        OnHandReport {
            cans: hand.cans.iter().map(StockReport::of).collect(),
            verdict: verdict_word(enough.verdict),
            probability_enough: enough.probability,
            left_litres: enough.left.as_litres(),
            lacking_litres: enough.lacking.as_litres(),
            besides_litres: enough.extra_needed.as_litres(),
            most_coats: enough.most_coats,
            enough_for_zones: zones.map(|zone| zone_key(takeoff, *zone)).collect(),
        }
    }
}

/// Returns the word for a verdict, for programs and the command line.
pub fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Enough => "enough",
        Verdict::Tight => "tight",
        Verdict::Short => "short",
    }
}

impl ToBuy {
    pub(super) fn of(buy: &Result<Buy, ChoiceError>) -> Self {
        match buy {
            Ok(buy) => ToBuy::Cans(Cans {
                need_litres: buy.need.as_litres(),
                cans: buy
                    .cans
                    .iter()
                    .map(|(can, count)| CanReport {
                        can: can.key,
                        can_litres: can.volume().as_litres(),
                        count: *count,
                    })
                    .collect(),
                price_hundredths: buy.price,
                left_litres: buy.left.unwrap_or_default().likely.as_litres(),
                left_at_least_litres: buy.left.unwrap_or_default().least.as_litres(),
                proven: buy.purchase.proven,
            }),
            Err(error) => ToBuy::Problem {
                problem: error.to_string(),
            },
        }
    }
}
