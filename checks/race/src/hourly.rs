//! Hourly weather: how long a season under sun and showers takes, and how far it is from a run
//! at a small part of the tolerance.

use crate::growth::{season, seconds_of};
use crate::heap_inside::heap::{Case, Options, Parameters, Run, Weather, WeatherHour, simulate};

/// Tolerance of the run that the others are held against.
const CLOSE: f64 = 0.01;

/// Days and nights of a made-up spring and summer: an unsteady sun, a wind that turns, six hours
/// of rain every other day, and hour-to-hour wiggles.
pub fn unsteady(days: usize) -> Weather {
    let mut state = 12_345_u32;
    let mut chance = move || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state >> 8) / f64::from(1_u32 << 24) - 0.5
    };
    let turn = std::f64::consts::TAU;
    let hours = (0..=24 * days)
        .map(|hour| {
            let day = hour as f64 / 24.0;
            let wet = (hour / 24) % 2 == 1;
            let cloud = if wet { 0.9 } else { 0.3 } + 0.2 * chance();
            let height = (-(turn * day).cos()).max(0.0);
            WeatherHour {
                air_temperature_c: 12.0 + 0.05 * day - 5.0 * (turn * (day - 0.1)).cos()
                    + 3.0 * (day / 2.3).sin()
                    + chance(),
                relative_humidity: (0.75 + 0.2 * (turn * day).cos() + 0.05 * chance())
                    .clamp(0.2, 1.0),
                rain_mm_per_h: if wet && (6..12).contains(&(hour % 24)) {
                    1.5 + chance()
                } else {
                    0.0
                },
                wind_m_s: 2.0 + (1.7 * day).sin() + chance(),
                solar_w_m2: 750.0 * height * (1.0 - 0.7 * cloud),
                cloud_cover: cloud.clamp(0.0, 1.0),
            }
        })
        .collect();
    Weather::hourly(hours)
}

fn run(case: &Case, tolerance: f64) -> Run {
    let options = Options {
        every_h: 6.0,
        fields: true,
        tolerance,
    };
    simulate(case, &Parameters::default(), &options).expect("the case has a meaning")
}

/// Largest differences: mean, worst inner cell, edge, worst outer cell [K]; dry, wet mass [% of what was fed].
fn apart(one: &Run, other: &Run) -> [f64; 6] {
    let mut most = [0.0_f64; 6];
    let mut see = |place: usize, difference: f64| most[place] = most[place].max(difference.abs());
    for (a, b) in one.series.iter().zip(&other.series) {
        see(0, a.mean_temperature_c - b.mean_temperature_c);
        see(2, a.edge_temperature_c - b.edge_temperature_c);
        see(4, 100.0 * (a.dry_mass_kg - b.dry_mass_kg) / one.fed.dry_kg);
        see(5, 100.0 * (a.wet_mass_kg - b.wet_mass_kg) / one.fed.wet_kg);
    }
    for (one, other) in one.fields.iter().zip(&other.fields) {
        let (layers, rings) = one.iter().fold((0, 0), |(layers, rings), cell| {
            (cell.layer.max(layers), cell.ring.max(rings))
        });
        for (a, b) in one.iter().zip(other) {
            let outer = a.ring == rings || a.layer == layers;
            see(if outer { 3 } else { 1 }, a.temperature_c - b.temperature_c);
        }
    }
    most
}

pub fn all() {
    println!(
        "hourly weather, 120 days with events: layers x rings | tolerance | ms | steps | slopes | K of mean, worst inner cell, edge, worst outer cell | % of dry, wet"
    );
    for (layers, rings) in [(1, 1), (6, 4), (10, 10)] {
        let mut case = season(layers, rings, 120.0);
        case.weather = unsteady(121);
        let close = run(&case, CLOSE);
        for tolerance in [4.0, 1.0, 0.25] {
            let mut found = Run::default();
            let seconds = seconds_of(3, || found = run(&case, tolerance));
            let [mean, inner, edge, outer, dry, wet] = apart(&found, &close);
            println!(
                "{layers} x {rings} | {tolerance} | {:.1} | {} + {} | {} | {mean:.3}, {inner:.3}, {edge:.3}, {outer:.3} | {dry:.4}, {wet:.4}",
                1e3 * seconds,
                found.cost.steps,
                found.cost.rejected,
                found.cost.slopes,
            );
        }
        println!("(against tolerance {CLOSE}: {} slopes)", close.cost.slopes);
    }
}
