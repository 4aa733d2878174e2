//! What came of it all: peaks, losses, what the books say, and whether they close.

use super::layout::{GERM_KINDS, HOT_CLASSES, ledger, ledger::LEDGERS};
use super::pile::Sums;

/// Relative errors of the balances.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Closure {
    /// Carbon in pools, gases and what was taken out, against what came in.
    pub carbon: f64,
    /// Nitrogen likewise, with what leached.
    pub nitrogen: f64,
    /// Water likewise, with what life formed.
    pub water: f64,
    /// Ash, phosphorus, calcium, magnesium and potassium: the worst of them.
    pub ash: f64,
    /// Heat.
    pub energy: f64,
    /// Everything that weighs.
    pub mass: f64,
    /// Oxygen brought by the air against oxygen used; not a sum that is kept, but a
    /// balance that is solved for.
    pub oxygen: f64,
}

/// The figures of a run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Summary {
    /// Highest core temperature [degrees Celsius].
    pub peak_core_temperature_c: f64,
    /// Highest mean temperature.
    pub peak_mean_temperature_c: f64,
    /// Day of the core's peak.
    pub peak_day: f64,
    /// Days with the core at 55 degrees or more.
    pub days_core_at_or_above_55: f64,
    /// Days with the mean at 55 degrees or more.
    pub days_mean_at_or_above_55: f64,
    /// Loss of volatile solids of all that was fed [%].
    pub volatile_solids_loss_pct: f64,
    /// Loss of dry matter [%].
    pub dry_mass_loss_pct: f64,
    /// Loss of wet mass, water given and rain counted as put in [%]; below zero when wetter.
    pub wet_mass_loss_pct: f64,
    /// Loss of volume [%].
    pub volume_loss_pct: f64,
    /// Loss of carbon [%].
    pub carbon_loss_pct: f64,
    /// Loss of nitrogen [%].
    pub nitrogen_loss_pct: f64,
    /// Of it as ammonia [% of nitrogen fed].
    pub ammonia_loss_pct: f64,
    /// Methane of the carbon lost [%]; good to a factor of ten.
    pub methane_share_of_carbon_loss_pct: f64,
    /// Nitrous oxide, nitrogen of nitrogen fed [%]; good to a factor of ten.
    pub nitrous_oxide_loss_pct: f64,
    /// Water that ran out below [L].
    pub leachate_l: f64,
    /// Water that left as vapour [L].
    pub evaporated_l: f64,
    /// Matter that was never at 55 degrees [%].
    pub never_hot_share_pct: f64,
    /// Matter by its longest spell at 55 degrees: none, to 1, to 3, to 7, above 7 days.
    pub hot_shares: [f64; HOT_CLASSES],
    /// Surviving share of three reference germs, simulated; no certificate of hygiene.
    pub germ_survival: [f64; GERM_KINDS],
    /// Lowest oxygen [%], when and in which layer and ring.
    pub lowest_oxygen_pct: f64,
    /// Day of the lowest oxygen.
    pub lowest_oxygen_day: f64,
    /// Its layer from below.
    pub lowest_oxygen_layer: usize,
    /// Its ring from the core.
    pub lowest_oxygen_ring: usize,
    /// Days on which some part had less than 2 % oxygen.
    pub days_with_sour_part: f64,
    /// Highest oxygen uptake [mg per g volatile solids and hour].
    pub peak_uptake_mg_per_g_vs_h: f64,
    /// Day from which it counts as finished, when it does.
    pub ready_day: Option<f64>,
    /// Heat made [MJ].
    pub heat_made_mj: f64,
    /// Heat that left by walls and ground, with vapour, with air [MJ].
    pub heat_lost_mj: [f64; 3],
    /// Balances.
    pub closure: Closure,
}

/// What came in and went out at events.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Moved {
    pub fed: Sums,
    pub taken: Sums,
    pub watered_kg: f64,
    pub watering_heat_mj: f64,
    pub turning_heat_mj: f64,
    pub turning_water_kg: f64,
}

impl Summary {
    /// Losses and balances from what is left, what moved and the books.
    pub(crate) fn close(&mut self, left: &Sums, moved: &Moved, books: &[f64; LEDGERS]) {
        let (fed, taken) = (&moved.fed, &moved.taken);
        let book = |entry: usize| books[entry];
        let lost = |fed: f64, left: f64, taken: f64| 100.0 * (fed - left - taken) / fed.max(1e-12);
        self.volatile_solids_loss_pct =
            lost(fed.volatile_kg(), left.volatile_kg(), taken.volatile_kg());
        self.dry_mass_loss_pct = lost(fed.dry_kg, left.dry_kg, taken.dry_kg);
        let water_in = moved.watered_kg + book(ledger::RAIN);
        self.wet_mass_loss_pct = lost(fed.wet_kg + water_in, left.wet_kg, taken.wet_kg);
        self.volume_loss_pct = lost(fed.volume_m3, left.volume_m3, taken.volume_m3);
        self.carbon_loss_pct = lost(fed.carbon_kg, left.carbon_kg, taken.carbon_kg);
        self.nitrogen_loss_pct = lost(fed.nitrogen_kg, left.nitrogen_kg, taken.nitrogen_kg);
        self.ammonia_loss_pct = 100.0 * book(ledger::AMMONIA_NITROGEN) / fed.nitrogen_kg.max(1e-12);
        let carbon_gone = book(ledger::DIOXIDE_CARBON) + book(ledger::METHANE_CARBON);
        self.methane_share_of_carbon_loss_pct =
            100.0 * book(ledger::METHANE_CARBON) / carbon_gone.max(1e-12);
        self.nitrous_oxide_loss_pct =
            100.0 * book(ledger::NITROUS_NITROGEN) / fed.nitrogen_kg.max(1e-12);
        self.leachate_l = book(ledger::LEACHED_WATER);
        self.evaporated_l = book(ledger::VAPOUR) + moved.turning_water_kg;
        self.heat_made_mj = book(ledger::HEAT);
        let conducted = book(ledger::CONDUCTED_SIDE)
            + book(ledger::CONDUCTED_TOP)
            + book(ledger::CONDUCTED_BOTTOM);
        self.heat_lost_mj = [conducted, book(ledger::VAPOUR_HEAT), book(ledger::AIR_HEAT)];

        let relative = |difference: f64, size: f64| difference.abs() / size.abs().max(1e-9);
        let carbon = fed.carbon_kg - taken.carbon_kg - left.carbon_kg - carbon_gone;
        let nitrogen_gone = book(ledger::AMMONIA_NITROGEN)
            + book(ledger::NITROUS_NITROGEN)
            + book(ledger::DINITROGEN)
            + book(ledger::LEACHED_AMMONIUM)
            + book(ledger::LEACHED_NITRATE);
        let nitrogen = fed.nitrogen_kg - taken.nitrogen_kg - left.nitrogen_kg - nitrogen_gone;
        let water_gone =
            book(ledger::VAPOUR) + book(ledger::LEACHED_WATER) + moved.turning_water_kg;
        let water = fed.water_kg + water_in + book(ledger::WATER_FORMED)
            - taken.water_kg
            - left.water_kg
            - water_gone;
        let minerals = [
            (fed.ash_kg, taken.ash_kg + left.ash_kg),
            (fed.phosphorus_kg, taken.phosphorus_kg + left.phosphorus_kg),
            (fed.calcium_kg, taken.calcium_kg + left.calcium_kg),
            (fed.magnesium_kg, taken.magnesium_kg + left.magnesium_kg),
            (fed.bases_mol, taken.bases_mol + left.bases_mol),
            (
                fed.potassium_kg,
                taken.potassium_kg + left.potassium_kg + book(ledger::LEACHED_POTASSIUM),
            ),
        ];
        let heat = fed.enthalpy_mj
            + moved.watering_heat_mj
            + book(ledger::HEAT)
            + book(ledger::MATTER_HEAT)
            + book(ledger::RAIN_HEAT)
            + book(ledger::SUN_HEAT)
            - conducted
            - book(ledger::VAPOUR_HEAT)
            - book(ledger::AIR_HEAT)
            - book(ledger::LEACHED_HEAT)
            - moved.turning_heat_mj
            - taken.enthalpy_mj
            - left.enthalpy_mj;
        // By their own weights: CO2, CH4, NH3, N2O, N2 and leached nitrogen against the
        // oxygen taken.
        let gases = book(ledger::DIOXIDE_CARBON) * (44.0 / 12.0)
            + book(ledger::METHANE_CARBON) * (16.0 / 12.0)
            + book(ledger::AMMONIA_NITROGEN) * (17.0 / 14.0)
            + book(ledger::NITROUS_NITROGEN) * (44.0 / 28.0)
            + book(ledger::DINITROGEN)
            + book(ledger::LEACHED_AMMONIUM) * (17.0 / 14.0)
            + book(ledger::LEACHED_NITRATE) * (63.0 / 14.0)
            - book(ledger::OXYGEN);
        let mass_in = fed.wet_kg + water_in;
        let mass = mass_in - taken.wet_kg - left.wet_kg - water_gone - gases;
        self.closure = Closure {
            carbon: relative(carbon, fed.carbon_kg),
            nitrogen: relative(nitrogen, fed.nitrogen_kg),
            // Of dry feed in damp air most water comes from elsewhere.
            water: relative(
                water,
                (fed.water_kg + water_in)
                    .max(book(ledger::WATER_FORMED))
                    .max(book(ledger::VAPOUR).abs()),
            ),
            ash: minerals
                .iter()
                .filter(|(fed, _)| *fed > 0.0)
                .map(|(fed, found)| relative(fed - found, *fed))
                .fold(0.0, f64::max),
            energy: relative(
                heat,
                (fed.enthalpy_mj.abs() + book(ledger::HEAT))
                    .max(moved.watering_heat_mj + book(ledger::RAIN_HEAT)),
            ),
            mass: relative(mass, mass_in),
            oxygen: relative(
                book(ledger::OXYGEN) - book(ledger::OXYGEN_BROUGHT),
                book(ledger::OXYGEN),
            ),
        };
    }
}
