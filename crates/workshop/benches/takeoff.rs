//! How long a whole takeoff takes, from measurements to materials, and a workshop of a thousand pieces. `cargo xtask
//! bench` runs this and prints the ratios beside the budgets.

#![allow(
    missing_docs,
    clippy::unwrap_used,
    reason = "made by a macro; a bench may stop"
)]

use std::hint::black_box;
use std::rc::Rc;

use criterion::{Criterion, criterion_group, criterion_main};
use workshop::format::{load, save};
use workshop::{Piece, PieceId, Workshop, compare, edges_by_zone, invented_workshop, takeoff};

/// The invented dresser as often as this, each with its own name.
fn pieces(count: usize) -> Workshop {
    let workshop = invented_workshop();
    let dresser = workshop.pieces[0].clone();
    let copies = (0..count).map(|number| {
        let id = PieceId(format!("dresser-{number}").into());
        Rc::new(Piece {
            id,
            ..(*dresser).clone()
        })
    });
    Workshop {
        pieces: copies.collect(),
        ..workshop
    }
}

fn takeoffs(criterion: &mut Criterion) {
    let (workshop, empty) = (invented_workshop(), Workshop::default());
    let dresser = workshop.pieces[0].clone();
    criterion.bench_function("takeoff of the invented dresser, with materials", |bench| {
        bench.iter(|| takeoff(&empty, black_box(&dresser), &[]));
    });
    criterion.bench_function("edges of the invented dresser, by zone", |bench| {
        bench.iter(|| edges_by_zone(black_box(&dresser)));
    });
    let whole = takeoff(&empty, &dresser, &[]).unwrap();
    let edges = edges_by_zone(&dresser).unwrap();
    criterion.bench_function("its four ways side by side", |bench| {
        bench.iter(|| compare(&workshop, black_box(&dresser), &whole, &edges));
    });
}

fn save_files(criterion: &mut Criterion) {
    let workshop = pieces(1_000);
    let text = save(&workshop);
    assert_eq!(load(&text).unwrap().workshop.pieces.len(), 1_000);
    criterion.bench_function("a thousand pieces read", |bench| {
        bench.iter(|| load(black_box(&text)));
    });
    criterion.bench_function("a thousand pieces written", |bench| {
        bench.iter(|| save(black_box(&workshop)));
    });
}

criterion_group!(benches, takeoffs, save_files);
criterion_main!(benches);
