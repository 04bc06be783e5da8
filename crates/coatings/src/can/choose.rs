//! Which cans to buy: the cheapest set that is enough, counting what stands on the shelf.
//!
//! With `n` cans of each offer, `price = sum n x price of one` is made as small as it can be, so that
//! `sum n x size + stock >= need`.

use std::fmt;

use units::Volume;

use super::price::LARGEST_PRICE;
use super::search::{Cost, Search};
use super::size::PER_LITRE;

/// A demand above this is likely a misplaced decimal point.
const LARGEST_NEED: Volume = Volume::litres(1000.0);
/// The smallest size of a can.
const SMALLEST_SIZE: Volume = Volume::millilitres(1.0);
/// The most offers. No shop has that many sizes.
const MOST_OFFERS: usize = 64;

/// A can that a shop sells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offer {
    /// What is in it.
    pub size: Volume,
    /// Its price in hundredths of the currency; zero if it is free.
    pub price: u64,
}

/// What to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Purchase {
    /// How many cans of each offer.
    pub counts: Vec<u32>,
    /// What they cost together, in hundredths of the currency.
    pub price: u64,
    /// What is left over of stock and purchase together.
    pub left: Volume,
    /// How many cans of the stock are used, from the first on.
    pub used_from_stock: usize,
    /// Whether the purchase is proven optimal. It always is, unless the sizes are many and odd.
    pub proven: bool,
}

/// Why no purchase could be chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ChoiceError {
    /// The need is not a number, or negative.
    Demand,
    /// The need is above 1000 L.
    NeedTooLarge,
    /// What is in this can in stock, counted from 0, is not between nothing and 1000 L.
    Stock(usize),
    /// The stock is too little, and nothing is offered.
    NoOffers,
    /// More than 64 offers.
    TooManyOffers,
    /// The size of this offer, counted from 0, is not between 1 mL and 1000 L.
    Size(usize),
    /// The price of this offer, counted from 0, is above [`LARGEST_PRICE`].
    Price(usize),
}

impl fmt::Display for ChoiceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ChoiceError::Demand => write!(f, "Check the area and coats. They give no valid volume."),
            ChoiceError::NeedTooLarge => write!(
                f,
                "Check the measurements and their decimal points. They need over 1000 L."
            ),
            ChoiceError::Stock(place) => write!(f, "Enter what's left in can {}.", place + 1),
            ChoiceError::NoOffers => write!(f, "Add at least one can size the store sells."),
            ChoiceError::TooManyOffers => write!(
                f,
                "Use at most {MOST_OFFERS} can sizes. Delete the ones you wouldn't buy."
            ),
            ChoiceError::Size(offer) => write!(f, "Give store can {} a size from 1 mL to 1000 L.", offer + 1),
            ChoiceError::Price(offer) => write!(
                f,
                "Check the decimal point in the price of store can {}. The most is {}.",
                offer + 1,
                LARGEST_PRICE / 100
            ),
        }
    }
}

impl std::error::Error for ChoiceError {}

/// The cheapest cans that, with the stock, hold at least the volume needed.
///
/// Cans in stock are free; they are taken first, in their order, until they are enough. Of equally cheap
/// purchases the one with the least left over is taken, then that with the fewest cans, then that with more
/// of what is cheapest by volume.
///
/// # Errors
/// A [`ChoiceError`] if the demand, the stock or an offer is invalid.
///
/// # Example
/// Three quarts are needed. A gallon at 40.00 is cheaper than three quarts at 16.00.
/// ```
/// use coatings::can::{Offer, can, choose};
/// let offer = |key, price| Offer { size: can(key).unwrap().volume(), price };
/// let offers = [offer("us-quart", 1600), offer("us-gallon", 4000)];
/// let demand = can("us-quart").unwrap().volume() * 3.0;
/// let purchase = choose(demand, &[], &offers)?;
/// assert_eq!((purchase.counts, purchase.price), (vec![0, 1], 4000));
/// # Ok::<(), coatings::can::ChoiceError>(())
/// ```
pub fn choose(demand: Volume, stock: &[Volume], offers: &[Offer]) -> Result<Purchase, ChoiceError> {
    if !(demand >= Volume::ZERO && demand.as_litres().is_finite()) {
        return Err(ChoiceError::Demand);
    }
    if demand > LARGEST_NEED {
        return Err(ChoiceError::NeedTooLarge);
    }
    let wanted = rounded_up(demand);
    let mut held = 0_u64;
    let mut used_from_stock = 0;
    for (place, can) in stock.iter().enumerate() {
        if !(Volume::ZERO..=LARGEST_NEED).contains(can) {
            return Err(ChoiceError::Stock(place));
        }
        if held < wanted {
            held = held.saturating_add(rounded_down(*can));
            used_from_stock = place + 1;
        }
    }
    for (place, offer) in offers.iter().enumerate() {
        if !(SMALLEST_SIZE..=LARGEST_NEED).contains(&offer.size) {
            return Err(ChoiceError::Size(place));
        }
        if offer.price > LARGEST_PRICE {
            return Err(ChoiceError::Price(place));
        }
    }
    if offers.len() > MOST_OFFERS {
        return Err(ChoiceError::TooManyOffers);
    }
    let mut best = Cost::default();
    let mut counts = vec![0; offers.len()];
    let mut proven = true;
    if held < wanted {
        let sizes: Vec<(u64, u64)> = offers
            .iter()
            .map(|offer| (rounded_down(offer.size), offer.price))
            .collect();
        let mut search = Search::new(&sizes);
        best = search.run(wanted - held).ok_or(ChoiceError::NoOffers)?;
        for (offer, count) in search.counts() {
            counts[offer] = u32::try_from(count).unwrap_or(u32::MAX);
        }
        proven = search.is_proven();
        held = wanted;
    }
    Ok(Purchase {
        counts,
        price: best.price,
        left: Volume::litres((held - wanted + best.left) as f64 / PER_LITRE),
        used_from_stock,
        proven,
    })
}

/// As [`choose`] where no price is known: the fewest cans, and of equally many those that leave the least over.
///
/// # Errors
/// As for [`choose`]; a size counts as an offer.
///
/// # Example
/// ```
/// use coatings::can::fewest;
/// use units::Volume;
/// let sizes = [250.0, 750.0, 1000.0].map(Volume::millilitres);
/// let purchase = fewest(Volume::millilitres(1200.0), &[], &sizes)?;
/// assert_eq!(purchase.counts, [1, 0, 1]);
/// # Ok::<(), coatings::can::ChoiceError>(())
/// ```
pub fn fewest(demand: Volume, stock: &[Volume], sizes: &[Volume]) -> Result<Purchase, ChoiceError> {
    // With equal prices, the cheapest purchase has the fewest cans.
    let alike: Vec<Offer> = sizes.iter().map(|&size| Offer { size, price: 1 }).collect();
    choose(demand, stock, &alike)
}

/// The share of an `f64` that may be noise of its last places: twice a pint is not more than a quart.
const NOISE: f64 = 4.0 * f64::EPSILON;

/// The demand in picoliters, rounded up.
fn rounded_up(volume: Volume) -> u64 {
    (volume.as_litres() * PER_LITRE * (1.0 - NOISE)).ceil() as u64
}

/// The contents of a can in picoliters, rounded down.
fn rounded_down(volume: Volume) -> u64 {
    (volume.as_litres() * PER_LITRE * (1.0 + NOISE)).floor() as u64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::can::{can, can_sizes};
    use proptest::prelude::*;
    use units::System;

    fn ml(value: u64) -> Volume {
        Volume::millilitres(value as f64)
    }

    fn offers(list: &[(u64, u64)]) -> Vec<Offer> {
        list.iter()
            .map(|&(size, price)| Offer {
                size: ml(size),
                price,
            })
            .collect()
    }

    /// All purchases, one after the other: price, left over in milliliters, cans.
    fn by_trying(demand: u64, list: &[(u64, u64)]) -> Option<(u64, u64, u64)> {
        if demand == 0 {
            return Some((0, 0, 0));
        }
        let (&(size, price), others) = list.split_first()?;
        (0..=demand.div_ceil(size))
            .filter_map(|count| {
                let filled = count * size;
                let (p, l, c) = if filled >= demand {
                    (0, filled - demand, 0)
                } else {
                    by_trying(demand - filled, others)?
                };
                Some((p + count * price, l, c + count))
            })
            .min()
    }

    fn in_ml(volume: Volume) -> u64 {
        volume.as_millilitres().round() as u64
    }

    #[test]
    fn ties_go_to_the_least_left_then_to_the_fewest_cans() {
        // Both cost 20.00 for 900 mL; the two half liters leave 100 mL, the large one 1600.
        let purchase = choose(ml(900), &[], &offers(&[(2500, 2000), (500, 1000)])).unwrap();
        assert_eq!((purchase.counts, in_ml(purchase.left)), (vec![0, 2], 100));
        // As much, as dear: one can rather than two.
        let purchase = choose(ml(900), &[], &offers(&[(500, 1000), (1000, 2000)])).unwrap();
        assert_eq!(purchase.counts, [0, 1]);
        // Alike in all: the first.
        let purchase = choose(ml(900), &[], &offers(&[(500, 1000), (500, 1000)])).unwrap();
        assert_eq!(purchase.counts, [2, 0]);
    }

    #[test]
    fn the_shelf_is_used_first_and_in_its_order() {
        let stock = [ml(300), ml(200), ml(500)];
        let shop = offers(&[(1000, 1500)]);
        let purchase = choose(ml(450), &stock, &shop).unwrap();
        assert_eq!((purchase.used_from_stock, purchase.price), (2, 0));
        assert_eq!((purchase.counts, in_ml(purchase.left)), (vec![0], 50));
        let purchase = choose(ml(1500), &stock, &shop).unwrap();
        assert_eq!((purchase.used_from_stock, purchase.counts), (3, vec![1]));
        assert_eq!(in_ml(purchase.left), 500);
        // What stands on the shelf needs no shop.
        assert_eq!(choose(ml(450), &stock, &[]).unwrap().used_from_stock, 2);
    }

    #[test]
    fn a_need_of_exactly_some_cans_takes_no_more() {
        for size in can_sizes(System::UsCustomary)
            .iter()
            .chain(can_sizes(System::Metric))
        {
            for count in 1..=9_u32 {
                let offer = Offer {
                    size: size.volume(),
                    price: 700,
                };
                let purchase = choose(size.volume() * f64::from(count), &[], &[offer]).unwrap();
                assert_eq!(purchase.counts, [count], "{}", size.key);
                assert_eq!(purchase.left, Volume::ZERO);
            }
        }
        let quart = Volume::litres(can("us-quart").unwrap().volume().as_litres() + 2e-12);
        let purchase = fewest(quart, &[], &[can("us-pint").unwrap().volume()]).unwrap();
        assert_eq!(purchase.counts, [3], "two picolitres more are more");
    }

    #[test]
    fn what_cannot_be_counted_is_refused() {
        let shop = offers(&[(1000, 1500)]);
        for (litres, error) in [
            (f64::NAN, ChoiceError::Demand),
            (-0.1, ChoiceError::Demand),
            (f64::INFINITY, ChoiceError::Demand),
            (1000.1, ChoiceError::NeedTooLarge),
        ] {
            assert_eq!(choose(Volume::litres(litres), &[], &shop), Err(error), "{litres}");
        }
        let refused = |stock: &[Volume], shop: &[Offer]| choose(ml(900), stock, shop).unwrap_err();
        assert_eq!(
            refused(&[ml(1), Volume::litres(-1.0)], &shop),
            ChoiceError::Stock(1)
        );
        for litres in [f64::NAN, f64::INFINITY, 1e9] {
            assert_eq!(refused(&[Volume::litres(litres)], &shop), ChoiceError::Stock(0));
        }
        assert_eq!(refused(&[], &[]), ChoiceError::NoOffers);
        assert_eq!(refused(&[], &offers(&[(500, 1), (0, 1)])), ChoiceError::Size(1));
        assert_eq!(
            refused(&[], &offers(&[(500, LARGEST_PRICE + 1)])),
            ChoiceError::Price(0)
        );
        assert_eq!(refused(&[], &offers(&[(500, 1); 65])), ChoiceError::TooManyOffers);
        assert!(ChoiceError::NeedTooLarge.to_string().contains("1000 L"));
        assert_eq!(choose(Volume::ZERO, &[], &shop).unwrap().counts, [0]);
    }

    #[test]
    fn free_cans_are_taken_and_the_search_ends() {
        let purchase = choose(ml(39_930), &[], &offers(&[(700, 0), (90, 0), (1000, 100)])).unwrap();
        assert_eq!((purchase.price, purchase.counts[2]), (0, 0));
        assert_eq!(in_ml(purchase.left), 0);
        // Odd sizes, all free, are the worst there is: an answer comes, if not a proof.
        let odd: Vec<Offer> = (0..20)
            .map(|n| Offer {
                size: Volume::litres(0.7 + 0.013_579_246_801 * f64::from(n)),
                price: 0,
            })
            .collect();
        let purchase = choose(Volume::litres(999.9), &[], &odd).unwrap();
        assert!(
            !purchase.proven && purchase.left < Volume::millilitres(50.0),
            "{purchase:?}"
        );
    }

    fn shop() -> impl Strategy<Value = Vec<(u64, u64)>> {
        let round = (1..8_u64, 0..8_u64).prop_map(|(size, price)| (size * 125, price * 500));
        let odd = (60..900_u64, 0..3000_u64);
        prop::collection::vec(prop_oneof![round, odd], 1..5)
    }

    proptest! {
        #[test]
        fn as_good_as_by_trying_all(demand in 0..1500_u64, list in shop()) {
            let ours = choose(ml(demand), &[], &offers(&list)).unwrap();
            let cans: u64 = ours.counts.iter().map(|&count| u64::from(count)).sum();
            prop_assert!(ours.proven);
            prop_assert_eq!(Some((ours.price, in_ml(ours.left), cans)), by_trying(demand, &list));
        }

        #[test]
        fn the_counts_add_up_and_are_never_too_little(
            demand in 0..40_000_u64,
            stock in prop::collection::vec(0..2000_u64, 0..4),
            list in shop(),
        ) {
            let shelf: Vec<Volume> = stock.iter().map(|&can| ml(can)).collect();
            let ours = choose(ml(demand), &shelf, &offers(&list)).unwrap();
            let bought = || list.iter().zip(&ours.counts);
            let price: u64 = bought().map(|((_, price), &count)| price * u64::from(count)).sum();
            let filled: u64 = bought().map(|((size, _), &count)| size * u64::from(count)).sum();
            let held: u64 = stock.iter().take(ours.used_from_stock).sum();
            prop_assert_eq!(price, ours.price);
            prop_assert!(held + filled >= demand);
            prop_assert_eq!(held + filled - demand, in_ml(ours.left));
            // One can less of any kind is too little, unless it is free.
            for ((size, price), _) in bought().filter(|(_, count)| **count > 0) {
                prop_assert!(*price == 0 || held + filled - size < demand);
            }
        }

        #[test]
        fn another_offer_never_makes_it_dearer(
            demand in 0..20_000_u64,
            list in shop(),
            (size, price) in (60..5000_u64, 0..9000_u64),
        ) {
            let before = choose(ml(demand), &[], &offers(&list)).unwrap();
            let mut more = list;
            more.push((size, price));
            prop_assert!(choose(ml(demand), &[], &offers(&more)).unwrap().price <= before.price);
        }

        #[test]
        fn without_prices_no_fewer_cans_are_enough(demand in 1..1500_u64, sizes in prop::collection::vec(60..900_u64, 1..4)) {
            let volumes: Vec<Volume> = sizes.iter().map(|&size| ml(size)).collect();
            let ours = fewest(ml(demand), &[], &volumes).unwrap();
            let alike: Vec<(u64, u64)> = sizes.iter().map(|&size| (size, 1)).collect();
            let cans: u64 = ours.counts.iter().map(|&count| u64::from(count)).sum();
            prop_assert_eq!(Some((cans, in_ml(ours.left), cans)), by_trying(demand, &alike));
        }
    }
}
