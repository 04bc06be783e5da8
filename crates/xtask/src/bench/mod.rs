//! `cargo xtask bench`: speed as ratios beside the budgets, never as a test that could fail on a busy machine.

mod beside;
mod lines;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::command::{cargo, output, run};
use crate::error;
use crate::repository::Repository;
use crate::table::{Align, Table};
use lines::{Against, FILES, LINES};

/// Runs the benchmarks, prints the table, and writes the times of the pieces in `tests/cad`.
pub(crate) fn all() -> Result<()> {
    let repository = Repository::find()?;
    let root = repository.root();
    let target = target(root);
    for (package, file) in FILES {
        run(cargo()
            .args(["bench", "-p", package, "--bench", file])
            .current_dir(root))?;
    }
    let mut table = Table::new(&[("what", Align::Left), ("time", Align::Right), ("", Align::Left)]);
    let mut not_timed = String::new();
    for (bench, against) in &LINES {
        let time = mean(&target, bench)?;
        let mut remarks = Vec::new();
        for against in *against {
            match against {
                Against::Time(budget) => {
                    remarks.push(format!(
                        "{:.2} of its budget of {}",
                        time / budget,
                        shown(*budget)
                    ));
                }
                Against::Bench(other, most) => {
                    let ratio = time / mean(&target, other)?;
                    remarks.push(format!("{ratio:.1} times {other}; at most {most}"));
                }
                Against::Program(program) => match program.seconds(root) {
                    Ok(theirs) => {
                        let (name, ratio) = (program.name, theirs / time);
                        let decimals = usize::from(ratio < 100.0);
                        let theirs = shown(theirs);
                        remarks.push(format!("{name} takes {theirs}, {ratio:.decimals$} times as long"));
                    }
                    Err(error) => not_timed.push_str(&format!("{}\n", error::told(&error))),
                },
            }
        }
        table.row([(*bench).into(), shown(time), remarks.join("; ")]);
    }
    print!("\n{table}{not_timed}");
    piece_times(root, &target)
}

/// Writes how long each piece of `tests/cad` takes, for the script that times the kernel.
fn piece_times(root: &Path, target: &Path) -> Result<()> {
    let times = output(
        cargo()
            .args("run --quiet --release -p outside --example piece_times".split(' '))
            .current_dir(root),
    )?;
    let path = target.join("piece-times.json");
    fs::write(&path, times).with_context(|| format!("Can't write {}", path.display()))?;
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
