//! The heap cut open at one time after the other, as numbers that the page draws.

use heapwright_answers::{ForecastAnswer, PlanAnswer, ProbeReading};
use heapwright_drawings::{Cut, Field, Sides, cut_open, sides_of};
use heapwright_journal::content::ProbePlace;
use heapwright_quantity::{UnitSystem, fahrenheit_from_celsius};
use heapwright_texts::Locale;
use heapwright_wire::{FieldShown, FrameShown, LayerShown};
use heapwright_wording::{self as wording, pictures_read as words};

use crate::outlook::DAYS;

/// Days of the past that are shown.
pub const PAST_SHOWN_D: f64 = 30.0;
/// The most frames.
const MOST_FRAMES: f64 = 64.0;
/// The fields, in the order of [`LayerShown::values`].
const FIELDS: [Field; 3] = [Field::Warm, Field::Wet, Field::Air];

/// From when things are shown, in days from now.
pub fn shown_from_d(now_d: f64) -> f64 {
    -now_d.clamp(0.0, PAST_SHOWN_D)
}

/// Days from now at which the heap is cut open.
pub fn days(now_d: f64) -> Vec<f64> {
    let from_d = shown_from_d(now_d);
    let span_d = f64::from(DAYS) - from_d;
    let step_d = [0.25, 0.5, 1.0, 2.0]
        .into_iter()
        .find(|step_d| span_d / step_d <= MOST_FRAMES)
        .unwrap_or(span_d);
    let mut all = Vec::new();
    // Counted from now, so that now is one of them.
    let mut count = (from_d / step_d).ceil();
    while count * step_d <= f64::from(DAYS) {
        all.push(count * step_d);
        count += 1.0;
    }
    all
}

/// The frames of a plan.
pub fn frames(forecast: &ForecastAnswer, plan: &PlanAnswer, locale: Locale) -> Vec<FrameShown> {
    let answer = &plan.answer;
    let times: Vec<f64> = answer.fields.iter().map(|at| at.time_d).collect();
    times
        .iter()
        .enumerate()
        .filter_map(|(which, time_d)| {
            let cuts = FIELDS.map(|field| cut_open(answer, which, field));
            let [Some(warm), Some(wet), Some(air)] = cuts else {
                return None;
            };
            let row = answer
                .series
                .iter()
                .find(|row| row.time_d >= time_d - 1e-9)?;
            let values = |cut: &Cut, layer: usize| -> Vec<f64> {
                let values = cut.layers.get(layer).map(|layer| &layer.values);
                values
                    .into_iter()
                    .flatten()
                    .map(|value| in_unit(*value, cut.field, locale))
                    .collect()
            };
            let layers = (0..warm.layers.len())
                .map(|layer| LayerShown {
                    thickness_m: short(warm.layers[layer].thickness_m, 1000.0),
                    half_width_m: short(warm.layers[layer].half_width_m, 1000.0),
                    values: [
                        values(&warm, layer),
                        values(&wet, layer),
                        values(&air, layer),
                    ],
                })
                .collect();
            let near_d = |step: usize| times.get(step).map_or(0.0, |other| (other - time_d).abs());
            let half_d = 0.5 * near_d(which + 1).max(near_d(which.saturating_sub(1)));
            Some(FrameShown {
                when: wording::date_of(forecast, *time_d, locale),
                sentence: wording::ahead::figures_line(row, locale),
                layers,
                probes: forecast
                    .readings
                    .iter()
                    .filter(|reading| (reading.day - time_d).abs() <= half_d)
                    .map(|reading| probe(reading, locale))
                    .collect(),
            })
        })
        .collect()
}

/// Where a probe was read and what it showed.
fn probe(reading: &ProbeReading, locale: Locale) -> (f64, f64, String) {
    let (across, up) = match reading.place {
        Some(ProbePlace::Edge) => (0.8, 0.5),
        Some(ProbePlace::Top) => (0.0, 0.9),
        Some(ProbePlace::Bottom) => (0.0, 0.1),
        _ => (0.0, 0.5),
    };
    let words = words::temperature_read(reading.temperature_c, locale);
    (across, up, words)
}

/// The fields with their units and steps.
pub fn fields(plan: &PlanAnswer, locale: Locale) -> Vec<FieldShown> {
    let unit = match locale.units {
        UnitSystem::Metric => "\u{b0}C",
        UnitSystem::UsCustomary => "\u{b0}F",
    };
    let named = [
        (words::field_temperature(locale), unit),
        (words::field_moisture(locale), "%"),
        (words::field_oxygen(locale), "%"),
    ];
    FIELDS
        .into_iter()
        .zip(named)
        .filter_map(|(field, (name, unit))| {
            let cut = cut_open(&plan.answer, 0, field)?;
            Some(FieldShown {
                name: name.to_owned(),
                unit: unit.to_owned(),
                steps: cut
                    .steps
                    .iter()
                    .map(|step| in_unit(*step, field, locale))
                    .collect(),
            })
        })
        .collect()
}

/// Half width and height of the room in which all frames of all plans stand [m].
pub fn room_m(forecast: &ForecastAnswer) -> (f64, f64) {
    forecast
        .plans
        .iter()
        .filter_map(|plan| cut_open(&plan.answer, 0, Field::Warm))
        .map(|cut| cut.room_m)
        .fold((0.0, 0.0), |one, other| {
            (one.0.max(other.0), one.1.max(other.1))
        })
}

/// What the heap of a plan stands between, counted among all.
pub fn sides(plan: &PlanAnswer) -> usize {
    let sides = sides_of(&plan.answer);
    Sides::ALL
        .iter()
        .position(|one| *one == sides)
        .unwrap_or_default()
}

fn in_unit(value: f64, field: Field, locale: Locale) -> f64 {
    let value = match (field, locale.units) {
        (Field::Warm, UnitSystem::UsCustomary) => fahrenheit_from_celsius(value),
        _ => value,
    };
    short(value, 10.0)
}

fn short(value: f64, per: f64) -> f64 {
    (value * per).round() / per
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn frames_reach_from_the_past_that_is_shown_to_the_last_day_and_hold_now() {
        for now_d in [0.0, 0.3, 5.0, 400.0] {
            let days = days(now_d);
            assert!(days.len() <= 65, "{}", days.len());
            assert!(days.contains(&0.0));
            assert!(days[0] >= -now_d.min(PAST_SHOWN_D));
            assert_eq!(days.last(), Some(&f64::from(DAYS)));
        }
    }
}
