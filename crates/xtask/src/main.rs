//! Chores of the project: `cargo xtask` lists them.

mod base64;
mod bench;
mod brotli;
mod browse;
mod build;
mod check;
mod command;
mod invariants;
#[cfg(test)]
mod manifest;
mod module;
mod offline;
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
mod words;

use std::process::ExitCode;

use anyhow::Result;
use words::Words;

const USAGE: &str = "\
Chores of Coatwright. Type `cargo xtask` and one of:

  setup                     install what the project needs and does not have yet
  serve [--port N]          build the page and serve it on this machine (port 8765, or the next free one)
  build                     build the page into dist/ and weigh it
  module                    build the module for scripts into target/module and weigh it
  test [--fast]             every check; --fast leaves out what needs a browser or the built page
  test --only STEP          one of the checks; a wrong STEP lists them
  bench                     speed as ratios, beside the budgets, NumPy and HiGHS
  look [FOLDER]             a picture of every screen in four sizes, light and dark, and the printed card (target/look)
  pace                      in the browser: key press to new numbers, first and later load, a thousand pieces
  takeoff FILE [--json] [--working]
                            areas, materials and cans of a save file; --working shows how each amount comes about
  invariants                what each crate may depend on, and the form of the sources
  serve-dist DIR [--port N] [--brotli]
                            serve a folder, compressed if asked; the address is the first line printed (for the journeys)
  list-dist DIR             list the files of a folder in its service worker once more (for the journeys)";

fn main() -> ExitCode {
    match chore() {
        Ok(code) => code,
        Err(error) => {
            eprintln!("{}", words::told(&error));
            ExitCode::from(if error.is::<words::UsageError>() { 2 } else { 1 })
        }
    }
}

fn chore() -> Result<ExitCode> {
    let mut words = Words::of_command_line();
    let chore = words.next_word();
    match chore.as_deref() {
        Some("setup") => {
            words.end("cargo xtask setup")?;
            setup::everything()?;
        }
        Some("build") => {
            words.end("cargo xtask build")?;
            build::page()?;
        }
        Some("module") => {
            words.end("cargo xtask module")?;
            module::build(&repository::Repository::find()?)?;
        }
        Some("serve") => {
            let port = words.number("--port", "cargo xtask serve --port 8765")?;
            words.end("cargo xtask serve [--port N]")?;
            serve::built_page(port)?;
        }
        Some("serve-dist") => {
            let usage = "cargo xtask serve-dist DIR [--port N] [--brotli]";
            let port = words.number("--port", "cargo xtask serve-dist dist --port 0")?;
            let compressed = words.flag("--brotli");
            let folder = words.required("the folder to serve", usage)?;
            words.end(usage)?;
            serve::folder(folder.as_ref(), port, compressed)?;
        }
        Some("list-dist") => {
            let usage = "cargo xtask list-dist DIR";
            let folder = words.required("the folder with the built page", usage)?;
            words.end(usage)?;
            offline::write(&repository::Repository::find()?, folder.as_ref())?;
        }
        Some("test") => return check::run(&check::Choice::read(words)?),
        Some("bench") => {
            words.end("cargo xtask bench")?;
            bench::all()?;
        }
        Some("look") => {
            let folder = words.next_word();
            words.end("cargo xtask look [FOLDER]")?;
            browse::look(folder.as_deref())?;
        }
        Some("pace") => {
            words.end("cargo xtask pace")?;
            browse::pace()?;
        }
        Some("takeoff") => {
            let usage = "cargo xtask takeoff FILE [--json] [--working]";
            let form = takeoff::Form {
                json: words.flag("--json"),
                working: words.flag("--working"),
            };
            let file = words.required("the save file", usage)?;
            words.end(usage)?;
            return takeoff::of_file(file.as_ref(), form);
        }
        Some("invariants") => {
            words.end("cargo xtask invariants")?;
            invariants::check()?;
            tidy::check()?;
        }
        Some("help" | "--help" | "-h") => println!("{USAGE}"),
        Some(other) => {
            return Err(words::UsageError(format!("There is no chore `{other}`.\n\n{USAGE}")).into());
        }
        None => return Err(words::UsageError(USAGE.into()).into()),
    }
    Ok(ExitCode::SUCCESS)
}
