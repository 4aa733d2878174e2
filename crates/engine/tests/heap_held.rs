//! One past, several ways to go on: a simulation that is held and goes on.
#![allow(clippy::unwrap_used, missing_docs)]

mod heap_cases;

use heap_cases::*;
use heapwright_engine::heap::{
    Action, Case, Event, Model, Options, Parameters, SimulationError, Weather, WeatherHour, hold,
    simulate,
};

const NOW: f64 = 20.3;

fn doing(day: f64, action: Action) -> Event {
    Event { day, action }
}

fn past() -> Case {
    let hours = (0..1000)
        .map(|hour| WeatherHour {
            rain_mm_per_h: if hour % 50 < 3 { 1.0 } else { 0.0 },
            ..WeatherHour::mild(10.0 + 5.0 * (f64::from(hour) * 0.26).sin())
        })
        .collect();
    let mut case = turned(
        built(cube(1.0), 12.0, household_mix(0.6), 40.0),
        &[6.0, 15.0],
    );
    case.weather = Weather::hourly(hours);
    let feed = Action::Feed {
        charge: kitchen(5.0),
        temperature_c: None,
    };
    case.events.push(doing(18.0, feed));
    case
}

fn plans(case: &Case) -> Vec<Vec<Event>> {
    let turn = Action::Turn { thoroughness: 1.0 };
    let water = Action::Water { litres: 20.0 };
    [
        vec![],
        vec![doing(NOW, turn.clone())],
        vec![doing(NOW, turn.clone()), doing(NOW, water.clone())],
        vec![doing(NOW, water), doing(23.0, turn)],
    ]
    .into_iter()
    .map(|acts| case.events.iter().cloned().chain(acts).collect())
    .collect()
}

#[test]
fn what_is_held_goes_on_to_the_same_bits_each_time_and_as_if_it_had_not_been_held() {
    for model in [Model::Lumped, Model::default()] {
        let case = with_model(past(), model);
        let (parameters, options) = (
            Parameters::drawn(1, 4),
            Options {
                fields: true,
                ..Options::default()
            },
        );
        let held = hold(&case, &parameters, &options, NOW).unwrap();
        let plans = plans(&case);
        let first: Vec<_> = plans
            .iter()
            .map(|events| held.go_on(events).unwrap())
            .collect();
        for (events, run) in plans.iter().zip(&first).rev() {
            assert_eq!(run, &held.go_on(events).unwrap());
            // Held anew, it is the same again.
            let alone = Case {
                events: events.clone(),
                ..case.clone()
            };
            let anew = hold(&alone, &parameters, &options, NOW).unwrap();
            assert_eq!(run, &anew.go_on(events).unwrap());
            // Not held it takes other steps: the same within their error.
            let plain = simulate(&alone, &parameters, &options).unwrap();
            assert_eq!(plain.series.len(), run.series.len());
            for (one, other) in plain.series.iter().zip(&run.series) {
                let apart = (one.core_temperature_c - other.core_temperature_c).abs();
                assert!(apart < 0.05, "{model:?}: {apart} K on day {}", one.time_d);
                assert!((one.dry_mass_kg / other.dry_mass_kg - 1.0).abs() < 1e-4);
            }
            let closure = run.summary.closure;
            for error in [
                closure.carbon,
                closure.nitrogen,
                closure.water,
                closure.energy,
                closure.mass,
            ] {
                assert!(error < 1e-8, "{closure:?}");
            }
        }
        assert_ne!(first[0], first[1]);
    }
}

#[test]
fn another_past_is_refused() {
    let case = past();
    let (parameters, options) = (Parameters::default(), Options::default());
    let held = hold(&case, &parameters, &options, NOW).unwrap();
    let mut other = case.events.clone();
    other[1].day = 7.0;
    assert_eq!(
        held.go_on(&other).unwrap_err(),
        SimulationError::Event { index: 1 }
    );
    let mut earlier = case.events.clone();
    earlier.push(doing(NOW - 0.1, Action::Turn { thoroughness: 1.0 }));
    assert_eq!(
        held.go_on(&earlier).unwrap_err(),
        SimulationError::Event { index: 4 }
    );
    assert!(held.go_on(&case.events[..2]).is_err());
}
