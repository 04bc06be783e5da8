//! The screens and tabs, and the brightness.

/// A screen of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Screen {
    /// One piece with its drawing.
    #[default]
    Board,
    /// All pieces and their shopping list.
    Together,
    /// Settings, files and the safety of the data.
    Settings,
    /// Local prices of pieces.
    Prices,
    /// The schedule.
    Days,
    /// Mixing.
    Mixing,
    /// The cans in the workshop.
    Shelf,
}

/// A tab under the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tab {
    /// Tape readings.
    #[default]
    Measure,
    /// Parts and the maker's changes to them.
    Parts,
    /// Which surfaces get the finish.
    Surfaces,
    /// Materials, coats and tools.
    Finish,
    /// Preparation and the log.
    Prepare,
    /// A comparison of brush, roller and sprayer.
    Tools,
    /// Costs and prices.
    Money,
    /// The job card and exports.
    Card,
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
