//! Why something cannot be written into the journal, or be taken in from a file.

use heapwright_journal::{
    FIRST_YEAR, Fault, LONGEST_LINE_BYTES, LineError, MomentError, NoEvent, Problem, WriteError,
    Wrong,
};
use heapwright_state::RecordError;
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals_of_entries as texts;

use super::{field_name, figure, figures};
use crate::page::sentence;

/// Something that cannot be recorded, as a sentence.
#[must_use]
pub fn record_refusal(error: &RecordError, locale: Locale) -> String {
    sentence(match error {
        RecordError::NoSuchHeap => texts::no_such_heap(locale),
        RecordError::NoSuchBed => texts::no_such_bed(locale),
        RecordError::NoSuchEntry => texts::no_such_entry(locale),
        RecordError::NotToBeCorrected => texts::not_to_be_corrected(locale),
        RecordError::InTheFuture => texts::in_the_future(locale),
        RecordError::Write(error) => return write_refusal(error, locale),
    })
}

/// An event that cannot be as it is, as a sentence.
#[must_use]
pub fn write_refusal(error: &WriteError, locale: Locale) -> String {
    sentence(match error {
        WriteError::Impossible(problem) => return problem_refusal(problem, locale),
        WriteError::TooLong => texts::too_long_for_one_entry(locale),
        WriteError::NotUnderstood => texts::not_understood(locale),
    })
}

/// A field of an event that cannot be as it is, as a sentence.
#[must_use]
pub fn problem_refusal(problem: &Problem, locale: Locale) -> String {
    let field = &field_name(&problem.field, locale);
    let refusal = match &problem.what {
        Wrong::Outside { least, most } => figures::outside(problem, *least, *most, locale),
        Wrong::Above { most } => texts::Above {
            field,
            most: &figure(*most, locale),
        }
        .said(locale),
        Wrong::NotAbove0 => texts::NotAbove0 { field }.said(locale),
        Wrong::Count { least, most, count } => texts::CountOfList {
            count: number(*count),
            field,
            least: number(*least),
            most: number(*most),
        }
        .said(locale),
        Wrong::Empty => texts::MustNotBeEmpty { field }.said(locale),
        Wrong::TooLong { most, count } => texts::TooManyCharacters {
            count: number(*count),
            field,
            most: number(*most),
        }
        .said(locale),
        Wrong::ControlCharacters => texts::ControlCharacters { field }.said(locale),
        Wrong::NoTest => texts::NoTest { field }.said(locale),
        Wrong::NothingRead => texts::NothingRead { field }.said(locale),
        Wrong::NoMeasurement => texts::NoMeasurement { field }.said(locale),
        Wrong::MaterialOrCustom => texts::MaterialOrCustom { field }.said(locale),
        Wrong::SameHeap => texts::SameHeap { field }.said(locale),
        Wrong::NotAnId => texts::NotAnId { field }.said(locale),
        Wrong::NotInOrder => texts::NotInOrder { field }.said(locale),
        Wrong::NotADigest => texts::NotADigest { field }.said(locale),
        Wrong::NotAPicture => texts::NotAPicture { field }.said(locale),
        Wrong::CannotBeApplied { why } => {
            texts::CannotBeApplied { detail: why, field }.said(locale)
        }
    };
    sentence(&refusal)
}

/// A text that is no moment, as a sentence.
#[must_use]
pub fn moment_refusal(_: &MomentError, locale: Locale) -> String {
    sentence(texts::not_a_moment(locale))
}

/// A day of a year that journals do not tell of, as a sentence: it lies too long ago or too far ahead.
#[must_use]
pub fn year_refusal(year: i32, locale: Locale) -> String {
    let first = &FIRST_YEAR.to_string();
    sentence(&if year <= i32::from(FIRST_YEAR) {
        texts::BeforeJournals { year: first }.said(locale)
    } else {
        texts::in_the_future(locale).to_owned()
    })
}

/// A line of a file that cannot be used, as a sentence.
#[must_use]
pub fn fault_refusal(fault: &Fault, locale: Locale) -> String {
    #[allow(clippy::cast_precision_loss)] // lines of a file
    let line = fault.line as f64;
    let refusal = match &fault.what {
        LineError::TooLong { bytes } => texts::LineTooLong {
            bytes: number(*bytes),
            line,
            most: number(LONGEST_LINE_BYTES),
        }
        .said(locale),
        LineError::NotText => texts::LineNotText { line }.said(locale),
        LineError::NewerFile => texts::LineOfNewerFile { line }.said(locale),
        LineError::NotAnEvent(why) => match why {
            NoEvent::NoBraces => texts::LineWithoutBraces { line }.said(locale),
            NoEvent::NoKind => texts::LineWithoutKind { line }.said(locale),
            NoEvent::CutOff => texts::LineCutOff { line }.said(locale),
            NoEvent::NoJson { sign, detail } => texts::LineNoJson {
                detail,
                line,
                sign: number(*sign),
            }
            .said(locale),
            NoEvent::NoField { detail } => texts::LineWithoutField { detail, line }.said(locale),
        },
    };
    sentence(&refusal)
}

#[allow(clippy::cast_precision_loss)] // characters and entries
fn number(count: usize) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use heapwright_journal::FileReader;

    use super::*;
    use crate::refusals::tests::{german, languages};

    fn wrongs() -> Vec<Wrong> {
        vec![
            Wrong::Above {
                most: 45_359.237_123,
            },
            Wrong::NotAbove0,
            Wrong::Count {
                least: 1,
                most: 200,
                count: 0,
            },
            Wrong::Empty,
            Wrong::TooLong {
                most: 4000,
                count: 5123,
            },
            Wrong::ControlCharacters,
            Wrong::NoTest,
            Wrong::NothingRead,
            Wrong::NoMeasurement,
            Wrong::MaterialOrCustom,
            Wrong::SameHeap,
            Wrong::NotAnId,
            Wrong::NotInOrder,
            Wrong::NotADigest,
            Wrong::NotAPicture,
            Wrong::CannotBeApplied {
                why: "warum".to_owned(),
            },
        ]
    }

    #[test]
    fn an_entry_is_refused_as_its_error_says_and_in_words() {
        let others = [
            RecordError::NoSuchHeap,
            RecordError::NoSuchBed,
            RecordError::NoSuchEntry,
            RecordError::NotToBeCorrected,
            RecordError::InTheFuture,
            RecordError::Write(WriteError::TooLong),
            RecordError::Write(WriteError::NotUnderstood),
        ];
        let problems = wrongs().into_iter().map(|what| {
            let field = "probes[0].temperature_c".to_owned();
            RecordError::Write(WriteError::Impossible(Problem { field, what }))
        });
        for error in others.into_iter().chain(problems) {
            let german = german(&error, record_refusal);
            assert!(!german.contains('_'), "{german}");
        }
        german(&MomentError, moment_refusal);
    }

    #[test]
    fn a_year_without_journals_is_long_ago_or_to_come() {
        let said = languages().map(|locale| [1850, 2300].map(|year| year_refusal(year, locale)));
        let told = [
            [
                "This lies before 1900: enter a day from 1900 on.",
                "This lies in the future: give a time that is past.",
            ],
            [
                "Das liegt vor 1900: Gib einen Tag ab 1900 an.",
                "Das liegt in der Zukunft: Gib eine Zeit an, die vergangen ist.",
            ],
        ];
        assert_eq!(said, told);
    }

    #[test]
    fn a_line_is_refused_as_its_fault_says() {
        for what in [
            LineError::TooLong { bytes: 70_000 },
            LineError::NotText,
            LineError::NewerFile,
            LineError::NotAnEvent(NoEvent::NoBraces),
            LineError::NotAnEvent(NoEvent::NoKind),
            LineError::NotAnEvent(NoEvent::CutOff),
        ] {
            german(&Fault { line: 1234, what }, fault_refusal);
        }
    }

    /// Words that stand between quotation marks are those of somebody else.
    fn without_quotations(said: &str) -> String {
        said.split('“')
            .map(|piece| piece.rsplit('”').next().unwrap_or_default())
            .collect()
    }

    #[test]
    fn what_a_reader_of_json_says_stands_in_quotation_marks() {
        let mut reader = FileReader::default();
        for line in [
            "{}",
            "compost",
            r#"{"v":1} 2"#,
            r#"{"v":-1,"id":"none"}"#,
            "[1]",
            r#"{"v":"#,
        ] {
            assert!(reader.read(line.as_bytes()).is_none(), "{line}");
        }
        let faults = reader.finish().faults;
        assert_eq!(faults.len(), 6);
        for fault in faults {
            let said = without_quotations(&german(&fault, fault_refusal));
            for english in [
                "missing", "field", "expected", "value", "trailing", "EOF", "at",
            ] {
                let mut words = said.split(|sign: char| !sign.is_alphanumeric());
                assert!(!words.any(|word| word == english), "{said}");
            }
        }
    }
}
