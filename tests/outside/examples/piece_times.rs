//! How long the pieces of `tests/cad` take from their measurements to their surfaces, in seconds, as JSON for
//! `tests/cad/speed.py --ours`. Run with `--release`, or by `cargo xtask bench`.

use std::collections::BTreeMap;
use std::time::Instant;

use anyhow::Result;

/// The shortest of this many runs is taken.
const RUNS: usize = 30;

fn main() -> Result<()> {
    let mut times = BTreeMap::new();
    for fixture in outside::cad_fixtures()? {
        if fixture.block.is_some() {
            continue;
        }
        let furniture = fixture.to_piece()?.furniture();
        let run = || {
            let begin = Instant::now();
            let surfaces = furniture.assembly().map(|piece| piece.surfaces());
            let seconds = begin.elapsed().as_secs_f64();
            std::hint::black_box(surfaces).is_ok().then_some(seconds)
        };
        let shortest = (0..RUNS).filter_map(|_| run()).fold(f64::INFINITY, f64::min);
        times.insert(fixture.name, shortest);
    }
    println!("{}", serde_json::to_string_pretty(&times)?);
    Ok(())
}
