//! Checks of the manifest by which the page is put on a home screen: `www/manifest.webmanifest`.

use serde_json::Value;

use crate::repository::Repository;

fn manifest() -> Value {
    let text = Repository::find()
        .unwrap()
        .read("www/manifest.webmanifest")
        .unwrap();
    serde_json::from_str(&text).unwrap()
}

/// Width and height out of the head of a PNG: W3C PNG, section 11.2.1.
fn size(png: &[u8]) -> (u32, u32) {
    assert_eq!(&png[..16], b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR");
    let number = |at: usize| u32::from_be_bytes(png[at..at + 4].try_into().unwrap());
    (number(16), number(20))
}

fn png(name: &str) -> Vec<u8> {
    let path = Repository::find().unwrap().at("www").join(name);
    std::fs::read(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

#[test]
fn the_icons_are_there_in_the_size_that_is_said() {
    let manifest = manifest();
    let icons = manifest["icons"].as_array().unwrap();
    assert!(icons.iter().any(|icon| icon["purpose"] == "maskable"));
    for icon in icons {
        let name = icon["src"].as_str().unwrap();
        let (width, height) = size(&png(name));
        assert_eq!(icon["sizes"], format!("{width}x{height}"), "{name}");
    }
    assert_eq!(size(&png("icons/icon-180.png")), (180, 180));
}

#[test]
fn the_page_names_the_manifest_and_the_build_takes_it_over() {
    let page = Repository::find().unwrap().read("www/index.html").unwrap();
    for line in [
        "<link rel=\"manifest\" href=\"manifest.webmanifest\">",
        "<link rel=\"apple-touch-icon\" href=\"icons/icon-180.png\">",
        "<link data-trunk rel=\"copy-file\" href=\"manifest.webmanifest\">",
        "<link data-trunk rel=\"copy-dir\" href=\"icons\">",
    ] {
        assert!(page.contains(line), "www/index.html lacks {line}");
    }
}

#[test]
fn the_colours_are_those_of_the_page() {
    let colours = Repository::find().unwrap().read("www/styles/tokens.css").unwrap();
    let manifest = manifest();
    for name in ["background_color", "theme_color"] {
        let colour = manifest[name].as_str().unwrap();
        assert!(
            colours.contains(&format!("--paper: {colour};")),
            "{name} is {colour}"
        );
    }
}

#[test]
fn its_addresses_are_relative_so_that_the_page_may_lie_in_any_folder() {
    let manifest = manifest();
    assert_eq!(
        (&manifest["start_url"], &manifest["scope"]),
        (&"./".into(), &"./".into())
    );
    for icon in manifest["icons"].as_array().unwrap() {
        let name = icon["src"].as_str().unwrap();
        assert!(!name.starts_with('/') && !name.contains(':'), "{name}");
    }
}
