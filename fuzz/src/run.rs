//! What came of a million inputs? One target, one seed: failures, new kinds of outcome, times.

use std::collections::BTreeSet;
use std::panic::{self, AssertUnwindSafe};
use std::time::{Duration, Instant};

use crate::mutator::Mutator;
use crate::targets::{Outcome, Target};

/// The longest that one input may take.
const LONGEST: Duration = Duration::from_secs(1);
/// Failures after which a run stops: more would tell the same.
const MOST_FAILURES: usize = 20;

/// How to run.
#[derive(Clone, Copy, Debug)]
pub struct Options {
    /// How many inputs.
    pub runs: u64,
    /// The seed of the mutator.
    pub seed: u64,
}

/// An input that broke a target.
#[derive(Clone, Debug, PartialEq)]
pub struct Failure {
    /// The input.
    pub input: Vec<u8>,
    /// The words of the panic, or the time taken.
    pub message: String,
}

/// What came of a run.
#[derive(Clone, Debug, Default)]
pub struct Report {
    /// Inputs fed.
    pub runs: u64,
    /// Inputs that broke the target.
    pub failures: Vec<Failure>,
    /// Inputs with an outcome that the corpus did not reach.
    pub discoveries: Vec<Vec<u8>>,
    /// Different outcomes, those of the corpus included.
    pub outcomes: usize,
    /// The longest time of one input.
    pub slowest: Duration,
}

/// Feeds one input.
///
/// # Errors
///
/// When the target panics or takes more than a second twice over.
pub fn replay(target: Target, input: &[u8]) -> Result<(Outcome, Duration), Failure> {
    watched(target.feed, input)
}

/// Feeds one kept input in full.
///
/// # Errors
///
/// As `replay`.
pub fn replay_kept(target: Target, input: &[u8]) -> Result<(Outcome, Duration), Failure> {
    watched(target.feed_kept, input)
}

fn watched(reader: fn(&[u8]) -> Outcome, input: &[u8]) -> Result<(Outcome, Duration), Failure> {
    let feed = || {
        let begin = Instant::now();
        let outcome = panic::catch_unwind(AssertUnwindSafe(|| reader(input)));
        (outcome, begin.elapsed())
    };
    let (outcome, mut took) = feed();
    if took > LONGEST {
        // The machine may have been busy elsewhere: only what is slow twice is slow.
        took = took.min(feed().1);
    }
    let failure = |message| Failure {
        input: input.to_vec(),
        message,
    };
    match outcome {
        Err(payload) => {
            let text = payload.downcast_ref::<String>().map(String::as_str);
            let text = text.or_else(|| payload.downcast_ref::<&str>().copied());
            Err(failure(text.unwrap_or("a panic without words").to_owned()))
        }
        Ok(_) if took > LONGEST => Err(failure(format!("took {took:?}"))),
        Ok(outcome) => Ok((outcome, took)),
    }
}

/// Feeds the corpus and then `runs` inputs made from it. An input with a new outcome joins the
/// corpus of this run, so that the next ones start from it.
#[must_use]
pub fn run(target: Target, mut corpus: Vec<Vec<u8>>, options: Options) -> Report {
    let mut report = Report::default();
    let mut outcomes = BTreeSet::new();
    for input in &corpus {
        note(&mut report, &mut outcomes, replay(target, input));
    }
    let mut mutator = Mutator::new(options.seed, target.dictionary, target.ordinary_bytes);
    while report.runs < options.runs && report.failures.len() < MOST_FAILURES {
        let input = mutator.next_input(&corpus, target.structured);
        report.runs += 1;
        if note(&mut report, &mut outcomes, replay(target, &input)) {
            report.discoveries.push(input.clone());
            corpus.push(input);
        }
    }
    report.outcomes = outcomes.len();
    report
}

/// Adds to the report; true when the outcome is new.
fn note(
    report: &mut Report,
    outcomes: &mut BTreeSet<Outcome>,
    result: Result<(Outcome, Duration), Failure>,
) -> bool {
    match result {
        Ok((outcome, took)) => {
            report.slowest = report.slowest.max(took);
            outcomes.insert(outcome)
        }
        Err(failure) => {
            report.failures.push(failure);
            false
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn brittle(input: &[u8]) -> Outcome {
        assert!(!input.windows(2).any(|pair| pair == b"!!"), "two signs");
        input.len().min(3).to_string()
    }

    const BRITTLE: Target = Target {
        name: "brittle",
        feed: brittle,
        feed_kept: brittle,
        dictionary: &["!", "word"],
        ordinary_bytes: 512,
        structured: false,
    };

    #[test]
    fn run_finds_a_planted_panic() {
        let options = Options {
            runs: 10_000,
            seed: 1,
        };
        let report = run(BRITTLE, vec![b"word".to_vec()], options);
        assert_eq!(report.failures.len(), MOST_FAILURES);
        let first = &report.failures[0];
        assert_eq!(first.message, "two signs");
        assert_eq!(replay(BRITTLE, &first.input).unwrap_err(), *first);
    }

    #[test]
    fn run_finds_a_planted_delay() {
        let slow = Target {
            feed: |_| {
                std::thread::sleep(Duration::from_millis(1100));
                String::new()
            },
            ..BRITTLE
        };
        let failure = replay(slow, b"").unwrap_err();
        assert!(
            failure.message.starts_with("took 1."),
            "{}",
            failure.message
        );
    }

    #[test]
    fn run_gives_the_same_for_the_same_seed() {
        let calm = Target {
            feed: |input| (input.len() % 7).to_string(),
            ..BRITTLE
        };
        let discoveries = |seed| {
            let options = Options { runs: 200, seed };
            run(calm, vec![b"ab".to_vec()], options).discoveries
        };
        assert_eq!(discoveries(3), discoveries(3));
        assert!(!discoveries(3).is_empty());
    }
}
