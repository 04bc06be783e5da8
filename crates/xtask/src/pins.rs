//! The versions of the tools, each in one place. `Trunk.toml` repeats them; a test holds the two together.

use anyhow::{Context, Result, ensure};

/// Bundles the page.
pub(crate) const TRUNK: &str = "0.21.14";
/// Writes the glue between the browser and the wasm; it must be as old as the crate of the same name.
pub(crate) const WASM_BINDGEN: &str = "0.2.129";
/// Holds `wasm-opt`, which makes the wasm smaller.
pub(crate) const BINARYEN: &str = "132.0.0";
/// The digest of that package, so that nobody can slip in another one under the same version.
pub(crate) const BINARYEN_DIGEST: &str =
    "sha512-4Usg7yEvwO3FMso3Oov6qkOOHSod1IEv+boKkh77kTljM+eNBouqCTbqWswGzbG+vDNO/b/v2C4gfEh1WgB9Lg==";
/// Holds the rules of accessibility that the journeys lay on every screen. It is a tool of the tests and no part of
/// the page.
pub(crate) const AXE: &str = "4.14.1";
/// The digest of that package.
pub(crate) const AXE_DIGEST: &str =
    "sha512-FHfa+lmNjQZfJz1q8wKqIDwC6DExcHt/pkjNQb09a3NPjCKg2rhu5qb2S4r76ASyFNNtuFooJpZe37OgudVGtQ==";
/// Checks the types of the module for scripts. It is a tool of the tests and no part of the module.
pub(crate) const TYPESCRIPT: &str = "6.0.3";
/// The digest of that package.
pub(crate) const TYPESCRIPT_DIGEST: &str =
    "sha512-y2TvuxSZPDyQakkFRPZHKFm+KKVqIisdg9/CZwm9ftvKXLP8NRWj38/ODjNbr43SsoXqNuAisEf1GdCxqWcdBw==";

/// Fails if the lock file has another version of the crate `wasm-bindgen` than the tool that is pinned here: the
/// tool would refuse what the crate wrote.
pub(crate) fn check_wasm_bindgen(lock_file: &str) -> Result<()> {
    let locked = locked_version(lock_file, "wasm-bindgen")
        .context("Run `cargo generate-lockfile`. Cargo.lock doesn't list wasm-bindgen.")?;
    ensure!(
        locked == WASM_BINDGEN,
        "Cargo.lock has wasm-bindgen {locked}, but the tool is pinned to {WASM_BINDGEN}. Put the same version in \
         Cargo.toml, crates/xtask/src/pins.rs and Trunk.toml, then run `cargo xtask setup`."
    );
    Ok(())
}

fn locked_version<'a>(lock_file: &'a str, package: &str) -> Option<&'a str> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock_file.lines().skip_while(|line| *line != name).skip(1);
    lines.next()?.strip_prefix("version = \"")?.strip_suffix('"')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::repository::Repository;

    #[test]
    fn the_page_is_built_with_the_pinned_tools() {
        let repository = Repository::find().unwrap();
        let page = repository.read("Trunk.toml").unwrap();
        let major = BINARYEN.split('.').next().unwrap();
        for line in [
            format!("trunk-version = \"={TRUNK}\""),
            format!("wasm_bindgen = \"{WASM_BINDGEN}\""),
            format!("wasm_opt = \"version_{major}\""),
        ] {
            assert!(page.contains(&line), "Trunk.toml lacks {line}");
        }
        check_wasm_bindgen(&repository.read("Cargo.lock").unwrap()).unwrap();
    }

    #[test]
    fn another_version_in_the_lock_file_is_told() {
        let lock = "[[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.1\"\n";
        let message = check_wasm_bindgen(lock).unwrap_err().to_string();
        assert!(
            message.starts_with("Cargo.lock has wasm-bindgen 0.2.1,"),
            "{message}"
        );
        assert!(check_wasm_bindgen("").is_err());
    }
}
