//! How was a file understood? Said before anything is taken in.

use super::dates::DateOrder;
use super::numbers::TemperatureUnit;

/// A column that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FoundColumn {
    /// Its number, counted from 1.
    pub number: usize,
    /// Its name, where there is a header.
    pub name: Option<String>,
}

/// How the unit is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UnitWhy {
    /// The caller said so.
    Said,
    /// The header says so, or a line of units right below it.
    Header,
    /// It stands behind the numbers.
    BehindNumbers,
    /// What stands above the header says so.
    AboveHeader,
    /// The numbers speak for it: a guess.
    Guess {
        /// The least number.
        least: f64,
        /// The greatest.
        most: f64,
    },
}

/// How the order of day, month and year is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OrderWhy {
    /// The caller said so.
    Said,
    /// Only so all dates are in the calendar.
    OnlyOneFits,
}

/// How the offset from UTC is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OffsetWhy {
    /// Every time has its own.
    InEveryRow,
    /// The header says so.
    Header {
        /// The offset [min].
        offset_min: i16,
    },
    /// The caller said so.
    Said {
        /// The offset [min].
        offset_min: i16,
    },
    /// The caller knows that of each day.
    OfEachDay,
}

/// How a file was understood.
#[derive(Clone, Debug, PartialEq)]
pub struct Understood {
    /// The encoding: "UTF-8", "UTF-16" or "Latin-1".
    pub encoding: &'static str,
    /// What parts the fields.
    pub delimiter: char,
    /// The line of the header, counted from 1, if there is one.
    pub header_row: Option<u64>,
    /// Where the times stand: one column, or those of date and time of day.
    pub times: Vec<FoundColumn>,
    /// Where the temperatures stand.
    pub temperature: FoundColumn,
    /// The unit of temperatures.
    pub unit: TemperatureUnit,
    /// How that is known.
    pub unit_why: UnitWhy,
    /// The order of dates, where they do not say it themselves, and how it is known.
    pub date_order: Option<(DateOrder, OrderWhy)>,
    /// How the offset from UTC is known.
    pub offset: OffsetWhy,
    /// True for a file of readings of our own.
    pub own: bool,
}

impl Understood {
    /// The same in sentences.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut told = Vec::new();
        if self.own {
            told.push("This is a file of readings as Heapwright exports them.".to_owned());
        }
        let delimiter = match self.delimiter {
            ';' => "semicolons",
            '\t' => "tabs",
            _ => "commas",
        };
        told.push(match self.header_row {
            Some(row) => format!(
                "The file is in {}, its fields are parted by {delimiter}, and its header is row {row}.",
                self.encoding
            ),
            None => format!(
                "The file is in {}, its fields are parted by {delimiter}, and it has no header.",
                self.encoding
            ),
        });
        let times: Vec<String> = self.times.iter().map(column_text).collect();
        told.push(format!(
            "Times stand in {}, temperatures in {}.",
            times.join(" and "),
            column_text(&self.temperature)
        ));
        let unit = self.unit.name();
        told.push(match self.unit_why {
            UnitWhy::Said => format!("Temperatures are in {unit}, as you said."),
            UnitWhy::Header => format!("Temperatures are in {unit}, as the header says."),
            UnitWhy::BehindNumbers => {
                format!("Temperatures are in {unit}, as stands behind the numbers.")
            }
            UnitWhy::AboveHeader => {
                format!("Temperatures are in {unit}, as stands above the header.")
            }
            UnitWhy::Guess { least, most } => {
                let why = match self.unit {
                    TemperatureUnit::Celsius => {
                        "in degrees Fahrenheit the heap would have been hard frozen"
                    }
                    TemperatureUnit::Fahrenheit => "in degrees Celsius the heap would have boiled",
                };
                format!(
                    "Temperatures from {least:.1} to {most:.1} are taken as {unit}: this is a guess, for {why}; say the unit if it is wrong."
                )
            }
        });
        told.extend(self.date_order.map(|(order, why)| match why {
            OrderWhy::Said => format!("Dates have the {}, as you said.", order.name()),
            OrderWhy::OnlyOneFits => format!(
                "Dates have the {}: only so all of them can be.",
                order.name()
            ),
        }));
        told.push(match self.offset {
            OffsetWhy::InEveryRow => "Every time has its offset from UTC.".to_owned(),
            OffsetWhy::Header { offset_min } => format!(
                "Times are taken as {}, as the header says.",
                offset_text(offset_min)
            ),
            OffsetWhy::Said { offset_min } => format!(
                "Times without an offset are taken as {}, summer and winter.",
                offset_text(offset_min)
            ),
            OffsetWhy::OfEachDay => {
                "Times without an offset are taken as local time at their date.".to_owned()
            }
        });
        told
    }
}

fn column_text(column: &FoundColumn) -> String {
    match &column.name {
        Some(name) => format!("column {} (\"{name}\")", column.number),
        None => format!("column {}", column.number),
    }
}

fn offset_text(offset_min: i16) -> String {
    let sign = if offset_min < 0 { '-' } else { '+' };
    let minutes = offset_min.unsigned_abs();
    format!("UTC{sign}{:02}:{:02}", minutes / 60, minutes % 60)
}
