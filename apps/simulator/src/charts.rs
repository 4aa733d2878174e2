//! Core temperature, moisture, oxygen and volume over time: picture, sentence, key and table, all
//! from the same points.

use heapwright_answers::heap::{Band, Bands, Snapshot};
use heapwright_answers::{Done, ForecastAnswer, PlanAnswer};
use heapwright_drawings::{BandPoint, Doing, Event, OverTime, over_time};
use heapwright_journal::Moment;
use heapwright_journal::content::ProbePlace;
use heapwright_quantity::{UnitSystem, fahrenheit_from_celsius};
use heapwright_texts::Locale;
use heapwright_wire::{ChartShown, TableShown};
use heapwright_wording::{self as wording, pictures_read as words};

use crate::by_day::{DayRow, by_day, done, nearest_to_now};
use crate::frames::shown_from_d;
use crate::outlook::DAYS;

/// About the most points of a line.
const MOST_ROWS: usize = 124;

/// A value of the heap over time.
struct Value {
    name: &'static str,
    is_core: bool,
    unit: &'static str,
    digits: usize,
    row: fn(&Snapshot) -> f64,
    bands: Option<fn(&Bands) -> &Vec<Band>>,
    /// From the engine's unit to that which is shown.
    shown: fn(f64) -> f64,
    /// Values that mean something.
    marks: Vec<(f64, &'static str)>,
    locale: Locale,
}

const CUBIC_METRE_LITRES: f64 = 1000.0;
/// Source: exact by definition of the US gallon.
const GALLON_LITRES: f64 = 3.785_411_784;

fn values(locale: Locale) -> [Value; 4] {
    let us = locale.units == UnitSystem::UsCustomary;
    [
        Value {
            name: words::value_core_temperature(locale),
            is_core: true,
            unit: if us { "\u{b0}F" } else { "\u{b0}C" },
            digits: 0,
            row: |row| row.core_temperature_c,
            bands: Some(|bands| &bands.core_temperature_c),
            shown: if us {
                fahrenheit_from_celsius
            } else {
                |value| value
            },
            marks: vec![(55.0, words::mark_hot(locale))],
            locale,
        },
        Value {
            name: words::value_moisture(locale),
            is_core: false,
            unit: "%",
            digits: 0,
            row: |row| row.moisture,
            bands: Some(|bands| &bands.moisture),
            shown: |value| 100.0 * value,
            marks: vec![
                (0.40, words::mark_too_dry(locale)),
                (0.65, words::mark_too_wet(locale)),
            ],
            locale,
        },
        Value {
            name: words::value_lowest_oxygen(locale),
            is_core: false,
            unit: "%",
            digits: 1,
            row: |row| row.lowest_oxygen_pct,
            bands: None,
            shown: |value| value.max(0.0),
            marks: vec![(2.0, words::mark_short_of_air(locale))],
            locale,
        },
        Value {
            name: words::value_volume(locale),
            is_core: false,
            unit: if us { "gal" } else { "L" },
            digits: 0,
            row: |row| row.volume_m3,
            bands: Some(|bands| &bands.volume_m3),
            shown: if us {
                |value| value * CUBIC_METRE_LITRES / GALLON_LITRES
            } else {
                |value| value * CUBIC_METRE_LITRES
            },
            marks: Vec::new(),
            locale,
        },
    ]
}

impl Value {
    fn text(&self, value: f64) -> String {
        if self.digits > 0 && value < 10.0 {
            return self.locale.significant((value * 10.0).round() / 10.0, 2);
        }
        let whole = value.round();
        let minus = if whole < 0.0 { "\u{2212}" } else { "" };
        format!("{minus}{}", whole.abs())
    }

    fn with_unit(&self, value: f64) -> String {
        format!("{}\u{a0}{}", self.text(value), self.unit)
    }

    /// What is to be expected of a plan from a day on, in days from now.
    fn points(&self, plan: &PlanAnswer, now_d: f64, from_d: f64) -> Vec<BandPoint> {
        let answer = &plan.answer;
        let point = |time_d: f64, band: &Band| BandPoint {
            day: time_d - now_d,
            low: (self.shown)(band.low),
            lower: (self.shown)(band.lower),
            middle: (self.shown)(band.median),
            upper: (self.shown)(band.upper),
            high: (self.shown)(band.high),
        };
        let all: Vec<BandPoint> = match answer.bands.as_ref().zip(self.bands) {
            Some((bands, of)) => bands
                .time_d
                .iter()
                .zip(of(bands))
                .map(|(time_d, band)| point(*time_d, band))
                .collect(),
            None => answer
                .series
                .iter()
                .map(|row| {
                    let value = (self.row)(row);
                    let band = Band {
                        low: value,
                        lower: value,
                        median: value,
                        upper: value,
                        high: value,
                    };
                    point(row.time_d, &band)
                })
                .collect(),
        };
        let all: Vec<BandPoint> = all
            .into_iter()
            .filter(|point| point.day >= from_d - 0.13)
            // What lies a hair before the first day stands at it, in the picture as in the table.
            .map(|point| BandPoint {
                day: point.day.max(from_d),
                ..point
            })
            .collect();
        let step = all.len().div_ceil(MOST_ROWS).max(1);
        let last = all.len().saturating_sub(1);
        // Counted from now, so that now is one of them.
        let now = nearest_to_now(&all).unwrap_or_default();
        all.into_iter()
            .enumerate()
            .filter(|(index, _)| {
                index.abs_diff(now).is_multiple_of(step) || [0, last].contains(index)
            })
            .map(|(_, point)| point)
            .collect()
    }
}

/// The pictures of a plan over time, the other plans in them as lines.
pub fn charts(
    forecast: &ForecastAnswer,
    which: usize,
    width_px: f64,
    locale: Locale,
) -> Vec<ChartShown> {
    let Some(plan) = forecast.plans.get(which) else {
        return Vec::new();
    };
    values(locale)
        .iter()
        .map(|value| chart(forecast, which, plan, value, width_px, locale))
        .collect()
}

fn chart(
    forecast: &ForecastAnswer,
    which: usize,
    plan: &PlanAnswer,
    value: &Value,
    width_px: f64,
    locale: Locale,
) -> ChartShown {
    let now_d = forecast.now_d;
    let from_d = shown_from_d(now_d);
    let points = value.points(plan, now_d, from_d);
    let has_bands = value.bands.is_some() && plan.answer.bands.is_some();
    let others: Vec<(String, Vec<BandPoint>)> = forecast
        .plans
        .iter()
        .enumerate()
        .filter(|(index, _)| *index != which)
        // What is past is the same for all.
        .map(|(_, other)| (other.plan.name.clone(), value.points(other, now_d, -0.13)))
        .collect();
    let is_core = value.is_core;
    let readings: Vec<(f64, f64)> = forecast
        .readings
        .iter()
        .filter(|reading| is_core && matches!(reading.place, None | Some(ProbePlace::Core)))
        .map(|reading| (reading.day - now_d, (value.shown)(reading.temperature_c)))
        .filter(|(day, _)| *day >= from_d)
        .collect();
    let shown = OverTime {
        from_day: from_d,
        to_day: f64::from(DAYS),
        bands: points.clone(),
        others: others
            .iter()
            .map(|(name, points)| {
                let line = points.iter().map(|point| (point.day, point.middle));
                (name.clone(), line.collect())
            })
            .collect(),
        readings: readings.clone(),
        events: events(plan, now_d, from_d),
        doings: Doing::ALL
            .into_iter()
            .zip(words::doings(locale).map(str::to_owned))
            .collect(),
        dates: dates(forecast.now, from_d, locale),
        now: words::now(locale).to_owned(),
        marks: value
            .marks
            .iter()
            .map(|(mark, word)| ((value.shown)(*mark), (*word).to_owned()))
            .collect(),
        unit: value.unit.to_owned(),
    };
    let plot_height_px = (width_px * 0.6).clamp(210.0, 300.0);
    let picture = over_time(&shown, width_px, plot_height_px);
    let days = by_day(forecast.now, &points, locale);
    let done = done(forecast.now, &shown, &days, |value_read| {
        words::probe_showed(&value.with_unit(value_read), locale)
    });
    let placed: Vec<(f64, f64)> = days
        .iter()
        .map(|row| (row.point.day, row.point.middle))
        .collect();
    ChartShown {
        name: value.name.to_owned(),
        width_px,
        height_px: picture.height,
        inside: picture.svg_inside(),
        sentence: sentence(value, &points, has_bands, locale),
        key: key(plan, has_bands, &others, !readings.is_empty(), locale),
        at: shown.places(&placed, width_px, plot_height_px),
        at_now: days
            .iter()
            .position(|row| row.midnights == 0)
            .unwrap_or_default(),
        plot_px: shown.plot_px(width_px, plot_height_px),
        unit: value.unit.to_owned(),
        has_bands,
        has_done: done.is_some(),
        table: table(value, &days, has_bands, &others, done, locale),
    }
}

/// Days that may be named at the axis, from a day to the last: of each month the first and the
/// middle, and then those between, each where it begins.
fn dates(now: Moment, from_d: f64, locale: Locale) -> Vec<(f64, String)> {
    #[allow(clippy::cast_possible_truncation)] // some days
    let from = from_d.floor() as i64;
    let all: Vec<(f64, i8, String)> = (from..=i64::from(DAYS) + 1)
        .filter_map(|day| {
            let after_ms = day.checked_mul(86_400_000)?;
            let at = Moment::new(now.instant_ms.checked_add(after_ms)?, now.offset_min)?.local();
            let minutes = f64::from(at.hour()) * 60.0 + f64::from(at.minute());
            let name = words::short_date(
                u8::try_from(at.day()).ok()?,
                u8::try_from(at.month()).ok()?,
                locale,
            );
            #[allow(clippy::cast_precision_loss)] // some days
            let begins = day as f64 - minutes / 1440.0;
            Some((begins, at.day(), name))
        })
        .collect();
    [[1, 15], [8, 22]]
        .iter()
        .flat_map(|wanted| all.iter().filter(|(_, day, _)| wanted.contains(day)))
        .map(|(begins, _, name)| (*begins, name.clone()))
        .collect()
}

fn sentence(value: &Value, points: &[BandPoint], has_bands: bool, locale: Locale) -> String {
    let Some(now) = nearest_to_now(points) else {
        return String::new();
    };
    let ahead = || points[now..].iter();
    let now = &points[now];
    let least = ahead()
        .map(|point| point.middle)
        .fold(f64::INFINITY, f64::min);
    let most = ahead()
        .map(|point| point.middle)
        .fold(f64::NEG_INFINITY, f64::max);
    let low = ahead().map(|point| point.low).fold(f64::INFINITY, f64::min);
    let high = ahead()
        .map(|point| point.high)
        .fold(f64::NEG_INFINITY, f64::max);
    let (low, high) = (value.with_unit(low), value.with_unit(high));
    wording::ahead::over_time_line(
        value.name,
        &value.with_unit(now.middle),
        (&value.with_unit(least), &value.with_unit(most)),
        has_bands.then_some((low.as_str(), high.as_str())),
        locale,
    )
}

fn key(
    plan: &PlanAnswer,
    has_bands: bool,
    others: &[(String, Vec<BandPoint>)],
    has_readings: bool,
    locale: Locale,
) -> Vec<(String, String)> {
    let one = |class: &str, words: String| (class.to_owned(), words);
    let mut key = Vec::new();
    if has_bands {
        key.push(one(
            "key-time-middle",
            words::key_middle(&plan.plan.name, locale),
        ));
        key.push(one("key-time-half", words::key_half(locale).to_owned()));
        key.push(one(
            "key-time-wide",
            words::key_nine_of_ten(locale).to_owned(),
        ));
    } else {
        key.push(one("key-time-middle", plan.plan.name.clone()));
    }
    for (index, (name, _)) in others.iter().enumerate() {
        key.push(one(&format!("key-time-other-{}", index % 3), name.clone()));
    }
    if has_readings {
        key.push(one(
            "key-time-reading",
            words::key_reading(locale).to_owned(),
        ));
    }
    key
}

fn table(
    value: &Value,
    days: &[DayRow<'_>],
    has_bands: bool,
    others: &[(String, Vec<BandPoint>)],
    done: Option<Vec<String>>,
    locale: Locale,
) -> TableShown {
    let mut heads = words::table_heads(value.unit, has_bands, locale);
    heads.extend(others.iter().map(|(name, _)| name.clone()));
    heads.extend(done.is_some().then(|| words::done_head(locale).to_owned()));
    let range = |low: f64, high: f64| words::range(&value.text(low), &value.text(high), locale);
    let rows = days
        .iter()
        .enumerate()
        .map(|(index, DayRow { name, point, .. })| {
            let mut row = vec![name.clone(), value.text(point.middle)];
            if has_bands {
                row.push(range(point.lower, point.upper));
                row.push(range(point.low, point.high));
            }
            row.extend(others.iter().map(|(_, points)| {
                points
                    .iter()
                    .find(|other| (other.day - point.day).abs() < 0.13)
                    .map_or_else(String::new, |other| value.text(other.middle))
            }));
            row.extend(
                done.as_ref()
                    .map(|done| done.get(index).cloned().unwrap_or_default()),
            );
            row
        })
        .collect();
    TableShown { heads, rows }
}

/// What was and will be done, in days from now.
fn events(plan: &PlanAnswer, now_d: f64, from_d: f64) -> Vec<Event> {
    plan.answer
        .done
        .iter()
        .filter(|(day, _)| day - now_d >= from_d)
        .map(|(day, done)| Event {
            day: day - now_d,
            doing: match done {
                Done::Fed => Doing::Fed,
                Done::Turned => Doing::Turned,
                Done::Watered => Doing::Watered,
                Done::Covered => Doing::Covered,
                Done::TakenOut => Doing::TakenOut,
            },
            planned: *day >= now_d - 1e-9,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_of_the_axis_lie_where_they_begin_the_first_of_a_month_before_others() {
        // 26 November 2026, 18:00 in UTC.
        let now = Moment::new(1_795_716_000_000, 0).unwrap();
        assert_eq!(now.local().day(), 26);
        let dates = dates(now, -10.0, Locale::default());
        let names: Vec<&str> = dates.iter().map(|(_, name)| name.as_str()).collect();
        assert_eq!(
            names,
            [
                "1\u{a0}Dec",
                "15\u{a0}Dec",
                "22\u{a0}Nov",
                "8\u{a0}Dec",
                "22\u{a0}Dec"
            ]
        );
        assert_eq!(dates[0].0, 4.25, "six hours of this day are left");
    }
}
