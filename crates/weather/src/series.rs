//! The weather of a place, hour by hour.

use std::fmt;

use jiff::civil::Date;
use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp, ToSpan};

use crate::place::{DAY_HOURS, Place};

/// Milliseconds of an hour.
pub const HOUR_MS: i64 = 3_600_000;
/// The longest series, some 50 years: what is longer is a slip of the pen.
pub const MOST_HOURS: usize = 440_000;
/// Weather lies in the years 1900 to 2199, as the journal does.
pub const YEARS: std::ops::Range<i16> = 1900..2200;

/// The weather of an hour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WeatherHour {
    /// Mean temperature of the air in the shade [degC].
    pub air_temperature_c: f64,
    /// Mean relative humidity (0 to 1).
    pub relative_humidity: f64,
    /// Rain, and snow as water, that fell in the hour [mm].
    pub rain_mm: f64,
    /// Mean wind in the open [m/s].
    pub wind_m_s: f64,
    /// Mean global radiation on level ground [W/m2].
    pub solar_w_m2: f64,
}

/// Hours without a gap.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// Where it is.
    pub place: Place,
    /// When the first hour begins: milliseconds since 1970-01-01T00:00Z, a whole hour.
    pub start_ms: i64,
    /// The hours, one after another.
    pub hours: Vec<WeatherHour>,
}

impl Series {
    /// When the last hour ends [ms since 1970-01-01T00:00Z].
    #[must_use]
    pub fn end_ms(&self) -> i64 {
        self.start_ms.saturating_add(
            HOUR_MS.saturating_mul(i64::try_from(self.hours.len()).unwrap_or(i64::MAX)),
        )
    }

    /// The hour that holds an instant; `None` outside the series.
    #[must_use]
    pub fn at(&self, instant_ms: i64) -> Option<&WeatherHour> {
        let hour = instant_ms.checked_sub(self.start_ms)?.div_euclid(HOUR_MS);
        self.hours.get(usize::try_from(hour).ok()?)
    }

    /// The same up to its end, and from there on another: what was known goes before what was
    /// drawn. `None` when the other begins after this one has ended.
    #[must_use]
    pub fn followed_by(mut self, later: &Self) -> Option<Self> {
        let known = self
            .end_ms()
            .checked_sub(later.start_ms)?
            .div_euclid(HOUR_MS);
        let known = usize::try_from(known).ok()?;
        self.hours.extend(later.hours.iter().skip(known));
        Some(self)
    }
}

/// A time outside the years 1900 to 2199, or more hours than [`MOST_HOURS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfTime;

impl fmt::Display for OutOfTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("weather must lie in the years 1900 to 2199 and be at most 50 years long; correct the dates")
    }
}

impl std::error::Error for OutOfTime {}

fn offset(place: &Place) -> Offset {
    Offset::from_seconds(place.zone_hours() * 3600).unwrap_or(Offset::UTC)
}

/// When a day begins by the clock of the place's longitude [ms since 1970-01-01T00:00Z].
pub(crate) fn midnight_ms(place: &Place, date: Date) -> Option<i64> {
    let midnight = date.at(0, 0, 0, 0);
    let instant = offset(place).to_timestamp(midnight).ok()?;
    YEARS
        .contains(&date.year())
        .then(|| instant.as_millisecond())
}

/// The day and the hour of the day (0 to 23) by the clock of the place's longitude.
pub(crate) fn local_hour(place: &Place, instant_ms: i64) -> Option<(Date, usize)> {
    let local = offset(place).to_datetime(Timestamp::from_millisecond(instant_ms).ok()?);
    Some((local.date(), usize::try_from(local.hour()).ok()?))
}

/// The day so many days after another.
pub(crate) fn later(date: Date, days: i64) -> Option<Date> {
    date.checked_add(SignedDuration::from_hours(24 * days)).ok()
}

/// Days from one date to another.
pub(crate) fn days_between(from: Date, until: Date) -> i64 {
    until.duration_since(from).as_hours() / 24
}

/// The days, by the clock of the place's longitude, that hold so many hours from a start: the
/// first, how many, and the hours of the first that come before the start.
pub(crate) fn days_of(
    place: &Place,
    start_ms: i64,
    hours: usize,
) -> Result<(Date, usize, usize), OutOfTime> {
    if hours > MOST_HOURS || start_ms.rem_euclid(HOUR_MS) != 0 {
        return Err(OutOfTime);
    }
    let (first, skipped) = local_hour(place, start_ms).ok_or(OutOfTime)?;
    let days = (skipped + hours).div_ceil(DAY_HOURS);
    let last = i64::try_from(days)
        .ok()
        .and_then(|days| first.checked_add(days.days()).ok())
        .ok_or(OutOfTime)?;
    if YEARS.contains(&first.year()) && YEARS.contains(&last.year()) {
        Ok((first, days, skipped))
    } else {
        Err(OutOfTime)
    }
}
