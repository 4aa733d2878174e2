//! The places of the app, one folder or file each.

pub mod balance;
pub mod heap;
pub mod heaps;
pub mod logbook;
pub mod settings;
mod transfer;
