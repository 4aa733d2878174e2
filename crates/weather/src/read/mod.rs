//! A file of hourly or daily weather as a series without gaps, and what had to be done for that.

mod columns;
mod daily;
mod error;
mod fill;
mod header;
mod hourly;
mod number;
mod quantity;
mod table;
mod time;
mod timeline;

use jiff::tz::TimeZone;

use crate::climate::Climate;
use crate::series::Series;

pub use error::ReadError;
pub use time::DayOrder;

/// The most bytes of a file: 20 MiB.
pub const MOST_BYTES: usize = 20 * 1024 * 1024;
/// The most rows of a file.
pub const MOST_ROWS: usize = 200_000;

/// How a file is to be understood.
#[derive(Clone, Debug)]
pub struct Reading<'a> {
    /// The usual weather of the place; gaps longer than six hours are filled from it.
    pub climate: &'a Climate,
    /// The clock of times without an offset; a rule such as that of
    /// `TimeZone::posix("CET-1CEST,M3.5.0,M10.5.0/3")` knows daylight saving.
    pub clock: TimeZone,
    /// Which comes first in dates such as 03/04/2024, where the file does not show it.
    pub day_order: Option<DayOrder>,
    /// Which place of a file of several, as its column names it.
    pub station: Option<&'a str>,
}

impl<'a> Reading<'a> {
    /// Times without an offset are in UTC; nothing else is known.
    #[must_use]
    pub fn new(climate: &'a Climate) -> Self {
        Self {
            climate,
            clock: TimeZone::UTC,
            day_order: None,
            station: None,
        }
    }
}

/// What a file held, made whole.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadWeather {
    /// The hours from the first row's to the last row's.
    pub series: Series,
    /// What was done to the file.
    pub report: Report,
}

/// Whether rows were hours or days.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Kind {
    /// A row an hour, or some part or a few of them.
    #[default]
    Hourly,
    /// A row a day, with a minimum and a maximum.
    Daily,
}

/// Hours, or days of a daily file, of one quantity that the file did not give.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Filled {
    /// Laid between the hours before and after, over six hours at most; no rain was taken to fall.
    pub interpolated: usize,
    /// Reckoned from the temperature: humidity from the coldest hour, sun from the range.
    pub estimated: usize,
    /// Taken from the climate.
    pub usual: usize,
}

/// What was done to a file to make a series of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Hours or days.
    pub kind: Kind,
    /// Rows with a time.
    pub rows: usize,
    /// Rows whose time another, later row has too; the later one counts.
    pub duplicates: usize,
    /// Rows that came before an earlier one and were put in order.
    pub out_of_order: usize,
    /// The hours are those of typical months of several years, put into one year.
    pub typical_year: Option<i16>,
    /// The clock's rule has daylight saving, but the file has an hour that such a clock skips, so
    /// that all its times were read as standard time.
    pub standard_time: bool,
    /// Columns that name no unit, which was guessed: the header and the unit.
    pub guessed_units: Vec<(String, &'static str)>,
    /// Of the temperature.
    pub temperature: Filled,
    /// Of the humidity.
    pub humidity: Filled,
    /// Of the rain.
    pub rain: Filled,
    /// Of the wind.
    pub wind: Filled,
    /// Of the sun.
    pub solar: Filled,
}

/// Reads a CSV file.
///
/// The header is looked for in the first rows and understood by common words of English, German,
/// French and Spanish with units in brackets or behind. A file with a minimum and a maximum and
/// no time of day is one of days; any other is one of hours. An hour's row may be stamped with its
/// beginning, or, where the header says "ending", with its end; rows within an hour are averaged,
/// their rain added.
pub fn read(bytes: &[u8], reading: &Reading<'_>) -> Result<ReadWeather, ReadError> {
    let text = table::decode(bytes)?;
    let sheet = table::Sheet::find(&text, reading)?;
    match sheet.columns.kind() {
        Kind::Hourly => hourly::read(&sheet, reading),
        Kind::Daily => daily::read(&sheet, reading),
    }
}
