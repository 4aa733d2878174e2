//! Depth, area and volume; mass and volume; elements and oxides; nitrogen over the years; mixes.

use heapwright_catalogue::{CompostUse, Spreading, UseKind};
use heapwright_engine::spreading::compost::Compost;
use heapwright_engine::spreading::cover;
use heapwright_engine::spreading::nitrogen::{Later, schedule};
use heapwright_quantity::{Interval, Range};
use heapwright_terms::{
    CALCIUM_CARBONATE_OVER_CALCIUM, CALCIUM_OXIDE_OVER_CALCIUM, MAGNESIUM_OXIDE_OVER_MAGNESIUM,
    PHOSPHATE_OVER_PHOSPHORUS, POTASH_OVER_POTASSIUM,
};

use crate::beds_plan::rules;
use crate::question::{Accepted, Field, Known, QuestionError};

/// A layer on an area.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Covered {
    /// Area [m2].
    pub area_m2: f64,
    /// Depth [m].
    pub depth_m: f64,
    /// Volume [m3].
    pub volume_m3: f64,
}

/// The third of area, depth and volume from the other two.
///
/// # Errors
///
/// When not exactly two are given, or one of them is not above 0.
pub fn covered(
    area_m2: Option<f64>,
    depth_m: Option<f64>,
    volume_m3: Option<f64>,
) -> Result<Covered, QuestionError> {
    for (name, value) in [("area", area_m2), ("depth", depth_m), ("amount", volume_m3)] {
        if value.is_some_and(|value| !(value > 0.0 && value.is_finite())) {
            return Err(QuestionError::Number {
                field: Field(name.to_owned()),
                accepted: Accepted::Above0,
            });
        }
    }
    let (area_m2, depth_m, volume_m3) = match (area_m2, depth_m, volume_m3) {
        (Some(area), Some(depth), None) => (area, depth, cover::volume_m3(area, depth)),
        (Some(area), None, Some(volume)) => (area, cover::depth_m(volume, area), volume),
        (None, Some(depth), Some(volume)) => (cover::area_m2(volume, depth), depth, volume),
        _ => {
            return Err(QuestionError::Number {
                field: Field("area, depth and amount".to_owned()),
                accepted: Accepted::TwoOfThree,
            });
        }
    };
    Ok(Covered {
        area_m2,
        depth_m,
        volume_m3,
    })
}

/// A mass and its volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    /// Mass [kg].
    pub mass_kg: Interval,
    /// Volume [m3].
    pub volume_m3: Interval,
    /// Bulk density [kg/m3].
    pub bulk_density_kg_m3: Range,
}

/// The volume of a mass, or the mass of a volume, of compost of a density; the ends are those of
/// the density.
#[must_use]
pub fn weighed(mass_kg: Option<f64>, volume_m3: Option<f64>, density: Range) -> Option<Weighed> {
    match (mass_kg, volume_m3) {
        (Some(mass), None) => Some(Weighed {
            mass_kg: Interval::exact(mass),
            volume_m3: Interval {
                value: mass / density.typical,
                low: mass / density.high,
                high: mass / density.low,
            },
            bulk_density_kg_m3: density,
        }),
        (None, Some(volume)) => Some(Weighed {
            mass_kg: Interval {
                value: volume * density.typical,
                low: volume * density.low,
                high: volume * density.high,
            },
            volume_m3: Interval::exact(volume),
            bulk_density_kg_m3: density,
        }),
        _ => None,
    }
}

/// An oxide that labels name, and its element.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Oxide {
    /// P2O5.
    Phosphate,
    /// K2O.
    Potash,
    /// CaO.
    CalciumOxide,
    /// CaCO3.
    CalciumCarbonate,
    /// MgO.
    MagnesiumOxide,
}

impl Oxide {
    /// Every one.
    pub const ALL: [Self; 5] = [
        Self::Phosphate,
        Self::Potash,
        Self::CalciumOxide,
        Self::CalciumCarbonate,
        Self::MagnesiumOxide,
    ];

    /// Formula of the oxide.
    #[must_use]
    pub fn formula(self) -> &'static str {
        match self {
            Self::Phosphate => "P2O5",
            Self::Potash => "K2O",
            Self::CalciumOxide => "CaO",
            Self::CalciumCarbonate => "CaCO3",
            Self::MagnesiumOxide => "MgO",
        }
    }

    /// Sign of the element.
    #[must_use]
    pub fn element(self) -> &'static str {
        match self {
            Self::Phosphate => "P",
            Self::Potash => "K",
            Self::CalciumOxide | Self::CalciumCarbonate => "Ca",
            Self::MagnesiumOxide => "Mg",
        }
    }

    /// The oxide over the element in it.
    #[must_use]
    pub fn over_element(self) -> f64 {
        match self {
            Self::Phosphate => PHOSPHATE_OVER_PHOSPHORUS,
            Self::Potash => POTASH_OVER_POTASSIUM,
            Self::CalciumOxide => CALCIUM_OXIDE_OVER_CALCIUM,
            Self::CalciumCarbonate => CALCIUM_CARBONATE_OVER_CALCIUM,
            Self::MagnesiumOxide => MAGNESIUM_OXIDE_OVER_MAGNESIUM,
        }
    }
}

/// A question about nitrogen over the years.
#[derive(Clone, Debug, PartialEq)]
pub struct NitrogenQuestion {
    /// The compost.
    pub compost: Compost,
    /// How much of it [m3].
    pub volume_m3: f64,
    /// How many years, 1 to 50.
    pub years: u32,
    /// Share that is there in the first year, in place of what the compost suggests.
    pub first_year: Option<f64>,
    /// Share of what remains in later years, in place of the usual one.
    pub later: Option<Later>,
}

/// Nitrogen over the years.
#[derive(Clone, Debug, PartialEq)]
pub struct NitrogenOverYears {
    /// All nitrogen at typical figures [kg].
    pub nitrogen_kg: f64,
    /// Share that is there in the first year.
    pub first_year: Range,
    /// Share that is there in each year, first to last, at typical figures.
    pub shares: Vec<f64>,
    /// The same with the low first year and the low later share.
    pub low: Vec<f64>,
    /// The same with the high ones.
    pub high: Vec<f64>,
}

/// The most years.
const MOST_YEARS: u32 = 50;

/// How much nitrogen of compost is there for plants, year by year.
///
/// # Errors
///
/// When a figure has no meaning.
pub fn nitrogen_over_years(
    spreading: &Spreading,
    question: &NitrogenQuestion,
) -> Result<NitrogenOverYears, QuestionError> {
    let fail = |field: &str, accepted| {
        Err(QuestionError::Number {
            field: Field(field.to_owned()),
            accepted,
        })
    };
    if !(1..=MOST_YEARS).contains(&question.years) {
        return fail(
            "years",
            Accepted::Within {
                least: 1,
                most: MOST_YEARS,
            },
        );
    }
    if !(question.volume_m3 >= 0.0 && question.volume_m3.is_finite()) {
        return fail("amount", Accepted::ZeroOrMore);
    }
    let is_share = |share: f64| (0.0..=1.0).contains(&share);
    let later_right = match question.later {
        Some(Later::OfRemaining(share)) => is_share(share),
        Some(Later::Halving) | None => true,
    };
    if !(question.first_year.is_none_or(is_share) && later_right) {
        return fail("first year and later years", Accepted::Percent);
    }
    let rules = rules(spreading);
    let first_year = question.first_year.map_or_else(
        || question.compost.first_year_nitrogen(&rules),
        Range::exact,
    );
    let later = |usual: f64| question.later.unwrap_or(Later::OfRemaining(usual));
    let usual = rules.nitrogen_later;
    let years = question.years;
    Ok(NitrogenOverYears {
        nitrogen_kg: question.compost.typical(&rules).nitrogen * question.volume_m3,
        first_year,
        shares: schedule(first_year.typical, later(usual.typical), years),
        low: schedule(first_year.low, later(usual.low), years),
        high: schedule(first_year.high, later(usual.high), years),
    })
}

/// A question about a mix or a layer away from beds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MixedQuestion {
    /// The volume of the mix [m3].
    Volume(f64),
    /// The area [m2].
    Area(f64),
}

/// How much compost goes into it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mixed {
    /// The use.
    pub use_of: CompostUse,
    /// Usual least, usual amount, and the most [m3].
    pub compost_m3: Range,
}

/// How much compost goes into a mix of so much volume, or on so much area.
///
/// # Errors
///
/// When the use is not known, or is counted the other way.
pub fn in_mix(
    spreading: &Spreading,
    id: &str,
    question: MixedQuestion,
) -> Result<Mixed, QuestionError> {
    let Some(use_of) = spreading.use_of(id) else {
        let ids = spreading.uses().iter().map(|one| one.id.clone()).collect();
        return Err(QuestionError::Unknown {
            field: Field("use".to_owned()),
            said: id.to_owned(),
            accepted: Known::OneOf(ids),
        });
    };
    let (amount, field, accepted) = match (use_of.kind, question) {
        (UseKind::ShareOfVolume, MixedQuestion::Volume(volume)) => {
            (Some(volume), "amount", Accepted::Above0)
        }
        (UseKind::Depth, MixedQuestion::Area(area)) => (Some(area), "area", Accepted::Above0),
        (UseKind::ShareOfVolume, MixedQuestion::Area(_)) => {
            (None, "area", Accepted::AmountOfMixInstead)
        }
        (UseKind::Depth, MixedQuestion::Volume(_)) => (None, "amount", Accepted::AreaInstead),
    };
    match amount.filter(|amount| *amount > 0.0 && amount.is_finite()) {
        Some(amount) => Ok(Mixed {
            compost_m3: use_of.limit.scaled(amount),
            use_of: use_of.clone(),
        }),
        None => Err(QuestionError::Number {
            field: Field(field.to_owned()),
            accepted,
        }),
    }
}
