//! The places of the app, one folder each.

pub mod balance;
