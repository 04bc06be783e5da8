//! The takeoff as a module for scripts, in Node or on a page.
//!
//! `module/coatwright.d.ts` says what a script may hand over and what it gets; `README.md` shows how it is used.
//!
//! Invariant: nothing is computed here; what is handed over is read, and the crates below are asked.

mod given;
mod kinds;
mod piece;
mod takeoff;

use serde::Serialize;
use serde_json::Value;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// Every kind of furniture, with what each is asked for.
///
/// # Errors
/// If the engine of the script takes no more objects.
#[wasm_bindgen]
pub fn kinds() -> Result<JsValue, JsError> {
    handed_back(&kinds::all())
}

/// A workshop with one piece, measured as a maker types it.
///
/// # Errors
/// What cannot be read, where it stands and what to write instead.
#[wasm_bindgen]
pub fn piece(wanted: &JsValue) -> Result<JsValue, JsError> {
    let text = json(wanted).ok_or_else(|| refused(piece::USAGE))?;
    let wanted: Value = serde_json::from_str(&text)?;
    let record = piece::of(wanted).map_err(|message| refused(&message))?;
    handed_back(&record)
}

/// The takeoff of a workshop, given as the text of a save file or as what that text holds.
///
/// # Errors
/// Why the workshop is not read.
#[wasm_bindgen]
pub fn takeoff(workshop: &JsValue, options: &JsValue) -> Result<JsValue, JsError> {
    let text = workshop.as_string().or_else(|| json(workshop));
    let text = text.ok_or_else(|| refused(takeoff::USAGE))?;
    let options = json(options).unwrap_or_else(|| "null".into());
    let options: Value = serde_json::from_str(&options)?;
    let report = takeoff::of(&text, options).map_err(|message| refused(&message))?;
    handed_back(&report)
}

/// What a script handed over, as JSON; nothing for what JSON cannot hold, such as `undefined` or a circle.
fn json(value: &JsValue) -> Option<String> {
    js_sys::JSON::stringify(value).ok()?.as_string()
}

fn refused(message: &str) -> JsError {
    JsError::new(message)
}

/// Objects as JSON would give them: nothing is `null`, and names are entries.
fn handed_back(value: &impl Serialize) -> Result<JsValue, JsError> {
    Ok(value.serialize(&Serializer::json_compatible())?)
}
