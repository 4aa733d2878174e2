//! What is wrong with a row? One sentence each, with row and column.

use std::fmt;

use super::records::{LONGEST_FIELD_BYTES, MOST_COLUMNS};
use super::{COLDEST_C, HOTTEST_C};

/// A row that cannot be used.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The line of the file on which the row begins, counted from 1.
    pub row: u64,
    /// The column, counted from 1.
    pub column: usize,
    /// What is wrong.
    pub kind: FaultKind,
}

/// What is wrong with a row. Texts of cells are cut to a length that fits a sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum FaultKind {
    /// A quotation mark is not closed.
    QuoteOpen,
    /// Something stands behind a closing quotation mark.
    BehindQuote,
    /// A field is too long.
    TooLong,
    /// There are more fields than the header has.
    TooManyFields {
        /// How many there are.
        fields: usize,
        /// How many the header has.
        header: usize,
    },
    /// There are too few fields.
    TooFewFields {
        /// How many there are.
        fields: usize,
        /// How many the header has.
        header: usize,
    },
    /// The cell says no time.
    NotATime {
        /// What it says.
        cell: String,
    },
    /// The cell is a bare number.
    NumberForTime {
        /// What it says.
        cell: String,
    },
    /// There is a time of day without a date.
    NoDate {
        /// What the cell says.
        cell: String,
    },
    /// There is a date without a time of day.
    NoTimeOfDay {
        /// What the cell says.
        cell: String,
    },
    /// The date is not in the calendar, read as it must be read.
    NoSuchDay {
        /// What the cell says.
        cell: String,
    },
    /// The cell is no number.
    NotANumber {
        /// What it says.
        cell: String,
    },
    /// The temperature lies outside of what is near a heap.
    OutOfRange {
        /// What it would be [degC].
        temperature_c: f64,
    },
    /// The cell has another unit than the file.
    OtherUnit {
        /// What it says.
        cell: String,
    },
    /// The cell holds none of the words that its column knows.
    NotAWord {
        /// What it says.
        cell: String,
    },
    /// What the row says cannot be.
    CannotBe {
        /// Why.
        why: String,
    },
}

/// A cell as it stands in a sentence: short and on one line.
pub(super) fn shown(cell: &str) -> String {
    let mut shown: String = cell
        .trim()
        .chars()
        .take(40)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if cell.trim().chars().count() > 40 {
        shown.push('…');
    }
    shown
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "Row {}, column {}: {}.",
            self.row, self.column, self.kind
        )
    }
}

impl fmt::Display for FaultKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::QuoteOpen => write!(
                f,
                "a quotation mark is not closed within {LONGEST_FIELD_BYTES} bytes; close it"
            ),
            Self::BehindQuote => f.write_str(
                "something stands behind a closing quotation mark; write marks inside a text twice",
            ),
            Self::TooLong => write!(
                f,
                "the field is longer than {LONGEST_FIELD_BYTES} bytes; shorten it"
            ),
            Self::TooManyFields { fields, .. } if *fields > MOST_COLUMNS => write!(
                f,
                "there are {fields} fields and at most {MOST_COLUMNS} are read; take some out"
            ),
            Self::TooManyFields { fields, header } => write!(
                f,
                "there are {fields} fields and the header has {header}; put numbers with a comma in quotation marks, or part fields by semicolons"
            ),
            Self::TooFewFields { fields, header } => write!(
                f,
                "the row has too few fields, {fields} of {header}; fill in the rest or take the row out"
            ),
            Self::NotATime { cell } => {
                write!(f, "\"{cell}\" is no time; write it like 2026-05-01 18:00")
            }
            Self::NumberForTime { cell } => write!(
                f,
                "\"{cell}\" is a bare number and no time; write times like 2026-05-01 18:00"
            ),
            Self::NoDate { cell } => write!(
                f,
                "\"{cell}\" has no date; write it like 2026-05-01 18:00 or name the column of dates"
            ),
            Self::NoTimeOfDay { cell } => write!(
                f,
                "\"{cell}\" has no time of day; write it like 2026-05-01 18:00"
            ),
            Self::NoSuchDay { cell } => write!(
                f,
                "\"{cell}\" is not in the calendar of 1900 to 2199; mend it or say in which order day and month stand"
            ),
            Self::NotANumber { cell } => {
                write!(f, "\"{cell}\" is no number; write it like 55.5")
            }
            Self::OutOfRange { temperature_c } => write!(
                f,
                "{temperature_c:.1} °C is outside of {COLDEST_C} to {HOTTEST_C} °C; take the row out or check the unit"
            ),
            Self::OtherUnit { cell } => write!(
                f,
                "\"{cell}\" has another unit than the rest; write all in one unit"
            ),
            Self::NotAWord { cell } => write!(
                f,
                "\"{cell}\" is none of the words for this; take one of the exported ones"
            ),
            Self::CannotBe { why } => write!(f, "this cannot be, for {why}; mend it"),
        }
    }
}
