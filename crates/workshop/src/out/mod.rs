//! Exports: the job card, tables for a spreadsheet, the takeoff for programs, and a piece as link text with
//! its QR code.

mod amounts;
mod base64url;
mod card;
mod csv;
mod earnings;
mod link;
mod qr;
mod report;
mod surfaces;

pub use amounts::amounts_csv;
pub use base64url::{from_base64url, to_base64url};
pub use card::{CardPart, CardStep, JobCard, job_card};
pub use earnings::earnings_csv;
pub use link::{LinkError, MAX_LINK_BYTES, link_text, read_link};
pub use qr::{QrPicture, qr};
pub use report::{Report, report, verdict_word};
pub use surfaces::surfaces_csv;
