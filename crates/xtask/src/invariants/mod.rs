//! What each crate must not know: absences, which nobody sees by reading the code.

mod clock;
mod code;
mod constants;
mod cycles;
mod modules;
mod shrinking;
mod unused;

pub(crate) use code::Code;
pub(crate) use shrinking::lines;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use crate::command;
use crate::repository::Repository;

/// The folder of each crate's sources, and the file that they begin with.
pub(crate) const CRATES: [(&str, &str); 9] = [
    ("crates/units/src", "lib.rs"),
    ("crates/colour/src", "lib.rs"),
    ("crates/geometry/src", "lib.rs"),
    ("crates/coatings/src", "lib.rs"),
    ("crates/timetable/src", "lib.rs"),
    ("crates/workshop/src", "lib.rs"),
    ("crates/app/src", "lib.rs"),
    ("crates/script/src", "lib.rs"),
    ("crates/xtask/src", "main.rs"),
];

/// A crate and the crates of the workspace that it may depend on.
struct Rule {
    name: &'static str,
    may_use: &'static [&'static str],
    /// Whether it may know that there is a browser, or another engine of scripts.
    browser: bool,
}

const RULES: [Rule; 8] = [
    Rule {
        name: "units",
        may_use: &[],
        browser: false,
    },
    Rule {
        name: "colour",
        may_use: &[],
        browser: false,
    },
    Rule {
        name: "geometry",
        may_use: &["units"],
        browser: false,
    },
    Rule {
        name: "coatings",
        may_use: &["units"],
        browser: false,
    },
    Rule {
        name: "timetable",
        may_use: &["units"],
        browser: false,
    },
    Rule {
        name: "workshop",
        may_use: &["units", "colour", "geometry", "coatings", "timetable"],
        browser: false,
    },
    Rule {
        name: "app",
        may_use: &["units", "colour", "geometry", "coatings", "timetable", "workshop"],
        browser: true,
    },
    Rule {
        name: "script",
        may_use: &["units", "geometry", "workshop"],
        browser: true,
    },
];

/// How the names of crates begin that need a browser.
const BROWSER: [&str; 7] = [
    "gloo",
    "idb",
    "js-sys",
    "serde-wasm-bindgen",
    "wasm-bindgen",
    "web-sys",
    "yew",
];

/// Checks the crates of this repository.
pub(crate) fn check() -> Result<()> {
    let repository = Repository::find()?;
    let text = command::output(
        command::cargo()
            .args(["metadata", "--no-deps", "--format-version", "1"])
            .current_dir(repository.root()),
    )?;
    let metadata = serde_json::from_str(&text)?;
    let faults = faults(&metadata)?;
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    println!("{} crates have no forbidden dependencies.", RULES.len());
    unused::check(&repository, &metadata)?;
    cycles::check(&repository)?;
    clock::check(&repository)?;
    constants::check(&repository)
}

fn faults(metadata: &Value) -> Result<Vec<String>> {
    let packages = metadata["packages"]
        .as_array()
        .context("cargo listed no packages")?;
    let names: Vec<&str> = packages
        .iter()
        .filter_map(|package| package["name"].as_str())
        .collect();
    let mut faults = Vec::new();
    for rule in &RULES {
        let package = packages.iter().find(|package| package["name"] == rule.name);
        let package = package.with_context(|| format!("The crate {} is gone", rule.name))?;
        let dependencies = package["dependencies"].as_array().into_iter().flatten();
        for dependency in dependencies.filter_map(|dependency| dependency["name"].as_str()) {
            if names.contains(&dependency) && !rule.may_use.contains(&dependency) {
                faults.push(format!("crates/{} must not depend on {dependency}.", rule.name));
            }
            if !rule.browser && BROWSER.iter().any(|start| dependency.starts_with(start)) {
                faults.push(format!(
                    "crates/{} must not use browser crates, but depends on {dependency}.",
                    rule.name
                ));
            }
        }
    }
    Ok(faults)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn metadata(of_geometry: &[&str]) -> Value {
        let packages = RULES.iter().map(|rule| {
            let of: &[&str] = if rule.name == "geometry" {
                of_geometry
            } else {
                rule.may_use
            };
            let dependencies: Vec<Value> = of.iter().map(|name| json!({ "name": name })).collect();
            json!({ "name": rule.name, "dependencies": dependencies })
        });
        json!({ "packages": packages.collect::<Vec<_>>() })
    }

    #[test]
    fn what_a_crate_must_not_know_is_found() {
        assert_eq!(faults(&metadata(&["units", "nalgebra"])).unwrap(), [""; 0]);
        assert_eq!(
            faults(&metadata(&["units", "coatings", "web-sys"])).unwrap(),
            [
                "crates/geometry must not depend on coatings.",
                "crates/geometry must not use browser crates, but depends on web-sys."
            ]
        );
    }

    #[test]
    fn a_crate_that_is_gone_is_told() {
        assert!(faults(&json!({ "packages": [] })).is_err());
    }
}
