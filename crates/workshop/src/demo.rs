//! The sample workshop for new users.

use crate::document::Workshop;
use crate::format;

const FILE: &str = include_str!("../../../www/invented-workshop.json");

/// Returns a small made-up workshop with a six-drawer dresser and a pair of nightstands.
pub fn invented_workshop() -> Workshop {
    // The file is part of the program. The test below fails if it does not load.
    format::load(FILE)
        .map(|loaded| loaded.workshop.told())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_invented_workshop_loads_whole_and_is_written_as_it_stands() {
        let loaded = format::load(FILE).unwrap();
        assert!(loaded.notices.is_empty(), "{:?}", loaded.notices);
        assert_eq!(format::save(&loaded.workshop), FILE);
        assert!(loaded.workshop.note.contains("invented"));
        for piece in &loaded.workshop.pieces {
            assert!(crate::samples::takeoff(piece).is_ok(), "{}", piece.name);
        }
    }
}
