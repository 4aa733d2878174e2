//! Rows of days with a minimum and a maximum, as hours.

use std::collections::BTreeMap;

use jiff::civil::Date;

use super::error::ReadError;
use super::hourly::blanks_as_dry;
use super::quantity::Quantity;
use super::table::Sheet;
use super::timeline::Timeline;
use super::{Filled, Kind, ReadWeather, Reading, Report};
use crate::air::dew_point_of_humidity_c;
use crate::day::{WeatherDay, hours_of_days};
use crate::place::DAY_HOURS;
use crate::series::{MOST_HOURS, days_between, later};

/// Megajoules a square metre in a day of a mean watt.
const MJ_DAY_PER_W: f64 = 86_400.0 / 1e6;

const USED: [Quantity; 8] = super::quantity::QUANTITIES;

/// The columns of a daily file.
struct Values {
    minimum: Option<Vec<Option<f64>>>,
    maximum: Option<Vec<Option<f64>>>,
    mean: Option<Vec<Option<f64>>>,
    humidity: Option<Vec<Option<f64>>>,
    dew_point: Option<Vec<Option<f64>>>,
    rain: Option<Vec<Option<f64>>>,
    wind: Option<Vec<Option<f64>>>,
    solar: Option<Vec<Option<f64>>>,
}

fn at(column: Option<&Vec<Option<f64>>>, row: usize) -> Option<f64> {
    column.and_then(|values| values[row])
}

pub(super) fn read(sheet: &Sheet, reading: &Reading<'_>) -> Result<ReadWeather, ReadError> {
    let values = Values {
        minimum: sheet.values(Quantity::Minimum)?,
        maximum: sheet.values(Quantity::Maximum)?,
        mean: sheet.values(Quantity::Temperature)?,
        humidity: sheet.values(Quantity::Humidity)?,
        dew_point: sheet.values(Quantity::DewPoint)?,
        rain: sheet.values(Quantity::Rain)?.map(blanks_as_dry),
        wind: sheet.values(Quantity::Wind)?,
        solar: sheet.values(Quantity::Solar)?,
    };
    let mut report = Report {
        kind: Kind::Daily,
        rows: sheet.rows.len(),
        guessed_units: sheet.guessed_units(&USED),
        ..Report::default()
    };
    let timeline = Timeline::read(sheet, reading, &mut report)?;
    let rows = by_date(timeline.dates(), &mut report);
    let (Some((first, first_row)), Some((last, last_row))) =
        (rows.first_key_value(), rows.last_key_value())
    else {
        return Err(ReadError::NoRows);
    };
    let too_long = || ReadError::TooLong {
        first_row: sheet.rows[*first_row].line,
        last_row: sheet.rows[*last_row].line,
    };
    let count = usize::try_from(days_between(*first, *last) + 1).map_err(|_| too_long())?;
    if count > MOST_HOURS / DAY_HOURS {
        return Err(too_long());
    }
    let mut days = Vec::with_capacity(count);
    let mut date = *first;
    let mut any = false;
    for _ in 0..count {
        let usual = reading.climate.day(date);
        let row = rows.get(&date).copied();
        let extremes = match row {
            Some(row) => extremes(
                &values,
                row,
                sheet.rows[row].line,
                &usual,
                &mut report.temperature,
            )?,
            None => None,
        };
        any |= extremes.is_some();
        days.push(day(&values, row, extremes, &usual, &mut report));
        date = later(date, 1).ok_or_else(too_long)?;
    }
    if !any {
        let quantity = if values.mean.is_some() {
            Quantity::Temperature
        } else {
            Quantity::Minimum
        };
        return Err(ReadError::NoTemperature {
            column: sheet.header(quantity),
        });
    }
    let series = hours_of_days(reading.climate.place(), *first, &days).map_err(|_| too_long())?;
    Ok(ReadWeather { series, report })
}

/// The row of each date; the last in the file counts.
fn by_date(
    dates: impl Iterator<Item = (usize, Date)>,
    report: &mut Report,
) -> BTreeMap<Date, usize> {
    let mut rows = BTreeMap::new();
    for (row, date) in dates {
        let is_late = rows
            .last_key_value()
            .is_some_and(|(latest, _)| *latest > date);
        let kept = rows.entry(date).and_modify(|kept: &mut usize| {
            report.duplicates += 1;
            *kept = row.max(*kept);
        });
        if let std::collections::btree_map::Entry::Vacant(vacant) = kept {
            vacant.insert(row);
            report.out_of_order += usize::from(is_late);
        }
    }
    rows
}

/// Minimum and maximum of a row; where one of them or both are missing, the mean and the usual
/// range have to serve.
fn extremes(
    values: &Values,
    row: usize,
    line: u64,
    usual: &WeatherDay,
    filled: &mut Filled,
) -> Result<Option<(f64, f64)>, ReadError> {
    let minimum = at(values.minimum.as_ref(), row);
    let maximum = at(values.maximum.as_ref(), row);
    let mean = at(values.mean.as_ref(), row);
    let range_k = usual.maximum_c - usual.minimum_c;
    let found = match (minimum, maximum, mean) {
        (Some(minimum), Some(maximum), _) if minimum > maximum => {
            return Err(ReadError::MinimumAboveMaximum { row: line });
        }
        (Some(minimum), Some(maximum), _) => return Ok(Some((minimum, maximum))),
        (Some(minimum), None, Some(mean)) if mean >= minimum => (minimum, 2.0 * mean - minimum),
        (None, Some(maximum), Some(mean)) if mean <= maximum => (2.0 * mean - maximum, maximum),
        (_, _, Some(mean)) => (mean - range_k / 2.0, mean + range_k / 2.0),
        (Some(minimum), None, None) => (minimum, minimum + range_k),
        (None, Some(maximum), None) => (maximum - range_k, maximum),
        (None, None, None) => return Ok(None),
    };
    filled.estimated += 1;
    Ok(Some(found))
}

fn day(
    values: &Values,
    row: Option<usize>,
    extremes: Option<(f64, f64)>,
    usual: &WeatherDay,
    report: &mut Report,
) -> WeatherDay {
    let of = |column: &Option<Vec<Option<f64>>>| row.and_then(|row| at(column.as_ref(), row));
    let is_measured = extremes.is_some();
    let (minimum_c, maximum_c) = extremes.unwrap_or((usual.minimum_c, usual.maximum_c));
    report.temperature.usual += usize::from(!is_measured);
    let mean_c = of(&values.mean).unwrap_or(f64::midpoint(minimum_c, maximum_c));
    let by_humidity = |humidity| dew_point_of_humidity_c(mean_c, humidity);
    let own_dew_point = of(&values.dew_point).or_else(|| of(&values.humidity).map(by_humidity));
    let radiation_mj = of(&values.solar).map(|mean_w| mean_w * MJ_DAY_PER_W);
    for (is_known, filled) in [
        (own_dew_point.is_some(), &mut report.humidity),
        (radiation_mj.is_some(), &mut report.solar),
    ] {
        match (is_known, is_measured) {
            (true, _) => {}
            (false, true) => filled.estimated += 1,
            (false, false) => filled.usual += 1,
        }
    }
    let or_usual = |own: Option<f64>, usual: f64, filled: &mut Filled| {
        filled.usual += usize::from(own.is_none());
        own.unwrap_or(usual)
    };
    WeatherDay {
        minimum_c,
        maximum_c,
        dew_point_c: own_dew_point.or(if is_measured { None } else { usual.dew_point_c }),
        rain_mm: or_usual(of(&values.rain), usual.rain_mm, &mut report.rain),
        wind_m_s: or_usual(of(&values.wind), usual.wind_m_s, &mut report.wind),
        radiation_mj,
        rain_middle_h: None,
    }
}
