//! How light the page is. The styles know the words; the device keeps the chosen one for the next time, and `boot.js`
//! sets it before the rest of the page is there.

use crate::state::Light;

/// Where the device keeps it; `boot.js` reads the same.
const KEPT: &str = "coatwright light";

const WORDS: [(Light, &str); 4] = [
    (Light::Device, ""),
    (Light::Light, "light"),
    (Light::Dark, "dark"),
    (Light::Contrast, "contrast"),
];

/// How light the page was made before.
pub fn light() -> Light {
    let word = root().and_then(|root| root.get_attribute("data-light"));
    WORDS
        .into_iter()
        .find(|(_, name)| word.as_deref() == Some(*name))
        .map_or(Light::Device, |(light, _)| light)
}

/// Makes the page light or dark, now and the next time.
pub fn shine(light: Light) {
    let word = WORDS
        .into_iter()
        .find(|(other, _)| *other == light)
        .map_or("", |(_, word)| word);
    if let Some(root) = root() {
        // An attribute with a plain name is never refused.
        let _ = root.set_attribute("data-light", word);
    }
    // A browser that keeps nothing begins as the device has it the next time; that is no reason to stop.
    let storage = web_sys::window().and_then(|window| window.local_storage().ok()?);
    let _ = storage.map(|storage| storage.set_item(KEPT, word));
}

fn root() -> Option<web_sys::Element> {
    web_sys::window()?.document()?.document_element()
}
