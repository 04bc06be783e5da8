//! The tag on a jar of mixed paint: what is in it, of which ratio, from when, what for, what to mind.

use units::{Density, Mass, System, show_volume};

use super::component::By;
use super::recipe::Recipe;

/// The text of the tag of a jar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tag<'a> {
    /// What the maker calls the shade.
    pub name: &'a str,
    /// Its recipe.
    pub recipe: &'a Recipe,
    /// The weighed dose of each component, in order; empty if only the ratio is shown.
    pub doses: &'a [Mass],
    /// The date of mixing, formatted for the locale.
    pub day: &'a str,
    /// What is in the jar.
    pub mass: Mass,
    /// Its density, if it is known.
    pub density: Option<Density>,
    /// The piece or the person that it was made for; empty if it is nobody's.
    pub made_for: &'a str,
    /// What to watch out for, one line each, as [`DUST`](crate::mix::DUST) for chalk-type paint while it is mixed or sanded.
    pub cautions: &'a [&'a str],
}

/// The line that every tag has, whatever is in the jar.
pub const LABELS_HOLD: &str = "Follow the label on each can.";

impl Tag<'_> {
    /// The lines of the tag from the top; masses as `weight` writes them, the volume in this system.
    ///
    /// # Example
    /// ```
    /// use coatings::mix::{By, Component, Recipe, Scale, Tag};
    /// use units::{Density, Mass, System};
    /// let part = |name: &str, share| Component { name: name.into(), share };
    /// let sage = Recipe::new(vec![part("white", 9.0), part("green", 1.0)], By::Weight)?;
    /// let tag = Tag {
    ///     name: "Sage",
    ///     recipe: &sage,
    ///     doses: &sage.batch_by_mass(Mass::grams(500.0))?,
    ///     day: "Oct 4, 2024",
    ///     mass: Mass::grams(500.0),
    ///     density: Some(Density::kilograms_per_litre(1.25)),
    ///     made_for: "hall dresser",
    ///     cautions: &[],
    /// };
    /// assert_eq!(tag.lines(&|mass| Scale::KITCHEN.show(mass), System::Metric), [
    ///     "Sage",
    ///     "Mixed Oct 4, 2024",
    ///     "For hall dresser",
    ///     "500 g, 400 mL at 1.25 kg/L",
    ///     "Recipe by weight:",
    ///     "white 90%, 450 g",
    ///     "green 10%, 50 g",
    ///     "Follow the label on each can.",
    /// ]);
    /// # Ok::<(), coatings::mix::RecipeError>(())
    /// ```
    pub fn lines(&self, weight: &dyn Fn(Mass) -> String, system: System) -> Vec<String> {
        let mut lines = vec![String::from(self.name), format!("Mixed {}", self.day)];
        if !self.made_for.is_empty() {
            lines.push(format!("For {}", self.made_for));
        }
        let mass = weight(self.mass);
        lines.push(match self.density {
            Some(density) if density.as_kilograms_per_litre() > 0.0 => {
                let (volume, unit) = show_volume(self.mass / density, system);
                let density = density.as_kilograms_per_litre();
                format!("{mass}, {volume} {unit} at {density:.2} kg/L")
            }
            _ => mass,
        });
        lines.push(String::from(match self.recipe.by() {
            By::Weight => "Recipe by weight:",
            By::Volume => "Recipe by volume:",
        }));
        for (place, share) in self.recipe.shares().enumerate() {
            let name = &self.recipe.components()[place].name;
            let share = format!("{:.1}", share * 100.0);
            let share = share.strip_suffix(".0").unwrap_or(&share);
            lines.push(match self.doses.get(place) {
                Some(dose) => format!("{name} {share}%, {}", weight(*dose)),
                None => format!("{name} {share}%"),
            });
        }
        lines.extend(self.cautions.iter().copied().map(String::from));
        lines.push(String::from(LABELS_HOLD));
        lines
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::{Component, DUST, Scale};

    #[test]
    fn what_is_not_known_is_left_out() {
        let part = |name: &str, share| Component {
            name: name.into(),
            share,
        };
        let recipe = Recipe::new(vec![part("paint", 2.0), part("powder", 1.0)], By::Volume).unwrap();
        let tag = Tag {
            name: "Chalk white",
            recipe: &recipe,
            doses: &[],
            day: "Jan 1, 1970",
            mass: Mass::grams(212.34),
            density: None,
            made_for: "",
            cautions: &[DUST],
        };
        assert_eq!(
            tag.lines(&|mass| Scale::FINE.show(mass), System::UsCustomary),
            [
                "Chalk white",
                "Mixed Jan 1, 1970",
                "212.3 g",
                "Recipe by volume:",
                "paint 66.7%",
                "powder 33.3%",
                DUST,
                LABELS_HOLD,
            ]
        );
    }
}
