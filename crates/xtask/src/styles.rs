//! The style sheets of the built page in one file. Browsers open few lines to a host at a time, and on a slow line nine
//! small files held up the large one that the page waits for.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use hmac_sha256::Hash;

/// Puts the style sheets that the page links to into one, in their order, in the place of the first.
pub(crate) fn join(dist: &Path) -> Result<()> {
    let page = dist.join("index.html");
    let html = read(&page)?;
    let (rest, addresses) = parted(&html);
    ensure!(
        !addresses.is_empty(),
        "dist/index.html links no style sheet. Check Trunk.toml and www/index.html."
    );
    let mut styles = String::new();
    for address in &addresses {
        styles += &read(&dist.join(address))?;
    }
    let digest = Hash::hash(styles.as_bytes());
    let short: String = digest[..8].iter().map(|byte| format!("{byte:02x}")).collect();
    let name = format!("styles-{short}.css");
    fs::write(dist.join(&name), styles).with_context(|| format!("Can't write {name}"))?;
    let link = format!(
        "<link href=./{name} integrity=sha256-{} rel=stylesheet>",
        BASE64_STANDARD.encode(digest)
    );
    let joined = rest.replacen(PLACE, &link, 1);
    fs::write(&page, joined).with_context(|| format!("Can't write {}", page.display()))?;
    for address in addresses {
        fs::remove_file(dist.join(address)).with_context(|| format!("Can't delete {address}"))?;
    }
    Ok(())
}

fn read(file: &Path) -> Result<String> {
    fs::read_to_string(file).with_context(|| format!("Can't read {}", file.display()))
}

/// What stands in the page where the first style sheet was.
const PLACE: &str = "<link styles>";

/// The page without its style sheets, and the addresses of these.
fn parted(html: &str) -> (String, Vec<&str>) {
    let mut rest = String::new();
    let mut addresses = Vec::new();
    for tag in html.split_inclusive('>') {
        match style_sheet(tag) {
            Some(address) => {
                if addresses.is_empty() {
                    rest += PLACE;
                }
                addresses.push(address);
            }
            None => rest += tag,
        }
    }
    (rest, addresses)
}

/// The address of the style sheet that a tag links to, if it is one.
fn style_sheet(tag: &str) -> Option<&str> {
    let inside = tag
        .trim_start()
        .strip_prefix("<link ")?
        .trim_end_matches(['>', '/']);
    let value = |name: &str| {
        let mut words = inside.split_whitespace();
        let value = words.find_map(|word| word.strip_prefix(name)?.strip_prefix('='))?;
        Some(value.trim_matches('"'))
    };
    (value("rel")? == "stylesheet").then_some(())?;
    Some(value("href")?.trim_start_matches("./"))
}

#[cfg(test)]
mod tests {
    use super::*;

    const HTML: &str = "<head><title>T</title><link href=./b.css integrity=sha384-x rel=stylesheet>\
                        <link rel=\"stylesheet\" href=\"./a.css\" /><link href=./i.svg rel=icon></head>";

    #[test]
    fn style_sheets_become_one_in_their_order() {
        let dist = std::env::temp_dir().join(format!("coatwright-styles-{}", std::process::id()));
        fs::create_dir_all(&dist).unwrap();
        for (file, content) in [
            ("index.html", HTML),
            ("a.css", "a{color:red}"),
            ("b.css", "b{color:red}"),
        ] {
            fs::write(dist.join(file), content).unwrap();
        }
        join(&dist).unwrap();
        let html = fs::read_to_string(dist.join("index.html")).unwrap();
        let (rest, addresses) = parted(&html);
        let [name] = addresses[..] else {
            panic!("one style sheet, not {addresses:?}")
        };
        let styles = fs::read_to_string(dist.join(name)).unwrap();
        let left: Vec<_> = fs::read_dir(&dist).unwrap().collect();
        let left = left.len();
        fs::remove_dir_all(&dist).unwrap();
        assert_eq!(styles, "b{color:red}a{color:red}");
        assert_eq!(
            rest,
            format!("<head><title>T</title>{PLACE}<link href=./i.svg rel=icon></head>")
        );
        assert!(html.contains(&format!(
            "sha256-{}",
            BASE64_STANDARD.encode(Hash::hash(styles.as_bytes()))
        )));
        assert_eq!(left, 2);
    }

    #[test]
    fn a_page_without_styles_is_told() {
        let dist = std::env::temp_dir().join(format!("coatwright-bare-{}", std::process::id()));
        fs::create_dir_all(&dist).unwrap();
        fs::write(dist.join("index.html"), "<p>").unwrap();
        let told = join(&dist).unwrap_err().to_string();
        fs::remove_dir_all(&dist).unwrap();
        assert!(told.starts_with("dist/index.html links no style sheet"), "{told}");
    }
}
