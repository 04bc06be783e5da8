//! The form of the sources, where the formatter and the lints do not look.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};

use crate::repository::Repository;

/// The endings of the files that are looked at.
const SOURCES: [&str; 5] = ["rs", "toml", "html", "css", "js"];

/// Checks every source in the repository.
pub(crate) fn check() -> Result<()> {
    let repository = Repository::find()?;
    let sources = sources(repository.root())?;
    let mut faults = Vec::new();
    for path in &sources {
        let text = fs::read_to_string(path).with_context(|| format!("Can't read {}", path.display()))?;
        let name = path.strip_prefix(repository.root()).unwrap_or(path);
        faults.extend(faults_of(name, &text));
    }
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    println!("{} sources are tidy.", sources.len());
    Ok(())
}

/// Every source, without hidden folders and what tools have built or fetched.
fn sources(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).with_context(|| format!("Can't read {}", folder.display()))? {
        let path = entry?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if path.is_dir() {
            // Cargo and others mark the folders that they fill.
            let built = name == "dist" || name == "node_modules" || path.join("CACHEDIR.TAG").exists();
            if !built && !name.starts_with('.') {
                found.extend(sources(&path)?);
            }
        } else if SOURCES
            .iter()
            .any(|ending| path.extension().is_some_and(|e| e == *ending))
        {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

fn faults_of(name: &Path, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let shown = name.display();
    if name.extension().is_some_and(|ending| ending == "rs") && !text.starts_with("//!") {
        faults.push(format!(
            "{shown}:1: start with a `//!` line that says what the file is for."
        ));
    }
    for (number, line) in text.lines().enumerate().map(|(index, line)| (index + 1, line)) {
        if line.ends_with([' ', '\t', '\r']) {
            faults.push(format!(
                "{shown}:{number}: delete the white space at the end of the line."
            ));
        } else if line.contains('\t') {
            faults.push(format!("{shown}:{number}: use spaces instead of a tab."));
        }
    }
    if !text.is_empty() && !text.ends_with('\n') {
        faults.push(format!("{shown}: end the last line with a newline."));
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(name: &str, text: &str, expected: &[&str]) {
        assert_eq!(faults_of(Path::new(name), text), expected, "{text:?}");
    }

    #[test]
    fn untidy_lines_are_named() {
        check("a.rs", "//! Good.\n", &[]);
        check("a.css", "", &[]);
        check(
            "a.rs",
            "fn a() {}\n",
            &["a.rs:1: start with a `//!` line that says what the file is for."],
        );
        check(
            "a.js",
            "a \nb\n",
            &["a.js:1: delete the white space at the end of the line."],
        );
        check("a.css", "a\n\tb\n", &["a.css:2: use spaces instead of a tab."]);
        check("a.html", "a", &["a.html: end the last line with a newline."]);
    }
}
