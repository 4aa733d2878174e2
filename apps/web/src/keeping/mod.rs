//! Keeps the journal on this device, and hands it to the places.
//!
//! An entry counts when the store said that it is kept, never before. `device` is what the browser
//! lends; `browser` and `memory` are the stores; `keeper` records and takes back; `cleared` writes back what
//! the browser cleared; `transfer` brings files in and out.

mod browser;
mod cleared;
pub mod device;
mod fault;
mod keeper;
mod kept;
mod memory;
mod transfer;

pub use fault::KeepError;
pub use keeper::{Journal, Keeper, Status, amended};
pub use transfer::Looked;
