//! What is this mixture?

use heapwright_catalogue::Catalogue;
use heapwright_engine::mixture::{self, Mixture, Totals};
use heapwright_garden::{Found, FoundPart, Garden, Notice};
use heapwright_terms::{Part, Target};

use crate::question::{Accepted, Field, MOST_PARTS, QuestionError, SEED};

/// The question: what comes of these parts together?
#[derive(Clone, Debug, PartialEq)]
pub struct MixQuestion {
    /// What goes in.
    pub parts: Vec<Found>,
    /// Water from a can [kg], 0 or more.
    pub water_kg: f64,
    /// The region for the chance.
    pub target: Target,
}

/// What the keeper should know about an answer.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MixNotice {
    /// How a part was understood.
    Part(Notice),
    /// There is no nitrogen in it, so that there is no C:N.
    NoNitrogen,
    /// Volume, density and air space cannot be told, for the density of these is not known.
    VolumeUnknown {
        /// Names of the parts.
        names: Vec<String>,
    },
    /// As the figures are, nothing is left for air.
    NoAir,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct MixAnswer {
    /// The parts as they were understood, in the order of the question.
    pub parts: Vec<FoundPart>,
    /// What each part brings, at typical values.
    pub brought: Vec<Totals>,
    /// Water added from a can [kg].
    pub water_kg: f64,
    /// The mixture.
    pub mixture: Mixture,
    /// The region that the chance is about.
    pub target: Target,
    /// What to know about it, each once.
    pub notices: Vec<MixNotice>,
}

/// Computes a mixture.
///
/// Fails when there are no parts, too many, or one that cannot be used.
pub fn what_is_in(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &MixQuestion,
) -> Result<MixAnswer, QuestionError> {
    let parts = found_parts(catalogue, garden, &question.parts, "parts")?;
    if !(question.water_kg >= 0.0 && question.water_kg.is_finite()) {
        return Err(QuestionError::Number {
            field: Field("water".to_owned()),
            accepted: Accepted::AmountOfZeroOrMore,
        });
    }
    let target = crate::checked_target(question.target)?;
    answer(parts, question.water_kg, target).ok_or(QuestionError::Empty {
        field: Field("parts".to_owned()),
    })
}

/// All parts of a list as the engine needs them.
pub(crate) fn found_parts(
    catalogue: &Catalogue,
    garden: &Garden,
    parts: &[Found],
    list: &str,
) -> Result<Vec<FoundPart>, QuestionError> {
    if parts.len() > MOST_PARTS {
        return Err(QuestionError::TooMany {
            field: Field(list.to_owned()),
            most: MOST_PARTS,
        });
    }
    parts
        .iter()
        .enumerate()
        .map(|(index, found)| {
            garden
                .find(catalogue, found)
                .map_err(|error| QuestionError::Part {
                    field: Field::item(list, index),
                    error,
                })
        })
        .collect()
}

/// The answer for parts that were found; `None` when there is nothing in them.
pub(crate) fn answer(parts: Vec<FoundPart>, water_kg: f64, target: Target) -> Option<MixAnswer> {
    let engine_parts: Vec<Part> = parts.iter().map(|found| found.part.clone()).collect();
    let mixture = mixture::mixture(&engine_parts, water_kg, &target, SEED)?;
    Some(told(parts, water_kg, mixture, target))
}

/// The answer around a mixture that was computed.
pub(crate) fn told(
    parts: Vec<FoundPart>,
    water_kg: f64,
    mixture: Mixture,
    target: Target,
) -> MixAnswer {
    MixAnswer {
        brought: parts
            .iter()
            .map(|found| mixture::typical_totals(std::slice::from_ref(&found.part), 0.0))
            .collect(),
        notices: notices(&parts, &mixture),
        parts,
        water_kg,
        mixture,
        target,
    }
}

/// Notices on parts and mixture, sorted, each once.
fn notices(parts: &[FoundPart], mixture: &Mixture) -> Vec<MixNotice> {
    let mut notices: Vec<MixNotice> = parts
        .iter()
        .flat_map(|found| found.notices.iter().cloned().map(MixNotice::Part))
        .collect();
    if mixture.carbon_to_nitrogen.is_none() {
        notices.push(MixNotice::NoNitrogen);
    }
    let mut names: Vec<String> = parts
        .iter()
        .filter(|found| found.part.ingredient.bulk_density_kg_m3.is_none())
        .map(|found| found.name.clone())
        .collect();
    names.sort();
    names.dedup();
    if !names.is_empty() {
        notices.push(MixNotice::VolumeUnknown { names });
    }
    if mixture.free_air_space.is_some_and(|air| air.value <= 0.0) {
        notices.push(MixNotice::NoAir);
    }
    notices.sort();
    notices.dedup();
    notices
}
