//! The CSV file of a thermometer's logger: which rows does it hold, and how was it understood?

mod dates;
mod error;
mod fault;
mod header;
mod numbers;
mod own;
mod records;
mod roles;
mod rows;
mod understood;

use std::borrow::Cow;
use std::fmt;
use std::str::FromStr;

use heapwright_journal::Moment;

pub use dates::DateOrder;
pub use error::LoggerError;
pub use fault::{Fault, FaultKind};
pub use numbers::TemperatureUnit;
pub use own::Besides;
pub use records::{LONGEST_FIELD_BYTES, MOST_COLUMNS};
pub use understood::{FoundColumn, OffsetWhy, OrderWhy, Understood, UnitWhy};

/// The largest file that is read [bytes]: 20 MiB.
pub const LARGEST_FILE_BYTES: usize = 20 << 20;
/// The most rows that are read.
pub const MOST_ROWS: usize = 200_000;
/// The most faults that are listed; all are counted.
pub const MOST_FAULTS: usize = 100;

/// Temperatures that a probe can show near a heap [degC], as the journal takes them.
const COLDEST_C: f64 = -60.0;
const HOTTEST_C: f64 = 120.0;

/// A column of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Column {
    /// By its name in the header; large and small letters are alike.
    Name(String),
    /// By its number, counted from 1.
    Number(usize),
}

/// A text that names no column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ColumnError;

impl fmt::Display for ColumnError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("A column is named as in the header or numbered from 1.")
    }
}

impl std::error::Error for ColumnError {}

impl FromStr for Column {
    type Err = ColumnError;

    fn from_str(text: &str) -> Result<Self, ColumnError> {
        let text = text.trim();
        match text.parse() {
            Ok(0) => Err(ColumnError),
            Ok(number) => Ok(Self::Number(number)),
            Err(_) if text.is_empty() => Err(ColumnError),
            Err(_) => Ok(Self::Name(text.to_owned())),
        }
    }
}

impl fmt::Display for Column {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Name(name) => write!(f, "\"{}\"", fault::shown(name)),
            Self::Number(number) => write!(f, "{number}"),
        }
    }
}

/// What the caller says of a file; what is left out is found in the file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoggerMapping {
    /// The column of times, with or without their dates.
    pub time: Option<Column>,
    /// The column of dates, where times have none.
    pub date: Option<Column>,
    /// The column of temperatures.
    pub temperature: Option<Column>,
    /// The unit of temperatures.
    pub unit: Option<TemperatureUnit>,
    /// The order of day, month and year.
    pub date_order: Option<DateOrder>,
    /// The offset from UTC of times that come without one [min].
    pub offset_min: i16,
    /// Of a file of readings of several heaps: the name or id of the heap to take.
    pub heap: Option<String>,
}

/// A row that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct LoggerRow {
    /// The line of the file on which it begins, counted from 1.
    pub row: u64,
    /// When.
    pub moment: Moment,
    /// What the probe showed [degC]. Missing only in a file of readings of our own, for a look
    /// without a probe.
    pub temperature_c: Option<f64>,
    /// What a file of readings of our own tells besides.
    pub besides: Option<Box<Besides>>,
}

/// A file that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct LoggerFile {
    /// Its rows, in the order of the file.
    pub rows: Vec<LoggerRow>,
    /// Rows that have no temperature, as loggers write them when something else happened.
    pub rows_without_temperature: u64,
    /// The first faults, by row.
    pub faults: Vec<Fault>,
    /// How many faults there are.
    pub fault_count: u64,
    /// How it was understood.
    pub understood: Understood,
}

/// Reads a file. Rows with a fault are left out and told; the file is refused where what it says
/// is open to doubt on the whole.
///
/// # Errors
///
/// When it is no CSV, is too large, or more must be said for it to be read.
pub fn read_logger(bytes: &[u8], mapping: &LoggerMapping) -> Result<LoggerFile, LoggerError> {
    read_with(bytes, mapping, None)
}

/// What the clock on the wall shows, as a moment in UTC, to the offset that it has then [min].
pub type OffsetOf<'a> = dyn Fn(Moment) -> i16 + 'a;

/// Reads a file as [`read_logger`] does, with times that come without an offset in local time. The
/// offset of the mapping is not used.
///
/// # Errors
///
/// When it is no CSV, is too large, or more must be said for it to be read.
pub fn read_local_logger(
    bytes: &[u8],
    mapping: &LoggerMapping,
    offset_of: &OffsetOf<'_>,
) -> Result<LoggerFile, LoggerError> {
    read_with(bytes, mapping, Some(offset_of))
}

fn read_with(
    bytes: &[u8],
    mapping: &LoggerMapping,
    offset_of: Option<&OffsetOf<'_>>,
) -> Result<LoggerFile, LoggerError> {
    if bytes.len() > LARGEST_FILE_BYTES {
        return Err(LoggerError::TooLarge);
    }
    let (text, encoding) = decoded(bytes)?;
    if text.trim().is_empty() {
        return Err(LoggerError::Empty);
    }
    let layout = header::layout(&text, mapping)?;
    rows::read(&text, encoding, layout, mapping, offset_of)
}

/// The text of a file, with line feeds, and how it was written.
fn decoded(bytes: &[u8]) -> Result<(Cow<'_, str>, &'static str), LoggerError> {
    // How files begin that are packed, as workbooks are.
    if bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(b"\xd0\xcf\x11\xe0") {
        return Err(LoggerError::Workbook);
    }
    let (text, encoding) = match bytes {
        [0xff, 0xfe, rest @ ..] => (sixteen_bits(rest, u16::from_le_bytes)?, "UTF-16"),
        [0xfe, 0xff, rest @ ..] => (sixteen_bits(rest, u16::from_be_bytes)?, "UTF-16"),
        bytes => {
            let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
            match std::str::from_utf8(bytes) {
                Ok(text) => (Cow::Borrowed(text), "UTF-8"),
                // Old instruments write the sign for degrees in one byte.
                Err(_) => (
                    Cow::Owned(bytes.iter().map(|byte| char::from(*byte)).collect()),
                    "Latin-1",
                ),
            }
        }
    };
    if text.contains('\0') {
        return Err(LoggerError::NotText);
    }
    let only_returns = text.contains('\r') && !text.contains('\n');
    Ok(if only_returns {
        (Cow::Owned(text.replace('\r', "\n")), encoding)
    } else {
        (text, encoding)
    })
}

fn sixteen_bits(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> Result<Cow<'static, str>, LoggerError> {
    let units: Vec<u16> = bytes
        .chunks_exact(2)
        .map(|pair| unit([pair[0], pair[1]]))
        .collect();
    String::from_utf16(&units)
        .map(Cow::Owned)
        .map_err(|_| LoggerError::NotText)
}
