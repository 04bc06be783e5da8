//! What leaves the page: the job card, tables, links.

mod card;

pub use card::{CardPart, CardStep, JobCard, LEAD, job_card};
