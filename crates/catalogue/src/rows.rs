//! What does one line of each table look like in the program? Plain constants, percent as in the file.

use heapwright_terms::{Caution, Degradability, Evidence, FigureGroup, Group};

use crate::{NameKind, SourceKind};

/// Low, typical and high.
pub(crate) type Three = [f64; 3];

pub(crate) struct MaterialRow {
    pub id: &'static str,
    pub name: &'static str,
    pub group: Group,
    pub nitrogen_pct_dry: Option<Three>,
    pub cn: Option<Three>,
    pub moisture_pct_wet: Option<Three>,
    pub bulk_density_kg_m3: Option<Three>,
    pub carbon_pct_dry_typical: Option<f64>,
    pub ash_pct_dry: Option<f64>,
    pub lignin_pct_dry: Option<f64>,
    pub cellulose_pct_dry: Option<f64>,
    pub hemicellulose_pct_dry: Option<f64>,
    pub phosphorus_pct_dry: Option<f64>,
    pub potassium_pct_dry: Option<f64>,
    pub calcium_pct_dry: Option<f64>,
    pub magnesium_pct_dry: Option<f64>,
    pub sodium_pct_dry: Option<f64>,
    pub ph: Option<f64>,
    pub degradability: Degradability,
    pub cautions: &'static [Caution],
    pub sources: &'static [(FigureGroup, &'static [&'static str])],
    pub evidence: Evidence,
    pub notes: &'static str,
}

pub(crate) struct NameRow {
    pub id: &'static str,
    pub name: &'static str,
    pub kind: NameKind,
    pub note: &'static str,
}

pub(crate) struct SourceRow {
    pub key: &'static str,
    pub kind: SourceKind,
    pub citation: &'static str,
    pub address: &'static str,
}

pub(crate) struct MeasureRow {
    pub id: &'static str,
    pub name: &'static str,
    pub plural: &'static str,
    pub other_words: &'static [&'static str],
    pub volume_l: Three,
    pub sources: &'static [&'static str],
    pub note: &'static str,
}

pub(crate) struct ConditionRow {
    pub id: &'static str,
    pub name: &'static str,
    pub other_words: &'static [&'static str],
}

pub(crate) struct ConditionEffectRow {
    pub condition: &'static str,
    pub groups: &'static [Group],
    pub materials: &'static [&'static str],
    pub moisture_pct_wet: Option<Three>,
    pub bulk_density_factor: Option<Three>,
    pub sources: &'static [&'static str],
    pub note: &'static str,
}

pub(crate) enum About {
    Flag(Caution),
    Material(&'static str),
}

pub(crate) struct CautionRow {
    pub about: About,
    pub reason: &'static str,
    pub advice: &'static str,
    pub sources: &'static [&'static str],
}

pub(crate) struct AssumptionRow {
    pub key: &'static str,
    pub values: Three,
    pub unit: &'static str,
    pub sources: &'static [&'static str],
    pub note: &'static str,
}

// A percentage may look like a constant of mathematics.
#[allow(clippy::approx_constant)]
mod tables {
    use super::*;

    include!(concat!(env!("OUT_DIR"), "/tables.rs"));
}
pub(crate) use tables::*;
