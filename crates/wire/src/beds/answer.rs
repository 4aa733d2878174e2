//! The plan of the beds as JSON.

use heapwright_answers::spreading::Brought;
use heapwright_answers::{BedAnswer, BedsAnswer};
use heapwright_catalogue::{Catalogue, SourceKind};
use heapwright_garden::Garden;
use heapwright_quantity::Interval;
use heapwright_texts::Locale;
use heapwright_wording::{bed_limit_name, beds_limits, beds_notice, binding_line, binding_name};
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;
use crate::answer::FigureJson;

/// What `heapwright beds plan` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BedsPlanJson {
    /// Compost that there is [L].
    pub available_l: f64,
    /// Compost that is left over [L].
    pub left_l: f64,
    /// What a litre of the compost brings.
    pub compost: BroughtJson,
    /// Each bed.
    pub beds: Vec<BedPlanJson>,
    /// Depth that the German farm rule allows in a year, of this compost [mm]; it does not bind
    /// gardens.
    pub yardstick_mm: f64,
    /// What to know about it, as sentences.
    pub notices: Vec<String>,
    /// What the plan can and cannot tell.
    pub limits: String,
    /// Sources of needs, limits and shares.
    pub sources: Vec<KeyedSourceJson>,
}

/// A source by its key.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct KeyedSourceJson {
    /// Its key.
    pub key: String,
    /// Author, year, title.
    pub citation: String,
    /// True when it was recalled and not seen.
    pub recalled: bool,
}

/// What a litre brings, or a layer to each square metre.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BroughtJson {
    /// Mass as spread [kg].
    pub wet_mass_kg: FigureJson,
    /// Dry matter [kg].
    pub dry_mass_kg: FigureJson,
    /// All nitrogen [g].
    pub nitrogen_g: FigureJson,
    /// Nitrogen that is there for plants in the first year [g]; below 0 where it is tied up.
    pub nitrogen_first_year_g: FigureJson,
    /// All phosphorus, the element [g].
    pub phosphorus_g: FigureJson,
    /// Phosphorus that is there in the first year [g].
    pub phosphorus_first_year_g: FigureJson,
    /// All potassium, the element [g].
    pub potassium_g: FigureJson,
    /// Potassium that is there in the first year [g].
    pub potassium_first_year_g: FigureJson,
    /// Calcium, the element [g].
    pub calcium_g: FigureJson,
    /// Magnesium, the element [g].
    pub magnesium_g: FigureJson,
}

/// Nitrogen, phosphorus and potassium, as elements.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ThreeJson {
    /// Nitrogen; null where none is needed.
    pub nitrogen: Option<f64>,
    /// Phosphorus.
    pub phosphorus: Option<f64>,
    /// Potassium.
    pub potassium: Option<f64>,
}

/// What a bed gets.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BedPlanJson {
    /// Its name.
    pub name: String,
    /// Area [m2].
    pub area_m2: f64,
    /// The crop as it was understood; null when not known.
    pub crop: Option<String>,
    /// Its class: "light", "medium", "heavy".
    pub feeding: String,
    /// Depth of the layer [mm], which is litres a square metre.
    pub depth_mm: f64,
    /// Volume [L].
    pub volume_l: f64,
    /// The same in barrows of the garden.
    pub barrows: Option<f64>,
    /// The same in buckets of the garden.
    pub buckets: Option<f64>,
    /// Mass [kg].
    pub mass_kg: FigureJson,
    /// What the layer brings to each square metre.
    pub brings_per_m2: BroughtJson,
    /// What the crop needs, after the soil test [g/m2].
    pub need_g_m2: ThreeJson,
    /// What earlier dressings still bring this year [g/m2].
    pub earlier_g_m2: ThreeJson,
    /// Share of the need that the layer and earlier ones meet, percent.
    pub met_pct: ThreeJson,
    /// Phosphorus beyond what the crop takes away this year [g/m2].
    pub surplus_phosphorus_g_m2: f64,
    /// What stops it from getting more: the name of a limit, "no more compost" or "need met".
    pub binding: String,
    /// The same as a sentence.
    pub reason: String,
    /// Every limit.
    pub limits: Vec<BedLimitJson>,
    /// Days to wait between spreading and harvest; null where there is nothing to wait for.
    pub wait_days: Option<f64>,
}

/// A limit of a bed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct BedLimitJson {
    /// Its name.
    pub limit: String,
    /// Depth that it allows [mm]; null where it sets none.
    pub depth_mm: Option<f64>,
}

const GRAMS: f64 = 1000.0;
const MILLIMETRES: f64 = 1000.0;
const LITRES: f64 = 1000.0;

/// The plan as JSON.
#[must_use]
pub fn beds_plan_json(catalogue: &Catalogue, garden: &Garden, answer: &BedsAnswer) -> BedsPlanJson {
    BedsPlanJson {
        available_l: answer.volume_m3 * LITRES,
        left_l: answer.plan.shared.left_m3 * LITRES,
        compost: brought(&answer.plan.brought_per_m3.times(1.0 / LITRES)),
        beds: answer
            .beds
            .iter()
            .map(|bed| bed_plan_json(catalogue, garden, bed))
            .collect(),
        yardstick_mm: answer.yardstick_depth_m * MILLIMETRES,
        notices: answer
            .notices
            .iter()
            .map(|notice| beds_notice(notice, Locale::default()).replace('\u{a0}', " "))
            .collect(),
        limits: beds_limits(ENGLISH).to_owned(),
        sources: sources(catalogue, &answer.source_keys),
    }
}

/// Sources by their keys.
pub(crate) fn sources(catalogue: &Catalogue, keys: &[String]) -> Vec<KeyedSourceJson> {
    keys.iter()
        .filter_map(|key| catalogue.source(key))
        .map(|source| KeyedSourceJson {
            key: source.key.clone(),
            citation: source.citation.clone(),
            recalled: source.kind == SourceKind::Memory,
        })
        .collect()
}

fn brought(of: &Brought<Interval>) -> BroughtJson {
    let kilograms = |interval: Interval| FigureJson::of(interval, 1.0);
    let grams = |interval: Interval| FigureJson::of(interval, GRAMS);
    BroughtJson {
        wet_mass_kg: kilograms(of.wet_mass),
        dry_mass_kg: kilograms(of.dry_mass),
        nitrogen_g: grams(of.nitrogen),
        nitrogen_first_year_g: grams(of.nitrogen_first_year),
        phosphorus_g: grams(of.phosphorus),
        phosphorus_first_year_g: grams(of.phosphorus_first_year),
        potassium_g: grams(of.potassium),
        potassium_first_year_g: grams(of.potassium_first_year),
        calcium_g: grams(of.calcium),
        magnesium_g: grams(of.magnesium),
    }
}

fn bed_plan_json(catalogue: &Catalogue, garden: &Garden, bed: &BedAnswer) -> BedPlanJson {
    let share = &bed.share;
    let fillings = |measure: &str| {
        garden
            .filling_m3(catalogue, measure)
            .map(|filling| share.volume_m3 / filling.typical)
    };
    let three = |values: [Option<f64>; 3], per: f64| {
        let [nitrogen, phosphorus, potassium] = values.map(|value| value.map(|value| value * per));
        ThreeJson {
            nitrogen,
            phosphorus,
            potassium,
        }
    };
    let (need, carried) = (&share.weighed.need, &share.weighed.carried);
    BedPlanJson {
        name: bed.asked.name.clone(),
        area_m2: bed.asked.area_m2,
        crop: bed.crop.as_ref().map(|crop| crop.name.clone()),
        feeding: bed.group.id.clone(),
        depth_mm: share.depth_m * MILLIMETRES,
        volume_l: share.volume_m3 * LITRES,
        barrows: fillings("barrow"),
        buckets: fillings("bucket"),
        mass_kg: FigureJson::of(share.brought_per_m2.wet_mass, bed.asked.area_m2),
        brings_per_m2: brought(&share.brought_per_m2),
        need_g_m2: three(
            [
                Some(need.nitrogen_kg_m2.typical),
                Some(need.phosphorus_kg_m2.typical),
                Some(need.potassium_kg_m2.typical),
            ],
            GRAMS,
        ),
        earlier_g_m2: three(
            [
                Some(carried.nitrogen_kg_m2),
                Some(carried.phosphorus_kg_m2),
                Some(carried.potassium_kg_m2),
            ],
            GRAMS,
        ),
        met_pct: three(share.met, 100.0),
        surplus_phosphorus_g_m2: share.surplus_phosphorus_kg_m2 * GRAMS,
        binding: binding_name(share.binding, ENGLISH).to_owned(),
        reason: binding_line(bed, Locale::default()).replace('\u{a0}', " "),
        limits: share
            .weighed
            .allowed
            .iter()
            .map(|allowed| BedLimitJson {
                limit: bed_limit_name(allowed.limit, ENGLISH).to_owned(),
                depth_mm: Some(allowed.depth_m * MILLIMETRES).filter(|depth| depth.is_finite()),
            })
            .collect(),
        wait_days: share.weighed.wait_days,
    }
}
