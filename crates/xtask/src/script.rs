//! Checks the module for scripts: from Node, and from a page in the browser.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::repository::Repository;
use crate::{browse, command, module, setup, weight};

/// Where the module and the examples of its README lie, as they would on a maker's machine.
const FOLDER: &str = "target/script";

/// The journey through the page of the README.
pub(crate) const JOURNEY: &str = "a_page_of_ones_own";

/// Builds the module and checks it.
pub(crate) fn check(repository: &Repository) -> Result<()> {
    let module = module::build(repository)?;
    let folder = lay_out(repository, &module)?;
    in_node(repository, &folder)?;
    on_a_page(repository, &folder)
}

/// Puts the module beside the examples, which name it `coatwright`.
fn lay_out(repository: &Repository, module: &Path) -> Result<PathBuf> {
    let folder = repository.at(FOLDER);
    if folder.exists() {
        fs::remove_dir_all(&folder).with_context(|| format!("Can't delete {FOLDER}"))?;
    }
    fs::create_dir_all(folder.join("coatwright"))?;
    for file in weight::files(module)? {
        let name = file.file_name().context("a file has no name")?;
        fs::copy(&file, folder.join("coatwright").join(name))?;
    }
    let examples = examples(&repository.read("crates/script/README.md")?);
    ensure!(
        !examples.is_empty(),
        "Add examples to crates/script/README.md. Put each block's file name after its language."
    );
    for (name, text) in examples {
        fs::write(folder.join(name), text)?;
    }
    Ok(folder)
}

/// The blocks of code that have the name of a file behind their language, with that name.
fn examples(readme: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut lines = readme.lines();
    while let Some(line) = lines.next() {
        let Some(head) = line.strip_prefix("```") else {
            continue;
        };
        let block = lines.by_ref().take_while(|line| *line != "```");
        let text: String = block.map(|line| format!("{line}\n")).collect();
        if let Some((_, name)) = head.split_once(' ') {
            found.push((name.to_owned(), text));
        }
    }
    found
}

fn in_node(repository: &Repository, folder: &Path) -> Result<()> {
    let typescript = setup::typescript(repository)?;
    let tests = weight::files(&repository.at("tests/script"))?;
    let tests = tests
        .iter()
        .filter(|file| file.to_string_lossy().ends_with(".test.mjs"));
    command::run(
        Command::new("node")
            .arg("--test")
            .args(tests)
            .env("COATWRIGHT_SCRIPT", folder)
            .env("COATWRIGHT_TYPESCRIPT", typescript)
            .env("COATWRIGHT_XTASK", std::env::current_exe()?)
            .current_dir(repository.root()),
    )
}

fn on_a_page(repository: &Repository, folder: &Path) -> Result<()> {
    command::run(
        browse::with_page(repository)?
            .args(["test", "--quiet", "-p", "journeys", "--test", JOURNEY])
            // This page is served in place of the tool's own.
            .env("COATWRIGHT_DIST", folder),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn examples_have_the_names_of_their_files() {
        let readme =
            "Text\n```sh\ncargo\n```\n```js a.mjs\nlet a;\n\nlet b;\n```\nMore\n```text b.txt\n```\n";
        assert_eq!(
            examples(readme),
            [
                ("a.mjs".to_owned(), "let a;\n\nlet b;\n".to_owned()),
                ("b.txt".into(), "".into())
            ]
        );
    }
}
