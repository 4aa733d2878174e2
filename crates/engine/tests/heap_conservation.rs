//! Does anything get lost? Balances over random heaps that are fed, turned, watered,
//! rained on, covered and taken from, and over absurd ones.
#![allow(clippy::unwrap_used)]

mod heap_cases;

use heap_cases::*;
use heapwright_engine::heap::{
    Action, Case, Charge, Cover, Enclosure, Event, FeedClass, Ground, Model, Options, Overrides,
    Parameters, Run, Shape, SimulationError, Wall, Weather, WeatherHour, simulate,
};
use heapwright_numerics::Stream;

/// Numbers of one random case, taken in turn.
struct Dice {
    stream: Stream,
}

impl Dice {
    fn new(seed: u64) -> Self {
        Self {
            stream: Stream::new(seed, "heap case"),
        }
    }
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.stream.uniforms(1)[0]
    }
    fn below(&mut self, count: usize) -> usize {
        (self.between(0.0, 1.0) * count as f64) as usize
    }
    fn chance(&mut self, share: f64) -> bool {
        self.between(0.0, 1.0) < share
    }
    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    fn charge(&mut self, wet_kg: f64) -> Charge {
        let class = self.one_of(&[
            FeedClass::Soft,
            FeedClass::Grass,
            FeedClass::Leaves,
            FeedClass::Straw,
            FeedClass::Wood,
            FeedClass::Paper,
            FeedClass::Manure,
            FeedClass::Finished,
            FeedClass::Mineral,
        ]);
        let shares = class.shares().with(&Overrides {
            particle_mm: Some(self.between(1.0, 200.0)),
            ..Overrides::default()
        });
        let mut charge = of_shares(
            &shares,
            wet_kg,
            self.between(0.05, 0.9),
            self.between(0.01, 0.4),
            self.between(0.001, 0.05),
        );
        charge.potassium_kg = 0.01 * dry_kg(&charge);
        charge.phosphorus_kg = 0.002 * dry_kg(&charge);
        charge.calcium_kg = 0.01 * dry_kg(&charge);
        charge.magnesium_kg = 0.002 * dry_kg(&charge);
        charge
    }

    fn weather(&mut self, days: f64) -> Weather {
        let (mean, swing) = (self.between(-10.0, 28.0), self.between(0.0, 8.0));
        let wet = self.between(0.0, 0.12);
        let hours = (0..=(days * 24.0).ceil() as usize)
            .map(|hour| {
                let time = hour as f64 / 24.0 * std::f64::consts::TAU;
                WeatherHour {
                    air_temperature_c: mean - swing * time.cos() + 4.0 * (0.13 * time).sin(),
                    relative_humidity: self.between(0.3, 1.0),
                    rain_mm_per_h: if self.chance(wet) {
                        self.between(0.1, 6.0)
                    } else {
                        0.0
                    },
                    wind_m_s: self.between(0.0, 8.0),
                    solar_w_m2: (-700.0 * time.cos()).max(0.0),
                    cloud_cover: self.between(0.0, 1.0),
                }
            })
            .collect();
        Weather::hourly(hours)
    }

    fn case(&mut self, days: f64) -> Case {
        let side = self.between(0.4, 2.0);
        let enclosure = Enclosure {
            shape: self.one_of(&[Shape::Box, Shape::Cylinder, Shape::Cone, Shape::Drum]),
            width_m: side,
            depth_m: side * self.between(0.7, 2.0),
            height_m: self.between(0.5, 1.5),
            wall: self.one_of(&[
                Wall::Open,
                Wall::Mesh,
                Wall::Slatted,
                Wall::Wood,
                Wall::Plastic,
                Wall::Metal,
                Wall::Insulated,
            ]),
            cover: self.one_of(&[Cover::None, Cover::Sheet, Cover::Lid, Cover::Roof]),
            ground: self.one_of(&[Ground::Soil, Ground::Paving]),
            heat_loss_w_per_k: None,
            forced_air_kg_per_d: self.chance(0.1).then(|| self.between(0.1, 50.0)),
        };
        let mut events = vec![Event {
            day: 0.0,
            action: Action::Feed {
                charge: {
                    let wet = self.between(5.0, 400.0);
                    self.charge(wet)
                },
                temperature_c: None,
            },
        }];
        for _ in 0..self.below(25) {
            let day = if self.chance(0.5) {
                self.between(0.0, days)
            } else {
                self.between(0.0, days).floor()
            };
            let action = match self.below(10) {
                0..=4 => {
                    let wet = self.between(0.2, 30.0);
                    Action::Feed {
                        charge: self.charge(wet),
                        temperature_c: self.chance(0.3).then(|| self.between(2.0, 60.0)),
                    }
                }
                5 | 6 => Action::Turn {
                    thoroughness: self.between(0.0, 1.0),
                },
                7 => Action::Water {
                    litres: self.between(0.0, 60.0),
                },
                8 => Action::Cover(self.one_of(&[Cover::None, Cover::Sheet, Cover::Lid])),
                _ => Action::TakeOut {
                    share: self.between(0.0, 0.6),
                    from_below: self.chance(0.5),
                },
            };
            events.push(Event { day, action });
        }
        events.sort_by(|a, b| a.day.total_cmp(&b.day));
        Case {
            enclosure,
            weather: self.weather(days),
            events,
            days,
            model: self.one_of(&[
                Model::Lumped,
                Model::Spatial {
                    layers: 3,
                    rings: 2,
                },
                Model::default(),
            ]),
        }
    }
}

/// Balances within 1e-8, nothing below nothing, nothing that is not a number.
fn holds(run: &Run, what: &str) {
    let closure = &run.summary.closure;
    for (name, error) in [
        ("carbon", closure.carbon),
        ("nitrogen", closure.nitrogen),
        ("water", closure.water),
        ("ash", closure.ash),
        ("energy", closure.energy),
        ("mass", closure.mass),
    ] {
        assert!(error < 1e-8, "{what}: {name} is off by {error}");
    }
    for row in &run.series {
        let values = [
            row.core_temperature_c,
            row.mean_temperature_c,
            row.edge_temperature_c,
            row.ph,
            row.carbon_to_nitrogen,
            row.oxygen_uptake_mg_per_g_vs_h,
            row.standard_uptake_mg_per_g_vs_h,
            row.water_wanted_l,
        ];
        assert!(
            values.iter().all(|value| value.is_finite()),
            "{what}: {row:?}"
        );
        assert!(
            (0.0..=20.95).contains(&row.lowest_oxygen_pct),
            "{what}: {row:?}"
        );
        assert!((0.0..1.0).contains(&row.moisture), "{what}: {row:?}");
        assert!(
            row.volume_m3 > 0.0 && row.dry_mass_kg > 0.0,
            "{what}: {row:?}"
        );
        assert!(
            (-60.0..90.0).contains(&row.mean_temperature_c),
            "{what}: {row:?}"
        );
        assert!((2.9..=10.1).contains(&row.ph), "{what}: {row:?}");
    }
    for cell in run.fields.iter().flatten() {
        assert!(
            cell.air_space > 0.0 && cell.air_space < 1.0,
            "{what}: {cell:?}"
        );
        assert!(cell.temperature_c.is_finite() && (0.0..=1.0).contains(&cell.decayed));
    }
    let shares: f64 = run.summary.hot_shares.iter().sum();
    assert!((shares - 1.0).abs() < 1e-9, "{what}: {shares}");
}

fn random_cases(seeds: std::ops::Range<u64>, days: f64) -> f64 {
    let mut worst_oxygen = 0.0_f64;
    for seed in seeds {
        let case = Dice::new(seed).case(days);
        let options = Options {
            every_h: 48.0,
            fields: true,
            ..Options::default()
        };
        let parameters = Parameters::drawn(seed, u32::try_from(seed % 3).unwrap());
        match simulate(&case, &parameters, &options) {
            Ok(run) => {
                holds(&run, &format!("case {seed}"));
                worst_oxygen = worst_oxygen.max(run.summary.closure.oxygen);
            }
            Err(error) => panic!("case {seed}: {error}"),
        }
    }
    worst_oxygen
}

#[test]
fn sixty_random_heaps_lose_nothing_over_120_days() {
    random_cases(0..60, 120.0);
}

/// `cargo test --release -p heapwright-engine --test heap_conservation -- --ignored`
#[test]
#[ignore = "takes minutes; the sixty above run every time"]
fn a_thousand_random_heaps_lose_nothing_over_120_days() {
    random_cases(0..1000, 120.0);
}

#[test]
fn absurd_heaps_give_numbers_all_the_same() {
    let parameters = Parameters::default();
    let options = Options::default();
    let odd = [
        ("a thimble", packed(kitchen(0.001), 500.0), 0.05),
        ("a hill", packed(household_mix(800.0), 425.0), 12.0),
        ("soup", wetted(kitchen(100.0), 0.97), 1.0),
        ("dust", wetted(leaves(50.0), 0.02), 1.0),
        (
            "sawdust with no nitrogen",
            of_shares(&FeedClass::Wood.shares(), 80.0, 0.3, 0.0, 0.0),
            1.0,
        ),
        (
            "blood meal",
            of_shares(&FeedClass::Soft.shares(), 80.0, 0.5, 0.05, 0.14),
            1.0,
        ),
        (
            "sand",
            of_shares(&FeedClass::Mineral.shares(), 300.0, 0.05, 0.99, 0.0),
            1.0,
        ),
    ];
    for (name, charge, side) in odd {
        for air in [-35.0, 15.0, 48.0] {
            for model in [Model::Lumped, Model::default()] {
                let case = with_model(
                    turned(built(cube(side), air, charge, 40.0), &[7.0, 7.0, 20.0]),
                    model,
                );
                let run = simulate(&case, &parameters, &options)
                    .unwrap_or_else(|error| panic!("{name} at {air}: {error}"));
                holds(&run, &format!("{name} at {air}, {model:?}"));
            }
        }
    }
}

#[test]
fn a_heap_fed_daily_for_ten_years_goes_on() {
    let days = 3650.0;
    let mut events = Vec::new();
    for day in 0..3650 {
        events.push(Event {
            day: f64::from(day),
            action: Action::Feed {
                charge: together(&[kitchen(0.6), leaves(0.3)]),
                temperature_c: None,
            },
        });
        if day % 180 == 179 {
            events.push(Event {
                day: f64::from(day),
                action: Action::TakeOut {
                    share: 0.4,
                    from_below: true,
                },
            });
        }
    }
    let case = Case {
        enclosure: Enclosure {
            wall: Wall::Plastic,
            cover: Cover::Lid,
            ..cube(0.8)
        },
        weather: mild(12.0),
        events,
        days,
        model: Model::Spatial {
            layers: 4,
            rings: 2,
        },
    };
    let options = Options {
        every_h: 240.0,
        ..Options::default()
    };
    let run = simulate(&case, &Parameters::default(), &options).unwrap();
    holds(&run, "ten years");
    assert!(run.series.len() >= 365);
}

#[test]
fn events_are_exact_and_turning_twice_is_turning_once() {
    // No time passes between them: what is fed is what is there.
    let mut case = built(cube(1.0), 15.0, household_mix(1.0), 0.001);
    let run = run_every(&case, 1.0);
    assert!((run.left.carbon_kg / run.fed.carbon_kg - 1.0).abs() < 1e-4);
    case = turned(built(cube(1.0), 15.0, household_mix(1.0), 30.0), &[5.0]);
    let once = run_every(&case, 24.0);
    let twice = run_every(&turned(case, &[5.0]), 24.0);
    holds(&once, "once");
    holds(&twice, "twice");
    // Only heat, water and density differ.
    let difference = once.summary.volatile_solids_loss_pct - twice.summary.volatile_solids_loss_pct;
    assert!(difference.abs() < 1.5, "{difference}");
}

#[test]
fn what_has_no_meaning_is_refused_with_a_sentence() {
    let fine = built(cube(1.0), 15.0, household_mix(1.0), 10.0);
    let parameters = Parameters::default();
    let refused = |change: fn(&mut Case)| {
        let mut case = fine.clone();
        change(&mut case);
        simulate(&case, &parameters, &Options::default()).unwrap_err()
    };
    assert_eq!(
        refused(|case| case.events.clear()),
        SimulationError::NothingFed
    );
    assert_eq!(
        refused(|case| case.days = f64::NAN),
        SimulationError::Settings("number of days")
    );
    assert_eq!(
        refused(|case| case.enclosure.width_m = -1.0),
        SimulationError::Enclosure("width")
    );
    assert_eq!(
        refused(|case| case.model = Model::Spatial {
            layers: 0,
            rings: 3
        }),
        SimulationError::Settings("grid")
    );
    assert_eq!(
        refused(|case| case.weather = Weather::hourly(vec![WeatherHour::mild(10.0); 48])),
        SimulationError::WeatherTooShort { days: 2.0 }
    );
    assert_eq!(
        refused(|case| {
            let mut hour = WeatherHour::mild(10.0);
            hour.air_temperature_c = 500.0;
            case.weather = Weather::constant(hour, 0.0);
        }),
        SimulationError::Weather { hour: 0 }
    );
    assert_eq!(
        refused(|case| case.events[0].day = -1.0),
        SimulationError::Event { index: 0 }
    );
    assert!(
        refused(|case| case.events.clear())
            .to_string()
            .contains("add a feed")
    );
}

#[test]
fn the_same_case_gives_the_same_bits() {
    let case = Dice::new(7).case(40.0);
    let one = run_every(&case, 12.0);
    let other = run_every(&case, 12.0);
    assert_eq!(one, other);
    // Looking more often changes nothing but what is seen.
    let finer = run_every(&case, 3.0);
    assert_eq!(one.left, finer.left);
}
