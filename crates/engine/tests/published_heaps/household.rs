//! The household heap of kitchen scraps, grass, leaves and chips, built at once (calibration
//! by ranges of whole heaps), and what a keeper may expect of it.

use heapwright_engine::heap::{Charge, Model};

use crate::harness::{Row, at_least, at_most, calibration, validation};
use crate::heap_cases::{
    built, cube, grained, grass, household_mix, kitchen, leaves, packed, row_at, run, together,
    wetted,
};
use crate::setup::{
    COARSE, days_from, of_carbon_to_nitrogen, ready_or_end, seasons, turned_and_watered,
};

const WHOLE: &str = "ranges of whole heaps: Rynk 1992; Michel and others 1993, 1996; Larney and others 2000, from memory";
const PRACTICE: &str = "common practice; Rynk 1992, from memory";

pub fn rows() -> Vec<Row> {
    [
        built_heap(),
        rapid_method(),
        months(),
        left_alone(),
        nitrogen_by_ratio(),
        uptake(),
    ]
    .concat()
}

fn built_heap() -> Vec<Row> {
    let set = calibration("H1", WHOLE);
    let checks = validation("H2", WHOLE);
    let heap = run(&built(cube(1.0), 15.0, household_mix(1.0), 60.0)).summary;
    let warm = run(&built(cube(1.0), 25.0, household_mix(1.0), 60.0)).summary;
    let small = run(&built(cube(0.585), 15.0, household_mix(0.2), 60.0)).summary;
    vec![
        set.row(
            "1 m³, 15 °C: peak of the core [°C]",
            "60 to 72",
            60.0..=72.0,
            heap.peak_core_temperature_c,
        ),
        set.row("1 m³: day of the peak", "1 to 5", 1.0..=5.0, heap.peak_day),
        set.row(
            "1 m³: loss of volatile solids in 60 days [%]",
            "35 to 50",
            35.0..=50.0,
            heap.volatile_solids_loss_pct,
        ),
        set.row(
            "1 m³: loss of volume in 60 days [%]",
            "40 to 60",
            40.0..=60.0,
            heap.volume_loss_pct,
        ),
        set.row(
            "1 m³: loss of nitrogen in 60 days [%]",
            "3 to 35",
            3.0..=35.0,
            heap.nitrogen_loss_pct,
        ),
        set.row(
            "0.2 m³, 15 °C: peak of the core [°C]",
            "45 to 60",
            45.0..=60.0,
            small.peak_core_temperature_c,
        ),
        set.row(
            "0.2 m³: days with the core at 55 or above",
            "few",
            at_most(3.0),
            small.days_core_at_or_above_55,
        ),
        set.row(
            "core of 1 m³ less that of 0.2 m³ [K]",
            "small bins may stay cool",
            at_least(5.0),
            heap.peak_core_temperature_c - small.peak_core_temperature_c,
        ),
        checks.row(
            "1 m³ left cool, 15 °C: loss of wet mass in 60 days [%]",
            "40 to 60",
            40.0..=60.0,
            heap.wet_mass_loss_pct,
        ),
        checks.row(
            "1 m³, 25 °C: loss of wet mass in 60 days [%]",
            "40 to 60",
            40.0..=60.0,
            warm.wet_mass_loss_pct,
        ),
    ]
}

pub fn green_and_dry(cubic_metres: f64) -> Charge {
    let m = cubic_metres;
    let mut mixed = wetted(
        together(&[grass(150.0 * m), kitchen(50.0 * m), leaves(90.0 * m)]),
        0.60,
    );
    mixed.volume_m3 = m;
    grained(mixed, 0.6)
}

/// A 0.9 m cube of green and dry, small pieces. The turned one is kept moist.
fn rapid_method() -> Vec<Row> {
    let c7 = validation("C7", "Raabe, The rapid composting method");
    let case = |days| built(cube(0.9), 20.0, green_and_dry(0.73), days);
    let still = run(&case(10.0));
    let turned = run(&turned_and_watered(case(21.0), &days_from(2.0, 2.0, 21.0)));
    vec![
        c7.row(
            "0.9 m cube: core at 48 h [°C]",
            "hot in 24 to 48 h",
            45.0..=73.0,
            row_at(&still, 2.0).core_temperature_c,
        ),
        c7.row(
            "0.9 m cube: peak of the core [°C]",
            "about 71",
            66.0..=73.0,
            still.summary.peak_core_temperature_c,
        ),
        // Compost still to cure breathes less than 15 mg of carbon a day for each g of its
        // volatile solids (scale of TMECC 05.08-B, from memory), that is 1.67 mg O2/(g h).
        c7.row(
            "0.9 m cube turned every 2 days and kept moist: standard uptake on day 21 [mg/(g VS h)]",
            "usable in 2 to 3 weeks, still to cure",
            at_most(1.67),
            turned.series.last().unwrap().standard_uptake_mg_per_g_vs_h,
        ),
    ]
}

/// Balanced, turned every ten days and kept moist.
fn months() -> Vec<Row> {
    let practice = validation("P1", PRACTICE);
    let case = built(cube(1.0), 15.0, household_mix(1.0), 300.0);
    let turned = turned_and_watered(case, &days_from(10.0, 10.0, 120.0));
    vec![practice.row(
        "balanced heap, turned every 10 days and kept moist: finished on day",
        "2 to 4 months and one of curing",
        60.0..=150.0,
        ready_or_end(&run(&turned)),
    )]
}

/// Built in late September and left alone under the sky: 2 to 18 degrees, 600 mm of rain.
fn left_alone() -> Vec<Row> {
    let alone = validation(
        "P2",
        "Raabe: stack and leave; Bernal and others 2009, from memory",
    );
    let mut case = built(cube(1.0), 15.0, household_mix(1.0), 730.0);
    case.weather = seasons(10.0, 8.0, 600.0, 250.0, 730.0);
    case.model = COARSE;
    let run = run(&case);
    let at_a_year = row_at(&run, 365.0);
    let volume = 100.0 * (1.0 - at_a_year.volume_m3 / run.series[0].volume_m3);
    vec![
        alone.row(
            "1 m³ left alone: finished in months (24 if not)",
            "about a year",
            6.0..=18.0,
            ready_or_end(&run) / 30.4,
        ),
        alone.row(
            "1 m³ left alone: loss of volume in a year [%]",
            "50 to 80",
            50.0..=80.0,
            volume,
        ),
        alone.row(
            "1 m³ left alone: C:N after a year",
            "12 to 20",
            12.0..=20.0,
            at_a_year.carbon_to_nitrogen,
        ),
        alone.row(
            "1 m³ left alone: ammonium over nitrate after a year",
            "0.16 to 3",
            0.16..=3.0,
            at_a_year.ammonium_share / at_a_year.nitrate_share,
        ),
    ]
}

/// Green and dry to a C:N, built as 1 m3, 90 days.
fn nitrogen_by_ratio() -> Vec<Row> {
    let bands = validation(
        "N1",
        "Kirchmann and Witter 1989; Eklind and Kirchmann 2000; the bands are judgements between them",
    );
    let loss = |wanted: f64| {
        let charge = of_carbon_to_nitrogen(wanted, 1000.0, |leaves_kg| {
            let mixed = together(&[kitchen(120.0), grass(100.0), leaves(leaves_kg)]);
            wetted(mixed, 0.60)
        });
        // As much of it as makes a cubic metre at 425 kg/m3.
        let charge = grained(packed(charge, 425.0), 0.6);
        let side = charge.volume_m3.cbrt();
        run(&built(cube(side), 15.0, charge, 90.0))
            .summary
            .nitrogen_loss_pct
    };
    vec![
        bands.row(
            "C:N 20: nitrogen lost in 90 days [%]",
            "25 to 50",
            25.0..=50.0,
            loss(20.0),
        ),
        bands.row(
            "C:N 25: nitrogen lost in 90 days [%]",
            "15 to 45",
            15.0..=45.0,
            loss(25.0),
        ),
        bands.row(
            "C:N 30: nitrogen lost in 90 days [%]",
            "8 to 35",
            8.0..=35.0,
            loss(30.0),
        ),
        bands.row(
            "C:N 40: nitrogen lost in 90 days [%]",
            "3 to 25",
            3.0..=25.0,
            loss(40.0),
        ),
    ]
}

fn uptake() -> Vec<Row> {
    let c22 = validation("C22", "Richard 1996; Barrena Gomez and others 2005");
    let heap = run(&built(cube(1.0), 15.0, household_mix(1.0), 180.0));
    vec![
        c22.row(
            "highest oxygen uptake [mg/(g VS h)]",
            "below 1 to above 10",
            1.0..=8.0,
            heap.summary.peak_uptake_mg_per_g_vs_h,
        ),
        c22.row(
            "standard uptake after 180 days [mg/(g VS h)]",
            "below 1",
            at_most(1.0),
            heap.series.last().unwrap().standard_uptake_mg_per_g_vs_h,
        ),
    ]
}

/// The household heap in figures, for the document: no range is published for most of them.
pub fn table() -> String {
    let mut lines = vec![
        "| heap | peak mean [°C] | peak core [°C] | days core at 55 | VS lost [%] | wet mass lost [%] | volume lost [%] | N lost [%] | C:N |".to_owned(),
        "|---|---|---|---|---|---|---|---|---|".to_owned(),
    ];
    for (name, cubic_metres, air_c, days) in [
        ("1 m³, 15 °C, 60 days", 1.0_f64, 15.0, 60.0),
        ("1 m³, 25 °C, 60 days", 1.0, 25.0, 60.0),
        ("0.2 m³, 15 °C, 60 days", 0.2, 15.0, 60.0),
        ("0.2 m³, 25 °C, 60 days", 0.2, 25.0, 60.0),
        ("1 m³, 15 °C, 365 days", 1.0, 15.0, 365.0),
    ] {
        let charge = household_mix(cubic_metres);
        let run = run(&built(cube(cubic_metres.cbrt()), air_c, charge, days));
        let s = &run.summary;
        lines.push(format!(
            "| {name} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} |",
            s.peak_mean_temperature_c,
            s.peak_core_temperature_c,
            s.days_core_at_or_above_55,
            s.volatile_solids_loss_pct,
            s.wet_mass_loss_pct,
            s.volume_loss_pct,
            s.nitrogen_loss_pct,
            run.series.last().unwrap().carbon_to_nitrogen,
        ));
    }
    lines.push(String::new());
    let core = |layers: usize, rings: usize| {
        let mut case = built(cube(1.0), 15.0, household_mix(1.0), 10.0);
        case.model = Model::Spatial { layers, rings };
        run(&case).summary.peak_core_temperature_c
    };
    lines.push(format!(
        "Peak of the core on other grids, 1 m³ at 15 °C: layers 4, 8 and 16 by 4 rings {:.1} , {:.1} , {:.1} ; 6 layers by rings 2, 4, 8 and 16 {:.1} , {:.1} , {:.1} , {:.1} .",
        core(4, 4),
        core(8, 4),
        core(16, 4),
        core(6, 2),
        core(6, 4),
        core(6, 8),
        core(6, 16),
    ));
    lines.join("\n")
}
