//! What a script hands over, read entry by entry: a slip in a name is told and not passed over.

use serde_json::{Map, Value};

/// The entries of an object that was handed over.
#[derive(Default)]
pub(crate) struct Given(Map<String, Value>);

impl Given {
    /// The object that was handed to a function, if all its entries are known.
    pub(crate) fn to(to: &'static str, known: &'static [&'static str], value: Value) -> Result<Self, String> {
        let Value::Object(entries) = value else {
            return Err(format!("{to} takes an object with: {}.", known.join(", ")));
        };
        match entries.keys().find(|key| !known.contains(&key.as_str())) {
            Some(key) => Err(format!(
                "{to} does not know \u{201c}{key}\u{201d}. It takes: {}.",
                known.join(", ")
            )),
            None => Ok(Given(entries)),
        }
    }

    /// An entry, if it is there and not `null`.
    fn take(&mut self, key: &'static str) -> Option<Value> {
        self.0.remove(key).filter(|value| !value.is_null())
    }

    /// A text, if it is there.
    pub(crate) fn text(&mut self, key: &'static str) -> Result<Option<String>, String> {
        match self.take(key) {
            None => Ok(None),
            Some(Value::String(text)) => Ok(Some(text)),
            Some(_) => Err(format!("Make \u{201c}{key}\u{201d} a string.")),
        }
    }

    /// A whole number, if it is there.
    pub(crate) fn number(&mut self, key: &'static str) -> Result<Option<u32>, String> {
        self.take(key).map(|value| whole(key, &value)).transpose()
    }

    /// `true` or `false`; the last if it is not there.
    pub(crate) fn flag(&mut self, key: &'static str) -> Result<bool, String> {
        match self.take(key) {
            None => Ok(false),
            Some(Value::Bool(flag)) => Ok(flag),
            Some(_) => Err(format!("Make \u{201c}{key}\u{201d} true or false.")),
        }
    }

    /// Values by their names; none if they are not there.
    pub(crate) fn named(&mut self, key: &'static str) -> Result<Map<String, Value>, String> {
        match self.take(key) {
            None => Ok(Map::new()),
            Some(Value::Object(named)) => Ok(named),
            Some(_) => Err(format!("Make \u{201c}{key}\u{201d} an object.")),
        }
    }
}

/// A whole number from 0 on.
pub(crate) fn whole(what: &str, value: &Value) -> Result<u32, String> {
    let number = value.as_u64().and_then(|number| u32::try_from(number).ok());
    number.ok_or_else(|| format!("Make \u{201c}{what}\u{201d} a whole number, 0 or more."))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn given(value: Value) -> Result<Given, String> {
        Given::to("piece", &["name", "count", "named", "flag"], value)
    }

    #[test]
    fn entries_are_read_as_what_they_are() {
        let mut all = given(json!({"name": "a", "count": 2, "named": {"b": 1}, "flag": true})).unwrap();
        assert_eq!(all.text("name"), Ok(Some("a".into())));
        assert_eq!(all.number("count"), Ok(Some(2)));
        assert_eq!(all.named("named").unwrap().len(), 1);
        assert_eq!(all.flag("flag"), Ok(true));
        assert_eq!(all.text("name"), Ok(None), "it was taken");
        assert_eq!(given(json!({"name": null})).unwrap().text("name"), Ok(None));
    }

    #[test]
    fn a_slip_is_told() {
        let refused = |value| given(value).map(|_| ()).unwrap_err();
        assert_eq!(
            refused(json!({"nmae": "a"})),
            "piece does not know \u{201c}nmae\u{201d}. It takes: name, count, named, flag."
        );
        assert_eq!(
            refused(json!([1])),
            "piece takes an object with: name, count, named, flag."
        );
        let mut odd = given(json!({"name": 1, "count": -1, "named": 3, "flag": "yes"})).unwrap();
        assert_eq!(
            odd.text("name"),
            Err("Make \u{201c}name\u{201d} a string.".into())
        );
        assert!(odd.number("count").is_err() && odd.named("named").is_err() && odd.flag("flag").is_err());
    }
}
