//! Questions in JSON: read, answered, and the answer held against what must always be so.

use heapwright_answers::{
    BalanceAnswer, BalanceQuestion, Mixture, RecipeAnswer, Status, what_is_in, what_to_add,
};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_quantity::Interval;
use heapwright_terms::Target;
use heapwright_wire::{balance_json, mix_json, read_balance, read_mix};

use crate::targets::{Outcome, length_class};

/// Balance questions with more in reach, or more in hand, are read and not solved: a search over
/// whole steps of many materials takes milliseconds, and a million of them hours.
const MOST_SOLVED: usize = 4;

/// Of the inputs of a run one in so many is solved, all are read: a million then take minutes.
const SOLVED_ONE_IN: u64 = 20;

/// How far a figure of a recipe may lie beyond its limit, as a share of it: what counts as inside.
const EDGE: f64 = 1e-5;

/// Reads a mixture question and answers it.
///
/// # Panics
///
/// When a figure is not finite or outside its interval, a share outside 0 to 1, an answer cannot be
/// written as JSON, a message is no single line, or a second answer differs.
pub fn mix_request(input: &[u8]) -> Outcome {
    let text = String::from_utf8_lossy(input);
    let catalogue = Catalogue::built_in();
    let (question, garden) = match read_mix(catalogue, &Garden::default(), &text) {
        Ok(read) => read,
        Err(error) => return refused(&error.to_string()),
    };
    let answer = match what_is_in(catalogue, &garden, &question) {
        Ok(answer) => answer,
        Err(error) => return refused(&error.to_string()),
    };
    check_mixture(&answer.mixture);
    assert!(answer.parts.len() == question.parts.len(), "a part is lost");
    check_json(&mix_json(catalogue, &answer));
    if question.parts.len() == 1 {
        assert_eq!(
            Ok(&answer),
            what_is_in(catalogue, &garden, &question).as_ref(),
            "two answers differ"
        );
    }
    format!(
        "mixture x{} {} notices {}{}",
        length_class(question.parts.len()),
        answer.notices.len(),
        if answer.mixture.carbon_to_nitrogen.is_some() {
            "C:N "
        } else {
            ""
        },
        if answer.mixture.volume_m3.is_some() {
            "volume"
        } else {
            ""
        },
    )
}

/// Reads a balance question and, when it is small and one of those that are drawn by their bytes,
/// answers it.
///
/// # Panics
///
/// As `balance_request_in_full`.
pub fn balance_request(input: &[u8]) -> Outcome {
    answered_balance(input, hash(input).is_multiple_of(SOLVED_ONE_IN))
}

/// Reads a balance question and, when it is small, answers it.
///
/// # Panics
///
/// As `mix_request`; also when an amount is negative, a stock is exceeded, or a recipe that is said
/// to meet the target does not.
pub fn balance_request_in_full(input: &[u8]) -> Outcome {
    answered_balance(input, true)
}

/// The 64-bit hash of Fowler, Noll and Vo (1a), mixed once more for its low bits: the same on every machine.
pub(crate) fn hash(input: &[u8]) -> u64 {
    let hash = input.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    });
    hash ^ (hash >> 32)
}

fn answered_balance(input: &[u8], is_drawn: bool) -> Outcome {
    let text = String::from_utf8_lossy(input);
    let catalogue = Catalogue::built_in();
    let (question, garden) = match read_balance(catalogue, &Garden::default(), &text) {
        Ok(read) => read,
        Err(error) => return refused(&error.to_string()),
    };
    let is_small = question.reach.len() <= MOST_SOLVED && question.have.len() <= MOST_SOLVED;
    if !is_small || !is_drawn {
        return format!("read {}", length_class(question.reach.len()));
    }
    let answer = match what_to_add(catalogue, &garden, &question) {
        Ok(answer) => answer,
        Err(error) => return refused(&error.to_string()),
    };
    check_balance(&question, &answer);
    check_json(&balance_json(catalogue, &answer));
    format!(
        "{:?} x{} of {} in reach, {} recipes",
        answer.status,
        length_class(question.have.len()),
        question.reach.len(),
        answer.recipes.len()
    )
}

/// Words by which kinds of message are told apart.
const KINDS: [&str; 28] = [
    "unknown field",
    "duplicate",
    "missing",
    "invalid type",
    "invalid length",
    "invalid value",
    "unknown word",
    "too deep",
    "it ends",
    "is there twice",
    "add up",
    "carbon and",
    "says how wet",
    "less than can be",
    "out of range",
    "trailing",
    "is not known",
    "can be",
    "not a condition",
    "no such measure",
    "unknown unit",
    "no number",
    "must be",
    "give two",
    "too many",
    "is needed",
    "no figures",
    "is empty",
];

/// A message is one line of a sensible length. Its kind, and how deep its field lies, is the outcome:
/// never its own words, which are as many as there are inputs.
pub(crate) fn refused(message: &str) -> Outcome {
    let control = message.chars().any(char::is_control);
    assert!(!control, "a message with control signs: {message:?}");
    let length = message.chars().count();
    assert!(
        (10..2000).contains(&length),
        "a message of {length} characters"
    );
    let kind = KINDS
        .iter()
        .find(|kind| message.contains(**kind))
        .unwrap_or(&"other");
    let field = message.split([' ', ':']).next().unwrap_or_default();
    let depth = field.matches(['.', '[']).count().min(4);
    format!("refused {kind} at {depth}")
}

/// The answer can be written as an object.
pub(crate) fn check_json(answer: &impl serde::Serialize) {
    match serde_json::to_string(answer) {
        Ok(text) => assert!(text.starts_with('{'), "an answer that is no object"),
        Err(error) => panic!("the answer cannot be written: {error}"),
    }
}

fn check_interval(name: &str, interval: Interval) {
    let Interval { value, low, high } = interval;
    assert!(
        value.is_finite() && low.is_finite() && high.is_finite() && low <= value && value <= high,
        "{name} {low} <= {value} <= {high}"
    );
    assert!(low >= 0.0, "{name} may be {low}");
}

fn check_mixture(mixture: &Mixture) {
    for (name, interval) in [
        ("wet mass", Some(mixture.wet_mass_kg)),
        ("dry mass", Some(mixture.dry_mass_kg)),
        ("water", Some(mixture.water_kg)),
        ("volume", mixture.volume_m3),
        ("carbon", Some(mixture.carbon_kg)),
        ("nitrogen", Some(mixture.nitrogen_kg)),
        ("C:N", mixture.carbon_to_nitrogen),
        ("measured C:N", mixture.carbon_to_nitrogen_measured),
        ("moisture", Some(mixture.moisture_wet_basis)),
        ("bulk density", mixture.bulk_density_kg_m3),
        ("free air space", mixture.free_air_space),
        ("biodegradable share", Some(mixture.biodegradable_dry_basis)),
        ("phosphorus", mixture.phosphorus.mass_kg),
        ("potassium", mixture.potassium.mass_kg),
        ("calcium", mixture.calcium.mass_kg),
        ("magnesium", mixture.magnesium.mass_kg),
        ("sodium", mixture.sodium.mass_kg),
    ] {
        if let Some(interval) = interval {
            check_interval(name, interval);
        }
    }
    let chance = mixture.chance;
    let shares = [
        chance.all,
        chance.carbon_to_nitrogen,
        chance.moisture,
        chance.free_air_space.unwrap_or(0.0),
    ];
    assert!(
        shares.iter().all(|share| (0.0..=1.0).contains(share)),
        "chances {shares:?}"
    );
    assert!(
        mixture.moisture_wet_basis.high <= 1.0,
        "moisture {:?}",
        mixture.moisture_wet_basis
    );
    assert!(
        mixture.free_air_space.is_none_or(|air| air.high <= 1.0),
        "air {:?}",
        mixture.free_air_space
    );
}

fn check_balance(question: &BalanceQuestion, answer: &BalanceAnswer) {
    assert!(
        !answer.recipes.is_empty(),
        "no recipe, not even the nearest"
    );
    assert_eq!(
        answer.conflict.is_some(),
        answer.status == Status::NotMet,
        "status and conflict"
    );
    for recipe in &answer.recipes {
        check_recipe(question, recipe);
        if answer.status == Status::Met {
            check_is_inside(&recipe.whole.mixture, &answer.target);
        }
    }
}

fn check_recipe(question: &BalanceQuestion, recipe: &RecipeAnswer) {
    check_mixture(&recipe.whole.mixture);
    let water_kg = recipe.whole.water_kg;
    assert!(
        water_kg >= 0.0 && water_kg <= question.water.most_kg * (1.0 + EDGE),
        "{water_kg} kg of water"
    );
    for added in &recipe.added {
        let count = added.found.amount.count;
        assert!(count.is_finite() && count > 0.0, "an addition of {count}");
        check_interval("an added mass", added.mass_kg);
        let item = &question.reach[added.reach];
        if let Some(step) = &item.step {
            let steps = count / step.count;
            assert!(
                (steps - steps.round()).abs() <= 1e-6 * steps.max(1.0),
                "{steps} steps"
            );
        }
        if let Some(most) = item
            .most
            .as_ref()
            .filter(|most| most.unit == added.found.amount.unit)
        {
            assert!(
                count <= most.count * (1.0 + EDGE),
                "{count} of {} there are",
                most.count
            );
        }
    }
}

/// C:N and moisture within their limits; air space only stands where every density is known.
fn check_is_inside(mixture: &Mixture, target: &Target) {
    let inside = |name: &str, value: f64, low: f64, high: f64| {
        assert!(
            value >= low * (1.0 - EDGE) && value <= high * (1.0 + EDGE),
            "met, with {name} {value} outside {low} to {high}"
        );
    };
    match mixture.carbon_to_nitrogen {
        Some(ratio) => inside(
            "C:N",
            ratio.value,
            target.carbon_to_nitrogen_low,
            target.carbon_to_nitrogen_high,
        ),
        None => panic!("met without nitrogen"),
    }
    inside(
        "moisture",
        mixture.moisture_wet_basis.value,
        target.moisture_wet_basis_low,
        target.moisture_wet_basis_high,
    );
}
