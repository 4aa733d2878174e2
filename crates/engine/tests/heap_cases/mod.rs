//! Heaps that several tests simulate, with where their figures come from.
#![allow(dead_code, clippy::unwrap_used)] // each test binary uses some of them

use heapwright_engine::heap::{
    Action, Case, Charge, Enclosure, Event, FeedClass, Model, Options, Parameters, PoolShares, Run,
    Weather, WeatherHour, simulate,
};

/// A material as farm handbooks describe it (Rynk 1992, NRAES-54 table A.1, from memory):
/// moisture, ash and nitrogen of dry matter.
pub fn material(class: FeedClass, wet_kg: f64, moisture: f64, ash: f64, nitrogen: f64) -> Charge {
    let dry = wet_kg * (1.0 - moisture);
    Charge::of_shares(
        &class.shares(),
        dry,
        dry * ash,
        dry * nitrogen,
        wet_kg - dry,
        &Parameters::default(),
    )
}

pub fn kitchen(wet_kg: f64) -> Charge {
    material(FeedClass::Soft, wet_kg, 0.75, 0.08, 0.026)
}
pub fn grass(wet_kg: f64) -> Charge {
    material(FeedClass::Grass, wet_kg, 0.75, 0.11, 0.030)
}
pub fn leaves(wet_kg: f64) -> Charge {
    material(FeedClass::Leaves, wet_kg, 0.30, 0.10, 0.009)
}
pub fn straw(wet_kg: f64) -> Charge {
    material(FeedClass::Straw, wet_kg, 0.12, 0.08, 0.006)
}
pub fn chips(wet_kg: f64) -> Charge {
    let mut shares = FeedClass::Wood.shares();
    shares.microbes = 0.012;
    of_shares(&shares, wet_kg, 0.40, 0.02, 0.0025)
}

pub fn of_shares(
    shares: &PoolShares,
    wet_kg: f64,
    moisture: f64,
    ash: f64,
    nitrogen: f64,
) -> Charge {
    let dry = wet_kg * (1.0 - moisture);
    Charge::of_shares(
        shares,
        dry,
        dry * ash,
        dry * nitrogen,
        wet_kg - dry,
        &Parameters::default(),
    )
}

pub fn dry_kg(charge: &Charge) -> f64 {
    charge.dry_mass_kg(&Parameters::default())
}

pub fn wet_kg(charge: &Charge) -> f64 {
    charge.wet_mass_kg(&Parameters::default())
}

/// Brings the water of a charge to a moisture.
pub fn wetted(mut charge: Charge, moisture: f64) -> Charge {
    charge.water_kg = dry_kg(&charge) * moisture / (1.0 - moisture);
    charge
}

/// Gives a charge a wet bulk density [kg/m3].
pub fn packed(mut charge: Charge, density_kg_m3: f64) -> Charge {
    charge.volume_m3 = wet_kg(&charge) / density_kg_m3;
    charge
}

/// The effective grain diameter of the whole charge [mm].
pub fn grained(mut charge: Charge, grain_mm: f64) -> Charge {
    charge.dry_over_grain_kg_m = dry_kg(&charge) / (1e-3 * grain_mm);
    charge
}

pub fn together(charges: &[Charge]) -> Charge {
    let mut sum = Charge::default();
    for charge in charges {
        sum.add(charge);
    }
    sum
}

/// Kitchen scraps, grass, leaves and chips for one cubic metre, wetted to 60 %.
pub fn household_mix(cubic_metres: f64) -> Charge {
    let m = cubic_metres;
    let mixed = together(&[
        kitchen(120.0 * m),
        grass(100.0 * m),
        leaves(130.0 * m),
        chips(40.0 * m),
    ]);
    let mut mixed = wetted(mixed, 0.60);
    mixed.volume_m3 = m;
    grained(mixed, 0.6)
}

pub fn cube(side_m: f64) -> Enclosure {
    Enclosure::open_box(side_m, side_m, side_m)
}

/// Mild air, the ground two degrees colder.
pub fn mild(air_c: f64) -> Weather {
    Weather::constant(WeatherHour::mild(air_c), -2.0)
}

/// A heap that is built at once.
pub fn built(enclosure: Enclosure, air_c: f64, charge: Charge, days: f64) -> Case {
    Case {
        enclosure,
        weather: mild(air_c),
        events: vec![Event {
            day: 0.0,
            action: Action::Feed {
                charge,
                temperature_c: None,
            },
        }],
        days,
        model: Model::default(),
    }
}

pub fn with_model(mut case: Case, model: Model) -> Case {
    case.model = model;
    case
}

pub fn turned(mut case: Case, days: &[f64]) -> Case {
    for day in days {
        case.events.push(Event {
            day: *day,
            action: Action::Turn { thoroughness: 1.0 },
        });
    }
    case.events.sort_by(|a, b| a.day.total_cmp(&b.day));
    case
}

pub fn run(case: &Case) -> Run {
    simulate(case, &Parameters::default(), &Options::default()).unwrap()
}

pub fn run_every(case: &Case, every_h: f64) -> Run {
    let options = Options {
        every_h,
        ..Options::default()
    };
    simulate(case, &Parameters::default(), &options).unwrap()
}

/// The row nearest to a day.
pub fn row_at(run: &Run, day: f64) -> &heapwright_engine::heap::Snapshot {
    run.series
        .iter()
        .min_by(|a, b| (a.time_d - day).abs().total_cmp(&(b.time_d - day).abs()))
        .unwrap()
}

/// A self-heating vessel of a doctoral thesis with forced air and measured wall loss
/// (Cotera, University of Toronto; figures of two runs): composition as described there,
/// the rest of the matter slow.
pub struct Vessel {
    pub wet_kg: f64,
    pub moisture: f64,
    pub degradable_kg: f64,
    pub carbon_to_nitrogen: f64,
    pub air_kg_per_d: f64,
    pub loss_w_per_k: f64,
    pub ambient_c: f64,
    pub start_c: f64,
}

pub const VESSEL_A: Vessel = Vessel {
    wet_kg: 2.43,
    moisture: 0.57,
    degradable_kg: 0.269,
    carbon_to_nitrogen: 22.0,
    air_kg_per_d: 1.79,
    loss_w_per_k: 0.156,
    ambient_c: 24.0,
    start_c: 24.1,
};

pub const VESSEL_B: Vessel = Vessel {
    wet_kg: 5.1,
    moisture: 0.54,
    degradable_kg: 0.562,
    carbon_to_nitrogen: 30.0,
    air_kg_per_d: 0.85,
    loss_w_per_k: 0.150,
    ambient_c: 24.0,
    start_c: 25.6,
};

impl Vessel {
    pub fn charge(&self) -> Charge {
        let dry = self.wet_kg * (1.0 - self.moisture);
        let rapid = 0.8 * self.degradable_kg;
        let moderate = 0.2 * self.degradable_kg + 0.05 * dry;
        let cells = 0.02 * dry;
        let ash = 0.05 * dry;
        let rest = dry - rapid - moderate - cells - ash;
        // Nitrogen from the C:N; its ammonia is part of the dry matter.
        let carbon = |slow: f64| 0.47 * rapid + 72.0 / 162.0 * moderate + 0.6 * slow + 0.53 * cells;
        let mut slow = rest;
        let mut nitrogen = 0.0;
        for _ in 0..50 {
            nitrogen = carbon(slow) / self.carbon_to_nitrogen;
            slow = rest - 17.0 / 14.0 * nitrogen;
        }
        let bound = nitrogen - 0.066 * cells;
        let weight = 3.0 * rapid + moderate + slow;
        Charge {
            rapid_kg: rapid,
            moderate_kg: moderate,
            slow_kg: slow,
            mesophiles_kg: 0.7 * cells,
            thermophiles_kg: 0.3 * cells,
            nitrogen_kg: [
                bound * 3.0 * rapid / weight,
                bound * moderate / weight,
                bound * slow / weight,
                0.0,
            ],
            water_kg: self.wet_kg - dry,
            ash_kg: ash,
            bases_mol: 0.4 * dry,
            volume_m3: self.wet_kg / 400.0,
            dry_over_grain_kg_m: dry / 0.6e-3,
            ..Charge::default()
        }
    }

    pub fn case(&self) -> Case {
        let side = (self.wet_kg / 400.0).cbrt();
        let enclosure = Enclosure {
            heat_loss_w_per_k: Some(self.loss_w_per_k),
            forced_air_kg_per_d: Some(self.air_kg_per_d),
            cover: heapwright_engine::heap::Cover::Lid,
            ..cube(side)
        };
        let mut weather = WeatherHour::mild(self.ambient_c);
        weather.relative_humidity = 0.5;
        let mut case = built(enclosure, self.ambient_c, self.charge(), 7.5);
        case.weather = Weather::constant(weather, 0.0);
        case.events[0].action = Action::Feed {
            charge: self.charge(),
            temperature_c: Some(self.start_c),
        };
        case.model = Model::Lumped;
        case
    }
}
