//! Section B: C:N of a mixture.

use heapwright_checks::{balance, custom, mix, part, published, weighed};
use serde_json::{Value, json};

/// Mass of a pound [kg]. Source: international yard and pound agreement, 1959.
const POUND_KG: f64 = 0.453_592_37;
/// Volume of a cubic yard [m3], by the same agreement.
const CUBIC_YARD_M3: f64 = 0.764_554_857_984;

fn ratio(parts: &[Value]) -> f64 {
    mix(&json!({ "parts": parts })).cn_ratio.value.unwrap()
}

/// Mass [kg] of the only material in reach that brings what is in hand to a C:N.
fn added_kg(have: &Value, reach: &Value, ratio: [f64; 2]) -> f64 {
    let found = balance(&json!({
        "have": [have],
        "reach": [{ "custom": reach }],
        "target": { "cn_ratio": ratio, "moisture_pct": [0, 100], "free_air_space_pct": [0, 100] },
        "objective": "least_mass",
    }));
    assert_eq!(found.status, "met");
    found.recipes[0].add[0].mass_kg
}

/// Equal volumes, carbon and densities, with these C:N.
fn equal_volumes(ratios: &[f64]) -> f64 {
    let parts: Vec<Value> = ratios
        .iter()
        .enumerate()
        .map(|(index, ratio)| {
            let custom = json!({
                "name": format!("part {index}"), "moisture_pct": 50, "carbon_pct_dry": 45,
                "cn_ratio": ratio, "bulk_density_kg_m3": 300,
            });
            part(&custom, "10 l")
        })
        .collect();
    ratio(&parts)
}

#[test]
fn check_b1() {
    published("B1").meets(ratio(&[
        weighed("tomato haulm", 1.0, 55.0, (12.0, 0.3)),
        weighed("manure", 1.0, 40.0, (30.0, 1.5)),
    ]));
}

#[test]
fn check_b2() {
    published("B2").meets(ratio(&[
        weighed("grass", 10.0, 77.0, (45.0, 2.4)),
        weighed("leaves", 6.8, 35.0, (50.0, 0.75)),
    ]));
}

#[test]
fn check_b3() {
    // The analyses are "as is": shares of the fresh mass, as if it were all dry.
    let manure = weighed("hen manure", 1.0, 0.0, (29.01, 2.76));
    let bagasse = custom("bagasse", 0.0, (39.59, 1.07));
    published("B3").meets(added_kg(&manure, &bagasse, [30.0, 30.0]));
}

#[test]
fn check_b4() {
    let found = mix(&json!({ "parts": [
        part(&custom("hay", 0.0, (40.0, 1.0)), "50 lb"),
        part(&custom("kitchen scraps", 0.0, (10.0, 1.0)), "10 lb"),
        part(&custom("coffee grounds", 0.0, (25.0, 1.0)), "2 lb"),
    ]}));
    published("B4.1").meets(found.carbon_kg.value.unwrap() / POUND_KG);
    published("B4.2").meets(found.nitrogen_kg.value.unwrap() / POUND_KG);
    published("B4.3").meets(found.cn_ratio.value.unwrap());
}

#[test]
fn check_b6() {
    let custom =
        json!({ "name": "any", "moisture_pct": 0, "nitrogen_pct_dry": 2.4, "cn_ratio": 18.75 });
    let found = mix(&json!({ "parts": [part(&custom, "1 kg")] }));
    published("B6").meets(found.carbon_kg.value.unwrap() * 100.0);
}

#[test]
fn check_b7() {
    published("B7").meets(equal_volumes(&[20.0, 20.0, 60.0]));
}

#[test]
fn check_b8() {
    published("B8").meets(equal_volumes(&[20.0, 20.0, 110.0, 15.0]));
}

#[test]
fn check_b9() {
    // Fertiliser that is 46 % nitrogen, and nothing else that counts.
    let fertiliser = custom("fertiliser", 0.0, (0.0, 46.0));
    let leaves = |ratio: f64, nitrogen_pct: f64, density_lb_yd3: f64| {
        let custom = json!({
            "name": "leaves", "moisture_pct": 38, "nitrogen_pct_dry": nitrogen_pct, "cn_ratio": ratio,
            "bulk_density_kg_m3": density_lb_yd3 * POUND_KG / CUBIC_YARD_M3,
        });
        part(&custom, "1 cubic yard")
    };
    for (id, ratio, nitrogen_pct, density) in [
        ("B9.1", 54.0, 0.9, 250.0),
        ("B9.2", 54.0, 0.9, 350.0),
        ("B9.3", 80.0, 0.6, 350.0),
    ] {
        let added = added_kg(
            &leaves(ratio, nitrogen_pct, density),
            &fertiliser,
            [1.0, 30.0],
        );
        published(id).meets(added * 0.46 / POUND_KG);
    }
}

#[test]
fn check_b10() {
    let manure = json!({ "name": "hen manure", "moisture_pct": 70, "nitrogen_pct_dry": 6.3, "cn_ratio": 10 });
    let sawdust =
        json!({ "name": "sawdust", "moisture_pct": 35, "nitrogen_pct_dry": 0.11, "cn_ratio": 500 });
    let added = added_kg(&part(&manure, "1 lb"), &sawdust, [25.0, 25.0]);
    published("B10.1").meets(added / POUND_KG);
    let mixture =
        mix(&json!({ "parts": [part(&manure, "1 lb"), part(&sawdust, &format!("{added} kg"))] }));
    published("B10.2").meets(mixture.moisture_pct.value.unwrap());
}
