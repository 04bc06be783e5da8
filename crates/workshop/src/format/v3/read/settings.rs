//! Reading the settings of the workshop from records of format 3.

use std::rc::Rc;

use units::Inches;

use super::Reader;
use crate::document::{Confidence, Currency, OwnMaterial, Scheme};
use crate::format::Notice;
use crate::format::record::Readable;
use crate::format::v3::SchemeRecord;
use crate::format::words::Word;

impl Reader<'_> {
    pub(super) fn confidence(&mut self, record: Option<Readable<u64>>) -> Confidence {
        let read = |percent: u64| Confidence::of_percent(u32::try_from(percent).ok()?);
        self.setting("certainty setting", record, read)
            .unwrap_or(Confidence::Percent90)
    }

    pub(super) fn inches(&mut self, record: Option<Readable<String>>) -> Inches {
        self.setting(Inches::WHAT, record, |word| Inches::of(&word))
            .unwrap_or(Inches::Fractions)
    }

    pub(super) fn currency(&mut self, record: Option<Readable<String>>) -> Option<Currency> {
        self.setting("currency", record, |code| Currency::new(&code).ok())
    }

    pub(super) fn finish(
        &mut self,
        record: Option<Readable<SchemeRecord>>,
        own: &[Rc<OwnMaterial>],
    ) -> Option<Scheme> {
        let record = self.setting("default finish", record, Some)?;
        let workshop = std::mem::replace(&mut self.name, "Default finish".into());
        let scheme = self.scheme(record, own);
        self.name = workshop;
        Some(scheme)
    }

    /// Reads a setting. If it is invalid, returns `None` and adds a notice.
    fn setting<R, T>(
        &mut self,
        what: &'static str,
        record: Option<Readable<R>>,
        read: impl FnOnce(R) -> Option<T>,
    ) -> Option<T> {
        let Readable(record) = record?;
        let setting = record.and_then(read);
        if setting.is_none() {
            self.notices.push(Notice::SettingLeftOut { what });
        }
        setting
    }
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use crate::document::{Confidence, Currency, Settings};
    use crate::format::{Loaded, load, save};
    use units::{Inches, System};

    fn file(settings: Value) -> String {
        let mut file = json!({"kind": crate::format::KIND, "version": 3, "pieces": [], "later": 1});
        for (entry, value) in settings.as_object().unwrap() {
            file[entry] = value.clone();
        }
        file.to_string()
    }

    fn read(settings: Value) -> (Settings, Vec<String>) {
        let Loaded { workshop, notices } = load(&file(settings)).unwrap();
        assert_eq!(workshop.beyond["later"], json!(1));
        assert_eq!(load(&save(&workshop)).unwrap().workshop, workshop);
        let notices = notices.iter().map(ToString::to_string).collect();
        (workshop.settings, notices)
    }

    #[test]
    fn a_file_without_settings_has_those_that_always_stood_in_and_gets_them_written() {
        for version in [1, 2, 3] {
            let text = json!({"kind": crate::format::KIND, "version": version}).to_string();
            let Loaded { workshop, notices } = load(&text).unwrap();
            assert!(notices.is_empty(), "{notices:?}");
            // Written out, because defaults may change and the meaning of these files may not.
            let meant = Settings {
                confidence: Confidence::Percent90,
                inches: Inches::Fractions,
                currency: None,
                finish: None,
            };
            assert_eq!(
                (workshop.units, &workshop.settings),
                (System::UsCustomary, &meant)
            );
            let written: Value = serde_json::from_str(&save(&workshop)).unwrap();
            assert_eq!(
                (&written["confidence"], &written["inches"]),
                (&json!(90), &json!("fractions"))
            );
            for entry in ["currency", "finish"] {
                assert_eq!(written.get(entry), None, "{entry}");
            }
        }
    }

    #[test]
    fn settings_come_back() {
        let (settings, notices) = read(json!({
            "confidence": 95, "inches": "decimals", "currency": "CHF",
            "finish": {"colour": "#102030", "layers": [{"material": "clear-wax", "coats": 2}]},
        }));
        assert!(notices.is_empty(), "{notices:?}");
        assert_eq!(settings.confidence, Confidence::Percent95);
        assert_eq!(settings.inches, Inches::Decimals);
        assert_eq!(settings.currency, Currency::new("CHF").ok());
        let finish = settings.finish.unwrap();
        assert_eq!((finish.layers.len(), finish.layers[0].coats), (1, 2));
    }

    #[test]
    fn a_setting_that_makes_no_sense_is_said_and_costs_nothing_else() {
        let (settings, notices) = read(json!({
            "confidence": 97, "inches": ["decimals"], "currency": "EURO", "finish": 7,
        }));
        assert_eq!(settings, Settings::default());
        assert_eq!(
            notices,
            [
                "The workshop's certainty setting couldn't be read, so it was skipped.",
                "The workshop's inch style couldn't be read, so it was skipped.",
                "The workshop's currency couldn't be read, so it was skipped.",
                "The workshop's default finish couldn't be read, so it was skipped.",
            ]
        );
        let (settings, notices) = read(json!({
            "confidence": 0.95, "finish": {"ground": "swamp", "layers": [{"material": "glitter"}]},
        }));
        assert_eq!(settings.confidence, Confidence::Percent90);
        assert_eq!(settings.finish.unwrap().layers, []);
        assert_eq!(notices.len(), 3, "{notices:?}");
        assert!(
            notices[1].starts_with("Default finish: unknown surface"),
            "{notices:?}"
        );
    }
}
