//! The amount of one material: the volume formula, with its uncertainty.
//!
//! By the film of the tool: `volume = area x wet film x (first coat + other coats) / transfer + what is kept`.
//! By the label: `volume = area x (first coat + other coats) / label rate + what is kept`. A label rate already
//! contains ordinary brush and roller loss, so no transfer efficiency is applied to it.

use units::{Area, Length, Volume};

use crate::distribution::{Distribution, Spread, propagate};
use crate::figure::{Certainty, Figure};
use crate::film;
use crate::material::Material;
use crate::tool::Tool;

/// How many trials an answer rests on. With this many, the 5 % and 95 % values are steady to about 1 %.
pub const TRIALS: usize = 10_000;

/// Fixed, so that the same inputs give the same answer.
const SEED: u64 = 20_240_229;

/// An area and the standard uncertainty of its measuring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AreaEstimate {
    /// The best estimate.
    pub area: Area,
    /// Its standard uncertainty (JCGM 100).
    pub standard_uncertainty: Area,
}

impl AreaEstimate {
    /// Half the width of the interval of two standard uncertainties to either side, as a share of the area
    /// (about 95 % coverage, JCGM 100, 6.3.3); zero where there is no area.
    pub fn give_or_take(&self) -> f64 {
        if self.area > Area::ZERO {
            2.0 * (self.standard_uncertainty / self.area)
        } else {
            0.0
        }
    }
}

/// What the first coat of a material goes onto.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Ground {
    /// A sealed, sound surface: an old finish, a primer, another coat.
    #[default]
    Sealed,
    /// Bare or weathered wood, which drinks.
    Porous,
}

impl Ground {
    /// How much of a later coat's volume the first coat takes.
    pub fn first_coat(self) -> Figure {
        match self {
            Ground::Sealed => Figure {
                low: 1.0,
                high: 1.0,
                source: "a sealed surface takes the first coat like the others",
                certainty: Certainty::Practice,
            },
            Ground::Porous => Figure {
                low: 1.25,
                high: 1.33,
                source: "prime coat 300-400 against 400-500 ft2/gal on weathered wood, TM 43-0139 Table 3-2",
                certainty: Certainty::Calculated,
            },
        }
    }
}

/// What the volume is worked out from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Basis {
    /// The wet film that the tool leaves.
    #[default]
    WetFilm,
    /// The spreading rate on the label.
    LabelRate,
}

/// One material put on an area.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Application<'a> {
    /// What is put on.
    pub material: &'a Material,
    /// With what.
    pub tool: &'a Tool,
    /// How many coats; none is no amount.
    pub coats: u32,
    /// On how much.
    pub area: AreaEstimate,
    /// What the first coat goes onto.
    pub ground: Ground,
    /// What the volume is worked out from.
    pub basis: Basis,
}

/// A share of an amount: where the paint goes.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// `on the piece`, or the place in the tool that keeps it.
    pub place: &'static str,
    /// How much, as the best estimate.
    pub volume: Volume,
}

/// The dry film that all coats of a material leave together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DryFilm {
    /// The best estimate.
    pub thickness: Length,
    /// Its standard uncertainty, by the linear law (JCGM 100, 5.1.2).
    pub standard_uncertainty: Length,
}

/// How much of a material is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    litres: Spread,
    /// Where the paint goes, the piece first.
    pub shares: Vec<Share>,
    /// The dry film of all coats together.
    pub dry_film: DryFilm,
}

impl Amount {
    /// Nineteen times in twenty more than this is needed.
    pub fn low(&self) -> Volume {
        self.at(0.05)
    }

    /// As often more as less than this is needed.
    pub fn likely(&self) -> Volume {
        self.at(0.5)
    }

    /// Nineteen times in twenty this is enough.
    pub fn high(&self) -> Volume {
        self.at(0.95)
    }

    /// What never reaches the piece because the tool keeps it.
    pub fn kept_by_tool(&self) -> Volume {
        self.shares.iter().skip(1).map(|share| share.volume).sum()
    }

    /// The volume that is enough with this probability.
    pub fn at(&self, probability: f64) -> Volume {
        Volume::litres(self.litres.quantile(probability))
    }

    /// The probability that a volume is enough.
    pub fn probability_enough(&self, volume: Volume) -> f64 {
        self.litres.share_up_to(volume.as_litres())
    }
}

impl Application<'_> {
    /// How much is needed, with its spread from a fixed number of Monte Carlo trials.
    ///
    /// # Example
    /// ```
    /// use coatings::{Application, AreaEstimate, Basis, Ground, material, tool};
    /// use units::Area;
    /// let paint = Application {
    ///     material: material("trim-enamel").unwrap(),
    ///     tool: tool("brush").unwrap(),
    ///     coats: 2,
    ///     area: AreaEstimate { area: Area::square_metres(1.2), standard_uncertainty: Area::ZERO },
    ///     ground: Ground::Sealed,
    ///     basis: Basis::WetFilm,
    /// };
    /// let amount = paint.amount();
    /// assert!(amount.low() < amount.likely() && amount.likely() < amount.high());
    /// ```
    pub fn amount(&self) -> Amount {
        let inputs = self.inputs();
        let litres = propagate(&inputs, TRIALS, SEED, |x| self.litres_on_piece(x) + kept(x));
        let means: Vec<f64> = inputs.iter().map(|input| input.mean()).collect();
        let on_piece = Share {
            place: "on the piece",
            volume: Volume::litres(self.litres_on_piece(&means)),
        };
        let keeps = if self.coats == 0 { &[] } else { self.tool.keeps };
        let in_tool = keeps.iter().map(|k| Share {
            place: k.place,
            volume: Volume::litres(k.litres.middle()),
        });
        Amount {
            litres,
            shares: std::iter::once(on_piece).chain(in_tool).collect(),
            dry_film: self.dry_film(),
        }
    }

    /// The inputs in the order in which the model takes them: area, film or rate, transfer, first coat, kept.
    fn inputs(&self) -> Vec<Distribution> {
        let AreaEstimate {
            area,
            standard_uncertainty,
        } = self.area;
        let (film_or_rate, transfer) = match self.basis {
            Basis::WetFilm => (
                self.tool.wet_film.distribution(),
                self.tool.transfer.distribution(),
            ),
            Basis::LabelRate => (self.material.label_rate.distribution(), Distribution::Exact(1.0)),
        };
        let mut inputs = vec![
            Distribution::Normal {
                mean: area.as_square_metres(),
                standard_uncertainty: standard_uncertainty.as_square_metres(),
            },
            film_or_rate,
            transfer,
            self.ground.first_coat().distribution(),
        ];
        if self.coats > 0 {
            inputs.extend(self.tool.keeps.iter().map(|keeps| keeps.litres.distribution()));
        }
        inputs
    }

    fn litres_on_piece(&self, x: &[f64]) -> f64 {
        let [area, film_or_rate, transfer, first_coat] = [x[0], x[1], x[2], x[3]];
        if self.coats == 0 {
            return 0.0;
        }
        let coats = first_coat + f64::from(self.coats - 1);
        let litres_per_square_metre = match self.basis {
            Basis::WetFilm => film_or_rate * 1000.0 / transfer,
            Basis::LabelRate => 1.0 / film_or_rate,
        };
        area.max(0.0) * litres_per_square_metre * coats
    }

    /// Wet film times volume solids times coats. What a porous ground drinks builds no film.
    fn dry_film(&self) -> DryFilm {
        let coats = f64::from(self.coats);
        let film = match self.basis {
            Basis::WetFilm => self.tool.wet_film.distribution(),
            Basis::LabelRate => {
                let rate = self.material.label_rate;
                let film = |rate| film::wet_film_of_rate(rate).as_metres();
                Distribution::Rectangular {
                    low: film(rate.high),
                    high: film(rate.low),
                }
            }
        };
        let solids = self.material.volume_solids.distribution();
        let relative = |d: Distribution| d.standard_uncertainty() / d.mean();
        let spread = (relative(film) * relative(film) + relative(solids) * relative(solids)).sqrt();
        let thickness = film::dry_film(Length::metres(film.mean()), solids.mean()) * coats;
        DryFilm {
            thickness,
            standard_uncertainty: thickness * spread,
        }
    }
}

/// What the places in the tool keep, all together.
fn kept(x: &[f64]) -> f64 {
    x[4..].iter().sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{material, tool};

    fn paint(tool_key: &str, coats: u32, basis: Basis) -> Application<'static> {
        Application {
            material: material("trim-enamel").unwrap(),
            tool: tool(tool_key).unwrap(),
            coats,
            area: AreaEstimate {
                area: Area::square_metres(2.0),
                standard_uncertainty: Area::ZERO,
            },
            ground: Ground::Sealed,
            basis,
        }
    }

    #[test]
    fn the_likely_amount_is_the_formula_with_the_middle_figures() {
        let amount = paint("brush", 2, Basis::WetFilm).amount();
        let by_hand = 2.0 * 2.0 * 0.1 / 0.975 + 0.010;
        assert!(
            (amount.likely().as_litres() / by_hand - 1.0).abs() < 0.01,
            "{:?}",
            amount.likely()
        );
    }

    #[test]
    fn a_label_rate_is_charged_no_transfer_loss() {
        let amount = paint("brush", 1, Basis::LabelRate).amount();
        let by_hand = 2.0 / 10.5 + 0.010;
        assert!(
            (amount.likely().as_litres() / by_hand - 1.0).abs() < 0.01,
            "{:?}",
            amount.likely()
        );
    }

    #[test]
    fn a_porous_ground_takes_more_of_the_first_coat_only() {
        let sealed = paint("brush", 3, Basis::WetFilm);
        let porous = Application {
            ground: Ground::Porous,
            ..sealed
        };
        let [a, b] = [sealed, porous].map(|x| x.amount().shares[0].volume);
        assert!((b / a - (1.29 + 2.0) / 3.0).abs() < 1e-9);
    }

    #[test]
    fn no_coats_take_nothing_and_dirty_no_tool() {
        let none = paint("foam-roller", 0, Basis::WetFilm).amount();
        assert_eq!(none.high(), Volume::ZERO);
        assert_eq!(none.shares.len(), 1);
    }

    #[test]
    fn what_is_kept_is_kept_once_per_colour() {
        let part = |coats: u32| paint("foam-roller", coats, Basis::WetFilm).amount().shares;
        assert_eq!(part(1)[1..], part(3)[1..]);
        let kept = paint("foam-roller", 1, Basis::WetFilm).amount().kept_by_tool();
        assert!((kept.as_millilitres() - 38.5).abs() < 1e-9, "{kept:?}");
    }

    #[test]
    fn no_area_is_no_more_or_less() {
        let none = AreaEstimate {
            area: Area::ZERO,
            standard_uncertainty: Area::ZERO,
        };
        assert_eq!(none.give_or_take(), 0.0);
    }

    #[test]
    fn the_dry_film_is_wet_film_times_solids() {
        let film = paint("foam-roller", 2, Basis::WetFilm).amount().dry_film;
        assert!((film.thickness.as_millimetres() * 1000.0 - 2.0 * 70.0 * 0.4).abs() < 1e-9);
        assert!(film.standard_uncertainty > Length::ZERO);
    }
}
