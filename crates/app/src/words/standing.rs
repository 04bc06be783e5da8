//! How the page stands on this device, in words.

use crate::standing::{Offline, Saved, Standing};

/// A day in milliseconds.
const DAY: f64 = 86_400_000.0;

/// Above this share of the room the storage counts as nearly full.
const NEARLY_FULL: f64 = 0.9;

/// The word that names a state for style sheets and tests, and what to say of it.
pub fn offline(offline: Offline) -> (&'static str, &'static str) {
    match offline {
        Offline::NotYet => ("not-yet", "Needs a network to start"),
        Offline::Ready => ("ready", "Works without a network"),
        Offline::NewVersion => ("new-version", "A new version is ready"),
    }
}

/// How safe the work on this device is; `now` in milliseconds since 1970.
pub fn safety(standing: &Standing, now: f64) -> String {
    let lasting = match standing.lasting {
        Some(true) => "The browser keeps this until you clear it.",
        Some(false) => "The browser may clear this when the device runs short of room.",
        None => "",
    };
    let full = match standing.taken {
        Some(share) if share > NEARLY_FULL => " Its room is nearly full.",
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
    // A clock that was put back must not make it days in the future; the cast takes those as none.
    let when = match ((now - at) / DAY) as u32 {
        0 => "less than a day".into(),
        1 => "a day".into(),
        days => format!("{days} days"),
    };
    format!("Last saved to a file {when} ago.")
}

/// What became of a file.
pub fn file_saved(saved: &Saved) -> String {
    match saved {
        Saved::As(name) => format!("Saved as {name}."),
        Saved::Downloaded(name) => {
            format!("{name} went to the downloads of the browser. Look there that it arrived.")
        }
        Saved::No => "Not saved: no place was chosen for the file.".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_known_is_not_said() {
        assert_eq!(safety(&Standing::default(), 0.0), "Not saved to a file yet.");
    }

    #[test]
    fn the_promise_the_room_and_the_file_are_said() {
        let standing = |lasting, taken, saved| Standing {
            lasting: Some(lasting),
            taken: Some(taken),
            saved: Some(saved),
            ..Standing::default()
        };
        assert_eq!(
            safety(&standing(true, 0.1, 0.0), 2.5 * DAY),
            "The browser keeps this until you clear it. Last saved to a file 2 days ago."
        );
        assert_eq!(
            safety(&standing(false, 0.95, 0.0), DAY),
            "The browser may clear this when the device runs short of room. Its room is nearly full. Last saved to a \
             file a day ago."
        );
        assert!(safety(&standing(true, 0.1, DAY), 0.0).ends_with("less than a day ago."));
    }
}
