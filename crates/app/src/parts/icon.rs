//! Icons with or without words. Each was drawn for this project on a grid of 24 by 24.

use yew::prelude::*;

/// An icon. Its meaning is given in words next to it or in the label of its button.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Icon {
    /// A curved arrow back.
    Undo,
    /// A curved arrow forward.
    Redo,
    /// Add something.
    Add,
    /// Open a list.
    Down,
    /// The previous measurement.
    Back,
    /// The next measurement.
    On,
    /// A keyboard.
    Keyboard,
}

impl Icon {
    fn path(self) -> &'static str {
        match self {
            Icon::Undo => "M9 6 4 11l5 5M4 11h10a6 5 0 0 1 0 10h-3",
            Icon::Redo => "M15 6l5 5-5 5M20 11H10a6 5 0 0 0 0 10h3",
            Icon::Add => "M12 5v14M5 12h14",
            Icon::Down => "M5 9l7 7 7-7",
            Icon::Back => "M14 5l-7 7 7 7",
            Icon::On => "M10 5l7 7-7 7",
            Icon::Keyboard => "M3 6h18v12H3zM7 10h.01M12 10h.01M17 10h.01M8 14h8",
        }
    }
}

/// Draws an icon.
pub fn icon(icon: Icon) -> Html {
    html! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true"><path d={icon.path()} /></svg>
    }
}
