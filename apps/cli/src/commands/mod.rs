//! One file a command.

pub mod balance;
pub mod completions;
pub mod manual;
pub mod materials;
pub mod mix;
pub mod schema;
pub mod serve;
