//! The JSON that comes into and goes out of the program, and its schemas.
//!
//! Percent, litres and kilograms stand here and on screens; inside, fractions
//! and SI. Fields are only ever added within a major version.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod answer;
mod beds;
mod converted;
mod error;
mod finish;
mod garden_file;
mod hygiene;
mod journal_answer;
mod read;
mod request;
#[cfg(feature = "schema")]
mod schema;
mod shape;
mod simulation;
mod spoken;
mod today;
mod told;
mod when;

pub use answer::{
    AddedJson, BalanceJson, ConflictJson, FigureJson, MaterialJson, MixJson, RecipeJson,
    balance_json, material_json, mix_json,
};
pub use beds::{BedsFile, BedsPlanJson, beds_plan_json, read_beds, spoken_compost_m3};
pub use converted::{
    ConvertedJson, UsesJson, converted_cover, converted_nitrogen, converted_oxide,
    converted_weight, uses_json,
};
pub use error::WireError;
pub use finish::{
    DiversionJson, HomeTestJson, LedgerJson, ReadyJson, diversion_json, home_test_json,
    ledger_json, ready_json,
};
pub use garden_file::{GardenFile, garden_from};
pub use hygiene::{BeforeUseJson, HygieneJson, before_use_json, hygiene_json};
pub use journal_answer::{
    BedJson, BedsJson, CheckJson, CopiedJson, EntryJson, FaultJson, HeapJson, HeapShownJson,
    HeapsJson, ImportJson, LogJson, NamedJson, RecordedJson, StockJson, StoresJson, bed_json,
    entry_json, heap_json, heap_named, import_json, stores_json,
};
pub use read::{
    LARGEST_FILE_BYTES, read_balance, read_garden, read_mix, spoken_material, spoken_parts,
    spoken_reach, stores_in_reach, vocabulary, water_kg,
};
pub use request::{
    BalanceFile, CustomFile, MixFile, ObjectiveFile, PartFile, ReachFile, TargetFile,
};
#[cfg(feature = "schema")]
pub use schema::{SCHEMAS, Schema};
pub use simulation::{
    AheadQuestion, AheadShown, ChartShown, FieldShown, ForecastJson, FrameShown,
    LARGEST_CASE_BYTES, LayerShown, OptionShown, SimulationFile, SimulationJson, TableShown,
    check_work, forecast_json, read_simulation, read_weather, simulation_json, spoken_plan,
};
pub use spoken::{
    all_chosen, area_m2, chosen, length_m, mass_kg, measure_id, probe, share_pct, spoken_amount,
    temperature_c, volume_l,
};
pub use today::{DatedNeedJson, NeedJson, NeedsJson, QuietJson, ReasonJson, needs_json};
pub use told::{
    HeapTold, HeatTold, KeptOutTold, NeedTold, NutrientsTold, PaperQuestion, QuietTold,
    ReminderTold, RipenessTold, RuleTold, SheetTold, SignTold, TodayTold, ToldQuestion,
};
pub use when::{OffsetAt, WhenError, parse_since, parse_until, parse_when};

/// What a script or a spreadsheet reads is English and metric in every garden.
const ENGLISH: heapwright_texts::Locale =
    heapwright_texts::Locale::english(heapwright_quantity::UnitSystem::Metric);
