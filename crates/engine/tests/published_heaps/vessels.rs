//! Vessels in a room: how warm, how sour, how fast at a temperature held.

use heapwright_engine::heap::{
    Case, Charge, Cover, Enclosure, Model, Run, Wall, Weather, WeatherHour,
};

use crate::harness::{Row, above_zero, at_least, calibration, validation};
use crate::heap_cases::{
    VESSEL_A, Vessel, built, chips, cube, grained, household_mix, kitchen, packed, row_at, run,
    run_every, together, wetted,
};
use crate::setup::bin;

const CORNELL: &str = "Trautmann and Krasny 1997, Compost physics";
const SUNDBERG: &str = "Sundberg 2005, doctoral thesis, SLU; Sundberg and others 2011";

pub fn rows() -> Vec<Row> {
    [indoor_vessels(), acid_phase(), held_at_a_temperature()].concat()
}

/// Kitchen and garden waste in a room of 22 degrees.
fn indoor_vessels() -> Vec<Row> {
    let c8 = calibration("C8", CORNELL);
    let large = run(&built(
        bin(0.464, Wall::Plastic, Cover::Lid),
        22.0,
        household_mix(0.1),
        10.0,
    ));
    let small = run(&built(
        bin(0.271, Wall::Insulated, Cover::Lid),
        22.0,
        household_mix(0.02),
        10.0,
    ));
    vec![
        c8.row(
            "0.1 m³ of plastic, room of 22 °C: peak of the core [°C]",
            "40 to 50",
            40.0..=50.0,
            large.summary.peak_core_temperature_c,
        ),
        c8.row(
            "0.1 m³: day of the peak",
            "2 to 3",
            1.5..=3.5,
            large.summary.peak_day,
        ),
        c8.row(
            "20 L, insulated: peak of the core [°C]",
            "40 to 50 above 38 L",
            38.0..=55.0,
            small.summary.peak_core_temperature_c,
        ),
    ]
}

/// Food waste alone packs to 775 kg/m3 at 72 % moisture; with chips it is 489 at 62 %.
fn acid_phase() -> Vec<Row> {
    let c16 = validation("C16", SUNDBERG);
    let dense = grained(packed(wetted(kitchen(300.0), 0.72), 775.0), 0.3);
    let stalled = run_every(
        &built(bin(0.73, Wall::Plastic, Cover::Lid), 15.0, dense, 20.0),
        12.0,
    );
    let acid_rows = stalled
        .series
        .iter()
        .filter(|row| row.ph < 6.0 && row.mean_temperature_c < 40.0);
    let mixed = together(&[kitchen(300.0), chips(120.0)]);
    let mixed = grained(packed(wetted(mixed, 0.62), 489.0), 1.0);
    let freed = run(&built(
        bin(0.95, Wall::Slatted, Cover::None),
        15.0,
        mixed,
        10.0,
    ));
    vec![
        c16.row(
            "dense food waste: days below pH 6 and 40 °C",
            "stalls acid",
            at_least(5.0),
            0.5 * acid_rows.count() as f64,
        ),
        c16.row(
            "with structure: pH on day 2",
            "above 7 within two days",
            7.0..=9.0,
            row_at(&freed, 2.0).ph,
        ),
        c16.row(
            "with structure: peak of the core [°C]",
            "gets hot",
            55.0..=75.0,
            freed.summary.peak_core_temperature_c,
        ),
    ]
}

/// A small vessel held at a temperature by its walls, in moist air.
pub fn held(vessel: &Vessel, temperature_c: f64, days: f64) -> Run {
    let mut case = Vessel {
        ambient_c: temperature_c,
        start_c: temperature_c,
        loss_w_per_k: 500.0,
        ..*vessel
    }
    .case();
    let mut hour = WeatherHour::mild(temperature_c);
    hour.relative_humidity = 0.99;
    case.weather = Weather::constant(hour, 0.0);
    case.days = days;
    case.model = Model::Lumped;
    run(&case)
}

/// Household waste of C:N 18 in the outfit of vessel A; the reactors held 200 L with air
/// enough and were held at their temperature.
fn held_at_a_temperature() -> Vec<Row> {
    let c17 = validation("C17", SUNDBERG);
    let waste = Vessel {
        carbon_to_nitrogen: 18.0,
        ..VESSEL_A
    };
    let [cool, best, hot] = [40.0, 55.0, 67.0].map(|t| held(&waste, t, 14.0).summary);
    vec![
        c17.row(
            "carbon lost at 55 less that at 40 °C [% of it]",
            "fastest at 55",
            above_zero(),
            best.carbon_loss_pct - cool.carbon_loss_pct,
        ),
        c17.row(
            "carbon lost at 55 less that at 67 °C [% of it]",
            "fastest at 55",
            above_zero(),
            best.carbon_loss_pct - hot.carbon_loss_pct,
        ),
        c17.row(
            "ammonia lost at 67 over that at 55 °C",
            "more than 2",
            at_least(1.8),
            hot.ammonia_loss_pct / best.ammonia_loss_pct,
        ),
    ]
}

/// An insulated vessel with air blown through it.
pub fn aired(side_m: f64, air_kg_per_d: f64, room_c: f64, charge: Charge, days: f64) -> Case {
    let enclosure = Enclosure {
        forced_air_kg_per_d: Some(air_kg_per_d),
        wall: Wall::Insulated,
        cover: Cover::Lid,
        ..cube(side_m)
    };
    built(enclosure, room_c, charge, days)
}
