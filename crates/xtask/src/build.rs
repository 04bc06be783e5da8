//! Builds the page into `dist`.

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};
use hmac_sha256::Hash;

use crate::repository::Repository;
use crate::{command, offline, setup, styles, weight};

/// Sets up, builds and weighs the page.
pub(crate) fn page() -> Result<()> {
    let repository = Repository::find()?;
    // A source that changes during the build is not in the page, so the digest comes first.
    let sources = digest(repository.root(), &SOURCES)?;
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
    let built = repository.at(BUILT);
    fs::create_dir_all(built.parent().context("no build folder")?)?;
    fs::write(built, stamp(&sources, &repository)?)?;
    weight::report(&repository.dist())
}

/// Builds the page if it is not there, or if its sources changed since it was built.
pub(crate) fn page_if_older() -> Result<()> {
    let repository = Repository::find()?;
    let built = fs::read_to_string(repository.at(BUILT)).unwrap_or_default();
    let current = stamp(&digest(repository.root(), &SOURCES)?, &repository);
    if current.is_ok_and(|current| current == built) {
        return Ok(());
    }
    page()
}

/// Says from which sources the page in `dist` was built.
const BUILT: &str = "target/page-built";

/// What the page is made of, and what makes it.
const SOURCES: [&str; 23] = [
    "Cargo.lock",
    "Cargo.toml",
    "Trunk.toml",
    "rust-toolchain.toml",
    "www",
    "crates/app/Cargo.toml",
    "crates/app/src",
    "crates/workshop/Cargo.toml",
    "crates/workshop/src",
    "crates/coatings/Cargo.toml",
    "crates/coatings/src",
    "crates/timetable/Cargo.toml",
    "crates/timetable/src",
    "crates/geometry/Cargo.toml",
    "crates/geometry/src",
    "crates/colour/Cargo.toml",
    "crates/colour/src",
    "crates/units/Cargo.toml",
    "crates/units/src",
    "crates/xtask/src/build.rs",
    "crates/xtask/src/offline.rs",
    "crates/xtask/src/pins.rs",
    "crates/xtask/src/styles.rs",
];

/// The sources and the page together. The service worker lists every other file of the page with its digest.
fn stamp(sources: &str, repository: &Repository) -> Result<String> {
    let page = digest(&repository.dist(), &["index.html", "service-worker.js"])?;
    Ok(format!("sources {sources}\npage {page}\n"))
}

/// One digest for the names and contents of these files, and of all files in these folders. Times of change would not
/// show a file that is gone, and change with each checkout.
fn digest(root: &Path, paths: &[&str]) -> Result<String> {
    let mut hash = Hash::new();
    for path in paths {
        let path = root.join(path);
        let files = if path.is_file() {
            vec![path]
        } else {
            weight::files(&path)?
        };
        for file in files {
            let content = fs::read(&file).with_context(|| format!("Can't read {}", file.display()))?;
            let name = file.strip_prefix(root)?.to_string_lossy();
            hash.update(Hash::hash(name.as_bytes()));
            hash.update(Hash::hash(&content));
        }
    }
    Ok(hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect())
}

/// The content security policy lets no inline script run, so the page must not rest on one.
fn check_scripts(html: &str) -> Result<()> {
    let mut tags = html
        .split("<script")
        .skip(1)
        .filter_map(|rest| rest.split('>').next());
    ensure!(
        tags.all(|tag| tag.contains(" src=")),
        "dist/index.html has an inline script, which the content security policy forbids. Check `pattern_script` in \
         Trunk.toml."
    );
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digest_shows_what_changed_came_or_went() {
        let root = std::env::temp_dir().join(format!("coatwright-sources-{}", std::process::id()));
        fs::create_dir_all(root.join("src")).unwrap();
        fs::write(root.join("src/a.rs"), "a").unwrap();
        fs::write(root.join("b.toml"), "b").unwrap();
        let now = || digest(&root, &["src", "b.toml"]).unwrap();
        let first = now();
        fs::write(root.join("src/a.rs"), "a").unwrap();
        assert_eq!(now(), first);
        fs::write(root.join("src/a.rs"), "other").unwrap();
        assert_ne!(now(), first);
        fs::write(root.join("src/a.rs"), "a").unwrap();
        fs::write(root.join("src/c.rs"), "").unwrap();
        assert_ne!(now(), first);
        fs::remove_file(root.join("src/c.rs")).unwrap();
        assert_eq!(now(), first);
        assert!(digest(&root, &["gone"]).is_err());
        fs::remove_dir_all(root).unwrap();
    }

    #[test]
    fn every_crate_of_the_page_is_a_source() {
        let repository = Repository::find().unwrap();
        digest(repository.root(), &SOURCES).unwrap();
        let manifest = repository.read("crates/app/Cargo.toml").unwrap();
        let names = manifest
            .lines()
            .filter_map(|line| line.strip_suffix(".workspace = true"));
        for name in names.filter(|name| repository.at("crates").join(name).is_dir()) {
            assert!(SOURCES.contains(&&*format!("crates/{name}/src")), "{name}");
        }
    }

    #[test]
    fn inline_scripts_are_found() {
        assert!(check_scripts("<script type=module src=./boot.js></script>").is_ok());
        assert!(check_scripts("<script src=\"a.js\"></script><script>1</script>").is_err());
    }
}
