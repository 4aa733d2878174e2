//! How does everything in the heap change at this moment?

use heapwright_numerics::System;

use super::air::{AIR_HEAT_MJ_KG_K, OUTSIDE_OXYGEN, OXYGEN_KG_PER_KG_AIR, WATER_HEAT_MJ_KG_K};
use super::biology::Potential;
use super::cell::{Carried, Cell};
use super::enclosure::Enclosure;
use super::gas::Gas;
use super::geometry::Geometry;
use super::layout::{self, STATES, ledger};
use super::links::{Link, Outlet, Outside, Side, wired};
use super::parameters::{FREEZING_SPAN_K, POTASSIUM_HELD, Parameters, SETTLING_LOAD_PA};
use super::thermal::{self, Thermal};
use super::weather::Weather;

/// The heap between two events: what stays, and the workspace of the slopes.
#[derive(Clone)]
pub(crate) struct Heap<'a> {
    pub parameters: &'a Parameters,
    pub weather: &'a Weather,
    pub enclosure: Enclosure,
    pub geometry: Geometry,
    /// Base of a free heap over that of its full size.
    pub spread: f64,
    pub carried: Vec<Carried>,
    pub cells: Vec<Cell>,
    pub potentials: Vec<Potential>,
    pub links: Vec<Link>,
    pub outlets: Vec<Outlet>,
    pub gas: Gas,
    pub table: Thermal,
    /// Rain while this step lasts [mm/d].
    pub rain_mm_per_d: f64,
    pub outside: Outside,
    /// Error allowed, as a factor on the usual.
    pub tolerance: f64,
}

/// Share of rain that a bone-dry crust takes in; the rest runs off. Estimate after fallen
/// leaves, which shed water for days.
const DRY_CRUST_TAKES: f64 = 0.4;
/// Moisture between which a crust begins and ceases to shed, wet basis. Estimate.
const SHEDDING: (f64, f64) = (0.15, 0.40);
/// A millionth of a milligram: less is rounding [kg].
const LEAST_MASS_KG: f64 = 1e-12;
/// Cells for which a step may err as usual in weather that varies, and how many times as much it
/// may in finer grids: the wiggles make errors of changing sign that add up to less, and the mean
/// temperature stays within 0.1 K (`docs/measurements/heap.md`).
const CELLS_IN_WEATHER: f64 = 24.0;
const MOST_IN_WEATHER: f64 = 4.0;
const GRAVITY: f64 = 9.81;
/// Layers for which the drainage parameter is meant.
const LAYERS_OF_DRAINAGE: f64 = 4.0;

impl<'a> Heap<'a> {
    pub(crate) fn new(
        parameters: &'a Parameters,
        weather: &'a Weather,
        enclosure: Enclosure,
        tolerance: f64,
    ) -> Self {
        Self {
            parameters,
            weather,
            enclosure,
            geometry: Geometry::default(),
            spread: 1.0,
            carried: Vec::new(),
            cells: Vec::new(),
            potentials: Vec::new(),
            links: Vec::new(),
            outlets: Vec::new(),
            gas: Gas::default(),
            table: Thermal::new(parameters),
            rain_mm_per_d: weather.rain_mm_per_d(0.0),
            outside: Outside::default(),
            tolerance,
        }
    }

    /// Takes a grid of this size.
    pub(crate) fn take_grid(&mut self, layers: usize, rings: usize, lumped: bool) {
        let cells = layers * rings;
        self.geometry = Geometry::new(layers, rings, lumped);
        (self.links, self.outlets) = wired(&self.geometry);
        self.gas = Gas::new(cells, rings);
        self.cells = vec![Cell::default(); cells];
        self.potentials = vec![Potential::default(); cells];
    }

    /// Brings cells, sizes and gas up to `y` at day `t`.
    pub(crate) fn look(&mut self, t: f64, y: &[f64]) {
        self.look_into_cells(y);
        self.look_around(t);
    }

    /// What the cells are by themselves, and their rates with air in plenty.
    fn look_into_cells(&mut self, y: &[f64]) {
        let count = self.cells.len();
        for index in 0..count {
            let cell = &mut self.cells[index];
            cell.read(
                y,
                index,
                count,
                &self.carried[index],
                self.parameters,
                &self.table,
            );
            self.potentials[index] = Potential::of(cell, &self.carried[index], self.parameters);
        }
    }

    /// What passes between the cells and to the outside, and so their oxygen.
    fn look_around(&mut self, t: f64) {
        let count = self.cells.len();
        let mut air = self.weather.at(t);
        air.temperature_c += self.parameters.air_offset_k;
        let saturation_pa = self.table.saturation(air.temperature_c);
        self.outside = Outside::of(&air, saturation_pa, self.parameters);

        self.geometry.volume_m3.fill(0.0);
        let rings = self.geometry.rings;
        for (index, cell) in self.cells.iter().enumerate() {
            self.geometry.volume_m3[index / rings] += cell.volume;
        }
        self.geometry.follow_volumes(&self.enclosure, self.spread);
        for link in &mut self.links {
            link.follow(&self.geometry, &self.cells, &self.outside);
        }
        let table = &self.table;
        let saturation = |t: f64| table.saturation(t);
        for outlet in &mut self.outlets {
            outlet.follow(
                &self.geometry,
                &self.enclosure,
                &self.cells,
                &self.outside,
                self.parameters,
                saturation,
            );
        }
        match self.enclosure.forced_air_kg_per_d {
            None => self.gas.find_draught(&mut self.links, &mut self.outlets),
            Some(blown) => self.blow(blown),
        }
        self.gas.find_oxygen(
            &self.links,
            &self.outlets,
            &self.potentials,
            self.parameters,
        );
        for index in 0..count {
            let cell = &mut self.cells[index];
            cell.oxygen = self.gas.oxygen[index];
            let dioxide = (OUTSIDE_OXYGEN - cell.oxygen).max(4e-4);
            cell.hydrogen = cell.acidity(
                dioxide,
                cell.hydrogen,
                &self.carried[index],
                self.parameters,
            );
            let constant = 1e-9 * cell.thermal[thermal::AMMONIUM];
            let ammonia =
                cell.ammonium_in_water(self.parameters) * constant / (constant + cell.hydrogen);
            // 1,000 kg of water per m3.
            cell.ammonia_gas =
                1000.0 * ammonia * cell.thermal[thermal::AMMONIA_GAS] / cell.gas_density;
        }
    }

    /// Air blown in from below and out at the top, evenly over the area.
    fn blow(&mut self, blown_kg_per_d: f64) {
        for link in &mut self.links {
            link.flow = if link.upward {
                blown_kg_per_d * self.geometry.ring_share[link.ring]
            } else {
                0.0
            };
        }
        for outlet in &mut self.outlets {
            let through = blown_kg_per_d * self.geometry.ring_share[outlet.ring];
            outlet.flow = match outlet.side {
                Side::Top => through,
                Side::Bottom => -through,
                Side::Flank => 0.0,
            };
        }
    }

    /// All slopes, after a look.
    fn change(&mut self, slope: &mut [f64]) {
        slope.fill(0.0);
        self.live(slope);
        self.mix(slope);
        self.breathe(slope);
        self.drain(slope);
    }

    /// Life in every cell, and settling.
    fn live(&mut self, slope: &mut [f64]) {
        let count = self.cells.len();
        let books = STATES * count;
        let (layers, rings) = (self.geometry.layers, self.geometry.rings);
        let mut load_above = 0.0;
        for layer in (0..layers).rev() {
            let cells = layer * rings..(layer + 1) * rings;
            let wet: f64 = self.cells[cells.clone()]
                .iter()
                .map(|cell| cell.dry + cell.water)
                .sum();
            let area = self.geometry.volume_m3[layer] / self.geometry.thickness_m[layer];
            let load_pa = load_above + 0.5 * GRAVITY * wet / area;
            load_above += GRAVITY * wet / area;
            let pressed = libm::pow(
                1.0 + load_pa / SETTLING_LOAD_PA,
                self.parameters.settling_by_load,
            );
            for index in cells {
                let cell = &mut self.cells[index];
                let change = self.potentials[index].change(cell, self.parameters);
                cell.oxygen_use = change.oxygen;
                let mut put =
                    |quantity: usize, value: f64| slope[quantity * count + index] += value;
                put(layout::RAPID, change.rapid);
                put(layout::MODERATE, change.moderate);
                put(layout::SLOW, change.slow);
                put(layout::HUMUS, change.humus);
                put(layout::MESOPHILES, change.mesophiles);
                put(layout::THERMOPHILES, change.thermophiles);
                put(layout::ACIDS, change.acids);
                put(layout::NITROGEN_RAPID, change.nitrogen_rapid);
                put(layout::NITROGEN_MODERATE, change.nitrogen_moderate);
                put(layout::NITROGEN_SLOW, change.nitrogen_slow);
                put(layout::NITROGEN_HUMUS, change.nitrogen_humus);
                put(layout::AMMONIUM, change.ammonium);
                put(layout::NITRATE, change.nitrate);
                put(layout::WATER, change.water);
                let matter_heat = cell.temperature_c
                    * (self.parameters.solids_heat_mj_kg_k * change.dry
                        + WATER_HEAT_MJ_KG_K * change.water);
                put(layout::ENTHALPY, change.heat + matter_heat);
                let carried = &self.carried[index];
                let settled = carried.density_fed_kg_m3
                    * (1.0 + self.parameters.settling_by_decay * cell.decayed)
                    * pressed;
                let density = cell.dry / cell.volume;
                put(
                    layout::DENSITY,
                    (settled - density) / self.parameters.settling_time_d,
                );
                let mut book = |entry: usize, value: f64| slope[books + entry] += value;
                book(ledger::DIOXIDE_CARBON, change.dioxide_carbon);
                book(ledger::METHANE_CARBON, change.methane_carbon);
                book(ledger::NITROUS_NITROGEN, change.nitrous_nitrogen);
                book(ledger::DINITROGEN, change.dinitrogen);
                book(ledger::OXYGEN, change.oxygen);
                book(ledger::HEAT, change.heat);
                book(ledger::MATTER_HEAT, matter_heat);
                book(ledger::WATER_FORMED, change.water);
            }
        }
    }

    /// Heat, vapour and ammonia between cells.
    fn mix(&self, slope: &mut [f64]) {
        let count = self.cells.len();
        for link in &self.links {
            let (low, high) = (&self.cells[link.low], &self.cells[link.high]);
            let donor = if link.flow > 0.0 { low } else { high };
            let moist = link.flow * donor.humidity;
            let diffused = link.diffusion * (low.humidity - high.humidity);
            let vapour = moist + diffused;
            let heat = link.heat * (low.temperature_c - high.temperature_c)
                + link.flow * AIR_HEAT_MJ_KG_K * donor.temperature_c
                + moist * donor.vapour_heat
                + diffused * 0.5 * (low.vapour_heat + high.vapour_heat);
            let ammonia = link.flow * donor.ammonia_gas
                + link.diffusion * (low.ammonia_gas - high.ammonia_gas);
            for (quantity, value) in [
                (layout::WATER, vapour),
                (layout::ENTHALPY, heat),
                (layout::AMMONIUM, ammonia),
            ] {
                slope[quantity * count + link.low] -= value;
                slope[quantity * count + link.high] += value;
            }
        }
    }

    /// Heat, vapour, ammonia and oxygen through the faces.
    fn breathe(&self, slope: &mut [f64]) {
        let count = self.cells.len();
        let books = STATES * count;
        let outside = &self.outside;
        for outlet in &self.outlets {
            let cell = &self.cells[outlet.cell];
            let out = outlet.flow > 0.0;
            let (humidity, warmth, vapour_heat, ammonia, oxygen) = if out {
                (
                    cell.humidity,
                    cell.temperature_c,
                    cell.vapour_heat,
                    cell.ammonia_gas,
                    cell.oxygen,
                )
            } else {
                (
                    outside.humidity,
                    outside.temperature_c,
                    outside.vapour_heat,
                    0.0,
                    OUTSIDE_OXYGEN,
                )
            };
            let moist = outlet.flow * humidity;
            let exchanged = outlet.exchange * (cell.humidity - outside.humidity)
                + outlet.skin * (outlet.skin_humidity - outside.humidity);
            let vapour_heat = moist * vapour_heat + exchanged * cell.vapour_heat;
            let air_heat = AIR_HEAT_MJ_KG_K
                * (outlet.flow * warmth
                    + outlet.exchange * (cell.temperature_c - outside.temperature_c));
            // Water that comes to the skin brings its ammonia, which is weaker there where it is cooler.
            let at_skin = (outlet.skin_humidity / cell.humidity.max(1e-9)).min(1.0);
            let ammonia = outlet.flow * ammonia
                + (outlet.exchange + outlet.skin * at_skin) * cell.ammonia_gas;
            let conducted = outlet.heat * (cell.temperature_c - outlet.beyond_c);
            slope[layout::WATER * count + outlet.cell] -= moist + exchanged;
            slope[layout::AMMONIUM * count + outlet.cell] -= ammonia;
            slope[layout::ENTHALPY * count + outlet.cell] -=
                vapour_heat + air_heat + conducted - outlet.sun;
            let mut book = |entry: usize, value: f64| slope[books + entry] += value;
            book(ledger::VAPOUR, moist + exchanged);
            book(ledger::AMMONIA_NITROGEN, ammonia);
            book(ledger::VAPOUR_HEAT, vapour_heat);
            book(ledger::AIR_HEAT, air_heat);
            book(ledger::SUN_HEAT, outlet.sun);
            book(
                match outlet.side {
                    Side::Flank => ledger::CONDUCTED_SIDE,
                    Side::Top => ledger::CONDUCTED_TOP,
                    Side::Bottom => ledger::CONDUCTED_BOTTOM,
                },
                conducted,
            );
            book(
                ledger::OXYGEN_BROUGHT,
                OXYGEN_KG_PER_KG_AIR
                    * (outlet.exchange * (OUTSIDE_OXYGEN - cell.oxygen) - outlet.flow * oxygen),
            );
        }
    }

    /// Rain in, and water down with what it has dissolved.
    fn drain(&self, slope: &mut [f64]) {
        let count = self.cells.len();
        let books = STATES * count;
        let (layers, rings) = (self.geometry.layers, self.geometry.rings);
        #[allow(clippy::cast_precision_loss)] // a few layers
        let rate = self.parameters.drainage_per_d * (layers as f64 / LAYERS_OF_DRAINAGE).max(1.0);
        for (index, cell) in self.cells.iter().enumerate() {
            let held = cell.held_water_kg(self.carried[index].ash_kg, self.parameters);
            // Ice does not run.
            let thawed = (1.0 + cell.temperature_c / FREEZING_SPAN_K).clamp(0.0, 1.0);
            let drained = rate * thawed * (cell.water - held).max(0.0);
            if drained <= 0.0 {
                continue;
            }
            let sorbing = cell.water + self.parameters.ammonium_sorption * cell.dry;
            let ammonium = drained * cell.ammonium / sorbing;
            let nitrate = drained * cell.nitrate / cell.water;
            let potassium = drained * cell.potassium / (cell.water + POTASSIUM_HELD * cell.dry);
            let heat = drained * WATER_HEAT_MJ_KG_K * cell.temperature_c.max(0.0);
            let flows = [
                (layout::WATER, drained),
                (layout::AMMONIUM, ammonium),
                (layout::NITRATE, nitrate),
                (layout::POTASSIUM, potassium),
                (layout::ENTHALPY, heat),
            ];
            for (quantity, value) in flows {
                slope[quantity * count + index] -= value;
                if index >= rings {
                    slope[quantity * count + index - rings] += value;
                }
            }
            if index < rings {
                slope[books + ledger::LEACHED_WATER] += drained;
                slope[books + ledger::LEACHED_AMMONIUM] += ammonium;
                slope[books + ledger::LEACHED_NITRATE] += nitrate;
                slope[books + ledger::LEACHED_POTASSIUM] += potassium;
                slope[books + ledger::LEACHED_HEAT] += heat;
            }
        }
        let falling = self.rain_mm_per_d * self.enclosure.rain_share();
        if falling <= 0.0 {
            return;
        }
        for layer in 0..layers {
            let top = layer + 1 == layers;
            let flank = self.geometry.level_m2[layer] - self.geometry.level_m2[layer + 1];
            for ring in 0..rings {
                let mut area = 0.0;
                if top {
                    area += self.geometry.level_m2[layers] * self.geometry.ring_share[ring];
                }
                if ring + 1 == rings {
                    area += flank;
                }
                if area <= 0.0 {
                    continue;
                }
                let index = layer * rings + ring;
                let cell = &self.cells[index];
                let wet =
                    ((cell.moisture - SHEDDING.0) / (SHEDDING.1 - SHEDDING.0)).clamp(0.0, 1.0);
                let taken = area * falling * (DRY_CRUST_TAKES + (1.0 - DRY_CRUST_TAKES) * wet);
                let heat = taken * WATER_HEAT_MJ_KG_K * self.outside.temperature_c.max(0.0);
                slope[layout::WATER * count + index] += taken;
                slope[layout::ENTHALPY * count + index] += heat;
                slope[books + ledger::RAIN] += taken;
                slope[books + ledger::RAIN_HEAT] += heat;
            }
        }
    }
}

impl System for Heap<'_> {
    fn derivative(&mut self, t: f64, y: &[f64], slope: &mut [f64]) {
        self.look(t, y);
        self.change(slope);
    }

    fn prepare(&mut self, start: f64, end: f64) -> bool {
        let before = self.rain_mm_per_d;
        self.rain_mm_per_d = self.weather.mean_rain_mm_per_d(start, end);
        self.rain_mm_per_d != before
    }

    /// Where rain begins or ends.
    fn natural_end(&self, start: f64, end: f64) -> f64 {
        self.weather.turn_of_rain(start, end)
    }

    fn derivative_again(&mut self, t: f64, _: &[f64], slope: &mut [f64]) {
        self.look_around(t);
        self.change(slope);
    }

    /// Five thousandths of a degree and a ten-thousandth of what there is, in a step: over weeks
    /// that stays near a tenth of a degree (`docs/measurements/heap.md`).
    fn scale(&self, y: &[f64], scale: &mut [f64]) {
        let count = self.cells.len();
        let tolerance = if self.weather.varies() {
            #[allow(clippy::cast_precision_loss)] // a few hundred
            let wider = (count as f64 / CELLS_IN_WEATHER).clamp(1.0, MOST_IN_WEATHER);
            wider * self.tolerance
        } else {
            self.tolerance
        };
        let relative = 1e-4 * tolerance;
        for index in 0..count {
            let dry = self.carried[index].dry_fed_kg;
            for quantity in 0..STATES {
                let place = quantity * count + index;
                let floor = match quantity {
                    layout::ENTHALPY => {
                        scale[place] = 0.005
                            * tolerance
                            * (dry * self.parameters.solids_heat_mj_kg_k
                                + y[layout::WATER * count + index].max(0.0) * WATER_HEAT_MJ_KG_K);
                        continue;
                    }
                    layout::DENSITY => 0.0,
                    layout::WATER => 0.1 * dry,
                    layout::NITROGEN_RAPID..=layout::NITRATE | layout::POTASSIUM => 0.02 * dry,
                    _ => 0.1 * dry,
                };
                scale[place] = relative * (y[place].abs() + floor);
            }
        }
        scale[STATES * count..].fill(f64::INFINITY);
    }

    /// Nothing is less than nothing, beyond rounding.
    fn admissible(&self, before: &[f64], after: &[f64]) -> bool {
        let count = self.cells.len();
        let masses = 0..layout::ENTHALPY * count;
        let densities = &after[layout::DENSITY * count..STATES * count];
        // What rounding has left below nothing may stay there, but not go on.
        let sound = |before: f64, after: f64| {
            after >= -LEAST_MASS_KG || (before < 0.0 && after >= before * (1.0 + 1e-6))
        };
        masses
            .into_iter()
            .all(|index| sound(before[index], after[index]))
            && densities.iter().all(|density| *density > 0.0)
    }
}
