//! Whether to buy a piece: the most to pay for it, and the chance that it pays off.

use super::piece::Costs;

/// The cost of the materials, in hundredths, as a triangular distribution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Materials {
    /// The minimum.
    pub low: u64,
    /// The most likely value.
    pub likely: u64,
    /// The maximum.
    pub high: u64,
}

/// A piece to consider buying.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Plan {
    /// All costs. The buying price and the materials in it are ignored.
    pub costs: Costs,
    /// The materials.
    pub materials: Materials,
}

impl Plan {
    /// Returns what a sale price leaves for the purchase and the materials after fees, wear, delivery, work
    /// and profit.
    fn room(&self, price: u64) -> Option<i128> {
        let rest = Costs {
            bought: 0,
            materials_used: 0,
            ..self.costs
        };
        let all = [rest.fees.of(price)?, rest.outlay()?, rest.wanted()?];
        Some(i128::from(price) - all.into_iter().map(i128::from).sum::<i128>())
    }
}

/// Returns the most to pay for the piece if it sells at `price` and the materials cost the likely amount.
/// Returns `None` if the price does not leave enough even when the piece is free.
pub fn highest_buying_price(plan: &Plan, price: u64) -> Option<u64> {
    u64::try_from(plan.room(price)? - i128::from(plan.materials.likely)).ok()
}

/// Returns the chance that a piece bought for `bought` reaches the wanted rate and profit. Each of `prices`
/// is equally likely, and the materials are independent of the price. Returns `None` if there are no prices
/// or the materials are out of order.
pub fn chance(plan: &Plan, bought: u64, prices: &[u64]) -> Option<f64> {
    let Materials { low, likely, high } = plan.materials;
    if prices.is_empty() || low > likely || likely > high {
        return None;
    }
    let mut sum = 0.0;
    for price in prices {
        sum += at_most(plan.materials, plan.room(*price)? - i128::from(bought));
    }
    Some(sum / prices.len() as f64)
}

/// Returns the chance that the materials cost at most `room`.
fn at_most(materials: Materials, room: i128) -> f64 {
    let (low, likely, high) = (
        materials.low as f64,
        materials.likely as f64,
        materials.high as f64,
    );
    if room >= i128::from(materials.high) {
        return 1.0;
    }
    if room < i128::from(materials.low) {
        return 0.0;
    }
    let room = room as f64;
    if room < likely {
        (room - low) * (room - low) / ((high - low) * (likely - low))
    } else {
        1.0 - (high - room) * (high - room) / ((high - low) * (high - likely))
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Fees, wanted_price};
    use super::*;
    use proptest::prelude::*;

    /// At 100.00: fees 10.00, four hours at 10.00, profit 5.00, delivery 5.00. That leaves 40.00, or 25.00
    /// after 15.00 for materials. At 60.00: fees 6.00, and 60 - 6 - 40 - 5 - 5 = 4.00, which does not cover
    /// the materials.
    #[test]
    fn by_hand() {
        let plan = Plan {
            costs: Costs {
                delivery: 500,
                minutes: 240,
                hourly: 1000,
                profit: 500,
                fees: Fees {
                    share: 1000,
                    fixed: 0,
                },
                ..Costs::default()
            },
            materials: Materials {
                low: 1000,
                likely: 1500,
                high: 2000,
            },
        };
        assert_eq!(highest_buying_price(&plan, 10_000), Some(2500));
        assert_eq!(highest_buying_price(&plan, 6000), None);
        // 15.00 for materials is the middle of a symmetric triangle. The other price never pays.
        assert_eq!(chance(&plan, 2500, &[10_000]), Some(0.5));
        assert_eq!(chance(&plan, 2500, &[10_000, 6000]), Some(0.25));
        // 12.50 for materials: (2.50)^2 / (10.00 x 5.00) = 0.125.
        assert_eq!(chance(&plan, 2750, &[10_000]), Some(0.125));
        assert_eq!(chance(&plan, 2000, &[10_000]), Some(1.0));
        assert_eq!(chance(&plan, 0, &[]), None);
    }

    proptest! {
        /// The two functions agree: a buying price is at most `most` exactly when the sale price is at least
        /// the wanted price.
        #[test]
        fn the_most_to_pay_and_the_price_that_pays_agree(
            bought in 0u64..100_000, used in 0u64..20_000, profit in 0u64..50_000, minutes in 0u32..3_000,
            share in 0u32..9_000, price in 0u64..300_000,
        ) {
            let costs = Costs {
                bought,
                materials_used: used,
                minutes,
                hourly: 1700,
                profit,
                fees: Fees { share, fixed: 30 },
                ..Costs::default()
            };
            let plan = Plan { costs, materials: Materials { low: used, likely: used, high: used } };
            let pays = highest_buying_price(&plan, price).is_some_and(|most| bought <= most);
            prop_assert_eq!(pays, price >= wanted_price(&costs).unwrap());
        }
    }
}
