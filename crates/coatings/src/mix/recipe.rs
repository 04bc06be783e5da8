//! Custom colors: a ratio of components, by weight or by volume, and what to weigh in for a batch.
//!
//! With the shares `s` and their sum `S`, a batch of `M` takes `M s / S` of each component.

use units::Mass;

use super::component::{By, Component, MOST_COMPONENTS};
use super::recipe_error::RecipeError;

/// A ratio of components.
#[derive(Clone, Debug, PartialEq)]
pub struct Recipe {
    components: Vec<Component>,
    by: By,
}

/// Whether a number can be an amount.
pub(super) fn amount(value: f64) -> Result<f64, RecipeError> {
    if value >= 0.0 && value.is_finite() {
        Ok(value)
    } else {
        Err(RecipeError::Amount)
    }
}

impl Recipe {
    /// A recipe of these components.
    ///
    /// # Errors
    /// [`RecipeError::Empty`], [`RecipeError::TooMany`] or [`RecipeError::Share`].
    pub fn new(components: Vec<Component>, by: By) -> Result<Self, RecipeError> {
        if components.is_empty() {
            return Err(RecipeError::Empty);
        }
        if components.len() > MOST_COMPONENTS {
            return Err(RecipeError::TooMany);
        }
        let broken = |component: &Component| !(component.share > 0.0 && component.share.is_finite());
        if let Some(place) = components.iter().position(broken) {
            return Err(RecipeError::Share(place));
        }
        let recipe = Recipe { components, by };
        if recipe.sum().is_finite() {
            Ok(recipe)
        } else {
            Err(RecipeError::Share(0))
        }
    }

    /// The components, in the maker's order.
    pub fn components(&self) -> &[Component] {
        &self.components
    }

    /// What the shares are shares of.
    pub fn by(&self) -> By {
        self.by
    }

    /// The shares of the whole, which add up to 1.
    pub fn shares(&self) -> impl Iterator<Item = f64> {
        let sum = self.sum();
        self.components.iter().map(move |component| component.share / sum)
    }

    fn sum(&self) -> f64 {
        self.components.iter().map(|component| component.share).sum()
    }

    pub(super) fn only(&self, by: By) -> Result<(), RecipeError> {
        if self.by == by {
            Ok(())
        } else {
            Err(RecipeError::By(self.by))
        }
    }

    pub(super) fn same_count(&self, given: usize) -> Result<(), RecipeError> {
        let components = self.components.len();
        if components == given {
            Ok(())
        } else {
            Err(RecipeError::Count { components, given })
        }
    }

    /// What to weigh in of each component for a batch of this mass.
    ///
    /// # Errors
    /// [`RecipeError::By`] for a recipe by volume; [`RecipeError::Amount`].
    ///
    /// # Example
    /// ```
    /// use coatings::mix::{By, Component, Recipe};
    /// use units::Mass;
    /// let part = |name: &str, share| Component { name: name.into(), share };
    /// let sage = Recipe::new(vec![part("white", 7.0), part("green", 2.0), part("umber", 1.0)], By::Weight)?;
    /// let batch = sage.batch_by_mass(Mass::grams(500.0))?;
    /// assert_eq!(batch, [350.0, 100.0, 50.0].map(Mass::grams));
    /// # Ok::<(), coatings::mix::RecipeError>(())
    /// ```
    pub fn batch_by_mass(&self, total: Mass) -> Result<Vec<Mass>, RecipeError> {
        self.only(By::Weight)?;
        amount(total.as_kilograms())?;
        Ok(self.shares().map(|share| total * share).collect())
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use proptest::prelude::*;

    pub(in crate::mix) fn recipe(shares: &[f64], by: By) -> Recipe {
        let component = |share: &f64| Component {
            name: format!("{share} parts"),
            share: *share,
        };
        Recipe::new(shares.iter().map(component).collect(), by).unwrap()
    }

    pub(in crate::mix) fn grams(masses: &[Mass]) -> Vec<f64> {
        masses
            .iter()
            .map(|mass| (mass.as_grams() * 1e6).round() / 1e6)
            .collect()
    }

    #[test]
    fn a_batch_from_its_total() {
        let by_weight = recipe(&[3.0, 1.0], By::Weight);
        assert_eq!(
            grams(&by_weight.batch_by_mass(Mass::grams(200.0)).unwrap()),
            [150.0, 50.0]
        );
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let component = |share| Component {
            name: "white".into(),
            share,
        };
        assert_eq!(Recipe::new(Vec::new(), By::Weight), Err(RecipeError::Empty));
        assert_eq!(
            Recipe::new(vec![component(1.0); 41], By::Weight),
            Err(RecipeError::TooMany)
        );
        for share in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(
                Recipe::new(vec![component(1.0), component(share)], By::Weight),
                Err(RecipeError::Share(1))
            );
        }
        let by_weight = recipe(&[1.0, 1.0], By::Weight);
        let by_volume = recipe(&[1.0, 1.0], By::Volume);
        let gram = Mass::grams(1.0);
        assert_eq!(by_volume.batch_by_mass(gram), Err(RecipeError::By(By::Volume)));
        assert_eq!(by_weight.batch_by_mass(gram * -1.0), Err(RecipeError::Amount));
    }

    proptest! {
        #[test]
        fn a_batch_adds_up(shares in prop::collection::vec(0.001..1000.0_f64, 1..10), grams in 0.0..5000.0_f64) {
            let batch = recipe(&shares, By::Weight).batch_by_mass(Mass::grams(grams)).unwrap();
            let sum: Mass = batch.into_iter().sum();
            prop_assert!((sum.as_grams() - grams).abs() < 1e-9);
        }
    }
}
