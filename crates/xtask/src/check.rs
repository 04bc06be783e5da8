//! `cargo xtask test`: every check, one after the other.

use std::process::ExitCode;
use std::time::Instant;

use anyhow::{Result, anyhow, ensure};
use clap::builder::{PossibleValue, PossibleValuesParser};

use crate::command::{cargo, run as run_command};
use crate::error::told;
use crate::repository::Repository;
use crate::table::{Align, Table};
use crate::{browse, build, invariants, phrases, script, setup, tidy};

/// Which checks are wanted.
pub(crate) enum Choice {
    /// All.
    All,
    /// Those that need neither a browser nor the built page.
    Fast,
    /// One.
    Only(&'static Step),
}

/// A check.
pub(crate) struct Step {
    name: &'static str,
    about: &'static str,
    /// Whether it needs a browser or the built page.
    slow: bool,
    check: fn(&Repository) -> Result<()>,
}

static STEPS: [Step; 11] = [
    Step {
        name: "compiler",
        about: "the compiler's parts are installed",
        slow: false,
        check: |_| setup::compiler(),
    },
    Step {
        name: "tools",
        about: "the page's tools and the browser are installed",
        slow: true,
        check: |_| setup::everything(),
    },
    Step {
        name: "form",
        about: "the sources are formatted",
        slow: false,
        check: |repository| cargo_in(repository, "fmt --all --check"),
    },
    Step {
        name: "invariants",
        about: "no forbidden dependency, untidy source or unnatural phrase",
        slow: false,
        check: |_| {
            invariants::check()
                .and_then(|()| tidy::check())
                .and_then(|()| phrases::check())
        },
    },
    Step {
        name: "lints",
        about: "no lint warnings",
        slow: false,
        check: |repository| cargo_in(repository, "clippy --workspace --all-targets -- -D warnings"),
    },
    Step {
        name: "page-lints",
        about: "no lint warnings for the page or the script module",
        slow: false,
        check: |repository| {
            cargo_in(
                repository,
                "clippy -p app -p script --all-targets --target wasm32-unknown-unknown -- -D warnings",
            )
        },
    },
    Step {
        name: "tests",
        about: "tests of every crate, and outside tests",
        slow: false,
        // The chores apart: so their crates are compiled as for `cargo xtask` itself, and not once more.
        check: |repository| {
            cargo_in(repository, "test --workspace --exclude journeys --exclude xtask")
                .and_then(|()| cargo_in(repository, "test -p xtask"))
        },
    },
    Step {
        name: "page-tests",
        about: "page tests in a browser",
        slow: true,
        check: page_tests,
    },
    Step {
        name: "script",
        about: "the script module matches the command line, in Node and on a page",
        slow: true,
        check: script::check,
    },
    Step {
        name: "build",
        about: "the page builds within its weight budget",
        slow: true,
        check: |_| build::page(),
    },
    Step {
        name: "journeys",
        about: "makers' journeys through the built page",
        slow: true,
        check: journeys,
    },
];

/// The names that `--only` takes, each with what the step checks.
pub(crate) fn step_names() -> PossibleValuesParser {
    PossibleValuesParser::new(
        STEPS
            .iter()
            .map(|step| PossibleValue::new(step.name).help(step.about)),
    )
}

impl Choice {
    /// The choice as typed; `only` is one of [`step_names`].
    pub(crate) fn new(fast: bool, only: Option<&str>) -> Self {
        let step = only.and_then(|name| STEPS.iter().find(|step| step.name == name));
        match step {
            Some(step) => Choice::Only(step),
            None if fast => Choice::Fast,
            None => Choice::All,
        }
    }

    fn wants(&self, step: &Step) -> bool {
        match self {
            Choice::All => true,
            Choice::Fast => !step.slow,
            Choice::Only(only) => only.name == step.name,
        }
    }
}

/// Runs the checks until one fails, and prints how long each took.
pub(crate) fn run(choice: &Choice) -> Result<ExitCode> {
    let repository = Repository::find()?;
    let mut times = Vec::new();
    let mut failed = None;
    for step in STEPS.iter().filter(|step| choice.wants(step)) {
        println!("\n== {}: {}", step.name, step.about);
        let start = Instant::now();
        let result = (step.check)(&repository);
        let seconds = start.elapsed().as_secs_f64();
        times.push((step.name, seconds));
        match result {
            Ok(()) => println!("== {} passed in {seconds:.1} s", step.name),
            Err(error) => {
                println!("== {} failed after {seconds:.1} s: {}", step.name, told(&error));
                failed = Some(step.name);
                break;
            }
        }
    }
    let passed = times.len() - usize::from(failed.is_some());
    print!("\n{}", time_table(&times));
    println!("{passed} passed, {} failed", usize::from(failed.is_some()));
    match failed {
        None => Ok(ExitCode::SUCCESS),
        Some(name) => {
            println!("To run this step alone: cargo xtask test --only {name}");
            Ok(ExitCode::FAILURE)
        }
    }
}

/// The time of each step, and their sum.
fn time_table(times: &[(&str, f64)]) -> Table {
    let mut table = Table::new(&[("step", Align::Left), ("seconds", Align::Right)]);
    let sum = times.iter().map(|(_, seconds)| seconds).sum();
    for (name, seconds) in times.iter().copied().chain([("total", sum)]) {
        table.row([name.into(), format!("{seconds:.1}")]);
    }
    table
}

/// Runs the tests that make up their inputs, with many more of them than `cargo xtask test`.
pub(crate) fn deep() -> Result<()> {
    let repository = Repository::find()?;
    run_command(
        cargo()
            .args([
                "test",
                "--workspace",
                "--exclude",
                "journeys",
                "--exclude",
                "xtask",
            ])
            .env("PROPTEST_CASES", DEEP_CASES)
            .env("COATWRIGHT_DEEP", "1")
            .current_dir(repository.root()),
    )
}

/// How many cases of each property `cargo xtask deep` tries.
const DEEP_CASES: &str = "5000";

fn cargo_in(repository: &Repository, words: &str) -> Result<()> {
    run_command(
        cargo()
            .args(words.split_whitespace())
            .current_dir(repository.root()),
    )
}

fn page_tests(repository: &Repository) -> Result<()> {
    setup::for_page(repository)?;
    let browser = setup::browser()?;
    run_command(
        cargo()
            .args(["test", "-p", "app", "--target", "wasm32-unknown-unknown"])
            .env("CHROMEDRIVER", browser.chromedriver)
            .env("PATH", repository.search_path()?)
            .current_dir(repository.root()),
    )
}

/// The journeys that take longest, about as long as all the others together.
const LONG_JOURNEYS: [&str; 2] = ["every_kind_from_nothing", "nothing_in_the_way"];

/// A browser mostly waits for what it is told, so two go side by side; what each half prints comes at its end.
fn journeys(repository: &Repository) -> Result<()> {
    let tests = std::fs::read_dir(repository.at("tests/journeys/tests"))?;
    let names: Vec<String> = tests
        .filter_map(|entry| Some(entry.ok()?.path().file_stem()?.to_str()?.to_owned()))
        // That one goes through another page, which the step `script` makes.
        .filter(|name| name != script::JOURNEY)
        .collect();
    let (long, short): (Vec<String>, Vec<String>) = names
        .into_iter()
        .partition(|name| LONG_JOURNEYS.contains(&name.as_str()));
    run_command(browse::with_page(repository)?.args(["test", "-p", "journeys", "--no-run"]))?;
    run_command(browse::with_page(repository)?.args(["test", "-p", "journeys", "--lib"]))?;
    let half = |names: &[String]| -> Result<()> {
        let mut command = browse::with_page(repository)?;
        command.args(["test", "-p", "journeys"]);
        command.args(names.iter().flat_map(|name| ["--test", name]));
        command.args(["--", "--test-threads=1"]);
        let printed = command.output()?;
        print!("{}", String::from_utf8_lossy(&printed.stdout));
        eprint!("{}", String::from_utf8_lossy(&printed.stderr));
        ensure!(
            printed.status.success(),
            "these journeys failed: {}",
            names.join(", ")
        );
        Ok(())
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(|| half(&long));
        half(&short).and(
            other
                .join()
                .map_err(|_| anyhow!("the other half of the journeys stopped early"))?,
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wanted(fast: bool, only: Option<&str>) -> Vec<&'static str> {
        let choice = Choice::new(fast, only);
        let steps = STEPS.iter().filter(|step| choice.wants(step));
        steps.map(|step| step.name).collect()
    }

    #[test]
    fn the_choice_picks_the_steps() {
        assert_eq!(wanted(false, None).len(), STEPS.len());
        let fast = wanted(true, None);
        assert!(fast.contains(&"tests") && !fast.contains(&"build") && !fast.contains(&"journeys"));
        assert_eq!(wanted(false, Some("journeys")), ["journeys"]);
    }

    #[test]
    fn times_are_added_up() {
        assert_eq!(
            time_table(&[("form", 1.25), ("lints", 10.5)]).to_string(),
            "step   seconds\nform       1.2\nlints     10.5\ntotal     11.8\n"
        );
    }
}
