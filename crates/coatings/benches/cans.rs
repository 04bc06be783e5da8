//! How long the choice of cans takes for ten colors and eight sizes: the problems that
//! `tests/outside/scripts/cans.py --time` gives to HiGHS.

use coatings::can::{Offer, choose};
use criterion::{Criterion, criterion_group, criterion_main};
use units::Volume;

const PROBLEMS: &str = include_str!("../../../tests/outside/fixtures/cans-bench.json");

/// The whole numbers of a list that stands behind `"name":` or of a lone number; the file is plain enough for that.
fn numbers(text: &str, name: &str) -> Vec<u64> {
    let Some((_, behind)) = text.split_once(&format!("\"{name}\":")) else {
        return Vec::new();
    };
    let behind = behind.trim_start();
    let end = if behind.starts_with('[') { ']' } else { ',' };
    behind
        .split(end)
        .next()
        .unwrap_or_default()
        .trim_start_matches('[')
        .split(',')
        .filter_map(|number| number.trim().parse().ok())
        .collect()
}

fn volume(picolitres: u64) -> Volume {
    Volume::litres(picolitres as f64 / 1e12)
}

fn ten_colours() -> Vec<(Volume, Vec<Offer>)> {
    let sizes = numbers(PROBLEMS, "sizes");
    let colours = PROBLEMS.lines().filter(|line| line.contains("\"need\""));
    colours
        .map(|line| {
            let offers = sizes
                .iter()
                .zip(numbers(line, "prices"))
                .map(|(&size, price)| Offer {
                    size: volume(size),
                    price,
                });
            (volume(numbers(line, "need")[0]), offers.collect())
        })
        .collect()
}

fn cans(criterion: &mut Criterion) {
    let colours = ten_colours();
    assert!(colours.len() == 10 && colours.iter().all(|(_, offers)| offers.len() == 8));
    criterion.bench_function("cans of ten colours, eight sizes", |bench| {
        bench.iter(|| {
            colours
                .iter()
                .filter_map(|(demand, offers)| choose(*demand, &[], offers).ok())
                .map(|purchase| purchase.price)
                .sum::<u64>()
        });
    });
}

criterion_group!(benches, cans);
criterion_main!(benches);
