//! Section A: moisture of a material, of a mixture, and water to add.

use heapwright_checks::{ANY_CARBON_AND_NITROGEN, balance, custom, mix, part, published, weighed};
use serde_json::{Value, json};

/// Carbon and nitrogen of the grass and the leaves of the example (check B2).
const GRASS: (f64, f64) = (45.0, 2.4);
const LEAVES: (f64, f64) = (50.0, 0.75);

fn grass_and_leaves(goal_pct: f64) -> Value {
    json!({
        "have": [weighed("grass", 10.0, 77.0, GRASS)],
        "reach": [{ "custom": custom("leaves", 35.0, LEAVES) }],
        "target": { "cn_ratio": [1, 1000], "moisture_pct": [goal_pct, goal_pct] },
        "objective": "least_mass",
    })
}

fn haulm_and_manure() -> Vec<Value> {
    vec![
        weighed("tomato haulm", 1.0, 55.0, ANY_CARBON_AND_NITROGEN),
        weighed("manure", 1.0, 40.0, ANY_CARBON_AND_NITROGEN),
    ]
}

fn moisture_pct(parts: &[Value], water: &str) -> f64 {
    mix(&json!({ "parts": parts, "water": water }))
        .moisture_pct
        .value
        .unwrap()
}

#[test]
fn check_a1() {
    // A material of the garden's own without a range of its own takes the sample as it is.
    let found = mix(&json!({
        "parts": [{ "material": "sampled_grass", "amount": "1 kg" }],
        "garden": {
            "materials": [{
                "id": "sampled_grass", "name": "Sampled grass", "like": "grass_clippings_fresh",
                "moisture_pct": [50, 50, 50]
            }],
            "measurements": [{
                "material": "sampled_grass",
                "dried_sample": { "wet": "10 g", "dry": "2.3 g" }
            }]
        }
    }));
    published("A1").meets(found.moisture_pct.value.unwrap());
}

#[test]
fn check_a2() {
    let found = balance(&grass_and_leaves(60.0));
    assert_eq!(found.status, "met");
    published("A2").meets(found.recipes[0].add[0].mass_kg);
}

#[test]
fn check_a2_has_no_answer_outside_the_two_moistures() {
    for goal_pct in [80.0, 30.0] {
        let found = balance(&grass_and_leaves(goal_pct));
        assert_eq!(found.status, "not_met", "{goal_pct} %");
        assert!(found.recipes.is_empty());
        let conflict = found.conflict.unwrap();
        let expected = if goal_pct > 77.0 {
            "moisture_pct_low"
        } else {
            "moisture_pct_high"
        };
        assert!(
            conflict.limits.iter().any(|miss| miss.limit == expected),
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
    }
}

#[test]
fn check_a3() {
    let parts = [
        weighed("grass", 10.0, 77.0, GRASS),
        weighed("leaves", 6.8, 35.0, LEAVES),
    ];
    published("A3").meets(moisture_pct(&parts, "0"));
}

#[test]
fn check_a4() {
    published("A4").meets(moisture_pct(&haulm_and_manure(), "0"));
}

#[test]
fn check_a5() {
    let found = balance(&json!({
        "have": haulm_and_manure(),
        "water": true,
        "target": { "cn_ratio": [1, 1000], "moisture_pct": [55, 100] },
        "objective": "least_mass",
    }));
    assert_eq!(found.status, "met");
    published("A5.1").meets(found.recipes[0].water_kg);
    published("A5.2").meets(moisture_pct(&haulm_and_manure(), "0.2 kg"));
}

#[test]
fn check_a6() {
    // 10 L of the wet part and 8 L of the dry one: a mean over volumes would be 48.3 %.
    let of_density = |mut custom: Value, density: f64| {
        custom["bulk_density_kg_m3"] = json!(density);
        custom
    };
    let parts = [
        part(
            &of_density(custom("wet", 55.0, ANY_CARBON_AND_NITROGEN), 100.0),
            "1 kg",
        ),
        part(
            &of_density(custom("dry", 40.0, ANY_CARBON_AND_NITROGEN), 500.0),
            "4 kg",
        ),
    ];
    published("A6").meets(moisture_pct(&parts, "0"));
}
