//! The spreading rate of a material with a tool, learned from earlier jobs.
//!
//! A can that was weighed before and after over a known area gives an observed spreading rate ([`Observed`]). The range of
//! the label, or of the film of the tool, stands before the first of them ([`usual_rate`]); each moves and narrows it
//! ([`learn`]). What comes out is again a range like that of a label, so a [`Layer`](crate::Layer) takes it as its
//! [`OwnRate`](crate::OwnRate) for the tool of the jobs.
//!
//! # The model
//! Logarithms of rates, because the errors of area, density and weighing are shares, and a rate is never below zero:
//! a range from 8 to 12 m2/L is as sure above its middle as below. The log rate `y` of each job is normal about a mean that
//! is this maker's own, with a scatter from job to job that is not known either:
//!
//! `y_i ~ N(m, s^2 / w_i)`, `m | s^2 ~ N(m_0, s^2 / k_0)`, `s^2 ~ scaled inverse chi-squared (v_0, s_0^2)`
//!
//! This is the conjugate normal model with both unknown (Gelman et al., Bayesian Data Analysis, 3rd ed., s. 3.3; from
//! memory). `w_i`, at most 1, is what a job weighs: `s_0^2 / (s_0^2 + u_i^2)` for an observation whose log has the standard
//! uncertainty `u_i`. A badly measured job counts as part of one. The exact model adds
//! `u_i^2` to `s^2` and has no closed form; in the eight cases of `tests/outside/fixtures/learn.json` the ends of the range
//! are within 1.7 % of it (`cargo test -p outside --test learn`).
//!
//! The label counts as one job for the mean (`k_0 = 1`) and as four for the scatter (`v_0 = 4`): no source, a
//! choice. `s_0` follows: the label's range is where the next job falls in 95 of 100, before any was seen.

mod doubt;
mod fault;
mod observed;
mod student;
#[cfg(test)]
mod tests;

use crate::sourced_range::{Provenance, SourcedRange};
use crate::unit::SquareMetresPerLitre;

pub use doubt::Doubt;
pub use fault::Fault;
pub use observed::{Observed, Use, usual_rate};

/// The number of jobs that the label counts as for the mean; no source, a choice.
const LABEL_JOBS: f64 = 1.0;
/// The number of jobs that it counts as for the scatter; no source, a choice. With fewer, one odd job makes
/// the next unpredictable. With more, ten consistent jobs make no difference.
const LABEL_FREEDOM: u32 = 4;
/// A label that gives one number for its range still leaves this much open either way, as a share (the same tenth that a
/// single rate on a label is taken for).
const LEAST_HALF: f64 = 0.10;

const LEARNED_SOURCE: &str =
    "the label's range and the maker's own weighed jobs, BDA s. 3.3: where the next job falls in 95 of 100";

/// The posterior of a rate after some jobs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learned {
    /// The range before any job.
    usual: SourcedRange<SquareMetresPerLitre>,
    /// Middle of the log rate.
    middle: f64,
    /// The effective number of jobs, with the label.
    weight: f64,
    /// Degrees of freedom of the scatter.
    freedom: u32,
    /// Scale of the scatter from job to job, squared, in logs.
    scatter: f64,
    jobs: u32,
}

/// What jobs teach about a rate whose range before them is `usual`, m2/L. The order of the jobs does not matter.
///
/// Where nothing was weighed, the range is `usual` itself. A range that is no range of positive numbers teaches nothing
/// and stays as it is.
///
/// # Example
/// ```
/// use coatings::{SourcedRange, learn::{Observed, learn}};
/// let label = SourcedRange::own(8.0, 12.0);
/// let jobs = [Observed::of_rate(8.9, 0.03).unwrap(), Observed::of_rate(9.2, 0.03).unwrap()];
/// let learned = learn(label, &jobs);
/// let figure = learned.range();
/// assert!(8.0 < figure.low && figure.low < 9.0 && figure.high < 12.0);
/// ```
pub fn learn(usual: SourcedRange<SquareMetresPerLitre>, jobs: &[Observed]) -> Learned {
    let mut learned = Learned::of_label(usual);
    let before = learned;
    if before.scatter <= 0.0 {
        return before;
    }
    let mut weights = 0.0;
    let mut sum = 0.0;
    for job in jobs {
        let weight = before.weight_of(job);
        weights += weight;
        sum += weight * job.log_rate();
    }
    if weights <= 0.0 {
        return before;
    }
    let mean = sum / weights;
    let mut squares = f64::from(before.freedom) * before.scatter;
    for job in jobs {
        let off = job.log_rate() - mean;
        squares += before.weight_of(job) * off * off;
    }
    let moved = mean - before.middle;
    squares += before.weight * weights / (before.weight + weights) * moved * moved;
    learned.jobs = u32::try_from(jobs.len()).unwrap_or(u32::MAX - LABEL_FREEDOM);
    learned.freedom = before.freedom + learned.jobs;
    learned.weight = before.weight + weights;
    learned.middle = before.middle + moved * weights / learned.weight;
    learned.scatter = squares / f64::from(learned.freedom);
    learned
}

impl Learned {
    fn of_label(usual: SourcedRange<SquareMetresPerLitre>) -> Self {
        let mut before = Learned {
            usual,
            middle: 0.0,
            weight: LABEL_JOBS,
            freedom: LABEL_FREEDOM,
            scatter: 0.0,
            jobs: 0,
        };
        if usual.low > 0.0 && usual.low <= usual.high && usual.high.is_finite() {
            let (low, high) = (libm::log(usual.low), libm::log(usual.high));
            before.middle = (low + high) / 2.0;
            let half = if usual.low < usual.high {
                (high - low) / 2.0
            } else {
                libm::log1p(LEAST_HALF)
            };
            let scale = half / student::quantile_975(LABEL_FREEDOM);
            before.scatter = scale * scale / (1.0 + 1.0 / LABEL_JOBS);
        }
        before
    }

    fn weight_of(&self, job: &Observed) -> f64 {
        self.scatter / (self.scatter + job.uncertainty() * job.uncertainty())
    }

    /// The 95 % prediction interval of the next job, as a range like that of a label, m2/L; the prior range
    /// if nothing was learned. The ends are quantiles of a Student distribution of the log rate (BDA s.
    /// 3.3).
    pub fn range(&self) -> SourcedRange<SquareMetresPerLitre> {
        if self.jobs == 0 || self.scatter <= 0.0 {
            return self.usual;
        }
        let (low, high) = self.interval(1.0 + 1.0 / self.weight);
        SourcedRange::new(low, high, LEARNED_SOURCE, Provenance::Maker)
    }

    /// The 95 % interval of the mean of this maker's jobs, m2/L. It narrows without limit with more jobs,
    /// while the range of [`range`](Self::range) narrows only to the scatter.
    pub fn mean_between(&self) -> (f64, f64) {
        self.interval(1.0 / self.weight)
    }

    fn interval(&self, factor: f64) -> (f64, f64) {
        let half = student::quantile_975(self.freedom) * (self.scatter * factor).sqrt();
        (libm::exp(self.middle - half), libm::exp(self.middle + half))
    }

    /// The median of the range, m2/L.
    pub fn middle(&self) -> f64 {
        if self.scatter > 0.0 {
            libm::exp(self.middle)
        } else {
            self.usual.middle()
        }
    }

    /// The range before any job, m2/L.
    pub fn before(&self) -> SourcedRange<SquareMetresPerLitre> {
        self.usual
    }

    /// How many jobs were learned from.
    pub fn jobs(&self) -> u32 {
        self.jobs
    }

    /// The equivalent number of perfectly measured jobs, at most the number of jobs.
    pub fn effective_jobs(&self) -> f64 {
        self.weight - LABEL_JOBS
    }

    /// The share of the middle that comes from the jobs, from 0 to 1; the rest is the label's.
    pub fn share_of_jobs(&self) -> f64 {
        1.0 - LABEL_JOBS / self.weight
    }

    /// The relative reduction of the width of the range, in logs. It is negative if the jobs scatter more
    /// than the label suggests.
    pub fn narrowed(&self) -> f64 {
        let figure = self.range();
        let was = libm::log(self.usual.high / self.usual.low);
        if self.jobs == 0 || was <= 0.0 || !was.is_finite() {
            return 0.0;
        }
        1.0 - libm::log(figure.high / figure.low) / was
    }

    /// The scatter from job to job, one standard deviation as a fraction of the rate (the scale of the
    /// posterior): what is left however many jobs there are.
    pub fn scatter(&self) -> f64 {
        self.scatter.sqrt()
    }
}
