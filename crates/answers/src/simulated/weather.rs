//! From the weather of a place to the air around the heap.

use heapwright_engine::heap::{Weather, WeatherHour};
use heapwright_weather::sun::hours_of_day_mj;
use heapwright_weather::{Climate, Forecast, HOUR_MS, OutOfTime, Series, forecast};
use jiff::Timestamp;
use jiff::tz::Offset;

use crate::question::QuestionError;

/// The weather that a question gives.
#[derive(Clone, Debug, PartialEq)]
pub enum WeatherGiven {
    /// Always the same.
    Constant {
        /// The air.
        hour: WeatherHour,
        /// How much warmer the ground is than the air [K].
        ground_offset_k: f64,
    },
    /// Hour by hour from the start.
    Hours(Vec<WeatherHour>),
    /// What was measured or forecast; it must cover the whole time.
    Known(Series),
    /// What is known, and for the rest the usual, or for members what is drawn around it.
    Around {
        /// What is usual.
        climate: Box<Climate>,
        /// What is known.
        known: Option<Series>,
    },
}

/// Cloud where the sun tells nothing: the polar night. Estimate.
const CLOUD_IN_THE_DARK: f64 = 0.5;
/// Least energy above the air of a day that tells of clouds [MJ/m2]. Estimate.
const TELLING_MJ: f64 = 0.5;

/// The hours around a simulation: when the first begins, and how many, with one before and after.
fn around(start_ms: i64, days: f64) -> (i64, usize) {
    let first = start_ms.div_euclid(HOUR_MS) * HOUR_MS - HOUR_MS;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within limits
    let hours = (days * 24.0).ceil() as usize + 4;
    (first, hours)
}

impl WeatherGiven {
    /// How many hours of the simulation are not known, and are taken from a climate.
    pub(crate) fn unknown_hours(&self, start_ms: i64, days: f64) -> usize {
        let Self::Around { known, .. } = self else {
            return 0;
        };
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within limits
        let hours = (days * 24.0).ceil() as usize;
        (0..hours)
            .zip((0_i64..).map(|hour| start_ms + hour * HOUR_MS))
            .filter(|(_, instant)| {
                known
                    .as_ref()
                    .is_none_or(|known| known.at(*instant).is_none())
            })
            .count()
    }

    /// The climate behind it.
    pub(crate) fn climate(&self) -> Option<&Climate> {
        match self {
            Self::Around { climate, .. } => Some(climate),
            _ => None,
        }
    }

    /// The air for the engine; `member` of `seed` draws what is not known, `None` takes the usual.
    pub(crate) fn for_engine(
        &self,
        start_ms: i64,
        days: f64,
        sun_share: f64,
        member: Option<(u64, u32)>,
    ) -> Result<Weather, QuestionError> {
        match self {
            Self::Constant {
                hour,
                ground_offset_k,
            } => Ok(Weather::constant(*hour, *ground_offset_k)),
            Self::Hours(hours) => Ok(Weather::hourly(hours.clone())),
            Self::Known(series) => {
                let end_ms = start_ms.saturating_add(whole_ms(days));
                if series.start_ms > start_ms || series.end_ms() < end_ms {
                    return Err(QuestionError::WeatherAmiss {
                        covered: [hour_text(series.start_ms), hour_text(series.end_ms())],
                        wanted: [hour_text(start_ms), hour_text(end_ms)],
                    });
                }
                Ok(Weather::hourly(air(series, start_ms, days, sun_share)))
            }
            Self::Around { climate, known } => {
                let (first, hours) = around(start_ms, days);
                let series = made(climate, known.as_ref(), first, hours, member)?;
                Ok(Weather::hourly(air(&series, start_ms, days, sun_share)))
            }
        }
    }
}

/// What is known, and for the rest the usual or what is drawn.
fn made(
    climate: &Climate,
    known: Option<&Series>,
    first: i64,
    hours: usize,
    member: Option<(u64, u32)>,
) -> Result<Series, OutOfTime> {
    let mut series = climate.hours(first, hours)?;
    let end = series.end_ms();
    if let Some((seed, member)) = member {
        let from = known.map_or(first, |known| known.end_ms().clamp(first, end));
        let drawn = forecast(&Forecast {
            climate,
            start_ms: from,
            hours: usize::try_from((end - from) / HOUR_MS).unwrap_or(0),
            seed,
            member,
            known,
        })?;
        overlay(&mut series, &drawn);
    }
    if let Some(known) = known {
        overlay(&mut series, known);
    }
    Ok(series)
}

/// Puts the hours of one series in place of those of another.
fn overlay(series: &mut Series, over: &Series) {
    let mut instant = series.start_ms;
    for hour in &mut series.hours {
        if let Some(known) = over.at(instant) {
            *hour = *known;
        }
        instant += HOUR_MS;
    }
}

/// Hours of a series, each the mean of its hour, as the engine's, each at its start.
fn air(series: &Series, start_ms: i64, days: f64, sun_share: f64) -> Vec<WeatherHour> {
    let clouds = clouds(series);
    let at = |index: i64| {
        let last = series.hours.len().saturating_sub(1);
        usize::try_from(index).unwrap_or(0).min(last)
    };
    #[allow(clippy::cast_possible_truncation)] // within limits
    let count = (days * 24.0).ceil() as i64 + 2;
    let mut hours = Vec::new();
    for hour in 0..count {
        let instant = start_ms + hour * HOUR_MS;
        let since = instant - series.start_ms;
        // The two hours whose middles lie before and after this instant.
        let middle = since - HOUR_MS / 2;
        let before = middle.div_euclid(HOUR_MS);
        #[allow(clippy::cast_precision_loss)] // milliseconds of an hour
        let share = middle.rem_euclid(HOUR_MS) as f64 / HOUR_MS as f64;
        let (one, other) = (at(before), at(before + 1));
        let between = |of: &dyn Fn(usize) -> f64| of(one) + (of(other) - of(one)) * share;
        // Rain of the hour that begins at the instant: parts of two hours of the series.
        let now = since.div_euclid(HOUR_MS);
        #[allow(clippy::cast_precision_loss)] // milliseconds of an hour
        let later = since.rem_euclid(HOUR_MS) as f64 / HOUR_MS as f64;
        let rain = |index: i64| series.hours[at(index)].rain_mm;
        hours.push(WeatherHour {
            air_temperature_c: between(&|index| series.hours[index].air_temperature_c),
            relative_humidity: between(&|index| series.hours[index].relative_humidity)
                .clamp(0.0, 1.0),
            rain_mm_per_h: rain(now) * (1.0 - later) + rain(now + 1) * later,
            wind_m_s: between(&|index| series.hours[index].wind_m_s),
            solar_w_m2: sun_share * between(&|index| series.hours[index].solar_w_m2),
            cloud_cover: clouds[one],
        });
    }
    hours
}

/// Cloud cover of each hour, from the sun of its day against that above the air.
///
/// Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, equation 35: a quarter of the
/// sun above the air comes through clouds, three quarters through a clear sky.
fn clouds(series: &Series) -> Vec<f64> {
    const MJ_PER_W_H: f64 = 0.0036;
    let mut clouds = Vec::with_capacity(series.hours.len());
    let zone = i64::from(series.place.zone_hours());
    let mut day = Vec::new();
    let mut instant = series.start_ms;
    let mut date = None;
    let close = |day: &mut Vec<f64>, date: Option<jiff::civil::Date>, clouds: &mut Vec<f64>| {
        let above: f64 = date.map_or(0.0, |date: jiff::civil::Date| {
            hours_of_day_mj(&series.place, date.day_of_year())
                .iter()
                .sum()
        });
        #[allow(clippy::cast_precision_loss)] // at most 24
        let whole = above * day.len() as f64 / 24.0;
        let came: f64 = day.iter().sum::<f64>() * MJ_PER_W_H;
        // Part of a day tells nothing of the whole of it.
        let cover = if whole > TELLING_MJ && day.len() == 24 {
            (1.0 - (came / whole - 0.25) / 0.5).clamp(0.0, 1.0)
        } else {
            clouds.last().copied().unwrap_or(CLOUD_IN_THE_DARK)
        };
        clouds.extend(day.drain(..).map(|_| cover));
    };
    for hour in &series.hours {
        let local = Timestamp::from_millisecond(instant + zone * HOUR_MS)
            .map(|local| Offset::UTC.to_datetime(local).date())
            .ok();
        if local != date {
            close(&mut day, date, &mut clouds);
            date = local;
        }
        day.push(hour.solar_w_m2);
        instant += HOUR_MS;
    }
    close(&mut day, date, &mut clouds);
    clouds
}

#[allow(clippy::cast_possible_truncation)] // within limits
fn whole_ms(days: f64) -> i64 {
    (days * 24.0 * 3_600_000.0) as i64
}

/// An hour of UTC, as files of weather and of questions have it: "2026-05-01 06:00Z".
fn hour_text(instant_ms: i64) -> String {
    Timestamp::from_millisecond(instant_ms).map_or_else(
        |_| instant_ms.to_string(),
        |instant| {
            let utc = Offset::UTC.to_datetime(instant);
            format!("{} {:02}:{:02}Z", utc.date(), utc.hour(), utc.minute())
        },
    )
}

impl From<OutOfTime> for QuestionError {
    fn from(_: OutOfTime) -> Self {
        Self::OutOfTime
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_weather::{Overrides, Place, Setting};

    const PLACE: Place = Place {
        latitude_deg: 50.0,
        longitude_deg: 0.0,
        elevation_m: 0.0,
        setting: Setting::Between,
    };
    /// 2026-05-01T00:00Z.
    const START_MS: i64 = 1_777_593_600_000;

    fn known(hours: usize) -> Series {
        let climate = Climate::new(PLACE, &Overrides::default()).unwrap();
        let mut series = climate.hours(START_MS - HOUR_MS, hours).unwrap();
        for (hour, temperature) in series
            .hours
            .iter_mut()
            .zip([10.0, 12.0, 14.0].iter().cycle())
        {
            hour.air_temperature_c = *temperature;
        }
        series
    }

    #[test]
    fn made_takes_what_is_known_before_what_is_drawn() {
        let climate = Climate::new(PLACE, &Overrides::default()).unwrap();
        let series = known(30);
        let usual = made(&climate, Some(&series), START_MS - HOUR_MS, 100, None).unwrap();
        let drawn = made(
            &climate,
            Some(&series),
            START_MS - HOUR_MS,
            100,
            Some((1, 3)),
        )
        .unwrap();
        assert_eq!(usual.hours[..30], series.hours[..]);
        assert_eq!(drawn.hours[..30], series.hours[..]);
        assert_ne!(drawn.hours[30..], usual.hours[30..]);
        let again = made(
            &climate,
            Some(&series),
            START_MS - HOUR_MS,
            100,
            Some((1, 3)),
        )
        .unwrap();
        assert_eq!(drawn, again);
    }

    #[test]
    fn unknown_hours_are_counted() {
        let given = WeatherGiven::Around {
            climate: Box::new(Climate::new(PLACE, &Overrides::default()).unwrap()),
            known: Some(known(31)),
        };
        // The known ones begin an hour before the start.
        assert_eq!(given.unknown_hours(START_MS, 2.0), 18);
    }

    #[test]
    fn air_lies_between_the_middles_of_hours() {
        let mut series = known(50);
        series.hours[1].rain_mm = 2.0;
        let on_the_hour = air(&series, START_MS, 1.0, 0.5);
        assert!(on_the_hour.len() >= 25);
        // Hours of 10, 12 and 14 degrees, the first of which begins an hour before the start.
        assert!((on_the_hour[0].air_temperature_c - 11.0).abs() < 1e-12);
        assert!((on_the_hour[1].air_temperature_c - 13.0).abs() < 1e-12);
        assert!((on_the_hour[0].rain_mm_per_h - 2.0).abs() < 1e-12);
        let half_past = air(&series, START_MS + HOUR_MS / 2, 1.0, 0.5);
        assert!((half_past[0].air_temperature_c - 12.0).abs() < 1e-12);
        assert!((half_past[0].rain_mm_per_h - 1.0).abs() < 1e-12);
        let noon = |hours: &[WeatherHour]| hours[12].solar_w_m2;
        let whole = air(&series, START_MS, 1.0, 1.0);
        assert!((noon(&whole) - 2.0 * noon(&on_the_hour)).abs() < 1e-9);
        assert!(noon(&whole) > 100.0);
        let clouds = clouds(&series);
        assert_eq!(clouds.len(), 50);
        assert!(clouds.iter().all(|cover| (0.0..=1.0).contains(cover)));
    }
}
