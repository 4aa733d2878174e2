//! Kept inputs and former crashers through the targets, and a short run by a fixed seed.

#![allow(clippy::unwrap_used)]

use heapwright_fuzz::{Options, Shelf, TARGETS, name_of, replay_kept, run};

/// The corpus is committed: it must stay small.
const MOST_CORPUS_BYTES: usize = 1 << 20;

#[test]
fn u15_kept_inputs_are_answered() {
    let shelf = Shelf::of_package();
    let mut bytes = 0;
    for target in TARGETS {
        let corpus = shelf.inputs("corpus", target.name).unwrap();
        assert!(!corpus.is_empty(), "no corpus for {}", target.name);
        bytes += corpus.iter().map(Vec::len).sum::<usize>();
        let crashers = shelf.inputs("crashers", target.name).unwrap();
        for input in corpus.iter().chain(&crashers) {
            if let Err(failure) = replay_kept(*target, input) {
                panic!("{} {}: {}", target.name, name_of(input), failure.message);
            }
        }
    }
    assert!(bytes < MOST_CORPUS_BYTES, "{bytes} bytes of corpus");
}

#[test]
fn u15_a_short_run_breaks_nothing() {
    let shelf = Shelf::of_package();
    for target in TARGETS {
        let corpus = shelf.inputs("corpus", target.name).unwrap();
        let options = Options {
            runs: 3000,
            seed: 15,
        };
        let report = run(*target, corpus, options);
        assert_eq!(report.runs, options.runs, "{}", target.name);
        assert_eq!(report.failures, [], "{}", target.name);
    }
}
