//! Other programs that answer the same question, timed in the same run.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::command::output;
use crate::repository::program;

/// A script of `tests/outside` that times another program when it is called with `--time`.
pub(super) struct Program {
    /// What is timed.
    pub name: &'static str,
    /// The script, from the folder of the repository.
    pub script: &'static str,
    /// Words of the line that holds the time; the line ends with a number and `ms`.
    pub line: &'static str,
    /// The packages of Python that it needs.
    pub needs: &'static str,
}

impl Program {
    /// How long it takes, in seconds.
    ///
    /// # Errors
    /// Where Python, or a package that the script needs, is not there.
    pub(super) fn seconds(&self, root: &Path) -> Result<f64> {
        let printed = output(
            Command::new(python()?)
                .args([self.script, "--time"])
                .current_dir(root),
        )
        .with_context(|| format!("{} wasn't timed. Run: pip install {}", self.name, self.needs))?;
        printed
            .lines()
            .find(|line| line.contains(self.line))
            .and_then(milliseconds)
            .map(|time| time * 1e-3)
            .with_context(|| format!("{} printed no time", self.script))
    }
}

/// Python of the folder that is active, if any.
fn python() -> Result<PathBuf> {
    let found = ["python3", "python"].into_iter().find_map(program);
    found.context("Python isn't on PATH, so no other program was timed")
}

/// The number before the unit at the end of a line.
fn milliseconds(line: &str) -> Option<f64> {
    let number = line.trim_end().strip_suffix(" ms")?.split(' ').next_back()?;
    number.parse().ok().filter(|time| *time > 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_time_is_read_off_the_end_of_a_line() {
        assert_eq!(milliseconds("NumPy 2.4.6 12.50 ms"), Some(12.5));
        assert_eq!(milliseconds("NumPy 2.4.6 12.50 ms\r"), Some(12.5));
        for other in ["12.50 s", "none ms", "0.0 ms", ""] {
            assert_eq!(milliseconds(other), None, "{other}");
        }
    }
}
