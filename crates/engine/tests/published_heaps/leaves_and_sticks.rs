//! Slow stuff: heaps of leaves by how they are kept, and sticks.

use heapwright_engine::heap::{Case, Charge, FeedClass, Overrides};

use crate::harness::{Row, above_zero, at_most, validation};
use crate::heap_cases::{
    built, cube, grained, grass, leaves, of_shares, row_at, run, together, turned, wetted,
};
use crate::setup::{COARSE, days_from, ready_or_end, seasons, turned_and_watered, windrow};

pub fn rows() -> Vec<Row> {
    [leaf_rows(), leaf_heap(), sticks()].concat()
}

const MONTH_D: f64 = 30.4;

/// Leaves at the density of a built row, wetted with some 100 L/m3 to 60 %.
fn wet_leaves(cubic_metres: f64) -> Charge {
    let mut wet = wetted(leaves(150.0 / 0.7 * cubic_metres), 0.60);
    wet.volume_m3 = cubic_metres;
    grained(wet, 0.6)
}

/// From 1 December under the sky of New Jersey: 0 to 25 degrees, 1,040 mm of rain a year.
fn row_of_leaves(width_m: f64, height_m: f64, days: f64) -> Case {
    let enclosure = windrow(width_m, 2.0 * width_m, height_m);
    let charge = wet_leaves(enclosure.capacity_m3());
    let mut case = built(enclosure, 0.0, charge, days);
    case.weather = seasons(12.5, 12.5, 1040.0, 320.0, days);
    case.model = COARSE;
    case
}

/// Rows by the manual's levels: large and turned once a year, middling and turned twice a
/// year, turned every week and kept moist. The rate of air of its highest level is not known.
fn leaf_rows() -> Vec<Row> {
    let c23 = validation("C23", "Strom and Finstein 1994");
    let least = row_of_leaves(6.0, 3.0, 72.0 * MONTH_D);
    let least = turned(least, &days_from(300.0, 365.0, 72.0 * MONTH_D));
    let low = row_of_leaves(4.0, 1.8, 36.0 * MONTH_D);
    let low = turned(low, &days_from(150.0, 182.0, 36.0 * MONTH_D));
    let often = row_of_leaves(4.0, 1.8, 12.0 * MONTH_D);
    let often = turned_and_watered(often, &days_from(7.0, 7.0, 180.0));
    let [least, low, often] = [least, low, often].map(|case| ready_or_end(&run(&case)) / MONTH_D);
    vec![
        c23.row(
            "row of leaves, turned once a year: months to finish (72 if not)",
            "36 to 60",
            36.0..=60.0,
            least,
        ),
        c23.row(
            "row of leaves, turned twice a year: months to finish (36 if not)",
            "16 to 18",
            11.0..=27.0,
            low,
        ),
        c23.row(
            "row of leaves, turned every week and kept moist: months to finish (12 if not)",
            "4 to 6",
            4.0..=6.0,
            often,
        ),
        c23.row(
            "months with one turn a year less those with two",
            "some 30",
            above_zero(),
            least - low,
        ),
        c23.row(
            "months with two turns a year less those with weekly turns",
            "some 12",
            above_zero(),
            low - often,
        ),
    ]
}

/// 1.7 m3 of leaves from November on, turned every two months and kept moist.
fn leaf_heap() -> Vec<Row> {
    let practice = validation(
        "P3",
        "common practice: leaves in one season; Strom and Finstein 1994",
    );
    let mut case = built(cube(1.2), 10.0, wet_leaves(1.7), 540.0);
    case.weather = seasons(10.0, 8.0, 600.0, 290.0, 540.0);
    case.model = COARSE;
    let run = run(&turned_and_watered(case, &days_from(60.0, 60.0, 360.0)));
    let year = row_at(&run, 365.0);
    let start = run.series[0];
    vec![
        practice.row(
            "leaf heap turned now and then and kept moist: finished in months",
            "within a year or nearly",
            6.0..=14.0,
            ready_or_end(&run) / MONTH_D,
        ),
        practice.row(
            "leaf heap: standard uptake after a year [mg/(g VS h)]",
            "below 1",
            at_most(1.0),
            year.standard_uptake_mg_per_g_vs_h,
        ),
        practice.row(
            "leaf heap: dry matter lost in a year [%]",
            "40 to 50",
            35.0..=55.0,
            100.0 * (1.0 - year.dry_mass_kg / start.dry_mass_kg),
        ),
    ]
}

/// A cubic metre of sticks, with an eighth of grass for nitrogen, moist in mild air: when is
/// half of the dry matter gone? By then they crumble.
fn half_gone_years(thick_mm: f64) -> f64 {
    let shares = FeedClass::Wood.shares().with(&Overrides {
        particle_mm: Some(thick_mm),
        ..Overrides::default()
    });
    let wood = of_shares(&shares, 250.0, 0.45, 0.02, 0.003);
    let mut mixed = wetted(together(&[wood, grass(70.0)]), 0.60);
    mixed.volume_m3 = 1.0;
    let days = 5.0 * 365.0;
    let mut case = built(cube(1.0), 11.0, mixed, days);
    case.weather = seasons(11.0, 8.0, 600.0, 60.0, days);
    case.model = COARSE;
    let run = run(&turned_and_watered(case, &days_from(180.0, 180.0, days)));
    let half = 0.5 * run.series[0].dry_mass_kg;
    let gone = run.series.iter().find(|row| row.dry_mass_kg < half);
    gone.map_or(days, |row| row.time_d) / 365.0
}

fn sticks() -> Vec<Row> {
    let practice = validation("P4", "common practice: small sticks take about two years");
    vec![
        practice.row(
            "sticks of 5 mm: years until half is gone (5 if not)",
            "about 2",
            1.0..=3.0,
            half_gone_years(5.0),
        ),
        practice.row(
            "sticks of 20 mm: years until half is gone (5 if not)",
            "about 2",
            1.0..=3.0,
            half_gone_years(20.0),
        ),
    ]
}
