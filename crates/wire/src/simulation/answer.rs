//! What comes of a heap as JSON: series, figures, closure, bands, cross-sections.

use heapwright_answers::heap::{Band, Bands, CellField, Snapshot, Summary};
use heapwright_answers::{FieldsAt, SimulationAnswer, SimulationNotice, Spread};
use heapwright_catalogue::Catalogue;
use heapwright_texts::Locale;
use heapwright_wording as wording;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;

/// What `heapwright simulate` answers: series with one entry a row.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct SimulationJson {
    /// Days after the start.
    pub time_d: Vec<f64>,
    /// Hottest place along the core [degC].
    pub core_temperature_c: Vec<f64>,
    /// Mean by mass [degC].
    pub mean_temperature_c: Vec<f64>,
    /// Mean of the outermost ring [degC].
    pub edge_temperature_c: Vec<f64>,
    /// The air outside [degC].
    pub air_temperature_c: Vec<f64>,
    /// Lowest oxygen of all places, percent of the pore gas.
    pub lowest_oxygen_pct: Vec<f64>,
    /// Water, percent of the wet mass.
    pub moisture_pct: Vec<f64>,
    /// Acidity, mean by mass.
    pub ph: Vec<f64>,
    /// Volume [m3].
    pub volume_m3: Vec<f64>,
    /// Height [m].
    pub height_m: Vec<f64>,
    /// Everything together [kg].
    pub wet_mass_kg: Vec<f64>,
    /// Dry matter [kg].
    pub dry_mass_kg: Vec<f64>,
    /// Carbon over nitrogen, elemental carbon; null without nitrogen.
    pub cn_ratio: Vec<Option<f64>>,
    /// Oxygen that is taken [mg per g of volatile solids and hour].
    pub oxygen_uptake_mg_per_g_vs_h: Vec<f64>,
    /// Water that is wanted for 55 % moisture, below 0 what is above 65 % [L].
    pub water_wanted_l: Vec<f64>,
    /// Figures of the whole.
    pub summary: SummaryJson,
    /// How well the books close, as relative errors.
    pub closure: ClosureJson,
    /// The cross-sections that were asked for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fields: Vec<FieldsJson>,
    /// Bands over the ensemble, when one was asked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bands: Option<BandsJson>,
    /// Figures over the ensemble.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ensemble: Option<EnsembleJson>,
    /// The report in sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sentences: Vec<String>,
    /// What to know about the answer, as sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notices: Vec<String>,
}

/// Figures of a run.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct SummaryJson {
    /// Highest core temperature [degC].
    pub peak_core_temperature_c: f64,
    /// Highest mean temperature [degC].
    pub peak_mean_temperature_c: f64,
    /// Day of the core's peak.
    pub peak_day: f64,
    /// Days with the core at 55 degC or more.
    pub days_core_at_or_above_55: f64,
    /// Days with the mean at 55 degC or more.
    pub days_mean_at_or_above_55: f64,
    /// Volatile solids lost of all that was fed, percent.
    pub volatile_solids_loss_pct: f64,
    /// Dry matter lost, percent.
    pub dry_mass_loss_pct: f64,
    /// Wet mass lost, water given and rain counted as put in, percent.
    pub wet_mass_loss_pct: f64,
    /// Volume lost, percent.
    pub volume_loss_pct: f64,
    /// Carbon lost, percent.
    pub carbon_loss_pct: f64,
    /// Nitrogen lost, percent.
    pub nitrogen_loss_pct: f64,
    /// Of it as ammonia, percent of the nitrogen fed.
    pub ammonia_loss_pct: f64,
    /// Methane of the carbon lost, percent; good to a factor of ten.
    pub methane_share_of_carbon_loss_pct: f64,
    /// Nitrous oxide, nitrogen of nitrogen fed, percent; good to a factor of ten.
    pub nitrous_oxide_loss_pct: f64,
    /// Water that ran out below [L].
    pub leachate_l: f64,
    /// Water that left as vapour [L].
    pub evaporated_l: f64,
    /// Matter that was never at 55 degC, percent; simulated, no record of hygiene.
    pub never_hot_share_pct: f64,
    /// Lowest oxygen, percent.
    pub lowest_oxygen_pct: f64,
    /// When it was lowest [d].
    pub lowest_oxygen_day: f64,
    /// In which layer, from 0 at the ground.
    pub lowest_oxygen_layer: u32,
    /// In which ring, from 0 at the core.
    pub lowest_oxygen_ring: u32,
    /// Days on which some part had less than 2 % oxygen.
    pub days_with_sour_part: f64,
    /// Highest oxygen uptake [mg per g of volatile solids and hour].
    pub peak_oxygen_uptake_mg_per_g_vs_h: f64,
    /// Water wanted at the end, below 0 what is too much [L].
    pub water_wanted_l: f64,
    /// Day from which it counts as ready; null when it does not.
    pub ready_day: Option<f64>,
}

/// Relative errors of the books.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ClosureJson {
    /// Of carbon.
    pub carbon: f64,
    /// Of nitrogen.
    pub nitrogen: f64,
    /// Of water.
    pub water: f64,
    /// Of ash and minerals, the worst.
    pub ash: f64,
    /// Of heat.
    pub energy: f64,
    /// Of everything that weighs.
    pub mass: f64,
    /// Of oxygen, which is solved for and not summed.
    pub oxygen: f64,
}

/// The cross-section at one time.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct FieldsJson {
    /// Days after the start.
    pub time_d: f64,
    /// The cells.
    pub cells: Vec<CellJson>,
}

/// One cell of the cross-section.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct CellJson {
    /// Layer, from 0 at the ground.
    pub layer: u32,
    /// Ring, from 0 at the core.
    pub ring: u32,
    /// Temperature [degC].
    pub temperature_c: f64,
    /// Oxygen, percent of the pore gas.
    pub oxygen_pct: f64,
    /// Water, percent of the wet mass.
    pub moisture_pct: f64,
    /// Acidity.
    pub ph: f64,
    /// Air-filled share of the volume, percent.
    pub air_space_pct: f64,
    /// Dry matter [kg].
    pub dry_mass_kg: f64,
    /// Volume [m3].
    pub volume_m3: f64,
    /// Share of the dry matter gone, percent.
    pub decayed_pct: f64,
}

/// Where the runs of an ensemble lie.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BandJson {
    /// One run in twenty lies below.
    pub low: f64,
    /// One in four lies below.
    pub lower: f64,
    /// Half lie below.
    pub median: f64,
    /// One in four lies above.
    pub upper: f64,
    /// One in twenty lies above.
    pub high: f64,
}

/// Bands over time, with one entry a row; rows may lie further apart than those of the line.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BandsJson {
    /// Days after the start.
    pub time_d: Vec<f64>,
    /// Core temperature [degC].
    pub core_temperature_c: Vec<BandJson>,
    /// Mean temperature [degC].
    pub mean_temperature_c: Vec<BandJson>,
    /// Moisture, percent of the wet mass.
    pub moisture_pct: Vec<BandJson>,
    /// Volume [m3].
    pub volume_m3: Vec<BandJson>,
}

/// Figures over an ensemble; of a forecast, those from now on.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct EnsembleJson {
    /// Runs that could be computed.
    pub members: u32,
    /// Highest core temperature [degC].
    pub peak_core_temperature_c: BandJson,
    /// Day of it.
    pub peak_day: BandJson,
    /// Days with the core at 55 degC or more.
    pub days_core_at_or_above_55: BandJson,
    /// Runs in which some part is short of air for a day or more, percent.
    pub sour_pct: f64,
    /// Water wanted at the end, below 0 what is too much [L].
    pub water_wanted_l: BandJson,
    /// Volume at the end [m3].
    pub volume_m3: BandJson,
    /// Runs that are ready by the end, percent.
    pub ready_pct: f64,
    /// Day on which those are ready; null when none is.
    pub ready_day: Option<BandJson>,
    /// Volatile solids lost over the whole, percent.
    pub volatile_solids_loss_pct: BandJson,
    /// Nitrogen lost over the whole, percent.
    pub nitrogen_loss_pct: BandJson,
}

/// A C:N above this is one of hardly any nitrogen.
const MOST_CN_RATIO: f64 = 1e5;

fn small(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

fn band(of: Band, per: f64) -> BandJson {
    BandJson {
        low: of.low * per,
        lower: of.lower * per,
        median: of.median * per,
        upper: of.upper * per,
        high: of.high * per,
    }
}

/// The answer of a free-standing case.
#[must_use]
pub fn simulation_json(catalogue: &Catalogue, answer: &SimulationAnswer) -> SimulationJson {
    let mut json = bare(answer);
    json.sentences = wording::simulation_lines(answer, Locale::default());
    json.notices = notices(catalogue, &answer.notices);
    json
}

pub(super) fn notices(catalogue: &Catalogue, all: &[SimulationNotice]) -> Vec<String> {
    all.iter()
        .map(|notice| wording::simulation_notice(catalogue, notice, ENGLISH))
        .collect()
}

pub(super) fn bare(answer: &SimulationAnswer) -> SimulationJson {
    let of =
        |figure: fn(&Snapshot) -> f64| -> Vec<f64> { answer.series.iter().map(figure).collect() };
    SimulationJson {
        time_d: of(|row| row.time_d),
        core_temperature_c: of(|row| row.core_temperature_c),
        mean_temperature_c: of(|row| row.mean_temperature_c),
        edge_temperature_c: of(|row| row.edge_temperature_c),
        air_temperature_c: of(|row| row.air_temperature_c),
        lowest_oxygen_pct: of(|row| row.lowest_oxygen_pct),
        moisture_pct: of(|row| row.moisture * 100.0),
        ph: of(|row| row.ph),
        volume_m3: of(|row| row.volume_m3),
        height_m: of(|row| row.height_m),
        wet_mass_kg: of(|row| row.wet_mass_kg),
        dry_mass_kg: of(|row| row.dry_mass_kg),
        cn_ratio: answer
            .series
            .iter()
            .map(|row| Some(row.carbon_to_nitrogen).filter(|ratio| *ratio <= MOST_CN_RATIO))
            .collect(),
        oxygen_uptake_mg_per_g_vs_h: of(|row| row.oxygen_uptake_mg_per_g_vs_h),
        water_wanted_l: of(|row| row.water_wanted_l),
        summary: summary(&answer.summary, answer.series.last()),
        closure: closure(&answer.summary),
        fields: answer.fields.iter().map(fields).collect(),
        bands: answer.bands.as_ref().map(bands),
        ensemble: answer
            .spread
            .as_ref()
            .zip(answer.bands.as_ref())
            .map(|(spread, bands)| ensemble(spread, bands)),
        sentences: Vec::new(),
        notices: Vec::new(),
    }
}

fn summary(of: &Summary, last: Option<&Snapshot>) -> SummaryJson {
    SummaryJson {
        peak_core_temperature_c: of.peak_core_temperature_c,
        peak_mean_temperature_c: of.peak_mean_temperature_c,
        peak_day: of.peak_day,
        days_core_at_or_above_55: of.days_core_at_or_above_55,
        days_mean_at_or_above_55: of.days_mean_at_or_above_55,
        volatile_solids_loss_pct: of.volatile_solids_loss_pct,
        dry_mass_loss_pct: of.dry_mass_loss_pct,
        wet_mass_loss_pct: of.wet_mass_loss_pct,
        volume_loss_pct: of.volume_loss_pct,
        carbon_loss_pct: of.carbon_loss_pct,
        nitrogen_loss_pct: of.nitrogen_loss_pct,
        ammonia_loss_pct: of.ammonia_loss_pct,
        methane_share_of_carbon_loss_pct: of.methane_share_of_carbon_loss_pct,
        nitrous_oxide_loss_pct: of.nitrous_oxide_loss_pct,
        leachate_l: of.leachate_l,
        evaporated_l: of.evaporated_l,
        never_hot_share_pct: of.never_hot_share_pct,
        lowest_oxygen_pct: of.lowest_oxygen_pct,
        lowest_oxygen_day: of.lowest_oxygen_day,
        lowest_oxygen_layer: small(of.lowest_oxygen_layer),
        lowest_oxygen_ring: small(of.lowest_oxygen_ring),
        days_with_sour_part: of.days_with_sour_part,
        peak_oxygen_uptake_mg_per_g_vs_h: of.peak_uptake_mg_per_g_vs_h,
        water_wanted_l: last.map_or(0.0, |row| row.water_wanted_l),
        ready_day: of.ready_day,
    }
}

fn closure(of: &Summary) -> ClosureJson {
    let of = &of.closure;
    ClosureJson {
        carbon: of.carbon,
        nitrogen: of.nitrogen,
        water: of.water,
        ash: of.ash,
        energy: of.energy,
        mass: of.mass,
        oxygen: of.oxygen,
    }
}

fn fields(at: &FieldsAt) -> FieldsJson {
    let cell = |cell: &CellField| CellJson {
        layer: small(cell.layer),
        ring: small(cell.ring),
        temperature_c: cell.temperature_c,
        oxygen_pct: cell.oxygen_pct,
        moisture_pct: cell.moisture * 100.0,
        ph: cell.ph,
        air_space_pct: cell.air_space * 100.0,
        dry_mass_kg: cell.dry_mass_kg,
        volume_m3: cell.volume_m3,
        decayed_pct: cell.decayed * 100.0,
    };
    FieldsJson {
        time_d: at.time_d,
        cells: at.cells.iter().map(cell).collect(),
    }
}

fn bands(of: &Bands) -> BandsJson {
    let all = |bands: &[Band], per: f64| bands.iter().map(|one| band(*one, per)).collect();
    BandsJson {
        time_d: of.time_d.clone(),
        core_temperature_c: all(&of.core_temperature_c, 1.0),
        mean_temperature_c: all(&of.mean_temperature_c, 1.0),
        moisture_pct: all(&of.moisture, 100.0),
        volume_m3: all(&of.volume_m3, 1.0),
    }
}

fn ensemble(spread: &Spread, bands: &Bands) -> EnsembleJson {
    EnsembleJson {
        members: spread.members,
        peak_core_temperature_c: band(spread.peak_core_temperature_c, 1.0),
        peak_day: band(spread.peak_day, 1.0),
        days_core_at_or_above_55: band(spread.days_hot, 1.0),
        sour_pct: spread.sour_share * 100.0,
        water_wanted_l: band(spread.water_wanted_l, 1.0),
        volume_m3: band(spread.volume_m3, 1.0),
        ready_pct: spread.ready_share * 100.0,
        ready_day: spread.ready_day.map(|day| band(day, 1.0)),
        volatile_solids_loss_pct: band(bands.of(|one| one.volatile_solids_loss_pct), 1.0),
        nitrogen_loss_pct: band(bands.of(|one| one.nitrogen_loss_pct), 1.0),
    }
}
