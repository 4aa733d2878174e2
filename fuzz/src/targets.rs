//! Which readers are fed, and what must hold of every answer?

use heapwright_quantity::{
    Amount, DecimalMark, Gallon, MeasureWords, Vocabulary, parse_amount, parse_parts,
};

use crate::dictionary::{
    JOURNAL_WORDS, LOGGER_WORDS, QUANTITY_WORDS, RECORD_WORDS, REQUEST_WORDS, SIMULATION_WORDS,
};
use crate::journals::{journal_file, journal_line};
use crate::loggers::logger_csv;
use crate::records::record_csv;
use crate::requests::{balance_request, balance_request_in_full, mix_request};
use crate::simulations::{simulation_request, simulation_request_in_full};

/// What came of an input: the kind of answer with a rough length. New ones are worth keeping.
pub type Outcome = String;

/// A reader under test.
#[derive(Clone, Copy, Debug)]
pub struct Target {
    /// Name on the command line and of its folders.
    pub name: &'static str,
    /// Feeds one input; panics where something is broken.
    pub feed: fn(&[u8]) -> Outcome,
    /// Feeds a kept input: as `feed`, without leaving anything out to save time.
    pub feed_kept: fn(&[u8]) -> Outcome,
    /// Words that lead deep into the reader.
    pub dictionary: &'static [&'static str],
    /// Most bytes of an ordinary input.
    pub ordinary_bytes: usize,
    /// True for JSON, which then also changes by whole values.
    pub structured: bool,
}

/// Every target.
pub const TARGETS: &[Target] = &[
    Target {
        name: "amount",
        feed: amount,
        feed_kept: amount,
        dictionary: QUANTITY_WORDS,
        ordinary_bytes: 512,
        structured: false,
    },
    Target {
        name: "parts",
        feed: parts,
        feed_kept: parts,
        dictionary: QUANTITY_WORDS,
        ordinary_bytes: 512,
        structured: false,
    },
    Target {
        name: "mix_request",
        feed: mix_request,
        feed_kept: mix_request,
        dictionary: REQUEST_WORDS,
        ordinary_bytes: 2048,
        structured: true,
    },
    Target {
        name: "balance_request",
        feed: balance_request,
        feed_kept: balance_request_in_full,
        dictionary: REQUEST_WORDS,
        ordinary_bytes: 2048,
        structured: true,
    },
    Target {
        name: "simulation_request",
        feed: simulation_request,
        feed_kept: simulation_request_in_full,
        dictionary: SIMULATION_WORDS,
        ordinary_bytes: 2048,
        structured: true,
    },
    Target {
        name: "journal_line",
        feed: journal_line,
        feed_kept: journal_line,
        dictionary: JOURNAL_WORDS,
        ordinary_bytes: 2048,
        structured: true,
    },
    Target {
        name: "journal_file",
        feed: journal_file,
        feed_kept: journal_file,
        dictionary: JOURNAL_WORDS,
        ordinary_bytes: 4096,
        structured: false,
    },
    Target {
        name: "logger_csv",
        feed: logger_csv,
        feed_kept: logger_csv,
        dictionary: LOGGER_WORDS,
        ordinary_bytes: 1024,
        structured: false,
    },
    Target {
        name: "record_csv",
        feed: record_csv,
        feed_kept: record_csv,
        dictionary: RECORD_WORDS,
        ordinary_bytes: 512,
        structured: false,
    },
];

/// The target of a name.
#[must_use]
pub fn target_named(name: &str) -> Option<Target> {
    TARGETS.iter().copied().find(|target| target.name == name)
}

/// Reads one amount. The first byte chooses the decimal mark and the gallon ('0' to '5').
///
/// # Panics
///
/// When an amount is not finite, not above 0, beyond its limit, or does not read back from its
/// own text; when a message is no single short line; when a second reading differs.
pub fn amount(input: &[u8]) -> Outcome {
    let (vocabulary, text) = spoken(input);
    let found = parse_amount(&text, &vocabulary);
    assert_eq!(
        found,
        parse_amount(&text, &vocabulary),
        "two readings differ"
    );
    let kind = match &found {
        Ok(amount) => {
            check_amount(amount);
            let written = amount.to_string();
            // Exact decimals of a tiny count are longer than the parser reads.
            if written.len() < 30 {
                let again = parse_amount(&written, &vocabulary);
                assert_eq!(again.as_ref(), Ok(amount), "{written} does not read back");
            }
            unit_kind(amount)
        }
        Err(error) => {
            check_message(&error.to_string());
            error.problem.name()
        }
    };
    format!("{kind} {}", length_class(text.len()))
}

/// Reads a list of parts. The first byte chooses the decimal mark and the gallon ('0' to '5').
///
/// # Panics
///
/// As `amount`, for every part; also when a part has no name or its text is not in the input.
pub fn parts(input: &[u8]) -> Outcome {
    let (vocabulary, text) = spoken(input);
    let found = parse_parts(&text, &vocabulary);
    assert_eq!(
        found,
        parse_parts(&text, &vocabulary),
        "two readings differ"
    );
    match &found {
        Ok(parts) => {
            assert!((1..=200).contains(&parts.len()), "{} parts", parts.len());
            for part in parts {
                check_amount(&part.amount);
                assert!(!part.name.trim().is_empty(), "a part without a name");
                assert!(text.contains(&part.text), "a part that was not typed");
            }
            let first = parts.first().map_or("none", |part| unit_kind(&part.amount));
            format!(
                "{first} x{} {}",
                length_class(parts.len()),
                length_class(text.len())
            )
        }
        Err(error) => {
            check_message(&error.to_string());
            assert!(error.index <= text.len(), "part {} of nothing", error.index);
            format!(
                "{} @{} {}",
                error.problem.name(),
                length_class(error.index),
                length_class(text.len())
            )
        }
    }
}

fn spoken(input: &[u8]) -> (Vocabulary, String) {
    let (&first, text) = input.split_first().unwrap_or((&b'0', &[]));
    let choice = first.wrapping_sub(b'0') % 6;
    let decimal = match choice % 3 {
        0 => DecimalMark::Unknown,
        1 => DecimalMark::Point,
        _ => DecimalMark::Comma,
    };
    let gallon = if choice < 3 {
        Gallon::Us
    } else {
        Gallon::Imperial
    };
    let measures = MeasureWords::new([
        ("handful", "handful"),
        ("mug", "mug"),
        ("caddy", "caddy"),
        ("caddies", "caddy"),
        ("bucket", "bucket"),
        ("wheel-barrow", "wheelbarrow"),
        ("wheelbarrow", "wheelbarrow"),
        ("sack", "sack"),
        ("blue tub", "blue tub"),
    ]);
    let vocabulary = Vocabulary {
        measures,
        gallon,
        decimal,
    };
    (vocabulary, String::from_utf8_lossy(text).into_owned())
}

fn check_amount(amount: &Amount) {
    let count = amount.count;
    assert!(count.is_finite() && count > 0.0, "count {count}");
    let mass_kg = amount.kilograms().unwrap_or(0.0);
    assert!(mass_kg <= Amount::MOST_KILOGRAMS, "{mass_kg} kg");
    let volume_m3 = amount.cubic_metres().unwrap_or(0.0);
    assert!(volume_m3 <= Amount::MOST_CUBIC_METRES, "{volume_m3} m3");
    if mass_kg == 0.0 && volume_m3 == 0.0 {
        assert!(count <= Amount::MOST_MEASURES, "{count} measures");
    }
}

pub(crate) fn check_message(message: &str) {
    let length = message.chars().count();
    assert!(
        (10..400).contains(&length),
        "a message of {length} characters"
    );
    let control = message.chars().any(char::is_control);
    assert!(!control, "a message with control signs: {message:?}");
    assert!(
        message.ends_with(['.', '?']),
        "a message without an end: {message}"
    );
}

fn unit_kind(amount: &Amount) -> &'static str {
    match (amount.kilograms(), amount.cubic_metres()) {
        (Some(_), _) => "mass",
        (_, Some(_)) => "volume",
        _ => "measure",
    }
}

/// 0, 1, 2, 4, 8 ...: the largest power of two that is not above the length.
pub(crate) fn length_class(length: usize) -> usize {
    length.checked_ilog2().map_or(0, |power| 1 << power)
}
