//! What should go with what is in hand?

use heapwright_catalogue::Catalogue;
use heapwright_engine::balance::{
    self as engine, Balance, Limit, Miss, Objective, Question, Reach, Recipe, RecipeKind,
    WaterSupply,
};
use heapwright_engine::mixture::{self, Totals};
use heapwright_garden::{Found, FoundError, FoundPart, Garden, Stuff};
use heapwright_quantity::{Amount, Interval, MassUnit, Unit};
use heapwright_terms::{Part, PartAmount, Target};

use crate::question::{Accepted, Field, MOST_PARTS, QuestionError, SEED};
use crate::what_is_in::{self, MixAnswer};

/// Something that may be added.
#[derive(Clone, Debug, PartialEq)]
pub struct InReach {
    /// What it is.
    pub stuff: Stuff,
    /// How much of it there is; `None` for plenty.
    pub most: Option<Amount>,
    /// In what it is handed out, whole ones only; `None` for any amount.
    pub step: Option<Amount>,
    /// How unwelcome it is to use: 1 is usual.
    pub effort: f64,
}

/// The question: what goes with this?
#[derive(Clone, Debug, PartialEq)]
pub struct BalanceQuestion {
    /// What is in hand and will go in.
    pub have: Vec<Found>,
    /// What may go with it.
    pub reach: Vec<InReach>,
    /// Water from a can.
    pub water: WaterSupply,
    /// The region to reach.
    pub target: Target,
    /// What makes the first recipe best.
    pub objective: Objective,
    /// True to look for other recipes besides the first.
    pub alternatives: bool,
}

/// One addition of a recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct Added {
    /// Index in the question's `reach`.
    pub reach: usize,
    /// The part, with the amount as it is handed out.
    pub found: FoundPart,
    /// How heavy it is [kg].
    pub mass_kg: Interval,
    /// What it brings, at typical values.
    pub brought: Totals,
}

/// A recipe and what comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct RecipeAnswer {
    /// Why it is offered.
    pub kind: RecipeKind,
    /// What to add, in the order of the question's `reach`; nothing that is not used.
    pub added: Vec<Added>,
    /// The whole mixture: what is in hand, what is added, and the water.
    pub whole: MixAnswer,
    /// False when the search was cut short, or was a climb and not a proof.
    pub proven: bool,
}

/// Something that would help where the region cannot be reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Help {
    /// Something dry and brown.
    DryBrown,
    /// Something dry that is not so poor in nitrogen as what was used.
    DryAndRicher,
    /// Something with more carbon for its nitrogen.
    MoreCarbon,
    /// Something green, rich in nitrogen.
    MoreNitrogen,
    /// Water.
    Water,
    /// Something coarse and stiff that holds the heap open.
    Coarse,
    /// Something finer.
    Fine,
    /// More of what is there already.
    LargerStock,
    /// Parts of the units in which it is handed out.
    PartUnits,
}

/// What stands in the way.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// The limits that the nearest mixture misses.
    pub misses: Vec<Miss>,
    /// Limits each of which, dropped alone, would let all others be met.
    pub any_one_dropped_would_do: Vec<Limit>,
    /// What would help, most important first.
    pub help: Vec<Help>,
    /// What is in hand lies in the region already, once units may be divided.
    pub parts_of_units_would_do: bool,
}

/// How it went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// The region is reached.
    Met,
    /// It is not; the recipe is the nearest.
    NotMet,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct BalanceAnswer {
    /// How it went.
    pub status: Status,
    /// What is in hand, by itself; `None` when there is nothing in hand.
    pub in_hand: Option<MixAnswer>,
    /// The recipes, best first; exactly one, the nearest, when not met.
    pub recipes: Vec<RecipeAnswer>,
    /// What stands in the way, when not met.
    pub conflict: Option<Conflict>,
    /// The region that was asked for.
    pub target: Target,
}

/// Finds recipes.
///
/// Fails when there is nothing in hand and nothing in reach, when a part or a
/// material cannot be used, or a limit cannot be.
pub fn what_to_add(
    catalogue: &Catalogue,
    garden: &Garden,
    question: &BalanceQuestion,
) -> Result<BalanceAnswer, QuestionError> {
    let target = crate::checked_target(question.target)?;
    let have = what_is_in::found_parts(catalogue, garden, &question.have, "have")?;
    if question.reach.len() > MOST_PARTS {
        return Err(QuestionError::TooMany {
            field: Field("reach".to_owned()),
            most: MOST_PARTS,
        });
    }
    let reach = question
        .reach
        .iter()
        .enumerate()
        .map(|(index, item)| in_reach(catalogue, garden, item, &Field::item("reach", index)))
        .collect::<Result<Vec<_>, _>>()?;
    let engine_question = Question {
        in_hand: have.iter().map(|found| found.part.clone()).collect(),
        reach: reach.iter().map(|(reach, _)| reach.clone()).collect(),
        water: question.water,
        target,
        objective: question.objective,
        alternatives: question.alternatives,
        seed: SEED,
    };
    let in_hand = what_is_in::answer(have.clone(), 0.0, target);
    let told = |recipe: Recipe| recipe_answer(&have, &reach, recipe, target);
    match engine::balance(&engine_question) {
        Balance::Met(recipes) => Ok(BalanceAnswer {
            status: Status::Met,
            in_hand,
            recipes: recipes.into_iter().map(told).collect(),
            conflict: None,
            target,
        }),
        Balance::NotMet { nearest, conflict } => {
            let help = help(&conflict, question, &nearest);
            Ok(BalanceAnswer {
                status: Status::NotMet,
                in_hand,
                recipes: vec![told(*nearest)],
                conflict: Some(Conflict {
                    help,
                    misses: conflict.misses,
                    any_one_dropped_would_do: conflict.any_one_dropped_would_do,
                    parts_of_units_would_do: conflict.parts_of_units_would_do,
                }),
                target,
            })
        }
        Balance::Nothing => Err(QuestionError::Empty {
            field: Field("have".to_owned()),
        }),
    }
}

/// A material in reach as the engine needs it, and one unit of it as found.
fn in_reach(
    catalogue: &Catalogue,
    garden: &Garden,
    item: &InReach,
    field: &Field,
) -> Result<(Reach, FoundPart), QuestionError> {
    let wrong = |error: FoundError| QuestionError::Part {
        field: field.clone(),
        error,
    };
    if !(item.effort > 0.0 && item.effort.is_finite()) {
        return Err(QuestionError::Number {
            field: field.inside("effort"),
            accepted: Accepted::NumberAbove0,
        });
    }
    let one = item.step.clone().unwrap_or(Amount {
        count: 1.0,
        unit: Unit::Mass(MassUnit::Kilogram),
    });
    let unit = garden
        .find(
            catalogue,
            &Found {
                stuff: item.stuff.clone(),
                amount: one,
            },
        )
        .map_err(wrong)?;
    let most_units = match &item.most {
        None => f64::INFINITY,
        Some(most) => {
            let most = garden.part_amount(catalogue, most).map_err(wrong)?;
            units_in(&most, &unit.part).ok_or_else(|| wrong(FoundError::NoDensity))?
        }
    };
    let whole = item.step.is_some();
    let reach = Reach {
        ingredient: unit.part.ingredient.clone(),
        unit: unit.part.amount.clone(),
        whole,
        // A stock of exactly three buckets is three, whatever rounding says.
        most_units: if whole {
            (most_units * (1.0 + 1e-9)).floor()
        } else {
            most_units
        },
        effort: item.effort,
    };
    Ok((reach, unit))
}

/// One scoop of each thing in reach, as found.
pub(crate) fn units_of_reach(
    catalogue: &Catalogue,
    garden: &Garden,
    reach: &[InReach],
) -> Result<Vec<FoundPart>, QuestionError> {
    reach
        .iter()
        .enumerate()
        .map(|(index, item)| {
            in_reach(catalogue, garden, item, &Field::item("reach", index)).map(|(_, unit)| unit)
        })
        .collect()
}

/// How many of one unit an amount is, at typical volume and density.
fn units_in(amount: &PartAmount, unit: &Part) -> Option<f64> {
    let volume = |amount: &PartAmount| match amount {
        PartAmount::VolumeM3 { count, each_m3, .. } => Some(count * each_m3.typical),
        PartAmount::MassKg(_) => None,
    };
    let density = unit
        .ingredient
        .bulk_density_kg_m3
        .map(|density| density.typical);
    let mass = |amount: &PartAmount| match amount {
        PartAmount::MassKg(mass_kg) => Some(*mass_kg),
        PartAmount::VolumeM3 { .. } => Some(volume(amount)? * density?),
    };
    match (volume(amount), volume(&unit.amount)) {
        (Some(all), Some(one)) => Some(all / one),
        _ => Some(mass(amount)? / mass(&unit.amount)?),
    }
}

fn recipe_answer(
    have: &[FoundPart],
    reach: &[(Reach, FoundPart)],
    recipe: Recipe,
    target: Target,
) -> RecipeAnswer {
    let added: Vec<Added> = recipe
        .units
        .iter()
        .enumerate()
        .filter(|(_, units)| **units > 0.0)
        .map(|(index, units)| added(index, &reach[index].1, *units))
        .collect();
    let parts: Vec<FoundPart> = have
        .iter()
        .cloned()
        .chain(added.iter().map(|added| added.found.clone()))
        .collect();
    RecipeAnswer {
        kind: recipe.kind,
        added,
        whole: what_is_in::told(parts, recipe.water_kg, recipe.mixture, target),
        proven: recipe.proven,
    }
}

fn added(reach: usize, unit: &FoundPart, units: f64) -> Added {
    let mut found = unit.clone();
    found.amount.count *= units;
    found.part.amount = match &unit.part.amount {
        PartAmount::MassKg(mass_kg) => PartAmount::MassKg(mass_kg * units),
        PartAmount::VolumeM3 {
            measure,
            count,
            each_m3,
        } => PartAmount::VolumeM3 {
            measure: measure.clone(),
            count: count * units,
            each_m3: *each_m3,
        },
    };
    let brought = mixture::typical_totals(std::slice::from_ref(&found.part), 0.0);
    let mass_kg = mixture::mixture(
        std::slice::from_ref(&found.part),
        0.0,
        &crate::USUAL_TARGET,
        SEED,
    )
    .map_or(Interval::exact(brought.wet_mass_kg), |mixture| {
        mixture.wet_mass_kg
    });
    Added {
        reach,
        found,
        mass_kg,
        brought,
    }
}

/// What would help, from the limits that are missed.
fn help(conflict: &engine::Conflict, question: &BalanceQuestion, nearest: &Recipe) -> Vec<Help> {
    let missed = |limit: Limit| conflict.misses.iter().any(|miss| miss.limit == limit);
    let mut help = Vec::new();
    if conflict.parts_of_units_would_do {
        return vec![Help::PartUnits];
    }
    // Each way out must not make another miss worse: greens are wet, and the
    // poorest browns pass the highest C:N before they have dried anything.
    match (
        missed(Limit::MoistureHigh),
        missed(Limit::CarbonToNitrogenHigh),
        missed(Limit::CarbonToNitrogenLow),
    ) {
        (true, true, _) => help.push(Help::DryAndRicher),
        (true, false, _) => help.push(Help::DryBrown),
        (false, true, _) => help.push(Help::MoreNitrogen),
        (false, false, true) => help.push(Help::MoreCarbon),
        (false, false, false) => {}
    }
    if missed(Limit::MoistureLow) {
        help.push(Help::Water);
    }
    if missed(Limit::FreeAirSpaceLow) {
        help.push(Help::Coarse);
    }
    if missed(Limit::FreeAirSpaceHigh) {
        help.push(Help::Fine);
    }
    let used_up = question
        .reach
        .iter()
        .zip(&nearest.units)
        .any(|(reach, units)| reach.most.is_some() && *units > 0.0);
    if used_up {
        help.push(Help::LargerStock);
    }
    help
}
