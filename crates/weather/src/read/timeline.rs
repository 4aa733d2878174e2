//! At which instants are the rows? Order, typical years, daylight saving and the ends of hours.

use std::collections::BTreeSet;

use jiff::civil::{Date, DateTime};
use jiff::tz::{AmbiguousOffset, Offset, TimeZone};

use super::error::ReadError;
use super::table::{Row, Sheet};
use super::time::DayOrder;
use super::{Reading, Report};

/// What the clock on the wall showed at each row; a file that runs backwards is turned.
#[derive(Clone, Debug)]
pub(super) struct Timeline {
    /// Index of the row, and local time.
    local: Vec<(usize, DateTime)>,
    /// Rows are stamped with the ends of their hours.
    pub hour_ending: bool,
}

impl Timeline {
    pub fn read(
        sheet: &Sheet,
        reading: &Reading<'_>,
        report: &mut Report,
    ) -> Result<Self, ReadError> {
        let order = day_order(sheet, reading)?;
        let mut local = Vec::with_capacity(sheet.rows.len());
        for (index, row) in sheet.rows.iter().enumerate() {
            let time = row.stamp.local(order).ok_or_else(|| no_time(sheet, row))?;
            local.push((index, time));
        }
        if local.first().map(|first| first.1) > local.last().map(|last| last.1) && is_turned(&local)
        {
            local.reverse();
        }
        let mut timeline = Self {
            hour_ending: sheet.columns.says_hour_ending() || counts_to_24(sheet),
            local,
        };
        if let Some(year) = timeline.typical_year() {
            timeline.put_into(year);
            report.typical_year = Some(year);
        }
        Ok(timeline)
    }

    /// The days of the rows, with the index of each row.
    pub fn dates(&self) -> impl Iterator<Item = (usize, Date)> {
        self.local
            .iter()
            .map(|(index, local)| (*index, local.date()))
    }

    /// Milliseconds since 1970-01-01T00:00Z of each row, with its index.
    pub fn instants(
        &self,
        sheet: &Sheet,
        reading: &Reading<'_>,
        report: &mut Report,
    ) -> Result<Vec<(usize, i64)>, ReadError> {
        let utc = TimeZone::UTC;
        let clock = if sheet.columns.says_utc() {
            &utc
        } else {
            &reading.clock
        };
        let standard = self.standard_offset(sheet, clock);
        report.standard_time = standard.is_some();
        let mut folds = BTreeSet::new();
        let mut instants = Vec::with_capacity(self.local.len());
        for (index, local) in &self.local {
            let row = &sheet.rows[*index];
            let offset = match (own_offset(row), standard) {
                (Some(own), _) => own,
                (None, Some(standard)) => standard,
                (None, None) => match clock.to_ambiguous_timestamp(*local).offset() {
                    AmbiguousOffset::Unambiguous { offset } => offset,
                    AmbiguousOffset::Gap { before, .. } => before,
                    // An hour that the clock shows twice: first before, then after it is put back.
                    AmbiguousOffset::Fold { before, after } => {
                        if folds.insert(*local) {
                            before
                        } else {
                            after
                        }
                    }
                },
            };
            let instant = offset
                .to_timestamp(*local)
                .map_err(|_| no_time(sheet, row))?;
            instants.push((*index, instant.as_millisecond()));
        }
        Ok(instants)
    }

    /// The offset for all rows where the clock's rule cannot be that of the file.
    fn standard_offset(&self, sheet: &Sheet, clock: &TimeZone) -> Option<Offset> {
        self.local
            .iter()
            .filter(|(index, _)| own_offset(&sheet.rows[*index]).is_none())
            .find_map(
                |(_, local)| match clock.to_ambiguous_timestamp(*local).offset() {
                    AmbiguousOffset::Gap { before, .. } => Some(before),
                    _ => None,
                },
            )
    }

    /// The year to put the rows in when all twelve months run once through a year but the years
    /// differ: a year of months that were typical.
    fn typical_year(&self) -> Option<i16> {
        // The end of the last hour of a month is in the next.
        let stamps: Vec<DateTime> = self
            .local
            .iter()
            .map(|(_, local)| self.inside(*local))
            .collect();
        let latest = stamps.iter().map(|local| local.year()).max()?;
        if stamps.iter().all(|local| local.year() == latest) {
            return None;
        }
        let through = |local: &DateTime| (local.month(), local.day(), local.time());
        let in_order = stamps
            .windows(2)
            .all(|pair| through(&pair[0]) <= through(&pair[1]));
        let has_every_month =
            (1..=12).all(|month| stamps.iter().any(|local| local.month() == month));
        let has_leap_day = stamps
            .iter()
            .any(|local| (local.month(), local.day()) == (2, 29));
        let fits = |year: &i16| Date::new(*year, 2, 29).is_ok() == has_leap_day;
        let year = (latest - 7..=latest).rev().find(fits)?;
        (in_order && has_every_month).then_some(year)
    }

    fn put_into(&mut self, year: i16) {
        for place in 0..self.local.len() {
            let local = self.local[place].1;
            // The end of the last hour of a February or of a year lies beyond it.
            let inside = self.inside(local);
            if let Ok(moved) = inside.with().year(year).build() {
                self.local[place].1 = moved.saturating_add(local.duration_since(inside));
            }
        }
    }

    /// A time within the row's hour.
    fn inside(&self, local: DateTime) -> DateTime {
        if self.hour_ending {
            local
                .checked_sub(jiff::SignedDuration::from_secs(1))
                .unwrap_or(local)
        } else {
            local
        }
    }
}

fn own_offset(row: &Row) -> Option<Offset> {
    let minutes = row.stamp.clocked?.offset_min?;
    Offset::from_seconds(i32::from(minutes) * 60).ok()
}

fn no_time(sheet: &Sheet, row: &Row) -> ReadError {
    ReadError::Time {
        row: row.line,
        column: sheet.columns.time_header().to_owned(),
        text: super::error::quoted(&sheet.time_text(row)),
    }
}

/// More steps go back than forth.
fn is_turned(local: &[(usize, DateTime)]) -> bool {
    let back = local
        .windows(2)
        .filter(|pair| pair[0].1 > pair[1].1)
        .count();
    2 * back > local.len() - 1
}

/// Hours run from 1 to 24.
fn counts_to_24(sheet: &Sheet) -> bool {
    let midnights = |ends_day: bool| {
        sheet
            .rows
            .iter()
            .filter_map(|row| row.stamp.clocked)
            .any(|clocked| {
                clocked.ends_day == ends_day && clocked.time == jiff::civil::Time::midnight()
            })
    };
    midnights(true) && !midnights(false)
}

/// Which comes first, day or month: as the figures show, else the header, else the reading.
fn day_order(sheet: &Sheet, reading: &Reading<'_>) -> Result<DayOrder, ReadError> {
    let shown = sheet.rows.iter().find_map(|row| row.stamp.date.shows());
    if let Some(order) = shown
        .or_else(|| sheet.columns.says_order())
        .or(reading.day_order)
    {
        return Ok(order);
    }
    match sheet.rows.iter().find(|row| row.stamp.date.is_open()) {
        Some(row) => Err(ReadError::DayOrder {
            row: row.line,
            text: super::error::quoted(&sheet.time_text(row)),
        }),
        None => Ok(DayOrder::DayFirst),
    }
}
