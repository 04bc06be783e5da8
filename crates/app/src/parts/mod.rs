//! Small pieces of the screens that are used in more than one place. They are functions and not components: their
//! callbacks differ at every drawing of the page, so a component could never be left as it is.

mod button;
mod choice;
mod fold;
mod icon;
mod palette;
mod select;
mod stepper;

pub use button::{button, button_for, held, sign};
pub use choice::choice;
pub use fold::fold;
pub use icon::{Icon, icon};
pub use palette::palette;
pub use select::{option, select};
pub use stepper::stepper;
