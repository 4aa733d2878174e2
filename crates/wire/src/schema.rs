//! JSON Schemas of all files and answers, made from the types themselves.

use crate::answer::{BalanceJson, MaterialJson, MixJson};
use crate::garden_file::GardenFile;
use crate::request::{BalanceFile, MixFile};

/// One schema: its name and how it is made.
pub struct Schema {
    /// Name of the file, without ending.
    pub name: &'static str,
    /// Makes it.
    pub make: fn() -> schemars::Schema,
}

/// All schemas; `schemas/NAME.json` in this crate holds each as text.
pub const SCHEMAS: [Schema; 6] = [
    Schema {
        name: "mix-question",
        make: || schemars::schema_for!(MixFile),
    },
    Schema {
        name: "mix-answer",
        make: || schemars::schema_for!(MixJson),
    },
    Schema {
        name: "balance-question",
        make: || schemars::schema_for!(BalanceFile),
    },
    Schema {
        name: "balance-answer",
        make: || schemars::schema_for!(BalanceJson),
    },
    Schema {
        name: "garden",
        make: || schemars::schema_for!(GardenFile),
    },
    Schema {
        name: "material",
        make: || schemars::schema_for!(MaterialJson),
    },
];
