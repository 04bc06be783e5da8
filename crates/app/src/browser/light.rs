//! The brightness of the page. The style sheets know the words. The device stores the choice, and `boot.js`
//! applies it before the rest of the page loads.

use crate::state::Light;

/// The key in the device's storage. `boot.js` uses the same one.
const KEPT: &str = "coatwright light";

const WORDS: [(Light, &str); 4] = [
    (Light::Device, ""),
    (Light::Light, "light"),
    (Light::Dark, "dark"),
    (Light::Contrast, "contrast"),
];

/// Returns the stored brightness.
pub fn light() -> Light {
    let word = root().and_then(|root| root.get_attribute("data-light"));
    WORDS
        .into_iter()
        .find(|(_, name)| word.as_deref() == Some(*name))
        .map_or(Light::Device, |(light, _)| light)
}

/// Sets and stores the brightness.
pub fn shine(light: Light) {
    let word = WORDS
        .into_iter()
        .find(|(other, _)| *other == light)
        .map_or("", |(_, word)| word);
    if let Some(root) = root() {
        // Setting an attribute with a valid name cannot fail.
        let _ = root.set_attribute("data-light", word);
    }
    // If the browser cannot store it, the next start follows the device.
    let storage = web_sys::window().and_then(|window| window.local_storage().ok()?);
    let _ = storage.map(|storage| storage.set_item(KEPT, word));
}

fn root() -> Option<web_sys::Element> {
    web_sys::window()?.document()?.document_element()
}
