//! Do an independently written right-hand side and a general stiff solver agree with ours?
//!
//! The answers in `oracles/heap` were recorded by Python (see its `README.md`), which is not
//! needed here. Parameters come with the answers, so that a moved default does no harm.
//! `--nocapture` shows how far each path is (`docs/measurements/heap.md`).
#![allow(clippy::unwrap_used, clippy::print_stdout)]

mod heap_inside;

use std::path::{Path, PathBuf};

use heap_inside::heap::layout::{self, STATES, ledger};
use heap_inside::heap::{Options, Parameters, Run, Snapshot, simulate};
use heap_inside::{case, list, number, numbers, parameters, slopes};
use serde_json::Value;

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../oracles/heap")
}

fn read(path: &Path) -> Value {
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Largest of some sizes.
fn most(values: impl IntoIterator<Item = f64>) -> f64 {
    values
        .into_iter()
        .fold(0.0, |most, value| most.max(value.abs()))
}

/// Largest difference.
fn apart(found: &[f64], wanted: &[f64]) -> f64 {
    assert_eq!(found.len(), wanted.len());
    most(found.iter().zip(wanted).map(|(a, b)| a - b))
}

/// What is allowed between two slopes, of the largest of that quantity.
const SAME: f64 = 1e-9;

#[test]
fn slopes_are_those_of_the_independent_equations() {
    let recorded = read(&folder().join("slopes.json"));
    let parameters = parameters(&recorded["parameters"]);
    let states = list(&recorded["states"]);
    assert!(states.len() >= 12);
    let mut faults = Vec::new();
    for state in states {
        let found = slopes(&parameters, state);
        let cells = found.oxygen.len();
        let (wanted, books) = (numbers(&state["slope"]), numbers(&state["books"]));
        // A cell's heat is what is left of larger flows: those set the measure.
        let heat = most([
            books[ledger::HEAT],
            books[ledger::VAPOUR_HEAT],
            books[ledger::CONDUCTED_SIDE],
        ]);
        let mut check = |what: &str, off: f64, size: f64| {
            if off > SAME * size || off.is_nan() {
                faults.push(format!("{}: {what} by {:.1e}", state["name"], off / size));
            }
        };
        for quantity in 0..STATES {
            let here = quantity * cells..(quantity + 1) * cells;
            let (found, wanted) = (&found.quantities[here.clone()], &wanted[here]);
            let size = most(wanted.iter().copied());
            let size = if quantity == layout::ENTHALPY {
                size.max(heat)
            } else {
                size
            };
            check(&format!("quantity {quantity}"), apart(found, wanted), size);
        }
        for (book, (found, wanted)) in found.books.iter().zip(&books).enumerate() {
            check(
                &format!("book {book}"),
                found - wanted,
                wanted.abs().max(1e-9),
            );
            check(
                &format!("book {book}"),
                wanted - found,
                wanted.abs().max(1e-9),
            );
        }
        check(
            "oxygen",
            apart(&found.oxygen, &numbers(&state["oxygen"])),
            0.2095,
        );
        let hydrogen = numbers(&state["hydrogen"]);
        let ratios: Vec<f64> = found
            .hydrogen
            .iter()
            .zip(&hydrogen)
            .map(|(a, b)| a / b)
            .collect();
        check("hydrogen ions", apart(&ratios, &vec![1.0; cells]), 1.0);
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// How far a run is from a recorded path.
#[derive(Clone, Copy, Debug, Default)]
struct Away {
    /// Mean, edge, core and every cell [K].
    temperature_k: f64,
    /// Dry matter, water, carbon and volume, of what was put in.
    mass: f64,
    /// Nitrogen: all, ammonium, nitrate, of all that was put in.
    nitrogen: f64,
    /// Lowest oxygen [% of the pore gas].
    oxygen_pct: f64,
    /// pH.
    ph: f64,
    /// What passed the border: carbon, nitrogen, water, heat, each of the sum that was there or made.
    books: f64,
}

impl Away {
    fn of(run: &Run, told: &Value) -> Self {
        let mut away = Self::default();
        let expected = &told["expected"];
        for wanted in list(&expected["rows"]) {
            let day = number(&wanted["day"]);
            let place = run
                .series
                .iter()
                .position(|row| (row.time_d - day).abs() < 1e-6)
                .unwrap_or_else(|| panic!("no row at {day}"));
            away.row(&run.series[place], wanted, run);
            let cells: Vec<f64> = run.fields[place]
                .iter()
                .map(|cell| cell.temperature_c)
                .collect();
            let off = apart(&cells, &numbers(&wanted["cells_c"]));
            away.temperature_k = away.temperature_k.max(off);
        }
        let book = |name: &str| number(&expected["books"][name]);
        let (summary, fed) = (&run.summary, &run.fed);
        let conducted = book("conducted_side") + book("conducted_top") + book("conducted_bottom");
        // A cold heap makes little heat and loses what it had.
        let lost = conducted.abs() + book("vapour_heat").abs() + book("air_heat").abs();
        let heat = book("heat").max(lost);
        away.books = most([
            (summary.carbon_loss_pct / 100.0 * fed.carbon_kg
                - book("dioxide_carbon")
                - book("methane_carbon"))
                / fed.carbon_kg,
            summary.ammonia_loss_pct / 100.0 - book("ammonia_nitrogen") / fed.nitrogen_kg,
            (summary.evaporated_l - book("vapour")) / fed.water_kg,
            (summary.leachate_l - book("leached_water")) / fed.water_kg,
            (summary.heat_made_mj - book("heat")) / heat,
            (summary.heat_lost_mj[0] - conducted) / heat,
            (summary.heat_lost_mj[1] - book("vapour_heat")) / heat,
            (summary.heat_lost_mj[2] - book("air_heat")) / heat,
        ]);
        away
    }

    fn row(&mut self, found: &Snapshot, wanted: &Value, run: &Run) {
        let of = |name: &str| number(&wanted[name]);
        let (dry, nitrogen) = (found.dry_mass_kg, of("nitrogen_kg"));
        let water = dry * found.moisture / (1.0 - found.moisture);
        let mut temperatures = vec![
            found.mean_temperature_c - of("mean_c"),
            found.edge_temperature_c - of("edge_c"),
        ];
        // A lumped heap has no core of its own.
        if let Some(core) = wanted["core_c"].as_f64() {
            temperatures.push(found.core_temperature_c - core);
        }
        self.temperature_k = self.temperature_k.max(most(temperatures));
        let carbon = found.carbon_to_nitrogen - of("carbon_kg") / nitrogen;
        self.mass = self.mass.max(most([
            (dry - of("dry_kg")) / run.fed.dry_kg,
            (water - of("water_kg")) / run.fed.water_kg,
            carbon / run.fed.carbon_to_nitrogen(),
            (found.volume_m3 - of("volume_m3")) / run.fed.volume_m3,
        ]));
        let share = nitrogen / run.fed.nitrogen_kg;
        self.nitrogen = self.nitrogen.max(most([
            share * (found.ammonium_share - of("ammonium_kg") / nitrogen),
            share * (found.nitrate_share - of("nitrate_kg") / nitrogen),
        ]));
        self.oxygen_pct = self
            .oxygen_pct
            .max(most([found.lowest_oxygen_pct - of("lowest_oxygen_pct")]));
        self.ph = self.ph.max(most([found.ph - of("ph")]));
    }
}

#[test]
fn paths_are_those_of_a_stiff_solver_and_come_closer_with_the_tolerance() {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder().join("paths"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    assert!(files.len() >= 8);
    let mut faults = Vec::new();
    for file in files {
        let recorded = read(&file);
        let parameters: Parameters = parameters(&recorded["parameters"]);
        let told = &recorded["path"];
        let case = case(told);
        let away = |tolerance: f64| {
            // Every recorded day is a whole number of twentieths.
            let options = Options {
                every_h: 1.2,
                fields: true,
                tolerance,
            };
            let run = simulate(&case, &parameters, &options).unwrap();
            let away = Away::of(&run, told);
            println!("{} at {tolerance}: {away:?} {:?}", told["name"], run.cost);
            away
        };
        let (loose, usual, finest) = (away(10.0), away(1.0), away(0.1));
        let mut check = |holds: bool, what: &str| {
            if !holds {
                faults.push(format!("{}: {what}", told["name"]));
            }
        };
        // A step may err by a two-hundredth of a degree and a ten-thousandth; over the steep
        // first days some twenty such errors add up (`docs/measurements/heap.md`).
        check(
            usual.temperature_k < 0.15 && usual.oxygen_pct < 0.1,
            "temperature or oxygen",
        );
        check(
            usual.mass < 1e-3 && usual.nitrogen < 1e-3 && usual.books < 1e-3,
            "masses or books",
        );
        check(
            loose.temperature_k < 0.6 && loose.mass < 2e-3,
            "far off at ten times",
        );
        check(
            finest.temperature_k < 0.04 && finest.mass < 1e-4,
            "far off at a tenth",
        );
        // Of second order: a hundredth of the error allowed in a step is a twentieth of the
        // error; somewhat more where matter freezes and thaws, which is not smooth.
        check(
            usual.temperature_k < loose.temperature_k,
            "no nearer than at ten times",
        );
        check(
            finest.temperature_k < 0.15 * loose.temperature_k,
            "no nearer at a tenth",
        );
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
