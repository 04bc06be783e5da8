//! A browser and the program that drives it, for the checks that need one.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::command;
use crate::repository::program;

/// Names the browser to use instead of the one that is found.
pub(super) const CHROMIUM: &str = "COATWRIGHT_CHROMIUM";
/// Names its driver.
pub(super) const CHROMEDRIVER: &str = "COATWRIGHT_CHROMEDRIVER";

/// Where the browser and its driver lie.
pub(crate) struct Browser {
    /// The browser.
    pub chromium: PathBuf,
    /// Its driver, which must have the same version.
    pub chromedriver: PathBuf,
}

/// Finds the browser, or installs it where that can be done without asking.
pub(super) fn set_up() -> Result<Browser> {
    if let Some(browser) = find() {
        return Ok(browser);
    }
    let by_hand = "Install Chromium and ChromeDriver of the same version (on Debian or Ubuntu, as root: \
                   `apt-get install chromium chromium-driver`), with `chromium` and `chromedriver` on PATH, \
                   or set COATWRIGHT_CHROMIUM and COATWRIGHT_CHROMEDRIVER. Then run \
                   `cargo xtask setup`.";
    if program("apt-get").is_none() || !is_root() {
        bail!("The browser for the checks is missing. {by_hand}");
    }
    println!("Installing Chromium and ChromeDriver with apt-get (about half a minute)");
    apt_get(&["-q", "update"])?;
    apt_get(&[
        "-q",
        "install",
        "-y",
        "--no-install-recommends",
        "chromium",
        "chromium-driver",
    ])?;
    find().with_context(|| format!("They were installed but can't be found. {by_hand}"))
}

fn find() -> Option<Browser> {
    let named = |variable| {
        std::env::var_os(variable)
            .map(PathBuf::from)
            .filter(|p| p.is_file())
    };
    Some(Browser {
        chromium: named(CHROMIUM)
            .or_else(|| program("chromium"))
            .or_else(|| program("chromium-browser"))?,
        chromedriver: named(CHROMEDRIVER).or_else(|| program("chromedriver"))?,
    })
}

fn is_root() -> bool {
    command::output(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}

fn apt_get(words: &[&str]) -> Result<()> {
    command::run(
        Command::new("apt-get")
            .args(words)
            .env("DEBIAN_FRONTEND", "noninteractive"),
    )
}
