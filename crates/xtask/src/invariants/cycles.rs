//! No file of a crate needs a file that needs it in turn, so that each can be read and changed without the other.
//!
//! A file needs another if it names something that is defined there: by `use`, or by a path in its code. An import that
//! is handed on (`pub use`) is followed to where the thing is defined, and the file that hands it on does not need it for
//! that. What a file takes of its own ancestors (`super::`, `crate::` for what `lib.rs` defines) does not count: a parent
//! may use its children, and the children what the parent defines. Tests do not count.

use std::collections::BTreeSet;

use anyhow::{Result, ensure};

use super::modules::Modules;
use super::{CRATES, shrinking};
use crate::repository::Repository;

/// Steps of cycles that are still to be cut.
const KNOWN: &str = include_str!("cycles.txt");

/// Checks every crate.
pub(super) fn check(repository: &Repository) -> Result<()> {
    let mut found = Vec::new();
    for (folder, root) in CRATES {
        let modules = Modules::read(&repository.at(folder).join(root))?;
        found.extend(
            steps(&modules)
                .into_iter()
                .map(|(from, to)| format!("{folder}/{from} -> {to}")),
        );
    }
    let faults = shrinking::faults(
        &found,
        KNOWN,
        "These files depend on each other in a circle. Move what they share into its own file",
        "crates/xtask/src/invariants/cycles.txt",
    );
    ensure!(faults.is_empty(), "{faults}");
    println!("No new file cycles; {} known steps.", found.len());
    Ok(())
}

/// Each need of a file for another that lies on a cycle, in the order of the names.
fn steps(modules: &Modules) -> BTreeSet<(&str, &str)> {
    let needs = modules.needs();
    let name = |file: usize| modules.files().get(file).map_or("", String::as_str);
    let mut steps = BTreeSet::new();
    for cycle in cycles(&needs) {
        for from in &cycle {
            let within = needs
                .get(*from)
                .into_iter()
                .flatten()
                .filter(|to| cycle.contains(to));
            steps.extend(within.map(|to| (name(*from), name(*to))));
        }
    }
    steps
}

/// The groups of two and more that can all be reached from each other.
fn cycles(needs: &[BTreeSet<usize>]) -> Vec<BTreeSet<usize>> {
    let reached: Vec<BTreeSet<usize>> = (0..needs.len()).map(|from| reachable(needs, from)).collect();
    let reaches = |a: usize, b: usize| reached.get(a).is_some_and(|reached| reached.contains(&b));
    let mut cycles: Vec<BTreeSet<usize>> = Vec::new();
    for file in (0..needs.len()).filter(|file| reaches(*file, *file)) {
        let group: BTreeSet<usize> = (0..needs.len())
            .filter(|other| reaches(file, *other) && reaches(*other, file))
            .collect();
        if !cycles.contains(&group) {
            cycles.push(group);
        }
    }
    cycles
}

fn reachable(needs: &[BTreeSet<usize>], from: usize) -> BTreeSet<usize> {
    let mut reached = BTreeSet::new();
    let mut next = vec![from];
    while let Some(file) = next.pop() {
        let needed = needs.get(file).into_iter().flatten();
        next.extend(needed.filter(|file| reached.insert(**file)));
    }
    reached
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    /// The steps of the cycles in a crate of these files.
    fn found(name: &str, files: &[(&str, &str)]) -> Vec<String> {
        let root = std::env::temp_dir().join(format!("coatwright-cycles-{name}-{}", std::process::id()));
        for (file, text) in files {
            let file = root.join(file);
            fs::create_dir_all(file.parent().unwrap()).unwrap();
            fs::write(file, text).unwrap();
        }
        let modules = Modules::read(&root.join("lib.rs")).unwrap();
        fs::remove_dir_all(root).unwrap();
        steps(&modules)
            .iter()
            .map(|(from, to)| format!("{from} -> {to}"))
            .collect()
    }

    const ROOT: (&str, &str) = ("lib.rs", "mod a;\nmod b;\npub use a::A;\npub use b::B;\n");

    #[test]
    fn two_files_that_import_each_other_are_found() {
        let both = ["a.rs -> b.rs", "b.rs -> a.rs"];
        for (a, b) in [
            (
                "use crate::b::B;\npub struct A;",
                "use crate::a::A;\npub struct B;",
            ),
            // Through what the root hands on.
            ("use crate::B;\npub struct A;", "pub struct B(crate::A);"),
            (
                "pub fn a() { super::b::b(); }",
                "pub fn b() { vec![crate::a::a()]; }",
            ),
            (
                "use super::b::*;\npub struct A(B);",
                "use super::{a as other};\npub struct B(other::A);",
            ),
            (
                "pub fn a() { use crate::b; b::b(); }",
                "pub fn b() -> Vec<crate::a::A> { todo!() }\n",
            ),
        ] {
            assert_eq!(found("two", &[ROOT, ("a.rs", a), ("b.rs", b)]), both, "{a} {b}");
        }
    }

    #[test]
    fn one_way_is_no_cycle_and_tests_do_not_count() {
        let a = "use crate::B;\nuse std::fmt::A as Other;\npub struct A(B);\n";
        let b = "pub struct B;\n#[cfg(test)]\nmod tests { use crate::A; }\n#[cfg(test)]\nuse crate::a::A;\n";
        assert_eq!(found("one", &[ROOT, ("a.rs", a), ("b.rs", b)]), [""; 0]);
    }

    #[test]
    fn parents_and_children_may_use_each_other() {
        let root = ("lib.rs", "mod a;\npub struct Root;\npub fn root() { a::one(); }");
        let a = (
            "a/mod.rs",
            "mod one;\npub use one::one;\npub struct A;\nfn f() { one::one(); }",
        );
        let one = "pub fn one() -> super::A { crate::root(); let _ = crate::Root; crate::a::A }";
        assert_eq!(found("family", &[root, a, ("a/one.rs", one)]), [""; 0]);
    }

    #[test]
    fn a_child_that_goes_round_by_another_file_is_found() {
        let root = ("lib.rs", "mod a;\nmod b;\n");
        let a = ("a/mod.rs", "mod one;\npub fn a() { one::one(); }");
        let (one, b) = ("pub fn one() { crate::b::b(); }", "pub fn b() { crate::a::a(); }");
        assert_eq!(
            found("round", &[root, a, ("a/one.rs", one), ("b.rs", b)]),
            ["a/mod.rs -> a/one.rs", "a/one.rs -> b.rs", "b.rs -> a/mod.rs"]
        );
    }
}
