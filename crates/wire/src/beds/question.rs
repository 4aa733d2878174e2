//! The file that describes beds and compost: shapes only. What they mean is in `read`.

#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::garden_file::{FigureFile, GardenFile};
use crate::shape::objects_only;

objects_only!(BedsFile, CompostFile, BedFile, SoilFile, DressingFile);

/// What `heapwright beds plan` reads.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct BedsFile {
    /// How much compost there is: "3 barrows", "200 l".
    pub amount: String,
    /// What is known of it; the usual figures where left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub compost: Option<CompostFile>,
    /// The beds, 1 to 60.
    pub beds: Vec<BedFile>,
    /// The garden's own measures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub garden: Option<GardenFile>,
}

/// What is known of the compost; each figure is one number, or low, typical and high.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct CompostFile {
    /// Moisture, percent of the mass as found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<FigureFile>,
    /// Bulk density as spread [kg/m3].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<FigureFile>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<FigureFile>,
    /// Phosphorus (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phosphorus_pct_dry: Option<FigureFile>,
    /// Potassium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub potassium_pct_dry: Option<FigureFile>,
    /// Calcium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calcium_pct_dry: Option<FigureFile>,
    /// Magnesium (the element), percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub magnesium_pct_dry: Option<FigureFile>,
    /// Electrical conductivity of the saturation extract [dS/m]: a more dilute one reads less.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub conductivity_ds_m: Option<FigureFile>,
    /// Carbon to nitrogen, measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio: Option<f64>,
    /// Nitrate and ammonium nitrogen, percent of all nitrogen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mineral_nitrogen_pct: Option<f64>,
    /// Is it mature? Left out when nobody knows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mature: Option<bool>,
    /// Did raw manure, droppings or meat go in, without a heat that was shown to have dealt with
    /// it? Left out when nobody knows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held_raw: Option<bool>,
    /// True when something went in that never goes on beds where food grows, such as dog or cat
    /// waste: then none goes to a bed but where the crop is an ornamental one.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub never_on_food_beds: bool,
}

/// A bed.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct BedFile {
    /// Its name.
    pub name: String,
    /// How large it is: "12 m2", "6 m x 1.2 m".
    pub area: String,
    /// What grows there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crop: Option<String>,
    /// How much that feeds on the soil: "light", "medium", "heavy"; as the crop when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feeding: Option<String>,
    /// True for ground that was not dug and fed before.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub new_ground: bool,
    /// What a test of its soil said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub soil: Option<SoilFile>,
    /// Days until something is sown or planted there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sown_in_days: Option<f64>,
    /// Days until the harvest.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub harvest_in_days: Option<f64>,
    /// What was spread before.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub dressings: Vec<DressingFile>,
}

/// What a test of soil said.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct SoilFile {
    /// Phosphorus that plants can take up (the element) [mg/kg].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phosphorus_mg_kg: Option<f64>,
    /// Potassium that plants can take up (the element) [mg/kg].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub potassium_mg_kg: Option<f64>,
    /// Electrical conductivity of the saturation extract [dS/m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub conductivity_ds_m: Option<f64>,
}

/// Compost that was spread before.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct DressingFile {
    /// How long ago, in years.
    pub years_ago: f64,
    /// How much on the whole bed: "3 barrows", "100 l".
    pub amount: String,
}
