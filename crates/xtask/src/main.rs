//! Chores of the project: `cargo xtask` lists them.

mod bench;
mod brotli;
mod browse;
mod build;
mod check;
mod command;
mod error;
mod invariants;
mod libraries;
#[cfg(test)]
mod lints;
#[cfg(test)]
mod manifest;
mod module;
mod offline;
mod phrases;
mod pins;
mod repository;
mod script;
mod serve;
mod setup;
mod styles;
mod table;
mod takeoff;
mod tidy;
mod weight;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

use repository::Repository;

/// Coatwright's chores.
#[derive(Parser)]
#[command(
    name = "cargo xtask",
    bin_name = "cargo xtask",
    arg_required_else_help = true,
    disable_help_subcommand = true
)]
struct CommandLine {
    #[command(subcommand)]
    chore: Chore,
}

#[derive(Subcommand)]
enum Chore {
    /// Install missing tools
    Setup,
    /// Serve the page locally, building it first if its sources changed
    Serve {
        /// The port [default: 8765 or the next free one]
        #[arg(long, value_name = "N")]
        port: Option<u16>,
    },
    /// Build the page into dist/ and weigh it
    Build,
    /// Build the module for scripts into target/module and weigh it
    Module,
    /// Weigh libraries the page doesn't use
    Libraries,
    /// Run every check
    Test {
        /// Skip checks that need a browser or the built page
        #[arg(long)]
        fast: bool,
        /// Run one check
        #[arg(long, value_name = "STEP", conflicts_with = "fast", value_parser = check::step_names())]
        only: Option<String>,
    },
    /// Run the generated-input tests with many more inputs (over half an hour)
    Deep,
    /// Compare speed with the budgets, NumPy and HiGHS
    Bench,
    /// Screenshot every screen in four sizes, light and dark, and the printed card
    Look {
        /// The folder for the screenshots
        #[arg(default_value = browse::PICTURES)]
        folder: PathBuf,
    },
    /// Time the page in a browser: key presses, loading, a thousand pieces
    Pace,
    /// Print the area, materials and cans for a save file
    Takeoff {
        /// The save file
        file: PathBuf,
        #[command(flatten)]
        form: takeoff::Form,
    },
    /// Check dependencies, cycles, clocks, unit conversions and source form
    Invariants,
    /// Find and count unnatural phrases in what the tool shows
    Phrases,
    /// Serve a folder; the first line printed is its address (for the journeys)
    ServeDist {
        /// The folder
        folder: PathBuf,
        /// The port; 0 picks any free one
        #[arg(long, value_name = "N", default_value_t = 0)]
        port: u16,
        /// Compress the files
        #[arg(long)]
        brotli: bool,
    },
    /// Rebuild the service worker's file list for a built page (for the journeys)
    ListDist {
        /// The folder with the built page
        folder: PathBuf,
    },
}

fn main() -> ExitCode {
    match run(CommandLine::parse().chore) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("{}", error::told(&error));
            ExitCode::FAILURE
        }
    }
}

fn run(chore: Chore) -> Result<ExitCode> {
    match chore {
        Chore::Setup => setup::everything()?,
        Chore::Serve { port } => serve::built_page(port)?,
        Chore::Build => build::page()?,
        Chore::Libraries => libraries::weigh()?,
        Chore::Module => {
            module::build(&Repository::find()?)?;
        }
        Chore::Test { fast, only } => return check::run(&check::Choice::new(fast, only.as_deref())),
        Chore::Deep => check::deep()?,
        Chore::Bench => bench::all()?,
        Chore::Look { folder } => browse::look(&folder)?,
        Chore::Pace => browse::pace()?,
        Chore::Takeoff { file, form } => return takeoff::of_file(&file, form),
        Chore::Invariants => {
            invariants::check()?;
            tidy::check()?;
        }
        Chore::Phrases => phrases::print()?,
        Chore::ServeDist { folder, port, brotli } => serve::folder(&folder, port, brotli)?,
        Chore::ListDist { folder } => offline::write(&Repository::find()?, &folder)?,
    }
    Ok(ExitCode::SUCCESS)
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    fn fault(line: &str) -> String {
        let words = std::iter::once("xtask").chain(line.split_whitespace());
        CommandLine::try_parse_from(words).err().unwrap().to_string()
    }

    #[test]
    fn the_command_line_makes_sense() {
        CommandLine::command().debug_assert();
    }

    #[test]
    fn help_lists_every_chore_with_what_it_does() {
        let help = CommandLine::command().render_help().to_string();
        for chore in CommandLine::command().get_subcommands() {
            assert!(help.contains(chore.get_name()), "{help}");
            assert!(chore.get_about().is_some(), "{}", chore.get_name());
        }
    }

    #[test]
    fn faults_say_what_to_type() {
        for (line, said) in [
            ("serve --port 70000", "70000 is not in 0..=65535"),
            ("serve --prot 1", "tip: a similar argument exists: '--port'"),
            ("takeof x", "tip: a similar subcommand exists: 'takeoff'"),
            ("takeoff", "Usage: cargo xtask takeoff <FILE>"),
            ("setup now", "Usage: cargo xtask setup"),
            ("test --only journey", "journeys"),
            ("test --fast --only build", "cannot be used with"),
            ("", "Usage: cargo xtask <COMMAND>"),
        ] {
            let fault = fault(line);
            assert!(fault.contains(said), "{line}: {fault}");
        }
    }
}
