//! The takeoff of the invented workshop against a chain of other tools.
//!
//! Outside sources: the painted area comes from the fixtures of a CAD kernel (`tests/cad`); what it takes comes
//! from a Monte Carlo with NumPy (`scripts/quantiles.py`, whose result is committed in `fixtures/`). Only the
//! measurements, the scheme and the figures of the tools are common to both sides. Volumes must agree within
//! 1.5 %, probabilities within 0.02: the takeoff rests on 10,000 trials, whose own noise is about 1 %.

#![allow(clippy::unwrap_used, reason = "a test may stop where its fixture is broken")]

use std::rc::Rc;

use coatings::{Amount, Stage};
use outside::{cad_fixture, fixture};
use serde::Deserialize;
use units::Volume;
use workshop::{Piece, Takeoff, invented_workshop, takeoff};

const QUANTILE: f64 = 0.015;
const PROBABILITY: f64 = 0.02;

#[derive(Deserialize)]
struct Quantiles {
    pieces: Vec<PieceFixture>,
}

#[derive(Deserialize)]
struct PieceFixture {
    id: String,
    cad: String,
    count: u32,
    painted_m2: f64,
    painted_u_m2: f64,
    stages: Vec<StageFixture>,
}

#[derive(Deserialize)]
struct StageFixture {
    stage: String,
    tool: String,
    coats: u32,
    can: String,
    low: f64,
    likely: f64,
    high: f64,
    can_enough: f64,
    enough: Vec<EnoughFixture>,
}

#[derive(Deserialize)]
struct EnoughFixture {
    litres: f64,
    probability: f64,
}

fn stage(word: &str) -> Stage {
    match word {
        "primer" => Stage::Primer,
        "paint" => Stage::Paint,
        other => {
            assert_eq!(other, "topcoat");
            Stage::Topcoat
        }
    }
}

/// Each piece of the invented workshop with what the other chain says of it.
fn pairs() -> Vec<(PieceFixture, Rc<Piece>, Takeoff)> {
    let quantiles: Quantiles = fixture("quantiles.json").unwrap();
    let workshop = invented_workshop();
    assert_eq!(
        quantiles.pieces.len(),
        workshop.pieces.len(),
        "every invented piece is checked"
    );
    let pair = |theirs: PieceFixture| {
        let piece = workshop
            .pieces
            .iter()
            .find(|piece| *piece.id.0 == theirs.id)
            .unwrap();
        let ours = takeoff(piece).unwrap();
        (theirs, piece.clone(), ours)
    };
    quantiles.pieces.into_iter().map(pair).collect()
}

#[track_caller]
fn within(place: &str, ours: f64, theirs: f64, share: f64) {
    assert!(
        (ours / theirs - 1.0).abs() <= share,
        "{place}: {ours} against {theirs}, {:+.2} %",
        100.0 * (ours / theirs - 1.0)
    );
}

/// The fixtures are of the pieces that the page comes with, and not of an earlier version of them.
#[test]
fn the_fixtures_are_of_the_invented_pieces() {
    for (theirs, piece, _) in pairs() {
        let cad = cad_fixture(&theirs.cad).unwrap();
        let measured = cad.to_piece().unwrap();
        assert_eq!(measured.furniture(), piece.furniture(), "{}", theirs.id);
        assert_eq!(measured.readings, piece.readings, "{}", theirs.id);
        assert_eq!(theirs.count, piece.count);
        within(
            &theirs.id,
            theirs.painted_m2,
            cad.outside_area() * f64::from(theirs.count),
            1e-6,
        );
    }
}

#[test]
fn the_painted_area_agrees_with_the_kernel() {
    for (theirs, _, ours) in pairs() {
        within(
            &theirs.id,
            ours.painted.area.as_square_metres(),
            theirs.painted_m2,
            1e-3,
        );
    }
}

/// An uncertainty is stated to two figures at most (JCGM 100, 7.2.6, from memory): 5 % of it is the finest that
/// may differ. The kernel's way steps up and down and takes the mean, the takeoff steps once.
#[test]
fn the_uncertainty_of_the_area_agrees() {
    for (theirs, _, ours) in pairs() {
        within(
            &theirs.id,
            ours.painted.standard_uncertainty.as_square_metres(),
            theirs.painted_u_m2,
            0.05,
        );
    }
}

#[test]
fn volumes_and_probabilities_agree_for_each_stage_and_tool() {
    let (mut compared, mut open) = (0, 0);
    let mut worst = (0f64, 0f64);
    for (theirs, _, ours) in pairs() {
        for line in &theirs.stages {
            let place = format!("{} {} {}", theirs.id, line.stage, line.tool);
            let column = ours
                .tools
                .iter()
                .find(|column| column.tool.key == line.tool)
                .unwrap();
            let figure = column
                .figures
                .iter()
                .find(|figure| figure.stage == stage(&line.stage))
                .unwrap();
            assert_eq!(figure.coats, line.coats, "{place}");
            for (quantile, mine, other) in quantiles(&figure.amount, line) {
                within(&format!("{place}, {quantile}"), mine, other, QUANTILE);
                worst.0 = worst.0.max((mine / other - 1.0).abs());
            }
            let asked = line.enough.iter().map(|theirs| {
                let volume = Volume::litres(theirs.litres);
                (figure.amount.probability_enough(volume), theirs.probability)
            });
            for (mine, other) in asked.chain([(figure.enough.probability, line.can_enough)]) {
                assert!(
                    (mine - other).abs() <= PROBABILITY,
                    "{place}: {mine} against {other}"
                );
                worst.1 = worst.1.max((mine - other).abs());
                open += usize::from(0.05 < other && other < 0.95);
            }
            compared += 1;
        }
    }
    assert_eq!(compared, 2 * 3 * 2, "two pieces, three stages, two tools");
    assert!(
        open >= 4 * compared,
        "too few of the probabilities are other than 0 and 1"
    );
    println!(
        "largest difference {:.2} % of a volume, {:.4} of a probability",
        100.0 * worst.0,
        worst.1
    );
}

fn quantiles(amount: &Amount, line: &StageFixture) -> [(&'static str, f64, f64); 3] {
    [
        ("low", amount.low().as_litres(), line.low),
        ("likely", amount.likely().as_litres(), line.likely),
        ("high", amount.high().as_litres(), line.high),
    ]
}

/// The question that started it: are eight fluid ounces of paint enough for the pair of nightstands?
#[test]
fn whether_eight_fluid_ounces_paint_the_nightstands() {
    let mut asked = 0;
    for (theirs, piece, ours) in pairs() {
        let paint = ours
            .materials
            .iter()
            .find(|line| line.stage == Stage::Paint)
            .unwrap();
        if paint.can.key != "us-8-fl-oz" {
            continue;
        }
        let line = theirs
            .stages
            .iter()
            .find(|line| line.stage == "paint" && line.tool == paint.tool.key)
            .unwrap();
        assert_eq!(line.can, paint.can.key);
        assert!(
            (paint.enough.probability - line.can_enough).abs() <= PROBABILITY,
            "{}",
            piece.name
        );
        asked += 1;
    }
    assert_eq!(asked, 1, "the nightstands ask for a sample pot of paint");
}
