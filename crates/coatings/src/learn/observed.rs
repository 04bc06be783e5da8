//! What one job shows: a can weighed before and after.

use units::{Area, Length, Mass};

use super::{Doubt, Fault};
use crate::basis::Basis;
use crate::cause::ORDINARY;
use crate::distribution::Distribution;
use crate::estimate::Estimate;
use crate::film::rate_of_wet_film;
use crate::material::Material;
use crate::mix::Scale;
use crate::sourced_range::SourcedRange;
use crate::substrate::Substrate;
use crate::tool::{Tool, ToolKind};
use crate::unit::{KilogramsPerLitre, Litres, SquareMetresPerLitre};

/// A job whose can was weighed.
///
/// Lid, can and stick weigh the same both times, so only the difference counts. What is thinned is weighed before thinner
/// comes in.
#[derive(Clone, Debug, PartialEq)]
pub struct Use {
    /// The can before the first coat.
    pub before: Mass,
    /// The same can after the last one.
    pub after: Mass,
    /// The scale that both were weighed on.
    pub scale: Scale,
    /// Density of what is in it, kg/L.
    pub density: SourcedRange<KilogramsPerLitre>,
    /// The area that was coated, with its standard uncertainty.
    pub area: Estimate<Area>,
    /// How many coats it got.
    pub coats: u32,
    /// The substrate of the first coat. Only absorbent wood takes more than later coats.
    pub substrate: Substrate,
    /// What was washed out of the tool, liters, each place of it for itself; a need counts this apart from the rate.
    pub kept: Vec<SourcedRange<Litres>>,
}

/// An observed spreading rate with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observed {
    log_rate: f64,
    uncertainty: f64,
    coats: u32,
}

impl Observed {
    /// The rate that a weighed job shows:
    /// `area x (first coat + other coats) / ((before - after) / density - kept)`, with the standard uncertainty of its log
    /// by the law of propagation (JCGM 100, 5.1.2). Weights by the step and the accuracy of the scale
    /// ([`Scale::difference`]); density, first coat and what is kept rectangular between their limits.
    ///
    /// # Errors
    /// A [`Fault`] if a figure is not a number, nothing was used, or nothing is left for the piece.
    pub fn of(job: &Use) -> Result<Self, Fault> {
        let used = job.before - job.after;
        let area = job.area.value.as_square_metres();
        let kept: Vec<Distribution> = job.kept.iter().map(SourcedRange::distribution).collect();
        let kept_litres: f64 = kept.iter().map(|kept| kept.mean()).sum();
        let kept_variance: f64 = kept.iter().map(|kept| square(kept.standard_uncertainty())).sum();
        let density = job.density.distribution();
        let numbers = [
            used.as_kilograms(),
            job.scale.difference(job.before, job.after).as_kilograms(),
            area,
            job.area.standard_uncertainty.as_square_metres(),
            density.mean(),
            kept_litres,
            kept_variance,
        ];
        if !numbers.iter().all(|number| number.is_finite()) {
            return Err(Fault::NotANumber);
        }
        if job.density.low <= 0.0 || job.density.low > job.density.high {
            return Err(Fault::Density);
        }
        if used <= Mass::ZERO {
            return Err(Fault::NothingUsed);
        }
        if area <= 0.0 || job.coats == 0 {
            return Err(Fault::NoArea);
        }
        let litres = used.as_kilograms() / density.mean();
        let on_piece = litres - kept_litres;
        if on_piece <= 0.0 {
            return Err(Fault::AllKept);
        }
        let first = job.substrate.first_coat().distribution();
        let coats = first.mean() + f64::from(job.coats - 1);
        let of_litres = square(job.scale.difference(job.before, job.after) / used)
            + square(density.standard_uncertainty() / density.mean());
        let variance = square(job.area.standard_uncertainty / job.area.value)
            + square(first.standard_uncertainty() / coats)
            + (square(litres) * of_litres + kept_variance) / square(on_piece);
        Ok(Observed {
            log_rate: libm::log(area * coats / on_piece),
            uncertainty: variance.sqrt(),
            coats: job.coats,
        })
    }

    /// A rate that is known otherwise, m2/L, with its standard uncertainty as a fraction of it.
    ///
    /// # Errors
    /// [`Fault::NotANumber`] unless the rate is a number above 0 and the uncertainty one of 0 or more.
    pub fn of_rate(rate: f64, uncertainty: f64) -> Result<Self, Fault> {
        let log_rate = libm::log(rate);
        if rate > 0.0 && log_rate.is_finite() && (0.0..f64::INFINITY).contains(&uncertainty) {
            Ok(Observed {
                log_rate,
                uncertainty,
                coats: 1,
            })
        } else {
            Err(Fault::NotANumber)
        }
    }

    /// The observed rate of later coats on a surface that is not absorbent, m2/L.
    pub fn rate(&self) -> f64 {
        libm::exp(self.log_rate)
    }

    /// Its natural logarithm.
    pub fn log_rate(&self) -> f64 {
        self.log_rate
    }

    /// Its standard uncertainty as a fraction of it, which is that of the logarithm.
    pub fn uncertainty(&self) -> f64 {
        self.uncertainty
    }

    /// Why the rate is implausible compared with the usual range, m2/L. It may still be used.
    pub fn doubts(&self, usual: SourcedRange<SquareMetresPerLitre>) -> Vec<Doubt> {
        [
            Doubt::of_rate(self.rate(), self.coats, usual),
            Doubt::of_uncertainty(self.uncertainty),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

/// The range of the rate from the can with a tool before any job, m2/L: that of what amounts are otherwise worked out from,
/// so that a first job makes them surer and not unsurer.
///
/// By the label it is its range. That holds for brush and roller and contains their ordinary loss; a sprayer's is `label
/// rate x transfer / ordinary`, end by end. By the film of the tool it is `transfer / film`; by the label too where the tool
/// has no film of the material.
pub fn usual_rate(material: &Material, tool: &Tool, basis: Basis) -> SourcedRange<SquareMetresPerLitre> {
    let label = material.label_rate;
    match tool.film(material.body) {
        Some(film) if basis == Basis::WetFilm => {
            let rate = |film: f64| rate_of_wet_film(Length::metres(film));
            film.with_range(
                tool.transfer.low * rate(film.high),
                tool.transfer.high * rate(film.low),
            )
        }
        _ if tool.kind == ToolKind::Sprayer => label.with_range(
            label.low * tool.transfer.low / ORDINARY.high,
            label.high * tool.transfer.high / ORDINARY.low,
        ),
        _ => label,
    }
}

fn square(value: f64) -> f64 {
    value * value
}
