//! What does the world know about compostable materials, and what do people call them?
//!
//! The tables in `tables/` hold every figure with its sources, in percent and
//! litres as people read them. The build checks them (`build/rules.rs`) and
//! stops with table, row and column when one is wrong; the program carries them as
//! terse text. [`Catalogue::built_in`] gives them as fractions and SI units: that
//! happens here and nowhere else.
//!
//! | table | read with |
//! |---|---|
//! | `materials.csv` | [`Catalogue::materials`], [`Catalogue::material`] |
//! | `names.csv` | [`Catalogue::names`], [`Catalogue::search`], [`Catalogue::resolve`] |
//! | `sources.csv` | [`Catalogue::source`] |
//! | `measures.csv` | [`Catalogue::measures`], [`Catalogue::measure_words`] |
//! | `conditions.csv`, `condition_effects.csv` | [`Catalogue::conditions`], [`Condition::effect_on`] |
//! | `cautions.csv` | [`Catalogue::cautions_for`] |
//! | `hygiene_rules.csv` | [`hygiene_rules`] |
//! | `assumptions.csv` | [`Catalogue::assumption`] |
//! | `crops.csv`, `crop_groups.csv`, `compost_uses.csv`, `spreading.csv` | [`Spreading`] |
//! | `seasons.csv` | [`seasons()`], [`in_season`] |
//!
//! The remarks on figures and names (`note`, `notes`) come with the feature
//! `remarks`, which is on by default; without it they are empty.
//!
//! A range that the table gives by its typical value alone comes out exact;
//! how widely such a figure spreads is an assumption
//! (`spread_relative.*` in `assumptions.csv`) that the garden applies.

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod catalogue;
mod distance;
mod normalise;
mod records;
mod rows;
mod search;
mod seasons;
mod spreading;
mod words;

pub use catalogue::{Catalogue, group_name, hygiene_rules};
pub use records::{
    Assumption, CautionAbout, CautionText, Condition, ConditionEffect, FoodBeds, HygieneRule,
    Measure, Name, NameKind, Source, SourceKind,
};
pub use search::{Match, MatchRank, OwnMaterial, Resolution, SearchIndex};
pub use seasons::{Hemisphere, Season, in_season, seasons};
pub use spreading::{CompostUse, Crop, CropGroup, Spreading, SpreadingFigure, UseKind};
#[cfg(feature = "all-languages")]
pub use words::GERMAN;
pub use words::Word;
