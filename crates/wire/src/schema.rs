//! JSON Schemas of all files and answers, made from the types themselves.

use crate::answer::{BalanceJson, MaterialJson, MixJson};
use crate::beds::{BedsFile, BedsPlanJson};
use crate::converted::{ConvertedJson, UsesJson};
use crate::finish::{DiversionJson, HomeTestJson, LedgerJson, ReadyJson};
use crate::garden_file::GardenFile;
use crate::hygiene::HygieneJson;
use crate::journal_answer::{
    BedsJson, CheckJson, CopiedJson, HeapShownJson, HeapsJson, ImportJson, LogJson, RecordedJson,
    StoresJson,
};
use crate::request::{BalanceFile, MixFile};
use crate::simulation::{ForecastJson, SimulationFile, SimulationJson};
use crate::today::NeedsJson;

/// One schema: its name and how it is made.
pub struct Schema {
    /// Name of the file, without ending.
    pub name: &'static str,
    /// Makes it.
    pub make: fn() -> schemars::Schema,
}

/// All schemas; `schemas/NAME.json` in this crate holds each as text.
pub const SCHEMAS: [Schema; 28] = [
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
    Schema {
        name: "recorded",
        make: || schemars::schema_for!(RecordedJson),
    },
    Schema {
        name: "log",
        make: || schemars::schema_for!(LogJson),
    },
    Schema {
        name: "heap",
        make: || schemars::schema_for!(HeapShownJson),
    },
    Schema {
        name: "heap-list",
        make: || schemars::schema_for!(HeapsJson),
    },
    Schema {
        name: "stores",
        make: || schemars::schema_for!(StoresJson),
    },
    Schema {
        name: "bed-list",
        make: || schemars::schema_for!(BedsJson),
    },
    Schema {
        name: "import",
        make: || schemars::schema_for!(ImportJson),
    },
    Schema {
        name: "copied",
        make: || schemars::schema_for!(CopiedJson),
    },
    Schema {
        name: "check",
        make: || schemars::schema_for!(CheckJson),
    },
    Schema {
        name: "simulation-question",
        make: || schemars::schema_for!(SimulationFile),
    },
    Schema {
        name: "simulation-answer",
        make: || schemars::schema_for!(SimulationJson),
    },
    Schema {
        name: "forecast-answer",
        make: || schemars::schema_for!(ForecastJson),
    },
    Schema {
        name: "hygiene-answer",
        make: || schemars::schema_for!(HygieneJson),
    },
    Schema {
        name: "ready",
        make: || schemars::schema_for!(ReadyJson),
    },
    Schema {
        name: "today",
        make: || schemars::schema_for!(NeedsJson),
    },
    Schema {
        name: "home-test",
        make: || schemars::schema_for!(HomeTestJson),
    },
    Schema {
        name: "ledger",
        make: || schemars::schema_for!(LedgerJson),
    },
    Schema {
        name: "diversion",
        make: || schemars::schema_for!(DiversionJson),
    },
    Schema {
        name: "beds-question",
        make: || schemars::schema_for!(BedsFile),
    },
    Schema {
        name: "beds-answer",
        make: || schemars::schema_for!(BedsPlanJson),
    },
    Schema {
        name: "converted",
        make: || schemars::schema_for!(ConvertedJson),
    },
    Schema {
        name: "compost-uses",
        make: || schemars::schema_for!(UsesJson),
    },
];
