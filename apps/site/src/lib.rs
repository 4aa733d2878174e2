//! Which bytes does a browser get, and under which rules?
//!
//! The page is a handful of files made by `cargo xtask bundle` and embedded in the program (a debug build reads them from
//! disk). This crate answers requests for them: [`page`] finds the file and the form in which to send it, [`headers`] says
//! what a browser may do with it, [`host`] turns away requests that were meant for somebody else, [`serve`] listens.
//!
//! There is no route that writes, and a keeper's notes never leave the browser. One route knows a garden, when the program has
//! a journal of its own: its reminders, for a calendar program on the same computer.

#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod headers;
pub mod host;
pub mod page;
mod places;
mod server;

pub use page::Page;
pub use server::{CALENDAR, Calendar, serve, serve_until};
