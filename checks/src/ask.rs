//! How is a question put? As JSON, read and answered as the command line does it.

use heapwright_answers::{BalanceAnswer, MixAnswer, what_is_in, what_to_add};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_wire::{BalanceJson, MixJson, balance_json, mix_json, read_balance, read_mix};
use serde_json::{Value, json};

/// Carbon and nitrogen for a part of which only moisture or density matters: C:N 30.
pub const ANY_CARBON_AND_NITROGEN: (f64, f64) = (45.0, 1.5);

/// The catalogue that is built in.
#[must_use]
pub fn catalogue() -> &'static Catalogue {
    Catalogue::built_in()
}

/// A custom material: moisture in percent, carbon and nitrogen in percent of dry matter.
#[must_use]
pub fn custom(
    name: &str,
    moisture_pct: f64,
    (carbon_pct_dry, nitrogen_pct_dry): (f64, f64),
) -> Value {
    json!({
        "name": name,
        "moisture_pct": moisture_pct,
        "carbon_pct_dry": carbon_pct_dry,
        "nitrogen_pct_dry": nitrogen_pct_dry,
    })
}

/// A part made of a custom material.
#[must_use]
pub fn part(custom: &Value, amount: &str) -> Value {
    json!({ "custom": custom, "amount": amount })
}

/// A custom part by mass [kg].
#[must_use]
pub fn weighed(
    name: &str,
    mass_kg: f64,
    moisture_pct: f64,
    carbon_and_nitrogen: (f64, f64),
) -> Value {
    part(
        &custom(name, moisture_pct, carbon_and_nitrogen),
        &format!("{mass_kg} kg"),
    )
}

/// The answer to a mixture question, as the engine has it.
///
/// # Panics
///
/// When the question is refused.
#[must_use]
pub fn mix_answer(request: &Value) -> MixAnswer {
    let text = request.to_string();
    let answer = read_mix(catalogue(), &Garden::default(), &text)
        .and_then(|(question, garden)| Ok(what_is_in(catalogue(), &garden, &question)?));
    match answer {
        Ok(answer) => answer,
        Err(error) => panic!("the question {text} was refused: {error}"),
    }
}

/// The answer to a mixture question, as JSON gives it.
#[must_use]
pub fn mix(request: &Value) -> MixJson {
    mix_json(catalogue(), &mix_answer(request))
}

/// The answer to a balance question, as the engine has it.
///
/// # Panics
///
/// When the question is refused.
#[must_use]
pub fn balance_answer(request: &Value) -> BalanceAnswer {
    let text = request.to_string();
    let answer = read_balance(catalogue(), &Garden::default(), &text)
        .and_then(|(question, garden)| Ok(what_to_add(catalogue(), &garden, &question)?));
    match answer {
        Ok(answer) => answer,
        Err(error) => panic!("the question {text} was refused: {error}"),
    }
}

/// The answer to a balance question, as JSON gives it.
#[must_use]
pub fn balance(request: &Value) -> BalanceJson {
    balance_json(catalogue(), &balance_answer(request))
}
