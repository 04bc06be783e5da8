//! When each coat may go on and when each piece is ready, for one worker with several pieces.
//!
//! A [`Job`] is a list of [`Step`]s. Each step follows the previous one or the steps that it names, with the
//! least waits of the labels. [`schedule`] places the steps of all jobs within the [`Hours`] of the maker;
//! [`chart`] and [`calendar_file`] show the result. [`dew_check`] and [`air_cautions`] say whether the air
//! and the surface allow a coat; [`Job::in_air`] stops it or prolongs its waits.
//!
//! Time is civil time of one place, in whole minutes: no clock, no time zones, no change to summer time.
//!
//! Invariant: this crate knows nothing of furniture, documents or browsers.

mod air;
mod calendar;
mod chart;
mod climate;
mod dew;
mod events;
mod hours;
mod minutes;
mod moment;
mod outcome;
mod plan;
mod schedule;
mod stage;
mod step;
mod text_line;

pub use air::Air;
pub use calendar::{Event, calendar_file};
pub use chart::{Bar, BarKind, Chart, DayColumn, Row, chart};
pub use climate::{AirCaution, AirLimits, LabelAir, air_cautions, drying_percent, forbidden};
pub use dew::{Condensation, DewCheck, LEAST_MARGIN, dew_check, dew_point};
pub use events::events;
pub use hours::{Hours, Opening};
pub use minutes::MOST_MINUTES;
pub use moment::Moment;
pub use outcome::{Obstacle, Outcome};
pub use plan::{Timetable, Work};
pub use schedule::schedule;
pub use stage::Stage;
pub use step::{Cure, Job, Step};
