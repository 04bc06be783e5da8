//! The takeoff of the invented workshop against a chain of other tools.
//!
//! Outside sources: the painted area comes from the fixtures of a CAD kernel (`tests/cad`); what it takes comes
//! from a Monte Carlo with NumPy (`scripts/quantiles.py`, whose result is committed in `fixtures/`). Only the
//! measurements, the scheme and the figures of the tools are common to both sides. Volumes must agree within
//! 1.5 %, probabilities within 0.02: the takeoff rests on 10,000 trials, whose own noise is about 1 %.

#![allow(clippy::unwrap_used, reason = "a test may stop where its fixture is broken")]

use std::rc::Rc;

use coatings::{Contents, Demand, Enough, Patch, TRIALS, Way, can, demands, extra_needed, tool};
use outside::{cad_fixture, fixture};
use serde::Deserialize;
use units::Volume;
use workshop::book::Books;
use workshop::learning::lessons;
use workshop::{Edit, HaveEdit, MaterialLine, Piece, Takeoff, invented_workshop, takeoff};

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
    zones: Vec<ZoneFixture>,
    pairs: Vec<PairFixture>,
    stages: Vec<StageFixture>,
}

#[derive(Deserialize)]
struct ZoneFixture {
    zone: String,
    painted_m2: f64,
    painted_u_m2: f64,
}

#[derive(Deserialize)]
struct PairFixture {
    zones: [String; 2],
    painted_u_m2: f64,
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
        let ours = takeoff(&workshop, piece, &[]).unwrap();
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
            ours.painted.value.as_square_metres(),
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

/// The patches of some zones of a job.
fn patches<'a>(ours: &'a Takeoff, zones: &'a [String]) -> impl Iterator<Item = &'a Patch> {
    let found = ours.job.zones.iter().filter(|zone| zones.contains(&zone.key));
    found.flat_map(|zone| &zone.patches)
}

/// The kernel measures each zone again with each measurement larger and smaller. Of two zones together the errors add up
/// with their signs, so a covariance that is wrong or missing shows in the pairs.
#[test]
fn zones_are_as_uncertain_together_as_the_kernel_says() {
    for (theirs, _, ours) in pairs() {
        assert_eq!(theirs.zones.len(), ours.job.zones.len(), "{}", theirs.id);
        for zone in &theirs.zones {
            let place = format!("{} {}", theirs.id, zone.zone);
            let alone = Patch::together(patches(&ours, std::slice::from_ref(&zone.zone)));
            within(&place, alone.value.as_square_metres(), zone.painted_m2, 1e-3);
            let u = alone.standard_uncertainty.as_square_metres();
            within(&place, u, zone.painted_u_m2, 0.05);
        }
        for pair in &theirs.pairs {
            let both = Patch::together(patches(&ours, &pair.zones)).standard_uncertainty;
            let place = format!("{} {:?}", theirs.id, pair.zones);
            within(&place, both.as_square_metres(), pair.painted_u_m2, 0.05);
        }
    }
}

/// The check above is one of covariances: in some pairs, errors that knew nothing of each other would give another result.
#[test]
fn errors_of_zones_that_hang_together_are_among_the_checked() {
    let apart = |theirs: &PieceFixture, pair: &PairFixture| {
        let of_pair = theirs.zones.iter().filter(|zone| pair.zones.contains(&zone.zone));
        let squares: f64 = of_pair.map(|zone| zone.painted_u_m2 * zone.painted_u_m2).sum();
        pair.painted_u_m2 / squares.sqrt()
    };
    let quantiles: Quantiles = fixture("quantiles.json").unwrap();
    let ratios: Vec<f64> = quantiles
        .pieces
        .iter()
        .flat_map(|piece| piece.pairs.iter().map(|pair| apart(piece, pair)))
        .collect();
    assert_eq!(ratios.len(), 2 * 6, "two pieces of four zones");
    assert!(ratios.iter().any(|ratio| *ratio > 1.1), "{ratios:?}");
    assert!(ratios.iter().any(|ratio| *ratio < 0.9), "{ratios:?}");
}

#[test]
fn volumes_and_probabilities_agree_for_each_stage_and_tool() {
    let (mut compared, mut open) = (0, 0);
    let mut worst = (0f64, 0f64);
    for (theirs, _, ours) in pairs() {
        for line in &theirs.stages {
            let place = format!("{} {} {}", theirs.id, line.stage, line.tool);
            assert_eq!(planned(&ours, &line.stage).coats, line.coats, "{place}");
            let job = ours.job.with_tools(Way::With(tool(&line.tool).unwrap()));
            let needs = demands(&job, TRIALS);
            let need = needs
                .iter()
                .find(|need| need.material.stage.key() == line.stage)
                .unwrap();
            for (quantile, mine, other) in quantiles(need, line) {
                within(&format!("{place}, {quantile}"), mine, other, QUANTILE);
                worst.0 = worst.0.max((mine / other - 1.0).abs());
            }
            let asked = line
                .enough
                .iter()
                .map(|asked| (Volume::litres(asked.litres), asked.probability));
            let in_question = (can(&line.can).unwrap().volume(), line.can_enough);
            for (volume, other) in asked.chain([in_question]) {
                let mine = need.probability_enough(volume);
                assert!(
                    (mine - other).abs() <= PROBABILITY,
                    "{place}: {mine} against {other}"
                );
                worst.1 = worst.1.max((mine - other).abs());
                open += usize::from(0.05 < other && other < 0.95);
            }
            // The high amount is enough in 19 of 20 trials: beside a full can, what it holds less has to be had.
            let half = need.likely() / 2.0;
            let besides = extra_needed(&[need], &[Contents::full(half).unwrap()], 0.95);
            let together = (half + besides).as_litres();
            within(&format!("{place}, besides"), together, line.high, QUANTILE);
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

/// The line of a takeoff for the one layer of a stage.
fn planned<'a>(takeoff: &'a Takeoff, stage: &str) -> &'a MaterialLine {
    takeoff.materials.iter().find(|line| line.id == stage).unwrap()
}

fn quantiles(need: &Demand, line: &StageFixture) -> [(&'static str, f64, f64); 3] {
    [
        ("low", need.low().as_litres(), line.low),
        ("likely", need.likely().as_litres(), line.likely),
        ("high", need.high().as_litres(), line.high),
    ]
}

/// What is said of the only can on hand, full.
fn with_can(piece: &Rc<Piece>, line: &MaterialLine, can: &str) -> Enough {
    let mut workshop = invented_workshop();
    workshop.books = Books::default();
    let have = Edit::Have {
        piece: piece.id.clone(),
        material: line.need.material.key.to_string().into(),
        colour: line.need.colour,
        edit: HaveEdit::Can(coatings::can(can).map(|can| can.key)),
    };
    let workshop = workshop.apply(have).unwrap();
    let taken = takeoff(&workshop, piece, &lessons(&workshop)).unwrap();
    planned(&taken, &line.id).on_hand.clone().unwrap().enough
}

/// What the takeoff itself says of the cans on hand, each with the tool that is planned; among them the question that
/// started it: are eight fluid ounces of paint enough for the pair of nightstands?
#[test]
fn the_cans_on_hand_are_judged_as_by_the_other_chain() {
    let (mut judged, mut asked) = (0, 0);
    for (theirs, piece, ours) in pairs() {
        for line in &theirs.stages {
            let mine = planned(&ours, &line.stage);
            if mine.tools != [tool(&line.tool).unwrap().name] {
                continue;
            }
            let enough = with_can(&piece, mine, &line.can);
            assert!(
                (enough.probability - line.can_enough).abs() <= PROBABILITY,
                "{} {}: {} against {}",
                piece.name,
                line.stage,
                enough.probability,
                line.can_enough
            );
            judged += 1;
            asked += usize::from(line.stage == "paint" && line.can == "us-8-fl-oz");
        }
    }
    assert_eq!(judged, 2 * 3, "two pieces, three stages");
    assert_eq!(asked, 1, "the nightstands ask for a sample pot of paint");
}
