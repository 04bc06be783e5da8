//! Small pieces of the screens that are used in more than one place.

mod choice;
mod stepper;

pub use choice::Choice;
pub use stepper::Stepper;
