//! Rows of hours, or of parts of hours, on the grid of hours.

use super::error::ReadError;
use super::fill::{Known, fill};
use super::quantity::Quantity;
use super::table::Sheet;
use super::timeline::Timeline;
use super::{Kind, ReadWeather, Reading, Report};
use crate::air::relative_humidity;
use crate::series::{HOUR_MS, MOST_HOURS};

const USED: [Quantity; 6] = [
    Quantity::Temperature,
    Quantity::Humidity,
    Quantity::DewPoint,
    Quantity::Rain,
    Quantity::Wind,
    Quantity::Solar,
];

pub(super) fn read(sheet: &Sheet, reading: &Reading<'_>) -> Result<ReadWeather, ReadError> {
    let Some(temperature) = sheet.values(Quantity::Temperature)? else {
        return Err(ReadError::NoHeader);
    };
    if temperature.iter().all(Option::is_none) {
        return Err(ReadError::NoTemperature {
            column: sheet.header(Quantity::Temperature),
        });
    }
    let humidity = humidity(sheet, &temperature)?;
    let rain = sheet.values(Quantity::Rain)?.map(blanks_as_dry);
    let wind = sheet.values(Quantity::Wind)?;
    let solar = sheet.values(Quantity::Solar)?;
    let mut report = Report {
        kind: Kind::Hourly,
        rows: sheet.rows.len(),
        guessed_units: sheet.guessed_units(&USED),
        ..Report::default()
    };
    let timeline = Timeline::read(sheet, reading, &mut report)?;
    let instants = timeline.instants(sheet, reading, &mut report)?;
    let kept = in_order(instants, &mut report);
    let grid = Grid::over(&kept, timeline.hour_ending, sheet)?;
    let mean = |values: &[Option<f64>]| grid.means(&kept, values);
    let missing = || vec![None; grid.hours];
    let rain_is_rate = sheet
        .unit(Quantity::Rain)
        .is_some_and(|(unit, _)| unit.is_rate);
    let known = Known {
        start_ms: grid.first_hour * HOUR_MS,
        temperature: mean(&temperature),
        humidity: humidity.as_deref().map_or_else(missing, mean),
        rain: rain.as_deref().map_or_else(missing, |rain| {
            if rain_is_rate {
                mean(rain)
            } else {
                grid.sums(&kept, rain)
            }
        }),
        wind: wind.as_deref().map_or_else(missing, mean),
        solar: solar.as_deref().map_or_else(missing, mean),
    };
    let series = fill(known, reading.climate, &mut report).map_err(|_| ReadError::TooLong {
        first_row: sheet.rows[0].line,
        last_row: sheet.rows[sheet.rows.len() - 1].line,
    })?;
    Ok(ReadWeather { series, report })
}

/// The relative humidity of each row, from its dew point where it has only that.
fn humidity(
    sheet: &Sheet,
    temperature: &[Option<f64>],
) -> Result<Option<Vec<Option<f64>>>, ReadError> {
    let humidity = sheet.values(Quantity::Humidity)?;
    let Some(dew_points) = sheet.values(Quantity::DewPoint)? else {
        return Ok(humidity);
    };
    let by_dew_point = temperature
        .iter()
        .zip(dew_points)
        .map(|(temperature, dew_point)| Some(relative_humidity((*temperature)?, dew_point?)));
    Ok(Some(match humidity {
        Some(humidity) => humidity
            .into_iter()
            .zip(by_dew_point)
            .map(|(own, other)| own.or(other))
            .collect(),
        None => by_dew_point.collect(),
    }))
}

/// Some write only the hours in which rain fell: a column without a single nought means noughts
/// where it is blank.
pub(super) fn blanks_as_dry(rain: Vec<Option<f64>>) -> Vec<Option<f64>> {
    let has_any = rain.iter().flatten().next().is_some();
    let has_nought = rain.iter().flatten().any(|rain_mm| *rain_mm <= 0.0);
    if has_any && !has_nought {
        rain.into_iter()
            .map(|rain_mm| rain_mm.or(Some(0.0)))
            .collect()
    } else {
        rain
    }
}

/// The rows by time; of those with one time the one that stands last in the file.
fn in_order(instants: Vec<(usize, i64)>, report: &mut Report) -> Vec<(usize, i64)> {
    let mut latest = i64::MIN;
    for (_, instant) in &instants {
        report.out_of_order += usize::from(*instant < latest);
        latest = latest.max(*instant);
    }
    let mut sorted = instants;
    sorted.sort_by_key(|(index, instant)| (*instant, *index));
    let mut kept: Vec<(usize, i64)> = Vec::with_capacity(sorted.len());
    for row in sorted {
        match kept.last_mut() {
            Some(last) if last.1 == row.1 => {
                report.duplicates += 1;
                *last = row;
            }
            _ => kept.push(row),
        }
    }
    kept
}

/// The hours from the first row's to the last row's.
struct Grid {
    first_hour: i64,
    hours: usize,
    shift_ms: i64,
}

impl Grid {
    fn over(kept: &[(usize, i64)], hour_ending: bool, sheet: &Sheet) -> Result<Self, ReadError> {
        // Whatever ends on the hour lies before it.
        let shift_ms = i64::from(hour_ending);
        let (Some(first), Some(last)) = (kept.first(), kept.last()) else {
            return Err(ReadError::NoRows);
        };
        let hour = |instant_ms: i64| (instant_ms - shift_ms).div_euclid(HOUR_MS);
        let first_hour = hour(first.1);
        let hours = usize::try_from(hour(last.1) - first_hour + 1).unwrap_or(usize::MAX);
        if hours > MOST_HOURS {
            return Err(ReadError::TooLong {
                first_row: sheet.rows[first.0].line,
                last_row: sheet.rows[last.0].line,
            });
        }
        Ok(Self {
            first_hour,
            hours,
            shift_ms,
        })
    }

    /// Sums and counts by hour.
    fn gathered(&self, kept: &[(usize, i64)], values: &[Option<f64>]) -> Vec<(f64, f64)> {
        let mut gathered = vec![(0.0, 0.0); self.hours];
        for (index, instant_ms) in kept {
            let hour = (instant_ms - self.shift_ms).div_euclid(HOUR_MS) - self.first_hour;
            let slot = usize::try_from(hour)
                .ok()
                .and_then(|hour| gathered.get_mut(hour));
            if let (Some(slot), Some(value)) = (slot, values[*index]) {
                slot.0 += value;
                slot.1 += 1.0;
            }
        }
        gathered
    }

    fn means(&self, kept: &[(usize, i64)], values: &[Option<f64>]) -> Vec<Option<f64>> {
        self.gathered(kept, values)
            .into_iter()
            .map(|(sum, count)| (count > 0.0).then(|| sum / count))
            .collect()
    }

    fn sums(&self, kept: &[(usize, i64)], values: &[Option<f64>]) -> Vec<Option<f64>> {
        self.gathered(kept, values)
            .into_iter()
            .map(|(sum, count)| (count > 0.0).then_some(sum))
            .collect()
    }
}
