//! Recipes for chalk-type paint as hobby pages give them, and what is taken for its powder by mistake.

use units::{Density, Volume};

use super::chalk::{ChalkBatch, Paint};
use crate::sourced_range::{Provenance, SourcedRange};

/// A recipe in cups and spoons as hobby pages give it. No handbook, standard or extension source was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChalkRecipe {
    /// Its key in saved files.
    pub key: &'static str,
    /// How it is said.
    pub label: &'static str,
    /// Powder in the spoon, as a fraction of the volume of the paint.
    pub powder: SourcedRange,
    /// Water, as a fraction of the volume of the paint.
    pub water: SourcedRange,
}

const fn hobby(low: f64, high: f64) -> SourcedRange {
    SourcedRange::new(
        low,
        high,
        "hobby pages; no handbook, standard or extension source found",
        Provenance::Practice,
    )
}

/// Common recipes, the least powder first.
pub static CHALK_RECIPES: [ChalkRecipe; 4] = [
    ChalkRecipe {
        key: "chalk-eighth",
        label: "1/2 cup powder and 1/4 cup water to a quart of paint",
        powder: hobby(0.125, 0.125),
        water: hobby(0.0625, 0.0625),
    },
    ChalkRecipe {
        key: "chalk-quarter",
        label: "4 tbsp powder and 2 tbsp water to a cup of paint",
        powder: hobby(0.25, 0.25),
        water: hobby(0.125, 0.125),
    },
    ChalkRecipe {
        key: "chalk-third",
        label: "1/3 cup powder and 2 to 3 tbsp water to a cup of paint",
        powder: hobby(1.0 / 3.0, 1.0 / 3.0),
        water: hobby(0.125, 0.1875),
    },
    ChalkRecipe {
        key: "chalk-half",
        label: "2 parts paint to 1 part powder, water as needed",
        powder: hobby(0.5, 0.5),
        water: hobby(0.0, 0.0),
    },
];

/// The recipe with this key in saved files.
pub fn chalk_recipe(key: &str) -> Option<&'static ChalkRecipe> {
    CHALK_RECIPES.iter().find(|recipe| recipe.key == key)
}

impl ChalkRecipe {
    /// The batch for so much paint, with a powder that lies at this density in the spoon.
    pub fn batch(&self, paint: Volume, bulk: Density) -> ChalkBatch {
        ChalkBatch {
            paint: Paint::Volume(paint),
            powder: paint * self.powder.middle() * bulk,
            water: paint * self.water.middle(),
        }
    }
}

/// A powder that is taken for calcium carbonate, and is not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotThis {
    /// The name on the bag.
    pub name: &'static str,
    /// Why not.
    pub reason: &'static str,
    /// How sure that is.
    pub certainty: Provenance,
}

/// What is not to be used in the place of calcium carbonate.
pub static WHY_NOT: [NotThis; 4] = [
    NotThis {
        name: "sodium bicarbonate (baking soda)",
        reason: "It dissolves in the paint's water and dries as crystals. It isn't a pigment.",
        certainty: Provenance::Memory,
    },
    NotThis {
        name: "calcium bicarbonate",
        reason: "It only exists in solution. A bag with this label holds calcium carbonate or sodium bicarbonate: ask which.",
        certainty: Provenance::Memory,
    },
    NotThis {
        name: "hydrated lime",
        reason: "It's caustic. It burns skin and eyes, and attacks colors and binder. It isn't calcium carbonate.",
        certainty: Provenance::Memory,
    },
    NotThis {
        name: "gypsum plaster (plaster of Paris)",
        reason: "It sets in the paint's water. The pot lasts minutes, and lumps stay.",
        certainty: Provenance::Memory,
    },
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::CALCIUM_CARBONATE;

    #[test]
    fn recipes_are_found_by_their_names_and_are_in_order() {
        for recipe in &CHALK_RECIPES {
            assert_eq!(chalk_recipe(recipe.key), Some(recipe));
        }
        assert!(
            CHALK_RECIPES
                .windows(2)
                .all(|pair| pair[0].powder.high < pair[1].powder.low)
        );
        assert!(WHY_NOT.iter().all(|not| not.name != CALCIUM_CARBONATE.name));
    }

    /// By hand: to a liter, a third of a liter of powder at 0.9 kg/L, and 156 mL of water.
    #[test]
    fn a_batch_is_weighed() {
        let bulk = Density::kilograms_per_litre(0.9);
        let batch = CHALK_RECIPES[2].batch(Volume::litres(1.0), bulk);
        assert_eq!(batch.paint, Paint::Volume(Volume::litres(1.0)));
        assert!((batch.powder.as_grams() - 300.0).abs() < 1e-9);
        assert!((batch.water.as_millilitres() - 156.25).abs() < 1e-9);
    }
}
