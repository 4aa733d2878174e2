//! Tests of compost: a laboratory's, and those done at home.

use serde::{Deserialize, Serialize};

use crate::check::{Problem, Wrong, if_within, within};
use crate::content::readings::{Smell, TEMPERATURE_C};
use crate::id::EventId;

/// Compost was tested: one or more of the tests.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Tested {
    /// Compost of which heap.
    pub heap: EventId,
    /// A laboratory's figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub laboratory: Option<Box<Laboratory>>,
    /// Self-heating in an insulated flask.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub self_heating: Option<SelfHeatingTest>,
    /// Germination of seeds in compost or its extract.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub germination: Option<GerminationTest>,
    /// A moist sample in a closed bag.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bag: Option<BagTest>,
}

/// What a laboratory found; at least one.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Laboratory {
    /// Moisture, percent of the mass as found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<f64>,
    /// Carbon, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub carbon_pct_dry: Option<f64>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen from measured carbon.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio_measured: Option<f64>,
    /// Ash, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ash_pct_dry: Option<f64>,
    /// Phosphorus (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phosphorus_pct_dry: Option<f64>,
    /// Potassium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub potassium_pct_dry: Option<f64>,
    /// Calcium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calcium_pct_dry: Option<f64>,
    /// Magnesium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub magnesium_pct_dry: Option<f64>,
    /// Sodium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sodium_pct_dry: Option<f64>,
    /// Acidity, pH.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ph: Option<f64>,
    /// Electrical conductivity [dS/m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub conductivity_ds_m: Option<f64>,
    /// Nitrogen as ammonium, of dry matter [mg/kg].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ammonium_nitrogen_mg_kg_dry: Option<f64>,
    /// Nitrogen as nitrate, of dry matter [mg/kg].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrate_nitrogen_mg_kg_dry: Option<f64>,
    /// Carbon dioxide given off, of volatile solids and day [mg/g].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub carbon_dioxide_mg_g_d: Option<f64>,
}

impl Laboratory {
    pub(crate) fn check(&self, field: &str) -> Result<(), Problem> {
        for (name, found, most) in [
            ("moisture_pct", self.moisture_pct, 100.0),
            ("carbon_pct_dry", self.carbon_pct_dry, 100.0),
            ("nitrogen_pct_dry", self.nitrogen_pct_dry, 50.0),
            ("cn_ratio_measured", self.cn_ratio_measured, 10_000.0),
            ("ash_pct_dry", self.ash_pct_dry, 100.0),
            ("phosphorus_pct_dry", self.phosphorus_pct_dry, 100.0),
            ("potassium_pct_dry", self.potassium_pct_dry, 100.0),
            ("calcium_pct_dry", self.calcium_pct_dry, 100.0),
            ("magnesium_pct_dry", self.magnesium_pct_dry, 100.0),
            ("sodium_pct_dry", self.sodium_pct_dry, 100.0),
            ("ph", self.ph, 14.0),
            ("conductivity_ds_m", self.conductivity_ds_m, 1000.0),
            (
                "ammonium_nitrogen_mg_kg_dry",
                self.ammonium_nitrogen_mg_kg_dry,
                1e6,
            ),
            (
                "nitrate_nitrogen_mg_kg_dry",
                self.nitrate_nitrogen_mg_kg_dry,
                1e6,
            ),
            ("carbon_dioxide_mg_g_d", self.carbon_dioxide_mg_g_d, 1000.0),
        ] {
            if_within(&format!("{field}.{name}"), found, 0.0, most)?;
        }
        Ok(())
    }
}

/// Self-heating: how far a sample warmed above the room.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SelfHeatingTest {
    /// Highest temperature of the sample [degC].
    pub highest_c: f64,
    /// Temperature of the room [degC].
    pub room_c: f64,
}

/// Germination of seeds, beside a control in water or known good compost.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GerminationTest {
    /// Seeds sown.
    pub sown: u32,
    /// Of them sprouted.
    pub sprouted: u32,
    /// Seeds sown in the control.
    pub control_sown: u32,
    /// Of them sprouted.
    pub control_sprouted: u32,
    /// Mean length of the roots [mm].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub root_mm: Option<f64>,
    /// The same in the control [mm].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub control_root_mm: Option<f64>,
}

/// A moist sample in a closed bag.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BagTest {
    /// For how many days it was closed.
    pub days: f64,
    /// True when the bag had swollen.
    pub swollen: bool,
    /// How it smelt when opened.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub smell: Option<Smell>,
}

impl Tested {
    pub(super) fn check(&self) -> Result<(), Problem> {
        if self.laboratory.is_none()
            && self.self_heating.is_none()
            && self.germination.is_none()
            && self.bag.is_none()
        {
            return Err(Problem::new("heap", Wrong::NoTest));
        }
        if let Some(laboratory) = &self.laboratory {
            laboratory.check("laboratory")?;
        }
        if let Some(test) = &self.self_heating {
            let (least, most) = TEMPERATURE_C;
            within("self_heating.highest_c", test.highest_c, least, most)?;
            within("self_heating.room_c", test.room_c, least, most)?;
        }
        if let Some(test) = &self.germination {
            for (field, sprouted, sown) in [
                ("germination.sprouted", test.sprouted, test.sown),
                (
                    "germination.control_sprouted",
                    test.control_sprouted,
                    test.control_sown,
                ),
            ] {
                within(field, f64::from(sprouted), 0.0, f64::from(sown))?;
            }
            if_within("germination.root_mm", test.root_mm, 0.0, 1000.0)?;
            if_within(
                "germination.control_root_mm",
                test.control_root_mm,
                0.0,
                1000.0,
            )?;
        }
        if let Some(test) = &self.bag {
            within("bag.days", test.days, 0.0, 365.0)?;
        }
        Ok(())
    }
}
