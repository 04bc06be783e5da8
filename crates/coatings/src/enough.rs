//! Whether a can is enough, and what it would do instead.

use units::Volume;

use crate::can::Contents;
use crate::demand::{Demand, litres_together};
use crate::job::Job;
use crate::model::{Lot, Part, add_coats};
use crate::samples::Samples;
use crate::trials::Trials;

/// The most coats that are checked.
const MOST_COATS: u32 = 9;
/// With more zones than this, only the largest are combined: each further one would double the work.
const MOST_ZONES: usize = 12;

/// The answer in one word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Enough at the requested confidence.
    Enough,
    /// Probably enough, but below the requested confidence.
    Tight,
    /// Probably too little.
    Short,
}

/// Whether some cans are enough, and what would be left or lacking.
#[derive(Clone, Debug, PartialEq)]
pub struct Enough {
    /// The answer in one word.
    pub verdict: Verdict,
    /// The probability that they are enough.
    pub probability: f64,
    /// The median left over; zero if they are probably too little.
    pub left: Volume,
    /// The median shortfall; zero if they are probably enough.
    pub lacking: Volume,
    /// The extra amount needed so that the total is enough at the requested confidence.
    pub extra_needed: Volume,
    /// The most coats on all zones for which they are enough at the requested confidence.
    pub most_coats: u32,
    /// The zones, by number, for which they are enough at the requested confidence at the coats that were planned: of all
    /// choices the one that takes the most paint, which is the most work done.
    pub zones: Vec<usize>,
}

impl Verdict {
    /// The verdict on what is in some cans against what is needed; `confidence` is the probability that the maker wants.
    pub fn of(demand: &Demand, cans: &[Contents], confidence: f64) -> Self {
        Verdict::at(enough_with(&[demand], cans, Volume::ZERO), confidence)
    }

    fn at(probability: f64, confidence: f64) -> Self {
        if probability >= confidence {
            Verdict::Enough
        } else if probability >= 0.5 {
            Verdict::Tight
        } else {
            Verdict::Short
        }
    }
}

impl Enough {
    /// Judges what is in some cans against what a job needs of a material; `confidence` is the probability that the maker
    /// wants. The need must be one of the job's. Where several needs are judged, [`Trials::judge`] draws once for all.
    pub fn judge(job: &Job, demand: &Demand, cans: &[Contents], confidence: f64) -> Self {
        Trials::of(job, demand.litres().len()).judge(demand, cans, confidence)
    }
}

impl Trials {
    /// Judges what is in some cans against what the job needs of a material; `confidence` is the probability that the
    /// maker wants. The need must be one of these trials.
    pub fn judge(&self, demand: &Demand, cans: &[Contents], confidence: f64) -> Enough {
        let mut contents = vec![0.0; demand.litres().len()];
        for can in cans {
            add(&mut contents, &can.drawn(demand.litres().len()));
        }
        let rest = less(&contents, demand.litres());
        let probability = share_enough(&rest);
        let verdict = Verdict::at(probability, confidence);
        let samples = Samples::of(&rest);
        let likely = Volume::litres(samples.quantile(0.5));
        let pieces = Pieces::of(self, demand);
        Enough {
            verdict,
            probability,
            left: likely.max(Volume::ZERO),
            lacking: (likely * -1.0).max(Volume::ZERO),
            extra_needed: match verdict {
                Verdict::Enough => Volume::ZERO,
                Verdict::Tight | Verdict::Short => shortfall(&samples, confidence),
            },
            most_coats: pieces.most_coats(&contents, confidence),
            zones: if verdict == Verdict::Enough {
                demand.by_zone.iter().map(|(zone, _)| *zone).collect()
            } else {
                pieces.zones(&demand.by_zone, &contents, confidence)
            },
        }
    }
}

/// The extra amount that several jobs need beyond some cans, to be enough at the requested confidence.
pub fn extra_needed(demands: &[&Demand], cans: &[Contents], confidence: f64) -> Volume {
    extra_needed_to_keep(demands, cans, Volume::ZERO, confidence)
}

/// The same where so much is to be left over after the jobs.
pub fn extra_needed_to_keep(demands: &[&Demand], cans: &[Contents], kept: Volume, confidence: f64) -> Volume {
    let mut rest = left_over(demands, cans);
    rest.iter_mut().for_each(|rest| *rest -= kept.as_litres());
    shortfall(&Samples::of(&rest), confidence)
}

/// The amount left over after a job.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Leftover {
    /// The median.
    pub likely: Volume,
    /// With the requested confidence at least this.
    pub least: Volume,
}

impl Leftover {
    /// What is left over after several jobs, from the cans on hand and `more` besides. `confidence` is the probability that
    /// the maker wants.
    pub fn of(demands: &[&Demand], cans: &[Contents], more: Volume, confidence: f64) -> Self {
        let rest = Samples::of(&left_over(demands, cans));
        let at = |probability| (Volume::litres(rest.quantile(probability)) + more).max(Volume::ZERO);
        Leftover {
            likely: at(0.5),
            least: at(1.0 - confidence),
        }
    }
}

/// The probability that the cans on hand and `more` besides are enough for several jobs.
pub fn enough_with(demands: &[&Demand], cans: &[Contents], more: Volume) -> f64 {
    let mut rest = left_over(demands, cans);
    rest.iter_mut().for_each(|rest| *rest += more.as_litres());
    share_enough(&rest)
}

/// What is left over in each trial, liters; below nought where something is lacking.
fn left_over(demands: &[&Demand], cans: &[Contents]) -> Vec<f64> {
    let mut rest = litres_together(demands);
    rest.iter_mut().for_each(|litres| *litres = -*litres);
    for can in cans {
        let contents = can.drawn(rest.len());
        rest.iter_mut()
            .zip(contents.iter())
            .for_each(|(rest, litres)| *rest += litres);
    }
    rest
}

/// The shortfall at a confidence; `rest` holds what is left over in each trial.
fn shortfall(rest: &Samples, confidence: f64) -> Volume {
    Volume::litres(-rest.quantile(1.0 - confidence)).max(Volume::ZERO)
}

/// The difference of two columns.
fn less(from: &[f64], taken: &[f64]) -> Vec<f64> {
    from.iter().zip(taken).map(|(from, taken)| from - taken).collect()
}

/// The fraction of trials without a shortfall.
fn share_enough(rest: &[f64]) -> f64 {
    rest.iter().filter(|rest| **rest >= 0.0).count() as f64 / rest.len().max(1) as f64
}

/// The components of a demand: what each layer takes of each zone in each trial, and what the tools keep.
#[derive(Default)]
struct Pieces<'a> {
    parts: Vec<Part>,
    /// What each place in the tools keeps, and the zones that are done with it.
    kept: Vec<(&'a [f64], Vec<usize>)>,
}

impl<'a> Pieces<'a> {
    fn of(trials: &'a Trials, demand: &Demand) -> Self {
        let is_of = |lot: &&Lot| lot.material.key == demand.material.key && lot.colour == demand.colour;
        let Some(lot) = trials.model.lots.iter().find(is_of) else {
            return Pieces::default();
        };
        let kept_in = |place: &usize| {
            let with_it = lot.terms.iter().filter(|term| term.kept.contains(place));
            (trials.column(*place), with_it.map(|term| term.zone).collect())
        };
        Pieces {
            parts: trials.parts(lot),
            kept: lot.kept.iter().map(kept_in).collect(),
        }
    }

    fn most_coats(&self, contents: &[f64], confidence: f64) -> u32 {
        // The loss in the tools and the absorption of the first coat count once, however many coats there
        // are.
        let mut left = contents.to_vec();
        let mut coat = vec![0.0; contents.len()];
        for (kept, _) in &self.kept {
            take(&mut left, kept);
        }
        for part in &self.parts {
            add(&mut coat, &part.coat);
            if let Some(absorbed) = &part.absorbed {
                take(&mut left, absorbed);
            }
        }
        let enough = |coats: u32| {
            let coats = f64::from(coats);
            let trials = left.iter().zip(&coat);
            let done = trials.filter(|(left, coat)| **left >= **coat * coats).count();
            done as f64 / left.len().max(1) as f64 >= confidence
        };
        (1..=MOST_COATS)
            .take_while(|coats| enough(*coats))
            .last()
            .unwrap_or(0)
    }

    /// The zones that a can is enough for, by branch and bound. The largest zones come first. A choice that
    /// is not enough, or that cannot cover more than the best so far, is not extended.
    fn zones(&self, by_zone: &[(usize, Volume)], contents: &[f64], confidence: f64) -> Vec<usize> {
        let mut order: Vec<(usize, f64)> = by_zone
            .iter()
            .map(|(zone, litres)| (*zone, litres.as_litres()))
            .collect();
        units::sort_few(&mut order, |(_, a), (_, b)| a > b);
        order.truncate(MOST_ZONES);
        let taken: Vec<Vec<f64>> = order
            .iter()
            .map(|(zone, _)| {
                let mut litres = vec![0.0; contents.len()];
                for part in self.parts.iter().filter(|part| part.zone == *zone) {
                    add_coats(&mut litres, part, part.coats);
                }
                litres
            })
            .collect();
        let mut search = Search {
            order: &order,
            taken: &taken,
            kept: &self.kept,
            confidence,
            best: (0.0, Vec::new()),
        };
        search.follow(0, contents, 0.0, &mut Vec::new());
        search.best.1
    }
}

fn add(sum: &mut [f64], more: &[f64]) {
    for (sum, more) in sum.iter_mut().zip(more) {
        *sum += more;
    }
}

fn take(left: &mut [f64], taken: &[f64]) {
    for (left, taken) in left.iter_mut().zip(taken) {
        *left -= taken;
    }
}

struct Search<'a> {
    order: &'a [(usize, f64)],
    taken: &'a [Vec<f64>],
    kept: &'a [(&'a [f64], Vec<usize>)],
    confidence: f64,
    best: (f64, Vec<usize>),
}

impl Search<'_> {
    fn follow(&mut self, next: usize, left: &[f64], work: f64, chosen: &mut Vec<usize>) {
        if work > self.best.0 {
            self.best = (work, chosen.clone());
        }
        let open: f64 = self.order[next..].iter().map(|(_, litres)| litres).sum();
        if next == self.order.len() || work + open <= self.best.0 {
            return;
        }
        let (zone, litres) = self.order[next];
        let mut with = left.to_vec();
        take(&mut with, &self.taken[next]);
        // The loss in a tool counts once, for the first of the zones that use it.
        for (kept, zones) in self.kept {
            if zones.contains(&zone) && !chosen.iter().any(|other| zones.contains(other)) {
                take(&mut with, kept);
            }
        }
        if share_enough(&with) >= self.confidence {
            chosen.push(zone);
            self.follow(next + 1, &with, work + litres, chosen);
            chosen.pop();
        }
        self.follow(next + 1, left, work, chosen);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demand::{TRIALS, demands};
    use crate::examples::{broad, enamel, job, layer, zone};

    fn judge((job, demand): (&Job, &Demand), litres: f64) -> Enough {
        Enough::judge(
            job,
            demand,
            &[Contents::full(Volume::litres(litres)).unwrap()],
            0.9,
        )
    }

    #[test]
    fn a_can_of_the_high_amount_is_enough_and_one_of_the_low_is_short() {
        let job = enamel("brush", 2);
        let demand = demands(&job, TRIALS).remove(0);
        let of = (&job, &demand);
        assert_eq!(judge(of, demand.high().as_litres()).verdict, Verdict::Enough);
        assert_eq!(judge(of, demand.low().as_litres()).verdict, Verdict::Short);
        assert_eq!(
            judge(of, demand.likely().as_litres() * 1.01).verdict,
            Verdict::Tight
        );
        let half = judge(of, demand.likely().as_litres());
        assert!((half.probability - 0.5).abs() < 0.001, "{half:?}");
        assert!(half.left.as_litres() < 1e-3 && half.lacking.as_litres() < 1e-3);
    }

    /// The cans on hand with the extra volume are enough at exactly the wanted probability.
    #[test]
    fn what_is_had_besides_makes_it_enough() {
        let job = enamel("brush", 2);
        let demand = demands(&job, TRIALS).remove(0);
        let half = demand.likely() / 2.0;
        let can = Contents::part(half * 2.0, 0.3, 0.7).unwrap();
        for confidence in [0.8, 0.9, 0.95, 0.99] {
            let extra = Enough::judge(&job, &demand, &[can], confidence).extra_needed;
            assert_eq!(extra, extra_needed(&[&demand], &[can], confidence));
            let more = Contents::full(extra).unwrap();
            let (rest, more) = (can.drawn(TRIALS), more.drawn(TRIALS));
            let together: Vec<f64> = rest.iter().zip(&more).map(|(rest, more)| rest + more).collect();
            let share = share_enough(&less(&together, demand.litres()));
            assert!(
                (share - confidence).abs() < 2.0 / TRIALS as f64,
                "{share} {confidence}"
            );
            assert_eq!(enough_with(&[&demand], &[can], extra), share);
        }
        let plenty = Contents::full(demand.high() * 2.0).unwrap();
        assert_eq!(
            Enough::judge(&job, &demand, &[plenty], 0.9).extra_needed,
            Volume::ZERO
        );
    }

    /// A can of twice the high amount: the middle of what is left is the can less the middle of the need, not less its high
    /// value.
    #[test]
    fn what_is_left_is_told_as_likely_and_as_least() {
        let demand = demands(&enamel("brush", 2), TRIALS).remove(0);
        let can = demand.high() * 2.0;
        let left = Leftover::of(&[&demand], &[], can, 0.9);
        let close = |one: Volume, other: Volume| (one.as_litres() - other.as_litres()).abs() < 1e-4;
        assert!(close(left.likely, can - demand.likely()), "{left:?}");
        assert!(close(left.least, can - demand.at(0.9)), "{left:?}");
        // In hand or bought is the same to what is left.
        let in_hand = Contents::full(can).unwrap();
        assert_eq!(Leftover::of(&[&demand], &[in_hand], Volume::ZERO, 0.9), left);
        assert_eq!(
            Leftover::of(&[&demand], &[], Volume::ZERO, 0.9),
            Leftover::default()
        );
    }

    #[test]
    fn the_most_coats_are_those_for_which_it_is_still_enough() {
        let high = |coats| {
            demands(&enamel("brush", coats), TRIALS)
                .remove(0)
                .at(0.9)
                .as_litres()
        };
        let job = enamel("brush", 4);
        let demand = demands(&job, TRIALS).remove(0);
        let of = (&job, &demand);
        assert_eq!(judge(of, high(3) * 1.001).most_coats, 3);
        assert_eq!(judge(of, high(3) * 0.999).most_coats, 2);
        assert_eq!(judge(of, 0.001).most_coats, 0);
        assert_eq!(judge(of, 1000.0).most_coats, MOST_COATS);
    }

    /// Against trying every choice of zones by itself.
    #[test]
    fn the_zones_are_the_most_work_that_the_can_does() {
        let sizes = [1.7, 1.1, 0.9, 0.6, 0.25];
        let paint = |coats| vec![layer("trim-enamel", coats, "foam-roller")];
        let zones: Vec<_> = sizes
            .iter()
            .zip(1..)
            .map(|(size, coats)| zone("z", vec![broad(*size)], paint(coats)))
            .collect();
        let whole = job(zones.clone());
        let demand = demands(&whole, 2_000).remove(0);
        for litres in [0.05, 0.2, 0.3, 0.37, 0.45, 0.6, 0.8] {
            let found = judge((&whole, &demand), litres).zones;
            let work = |of: &[usize]| -> f64 {
                let taken = demand.by_zone.iter().filter(|(zone, _)| of.contains(zone));
                taken.map(|(_, litres)| litres.as_litres()).sum()
            };
            let mut best: f64 = 0.0;
            for choice in 1..(1u32 << sizes.len()) {
                let of: Vec<usize> = (0..sizes.len()).filter(|zone| choice >> zone & 1 == 1).collect();
                let only = job(of.iter().map(|zone| zones[*zone].clone()).collect());
                let alone = demands(&only, 2_000).remove(0);
                if alone.probability_enough(Volume::litres(litres)) >= 0.9 {
                    best = best.max(work(&of));
                }
            }
            assert!((work(&found) - best).abs() < 1e-9, "{litres}: {found:?} {best}");
        }
    }
}
