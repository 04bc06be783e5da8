//! `cargo xtask bench`: speed as ratios beside the budgets, never as a test that could fail on a busy machine.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use crate::command::{cargo, output, run};
use crate::repository::Repository;

/// A line of the table: what it is, the benchmark, what it is measured against and by what it may be longer.
struct Line {
    what: &'static str,
    bench: &'static str,
    against: Against,
}

enum Against {
    /// A time, in seconds.
    Time(f64),
    /// Another benchmark, and how many times as long it may take.
    Bench(&'static str, f64),
    /// Nothing; the time is of interest.
    Nothing,
}

/// The budgets are those of the design.
const LINES: [Line; 10] = [
    line("takeoff of ten drawers", Against::Time(200e-6)),
    line(
        "surfaces of 10 dressers",
        Against::Bench("surfaces of 1 dressers", 15.0),
    ),
    line(
        "surfaces of 100 dressers",
        Against::Bench("surfaces of 1 dressers", 200.0),
    ),
    line("takeoff of turned legs", Against::Nothing),
    line("drawing of 1 dressers, front", Against::Nothing),
    line(
        "drawing of 10 dressers, front",
        Against::Bench("drawing of 1 dressers, front", 15.0),
    ),
    line("drawing of 1 dressers, corner", Against::Nothing),
    line(
        "drawing of 10 dressers, corner",
        Against::Bench("drawing of 1 dressers, corner", 15.0),
    ),
    line("drawing of turned legs, corner", Against::Nothing),
    line("overlaps of ten drawers", Against::Nothing),
];

const fn line(bench: &'static str, against: Against) -> Line {
    Line {
        what: bench,
        bench,
        against,
    }
}

/// Runs the benchmarks, prints the table, and writes the times of the pieces in `tests/cad`.
pub fn all() -> Result<()> {
    let repository = Repository::find()?;
    let root = repository.root();
    run(cargo().args(["bench", "-p", "geometry"]).current_dir(root))?;
    let target = root.join("target");
    println!("\n{:<32} {:>10}   against", "what", "time");
    for line in &LINES {
        let time = mean(&target, line.bench)?;
        println!(
            "{:<32} {:>10}   {}",
            line.what,
            shown(time),
            against(&target, &line.against, time)?
        );
    }
    let times = output(
        cargo()
            .args([
                "run",
                "--quiet",
                "--release",
                "-p",
                "outside",
                "--example",
                "piece_times",
            ])
            .current_dir(root),
    )?;
    let path = target.join("piece-times.json");
    fs::write(&path, times).with_context(|| format!("{} cannot be written", path.display()))?;
    println!(
        "\nBeside the CAD kernel and the mesh boolean: python tests/cad/speed.py --ours target/piece-times.json"
    );
    Ok(())
}

fn against(target: &Path, against: &Against, time: f64) -> Result<String> {
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
