//! One garden: its own measures, its own materials and measurements, its stores,
//! and what they make of a part as it was found.
//!
//! In: the catalogue's figures, the garden's own, and a part as the keeper means
//! it ("2 buckets of wet leaves"). Out: an ingredient with every gap filled and a
//! range on every figure, an amount in kilograms or fillings, and notices that
//! say what was assumed. This is the only place where gaps are filled.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod error;
mod found;
mod from_journal;
mod ingredient;
mod measures;
mod observations;
mod own_material;
mod stated;

pub use error::FoundError;
pub use found::{Found, FoundPart, Stuff};
pub use from_journal::{found, part_fed};
pub use ingredient::{Notice, handbook_carbon_to_nitrogen};
pub use measures::Calibration;
pub use observations::{Observation, Observed};
pub use own_material::{Given, OwnMaterial, OwnMaterialFault};
pub use stated::{Custom, MOST_NITROGEN_PCT, Stated};

use heapwright_catalogue::Catalogue;
use heapwright_quantity::{Amount, Range};
use heapwright_terms::{Material, MaterialId};

/// What a garden knows of itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Garden {
    /// Name to show.
    pub name: String,
    /// True for a scenario that was made up.
    pub invented: bool,
    /// Its own vessels.
    pub calibrations: Vec<Calibration>,
    /// Materials that the catalogue does not have, and its own versions of those it has.
    pub own_materials: Vec<Material>,
    /// What was measured of materials.
    pub observations: Vec<Observation>,
    /// What is put by, ready to go with a feed.
    pub stores: Vec<Stock>,
}

/// A material that is put by.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// Which one.
    pub material: MaterialId,
    /// How it lies there: ids of conditions.
    pub conditions: Vec<String>,
    /// How much there is; `None` for plenty.
    pub amount: Option<Amount>,
    /// In what it is handed out: whole ones only.
    pub scoop: Amount,
}

impl Garden {
    /// The garden's version of a material: its own, or the catalogue's, narrowed
    /// by what was measured here. `None` when neither knows the id.
    #[must_use]
    pub fn material(&self, catalogue: &Catalogue, id: &MaterialId) -> Option<Material> {
        let base = self
            .own_materials
            .iter()
            .find(|material| material.id == *id)
            .or_else(|| catalogue.material(id.as_str()))?;
        Some(observations::narrowed(base, &self.observations))
    }

    /// What one filling of a measure holds [m3]: as calibrated here, or as the
    /// catalogue has it. `None` for a measure that neither knows.
    #[must_use]
    pub fn filling_m3(&self, catalogue: &Catalogue, measure: &str) -> Option<Range> {
        measures::filling_m3(catalogue, &self.calibrations, measure)
    }
}
