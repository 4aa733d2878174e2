//! What lies in the heap, taken apart: cells as sums that can be put together and shared out.
//!
//! Between events the integrator holds the state as one vector; at an event it is read
//! into [`Pile`], where everything is a sum of mass, heat, volume or share, so that
//! feeding, mixing, splitting and taking out lose nothing.

use super::cell::Carried;
use super::layout::{
    ACIDS, AMMONIUM, ASH, BASES, CALCIUM, CONTENTS, Contents, DENSITY, DRY_FED, DRY_OVER_GRAIN,
    ENTHALPY, HUMUS, MAGNESIUM, MESOPHILES, MODERATE, NITRATE, NITROGEN_HUMUS, NITROGEN_RAPID,
    PHOSPHORUS, POTASSIUM, RAPID, SLOW, STATES, THERMOPHILES, VOLUME, VOLUME_FED, WATER,
    ledger::LEDGERS,
};
use super::parameters::{Parameters, SOLIDS_KG_M3};
use super::phase;
use super::pools::{self, AMMONIA_PER_NITROGEN, NITRIC_ACID_PER_NITROGEN};

/// Thinnest layer that is made, of one of usual thickness: thinner ones follow the air so
/// quickly that hours of them take as long as years of the rest. Estimate.
const LEAST_LAYER: f64 = 0.1;
/// The least dry matter that can be fed or left [kg].
pub(crate) const LEAST_DRY_KG: f64 = 1e-6;

/// Sums over cells, or over what crossed the border.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sums {
    /// Dry matter [kg].
    pub dry_kg: f64,
    /// Water [kg].
    pub water_kg: f64,
    /// Everything [kg].
    pub wet_kg: f64,
    /// Carbon [kg].
    pub carbon_kg: f64,
    /// Nitrogen in all forms [kg].
    pub nitrogen_kg: f64,
    /// Ammonium nitrogen [kg].
    pub ammonium_kg: f64,
    /// Nitrate nitrogen [kg].
    pub nitrate_kg: f64,
    /// Rapid matter [kg].
    pub rapid_kg: f64,
    /// Ash [kg].
    pub ash_kg: f64,
    /// Phosphorus [kg].
    pub phosphorus_kg: f64,
    /// Potassium [kg].
    pub potassium_kg: f64,
    /// Calcium [kg].
    pub calcium_kg: f64,
    /// Magnesium [kg].
    pub magnesium_kg: f64,
    /// Bases other than potassium [mol].
    pub bases_mol: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// Enthalpy over 0 degrees [MJ].
    pub enthalpy_mj: f64,
}

/// Dry matter of a cell's contents [kg].
pub(crate) fn dry_kg(contents: &Contents, parameters: &Parameters) -> f64 {
    let pools: f64 = contents[RAPID..=ACIDS].iter().sum();
    pools + AMMONIA_PER_NITROGEN * organic_nitrogen_kg(contents, parameters) + contents[ASH]
}

fn organic_nitrogen_kg(contents: &Contents, parameters: &Parameters) -> f64 {
    contents[NITROGEN_RAPID..=NITROGEN_HUMUS]
        .iter()
        .sum::<f64>()
        + parameters.nitrogen_in_cells * (contents[MESOPHILES] + contents[THERMOPHILES])
}

impl Sums {
    /// Adds the contents of a cell.
    pub(crate) fn add(&mut self, contents: &Contents, parameters: &Parameters) {
        let dry = dry_kg(contents, parameters);
        self.dry_kg += dry;
        self.water_kg += contents[WATER];
        self.wet_kg += dry
            + contents[WATER]
            + AMMONIA_PER_NITROGEN * contents[AMMONIUM]
            + NITRIC_ACID_PER_NITROGEN * contents[NITRATE];
        self.carbon_kg += pools::RAPID.carbon * contents[RAPID]
            + pools::MODERATE.carbon * contents[MODERATE]
            + pools::SLOW.carbon * contents[SLOW]
            + pools::HUMUS.carbon * contents[HUMUS]
            + pools::CELLS.carbon * (contents[MESOPHILES] + contents[THERMOPHILES])
            + pools::ACIDS.carbon * contents[ACIDS];
        self.nitrogen_kg +=
            organic_nitrogen_kg(contents, parameters) + contents[AMMONIUM] + contents[NITRATE];
        self.ammonium_kg += contents[AMMONIUM];
        self.nitrate_kg += contents[NITRATE];
        self.rapid_kg += contents[RAPID];
        self.ash_kg += contents[ASH];
        self.phosphorus_kg += contents[PHOSPHORUS];
        self.potassium_kg += contents[POTASSIUM];
        self.calcium_kg += contents[CALCIUM];
        self.magnesium_kg += contents[MAGNESIUM];
        self.bases_mol += contents[BASES];
        self.volume_m3 += contents[VOLUME];
        self.enthalpy_mj += contents[ENTHALPY];
    }

    /// Volatile solids [kg].
    #[must_use]
    pub fn volatile_kg(&self) -> f64 {
        self.dry_kg - self.ash_kg
    }

    /// Moisture, wet basis.
    #[must_use]
    pub fn moisture(&self) -> f64 {
        self.water_kg / (self.water_kg + self.dry_kg)
    }

    /// Carbon to nitrogen, masses.
    #[must_use]
    pub fn carbon_to_nitrogen(&self) -> f64 {
        self.carbon_kg / self.nitrogen_kg
    }
}

/// All cells, bottom to top, core to wall.
#[derive(Clone, Debug, Default)]
pub(crate) struct Pile {
    pub layers: usize,
    pub rings: usize,
    pub cells: Vec<Contents>,
    /// Days of the present hot spell of each cell.
    pub spell_d: Vec<f64>,
    pub books: [f64; LEDGERS],
}

impl Pile {
    pub(crate) fn sums(&self, parameters: &Parameters) -> Sums {
        let mut sums = Sums::default();
        for contents in &self.cells {
            sums.add(contents, parameters);
        }
        sums
    }

    /// The state vector of the integrator.
    pub(crate) fn to_state(&self, parameters: &Parameters) -> Vec<f64> {
        let count = self.cells.len();
        let mut y = vec![0.0; STATES * count + LEDGERS];
        for (index, contents) in self.cells.iter().enumerate() {
            for quantity in 0..STATES {
                y[quantity * count + index] = contents[quantity];
            }
            y[DENSITY * count + index] = dry_kg(contents, parameters) / contents[VOLUME];
        }
        y[STATES * count..].copy_from_slice(&self.books);
        y
    }

    /// Takes back what the integrator changed.
    pub(crate) fn take_state(&mut self, y: &[f64], parameters: &Parameters) {
        let count = self.cells.len();
        for (index, contents) in self.cells.iter_mut().enumerate() {
            for quantity in 0..STATES {
                // Below nothing by rounding at most; kept as it is, so that sums stay.
                contents[quantity] = y[quantity * count + index];
            }
            let density = y[DENSITY * count + index];
            let dry = dry_kg(contents, parameters);
            contents[VOLUME] =
                (dry / density).max((dry / SOLIDS_KG_M3 + contents[WATER] * 1e-3) / 0.98);
        }
        self.books.copy_from_slice(&y[STATES * count..]);
    }

    /// What the slopes need to know of each cell beside the state.
    pub(crate) fn carried(&self, parameters: &Parameters) -> Vec<Carried> {
        self.cells
            .iter()
            .map(|contents| {
                let grain = parameters.grain_factor * contents[DRY_FED] / contents[DRY_OVER_GRAIN];
                Carried {
                    ash_kg: contents[ASH],
                    bases_mol: contents[BASES],
                    dry_fed_kg: contents[DRY_FED],
                    density_fed_kg_m3: contents[DRY_FED] / contents[VOLUME_FED],
                    grain_m2: grain * grain,
                }
            })
            .collect()
    }

    pub(crate) fn volume_m3(&self) -> f64 {
        self.cells.iter().map(|contents| contents[VOLUME]).sum()
    }

    fn layer_volume_m3(&self, layer: usize) -> f64 {
        self.cells[layer * self.rings..(layer + 1) * self.rings]
            .iter()
            .map(|contents| contents[VOLUME])
            .sum()
    }

    /// Puts new matter on top.
    ///
    /// - `shares`: of a layer in each ring
    /// - `nominal_m3`: volume of a layer of usual thickness
    /// - `most_layers`: layers above which thin neighbours are put together
    pub(crate) fn feed(
        &mut self,
        new: &Contents,
        shares: &[f64],
        nominal_m3: f64,
        most_layers: usize,
    ) {
        let empty = self.cells.is_empty();
        self.rings = shares.len();
        let whole = |count: f64| -> usize {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // small
            let count = count.clamp(1.0, 1e3) as usize;
            count.min(most_layers)
        };
        let on_top = !empty && {
            let top = self.layer_volume_m3(self.layers - 1);
            most_layers == 1 || top + new[VOLUME] <= nominal_m3
        };
        if on_top {
            let first = (self.layers - 1) * self.rings;
            for (cell, share) in self.cells[first..].iter_mut().zip(shares) {
                pour(cell, new, *share);
            }
            return;
        }
        // A first filling is cut finer, so that small heaps have an inside too.
        let layers = if empty {
            whole((new[VOLUME] / (0.4 * nominal_m3)).ceil())
        } else {
            whole((new[VOLUME] / nominal_m3).round())
        };
        #[allow(clippy::cast_precision_loss)] // a few layers
        let part = 1.0 / layers as f64;
        // A handful on a full layer makes a layer together with some of what it falls on.
        let top = self.cells.len().saturating_sub(self.rings);
        let short = LEAST_LAYER * nominal_m3 - new[VOLUME];
        let with = if empty || short <= 0.0 {
            0.0
        } else {
            (short / self.layer_volume_m3(self.layers - 1)).min(0.5)
        };
        for _ in 0..layers {
            for (ring, share) in shares.iter().enumerate() {
                let mut cell = [0.0; CONTENTS];
                pour(&mut cell, new, part * share);
                if with > 0.0 {
                    let moved = self.cells[top + ring].map(|value| with * value);
                    pour(&mut cell, &moved, 1.0);
                    pour(&mut self.cells[top + ring], &moved, -1.0);
                }
                self.cells.push(cell);
                self.spell_d.push(0.0);
            }
        }
        self.layers += layers;
        self.merge_thin(nominal_m3);
        while self.layers > most_layers {
            self.merge_thinnest();
        }
    }

    /// Puts the two neighbours that are thinnest together into one layer.
    fn merge_thinnest(&mut self) {
        let volume = |layer: usize| self.layer_volume_m3(layer) + self.layer_volume_m3(layer + 1);
        let low = (0..self.layers - 1)
            .min_by(|a, b| volume(*a).total_cmp(&volume(*b)))
            .unwrap_or(0);
        self.merge(low);
    }

    /// Puts every layer that has become too thin together with its thinner neighbour.
    fn merge_thin(&mut self, nominal_m3: f64) {
        while self.layers > 1 {
            let volume = |layer: usize| self.layer_volume_m3(layer);
            let Some(thin) = (0..self.layers)
                .min_by(|a, b| volume(*a).total_cmp(&volume(*b)))
                .filter(|thin| volume(*thin) < LEAST_LAYER * nominal_m3)
            else {
                return;
            };
            let with_lower =
                thin + 1 == self.layers || (thin > 0 && volume(thin - 1) < volume(thin + 1));
            self.merge(thin - usize::from(with_lower));
        }
    }

    /// Puts a layer and the one above it together.
    fn merge(&mut self, low: usize) {
        let first = low * self.rings;
        for ring in 0..self.rings {
            let upper = self.cells[first + self.rings + ring];
            pour(&mut self.cells[first + ring], &upper, 1.0);
            let spell = self.spell_d[first + self.rings + ring];
            self.spell_d[first + ring] = self.spell_d[first + ring].min(spell);
        }
        self.cells.drain(first + self.rings..first + 2 * self.rings);
        self.spell_d
            .drain(first + self.rings..first + 2 * self.rings);
        self.layers -= 1;
    }

    /// Mixes all cells: each keeps its share of the dry matter.
    ///
    /// - `thoroughness`: 0 leaves everything in its place, 1 makes all alike
    pub(crate) fn mix(&mut self, thoroughness: f64, parameters: &Parameters) {
        let shares: Vec<f64> = self
            .cells
            .iter()
            .map(|contents| dry_kg(contents, parameters))
            .collect();
        let dry: f64 = shares.iter().sum();
        for quantity in 0..CONTENTS {
            let total: f64 = self.cells.iter().map(|contents| contents[quantity]).sum();
            for (contents, share) in self.cells.iter_mut().zip(&shares) {
                contents[quantity] += thoroughness * (total * share / dry - contents[quantity]);
            }
        }
        self.spell_d.fill(0.0);
    }

    /// Loosens all cells by a share of their density, though never beyond how they came.
    pub(crate) fn loosen(&mut self, share: f64, parameters: &Parameters) {
        for contents in &mut self.cells {
            let dry = dry_kg(contents, parameters);
            let as_fed = dry / (0.8 * contents[DRY_FED] / contents[VOLUME_FED]);
            let loose = contents[VOLUME] / (1.0 - share);
            contents[VOLUME] = loose.min(as_fed).max(contents[VOLUME]);
        }
    }

    /// Loses heat to air of a temperature; half of it as vapour. Gives heat [MJ] and water [kg].
    pub(crate) fn cool(&mut self, share: f64, air_c: f64, parameters: &Parameters) -> (f64, f64) {
        use super::air;
        let (mut heat, mut water) = (0.0, 0.0);
        for contents in &mut self.cells {
            let dry = dry_kg(contents, parameters);
            let t = phase::temperature_c(contents[ENTHALPY], dry, contents[WATER], parameters);
            let capacity =
                dry * parameters.solids_heat_mj_kg_k + contents[WATER] * air::WATER_HEAT_MJ_KG_K;
            let lost = share * capacity * (t - air_c).max(0.0);
            let vapour = (0.5 * lost / air::latent_heat_mj_kg(t)).min(0.1 * contents[WATER]);
            let carried = vapour * air::WATER_HEAT_MJ_KG_K * t;
            contents[ENTHALPY] -= lost + carried;
            contents[WATER] -= vapour;
            heat += lost + carried;
            water += vapour;
        }
        (heat, water)
    }

    /// Pours water on the top layer, or evenly when `everywhere`.
    pub(crate) fn water(
        &mut self,
        water_kg: f64,
        heat_mj: f64,
        everywhere: bool,
        parameters: &Parameters,
    ) {
        let first = if everywhere {
            0
        } else {
            (self.layers - 1) * self.rings
        };
        let weight: f64 = self.cells[first..]
            .iter()
            .map(|contents| dry_kg(contents, parameters))
            .sum();
        for contents in &mut self.cells[first..] {
            let share = dry_kg(contents, parameters) / weight;
            contents[WATER] += share * water_kg;
            contents[ENTHALPY] += share * heat_mj;
        }
    }

    /// Takes out a share of the volume, from everywhere or from the bottom upward; gives
    /// what was taken. A remnant that is less than could ever be fed is taken too.
    ///
    /// - `nominal_m3`: volume of a layer of usual thickness
    pub(crate) fn take_out(
        &mut self,
        share: f64,
        from_below: bool,
        nominal_m3: f64,
        parameters: &Parameters,
    ) -> Sums {
        let mut taken = Sums::default();
        let mut wanted = share * self.volume_m3();
        for layer in 0..self.layers {
            let volume = self.layer_volume_m3(layer);
            let part = if from_below {
                (wanted / volume).clamp(0.0, 1.0)
            } else {
                share
            };
            wanted -= part * volume;
            for contents in &mut self.cells[layer * self.rings..(layer + 1) * self.rings] {
                let gone = contents.map(|value| part * value);
                taken.add(&gone, parameters);
                for (value, gone) in contents.iter_mut().zip(gone) {
                    *value -= gone;
                }
            }
        }
        let left: f64 = self
            .cells
            .iter()
            .map(|contents| dry_kg(contents, parameters))
            .sum();
        if left < LEAST_DRY_KG {
            for contents in self.cells.drain(..) {
                taken.add(&contents, parameters);
            }
            self.spell_d.clear();
            self.layers = 0;
        }
        self.merge_thin(nominal_m3);
        taken
    }
}

fn pour(into: &mut Contents, from: &Contents, share: f64) {
    for (into, from) in into.iter_mut().zip(from) {
        *into += share * from;
    }
}
