//! What the device can do with things that leave the page or come in; `device.js` does it.

use crate::device_status::Saved;
use units::{Decimals, Numerals};
use wasm_bindgen::prelude::*;
use workshop::Currency;
use workshop::book::MAX_PICTURE;
use workshop::out::{LinkError, MAX_LINK_BYTES, from_base64url, to_base64url};

#[wasm_bindgen(module = "/src/browser/device.js")]
extern "C" {
    #[wasm_bindgen(catch)]
    async fn pack(text: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    async fn unpack(bytes: &[u8], most: u32) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = save)]
    async fn save_file(name: &str, kind: &str, content: JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(js_name = canShare)]
    fn can_share_at_all() -> bool;
    #[wasm_bindgen(catch, js_name = share)]
    async fn share_it(title: &str, as_a: &str, what: &str) -> Result<(), JsValue>;
    #[wasm_bindgen(catch, js_name = copy)]
    async fn copy_text(text: &str) -> Result<(), JsValue>;
    #[wasm_bindgen(catch)]
    async fn dots(svg: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    async fn photo(file: &web_sys::File, most: u32) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = money)]
    fn money_here(amount: f64, currency: &str) -> Result<String, JsValue>;
    #[wasm_bindgen(js_name = afterNextFrame)]
    fn call_after_next_frame(call: JsValue);
    #[wasm_bindgen(js_name = whenInSight)]
    fn call_when_in_sight(element: &web_sys::Element, call: JsValue);
    #[wasm_bindgen(js_name = numerals)]
    fn numerals_here() -> String;
}

/// What stands before the piece in the fragment of a link.
const FRAGMENT: &str = "piece=";

fn reason(error: &JsValue) -> String {
    js_sys::Error::from(error.clone()).message().into()
}

/// Saves a text as a file, where the maker says, or among the downloads.
///
/// # Errors
/// If the browser cannot; the text says why.
pub async fn save(name: &str, kind: &str, text: &str) -> Result<Saved, String> {
    save_any(name, kind, text.into()).await
}

/// Saves a drawing, given as SVG, as a picture of dots.
///
/// # Errors
/// If the browser cannot; the text says why.
pub async fn save_picture(name: &str, svg: &str) -> Result<Saved, String> {
    let dots = dots(svg).await;
    let dots = dots.map_err(|error| format!("The picture could not be made: {}.", reason(&error)))?;
    save_any(name, "image/png", dots).await
}

async fn save_any(name: &str, kind: &str, content: JsValue) -> Result<Saved, String> {
    let saved = save_file(name, kind, content).await;
    match saved {
        Ok(given) => Ok(match given.as_string() {
            Some(given) if given.is_empty() => Saved::Downloaded(name.into()),
            Some(given) => Saved::As(given),
            None => Saved::No,
        }),
        Err(error) => Err(format!(
            "{name} was not saved: {}. Try again, or another folder.",
            reason(&error)
        )),
    }
}

/// A link to this page that holds the text of a piece.
///
/// # Errors
/// If the browser cannot make it small; the text says why.
pub async fn link(text: &str) -> Result<String, String> {
    let bytes = pack(text).await;
    let bytes = bytes.map_err(|error| format!("The link could not be made: {}.", reason(&error)))?;
    let bytes = js_sys::Uint8Array::from(bytes).to_vec();
    let page = web_sys::window()
        .and_then(|w| w.location().href().ok())
        .unwrap_or_default();
    let page = page.split('#').next().unwrap_or_default();
    Ok(format!("{page}#{FRAGMENT}{}", to_base64url(&bytes)))
}

/// The text of the piece in the address of the page, if one stands there. The address loses it, so that it is read once.
pub async fn linked() -> Option<Result<String, LinkError>> {
    let window = web_sys::window()?;
    let hash = window.location().hash().ok()?;
    let packed = hash.strip_prefix('#')?.strip_prefix(FRAGMENT)?.to_owned();
    // If the address keeps it, the piece is offered once more at the next start; nothing is lost.
    let _ = window
        .history()
        .and_then(|history| history.replace_state_with_url(&JsValue::NULL, "", Some(".")));
    let Some(bytes) = from_base64url(&packed) else {
        return Some(Err(LinkError::NotAPiece));
    };
    let text = unpack(&bytes, MAX_LINK_BYTES as u32).await.ok();
    Some(text.and_then(|text| text.as_string()).ok_or(LinkError::NotAPiece))
}

/// A photo that the maker chose, small enough to be kept in a book, as the address that holds it.
///
/// # Errors
/// If the browser cannot read it; the text says why.
pub async fn small_photo(file: &web_sys::File) -> Result<String, String> {
    let small = photo(file, MAX_PICTURE as u32).await;
    let small = small.map_err(|error| {
        format!(
            "That photo could not be read: {}. Choose another, or take it anew.",
            reason(&error)
        )
    })?;
    small.as_string().ok_or_else(String::new)
}

/// Whether the device has a list of its own of ways to hand something on.
pub fn can_share() -> bool {
    can_share_at_all()
}

/// Hands a link or a text on in the ways that the device has; `as_a` is `url` or `text`.
///
/// # Errors
/// If it cannot; the text says why.
pub async fn share(title: &str, as_a: &str, what: &str) -> Result<(), String> {
    let shared = share_it(title, as_a, what).await;
    shared.map_err(|error| format!("The device did not hand it on: {}.", reason(&error)))
}

/// Puts a text where it can be pasted from.
///
/// # Errors
/// If the browser does not let it; the text says why.
pub async fn copy(text: &str) -> Result<(), String> {
    let copied = copy_text(text).await;
    copied.map_err(|error| {
        format!(
            "The browser did not copy it: {}. Mark the text and copy it.",
            reason(&error)
        )
    })
}

/// A price, in hundredths, as people write it here; a plain number where the maker named no currency.
pub fn money(hundredths: u64, currency: Option<Currency>) -> String {
    let plain = || crate::words::number(&coatings::can::show_price(hundredths));
    let here = |currency: Currency| money_here(hundredths as f64 / 100.0, currency.code()).ok();
    currency.and_then(here).unwrap_or_else(plain)
}

/// How numbers are written here.
pub fn numerals() -> Numerals {
    Numerals::of(&numerals_here())
}

/// Which sign stands before decimals here.
pub fn decimals() -> Decimals {
    numerals().decimals()
}

/// Does something when the page has been drawn once more, or is about to be put away.
pub fn after_next_frame(call: impl FnOnce() + 'static) {
    call_after_next_frame(Closure::once_into_js(call));
}

/// Does something as soon as an element comes near to what is in sight.
pub fn when_in_sight(element: &web_sys::Element, call: impl FnOnce() + 'static) {
    call_when_in_sight(element, Closure::once_into_js(call));
}
