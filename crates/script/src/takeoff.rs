//! The takeoff of a workshop.

use serde_json::Value;
use workshop::format::load;
use workshop::out::{Report, report};

use crate::given::Given;

/// What the function takes.
pub(crate) const USAGE: &str = "takeoff takes a workshop: a save file's text, or the object parsed from it.";

/// The takeoff of the workshop that this text holds.
pub(crate) fn of(text: &str, options: Value) -> Result<Report, String> {
    let mut options = match options {
        Value::Null => Given::default(),
        options => Given::to("takeoff options", &["working"], options)?,
    };
    let working = options.flag("working")?;
    let loaded = load(text).map_err(|error| error.to_string())?;
    Ok(report(&loaded, working))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn the_working_comes_only_when_it_is_asked_for() {
        let text = workshop::format::save(&workshop::invented_workshop());
        let of = |options| serde_json::to_value(of(&text, options).unwrap()).unwrap();
        for none in [json!({}), json!(null), json!({"working": false})] {
            assert!(of(none)["pieces"][0]["workings"].is_null());
        }
        assert!(of(json!({"working": true}))["pieces"][0]["workings"].is_array());
    }

    #[test]
    fn what_is_no_workshop_is_refused() {
        let refused = of("[]", json!({})).unwrap_err();
        assert!(
            refused.starts_with("Choose a file saved from Coatwright."),
            "{refused}"
        );
        let refused = of("", json!({"wroking": true})).unwrap_err();
        assert!(
            refused.ends_with("does not know \u{201c}wroking\u{201d}. It takes: working."),
            "{refused}"
        );
    }
}
