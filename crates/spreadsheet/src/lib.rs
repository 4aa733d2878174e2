//! Tables for spreadsheets: the log and the readings out, readings and the files of thermometer
//! loggers in.
//!
//! Out goes CSV as RFC 4180 has it: a header, CRLF, quotation marks doubled, as many fields in
//! each row, UTF-8. No mark stands in front of it; some spreadsheet programs want U+FEFF there to
//! know UTF-8, and a face that writes for them may put it: [`read_logger`] passes over it. In
//! comes what instruments write: any of three delimiters, points or commas, dates in most orders.
//! What cannot be told for certain is asked for, and what was guessed is said. Nothing here opens
//! a file.

// Units stand in square brackets in our docs; they are no links.
#![allow(rustdoc::broken_intra_doc_links)]
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod log;
mod logger;
mod new_readings;
mod readings;
mod record;
mod table;

pub use log::log_csv;
pub use logger::{
    Besides, Column, ColumnError, DateOrder, Fault, FaultKind, FoundColumn, LARGEST_FILE_BYTES,
    LONGEST_FIELD_BYTES, LoggerError, LoggerFile, LoggerMapping, LoggerRow, MOST_COLUMNS,
    MOST_FAULTS, MOST_ROWS, OffsetOf, OffsetWhy, OrderWhy, TemperatureUnit, Understood, UnitWhy,
    read_local_logger, read_logger,
};
pub use new_readings::{MOST_READINGS, NewReadings, Placing, ReadingsError, new_readings};
pub use readings::{READINGS_HEADER, readings_csv};
pub use record::{RecordFault, RecordRow, moment_said, read_record};

/// What a script or a spreadsheet reads is English and metric in every garden.
const ENGLISH: heapwright_texts::Locale =
    heapwright_texts::Locale::english(heapwright_quantity::UnitSystem::Metric);
