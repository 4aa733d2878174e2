//! One heap on its way through a season, for any solver: the state vector, its slopes,
//! and turns that any solver must stop at.

use crate::growth::{mixture, season};
use crate::heap_inside::heap::cell::Carried;
use crate::heap_inside::heap::derivative::Heap;
use crate::heap_inside::heap::layout::{self, STATES, ledger::LEDGERS};
use crate::heap_inside::heap::{Parameters, Weather};

/// Days between which a solver goes on without a stop; at each all cells are mixed.
pub const TURNS: [f64; 7] = [0.0, 7.0, 14.0, 28.0, 45.0, 70.0, 120.0];
/// Days at which paths are compared.
pub const LOOKS: [f64; 14] = [
    1.0, 2.0, 3.0, 5.0, 6.9, 8.0, 11.0, 16.0, 22.0, 32.0, 50.0, 75.0, 100.0, 120.0,
];

pub struct Stretch {
    pub heap: Heap<'static>,
    pub cells: usize,
    pub rings: usize,
    /// The start.
    pub y: Vec<f64>,
    /// Usual size of each quantity, so that solvers see numbers near one.
    pub size: Vec<f64>,
}

impl Stretch {
    pub fn new(layers: usize, rings: usize) -> Self {
        // Kept to the end of the program: the heap borrows them.
        let parameters: &'static Parameters = Box::leak(Box::default());
        let case = season(layers, rings, 120.0);
        let weather: &'static Weather = Box::leak(Box::new(case.weather));
        let mut heap = Heap::new(parameters, weather, case.enclosure, 1.0);
        let charge = mixture();
        let (cells, dry) = (layers * rings, charge.dry_mass_kg(parameters));
        let edge = |ring: usize| ring as f64 / rings as f64;
        let share = |cell: usize| {
            let ring = cell % rings;
            (edge(ring + 1).powi(2) - edge(ring).powi(2)) / layers as f64
        };
        let grain = dry / charge.dry_over_grain_kg_m;
        heap.carried = (0..cells)
            .map(|cell| Carried {
                ash_kg: charge.ash_kg * share(cell),
                bases_mol: charge.bases_mol * share(cell),
                dry_fed_kg: dry * share(cell),
                density_fed_kg_m3: dry / charge.volume_m3,
                grain_m2: grain * grain,
            })
            .collect();
        heap.take_grid(layers, rings, cells == 1);
        let warmth = 15.0 * (dry * 1.3e-3 + charge.water_kg * 4.186e-3);
        let mut totals = [0.0; STATES];
        totals[layout::RAPID] = charge.rapid_kg;
        totals[layout::MODERATE] = charge.moderate_kg;
        totals[layout::SLOW] = charge.slow_kg;
        totals[layout::HUMUS] = charge.humus_kg;
        totals[layout::MESOPHILES] = charge.mesophiles_kg;
        totals[layout::THERMOPHILES] = charge.thermophiles_kg;
        totals[layout::ACIDS] = charge.acids_kg;
        totals[layout::NITROGEN_RAPID..=layout::NITROGEN_HUMUS]
            .copy_from_slice(&charge.nitrogen_kg);
        totals[layout::AMMONIUM] = charge.ammonium_kg;
        totals[layout::NITRATE] = charge.nitrate_kg;
        totals[layout::WATER] = charge.water_kg;
        totals[layout::POTASSIUM] = charge.potassium_kg;
        totals[layout::ENTHALPY] = warmth;
        let mut y = vec![0.0; STATES * cells + LEDGERS];
        let mut size = vec![1.0; STATES * cells];
        for cell in 0..cells {
            for quantity in 0..STATES {
                let place = quantity * cells + cell;
                y[place] = totals[quantity] * share(cell);
                size[place] = share(cell)
                    * dry
                    * match quantity {
                        layout::NITROGEN_RAPID..=layout::NITRATE | layout::POTASSIUM => 0.02,
                        layout::ENTHALPY => 0.2,
                        _ => 0.5,
                    };
            }
            let density = layout::DENSITY * cells + cell;
            y[density] = dry / charge.volume_m3;
            size[density] = dry / charge.volume_m3;
        }
        Self {
            heap,
            cells,
            rings,
            y,
            size,
        }
    }

    /// Makes all cells alike, each keeping its share of what was put in.
    pub fn turn(&self, y: &mut [f64]) {
        let fed: f64 = self.heap.carried.iter().map(|cell| cell.dry_fed_kg).sum();
        for quantity in 0..layout::DENSITY {
            let here = &mut y[quantity * self.cells..(quantity + 1) * self.cells];
            let total: f64 = here.iter().sum();
            for (value, cell) in here.iter_mut().zip(&self.heap.carried) {
                *value = total * cell.dry_fed_kg / fed;
            }
        }
    }

    /// Temperatures of all cells [degrees Celsius], and dry matter [kg].
    pub fn seen(&mut self, t: f64, y: &[f64]) -> (Vec<f64>, f64) {
        self.heap.look(t, y);
        let cells = &self.heap.cells;
        (
            cells.iter().map(|cell| cell.temperature_c).collect(),
            cells.iter().map(|cell| cell.dry).sum(),
        )
    }
}

/// What was seen at every look.
pub type Path = Vec<(Vec<f64>, f64)>;

/// Largest difference of temperature [K] and of dry matter (relative).
pub fn apart(one: &Path, other: &Path) -> (f64, f64) {
    assert_eq!(one.len(), other.len());
    one.iter()
        .zip(other)
        .fold((0.0, 0.0), |(kelvin, mass): (f64, f64), (a, b)| {
            let warmth =
                a.0.iter()
                    .zip(&b.0)
                    .fold(0.0_f64, |most, (x, y)| most.max((x - y).abs()));
            (kelvin.max(warmth), mass.max((a.1 / b.1 - 1.0).abs()))
        })
}
