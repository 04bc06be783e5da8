//! Builds the page into `dist`.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::SystemTime;

use anyhow::{Result, ensure};

use crate::repository::Repository;
use crate::{command, offline, setup, styles, weight};

/// Sets up, builds and weighs the page.
pub fn page() -> Result<()> {
    let repository = Repository::find()?;
    setup::for_page(&repository)?;
    // The build is offline, so the crates have to be there; where they are, this takes no time and no network.
    command::run(
        command::cargo()
            .args(["fetch", "--quiet", "--locked"])
            .current_dir(repository.root()),
    )?;
    command::run(
        Command::new(repository.at(".tools/bin/trunk"))
            .args(["build", "--release", "--offline"])
            .env("PATH", repository.search_path()?)
            // Trunk takes `1`, which some shells set, for a fault.
            .env_remove("NO_COLOR")
            .current_dir(repository.root()),
    )?;
    check_scripts(&fs::read_to_string(repository.dist().join("index.html"))?)?;
    styles::join(&repository.dist())?;
    offline::write(&repository, &repository.dist())?;
    weight::report(&repository.dist())
}

/// Builds the page if it is not there, or older than its sources.
pub fn page_if_older() -> Result<()> {
    let repository = Repository::find()?;
    let built = changed(&repository.dist().join("index.html"));
    let mut newest = None;
    for of in SOURCES {
        newest = newest.max(newest_in(&repository.at(of))?);
    }
    if built.is_none() || built < newest {
        page()?;
    }
    Ok(())
}

/// What the page is made of.
const SOURCES: [&str; 10] = [
    "Cargo.lock",
    "Trunk.toml",
    "www",
    "crates/app/src",
    "crates/workshop/src",
    "crates/coatings/src",
    "crates/timetable/src",
    "crates/geometry/src",
    "crates/colour/src",
    "crates/units/src",
];

/// When the file, or the last of the files in a folder, was changed.
fn newest_in(path: &Path) -> Result<Option<SystemTime>> {
    if path.is_file() {
        return Ok(changed(path));
    }
    let files = weight::files(path)?;
    Ok(files.iter().filter_map(|file| changed(file)).max())
}

fn changed(file: &Path) -> Option<SystemTime> {
    fs::metadata(file).and_then(|about| about.modified()).ok()
}

/// The content security policy lets no inline script run, so the page must not rest on one.
fn check_scripts(html: &str) -> Result<()> {
    let mut tags = html
        .split("<script")
        .skip(1)
        .filter_map(|rest| rest.split('>').next());
    ensure!(
        tags.all(|tag| tag.contains(" src=")),
        "dist/index.html holds an inline script, which the content security policy forbids. See `pattern_script` in \
         Trunk.toml."
    );
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inline_scripts_are_found() {
        assert!(check_scripts("<script type=module src=./boot.js></script>").is_ok());
        assert!(check_scripts("<script src=\"a.js\"></script><script>1</script>").is_err());
    }
}
