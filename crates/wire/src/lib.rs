//! The JSON that comes into and goes out of the program, and its schemas.
//!
//! Percent, litres and kilograms stand here and on screens; inside, fractions
//! and SI. Fields are only ever added within a major version.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod answer;
mod error;
mod garden_file;
mod read;
mod request;
#[cfg(feature = "schema")]
mod schema;
mod shape;

pub use answer::{
    AddedJson, BalanceJson, ConflictJson, FigureJson, MaterialJson, MixJson, RecipeJson,
    balance_json, material_json, mix_json,
};
pub use error::WireError;
pub use garden_file::{GardenFile, garden_from};
pub use read::{
    LARGEST_FILE_BYTES, read_balance, read_garden, read_mix, spoken_parts, spoken_reach,
    stores_in_reach, vocabulary, water_kg,
};
pub use request::{
    BalanceFile, CustomFile, MixFile, ObjectiveFile, PartFile, ReachFile, TargetFile,
};
#[cfg(feature = "schema")]
pub use schema::{SCHEMAS, Schema};
