//! Files: saving one to the maker's device, and reading one that the maker chose.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, Url};
use workshop::format::{LoadError, MAX_BYTES};

/// Hands a text to the browser as a download.
///
/// # Errors
/// If the browser refuses; the text says why.
pub fn save(name: &str, text: &str) -> Result<(), String> {
    download(name, text).map_err(|error| format!("The browser did not save the file: {error:?}"))
}

fn download(name: &str, text: &str) -> Result<(), JsValue> {
    let kind = BlobPropertyBag::new();
    kind.set_type("application/json");
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence_and_options(&parts, &kind)?;
    let url = Url::create_object_url_with_blob(&blob)?;
    let document = web_sys::window()
        .and_then(|w| w.document())
        .ok_or("no document")?;
    let link: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&url)
}

/// The text of a file that the maker chose.
///
/// # Errors
/// If it is larger than any workshop, or cannot be read; the text says why.
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

/// A file name made of a title: letters, figures and dashes.
pub fn file_name(title: &str) -> String {
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
    format!(
        "{}.coatwright.json",
        if name.is_empty() { "workshop" } else { &name }
    )
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn file_names_are_plain() {
        assert_eq!(file_name("Hall chest / no. 2"), "hall-chest-no-2.coatwright.json");
        assert_eq!(file_name("../.."), "workshop.coatwright.json");
    }
}
