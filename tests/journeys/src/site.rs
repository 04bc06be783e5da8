//! The built page on a server of its own.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, ensure};
use tempfile::TempDir;

use crate::programs::{Places, Running};

/// How the server sends the files.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sent {
    /// As they are; the server starts at once.
    Plain,
    /// Compressed, as a good host sends them; compressing takes some seconds.
    Compressed,
}

/// The built page, served by a program of its own until this is dropped. That it is a program matters: a server within
/// this one would leave connections open after its end, and the browser would still be answered.
pub struct Site {
    address: String,
    _server: Running,
    xtask: PathBuf,
    copy: Option<TempDir>,
}

impl Site {
    /// The page as it was built.
    ///
    /// # Errors
    /// If it was not, or the server does not start.
    pub fn built(sent: Sent) -> Result<Self> {
        let places = Places::find()?;
        Self::serve(places.xtask, &places.dist, sent, None)
    }

    /// A copy of it, which can be changed.
    ///
    /// # Errors
    /// As for [`Site::built`], and if it cannot be copied.
    pub fn copied() -> Result<Self> {
        let places = Places::find()?;
        let folder = tempfile::tempdir()?;
        copy(&places.dist, folder.path())?;
        let path = folder.path().to_owned();
        Self::serve(places.xtask, &path, Sent::Plain, Some(folder))
    }

    fn serve(xtask: PathBuf, folder: &Path, sent: Sent, copy: Option<TempDir>) -> Result<Self> {
        let mut serve = Command::new(&xtask);
        serve.arg("serve-dist").arg(folder);
        if sent == Sent::Compressed {
            serve.arg("--brotli");
        }
        let (server, address) = Running::start(&mut serve, |line| {
            line.starts_with("http://").then(|| line.to_owned())
        })?;
        Ok(Site {
            address,
            _server: server,
            xtask,
            copy,
        })
    }

    /// Where it is.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Makes another version of a copy: one text in one file becomes another one, and the service worker lists all files
    /// anew.
    ///
    /// # Errors
    /// If this is no copy, or the text is not in the file.
    pub fn change(&self, file: &str, old: &str, new: &str) -> Result<()> {
        let folder = self
            .copy
            .as_ref()
            .context("the built page itself is not changed")?;
        let path = folder.path().join(file);
        let text = fs::read_to_string(&path).context(file.to_owned())?;
        ensure!(text.contains(old), "{file} does not hold `{old}`");
        fs::write(&path, text.replace(old, new))?;
        let status = Command::new(&self.xtask)
            .arg("list-dist")
            .arg(folder.path())
            .status()?;
        ensure!(status.success(), "the service worker was not written: {status}");
        Ok(())
    }
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
