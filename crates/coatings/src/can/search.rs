//! The search for the cheapest set of cans: an unbounded covering problem in whole numbers, solved exactly.
//!
//! Branch and bound over the offers, from the one that is cheapest by volume on. The bound is the rest at the best
//! price by volume that is still to be had, rounded up to what whole cans can cost.

/// The most steps of the search before it returns the best purchase so far. Real shop sizes take a few
/// hundred steps, and the hardest of 20,000 random cases took a hundred thousand. Worse cases could run
/// almost forever.
const MOST_LOOKS: u32 = 1_000_000;
/// How many small cans are compared with larger ones, see [`kinds`].
const LONGEST_EXCHANGE: u64 = 64;

/// The objectives, in order of priority.
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Cost {
    /// In hundredths of the currency.
    pub(super) price: u64,
    /// Left over, in picolitres.
    pub(super) left: u64,
    cans: u64,
}

/// An offer, with bounds for it and all offers after it.
struct Kind {
    offer: usize,
    size: u64,
    price: u64,
    /// The most cans of it that can be worth buying.
    most: u64,
    /// The greatest common divisor of all prices from here on; zero if all are free.
    price_step: u64,
    /// The greatest common divisor of all sizes from here on.
    size_step: u64,
    /// The largest size from here on.
    largest: u64,
}

/// The offers, the cheapest by volume first. Offers that another one dominates are left out.
fn kinds(offers: &[(u64, u64)]) -> Vec<Kind> {
    let mut all: Vec<Kind> = offers
        .iter()
        .enumerate()
        .map(|(offer, &(size, price))| Kind {
            offer,
            size,
            price,
            most: u64::MAX,
            price_step: 0,
            size_step: 0,
            largest: 0,
        })
        .collect();
    units::sort_few(&mut all, |a, b| {
        let by_volume = |x: &Kind, y: &Kind| u128::from(x.price) * u128::from(y.size);
        let [ours, theirs] = [by_volume(a, b), by_volume(b, a)];
        ours < theirs || ours == theirs && a.size > b.size
    });
    for here in 1..all.len() {
        let most = all[..here]
            .iter()
            .map(|better| most_beside(&all[here], better))
            .min();
        all[here].most = most.unwrap_or(u64::MAX);
    }
    all.retain(|kind| kind.most > 0);
    let (mut price_step, mut size_step, mut largest) = (0, 0, 0);
    for kind in all.iter_mut().rev() {
        price_step = common(price_step, kind.price);
        size_step = common(size_step, kind.size);
        largest = largest.max(kind.size);
        (kind.price_step, kind.size_step, kind.largest) = (price_step, size_step, largest);
    }
    all
}

/// The most cans of an offer worth buying beside one that is at least as cheap by volume.
///
/// As many cans of it as hold no more, and cost more, than some of the other are never bought; nor are those
/// that are the same in volume and price, but more cans. With equal counts too the two offers are alike, and
/// the first stands for both.
fn most_beside(kind: &Kind, better: &Kind) -> u64 {
    (1..=LONGEST_EXCHANGE)
        .find(|count| {
            let (volume, price) = (count * kind.size, count * kind.price);
            let others = volume.div_ceil(better.size);
            let other_price = others * better.price;
            other_price < price
                || (other_price == price && others * better.size == volume && others <= *count)
        })
        .map_or(u64::MAX, |count| count - 1)
}

/// The greatest common divisor; of nothing and a number, the number.
fn common(a: u64, b: u64) -> u64 {
    let (mut a, mut b) = (a, b);
    while b > 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// The state of a search.
pub(super) struct Search {
    kinds: Vec<Kind>,
    counts: Vec<u64>,
    best: Option<Cost>,
    best_counts: Vec<u64>,
    looks: u32,
}

impl Search {
    /// A search among offers of a size in picolitres and a price in hundredths.
    pub(super) fn new(offers: &[(u64, u64)]) -> Self {
        let kinds = kinds(offers);
        Search {
            counts: vec![0; kinds.len()],
            best: None,
            best_counts: Vec::new(),
            looks: 0,
            kinds,
        }
    }

    /// The best way to cover a need; `None` where nothing is offered.
    pub(super) fn run(&mut self, demand: u64) -> Option<Cost> {
        self.fill(0, demand, Cost::default());
        self.best
    }

    /// How many cans of an offer the best way takes, for each offer that is worth having.
    pub(super) fn counts(&self) -> impl Iterator<Item = (usize, u64)> {
        self.kinds
            .iter()
            .zip(&self.best_counts)
            .map(|(kind, count)| (kind.offer, *count))
    }

    /// Whether the search finished, so that the result is proven optimal.
    pub(super) fn is_proven(&self) -> bool {
        self.looks < MOST_LOOKS
    }

    /// Fills what is still needed with the kinds from `at` on; `spent` is what was bought before.
    fn fill(&mut self, at: usize, demand: u64, spent: Cost) {
        let Some(kind) = self.kinds.get(at) else {
            return;
        };
        let (size, price) = (kind.size, kind.price);
        for count in (0..=demand.div_ceil(size).min(kind.most)).rev() {
            if self.looks >= MOST_LOOKS {
                break;
            }
            self.looks += 1;
            let filled = count * size;
            let mut cost = Cost {
                price: spent.price + count * price,
                left: 0,
                cans: spent.cans + count,
            };
            if filled >= demand {
                cost.left = filled - demand;
                if self.best.is_none_or(|best| cost < best) {
                    self.best = Some(cost);
                    self.counts[at] = count;
                    self.best_counts.clone_from(&self.counts);
                    self.counts[at] = 0;
                }
                continue;
            }
            let Some(next) = self.kinds.get(at + 1) else {
                break;
            };
            let rest = demand - filled;
            // The rest at the best price by volume that is still to be had, in whole hundredths.
            let rest_price =
                (u128::from(rest) * u128::from(next.price)).div_ceil(u128::from(next.size)) as u64;
            if let Some(best) = self.best {
                // Fewer of this kind only make the bound larger, since all behind it are dearer by volume.
                if cost.price + rest_price > best.price {
                    break;
                }
                let least = Cost {
                    price: cost.price + stepped(rest_price, next.price_step),
                    left: stepped(rest, next.size_step) - rest,
                    cans: cost.cans + rest.div_ceil(next.largest),
                };
                if least >= best {
                    continue;
                }
            }
            self.counts[at] = count;
            self.fill(at + 1, rest, cost);
            self.counts[at] = 0;
        }
    }
}

/// The next multiple of a step that is not below a number.
fn stepped(number: u64, step: u64) -> u64 {
    if step == 0 {
        number
    } else {
        number.div_ceil(step) * step
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::can::can_sizes;
    use units::System;

    #[test]
    fn offers_of_a_shop_take_few_looks() {
        let mut most = 0;
        for system in [System::UsCustomary, System::Metric] {
            for demand in 1..=400_u64 {
                let offers: Vec<(u64, u64)> = can_sizes(system)
                    .iter()
                    .enumerate()
                    .map(|(place, size)| {
                        // By volume the large cans are cheaper, by a little that differs.
                        let noise = (demand * 7 + place as u64 * 31) % 90;
                        let price = (size.volume().as_litres() * 2500.0) as u64 + 300 + noise;
                        (size.picolitres(), price)
                    })
                    .collect();
                let mut search = Search::new(&offers);
                search.run(demand * 99_990_001_234).unwrap();
                most = most.max(search.looks);
            }
        }
        assert!(most < 2000, "{most}");
    }
}
