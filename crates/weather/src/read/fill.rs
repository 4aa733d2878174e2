//! Hours with gaps as hours without: between neighbours, from the temperature, or from the climate.

use super::{Filled, Report};
use crate::air::{dew_point_of_humidity_c, relative_humidity};
use crate::climate::Climate;
use crate::day::radiation_adjustment;
use crate::place::{DAY_HOURS, Place};
use crate::series::{OutOfTime, Series, WeatherHour, later, local_hour};
use crate::sun::{W_PER_MJ_H, hours_of_day_mj, share_by_temperature_range};

/// The longest gap that is laid between its ends [h].
const LONGEST_INTERPOLATED: usize = 6;
/// A day with as many hours of the series has a range of its own [h].
const ENOUGH_OF_A_DAY: usize = 18;

/// What a file says of each hour.
pub(super) struct Known {
    pub start_ms: i64,
    pub temperature: Vec<Option<f64>>,
    pub humidity: Vec<Option<f64>>,
    pub rain: Vec<Option<f64>>,
    pub wind: Vec<Option<f64>>,
    pub solar: Vec<Option<f64>>,
}

/// Fills every gap and counts what was filled.
pub(super) fn fill(
    mut known: Known,
    climate: &Climate,
    report: &mut Report,
) -> Result<Series, OutOfTime> {
    let usual = climate.hours(known.start_ms, known.temperature.len())?;
    report.temperature.interpolated = interpolate(&mut known.temperature);
    report.humidity.interpolated = interpolate(&mut known.humidity);
    report.wind.interpolated = interpolate(&mut known.wind);
    report.rain.interpolated = short_gaps_dry(&mut known.rain);
    let by_temperature = Estimates::of(&known, climate, &usual)?;
    let mut hours = Vec::with_capacity(usual.hours.len());
    for (hour, usual) in usual.hours.iter().enumerate() {
        let own_temperature = known.temperature[hour];
        let air_temperature_c = or_usual(
            own_temperature,
            usual.air_temperature_c,
            &mut report.temperature,
        );
        // What follows from the temperature needs one that was measured.
        let estimate = |value: f64| own_temperature.map(|_| value);
        hours.push(WeatherHour {
            air_temperature_c,
            relative_humidity: or_else(
                known.humidity[hour],
                estimate(relative_humidity(
                    air_temperature_c,
                    by_temperature.dew_point_c[hour],
                )),
                usual.relative_humidity,
                &mut report.humidity,
            ),
            rain_mm: or_usual(known.rain[hour], usual.rain_mm, &mut report.rain),
            wind_m_s: or_usual(known.wind[hour], usual.wind_m_s, &mut report.wind),
            solar_w_m2: or_else(
                known.solar[hour],
                estimate(by_temperature.solar_w_m2[hour]),
                usual.solar_w_m2,
                &mut report.solar,
            ),
        });
    }
    Ok(Series {
        place: *climate.place(),
        start_ms: known.start_ms,
        hours,
    })
}

fn or_usual(own: Option<f64>, usual: f64, filled: &mut Filled) -> f64 {
    or_else(own, None, usual, filled)
}

fn or_else(own: Option<f64>, estimate: Option<f64>, usual: f64, filled: &mut Filled) -> f64 {
    if let Some(own) = own {
        return own;
    }
    if let Some(estimate) = estimate {
        filled.estimated += 1;
        return estimate;
    }
    filled.usual += 1;
    usual
}

/// The runs of missing values that are short enough.
fn short_gaps(values: &[Option<f64>]) -> Vec<std::ops::Range<usize>> {
    let mut gaps = Vec::new();
    let mut from = 0;
    while from < values.len() {
        let length = values[from..]
            .iter()
            .take_while(|value| value.is_none())
            .count();
        // A column without a value has no ends to lay a line between.
        if (1..=LONGEST_INTERPOLATED).contains(&length) && length < values.len() {
            gaps.push(from..from + length);
        }
        from += length + 1;
    }
    gaps
}

/// Lays short gaps straight between their ends; at an end of the series the one neighbour holds.
fn interpolate(values: &mut [Option<f64>]) -> usize {
    let mut count = 0;
    for gap in short_gaps(values) {
        let before = gap.start.checked_sub(1).and_then(|at| values[at]);
        let after = values.get(gap.end).copied().flatten();
        let (Some(from), Some(until)) = (before.or(after), after.or(before)) else {
            continue;
        };
        let steps = gap.clone().fold(1.0, |steps, _| steps + 1.0);
        let mut step = 1.0;
        count += gap.len();
        for value in &mut values[gap] {
            *value = Some(from + (until - from) * step / steps);
            step += 1.0;
        }
    }
    count
}

/// Rain is not laid between neighbours: a row's rain may be that of all the hours since the last.
fn short_gaps_dry(values: &mut [Option<f64>]) -> usize {
    let gaps = short_gaps(values);
    for gap in &gaps {
        values[gap.clone()].fill(Some(0.0));
    }
    gaps.iter().map(ExactSizeIterator::len).sum()
}

/// What the temperatures of a day tell of its humidity and its sun, for each hour.
struct Estimates {
    dew_point_c: Vec<f64>,
    solar_w_m2: Vec<f64>,
}

impl Estimates {
    fn of(known: &Known, climate: &Climate, usual: &Series) -> Result<Self, OutOfTime> {
        let place = climate.place();
        let count = usual.hours.len();
        let (mut date, mut hour_of_day) = local_hour(place, known.start_ms).ok_or(OutOfTime)?;
        let mut estimates = Self {
            dew_point_c: Vec::with_capacity(count),
            solar_w_m2: Vec::with_capacity(count),
        };
        let mut from = 0;
        while from < count {
            let until = (from + DAY_HOURS - hour_of_day).min(count);
            let day = usual_day(climate, date);
            let (least, range) = extremes(&known.temperature[from..until]).unwrap_or(day);
            let sun = sun_of_hours(place, date.day_of_year(), range);
            for hour in from..until {
                estimates
                    .dew_point_c
                    .push(least.unwrap_or_else(|| usual_dew_point(usual, hour)));
                estimates.solar_w_m2.push(sun[hour_of_day + hour - from]);
            }
            from = until;
            hour_of_day = 0;
            date = later(date, 1).ok_or(OutOfTime)?;
        }
        Ok(estimates)
    }
}

/// Of a day with too few hours: no minimum, and the usual range.
fn usual_day(climate: &Climate, date: jiff::civil::Date) -> (Option<f64>, f64) {
    let day = climate.day(date);
    (None, day.maximum_c - day.minimum_c)
}

fn usual_dew_point(usual: &Series, hour: usize) -> f64 {
    let hour = &usual.hours[hour];
    dew_point_of_humidity_c(hour.air_temperature_c, hour.relative_humidity)
}

/// The minimum and the range of a day, if enough of its hours are known.
fn extremes(temperatures: &[Option<f64>]) -> Option<(Option<f64>, f64)> {
    let known = || temperatures.iter().flatten().copied();
    let least = known().fold(f64::MAX, f64::min);
    let most = known().fold(f64::MIN, f64::max);
    (known().count() >= ENOUGH_OF_A_DAY).then_some((Some(least), most - least))
}

fn sun_of_hours(place: &Place, day_of_year: i16, range_k: f64) -> [f64; DAY_HOURS] {
    let adjustment = radiation_adjustment(place.setting);
    let share = share_by_temperature_range(range_k, adjustment, place.elevation_m);
    hours_of_day_mj(place, day_of_year).map(|mj| mj * share * W_PER_MJ_H)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_up_to_six_hours_are_laid_between_their_ends() {
        let mut values = vec![None, Some(1.0), None, None, None, Some(5.0), None];
        assert_eq!(interpolate(&mut values), 5);
        let all: Vec<f64> = values.into_iter().flatten().collect();
        assert_eq!(all, [1.0, 1.0, 2.0, 3.0, 4.0, 5.0, 5.0]);

        let mut six = [&[Some(0.0)], &[None; 6][..], &[Some(7.0)]].concat();
        assert_eq!(interpolate(&mut six), 6);
        let mut seven = [&[Some(0.0)], &[None; 7][..], &[Some(8.0)]].concat();
        assert_eq!(interpolate(&mut seven), 0);
        assert_eq!(interpolate(&mut [None, None]), 0);
    }
}
