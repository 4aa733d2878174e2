//! The garden: its place and people, its measures and materials.

use serde::{Deserialize, Serialize};

use crate::amount::AmountSaid;
use crate::check::{Problem, Text, Wrong, if_within, within};
use crate::content::readings::TEMPERATURE_C;
use crate::content::tests_of_compost::Laboratory;

/// The garden as it is described; what is left out stays as it was.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GardenDescribed {
    /// Name to show.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Where it lies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
    /// In which units it is spoken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub units: Option<UnitsSaid>,
    /// True for a scenario that was made up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub invented: Option<bool>,
}

/// Where a garden lies, as closely as its people want to say.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Place {
    /// Name to show.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Latitude [deg], north above 0.
    pub latitude_deg: f64,
    /// Longitude [deg], east above 0.
    pub longitude_deg: f64,
    /// Height above the sea [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub elevation_m: Option<f64>,
    /// Usual temperature of the air in the coldest month [degC].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coldest_month_c: Option<f64>,
    /// Usual temperature of the air in the warmest month [degC].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warmest_month_c: Option<f64>,
}

/// In which units people speak.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum UnitsSaid {
    /// Kilograms, litres, degC.
    Metric,
    /// Pounds, US gallons, degF.
    UsCustomary,
    /// One that a newer program knows.
    #[serde(other)]
    Other,
}

impl GardenDescribed {
    pub(super) fn check(&self) -> Result<(), Problem> {
        self.name
            .as_deref()
            .map_or(Ok(()), |name| Text::name("name", name))?;
        let Some(place) = &self.place else {
            return Ok(());
        };
        place
            .name
            .as_deref()
            .map_or(Ok(()), |name| Text::name("place.name", name))?;
        within("place.latitude_deg", place.latitude_deg, -90.0, 90.0)?;
        within("place.longitude_deg", place.longitude_deg, -180.0, 180.0)?;
        if_within("place.elevation_m", place.elevation_m, -500.0, 9000.0)?;
        let (least, most) = TEMPERATURE_C;
        if_within("place.coldest_month_c", place.coldest_month_c, least, most)?;
        if_within("place.warmest_month_c", place.warmest_month_c, least, most)
    }
}

/// Somebody who works in the garden; goes by the id of this event.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PersonDescribed {
    /// Name to show.
    pub name: String,
    /// What they do.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub role: Option<Role>,
}

/// What somebody does in the garden.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// Keeps the heaps.
    Keeper,
    /// Brings things and lends a hand.
    Helper,
    /// One that a newer program knows.
    #[serde(other)]
    Other,
}

impl PersonDescribed {
    pub(super) fn check(&self) -> Result<(), Problem> {
        Text::name("name", &self.name)
    }
}

/// What one usual filling of a vessel holds, from when this happened on.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MeasureDefined {
    /// Id of the measure: "bucket".
    pub measure: String,
    /// Volume of one usual filling [L].
    pub volume_l: f64,
}

impl MeasureDefined {
    pub(super) fn check(&self) -> Result<(), Problem> {
        Text::id("measure", &self.measure)?;
        // From a pinch to a lorry.
        within("volume_l", self.volume_l, 1e-3, 1e5)
    }
}

/// A figure: one number, taken with the spread of a single measurement, or low, typical and high.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Figure {
    /// One number.
    One(f64),
    /// Low, typical, high.
    Three([f64; 3]),
}

/// A material of the garden's own: like one of the catalogue, but for what is given.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MaterialDefined {
    /// Id of its own: lower-case letters, digits and underscores. A later definition replaces an
    /// earlier one of the same id.
    pub material: String,
    /// Name to show.
    pub name: String,
    /// Id of the material of the catalogue that it is most like.
    pub like: String,
    /// Moisture, percent of the mass as found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moisture_pct: Option<Figure>,
    /// Nitrogen, percent of dry matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nitrogen_pct_dry: Option<Figure>,
    /// Carbon to nitrogen from measured carbon, as a laboratory gives it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cn_ratio_measured: Option<Figure>,
    /// Bulk density as it lies, wet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bulk_density_kg_m3: Option<Figure>,
}

impl MaterialDefined {
    pub(super) fn check(&self) -> Result<(), Problem> {
        let sound = |id: &str| {
            (1..=60).contains(&id.len())
                && id
                    .bytes()
                    .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'_')
        };
        for (field, id) in [("material", &self.material), ("like", &self.like)] {
            if !sound(id) {
                return Err(Problem::new(field, Wrong::NotAnId));
            }
        }
        Text::name("name", &self.name)?;
        for (field, figure, most) in [
            ("moisture_pct", self.moisture_pct, 100.0),
            ("nitrogen_pct_dry", self.nitrogen_pct_dry, 50.0),
            ("cn_ratio_measured", self.cn_ratio_measured, 10_000.0),
            ("bulk_density_kg_m3", self.bulk_density_kg_m3, 3000.0),
        ] {
            match figure {
                None => {}
                Some(Figure::One(value)) => within(field, value, 0.0, most)?,
                Some(Figure::Three(values)) => {
                    if !values.is_sorted() {
                        return Err(Problem::new(field, Wrong::NotInOrder));
                    }
                    for value in values {
                        within(field, value, 0.0, most)?;
                    }
                }
            }
        }
        Ok(())
    }
}

/// A material was measured: one or more of the kinds.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MaterialMeasured {
    /// Id of the material.
    pub material: String,
    /// A laboratory's figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub laboratory: Option<Box<Laboratory>>,
    /// A sample weighed as found and after drying.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dried_sample: Option<DriedSample>,
    /// A vessel weighed full and empty.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weighed_measure: Option<WeighedMeasure>,
}

/// A sample, the dish not counted.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DriedSample {
    /// Mass as found [kg].
    pub wet_kg: f64,
    /// Mass after drying [kg].
    pub dry_kg: f64,
}

/// A vessel filled with the material.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WeighedMeasure {
    /// The vessel or its volume: 1 bucket, 10 L.
    pub measure: AmountSaid,
    /// Mass full [kg].
    pub full_kg: f64,
    /// Mass empty [kg].
    pub empty_kg: f64,
}

impl MaterialMeasured {
    pub(super) fn check(&self) -> Result<(), Problem> {
        Text::id("material", &self.material)?;
        if self.laboratory.is_none()
            && self.dried_sample.is_none()
            && self.weighed_measure.is_none()
        {
            return Err(Problem::new("material", Wrong::NoMeasurement));
        }
        if let Some(laboratory) = &self.laboratory {
            laboratory.check("laboratory")?;
        }
        if let Some(sample) = self.dried_sample {
            within("dried_sample.wet_kg", sample.wet_kg, 1e-6, 1e4)?;
            within("dried_sample.dry_kg", sample.dry_kg, 0.0, sample.wet_kg)?;
        }
        if let Some(weighed) = &self.weighed_measure {
            weighed.measure.check("weighed_measure.measure")?;
            within("weighed_measure.full_kg", weighed.full_kg, 1e-6, 1e5)?;
            within(
                "weighed_measure.empty_kg",
                weighed.empty_kg,
                0.0,
                weighed.full_kg,
            )?;
        }
        Ok(())
    }
}
