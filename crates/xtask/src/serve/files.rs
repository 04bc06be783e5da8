//! The files of a folder by their address, and nothing outside it.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use super::headers;
use crate::{brotli, weight};

/// A folder that is served.
pub(super) struct Folder {
    root: PathBuf,
    /// Files that are also there compressed with brotli.
    compressed: Vec<(PathBuf, Vec<u8>)>,
}

/// A file as it is sent.
pub(super) struct Sent {
    /// What kind of content it is.
    pub kind: &'static str,
    /// Whether it is compressed with brotli.
    pub is_compressed: bool,
    /// The content.
    pub body: Vec<u8>,
}

impl Folder {
    /// The folder at this path, which must hold a page.
    pub(super) fn open(path: &Path) -> Result<Self> {
        let shown = path.display();
        let whole = path
            .canonicalize()
            .with_context(|| format!("Run `cargo xtask build` first. There is no folder {shown}."))?;
        fs::metadata(whole.join("index.html"))
            .with_context(|| format!("Run `cargo xtask build` first. {shown} has no index.html."))?;
        Ok(Folder {
            root: whole,
            compressed: Vec::new(),
        })
    }

    /// The same folder, with all its files compressed once, so that they can be sent as a good host sends them.
    pub(super) fn compressed(self) -> Result<Self> {
        let files = weight::files(&self.root)?;
        let small = brotli::compressed(&files)?;
        Ok(Folder {
            root: self.root,
            compressed: files.into_iter().zip(small).collect(),
        })
    }

    /// The file at an address, for a browser that takes brotli or does not.
    pub(super) fn read(&self, address: &str, takes_brotli: bool) -> Option<Sent> {
        let name = relative(address)?;
        // A link could still lead out of the folder.
        let path = self.root.join(name).canonicalize().ok()?;
        if !path.starts_with(&self.root) {
            return None;
        }
        let small = self.compressed.iter().find(|(of, _)| *of == path);
        let small = small.filter(|_| takes_brotli).map(|(_, body)| body.clone());
        Some(Sent {
            kind: headers::kind(&path),
            is_compressed: small.is_some(),
            body: match small {
                Some(body) => body,
                None => fs::read(path).ok()?,
            },
        })
    }
}

/// The path within the folder that an address names. The build names its files plainly, so anything else, hidden
/// files and dots among it, is no file.
fn relative(address: &str) -> Option<&str> {
    let path = address.split(['?', '#']).next()?.strip_prefix('/')?;
    if path.is_empty() {
        return Some("index.html");
    }
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.');
    path.split('/')
        .all(|word| !word.is_empty() && !word.starts_with('.') && word.chars().all(plain))
        .then_some(path)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_plain_names_are_paths() {
        assert_eq!(relative("/"), Some("index.html"));
        assert_eq!(relative("/?piece=1"), Some("index.html"));
        assert_eq!(relative("/icons/icon-192.png?v=2"), Some("icons/icon-192.png"));
        for bad in [
            "",
            "index.html",
            "//etc/passwd",
            "/../secret",
            "/a/../../secret",
            "/%2e%2e/secret",
            "/..%2fsecret",
            "/a\\..\\secret",
            "/.git/config",
            "/c:/x",
            "http://elsewhere/",
        ] {
            assert_eq!(relative(bad), None, "{bad}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_folder_is_not_followed() {
        let base = std::env::temp_dir().join(format!("coatwright-link-{}", std::process::id()));
        let dist = base.join("dist");
        fs::create_dir_all(&dist).unwrap();
        fs::write(base.join("secret.txt"), "secret").unwrap();
        fs::write(dist.join("index.html"), "page").unwrap();
        let link = dist.join("link.txt");
        if !link.exists() {
            std::os::unix::fs::symlink(base.join("secret.txt"), &link).unwrap();
        }
        let folder = Folder::open(&dist).unwrap();
        assert!(folder.read("/", false).is_some());
        assert!(folder.read("/link.txt", false).is_none());
        fs::remove_dir_all(base).unwrap();
    }

    #[test]
    fn a_folder_without_a_page_says_what_to_do() {
        let message = Folder::open(Path::new("no-such-folder"))
            .err()
            .unwrap()
            .to_string();
        assert!(message.starts_with("Run `cargo xtask build` first."), "{message}");
    }
}
