//! Pure computing on the trade's terms. No input or output, no clock, no
//! globals; chance only from an explicit seed. Builds natively and for wasm32.
//!
//! Modules stand in the order in which they may use each other, from top to
//! bottom: a module uses only those above it.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod mixture;

pub mod balance;

pub mod heap;

pub mod finish;
pub mod hygiene;
pub mod spreading;
