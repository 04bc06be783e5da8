//! The committed corpus, and some hundred inputs of a fixed seed, through every fuzz target; with `COATWRIGHT_DEEP`, which
//! `cargo xtask deep` sets, many times as many.

#![allow(clippy::unwrap_used, reason = "a test may stop where its corpus is broken")]

use std::path::Path;

use rand_core::Rng;
use rand_pcg::Pcg32;

fn corpus(target: &str) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus").join(target);
    let mut paths: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    paths.sort();
    assert!(!paths.is_empty(), "the corpus of {target} is empty");
    paths.iter().map(|path| std::fs::read(path).unwrap()).collect()
}

/// How many times as many inputs are tried in depth.
const DEEP: usize = 40;

/// Runs the corpus, random bytes, and the corpus with some bytes changed. At least `accepted` in a hundred of the
/// made-up inputs must be accepted, or little would be tested.
fn run(target: &str, rounds: usize, longest: usize, function: fn(&[u8]) -> bool, accepted: usize) {
    let rounds = match std::env::var_os("COATWRIGHT_DEEP") {
        Some(_) => rounds * DEEP,
        None => rounds,
    };
    let corpus = corpus(target);
    assert!(corpus.iter().filter(|data| function(data)).count() > 0);
    let mut count = 0;
    let mut random = Pcg32::new(20_260_101, 1);
    let mut below = |most: usize| random.next_u32() as usize % most.max(1);
    for round in 0..rounds {
        let mut data: Vec<u8> = if round % 2 == 0 {
            (0..below(longest)).map(|_| below(256) as u8).collect()
        } else {
            corpus[below(corpus.len())].clone()
        };
        for _ in 0..below(6) {
            let place = below(data.len());
            if let Some(byte) = data.get_mut(place) {
                *byte = below(256) as u8;
            }
        }
        count += usize::from(function(&data));
    }
    assert!(
        100 * count >= accepted * rounds,
        "only {count} of {rounds} were accepted"
    );
    println!("{target}: {count} of {rounds} were accepted");
}

#[test]
fn lengths() {
    run("read_length", 20_000, 24, fuzz::read_length, 5);
}

#[test]
fn pieces() {
    run("build_piece", 6_000, 300, fuzz::build_piece, 10);
}

#[test]
fn drawings() {
    run("show_piece", 300, 300, fuzz::show_piece, 10);
}

#[test]
fn workshops() {
    run("load_workshop", 1_000, 200, fuzz::load_workshop, 5);
}
