//! The trade's nouns as plain data: what is handed from the garden to the engine.
//!
//! Fractions are 0 to 1, masses kilograms, volumes cubic metres. Every figure
//! says its basis: `_wet_basis` is a share of the mass as found,
//! `_dry_basis` a share of the dry matter. Nothing here knows where a value
//! came from, what a file looks like or what is shown.

mod crop;
mod ingredient;
mod material;
mod oxides;
mod solids;
mod target;

pub use crop::{CropNeed, EdiblePart, Removal, SaltTolerance};
pub use ingredient::{Ingredient, NitrogenAndCarbon, Part, PartAmount};
pub use material::{
    Caution, Degradability, Evidence, FigureGroup, FigureSource, Group, Material, MaterialId,
};
pub use oxides::{
    CALCIUM_CARBONATE_OVER_CALCIUM, CALCIUM_OXIDE_OVER_CALCIUM, MAGNESIUM_OXIDE_OVER_MAGNESIUM,
    PHOSPHATE_OVER_PHOSPHORUS, POTASH_OVER_POTASSIUM,
};
pub use solids::{ASH_DENSITY_KG_M3, ORGANIC_MATTER_DENSITY_KG_M3, WATER_DENSITY_KG_M3};
pub use target::Target;
