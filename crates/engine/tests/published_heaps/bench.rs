//! Bench vessels with known walls, air and matter: curves, and what nitrogen, moisture and
//! size change.

use heapwright_engine::heap::{Action, Case, Charge, FeedClass, Run};

use crate::harness::{Row, above_zero, at_least, at_most, calibration, validation};
use crate::heap_cases::{
    VESSEL_A, VESSEL_B, Vessel, grained, kitchen, material, packed, row_at, run, run_every,
    together, wet_kg, wetted,
};
use crate::setup::of_carbon_to_nitrogen;

const COTERA: &str = "Cotera, doctoral thesis, University of Toronto: data";

pub fn rows() -> Vec<Row> {
    [bench_a(), bench_b(), bench_by_nitrogen(), bench_order()].concat()
}

const HOURS: [f64; 14] = [
    2.0, 4.0, 8.0, 12.0, 16.0, 24.0, 36.0, 48.0, 72.0, 96.0, 120.0, 144.0, 168.0, 180.0,
];

/// Root mean square of the differences to a measured curve.
fn error_against(run: &Run, measured: [f64; 14]) -> f64 {
    let sum: f64 = HOURS
        .into_iter()
        .zip(measured)
        .map(|(hour, t)| (row_at(run, hour / 24.0).mean_temperature_c - t).powi(2))
        .sum();
    (sum / HOURS.len() as f64).sqrt()
}

fn hour_of_peak(run: &Run) -> f64 {
    let hottest = run
        .series
        .iter()
        .max_by(|a, b| a.mean_temperature_c.total_cmp(&b.mean_temperature_c));
    24.0 * hottest.unwrap().time_d
}

fn bench_a() -> Vec<Row> {
    let c1 = calibration("C1", COTERA);
    let run = run_every(&VESSEL_A.case(), 1.0);
    let error = error_against(
        &run,
        [
            29.4, 36.0, 42.9, 45.0, 47.3, 47.2, 45.4, 46.4, 44.4, 42.7, 39.7, 34.3, 28.8, 26.5,
        ],
    );
    vec![
        c1.row(
            "vessel A, 2.4 kg: root mean square of 14 temperatures [K]",
            "the curve",
            at_most(4.0),
            error,
        ),
        c1.row(
            "vessel A: peak of the mean [°C]",
            "48.1",
            43.1..=53.1,
            run.summary.peak_mean_temperature_c,
        ),
        // The measured curve stays within a degree of its top from 16 to 24 hours.
        c1.row(
            "vessel A: hour of the peak",
            "19, flat from 16 to 24",
            16.0..=24.0,
            hour_of_peak(&run),
        ),
        c1.row(
            "vessel A: hours at 55 or above",
            "none",
            at_most(0.0),
            24.0 * run.summary.days_mean_at_or_above_55,
        ),
    ]
}

fn bench_b() -> Vec<Row> {
    let c2 = calibration("C2", COTERA);
    let run = run_every(&VESSEL_B.case(), 1.0);
    let error = error_against(
        &run,
        [
            28.4, 33.6, 42.3, 48.4, 52.3, 57.8, 61.1, 60.9, 61.2, 58.9, 55.9, 51.0, 45.8, 43.8,
        ],
    );
    vec![
        c2.row(
            "vessel B, 5.1 kg: root mean square of 14 temperatures [K]",
            "the curve",
            at_most(7.0),
            error,
        ),
        c2.row(
            "vessel B: peak of the mean [°C]",
            "62.0",
            57.0..=67.0,
            run.summary.peak_mean_temperature_c,
        ),
        // Within 1.2 degrees of its top from 36 to 72 hours.
        c2.row(
            "vessel B: hour of the peak",
            "58.5, flat from 36 to 72",
            36.0..=72.0,
            hour_of_peak(&run),
        ),
        c2.row(
            "vessel B: hours at 55 or above",
            "106",
            at_least(60.0),
            24.0 * run.summary.days_mean_at_or_above_55,
        ),
    ]
}

/// Food waste with as much sawdust as gives the C:N, in the outfit of vessel A; the mass of
/// these vessels is not published, nor is their moisture: those of vessel A.
fn with_sawdust(carbon_to_nitrogen: f64) -> Case {
    let charge = of_carbon_to_nitrogen(carbon_to_nitrogen, 20.0, |sawdust_kg| {
        // Sawdust: FeedClass::Wood with a fifth of a per cent of nitrogen, from memory of Rynk 1992.
        let sawdust = material(FeedClass::Wood, sawdust_kg, 0.10, 0.01, 0.002);
        let mixed = wetted(together(&[kitchen(4.0), sawdust]), VESSEL_A.moisture);
        grained(packed(mixed, 400.0), 0.6)
    });
    vessel_of(&VESSEL_A, charge)
}

/// The vessel, holding its own mass of another charge.
fn vessel_of(vessel: &Vessel, charge: Charge) -> Case {
    let share = vessel.wet_kg / wet_kg(&charge);
    let mut case = vessel.case();
    case.events[0].action = Action::Feed {
        charge: scaled(&charge, share),
        temperature_c: Some(vessel.start_c),
    };
    case
}

fn scaled(charge: &Charge, share: f64) -> Charge {
    Charge {
        rapid_kg: charge.rapid_kg * share,
        moderate_kg: charge.moderate_kg * share,
        slow_kg: charge.slow_kg * share,
        humus_kg: charge.humus_kg * share,
        mesophiles_kg: charge.mesophiles_kg * share,
        thermophiles_kg: charge.thermophiles_kg * share,
        acids_kg: charge.acids_kg * share,
        nitrogen_kg: charge.nitrogen_kg.map(|kg| kg * share),
        water_kg: charge.water_kg * share,
        ash_kg: charge.ash_kg * share,
        bases_mol: charge.bases_mol * share,
        volume_m3: charge.volume_m3 * share,
        dry_over_grain_kg_m: charge.dry_over_grain_kg_m * share,
        ..Charge::default()
    }
}

fn bench_by_nitrogen() -> Vec<Row> {
    let c3 = validation("C3", COTERA);
    let peak = |case: &Case| run(case).summary.peak_mean_temperature_c;
    let mixed = [25.0, 30.0, 35.0].map(|ratio| peak(&with_sawdust(ratio)));
    let same_matter = [25.0, 35.0].map(|carbon_to_nitrogen| {
        peak(
            &Vessel {
                carbon_to_nitrogen,
                ..VESSEL_A
            }
            .case(),
        )
    });
    vec![
        c3.row(
            "C:N 25 by sawdust: peak [°C]",
            "56.5",
            51.5..=61.5,
            mixed[0],
        ),
        c3.row(
            "C:N 30 by sawdust: peak [°C]",
            "51.5",
            46.5..=56.5,
            mixed[1],
        ),
        c3.row(
            "C:N 35 by sawdust: peak [°C]",
            "46.5",
            41.5..=51.5,
            mixed[2],
        ),
        c3.row(
            "fall of the peak from C:N 25 to 35, by sawdust [K]",
            "10",
            3.0..=12.0,
            mixed[0] - mixed[2],
        ),
        c3.row(
            "the same with only the nitrogen changed [K]",
            "10",
            3.0..=12.0,
            same_matter[0] - same_matter[1],
        ),
    ]
}

/// Vessel A at other moistures with the same dry matter in each kilogram of it; with and
/// without a coat of foam.
fn bench_order() -> Vec<Row> {
    let order = validation("C3b", COTERA);
    let at = |moisture: f64| {
        let dry = VESSEL_A.wet_kg * (1.0 - VESSEL_A.moisture);
        let share = VESSEL_A.degradable_kg / dry;
        let vessel = Vessel {
            moisture,
            degradable_kg: share * VESSEL_A.wet_kg * (1.0 - moisture),
            ..VESSEL_A
        };
        run(&vessel.case()).summary.peak_mean_temperature_c
    };
    let (dry, moist, wet) = (at(0.5), at(0.6), at(0.7));
    let coated = Vessel {
        loss_w_per_k: 0.5 * VESSEL_A.loss_w_per_k,
        ..VESSEL_A
    };
    let gain = run(&coated.case()).summary.peak_mean_temperature_c
        - run(&VESSEL_A.case()).summary.peak_mean_temperature_c;
    let heavier = run(&VESSEL_B.case()).summary.peak_mean_temperature_c
        - run(&VESSEL_A.case()).summary.peak_mean_temperature_c;
    vec![
        order.row(
            "peak at 60 less that at 50 % moisture [K]",
            "8.1",
            above_zero(),
            moist - dry,
        ),
        order.row(
            "peak at 50 less that at 70 % moisture [K]",
            "6.0",
            above_zero(),
            dry - wet,
        ),
        order.row(
            "peak of 5.1 kg less that of 2.4 kg [K]",
            "13.9",
            5.0..=20.0,
            heavier,
        ),
        order.row(
            "peak with half the loss through the wall less the usual [K]",
            "hotter",
            above_zero(),
            gain,
        ),
    ]
}
