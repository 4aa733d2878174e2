//! What does life do in one cell, with how much oxygen, and what comes of it?
//!
//! First the rates as they would be with air in plenty ([`Potential`]); then, once the
//! oxygen of all cells is known, the changes of every pool. Oxygen, carbon dioxide, water
//! and heat are computed from the changes, so that they balance whatever the rates are.

use super::cell::{Carried, Cell};
use super::parameters::{
    HALF_NITRIFICATION_OXYGEN, NITROUS_OF_DENITRIFIED, NITROUS_OF_NITRIFIED, Parameters,
};
use super::pools::{
    ACIDS, AMMONIA_PER_NITROGEN, CELLS, HUMUS, MODERATE, OXYGEN_FROM_DINITROGEN,
    OXYGEN_FROM_NITROUS, OXYGEN_PER_METHANE_CARBON, OXYGEN_PER_NITRATE, OXYGEN_PER_NITROUS, RAPID,
    SLOW, WATER_PER_DENITRIFIED, WATER_PER_METHANE_CARBON, WATER_PER_NITRATE, WATER_PER_NITROUS,
};
use super::responses::methane_share;
use super::thermal;

/// Carbon dioxide for the first estimate of acidity [atm]; activity suffers only where
/// acids, not bicarbonate, set the pH.
const USUAL_CARBON_DIOXIDE: f64 = 0.10;

/// Rates of one cell as they would be with air in plenty, and without.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Potential {
    /// Decay for one of substrate [1/d].
    pub rapid: f64,
    pub moderate: f64,
    pub slow: f64,
    pub humus: f64,
    pub acids: f64,
    /// Cells grown [kg/d].
    growth: f64,
    /// Of them mesophiles.
    mesophile_share: f64,
    /// How fully growth finds its nitrogen, 0 to 1.
    nitrogen_supply: f64,
    /// Cells dying [kg/d].
    dying_mesophiles: f64,
    dying_thermophiles: f64,
    /// Ammonium turned to nitrate with full oxygen [kg N/d].
    nitrified: f64,
    /// Nitrate breathed without oxygen [kg N/d].
    denitrified: f64,
    /// Fermentation without oxygen, for one of substrate [1/d].
    fermentation: f64,
    /// Carbon set free with full oxygen [kg/d].
    carbon: f64,
    methane_by_moisture: f64,
    /// Share of mineral nitrogen taken from ammonium.
    from_ammonium: f64,
    /// Oxygen taken [kg/d]: for one of the oxygen factor, of nitrification, and always.
    pub with_factor: f64,
    pub with_nitrification: f64,
    pub always: f64,
}

/// Changes of one cell [kg/d, MJ/d].
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Change {
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
    /// Dry matter altogether.
    pub dry: f64,
    pub dioxide_carbon: f64,
    pub methane_carbon: f64,
    pub nitrous_nitrogen: f64,
    pub dinitrogen: f64,
    pub oxygen: f64,
    pub heat: f64,
}

/// Carbon of slow matter that becomes humus, as mass of humus.
const HUMUS_OF_SLOW: f64 = SLOW.carbon / HUMUS.carbon;
const HUMUS_OF_CELLS: f64 = CELLS.carbon / HUMUS.carbon;
const RAPID_OF_CELLS: f64 = CELLS.carbon / RAPID.carbon;

/// Oxygen and water of nitrification, a little of which ends as nitrous oxide.
const OXYGEN_PER_NITRIFIED: f64 =
    (1.0 - NITROUS_OF_NITRIFIED) * OXYGEN_PER_NITRATE + NITROUS_OF_NITRIFIED * OXYGEN_PER_NITROUS;
const WATER_PER_NITRIFIED: f64 =
    (1.0 - NITROUS_OF_NITRIFIED) * WATER_PER_NITRATE + NITROUS_OF_NITRIFIED * WATER_PER_NITROUS;
/// Oxygen that breathed nitrate stands in for.
const OXYGEN_PER_DENITRIFIED: f64 = (1.0 - NITROUS_OF_DENITRIFIED) * OXYGEN_FROM_DINITROGEN
    + NITROUS_OF_DENITRIFIED * OXYGEN_FROM_NITROUS;

impl Potential {
    /// The rates of `cell`, whose acidity is brought up to date on the way.
    #[inline]
    pub(crate) fn of(cell: &mut Cell, carried: &Carried, parameters: &Parameters) -> Self {
        cell.usual_hydrogen = cell.acidity(
            USUAL_CARBON_DIOXIDE,
            cell.usual_hydrogen,
            carried,
            parameters,
        );
        let at_zero = |value: f64| value.max(0.0);
        let (rapid, moderate, slow, humus, acids) = (
            at_zero(cell.rapid),
            at_zero(cell.moderate),
            at_zero(cell.slow),
            at_zero(cell.humus),
            at_zero(cell.acids),
        );
        let (mesophiles, thermophiles) = (at_zero(cell.mesophiles), at_zero(cell.thermophiles));

        let food = rapid + moderate + 0.3 * slow + acids;
        let half = parameters.half_activity_cells * food + 1e-12;
        let share_m = cell.thermal[thermal::MESOPHILES] * mesophiles / (mesophiles + half);
        let share_t = cell.thermal[thermal::THERMOPHILES] * thermophiles / (thermophiles + half);
        let acid = 1e5 * cell.usual_hydrogen;
        cell.acid_root = fifth_root(acid, cell.acid_root);
        let acid_factor = 1.0 / (1.0 + acid * cell.acid_root * cell.half_acid);
        let activity =
            (1.0 - (1.0 - share_m) * (1.0 - share_t)) * cell.moisture_factor * acid_factor;

        let mut potential = Self {
            rapid: parameters.rapid_rate_per_d * activity,
            moderate: parameters.moderate_rate_per_d * activity,
            slow: parameters.slow_rate_per_d * activity,
            humus: parameters.humus_rate_per_d * activity,
            acids: parameters.acid_rate_per_d * activity,
            ..Self::default()
        };
        potential.fermentation = parameters.fermentation * potential.rapid;
        let mineral = at_zero(cell.ammonium) + 0.3 * at_zero(cell.nitrate);
        potential.nitrogen_supply =
            mineral / (parameters.half_growth_nitrogen * cell.water.max(1e-9) + mineral + 1e-15);
        potential.from_ammonium = at_zero(cell.ammonium) / (mineral + 1e-15);
        let (r_rapid, r_moderate, r_slow, r_humus, r_acids) = (
            potential.rapid * rapid,
            potential.moderate * moderate,
            potential.slow * slow,
            potential.humus * humus,
            potential.acids * acids,
        );
        potential.growth = parameters.growth_yield
            * potential.nitrogen_supply
            * (r_rapid
                + r_moderate
                + 0.5 * (1.0 - parameters.slow_to_humus) * r_slow
                + 0.2 * r_humus
                + 0.6 * r_acids);
        potential.mesophile_share = share_m / (share_m + share_t + 1e-30);
        // Spores and the cool rim survive.
        let surviving = parameters.surviving_cells * cell.dry;
        potential.dying_mesophiles =
            cell.thermal[thermal::DYING_MESOPHILES] * at_zero(mesophiles - surviving);
        potential.dying_thermophiles =
            cell.thermal[thermal::DYING_THERMOPHILES] * at_zero(thermophiles - surviving);

        let ammonium_in_water = cell.ammonium_in_water(parameters);
        let constant = 1e-9 * cell.thermal[thermal::AMMONIUM];
        let free_ammonia = ammonium_in_water * constant / (constant + cell.usual_hydrogen);
        const ACID_FOR_NITRIFIERS: f64 = 6_309_573.444_801_93; // 10^6.8
        potential.nitrified = parameters.nitrification_per_d
            * at_zero(cell.ammonium)
            * cell.thermal[thermal::NITRIFICATION]
            * cell.moisture_factor
            / ((1.0 + ACID_FOR_NITRIFIERS * cell.usual_hydrogen)
                * (1.0 + free_ammonia / parameters.nitrifiers_free_ammonia));
        potential.denitrified = parameters.denitrification_per_d
            * at_zero(cell.nitrate)
            * cell.thermal[thermal::DENITRIFICATION]
            * moderate
            / (moderate + 0.01 * cell.dry);

        let to_humus = parameters.slow_to_humus * HUMUS_OF_SLOW * r_slow;
        potential.carbon = RAPID.carbon * r_rapid
            + MODERATE.carbon * r_moderate
            + SLOW.carbon * r_slow
            + HUMUS.carbon * (r_humus - to_humus)
            + ACIDS.carbon * r_acids
            - CELLS.carbon * potential.growth;
        potential.methane_by_moisture = cell.methane;
        let taken_up = potential.taken_up(to_humus, parameters);
        potential.with_factor = RAPID.oxygen_demand() * r_rapid
            + MODERATE.oxygen_demand() * r_moderate
            + SLOW.oxygen_demand() * r_slow
            + HUMUS.oxygen_demand() * (r_humus - to_humus)
            + ACIDS.oxygen_demand() * r_acids
            - CELLS.oxygen_demand() * potential.growth
            - OXYGEN_PER_NITRATE * (1.0 - potential.from_ammonium) * taken_up;
        potential.with_nitrification = OXYGEN_PER_NITRIFIED * potential.nitrified;
        let dying = potential.dying_mesophiles + potential.dying_thermophiles;
        potential.always = dying
            * (CELLS.oxygen_demand()
                - (1.0 - parameters.cells_to_humus) * RAPID_OF_CELLS * RAPID.oxygen_demand()
                - parameters.cells_to_humus * HUMUS_OF_CELLS * HUMUS.oxygen_demand());
        potential
    }

    /// Mineral nitrogen taken up with full oxygen [kg/d].
    #[inline]
    fn taken_up(&self, to_humus: f64, parameters: &Parameters) -> f64 {
        parameters.nitrogen_in_cells * self.growth
            + parameters.nitrogen_in_humus * self.nitrogen_supply * to_humus
    }

    /// Oxygen taken at a mole fraction, and how it grows with it [kg/d].
    #[inline]
    pub(crate) fn oxygen_use(&self, oxygen: f64, parameters: &Parameters) -> (f64, f64) {
        let half = parameters.half_activity_oxygen;
        let factor = oxygen / (half + oxygen);
        let slope = half / ((half + oxygen) * (half + oxygen));
        let other = oxygen / (HALF_NITRIFICATION_OXYGEN + oxygen);
        let other_slope = HALF_NITRIFICATION_OXYGEN
            / ((HALF_NITRIFICATION_OXYGEN + oxygen) * (HALF_NITRIFICATION_OXYGEN + oxygen));
        let share = methane_share(self.methane_by_moisture, factor);
        let freed = OXYGEN_PER_METHANE_CARBON * self.carbon.max(0.0);
        let unburnt = share * freed;
        // The share falls as oxygen rises, until it is capped.
        let less = if share < 0.05 {
            factor * freed * self.methane_by_moisture * 200.0 * (1.0 - factor)
        } else {
            0.0
        };
        (
            factor * (self.with_factor - unburnt) + other * self.with_nitrification + self.always,
            slope * (self.with_factor - unburnt + less) + other_slope * self.with_nitrification,
        )
    }

    /// Changes at a mole fraction of oxygen.
    #[inline]
    pub(crate) fn change(&self, cell: &Cell, parameters: &Parameters) -> Change {
        let at_zero = |value: f64| value.max(0.0);
        let oxygen = cell.oxygen;
        let factor = oxygen / (parameters.half_activity_oxygen + oxygen);
        let lack = 1.0 - factor;
        let k_rapid = self.rapid * factor;
        let (k_moderate, k_slow, k_humus) = (
            self.moderate * factor,
            self.slow * factor,
            self.humus * factor,
        );
        let fermenting = self.fermentation * lack;
        let r_rapid = k_rapid * at_zero(cell.rapid);
        let r_slow = k_slow * at_zero(cell.slow);
        let r_humus = k_humus * at_zero(cell.humus);
        let r_acids = self.acids * factor * at_zero(cell.acids);
        let fermented = fermenting * at_zero(cell.rapid);
        let denitrified = self.denitrified * lack;
        // Nitrate is breathed with moderate matter.
        let breathed = denitrified * (OXYGEN_PER_DENITRIFIED / MODERATE.oxygen_demand());
        let breathing = breathed / (at_zero(cell.moderate) + 1e-30);
        let r_moderate = k_moderate * at_zero(cell.moderate);
        let growth = self.growth * factor;
        let to_humus = parameters.slow_to_humus * HUMUS_OF_SLOW * r_slow;
        let dying = self.dying_mesophiles + self.dying_thermophiles;
        let humus_of_cells = parameters.cells_to_humus * HUMUS_OF_CELLS * dying;
        let rapid_of_cells = (1.0 - parameters.cells_to_humus) * RAPID_OF_CELLS * dying;
        let nitrified = self.nitrified * oxygen / (HALF_NITRIFICATION_OXYGEN + oxygen);

        let mut change = Change {
            rapid: -r_rapid - fermented + rapid_of_cells,
            moderate: -r_moderate - breathed,
            slow: -r_slow,
            humus: to_humus + humus_of_cells - r_humus,
            mesophiles: growth * self.mesophile_share - self.dying_mesophiles,
            thermophiles: growth * (1.0 - self.mesophile_share) - self.dying_thermophiles,
            acids: (RAPID.carbon / ACIDS.carbon) * fermented - r_acids,
            ..Change::default()
        };

        // Nitrogen goes with the matter that held it.
        let nitrogen_of_cells = parameters.nitrogen_in_cells * dying;
        let from_rapid = (k_rapid + fermenting) * at_zero(cell.nitrogen_rapid);
        let from_moderate = (k_moderate + breathing) * at_zero(cell.nitrogen_moderate);
        let from_slow = k_slow * at_zero(cell.nitrogen_slow);
        let from_humus = k_humus * at_zero(cell.nitrogen_humus);
        let to_rapid = (1.0 - parameters.cells_to_humus) * nitrogen_of_cells;
        let humus_from_minerals = parameters.nitrogen_in_humus * self.nitrogen_supply * to_humus;
        let humus_from_cells = parameters.nitrogen_in_humus * humus_of_cells;
        let taken_up = parameters.nitrogen_in_cells * growth + humus_from_minerals;
        let taken_as_ammonium = self.from_ammonium * taken_up;
        let taken_as_nitrate = taken_up - taken_as_ammonium;
        change.nitrogen_rapid = to_rapid - from_rapid;
        change.nitrogen_moderate = -from_moderate;
        change.nitrogen_slow = -from_slow;
        change.nitrogen_humus = humus_from_minerals + humus_from_cells - from_humus;
        change.ammonium = from_rapid
            + from_moderate
            + from_slow
            + from_humus
            + (parameters.cells_to_humus * nitrogen_of_cells - humus_from_cells)
            - taken_as_ammonium
            - nitrified;
        change.nitrate = (1.0 - NITROUS_OF_NITRIFIED) * nitrified - denitrified - taken_as_nitrate;
        change.nitrous_nitrogen =
            NITROUS_OF_NITRIFIED * nitrified + NITROUS_OF_DENITRIFIED * denitrified;
        change.dinitrogen = (1.0 - NITROUS_OF_DENITRIFIED) * denitrified;

        // Carbon, oxygen, water and heat follow from the changes.
        let cells = change.mesophiles + change.thermophiles;
        let sum = |of: fn(super::pools::Composition) -> f64| {
            of(RAPID) * change.rapid
                + of(MODERATE) * change.moderate
                + of(SLOW) * change.slow
                + of(HUMUS) * change.humus
                + of(CELLS) * cells
                + of(ACIDS) * change.acids
        };
        let carbon = -sum(|pool| pool.carbon);
        change.methane_carbon =
            methane_share(self.methane_by_moisture, factor) * self.carbon.max(0.0) * factor;
        change.dioxide_carbon = carbon - change.methane_carbon;
        change.oxygen = -sum(super::pools::Composition::oxygen_demand)
            - OXYGEN_PER_METHANE_CARBON * change.methane_carbon
            + OXYGEN_PER_NITRIFIED * nitrified
            - OXYGEN_PER_NITRATE * taken_as_nitrate
            - OXYGEN_PER_DENITRIFIED * denitrified;
        change.water = -sum(super::pools::Composition::water)
            - WATER_PER_METHANE_CARBON * change.methane_carbon
            + WATER_PER_NITRIFIED * nitrified
            - WATER_PER_NITRATE * taken_as_nitrate
            + WATER_PER_DENITRIFIED * denitrified;
        change.heat = parameters.heat_of_oxygen_mj_kg * change.oxygen;
        change.dry = change.rapid
            + change.moderate
            + change.slow
            + change.humus
            + cells
            + change.acids
            + AMMONIA_PER_NITROGEN
                * (change.nitrogen_rapid
                    + change.nitrogen_moderate
                    + change.nitrogen_slow
                    + change.nitrogen_humus
                    + parameters.nitrogen_in_cells * cells);
        change
    }
}

/// The fifth root of a number above zero by Newton, from a guess.
#[inline]
fn fifth_root(value: f64, guess: f64) -> f64 {
    const MOST_ROUNDS: usize = 100;
    // Acidity from pH 3 to 10 has roots between 0.1 and 2.6.
    let mut root = guess.clamp(0.1, 3.0);
    for _ in 0..MOST_ROUNDS {
        let square = root * root;
        let next = 0.8 * root + 0.2 * value / (square * square);
        let moved = (next - root).abs();
        root = next;
        // The error is squared each time: what is left is below 1e-11.
        if moved <= 3e-6 * root {
            break;
        }
    }
    root
}

#[cfg(test)]
mod tests {
    use super::super::thermal::Thermal;
    use super::*;

    #[test]
    fn fifth_roots_are_found_from_any_guess() {
        for value in [1e-5, 1e-2, 1.0, 40.0, 100.0] {
            for guess in [0.0, 1e-3, 0.5, 3.0] {
                let root = fifth_root(value, guess);
                assert!(
                    (libm::pow(root, 5.0) / value - 1.0).abs() < 1e-10,
                    "{value}"
                );
            }
        }
    }

    #[test]
    fn few_microbes_grow_exponentially_at_the_rate_of_monod() {
        // Mesophiles alone at 20 degrees: X' = (Y k R / (K S) f - b) X.
        let parameters = Parameters {
            surviving_cells: 0.0,
            ..Parameters::default()
        };
        let table = Thermal::new(&parameters);
        let carried = Carried {
            ash_kg: 1.0,
            bases_mol: 60.0,
            dry_fed_kg: 12.0,
            density_fed_kg_m3: 100.0,
            grain_m2: 1e-6,
        };
        let mut y = [0.0; super::super::layout::STATES];
        use super::super::layout as place;
        y[place::RAPID] = 10.0;
        y[place::MESOPHILES] = 1e-9;
        y[place::AMMONIUM] = 1.0;
        y[place::WATER] = 18.0;
        y[place::DENSITY] = 100.0;
        y[place::ENTHALPY] = super::super::phase::enthalpy_mj(20.0, 11.0, 18.0, &parameters);
        let mut cell = Cell::default();
        cell.read(&y, 0, 1, &carried, &parameters, &table);
        let potential = Potential::of(&mut cell, &carried, &parameters);
        cell.oxygen = 0.2;
        let change = potential.change(&cell, &parameters);
        let warm = parameters.mesophiles.activity(20.0);
        let slowed = cell.moisture_factor * 0.2 / 0.22 * 0.999;
        let growth = 0.35 * 0.60 * 0.85 * warm / 0.02 * slowed;
        let dying = 0.02 + 0.15 * warm;
        let rate = change.mesophiles / y[place::MESOPHILES];
        assert!(
            (rate / (growth - dying) - 1.0).abs() < 0.01,
            "{rate} {growth}"
        );
    }

    #[test]
    fn full_oxidation_takes_what_the_formulas_say() {
        // C10H19O3N 1.99, glucose 1.07, cellulose 1.18 kg O2/kg (Haug 1993; stoichiometry).
        let demand = |c: f64, h: f64, o: f64, n: f64| {
            let mass = 12.011 * c + 1.008 * h + 15.999 * o + 14.007 * n;
            31.998 * (c + h / 4.0 - o / 2.0 - 0.75 * n) / mass
        };
        assert!((demand(10.0, 19.0, 3.0, 1.0) - 1.987).abs() < 1e-3);
        assert!((demand(6.0, 10.0, 5.0, 0.0) - MODERATE.oxygen_demand()).abs() < 2e-3);
    }
}
