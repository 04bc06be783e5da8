//! Installs what the project needs and does not have yet. Whatever is there is left alone.
//!
//! Everything goes into the git-ignored `.tools` folder, except the compiler's own parts and the browser.

mod browser;
mod cargo_tools;
mod compiler;
mod node_packages;

use std::path::PathBuf;

use anyhow::Result;

use crate::pins;
use crate::repository::Repository;

pub(crate) use browser::Browser;

/// Everything that any chore needs.
pub(crate) fn everything() -> Result<()> {
    let repository = Repository::find()?;
    for_page(&repository)?;
    axe(&repository)?;
    typescript(&repository)?;
    let browser = browser()?;
    println!(
        "Everything is installed: wasm target, Trunk {}, wasm-bindgen {}, wasm-opt {}, axe-core {}, TypeScript {}, {}.",
        pins::TRUNK,
        pins::WASM_BINDGEN,
        pins::BINARYEN,
        pins::AXE,
        pins::TYPESCRIPT,
        browser.chromium.display()
    );
    Ok(())
}

/// What the sources need to be compiled.
pub(crate) fn compiler() -> Result<()> {
    compiler::set_up()
}

/// What the page needs to be built; no browser.
pub(crate) fn for_page(repository: &Repository) -> Result<()> {
    pins::check_wasm_bindgen(&repository.read("Cargo.lock")?)?;
    compiler::set_up()?;
    cargo_tools::set_up(repository)?;
    node_packages::set_up(repository, &node_packages::WASM_OPT)?;
    Ok(())
}

/// The rules of accessibility that the journeys lay on every screen, and where their file is.
pub(crate) fn axe(repository: &Repository) -> Result<PathBuf> {
    node_packages::set_up(repository, &node_packages::AXE)
}

/// What checks the types of the module for scripts, and where its program is.
pub(crate) fn typescript(repository: &Repository) -> Result<PathBuf> {
    node_packages::set_up(repository, &node_packages::TYPESCRIPT)
}

/// A browser that a program can drive.
pub(crate) fn browser() -> Result<Browser> {
    browser::set_up()
}
