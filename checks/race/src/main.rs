//! How fast is the heap's integrator, how does it grow, and is a general stiff solver faster?
//!
//! `cargo run --release` in this folder prints all tables; a word after `--` picks one:
//! `growth`, `hourly`, `order` (and a file for its plot), `ensemble`, `memory` or `race`. The
//! equations are the engine's own files. Times are those that the program itself computed.

#[path = "../../../crates/engine/tests/heap_inside/mod.rs"]
mod heap_inside;

mod growth;
mod hourly;
mod order;
mod race;
mod stretch;

fn main() {
    let only = std::env::args().nth(1);
    let wanted = |name: &str| only.as_deref().is_none_or(|only| only == name);
    if wanted("growth") {
        growth::with_cells();
        growth::with_days();
    }
    if wanted("hourly") {
        hourly::all();
    }
    if wanted("order") {
        order::with_steps(std::env::args().nth(2).as_deref());
        order::with_tolerance();
    }
    if wanted("ensemble") {
        growth::of_an_ensemble();
    }
    if wanted("memory") {
        growth::of_memory();
    }
    if wanted("race") {
        race::all();
    }
}
