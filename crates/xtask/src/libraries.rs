//! `cargo xtask libraries`: what libraries would put on the page that it does without.

use anyhow::{Context, Result};

use crate::repository::Repository;
use crate::table::{Align, Table};
use crate::{brotli, command, module, setup};

const FOLDER: &str = "tests/libraries";

/// Without a library first, and with each of these.
const NAMES: [&str; 6] = ["none", "base64", "csv", "icalendar", "jiff", "time"];

/// Builds a small program with each library, and prints what each adds, compressed.
pub(crate) fn weigh() -> Result<()> {
    let repository = Repository::find()?;
    setup::for_page(&repository)?;
    let mut weights = Vec::new();
    for name in NAMES {
        let built = repository.at(&format!("target/libraries/{name}.wasm"));
        command::run(
            command::cargo()
                .args([
                    "build",
                    "--quiet",
                    "--release",
                    "--target",
                    "wasm32-unknown-unknown",
                ])
                .args(["--features", name, "--manifest-path"])
                .arg(repository.at(&format!("{FOLDER}/Cargo.toml")))
                .env("CARGO_TARGET_DIR", repository.at("target/libraries")),
        )?;
        let program = "target/libraries/wasm32-unknown-unknown/release/libraries.wasm";
        std::fs::copy(repository.at(program), &built)?;
        module::make_smaller(&repository, &built)?;
        let compressed = brotli::compressed(&[built])?;
        weights.push(compressed.first().map_or(0, Vec::len));
    }
    let without = *weights.first().context("nothing was built")?;
    let mut table = Table::new(&[("library", Align::Left), ("adds, bytes", Align::Right)]);
    for (name, weight) in NAMES.iter().zip(&weights).skip(1) {
        table.row([(*name).to_owned(), (*weight as i64 - without as i64).to_string()]);
    }
    print!("{table}");
    Ok(())
}
