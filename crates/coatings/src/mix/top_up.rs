//! What to add to what is there: a rest to top up, a dose that went over.

use units::Mass;

use super::component::By;
use super::recipe::{Recipe, amount};
use crate::mix::RecipeError;

/// What puts a batch right into which too much of something was poured.
#[derive(Clone, Debug, PartialEq)]
pub struct Mend {
    /// What to add of each component; nothing of that which there was most of.
    pub additions: Vec<Mass>,
    /// What the whole batch comes to.
    pub total: Mass,
}

impl Recipe {
    /// What to weigh in of each component so that what is left of a batch grows to the wanted mass:
    /// `(wanted - rest) s / S`.
    ///
    /// # Errors
    /// [`RecipeError::MoreThanWanted`], [`RecipeError::By`] or [`RecipeError::Amount`].
    pub fn top_up(&self, rest: Mass, wanted: Mass) -> Result<Vec<Mass>, RecipeError> {
        amount(rest.as_kilograms())?;
        amount(wanted.as_kilograms())?;
        if rest > wanted {
            return Err(RecipeError::MoreThanWanted { rest, wanted });
        }
        self.batch_by_mass(wanted - rest)
    }

    /// What to add to what was poured so far, `p` of each component, so that the ratio holds and the batch comes to the
    /// wanted mass `M`, or to more where a component went over: `T = max (M, p S / s)`, each gets `T s / S - p`.
    ///
    /// # Errors
    /// [`RecipeError::Count`], [`RecipeError::By`] or [`RecipeError::Amount`].
    ///
    /// # Example
    /// 60 g of umber instead of 50: the rest of the batch grows by a fifth.
    /// ```
    /// # use coatings::mix::{By, Component, Recipe};
    /// # use units::Mass;
    /// # let part = |name: &str, share| Component { name: name.into(), share };
    /// # let sage = Recipe::new(vec![part("white", 7.0), part("green", 2.0), part("umber", 1.0)], By::Weight)?;
    /// let mend = sage.complete(&[350.0, 100.0, 60.0].map(Mass::grams), Mass::ZERO)?;
    /// assert!((mend.additions[0].as_grams() - 70.0).abs() < 1e-9);
    /// assert!((mend.total.as_grams() - 600.0).abs() < 1e-9);
    /// # Ok::<(), coatings::mix::RecipeError>(())
    /// ```
    pub fn complete(&self, poured: &[Mass], wanted: Mass) -> Result<Mend, RecipeError> {
        self.only(By::Weight)?;
        self.same_count(poured.len())?;
        let mut total = Mass::kilograms(amount(wanted.as_kilograms())?);
        for (place, mass) in poured.iter().enumerate() {
            total = total.max(Mass::kilograms(self.total_with(place, mass.as_kilograms())?));
        }
        let additions = self
            .shares()
            .zip(poured)
            .map(|(share, &mass)| (total * share - mass).max(Mass::ZERO))
            .collect();
        Ok(Mend { additions, total })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::Component;
    use crate::mix::recipe::tests::grams;
    use proptest::prelude::*;

    fn recipe(parts: &[(&str, f64)], by: By) -> Recipe {
        let component = |&(name, share): &(&str, f64)| Component {
            name: name.into(),
            share,
        };
        Recipe::new(parts.iter().map(component).collect(), by).unwrap()
    }

    #[test]
    fn a_rest_is_topped_up_at_the_same_ratio() {
        let tint = recipe(&[("white", 90.0), ("green", 10.0)], By::Weight);
        let more = tint.top_up(Mass::grams(140.0), Mass::grams(500.0)).unwrap();
        assert_eq!(grams(&more), [324.0, 36.0]);
        let error = tint.top_up(Mass::grams(501.0), Mass::grams(500.0)).unwrap_err();
        assert_eq!(
            error.to_string(),
            "There are 501 g already, more than the 500 g wanted. Nothing needs to be added."
        );
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let gram = Mass::grams(1.0);
        let half = recipe(&[("white", 1.0), ("green", 1.0)], By::Weight);
        let count = RecipeError::Count {
            components: 2,
            given: 1,
        };
        assert_eq!(half.complete(&[gram], Mass::ZERO), Err(count));
        assert_eq!(
            half.complete(&[gram, gram * -1.0], Mass::ZERO),
            Err(RecipeError::Amount)
        );
        assert_eq!(
            half.complete(&[gram, gram], gram * f64::NAN),
            Err(RecipeError::Amount)
        );
        let by_volume = recipe(&[("white", 1.0)], By::Volume);
        assert_eq!(
            by_volume.complete(&[gram], Mass::ZERO),
            Err(RecipeError::By(By::Volume))
        );
    }

    proptest! {
        #[test]
        fn a_mended_batch_has_the_ratio_and_no_smaller_one_does(
            parts in prop::collection::vec((1..100_u32, 0..500_u32), 1..6), wanted in 0..3000_u32,
        ) {
            let named: Vec<(&str, f64)> = parts.iter().map(|part| ("part", f64::from(part.0))).collect();
            let poured: Vec<Mass> = parts.iter().map(|part| Mass::grams(f64::from(part.1))).collect();
            let recipe = recipe(&named, By::Weight);
            let wanted = Mass::grams(f64::from(wanted));
            for Mend { additions, total } in [recipe.complete(&poured, Mass::ZERO), recipe.complete(&poured, wanted)].map(Result::unwrap) {
                let mut nothing_added = total == wanted;
                for (place, share) in recipe.shares().enumerate() {
                    let now = poured[place] + additions[place];
                    prop_assert!((now.as_grams() - (total * share).as_grams()).abs() < 1e-9);
                    prop_assert!(additions[place] >= Mass::ZERO);
                    nothing_added |= additions[place].as_grams() < 1e-9;
                }
                prop_assert!(nothing_added, "less of everything would do");
            }
        }
    }
}
