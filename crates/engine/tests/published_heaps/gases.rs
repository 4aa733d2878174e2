//! Oxygen, methane and nitrous oxide.

use heapwright_engine::heap::{Options, Parameters, Summary, simulate};

use crate::harness::{Row, above_zero, calibration, validation};
use crate::heap_cases::{
    VESSEL_A, Vessel, built, cube, dry_kg, grained, household_mix, packed, run, straw, together,
    wetted,
};
use crate::setup::{manure, of_carbon_to_nitrogen, windrow};
use crate::vessels::{aired, held};

pub fn rows() -> Vec<Row> {
    [
        pig_faeces(),
        passive_windrow(),
        methane_by_moisture(),
        share_of_walls(),
    ]
    .concat()
}

/// Pig faeces with stalks, C:N 18, 65 % moisture, 60 L for 37 days; air of 0.24, 0.48 and
/// 0.72 L a minute for each kg of dry matter (from memory of the paper); not turned, assumed.
fn pig_faeces() -> Vec<Row> {
    let c15 = validation("C15", "Jiang and others 2011");
    let charge = of_carbon_to_nitrogen(18.0, 100.0, |straw_kg| {
        let faeces = manure(40.0, 0.72, 0.18, 0.035);
        let mixed = wetted(together(&[faeces, straw(straw_kg)]), 0.65);
        grained(packed(mixed, 550.0), 0.6)
    });
    let air_kg_m3 = 1.2;
    let side = charge.volume_m3.cbrt();
    let vessel = |litres_per_minute_kg: f64| -> Summary {
        let air_kg_per_d = litres_per_minute_kg * dry_kg(&charge) * 1e-3 * 60.0 * 24.0 * air_kg_m3;
        run(&aired(side, air_kg_per_d, 22.0, charge, 37.0)).summary
    };
    let [little, middle, much] = [0.24, 0.48, 0.72].map(vessel);
    let methane = |s: &Summary| 0.01 * s.carbon_loss_pct * s.methane_share_of_carbon_loss_pct;
    let dioxide = |s: &Summary| s.carbon_loss_pct - methane(s);
    vec![
        c15.row(
            "aired pig faeces, middle air: carbon lost as dioxide [%]",
            "23.9 to 45.6",
            23.9..=45.6,
            dioxide(&middle),
        ),
        c15.row(
            "little air: methane [% of carbon fed]",
            "0.8 to 7.5",
            0.8..=7.5,
            methane(&little),
        )
        .that_sets(),
        c15.row(
            "middle air: ammonia [% of nitrogen fed]",
            "9.6 to 32.4",
            9.6..=32.4,
            middle.ammonia_loss_pct,
        ),
        c15.row(
            "middle air: nitrous oxide [% of nitrogen fed]",
            "1.5 to 7.3",
            1.5..=7.3,
            middle.nitrous_oxide_loss_pct,
        ),
        c15.row(
            "methane with little air less that with much [% of carbon fed]",
            "falls with air",
            above_zero(),
            methane(&little) - methane(&much),
        ),
        c15.row(
            "ammonia with much air less that with little [% of nitrogen fed]",
            "rises with air",
            above_zero(),
            much.ammonia_loss_pct - little.ammonia_loss_pct,
        ),
    ]
}

/// 7 m3 in a row of 3 by 6 by 1.5 m, air of 10 degrees, day 6.
fn passive_windrow() -> Vec<Row> {
    let c18 = validation("C18", "Lynch and Cherry 1996");
    let case = built(
        windrow(3.0, 6.0, 1.5),
        10.0,
        grained(household_mix(7.0), 2.0),
        6.0,
    );
    let options = Options {
        fields: true,
        ..Options::default()
    };
    let run = simulate(&case, &Parameters::default(), &options).unwrap();
    let cells = run.fields.last().unwrap();
    let oxygen = |layer: usize| {
        let cell = cells
            .iter()
            .find(|cell| cell.layer == layer && cell.ring == 2);
        cell.unwrap().oxygen_pct
    };
    vec![c18.row(
        "oxygen at the bottom less that on top [% of the gas]",
        "highest below, lowest on top",
        above_zero(),
        oxygen(0) - oxygen(cells.last().unwrap().layer),
    )]
}

/// The matter of vessel A, held at 55 degrees, with ten times its air: the reactors of the
/// source were kept at 16 % of oxygen (from memory).
fn methane_by_moisture() -> Vec<Row> {
    let c21 = calibration("C21", "Ermolaev 2015, doctoral thesis, SLU");
    let share = |moisture: f64| {
        let vessel = Vessel {
            moisture,
            air_kg_per_d: 10.0 * VESSEL_A.air_kg_per_d,
            ..VESSEL_A
        };
        held(&vessel, 55.0, 10.0)
            .summary
            .methane_share_of_carbon_loss_pct
    };
    vec![c21.row(
        "methane at 66 % moisture over that at 44 %",
        "about 1000",
        300.0..=3000.0,
        share(0.66) / share(0.44),
    )]
}

/// Heat that leaves through sides, top and bottom, of all that leaves in 60 days.
fn share_of_walls() -> Vec<Row> {
    let c25 = validation("C25", "Mason and Milke 2005");
    let share = |cubic_metres: f64| {
        let case = built(
            cube(cubic_metres.cbrt()),
            15.0,
            household_mix(cubic_metres),
            60.0,
        );
        let lost = run(&case).summary.heat_lost_mj;
        100.0 * lost[0] / lost.iter().sum::<f64>()
    };
    let (small, middle, large) = (share(0.2), share(1.0), share(5.0));
    vec![
        c25.row(
            "heat through walls, 0.2 m³ less 1 m³ [points]",
            "falls with size",
            above_zero(),
            small - middle,
        ),
        c25.row(
            "heat through walls, 1 m³ less 5 m³ [points]",
            "falls with size",
            above_zero(),
            middle - large,
        ),
    ]
}
