//! Propagation of distributions and tape errors against published values.
//!
//! Outside sources:
//! - JCGM 101:2008, clauses 9.2.2 to 9.2.4 (the additive model with four inputs); values from memory, and found
//!   again by a simulation apart from this code.
//! - JCGM 100:2008, clauses 4.3.7, 5.2.2 and F.2.2.1; from memory, standard mathematics.
//! - UK SI 2016/1153, Sch. 1I (as Directive 2014/32/EU, Annex X, MI-008), read: errors of tapes.

use coatings::{Distribution, Spread, propagate};
use units::Length;
use workshop::standard_uncertainty;

const TRIALS: usize = 1_000_000;
const SEED: u64 = 101;

#[track_caller]
fn near(ours: f64, published: f64, tolerance: f64) {
    assert!(
        (ours - published).abs() <= tolerance,
        "{ours} is not {published} to {tolerance}"
    );
}

const STANDARD_NORMAL: Distribution = Distribution::Normal {
    mean: 0.0,
    standard_uncertainty: 1.0,
};

/// About zero, with this standard uncertainty: the half width is its product with the root of 3 (JCGM 100,
/// 4.3.7).
fn rectangle(standard_uncertainty: f64) -> Distribution {
    let half = standard_uncertainty * 3f64.sqrt();
    Distribution::Rectangular {
        low: -half,
        high: half,
    }
}

fn sum_of(inputs: &[Distribution]) -> Spread {
    propagate(inputs, TRIALS, SEED, |x| x.iter().sum())
}

#[track_caller]
fn covers_95_per_cent(spread: &Spread, half_width: f64, tolerance: f64) {
    near(spread.quantile(0.025), -half_width, tolerance);
    near(spread.quantile(0.975), half_width, tolerance);
    near(spread.mean(), 0.0, tolerance);
}

/// JCGM 101, 9.2.2: u = 2.0, [-3.92, 3.92].
#[test]
fn four_normals() {
    let spread = sum_of(&[STANDARD_NORMAL; 4]);
    covers_95_per_cent(&spread, 3.92, 0.03);
    near(spread.standard_uncertainty(), 2.0, 0.01);
}

/// JCGM 101, 9.2.3: u = 2.0, [-3.88, 3.88].
#[test]
fn four_rectangles() {
    let spread = sum_of(&[rectangle(1.0); 4]);
    covers_95_per_cent(&spread, 3.88, 0.03);
    near(spread.standard_uncertainty(), 2.0, 0.01);
}

/// JCGM 101, 9.2.4: [-17.0, 17.0], where the linear law gives u = 10.1 and [-19.9, 19.9]. One wide rectangle
/// among narrow ones is how paint behaves: the film dominates, and twice the uncertainty would be too wide.
#[test]
fn one_wide_rectangle_among_narrow_ones() {
    let inputs = [rectangle(1.0), rectangle(1.0), rectangle(1.0), rectangle(10.0)];
    let spread = sum_of(&inputs);
    covers_95_per_cent(&spread, 17.0, 0.1);
    let variance: f64 = inputs
        .iter()
        .map(|input| input.standard_uncertainty() * input.standard_uncertainty())
        .sum();
    near(variance.sqrt(), 10.1, 0.05);
    near(1.96 * variance.sqrt(), 19.9, 0.05);
    near(spread.standard_uncertainty(), variance.sqrt(), 0.05);
}

/// JCGM 100, 4.3.7: a rectangle of half width a has u = a / sqrt 3; F.2.2.1: a division d has u = 0.29 d.
#[test]
fn the_uncertainty_of_a_rectangle() {
    let u = |low, high| Distribution::Rectangular { low, high }.standard_uncertainty();
    near(u(-1.0, 1.0), 0.577_350_269, 1e-9);
    near(u(0.0, 1.0), 0.29, 0.005);
    near(rectangle(1.0).standard_uncertainty(), 1.0, 1e-12);
    near(Distribution::Rectangular { low: 3.0, high: 5.0 }.mean(), 4.0, 0.0);
}

/// JCGM 100, 5.2.2: ten resistors measured against one standard with u = 0.1 ohm have 1 ohm together, for they
/// share its error; taken as independent they would have 0.32 ohm. One spreading rate serves all faces alike.
#[test]
fn a_shared_error_is_not_averaged_away() {
    let tenth = Distribution::Normal {
        mean: 1000.0,
        standard_uncertainty: 0.1,
    };
    let shared = propagate(&[tenth], TRIALS, SEED, |x| (0..10).map(|_| x[0]).sum());
    near(shared.standard_uncertainty(), 1.0, 0.005);
    let apart = sum_of(&[tenth; 10]);
    near(apart.standard_uncertainty(), 0.32, 0.005);
}

/// What the tape alone adds to a reading, as its largest permissible error, millimetres.
///
/// The public function adds the division of a sixteenth of an inch at right angles (rectangular); it is taken
/// off again, by the arithmetic of JCGM 100.
fn tape_error(metres: f64) -> f64 {
    let u = standard_uncertainty(Length::metres(metres), true).as_millimetres();
    let division = 25.4 / 16.0 / 12f64.sqrt();
    (u * u - division * division).sqrt() * 3f64.sqrt()
}

/// Class II, read: 0.9, 1.3, 1.9 and 2.3 mm at 3, 5, 8 and 10 m; a hook at the end adds 0.2 mm.
#[test]
fn class_two_tapes() {
    for (metres, printed) in [(3.0, 0.9), (5.0, 1.3), (8.0, 1.9), (10.0, 2.3)] {
        near(tape_error(metres), printed + 0.2, 1e-9);
    }
}

/// The length is rounded up to the next whole metre: at 1.2 m with a hook 0.3 + 0.2 x 2 + 0.2 = 0.9 mm (read),
/// and u = 0.5196 mm (calculated).
#[test]
fn a_metre_begun_counts_whole() {
    near(tape_error(1.2), 0.9, 1e-9);
    near(tape_error(1.2) / 3f64.sqrt(), 0.5196, 1e-4);
    near(tape_error(1.0), 0.7, 1e-9);
    near(tape_error(0.1), 0.7, 1e-9);
}
