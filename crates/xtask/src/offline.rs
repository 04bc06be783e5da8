//! The service worker of the built page: which files it keeps on the device, and one name for all of them together.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use hmac_sha256::Hash;

use crate::repository::Repository;
use crate::weight;

/// Where the worker stands in `www` and in the built page.
const WORKER: &str = "service-worker.js";

/// A file of the page, by its address relative to the page, and the SHA-256 digest of its content.
type Kept = (String, [u8; 32]);

/// Writes the service worker into a folder that holds the built page.
pub(crate) fn write(repository: &Repository, dist: &Path) -> Result<()> {
    let template = repository.read(&format!("www/{WORKER}"))?;
    let worker = filled(&template, &kept(dist)?)?;
    let path = dist.join(WORKER);
    fs::write(&path, worker).with_context(|| format!("Can't write {}", path.display()))
}

/// Every file but the worker itself.
fn kept(dist: &Path) -> Result<Vec<Kept>> {
    let mut kept = Vec::new();
    for path in weight::files(dist)? {
        let words: Vec<_> = path
            .strip_prefix(dist)?
            .iter()
            .map(|word| word.to_string_lossy())
            .collect();
        let address = words.join("/");
        if address == WORKER {
            continue;
        }
        let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.' | '/');
        ensure!(
            address.chars().all(plain),
            "Rename dist/{address}. Its name has a character that isn't allowed in a URL."
        );
        let content = fs::read(&path).with_context(|| format!("Can't read {}", path.display()))?;
        // Hosts may send whoever asks for `index.html` to the folder, and a worker must not answer with that.
        let address = if address == "index.html" {
            "./".into()
        } else {
            address
        };
        kept.push((address, Hash::hash(&content)));
    }
    Ok(kept)
}

/// One name for all files together: another one as soon as a file has another content or another name.
fn digest(kept: &[Kept]) -> String {
    let mut hash = Hash::new();
    for (address, of_file) in kept {
        hash.update(address);
        // No address holds this byte, so two lists never come to the same bytes.
        hash.update([0]);
        hash.update(of_file);
    }
    hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The worker with its two constants filled in, and without what only people read.
fn filled(template: &str, kept: &[Kept]) -> Result<String> {
    let files: Vec<[String; 2]> = kept
        .iter()
        .map(|(address, digest)| {
            [
                address.clone(),
                format!("sha256-{}", BASE64_STANDARD.encode(digest)),
            ]
        })
        .collect();
    let mut worker = template.to_owned();
    for (empty, full) in [
        (
            "const DIGEST = \"\";",
            format!("const DIGEST = \"{}\";", digest(kept)),
        ),
        (
            "const FILES = [];",
            format!("const FILES = {};", serde_json::to_string(&files)?),
        ),
    ] {
        ensure!(
            worker.matches(empty).count() == 1,
            "Put the line `{empty}` in www/{WORKER} exactly once. The build fills it in."
        );
        worker = worker.replace(empty, &full);
    }
    let lines = worker.lines().map(str::trim_start);
    let code = lines.filter(|line| !line.is_empty() && !line.starts_with("//"));
    Ok(code.flat_map(|line| [line, "\n"]).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str =
        "// What it is.\nconst DIGEST = \"\";\nconst FILES = [];\n\nasync () => {\n  keep();\n};\n";

    fn folder(name: &str, files: &[(&str, &str)]) -> std::path::PathBuf {
        let dist = std::env::temp_dir().join(format!("coatwright-offline-{name}-{}", std::process::id()));
        for (file, content) in files {
            let path = dist.join(file);
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, content).unwrap();
        }
        dist
    }

    #[test]
    fn every_file_but_the_worker_is_listed_and_the_page_by_its_folder() {
        let dist = folder(
            "list",
            &[("index.html", "abc"), ("icons/a.png", ""), (WORKER, "old")],
        );
        let worker = filled(TEMPLATE, &kept(&dist).unwrap()).unwrap();
        fs::remove_dir_all(dist).unwrap();
        // The digests of `abc` and of nothing: FIPS 180-2, appendix B.1, and the NIST examples (read in both).
        let files = "[[\"icons/a.png\",\"sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\"],\
                     [\"./\",\"sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\"]]";
        assert!(worker.contains(&format!("const FILES = {files};\n")), "{worker}");
        assert!(
            worker.ends_with("\nasync () => {\nkeep();\n};\n") && !worker.contains("//"),
            "{worker}"
        );
    }

    #[test]
    fn another_content_or_name_gives_another_digest() {
        let of = |name: &str, content: &str| digest(&[(name.into(), Hash::hash(content.as_bytes()))]);
        assert_eq!(of("a.js", "1"), of("a.js", "1"));
        assert_ne!(of("a.js", "1"), of("a.js", "2"));
        assert_ne!(of("a.js", "1"), of("b.js", "1"));
    }

    #[test]
    fn a_template_that_cannot_be_filled_is_told() {
        let message = filled("const FILES = [];\n", &[]).unwrap_err().to_string();
        assert!(message.contains("`const DIGEST = \"\";`"), "{message}");
    }

    #[test]
    fn a_name_that_is_no_address_is_told() {
        let dist = folder("name", &[("index.html", ""), ("a b.css", "")]);
        let message = kept(&dist).unwrap_err().to_string();
        fs::remove_dir_all(dist).unwrap();
        assert!(message.contains("dist/a b.css"), "{message}");
    }

    #[test]
    fn the_worker_of_the_page_can_be_filled() {
        let template = Repository::find().unwrap().read("www/service-worker.js").unwrap();
        assert!(filled(&template, &[]).is_ok());
    }
}
