//! What goes on inside a heap, hour by hour and place by place?
//!
//! A heap is cut into layers (bottom to top) by rings (core to wall). Every cell holds
//! pools of organic matter, microbes, nitrogen, water, heat and volume; heat, vapour, air
//! and ammonia pass between cells and through the faces; what oxygen is left decides how
//! fast life goes. [`simulate`] takes a [`Case`] and [`Parameters`] and gives a [`Run`].
//!
//! The reading order: [`pools`] (what is burnt), [`responses`] and [`air`] (laws),
//! `cell` and `biology` (one cell), `links` and `gas` (between cells), `derivative` (all
//! slopes), `pile` (events), `run` (time).
//!
//! A simulation says what is likely. It knows the feed only by its kind, one place only
//! by its cell, and never tells whether compost is fit to handle: that takes measured
//! temperatures and the record of turns.

pub mod acidity;
pub mod air;
mod biology;
mod case;
mod cell;
mod charge;
mod derivative;
mod enclosure;
mod ensemble;
mod feedstock;
mod gas;
mod geometry;
mod layout;
mod links;
mod parameters;
mod phase;
mod pile;
pub mod pools;
pub mod responses;
mod run;
mod snapshot;
mod summary;
mod thermal;
mod tracers;
mod weather;

pub use case::{Action, Case, Event, Model, Options, SimulationError};
pub use charge::Charge;
pub use enclosure::{Cover, Enclosure, Face, Ground, Shape, Wall};
pub use ensemble::{Band, Bands, bands};
pub use feedstock::{FeedClass, Overrides, PoolShares};
pub use parameters::Parameters;
pub use pile::Sums;
pub use run::{Held, Run, RunCost, hold, simulate};
pub use snapshot::{CellField, Snapshot};
pub use summary::{Closure, Summary};
pub use tracers::GERM_NAMES;
pub use weather::{Weather, WeatherHour};
