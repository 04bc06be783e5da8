//! Icons with or without words. Each was drawn for this project on a grid of 24 by 24.

use yew::prelude::*;

/// An icon. Its meaning is given in words next to it or in the label of its button.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Icon {
    /// A curved arrow back.
    Undo,
    /// A curved arrow forward.
    Redo,
    /// A can with a list.
    Shopping,
    /// A calendar page.
    Days,
    /// Two sliders.
    Settings,
    /// Turn left.
    TurnLeft,
    /// Turn right.
    TurnRight,
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
            Icon::Shopping => "M4 8h9v12H4zM3.5 8h10M6 8V6h5v2M16 9h5M16 14h5M16 19h5",
            Icon::Days => "M4 6h16v14H4zM4 10h16M8 3v4M16 3v4M8 14h3M13 14h3M8 17h3",
            Icon::Settings => "M3 7h18M3 17h18M8 4v6M16 14v6",
            Icon::TurnLeft => "M4 12c0-3 4-5 8-5s8 2 8 5-4 5-8 5H6M9 14l-3 3 3 3",
            Icon::TurnRight => "M20 12c0-3-4-5-8-5s-8 2-8 5 4 5 8 5h6M15 14l3 3-3 3",
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
