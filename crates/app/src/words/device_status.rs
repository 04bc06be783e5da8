//! The status of the page on this device, in words.

use workshop::Along;
use workshop::format::MAX_BYTES;

use crate::device_status::{DeviceStatus, Offline, Saved};
use crate::state::{Load, SaveStatus};

/// A day in milliseconds.
const DAY: f64 = 86_400_000.0;

/// Storage counts as nearly full above this share.
const NEARLY_FULL: f64 = 0.9;

/// Returns the saving status: a word for style sheets and tests, and a message.
pub fn saving(load: &Load, keeping: &SaveStatus) -> (&'static str, String) {
    match (load, keeping) {
        (Load::Partly(_), _) => ("held", "Changes are not saved yet".into()),
        (Load::Whole, SaveStatus::Opening) => ("opening", "Opening\u{2026}".into()),
        (Load::Whole, SaveStatus::Writing) => ("writing", "Saving\u{2026}".into()),
        (Load::Whole, SaveStatus::Saved) => ("kept", "Saved on this device".into()),
        (_, SaveStatus::Failed(reason)) => ("failed", format!("Not saved: {reason}. Save to a file now.")),
        _ => (
            "failed",
            "Changes are not saved. Save to a file before you close the page.".into(),
        ),
    }
}

/// Returns the offline status: a word for style sheets and tests, and a message.
pub fn offline(offline: Offline) -> (&'static str, &'static str) {
    match offline {
        Offline::NotYet => ("not-yet", "Needs a network to start"),
        Offline::Ready => ("ready", "Works without a network"),
        Offline::NewVersion => ("new-version", "A new version is ready"),
    }
}

/// Says how safe the work on this device is. `now` is in milliseconds since 1970.
pub fn safety(standing: &DeviceStatus, now: f64) -> String {
    let lasting = match standing.lasting {
        Some(true) => "The browser keeps this until you clear it.",
        Some(false) => "The browser may delete this if the device runs low on storage.",
        None => "",
    };
    let full = match standing.taken {
        Some(share) if share > NEARLY_FULL => " Storage is nearly full.",
        _ => "",
    };
    format!("{lasting}{full} {}", saved(standing.saved, now))
        .trim_start()
        .into()
}

fn saved(at: Option<f64>, now: f64) -> String {
    let Some(at) = at else {
        return "Not saved to a file yet.".into();
    };
    // If the clock was set back, the difference is negative, and the cast turns it into zero.
    let when = match ((now - at) / DAY) as u32 {
        0 => "less than a day".into(),
        1 => "a day".into(),
        days => format!("{days} days"),
    };
    format!("Last saved to a file {when} ago.")
}

/// Says how a file was saved.
pub fn file_saved(saved: &Saved) -> String {
    match saved {
        Saved::As(name) => format!("Saved as {name}."),
        Saved::Downloaded(name) => {
            format!("{name} was sent to your downloads. Check that it\u{2019}s there.")
        }
        Saved::No => "Not saved. No folder was chosen.".into(),
    }
}

/// Says that a workshop of this many bytes is too large for a file.
pub fn too_large(bytes: usize) -> String {
    let mb = |bytes: usize| bytes / 1_048_576;
    format!(
        "This workshop has {} MB. A file holds {} MB. Delete some photos, then save again.",
        mb(bytes),
        mb(MAX_BYTES)
    )
}

/// Says what happened to the settings of another workshop whose pieces were imported, if there is anything to
/// report.
pub fn gathered(along: &Along) -> Option<String> {
    let told = |what: &str, list: &[String], behind: &str| match list {
        [] => String::new(),
        list => format!("{what}: {}.{behind} ", list.join(", ")),
    };
    let words =
        told("Also added", &along.comes, "") + &told("Not added", &along.stays, " Your own settings stay.");
    Some(words.trim_end().to_owned()).filter(|words| !words.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_does_not_come_along_is_said_in_one_line() {
        let list = |words: &[&str]| words.iter().map(|word| (*word).to_owned()).collect();
        let along = |comes: &[&str], stays: &[&str]| Along {
            comes: list(comes),
            stays: list(stays),
        };
        assert_eq!(gathered(&along(&[], &[])), None);
        assert_eq!(
            gathered(&along(&["Hourly pay"], &["Currency", "Working hours"])).unwrap(),
            "Also added: Hourly pay. Not added: Currency, Working hours. Your own settings stay."
        );
    }

    #[test]
    fn only_what_was_read_and_written_is_called_saved() {
        let all = [
            SaveStatus::Opening,
            SaveStatus::Writing,
            SaveStatus::Saved,
            SaveStatus::Failed("full".into()),
        ];
        let partly = Load::Partly(Default::default());
        for load in [Load::Opening, Load::Slow, Load::Failed("x".into()), partly] {
            assert!(
                all.iter().all(|keeping| saving(&load, keeping).0 != "kept"),
                "{load:?}"
            );
        }
        let states = all.map(|keeping| saving(&Load::Whole, &keeping).0);
        assert_eq!(states, ["opening", "writing", "kept", "failed"]);
    }

    #[test]
    fn what_is_not_known_is_not_said() {
        assert_eq!(safety(&DeviceStatus::default(), 0.0), "Not saved to a file yet.");
    }

    #[test]
    fn the_promise_the_room_and_the_file_are_said() {
        let standing = |lasting, taken, saved| DeviceStatus {
            lasting: Some(lasting),
            taken: Some(taken),
            saved: Some(saved),
            ..DeviceStatus::default()
        };
        assert_eq!(
            safety(&standing(true, 0.1, 0.0), 2.5 * DAY),
            "The browser keeps this until you clear it. Last saved to a file 2 days ago."
        );
        assert_eq!(
            safety(&standing(false, 0.95, 0.0), DAY),
            "The browser may delete this if the device runs low on storage. Storage is nearly full. Last saved to a \
             file a day ago."
        );
        assert!(safety(&standing(true, 0.1, DAY), 0.0).ends_with("less than a day ago."));
    }
}
