//! The properties of a tool.

use crate::material::FilmClass;
use crate::sourced_range::SourcedRange;
use crate::unit::{Litres, Metres, Minutes, MinutesPerMetre, MinutesPerSquareMetre};

/// A place in a tool where paint stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Retention {
    /// Where it stays.
    pub place: &'static str,
    /// How much stays there per color, liters.
    pub litres: SourcedRange<Litres>,
}

/// The type of the tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ToolKind {
    /// Bristles.
    Brush,
    /// A sleeve that is loaded from a tray.
    Roller,
    /// It breaks the coating into drops.
    Sprayer,
    /// A cloth or a pad in the hand.
    Pad,
}

/// A tool for putting a coating on.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// Its key in saved files.
    pub key: &'static str,
    /// Its name in the trade.
    pub name: &'static str,
    /// Its type.
    pub kind: ToolKind,
    /// The wet film of one coat, meters, of each body that it can put on.
    pub films: &'static [(FilmClass, SourcedRange<Metres>)],
    /// The share of what leaves the tool that stays on a broad surface (transfer efficiency).
    pub transfer: SourcedRange,
    /// The share of that which is left on narrow parts: legs, stretchers, rails. 1 where no more is lost.
    pub narrow_transfer: SourcedRange,
    /// What it keeps per color and wash.
    pub keeps: &'static [Retention],
    /// Minutes for a coat on a square meter of broad surface.
    pub minutes_per_square_metre: SourcedRange<MinutesPerSquareMetre>,
    /// Minutes for a coat along a meter of edge: cutting in, arrises, inner corners.
    pub minutes_per_metre_of_edge: SourcedRange<MinutesPerMetre>,
    /// How many times as long a square meter of narrow parts takes.
    pub narrow_minutes: SourcedRange,
    /// Minutes to make ready and to clean, per color.
    pub minutes_to_clean: SourcedRange<Minutes>,
    /// What its coat looks like.
    pub texture: &'static str,
    /// What can go wrong with it.
    pub risk: &'static str,
}

impl Tool {
    /// The wet film of one coat of a material that lies like this, meters; `None` where it cannot put it on.
    ///
    /// # Example
    /// ```
    /// use coatings::{FilmClass, tool};
    /// let airless = tool("airless").unwrap();
    /// assert!(airless.film(FilmClass::Paint).is_some());
    /// assert_eq!(airless.film(FilmClass::Paste), None);
    /// ```
    pub fn film(&self, body: FilmClass) -> Option<SourcedRange<Metres>> {
        self.films
            .iter()
            .find(|(of, _)| *of == body)
            .map(|(_, film)| *film)
    }
}

/// A wet film between two limits in micrometers.
pub(super) const fn micrometres(low: f64, high: f64) -> SourcedRange<Metres> {
    SourcedRange::practice(low * 1e-6, high * 1e-6)
}

/// All of it: nothing more is lost.
pub(super) const ALL_OF_IT: SourcedRange = SourcedRange::practice(1.0, 1.0);

/// The transfer efficiency of brush, roller and pad: what is lost are drips.
pub(super) const BY_HAND: SourcedRange = SourcedRange::practice(0.95, 1.0);
