//! Section F: nutrients, mass and analysis, as elements and as the oxides of labels.

use heapwright_checks::{ANY_CARBON_AND_NITROGEN, custom, mix, mix_answer, part, published};
use heapwright_quantity::{MassUnit, VolumeUnit};
use serde_json::{Value, json};

const POUND_KG: f64 = MassUnit::Pound.kilograms();

/// Nitrogen [lb] in an amount of fertiliser with so many percent of it.
fn nitrogen_lb(nitrogen_pct: f64, amount: &str) -> f64 {
    let fertiliser = custom("fertiliser", 0.0, (0.0, nitrogen_pct));
    let found = mix(&json!({ "parts": [part(&fertiliser, amount)] }));
    found.nitrogen_kg.value.unwrap() / POUND_KG
}

/// Phosphorus [kg] in an amount of dry stuff with so many percent of it.
fn phosphorus_kg(phosphorus_pct: f64, amount: &str) -> f64 {
    let mut custom = custom("stuff", 0.0, ANY_CARBON_AND_NITROGEN);
    custom["phosphorus_pct_dry"] = json!(phosphorus_pct);
    mix(&json!({ "parts": [part(&custom, amount)] }))
        .phosphorus_kg
        .value
        .unwrap()
}

fn compost(
    density_lb_yd3: f64,
    moisture_pct: f64,
    nitrogen_pct_dry: f64,
    ash_pct_dry: f64,
) -> Value {
    json!({
        "name": "compost", "moisture_pct": moisture_pct, "carbon_pct_dry": 25,
        "nitrogen_pct_dry": nitrogen_pct_dry, "ash_pct_dry": ash_pct_dry,
        "bulk_density_kg_m3": density_lb_yd3 * POUND_KG / VolumeUnit::CubicYard.cubic_metres(),
    })
}

#[test]
fn check_f1() {
    published("F1").meets(nitrogen_lb(30.0, "60 lb"));
}

/// The oxide [kg] that a label names for a kilogram of dry stuff that is 10 % of the element.
fn oxide_over_element(element: &str, oxide: &str) -> f64 {
    let mut custom = custom("stuff", 0.0, ANY_CARBON_AND_NITROGEN);
    custom[format!("{element}_pct_dry")] = json!(10);
    let found = serde_json::to_value(mix(&json!({ "parts": [part(&custom, "1 kg")] }))).unwrap();
    found[oxide]["value"].as_f64().unwrap() / 0.1
}

#[test]
fn check_f2() {
    published("F2.1").meets(20.0 / oxide_over_element("phosphorus", "phosphate_kg"));
    published("F2.2").meets(10.0 / oxide_over_element("potassium", "potash_kg"));
}

#[test]
fn check_f3() {
    published("F3.1").meets(oxide_over_element("phosphorus", "phosphate_kg"));
    published("F3.2").meets(oxide_over_element("potassium", "potash_kg"));
    published("F3.3").meets(oxide_over_element("calcium", "calcium_oxide_kg"));
    published("F3.4").meets(oxide_over_element("magnesium", "magnesium_oxide_kg"));
}

#[test]
fn check_f4() {
    published("F4.1").meets(nitrogen_lb(1.0, "1 short ton"));
    published("F4.2").meets(phosphorus_kg(0.01, "1 kg") * 1e6);
    published("F4.3").meets(phosphorus_kg(0.001, "1 short ton") / POUND_KG);
}

#[test]
fn check_f6() {
    published("F6").meets(phosphorus_kg(1.0, "1 kg") * 1e6);
}

#[test]
fn check_f7() {
    published("F7.1").meets(nitrogen_lb(15.0, "50 lb"));
    published("F7.2").meets(nitrogen_lb(12.0, "50 lb"));
    published("F7.3").meets(nitrogen_lb(0.0, "30 lb"));
    published("F7.4").meets(nitrogen_lb(18.0, "1 short ton"));
}

#[test]
fn check_f8() {
    // "As is": a share of the fresh mass, so that half water asks for twice the share of dry matter.
    let found = mix(&json!({ "parts": [part(&compost(950.0, 50.0, 4.0, 50.0), "1 cubic yard")] }));
    published("F8").meets(found.nitrogen_kg.value.unwrap() / POUND_KG);
}

#[test]
fn check_f9() {
    let request = json!({ "parts": [part(&compost(1000.0, 50.0, 1.5, 50.0), "1 cubic yard")] });
    let answer = mix_answer(&request);
    let brought = &answer.brought[0];
    published("F9").meets((brought.dry_mass_kg - brought.ash_kg) / POUND_KG);
}
