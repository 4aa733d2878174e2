//! Why can a part not be used? One sentence each, in the words of the JSON.

use std::fmt;

use crate::stated::MOST_NITROGEN_PCT;

/// The minerals of a custom material, in the words of the JSON.
const MINERAL_FIELDS: &str =
    "phosphorus_pct_dry, potassium_pct_dry, calcium_pct_dry, magnesium_pct_dry and sodium_pct_dry";

/// Why a part cannot be used. Field names are those of the JSON.
#[derive(Clone, Debug, PartialEq)]
pub enum FoundError {
    /// A figure lies outside what is possible.
    OutOfRange {
        /// Name of the field.
        field: &'static str,
        /// What was stated, in the field's unit.
        stated: f64,
        /// Least that is accepted.
        least: f64,
        /// Most that is accepted.
        most: f64,
    },
    /// Fewer than two of carbon, nitrogen and C:N are stated.
    TooFew,
    /// Carbon, nitrogen and C:N are all stated and disagree.
    Contradiction {
        /// Carbon stated, percent of dry matter.
        carbon_pct_dry: f64,
        /// Nitrogen stated, percent of dry matter.
        nitrogen_pct_dry: f64,
        /// C:N stated.
        cn_ratio: f64,
    },
    /// Carbon, nitrogen, ash and minerals together exceed the dry matter.
    OverFull {
        /// Their sum, percent of dry matter.
        sum_pct_dry: f64,
    },
    /// Carbon is stated as 0 together with a C:N.
    RatioWithoutCarbon,
    /// Nitrogen and C:N, each possible alone, make more carbon or nitrogen than dry matter holds.
    CombinedOverFull {
        /// Carbon that follows, percent of dry matter.
        carbon_pct_dry: f64,
        /// Nitrogen that follows, percent of dry matter.
        nitrogen_pct_dry: f64,
    },
    /// Carbon, nitrogen and minerals together exceed the dry matter.
    MineralsOverFull {
        /// Their sum, percent of dry matter.
        sum_pct_dry: f64,
    },
    /// Two conditions that both say how wet the material is.
    TwoMoistures {
        /// Name of the one.
        first: String,
        /// Name of the other.
        second: String,
    },
    /// The name is empty.
    NoName,
    /// Neither the catalogue nor the garden knows the material.
    UnknownMaterial {
        /// The id that was given.
        id: String,
    },
    /// The material is listed for its caution alone: there are no figures for it.
    NoFigures {
        /// Its name.
        name: String,
    },
    /// Neither the catalogue nor the garden knows the measure.
    UnknownMeasure {
        /// The id that was given.
        id: String,
    },
    /// An amount by volume without a bulk density.
    NoDensity,
}

impl fmt::Display for FoundError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange {
                field,
                stated,
                least,
                most,
            } => {
                write!(
                    f,
                    "{field} must be between {least} and {most}, not {stated}"
                )
            }
            Self::TooFew => write!(
                f,
                "give two of carbon_pct_dry, nitrogen_pct_dry and cn_ratio"
            ),
            Self::Contradiction {
                carbon_pct_dry,
                nitrogen_pct_dry,
                cn_ratio,
            } => {
                if *nitrogen_pct_dry == 0.0 {
                    write!(
                        f,
                        "nitrogen_pct_dry is 0, so that there is no cn_ratio: leave cn_ratio out"
                    )
                } else {
                    write!(
                        f,
                        "carbon_pct_dry {carbon_pct_dry} over nitrogen_pct_dry {nitrogen_pct_dry} is {:.1}, not the stated cn_ratio {cn_ratio}: correct one or leave one out",
                        carbon_pct_dry / nitrogen_pct_dry
                    )
                }
            }
            Self::OverFull { sum_pct_dry } => write!(
                f,
                "carbon_pct_dry, nitrogen_pct_dry, ash_pct_dry add up to {sum_pct_dry:.1} % of the dry matter: they must stay within 100"
            ),
            Self::RatioWithoutCarbon => write!(
                f,
                "carbon_pct_dry is 0, so that there is no cn_ratio: leave cn_ratio out"
            ),
            Self::CombinedOverFull {
                carbon_pct_dry,
                nitrogen_pct_dry,
            } => write!(
                f,
                "nitrogen_pct_dry and cn_ratio make {carbon_pct_dry:.1} % carbon and {nitrogen_pct_dry:.1} % nitrogen of the dry matter: nitrogen must stay within {MOST_NITROGEN_PCT} and both together within 100"
            ),
            Self::MineralsOverFull { sum_pct_dry } => write!(
                f,
                "carbon, nitrogen, {MINERAL_FIELDS} add up to {sum_pct_dry:.1} % of the dry matter: they must stay within 100"
            ),
            Self::TwoMoistures { first, second } => write!(
                f,
                "condition must not be both \"{first}\" and \"{second}\", for each says how wet it is: keep one"
            ),
            Self::UnknownMaterial { id } => write!(
                f,
                "material \"{id}\" is not known: look it up in the list of materials"
            ),
            Self::NoFigures { name } => write!(
                f,
                "there are no figures for {name}, which is best kept out of a heap: leave it out"
            ),
            Self::UnknownMeasure { id } => write!(
                f,
                "measure \"{id}\" is not known: calibrate it, or give the amount in litres or kilograms"
            ),
            Self::NoName => write!(f, "name must not be empty"),
            Self::NoDensity => write!(
                f,
                "bulk_density_kg_m3 is needed when the amount is a volume: state it, or give the amount in kg or lb"
            ),
        }
    }
}

impl std::error::Error for FoundError {}
