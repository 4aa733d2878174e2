//! The garden's state: a pure fold of its journal.
//!
//! In: lines of a journal, in any order, any subset, any number of times. Out: what the garden, its
//! heaps, stores and beds are now, the history of each, and what is in conflict. The same set of
//! lines gives the same state, whether it came one by one or all at once.
//!
//! One journal is one garden. Histories are in the order in which things happened; corrections and
//! conflicts are decided by the order in which they were recorded.

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod arrival;
mod beds;
mod contents;
mod events;
mod garden;
mod heap;
mod recorder;
mod state;
mod stores;
mod timeline;

pub use arrival::Arrival;
pub use beds::{Bed, BedNow};
pub use contents::{Contents, Share};
pub use garden::GardenNow;
pub use heap::{Heap, HeapNow, Started};
pub use recorder::{Now, RecordError, Recorder};
pub use state::{Entry, State, concerns};
pub use stores::{Shelf, ShelfKey, Shelves, StoresNow};
pub use timeline::Place;
