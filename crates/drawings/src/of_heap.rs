//! A simulated heap as pictures: its core over time, and the heap cut open at one time.

use heapwright_answers::SimulationAnswer;
use heapwright_answers::heap::{CellField, Shape as Outline, Wall};
use heapwright_quantity::UnitSystem;

use crate::cross_section::{Cut, CutLayer, Field, KEY, Sides, cross_section};
use crate::cut_around;
use crate::over_time::{BandPoint, OverTime};
use crate::picture::Picture;

/// Bounds of the steps of temperature [degC].
const WARM_STEPS: [f64; 9] = [10.0, 20.0, 30.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0];
/// Bounds of the steps of moisture [%].
const WET_STEPS: [f64; 8] = [30.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0];
/// Bounds of the steps of oxygen [%].
const AIR_STEPS: [f64; 8] = [1.0, 2.0, 5.0, 8.0, 11.0, 14.0, 17.0, 20.0];

/// The core temperature of an answer, from `from_d` on, with day 0 at `zero_d` of its clock: the
/// bands of the ensemble, or the line alone.
#[must_use]
pub fn core_over_time(answer: &SimulationAnswer, zero_d: f64, from_d: f64) -> OverTime {
    let last = answer.series.last().map_or(from_d, |row| row.time_d);
    let bands = match &answer.bands {
        Some(bands) => bands
            .time_d
            .iter()
            .zip(&bands.core_temperature_c)
            .filter(|(day, _)| **day >= from_d)
            .map(|(day, band)| BandPoint {
                day: day - zero_d,
                low: band.low,
                lower: band.lower,
                middle: band.median,
                upper: band.upper,
                high: band.high,
            })
            .collect(),
        None => core_line(answer, zero_d, from_d)
            .into_iter()
            .map(|(day, value)| BandPoint {
                day,
                low: value,
                lower: value,
                middle: value,
                upper: value,
                high: value,
            })
            .collect(),
    };
    OverTime {
        from_day: from_d - zero_d,
        to_day: last - zero_d,
        bands,
        marks: vec![(55.0, "hot from here".to_owned())],
        unit: "°C".to_owned(),
        ..OverTime::default()
    }
}

/// The core temperature as a line: the median of the ensemble, or the line alone.
#[must_use]
pub fn core_line(answer: &SimulationAnswer, zero_d: f64, from_d: f64) -> Vec<(f64, f64)> {
    match &answer.bands {
        Some(bands) => bands
            .time_d
            .iter()
            .zip(&bands.core_temperature_c)
            .map(|(day, band)| (*day, band.median))
            .filter(|(day, _)| *day >= from_d)
            .map(|(day, value)| (day - zero_d, value))
            .collect(),
        None => answer
            .series
            .iter()
            .filter(|row| row.time_d >= from_d)
            .map(|row| (row.time_d - zero_d, row.core_temperature_c))
            .collect(),
    }
}

/// The heap cut open at one of the times of an answer's fields; `None` when there is no such.
#[must_use]
pub fn cut_open(answer: &SimulationAnswer, which: usize, field: Field) -> Option<Cut> {
    let at = answer.fields.get(which)?;
    let height_m = answer
        .series
        .iter()
        .min_by(|one, other| {
            let far = |day: f64| (day - at.time_d).abs();
            far(one.time_d).total_cmp(&far(other.time_d))
        })?
        .height_m;
    let highest_m = answer
        .series
        .iter()
        .map(|row| row.height_m)
        .fold(answer.enclosure.height_m, f64::max);
    let mut layers: Vec<Vec<&CellField>> = Vec::new();
    for cell in &at.cells {
        if cell.layer >= layers.len() {
            layers.resize(cell.layer + 1, Vec::new());
        }
        layers[cell.layer].push(cell);
    }
    let whole_m3: f64 = at.cells.iter().map(|cell| cell.volume_m3).sum();
    let half_m = 0.5 * answer.enclosure.width_m;
    let mut below_m3 = 0.0;
    let cut = layers
        .iter()
        .map(|cells| {
            let volume_m3: f64 = cells.iter().map(|cell| cell.volume_m3).sum();
            let (thickness_m, half_width_m) = if answer.enclosure.shape == Outline::Cone {
                // What stands above a height is a cone of the same slope.
                let from_top =
                    |above_m3: f64| height_m * (above_m3.max(0.0) / whole_m3.max(1e-12)).cbrt();
                let (high, low) = (
                    from_top(whole_m3 - below_m3),
                    from_top(whole_m3 - below_m3 - volume_m3),
                );
                let foot_m = foot_half_m(answer, whole_m3, height_m);
                (high - low, foot_m * 0.5 * (high + low) / height_m.max(1e-9))
            } else {
                (height_m * volume_m3 / whole_m3.max(1e-12), half_m)
            };
            below_m3 += volume_m3;
            CutLayer {
                thickness_m,
                half_width_m,
                values: cells
                    .iter()
                    .map(|cell| match field {
                        Field::Warm => cell.temperature_c,
                        Field::Wet => 100.0 * cell.moisture,
                        Field::Air => cell.oxygen_pct,
                    })
                    .collect(),
            }
        })
        .collect();
    Some(Cut {
        layers: cut,
        steps: match field {
            Field::Warm => WARM_STEPS.to_vec(),
            Field::Wet => WET_STEPS.to_vec(),
            Field::Air => AIR_STEPS.to_vec(),
        },
        field,
        room_m: (half_m, highest_m),
        sides: sides_of(answer),
        decimal_mark: ".",
        units: UnitSystem::Metric,
        probes: Vec::new(),
    })
}

/// Half the width of a cone's foot, at its volume and height, with the proportions of the foot.
fn foot_half_m(answer: &SimulationAnswer, volume_m3: f64, height_m: f64) -> f64 {
    let enclosure = &answer.enclosure;
    let foot_m2 = 3.0 * volume_m3 / height_m.max(1e-9);
    let full_m2 = 0.25 * std::f64::consts::PI * enclosure.width_m * enclosure.depth_m;
    (0.5 * enclosure.width_m * (foot_m2 / full_m2).sqrt()).min(0.5 * enclosure.width_m)
}

/// The cut at `width` by `height` pixels with a key of its steps below.
#[must_use]
pub fn cut_with_key(cut: &Cut, unit: &str, width: f64, height: f64) -> Picture {
    let mut picture = cross_section(cut, width, height - KEY);
    picture.height = height;
    cut_around::key(cut, unit, height - KEY + 12.0, &mut picture);
    picture
}

/// What the heap of an answer stands between.
#[must_use]
pub fn sides_of(answer: &SimulationAnswer) -> Sides {
    match (answer.enclosure.shape, answer.enclosure.wall) {
        (Outline::Cone, _) => Sides::Free,
        (_, Wall::Open) => Sides::Bare,
        (_, Wall::Mesh | Wall::Slatted) => Sides::Gaps,
        (_, Wall::Plastic | Wall::Metal) => Sides::Vents,
        (_, Wall::Wood | Wall::Insulated) => Sides::Closed,
    }
}
