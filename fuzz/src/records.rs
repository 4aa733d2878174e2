//! Feeds tables of times and temperatures to the reader of records, and the rows to the rules.

use heapwright_answers::heat::{Point, Record, RecordOptions, Turn};
use heapwright_answers::{HygieneQuestion, hygiene_of_record};
use heapwright_spreadsheet::read_record;

use crate::targets::{Outcome, check_message, length_class};

/// Reads a record and judges it. The first byte chooses how often it was turned.
///
/// # Panics
///
/// When a message is no single line, a figure is not finite or lies outside what can be, an interval
/// does not enclose its value, or a second reading differs.
pub fn record_csv(input: &[u8]) -> Outcome {
    let (&first, file) = input.split_first().unwrap_or((&b'0', &[]));
    let (outcome, answer) = judged(first, file);
    assert_eq!(outcome, judged(first, file).0, "two readings differ");
    let Some(answer) = answer else {
        return outcome;
    };
    let findings = &answer.findings;
    assert!(findings.first_ms <= findings.last_ms);
    let [low, value, high] = findings.dose;
    assert!(
        low <= value && value <= high && high.is_finite(),
        "{:?}",
        findings.dose
    );
    for hours in &findings.hours {
        assert!(hours.is_sorted_by(|one, other| one >= other), "{hours:?}");
        assert!(hours.iter().all(|hours| hours.is_finite() && *hours >= 0.0));
    }
    for rule in &answer.rules {
        for outcome in rule.outcome {
            assert!(
                (0.0..=1.0).contains(&outcome.progress),
                "{}: {outcome:?}",
                rule.words.id
            );
            assert_eq!(
                outcome.is_met(),
                outcome.progress == 1.0,
                "{}: {outcome:?}",
                rule.words.id
            );
        }
    }
    let share = answer.treated.share;
    assert!(0.0 <= share.low && share.low <= share.value && share.value <= share.high);
    assert!(share.high <= 1.0);
    outcome
}

fn judged(first: u8, file: &[u8]) -> (Outcome, Option<heapwright_answers::HygieneAnswer>) {
    // Some days from 1 May 2026 on.
    let turns = (0..i64::from(first % 8)).map(|turn| Turn {
        time_ms: 1_777_593_600_000 + turn * 100_000_000,
        mixing: 0.0,
    });
    let mut record = Record::new(turns.collect(), RecordOptions::default());
    let read = read_record(file, &mut |row| {
        record
            .take(Point {
                time_ms: row.moment.instant_ms,
                temperature_c: row.temperature_c,
                depth_m: row.depth_m,
            })
            .map_err(|error| error.to_string())
    });
    match read {
        Err(fault) => {
            check_message(&fault.to_string());
            let words = fault.what.split_whitespace().rev().take(4);
            (
                format!("refused {}", words.collect::<Vec<_>>().join(" ")),
                None,
            )
        }
        Ok(rows) => {
            let answer = hygiene_of_record(&record, &HygieneQuestion::default())
                .unwrap_or_else(|error| panic!("rows without an answer: {error}"));
            let met = answer.rules.iter().filter(|rule| rule.outcome[1].is_met());
            let rows = usize::try_from(rows).unwrap_or(usize::MAX);
            let kind = format!(
                "{} {} {} {}",
                length_class(rows),
                answer.others.len(),
                answer.findings.gaps > 0,
                met.count()
            );
            (kind, Some(answer))
        }
    }
}
