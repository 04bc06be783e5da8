//! Times of an answer. `tests/outside/scripts/needs.py --time` times the same job with NumPy.

#![allow(
    missing_docs,
    clippy::unwrap_used,
    reason = "made by a macro; a bench may stop"
)]

use std::hint::black_box;
use std::rc::Rc;

use coatings::{
    Basis, Contents, Enough, Job, Layer, Patch, Substrate, TRIALS, Trials, ZoneWork, demands, material, tool,
};
use criterion::{Criterion, criterion_group, criterion_main};
use units::{Area, Length, Volume};

/// Four zones in four materials, the last with legs; the errors of measuring have eight causes.
fn four_zones() -> Job {
    let layer = |(key, coats, tool_key): (&str, u32, &str)| Layer {
        material: Rc::new(material(key).unwrap().clone()),
        colour: None,
        coats,
        tool: tool(tool_key).unwrap(),
        narrow_tool: tool("brush").unwrap(),
        thinned: 0.0,
        own_rates: Default::default(),
    };
    let scheme = [
        ("degreaser", 1, "pad"),
        ("bonding-primer", 1, "foam-roller"),
        ("trim-enamel", 2, "foam-roller"),
        ("water-polyurethane", 2, "brush"),
    ];
    let zones = [0.8, 1.6, 1.1, 0.3].into_iter().zip(1..).map(|(size, number)| {
        let patch = |share: f64, narrow: bool| Patch {
            area: Area::square_metres(size * share),
            narrow,
            steps: (0..8)
                .map(|cause| Area::square_metres(0.001 * f64::from((cause * number) % 5)))
                .collect(),
        };
        ZoneWork {
            key: format!("zone-{number}"),
            patches: if number == 4 {
                vec![patch(0.5, false), patch(0.5, true)]
            } else {
                vec![patch(1.0, false)]
            },
            edges: Length::ZERO,
            substrate: Substrate::Sealed,
            basis: Basis::WetFilm,
            layers: scheme.map(layer).to_vec(),
        }
    });
    Job {
        name: "bench".into(),
        zones: zones.collect(),
    }
}

fn answer(criterion: &mut Criterion) {
    let job = four_zones();
    criterion.bench_function("four zones in four materials, 100,000 trials", |b| {
        b.iter(|| demands(black_box(&job), 100_000));
    });
    criterion.bench_function("the same, trials of the page", |b| {
        b.iter(|| demands(black_box(&job), TRIALS));
    });
    let demand = demands(&job, TRIALS).remove(1);
    let can = Contents::full(Volume::litres(0.5)).unwrap();
    criterion.bench_function("is one can enough, and for which zones", |b| {
        b.iter(|| Enough::judge(&job, black_box(&demand), &[can], 0.9));
    });
    let trials = Trials::of(&job, TRIALS);
    criterion.bench_function("the same from trials that were drawn before", |b| {
        b.iter(|| trials.judge(black_box(&demand), &[can], 0.9));
    });
}

criterion_group!(benches, answer);
criterion_main!(benches);
