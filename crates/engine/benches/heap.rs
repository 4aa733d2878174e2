//! How long does a simulated heap take: 120 days with four turns, one cell to a hundred, in even
//! weather and hour by hour?

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use heapwright_engine::heap::{
    Action, Case, Charge, Enclosure, Event, FeedClass, Model, Options, Parameters, Weather,
    WeatherHour, simulate,
};

fn case(model: Model) -> Case {
    let parameters = Parameters::default();
    let mut charge = Charge::default();
    for (class, dry_kg, water_kg, nitrogen) in [
        (FeedClass::Soft, 30.0, 90.0, 0.026),
        (FeedClass::Grass, 25.0, 75.0, 0.030),
        (FeedClass::Leaves, 115.0, 90.0, 0.008),
    ] {
        charge.add(&Charge::of_shares(
            &class.shares(),
            dry_kg,
            0.09 * dry_kg,
            nitrogen * dry_kg,
            water_kg,
            &parameters,
        ));
    }
    let mut events = vec![Event {
        day: 0.0,
        action: Action::Feed {
            charge,
            temperature_c: None,
        },
    }];
    for day in [10.0, 20.0, 40.0, 70.0] {
        events.push(Event {
            day,
            action: Action::Turn { thoroughness: 1.0 },
        });
    }
    Case {
        enclosure: Enclosure::open_box(1.0, 1.0, 1.0),
        weather: Weather::constant(WeatherHour::mild(15.0), 0.0),
        events,
        days: 120.0,
        model,
    }
}

/// Days and nights with an unsteady wind and six hours of rain every other day; made up.
fn hours() -> Vec<WeatherHour> {
    (0_u16..=24 * 121)
        .map(|hour| {
            let (day, wet) = (f64::from(hour) / 24.0, hour / 24 % 2 == 1);
            let swing = (std::f64::consts::TAU * day).cos();
            WeatherHour {
                relative_humidity: 0.75 + 0.2 * swing,
                rain_mm_per_h: f64::from(u8::from(wet && (6..12).contains(&(hour % 24)))),
                wind_m_s: 2.0 + (1.7 * day).sin() + 0.5 * (37.0 * day).sin(),
                solar_w_m2: (600.0 * -swing).max(0.0) * if wet { 0.4 } else { 0.8 },
                cloud_cover: if wet { 0.9 } else { 0.3 },
                ..WeatherHour::mild(14.0 - 5.0 * swing + 3.0 * (day / 2.3).sin())
            }
        })
        .collect()
}

fn simulations(criterion: &mut Criterion) {
    let parameters = Parameters::default();
    let options = Options {
        every_h: 24.0,
        ..Options::default()
    };
    for (name, model) in [
        ("120 days, one cell", Model::Lumped),
        ("120 days, 6 by 4", Model::default()),
        (
            "120 days, 10 by 10",
            Model::Spatial {
                layers: 10,
                rings: 10,
            },
        ),
        (
            "120 days, 20 by 10",
            Model::Spatial {
                layers: 20,
                rings: 10,
            },
        ),
    ] {
        let mut case = case(model);
        criterion.bench_function(name, |bencher| {
            bencher.iter(|| simulate(black_box(&case), &parameters, &options));
        });
        case.weather = Weather::hourly(hours());
        criterion.bench_function(&format!("{name}, hourly weather"), |bencher| {
            bencher.iter(|| simulate(black_box(&case), &parameters, &options));
        });
    }
}

criterion_group! {
    name = heap;
    config = Criterion::default().sample_size(20);
    targets = simulations
}
criterion_main!(heap);
