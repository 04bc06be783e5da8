//! The costs of one piece and the earnings at a price.

/// Selling fees.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Fees {
    /// The share of the price, in hundredths of a percent. Less than 10,000.
    pub share: u32,
    /// The fixed fee, in hundredths.
    pub fixed: u64,
}

/// 100 percent in hundredths of a percent.
const WHOLE: u128 = 10_000;

impl Fees {
    /// Returns the fees for a price, rounded up to a whole hundredth.
    pub fn of(self, price: u64) -> Option<u64> {
        let share = (u128::from(price) * u128::from(self.share)).div_ceil(WHOLE);
        u64::try_from(share).ok()?.checked_add(self.fixed)
    }

    /// Returns the lowest price that leaves `wanted` after the fees, or `None` if the fees take the entire
    /// price.
    ///
    /// Before the fixed fee, a price p leaves floor(p (1 - share)), so p is ceil(wanted / (1 - share)).
    pub fn price_that_leaves(self, wanted: u64) -> Option<u64> {
        let left = WHOLE
            .checked_sub(u128::from(self.share))
            .filter(|left| *left > 0)?;
        let wanted = u128::from(wanted) + u128::from(self.fixed);
        u64::try_from((wanted * WHOLE).div_ceil(left)).ok()
    }
}

/// The costs of one piece, in hundredths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Costs {
    /// The buying price.
    pub bought: u64,
    /// Materials, by the part of each can that is used.
    pub materials_used: u64,
    /// The whole cans to buy. The sums do not include them because they count what is used.
    pub materials_to_buy: u64,
    /// Tool wear.
    pub wear: u64,
    /// Delivery or pickup.
    pub delivery: u64,
    /// The working time in minutes.
    pub minutes: u32,
    /// The wanted hourly rate.
    pub hourly: u64,
    /// The wanted profit beyond the hours.
    pub profit: u64,
    /// Selling fees.
    pub fees: Fees,
}

/// The purpose of a line in the sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The buying price.
    Bought,
    /// The materials used.
    Materials,
    /// Tool wear.
    Wear,
    /// Delivery.
    Delivery,
    /// The hours at the wanted rate.
    Work,
    /// The profit beyond the hours.
    Profit,
    /// The fees at the price.
    Fees,
}

/// One line of the sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line {
    /// The purpose.
    pub part: Part,
    /// The amount in hundredths, or `None` if it is too large or depends on an unknown price.
    pub amount: Option<u64>,
}

/// The outcome of a piece at a price.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// The price.
    pub price: u64,
    /// The money left for the work. Negative if money is lost.
    pub left: i64,
    /// The money left per hour, rounded down. `None` without working time.
    pub per_hour: Option<i64>,
}

impl Costs {
    /// Returns all expenses that do not depend on the price, or `None` if too large.
    pub fn outlay(&self) -> Option<u64> {
        self.bought
            .checked_add(self.materials_used)?
            .checked_add(self.wear)?
            .checked_add(self.delivery)
    }

    /// Returns one line for each cost, with the fees at a price.
    pub fn lines(&self, price: Option<u64>) -> [Line; 7] {
        let lines = [
            (Part::Bought, Some(self.bought)),
            (Part::Materials, Some(self.materials_used)),
            (Part::Wear, Some(self.wear)),
            (Part::Delivery, Some(self.delivery)),
            (Part::Work, self.work()),
            (Part::Profit, Some(self.profit)),
            (Part::Fees, price.and_then(|price| self.fees.of(price))),
        ];
        lines.map(|(part, amount)| Line { part, amount })
    }

    /// Returns the cost of the work at the wanted rate, rounded up.
    pub fn work(&self) -> Option<u64> {
        u64::try_from((u128::from(self.minutes) * u128::from(self.hourly)).div_ceil(60)).ok()
    }

    /// Returns what a price must leave to meet the wanted rate and profit, or `None` if too large.
    pub fn wanted(&self) -> Option<u64> {
        self.work()?.checked_add(self.profit)
    }
}

/// Returns the lowest price that covers all expenses and fees, with nothing for the work.
pub fn lowest_price(costs: &Costs) -> Option<u64> {
    costs.fees.price_that_leaves(costs.outlay()?)
}

/// Returns the lowest price that also pays the wanted hourly rate and profit.
pub fn wanted_price(costs: &Costs) -> Option<u64> {
    costs
        .fees
        .price_that_leaves(costs.outlay()?.checked_add(costs.wanted()?)?)
}

/// Returns what is left for the work at a price.
pub fn earned(costs: &Costs, price: u64) -> Option<i64> {
    let left = i128::from(price) - i128::from(costs.fees.of(price)?) - i128::from(costs.outlay()?);
    i64::try_from(left).ok()
}

/// Returns the outcome of a piece at a price, or `None` if too large.
pub fn result(costs: &Costs, price: u64) -> Option<Outcome> {
    let left = earned(costs, price)?;
    Some(Outcome {
        price,
        left,
        per_hour: per_hour(left, u64::from(costs.minutes)),
    })
}

/// Returns what a coat or a detail adds to the wanted price.
pub fn added(with: &Costs, without: &Costs) -> Option<i64> {
    i64::try_from(i128::from(wanted_price(with)?) - i128::from(wanted_price(without)?)).ok()
}

/// Returns what is left from several pieces at their prices, in total and per hour.
pub fn sum(pieces: &[(Costs, u64)]) -> Option<(i64, Option<i64>)> {
    let (mut left, mut minutes) = (0i64, 0u64);
    for (costs, price) in pieces {
        left = left.checked_add(earned(costs, *price)?)?;
        minutes = minutes.checked_add(u64::from(costs.minutes))?;
    }
    Some((left, per_hour(left, minutes)))
}

fn per_hour(left: i64, minutes: u64) -> Option<i64> {
    let hours = i128::from(left) * 60;
    (minutes > 0)
        .then(|| i64::try_from(hours.div_euclid(i128::from(minutes))).ok())
        .flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Bought for 20.00, materials 18.50, wear 1.50, delivery 5.00: 45.00. Six hours at 15.00: 90.00. Fees of
    /// 10% and 0.50: (45.00 + 0.50) / 0.9 = 50.555..., so 50.56, and (135.00 + 0.50) / 0.9 = 150.555..., so
    /// 150.56. At 120.00: fees 12.00 + 0.50, left 120.00 - 12.50 - 45.00 = 62.50, per hour 10.4166..., so
    /// 10.41.
    #[test]
    fn by_hand() {
        let costs = Costs {
            bought: 2000,
            materials_used: 1850,
            materials_to_buy: 3600,
            wear: 150,
            delivery: 500,
            minutes: 360,
            hourly: 1500,
            profit: 0,
            fees: Fees {
                share: 1000,
                fixed: 50,
            },
        };
        assert_eq!(lowest_price(&costs), Some(5056));
        assert_eq!(wanted_price(&costs), Some(15_056));
        // Profit of 18.00: (135.00 + 18.00 + 0.50) / 0.9 = 170.555..., so 170.56.
        let with_profit = Costs {
            profit: 1800,
            ..costs
        };
        assert_eq!(wanted_price(&with_profit), Some(17_056));
        assert_eq!(lowest_price(&with_profit), Some(5056));
        let found = result(&costs, 12_000).unwrap();
        assert_eq!((found.left, found.per_hour), (6250, Some(1041)));
        let amounts = |price| costs.lines(price).map(|line| line.amount);
        let (work, fees) = (Some(9000), Some(1250));
        assert_eq!(
            amounts(Some(12_000)),
            [Some(2000), Some(1850), Some(150), Some(500), work, Some(0), fees]
        );
        assert_eq!(amounts(None)[6], None);
        assert_eq!(
            sum(&[(costs, 12_000), (costs, 12_000)]),
            Some((12_500, Some(1041)))
        );
        // A coat of 3.60 and half an hour, 7.50: (135.00 + 11.10 + 0.50) / 0.9 = 162.888..., so 162.89 -
        // 150.56.
        let with = Costs {
            materials_used: 2210,
            minutes: 390,
            ..costs
        };
        assert_eq!(added(&with, &costs), Some(1233));
        assert_eq!(
            lowest_price(&Costs {
                fees: Fees {
                    share: 10_000,
                    fixed: 0
                },
                ..costs
            }),
            None
        );
        assert_eq!(
            lowest_price(&Costs {
                bought: u64::MAX,
                ..costs
            }),
            None
        );
    }

    proptest! {
        #[test]
        fn the_lowest_price_covers_and_a_hundredth_less_does_not(
            bought in 0u64..1_000_000, share in 0u32..10_000, fixed in 0u64..10_000,
        ) {
            let costs = Costs { bought, fees: Fees { share, fixed }, ..Costs::default() };
            let price = lowest_price(&costs).unwrap();
            prop_assert!(earned(&costs, price).unwrap() >= 0);
            if price > 0 {
                prop_assert!(earned(&costs, price - 1).unwrap() < 0);
            }
        }
    }
}
