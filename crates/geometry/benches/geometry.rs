//! How long it takes to build a piece, to find its surfaces, and to draw it. `cargo xtask bench` runs this and prints
//! the ratios beside the budgets.

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::{
    Added, AddedShape, Alteration, Assembly, Drawing, Exposure, Fill, Furniture, Kind, Row, SurfaceId,
    Towards, View, fields, styles,
};
use nalgebra::Isometry3;
use units::Length;

/// A dresser of ten drawers, their boxes counted: 70 parts.
fn ten_drawers() -> Furniture {
    let mut piece = Furniture::usual(Kind::Dresser);
    piece.bays[0].rows = vec![Row::of(Fill::Drawers, 2, 0); 5];
    styles::DRAWER_BOXES.choose(&mut piece.styles, "shown");
    piece
}

fn vanity_on_turned_legs() -> Furniture {
    let mut piece = Furniture::usual(Kind::Vanity);
    styles::LEGS.choose(&mut piece.styles, "turned");
    styles::TOP_EDGE.choose(&mut piece.styles, "ogee");
    piece
}

fn built(piece: &Furniture) -> Assembly {
    piece.assembly().unwrap_or_default()
}

/// The same piece many times, side by side as in a shop, each with its own spaces.
fn side_by_side(piece: &Assembly, times: usize) -> Assembly {
    let mut all = Assembly::default();
    for n in 0..times {
        let next = piece
            .clone()
            .moved(&Isometry3::translation(2.0 * n as f64, 0.0, 0.0));
        all.parts.extend(next.parts);
        if n == 0 {
            // The spaces of one piece are enough: those of the others would be asked of every face in vain.
            all.spaces = next.spaces;
        }
    }
    all
}

/// How often the dresser stands side by side, and what that is called.
const SHOPS: [(usize, &str); 3] = [
    (1, "one dresser"),
    (10, "ten dressers"),
    (100, "a hundred dressers"),
];

/// The same dresser with so many boards moved by a little: every board looks somewhere else, and has to be found by name.
fn altered(times: usize) -> Furniture {
    let mut piece = ten_drawers();
    let names: Vec<String> = built(&piece)
        .parts
        .iter()
        .map(|part| part.id.to_string())
        .collect();
    let change = |(i, part): (usize, &String)| Alteration::Move {
        part: part.clone(),
        towards: [Towards::Left, Towards::Up][i % 2],
        by: Length::millimetres(1.0 + (i % 7) as f64),
    };
    piece.changes = names.iter().cycle().take(times).enumerate().map(change).collect();
    piece
}

/// The same dresser with so many moldings put before it.
fn moulded(times: usize) -> Furniture {
    let mut piece = ten_drawers();
    let moulding = |number| {
        let mut added = Added::usual(number, AddedShape::Moulding);
        added
            .measures
            .set(&fields::PART_LENGTH, Length::millimetres(500.0));
        let up = Length::millimetres(number as f64 * 3.0);
        added.place = Some([Length::millimetres(100.0), Length::millimetres(0.0), up]);
        Alteration::Add(added)
    };
    piece.changes = (1..=times).map(moulding).collect();
    piece
}

fn changes(criterion: &mut Criterion) {
    for times in [0, 10, 200] {
        let piece = altered(times);
        criterion.bench_function(&format!("takeoff with {times} changes"), |bench| {
            bench.iter(|| piece.assembly().map(|piece| piece.surfaces()));
        });
    }
    for (name, piece) in [
        ("200 boards moved", altered(200)),
        ("150 mouldings", moulded(150)),
    ] {
        criterion.bench_function(&format!("built with {name}"), |bench| {
            bench.iter(|| piece.assembly());
        });
    }
}

fn takeoffs(criterion: &mut Criterion) {
    let dresser = ten_drawers();
    let one = built(&dresser);
    assert!(one.parts.len() >= 60, "only {} parts", one.parts.len());
    criterion.bench_function("takeoff of ten drawers", |bench| {
        bench.iter(|| dresser.assembly().map(|piece| piece.surfaces()));
    });
    criterion.bench_function("the same, net areas only", |bench| {
        bench.iter(|| dresser.assembly().map(|piece| piece.net_areas()));
    });
    for (times, name) in SHOPS {
        let many = side_by_side(&one, times);
        criterion.bench_function(&format!("surfaces of {name}"), |bench| {
            bench.iter(|| many.surfaces());
        });
    }
    let vanity = vanity_on_turned_legs();
    criterion.bench_function("takeoff of turned legs", |bench| {
        bench.iter(|| vanity.assembly().map(|piece| piece.surfaces()));
    });
}

fn drawings(criterion: &mut Criterion) {
    let corner = View::Turned {
        turn: 0.5,
        tilt: 0.35,
    };
    let dresser = built(&ten_drawers());
    let turned = built(&vanity_on_turned_legs()).surfaces();
    for (name, view) in [("front", View::Front), ("corner", corner)] {
        for (times, of) in &SHOPS[..2] {
            let surfaces = side_by_side(&dresser, *times).surfaces();
            criterion.bench_function(&format!("drawing of {of}, {name}"), |bench| {
                bench.iter(|| Drawing::of(&surfaces, view));
            });
        }
        criterion.bench_function(&format!("drawing of turned legs, {name}"), |bench| {
            bench.iter(|| Drawing::of(&turned, view));
        });
    }
}

fn others(criterion: &mut Criterion) {
    let outside = |surface: &SurfaceId| surface.exposure == Exposure::Outside;
    for (name, piece) in [
        ("ten drawers", ten_drawers()),
        ("turned legs", vanity_on_turned_legs()),
    ] {
        let piece = built(&piece);
        criterion.bench_function(&format!("overlaps of {name}"), |bench| {
            bench.iter(|| piece.overlaps());
        });
        criterion.bench_function(&format!("edges of {name}"), |bench| {
            bench.iter(|| piece.edges(outside));
        });
    }
}

criterion_group!(benches, takeoffs, changes, drawings, others);
criterion_main!(benches);
