//! Propagation of distributions and tape errors against published values.
//!
//! Outside sources:
//! - JCGM 101:2008, clauses 9.2.2 to 9.2.4 (the additive model with four inputs); values from memory, and found
//!   again by a simulation apart from this code.
//! - JCGM 100:2008, clauses 4.3.7, 4.4.3, 5.1.6, 5.2.2 and F.2.2.1; from memory, standard mathematics. Examples H.1 and
//!   H.2: figures and results read in the documents of a calculator of a national metrology institute.
//! - UK SI 2016/1153, Sch. 1I (as Directive 2014/32/EU, Annex X, MI-008), read: errors of tapes.

#![allow(
    clippy::disallowed_methods,
    reason = "a test need not agree to the last digit on every target"
)]

use coatings::{Distribution, Input, Linear, Patch, Samples, linear, monte_carlo};
use units::{Area, Length};
use workshop::standard_uncertainty;

const TRIALS: usize = 1_000_000;
/// Standard deviations that are let pass; each is worked out from the number of trials where it is used.
const DEVIATIONS: f64 = 4.0;

#[track_caller]
fn near(ours: f64, published: f64, tolerance: f64) {
    assert!(
        (ours - published).abs() <= tolerance,
        "{ours} is not {published} to {tolerance}"
    );
}

const fn normal(mean: f64, standard_uncertainty: f64) -> Distribution {
    Distribution::Normal {
        mean,
        standard_uncertainty,
    }
}

const STANDARD_NORMAL: Distribution = normal(0.0, 1.0);

/// About zero, with this standard uncertainty: the half width is its product with the root of 3 (JCGM 100,
/// 4.3.7).
fn rectangle(standard_uncertainty: f64) -> Distribution {
    let half = standard_uncertainty * 3f64.sqrt();
    Distribution::between(-half, half)
}

/// Inputs that have nothing in common: each has a name, and so draws, of its own.
fn apart(distributions: &[Distribution]) -> Vec<Input> {
    let input = |(place, distribution): (usize, &Distribution)| Input {
        name: format!("input {place}"),
        distribution: *distribution,
    };
    distributions.iter().enumerate().map(input).collect()
}

fn sum(columns: &[Vec<f64>]) -> Vec<f64> {
    let rows = columns.first().map_or(0, Vec::len);
    let row = |row: usize| columns.iter().map(|column| column[row]).sum();
    (0..rows).map(row).collect()
}

fn sum_of(inputs: &[Distribution]) -> (Samples, Linear) {
    let inputs = apart(inputs);
    (
        Samples::of(&monte_carlo(&inputs, TRIALS, sum)),
        linear(&inputs, sum),
    )
}

/// That the published limits, to half of their last digit, are where 2.5 % of the trials lie beyond them: a share of
/// 1,000,000 trials scatters by `sqrt(0.025 x 0.975 / 1,000,000)`, the mean by `u / 1000`.
#[track_caller]
fn covers_95_per_cent(spread: &Samples, half_width: f64, half_a_digit: f64) {
    let trials = TRIALS as f64;
    let off = DEVIATIONS * (0.025 * 0.975 / trials).sqrt();
    for (share, limit) in [(0.025, -half_width), (0.975, half_width)] {
        let (low, high) = (spread.quantile(share - off), spread.quantile(share + off));
        assert!(
            low - half_a_digit <= limit && limit <= high + half_a_digit,
            "{limit} is not between {low} and {high}"
        );
    }
    near(
        spread.mean(),
        0.0,
        DEVIATIONS * spread.standard_uncertainty() / trials.sqrt(),
    );
}

/// That the trials scatter by `u`: their standard deviation is steady to `u sqrt((kurtosis - 1) / 4 n)`, and no
/// kurtosis here is above that of the normal distribution, 3.
#[track_caller]
fn scatters_by(spread: &Samples, u: f64) {
    near(
        spread.standard_uncertainty(),
        u,
        DEVIATIONS * u * (0.5 / TRIALS as f64).sqrt(),
    );
}

/// JCGM 101, 9.2.2: u = 2.0, [-3.92, 3.92].
#[test]
fn four_normals() {
    let (spread, linear) = sum_of(&[STANDARD_NORMAL; 4]);
    covers_95_per_cent(&spread, 3.92, 0.005);
    scatters_by(&spread, 2.0);
    near(linear.standard_uncertainty(), 2.0, 1e-12);
}

/// JCGM 101, 9.2.3: u = 2.0, [-3.88, 3.88].
#[test]
fn four_rectangles() {
    let (spread, linear) = sum_of(&[rectangle(1.0); 4]);
    covers_95_per_cent(&spread, 3.88, 0.005);
    scatters_by(&spread, 2.0);
    near(linear.standard_uncertainty(), 2.0, 1e-12);
}

/// JCGM 101, 9.2.4: [-17.0, 17.0], where the linear law gives u = 10.1 and [-19.9, 19.9]. One wide rectangle
/// among narrow ones is how paint behaves: the film dominates, and twice the uncertainty would be too wide.
#[test]
fn one_wide_rectangle_among_narrow_ones() {
    let (spread, linear) = sum_of(&[rectangle(1.0), rectangle(1.0), rectangle(1.0), rectangle(10.0)]);
    covers_95_per_cent(&spread, 17.0, 0.05);
    let u = linear.standard_uncertainty();
    near(u, 10.1, 0.05);
    near(1.96 * u, 19.9, 0.05);
    scatters_by(&spread, u);
}

/// JCGM 100, 4.3.7: a rectangle of half width a has u = a / sqrt 3; F.2.2.1: a division d has u = 0.29 d.
#[test]
fn the_uncertainty_of_a_rectangle() {
    let u = |low, high| Distribution::between(low, high).standard_uncertainty();
    near(u(-1.0, 1.0), 0.577_350_269, 1e-9);
    near(u(0.0, 1.0), 0.29, 0.005);
    near(rectangle(1.0).standard_uncertainty(), 1.0, 1e-12);
    near(Distribution::between(3.0, 5.0).mean(), 4.0, 0.0);
    near(u(3.0, 3.0), 0.0, 0.0);
}

/// Calculated from the rectangle of JCGM 100, 4.3.7: a label that says 350 to 450 ft2/gal leaves 7.2 % open.
#[test]
fn a_label_rate_leaves_seven_per_cent_open() {
    let rate = Distribution::between(350.0, 450.0);
    near(100.0 * rate.standard_uncertainty() / rate.mean(), 7.2, 0.05);
}

/// JCGM 100, 4.4.3, from memory and worked out again: 20 temperatures, mean 100.145, s = 1.489, s / sqrt 20 = 0.333.
#[test]
fn twenty_temperatures() {
    let spread = Samples::of(&[
        96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68,
        100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
    ]);
    near(spread.mean(), 100.145, 5e-4);
    near(spread.standard_uncertainty(), 1.489, 5e-4);
    near(spread.standard_uncertainty() / 20f64.sqrt(), 0.333, 5e-4);
}

/// JCGM 100, H.1 (an end gauge), read: six parts of 25 to 2.9 nm come to 32 nm; calculated to more digits, 31.664.
#[test]
fn an_end_gauge() {
    let parts = [25.0, 16.599, 6.7, 5.8, 3.9, 2.886_79];
    let (_, linear) = sum_of(&parts.map(|u| normal(0.0, u)));
    near(linear.standard_uncertainty(), 31.664, 0.001);
    near(linear.standard_uncertainty(), 32.0, 0.5);
    for (ours, part) in linear.contributions.iter().zip(parts) {
        near(*ours, part, 1e-9);
    }
}

/// JCGM 100, H.2, read: voltage 4.999(0.0032) V, current 19.661(0.0095) mA and phase 1.04446(0.00075), whose errors
/// hang together by -0.36, 0.86 and -0.65, give R 127.732(70), X 219.85(30), Z 254.26(24) ohm.
///
/// What hangs together is written as sums of causes that do not, as the areas of a piece are: with the lower triangle
/// whose product with itself is the covariance, worked out by hand. All results are found to the digits printed.
#[test]
fn errors_that_hang_together() {
    let (u, i, phase) = ((4.999, 0.0032), (19.661e-3, 0.0095e-3), (1.044_46, 0.000_75));
    let [r_ui, r_up, r_ip] = [-0.36f64, 0.86, -0.65];
    let rest_i = (1.0 - r_ui * r_ui).sqrt();
    let common_ip = (r_ip - r_ui * r_up) / rest_i;
    let rest_p = (1.0 - r_up * r_up - common_ip * common_ip).sqrt();
    let causes = apart(&[STANDARD_NORMAL; 3]);
    let of = |output: fn(f64, f64, f64) -> f64| {
        let model = |x: &[Vec<f64>]| {
            let row = |row: usize| {
                let (a, b, c) = (x[0][row], x[1][row], x[2][row]);
                output(
                    u.0 + u.1 * a,
                    i.0 + i.1 * (r_ui * a + rest_i * b),
                    phase.0 + phase.1 * (r_up * a + common_ip * b + rest_p * c),
                )
            };
            (0..x[0].len()).map(row).collect()
        };
        linear(&causes, model)
    };
    let resistance = of(|u, i, phase| u / i * phase.cos());
    let reactance = of(|u, i, phase| u / i * phase.sin());
    let impedance = of(|u, i, _| u / i);
    for (ours, value, uncertainty, half_a_digit) in [
        (&resistance, 127.732, 0.070, 0.0005),
        (&reactance, 219.85, 0.30, 0.005),
        (&impedance, 254.26, 0.24, 0.005),
    ] {
        near(ours.value, value, half_a_digit);
        near(ours.standard_uncertainty(), uncertainty, half_a_digit);
    }
    // And what comes out hangs together by -0.59, -0.49 and +0.99.
    let correlation = |a: &Linear, b: &Linear| {
        let products = a.contributions.iter().zip(&b.contributions).map(|(a, b)| a * b);
        products.sum::<f64>() / (a.standard_uncertainty() * b.standard_uncertainty())
    };
    near(correlation(&resistance, &reactance), -0.59, 0.005);
    near(correlation(&resistance, &impedance), -0.49, 0.005);
    near(correlation(&reactance, &impedance), 0.99, 0.005);
}

/// JCGM 100, 5.2.2: ten resistors measured against one standard with u = 0.1 ohm have 1 ohm together, for they
/// share its error; taken as independent they would have 0.32 ohm. One spreading rate serves all faces alike.
#[test]
fn a_shared_error_is_not_averaged_away() {
    let tenth = normal(1000.0, 0.1);
    let shared: Vec<Input> = (0..10)
        .map(|_| Input {
            name: "the standard".into(),
            distribution: tenth,
        })
        .collect();
    scatters_by(&Samples::of(&monte_carlo(&shared, TRIALS, sum)), 1.0);
    let (spread, linear) = sum_of(&[tenth; 10]);
    scatters_by(&spread, 0.1 * 10f64.sqrt());
    near(linear.standard_uncertainty(), 0.32, 0.005);
}

/// The same with areas: ten faces that one tape made too large by 0.1 m2 are 1 m2 too large, ten that were measured
/// each by itself 0.32 m2.
#[test]
fn one_tape_is_wrong_for_all_faces_at_once() {
    let faces = |cause_of: fn(usize) -> usize| {
        let face = |place: usize| {
            let mut steps = vec![Area::ZERO; 10];
            steps[cause_of(place)] = Area::square_metres(0.1);
            Patch {
                area: Area::square_metres(1.0),
                steps,
                ..Patch::default()
            }
        };
        let faces: Vec<Patch> = (0..10).map(face).collect();
        let all = Patch::together(faces.iter());
        near(all.value.as_square_metres(), 10.0, 1e-12);
        all.standard_uncertainty.as_square_metres()
    };
    near(faces(|_| 0), 1.0, 1e-12);
    near(faces(|place| place), 0.3162, 1e-4);
}

/// What the tape alone adds to a reading, as its largest permissible error, millimetres.
///
/// The public function adds the division of a sixteenth of an inch at right angles (rectangular); it is taken
/// off again, by the arithmetic of JCGM 100.
fn tape_error(metres: f64) -> f64 {
    let u = standard_uncertainty(Length::metres(metres)).as_millimetres();
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
