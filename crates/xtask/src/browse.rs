//! `cargo xtask look` and `cargo xtask pace`: the built page in the browser, to look at and to time. Both are programs
//! of the journeys' crate, which knows the screens and how to work the browser.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};

use crate::command::{cargo, output, run};
use crate::repository::Repository;
use crate::table::{Align, Table};
use crate::{build, setup, weight};

/// Where the pictures go unless another folder is named.
pub(crate) const PICTURES: &str = "target/look";

/// A cargo that tells what it runs where the page, the browser and the rules of accessibility are.
pub(crate) fn with_page(repository: &Repository) -> Result<Command> {
    let browser = setup::browser()?;
    let mut command = cargo();
    command
        .env("COATWRIGHT_DIST", repository.dist())
        .env("COATWRIGHT_CHROMIUM", browser.chromium)
        .env("COATWRIGHT_CHROMEDRIVER", browser.chromedriver)
        .env("COATWRIGHT_AXE", setup::axe(repository)?)
        // The journeys start `xtask serve-dist` as a program of its own, so that they can end it.
        .env("COATWRIGHT_XTASK", std::env::current_exe()?)
        .current_dir(repository.root());
    Ok(command)
}

/// Takes a picture of every screen, and prints the job card. [`PICTURES`] is taken from the top of the repository, any
/// other folder from the current one.
pub(crate) fn look(folder: &Path) -> Result<()> {
    let repository = Repository::find()?;
    build::page_if_older()?;
    let folder = if folder == Path::new(PICTURES) {
        repository.at(PICTURES)
    } else {
        std::env::current_dir()?.join(folder)
    };
    run(with_page(&repository)?.args(example("look")).arg(folder))
}

/// Times the page in the browser and prints the table. A slow machine makes it no fault.
pub(crate) fn pace() -> Result<()> {
    let repository = Repository::find()?;
    build::page_if_older()?;
    weight::print(&repository.dist())?;
    println!("\nTiming the page (about a minute)");
    let printed = output(with_page(&repository)?.args(example("pace")))?;
    print!("\n{}", table(&printed)?);
    Ok(())
}

fn example(name: &str) -> [&str; 7] {
    ["run", "--quiet", "-p", "journeys", "--example", name, "--"]
}

/// The columns of words; the others are figures.
const WORDS: [&str; 2] = ["what", "how"];

/// What the program printed, one line for each row, its cells parted by tabs.
fn table(printed: &str) -> Result<Table> {
    let mut lines = printed.lines().map(|line| line.split('\t'));
    let heads: Vec<(&str, Align)> = lines
        .next()
        .context("The program that times the page printed nothing")?
        .map(|head| {
            (
                head,
                if WORDS.contains(&head) {
                    Align::Left
                } else {
                    Align::Right
                },
            )
        })
        .collect();
    let mut table = Table::new(&heads);
    for line in lines {
        table.row(line.map(String::from));
    }
    Ok(table)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_become_a_table() {
        let table = table("what\tmedian\tworst\nopen\t1 ms\t12 ms\nkept\n").unwrap();
        assert_eq!(
            table.to_string(),
            "what  median  worst\nopen    1 ms  12 ms\nkept\n"
        );
        assert!(super::table("").is_err());
    }
}
