//! Packages for Node, pinned, in `.tools/node`: `wasm-opt`, which makes the wasm smaller and runs on every system that
//! has Node, the rules of accessibility that the journeys lay on every screen, and what checks the types of the module
//! for scripts.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Result, bail, ensure};
use serde_json::Value;

use crate::repository::{Repository, program};
use crate::{command, pins};

/// A package, and the file of it that is used.
pub(super) struct Package {
    name: &'static str,
    version: &'static str,
    digest: &'static str,
    file: &'static str,
    about: &'static str,
}

/// Holds `wasm-opt`.
pub(super) const WASM_OPT: Package = Package {
    name: "binaryen",
    version: pins::BINARYEN,
    digest: pins::BINARYEN_DIGEST,
    file: "bin/wasm-opt",
    about: "makes the wasm smaller; about 10 seconds",
};

/// Holds the rules of accessibility.
pub(super) const AXE: Package = Package {
    name: "axe-core",
    version: pins::AXE,
    digest: pins::AXE_DIGEST,
    file: "axe.min.js",
    about: "checks every screen for accessibility; about 3 seconds",
};

/// Checks the types of the module for scripts.
pub(super) const TYPESCRIPT: Package = Package {
    name: "typescript",
    version: pins::TYPESCRIPT,
    digest: pins::TYPESCRIPT_DIGEST,
    file: "lib/tsc.js",
    about: "checks the script module's types; about 5 seconds",
};

/// Installs a package if it is missing or has another version, and says where its file is.
pub(super) fn set_up(repository: &Repository, package: &Package) -> Result<PathBuf> {
    let Some(node) = program("node") else {
        bail!(
            "Install Node 18 or newer with npm (on Debian or Ubuntu: `apt-get install nodejs npm`), then run \
             `cargo xtask setup`. Node runs wasm-opt and weighs the page."
        );
    };
    let Package {
        name,
        version,
        digest,
        about,
        ..
    } = package;
    let file = package.path(repository);
    if package.is_there(repository) {
        return Ok(file);
    }
    let npm = node.with_file_name(if cfg!(windows) { "npm.cmd" } else { "npm" });
    let npm = if npm.is_file() { npm } else { "npm".into() };
    println!("Fetching {name} {version} into .tools ({about})");
    command::run(
        Command::new(npm)
            .args([
                "install",
                "--no-audit",
                "--no-fund",
                "--ignore-scripts",
                "--save-exact",
                "--loglevel=error",
            ])
            .arg("--prefix")
            .arg(repository.at(".tools/node"))
            .arg(format!("{name}@{version}")),
    )?;
    let found = recorded(&record(repository), name);
    ensure!(
        package.is_there(repository),
        "Don't use {name} {} until you know why its digest is {}. crates/xtask/src/pins.rs has {digest}.",
        found.0,
        found.1
    );
    Ok(file)
}

impl Package {
    fn path(&self, repository: &Repository) -> PathBuf {
        let modules = repository.at(".tools/node/node_modules");
        modules.join(self.name).join(self.file)
    }

    fn is_there(&self, repository: &Repository) -> bool {
        let wanted = (self.version.to_owned(), self.digest.to_owned());
        self.path(repository).is_file() && recorded(&record(repository), self.name) == wanted
    }
}

/// What npm wrote down when it installed the packages.
fn record(repository: &Repository) -> String {
    fs::read_to_string(repository.at(".tools/node/node_modules/.package-lock.json")).unwrap_or_default()
}

/// The version and the digest of a package in that record; empty if it is not in it.
fn recorded(record: &str, name: &str) -> (String, String) {
    let record: Value = serde_json::from_str(record).unwrap_or_default();
    let package = &record["packages"][format!("node_modules/{name}")];
    let entry = |key: &str| package[key].as_str().unwrap_or_default().to_owned();
    (entry("version"), entry("integrity"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_package_is_known_by_version_and_digest() {
        let text = r#"{"packages": {"node_modules/a": {"version": "1.2.3", "integrity": "sha512-x"}}}"#;
        assert_eq!(recorded(text, "a"), ("1.2.3".into(), "sha512-x".into()));
        assert_eq!(recorded(text, "b"), Default::default());
        assert_eq!(recorded("", "a"), Default::default());
    }

    #[test]
    fn every_pin_is_one_exact_version_with_a_digest() {
        for Package {
            name,
            version,
            digest,
            ..
        } in [WASM_OPT, AXE, TYPESCRIPT]
        {
            let numbers: Vec<_> = version.split('.').map(str::parse::<u32>).collect();
            assert!(numbers.len() == 3 && numbers.iter().all(Result::is_ok), "{name}");
            // 64 bytes in base 64.
            let letters = digest.strip_prefix("sha512-").map(str::len);
            assert_eq!(letters, Some(88), "{name}");
        }
    }
}
