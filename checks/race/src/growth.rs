//! Time and memory by cells, days and members, through the engine's front door.

use std::time::Instant;

use crate::heap_inside::heap::{
    Action, Case, Charge, Enclosure, Event, Model, Options, Parameters, Run, Weather, WeatherHour,
    simulate,
};

/// Kitchen scraps, grass, leaves and chips for a cubic metre; round figures.
pub fn mixture() -> Charge {
    Charge {
        rapid_kg: 32.5,
        moderate_kg: 53.2,
        slow_kg: 64.3,
        humus_kg: 0.2,
        mesophiles_kg: 1.3,
        thermophiles_kg: 0.56,
        acids_kg: 0.49,
        nitrogen_kg: [1.3, 0.54, 0.44, 0.004],
        ammonium_kg: 0.05,
        nitrate_kg: 0.01,
        water_kg: 255.0,
        ash_kg: 14.7,
        bases_mol: 46.0,
        potassium_kg: 1.7,
        volume_m3: 1.0,
        dry_over_grain_kg_m: 170.0 / 0.6e-3,
        ..Charge::default()
    }
}

/// Built at once, turned on five days and watered on two.
pub fn season(layers: usize, rings: usize, days: f64) -> Case {
    let at = |day: f64, action: Action| Event { day, action };
    let turn = || Action::Turn { thoroughness: 1.0 };
    let water = || Action::Water { litres: 25.0 };
    let mut events = vec![at(
        0.0,
        Action::Feed {
            charge: mixture(),
            temperature_c: None,
        },
    )];
    events.extend([
        at(7.0, turn()),
        at(14.0, turn()),
        at(14.0, water()),
        at(28.0, turn()),
        at(35.0, water()),
        at(45.0, turn()),
        at(70.0, turn()),
    ]);
    events.retain(|event| event.day < days);
    Case {
        enclosure: Enclosure::open_box(1.0, 1.0, 1.0),
        weather: Weather::constant(WeatherHour::mild(15.0), -2.0),
        events,
        days,
        model: if layers * rings == 1 {
            Model::Lumped
        } else {
            Model::Spatial { layers, rings }
        },
    }
}

/// Seconds that this thread has computed so far, where the system tells: what others do on the
/// same machine counts less than on a clock.
pub fn computed() -> f64 {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat");
    let nanoseconds = told
        .ok()
        .and_then(|told| told.split_whitespace().next()?.parse::<f64>().ok());
    nanoseconds.map_or_else(
        || {
            std::time::SystemTime::now()
                .duration_since(std::time::UNIX_EPOCH)
                .map_or(0.0, |time| time.as_secs_f64())
        },
        |nanoseconds| 1e-9 * nanoseconds,
    )
}

/// Least time that is measured at once [s]: the system's own count of it goes by hundredths.
const LEAST_MEASURED: f64 = 0.1;

/// Seconds of one call: the median of some rounds, each of as many calls as can be measured.
pub fn seconds_of(rounds: usize, mut call: impl FnMut()) -> f64 {
    let start = Instant::now();
    call();
    let calls = (LEAST_MEASURED / start.elapsed().as_secs_f64().max(1e-6)).ceil() as u32;
    let mut seconds: Vec<f64> = (0..rounds)
        .map(|_| {
            let start = computed();
            for _ in 0..calls {
                call();
            }
            (computed() - start) / f64::from(calls)
        })
        .collect();
    seconds.sort_by(f64::total_cmp);
    seconds[rounds / 2]
}

/// The median of some runs' seconds, and a run.
fn timed(case: &Case, rounds: usize) -> (f64, Run) {
    let parameters = Parameters::default();
    let options = Options {
        every_h: 24.0,
        ..Options::default()
    };
    let mut run = Run::default();
    let seconds = seconds_of(rounds, || {
        run = simulate(case, &parameters, &options).expect("the case has a meaning");
    });
    (seconds, run)
}

pub fn with_cells() {
    println!("120 days with events, by cells: layers x rings | ms | steps | slopes | us a slope");
    for (layers, rings) in [(1, 1), (4, 3), (6, 4), (8, 6), (10, 10), (15, 12), (20, 20)] {
        let (seconds, run) = timed(&season(layers, rings, 120.0), 5);
        println!(
            "{layers} x {rings} | {:.2} | {} + {} | {} | {:.2}",
            1e3 * seconds,
            run.cost.steps,
            run.cost.rejected,
            run.cost.slopes,
            1e6 * seconds / run.cost.slopes as f64
        );
    }
}

pub fn with_days() {
    println!("6 x 4, by days: days | ms");
    for days in [15.0, 30.0, 60.0, 120.0, 240.0, 480.0] {
        println!("{days} | {:.2}", 1e3 * timed(&season(6, 4, days), 5).0);
    }
}

pub fn of_an_ensemble() {
    let case = season(1, 1, 120.0);
    let options = Options {
        every_h: 24.0,
        ..Options::default()
    };
    let seconds = seconds_of(5, || {
        for member in 0..200 {
            simulate(&case, &Parameters::drawn(11, member), &options)
                .expect("every member goes on");
        }
    });
    println!("200 members, one cell, 120 days: {:.1} ms", 1e3 * seconds);
}

/// Highest resident memory so far [KiB], where the system tells.
fn peak_kib() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM"))?;
    line.split_whitespace().nth(1)?.parse().ok()
}

pub fn of_memory() {
    println!("highest resident memory after a run: layers x rings | KiB");
    println!("before | {:?}", peak_kib());
    for (layers, rings) in [(1, 1), (6, 4), (10, 10), (20, 20)] {
        timed(&season(layers, rings, 120.0), 1);
        println!("{layers} x {rings} | {:?}", peak_kib());
    }
}
