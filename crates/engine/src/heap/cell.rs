//! What is a cell like at this moment? Everything that its state alone tells.

use super::acidity::Dissolved;
use super::air;
use super::layout::{
    ACIDS, AMMONIUM, ENTHALPY, HUMUS, MESOPHILES, MODERATE, NITRATE, NITROGEN_HUMUS,
    NITROGEN_MODERATE, NITROGEN_RAPID, NITROGEN_SLOW, POTASSIUM, RAPID, SLOW, THERMOPHILES, WATER,
};
use super::parameters::{ASH_HOLDS, HUMUS_HOLDS, Parameters, SOLIDS_KG_M3};
use super::phase;
use super::pools::{ACID_KG_PER_MOL, AMMONIA_PER_NITROGEN};
use super::thermal::{self, COLUMNS, Thermal};

/// What stays with a cell between events.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Carried {
    pub ash_kg: f64,
    /// Bases other than potassium [mol].
    pub bases_mol: f64,
    /// Dry matter ever put in [kg].
    pub dry_fed_kg: f64,
    /// Dry bulk density when put in [kg/m3].
    pub density_fed_kg_m3: f64,
    /// Square of the effective grain diameter [m2].
    pub grain_m2: f64,
}

/// One cell now.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Cell {
    pub rapid: f64,
    pub moderate: f64,
    pub slow: f64,
    pub humus: f64,
    pub mesophiles: f64,
    pub thermophiles: f64,
    pub acids: f64,
    pub nitrogen_rapid: f64,
    pub nitrogen_moderate: f64,
    pub nitrogen_slow: f64,
    pub nitrogen_humus: f64,
    pub ammonium: f64,
    pub nitrate: f64,
    pub water: f64,
    pub potassium: f64,
    /// Dry matter [kg].
    pub dry: f64,
    pub moisture: f64,
    pub temperature_c: f64,
    /// Volume [m3].
    pub volume: f64,
    /// Air-filled share of the volume.
    pub air_space: f64,
    /// Share of dry matter gone.
    pub decayed: f64,
    /// Thermal conductivity [MJ/(d m K)].
    pub conductivity: f64,
    /// Gas diffusion [kg air/(d m)].
    pub diffusion: f64,
    /// Draught [kg air/(d m Pa)].
    pub permeability: f64,
    /// Density of the pore gas [kg/m3].
    pub gas_density: f64,
    /// Humidity ratio of the pore gas [kg/kg].
    pub humidity: f64,
    /// Activity of the pore water, 0 to 1.
    pub water_activity: f64,
    /// Enthalpy of vapour [MJ/kg].
    pub vapour_heat: f64,
    pub moisture_factor: f64,
    /// Columns of the thermal table.
    pub thermal: [f64; COLUMNS],
    /// Acid tolerance, see [`Thermal::at`].
    pub half_acid: f64,
    /// Oxygen in the pore gas, mole fraction.
    pub oxygen: f64,
    /// Hydrogen ions [mol/L].
    pub hydrogen: f64,
    /// The same under the usual carbon dioxide.
    pub usual_hydrogen: f64,
    /// Fifth root of acidity, a guess for the next time.
    pub acid_root: f64,
    /// Share of carbon lost as methane in plenty of air.
    pub methane: f64,
    /// Ammonia nitrogen in the pore gas [kg/kg air].
    pub ammonia_gas: f64,
    /// Oxygen taken [kg/d].
    pub oxygen_use: f64,
}

/// Moisture below which pore water is held so tightly that its vapour thins. Estimate.
const TIGHT_MOISTURE: f64 = 0.25;
/// W to MJ/d.
pub(crate) const MJ_PER_D_PER_W: f64 = 0.0864;
const SECONDS_PER_D: f64 = 86_400.0;

impl Cell {
    /// Reads one cell out of the state vector.
    #[inline]
    pub(crate) fn read(
        &mut self,
        y: &[f64],
        cell: usize,
        cells: usize,
        carried: &Carried,
        parameters: &Parameters,
        table: &Thermal,
    ) {
        let get = |quantity: usize| y[quantity * cells + cell];
        self.rapid = get(RAPID);
        self.moderate = get(MODERATE);
        self.slow = get(SLOW);
        self.humus = get(HUMUS);
        self.mesophiles = get(MESOPHILES);
        self.thermophiles = get(THERMOPHILES);
        self.acids = get(ACIDS);
        self.nitrogen_rapid = get(NITROGEN_RAPID);
        self.nitrogen_moderate = get(NITROGEN_MODERATE);
        self.nitrogen_slow = get(NITROGEN_SLOW);
        self.nitrogen_humus = get(NITROGEN_HUMUS);
        self.ammonium = get(AMMONIUM);
        self.nitrate = get(NITRATE);
        self.water = get(WATER);
        self.potassium = get(POTASSIUM);
        let dry = (self.free_of_nitrogen_kg()
            + AMMONIA_PER_NITROGEN * self.organic_nitrogen_kg(parameters)
            + carried.ash_kg)
            .max(1e-9);
        let water = self.water.max(1e-9 * dry);
        self.dry = dry;
        self.moisture = water / (water + dry);
        let density = y[super::layout::DENSITY * cells + cell].max(1.0);
        let filled = dry * (1.0 / SOLIDS_KG_M3) + water * 1e-3;
        self.volume = (dry / density).max(filled * (1.0 / 0.98));
        let over_volume = 1.0 / self.volume;
        self.air_space = 1.0 - filled * over_volume;
        self.decayed = (1.0 - dry / carried.dry_fed_kg.max(1e-9)).clamp(0.0, 1.0);

        let t = phase::temperature_c(get(ENTHALPY), dry, water, parameters);
        self.temperature_c = t;
        self.half_acid = table.at(t, &mut self.thermal);
        [self.moisture_factor, self.methane] = table.by_moisture(self.moisture);
        // Fit to Ahn and others 2009 (see `Parameters::conductivity_factor`); estimate.
        self.conductivity = MJ_PER_D_PER_W
            * parameters.conductivity_factor
            * (0.045 + (0.0003 * dry + 0.85e-3 * water) * over_volume);
        self.water_activity = (self.moisture / TIGHT_MOISTURE).min(1.0);
        let vapour = self.water_activity * self.thermal[thermal::SATURATION];
        self.humidity = air::humidity_ratio(vapour);
        self.vapour_heat = air::VAPOUR_HEAT_AT_ZERO_MJ_KG + air::VAPOUR_HEAT_MJ_KG_K * t;
        self.gas_density = air::density_kg_m3(t, vapour);
        let space = self.air_space;
        // Air space squared: Richard 1996, "Inadequate porosity".
        self.diffusion = SECONDS_PER_D
            * parameters.diffusion_m2_s
            * self.gas_density
            * self.thermal[thermal::DIFFUSION]
            * space
            * space;
        // Kozeny and Carman; for composts Das and Keener 1997.
        let solid = 1.0 - space;
        self.permeability = SECONDS_PER_D * carried.grain_m2 * space * space * space
            / (180.0 * solid * solid)
            * self.gas_density
            / air::viscosity_pa_s(t);
    }

    /// Volatile solids without their nitrogen [kg].
    pub(crate) fn free_of_nitrogen_kg(&self) -> f64 {
        self.rapid
            + self.moderate
            + self.slow
            + self.humus
            + self.mesophiles
            + self.thermophiles
            + self.acids
    }

    /// Nitrogen in pools and cells [kg].
    pub(crate) fn organic_nitrogen_kg(&self, parameters: &Parameters) -> f64 {
        self.nitrogen_rapid
            + self.nitrogen_moderate
            + self.nitrogen_slow
            + self.nitrogen_humus
            + parameters.nitrogen_in_cells * (self.mesophiles + self.thermophiles)
    }

    /// Ammonium per water that holds it, in solution and on surfaces [kg N/kg].
    #[inline]
    pub(crate) fn ammonium_in_water(&self, parameters: &Parameters) -> f64 {
        self.ammonium.max(0.0) / (self.water + parameters.ammonium_sorption * self.dry)
    }

    /// Hydrogen ions [mol/L] under a carbon dioxide pressure [atm], from a guess.
    #[inline]
    pub(crate) fn acidity(
        &self,
        carbon_dioxide: f64,
        guess: f64,
        carried: &Carried,
        parameters: &Parameters,
    ) -> f64 {
        let over_water = 1.0 / self.water.max(0.05 * self.dry);
        let released =
            (parameters.bases_at_start + parameters.bases_by_decay * self.decayed).clamp(0.0, 1.0);
        let dissolved = Dissolved {
            bases: (carried.bases_mol + self.potassium * (1.0 / 0.0391)) * released * over_water,
            ammonium: self.ammonium_in_water(parameters) * (1.0 / 0.014),
            ammonium_constant: 1e-9 * self.thermal[thermal::AMMONIUM],
            acids: self.acids.max(0.0) * (1.0 / ACID_KG_PER_MOL) * over_water,
            bicarbonate: 1e-8 * self.thermal[thermal::BICARBONATE] * carbon_dioxide,
            humic: parameters.humic_acid_mol_kg * self.dry * over_water,
            nitrate: self.nitrate.max(0.0) * (1.0 / 0.014) * over_water,
        };
        dissolved.hydrogen(guess)
    }

    /// Water held against gravity [kg].
    #[inline]
    pub(crate) fn held_water_kg(&self, ash_kg: f64, parameters: &Parameters) -> f64 {
        let humus = self.humus.max(0.0);
        let fresh = (self.dry - ash_kg - humus).max(0.0);
        parameters.field_capacity * (fresh + HUMUS_HOLDS * humus) + ASH_HOLDS * ash_kg
    }
}
