//! Device features for sharing, saving and reading data. `device.js` implements them.

use crate::device_status::Saved;
use crate::words::calendar::Style;
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
    #[wasm_bindgen(js_name = dates)]
    fn dates_here() -> String;
    #[wasm_bindgen(js_name = windowInText)]
    fn window_in_text_here() -> Vec<f64>;
    #[wasm_bindgen(js_name = onResize)]
    fn call_on_resize(call: JsValue);
}

/// The prefix of a piece in the fragment of a link.
const FRAGMENT: &str = "piece=";

fn reason(error: &JsValue) -> String {
    js_sys::Error::from(error.clone()).message().into()
}

/// Saves a text as a file, either where the maker chooses or in the downloads folder.
///
/// # Errors
/// If the browser cannot save it. The text says why.
pub async fn save(name: &str, kind: &str, text: &str) -> Result<Saved, String> {
    save_any(name, kind, text.into()).await
}

/// Saves an SVG drawing as a PNG image.
///
/// # Errors
/// If the browser cannot save it. The text says why.
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
            "{name} was not saved: {}. Try again, or choose another folder.",
            reason(&error)
        )),
    }
}

/// Returns a link to this page that contains the text of a piece.
///
/// # Errors
/// If the browser cannot compress it. The text says why.
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

/// Returns the text of the piece in the page address, if there is one, and removes it from the address so
/// that it is read only once.
pub async fn linked() -> Option<Result<String, LinkError>> {
    let window = web_sys::window()?;
    let hash = window.location().hash().ok()?;
    let packed = hash.strip_prefix('#')?.strip_prefix(FRAGMENT)?.to_owned();
    // If the address cannot be changed, the piece is offered again at the next start. Nothing is lost.
    let _ = window
        .history()
        .and_then(|history| history.replace_state_with_url(&JsValue::NULL, "", Some(".")));
    let Some(bytes) = from_base64url(&packed) else {
        return Some(Err(LinkError::NotAPiece));
    };
    let text = unpack(&bytes, MAX_LINK_BYTES as u32).await.ok();
    Some(text.and_then(|text| text.as_string()).ok_or(LinkError::NotAPiece))
}

/// Shrinks a photo for a book and returns it as a data URL.
///
/// # Errors
/// If the browser cannot read it. The text says why.
pub async fn small_photo(file: &web_sys::File) -> Result<String, String> {
    let small = photo(file, MAX_PICTURE as u32).await;
    let small = small.map_err(|error| {
        format!(
            "That photo could not be read: {}. Choose another, or retake it.",
            reason(&error)
        )
    })?;
    small.as_string().ok_or_else(String::new)
}

/// Returns true if the device has a share sheet.
pub fn can_share() -> bool {
    can_share_at_all()
}

/// Shares a link or a text with the device's share sheet. `as_a` is `url` or `text`.
///
/// # Errors
/// If sharing fails. The text says why.
pub async fn share(title: &str, as_a: &str, what: &str) -> Result<(), String> {
    let shared = share_it(title, as_a, what).await;
    shared.map_err(|error| format!("Not shared: {}.", reason(&error)))
}

/// Copies a text to the clipboard.
///
/// # Errors
/// If the browser does not allow it. The text says why.
pub async fn copy(text: &str) -> Result<(), String> {
    let copied = copy_text(text).await;
    copied.map_err(|error| format!("Not copied: {}. Select the text and copy it.", reason(&error)))
}

/// Formats a price in hundredths for the locale. Without a currency, it is a plain number.
pub fn money(hundredths: u64, currency: Option<Currency>) -> String {
    let plain = || crate::words::number(&coatings::can::show_price(hundredths));
    let here = |currency: Currency| money_here(hundredths as f64 / 100.0, currency.code()).ok();
    currency.and_then(here).unwrap_or_else(plain)
}

/// Returns the number format of the locale.
pub fn numerals() -> Numerals {
    Numerals::of(&numerals_here())
}

/// Returns the style of dates and times of the locale.
pub fn dates() -> Style {
    let here = dates_here();
    Style {
        month_first: here.starts_with('1'),
        twelve_hours: here.ends_with('1'),
    }
}

/// Returns the decimal sign of the locale.
pub fn decimals() -> Decimals {
    numerals().decimals()
}

/// Calls `call` after the next frame was painted, or when the page is about to be hidden.
pub fn after_next_frame(call: impl FnOnce() + 'static) {
    call_after_next_frame(Closure::once_into_js(call));
}

/// Calls `call` as soon as an element is close to the visible area.
pub fn when_in_sight(element: &web_sys::Element, call: impl FnOnce() + 'static) {
    call_when_in_sight(element, Closure::once_into_js(call));
}

/// Returns the width and height of the window, in heights of normal text.
pub fn window_in_text() -> [f64; 2] {
    match window_in_text_here().as_slice() {
        [width, height] => [*width, *height],
        _ => [64.0, 48.0],
    }
}

/// Calls `call` whenever the size of the window changes, as long as the page is open.
pub fn on_resize(call: impl Fn() + 'static) {
    call_on_resize(Closure::<dyn Fn()>::new(call).into_js_value());
}
