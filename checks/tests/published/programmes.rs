//! Least amounts to add, worked by another program: two wet feeds, two browns, water.

use heapwright_checks::{balance, custom, mix, published, weighed};
use heapwright_wire::{BalanceJson, RecipeJson};
use serde_json::{Value, json};

fn feeds() -> Vec<Value> {
    vec![
        weighed("food scraps", 10.0, 75.0, (50.0, 2.5)),
        weighed("grass", 5.0, 77.0, (45.0, 2.4)),
    ]
}

fn leaves() -> Value {
    json!({ "custom": custom("leaves", 35.0, (50.0, 0.75)) })
}

fn cardboard() -> Value {
    json!({ "custom": custom("cardboard", 8.0, (45.0, 0.1)) })
}

fn ask(reach: &[Value], ratio: [f64; 2], moisture_pct: [f64; 2]) -> BalanceJson {
    balance(&json!({
        "have": feeds(),
        "reach": reach,
        "water": true,
        "target": { "cn_ratio": ratio, "moisture_pct": moisture_pct },
        "objective": "least_mass",
    }))
}

fn usual(reach: &[Value]) -> RecipeJson {
    let found = ask(reach, [25.0, 40.0], [50.0, 60.0]);
    assert_eq!(found.status, "met");
    let first = found.recipes[0].clone();
    assert!(first.proven && first.kind == "least_mass");
    first
}

fn added_kg(recipe: &RecipeJson, name: &str) -> f64 {
    recipe
        .add
        .iter()
        .find(|added| added.name == name)
        .map_or(0.0, |added| added.mass_kg)
}

#[test]
fn check_lp1() {
    let recipe = usual(&[leaves(), cardboard()]);
    published("LP1.1").meets(added_kg(&recipe, "cardboard"));
    published("LP1.2").meets(added_kg(&recipe, "leaves"));
    published("LP1.3").meets(recipe.water_kg);
    published("LP1.4").meets(recipe.result.cn_ratio.value.unwrap());
    published("LP1.5").meets(recipe.result.moisture_pct.value.unwrap());
}

#[test]
fn check_lp2() {
    let recipe = usual(&[leaves()]);
    published("LP2.1").meets(added_kg(&recipe, "leaves"));
    published("LP2.2").meets(recipe.result.cn_ratio.value.unwrap());
}

#[test]
fn check_lp3() {
    let mut limited = cardboard();
    limited["max"] = json!("2 kg");
    let recipe = usual(&[leaves(), limited]);
    published("LP3.1").meets(added_kg(&recipe, "leaves"));
    published("LP3.2").meets(added_kg(&recipe, "cardboard"));
    published("LP3.3").meets(recipe.result.cn_ratio.value.unwrap());
}

#[test]
fn check_lp4() {
    let by_themselves = mix(&json!({ "parts": feeds() }));
    published("LP4.1").meets(by_themselves.cn_ratio.value.unwrap());
    published("LP4.2").meets(by_themselves.moisture_pct.value.unwrap());
    // C:N 30 would need 5.2336 kg of leaves and less than no water.
    let found = ask(&[leaves()], [30.0, 30.0], [60.0, 60.0]);
    assert_eq!(found.status, "not_met");
    assert!(found.recipes.is_empty());
    let conflict = found.conflict.unwrap();
    assert!(!conflict.limits.is_empty() && !conflict.help.is_empty());
    assert!(
        conflict
            .limits
            .iter()
            .any(|miss| miss.limit == "moisture_pct_high"),
        "{:?}",
        conflict.limits
    );
    assert!(conflict.nearest.water_kg >= 0.0);
    assert!(
        conflict
            .nearest
            .add
            .iter()
            .all(|added| added.mass_kg >= 0.0)
    );
    let with_cardboard = ask(&[leaves(), cardboard()], [30.0, 30.0], [60.0, 60.0]);
    assert_eq!(with_cardboard.status, "not_met");
}
