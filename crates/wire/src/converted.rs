//! Conversions and the limits of other uses as JSON.

use heapwright_answers::{Covered, NitrogenOverYears, Oxide, Weighed};
use heapwright_catalogue::{Catalogue, Spreading, UseKind};
use heapwright_garden::Garden;
use heapwright_quantity::{Interval, Range};
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::answer::FigureJson;
use crate::beds::{KeyedSourceJson, sources};

/// What `heapwright convert` answers: exactly one of the kinds.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ConvertedJson {
    /// A layer on an area.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cover: Option<CoverJson>,
    /// A mass and its volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weight: Option<WeightJson>,
    /// An element and its oxide.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub oxide: Option<OxideJson>,
    /// Nitrogen for plants over the years.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen: Option<NitrogenJson>,
}

/// A layer on an area.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct CoverJson {
    /// Area [m2].
    pub area_m2: f64,
    /// Depth [mm].
    pub depth_mm: f64,
    /// Volume [L].
    pub volume_l: f64,
    /// The same in barrows of the garden.
    pub barrows: Option<f64>,
    /// The same in buckets of the garden.
    pub buckets: Option<f64>,
    /// Mass of so much compost of the usual density [kg].
    pub mass_kg: FigureJson,
}

/// A mass and its volume.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct WeightJson {
    /// Mass [kg].
    pub mass_kg: FigureJson,
    /// Volume [L].
    pub volume_l: FigureJson,
    /// Bulk density [kg/m3].
    pub bulk_density_kg_m3: FigureJson,
}

/// An element and its oxide.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct OxideJson {
    /// Sign of the element.
    pub element: String,
    /// Formula of the oxide.
    pub oxide: String,
    /// Amount as the element, in whatever unit was given.
    pub as_element: f64,
    /// Amount as the oxide, in the same unit.
    pub as_oxide: f64,
    /// The oxide over the element in it.
    pub factor: f64,
}

/// Nitrogen for plants over the years.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct NitrogenJson {
    /// All nitrogen [g].
    pub nitrogen_g: f64,
    /// Each year, the first first.
    pub years: Vec<YearJson>,
    /// Sum of all years, share of all nitrogen, percent.
    pub sum_pct: FigureJson,
}

/// Nitrogen of one year.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct YearJson {
    /// Which year, 1 for the first.
    pub year: u32,
    /// Share of all nitrogen, percent; low and high are those of the usual ranges.
    pub share_pct: FigureJson,
    /// Nitrogen at typical figures [g].
    pub nitrogen_g: f64,
}

/// A layer as JSON.
#[must_use]
pub fn converted_cover(
    catalogue: &Catalogue,
    garden: &Garden,
    covered: &Covered,
    density_kg_m3: Range,
) -> ConvertedJson {
    let fillings = |measure: &str| {
        garden
            .filling_m3(catalogue, measure)
            .map(|filling| covered.volume_m3 / filling.typical)
    };
    ConvertedJson {
        cover: Some(CoverJson {
            area_m2: covered.area_m2,
            depth_mm: covered.depth_m * 1000.0,
            volume_l: covered.volume_m3 * 1000.0,
            barrows: fillings("barrow"),
            buckets: fillings("bucket"),
            mass_kg: figure(density_kg_m3, covered.volume_m3),
        }),
        ..ConvertedJson::default()
    }
}

/// A mass and its volume as JSON.
#[must_use]
pub fn converted_weight(weighed: &Weighed) -> ConvertedJson {
    ConvertedJson {
        weight: Some(WeightJson {
            mass_kg: FigureJson::of(weighed.mass_kg, 1.0),
            volume_l: FigureJson::of(weighed.volume_m3, 1000.0),
            bulk_density_kg_m3: figure(weighed.bulk_density_kg_m3, 1.0),
        }),
        ..ConvertedJson::default()
    }
}

/// An element and its oxide as JSON; `amount` is that of the oxide when `is_oxide`.
#[must_use]
pub fn converted_oxide(oxide: Oxide, amount: f64, is_oxide: bool) -> ConvertedJson {
    let factor = oxide.over_element();
    ConvertedJson {
        oxide: Some(OxideJson {
            element: oxide.element().to_owned(),
            oxide: oxide.formula().to_owned(),
            as_element: if is_oxide { amount / factor } else { amount },
            as_oxide: if is_oxide { amount } else { amount * factor },
            factor,
        }),
        ..ConvertedJson::default()
    }
}

/// Nitrogen over the years as JSON.
#[must_use]
pub fn converted_nitrogen(over_years: &NitrogenOverYears) -> ConvertedJson {
    let pct =
        |value: f64, low: f64, high: f64| FigureJson::of(Interval { value, low, high }, 100.0);
    let sum = |shares: &[f64]| shares.iter().sum::<f64>();
    ConvertedJson {
        nitrogen: Some(NitrogenJson {
            nitrogen_g: over_years.nitrogen_kg * 1000.0,
            years: (1_u32..)
                .zip(&over_years.shares)
                .zip(over_years.low.iter().zip(&over_years.high))
                .map(|((year, share), (low, high))| YearJson {
                    year,
                    share_pct: pct(*share, *low, *high),
                    nitrogen_g: share * over_years.nitrogen_kg * 1000.0,
                })
                .collect(),
            sum_pct: pct(
                sum(&over_years.shares),
                sum(&over_years.low),
                sum(&over_years.high),
            ),
        }),
        ..ConvertedJson::default()
    }
}

fn figure(range: Range, per: f64) -> FigureJson {
    FigureJson::of(
        Interval {
            value: range.typical,
            low: range.low,
            high: range.high,
        },
        per,
    )
}

/// What `heapwright beds uses` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct UsesJson {
    /// The uses.
    pub uses: Vec<UseJson>,
}

/// A use of compost away from beds.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct UseJson {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// "pct" of the volume of the mix, or "mm" of depth.
    pub unit: String,
    /// Usual least, usual amount, and the most.
    pub limit: [f64; 3],
    /// Compost for the amount or area that was asked about [L], least, usual and most; null where
    /// it is counted the other way or nothing was asked.
    pub compost_l: Option<[f64; 3]>,
    /// Mesh of the sieve, finest and coarsest [mm].
    pub sieve_mm: Option<[f64; 2]>,
    /// Conductivity of the saturated paste not to be passed [dS/m].
    pub conductivity_ds_m_most: Option<f64>,
    /// pH not to be passed.
    pub ph_most: Option<f64>,
    /// True when only mature compost will do.
    pub needs_mature: bool,
    /// What to do.
    pub advice: String,
    /// Where the figures come from.
    pub sources: Vec<KeyedSourceJson>,
}

/// The uses as JSON; `mix_m3` and `area_m2` where they were asked about.
#[must_use]
pub fn uses_json(
    catalogue: &Catalogue,
    spreading: &Spreading,
    ids: &[String],
    mix_m3: Option<f64>,
    area_m2: Option<f64>,
) -> UsesJson {
    let three = |range: Range| [range.low, range.typical, range.high];
    UsesJson {
        uses: spreading
            .uses()
            .iter()
            .filter(|one| ids.is_empty() || ids.contains(&one.id))
            .map(|one| {
                let (unit, per, amount) = match one.kind {
                    UseKind::ShareOfVolume => ("pct", 100.0, mix_m3),
                    UseKind::Depth => ("mm", 1000.0, area_m2),
                };
                UseJson {
                    id: one.id.clone(),
                    name: one.name.clone(),
                    unit: unit.to_owned(),
                    limit: three(one.limit.scaled(per)),
                    compost_l: amount.map(|amount| three(one.limit.scaled(amount * 1000.0))),
                    sieve_mm: one.sieve_mm.map(|(fine, coarse)| [fine, coarse]),
                    conductivity_ds_m_most: one.conductivity_ds_m_most,
                    ph_most: one.ph_most,
                    needs_mature: one.needs_mature,
                    advice: one.advice.clone(),
                    sources: sources(catalogue, &one.source_keys),
                }
            })
            .collect(),
    }
}
