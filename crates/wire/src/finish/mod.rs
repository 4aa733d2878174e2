//! Readiness, the ledger of nutrients and what was kept out of the bin, as JSON.

mod diversion;
mod ledger;
mod ready;

pub use diversion::{DiversionJson, diversion_json};
pub use ledger::{LedgerJson, ledger_json};
pub use ready::{HomeTestJson, ReadyJson, home_test_json, ready_json};

use heapwright_answers::Today;
use heapwright_answers::finish::{RespirationClass, carbon_of_uptake};
use heapwright_wording as wording;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;

/// What the simulation says of a heap today; nothing of it was measured.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct TodayJson {
    /// Simulated for so many days, since it was last empty.
    pub days: f64,
    /// Core temperature [degC].
    pub core_temperature_c: f64,
    /// The air [degC].
    pub air_temperature_c: f64,
    /// Oxygen it would take at 37 degC, moist and aired [mg per g of volatile solids and hour].
    pub standard_uptake_mg_per_g_vs_h: f64,
    /// The class of that: "very stable" to "raw".
    pub respiration_class: String,
    /// C:N, elemental carbon.
    pub cn_ratio: f64,
    /// Ammonium, percent of the nitrogen.
    pub ammonium_pct_of_nitrogen: f64,
    /// Day from which it counts as ready; null while it does not.
    pub ready_day: Option<f64>,
    /// Dry matter that is there [kg].
    pub dry_mass_kg: f64,
    /// Everything that is there [kg].
    pub wet_mass_kg: f64,
    /// Volume [L].
    pub volume_l: f64,
    /// Nitrogen that is there [kg].
    pub nitrogen_kg: f64,
    /// Phosphorus [kg].
    pub phosphorus_kg: f64,
    /// Potassium [kg].
    pub potassium_kg: f64,
    /// Calcium [kg].
    pub calcium_kg: f64,
    /// Magnesium [kg].
    pub magnesium_kg: f64,
    /// Nitrogen lost, percent of that put in.
    pub nitrogen_loss_pct: f64,
    /// Of that put in, as ammonia, percent.
    pub ammonia_loss_pct: f64,
    /// Of that put in, as nitrous oxide, percent; good to a factor of ten.
    pub nitrous_oxide_loss_pct: f64,
}

impl TodayJson {
    fn of(today: &Today) -> Self {
        let uptake = today.standard_uptake_mg_per_g_vs_h;
        let class = RespirationClass::of_carbon(carbon_of_uptake(uptake));
        let [
            nitrogen_kg,
            phosphorus_kg,
            potassium_kg,
            calcium_kg,
            magnesium_kg,
        ] = today.now_kg;
        Self {
            days: today.days,
            core_temperature_c: today.core_temperature_c,
            air_temperature_c: today.air_temperature_c,
            standard_uptake_mg_per_g_vs_h: uptake,
            respiration_class: wording::respiration_word(class, ENGLISH).to_owned(),
            cn_ratio: today.carbon_to_nitrogen,
            ammonium_pct_of_nitrogen: today.ammonium_share * 100.0,
            ready_day: today.ready_day,
            dry_mass_kg: today.dry_kg,
            wet_mass_kg: today.wet_kg,
            volume_l: today.volume_m3 * 1000.0,
            nitrogen_kg,
            phosphorus_kg,
            potassium_kg,
            calcium_kg,
            magnesium_kg,
            nitrogen_loss_pct: today.nitrogen_lost * 100.0,
            ammonia_loss_pct: today.ammonia_lost * 100.0,
            nitrous_oxide_loss_pct: today.nitrous_oxide_lost * 100.0,
        }
    }
}
