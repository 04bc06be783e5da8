//! Sums by hand and laws of learning.

use proptest::prelude::*;
use units::{Area, Mass};

use super::*;
use crate::basis::Basis;
use crate::demand::demands;
use crate::estimate::Estimate;
use crate::examples::{broad, job as sample, layer, zone};
use crate::job::{OwnRate, ZoneWork};
use crate::material::material;
use crate::mix::Scale;
use crate::substrate::Substrate;
use crate::tool::tool;
use crate::unit::SquareMetresPerLitre;

fn label() -> SourcedRange<SquareMetresPerLitre> {
    SourcedRange::own(8.0, 12.0)
}

fn observed(rate: f64, uncertainty: f64) -> Observed {
    Observed::of_rate(rate, uncertainty).unwrap()
}

fn job() -> Use {
    Use {
        before: Mass::grams(1500.0),
        after: Mass::grams(900.0),
        scale: Scale::KITCHEN,
        density: SourcedRange::own(1.2, 1.2),
        area: Estimate {
            value: Area::square_metres(2.45),
            standard_uncertainty: Area::square_metres(0.049),
        },
        coats: 2,
        substrate: Substrate::Sealed,
        kept: vec![SourcedRange::practice(0.005, 0.015)],
    }
}

/// By hand: 600 g at 1.2 kg/L are 0.5 L, less 0.01 L in the brush 0.49 L; two coats on 2.45 m2 are 4.9 m2, so 10 m2/L.
/// The difference is sure to hypot(1 / sqrt 6, 6 / sqrt 3) = hypot(0.408, 3.464) = 3.488 g of 600, 0.5813 %; of 0.5 L
/// that is 2.907 mL. The brush: 10 mL / sqrt 12 = 2.887 mL. Together 4.097 mL of 490, 0.836 %; the area 2 %;
/// hypot(0.836, 2) = 2.168 %.
#[test]
fn a_weighed_can() {
    let shown = Observed::of(&job()).unwrap();
    assert!((shown.rate() - 10.0).abs() < 1e-9, "{}", shown.rate());
    assert!(
        (shown.uncertainty() - 0.021_68).abs() < 1e-5,
        "{}",
        shown.uncertainty()
    );
    assert_eq!(shown.doubts(label()), []);
}

/// On bare wood the first coat counts 1.22 to 1.29 coats: 2.45 x (1.255 + 1) / 0.49 = 11.275 m2/L. It adds
/// 0.07 / sqrt 12 / 2.255 = 0.896 %, and a density of 1.1 to 1.3 adds 0.2 / sqrt 12 / 1.2 = 4.811 % of 0.5 L.
#[test]
fn thirst_and_density_make_it_less_sure() {
    let bare = Use {
        substrate: Substrate::Bare,
        density: SourcedRange::own(1.1, 1.3),
        ..job()
    };
    let shown = Observed::of(&bare).unwrap();
    assert!((shown.rate() - 11.275).abs() < 1e-9);
    let hand = libm::hypot(libm::hypot(0.021_68, 0.008_961), 0.048_113 * 0.5 / 0.49);
    assert!(
        (shown.uncertainty() - hand).abs() < 1e-5,
        "{} {hand}",
        shown.uncertainty()
    );
}

#[test]
fn what_teaches_nothing_is_refused() {
    let with = |change: &dyn Fn(&mut Use)| {
        let mut job = job();
        change(&mut job);
        Observed::of(&job)
    };
    assert_eq!(with(&|job| job.after = job.before), Err(Fault::NothingUsed));
    assert_eq!(with(&|job| job.coats = 0), Err(Fault::NoArea));
    assert_eq!(with(&|job| job.area.value = Area::ZERO), Err(Fault::NoArea));
    assert_eq!(
        with(&|job| job.kept = vec![SourcedRange::own(0.5, 0.5)]),
        Err(Fault::AllKept)
    );
    assert_eq!(
        with(&|job| job.density = SourcedRange::own(0.0, 1.0)),
        Err(Fault::Density)
    );
    assert_eq!(
        with(&|job| job.before = Mass::grams(f64::NAN)),
        Err(Fault::NotANumber)
    );
    for (rate, uncertainty) in [
        (0.0, 0.1),
        (-1.0, 0.1),
        (f64::INFINITY, 0.1),
        (9.0, -0.1),
        (9.0, f64::NAN),
    ] {
        assert_eq!(Observed::of_rate(rate, uncertainty), Err(Fault::NotANumber));
    }
    for fault in [
        Fault::NotANumber,
        Fault::NothingUsed,
        Fault::NoArea,
        Fault::AllKept,
        Fault::Density,
    ] {
        assert!(fault.to_string().ends_with('.'));
    }
}

/// 20 m2/L lies 1.67 times above 12; one coat in place of two makes 10 of it.
#[test]
fn a_rate_far_from_the_label_is_asked_about_and_learned() {
    let far = Use {
        after: Mass::grams(1194.0),
        ..job()
    };
    let shown = Observed::of(&far).unwrap();
    assert!((shown.rate() - 20.0).abs() < 1e-9);
    let doubts = shown.doubts(label());
    assert!(
        matches!(doubts[..], [Doubt::Far { coats: Some(1), .. }]),
        "{doubts:?}"
    );
    assert_eq!(
        doubts[0].to_string(),
        "Coverage came out at 20 m²/L; the label says 8 to 12 m²/L. 1 coat would fit. How many did you apply?"
    );
    let learned = learn(label(), &[shown]);
    assert!(learned.range().high > 12.0 && learned.narrowed() < 0.0);
    let odd = observed(100.0, 0.3).doubts(label());
    assert!(matches!(
        odd[..],
        [Doubt::Far { coats: None, .. }, Doubt::Vague { .. }]
    ));
    assert!(odd[1].to_string().contains("30%"));
}

/// By hand, perfectly weighed jobs of 9 and 10 m2/L. Before: middle ln sqrt 96 = 2.282 174, half (ln 12 - ln 8) / 2 =
/// 0.202 733, s0^2 = (0.202 733 / 2.776 445)^2 / 2 = 0.002 665 89. Logs 2.197 225 and 2.302 585, mean 2.249 905, squares
/// 2 x 0.052 680^2 = 0.005 550 4; the mean moved by -0.032 269, squared x 1 x 2 / 3 = 0.000 694 2. So
/// s^2 = (4 x 0.002 665 89 + 0.005 550 4 + 0.000 694 2) / 6 = 0.002 818 0; middle 2.282 174 - 0.032 269 x 2 / 3 =
/// 2.260 661. Half of the range: 2.446 912 x sqrt(0.002 818 0 x 4 / 3) = 0.149 989.
#[test]
fn two_jobs_by_hand() {
    let learned = learn(label(), &[observed(9.0, 0.0), observed(10.0, 0.0)]);
    let figure = learned.range();
    assert!((libm::log(figure.low) - (2.260_661 - 0.149_989)).abs() < 2e-5);
    assert!((libm::log(figure.high) - (2.260_661 + 0.149_989)).abs() < 2e-5);
    assert_eq!((learned.jobs(), learned.effective_jobs()), (2, 2.0));
    assert!((learned.share_of_jobs() - 2.0 / 3.0).abs() < 1e-12);
    assert!((learned.narrowed() - (1.0 - 0.149_989 / 0.202_733)).abs() < 1e-4);
    assert!((learned.scatter() - 0.002_818_0_f64.sqrt()).abs() < 1e-6);
    assert!(figure.low < learned.mean_between().0 && learned.mean_between().1 < figure.high);
    assert_eq!(figure.certainty, Provenance::Maker);
}

/// Ten even jobs: a need is surer than before any of them, and sure of another middle.
#[test]
fn a_need_gets_narrower() {
    let enamel = material("trim-enamel").unwrap();
    let usual = usual_rate(enamel, tool("brush").unwrap(), Basis::LabelRate);
    assert_eq!(usual, enamel.label_rate);
    let jobs: Vec<Observed> = (0..10)
        .map(|n| observed(usual.low * (1.0 + 0.01 * f64::from(n % 3)), 0.02))
        .collect();
    let rate = learn(usual, &jobs).range();
    let own = [OwnRate {
        tool: "brush",
        rate,
        jobs: 10,
    }];
    let before = [OwnRate {
        tool: "brush",
        rate: usual,
        jobs: 0,
    }];
    let samples = |own: &[OwnRate]| {
        let mut layer = layer("trim-enamel", 2, "brush");
        layer.own_rates = own.into();
        let zone = ZoneWork {
            basis: Basis::LabelRate,
            ..zone("body", vec![broad(3.0)], vec![layer])
        };
        let demand = demands(&sample(vec![zone]), 20_000).remove(0);
        (demand.high().as_litres() - demand.low().as_litres()) / demand.likely().as_litres()
    };
    assert!(
        samples(&own) < 0.8 * samples(&before),
        "{} {}",
        samples(&own),
        samples(&before)
    );
}

/// 9.2 x 0.25 at least; the middle of a sprayer's rate is far below that of a brush.
#[test]
fn a_sprayer_has_a_range_of_its_own() {
    let enamel = material("trim-enamel").unwrap();
    let hvlp = tool("hvlp").unwrap();
    let by_label = usual_rate(enamel, hvlp, Basis::LabelRate);
    assert!((by_label.low - enamel.label_rate.low * hvlp.transfer.low).abs() < 1e-12);
    assert!((by_label.high - enamel.label_rate.high * hvlp.transfer.high / 0.95).abs() < 1e-12);
    // By hand: a liter spread 1 mm thick covers 1 m2.
    let film = hvlp.film(enamel.body).unwrap();
    let by_film = usual_rate(enamel, hvlp, Basis::WetFilm);
    assert!((by_film.low - hvlp.transfer.low / (film.high * 1000.0)).abs() < 1e-9);
    assert!((by_film.high - hvlp.transfer.high / (film.low * 1000.0)).abs() < 1e-9);
    assert_eq!((by_film.source, by_film.certainty), (film.source, film.certainty));
}

#[test]
fn a_range_that_is_none_stays_and_one_number_is_opened() {
    let none = SourcedRange::own(0.0, 0.0);
    let learned = learn(none, &[observed(9.0, 0.01)]);
    assert_eq!(
        (learned.range(), learned.jobs(), learned.narrowed()),
        (none, 0, 0.0)
    );
    assert_eq!(learned.middle(), 0.0);
    let one = learn(SourcedRange::own(10.0, 10.0), &[observed(9.0, 0.01)]);
    assert!(one.range().low < one.range().high && one.narrowed() == 0.0);
}

fn jobs(most: usize) -> impl Strategy<Value = Vec<Observed>> {
    prop::collection::vec((2.0..40.0f64, 0.0..0.2f64), 0..most)
        .prop_map(|jobs| jobs.into_iter().map(|(rate, u)| observed(rate, u)).collect())
}

fn width(figure: SourcedRange<SquareMetresPerLitre>) -> f64 {
    libm::log(figure.high / figure.low)
}

proptest! {
    #[test]
    fn without_jobs_it_is_the_label(low in 0.1..30.0f64, times in 1.0..4.0f64) {
        let label = SourcedRange::own(low, low * times);
        let learned = learn(label, &[]);
        prop_assert_eq!(learned.range(), label);
        prop_assert_eq!((learned.share_of_jobs(), learned.effective_jobs()), (0.0, 0.0));
        // The formula itself says the same: the limit of a job that weighs nothing.
        let formula = learned.interval(2.0);
        prop_assert!((formula.0 / label.low - 1.0).abs() < 1e-9 && (formula.1 / label.high - 1.0).abs() < 1e-9 || times < 1.000_001);
    }

    #[test]
    fn the_order_does_not_matter(jobs in jobs(12), turn in 0usize..12) {
        let mut other = jobs.clone();
        other.reverse();
        let places = other.len().max(1);
        other.rotate_left(turn % places);
        let (one, two) = (learn(label(), &jobs).range(), learn(label(), &other).range());
        prop_assert!((one.low / two.low - 1.0).abs() < 1e-12 && (one.high / two.high - 1.0).abs() < 1e-12);
    }

    /// A job narrows the range whenever it lies within one scale of where it was expected: then
    /// `k w / (k + w) d^2 <= s^2`, so the scatter does not grow, and both counts do. One from afar may widen it.
    #[test]
    fn a_job_that_was_to_be_expected_narrows(jobs in jobs(12), off in -0.999..0.999f64, u in 0.0..0.2f64) {
        let before = learn(label(), &jobs);
        let weight = learn(label(), &[]).weight_of(&observed(10.0, u));
        let scale = (before.scatter * (1.0 / weight + 1.0 / before.weight)).sqrt();
        let next = observed(before.middle() * libm::exp(off * scale), u);
        let mut more = jobs;
        more.push(next);
        let after = learn(label(), &more);
        prop_assert!(width(after.range()) < width(before.range()));
        prop_assert!(after.mean_between().1 / after.mean_between().0 < before.mean_between().1 / before.mean_between().0);
        prop_assert!(after.effective_jobs() > before.effective_jobs());
        prop_assert!(after.share_of_jobs() > before.share_of_jobs());
    }

    /// The middle lies between that of the label and those of the jobs; jobs never count for more than they are.
    #[test]
    fn the_middle_is_drawn_from_the_label_to_the_jobs(jobs in jobs(12)) {
        let learned = learn(label(), &jobs);
        let start = 96f64.sqrt();
        let low = jobs.iter().map(Observed::rate).fold(start, f64::min);
        let high = jobs.iter().map(Observed::rate).fold(start, f64::max);
        prop_assert!(low * (1.0 - 1e-12) <= learned.middle() && learned.middle() <= high * (1.0 + 1e-12));
        prop_assert!(learned.effective_jobs() <= jobs.len() as f64 + 1e-9);
        prop_assert!(learned.range().low > 0.0 && learned.range().low <= learned.range().high);
    }
}
