//! The answers as JSON: every figure with its value and its 80 % interval.

use heapwright_answers::{
    Added, BalanceAnswer, CALCIUM_OXIDE_OVER_CALCIUM, Limit, MAGNESIUM_OXIDE_OVER_MAGNESIUM,
    MixAnswer, Mixture, Nutrient, Objective, PHOSPHATE_OVER_PHOSPHORUS, POTASH_OVER_POTASSIUM,
    RecipeAnswer, RecipeKind, Status,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::FoundPart;
use heapwright_quantity::{Interval, Range};
use heapwright_terms::{Degradability, Evidence, FigureGroup, Material};
use heapwright_texts::Locale;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;

/// A computed figure. All three are null when it cannot be told, as the C:N of pure sugar.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct FigureJson {
    /// At the typical values of all that goes in.
    pub value: Option<f64>,
    /// One case in ten is expected below this.
    pub low: Option<f64>,
    /// One case in ten is expected above this.
    pub high: Option<f64>,
}

impl FigureJson {
    const UNKNOWN: Self = Self {
        value: None,
        low: None,
        high: None,
    };

    pub(crate) fn of(interval: Interval, per: f64) -> Self {
        Self {
            value: Some(interval.value * per),
            low: Some(interval.low * per),
            high: Some(interval.high * per),
        }
    }

    pub(crate) fn maybe(interval: Option<Interval>, per: f64) -> Self {
        interval.map_or(Self::UNKNOWN, |interval| Self::of(interval, per))
    }
}

/// A nutrient, and for how much of the mixture it is known.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct NutrientJson {
    /// Mass of the element [kg]; null when it is known for no part.
    pub value: Option<f64>,
    /// One case in ten is expected below this.
    pub low: Option<f64>,
    /// One case in ten is expected above this.
    pub high: Option<f64>,
    /// Share of the dry matter for which it is known, percent.
    pub known_pct_of_dry_matter: f64,
}

impl NutrientJson {
    fn of(nutrient: &Nutrient, per: f64) -> Self {
        let figure = FigureJson::maybe(nutrient.mass_kg, per);
        Self {
            value: figure.value,
            low: figure.low,
            high: figure.high,
            known_pct_of_dry_matter: nutrient.known_share_of_dry_matter * 100.0,
        }
    }
}

/// The chance to lie within each kind of limit, 0 to 1.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ChanceJson {
    /// C:N.
    pub cn_ratio: f64,
    /// Moisture.
    pub moisture: f64,
    /// Free air space; null when the volume is not known.
    pub free_air_space: Option<f64>,
}

/// A part as it was understood.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct PartJson {
    /// Name to show.
    pub name: String,
    /// Id of the material; null for a custom one.
    pub material: Option<String>,
    /// Ids of the conditions it is in.
    pub conditions: Vec<String>,
    /// How much was said, as it was understood.
    pub amount: String,
    /// Its mass at typical values [kg].
    pub wet_mass_kg: f64,
    /// Its dry matter at typical values [kg].
    pub dry_mass_kg: f64,
    /// Its carbon at typical values, handbook scale [kg].
    pub carbon_kg: f64,
    /// Its nitrogen at typical values [kg].
    pub nitrogen_kg: f64,
    /// What to beware of with it.
    pub cautions: Vec<String>,
}

/// What `heapwright mix` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct MixJson {
    /// Mass as it lies, added water included [kg].
    pub wet_mass_kg: FigureJson,
    /// Dry matter [kg].
    pub dry_mass_kg: FigureJson,
    /// Water [kg].
    pub water_kg: FigureJson,
    /// Volume before settling [L]; null when a density is not known.
    pub volume_l: FigureJson,
    /// Carbon that counts, handbook scale [kg].
    pub carbon_kg: FigureJson,
    /// Nitrogen [kg].
    pub nitrogen_kg: FigureJson,
    /// Carbon to nitrogen, ratio of masses, handbook scale; null without nitrogen.
    pub cn_ratio: FigureJson,
    /// The same on measured (elemental) carbon, where it is known.
    pub cn_ratio_measured_carbon: FigureJson,
    /// The scale of `carbon_kg` and `cn_ratio`.
    pub carbon_scale: String,
    /// Moisture, percent of the wet mass.
    pub moisture_pct: FigureJson,
    /// Bulk density, wet [kg/m3].
    pub bulk_density_kg_m3: FigureJson,
    /// Free air space, percent of the volume.
    pub free_air_space_pct: FigureJson,
    /// Biodegradable share, percent of dry matter.
    pub biodegradable_pct_dry: FigureJson,
    /// Phosphorus, the element.
    pub phosphorus_kg: NutrientJson,
    /// Potassium, the element.
    pub potassium_kg: NutrientJson,
    /// Calcium, the element.
    pub calcium_kg: NutrientJson,
    /// Magnesium, the element.
    pub magnesium_kg: NutrientJson,
    /// Sodium, the element.
    pub sodium_kg: NutrientJson,
    /// Sodium counted as common salt.
    pub salt_kg: NutrientJson,
    /// Phosphorus counted as P2O5, as labels have it.
    pub phosphate_kg: NutrientJson,
    /// Potassium counted as K2O, as labels have it.
    pub potash_kg: NutrientJson,
    /// Calcium counted as CaO, as labels have it.
    pub calcium_oxide_kg: NutrientJson,
    /// Magnesium counted as MgO, as labels have it.
    pub magnesium_oxide_kg: NutrientJson,
    /// Chance to lie in the target region, 0 to 1.
    pub chance_in_target: f64,
    /// The same by kind of limit.
    pub chance: ChanceJson,
    /// The parts as they were understood.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub parts: Vec<PartJson>,
    /// What to know about the answer, as sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notices: Vec<String>,
}

/// One addition of a recipe.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct AddedJson {
    /// Name to show.
    pub name: String,
    /// Id of the material; null for a custom one.
    pub material: Option<String>,
    /// Place in the question's `reach`, from 0.
    pub reach: usize,
    /// How heavy it is at typical values [kg].
    pub mass_kg: f64,
    /// The mass with its interval [kg].
    pub mass_range_kg: FigureJson,
    /// How much, in what it is handed out.
    pub amount: String,
    /// What to beware of with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<String>,
}

/// A recipe and what comes of it.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct RecipeJson {
    /// Why it is offered: an objective, "without", "sparing" or "nearest".
    pub kind: String,
    /// The recipe in a sentence.
    pub sentence: String,
    /// What to add; nothing that is not used.
    pub add: Vec<AddedJson>,
    /// Water to add [kg].
    pub water_kg: f64,
    /// What comes of it.
    pub result: MixJson,
    /// True when it is known to be the best by its objective.
    pub proven: bool,
}

/// A limit that the nearest mixture misses.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct MissJson {
    /// Which one: the field of the target, with `_low` or `_high`.
    pub limit: String,
    /// What was asked.
    pub asked: f64,
    /// What the nearest mixture has; null for a C:N without nitrogen.
    pub reached: Option<f64>,
    /// How far it lies beyond the limit.
    pub short_by: Option<f64>,
    /// The same as a sentence.
    pub sentence: String,
}

/// What stands in the way of the target.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ConflictJson {
    /// The whole in a sentence.
    pub sentence: String,
    /// The limits that the nearest mixture misses.
    pub limits: Vec<MissJson>,
    /// Limits each of which, dropped alone, would let all others be met.
    pub any_one_dropped_would_do: Vec<String>,
    /// True when parts of the whole steps would do.
    pub parts_of_steps_would_do: bool,
    /// What would help, as sentences.
    pub help: Vec<String>,
    /// The nearest mixture that can be had.
    pub nearest: RecipeJson,
}

/// What `heapwright balance` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BalanceJson {
    /// "met" or "not_met".
    pub status: String,
    /// What is in hand, by itself; absent when there is nothing in hand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_hand: Option<MixJson>,
    /// The recipes, best first; none when the target is not met.
    pub recipes: Vec<RecipeJson>,
    /// What stands in the way; absent when the target is met.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub conflict: Option<ConflictJson>,
}

/// What is known of a material.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct MaterialJson {
    /// Id, for files.
    pub id: String,
    /// Name to show.
    pub name: String,
    /// What else people call it.
    pub other_names: Vec<String>,
    /// Group it belongs to.
    pub group: String,
    /// How readily it rots.
    pub degradability: String,
    /// How well the figures are founded.
    pub evidence: String,
    /// Moisture, percent of the mass as found.
    pub moisture_pct: Option<RangeJson>,
    /// Nitrogen, percent of dry matter.
    pub nitrogen_pct_dry: Option<RangeJson>,
    /// Carbon to nitrogen on measured carbon, as in the table.
    pub cn_ratio_measured_carbon: Option<RangeJson>,
    /// Typical carbon to nitrogen on the handbook scale, as in all answers; null where it is not counted.
    pub cn_ratio: Option<f64>,
    /// Bulk density as it lies, wet.
    pub bulk_density_kg_m3: Option<RangeJson>,
    /// Ash, percent of dry matter.
    pub ash_pct_dry: Option<f64>,
    /// Lignin, percent of dry matter.
    pub lignin_pct_dry: Option<f64>,
    /// Cellulose, percent of dry matter.
    pub cellulose_pct_dry: Option<f64>,
    /// Hemicellulose, percent of dry matter.
    pub hemicellulose_pct_dry: Option<f64>,
    /// Phosphorus, percent of dry matter.
    pub phosphorus_pct_dry: Option<f64>,
    /// Potassium, percent of dry matter.
    pub potassium_pct_dry: Option<f64>,
    /// Calcium, percent of dry matter.
    pub calcium_pct_dry: Option<f64>,
    /// Magnesium, percent of dry matter.
    pub magnesium_pct_dry: Option<f64>,
    /// Sodium, percent of dry matter.
    pub sodium_pct_dry: Option<f64>,
    /// pH.
    pub ph: Option<f64>,
    /// What to beware of, as sentences.
    pub cautions: Vec<String>,
    /// Sources by group of figures.
    pub sources: Vec<SourceJson>,
    /// Remarks on the figures.
    pub notes: String,
}

/// A figure of the table.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct RangeJson {
    /// Lowest found in practice.
    pub low: f64,
    /// Typical.
    pub typical: f64,
    /// Highest found in practice.
    pub high: f64,
}

/// A source of some figures of a material.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct SourceJson {
    /// Which figures.
    pub figures: String,
    /// Key of the source.
    pub key: String,
    /// Author, year, title, publisher.
    pub citation: String,
    /// Where it can be found.
    pub address: String,
}

/// Common salt for the sodium in it: the molar masses 58.44 over 22.99. Source: IUPAC atomic weights.
const SALT_OVER_SODIUM: f64 = 58.44 / 22.99;

fn figures(mixture: &Mixture) -> MixJson {
    MixJson {
        wet_mass_kg: FigureJson::of(mixture.wet_mass_kg, 1.0),
        dry_mass_kg: FigureJson::of(mixture.dry_mass_kg, 1.0),
        water_kg: FigureJson::of(mixture.water_kg, 1.0),
        volume_l: FigureJson::maybe(mixture.volume_m3, 1000.0),
        carbon_kg: FigureJson::of(mixture.carbon_kg, 1.0),
        nitrogen_kg: FigureJson::of(mixture.nitrogen_kg, 1.0),
        cn_ratio: FigureJson::maybe(mixture.carbon_to_nitrogen, 1.0),
        cn_ratio_measured_carbon: FigureJson::maybe(mixture.carbon_to_nitrogen_measured, 1.0),
        carbon_scale: "handbook: volatile solids / 1.8; stated carbon as stated".to_owned(),
        moisture_pct: FigureJson::of(mixture.moisture_wet_basis, 100.0),
        bulk_density_kg_m3: FigureJson::maybe(mixture.bulk_density_kg_m3, 1.0),
        free_air_space_pct: FigureJson::maybe(mixture.free_air_space, 100.0),
        biodegradable_pct_dry: FigureJson::of(mixture.biodegradable_dry_basis, 100.0),
        phosphorus_kg: NutrientJson::of(&mixture.phosphorus, 1.0),
        potassium_kg: NutrientJson::of(&mixture.potassium, 1.0),
        calcium_kg: NutrientJson::of(&mixture.calcium, 1.0),
        magnesium_kg: NutrientJson::of(&mixture.magnesium, 1.0),
        sodium_kg: NutrientJson::of(&mixture.sodium, 1.0),
        salt_kg: NutrientJson::of(&mixture.sodium, SALT_OVER_SODIUM),
        phosphate_kg: NutrientJson::of(&mixture.phosphorus, PHOSPHATE_OVER_PHOSPHORUS),
        potash_kg: NutrientJson::of(&mixture.potassium, POTASH_OVER_POTASSIUM),
        calcium_oxide_kg: NutrientJson::of(&mixture.calcium, CALCIUM_OXIDE_OVER_CALCIUM),
        magnesium_oxide_kg: NutrientJson::of(&mixture.magnesium, MAGNESIUM_OXIDE_OVER_MAGNESIUM),
        chance_in_target: mixture.chance.all,
        chance: ChanceJson {
            cn_ratio: mixture.chance.carbon_to_nitrogen,
            moisture: mixture.chance.moisture,
            free_air_space: mixture.chance.free_air_space,
        },
        parts: Vec::new(),
        notices: Vec::new(),
    }
}

fn cautions(catalogue: &Catalogue, found: &FoundPart) -> Vec<String> {
    found
        .material
        .as_ref()
        .map_or_else(Vec::new, |material| caution_lines(catalogue, material))
}

fn caution_lines(catalogue: &Catalogue, material: &Material) -> Vec<String> {
    catalogue
        .cautions_for(material)
        .into_iter()
        .map(heapwright_wording::caution_line)
        .collect()
}

fn amount(catalogue: &Catalogue, found: &FoundPart) -> String {
    // JSON is for programs: plain spaces, metric.
    heapwright_wording::amount_text(catalogue, &found.amount, Locale::default())
        .replace('\u{a0}', " ")
}

/// The answer of a mixture as JSON.
#[must_use]
pub fn mix_json(catalogue: &Catalogue, answer: &MixAnswer) -> MixJson {
    let mut json = figures(&answer.mixture);
    json.parts = answer
        .parts
        .iter()
        .zip(&answer.brought)
        .map(|(found, brought)| PartJson {
            name: found.name.clone(),
            material: found
                .material
                .as_ref()
                .map(|material| material.id.as_str().to_owned()),
            conditions: found.conditions.clone(),
            amount: amount(catalogue, found),
            wet_mass_kg: brought.wet_mass_kg,
            dry_mass_kg: brought.dry_mass_kg,
            carbon_kg: brought.carbon_kg,
            nitrogen_kg: brought.nitrogen_kg,
            cautions: cautions(catalogue, found),
        })
        .collect();
    json.notices = answer
        .notices
        .iter()
        .map(|notice| heapwright_wording::mix_notice(catalogue, notice, ENGLISH))
        .collect();
    json
}

/// The answer of a balance as JSON.
#[must_use]
pub fn balance_json(catalogue: &Catalogue, answer: &BalanceAnswer) -> BalanceJson {
    let recipe = |recipe: &RecipeAnswer| recipe_json(catalogue, recipe);
    let in_hand = answer
        .in_hand
        .as_ref()
        .map(|answer| mix_json(catalogue, answer));
    match (answer.status, &answer.conflict, answer.recipes.first()) {
        (Status::NotMet, Some(conflict), Some(nearest)) => BalanceJson {
            status: "not_met".to_owned(),
            in_hand,
            recipes: Vec::new(),
            conflict: Some(ConflictJson {
                sentence: heapwright_wording::conflict_line(conflict, ENGLISH),
                limits: conflict
                    .misses
                    .iter()
                    .map(|miss| {
                        let per = per(miss.limit);
                        MissJson {
                            limit: limit_key(miss.limit).to_owned(),
                            asked: miss.asked * per,
                            reached: miss.reached.map(|reached| reached * per),
                            short_by: miss.short_by().map(|short| short * per),
                            sentence: heapwright_wording::miss_line(miss, ENGLISH),
                        }
                    })
                    .collect(),
                any_one_dropped_would_do: conflict
                    .any_one_dropped_would_do
                    .iter()
                    .map(|limit| limit_key(*limit).to_owned())
                    .collect(),
                parts_of_steps_would_do: conflict.parts_of_units_would_do,
                help: conflict
                    .help
                    .iter()
                    .map(|help| heapwright_wording::help_line(*help, ENGLISH).to_owned())
                    .collect(),
                nearest: recipe(nearest),
            }),
        },
        _ => BalanceJson {
            status: "met".to_owned(),
            in_hand,
            recipes: answer.recipes.iter().map(recipe).collect(),
            conflict: None,
        },
    }
}

fn recipe_json(catalogue: &Catalogue, recipe: &RecipeAnswer) -> RecipeJson {
    let mut result = figures(&recipe.whole.mixture);
    result.notices = recipe
        .whole
        .notices
        .iter()
        .map(|notice| heapwright_wording::mix_notice(catalogue, notice, ENGLISH))
        .collect();
    RecipeJson {
        kind: kind_key(recipe.kind).to_owned(),
        sentence: heapwright_wording::recipe_line(catalogue, recipe, Locale::default())
            .replace('\u{a0}', " "),
        add: recipe
            .added
            .iter()
            .map(|added| added_json(catalogue, added))
            .collect(),
        water_kg: recipe.whole.water_kg,
        result,
        proven: recipe.proven,
    }
}

fn added_json(catalogue: &Catalogue, added: &Added) -> AddedJson {
    AddedJson {
        name: added.found.name.clone(),
        material: added
            .found
            .material
            .as_ref()
            .map(|material| material.id.as_str().to_owned()),
        reach: added.reach,
        mass_kg: added.brought.wet_mass_kg,
        mass_range_kg: FigureJson::of(added.mass_kg, 1.0),
        amount: amount(catalogue, &added.found),
        cautions: cautions(catalogue, &added.found),
    }
}

fn kind_key(kind: RecipeKind) -> &'static str {
    match kind {
        RecipeKind::Best(Objective::LeastMass) => "least_mass",
        RecipeKind::Best(Objective::LeastBulk) => "least_bulk",
        RecipeKind::Best(Objective::BestCentred) => "best_centred",
        RecipeKind::Best(Objective::UsePlentiful) => "use_plentiful",
        RecipeKind::Best(Objective::LeastEffort) => "least_effort",
        RecipeKind::Without(_) => "without",
        RecipeKind::Sparing(_) => "sparing",
        RecipeKind::Nearest => "nearest",
    }
}

fn limit_key(limit: Limit) -> &'static str {
    match limit {
        Limit::CarbonToNitrogenLow => "cn_ratio_low",
        Limit::CarbonToNitrogenHigh => "cn_ratio_high",
        Limit::MoistureLow => "moisture_pct_low",
        Limit::MoistureHigh => "moisture_pct_high",
        Limit::FreeAirSpaceLow => "free_air_space_pct_low",
        Limit::FreeAirSpaceHigh => "free_air_space_pct_high",
    }
}

/// Ratios stand as they are, fractions in percent.
fn per(limit: Limit) -> f64 {
    match limit {
        Limit::CarbonToNitrogenLow | Limit::CarbonToNitrogenHigh => 1.0,
        _ => 100.0,
    }
}

/// What is known of a material as JSON.
#[must_use]
pub fn material_json(catalogue: &Catalogue, material: &Material) -> MaterialJson {
    let range = |range: Option<Range>, per: f64| {
        range.map(|range| RangeJson {
            low: range.low * per,
            typical: range.typical * per,
            high: range.high * per,
        })
    };
    let pct = |share: Option<f64>| share.map(|share| share * 100.0);
    MaterialJson {
        id: material.id.as_str().to_owned(),
        name: material.name.clone(),
        other_names: catalogue
            .names(material.id.as_str())
            .iter()
            .map(|name| name.text.clone())
            .collect(),
        group: heapwright_catalogue::group_name(material.group).to_owned(),
        degradability: degradability_name(material.degradability).to_owned(),
        evidence: evidence_name(material.evidence).to_owned(),
        moisture_pct: range(material.moisture_wet_basis, 100.0),
        nitrogen_pct_dry: range(material.nitrogen_dry_basis, 100.0),
        cn_ratio_measured_carbon: range(material.carbon_to_nitrogen_measured, 1.0),
        cn_ratio: heapwright_garden::handbook_carbon_to_nitrogen(catalogue, material),
        bulk_density_kg_m3: range(material.bulk_density_kg_m3, 1.0),
        ash_pct_dry: pct(material.ash_dry_basis),
        lignin_pct_dry: pct(material.lignin_dry_basis),
        cellulose_pct_dry: pct(material.cellulose_dry_basis),
        hemicellulose_pct_dry: pct(material.hemicellulose_dry_basis),
        phosphorus_pct_dry: pct(material.phosphorus_dry_basis),
        potassium_pct_dry: pct(material.potassium_dry_basis),
        calcium_pct_dry: pct(material.calcium_dry_basis),
        magnesium_pct_dry: pct(material.magnesium_dry_basis),
        sodium_pct_dry: pct(material.sodium_dry_basis),
        ph: material.ph,
        cautions: caution_lines(catalogue, material),
        sources: material
            .sources
            .iter()
            .flat_map(|source| {
                source.source_keys.iter().map(|key| {
                    let known = catalogue.source(key);
                    SourceJson {
                        figures: figures_name(source.figures).to_owned(),
                        key: key.clone(),
                        citation: known.map_or_else(String::new, |known| known.citation.clone()),
                        address: known.map_or_else(String::new, |known| known.address.clone()),
                    }
                })
            })
            .collect(),
        notes: material.notes.clone(),
    }
}

fn degradability_name(degradability: Degradability) -> &'static str {
    match degradability {
        Degradability::Fast => "fast",
        Degradability::Medium => "medium",
        Degradability::Slow => "slow",
        Degradability::VerySlow => "very_slow",
        Degradability::Inert => "inert",
    }
}

fn evidence_name(evidence: Evidence) -> &'static str {
    match evidence {
        Evidence::Retrieved => "retrieved",
        Evidence::Mixed => "mixed",
        Evidence::Memory => "memory",
        Evidence::Estimate => "estimate",
        Evidence::Measured => "measured",
    }
}

fn figures_name(figures: FigureGroup) -> &'static str {
    match figures {
        FigureGroup::Nitrogen => "nitrogen",
        FigureGroup::CarbonToNitrogen => "cn_ratio",
        FigureGroup::Carbon => "carbon",
        FigureGroup::Moisture => "moisture",
        FigureGroup::BulkDensity => "bulk_density",
        FigureGroup::Ash => "ash",
        FigureGroup::Fibre => "fibre",
        FigureGroup::Phosphorus => "phosphorus",
        FigureGroup::Potassium => "potassium",
        FigureGroup::Calcium => "calcium",
        FigureGroup::Magnesium => "magnesium",
        FigureGroup::Sodium => "sodium",
        FigureGroup::Ph => "ph",
    }
}
