//! Large heaps and rows: garden waste at scale, winter, turning, settling.

use heapwright_engine::heap::{Action, Cover, Enclosure, Wall, Weather, WeatherHour};

use crate::harness::{Row, at_most, validation};
use crate::heap_cases::{built, cube, household_mix, row_at, run, turned};
use crate::home_bins::woody;
use crate::setup::{days_from, mean_between, most_between, windrow, yard_waste};

pub fn rows() -> Vec<Row> {
    [thirty_cubic_metres(), winter(), turning(), first_month()].concat()
}

/// The garden waste of C5 by 30 m3 at 8 degrees, turned after two weeks.
fn thirty_cubic_metres() -> Vec<Row> {
    let c6 = validation("C6", "trial heaps at a horticultural society's garden");
    let case = built(windrow(6.0, 8.0, 2.4), 8.0, woody(30.0), 24.0);
    let run = run(&turned(case, &[14.0]));
    vec![
        c6.row(
            "30 m³ of chipped garden waste, air of 8 °C: core within 7 days [°C]",
            "about 70",
            60.0..=75.0,
            most_between(&run, 0.0, 7.0, |row| row.core_temperature_c),
        ),
        c6.row(
            "the same, within 5 days of a turn [°C]",
            "over 60",
            55.0..=75.0,
            most_between(&run, 14.3, 19.0, |row| row.core_temperature_c),
        ),
    ]
}

/// 2 m3 with an insulating coat. One is fed at 5 degrees in air of -5; one is fed frozen at
/// -10 while the air rises from -15 by half a degree a day, to 10.
fn winter() -> Vec<Row> {
    let c19 = validation("C19", "Lynch and Cherry 1996");
    let coat = Enclosure {
        wall: Wall::Insulated,
        cover: Cover::Lid,
        ..cube(1.26)
    };
    let fed_at = |temperature_c: f64, weather: Weather| {
        let mut case = built(coat, -5.0, household_mix(2.0), 80.0);
        case.weather = weather;
        if let Action::Feed {
            temperature_c: fed, ..
        } = &mut case.events[0].action
        {
            *fed = Some(temperature_c);
        }
        run(&case)
    };
    let cold = fed_at(5.0, Weather::constant(WeatherHour::mild(-5.0), 2.0));
    let rising = (0..=24 * 80)
        .map(|hour| WeatherHour::mild((-15.0 + 0.5 * f64::from(hour) / 24.0).min(10.0)))
        .collect();
    let frozen = fed_at(-10.0, Weather::hourly(rising));
    vec![
        c19.row(
            "2 m³ with a coat, fed at 5 °C in air of -5: peak of the core [°C]",
            "thermophilic in winter",
            55.0..=75.0,
            cold.summary.peak_core_temperature_c,
        ),
        c19.row(
            "the same fed frozen, air rising from -15 to 10 °C: peak of the core [°C]",
            "froze, then thermophilic",
            45.0..=75.0,
            frozen.summary.peak_core_temperature_c,
        ),
    ]
}

/// A yard-waste row of 11 m3 for 60 days at 18 degrees.
fn turning() -> Vec<Row> {
    let c20 = validation("C20", "Michel and others 1996");
    let mean = |every: f64| {
        let case = built(windrow(3.0, 10.0, 1.5), 18.0, yard_waste(11.0), 60.0);
        let run = run(&turned(case, &days_from(every, every, 60.0)));
        mean_between(&run, 0.0, 60.0, |row| row.mean_temperature_c)
    };
    let (often, seldom) = (mean(30.0 / 7.0), mean(30.0));
    vec![c20.row(
        "mean temperature, 7 turns a month against 1, apart by [K]",
        "little",
        at_most(6.0),
        (often - seldom).abs(),
    )]
}

fn first_month() -> Vec<Row> {
    let c24 = validation("C24", "municipal plan for yard-waste windrows, Ramsey");
    let case = built(windrow(3.0, 10.0, 1.5), 18.0, yard_waste(11.0), 31.0);
    let run = run(&turned(case, &[10.0, 20.0]));
    let loss = 1.0 - row_at(&run, 29.9).volume_m3 / run.series[0].volume_m3;
    vec![c24.row(
        "windrow: loss of volume in the first month [%]",
        "about half",
        35.0..=60.0,
        100.0 * loss,
    )]
}
