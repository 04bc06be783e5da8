//! Every dependency in a manifest is named in the sources of its crate.
//!
//! rustc's `unused_crate_dependencies` looks at one target at a time, so it complains of each dependency for tests in each
//! test that does not use it. Here a name anywhere in the crate is enough.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
use proc_macro2::{TokenStream, TokenTree};
use serde_json::Value;

use crate::repository::Repository;
use crate::weight;

/// Folders whose sources may use what is there for tests only.
const FOR_TESTS: [&str; 3] = ["tests", "benches", "examples"];

/// Checks every manifest of the workspace; `metadata` is what cargo says of it.
pub(super) fn check(repository: &Repository, metadata: &Value) -> Result<()> {
    let packages = metadata["packages"]
        .as_array()
        .context("cargo listed no packages")?;
    let mut faults = Vec::new();
    let mut all = String::new();
    for package in packages {
        let manifest = PathBuf::from(package["manifest_path"].as_str().unwrap_or_default());
        let folder = manifest.parent().context("a manifest has no folder")?;
        let (code, tests) = names_in(folder)?;
        let shown = manifest.strip_prefix(repository.root()).unwrap_or(&manifest);
        let of_package = unused(package, &code, &tests);
        faults.extend(
            of_package
                .iter()
                .map(|name| format!("{} doesn't use {name}.", shown.display())),
        );
        all.push_str(&fs::read_to_string(&manifest)?);
    }
    let workspace = repository.read("Cargo.toml")?;
    faults.extend(not_taken(&workspace, &all).map(|name| format!("Cargo.toml doesn't use {name}.")));
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    println!("{} manifests have no unused dependencies.", packages.len());
    Ok(())
}

/// The names in the code of a crate, and those in all of it, its tests and benchmarks too.
fn names_in(folder: &Path) -> Result<(BTreeSet<String>, BTreeSet<String>)> {
    let (mut code, mut all) = (BTreeSet::new(), BTreeSet::new());
    for file in weight::files(folder)? {
        if file.extension().is_none_or(|ending| ending != "rs") {
            continue;
        }
        let text = fs::read_to_string(&file)?;
        let tokens: TokenStream = text
            .parse()
            .map_err(|error| anyhow::anyhow!("Can't read {}: {error}", file.display()))?;
        let mut names = BTreeSet::new();
        collect(tokens, &mut names);
        let first = file
            .strip_prefix(folder)?
            .iter()
            .next()
            .map(|name| name.to_string_lossy().into_owned());
        if !first.is_some_and(|first| FOR_TESTS.contains(&first.as_str())) {
            code.extend(names.iter().cloned());
        }
        all.append(&mut names);
    }
    Ok((code, all))
}

fn collect(tokens: TokenStream, names: &mut BTreeSet<String>) {
    for token in tokens {
        match token {
            TokenTree::Ident(name) => {
                names.insert(name.to_string());
            }
            TokenTree::Group(group) => collect(group.stream(), names),
            _ => {}
        }
    }
}

/// The dependencies of a package that no source names.
fn unused(package: &Value, code: &BTreeSet<String>, all: &BTreeSet<String>) -> Vec<String> {
    let dependencies = package["dependencies"].as_array().into_iter().flatten();
    let unused = dependencies.filter_map(|dependency| {
        let name = dependency["rename"].as_str().or(dependency["name"].as_str())?;
        let names = if dependency["kind"] == "dev" { all } else { code };
        (!names.contains(&name.replace('-', "_"))).then(|| name.to_owned())
    });
    unused.collect()
}

/// The dependencies of the workspace that no manifest takes.
fn not_taken<'a>(workspace: &'a str, manifests: &'a str) -> impl Iterator<Item = &'a str> {
    let lines = workspace
        .lines()
        .skip_while(|line| *line != "[workspace.dependencies]")
        .skip(1);
    let lines = lines.take_while(|line| !line.starts_with('['));
    let names = lines.filter_map(|line| Some(line.split_once(" = ")?.0));
    names.filter(move |name| {
        let taken = [
            format!("{name}.workspace = true"),
            format!("{name} = {{ workspace = true"),
        ];
        !manifests
            .lines()
            .any(|line| taken.iter().any(|taken| line.starts_with(taken.as_str())))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn names(text: &str) -> BTreeSet<String> {
        let mut names = BTreeSet::new();
        collect(text.parse().unwrap(), &mut names);
        names
    }

    #[test]
    fn a_dependency_that_no_source_names_is_found() {
        let package = json!({ "dependencies": [
            { "name": "js-sys", "kind": null, "rename": null },
            { "name": "left", "kind": null, "rename": null },
            { "name": "proptest", "kind": "dev", "rename": null },
            { "name": "csv", "kind": "dev", "rename": "table" },
        ] });
        let code = names("// left\nfn f() -> js_sys::Date { table() }");
        let tests = names("proptest! {}");
        assert_eq!(unused(&package, &code, &tests), ["left", "table"]);
        assert_eq!(
            unused(&package, &names("left js_sys"), &names("proptest table")),
            [""; 0]
        );
    }

    #[test]
    fn a_dependency_of_the_workspace_that_nobody_takes_is_found() {
        let workspace =
            "[workspace.dependencies]\na = \"1\"\nb = \"1\"\nc = \"1\"\n\n[workspace.lints]\nd = \"warn\"\n";
        let manifests = "a.workspace = true\nc = { workspace = true, features = [] }\n";
        assert_eq!(not_taken(workspace, manifests).collect::<Vec<_>>(), ["b"]);
    }
}
