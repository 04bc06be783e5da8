//! `wasm-opt`, which makes the wasm smaller. It comes as a package for Node, which every system can run.

use std::fs;
use std::process::Command;

use anyhow::{Result, bail, ensure};
use serde_json::Value;

use crate::repository::{Repository, program};
use crate::{command, pins};

/// Installs it if it is missing or has another version.
pub fn set_up(repository: &Repository) -> Result<()> {
    let Some(node) = program("node") else {
        bail!(
            "Node is missing; it runs wasm-opt and weighs the page. Install Node 18 or newer with npm (on Debian and \
             its kin: `apt-get install nodejs npm`), then run `cargo xtask setup`."
        );
    };
    let (version, digest) = installed(repository);
    if version == pins::BINARYEN && digest == pins::BINARYEN_DIGEST {
        return Ok(());
    }
    let npm = node.with_file_name(if cfg!(windows) { "npm.cmd" } else { "npm" });
    let npm = if npm.is_file() { npm } else { "npm".into() };
    println!(
        "Fetching wasm-opt {} into .tools (about 10 seconds)",
        pins::BINARYEN
    );
    command::run(
        Command::new(npm)
            .args([
                "install",
                "--no-audit",
                "--no-fund",
                "--ignore-scripts",
                "--loglevel=error",
            ])
            .arg("--prefix")
            .arg(repository.at(".tools/node"))
            .arg(format!("binaryen@{}", pins::BINARYEN)),
    )?;
    let (version, digest) = installed(repository);
    ensure!(
        version == pins::BINARYEN && digest == pins::BINARYEN_DIGEST,
        "The package binaryen {version} has the digest {digest}, not the one in crates/xtask/src/pins.rs. Do not use \
         it before somebody found out why."
    );
    Ok(())
}

/// The version and the digest that were recorded when the package was installed; empty if it is not there.
fn installed(repository: &Repository) -> (String, String) {
    let modules = repository.at(".tools/node/node_modules");
    if !modules.join("binaryen/bin/wasm-opt").is_file() {
        return Default::default();
    }
    let text = fs::read_to_string(modules.join(".package-lock.json")).unwrap_or_default();
    let record: Value = serde_json::from_str(&text).unwrap_or_default();
    let package = &record["packages"]["node_modules/binaryen"];
    let entry = |key: &str| package[key].as_str().unwrap_or_default().to_owned();
    (entry("version"), entry("integrity"))
}
