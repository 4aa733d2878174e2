//! Core temperature, moisture, oxygen and volume over time: picture, sentence, key and table, all
//! from the same points.

use heapwright_answers::heap::{Band, Bands, Snapshot};
use heapwright_answers::{Done, ForecastAnswer, PlanAnswer};
use heapwright_drawings::{BandPoint, OverTime, over_time};
use heapwright_journal::content::ProbePlace;
use heapwright_quantity::{UnitSystem, fahrenheit_from_celsius, significant};
use heapwright_texts::Locale;
use heapwright_wire::{ChartShown, TableShown};
use heapwright_wording as wording;

use crate::frames::shown_from_d;
use crate::outlook::DAYS;

/// More flags than this would cover the picture: then feeds are left out.
const MOST_FLAGS: usize = 24;
/// The most rows of a table, and points of a line.
const MOST_ROWS: usize = 124;

/// A value of the heap over time.
struct Value {
    name: &'static str,
    unit: &'static str,
    digits: usize,
    row: fn(&Snapshot) -> f64,
    bands: Option<fn(&Bands) -> &Vec<Band>>,
    /// From the engine's unit to that which is shown.
    shown: fn(f64) -> f64,
    /// Values that mean something.
    marks: &'static [(f64, &'static str)],
}

const CUBIC_METRE_LITRES: f64 = 1000.0;
/// Source: exact by definition of the US gallon.
const GALLON_LITRES: f64 = 3.785_411_784;

fn values(locale: Locale) -> [Value; 4] {
    let us = locale.units == UnitSystem::UsCustomary;
    [
        Value {
            name: "Core temperature",
            unit: if us { "\u{b0}F" } else { "\u{b0}C" },
            digits: 0,
            row: |row| row.core_temperature_c,
            bands: Some(|bands| &bands.core_temperature_c),
            shown: if us {
                fahrenheit_from_celsius
            } else {
                |value| value
            },
            marks: &[(55.0, "hot from here")],
        },
        Value {
            name: "Moisture",
            unit: "%",
            digits: 0,
            row: |row| row.moisture,
            bands: Some(|bands| &bands.moisture),
            shown: |value| 100.0 * value,
            marks: &[(0.40, "too dry below"), (0.65, "too wet above")],
        },
        Value {
            name: "Lowest oxygen",
            unit: "%",
            digits: 1,
            row: |row| row.lowest_oxygen_pct,
            bands: None,
            shown: |value| value.max(0.0),
            marks: &[(2.0, "short of air below")],
        },
        Value {
            name: "Volume",
            unit: if us { "gal" } else { "L" },
            digits: 0,
            row: |row| row.volume_m3,
            bands: Some(|bands| &bands.volume_m3),
            shown: if us {
                |value| value * CUBIC_METRE_LITRES / GALLON_LITRES
            } else {
                |value| value * CUBIC_METRE_LITRES
            },
            marks: &[],
        },
    ]
}

impl Value {
    fn text(&self, value: f64) -> String {
        if self.digits > 0 && value < 10.0 {
            return significant((value * 10.0).round() / 10.0, 2);
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
            .collect();
        let step = all.len().div_ceil(MOST_ROWS).max(1);
        let last = all.len().saturating_sub(1);
        all.into_iter()
            .enumerate()
            .filter(|(index, _)| index % step == 0 || *index == last)
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
    let is_core = value.name == "Core temperature";
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
        flags: flags(plan, now_d, from_d),
        marks: value
            .marks
            .iter()
            .map(|(mark, word)| ((value.shown)(*mark), (*word).to_owned()))
            .collect(),
        unit: value.unit.to_owned(),
    };
    let height_px = (width_px * 0.62).clamp(220.0, 320.0);
    ChartShown {
        name: value.name.to_owned(),
        width_px,
        height_px,
        inside: over_time(&shown, width_px, height_px).svg_inside(),
        sentence: sentence(value, &points, has_bands, locale),
        key: key(plan, has_bands, &others, !readings.is_empty()),
        table: table(forecast, value, &points, has_bands, &others, locale),
    }
}

fn sentence(value: &Value, points: &[BandPoint], has_bands: bool, locale: Locale) -> String {
    let ahead = || points.iter().filter(|point| point.day >= -0.13);
    let Some(now) = ahead().next() else {
        return String::new();
    };
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
) -> Vec<(String, String)> {
    let one = |class: &str, words: String| (class.to_owned(), words);
    let mut key = Vec::new();
    if has_bands {
        key.push(one(
            "key-time-middle",
            format!("{}: middle of the runs", plan.plan.name),
        ));
        key.push(one("key-time-half", "half of the runs".to_owned()));
        key.push(one("key-time-wide", "nine of ten runs".to_owned()));
    } else {
        key.push(one("key-time-middle", plan.plan.name.clone()));
    }
    for (index, (name, _)) in others.iter().enumerate() {
        key.push(one(&format!("key-time-other-{}", index % 3), name.clone()));
    }
    if has_readings {
        key.push(one("key-time-reading", "what your probe showed".to_owned()));
    }
    key
}

fn table(
    forecast: &ForecastAnswer,
    value: &Value,
    points: &[BandPoint],
    has_bands: bool,
    others: &[(String, Vec<BandPoint>)],
    locale: Locale,
) -> TableShown {
    let mut heads = vec!["Day".to_owned(), format!("Middle, {}", value.unit)];
    if has_bands {
        heads.push("Half of the runs".to_owned());
        heads.push("Nine of ten runs".to_owned());
    }
    heads.extend(others.iter().map(|(name, _)| name.clone()));
    let range = |low: f64, high: f64| format!("{} to {}", value.text(low), value.text(high));
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut last_day = String::new();
    for point in points {
        let day = wording::date_of(forecast, point.day + forecast.now_d, locale);
        // The first of a day stands for it.
        if day == last_day {
            continue;
        }
        last_day.clone_from(&day);
        let mut row = vec![day, value.text(point.middle)];
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
        rows.push(row);
    }
    TableShown { heads, rows }
}

/// What was and will be done, in days from now.
fn flags(plan: &PlanAnswer, now_d: f64, from_d: f64) -> Vec<(f64, String)> {
    let word = |done: &Done| match done {
        Done::Fed => "fed",
        Done::Turned => "turned",
        Done::Watered => "watered",
        Done::Covered => "covered",
        Done::TakenOut => "taken out",
    };
    let shown: Vec<&(f64, Done)> = plan
        .answer
        .done
        .iter()
        .filter(|(day, _)| day - now_d >= from_d)
        .collect();
    let many = shown.len() > MOST_FLAGS;
    shown
        .into_iter()
        .filter(|(_, done)| !many || *done != Done::Fed)
        .map(|(day, done)| {
            let ahead = *day >= now_d - 1e-9;
            let word = match (ahead, done) {
                (true, Done::Turned) => "turn",
                (true, Done::Watered) => "water",
                _ => word(done),
            };
            (day - now_d, word.to_owned())
        })
        .collect()
}
