//! Where things lie in the repository.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::{env, fs};

use anyhow::{Context, Result};

/// The repository in which the chore was started.
pub(crate) struct Repository(PathBuf);

impl Repository {
    /// The nearest folder upward from the current one that holds the sources.
    pub(crate) fn find() -> Result<Self> {
        let here = env::current_dir().context("Can't find the current folder")?;
        let mut upward = here.ancestors();
        upward
            .find(|folder| folder.join("Trunk.toml").is_file() && folder.join("crates/xtask").is_dir())
            .map(|folder| Repository(folder.into()))
            .context("Run this inside Coatwright's source folder.")
    }

    /// A path in the repository.
    pub(crate) fn at(&self, path: &str) -> PathBuf {
        self.0.join(path)
    }

    /// The folder that holds everything.
    pub(crate) fn root(&self) -> &Path {
        &self.0
    }

    /// The text of a file.
    pub(crate) fn read(&self, path: &str) -> Result<String> {
        fs::read_to_string(self.at(path)).with_context(|| format!("Can't read {path}"))
    }

    /// Where the built page lies.
    pub(crate) fn dist(&self) -> PathBuf {
        self.at("dist")
    }

    /// The search path for programs, with the project's own tools first.
    pub(crate) fn search_path(&self) -> Result<OsString> {
        let own = [self.at(".tools/bin"), self.at(".tools/node/node_modules/.bin")];
        let inherited = env::var_os("PATH").unwrap_or_default();
        env::join_paths(own.into_iter().chain(env::split_paths(&inherited)))
            .context("Move this folder. Its path has a character that PATH can't contain.")
    }
}

/// The program with this name on the search path that was inherited.
pub(crate) fn program(name: &str) -> Option<PathBuf> {
    let file = format!("{name}{}", env::consts::EXE_SUFFIX);
    env::split_paths(&env::var_os("PATH")?)
        .map(|folder| folder.join(&file))
        .find(|path| path.is_file())
}
