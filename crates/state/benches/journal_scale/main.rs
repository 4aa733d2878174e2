//! How long does it take to open a large journal, and to take in one more event?
//!
//! `cargo bench -p heapwright-state` prints the figures; with `-- --write` it also writes
//! `docs/measurements/journal.md` and `journal-scale.svg`. Exit code 1 when a gate is missed.
//! Reading the lines from a store is not in it: they lie in memory.

#![allow(clippy::print_stdout, clippy::unwrap_used)]

mod measure;
mod plot;
mod report;

use std::fs;
use std::path::Path;
use std::process::ExitCode;

/// Sizes of the gardens [events].
const SIZES: [usize; 5] = [1_000, 10_000, 100_000, 200_000, 1_000_000];

/// The garden into which one event more is taken [events].
const LARGE: usize = 200_000;

fn main() -> ExitCode {
    let options: Vec<String> = std::env::args().skip(1).collect();
    let write = options.iter().any(|option| option == "--write");
    let opened: Vec<measure::Opened> = SIZES.into_iter().map(measure::opened).collect();
    let taken = measure::taken(LARGE);
    let text = report::text(&opened, &taken);
    println!("{text}");
    if write {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/measurements");
        fs::write(folder.join("journal.md"), &text).unwrap();
        fs::write(folder.join("journal-scale.svg"), plot::svg(&opened)).unwrap();
    }
    if report::gates(&opened, &taken)
        .iter()
        .all(|gate| gate.passes)
    {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
