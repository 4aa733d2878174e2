//! The file that describes a heap to be simulated: shapes only. What they mean is in `read`.

#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::garden_file::GardenFile;
use crate::request::CustomFile;
use crate::shape::objects_only;

objects_only!(
    SimulationFile,
    EnclosureFile,
    WeatherFile,
    ConstantFile,
    HourFile,
    ClimateFile,
    EventFile,
    FedFile,
    TurnFile,
    RemoveFile,
    EnsembleFile,
);

/// What `heapwright simulate` reads.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct SimulationFile {
    /// When it starts, with the offset from UTC: "2026-05-01T00:00:00Z".
    pub start: String,
    /// How long, in days: above 0, at most 3660.
    pub days: f64,
    /// Hours between two rows of the answer, 0.05 to 720; 6 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub every_h: Option<f64>,
    /// How finely space is cut; "spatial" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub model: Option<ModelFile>,
    /// Of the spatial model: at most so many layers, 1 to 30; 6 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub layers: Option<u32>,
    /// Of the spatial model: rings from core to wall, 1 to 20; 4 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rings: Option<u32>,
    /// What holds the heap.
    pub enclosure: EnclosureFile,
    /// The air around it.
    pub weather: WeatherFile,
    /// What is done, 1 to 20,000 entries with at most 5,000 feeds, in any order; what is done on
    /// one day is done in the order in which it stands.
    pub events: Vec<EventFile>,
    /// Asks for bands over an ensemble of runs with parameters and weather drawn from what is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ensemble: Option<EnsembleFile>,
    /// Days at which the cross-section is wanted, at most 400; it is that of the nearest row.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fields_at_d: Vec<f64>,
    /// The garden's own measures, materials and measurements.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub garden: Option<GardenFile>,
}

/// How finely space is cut.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum ModelFile {
    /// Layers by rings.
    #[default]
    Spatial,
    /// One cell for the whole heap.
    Lumped,
}

/// What holds the heap.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct EnclosureFile {
    /// Its outline; "box" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shape: Option<ShapeFile>,
    /// Width, or diameter [m], 0.05 to 20.
    pub width_m: f64,
    /// Depth [m], 0.05 to 200; as the width when left out, and for round shapes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth_m: Option<f64>,
    /// Height to the brim [m], 0.05 to 10; the length of a drum.
    pub height_m: f64,
    /// Its sides; "open" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<WallFile>,
    /// What lies on top; "none" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cover: Option<CoverFile>,
    /// What it stands on; "soil" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ground: Option<GroundFile>,
    /// Measured loss of heat of a vessel [W/K], in place of what its walls suggest.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat_loss_w_per_k: Option<f64>,
    /// Air blown in from below [kg/d], in place of natural draught.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub forced_air_kg_per_d: Option<f64>,
}

/// Outline of the heap.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum ShapeFile {
    /// Upright walls on a rectangle.
    #[default]
    Box,
    /// Upright and round.
    Cylinder,
    /// Free-standing.
    Cone,
    /// A closed drum.
    Drum,
}

/// What the sides are made of.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum WallFile {
    /// Nothing.
    #[default]
    Open,
    /// Wire mesh.
    Mesh,
    /// Boards with gaps.
    Slatted,
    /// Boards without gaps.
    Wood,
    /// Plastic with vents.
    Plastic,
    /// Sheet metal with vents.
    Metal,
    /// Double walls with foam.
    Insulated,
}

/// What lies on top.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum CoverFile {
    /// Nothing.
    #[default]
    None,
    /// A sheet that lies on it.
    Sheet,
    /// A lid.
    Lid,
    /// A roof at some height.
    Roof,
}

/// What it stands on.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum GroundFile {
    /// Earth.
    #[default]
    Soil,
    /// Slabs.
    Paving,
}

/// The air around the heap: exactly one of `constant`, `csv`, `hours` and `climate`; `csv` may come
/// with a climate for what the file does not cover.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct WeatherFile {
    /// Always the same.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub constant: Option<ConstantFile>,
    /// A file of hourly or daily weather, named from the folder of this one. Times without an
    /// offset are read with the offset of `start`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub csv: Option<String>,
    /// Hour by hour from the start on, enough for all days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<Vec<HourFile>>,
    /// What is usual at a place; members of an ensemble have weather drawn around it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub climate: Option<ClimateFile>,
}

/// Weather that is always the same.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct ConstantFile {
    /// Air temperature [degC], -60 to 60.
    pub air_temperature_c: f64,
    /// Relative humidity, 0 to 1; 0.7 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub relative_humidity: Option<f64>,
    /// Rain [mm/d], 0 to 2000; none when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rain_mm_per_d: Option<f64>,
    /// Wind [m/s], 0 to 60; 1.25 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wind_m_s: Option<f64>,
    /// Sun on level ground [W/m2], 0 to 1400; none when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub solar_w_m2: Option<f64>,
    /// Cloud cover, 0 to 1; 1 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cloud_cover: Option<f64>,
    /// Temperature of the ground [degC], -60 to 60; two degrees below the air when left out, and as
    /// the air around a vessel of measured loss of heat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ground_temperature_c: Option<f64>,
}

/// The weather of an hour.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct HourFile {
    /// Air temperature at the start of the hour [degC], -60 to 60.
    pub air_temperature_c: f64,
    /// Relative humidity, 0 to 1; 0.7 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub relative_humidity: Option<f64>,
    /// Rain of the hour [mm], 0 to 400; none when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rain_mm: Option<f64>,
    /// Wind [m/s], 0 to 60; 1.25 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wind_m_s: Option<f64>,
    /// Sun on level ground [W/m2], 0 to 1400; none when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub solar_w_m2: Option<f64>,
    /// Cloud cover, 0 to 1; 1 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cloud_cover: Option<f64>,
}

/// What is usual at a place: a guess from where it lies, or better with the keeper's own figures.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct ClimateFile {
    /// Latitude [deg], north above 0.
    pub latitude_deg: f64,
    /// Longitude [deg], east above 0; 0 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub longitude_deg: Option<f64>,
    /// Height above the sea [m]; 0 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub elevation_m: Option<f64>,
    /// How far the sea tempers it; "between" when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub setting: Option<SettingFile>,
    /// Mean temperature of each month, January first [degC].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub months_c: Option<[f64; 12]>,
    /// Mean temperature of the coldest month [degC].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coldest_month_c: Option<f64>,
    /// Mean temperature of the warmest month [degC].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warmest_month_c: Option<f64>,
    /// Rain of each month, January first [mm].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rain_mm: Option<[f64; 12]>,
}

/// How far the sea tempers the weather.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SettingFile {
    /// Mild winters and cool summers.
    Coast,
    /// Neither.
    #[default]
    Between,
    /// Cold winters and hot summers.
    Inland,
}

/// Something that is done on a day: exactly one of `feed`, `turn`, `cover` and `remove`, or
/// `water_l` alone; `water_l` may also come with a feed or a turn.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct EventFile {
    /// Days after the start, 0 to 3660; what lies behind the end is left out.
    pub day: f64,
    /// What is put on top, 1 to 200 parts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feed: Option<Vec<FedFile>>,
    /// How warm the feed is [degC], -30 to 90; as the air when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<f64>,
    /// Water that is given [L], 0 to 100,000.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water_l: Option<f64>,
    /// The heap is turned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turn: Option<TurnFile>,
    /// What lies on top from then on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cover: Option<CoverFile>,
    /// Some is taken out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub remove: Option<RemoveFile>,
}

/// One part of a feed: as a part of a mixture, and what is told of how it decays.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct FedFile {
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
    /// Wet bulk density: of a mass, as it lies in the heap; of a volume, as it lay in the vessel.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<f64>,
    /// Share of the volatile solids that decays within days, 0 to 1: sugars, starch, protein, fat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rapid_fraction_vs: Option<f64>,
    /// Share that decays within weeks: cellulose and hemicellulose within reach.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moderate_fraction_vs: Option<f64>,
    /// Share that decays within a year or more: lignin and what it hides.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slow_fraction_vs: Option<f64>,
    /// Size of the pieces [mm], 0.1 to 1000.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub particle_mm: Option<f64>,
}

/// How the heap is turned.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct TurnFile {
    /// 0 nothing moved, 1 all alike; 1 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thoroughness: Option<f64>,
}

/// What is taken out.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct RemoveFile {
    /// Share of the volume, percent, 0 to 95.
    pub share_pct: f64,
    /// True when it is taken from the bottom upward, as through a hatch; evenly when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_below: Option<bool>,
}

/// An ensemble of runs.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct EnsembleFile {
    /// How many members, 1 to 1000.
    pub members: u32,
    /// How finely space is cut for them; as for the line when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub model: Option<ModelFile>,
    /// Which chance is taken: another number gives other members.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seed: Option<u32>,
}
