//! Manures: ammonia against the straw among them (with which the hold on ammonium was set),
//! and cool litter that loses little.

use heapwright_engine::heap::{Case, Charge, Summary};

use crate::harness::{Row, above_zero, at_least, calibration, validation};
use crate::heap_cases::{built, cube, grained, packed, run, straw, together, turned, wetted};
use crate::setup::{manure, of_carbon_to_nitrogen};

pub fn rows() -> Vec<Row> {
    [livestock(), poultry(), deep_litter()].concat()
}

/// Manure with the straw that gives a C:N, some 0.8 m3 at 400 kg/m3.
fn manure_of(carbon_to_nitrogen: f64, nitrogen: f64) -> Charge {
    of_carbon_to_nitrogen(carbon_to_nitrogen, 800.0, |straw_kg| {
        let manure = manure(300.0, 0.72, 0.15, nitrogen);
        let mixed = wetted(together(&[manure, straw(straw_kg)]), 0.62);
        grained(packed(mixed, 400.0), 1.0)
    })
}

fn stacked(charge: Charge, days: f64) -> Summary {
    let side = charge.volume_m3.cbrt();
    run(&built(cube(side), 18.0, charge, days)).summary
}

/// Eight heaps of C:N 10 to 25, two months.
fn livestock() -> Vec<Row> {
    let c12 = calibration("C12", "Paillat and others 2005");
    let lost = |ratio: f64| stacked(manure_of(ratio, 0.045), 60.0).ammonia_loss_pct;
    vec![
        c12.row(
            "manure and straw, C:N 12: ammonia in two months [% of nitrogen]",
            "16.5 to 48.9",
            15.0..=55.0,
            lost(12.0),
        ),
        c12.row(
            "manure and straw, C:N 15: ammonia in two months [% of nitrogen]",
            "16.5 to 48.9",
            15.0..=55.0,
            lost(15.0),
        ),
        c12.row(
            "manure and straw, C:N 20: ammonia in two months [% of nitrogen]",
            "16.5 to 48.9",
            15.0..=55.0,
            lost(20.0),
        ),
    ]
}

/// Poultry manure with straw; C:N 18 to 36.
fn poultry() -> Vec<Row> {
    let c13 = calibration("C13", "Kirchmann and Witter 1989, from memory");
    let [rich, middle, lean] =
        [18.0, 24.0, 36.0].map(|ratio| stacked(manure_of(ratio, 0.055), 90.0).nitrogen_loss_pct);
    vec![
        c13.row(
            "poultry manure and straw, C:N 18: nitrogen lost [%]",
            "44",
            30.0..=55.0,
            rich,
        ),
        c13.row(
            "poultry manure and straw, C:N 24: nitrogen lost [%]",
            "9 to 44",
            9.0..=44.0,
            middle,
        ),
        c13.row(
            "poultry manure and straw, C:N 36: nitrogen lost [%]",
            "9",
            3.0..=20.0,
            lean,
        ),
        c13.row(
            "nitrogen lost at C:N 18 over that at 36",
            "5",
            at_least(3.0),
            rich / lean,
        ),
    ]
}

/// Cattle litter at 3 degrees for 197 days: as it fell, trodden and mixed.
fn deep_litter() -> Vec<Row> {
    let c14 = validation("C14", "Sommer and Dahl 1999");
    let litter = |density: f64| -> Case {
        let mixed = together(&[manure(700.0, 0.74, 0.15, 0.030), straw(150.0)]);
        let mixed = packed(wetted(mixed, 0.72), density);
        let side = mixed.volume_m3.cbrt();
        built(cube(side), 3.0, grained(mixed, 0.6), 197.0)
    };
    let still = run(&litter(700.0)).summary;
    let mixed = run(&turned(litter(700.0), &[30.0, 60.0])).summary;
    vec![
        c14.row(
            "cool deep litter, untouched: carbon lost in 197 days [%]",
            "10 to 12",
            0.0..=25.0,
            still.carbon_loss_pct,
        ),
        c14.row(
            "cool deep litter, untouched: ammonia [% of nitrogen]",
            "1.3 to 3",
            0.0..=6.0,
            still.ammonia_loss_pct,
        ),
        c14.row(
            "cool deep litter, mixed: carbon lost [%]",
            "19",
            10.0..=25.0,
            mixed.carbon_loss_pct,
        ),
        c14.row(
            "carbon lost when mixed less that untouched [points]",
            "9",
            above_zero(),
            mixed.carbon_loss_pct - still.carbon_loss_pct,
        ),
    ]
}
