//! The files that ask: shapes only. What they mean is in `read`.

#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::garden_file::GardenFile;
use crate::shape::objects_only;

objects_only!(
    MixFile,
    PartFile,
    CustomFile,
    TargetFile,
    BalanceFile,
    ReachFile,
    WaterLimits,
);

/// What `heapwright mix` reads.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct MixFile {
    /// What goes in, 1 to 200 parts.
    pub parts: Vec<PartFile>,
    /// Water from a can, as an amount: "2 l".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water: Option<String>,
    /// The region for the chance; the usual one when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<TargetFile>,
    /// The garden's own measures, materials and measurements.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub garden: Option<GardenFile>,
}

/// One part: a material of the catalogue or a custom one, and how much.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct PartFile {
    /// Id, or an unmistakable name, of a material. Either this or `custom`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// A material described outright. Either this or `material`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub custom: Option<CustomFile>,
    /// How much: "2 buckets", "3.5 kg", "1 1/2 gal".
    pub amount: String,
    /// The condition it is in: "wet", "shredded"; several are parted by commas.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub condition: Option<String>,
    /// Moisture, percent of the mass as found; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<f64>,
    /// Nitrogen, percent of dry matter; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<f64>,
    /// Bulk density as it lies, wet; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<f64>,
}

/// A material described outright: moisture and two of carbon, nitrogen, C:N.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct CustomFile {
    /// What to call it.
    pub name: String,
    /// Moisture, percent of the mass as found, 0 to 99.9.
    pub moisture_pct: f64,
    /// Carbon, percent of dry matter, on the handbook scale.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub carbon_pct_dry: Option<f64>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen, ratio of masses.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<f64>,
    /// Bulk density as it lies, wet; needed when an amount is a volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<f64>,
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
}

/// The region to aim at; what is left out is as usual.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct TargetFile {
    /// Lowest and highest C:N; usually 25 to 40.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<[f64; 2]>,
    /// The C:N to aim at; usually 30, or the middle of `cn_ratio` when 30 lies outside it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_goal: Option<f64>,
    /// Lowest and highest moisture, percent; usually 50 to 60.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<[f64; 2]>,
    /// Lowest and highest free air space, percent of the volume; usually 30 to 100.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub free_air_space_pct: Option<[f64; 2]>,
}

/// What `heapwright balance` reads.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct BalanceFile {
    /// What is in hand and will go in, 1 to 200 parts.
    #[serde(default)]
    #[cfg_attr(feature = "schema", schemars(length(min = 1, max = 200)))]
    pub have: Vec<PartFile>,
    /// What may go with it, at most 200 materials.
    #[serde(default)]
    pub reach: Vec<ReachFile>,
    /// True for as much water as is needed, false for none, or what there is of it.
    #[serde(default)]
    pub water: WaterFile,
    /// The region to reach; the usual one when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<TargetFile>,
    /// What makes the first recipe best; "least_mass" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub objective: Option<ObjectiveFile>,
    /// True to add other recipes that differ from the first; true when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub alternatives: Option<bool>,
    /// The garden's own measures, materials, measurements and stores.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub garden: Option<GardenFile>,
}

/// A material that may be added.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct ReachFile {
    /// Id, or an unmistakable name, of a material. Either this or `custom`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// A material described outright. Either this or `material`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub custom: Option<CustomFile>,
    /// How much there is: "40 kg", "3 sacks"; plenty when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub max: Option<String>,
    /// In what it is handed out, whole ones only: "1 bucket"; any amount when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<String>,
    /// How unwelcome it is to use: 1 is usual, 2 twice as much.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub effort: Option<f64>,
    /// The condition it is in: "wet", "shredded"; several are parted by commas.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub condition: Option<String>,
    /// Moisture, percent of the mass as found; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<f64>,
    /// Nitrogen, percent of dry matter; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<f64>,
    /// Bulk density as it lies, wet; overrides, without spread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<f64>,
}

/// Water from a can.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(untagged)]
pub enum WaterFile {
    /// As much as is needed, or none.
    Any(bool),
    /// What there is and how it is poured.
    Limited(WaterLimits),
}

impl Default for WaterFile {
    fn default() -> Self {
        Self::Any(false)
    }
}

/// What there is of water and how it is poured.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct WaterLimits {
    /// How much there is: "20 l"; plenty when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub max: Option<String>,
    /// The smallest amount that is poured: "1 l"; any amount when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<String>,
}

/// What makes the first recipe best.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum ObjectiveFile {
    /// Least added mass, water included.
    #[default]
    LeastMass,
    /// Least added volume.
    LeastBulk,
    /// Best chance to lie in the region in spite of what is uncertain.
    BestCentred,
    /// Smallest share of what is in store.
    UsePlentiful,
    /// Least effort.
    LeastEffort,
}
