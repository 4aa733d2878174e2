//! Why a file is no weather: one plain sentence that says where and what to do.

use std::fmt;

use super::{MOST_BYTES, MOST_ROWS};

/// The longest piece of a file that a sentence repeats [characters].
const LONGEST_QUOTE: usize = 40;

/// Why a file could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ReadError {
    /// More bytes than [`MOST_BYTES`].
    TooLarge,
    /// More rows than [`MOST_ROWS`].
    TooManyRows,
    /// No bytes, or nothing but white space.
    Empty,
    /// Bytes that are no text, such as a workbook's.
    NotText,
    /// No row names a time and a temperature.
    NoHeader,
    /// A header without a row below it.
    NoRows,
    /// A quotation mark stands in a wrong place.
    Malformed {
        /// Line of the file, from 1.
        row: u64,
    },
    /// More cells than the header has.
    TooManyCells {
        /// Line of the file, from 1.
        row: u64,
    },
    /// A cell that is no number.
    Number {
        /// Line of the file, from 1.
        row: u64,
        /// Header of its column.
        column: String,
        /// What stands there.
        text: String,
    },
    /// A number that no weather has.
    Outside {
        /// Line of the file, from 1.
        row: u64,
        /// Header of its column.
        column: String,
        /// What stands there.
        text: String,
        /// What it may be at least and at most, with the unit.
        bounds: &'static str,
    },
    /// A cell that is no time.
    Time {
        /// Line of the file, from 1.
        row: u64,
        /// Header of its column.
        column: String,
        /// What stands there.
        text: String,
    },
    /// Dates that may be read in two ways.
    DayOrder {
        /// Line of the file, from 1.
        row: u64,
        /// What stands there.
        text: String,
    },
    /// A minimum above its maximum.
    MinimumAboveMaximum {
        /// Line of the file, from 1.
        row: u64,
    },
    /// Rows of several places.
    SeveralStations {
        /// Header of the column that names them.
        column: String,
        /// Two of them.
        names: [String; 2],
    },
    /// The place that was asked for is not in the file.
    NoStation {
        /// Which was asked for.
        name: String,
    },
    /// The rows lie too far apart to be one series.
    TooLong {
        /// Line of the earliest.
        first_row: u64,
        /// Line of the latest.
        last_row: u64,
    },
    /// No row has a temperature.
    NoTemperature {
        /// Header of its column.
        column: String,
    },
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge => write!(
                f,
                "the file is larger than {} MiB; keep fewer years or columns of it",
                MOST_BYTES / 1024 / 1024
            ),
            Self::TooManyRows => write!(f, "the file has more than {MOST_ROWS} rows; keep fewer years of it"),
            Self::Empty => f.write_str("the file is empty; choose one with a row for each hour or day"),
            Self::NotText => f.write_str("the file is no text; export the weather as CSV and choose that file"),
            Self::NoHeader => f.write_str(
                "no row names a time and a temperature; put a header such as \"time,temperature [degC]\" above the figures",
            ),
            Self::NoRows => f.write_str("the header has no row below it; choose a file with figures"),
            Self::Malformed { row } => write!(
                f,
                "row {row} cannot be taken apart; look there for a stray quotation mark"
            ),
            Self::TooManyCells { row } => write!(
                f,
                "row {row} has more cells than the header; put numbers with a decimal comma into quotation marks, or part cells by semicolons"
            ),
            Self::Number { row, column, text } => write!(
                f,
                "row {row}, column \"{column}\": \"{text}\" is no number; correct it, or leave the cell empty"
            ),
            Self::Outside { row, column, text, bounds } => write!(
                f,
                "row {row}, column \"{column}\": {text} is not within {bounds}; correct it, or name the unit in the header"
            ),
            Self::Time { row, column, text } => write!(
                f,
                "row {row}, column \"{column}\": \"{text}\" is no time of the years 1900 to 2199; write it like 2024-03-31 14:00"
            ),
            Self::DayOrder { row, text } => write!(
                f,
                "row {row}: \"{text}\" may begin with the day or the month; say which of them comes first"
            ),
            Self::MinimumAboveMaximum { row } => write!(
                f,
                "row {row}: the lowest temperature is above the highest; exchange or correct them"
            ),
            Self::SeveralStations { column, names: [one, other] } => write!(
                f,
                "column \"{column}\" names several places, such as \"{one}\" and \"{other}\"; say which to read"
            ),
            Self::NoStation { name } => write!(f, "no row is of \"{name}\"; choose a place that the file names"),
            Self::TooLong { first_row, last_row } => write!(
                f,
                "rows {first_row} and {last_row} lie more than 50 years apart; correct their dates or take one out"
            ),
            Self::NoTemperature { column } => write!(
                f,
                "column \"{column}\" has no temperature in any row; choose a file with temperatures"
            ),
        }
    }
}

impl std::error::Error for ReadError {}

/// The beginning of a text, on one line.
pub(super) fn quoted(text: &str) -> String {
    let mut short: String = text
        .chars()
        .map(|letter| if letter.is_control() { ' ' } else { letter })
        .take(LONGEST_QUOTE)
        .collect();
    if text.chars().count() > LONGEST_QUOTE {
        short.push('…');
    }
    short.trim().to_owned()
}
