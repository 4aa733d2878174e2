//! Why can a file not be read at all? One sentence each, with what to do.

use std::fmt;

use super::fault::Fault;
use super::{Column, LARGEST_FILE_BYTES, MOST_COLUMNS, MOST_ROWS};

/// Why a file cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub enum LoggerError {
    /// It is too large.
    TooLarge,
    /// It is a workbook of a spreadsheet program.
    Workbook,
    /// It is not text.
    NotText,
    /// It is empty.
    Empty,
    /// It has too many rows.
    TooManyRows,
    /// It has too many columns.
    TooManyColumns {
        /// How many there are.
        columns: usize,
    },
    /// No line names a column of times and one of temperatures.
    NoColumns {
        /// The cells of the line that looks most like a header.
        found: Vec<String>,
    },
    /// A column that was named is not there.
    NoSuchColumn {
        /// What was named.
        wanted: Column,
        /// The cells of the line that looks most like a header.
        found: Vec<String>,
    },
    /// Several columns may hold the times.
    SeveralTimes {
        /// Their names.
        names: Vec<String>,
    },
    /// Several columns may hold the temperature.
    SeveralTemperatures {
        /// Their names.
        names: Vec<String>,
    },
    /// The header names both units.
    BothUnits {
        /// The name of the column.
        name: String,
    },
    /// Neither the header nor the numbers say the unit.
    UnitUnknown {
        /// The least number.
        least: f64,
        /// The greatest.
        most: f64,
    },
    /// Dates can be read in more than one order.
    OrderUnknown {
        /// The row of the first of them.
        row: u64,
        /// What it says.
        cell: String,
    },
    /// Some dates can be read in one order only, and others only in another.
    OrderMixed {
        /// The row of the first that contradicts those before it.
        row: u64,
        /// What it says.
        cell: String,
    },
    /// The file tells of several heaps.
    SeveralHeaps {
        /// Their names, or ids where names are alike.
        names: Vec<String>,
    },
    /// The file tells nothing of the heap that was named.
    NoSuchHeap {
        /// What was named.
        wanted: String,
        /// The names that the file has.
        names: Vec<String>,
    },
    /// No row could be read.
    NothingReadable {
        /// What is wrong with the first row.
        first: Option<Fault>,
    },
}

fn listed(names: &[String]) -> String {
    let mut list = names
        .iter()
        .take(6)
        .map(|name| format!("\"{name}\""))
        .collect::<Vec<_>>()
        .join(", ");
    if names.len() > 6 {
        list.push_str(" and others");
    }
    list
}

impl fmt::Display for LoggerError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge => write!(
                f,
                "The file is larger than {} MiB; split it.",
                LARGEST_FILE_BYTES >> 20
            ),
            Self::Workbook => f.write_str(
                "This is a workbook and no text; save it as CSV in the spreadsheet program.",
            ),
            Self::NotText => f.write_str("This is no text; save it as CSV in UTF-8."),
            Self::Empty => f.write_str("The file is empty; export it from the logger again."),
            Self::TooManyRows => {
                write!(f, "The file has more than {MOST_ROWS} rows; split it.")
            }
            Self::TooManyColumns { columns } => write!(
                f,
                "The file has {columns} columns and at most {MOST_COLUMNS} are read; take some out."
            ),
            Self::NoColumns { found } if found.is_empty() => f.write_str(
                "No line names columns of times and temperatures; say which columns they are.",
            ),
            Self::NoColumns { found } => write!(
                f,
                "No line names columns of times and temperatures; say which they are, by name or number: {}.",
                listed(found)
            ),
            Self::NoSuchColumn { wanted, found } => write!(
                f,
                "There is no column {wanted}; take one of these: {}.",
                listed(found)
            ),
            Self::SeveralTimes { names } => write!(
                f,
                "Several columns may hold the times; say which: {}.",
                listed(names)
            ),
            Self::SeveralTemperatures { names } => write!(
                f,
                "Several columns may hold the temperature; say which: {}.",
                listed(names)
            ),
            Self::BothUnits { name } => write!(
                f,
                "The column \"{name}\" names both units; say whether it holds degrees Celsius or Fahrenheit."
            ),
            Self::UnitUnknown { least, most } => write!(
                f,
                "Numbers from {least:.1} to {most:.1} may be degrees Celsius or Fahrenheit; say which."
            ),
            Self::OrderUnknown { row, cell } => write!(
                f,
                "The date in row {row}, \"{cell}\", can be read in more than one way; say whether day, month or year stands first."
            ),
            Self::OrderMixed { row, cell } => write!(
                f,
                "The date in row {row}, \"{cell}\", stands in another order than those before it; say whether day, month or year stands first."
            ),
            Self::SeveralHeaps { names } => write!(
                f,
                "The file tells of several heaps; say of which to take the readings: {}.",
                listed(names)
            ),
            Self::NoSuchHeap { wanted, names } => write!(
                f,
                "The file tells nothing of \"{wanted}\"; take one of these: {}.",
                listed(names)
            ),
            Self::NothingReadable { first: Some(fault) } => {
                write!(f, "No row could be read; the first fault is this. {fault}")
            }
            Self::NothingReadable { first: None } => {
                f.write_str("The file has no rows with a temperature; export it again.")
            }
        }
    }
}

impl std::error::Error for LoggerError {}
