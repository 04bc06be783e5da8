//! The programs that a journey needs: the server of the page and the driver of the browser.

use std::env;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

use anyhow::{Context, Result, ensure};

const HOW: &str = "Type: cargo xtask test --only journeys";

/// Where everything is.
pub(crate) struct Places {
    /// The built page.
    pub dist: PathBuf,
    /// The browser.
    pub chromium: PathBuf,
    /// Its driver.
    pub chromedriver: PathBuf,
    /// The chores, of which one serves the page.
    pub xtask: PathBuf,
    /// The rules of accessibility, a script.
    pub axe: PathBuf,
    /// Where screenshots of failed journeys go.
    pub screenshots: PathBuf,
}

impl Places {
    /// What `cargo xtask test` named, or else what lies where it usually does.
    pub(crate) fn find() -> Result<Self> {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let target = named("CARGO_TARGET_DIR").unwrap_or_else(|| root.join("target"));
        let dist = named("COATWRIGHT_DIST").unwrap_or_else(|| root.join("dist"));
        ensure!(
            dist.join("index.html").is_file(),
            "The page is not built: {} has no index.html. {HOW}",
            dist.display()
        );
        Ok(Places {
            dist,
            chromium: named("COATWRIGHT_CHROMIUM")
                .or_else(|| on_path("chromium"))
                .or_else(|| on_path("chromium-browser"))
                .with_context(|| format!("No Chromium was found. {HOW}"))?,
            chromedriver: named("COATWRIGHT_CHROMEDRIVER")
                .or_else(|| on_path("chromedriver"))
                .with_context(|| format!("No ChromeDriver was found. {HOW}"))?,
            xtask: named("COATWRIGHT_XTASK")
                .or_else(|| file(target.join("debug").join(program("xtask"))))
                .with_context(|| format!("The server of the page is not built. {HOW}"))?,
            axe: named("COATWRIGHT_AXE")
                .unwrap_or_else(|| root.join(".tools/node/node_modules/axe-core/axe.min.js")),
            screenshots: target.join("journeys"),
        })
    }
}

fn named(variable: &str) -> Option<PathBuf> {
    env::var_os(variable)
        .filter(|value| !value.is_empty())
        .map(PathBuf::from)
}

fn on_path(name: &str) -> Option<PathBuf> {
    env::split_paths(&env::var_os("PATH")?).find_map(|folder| file(folder.join(program(name))))
}

fn program(name: &str) -> String {
    format!("{name}{}", env::consts::EXE_SUFFIX)
}

fn file(path: PathBuf) -> Option<PathBuf> {
    path.is_file().then_some(path)
}

/// A program that runs beside the journey and ends with it.
pub(crate) struct Running {
    child: Child,
    // A closed pipe would end a program that still writes.
    lines: BufReader<ChildStdout>,
}

impl Running {
    /// Starts a program and waits for the line in which it says where it listens.
    pub(crate) fn start<T>(command: &mut Command, heard: impl Fn(&str) -> Option<T>) -> Result<(Self, T)> {
        let name = format!("{command:?}");
        let mut child = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .with_context(|| format!("{name} did not start"))?;
        let lines = child.stdout.take().context("there is no pipe")?;
        let mut running = Running {
            child,
            lines: BufReader::new(lines),
        };
        let mut line = String::new();
        while running.lines.read_line(&mut line)? > 0 {
            if let Some(place) = heard(line.trim()) {
                return Ok((running, place));
            }
            line.clear();
        }
        anyhow::bail!("{name} ended without saying where it listens")
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        // It may have ended by itself; either way it is gone.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
