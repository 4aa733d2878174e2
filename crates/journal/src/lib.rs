//! The journal: what was done and seen, as events that are never rewritten.
//!
//! An [`Event`] has an id, a place in one order of all devices ([`Stamp`]), the time at which it
//! happened and a [`Content`]. It is written as one line of JSON; the line is kept and passed on
//! byte for byte, by programs too that do not understand it. Two journals are merged by taking the
//! lines of both. Nothing here reads a clock, draws at random or touches a disk: the applications
//! hand that in, and keep the lines in a [`store::Store`].
//!
//! The format is described in `docs/journal-format.md`.

// Units stand in square brackets in our docs; they are no links.
#![allow(rustdoc::broken_intra_doc_links)]
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod amount;
mod check;
mod event;
mod file;
mod id;
mod line;
mod moment;
#[cfg(feature = "schema")]
mod schema;
mod stamp;
mod text;

pub mod content;
pub mod store;

pub use amount::AmountSaid;
pub use check::{Problem, Wrong};
pub use content::Content;
pub use event::{
    Event, FORMAT_VERSION, LONGEST_LINE_BYTES, LineError, NoEvent, NotUnderstood, What, WriteError,
};
pub use file::{Fault, FileReader, Header, LARGEST_FILE_BYTES, MOST_FAULTS, Summary};
pub use id::{EventId, IdError};
pub use line::{Chain, Digest, Line, journal_digest};
pub use moment::{FIRST_YEAR, Moment, MomentError};
#[cfg(feature = "schema")]
pub use schema::line_schema;
pub use stamp::{Clock, DeviceId, LAST_WALL_MS, MOST_AHEAD_MS, Stamp, StampError};
