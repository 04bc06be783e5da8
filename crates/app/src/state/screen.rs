//! Which screen is shown, and how.

/// Which room the page is in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Screen {
    /// One piece on the drawing board.
    #[default]
    Board,
    /// All pieces together, and what to buy for them.
    Together,
    /// Settings, files, and how safe the data is.
    Settings,
    /// What pieces go for nearby.
    Prices,
    /// When each step is due.
    Days,
    /// The mixing bench.
    Mixing,
    /// The cans in the workshop.
    Shelf,
}

/// Which sheet of questions lies under the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tab {
    /// The tape readings.
    #[default]
    Measure,
    /// The parts, and what the maker changed about them.
    Parts,
    /// Which surfaces get the finish.
    Surfaces,
    /// What goes on, how often, with what.
    Finish,
    /// What is done to it besides the coats, and how it went.
    Prepare,
    /// What brush, roller and sprayer would make of it.
    Tools,
    /// What it costs and must bring.
    Money,
    /// The job card, and all that leaves the page.
    Card,
}

/// How light the page is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Light {
    /// As the device has it.
    #[default]
    Device,
    /// Light.
    Light,
    /// Dark.
    Dark,
    /// Black on white with heavy lines, for bright sun and for eyes that ask for it.
    Contrast,
}
