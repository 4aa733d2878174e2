//! What would years of a garden's journal look like? Gardens that were made up, from a seed.
//!
//! Nobody worked in these gardens: people, places, heaps and readings are invented, and their
//! journals say so. They serve the demo, tests and measurements. The same [`Plan`] gives the same
//! events, to the last byte.
//!
//! Events come in the order in which they were recorded, on several devices whose clocks differ;
//! some were recorded days after they happened, some are corrected or taken back later.

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod beds;
mod chance;
mod doings;
mod garden;
mod heaps;
mod life;
mod notes;
mod people;
mod plan;
mod readings;
mod seasons;
mod set_up;
mod stores;
mod warmth;

pub use garden::{Journal, lines};
pub use plan::Plan;
pub use seasons::materials;
