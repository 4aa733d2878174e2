//! Does the simulation turn the way every keeper knows? More green, more water, less air.
#![allow(clippy::unwrap_used)]

mod heap_cases;

use heap_cases::*;
use heapwright_engine::heap::{
    Action, Charge, Cover, Enclosure, Event, FeedClass, Model, Options, Overrides, Parameters,
    Shape, Summary, Wall, bands, simulate,
};

fn heap(charge: Charge) -> Summary {
    run(&built(cube(1.0), 15.0, charge, 60.0)).summary
}

fn mix(green_kg: f64, brown_kg: f64, moisture: f64) -> Charge {
    let mut mixed = wetted(
        together(&[kitchen(green_kg), grass(green_kg), leaves(brown_kg)]),
        moisture,
    );
    mixed.volume_m3 = 1.0;
    grained(mixed, 0.6)
}

#[test]
fn more_green_is_hotter_and_loses_more_ammonia() {
    let (lean, rich) = (heap(mix(40.0, 170.0, 0.6)), heap(mix(150.0, 110.0, 0.6)));
    assert!(rich.peak_mean_temperature_c > lean.peak_mean_temperature_c);
    assert!(rich.ammonia_loss_pct > lean.ammonia_loss_pct);
    assert!(rich.volatile_solids_loss_pct > lean.volatile_solids_loss_pct);
    assert!(rich.peak_day < lean.peak_day + 1.0);
}

#[test]
fn soaking_goes_sour_and_dryness_stops() {
    let moist = heap(mix(100.0, 130.0, 0.6));
    let soaked = heap(mix(100.0, 130.0, 0.78));
    let dry = heap(mix(100.0, 130.0, 0.28));
    assert!(
        soaked.days_with_sour_part > moist.days_with_sour_part + 5.0,
        "{soaked:?}"
    );
    assert!(soaked.methane_share_of_carbon_loss_pct > moist.methane_share_of_carbon_loss_pct);
    assert!(
        dry.peak_mean_temperature_c < 0.7 * moist.peak_mean_temperature_c,
        "{dry:?}"
    );
    assert!(dry.carbon_loss_pct < 0.5 * moist.carbon_loss_pct);
}

#[test]
fn turning_reheats_and_speeds_and_dries_and_reaches_every_part() {
    let case = built(cube(1.0), 15.0, household_mix(1.0), 40.0);
    let still = run_every(&case, 6.0);
    let turned_run = run_every(&turned(case, &[9.0, 18.0]), 6.0);
    // Just after the turn it is cooler, a day or two later hotter than if left alone.
    let after = row_at(&turned_run, 9.3).core_temperature_c;
    let later = turned_run
        .series
        .iter()
        .filter(|row| (9.5..14.0).contains(&row.time_d))
        .map(|row| row.core_temperature_c)
        .fold(0.0, f64::max);
    assert!(later > after + 4.0, "{after} {later}");
    let (still, turned_run) = (still.summary, turned_run.summary);
    assert!(turned_run.volatile_solids_loss_pct > still.volatile_solids_loss_pct);
    assert!(turned_run.wet_mass_loss_pct > still.wet_mass_loss_pct);
    assert!(turned_run.never_hot_share_pct < still.never_hot_share_pct);
    assert!(turned_run.germ_survival[1] < still.germ_survival[1]);
}

#[test]
fn shredding_quickens_and_whole_sticks_last() {
    let sticks = |particle_mm: f64| {
        let shares = FeedClass::Wood.shares().with(&Overrides {
            particle_mm: Some(particle_mm),
            ..Overrides::default()
        });
        let wood = of_shares(&shares, 200.0, 0.45, 0.02, 0.003);
        let mut mixed = wetted(together(&[wood, grass(80.0)]), 0.6);
        mixed.volume_m3 = 1.0;
        heap(mixed)
    };
    let (whole, chipped, dust) = (sticks(60.0), sticks(20.0), sticks(5.0));
    assert!(chipped.volatile_solids_loss_pct > whole.volatile_solids_loss_pct + 0.5);
    assert!(dust.volatile_solids_loss_pct > chipped.volatile_solids_loss_pct);
}

#[test]
fn size_insulation_and_cover_act_as_they_should() {
    let side = |side: f64| {
        run(&built(
            cube(side),
            10.0,
            household_mix(side * side * side),
            30.0,
        ))
        .summary
    };
    let (small, large) = (side(0.5), side(1.3));
    assert!(large.peak_mean_temperature_c > small.peak_mean_temperature_c + 5.0);
    assert!(large.days_core_at_or_above_55 > small.days_core_at_or_above_55);
    let walled = |wall: Wall, cover: Cover| {
        let enclosure = Enclosure {
            wall,
            cover,
            ..cube(0.6)
        };
        run(&built(enclosure, 10.0, household_mix(0.216), 30.0)).summary
    };
    let (foam, plastic) = (
        walled(Wall::Insulated, Cover::Lid),
        walled(Wall::Plastic, Cover::Lid),
    );
    assert!(foam.peak_mean_temperature_c > plastic.peak_mean_temperature_c + 5.0);
    let open = walled(Wall::Open, Cover::None);
    assert!(open.evaporated_l > plastic.evaporated_l);
}

#[test]
fn rain_wets_what_is_open_and_runs_through() {
    let hours = (0..=24 * 40)
        .map(|hour| {
            let mut weather = heapwright_engine::heap::WeatherHour::mild(12.0);
            weather.rain_mm_per_h = if hour % 6 == 0 { 3.0 } else { 0.0 };
            weather
        })
        .collect();
    let mut case = built(cube(1.0), 12.0, household_mix(1.0), 40.0);
    case.weather = heapwright_engine::heap::Weather::hourly(hours);
    let open = run(&case);
    case.enclosure.cover = Cover::Lid;
    let covered = run(&case);
    assert!(open.summary.leachate_l > 50.0 && covered.summary.leachate_l < 1.0);
    assert!(open.left.potassium_kg <= open.fed.potassium_kg);
    let moisture = |run: &heapwright_engine::heap::Run| run.series.last().unwrap().moisture;
    assert!(moisture(&open) > moisture(&covered) + 0.05);
}

#[test]
fn a_drum_and_a_free_heap_run_too_and_a_frozen_heap_thaws() {
    let drum = Enclosure {
        shape: Shape::Drum,
        wall: Wall::Plastic,
        ..cube(0.6)
    };
    assert!(
        run(&built(drum, 20.0, household_mix(0.15), 20.0))
            .summary
            .peak_mean_temperature_c
            > 30.0
    );
    let hours = (0..=24 * 60)
        .map(|hour| {
            heapwright_engine::heap::WeatherHour::mild(if hour < 24 * 20 { -8.0 } else { 18.0 })
        })
        .collect();
    let mut case = built(cube(1.0), -8.0, household_mix(1.0), 60.0);
    case.weather = heapwright_engine::heap::Weather::hourly(hours);
    case.events[0].action = Action::Feed {
        charge: household_mix(1.0),
        temperature_c: Some(-3.0),
    };
    let run = run_every(&case, 24.0);
    assert!(row_at(&run, 19.0).mean_temperature_c < 0.0);
    assert!(
        run.summary.peak_core_temperature_c > 50.0,
        "{:?}",
        run.summary
    );
    assert!(run.summary.peak_day > 22.0);
}

#[test]
fn finer_grids_agree_and_one_cell_agrees_with_the_lumped_heap() {
    let peak = |layers: usize, rings: usize| {
        let case = built(cube(1.0), 15.0, household_mix(1.0), 8.0);
        run(&with_model(case, Model::Spatial { layers, rings }))
            .summary
            .peak_core_temperature_c
    };
    let (four, eight, sixteen) = (peak(4, 4), peak(8, 4), peak(16, 4));
    assert!((four - sixteen).abs() < 1.0 && (eight - sixteen).abs() < 1.0);
    // A vessel with measured loss has no inner distances: one cell is the lumped heap.
    let vessel = VESSEL_A.case();
    let one = run(&with_model(
        vessel.clone(),
        Model::Spatial {
            layers: 1,
            rings: 1,
        },
    ));
    assert_eq!(one.summary, run(&vessel).summary);
}

#[test]
fn an_ensemble_gives_bands_that_do_not_depend_on_order() {
    let case = with_model(
        built(cube(1.0), 15.0, household_mix(1.0), 20.0),
        Model::Lumped,
    );
    let options = Options::default();
    let all = bands(&case, &options, 3, 0..40).unwrap();
    let again = bands(&case, &options, 3, 0..40).unwrap();
    assert_eq!(all, again);
    assert_eq!(all.failed, 0);
    let peak = all.of(|summary| summary.peak_mean_temperature_c);
    assert!(peak.low < peak.lower && peak.lower < peak.median);
    assert!(peak.median < peak.upper && peak.upper < peak.high);
    assert!((8.0..40.0).contains(&(peak.high - peak.low)), "{peak:?}");
    let default = simulate(&case, &Parameters::default(), &options).unwrap();
    assert_eq!(all.summaries[0], default.summary);
    assert_eq!(Parameters::drawn(3, 5), Parameters::drawn(3, 5));
    assert_ne!(Parameters::drawn(3, 5), Parameters::drawn(4, 5));
}

#[test]
fn parts_of_the_garden_become_charges() {
    use heapwright_terms::{Ingredient, NitrogenAndCarbon, Part, PartAmount};
    let range = |value: f64| heapwright_quantity::Range::exact(value);
    let part = Part {
        ingredient: Ingredient {
            identity: "scraps".into(),
            moisture_wet_basis: range(0.8),
            nitrogen_and_carbon: NitrogenAndCarbon {
                nitrogen_dry_basis: range(0.025),
                carbon_dry_basis_at_low_nitrogen: 0.5,
                carbon_dry_basis_typical: 0.5,
                carbon_dry_basis_at_high_nitrogen: 0.5,
            },
            measured_over_handbook_carbon: 0.9,
            bulk_density_kg_m3: Some(range(500.0)),
            density_follows_moisture: false,
            ash_dry_basis: range(0.08),
            biodegradable_dry_basis: range(0.65),
            phosphorus_dry_basis: None,
            potassium_dry_basis: Some(range(0.02)),
            calcium_dry_basis: None,
            magnesium_dry_basis: None,
            sodium_dry_basis: None,
        },
        amount: PartAmount::MassKg(10.0),
    };
    let parameters = Parameters::default();
    let plain = Overrides::default();
    let known = Charge::of_part(&part, Some(FeedClass::Soft), &plain, &parameters);
    let guessed = Charge::of_part(&part, None, &plain, &parameters);
    for charge in [known, guessed] {
        assert!(
            (charge.dry_mass_kg(&parameters) - 2.0).abs() < 1e-9,
            "{charge:?}"
        );
        assert!((charge.water_kg - 8.0).abs() < 1e-9);
        let nitrogen: f64 = charge.nitrogen_kg.iter().sum::<f64>()
            + 0.066 * (charge.mesophiles_kg + charge.thermophiles_kg);
        assert!((nitrogen - 0.05).abs() < 1e-9);
        assert!((charge.potassium_kg - 0.04).abs() < 1e-12);
    }
    // Unknown kinds land near their like.
    assert!(
        (guessed.rapid_kg / known.rapid_kg - 1.0).abs() < 0.35,
        "{guessed:?} {known:?}"
    );
    let told = Overrides {
        rapid_fraction_vs: Some(0.2),
        moderate_fraction_vs: Some(0.3),
        slow_fraction_vs: Some(0.5),
        ..plain
    };
    let told = Charge::of_part(&part, Some(FeedClass::Soft), &told, &parameters);
    assert!(told.slow_kg > told.moderate_kg && told.moderate_kg > told.rapid_kg);
}

#[test]
fn events_in_any_number_on_one_day_are_done_in_their_order() {
    let mut case = built(cube(1.0), 15.0, household_mix(0.4), 10.0);
    for action in [
        Action::Water { litres: 20.0 },
        Action::Turn { thoroughness: 0.7 },
        Action::TakeOut {
            share: 0.5,
            from_below: false,
        },
        Action::Feed {
            charge: household_mix(0.3),
            temperature_c: Some(40.0),
        },
    ] {
        case.events.push(Event { day: 4.0, action });
    }
    let run = run(&case);
    assert!(run.summary.closure.carbon < 1e-12 && run.summary.closure.energy < 1e-10);
}
