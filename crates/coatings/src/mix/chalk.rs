//! Chalk-type paint from latex paint, calcium carbonate and water, mixed by weight.
//!
//! With the paint's volume `V`, volume solids `VS`, pigment volume concentration `PVC` and density `rho`, the
//! powder's mass `m` and true density `rho_p`, and the water's volume `W`:
//!
//! - volume of the mix `Y = V + m / rho_p + W`: the powder adds its true volume, not that of the spoon;
//! - volume solids `(V VS + m / rho_p) / Y`;
//! - pigment volume concentration `(V VS PVC + m / rho_p) / (V VS + m / rho_p)`;
//! - density `(V rho + m + W rho_w) / Y`.

use std::fmt;

use units::{Density, Mass, Volume};

use crate::distribution::Distribution;
use crate::estimate::Estimate;
use crate::mix::{Binder, Latex, Powder, WATER_DENSITY, cpvc};
use crate::propagate::linear_estimate;

/// How much paint goes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Paint {
    /// Measured in a jug, or a whole can.
    Volume(Volume),
    /// Weighed.
    Mass(Mass),
}

/// What goes into a batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChalkBatch {
    /// The latex paint.
    pub paint: Paint,
    /// The powder, weighed.
    pub powder: Mass,
    /// The water.
    pub water: Volume,
}

/// The properties of a batch, each with its standard uncertainty by the linear law (JCGM 100, 5.1.2).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChalkMix {
    /// How much there is.
    pub volume: Estimate<Volume>,
    /// What it weighs.
    pub mass: Estimate<Mass>,
    /// Its density.
    pub density: Estimate<Density>,
    /// Its volume solids, a fraction.
    pub volume_solids: Estimate<f64>,
    /// Its pigment volume concentration.
    pub pvc: Estimate<f64>,
    /// The critical concentration of the powder alone, by oil absorption.
    pub cpvc_of_powder: Estimate<f64>,
    /// Whether the binder still covers the pigment.
    pub binder: Binder,
    /// Its volume solids as a multiple of those of the paint.
    pub solids_ratio: Estimate<f64>,
}

/// Why a batch cannot be mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ChalkError {
    /// The paint is nothing, less, or not a number.
    Paint,
    /// The powder is negative or not a number.
    Powder,
    /// The water is negative or not a number.
    Water,
    /// The wanted volume is negative or not a number.
    Wanted,
    /// A figure of the paint or the powder, by its name, is out of its limits.
    Figure(&'static str),
}

impl fmt::Display for ChalkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ChalkError::Paint => write!(f, "Enter how much paint goes in."),
            ChalkError::Powder => write!(f, "Enter a powder weight of 0 or more."),
            ChalkError::Water => write!(f, "Enter a water volume of 0 or more."),
            ChalkError::Wanted => write!(f, "Enter a batch size of 0 or more."),
            ChalkError::Figure(name) => {
                write!(
                    f,
                    "Check the {name}. Enter it as on the data sheet, lower number first."
                )
            }
        }
    }
}

impl std::error::Error for ChalkError {}

/// What a draw of the figures makes of a batch; liters and kilograms.
struct Parts {
    volume: f64,
    mass: f64,
    solids: f64,
    pigment: f64,
}

/// A quantity that can go into a batch.
fn amount(value: f64) -> bool {
    value >= 0.0 && value.is_finite()
}

fn is_between((low, high): (f64, f64), least: f64, most: f64) -> bool {
    least <= low && low <= high && high <= most
}

impl ChalkBatch {
    /// The batch for the figures of paint and powder: density, volume solids, concentration, powder's density.
    fn parts(&self, x: &[f64]) -> Parts {
        let (paint, paint_mass) = match self.paint {
            Paint::Volume(volume) => (volume.as_litres(), volume.as_litres() * x[0]),
            Paint::Mass(mass) => (mass.as_kilograms() / x[0], mass.as_kilograms()),
        };
        let powder = self.powder.as_kilograms() / x[3];
        let water = self.water.as_litres();
        Parts {
            volume: paint + powder + water,
            mass: paint_mass + self.powder.as_kilograms() + water * WATER_DENSITY.middle(),
            solids: paint * x[1] + powder,
            pigment: paint * x[1] * x[2] + powder,
        }
    }

    fn check(&self, latex: &Latex, powder: &Powder) -> Result<(), ChalkError> {
        let paint = match self.paint {
            Paint::Volume(volume) => volume.as_litres(),
            Paint::Mass(mass) => mass.as_kilograms(),
        };
        if !(amount(paint) && paint > 0.0) {
            return Err(ChalkError::Paint);
        }
        if !amount(self.powder.as_kilograms()) {
            return Err(ChalkError::Powder);
        }
        if !amount(self.water.as_litres()) {
            return Err(ChalkError::Water);
        }
        // No coating or filler is lighter or heavier than this.
        let (lightest, heaviest) = (0.1, 10.0);
        for (range, least, most, name) in [
            (latex.density.range(), lightest, heaviest, "density of the paint"),
            (
                latex.volume_solids.range(),
                0.01,
                1.0,
                "volume solids of the paint",
            ),
            (
                latex.pvc.range(),
                0.0,
                1.0,
                "pigment volume concentration of the paint",
            ),
            (
                powder.density.range(),
                lightest,
                heaviest,
                "density of the powder",
            ),
            (
                powder.oil_absorption.range(),
                0.0,
                1000.0,
                "oil absorption of the powder",
            ),
        ] {
            if !is_between(range, least, most) {
                return Err(ChalkError::Figure(name));
            }
        }
        Ok(())
    }

    /// The properties of this batch.
    ///
    /// # Errors
    /// A [`ChalkError`] that says what cannot be so.
    pub fn mix(&self, latex: &Latex, powder: &Powder) -> Result<ChalkMix, ChalkError> {
        self.check(latex, powder)?;
        let inputs: [Distribution; 5] = [
            latex.density.distribution(),
            latex.volume_solids.distribution(),
            latex.pvc.distribution(),
            powder.density.distribution(),
            powder.oil_absorption.distribution(),
        ];
        let of = |output: fn(&Parts) -> f64| linear_estimate(&inputs, &|x| output(&self.parts(x)));
        let pvc = of(|parts| parts.pigment / parts.solids);
        Ok(ChalkMix {
            volume: of(|parts| parts.volume).with(Volume::litres),
            mass: of(|parts| parts.mass).with(Mass::kilograms),
            density: of(|parts| parts.mass / parts.volume).with(Density::kilograms_per_litre),
            volume_solids: of(|parts| parts.solids / parts.volume),
            pvc,
            cpvc_of_powder: linear_estimate(&inputs, &|x| cpvc(x[4], x[3])),
            binder: Binder::judge(pvc.value),
            solids_ratio: linear_estimate(&inputs, &|x| {
                let parts = self.parts(x);
                parts.solids / parts.volume / x[1]
            }),
        })
    }

    /// The batch with this volume at the same ratio: all amounts times `wanted / Y`.
    ///
    /// # Errors
    /// As [`ChalkBatch::mix`], and [`ChalkError::Wanted`].
    pub fn for_volume(
        &self,
        wanted: Volume,
        latex: &Latex,
        powder: &Powder,
    ) -> Result<ChalkBatch, ChalkError> {
        if !amount(wanted.as_litres()) {
            return Err(ChalkError::Wanted);
        }
        let factor = wanted / self.mix(latex, powder)?.volume.value;
        Ok(ChalkBatch {
            paint: match self.paint {
                Paint::Volume(volume) => Paint::Volume(volume * factor),
                Paint::Mass(mass) => Paint::Mass(mass * factor),
            },
            powder: self.powder * factor,
            water: self.water * factor,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::{CALCIUM_CARBONATE, SHEENS, chalk_recipe};
    use crate::sourced_range::SourcedRange;
    use proptest::prelude::*;

    const LOOSE: Density = Density::kilograms_per_litre(0.8);
    const CUP: Volume = Volume::litres(0.236_588_236_5);

    fn latex(pvc: f64) -> Latex {
        Latex {
            density: SourcedRange::own(1.3, 1.3),
            volume_solids: SourcedRange::own(0.36, 0.36),
            pvc: SourcedRange::own(pvc, pvc),
        }
    }

    fn mixed(key: &str, pvc: f64) -> ChalkMix {
        chalk_recipe(key)
            .unwrap()
            .batch(CUP, LOOSE)
            .mix(&latex(pvc), &CALCIUM_CARBONATE)
            .unwrap()
    }

    /// The facts of the trade for a cup of paint with volume solids of 36 %, calculated.
    #[test]
    fn what_the_recipes_come_to() {
        for (key, start, solids, pvc, binder) in [
            ("chalk-quarter", 0.35, 0.362, 0.461, Binder::Near),
            ("chalk-third", 0.35, 0.365, 0.490, Binder::Near),
            ("chalk-third", 0.45, 0.365, 0.568, Binder::Near),
            ("chalk-eighth", 0.20, 0.361, 0.274, Binder::Covers),
            ("chalk-half", 0.45, 0.442, 0.610, Binder::Over),
        ] {
            let mix = mixed(key, start);
            assert!((mix.volume_solids.value - solids).abs() < 6e-4, "{key} {mix:?}");
            assert!((mix.pvc.value - pvc).abs() < 6e-4, "{key} {mix:?}");
            assert_eq!(mix.binder, binder, "{key}");
        }
    }

    /// By hand, of recipe A: 236.59 x 1.3 + 47.32 + 29.57 x 0.998 = 384.40 g in 283.62 mL.
    #[test]
    fn mass_and_density_of_the_mix() {
        let mix = mixed("chalk-quarter", 0.35);
        assert!((mix.mass.value.as_grams() - 384.40).abs() < 0.01);
        assert!((mix.density.value.as_kilograms_per_litre() - 1.3553).abs() < 1e-4);
        assert_eq!(mix.mass.standard_uncertainty, Mass::ZERO);
    }

    #[test]
    fn weighed_paint_is_the_same_paint() {
        let by_volume = chalk_recipe("chalk-third").unwrap().batch(CUP, LOOSE);
        let by_mass = ChalkBatch {
            paint: Paint::Mass(CUP * Density::kilograms_per_litre(1.3)),
            ..by_volume
        };
        let mix = |batch: ChalkBatch| batch.mix(&latex(0.35), &CALCIUM_CARBONATE).unwrap();
        let (volume, mass) = (mix(by_volume), mix(by_mass));
        assert!((volume.volume.value / mass.volume.value - 1.0).abs() < 1e-12);
        assert!((volume.pvc.value - mass.pvc.value).abs() < 1e-12);
        // With weighed paint the uncertain density affects the volume, with measured paint the mass.
        let usual = Latex::usual(&SHEENS[3]);
        let mix = |batch: ChalkBatch| batch.mix(&usual, &CALCIUM_CARBONATE).unwrap();
        assert!(mix(by_volume).volume.standard_uncertainty < Volume::millilitres(1e-9));
        assert!(mix(by_mass).volume.standard_uncertainty > Volume::millilitres(5.0));
        assert!(mix(by_volume).mass.standard_uncertainty > Mass::grams(5.0));
    }

    #[test]
    fn what_cannot_be_mixed_is_refused() {
        let good = ChalkBatch {
            paint: Paint::Volume(CUP),
            powder: Mass::grams(50.0),
            water: Volume::ZERO,
        };
        let refused = |batch: ChalkBatch, latex: Latex| batch.mix(&latex, &CALCIUM_CARBONATE).unwrap_err();
        let paint = ChalkBatch {
            paint: Paint::Mass(Mass::ZERO),
            ..good
        };
        assert_eq!(refused(paint, latex(0.3)), ChalkError::Paint);
        let powder = ChalkBatch {
            powder: Mass::grams(-1.0),
            ..good
        };
        assert_eq!(refused(powder, latex(0.3)), ChalkError::Powder);
        let water = ChalkBatch {
            water: Volume::litres(f64::NAN),
            ..good
        };
        assert_eq!(refused(water, latex(0.3)), ChalkError::Water);
        assert_eq!(
            refused(good, latex(1.3)).to_string(),
            "Check the pigment volume concentration of the paint. Enter it as on the data sheet, lower number first."
        );
        let wanted = good.for_volume(Volume::litres(-1.0), &latex(0.3), &CALCIUM_CARBONATE);
        assert_eq!(wanted, Err(ChalkError::Wanted));
    }

    proptest! {
        #[test]
        fn a_batch_is_scaled_to_what_is_wanted(
            paint in 0.05..5.0_f64, powder in 0.0..2.0_f64, water in 0.0..1.0_f64, wanted in 0.05..9.0_f64,
        ) {
            let batch = ChalkBatch {
                paint: Paint::Volume(Volume::litres(paint)),
                powder: Mass::kilograms(powder),
                water: Volume::litres(water),
            };
            let latex = Latex::usual(&SHEENS[2]);
            let before = batch.mix(&latex, &CALCIUM_CARBONATE).unwrap();
            let after = batch
                .for_volume(Volume::litres(wanted), &latex, &CALCIUM_CARBONATE)
                .unwrap()
                .mix(&latex, &CALCIUM_CARBONATE)
                .unwrap();
            prop_assert!((after.volume.value.as_litres() - wanted).abs() < 1e-9);
            prop_assert!((after.pvc.value - before.pvc.value).abs() < 1e-9);
        }

        #[test]
        fn more_powder_is_more_pigment_and_less_binder(powder in 0.0..2.0_f64, more in 0.001..1.0_f64) {
            let mix = |powder| {
                let batch = ChalkBatch {
                    paint: Paint::Volume(Volume::litres(1.0)),
                    powder: Mass::kilograms(powder),
                    water: Volume::litres(0.1),
                };
                batch.mix(&latex(0.3), &CALCIUM_CARBONATE).unwrap()
            };
            let (less, most) = (mix(powder), mix(powder + more));
            prop_assert!(less.pvc.value < most.pvc.value && less.binder <= most.binder);
            prop_assert!(less.volume.value < most.volume.value && less.density.value < most.density.value);
        }
    }
}
