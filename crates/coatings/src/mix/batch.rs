//! A batch of a recipe: what to weigh in for a mass or a volume.
//!
//! Volumes are assumed to add up: with the shares by weight `w` and the densities `rho`, the density of the
//! mix is `1 / sum (w / rho)`. For paints of one kind the error is smaller than the uncertainty of their
//! densities (common practice, no source).

use units::{Density, Mass, Volume};

use super::component::By;
use super::recipe::{Recipe, amount};
use crate::estimate::Estimate;
use crate::mix::RecipeError;
use crate::propagate::linear_estimate;
use crate::sourced_range::SourcedRange;
use crate::unit::KilogramsPerLitre;

/// How large a batch is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wanted {
    /// By weight.
    Mass(Mass),
    /// By volume.
    Volume(Volume),
}

/// The doses of a batch and its totals, with uncertainties from the densities by the linear law (JCGM 100,
/// 5.1.2).
#[derive(Clone, Debug, PartialEq)]
pub struct Batch {
    /// What to weigh in of each component, in the order of the recipe.
    pub doses: Vec<Estimate<Mass>>,
    /// Their total mass.
    pub mass: Estimate<Mass>,
    /// The density of the mix, where that of each component is known.
    pub density: Option<Estimate<Density>>,
    /// Its volume, where the density is known.
    pub volume: Option<Estimate<Volume>>,
}

fn exact(value: Mass) -> Estimate<Mass> {
    Estimate {
        value,
        standard_uncertainty: Mass::ZERO,
    }
}

impl Recipe {
    /// A batch of this mass or volume, to be weighed in. `densities` has one entry for each component, in kg/L, if it is
    /// known. A recipe by weight needs none for a batch by mass; any other batch needs them all.
    ///
    /// # Errors
    /// [`RecipeError::Count`], [`RecipeError::NoDensity`], [`RecipeError::Density`] or [`RecipeError::Amount`].
    ///
    /// # Example
    /// Half a liter of nine parts of a paint of 1.3 kg/L and one part of a tint of 1.1 kg/L, by weight.
    /// ```
    /// use coatings::SourcedRange;
    /// use coatings::mix::{By, Component, Recipe, Wanted};
    /// use units::Volume;
    /// let part = |name: &str, share| Component { name: name.into(), share };
    /// let pale = Recipe::new(vec![part("white", 9.0), part("green", 1.0)], By::Weight)?;
    /// let densities = [1.3, 1.1].map(|density| Some(SourcedRange::own(density, density)));
    /// let batch = pale.batch(Wanted::Volume(Volume::litres(0.5)), &densities)?;
    /// // 1 / (0.9 / 1.3 + 0.1 / 1.1) = 1.27679 kg/L
    /// assert!((batch.mass.value.as_grams() - 638.393).abs() < 1e-3);
    /// assert!((batch.doses[1].value.as_grams() - 63.839).abs() < 1e-3);
    /// # Ok::<(), coatings::mix::RecipeError>(())
    /// ```
    pub fn batch(
        &self,
        wanted: Wanted,
        densities: &[Option<SourcedRange<KilogramsPerLitre>>],
    ) -> Result<Batch, RecipeError> {
        self.same_count(densities.len())?;
        let size = match wanted {
            Wanted::Mass(mass) => mass.as_kilograms(),
            Wanted::Volume(volume) => volume.as_litres(),
        };
        amount(size)?;
        let mut inputs = Vec::with_capacity(densities.len());
        for (place, density) in densities.iter().enumerate() {
            if let Some(figure) = density {
                if !(0.0 < figure.low && figure.low <= figure.high && figure.high.is_finite()) {
                    return Err(RecipeError::Density(place));
                }
                inputs.push(figure.distribution());
            }
        }
        if let Some(place) = densities.iter().position(Option::is_none) {
            return match wanted {
                Wanted::Mass(mass) if self.by() == By::Weight => Ok(Batch {
                    doses: self.shares().map(|share| exact(mass * share)).collect(),
                    mass: exact(mass),
                    density: None,
                    volume: None,
                }),
                _ => Err(RecipeError::NoDensity(place)),
            };
        }

        let shares: Vec<f64> = self.shares().collect();
        let by = self.by();
        // Mass and volume of one share of each component together, in kilograms and liters.
        let whole = |densities: &[f64]| -> (f64, f64) {
            let of = |density: f64, share: f64| match by {
                By::Weight => (share, share / density),
                By::Volume => (share * density, share),
            };
            let mut whole = (0.0, 0.0);
            for (density, share) in densities.iter().zip(&shares) {
                let (mass, volume) = of(*density, *share);
                whole = (whole.0 + mass, whole.1 + volume);
            }
            whole
        };
        let factor = |densities: &[f64]| match wanted {
            Wanted::Mass(_) => size / whole(densities).0,
            Wanted::Volume(_) => size / whole(densities).1,
        };
        let doses = (0..shares.len()).map(|place| {
            let dose = linear_estimate(&inputs, &|densities| {
                let mass = match by {
                    By::Weight => shares[place],
                    By::Volume => shares[place] * densities[place],
                };
                mass * factor(densities)
            });
            dose.with(Mass::kilograms)
        });
        let doses = doses.collect();
        let of = |output: &dyn Fn((f64, f64), f64) -> f64| {
            linear_estimate(&inputs, &|densities| output(whole(densities), factor(densities)))
        };
        Ok(Batch {
            doses,
            mass: of(&|(mass, _), factor| mass * factor).with(Mass::kilograms),
            density: Some(of(&|(mass, volume), _| mass / volume).with(Density::kilograms_per_litre)),
            volume: Some(of(&|(_, volume), factor| volume * factor).with(Volume::litres)),
        })
    }
}

impl Batch {
    /// The doses alone, as [`pour`](crate::mix::pour) takes them.
    pub fn masses(&self) -> Vec<Mass> {
        self.doses.iter().map(|dose| dose.value).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::recipe::tests::recipe;
    use proptest::prelude::*;

    fn known(densities: &[f64]) -> Vec<Option<SourcedRange<KilogramsPerLitre>>> {
        densities
            .iter()
            .map(|density| Some(SourcedRange::own(*density, *density)))
            .collect()
    }

    fn near(ours: f64, by_hand: f64) {
        assert!((ours - by_hand).abs() < 1e-9, "{ours} is not {by_hand}");
    }

    /// By hand: 3 : 1 by weight at 1.5 and 1.0 kg/L take 3 / 1.5 + 1 = 3 L to 4 kg; by volume they weigh 5.5 kg to 4 L.
    #[test]
    fn mass_and_volume_of_both_kinds_of_recipe() {
        let densities = known(&[1.5, 1.0]);
        for (by, wanted, doses, kilograms, litres) in [
            (
                By::Weight,
                Wanted::Mass(Mass::kilograms(4.0)),
                [3.0, 1.0],
                4.0,
                3.0,
            ),
            (
                By::Weight,
                Wanted::Volume(Volume::litres(6.0)),
                [6.0, 2.0],
                8.0,
                6.0,
            ),
            (
                By::Volume,
                Wanted::Mass(Mass::kilograms(11.0)),
                [9.0, 2.0],
                11.0,
                8.0,
            ),
            (
                By::Volume,
                Wanted::Volume(Volume::litres(4.0)),
                [4.5, 1.0],
                5.5,
                4.0,
            ),
        ] {
            let batch = recipe(&[3.0, 1.0], by).batch(wanted, &densities).unwrap();
            for (dose, by_hand) in batch.masses().iter().zip(doses) {
                near(dose.as_kilograms(), by_hand);
            }
            near(batch.mass.value.as_kilograms(), kilograms);
            near(batch.volume.unwrap().value.as_litres(), litres);
            near(
                batch.density.unwrap().value.as_kilograms_per_litre(),
                kilograms / litres,
            );
        }
    }

    #[test]
    fn a_batch_by_mass_needs_no_densities() {
        let half = recipe(&[1.0, 1.0], By::Weight);
        let batch = half
            .batch(Wanted::Mass(Mass::grams(500.0)), &[None, None])
            .unwrap();
        assert_eq!(batch.masses(), [Mass::grams(250.0); 2]);
        assert_eq!((batch.density, batch.volume), (None, None));
        let mixed = [Some(SourcedRange::own(1.2, 1.4)), None];
        let volume = Wanted::Volume(Volume::litres(1.0));
        assert_eq!(half.batch(volume, &mixed), Err(RecipeError::NoDensity(1)));
        let by_volume = recipe(&[1.0, 1.0], By::Volume);
        let mass = Wanted::Mass(Mass::grams(500.0));
        assert_eq!(by_volume.batch(mass, &mixed), Err(RecipeError::NoDensity(1)));
    }

    /// Uncertain densities affect the volume of a weighed batch, or the mass of a batch by volume, but not
    /// the other.
    #[test]
    fn densities_make_the_other_measure_unsure() {
        let half = recipe(&[1.0, 1.0], By::Weight);
        let densities = [
            Some(SourcedRange::own(1.2, 1.4)),
            Some(SourcedRange::own(1.1, 1.3)),
        ];
        let by_mass = half
            .batch(Wanted::Mass(Mass::kilograms(1.0)), &densities)
            .unwrap();
        assert!(
            by_mass
                .doses
                .iter()
                .all(|dose| dose.standard_uncertainty < Mass::grams(1e-9))
        );
        let volume = by_mass.volume.unwrap();
        // Each density is a rectangle 0.2 wide: 0.0577. Relative: 0.5 x 0.0577 / 1.3^2 and / 1.2^2, over 0.8013 L.
        let by_hand = libm::hypot(0.5 * 0.057_735 / 1.69, 0.5 * 0.057_735 / 1.44);
        assert!((volume.standard_uncertainty.as_litres() - by_hand).abs() < 1e-4);
        let by_volume = half
            .batch(Wanted::Volume(Volume::litres(1.0)), &densities)
            .unwrap();
        assert!(by_volume.volume.unwrap().standard_uncertainty < Volume::millilitres(1e-9));
        assert!(by_volume.mass.standard_uncertainty > Mass::grams(30.0));
    }

    proptest! {
        #[test]
        fn doses_add_up_and_keep_the_ratio(
            parts in prop::collection::vec((0.01..100.0_f64, 0.7..2.5_f64), 1..10),
            size in 0.0..20.0_f64, by_weight in any::<bool>(), mass in any::<bool>(),
        ) {
            let shares: Vec<f64> = parts.iter().map(|part| part.0).collect();
            let densities: Vec<f64> = parts.iter().map(|part| part.1).collect();
            let by = if by_weight { By::Weight } else { By::Volume };
            let wanted = if mass {
                Wanted::Mass(Mass::kilograms(size))
            } else {
                Wanted::Volume(Volume::litres(size))
            };
            let recipe = recipe(&shares, by);
            let batch = recipe.batch(wanted, &known(&densities)).unwrap();
            let sum: Mass = batch.masses().into_iter().sum();
            prop_assert!((sum - batch.mass.value).as_kilograms().abs() < 1e-9);
            let litres: f64 = batch.masses().iter().zip(&densities).map(|(m, rho)| m.as_kilograms() / rho).sum();
            prop_assert!((litres - batch.volume.unwrap().value.as_litres()).abs() < 1e-9);
            let wanted = if mass { sum.as_kilograms() } else { litres };
            prop_assert!((wanted - size).abs() < 1e-9);
            for (place, share) in recipe.shares().enumerate() {
                let dose = batch.doses[place].value.as_kilograms();
                let (own, all) = if by_weight {
                    (dose, sum.as_kilograms())
                } else {
                    (dose / densities[place], litres)
                };
                prop_assert!((own - share * all).abs() < 1e-9 && own >= 0.0);
            }
        }
    }
}
