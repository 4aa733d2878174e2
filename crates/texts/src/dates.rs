//! Days and times as people write them.

use crate::locale::Locale;
use crate::messages::cldr;

/// How the hours of a day are counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Clock {
    /// From 0 to 23.
    #[default]
    Hours24,
    /// Twice from 1 to 12.
    Hours12,
}

/// A day of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Day {
    /// Such as 2026.
    pub year: i32,
    /// From 1 to 12.
    pub month: u8,
    /// From 1 to 31.
    pub day: u8,
}

impl Locale {
    /// "1 May 2026".
    #[must_use]
    pub fn date(self, day: Day) -> String {
        cldr::Date {
            day: &day.day.to_string(),
            month: f64::from(day.month),
            year: &day.year.to_string(),
        }
        .said(self)
    }

    /// "1 May".
    #[must_use]
    pub fn day_of_month(self, day: Day) -> String {
        cldr::DayOfMonth {
            day: &day.day.to_string(),
            month: f64::from(day.month),
        }
        .said(self)
    }

    /// "May 2026".
    #[must_use]
    pub fn month(self, year: i32, month: u8) -> String {
        cldr::MonthOfYear {
            month: f64::from(month),
            year: &year.to_string(),
        }
        .said(self)
    }

    /// "Feb": a month by itself where there is little room; `month` from 1 to 12.
    #[must_use]
    pub fn short_month(self, month: u8) -> String {
        cldr::ShortMonth {
            month: f64::from(month),
        }
        .said(self)
    }

    /// "18:05", "6:05 pm".
    ///
    /// - `hour`: 0 to 23
    /// - `minute`: 0 to 59
    #[must_use]
    pub fn time(self, hour: u8, minute: u8) -> String {
        let minute = format!("{minute:02}");
        match self.clock {
            Clock::Hours24 => cldr::TimeOf24Hours {
                hour: &format!("{hour:02}"),
                minute: &minute,
            }
            .said(self),
            Clock::Hours12 => {
                let half = if hour < 12 { "am" } else { "pm" };
                let hour = match hour % 12 {
                    0 => 12,
                    hour => hour,
                };
                cldr::TimeOf12Hours {
                    half,
                    hour: &hour.to_string(),
                    minute: &minute,
                }
                .said(self)
            }
        }
    }
}
