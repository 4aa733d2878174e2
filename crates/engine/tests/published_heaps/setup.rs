//! What several experiments need: holders, feeding, turning with watering, weather.

use heapwright_engine::heap::{
    Action, Case, Charge, Cover, Enclosure, Event, FeedClass, Model, Run, Shape, Wall, Weather,
    WeatherHour,
};

use crate::heap_cases::{
    built, chips, cube, grained, grass, leaves, material, run, run_every, together, wetted,
};

/// A coarse grid, for heaps of years.
pub const COARSE: Model = Model::Spatial {
    layers: 4,
    rings: 2,
};

pub fn bin(side_m: f64, wall: Wall, cover: Cover) -> Enclosure {
    Enclosure {
        wall,
        cover,
        ..cube(side_m)
    }
}

/// A heap that runs to a point, as long as said.
pub fn windrow(width_m: f64, length_m: f64, height_m: f64) -> Enclosure {
    Enclosure {
        shape: Shape::Cone,
        ..Enclosure::open_box(width_m, length_m, height_m)
    }
}

/// Feeds the charge again and again, `times` in all.
pub fn fed_every(mut case: Case, charge: Charge, interval_d: f64, times: u32) -> Case {
    for time in 1..times {
        case.events.push(Event {
            day: f64::from(time) * interval_d,
            action: Action::Feed {
                charge,
                temperature_c: None,
            },
        });
    }
    case
}

/// Days `first`, `first + every` and so on before `end`.
pub fn days_from(first: f64, every: f64, end: f64) -> Vec<f64> {
    let mut days = Vec::new();
    let mut day = first;
    while day < end {
        days.push(day);
        day += every;
    }
    days
}

/// Turns on each day, and waters to 55 % what is then drier, as a keeper does who feels it.
pub fn turned_and_watered(mut case: Case, days: &[f64]) -> Case {
    let end = case.days;
    for day in days {
        case.days = *day;
        let seen = run_every(&case, 24.0 * day);
        let missing = seen.series.last().unwrap().water_wanted_l;
        if missing > 0.0 {
            case.events.push(Event {
                day: *day,
                action: Action::Water { litres: missing },
            });
        }
        case.events.push(Event {
            day: *day,
            action: Action::Turn { thoroughness: 1.0 },
        });
    }
    case.days = end;
    case
}

/// Air and sun by the seasons, the sun as its mean over day and night (60 to 240 W/m2 on the
/// level, as at 40 to 50 degrees of latitude), the sky half clouded; rain that falls for three
/// hours every fourth day. The year begins at its coldest, 15 January; the simulation on
/// `start_d` of it.
pub fn seasons(
    mean_c: f64,
    swing_c: f64,
    rain_mm_per_year: f64,
    start_d: f64,
    days: f64,
) -> Weather {
    let hours = (0..=(24.0 * days) as u32)
        .map(|hour| {
            let day = start_d + f64::from(hour) / 24.0;
            let phase = std::f64::consts::TAU * day / 365.25;
            let mut weather = WeatherHour::mild(mean_c - swing_c * phase.cos());
            // The sun is three weeks ahead of the air.
            weather.solar_w_m2 = 150.0 - 90.0 * (phase + 0.4).cos();
            weather.cloud_cover = 0.5;
            if hour % 96 < 3 {
                weather.rain_mm_per_h = rain_mm_per_year / 365.25 * 4.0 / 3.0;
            }
            weather
        })
        .collect();
    Weather::hourly(hours)
}

/// The day on which a run counts as finished; its last day if it never does.
pub fn ready_or_end(run: &Run) -> f64 {
    run.summary
        .ready_day
        .unwrap_or_else(|| run.series.last().unwrap().time_d)
}

/// Manure, a quarter of whose nitrogen is ammonium as it comes.
pub fn manure(wet_kg: f64, moisture: f64, ash: f64, nitrogen: f64) -> Charge {
    material(FeedClass::Manure, wet_kg, moisture, ash, nitrogen)
}

/// Yard waste as rows are made of: grass, leaves and chipped brush, wetted to 60 %.
pub fn yard_waste(cubic_metres: f64) -> Charge {
    let m = cubic_metres;
    let mixed = together(&[grass(150.0 * m), leaves(120.0 * m), chips(50.0 * m)]);
    let mut mixed = wetted(mixed, 0.60);
    mixed.volume_m3 = m;
    grained(mixed, 0.8)
}

/// C:N of a charge as the engine reckons it.
pub fn carbon_to_nitrogen(charge: Charge) -> f64 {
    let mut case = built(cube(1.0), 15.0, charge, 0.01);
    case.model = Model::Lumped;
    run(&case).series[0].carbon_to_nitrogen
}

/// The charge of a C:N, of a family in which C:N rises with the amount of something [kg].
pub fn of_carbon_to_nitrogen(wanted: f64, most_kg: f64, mix: impl Fn(f64) -> Charge) -> Charge {
    let (mut low, mut high) = (0.0, most_kg);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if carbon_to_nitrogen(mix(middle)) < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    mix(high)
}

/// The mean of a figure of the series between two days.
pub fn mean_between(
    run: &Run,
    from_d: f64,
    to_d: f64,
    of: impl Fn(&heapwright_engine::heap::Snapshot) -> f64,
) -> f64 {
    let rows: Vec<f64> = run
        .series
        .iter()
        .filter(|row| (from_d..=to_d).contains(&row.time_d))
        .map(of)
        .collect();
    rows.iter().sum::<f64>() / rows.len() as f64
}

/// The highest of a figure of the series between two days.
pub fn most_between(
    run: &Run,
    from_d: f64,
    to_d: f64,
    of: impl Fn(&heapwright_engine::heap::Snapshot) -> f64,
) -> f64 {
    run.series
        .iter()
        .filter(|row| (from_d..=to_d).contains(&row.time_d))
        .map(of)
        .fold(f64::NEG_INFINITY, f64::max)
}

/// Pearson's correlation of pairs.
pub fn correlation(points: &[(f64, f64)]) -> f64 {
    let count = points.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
    let (mx, my) = (mean(|p| p.0), mean(|p| p.1));
    let product: f64 = points.iter().map(|p| (p.0 - mx) * (p.1 - my)).sum();
    let (vx, vy): (f64, f64) = (
        points.iter().map(|p| (p.0 - mx).powi(2)).sum(),
        points.iter().map(|p| (p.1 - my).powi(2)).sum(),
    );
    product / (vx * vy).sqrt()
}
