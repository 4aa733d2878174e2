//! One file a question: from what the keeper asks to a plain answer.
//!
//! Each question reads the garden and the catalogue, shapes what the engine
//! needs, computes, and returns plain data with reasons, ranges and sources. It
//! is the only place where garden and engine meet, and it reads from top to
//! bottom like a recipe. It knows nothing of faces: no sentence, no JSON, no
//! drawing.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod beds_plan;
mod before_use;
mod converted;
mod diversion;
mod figures;
mod fits;
mod forecast;
mod hygiene;
mod ledger;
mod lots;
mod on_the_map;
mod per_caddy;
mod question;
mod ready;
mod season;
mod simulated;
pub mod today;
mod what_is_in;
mod what_to_add;
mod yields;

pub use beds_plan::{
    BedAnswer, BedAsked, BedsAnswer, BedsNotice, BedsQuestion, CompostAsked, DressingAsked,
    FromJournal, OffFood, beds_of_journal, beds_plan, compost_of_heap, compost_of_tables,
    never_on_this_bed, rules,
};
pub use before_use::{BeforeUse, before_use, lasting_cautions};
pub use converted::{
    Covered, Mixed, MixedQuestion, NitrogenOverYears, NitrogenQuestion, Oxide, Weighed, covered,
    in_mix, nitrogen_over_years, weighed,
};
pub use diversion::{DiversionAnswer, DiversionQuestion, MonthKept, what_was_kept_out};
pub use figures::{Figure, FigureLine, figure_lines};
pub use fits::{MoreThanFits, more_than_fits};
pub use forecast::{
    ForecastAnswer, ForecastQuestion, Gainsaid, Plan, PlanAnswer, Planned, PreparedForecast,
    ProbeReading, Today, garden_climate, usual_place, what_will_happen,
};
pub use heapwright_engine::balance::{Limit, Miss, Objective, RecipeKind, WaterSupply};
pub use heapwright_engine::mixture::{Chance, Mixture, Nutrient, Totals};
pub use heapwright_terms::{
    CALCIUM_CARBONATE_OVER_CALCIUM, CALCIUM_OXIDE_OVER_CALCIUM, MAGNESIUM_OXIDE_OVER_MAGNESIUM,
    PHOSPHATE_OVER_PHOSPHORUS, POTASH_OVER_POTASSIUM,
};
pub use hygiene::{
    HygieneAnswer, HygieneError, HygieneNotice, HygieneQuestion, RuleAnswer, ShareBasis, Vessel,
    hygiene_of_heap, hygiene_of_record,
};
pub use ledger::{
    BroughtBy, LABEL_OVER_ELEMENT, LedgerAnswer, LedgerQuestion, where_nutrients_are,
};
pub use on_the_map::{MapPoint, Move, OnTheMap, on_the_map};
pub use per_caddy::{PerCaddy, per_caddy};
pub use question::{Accepted, Field, Known, QuestionError, SEED, USUAL_TARGET, checked_target};
pub use ready::{Doubt, Finding, Hint, ReadyAnswer, ReadyQuestion, Sign, is_it_ready};
pub use season::{SeasonHeap, SeasonMonth, season};
pub use simulated::{
    Ahead, Doing, Done, FedPart, FieldsAt, Happening, MemberRuns, Prepared, Runner,
    SimulationAnswer, SimulationNotice, SimulationQuestion, Spread, WeatherGiven, one_by_one,
    prepared, what_happens,
};
pub use what_is_in::{MixAnswer, MixNotice, MixQuestion, what_is_in};
pub use what_to_add::{
    Added, BalanceAnswer, BalanceQuestion, Conflict, Help, InReach, RecipeAnswer, Status,
    what_to_add,
};

pub use yields::YieldAnswer;

/// What ripeness, the account and what was kept out are to the engine.
pub mod finish {
    pub use heapwright_engine::finish::accounts::{Accounts, Element, ElementAccount};
    pub use heapwright_engine::finish::diversion::{Benefit, Climate, KeptOut, Kind, Otherwise};
    pub use heapwright_engine::finish::learnt::FARTHEST;
    pub use heapwright_engine::finish::signs::{
        Family, HeatingClass, MaturityClass, RespirationClass, Standing, carbon_of_uptake,
    };
    pub use heapwright_engine::finish::verdict::{Judgement, Shown, Verdict};
}

/// What beds and compost are to the engine.
pub mod spreading {
    pub use heapwright_engine::spreading::bed::{
        Allowed, BedLimit, Carried, Maturity, Soil, State,
    };
    pub use heapwright_engine::spreading::compost::{Brought, Compost};
    pub use heapwright_engine::spreading::nitrogen::Later;
    pub use heapwright_engine::spreading::plan::Binding;
    pub use heapwright_engine::spreading::rules::Rules;
}

/// What the climate of a place is to the weather.
pub mod climate {
    pub use heapwright_weather::ClimateError;
}

/// What a heap is to the engine: its words for shapes, actions and figures.
pub mod heap {
    pub use heapwright_engine::heap::{
        Action, Band, Bands, CellField, Closure, Cover, Enclosure, Ground, Model, Overrides, Run,
        Shape, SimulationError, Snapshot, Summary, Wall, WeatherHour,
    };
}

/// Time and temperature to the engine: records, rules, shares.
pub mod heat {
    pub use heapwright_engine::hygiene::share::{Estimate, Outline, Treated, hot_share_of_field};
    pub use heapwright_engine::hygiene::{
        Condition, FLIES_D, Findings, HOUR_THRESHOLDS_C, Living, Method, Missing, Outcome, Point,
        RULE_THRESHOLDS_C, Reach, Record, RecordError, RecordOptions, Status, Stay, Turn,
        USUAL_PROBE_ERROR_K,
    };
}
