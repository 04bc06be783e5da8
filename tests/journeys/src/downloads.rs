//! Files that leave the page by the browser, and files that are opened.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use thirtyfour::By;

use crate::page::Page;

impl Page {
    /// Presses a button that saves a file, waits until a file with this end of its name is whole, and takes it away.
    ///
    /// # Errors
    /// If none comes.
    pub async fn save(&self, button: &str, ending: &str) -> Result<Vec<u8>> {
        self.press(button).await?;
        // The browser takes the name with an empty file, writes under another name and then puts the whole file in its
        // place; no file of the page is empty.
        let path = self
            .eventually(async || {
                let entries = fs::read_dir(self.files())?;
                let paths: Vec<PathBuf> = entries
                    .map(|entry| entry.map(|entry| entry.path()))
                    .collect::<Result<_, _>>()?;
                let is_whole = |path: &Path| fs::metadata(path).is_ok_and(|about| about.len() > 0);
                let mut wanted = paths
                    .iter()
                    .filter(|path| path.to_string_lossy().ends_with(ending));
                let found = wanted.find(|path| is_whole(path));
                found
                    .cloned()
                    .with_context(|| format!("no {ending} was saved, only {paths:?}"))
            })
            .await?;
        let bytes = fs::read(&path)?;
        fs::remove_file(path)?;
        Ok(bytes)
    }

    /// Opens a file in the settings by its path; the element for it need not be seen, its label is.
    ///
    /// # Errors
    /// If the page does not take files there.
    pub async fn open_file(&self, path: &Path) -> Result<()> {
        let field = self.driver().find(By::Css("#open-file")).await?;
        let path = path.to_str().context("the path is not text")?;
        Ok(field.send_keys(path).await?)
    }
}
