//! Hourly weather for a place: read from a file, made from daily extremes, from a climate, or drawn
//! ahead from a seed.
//!
//! Pure: no file, no clock, no network. A [`Series`] holds [`WeatherHour`]s without a gap from a
//! whole hour of UTC on; each is the mean, or the sum of rain, of the hour that begins then.
//! Elementary functions are those of `libm`, so that native and WebAssembly answers agree.

// Units stand in square brackets in our docs; they are no links.
#![allow(rustdoc::broken_intra_doc_links)]
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod air;
pub mod curve;
pub mod sun;

mod climate;
mod day;
mod generator;
mod place;
mod read;
mod series;

pub use climate::{Climate, ClimateError, MonthNormal, Overrides, SPREAD_K};
pub use day::{WeatherDay, hours_of_days};
pub use generator::{Forecast, forecast};
pub use place::{Place, Setting};
pub use read::{
    DayOrder, Filled, Kind, MOST_BYTES, MOST_ROWS, ReadError, ReadWeather, Reading, Report, read,
};
pub use series::{HOUR_MS, MOST_HOURS, OutOfTime, Series, WeatherHour};
