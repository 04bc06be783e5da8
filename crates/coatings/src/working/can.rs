//! The workings of what is in a can, whether it is enough, and which cans to buy.

use super::{Measure, Quantity, Working, estimated, figure, given};
use crate::can::{Contents, ContentsWay, LEVELS, Offer, Purchase};
use crate::enough::Enough;
use crate::estimate::Estimate;
use crate::figure::Figure;
use crate::need::Need;
use units::Volume;

const CAN: &str = "can";
const SHARE_OF_CAN: &str = "can * share";
const BY_WEIGHT: &str = "(gross - tare) / density";
const COST: &str = "count * price";
const VOLUME: &str = "count * size";
const LEFT: &str = "stock + bought - need";

const PROBABILITY: &str = "The share of the trials in which the can holds at least what is needed.";
const MIDDLE_LEFT: &str = "The middle of can less need over all trials; nothing if that is below nothing.";
const MIDDLE_LACKING: &str = "The middle of need less can over all trials; nothing if that is below nothing.";
const MOST_COATS: &str = "One coat on all zones, then two, and so on up to nine: the last number for which the can is enough in the wanted share of the trials.";
const ZONES: &str = "Zones are taken or left, the larger first: of all choices for which the can is enough in the wanted share of the trials, the one that takes the most. Beyond twelve zones only the twelve largest are tried.";
const ALL_ZONES: &str = "The can is enough for all zones, so none is left out.";
const SEARCHED: &str = "Every set of cans that can be cheapest was looked at; of equally cheap ones the least left over, then the fewest cans.";
const NOT_PROVEN: &str =
    "So many sets of cans are possible that not all were looked at; this is the cheapest of those that were.";
const ON_THE_SHELF: &str = "What stands on the shelf is enough, so nothing is bought.";

fn litres(estimate: Estimate<Volume>) -> Estimate<f64> {
    Estimate {
        value: estimate.value.as_litres(),
        standard_uncertainty: estimate.standard_uncertainty.as_litres(),
    }
}

impl Contents {
    /// How what is likely in the can comes about.
    pub fn working(&self) -> Working {
        let result = estimated(
            "contents",
            "what is in the can",
            litres(self.estimate()),
            Measure::Litres,
        );
        let holds = |can: Volume| given("can", "what the can holds", can.as_litres(), Measure::Litres);
        match *self.way() {
            ContentsWay::Full(can) => Working::by(CAN, vec![holds(can)], result),
            ContentsWay::Part { can, low, high } => {
                let mut levels = LEVELS.iter().map(|level| level.share);
                let of_level = levels.find(|share| (share.low, share.high) == (low, high));
                let share = of_level.unwrap_or(Figure::own(low, high));
                let share = figure("share", "what is left, by looking", share, Measure::Share);
                Working::by(SHARE_OF_CAN, vec![holds(can), share], result)
            }
            ContentsWay::Between { low, high } => {
                let between = Figure::own(low.as_litres(), high.as_litres());
                let measured = figure("can", "what was measured", between, Measure::Litres);
                Working::by(CAN, vec![measured], result)
            }
            ContentsWay::Weighed { gross, tare, density } => {
                let mass = |symbol, meaning, weighing: crate::can::Weighing| Quantity {
                    standard_uncertainty: weighing.scale.weighing(weighing.mass).as_grams(),
                    ..given(symbol, meaning, weighing.mass.as_grams(), Measure::Grams)
                };
                let terms = vec![
                    mass("gross", "the can with its contents", gross),
                    mass("tare", "the empty can", tare),
                    super::per_litre("density", "density of the contents", density),
                ];
                Working::by(BY_WEIGHT, terms, result)
            }
        }
    }
}

impl Enough {
    /// How each part of the answer was found; the same need, can and confidence as it was judged with. Probability, what
    /// is left, what is lacking, most coats, number of zones, in this order.
    pub fn workings(&self, need: &Need, can: &Contents, confidence: f64) -> Vec<Working> {
        let amounts = || {
            vec![
                estimated(
                    "can",
                    "what is in the can",
                    litres(can.estimate()),
                    Measure::Litres,
                ),
                estimated("need", "what is needed", litres(need.linear()), Measure::Litres),
                given(
                    "trials",
                    "how many trials there were",
                    need.litres().len() as f64,
                    Measure::Count,
                ),
            ]
        };
        let found = |how, symbol, meaning, value, measure| {
            Working::found(how, amounts(), given(symbol, meaning, value, measure))
        };
        let sure = |mut working: Working| {
            let wanted = given("confidence", "how sure it is wanted", confidence, Measure::Share);
            working.terms.push(wanted);
            working
        };
        let zones = if self.verdict == crate::Verdict::Enough {
            ALL_ZONES
        } else {
            ZONES
        };
        vec![
            found(
                PROBABILITY,
                "probability",
                "how likely it is enough",
                self.probability,
                Measure::Share,
            ),
            found(
                MIDDLE_LEFT,
                "left",
                "what is likely left over",
                self.left.as_litres(),
                Measure::Litres,
            ),
            found(
                MIDDLE_LACKING,
                "lacking",
                "what is likely lacking",
                self.lacking.as_litres(),
                Measure::Litres,
            ),
            sure(found(
                MOST_COATS,
                "coats",
                "most coats on all zones",
                f64::from(self.most_coats),
                Measure::Count,
            )),
            sure(found(
                zones,
                "zones",
                "zones that it does",
                self.zones.len() as f64,
                Measure::Count,
            )),
        ]
    }
}

/// Hundredths as units of the currency.
fn money(hundredths: u64) -> f64 {
    hundredths as f64 / 100.0
}

impl Purchase {
    /// How the purchase comes about; the same need, stock and offers as it was chosen with. First the choice with its
    /// price, which is the sum of the next; then price and volume of the cans of each offer that is bought; last what is
    /// left over.
    pub fn workings(&self, need: Volume, stock: &[Volume], offers: &[Offer]) -> Vec<Working> {
        let need = given("need", "what is needed", need.as_litres(), Measure::Litres);
        let used: Volume = stock.iter().take(self.used_from_stock).copied().sum();
        let stock = given(
            "stock",
            "what is used from the shelf",
            used.as_litres(),
            Measure::Litres,
        );
        let mut bought = Volume::ZERO;
        let mut of_offers = Vec::new();
        for (offer, &number) in offers.iter().zip(&self.counts).filter(|(_, count)| **count > 0) {
            let cans = f64::from(number);
            bought += offer.size * cans;
            let count = given("count", "cans of this offer", cans, Measure::Count);
            let price = given("price", "price of one", money(offer.price), Measure::Money);
            let size = given("size", "what one holds", offer.size.as_litres(), Measure::Litres);
            of_offers.push(Working::by(
                COST,
                vec![count.clone(), price],
                given(
                    "cost",
                    "cost of these cans",
                    money(offer.price.saturating_mul(u64::from(number))),
                    Measure::Money,
                ),
            ));
            of_offers.push(Working::by(
                VOLUME,
                vec![count, size],
                given(
                    "volume",
                    "volume of these cans",
                    (offer.size * cans).as_litres(),
                    Measure::Litres,
                ),
            ));
        }
        let how = if of_offers.is_empty() {
            ON_THE_SHELF
        } else if self.proven {
            SEARCHED
        } else {
            NOT_PROVEN
        };
        let choice = Working::found(
            how,
            vec![need.clone(), stock.clone()],
            given("price", "price of all cans", money(self.price), Measure::Money),
        );
        let bought = given(
            "bought",
            "volume of all cans that are bought",
            bought.as_litres(),
            Measure::Litres,
        );
        let left = given(
            "left",
            "what is left over",
            self.left.as_litres(),
            Measure::Litres,
        );
        let mut workings = vec![choice];
        workings.append(&mut of_offers);
        workings.push(Working::by(LEFT, vec![stock, bought, need], left));
        workings
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::can::{Weighing, choose};
    use crate::mix::Scale;
    use crate::need::{TRIALS, needs};
    use crate::samples::enamel;
    use crate::working::holds;
    use units::Mass;

    #[test]
    fn contents_are_those_of_their_formulas() {
        let litre = Volume::litres(1.0);
        let on = |grams| Weighing {
            mass: Mass::grams(grams),
            scale: Scale::KITCHEN,
        };
        for contents in [
            Contents::full(litre).unwrap(),
            Contents::part(litre, 0.4, 0.6).unwrap(),
            Contents::between(litre * 0.5, litre * 0.6, None).unwrap(),
            Contents::weighed(on(780.0), on(120.0), Figure::own(1.25, 1.35), None).unwrap(),
        ] {
            let working = contents.working();
            holds(&working);
            assert_eq!(working.result.value, contents.likely().as_litres());
        }
    }

    #[test]
    fn a_purchase_adds_up() {
        let ml = |size: f64| Volume::millilitres(size);
        let offers = [(1000.0, 1595), (250.0, 595), (2500.0, 9900)].map(|(size, price)| Offer {
            size: ml(size),
            price,
        });
        let (need, stock) = (ml(1400.0), [ml(200.0), ml(10.0)]);
        let purchase = choose(need, &stock, &offers).unwrap();
        let workings = purchase.workings(need, &stock, &offers);
        assert_eq!(workings[0].found, Some(SEARCHED));
        workings[1..].iter().for_each(holds);
        let sum: f64 = workings
            .iter()
            .filter(|working| working.formula == COST)
            .map(|working| working.result.value)
            .sum();
        assert!((sum - workings[0].result.value).abs() < 1e-9);
        assert_eq!(workings.last().unwrap().formula, LEFT);
        // Enough on the shelf.
        let purchase = choose(ml(100.0), &stock, &offers).unwrap();
        let workings = purchase.workings(ml(100.0), &stock, &offers);
        assert_eq!((workings.len(), workings[0].found), (2, Some(ON_THE_SHELF)));
        holds(&workings[1]);
    }

    #[test]
    fn a_verdict_says_what_was_looked_at() {
        let job = enamel("brush", 2);
        let need = needs(&job, TRIALS).remove(0);
        for litres in [0.2, 2.0] {
            let can = Contents::full(Volume::litres(litres)).unwrap();
            let enough = Enough::judge(&job, &need, &can, 0.9);
            let workings = enough.workings(&need, &can, 0.9);
            let values: Vec<f64> = workings.iter().map(|working| working.result.value).collect();
            assert_eq!(values[0], enough.probability);
            assert_eq!(values[1] - values[2], (enough.left - enough.lacking).as_litres());
            assert_eq!(values[3], f64::from(enough.most_coats));
            assert_eq!(values[4] as usize, enough.zones.len());
            for working in &workings {
                assert!(working.found.is_some() && working.formula.is_empty());
                assert_eq!(working.terms[1].value, need.linear().value.as_litres());
            }
            assert_eq!(workings[3].terms.last().unwrap().value, 0.9);
        }
    }
}
