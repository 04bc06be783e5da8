//! `cargo xtask bench`: speed as ratios beside the budgets, never as a test that could fail on a busy machine.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::command::{cargo, output, run};
use crate::repository::Repository;
use crate::table::{Align, Table};

/// What a time is held against.
enum Against {
    /// A time, in seconds.
    Time(f64),
    /// Another benchmark, and how many times as long it may take.
    Bench(&'static str, f64),
    /// Nothing; the time is of interest.
    Nothing,
}

/// Every benchmark of `crates/geometry/benches`. The budgets are those of the design: a tenfold piece may take fifteen
/// times as long.
const LINES: [(&str, Against); 15] = [
    ("takeoff of ten drawers", Against::Time(200e-6)),
    ("surfaces of one dresser", Against::Nothing),
    (
        "surfaces of ten dressers",
        Against::Bench("surfaces of one dresser", 15.0),
    ),
    (
        "surfaces of a hundred dressers",
        Against::Bench("surfaces of ten dressers", 15.0),
    ),
    ("takeoff of turned legs", Against::Nothing),
    ("drawing of one dresser, front", Against::Nothing),
    (
        "drawing of ten dressers, front",
        Against::Bench("drawing of one dresser, front", 15.0),
    ),
    ("drawing of one dresser, corner", Against::Nothing),
    (
        "drawing of ten dressers, corner",
        Against::Bench("drawing of one dresser, corner", 15.0),
    ),
    ("drawing of turned legs, front", Against::Nothing),
    ("drawing of turned legs, corner", Against::Nothing),
    ("overlaps of ten drawers", Against::Nothing),
    ("overlaps of turned legs", Against::Nothing),
    ("edges of ten drawers", Against::Nothing),
    ("edges of turned legs", Against::Nothing),
];

/// Runs the benchmarks, prints the table, and writes the times of the pieces in `tests/cad`.
pub fn all() -> Result<()> {
    let repository = Repository::find()?;
    let root = repository.root();
    let target = target(root);
    run(cargo()
        .args(["bench", "-p", "geometry", "--bench", "geometry"])
        .current_dir(root))?;
    let mut table = Table::new(&[("what", Align::Left), ("time", Align::Right), ("", Align::Left)]);
    for (bench, against) in &LINES {
        let time = mean(&target, bench)?;
        table.row([(*bench).into(), shown(time), told(&target, against, time)?]);
    }
    print!("\n{table}");
    let times = output(
        cargo()
            .args("run --quiet --release -p outside --example piece_times".split(' '))
            .current_dir(root),
    )?;
    let path = target.join("piece-times.json");
    fs::write(&path, times).with_context(|| format!("{} cannot be written", path.display()))?;
    println!(
        "\nBeside the CAD kernel and the mesh boolean: python tests/cad/speed.py --ours {}",
        path.strip_prefix(root).unwrap_or(&path).display()
    );
    Ok(())
}

/// Where cargo puts what it builds, and the harness its results.
fn target(root: &Path) -> PathBuf {
    let set = std::env::var_os("CARGO_TARGET_DIR");
    root.join(set.unwrap_or_else(|| "target".into()))
}

fn told(target: &Path, against: &Against, time: f64) -> Result<String> {
    Ok(match against {
        Against::Nothing => String::new(),
        Against::Time(budget) => format!("{:.2} of its budget of {}", time / budget, shown(*budget)),
        Against::Bench(other, most) => {
            let ratio = time / mean(target, other)?;
            format!("{ratio:.1} times {other}; at most {most}")
        }
    })
}

/// The mean of a benchmark, in seconds, as the harness wrote it down.
fn mean(target: &Path, bench: &str) -> Result<f64> {
    let path = target.join("criterion").join(bench).join("new/estimates.json");
    let text = fs::read_to_string(&path).with_context(|| format!("there is no result of \"{bench}\""))?;
    let estimates: serde_json::Value = serde_json::from_str(&text)?;
    let nanoseconds = estimates["mean"]["point_estimate"].as_f64();
    Ok(nanoseconds.with_context(|| format!("the result of \"{bench}\" has no mean"))? * 1e-9)
}

fn shown(seconds: f64) -> String {
    if seconds < 1e-3 {
        format!("{:.0} us", seconds * 1e6)
    } else {
        format!("{:.2} ms", seconds * 1e3)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_shown_in_fitting_units() {
        assert_eq!(
            (shown(1.234e-4).as_str(), shown(0.0021).as_str()),
            ("123 us", "2.10 ms")
        );
    }
}
