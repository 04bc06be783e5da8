//! Edits of zones and of what is painted.

use geometry::Zone;

use super::EditError;
use crate::document::{Piece, SurfaceChoice, ZoneChoice};

/// The maximum number of added zones on a piece.
pub(crate) const MAX_ZONES: usize = 20;
/// The maximum length of a zone key, in characters.
const MAX_KEY: usize = 40;

/// Returns true if an added zone may have this key.
pub(crate) fn may_be_key(key: &str) -> bool {
    let is_plain = key.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
    is_plain && !key.is_empty() && key.len() <= MAX_KEY
}

impl Piece {
    /// Changes the choice for a surface. A choice without content is deleted.
    pub(super) fn choose(&mut self, surface: String, change: impl FnOnce(&mut SurfaceChoice)) {
        let mut choice = self.choices.remove(&surface).unwrap_or_default();
        change(&mut choice);
        if choice != SurfaceChoice::default() {
            self.choices.insert(surface, choice);
        }
    }

    pub(super) fn choose_zone(
        &mut self,
        key: String,
        change: impl FnOnce(&mut ZoneChoice),
    ) -> Result<(), EditError> {
        let is_usual = Zone::by_key(&key).is_some();
        if !is_usual && !self.zones.contains_key(&key) {
            if !may_be_key(&key) {
                return Err(EditError::Unknown("group"));
            }
            let own = self.zones.keys().filter(|key| Zone::by_key(key).is_none());
            if own.count() >= MAX_ZONES {
                return Err(EditError::TooMany {
                    what: "groups",
                    most: MAX_ZONES,
                });
            }
        }
        let mut zone = self.zones.remove(&key).unwrap_or_default();
        change(&mut zone);
        if !is_usual || zone != ZoneChoice::default() {
            self.zones.insert(key, zone);
        }
        Ok(())
    }

    /// Deletes a zone. Its surfaces return to their default zones.
    pub(super) fn remove_zone(&mut self, key: &str) {
        self.zones.remove(key);
        for choice in self.choices.values_mut() {
            if choice.zone.as_deref() == Some(key) {
                choice.zone = None;
            }
        }
        self.choices
            .retain(|_, choice| *choice != SurfaceChoice::default());
    }
}
