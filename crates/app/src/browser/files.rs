//! File names, and reading a file that the maker chose.

use wasm_bindgen_futures::JsFuture;
use web_sys::File;
use workshop::format::{LoadError, MAX_BYTES};

/// Returns the text of a file that the maker chose.
///
/// # Errors
/// If it is larger than any workshop or cannot be read. The text says why.
pub async fn read(file: File) -> Result<String, String> {
    let bytes = file.size();
    if bytes > MAX_BYTES as f64 {
        return Err(LoadError::TooLarge {
            bytes: bytes as usize,
        }
        .to_string());
    }
    let text = JsFuture::from(file.text()).await;
    let text = text.ok().and_then(|text| text.as_string());
    text.ok_or_else(|| format!("The browser could not read {}. Choose it again.", file.name()))
}

/// Returns a file name made from the letters and digits of a title, dashes, and an extension.
pub fn file_name(title: &str, ending: &str) -> String {
    let kept: String = title
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { '-' })
        .collect();
    let name = kept
        .split('-')
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join("-")
        .to_ascii_lowercase();
    format!("{}.{ending}", if name.is_empty() { "workshop" } else { &name })
}

/// The extension of a saved workshop.
pub const WORKSHOP: &str = "coatwright.json";

#[cfg(test)]
mod tests {
    use super::{WORKSHOP, file_name};

    #[test]
    fn file_names_are_plain() {
        assert_eq!(
            file_name("Hall chest / no. 2", WORKSHOP),
            "hall-chest-no-2.coatwright.json"
        );
        assert_eq!(file_name("../..", WORKSHOP), "workshop.coatwright.json");
    }
}
