//! What may the weather be beyond what is known? Members of an ensemble, drawn around the climate.
//!
//! Temperature: the day's departure from the usual follows an autoregressive process of first
//! order. Rain: wet and dry days follow a chain of two states, and a wet day's rain is exponential.
//! Both forms are those of Richardson 1981, Water Resources Research 17, 182-190, with fewer
//! figures: those here are rounded from memory of daily records of the middle latitudes.

use std::f64::consts::PI;

use heapwright_numerics::Stream;
use libm::{cos, log, sqrt};

use crate::climate::{Climate, DayNormal, cut};
use crate::day::{WeatherDay, hours_of_days};
use crate::place::{DAY_HOURS, Setting};
use crate::series::{HOUR_MS, OutOfTime, Series, WeatherHour, days_of, later};

/// How much of a day's departure is left on the next.
const PERSISTENCE: f64 = 0.7;
/// What a wet day makes the next one likelier to be wet, in chance.
const RAIN_PERSISTENCE: f64 = 0.3;
/// The daily range of a wet day is narrower by this share.
const WET_RANGE_SHARE: f64 = 0.7;
/// A wet day's air is moister by this share of what is missing to saturation.
const WET_MOISTENING: f64 = 0.35;
/// A day with as much rain counts as wet [mm].
const WET_FROM_MM: f64 = 0.2;
/// Mean of the square root of an exponential number: half the root of pi.
const MEAN_ROOT: f64 = 0.886_226_925_452_758;
/// Departures are cut at so many spreads.
const FARTHEST: f64 = 3.5;

/// Which weather is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Forecast<'a> {
    /// What is usual.
    pub climate: &'a Climate,
    /// When it begins: milliseconds since 1970-01-01T00:00Z, a whole hour.
    pub start_ms: i64,
    /// How many hours.
    pub hours: usize,
    /// The same seed gives the same weather.
    pub seed: u64,
    /// Which member of the ensemble, from 0.
    pub member: u32,
    /// What is known up to the start: the first days lean on its last 24 hours.
    pub known: Option<&'a Series>,
}

/// Draws one member.
///
/// A longer forecast begins with the shorter one. The hours of the first day that precede the
/// start are drawn too and left out. Days lean on what is known, hours do not: between the last
/// known hour and the first drawn one the temperature may jump by a few kelvins.
pub fn forecast(asked: &Forecast<'_>) -> Result<Series, OutOfTime> {
    let place = asked.climate.place();
    let (first, days, skipped) = days_of(place, asked.start_ms, asked.hours)?;
    // One day more, so that the last night heads for a morning of its own.
    let days = days + 1;
    let mut draws = Draws::new(asked.seed, asked.member, days);
    let (mut departure, mut was_wet) = match asked.known.and_then(|known| last_day(known, asked)) {
        Some(known) => {
            let normal = asked.climate.normal(first);
            let spread = spread_k(asked.climate, &normal);
            let departure = ((known.mean_c - normal.mean_c) / spread).clamp(-FARTHEST, FARTHEST);
            (departure, known.rain_mm >= WET_FROM_MM)
        }
        None => (
            draws.normal(),
            draws.uniform() < asked.climate.normal(first).wet_chance,
        ),
    };
    let mut drawn = Vec::with_capacity(days);
    let mut date = first;
    for _ in 0..days {
        let normal = asked.climate.normal(date);
        let shock = sqrt(1.0 - PERSISTENCE * PERSISTENCE) * draws.normal();
        departure = (PERSISTENCE * departure + shock).clamp(-FARTHEST, FARTHEST);
        was_wet = draws.uniform() < chance_of_rain(normal.wet_chance, was_wet);
        let mean_c = normal.mean_c + departure * spread_k(asked.climate, &normal);
        drawn.push(day(&normal, mean_c, was_wet, &mut draws));
        date = later(date, 1).ok_or(OutOfTime)?;
    }
    let series = hours_of_days(place, first, &drawn)?;
    cut(series, asked.start_ms, skipped, asked.hours)
}

/// Chance of a wet day after a wet or a dry one, with the usual share of wet days in the long run.
fn chance_of_rain(wet_chance: f64, was_wet: bool) -> f64 {
    let after_dry = wet_chance * (1.0 - RAIN_PERSISTENCE);
    if was_wet {
        after_dry + RAIN_PERSISTENCE
    } else {
        after_dry
    }
}

/// Spread of daily means around the usual [K]: wider inland, in winter and away from the tropics.
fn spread_k(climate: &Climate, normal: &DayNormal) -> f64 {
    let place = climate.place();
    let widest = match place.setting {
        Setting::Coast => 2.6,
        Setting::Between => 3.7,
        Setting::Inland => 4.8,
    };
    let away = (place.latitude_deg.abs() / 40.0).clamp(0.3, 1.0);
    let means = climate.months().map(|month| month.mean_c);
    let least = means.iter().copied().fold(f64::MAX, f64::min);
    let most = means.iter().copied().fold(f64::MIN, f64::max);
    let middle = f64::midpoint(least, most);
    let season = ((normal.mean_c - middle) / (most - middle).max(0.5)).clamp(-1.0, 1.0);
    widest * away * (1.0 - 0.2 * season)
}

fn day(normal: &DayNormal, mean_c: f64, wet: bool, draws: &mut Draws) -> WeatherDay {
    // Dry days are as much wider and drier as keeps the usual mean.
    let chance = normal.wet_chance.min(0.9);
    let range_share = if wet {
        WET_RANGE_SHARE
    } else {
        (1.0 - WET_RANGE_SHARE * chance) / (1.0 - chance)
    };
    let moistening = if wet {
        WET_MOISTENING
    } else {
        -WET_MOISTENING * chance / (1.0 - chance)
    };
    let missing = (1.0 - normal.relative_humidity) * (1.0 - moistening);
    let of_the_day = DayNormal {
        relative_humidity: (1.0 - missing).clamp(0.15, 1.0),
        wind_m_s: normal.wind_m_s * sqrt(-log(draws.uniform())) / MEAN_ROOT,
        ..*normal
    };
    let range_k = (normal.daily_range_k * range_share).min(25.0);
    let (amount, middle) = (draws.uniform(), draws.uniform());
    WeatherDay {
        rain_mm: if wet {
            -log(amount) * normal.wet_day_mm
        } else {
            0.0
        },
        rain_middle_h: Some(24.0 * middle),
        ..of_the_day.day(mean_c, range_k)
    }
}

struct LastDay {
    mean_c: f64,
    rain_mm: f64,
}

/// The 24 hours before the start.
fn last_day(known: &Series, asked: &Forecast<'_>) -> Option<LastDay> {
    let hours: Vec<&WeatherHour> = (1_i64..=24)
        .map(|back| known.at(asked.start_ms - back * HOUR_MS))
        .collect::<Option<_>>()?;
    let count = f64::from(u8::try_from(DAY_HOURS).ok()?);
    Some(LastDay {
        mean_c: hours.iter().map(|hour| hour.air_temperature_c).sum::<f64>() / count,
        rain_mm: hours.iter().map(|hour| hour.rain_mm).sum(),
    })
}

/// The chance of one member, in the order in which days need it.
struct Draws {
    uniforms: std::vec::IntoIter<f64>,
}

impl Draws {
    /// Two for a departure, one each for wet or dry, wind, rain and its hour.
    const A_DAY: usize = 6;

    fn new(seed: u64, member: u32, days: usize) -> Self {
        let mut stream = Stream::new(seed, &format!("weather ahead, member {member}"));
        Self {
            // One day more for the state before the first.
            uniforms: stream.uniforms((days + 1) * Self::A_DAY).into_iter(),
        }
    }

    fn uniform(&mut self) -> f64 {
        // The count above is that of the calls; the middle would be no harm.
        self.uniforms.next().unwrap_or(0.5)
    }

    /// A standard normal number (Box and Muller 1958).
    fn normal(&mut self) -> f64 {
        let (radius, angle) = (self.uniform(), self.uniform());
        sqrt(-2.0 * log(radius)) * cos(2.0 * PI * angle)
    }
}

#[cfg(test)]
mod tests;
