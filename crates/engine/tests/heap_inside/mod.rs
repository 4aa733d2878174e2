//! The heap from inside: its slopes, which are not public, and heaps described in JSON.
//!
//! The files of the heap are compiled a second time as part of whoever includes this.
#![allow(dead_code, unused_imports, missing_docs, unreachable_pub)] // each includer uses some

#[path = "../../src/heap"]
pub mod heap {
    pub mod acidity;
    pub mod air;
    mod biology;
    mod case;
    pub(crate) mod cell;
    mod charge;
    pub(crate) mod derivative;
    mod enclosure;
    mod ensemble;
    mod feedstock;
    mod gas;
    mod geometry;
    pub(crate) mod layout;
    mod links;
    mod parameters;
    mod phase;
    mod pile;
    pub mod pools;
    pub mod responses;
    mod run;
    mod snapshot;
    mod summary;
    mod thermal;
    mod tracers;
    mod weather;

    pub use case::{Action, Case, Event, Model, Options, SimulationError};
    pub use charge::Charge;
    pub use enclosure::{Cover, Enclosure, Face, Ground, Shape, Wall};
    pub use ensemble::{Band, Bands, bands};
    pub use feedstock::{FeedClass, Overrides, PoolShares};
    pub use parameters::Parameters;
    pub use pile::Sums;
    pub use responses::Cardinal;
    pub use run::{Run, RunCost, simulate};
    pub use snapshot::{CellField, Snapshot};
    pub use summary::{Closure, Summary};
    pub use weather::{Weather, WeatherHour};
}

use heap::cell::Carried;
use heap::derivative::Heap;
use heap::layout::{STATES, ledger::LEDGERS};
use heap::{
    Action, Cardinal, Case, Charge, Cover, Enclosure, Event, Ground, Model, Parameters, Shape,
    Wall, Weather, WeatherHour,
};
use heapwright_numerics::System;
use serde_json::Value;

pub fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("{value} is no number"))
}

pub fn numbers(value: &Value) -> Vec<f64> {
    list(value).iter().map(number).collect()
}

pub fn list(value: &Value) -> &[Value] {
    value
        .as_array()
        .unwrap_or_else(|| panic!("{value} is no list"))
}

fn word(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

/// Parameters as recorded, so that a moved default leaves the comparison valid.
pub fn parameters(told: &Value) -> Parameters {
    let mut parameters = Parameters::default();
    macro_rules! take {
        ($($name:ident)*) => {
            $(parameters.$name = number(&told[stringify!($name)]);)*
        };
    }
    take!(rapid_rate_per_d moderate_rate_per_d slow_rate_per_d humus_rate_per_d
        mesophile_activity growth_yield half_activity_cells decay_of_cells_per_d
        least_decay_of_cells_per_d heat_death_per_d mesophile_death_c thermophile_death_c
        surviving_cells cells_to_humus slow_to_humus half_activity_oxygen fermentation
        acid_rate_per_d nitrogen_in_cells nitrogen_in_humus half_growth_nitrogen
        ammonium_sorption nitrification_per_d nitrifiers_free_ammonia denitrification_per_d
        heat_of_oxygen_mj_kg solids_heat_mj_kg_k conductivity_factor surface_factor
        ground_coefficient_w_m2_k grain_factor diffusion_m2_s wind_exchange_per_d skin_m
        field_capacity drainage_per_d settling_by_decay settling_by_load settling_time_d
        loosening turning_heat_loss bases_at_start bases_by_decay humic_acid_mol_kg
        rapid_factor water_factor air_offset_k);
    let cardinal = |told: &Value| Cardinal {
        least_c: number(&told[0]),
        best_c: number(&told[1]),
        most_c: number(&told[2]),
    };
    parameters.mesophiles = cardinal(&told["mesophiles"]);
    parameters.thermophiles = cardinal(&told["thermophiles"]);
    parameters
}

pub fn enclosure(told: &Value) -> Enclosure {
    let shape = match word(&told["shape"]) {
        "Cylinder" => Shape::Cylinder,
        "Cone" => Shape::Cone,
        "Drum" => Shape::Drum,
        _ => Shape::Box,
    };
    let wall = match word(&told["wall"]) {
        "Mesh" => Wall::Mesh,
        "Slatted" => Wall::Slatted,
        "Wood" => Wall::Wood,
        "Plastic" => Wall::Plastic,
        "Metal" => Wall::Metal,
        "Insulated" => Wall::Insulated,
        _ => Wall::Open,
    };
    let cover = match word(&told["cover"]) {
        "Sheet" => Cover::Sheet,
        "Lid" => Cover::Lid,
        "Roof" => Cover::Roof,
        _ => Cover::None,
    };
    Enclosure {
        shape,
        width_m: number(&told["width_m"]),
        depth_m: number(&told["depth_m"]),
        height_m: number(&told["height_m"]),
        wall,
        cover,
        ground: Ground::Soil,
        heat_loss_w_per_k: told["heat_loss_w_per_k"].as_f64(),
        forced_air_kg_per_d: told["forced_air_kg_per_d"].as_f64(),
    }
}

pub fn weather(told: &Value) -> Weather {
    let hours: Vec<WeatherHour> = list(&told["hours"])
        .iter()
        .map(|hour| WeatherHour {
            air_temperature_c: number(&hour[0]),
            relative_humidity: number(&hour[1]),
            rain_mm_per_h: number(&hour[2]),
            wind_m_s: number(&hour[3]),
            solar_w_m2: number(&hour[4]),
            cloud_cover: number(&hour[5]),
        })
        .collect();
    if hours.len() == 1 {
        Weather::constant(hours[0], number(&told["ground_offset_k"]))
    } else {
        Weather::hourly(hours)
    }
}

fn charge(told: &Value) -> Charge {
    let mut charge = Charge::default();
    macro_rules! take {
        ($($name:ident)*) => {
            $(charge.$name = number(&told[stringify!($name)]);)*
        };
    }
    take!(rapid_kg moderate_kg slow_kg humus_kg mesophiles_kg thermophiles_kg acids_kg
        ammonium_kg nitrate_kg water_kg ash_kg bases_mol potassium_kg volume_m3 dry_over_grain_kg_m);
    charge
        .nitrogen_kg
        .copy_from_slice(&numbers(&told["nitrogen_kg"]));
    charge
}

/// A case as recorded.
pub fn case(told: &Value) -> Case {
    let size =
        |place: usize| usize::try_from(told["grid"][place].as_u64().unwrap_or(1)).unwrap_or(1);
    let model = match (size(0), size(1)) {
        (1, 1) => Model::Lumped,
        (layers, rings) => Model::Spatial { layers, rings },
    };
    let events = list(&told["events"])
        .iter()
        .map(|event| Event {
            day: number(&event["day"]),
            action: match word(&event["action"]) {
                "feed" => Action::Feed {
                    charge: charge(&event["charge"]),
                    temperature_c: event["temperature_c"].as_f64(),
                },
                "turn" => Action::Turn {
                    thoroughness: number(&event["thoroughness"]),
                },
                "water" => Action::Water {
                    litres: number(&event["litres"]),
                },
                other => panic!("nothing is known of {other}"),
            },
        })
        .collect();
    Case {
        enclosure: enclosure(&told["enclosure"]),
        weather: weather(&told["weather"]),
        events,
        days: number(&told["days"]),
        model,
    }
}

/// What of a cell's matter stays the same between events, cell by cell.
pub fn carried(told: &Value) -> Vec<Carried> {
    let of = |name: &str| numbers(&told[name]);
    let (ash, bases, fed, density, grain) = (
        of("ash_kg"),
        of("bases_mol"),
        of("dry_fed_kg"),
        of("density_fed_kg_m3"),
        of("grain_m2"),
    );
    (0..ash.len())
        .map(|cell| Carried {
            ash_kg: ash[cell],
            bases_mol: bases[cell],
            dry_fed_kg: fed[cell],
            density_fed_kg_m3: density[cell],
            grain_m2: grain[cell],
        })
        .collect()
}

/// Slopes of quantities and books at a recorded state, and oxygen and hydrogen ions.
pub struct Slopes {
    pub quantities: Vec<f64>,
    pub books: Vec<f64>,
    pub oxygen: Vec<f64>,
    pub hydrogen: Vec<f64>,
}

pub fn slopes(parameters: &Parameters, told: &Value) -> Slopes {
    let weather = weather(&told["weather"]);
    let mut heap = Heap::new(parameters, &weather, enclosure(&told["enclosure"]), 1.0);
    heap.spread = number(&told["spread"]);
    heap.carried = carried(&told["carried"]);
    let size = |name: &str| usize::try_from(told[name].as_u64().unwrap_or(1)).unwrap_or(1);
    heap.take_grid(size("layers"), size("rings"), told["lumped"] == true);
    heap.rain_mm_per_d = number(&told["rain_mm_per_d"]);
    let mut y = numbers(&told["y"]);
    let quantities = y.len();
    assert_eq!(quantities, STATES * heap.carried.len());
    y.resize(quantities + LEDGERS, 0.0);
    let mut slope = vec![0.0; y.len()];
    heap.derivative(0.0, &y, &mut slope);
    let books = slope.split_off(quantities);
    Slopes {
        quantities: slope,
        books,
        oxygen: heap.gas.oxygen.clone(),
        hydrogen: heap.cells.iter().map(|cell| cell.hydrogen).collect(),
    }
}
