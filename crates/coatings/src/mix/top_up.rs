//! What to add to the rest of a batch.

use units::Mass;

use super::recipe::{Recipe, amount};
use crate::mix::RecipeError;

impl Recipe {
    /// The doses that top up the rest of a batch to the wanted mass: `(wanted - rest) s / S`.
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::recipe::tests::grams;
    use crate::mix::{By, Component};

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
            "You have 501 g already; you want 500 g. Add nothing."
        );
    }
}
