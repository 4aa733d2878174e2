//! The places of the app, one folder or file each.

pub mod balance;
pub mod beds;
pub mod heap;
pub mod heaps;
pub mod kept_out;
pub mod known;
pub mod lines;
pub mod logbook;
pub mod paper;
pub mod settings;
pub mod stores;
pub mod telling;
pub mod today;
mod transfer;
