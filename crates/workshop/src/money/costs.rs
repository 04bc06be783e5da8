//! The costs of a piece: materials, hours and fees.

use super::guess::{Guess, WAGE, currency_of_guesses};
use super::{Costs, Fees, Materials};
use crate::art::{art, cost_and_minutes};
use crate::book::{Facts, Habits, Share};
use crate::document::{Piece, Workshop, generic};
use crate::takeoff::{cans_for, reserve};
use crate::work::Work;
use coatings::can::typical_price;
use coatings::{Demand, Estimate, Job, Stage};

/// The costs of a piece, and the values they were calculated from.
pub(super) struct EstimatedCosts {
    pub(super) costs: Costs,
    pub(super) materials: Materials,
    pub(super) unpriced: Vec<String>,
    /// The inputs that were guessed.
    pub(super) guesses: Vec<Guess>,
    /// True if the wage was entered or guessed.
    pub(super) has_wage: bool,
    /// True if the materials, or some of them, have a price that was entered or guessed.
    pub(super) has_prices: bool,
    /// All layers, with the edges that take time to cut in.
    pub(super) job: Job,
    /// The time for all coats, in minutes.
    pub(super) coating: u32,
    /// The minimum and maximum time in minutes, if it was estimated and not entered.
    pub(super) minutes: Option<(u32, u32)>,
}

pub(super) fn estimate_costs(workshop: &Workshop, piece: &Piece, work: &Work) -> EstimatedCosts {
    let (habits, facts): (Habits, Facts) = (workshop.books.one(), piece.books.one());
    let (takeoff, job) = (&work.takeoff, work.timed_job(piece));
    let coats = minutes(&job);
    let coating = whole_minutes(coats.value);
    let (sheets, of_art) = cost_and_minutes(&art(piece));
    let done = work.steps.iter().filter(|step| step.may_be_done());
    let (least, most) = done.fold(of_art, |(least, most), step| {
        (least + step.minutes.0, most + step.minutes.1)
    });
    let reckoned = coating + whole_minutes((least + most) / 2.0);
    // A slow worker is slow at every step, so the ends of the ranges are added. The coats extend two standard
    // uncertainties to each side.
    let doubt = coats.expanded_uncertainty();
    let (least, most) = (least + coats.value - doubt, most + coats.value + doubt);
    let own = facts.hours.map(|time| whole_minutes(time.minutes()));
    let Share(share) = habits.fee_share.unwrap_or(Share(0.0));
    let mut unpriced = Vec::new();
    let mut materials = Materials {
        low: sheets,
        likely: sheets,
        high: sheets,
    };
    let mut to_buy = sheets;
    // The maker's own total for materials takes precedence.
    let total = facts.materials;
    if let Some(all) = total {
        materials = Materials {
            low: all,
            likely: all,
            high: all,
        };
        to_buy = all;
    }
    let mut guesses = Vec::new();
    let may_guess = currency_of_guesses(workshop).is_some();
    let hourly = habits.hourly.or(may_guess.then_some(WAGE));
    if habits.hourly.is_none() && may_guess {
        guesses.push(Guess::Wage);
    }
    let mut has_prices = total.is_some();
    for line in takeoff.materials.iter().filter(|_| total.is_none()) {
        let Some(rate) = rate(workshop, &line.need) else {
            unpriced.push(takeoff.name_of(line));
            continue;
        };
        has_prices = true;
        if rate.is_guess && !guesses.contains(&Guess::Prices) {
            guesses.push(Guess::Prices);
        }
        let at = |volume: units::Volume| (volume.as_litres() * rate.for_litre).round() as u64;
        materials.low += at(line.need.low());
        materials.likely += at(line.need.likely());
        materials.high += at(line.need.high());
        to_buy += rate.cans;
    }
    let costs = Costs {
        bought: facts.bought.unwrap_or(0),
        materials_used: materials.likely,
        materials_to_buy: to_buy,
        wear: habits.wear.unwrap_or(0),
        delivery: facts.delivery.or(habits.delivery).unwrap_or(0),
        minutes: own.unwrap_or(reckoned),
        hourly: hourly.unwrap_or(0),
        profit: habits.profit.unwrap_or(0),
        fees: Fees {
            share: (share * 10_000.0).round() as u32,
            fixed: habits.fee.unwrap_or(0),
        },
    };
    EstimatedCosts {
        costs,
        materials,
        has_prices: has_prices || unpriced.is_empty(),
        unpriced,
        guesses,
        has_wage: hourly.is_some(),
        job,
        coating,
        minutes: own.is_none().then(|| (whole_minutes(least), whole_minutes(most))),
    }
}

/// The price of a liter of a material in the cans to buy for it, and the price of those cans.
pub(super) struct Rate {
    pub(super) for_litre: f64,
    pub(super) cans: u64,
    /// True if the prices are typical ones, because the maker entered none for this material.
    pub(super) is_guess: bool,
}

pub(super) fn rate(workshop: &Workshop, need: &Demand) -> Option<Rate> {
    let sure = need.at(workshop.settings.confidence.probability()) + reserve(workshop, &[need]);
    let buy = cans_for(workshop, &need.material, sure, &[]).ok()?;
    let each = || buy.cans.iter().map(|(can, count)| (*can, u64::from(*count)));
    let litres: f64 = each()
        .map(|(can, count)| can.volume().as_litres() * count as f64)
        .sum();
    let typical = || {
        currency_of_guesses(workshop)?;
        let material = generic(&workshop.materials, &need.material.key);
        let prices = each().map(|(can, count)| Some(typical_price(material, can)? * count));
        prices.sum::<Option<u64>>()
    };
    let is_guess = buy.price.is_none();
    let cans = buy.price.or_else(typical).filter(|_| litres > 0.0)?;
    Some(Rate {
        for_litre: cans as f64 / litres,
        cans,
        is_guess,
    })
}

/// The number of trials for one more coat. It keeps the likely amount stable to 0.5%.
pub(super) const TRIALS: usize = 2_000;

/// Returns the time for all coats, in minutes. Cleaners are left out because the cleaning step includes them.
pub(super) fn minutes(job: &Job) -> Estimate<f64> {
    let mut job = job.clone();
    let layers = job.zones.iter_mut().flat_map(|zone| &mut zone.layers);
    layers
        .filter(|layer| layer.material.stage == Stage::Clean)
        .for_each(|layer| layer.coats = 0);
    coatings::minutes(&job)
}

pub(super) fn whole_minutes(minutes: f64) -> u32 {
    minutes.round().clamp(0.0, 1e6) as u32
}
