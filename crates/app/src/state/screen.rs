//! The stages of a job, the screens of the page, and the brightness.

/// A stage of the job, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Tape readings, and how the piece is built.
    Measure,
    /// The condition before work.
    Condition,
    /// Materials, coats and tools.
    Finish,
    /// The shopping list.
    Shop,
    /// The checklist of the work.
    Work,
    /// Everything else.
    More,
}

impl Stage {
    /// All stages in order.
    pub const ALL: [Stage; 6] = [
        Stage::Measure,
        Stage::Condition,
        Stage::Finish,
        Stage::Shop,
        Stage::Work,
        Stage::More,
    ];

    /// Returns the screen that a stage opens with.
    pub fn first(self) -> Screen {
        match self {
            Stage::Measure => Screen::Measure,
            Stage::Condition => Screen::Condition,
            Stage::Finish => Screen::Finish,
            Stage::Shop => Screen::Shop,
            Stage::Work => Screen::Work,
            Stage::More => Screen::More,
        }
    }
}

/// A screen of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Screen {
    /// Tape readings.
    #[default]
    Measure,
    /// Parts and the maker's changes to them.
    Parts,
    /// The condition before work.
    Condition,
    /// Materials, coats and tools.
    Finish,
    /// Which surfaces get which finish.
    Surfaces,
    /// A comparison of brush, roller and sprayer.
    Tools,
    /// The shopping list.
    Shop,
    /// The checklist of the work.
    Work,
    /// The job card.
    Card,
    /// The amounts in full, and whether the cans on hand are enough.
    Amounts,
    /// All pieces, and the kinds to add one.
    Pieces,
    /// Whether to buy the piece.
    Verdict,
    /// The list of the screens below.
    More,
    /// Costs and prices of the piece.
    Money,
    /// Local prices of pieces.
    Prices,
    /// Mixing.
    Mixing,
    /// The cans in the workshop.
    Shelf,
    /// The schedule of all pieces.
    Schedule,
    /// Files and the link of the piece.
    Export,
    /// Settings, files and the safety of the data.
    Settings,
}

impl Screen {
    /// Every screen with its key, which names elements and is stored on the device.
    pub const ALL: [(Screen, &'static str); 20] = [
        (Screen::Measure, "measure"),
        (Screen::Parts, "parts"),
        (Screen::Condition, "condition"),
        (Screen::Finish, "finish"),
        (Screen::Surfaces, "surfaces"),
        (Screen::Tools, "tools"),
        (Screen::Shop, "shop"),
        (Screen::Work, "work"),
        (Screen::Card, "card"),
        (Screen::Amounts, "amounts"),
        (Screen::Pieces, "pieces"),
        (Screen::Verdict, "verdict"),
        (Screen::More, "more"),
        (Screen::Money, "money"),
        (Screen::Prices, "prices"),
        (Screen::Mixing, "mixing"),
        (Screen::Shelf, "shelf"),
        (Screen::Schedule, "schedule"),
        (Screen::Export, "export"),
        (Screen::Settings, "settings"),
    ];

    /// Returns the key of a screen.
    pub fn key(self) -> &'static str {
        let found = Screen::ALL.iter().find(|(screen, _)| *screen == self);
        found.map_or("", |(_, key)| key)
    }

    /// Returns the screen with this key.
    pub fn by_key(key: &str) -> Option<Screen> {
        let found = Screen::ALL.iter().find(|(_, other)| *other == key);
        found.map(|(screen, _)| *screen)
    }

    /// Returns the stage that a screen belongs to, or `None` for one that is reached from every stage.
    pub fn stage(self) -> Option<Stage> {
        Some(match self {
            Screen::Measure | Screen::Parts => Stage::Measure,
            Screen::Condition => Stage::Condition,
            Screen::Finish | Screen::Surfaces | Screen::Tools => Stage::Finish,
            Screen::Shop => Stage::Shop,
            Screen::Work | Screen::Card => Stage::Work,
            Screen::More
            | Screen::Money
            | Screen::Prices
            | Screen::Mixing
            | Screen::Shelf
            | Screen::Schedule
            | Screen::Export
            | Screen::Settings => Stage::More,
            Screen::Amounts | Screen::Pieces | Screen::Verdict => return None,
        })
    }

    /// Returns true if a screen shows the open piece, so that it needs one.
    pub fn is_of_piece(self) -> bool {
        matches!(
            self,
            Screen::Measure
                | Screen::Parts
                | Screen::Condition
                | Screen::Finish
                | Screen::Surfaces
                | Screen::Tools
                | Screen::Work
                | Screen::Card
                | Screen::Amounts
                | Screen::Verdict
                | Screen::Money
                | Screen::Export
        )
    }
}

/// The brightness of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Light {
    /// Same as the device.
    #[default]
    Device,
    /// Light.
    Light,
    /// Dark.
    Dark,
    /// Black on white with heavy lines, for bright sun and low vision.
    Contrast,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_has_a_key_of_its_own() {
        for (screen, key) in Screen::ALL {
            assert_eq!((screen.key(), Screen::by_key(key)), (key, Some(screen)));
        }
        for stage in Stage::ALL {
            assert_eq!(stage.first().stage(), Some(stage));
        }
    }
}
