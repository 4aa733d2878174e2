//! Feeds mutated text and requests to every reader of untrusted input, by a fixed seed.
//!
//! A target takes any bytes, calls a reader and checks what must hold of every answer; it panics
//! where that is broken. The same targets serve the program (`heapwright-fuzz TARGET RUNS SEED`),
//! the replay of kept inputs in `tests/` and libFuzzer in `fuzz_targets/`.

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod dictionary;
mod journals;
mod loggers;
mod mutator;
mod records;
mod requests;
mod run;
mod shelf;
mod simulations;
mod targets;
mod tree;

pub use dictionary::{
    JOURNAL_WORDS, LOGGER_WORDS, QUANTITY_WORDS, RECORD_WORDS, REQUEST_WORDS, SIMULATION_WORDS,
};
pub use journals::{journal_file, journal_line};
pub use loggers::logger_csv;
pub use mutator::Mutator;
pub use records::record_csv;
pub use requests::{balance_request, balance_request_in_full, mix_request};
pub use run::{Failure, Options, Report, replay, replay_kept, run};
pub use shelf::{Shelf, name_of};
pub use simulations::{simulation_request, simulation_request_in_full};
pub use targets::{Outcome, TARGETS, Target, amount, parts, target_named};
