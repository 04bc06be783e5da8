//! Builds the module for scripts into `target/module`.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::{Value, json};

use crate::repository::Repository;
use crate::{command, setup, weight};

/// Where the module lies once it is built.
pub(crate) const FOLDER: &str = "target/module";

/// What is taken over as it is: where it stands, and its name in the module.
const FILES: [(&str, &str); 4] = [
    ("crates/script/module/coatwright.js", "coatwright.js"),
    ("crates/script/module/coatwright.d.ts", "coatwright.d.ts"),
    ("crates/script/README.md", "README.md"),
    ("LICENSE", "LICENSE"),
];

/// Sets up, builds and weighs the module, and says where it lies.
pub(crate) fn build(repository: &Repository) -> Result<PathBuf> {
    setup::for_page(repository)?;
    let folder = repository.at(FOLDER);
    if folder.exists() {
        fs::remove_dir_all(&folder).with_context(|| format!("Can't delete {FOLDER}"))?;
    }
    fs::create_dir_all(&folder)?;
    let compiled = compile(repository)?;
    command::run(
        Command::new(repository.at(".tools/bin/wasm-bindgen"))
            // The types are written by hand, with their units and limits.
            .args([
                "--target",
                "web",
                "--no-typescript",
                "--out-name",
                "glue",
                "--out-dir",
            ])
            .arg(&folder)
            .arg(compiled),
    )?;
    make_smaller(repository, &folder.join("glue_bg.wasm"))?;
    for (from, to) in FILES {
        fs::copy(repository.at(from), folder.join(to)).with_context(|| from.to_owned())?;
    }
    fs::write(folder.join("package.json"), format!("{:#}\n", package()))?;
    weight::print(&folder)?;
    Ok(folder)
}

/// Compiles the crate as the page is compiled, and says where the wasm is.
fn compile(repository: &Repository) -> Result<PathBuf> {
    let cargo = || {
        let mut cargo = command::cargo();
        cargo.current_dir(repository.root());
        cargo
    };
    command::run(cargo().args([
        "build",
        "--quiet",
        "--locked",
        "-p",
        "script",
        "--profile",
        "wasm",
        "--target",
        TARGET,
    ]))?;
    let told =
        command::output(cargo().args(["metadata", "--no-deps", "--offline", "--format-version", "1"]))?;
    let told: Value = serde_json::from_str(&told)?;
    let target = told["target_directory"]
        .as_str()
        .context("cargo did not name the folder of what it builds")?;
    Ok(Path::new(target).join(TARGET).join("wasm/script.wasm"))
}

const TARGET: &str = "wasm32-unknown-unknown";

/// What `wasm-opt` may do stands in `www/index.html`, where the page is built with it.
pub(super) fn make_smaller(repository: &Repository, wasm: &Path) -> Result<()> {
    let page = repository.read("www/index.html")?;
    let options = options(&page).context("www/index.html does not say what wasm-opt may do")?;
    command::run(
        Command::new("wasm-opt")
            .args(options.split_whitespace())
            .arg(wasm)
            .arg("-o")
            .arg(wasm)
            .env("PATH", repository.search_path()?),
    )
}

fn options(page: &str) -> Option<&str> {
    let (_, after) = page.split_once("data-wasm-opt-params=\"")?;
    Some(after.split_once('"')?.0)
}

/// What Node and npm read about the module.
fn package() -> Value {
    json!({
        "name": "coatwright",
        "version": env!("CARGO_PKG_VERSION"),
        "description": "Surface area and material takeoff of furniture that is repainted",
        "license": env!("CARGO_PKG_LICENSE"),
        "type": "module",
        "exports": { ".": { "types": "./coatwright.d.ts", "default": "./coatwright.js" } },
        "types": "./coatwright.d.ts",
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_options_of_the_page_are_found() {
        assert_eq!(
            options("<link data-wasm-opt-params=\"--a -Oz\">"),
            Some("--a -Oz")
        );
        let repository = Repository::find().unwrap();
        let page = repository.read("www/index.html").unwrap();
        assert!(options(&page).unwrap().contains("-Oz"));
    }

    #[test]
    fn what_is_taken_over_is_there() {
        let repository = Repository::find().unwrap();
        for (from, _) in FILES {
            assert!(repository.at(from).is_file(), "{from}");
        }
    }
}
