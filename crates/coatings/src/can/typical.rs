//! Typical prices of cans, which stand in until the maker enters a price.

use super::size::{CanSize, can};

/// The prices of one material, in whole US dollars by the key of the can.
type Prices = &'static [(&'static str, u64)];

/// What a can of each material costs in a store in the United States, in whole dollars (all from memory, not
/// confirmed, of about 2024; prices of one material differ by half and more between makers).
static TYPICAL: [(&str, Prices); 21] = [
    ("degreaser", &[("us-pint", 6), ("us-quart", 9), ("us-gallon", 22)]),
    (
        "deglosser",
        &[("us-pint", 10), ("us-quart", 15), ("us-gallon", 38)],
    ),
    (
        "wipe-on-stain",
        &[("us-8-fl-oz", 8), ("us-pint", 11), ("us-quart", 17)],
    ),
    (
        "brush-on-stain",
        &[("us-8-fl-oz", 9), ("us-quart", 20), ("us-gallon", 50)],
    ),
    ("bonding-primer", &[("us-quart", 22), ("us-gallon", 50)]),
    ("shellac-primer", &[("us-quart", 27), ("us-gallon", 65)]),
    ("alkyd-stain-blocker", &[("us-quart", 20), ("us-gallon", 48)]),
    ("latex-stain-blocker", &[("us-quart", 18), ("us-gallon", 40)]),
    (
        "clear-shellac",
        &[("us-8-fl-oz", 13), ("us-pint", 18), ("us-quart", 27)],
    ),
    (
        "sanding-sealer",
        &[("us-8-fl-oz", 13), ("us-quart", 24), ("us-gallon", 60)],
    ),
    (
        "wall-latex",
        &[
            ("us-8-fl-oz", 7),
            ("us-quart", 20),
            ("us-gallon", 45),
            ("us-5-gallon", 190),
        ],
    ),
    ("trim-enamel", &[("us-quart", 28), ("us-gallon", 70)]),
    (
        "alkyd-enamel",
        &[("us-8-fl-oz", 10), ("us-quart", 24), ("us-gallon", 65)],
    ),
    (
        "chalk-type-paint",
        &[("us-4-fl-oz", 8), ("us-pint", 23), ("us-quart", 38)],
    ),
    (
        "casein-paint",
        &[("us-pint", 14), ("us-quart", 24), ("us-gallon", 70)],
    ),
    (
        "water-polyurethane",
        &[("us-8-fl-oz", 13), ("us-quart", 27), ("us-gallon", 70)],
    ),
    (
        "oil-polyurethane",
        &[("us-8-fl-oz", 11), ("us-quart", 22), ("us-gallon", 55)],
    ),
    ("clear-wax", &[("us-8-fl-oz", 15), ("us-pint", 24)]),
    ("dark-wax", &[("us-8-fl-oz", 15), ("us-pint", 24)]),
    (
        "tung-oil",
        &[("us-pint", 20), ("us-quart", 32), ("us-gallon", 95)],
    ),
    (
        "linseed-oil",
        &[("us-pint", 9), ("us-quart", 13), ("us-gallon", 32)],
    ),
];

/// Returns the typical price of a can of a generic material, in hundredths of a US dollar. From memory, not
/// confirmed. A metric can costs what its share of the US can nearest in size does.
///
/// # Example
/// ```
/// use coatings::can::{can, typical_price};
/// assert_eq!(typical_price("trim-enamel", can("us-quart").unwrap()), Some(2800));
/// assert_eq!(typical_price("whitewash", can("us-quart").unwrap()), None);
/// ```
pub fn typical_price(material: &str, of: &CanSize) -> Option<u64> {
    let (_, prices) = TYPICAL.iter().find(|(key, _)| *key == material)?;
    let known = prices
        .iter()
        .filter_map(|(key, dollars)| Some((can(key)?, *dollars)));
    let ratio = |size: &CanSize| of.volume() / size.volume();
    let distance = |size: &CanSize| libm::fabs(libm::log(ratio(size)));
    let nearest = known.reduce(|one, other| {
        if distance(other.0) < distance(one.0) {
            other
        } else {
            one
        }
    });
    let (size, dollars) = nearest?;
    Some((dollars as f64 * ratio(size)).round() as u64 * 100)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::can::can_sizes;
    use crate::material::materials;
    use units::System;

    #[test]
    fn every_usual_can_of_every_material_has_a_price() {
        assert_eq!(TYPICAL.len(), materials().count());
        for material in materials() {
            let (_, prices) = TYPICAL.iter().find(|(key, _)| *key == material.key).unwrap();
            let us = can_sizes(System::UsCustomary).iter().map(|size| size.key);
            let usual: Vec<_> = us.filter(|key| material.cans.contains(key)).collect();
            let priced: Vec<_> = prices.iter().map(|(key, _)| *key).collect();
            assert_eq!(priced, usual, "{}", material.key);
            for key in material.cans {
                let price = typical_price(&material.key, can(key).unwrap()).unwrap();
                assert!((300..25_000).contains(&price), "{} {key}: {price}", material.key);
            }
        }
    }

    #[test]
    fn a_larger_can_costs_more_and_less_for_a_liter() {
        for (material, prices) in &TYPICAL {
            let of = |(key, dollars): &(&str, u64)| {
                (*dollars, *dollars as f64 / can(key).unwrap().volume().as_litres())
            };
            let known: Vec<_> = prices.iter().map(of).collect();
            let is_so = |pair: &[(u64, f64)]| pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1;
            assert!(known.windows(2).all(is_so), "{material}: {known:?}");
        }
    }

    /// A liter is 1.057 quarts: 28 dollars make 30.
    #[test]
    fn a_metric_can_costs_its_share_of_the_nearest() {
        assert_eq!(
            typical_price("trim-enamel", can("metric-1-l").unwrap()),
            Some(3000)
        );
    }
}
