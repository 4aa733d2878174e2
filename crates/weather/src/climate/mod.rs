//! Which weather is usual at a place at a time of the year? The keeper's own normals, or a guess.

mod rough;
mod year;

use std::fmt;

use jiff::civil::Date;

use crate::air::dew_point_of_humidity_c;
use crate::day::{WeatherDay, hours_of_days};
use crate::place::{DAY_HOURS, Place};
use crate::series::{OutOfTime, Series, days_of, later};

pub use rough::SPREAD_K;

/// Months of a year.
pub(crate) const MONTHS: usize = 12;

/// What is usual in a month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MonthNormal {
    /// Mean temperature, halfway between the mean minimum and maximum [degC].
    pub mean_c: f64,
    /// Mean maximum less mean minimum [K].
    pub daily_range_k: f64,
    /// Mean relative humidity (0 to 1).
    pub relative_humidity: f64,
    /// Rain [mm per month].
    pub rain_mm: f64,
    /// Days with rain.
    pub wet_days: f64,
    /// Mean wind in the open [m/s].
    pub wind_m_s: f64,
}

/// What the keeper knows better than the guess.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Overrides {
    /// Mean temperature of each month, January first [degC]; goes before the two that follow.
    pub months_c: Option<[f64; MONTHS]>,
    /// Mean temperature of the coldest month [degC].
    pub coldest_month_c: Option<f64>,
    /// Mean temperature of the warmest month [degC].
    pub warmest_month_c: Option<f64>,
    /// Rain of each month, January first [mm].
    pub rain_mm: Option<[f64; MONTHS]>,
}

/// The usual weather of a place through the year.
#[derive(Clone, Debug, PartialEq)]
pub struct Climate {
    place: Place,
    months: [MonthNormal; MONTHS],
    mean_knots_c: [f64; MONTHS],
    /// No temperature was stated: it is a guess with a spread of [`SPREAD_K`].
    rough: bool,
}

/// What is usual on a day of the year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct DayNormal {
    pub mean_c: f64,
    pub daily_range_k: f64,
    pub relative_humidity: f64,
    pub wet_chance: f64,
    pub wet_day_mm: f64,
    pub wind_m_s: f64,
}

impl DayNormal {
    /// Half the daily range below and above a mean; dew point as the usual humidity has it.
    pub fn day(&self, mean_c: f64, daily_range_k: f64) -> WeatherDay {
        WeatherDay {
            minimum_c: mean_c - daily_range_k / 2.0,
            maximum_c: mean_c + daily_range_k / 2.0,
            dew_point_c: Some(dew_point_of_humidity_c(mean_c, self.relative_humidity)),
            rain_mm: 0.0,
            wind_m_s: self.wind_m_s,
            radiation_mj: None,
            rain_middle_h: None,
        }
    }
}

impl Climate {
    /// The climate of a place; without overrides it is a guess from latitude, height and setting.
    pub fn new(place: Place, overrides: &Overrides) -> Result<Self, ClimateError> {
        check_place(&place)?;
        check_overrides(overrides)?;
        let mut months = rough::normals(&place);
        if let Some(means) = overrides.months_c {
            for (month, mean_c) in months.iter_mut().zip(means) {
                month.mean_c = mean_c;
            }
        } else {
            stretch(&mut months, overrides)?;
        }
        if let Some(rain) = overrides.rain_mm {
            for (month, rain_mm) in months.iter_mut().zip(rain) {
                // As much rain a wet day as before, but no more wet days than days.
                month.wet_days = (month.wet_days * rain_mm / month.rain_mm).min(27.0);
                month.rain_mm = rain_mm;
            }
        }
        Ok(Self {
            place,
            mean_knots_c: year::knots(&months.map(|month| month.mean_c)),
            months,
            rough: overrides.months_c.is_none()
                && (overrides.coldest_month_c.is_none() || overrides.warmest_month_c.is_none()),
        })
    }

    /// Where it is.
    #[must_use]
    pub fn place(&self) -> &Place {
        &self.place
    }

    /// What is usual in each month, January first.
    #[must_use]
    pub fn months(&self) -> &[MonthNormal; MONTHS] {
        &self.months
    }

    /// Whether the temperatures are a guess, with a spread of [`SPREAD_K`].
    #[must_use]
    pub fn is_rough(&self) -> bool {
        self.rough
    }

    /// What is usual on a date. Means of temperature over a month agree with the month's normal.
    pub(crate) fn normal(&self, date: Date) -> DayNormal {
        let between =
            |of: fn(&MonthNormal) -> f64| year::at(&self.months.map(|month| of(&month)), date);
        let month = &self.months[year::month_index(date)];
        DayNormal {
            mean_c: year::at(&self.mean_knots_c, date),
            daily_range_k: between(|month| month.daily_range_k),
            relative_humidity: between(|month| month.relative_humidity),
            wet_chance: (month.wet_days / f64::from(date.days_in_month())).min(1.0),
            wet_day_mm: if month.wet_days > 0.0 {
                month.rain_mm / month.wet_days
            } else {
                0.0
            },
            wind_m_s: between(|month| month.wind_m_s),
        }
    }

    /// The usual day of a date: without chance. Wet days come evenly, and a month's rain is that
    /// of its normal.
    #[must_use]
    pub fn day(&self, date: Date) -> WeatherDay {
        let normal = self.normal(date);
        let mut day = normal.day(normal.mean_c, normal.daily_range_k);
        day.rain_mm = year::even_rain_mm(&self.months[year::month_index(date)], date);
        day
    }

    /// The usual weather of so many hours.
    pub fn hours(&self, start_ms: i64, hours: usize) -> Result<Series, OutOfTime> {
        let (first, days, skipped) = days_of(&self.place, start_ms, hours)?;
        let mut usual = Vec::with_capacity(days);
        let mut date = first;
        for _ in 0..days {
            usual.push(self.day(date));
            date = later(date, 1).ok_or(OutOfTime)?;
        }
        cut(
            hours_of_days(&self.place, first, &usual)?,
            start_ms,
            skipped,
            hours,
        )
    }
}

/// Without the hours before the start and those after the end.
pub(crate) fn cut(
    mut series: Series,
    start_ms: i64,
    skipped: usize,
    hours: usize,
) -> Result<Series, OutOfTime> {
    if skipped >= DAY_HOURS || series.hours.len() < skipped + hours {
        return Err(OutOfTime);
    }
    series.hours.drain(..skipped);
    series.hours.truncate(hours);
    series.start_ms = start_ms;
    Ok(series)
}

/// Moves and stretches the year so that its ends are those that are stated.
fn stretch(months: &mut [MonthNormal; MONTHS], overrides: &Overrides) -> Result<(), ClimateError> {
    let least = months
        .iter()
        .map(|month| month.mean_c)
        .fold(f64::MAX, f64::min);
    let most = months
        .iter()
        .map(|month| month.mean_c)
        .fold(f64::MIN, f64::max);
    let (coldest, warmest) = match (overrides.coldest_month_c, overrides.warmest_month_c) {
        (Some(coldest), Some(warmest)) => (coldest, warmest),
        // One end alone moves the year and does not stretch it.
        (Some(coldest), None) => (coldest, coldest + most - least),
        (None, Some(warmest)) => (warmest - (most - least), warmest),
        (None, None) => return Ok(()),
    };
    if coldest > warmest {
        return Err(ClimateError::ColdestAboveWarmest);
    }
    for month in months {
        let share = (month.mean_c - least) / (most - least);
        month.mean_c = coldest + (warmest - coldest) * share;
    }
    Ok(())
}

/// Why there is no climate.
#[derive(Clone, Debug, PartialEq)]
pub enum ClimateError {
    /// A figure lies outside what can be: its name and its bounds.
    Outside {
        /// Which figure.
        what: &'static str,
        /// The least it may be.
        least: f64,
        /// The most it may be.
        most: f64,
    },
    /// The coldest month is warmer than the warmest.
    ColdestAboveWarmest,
}

impl fmt::Display for ClimateError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside { what, least, most } => {
                write!(f, "{what} must be from {least} to {most}; correct it")
            }
            Self::ColdestAboveWarmest => f.write_str(
                "the coldest month is warmer than the warmest; exchange the two temperatures",
            ),
        }
    }
}

impl std::error::Error for ClimateError {}

fn within(what: &'static str, value: f64, least: f64, most: f64) -> Result<(), ClimateError> {
    if value >= least && value <= most {
        Ok(())
    } else {
        Err(ClimateError::Outside { what, least, most })
    }
}

fn check_place(place: &Place) -> Result<(), ClimateError> {
    within("the latitude in degrees", place.latitude_deg, -90.0, 90.0)?;
    within(
        "the longitude in degrees",
        place.longitude_deg,
        -180.0,
        180.0,
    )?;
    within(
        "the height above the sea in metres",
        place.elevation_m,
        -500.0,
        9000.0,
    )
}

fn check_overrides(overrides: &Overrides) -> Result<(), ClimateError> {
    let temperatures = overrides.months_c.iter().flatten();
    let ends = [overrides.coldest_month_c, overrides.warmest_month_c];
    for mean_c in temperatures.chain(ends.iter().flatten()) {
        within(
            "the mean temperature of a month in degC",
            *mean_c,
            -80.0,
            50.0,
        )?;
    }
    for rain_mm in overrides.rain_mm.iter().flatten() {
        within("the rain of a month in mm", *rain_mm, 0.0, 10_000.0)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests;
