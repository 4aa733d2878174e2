//! What would a keeper with many probes see at this moment?

use super::acidity::ph;
use super::air::OUTSIDE_OXYGEN;
use super::derivative::Heap;
use super::links::Side;
use super::parameters::Parameters;
use super::pools::{ACIDS, HUMUS, MODERATE, RAPID, SLOW};
use super::responses::moisture_factor;

/// One row of the series.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Snapshot {
    /// Days after the start.
    pub time_d: f64,
    /// Hottest place along the core [degrees Celsius].
    pub core_temperature_c: f64,
    /// Mean by mass.
    pub mean_temperature_c: f64,
    /// Mean of the outermost ring.
    pub edge_temperature_c: f64,
    /// Air outside.
    pub air_temperature_c: f64,
    /// Lowest oxygen of all cells [% of the pore gas].
    pub lowest_oxygen_pct: f64,
    /// Water over wet mass [kg/kg].
    pub moisture: f64,
    /// Acidity, mean by mass.
    pub ph: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// Height [m].
    pub height_m: f64,
    /// Everything [kg].
    pub wet_mass_kg: f64,
    /// Dry matter [kg].
    pub dry_mass_kg: f64,
    /// Carbon over nitrogen.
    pub carbon_to_nitrogen: f64,
    /// Oxygen taken [mg per g volatile solids and hour].
    pub oxygen_uptake_mg_per_g_vs_h: f64,
    /// What it would take at 37 degrees, moist and aired: the standard of stability tests.
    pub standard_uptake_mg_per_g_vs_h: f64,
    /// Rapid matter, share of volatile solids.
    pub rapid_share: f64,
    /// Ammonium, share of nitrogen.
    pub ammonium_share: f64,
    /// Nitrate, share of nitrogen.
    pub nitrate_share: f64,
    /// Water missing to a moisture of 55 % [L]; below zero when above 65 %, the excess.
    pub water_wanted_l: f64,
}

impl Snapshot {
    /// The row of a heap that was taken out altogether: the air at its place.
    pub(crate) fn of_nothing(time_d: f64, air_c: f64) -> Self {
        Self {
            time_d,
            core_temperature_c: air_c,
            mean_temperature_c: air_c,
            edge_temperature_c: air_c,
            air_temperature_c: air_c,
            lowest_oxygen_pct: 100.0 * OUTSIDE_OXYGEN,
            ph: 7.0,
            ..Self::default()
        }
    }
}

/// One cell of the cross-section.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CellField {
    /// Layer from below.
    pub layer: usize,
    /// Ring from the core.
    pub ring: usize,
    /// Temperature [degrees Celsius].
    pub temperature_c: f64,
    /// Oxygen [% of the pore gas].
    pub oxygen_pct: f64,
    /// Water over wet mass [kg/kg].
    pub moisture: f64,
    /// Acidity.
    pub ph: f64,
    /// Air-filled share of the volume.
    pub air_space: f64,
    /// Dry matter [kg].
    pub dry_mass_kg: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// Share of the dry matter gone.
    pub decayed: f64,
}

/// Rise of the core over the skin, for one of the mean's rise, in a lumped heap. Estimate
/// from spatial runs; a sphere with even heating would have 2.5.
const LUMPED_CORE: f64 = 1.2;

impl Heap<'_> {
    /// Temperature at the hottest place of the core, after [`Heap::look`].
    pub(crate) fn core_c(&self) -> f64 {
        let rings = self.geometry.rings;
        let hottest = self
            .cells
            .iter()
            .step_by(rings)
            .map(|cell| cell.temperature_c)
            .fold(f64::NEG_INFINITY, f64::max);
        if !self.geometry.lumped || self.enclosure.heat_loss_w_per_k.is_some() {
            return hottest;
        }
        let flank = self
            .outlets
            .iter()
            .find(|outlet| outlet.side == Side::Flank);
        let share = flank.map_or(1.0, |flank| {
            let film =
                self.geometry.side_m2[0] * self.outside.film_w_m2_k * super::cell::MJ_PER_D_PER_W;
            (flank.heat / film).min(1.0)
        });
        let air = self.outside.temperature_c;
        let skin = air + (hottest - air) * share;
        skin + LUMPED_CORE * (hottest - skin)
    }

    /// Mean temperature by mass.
    pub(crate) fn mean_c(&self) -> f64 {
        let (mut sum, mut mass) = (0.0, 0.0);
        for cell in &self.cells {
            let wet = cell.dry + cell.water;
            sum += wet * cell.temperature_c;
            mass += wet;
        }
        sum / mass
    }

    /// Lowest oxygen, mole fraction, and its cell.
    pub(crate) fn lowest_oxygen(&self) -> (f64, usize) {
        self.cells
            .iter()
            .enumerate()
            .map(|(index, cell)| (cell.oxygen, index))
            .fold(
                (1.0, 0),
                |low, next| if next.0 < low.0 { next } else { low },
            )
    }

    /// The row of the series, after [`Heap::look`] at day `t`.
    pub(crate) fn snapshot(&self, t: f64) -> Snapshot {
        let parameters = self.parameters;
        let rings = self.geometry.rings;
        let mut row = Snapshot {
            time_d: t,
            core_temperature_c: self.core_c(),
            mean_temperature_c: self.mean_c(),
            air_temperature_c: self.outside.temperature_c,
            lowest_oxygen_pct: 100.0 * self.lowest_oxygen().0,
            height_m: self.geometry.height_m(),
            ..Snapshot::default()
        };
        let (mut carbon, mut nitrogen, mut volatile, mut water) = (0.0, 0.0, 0.0, 0.0);
        let (mut rapid, mut ammonium, mut nitrate) = (0.0, 0.0, 0.0);
        let (mut acidity, mut edge, mut edge_mass, mut uptake, mut standard) =
            (0.0, 0.0, 0.0, 0.0, 0.0);
        for (index, cell) in self.cells.iter().enumerate() {
            let organic = cell.organic_nitrogen_kg(parameters);
            let wet = cell.dry + cell.water;
            carbon += RAPID.carbon * cell.rapid
                + MODERATE.carbon * cell.moderate
                + SLOW.carbon * cell.slow
                + HUMUS.carbon * cell.humus
                + super::pools::CELLS.carbon * (cell.mesophiles + cell.thermophiles)
                + ACIDS.carbon * cell.acids;
            nitrogen += organic + cell.ammonium + cell.nitrate;
            volatile += cell.dry - self.carried[index].ash_kg;
            rapid += cell.rapid;
            ammonium += cell.ammonium;
            nitrate += cell.nitrate;
            water += cell.water;
            acidity += wet * ph(cell.hydrogen);
            uptake += cell.oxygen_use;
            standard += standard_use_kg_per_d(cell, parameters);
            row.volume_m3 += cell.volume;
            row.dry_mass_kg += cell.dry;
            row.wet_mass_kg += wet
                + super::pools::AMMONIA_PER_NITROGEN * cell.ammonium
                + super::pools::NITRIC_ACID_PER_NITROGEN * cell.nitrate;
            if index % rings == rings - 1 {
                edge += wet * cell.temperature_c;
                edge_mass += wet;
            }
        }
        let plain_wet = row.dry_mass_kg + water;
        row.edge_temperature_c = edge / edge_mass;
        row.moisture = water / plain_wet;
        row.ph = acidity / plain_wet;
        row.carbon_to_nitrogen = carbon / nitrogen.max(1e-12);
        // kg/kg/d to mg/g/h.
        let per_hour = 1000.0 / 24.0 / volatile.max(1e-9);
        row.oxygen_uptake_mg_per_g_vs_h = uptake * per_hour;
        row.standard_uptake_mg_per_g_vs_h = standard * per_hour;
        row.rapid_share = rapid / volatile.max(1e-9);
        // Rounding may leave a trace below nothing.
        row.ammonium_share = ammonium.max(0.0) / nitrogen.max(1e-12);
        row.nitrate_share = nitrate.max(0.0) / nitrogen.max(1e-12);
        let at = |moisture: f64| row.dry_mass_kg * moisture / (1.0 - moisture);
        row.water_wanted_l = (at(0.55) - water).max(0.0) - (water - at(0.65)).max(0.0);
        row
    }

    /// The cross-section, after [`Heap::look`].
    pub(crate) fn fields(&self) -> Vec<CellField> {
        let rings = self.geometry.rings;
        self.cells
            .iter()
            .enumerate()
            .map(|(index, cell)| CellField {
                layer: index / rings,
                ring: index % rings,
                temperature_c: cell.temperature_c,
                oxygen_pct: 100.0 * cell.oxygen,
                moisture: cell.moisture,
                ph: ph(cell.hydrogen),
                air_space: cell.air_space,
                dry_mass_kg: cell.dry,
                volume_m3: cell.volume,
                decayed: cell.decayed,
            })
            .collect()
    }
}

/// Oxygen that a cell's matter takes at 37 degrees, 55 % moisture and nearly fresh air
/// with microbes in plenty: the usual condition of respiration tests.
fn standard_use_kg_per_d(cell: &super::cell::Cell, parameters: &Parameters) -> f64 {
    const STANDARD_C: f64 = 37.0;
    let warm = parameters.mesophile_activity * parameters.mesophiles.activity(STANDARD_C);
    let hot = parameters.thermophiles.activity(STANDARD_C);
    let oxygen = 0.20_f64.min(OUTSIDE_OXYGEN);
    let activity = (1.0 - (1.0 - warm.min(1.0)) * (1.0 - hot)) * moisture_factor(0.55) * oxygen
        / (parameters.half_activity_oxygen + oxygen);
    activity
        * (parameters.rapid_rate_per_d * cell.rapid * RAPID.oxygen_demand()
            + parameters.moderate_rate_per_d * cell.moderate * MODERATE.oxygen_demand()
            + parameters.slow_rate_per_d * cell.slow * SLOW.oxygen_demand()
            + parameters.humus_rate_per_d * cell.humus * HUMUS.oxygen_demand()
            + parameters.acid_rate_per_d * cell.acids.max(0.0) * ACIDS.oxygen_demand())
}
