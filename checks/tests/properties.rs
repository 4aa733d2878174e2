//! What must hold of every question, through the whole stack.

#![allow(clippy::unwrap_used)]

use heapwright_checks::{assert_agree, balance, balance_answer, custom, mix, part};
use heapwright_engine::mixture::{Totals, typical_totals};
use heapwright_garden::{Found, Garden};
use heapwright_wire::{FigureJson, read_balance, read_mix};
use proptest::prelude::*;
use serde_json::{Value, json};

/// One material in reach, handed out in whole steps.
#[derive(Clone, Debug)]
struct Stepped {
    moisture_pct: f64,
    carbon_pct: f64,
    nitrogen_pct: f64,
    step_kg: f64,
    most: u32,
}

prop_compose! {
    fn any_stepped()(
        moisture_pct in 5.0..90.0_f64,
        carbon_pct in 38.0..52.0_f64,
        nitrogen_pct in 0.1..4.5_f64,
        step_kg in 0.3..4.0_f64,
        most in 1..7_u32,
    ) -> Stepped {
        Stepped { moisture_pct, carbon_pct, nitrogen_pct, step_kg, most }
    }
}

impl Stepped {
    fn custom(&self, name: &str) -> Value {
        custom(
            name,
            self.moisture_pct,
            (self.carbon_pct, self.nitrogen_pct),
        )
    }
}

const WATER_STEP_KG: f64 = 1.0;
const MOST_WATER_STEPS: u32 = 4;

/// What is in hand and what may go with it, by so many steps.
fn question(hand: &[Stepped], reach: &[Stepped], target: &Value) -> Value {
    let have: Vec<Value> = hand
        .iter()
        .enumerate()
        .map(|(index, stuff)| {
            part(
                &stuff.custom(&format!("hand {index}")),
                &format!("{} kg", 4.0 * stuff.step_kg),
            )
        })
        .collect();
    let reach: Vec<Value> = reach
        .iter()
        .enumerate()
        .map(|(index, stuff)| {
            json!({
                "custom": stuff.custom(&format!("reach {index}")),
                "step": format!("{} kg", stuff.step_kg),
                // A hair more than whole steps, so that rounding cannot take one away.
                "max": format!("{} kg", stuff.step_kg * (f64::from(stuff.most) + 0.01)),
            })
        })
        .collect();
    json!({
        "have": have,
        "reach": reach,
        "water": { "max": format!("{} kg", f64::from(MOST_WATER_STEPS) * WATER_STEP_KG), "step": format!("{WATER_STEP_KG} kg") },
        "target": target,
        "objective": "least_mass",
    })
}

/// Every combination of steps tried by hand: the least added mass within the target narrowed by
/// `margin` of itself (widened when it is negative), or none.
fn tried_by_hand(request: &Value, reach: &[Stepped], margin: f64) -> Option<f64> {
    let (question, garden) = read_balance(
        heapwright_checks::catalogue(),
        &Garden::default(),
        &request.to_string(),
    )
    .unwrap();
    let totals = |found: &[Found]| -> Vec<Totals> {
        found
            .iter()
            .map(|found| {
                let part = garden
                    .find(heapwright_checks::catalogue(), found)
                    .unwrap()
                    .part;
                typical_totals(&[part], 0.0)
            })
            .collect()
    };
    let hand = totals(&question.have);
    let steps = totals(
        &question
            .reach
            .iter()
            .map(|item| Found {
                stuff: item.stuff.clone(),
                amount: item.step.clone().unwrap(),
            })
            .collect::<Vec<_>>(),
    );
    let target = question.target;
    let inside = |value: f64, low: f64, high: f64| {
        value >= low * (1.0 + margin) && value <= high * (1.0 - margin)
    };
    let mut counts = vec![0_u32; reach.len() + 1];
    let mut least: Option<f64> = None;
    loop {
        let mut sum = Totals::default();
        for unit in &hand {
            sum.add(unit, 1.0);
        }
        let in_hand_kg = sum.wet_mass_kg;
        for (unit, count) in steps.iter().zip(&counts) {
            sum.add(unit, f64::from(*count));
        }
        sum.add_water(f64::from(counts[reach.len()]) * WATER_STEP_KG);
        let added = sum.wet_mass_kg - in_hand_kg;
        let fits = inside(
            sum.carbon_kg / sum.nitrogen_kg,
            target.carbon_to_nitrogen_low,
            target.carbon_to_nitrogen_high,
        ) && inside(
            sum.moisture_wet_basis(),
            target.moisture_wet_basis_low,
            target.moisture_wet_basis_high,
        );
        if fits && least.is_none_or(|least| added < least) {
            least = Some(added);
        }
        // The next combination, like an odometer.
        let mut place = 0;
        loop {
            let most = reach
                .get(place)
                .map_or(MOST_WATER_STEPS, |stuff| stuff.most);
            if counts[place] < most {
                counts[place] += 1;
                break;
            }
            counts[place] = 0;
            place += 1;
            if place == counts.len() {
                return least;
            }
        }
    }
}

/// Cases in which so little of a limit decides are left to either answer.
const HAIR: f64 = 1e-6;

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn prop_no_combination_by_hand_is_lighter(
        hand in prop::collection::vec(any_stepped(), 1..3),
        reach in prop::collection::vec(any_stepped(), 1..4),
        ratio_low in 15.0..35.0_f64, ratio_width in 2.0..20.0_f64,
        moisture_low in 40.0..60.0_f64, moisture_width in 2.0..15.0_f64,
    ) {
        let target = json!({
            "cn_ratio": [ratio_low, ratio_low + ratio_width],
            "moisture_pct": [moisture_low, moisture_low + moisture_width],
        });
        let request = question(&hand, &reach, &target);
        let found = balance(&request);
        // Nothing is claimed that a slightly wider region does not allow, and nothing is missed
        // that a slightly narrower one has.
        let wide = tried_by_hand(&request, &reach, -HAIR);
        let narrow = tried_by_hand(&request, &reach, HAIR);
        match found.recipes.first() {
            Some(recipe) => {
                prop_assert!(recipe.proven);
                let added = recipe.add.iter().map(|added| added.mass_kg).sum::<f64>() + recipe.water_kg;
                let least = wide.expect("met, and by hand nothing fits");
                prop_assert!(added >= least - 1e-6 * least.max(1.0), "{added} kg is less than any that fits, {least} kg");
                if let Some(least) = narrow {
                    prop_assert!(added <= least + 1e-6 * least.max(1.0), "{added} kg where {least} kg would do");
                }
            }
            None => prop_assert!(narrow.is_none(), "not met, and {narrow:?} kg would do"),
        }
    }

    #[test]
    fn prop_twice_of_everything_is_the_same_mixture(
        parts in prop::collection::vec((any_stepped(), 0.1..20.0_f64), 1..6),
        factor in 0.01..100.0_f64,
        water_kg in 0.1..10.0_f64,
    ) {
        let request = |factor: f64| json!({
            "parts": parts.iter().enumerate().map(|(index, (stuff, mass_kg))| {
                part(&stuff.custom(&format!("part {index}")), &format!("{} kg", mass_kg * factor))
            }).collect::<Vec<_>>(),
            "water": format!("{} kg", water_kg * factor),
        });
        let (one, many) = (mix(&request(1.0)), mix(&request(factor)));
        let same = |what: &str, one: FigureJson, many: FigureJson, times: f64| {
            for (one, many) in [(one.value, many.value), (one.low, many.low), (one.high, many.high)] {
                // Masses of up to six parts, scaled: some roundings of f64.
                assert_agree(what, many.unwrap(), one.unwrap() * times, 1e-12);
            }
        };
        same("C:N", one.cn_ratio, many.cn_ratio, 1.0);
        same("moisture", one.moisture_pct, many.moisture_pct, 1.0);
        same("wet mass", one.wet_mass_kg, many.wet_mass_kg, factor);
        same("dry mass", one.dry_mass_kg, many.dry_mass_kg, factor);
        same("nitrogen", one.nitrogen_kg, many.nitrogen_kg, factor);
        prop_assert_eq!(one.chance_in_target, many.chance_in_target);
    }

    #[test]
    fn prop_twice_in_hand_asks_for_twice_as_much(
        hand in any_stepped(),
        reach in prop::collection::vec(any_stepped(), 1..4),
        factor in 0.01..100.0_f64,
    ) {
        let request = |factor: f64| json!({
            "have": [part(&hand.custom("hand"), &format!("{} kg", 10.0 * factor))],
            "reach": reach.iter().enumerate().map(|(index, stuff)| {
                json!({ "custom": stuff.custom(&format!("reach {index}")) })
            }).collect::<Vec<_>>(),
            "water": true,
            "objective": "least_mass",
            "alternatives": false,
        });
        let (one, many) = (balance(&request(1.0)), balance(&request(factor)));
        prop_assert_eq!(&one.status, &many.status);
        if let (Some(one), Some(many)) = (one.recipes.first(), many.recipes.first()) {
            let added = |recipe: &heapwright_wire::RecipeJson| {
                recipe.add.iter().map(|added| added.mass_kg).sum::<f64>() + recipe.water_kg
            };
            // The solver keeps its rows to 1e-9.
            prop_assert!((added(many) - added(one) * factor).abs() <= 1e-6 * factor * added(one).max(1.0));
        }
    }

    #[test]
    fn prop_the_order_of_parts_has_no_effect(
        parts in prop::collection::vec((any_stepped(), 0.1..20.0_f64), 2..6),
    ) {
        let mut all: Vec<Value> = parts.iter().enumerate().map(|(index, (stuff, mass_kg))| {
            part(&stuff.custom(&format!("part {index}")), &format!("{mass_kg} kg"))
        }).collect();
        let forward = mix(&json!({ "parts": all }));
        all.reverse();
        let mut backward = mix(&json!({ "parts": all }));
        backward.parts.reverse();
        prop_assert_eq!(forward, backward);
    }

    #[test]
    fn prop_every_question_is_answered_in_order(
        parts in prop::collection::vec((0..180_usize, 0.01..50.0_f64), 1..5),
    ) {
        let materials = heapwright_checks::catalogue().materials();
        let usable: Vec<&str> = materials
            .iter()
            .filter(|material| material.moisture_wet_basis.is_some())
            .map(|material| material.id.as_str())
            .collect();
        let request = json!({ "parts": parts.iter().map(|(index, amount)| {
            json!({ "material": usable[index % usable.len()], "amount": format!("{amount} l") })
        }).collect::<Vec<_>>() });
        let (question, _) = read_mix(heapwright_checks::catalogue(), &Garden::default(), &request.to_string()).unwrap();
        prop_assert_eq!(question.parts.len(), parts.len());
        let found = mix(&request);
        for figure in [found.wet_mass_kg, found.dry_mass_kg, found.water_kg, found.volume_l, found.carbon_kg,
                       found.nitrogen_kg, found.moisture_pct, found.bulk_density_kg_m3, found.free_air_space_pct] {
            let (value, low, high) = (figure.value.unwrap(), figure.low.unwrap(), figure.high.unwrap());
            prop_assert!(value.is_finite() && low <= value && value <= high, "{figure:?}");
            prop_assert!(low >= 0.0);
        }
    }
}

#[test]
fn a_question_with_nothing_to_add_is_met_as_it_is() {
    let request = json!({ "have": [part(&custom("good already", 55.0, (45.0, 1.5)), "10 kg")] });
    let answer = balance_answer(&request);
    assert!(answer.recipes[0].added.is_empty());
    assert_eq!(balance(&request).status, "met");
}
