//! Compost taken out, beds, and what was spread on them.

use serde::{Deserialize, Serialize};

use crate::amount::AmountSaid;
use crate::check::{Problem, Text, if_within, within};
use crate::content::heap::words;
use crate::id::EventId;

/// Compost was taken out of a heap.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Harvested {
    /// From which heap.
    pub heap: EventId,
    /// How much compost, as it was measured, after sieving if it was sieved.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amount: Option<AmountSaid>,
    /// How much of the heap, percent; all when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub share_pct: Option<f64>,
    /// Mesh of the sieve [mm]; not sieved when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sieve_mm: Option<f64>,
    /// The coarse part that the sieve held back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub overs: Option<AmountSaid>,
    /// The heap to which the coarse part went.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub overs_to: Option<EventId>,
}

impl Harvested {
    pub(super) fn check(&self) -> Result<(), Problem> {
        if let Some(amount) = &self.amount {
            amount.check("amount")?;
        }
        if_within("share_pct", self.share_pct, 0.0, 100.0)?;
        if_within("sieve_mm", self.sieve_mm, 0.5, 100.0)?;
        self.overs
            .as_ref()
            .map_or(Ok(()), |overs| overs.check("overs"))
    }
}

/// A bed was described; it goes by the id of this event.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BedDescribed {
    /// Name to show.
    pub name: String,
    /// Area [m2].
    pub area_m2: f64,
    /// What grows there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crop: Option<String>,
    /// How much that feeds on the soil, where its name does not say so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feeding: Option<Feeding>,
    /// True for ground that has not been dug and fed before.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub new_ground: bool,
    /// What a test of its soil said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub soil: Option<SoilTest>,
}

words! {
    /// How much a crop feeds on the soil.
    Feeding {
        /// Salads, radishes, peas, beans, herbs.
        Light,
        /// Roots, onions, beet.
        Medium,
        /// Cabbages, tomatoes, squash, potatoes.
        Heavy,
    }
}

/// What a test of soil said.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SoilTest {
    /// Acidity, pH.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ph: Option<f64>,
    /// Organic matter, percent of dry soil.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub organic_matter_pct: Option<f64>,
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

impl BedDescribed {
    pub(super) fn check(&self) -> Result<(), Problem> {
        Text::name("name", &self.name)?;
        // From a pot to a field.
        within("area_m2", self.area_m2, 0.01, 100_000.0)?;
        if let Some(crop) = &self.crop {
            Text::name("crop", crop)?;
        }
        let soil = self.soil.unwrap_or_default();
        if_within("soil.ph", soil.ph, 2.0, 12.0)?;
        if_within(
            "soil.organic_matter_pct",
            soil.organic_matter_pct,
            0.0,
            100.0,
        )?;
        if_within("soil.phosphorus_mg_kg", soil.phosphorus_mg_kg, 0.0, 1e5)?;
        if_within("soil.potassium_mg_kg", soil.potassium_mg_kg, 0.0, 1e5)?;
        if_within(
            "soil.conductivity_ds_m",
            soil.conductivity_ds_m,
            0.0,
            1000.0,
        )
    }
}

/// Compost was spread on a bed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Spread {
    /// On which bed.
    pub bed: EventId,
    /// From which heap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heap: Option<EventId>,
    /// How much.
    pub amount: AmountSaid,
    /// How.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub how: Option<How>,
}

words! {
    /// How compost was spread.
    How {
        /// Left on the surface.
        Mulch,
        /// Raked or dug in.
        DugIn,
        /// Into the holes of plants.
        PlantingHole,
    }
}

impl Spread {
    pub(super) fn check(&self) -> Result<(), Problem> {
        self.amount.check("amount")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bed_from_before_feeding_was_kept_reads_and_is_written_as_it_was() {
        let old = r#"{"name":"Pots","area_m2":0.5,"crop":"basil"}"#;
        let bed: BedDescribed = serde_json::from_str(old).unwrap();
        assert_eq!(bed.feeding, None);
        assert_eq!(serde_json::to_string(&bed).unwrap(), old);
    }

    #[test]
    fn feeding_is_kept_and_a_word_of_a_newer_program_is_read() {
        let said = r#"{"name":"Pots","area_m2":0.5,"feeding":"heavy"}"#;
        let bed: BedDescribed = serde_json::from_str(said).unwrap();
        assert_eq!(bed.feeding, Some(Feeding::Heavy));
        assert_eq!(serde_json::to_string(&bed).unwrap(), said);
        let newer = said.replace("heavy", "ravenous");
        let bed: BedDescribed = serde_json::from_str(&newer).unwrap();
        assert_eq!(bed.feeding, Some(Feeding::Other));
    }
}
