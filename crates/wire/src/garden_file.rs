//! The file in which a garden's own measures, materials, measurements and stores stand.

use heapwright_catalogue::Catalogue;
use heapwright_garden::{Calibration, Garden, Given, Observation, Observed, OwnMaterial, Stock};
use heapwright_quantity::{Amount, Unit, parse_amount};
use heapwright_terms::Material;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

use crate::WireError;
use crate::read::{conditions, material_id, vocabulary};
use crate::shape::{names_once, objects_only};

objects_only!(
    GardenFile,
    OwnMaterialFile,
    MeasurementFile,
    LaboratoryFile,
    DriedSampleFile,
    WeighedMeasureFile,
    StockFile,
);

/// What a garden knows of itself.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct GardenFile {
    /// Name to show.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// True for a scenario that was made up.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub invented: bool,
    /// What the garden's own vessels hold, by the id of the measure: {"bucket": "12 l"}.
    #[serde(
        default,
        skip_serializing_if = "BTreeMap::is_empty",
        deserialize_with = "names_once"
    )]
    pub measures: BTreeMap<String, String>,
    /// Materials of its own.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub materials: Vec<OwnMaterialFile>,
    /// What was measured of materials.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub measurements: Vec<MeasurementFile>,
    /// What is put by.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stores: Vec<StockFile>,
}

/// A material of the garden's own: like one of the catalogue, but for what is given.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct OwnMaterialFile {
    /// Id of its own: lower-case letters, digits and underscores.
    pub id: String,
    /// Name to show.
    pub name: String,
    /// Id of the material of the catalogue that it is most like.
    pub like: String,
    /// Moisture, percent of the mass as found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<FigureFile>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<FigureFile>,
    /// Carbon to nitrogen from measured carbon, as a laboratory gives it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio_measured: Option<FigureFile>,
    /// Bulk density as it lies, wet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<FigureFile>,
}

/// A figure: one number, which is then taken with the spread of a single
/// measurement, or low, typical and high.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(untagged)]
pub enum FigureFile {
    /// One number.
    One(f64),
    /// Low, typical, high.
    Three([f64; 3]),
}

/// One measurement of a material: exactly one of the kinds.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct MeasurementFile {
    /// Of which material: an id or an unmistakable name.
    pub material: String,
    /// A laboratory's figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub laboratory: Option<LaboratoryFile>,
    /// A sample weighed as found and after drying.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dried_sample: Option<DriedSampleFile>,
    /// A vessel weighed full and empty.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weighed_measure: Option<WeighedMeasureFile>,
}

/// What a laboratory found; at least one.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct LaboratoryFile {
    /// Moisture, percent of the mass as found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<f64>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<f64>,
    /// Carbon to nitrogen from measured carbon.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio_measured: Option<f64>,
}

/// A sample, the dish not counted.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct DriedSampleFile {
    /// Mass as found: "100 g".
    pub wet: String,
    /// Mass after drying: "23 g".
    pub dry: String,
}

/// A vessel filled with the material.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct WeighedMeasureFile {
    /// The vessel or its volume: "1 bucket", "10 l".
    pub measure: String,
    /// Mass full: "6.2 kg".
    pub full: String,
    /// Mass empty: "0.8 kg"; nothing when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub empty: Option<String>,
}

/// A material that is put by.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
#[serde(
    deny_unknown_fields,
    remote = "Self",
    expecting = "an object in braces"
)]
pub struct StockFile {
    /// Which one: an id or an unmistakable name.
    pub material: String,
    /// The condition it is in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub condition: Option<String>,
    /// How much there is: "4 sacks"; plenty when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amount: Option<String>,
    /// In what it is handed out: "1 bucket".
    pub scoop: String,
}

/// The garden that a file describes.
///
/// Fails on an unknown material, measure or unit, and on figures that cannot be.
pub fn garden_from(catalogue: &Catalogue, file: &GardenFile) -> Result<Garden, WireError> {
    let mut garden = Garden {
        name: file.name.clone(),
        invented: file.invented,
        ..Garden::default()
    };
    let vocabulary = vocabulary(catalogue);
    for (measure, volume) in &file.measures {
        let field = format!("garden.measures.{measure}");
        if catalogue.measure(measure).is_none() {
            let known: Vec<&str> = catalogue
                .measures()
                .iter()
                .map(|measure| measure.id.as_str())
                .collect();
            return Err(WireError::field(
                field,
                format!("there is no such measure: use one of {}", known.join(", ")),
            ));
        }
        let amount =
            parse_amount(volume, &vocabulary).map_err(|error| WireError::field(&field, error))?;
        let Some(volume_m3) = amount.cubic_metres() else {
            return Err(WireError::field(field, "give a volume, such as \"12 l\""));
        };
        garden.calibrations.push(Calibration {
            measure: measure.clone(),
            volume_m3,
        });
    }
    for (index, own) in file.materials.iter().enumerate() {
        let material = own_material(catalogue, own, &format!("garden.materials[{index}]"))?;
        if garden
            .own_materials
            .iter()
            .any(|other| other.id == material.id)
        {
            return Err(WireError::field(
                format!("garden.materials[{index}].id"),
                format!(
                    "\"{}\" is there twice: give each material an id of its own",
                    own.id
                ),
            ));
        }
        garden.own_materials.push(material);
    }
    for (index, measurement) in file.measurements.iter().enumerate() {
        let field = format!("garden.measurements[{index}]");
        let material = material_id(
            catalogue,
            &garden,
            &measurement.material,
            &format!("{field}.material"),
        )?;
        for observed in observed(catalogue, &garden, measurement, &field)? {
            garden.observations.push(Observation {
                material: material.clone(),
                observed,
            });
        }
    }
    for (index, stock) in file.stores.iter().enumerate() {
        let field = format!("garden.stores[{index}]");
        let amount = |text: &str, name: &str| {
            parse_amount(text, &vocabulary)
                .map_err(|error| WireError::field(format!("{field}.{name}"), error))
        };
        let stock = Stock {
            material: material_id(
                catalogue,
                &garden,
                &stock.material,
                &format!("{field}.material"),
            )?,
            conditions: conditions(
                catalogue,
                stock.condition.as_deref(),
                &format!("{field}.condition"),
            )?,
            amount: stock
                .amount
                .as_deref()
                .map(|text| amount(text, "amount"))
                .transpose()?,
            scoop: amount(&stock.scoop, "scoop")?,
        };
        garden.stores.push(stock);
    }
    Ok(garden)
}

fn own_material(
    catalogue: &Catalogue,
    own: &OwnMaterialFile,
    field: &str,
) -> Result<Material, WireError> {
    let given = |figure: Option<FigureFile>| {
        figure.map(|figure| match figure {
            FigureFile::One(value) => Given::One(value),
            FigureFile::Three(values) => Given::Three(values),
        })
    };
    let own = OwnMaterial {
        id: own.id.clone(),
        name: own.name.clone(),
        like: material_id(
            catalogue,
            &Garden::default(),
            &own.like,
            &format!("{field}.like"),
        )?,
        moisture_pct: given(own.moisture_pct),
        nitrogen_pct_dry: given(own.nitrogen_pct_dry),
        cn_ratio_measured: given(own.cn_ratio_measured),
        bulk_density_kg_m3: given(own.bulk_density_kg_m3),
    };
    own.material(catalogue)
        .map_err(|fault| WireError::field(format!("{field}.{}", fault.field), fault.what))
}

fn observed(
    catalogue: &Catalogue,
    garden: &Garden,
    measurement: &MeasurementFile,
    field: &str,
) -> Result<Vec<Observed>, WireError> {
    let vocabulary = vocabulary(catalogue);
    let kilograms = |text: &str, name: &str| {
        let field = format!("{field}.{name}");
        parse_amount(text, &vocabulary)
            .map_err(|error| WireError::field(&field, error))
            .and_then(|amount| {
                amount
                    .kilograms()
                    .ok_or_else(|| WireError::field(&field, "give a mass, such as \"100 g\""))
            })
    };
    let mut all = Vec::new();
    if let Some(laboratory) = &measurement.laboratory {
        let nitrogen_pct = laboratory.nitrogen_pct_dry.unwrap_or(0.0);
        if nitrogen_pct * (1.0 + laboratory.cn_ratio_measured.unwrap_or(0.0)) > 100.0 {
            return Err(WireError::field(
                format!("{field}.laboratory.cn_ratio_measured"),
                "makes, with nitrogen_pct_dry, more carbon and nitrogen than the dry matter holds: correct one or leave one out",
            ));
        }
        all.extend(
            laboratory
                .moisture_pct
                .map(|pct| Observed::MoistureWetBasis(pct / 100.0)),
        );
        all.extend(
            laboratory
                .nitrogen_pct_dry
                .map(|pct| Observed::NitrogenDryBasis(pct / 100.0)),
        );
        all.extend(
            laboratory
                .cn_ratio_measured
                .map(Observed::CarbonToNitrogenMeasured),
        );
    }
    if let Some(sample) = &measurement.dried_sample {
        all.push(Observed::DriedSample {
            wet_kg: kilograms(&sample.wet, "dried_sample.wet")?,
            dry_kg: kilograms(&sample.dry, "dried_sample.dry")?,
        });
    }
    if let Some(weighed) = &measurement.weighed_measure {
        let name = format!("{field}.weighed_measure.measure");
        let amount: Amount = parse_amount(&weighed.measure, &vocabulary)
            .map_err(|error| WireError::field(&name, error))?;
        let volume_m3 = match &amount.unit {
            Unit::Volume(_) => amount.cubic_metres(),
            Unit::Measure(id) => garden
                .filling_m3(catalogue, id)
                .map(|range| range.typical * amount.count),
            Unit::Mass(_) => None,
        };
        all.push(Observed::WeighedMeasure {
            full_kg: kilograms(&weighed.full, "weighed_measure.full")?,
            empty_kg: weighed
                .empty
                .as_deref()
                .map_or(Ok(0.0), |text| kilograms(text, "weighed_measure.empty"))?,
            volume_m3: volume_m3.ok_or_else(|| {
                WireError::field(&name, "give a vessel or a volume, such as \"1 bucket\"")
            })?,
        });
    }
    if all.is_empty() {
        return Err(WireError::field(
            field,
            "give one of laboratory, dried_sample and weighed_measure, with its figures",
        ));
    }
    if !all.iter().all(Observed::is_possible) {
        return Err(WireError::field(
            field,
            "the figures cannot be: a dry sample weighs no more than a wet one, a full vessel more than an empty one, shares stay below 100 %",
        ));
    }
    Ok(all)
}
