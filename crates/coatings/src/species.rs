//! Wood species: paintability, pores and bleeding.
//!
//! The classes and the pores are those of the Wood Handbook, FPL-GTR-190 Table 16-1; what it does not say has
//! its own certainty beside it.

use crate::sourced_range::Provenance;

/// A statement about a wood, with its source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stated<T> {
    /// What is stated.
    pub value: T,
    /// Where it comes from.
    pub source: &'static str,
    /// How sure it is.
    pub certainty: Provenance,
}

/// How easily a wood takes latex paint. The classes are those of the Wood Handbook; that I is the easiest and III
/// the hardest is from memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LatexClass {
    /// The easiest.
    I,
    /// Between the two.
    II,
    /// The hardest.
    III,
}

/// How the pores of a wood lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pores {
    /// A softwood: it has none.
    None,
    /// Small and spread evenly.
    Diffuse,
    /// Larger in the early wood, and getting smaller.
    SemiRing,
    /// Large, in a ring of the early wood: they show through paint if they are not filled.
    Ring,
}

/// Whether the color of a wood comes through a light water-based paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Bleed {
    /// Not as a rule.
    None,
    /// Some pieces do.
    Possible,
    /// Count on it.
    Strong,
}

/// A wood, or woods that the trade takes together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Species {
    /// Its key in saved files.
    pub key: &'static str,
    /// Its name in the trade.
    pub name: &'static str,
    /// How easily it takes latex paint; `None` where the table does not have it.
    pub latex_class: Option<Stated<LatexClass>>,
    /// How its pores lie.
    pub pores: Stated<Pores>,
    /// Whether its extractives bleed.
    pub bleed: Stated<Bleed>,
    /// What to watch out for of its resin and knots, if it has resin. That the wood is a resinous one is from memory.
    pub resin: Option<Stated<&'static str>>,
}

const TABLE: &str = "Wood Handbook FPL-GTR-190 Table 16-1";
const GENERIC: &str = "typical for this kind of wood";
const TRADE: &str = "no neutral source found; check with a damp white cloth";

const fn read<T: Copy>(value: T, source: &'static str) -> Stated<T> {
    Stated {
        value,
        source,
        certainty: Provenance::Read,
    }
}

const fn memory<T: Copy>(value: T) -> Stated<T> {
    Stated {
        value,
        source: GENERIC,
        certainty: Provenance::Memory,
    }
}

const CLASS_I: Stated<LatexClass> = read(LatexClass::I, TABLE);
const CLASS_II: Stated<LatexClass> = read(LatexClass::II, TABLE);
const CLASS_III: Stated<LatexClass> = read(LatexClass::III, TABLE);

const NO_VESSELS: Stated<Pores> = memory(Pores::None);
const DIFFUSE: Stated<Pores> = read(Pores::Diffuse, TABLE);
const SEMI_RING: Stated<Pores> = read(Pores::SemiRing, TABLE);
const RING: Stated<Pores> = read(Pores::Ring, TABLE);

/// Redwood and western redcedar are named there.
const EXTRACTIVES: Stated<Bleed> = read(
    Bleed::Strong,
    "water-soluble extractives, Wood Handbook FPL-GTR-190 p. 378",
);
/// Pine is named there.
const PINE: Stated<Bleed> = read(
    Bleed::None,
    "not generally prone to bleed, Wood Handbook FPL-GTR-190 p. 378",
);
const TANNIN: Stated<Bleed> = Stated {
    value: Bleed::Possible,
    source: TRADE,
    certainty: Provenance::Practice,
};
const REMEMBERED: Stated<Bleed> = memory(Bleed::Possible);
const NO_BLEED: Stated<Bleed> = memory(Bleed::None);

const RESIN: Stated<&str> = read(
    "Resin bleeds through several coats. Scrape or sand it off, then seal the knots.",
    "NAVEDTRA 14044 p. 8-6",
);

const fn wood(
    key: &'static str,
    name: &'static str,
    latex_class: Stated<LatexClass>,
    pores: Stated<Pores>,
    bleed: Stated<Bleed>,
    resin: Option<Stated<&'static str>>,
) -> Species {
    Species {
        key,
        name,
        latex_class: Some(latex_class),
        pores,
        bleed,
        resin,
    }
}

/// Every wood that is known, the easiest to paint first; what the table lacks stands last.
pub static SPECIES: [Species; 36] = [
    wood(
        "western-redcedar",
        "Western redcedar",
        CLASS_I,
        NO_VESSELS,
        EXTRACTIVES,
        None,
    ),
    wood(
        "incense-cedar",
        "Incense cedar",
        CLASS_I,
        NO_VESSELS,
        REMEMBERED,
        None,
    ),
    wood(
        "northern-white-cedar",
        "Northern white cedar",
        CLASS_I,
        NO_VESSELS,
        REMEMBERED,
        None,
    ),
    wood(
        "port-orford-cedar",
        "Port-Orford cedar",
        CLASS_I,
        NO_VESSELS,
        REMEMBERED,
        None,
    ),
    wood(
        "alaska-yellow-cedar",
        "Alaska yellow cedar",
        CLASS_I,
        NO_VESSELS,
        REMEMBERED,
        None,
    ),
    wood("redwood", "Redwood", CLASS_I, NO_VESSELS, EXTRACTIVES, None),
    wood(
        "eastern-white-pine",
        "Eastern white pine",
        CLASS_I,
        NO_VESSELS,
        PINE,
        Some(RESIN),
    ),
    wood(
        "western-white-pine",
        "Western white pine",
        CLASS_I,
        NO_VESSELS,
        PINE,
        Some(RESIN),
    ),
    wood("spruce", "Spruce", CLASS_I, NO_VESSELS, NO_BLEED, Some(RESIN)),
    wood("true-fir", "True fir", CLASS_I, NO_VESSELS, NO_BLEED, None),
    wood("red-alder", "Red alder", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("aspen", "Aspen or cottonwood", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("basswood", "Basswood", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("beech", "Beech", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("birch", "Birch", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("cherry", "Cherry", CLASS_I, DIFFUSE, TANNIN, None),
    wood("sugar-maple", "Sugar maple", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("sweetgum", "Sweetgum", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("sycamore", "Sycamore", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood("yellow-poplar", "Yellow-poplar", CLASS_I, DIFFUSE, NO_BLEED, None),
    wood(
        "baldcypress",
        "Baldcypress",
        CLASS_II,
        NO_VESSELS,
        REMEMBERED,
        None,
    ),
    wood(
        "ponderosa-pine",
        "Ponderosa pine",
        CLASS_II,
        NO_VESSELS,
        PINE,
        Some(RESIN),
    ),
    wood(
        "larch",
        "Larch or tamarack",
        CLASS_II,
        NO_VESSELS,
        NO_BLEED,
        Some(RESIN),
    ),
    wood(
        "western-hemlock",
        "Western hemlock",
        CLASS_II,
        NO_VESSELS,
        NO_BLEED,
        None,
    ),
    wood("butternut", "Butternut", CLASS_II, SEMI_RING, NO_BLEED, None),
    wood("walnut", "Walnut", CLASS_II, SEMI_RING, TANNIN, None),
    wood(
        "douglas-fir",
        "Douglas-fir",
        CLASS_III,
        NO_VESSELS,
        NO_BLEED,
        Some(RESIN),
    ),
    wood(
        "southern-pine",
        "Southern pine",
        CLASS_III,
        NO_VESSELS,
        PINE,
        Some(RESIN),
    ),
    wood(
        "radiata-pine",
        "Radiata pine",
        CLASS_III,
        NO_VESSELS,
        PINE,
        Some(RESIN),
    ),
    wood("ash", "Ash", CLASS_III, RING, NO_BLEED, None),
    wood("chestnut", "Chestnut", CLASS_III, RING, REMEMBERED, None),
    wood("elm", "American elm", CLASS_III, RING, NO_BLEED, None),
    wood("hickory", "Hickory", CLASS_III, RING, NO_BLEED, None),
    wood("red-oak", "Red oak", CLASS_III, RING, TANNIN, None),
    wood("white-oak", "White oak", CLASS_III, RING, TANNIN, None),
    Species {
        key: "mahogany",
        name: "Mahogany",
        latex_class: None,
        pores: Stated {
            value: Pores::Diffuse,
            source: GENERIC,
            certainty: Provenance::Memory,
        },
        bleed: Stated {
            value: Bleed::Strong,
            source: TRADE,
            certainty: Provenance::Practice,
        },
        resin: None,
    },
];

/// The wood with this key in saved files.
///
/// # Example
/// ```
/// use coatings::{Bleed, species};
/// assert_eq!(species("redwood").map(|wood| wood.bleed.value), Some(Bleed::Strong));
/// ```
pub fn species(key: &str) -> Option<&'static Species> {
    SPECIES.iter().find(|species| species.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_kebab_case() {
        for (place, wood) in SPECIES.iter().enumerate() {
            assert!(SPECIES[..place].iter().all(|other| other.key != wood.key));
            assert!(
                wood.key.bytes().all(|b| b.is_ascii_lowercase() || b == b'-'),
                "{}",
                wood.key
            );
            assert_eq!(species(wood.key), Some(wood));
        }
    }

    /// Wood Handbook FPL-GTR-190 Table 16-1: 20 entries of class I, 6 of class II, 9 of class III.
    #[test]
    fn the_table_is_whole() {
        let count = |class| {
            SPECIES
                .iter()
                .filter(|wood| wood.latex_class.map(|stated| stated.value) == Some(class))
                .count()
        };
        assert_eq!(
            [LatexClass::I, LatexClass::II, LatexClass::III].map(count),
            [20, 6, 9]
        );
        let of = |key| species(key).unwrap().latex_class.unwrap().value;
        assert_eq!(of("yellow-poplar"), LatexClass::I);
        assert_eq!(of("walnut"), LatexClass::II);
        assert_eq!(of("douglas-fir"), LatexClass::III);
        assert!(SPECIES.is_sorted_by_key(|wood| wood.latex_class.map_or(4, |stated| stated.value as u8)));
    }

    /// The ring-porous and semi-ring-porous woods of the same table.
    #[test]
    fn ring_porous_woods_are_those_of_the_table() {
        let with = |pores| -> Vec<&str> {
            SPECIES
                .iter()
                .filter(|wood| wood.pores.value == pores)
                .map(|wood| wood.key)
                .collect()
        };
        assert_eq!(
            with(Pores::Ring),
            ["ash", "chestnut", "elm", "hickory", "red-oak", "white-oak"]
        );
        assert_eq!(with(Pores::SemiRing), ["butternut", "walnut"]);
    }

    /// Only redwood, western redcedar and pine are named in what was read about bleed.
    #[test]
    fn what_was_not_read_does_not_say_so() {
        for wood in &SPECIES {
            let named = ["redwood", "western-redcedar"].contains(&wood.key) || wood.key.ends_with("-pine");
            assert_eq!(wood.bleed.certainty == Provenance::Read, named, "{}", wood.key);
        }
        let mahogany = species("mahogany").unwrap();
        assert_eq!(mahogany.latex_class, None);
        assert_ne!(mahogany.pores.certainty, Provenance::Read);
    }

    #[test]
    fn pines_warn_of_resin() {
        for wood in SPECIES.iter().filter(|wood| wood.key.ends_with("-pine")) {
            assert!(wood.resin.is_some(), "{}", wood.key);
        }
    }
}
