//! Where the answer is known on paper: decay, cooling, slabs, drainage, settling, and a
//! published model through the same integrator.
#![allow(clippy::unwrap_used)]

mod heap_cases;

use heap_cases::*;
use heapwright_engine::heap::{
    Action, Case, Charge, Enclosure, Event, Model, Options, Parameters, Run, Weather, WeatherHour,
    simulate,
};
use heapwright_numerics::{Chebyshev, System};

/// A closed vessel without life, in still dry weather of one temperature.
fn lifeless(charge: Charge, start_c: f64, air_c: f64, days: f64, loss_w_k: Option<f64>) -> Case {
    let mut case = built(
        Enclosure {
            heat_loss_w_per_k: loss_w_k,
            forced_air_kg_per_d: Some(0.0),
            ..cube(1.0)
        },
        air_c,
        charge,
        days,
    );
    case.weather = Weather::constant(WeatherHour::mild(air_c), 0.0);
    case.events[0].action = Action::Feed {
        charge,
        temperature_c: Some(start_c),
    };
    case.model = Model::Lumped;
    case
}

/// Matter that nothing touches: humus without microbes.
fn inert(dry_kg: f64, water_kg: f64, volume_m3: f64) -> Charge {
    Charge {
        humus_kg: dry_kg,
        water_kg,
        volume_m3,
        dry_over_grain_kg_m: dry_kg / 0.6e-3,
        bases_mol: dry_kg,
        ..Charge::default()
    }
}

fn closely(case: &Case, parameters: &Parameters, every_h: f64) -> Run {
    let options = Options {
        every_h,
        tolerance: 1e-4,
        ..Options::default()
    };
    simulate(case, parameters, &options).unwrap()
}

#[test]
fn a_lifeless_vessel_cools_as_newton_says() {
    let case = lifeless(inert(170.0, 255.0, 1.0), 60.0, 15.0, 5.0, Some(12.0));
    let run = closely(&case, &Parameters::default(), 6.0);
    let capacity = 170.0 * 1.3e-3 + 255.0 * 4.186e-3; // MJ/K
    let rate: f64 = 12.0 * 0.0864 / capacity; // 1/d
    assert!(
        (24.0 / rate - 29.8).abs() < 0.5,
        "time constant {} h",
        24.0 / rate
    );
    for row in &run.series {
        let exact = 15.0 + 45.0 * (-rate * row.time_d).exp();
        assert!(
            (row.mean_temperature_c - exact).abs() < 1e-3,
            "{row:?} {exact}"
        );
    }
}

#[test]
fn one_pool_decays_exponentially_and_takes_its_oxygen() {
    // Everything that slows decay is put out of reach: warm, wet, alkaline, blown through.
    let parameters = Parameters {
        half_activity_cells: 0.0,
        growth_yield: 0.0,
        heat_of_oxygen_mj_kg: 0.0,
        humic_acid_mol_kg: 0.0,
        least_decay_of_cells_per_d: 0.0,
        decay_of_cells_per_d: 0.0,
        heat_death_per_d: 0.0,
        field_capacity: 1e6,
        half_activity_oxygen: 1e-9,
        ..Parameters::default()
    };
    let charge = Charge {
        rapid_kg: 10.0,
        slow_kg: 0.0,
        mesophiles_kg: 1e-4,
        ash_kg: 1.0,
        water_kg: 600.0,
        volume_m3: 1.0,
        bases_mol: 600.0,
        dry_over_grain_kg_m: 11.0 / 1e-3,
        ..Charge::default()
    };
    let mut case = lifeless(charge, 37.0, 37.0, 6.0, None);
    case.enclosure.forced_air_kg_per_d = Some(1e4);
    let mut hour = WeatherHour::mild(37.0);
    hour.relative_humidity = 1.0;
    case.weather = Weather::constant(hour, 0.0);
    let run = closely(&case, &parameters, 24.0);
    // Mesophiles alone, at their best: 0.6 x 0.85 of the whole, and the thermophiles' none.
    let rate = 0.60 * 0.85;
    for row in &run.series {
        let left = row.dry_mass_kg - 1.0 - 1e-4;
        let exact = 10.0 * (-rate * row.time_d).exp();
        assert!(
            (left / exact - 1.0).abs() < 2e-3,
            "day {}: {left} {exact}",
            row.time_d
        );
    }
    let gone = run.fed.dry_kg - run.left.dry_kg;
    // Heat is nothing here; oxygen shows in the balance of the air.
    assert!(gone > 9.0 && run.summary.closure.oxygen < 1e-6);
}

#[test]
fn water_above_field_capacity_drains_exponentially() {
    let charge = inert(50.0, 200.0, 1.0);
    let run = closely(
        &lifeless(charge, 15.0, 15.0, 6.0, None),
        &Parameters::default(),
        24.0,
    );
    for row in &run.series {
        let water = row.moisture / (1.0 - row.moisture);
        // It is all humus, which holds 0.7 of the 2.7 of fresh matter.
        let exact = 1.89 + 2.11 * (-row.time_d).exp();
        assert!(
            (water - exact).abs() < 1e-3,
            "day {}: {water} {exact}",
            row.time_d
        );
    }
}

#[test]
fn a_heap_under_its_own_load_settles_exponentially() {
    let run = closely(
        &lifeless(inert(150.0, 150.0, 1.0), 15.0, 15.0, 30.0, None),
        &Parameters::default(),
        48.0,
    );
    let load_pa = 0.5 * 9.81 * 300.0;
    let settled = 150.0 * (1.0 + load_pa / 2000.0_f64).powf(0.15);
    for row in &run.series {
        let exact = settled + (150.0 - settled) * (-row.time_d / 8.0).exp();
        assert!((150.0 / row.volume_m3 - exact).abs() < 0.02 * (settled - 150.0));
    }
}

/// Temperature of the middle of a slab that cools on both faces, by its series.
fn slab_middle(biot: f64, fourier: f64) -> f64 {
    let mut sum = 0.0;
    for term in 0..12 {
        let (mut low, mut high) = (
            f64::from(term) * std::f64::consts::PI + 1e-12,
            (f64::from(term) + 0.5) * std::f64::consts::PI - 1e-12,
        );
        for _ in 0..100 {
            let zeta = 0.5 * (low + high);
            if zeta * zeta.tan() < biot {
                low = zeta;
            } else {
                high = zeta;
            }
        }
        let zeta = 0.5 * (low + high);
        let weight = 4.0 * zeta.sin() / (2.0 * zeta + (2.0 * zeta).sin());
        sum += weight * (-zeta * zeta * fourier).exp();
    }
    sum
}

#[test]
fn a_wide_slab_cools_by_its_series_at_second_order() {
    let parameters = Parameters {
        ground_coefficient_w_m2_k: 10.0,
        settling_by_load: 0.0,
        diffusion_m2_s: 0.0, // vapour would carry heat too
        ..Parameters::default()
    };
    let area = 900.0 * 900.0;
    let error = |layers: usize| {
        let charge = inert(150.0 * area, 150.0 * area, area);
        let mut case = lifeless(charge, 50.0, 10.0, 2.0, None);
        case.enclosure.width_m = 900.0;
        case.enclosure.depth_m = 900.0;
        case.model = Model::Spatial { layers, rings: 1 };
        let options = Options {
            every_h: 48.0,
            fields: true,
            tolerance: 1e-3,
        };
        let run = simulate(&case, &parameters, &options).unwrap();
        let middle = run.fields.last().unwrap()[layers / 2].temperature_c;
        let conductivity = parameters.conductivity_factor * (0.045 + 0.0003 * 150.0 + 0.85 * 0.150);
        let capacity = 150.0 * 1.3e3 + 150.0 * 4.186e3;
        let fourier = conductivity / capacity * 2.0 * 86_400.0 / 0.25;
        let exact = 10.0 + 40.0 * slab_middle(10.0 * 0.5 / conductivity, fourier);
        (middle - exact).abs()
    };
    let (coarse, fine) = (error(13), error(39));
    let order = (coarse / fine).ln() / 3.0_f64.ln();
    assert!(
        (1.9..2.2).contains(&order),
        "order {order}: {coarse} {fine}"
    );
    assert!(fine < 40.0 / 2000.0, "{fine}");
}

/// A published lumped model of a bench vessel (Cotera, doctoral thesis, University of
/// Toronto): one pool with a bell-shaped rate, forced air, wall loss.
struct Published;

impl System for Published {
    fn derivative(&mut self, _t: f64, y: &[f64], slope: &mut [f64]) {
        let (carbon, t) = (y[0], y[1]);
        let bell = |x: f64| x * x;
        let rate = 0.2
            * libm::exp(-0.1 * bell((t - 70.0) / 35.0))
            * libm::exp(-0.5 * bell((57.0 - 55.0) / 27.5))
            * libm::exp(-0.4 * (22.0 - 20.0) / 7.0);
        let out = 0.00464 * libm::exp(0.05859 * t);
        let inward = 0.5 * 0.00464 * libm::exp(0.05859 * 24.0);
        let air = 1.79 * ((1.006 + 1.86 * inward) * (t - 24.0) + 2501.0 * (out - inward));
        slope[0] = -rate * carbon;
        slope[1] = (17_500.0 * rate * carbon - air - (t - 24.0) / 0.074) / (2.43 * 2.87);
    }
    fn scale(&self, _y: &[f64], scale: &mut [f64]) {
        scale[0] = 1e-8;
        scale[1] = 1e-6;
    }
}

#[test]
fn the_published_model_comes_out_to_a_ten_thousandth_of_a_degree() {
    // Reference: DOP853 at 1e-12.
    let wanted = [
        (0.25, 41.0536),
        (0.5, 47.4909),
        (1.0, 48.7086),
        (2.0, 45.6488),
        (3.0, 42.5933),
        (5.0, 37.3773),
    ];
    let mut y = [0.269, 24.0];
    let mut integrator = Chebyshev::new(1.0, 1_000_000);
    let mut day = 0.0;
    let mut peak = (0.0, 0.0_f64);
    for (end, temperature) in wanted {
        integrator
            .integrate(&mut Published, day, end, &mut y, |_, step| {
                if step.y_end[1] > peak.1 {
                    peak = (step.end, step.y_end[1]);
                }
            })
            .unwrap();
        day = end;
        assert!((y[1] - temperature).abs() < 1e-4, "day {day}: {}", y[1]);
    }
    assert!((y[0] - 0.116_453).abs() < 1e-6, "{}", y[0]);
    assert!(
        (peak.1 - 48.9470).abs() < 1e-3 && (peak.0 - 0.807).abs() < 0.01,
        "{peak:?}"
    );
}

#[test]
fn a_heap_that_is_fed_daily_comes_to_rest_where_decay_meets_feeding() {
    // One inert-but-draining store: water above field capacity with inflow F settles at
    // field capacity + F / k (chemostat with k of drainage).
    let mut case = lifeless(inert(50.0, 94.5, 1.0), 15.0, 15.0, 30.0, None);
    for day in 0..30 {
        for hour in 0..24 {
            case.events.push(Event {
                day: f64::from(day) + f64::from(hour) / 24.0,
                action: Action::Water {
                    litres: 10.0 / 24.0,
                },
            });
        }
    }
    case.events.sort_by(|a, b| a.day.total_cmp(&b.day));
    let run = closely(&case, &Parameters::default(), 24.0);
    let last = run.series.last().unwrap();
    let water = 50.0 * last.moisture / (1.0 - last.moisture);
    assert!((water - 104.5).abs() < 0.25, "{water}");
}

#[test]
fn halving_the_tolerance_changes_nothing_that_matters() {
    let case = built(cube(1.0), 15.0, household_mix(1.0), 60.0);
    let run = |tolerance| {
        let options = Options {
            tolerance,
            ..Options::default()
        };
        simulate(&case, &Parameters::default(), &options)
            .unwrap()
            .summary
    };
    let (usual, half) = (run(1.0), run(0.5));
    let relative = |a: f64, b: f64| (a / b - 1.0).abs();
    assert!((usual.peak_core_temperature_c - half.peak_core_temperature_c).abs() < 0.05);
    assert!((usual.peak_mean_temperature_c - half.peak_mean_temperature_c).abs() < 0.05);
    assert!(relative(usual.carbon_loss_pct, half.carbon_loss_pct) < 1e-3);
    assert!(relative(usual.evaporated_l, half.evaporated_l) < 1e-3);
}
