//! Small elements used on several screens. They are functions and not components. Their callbacks change with
//! every update, so components would be redrawn anyway.

mod button;
mod choice;
mod fold;
mod icon;
mod palette;
mod select;
mod stepper;

pub use button::{button, button_for, sign};
pub use choice::choice;
pub use fold::fold;
pub use icon::{Icon, icon};
pub use palette::palette;
pub use select::{option, select};
pub use stepper::stepper;
