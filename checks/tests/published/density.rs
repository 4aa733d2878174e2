//! Section D: bulk density, volume, weight, air space.

use heapwright_checks::{ANY_CARBON_AND_NITROGEN, assert_agree, custom, mix, part, published};
use heapwright_quantity::{MassUnit, VolumeUnit, parse_amount};
use heapwright_wire::MixJson;
use serde_json::{Value, json};

fn pounds_per_cubic_yard() -> f64 {
    MassUnit::Pound.kilograms() / VolumeUnit::CubicYard.cubic_metres()
}

/// A material of a density [lb/yd3].
fn dense(density_lb_yd3: f64, moisture_pct: f64) -> Value {
    let mut custom = custom("stuff", moisture_pct, ANY_CARBON_AND_NITROGEN);
    custom["bulk_density_kg_m3"] = json!(density_lb_yd3 * pounds_per_cubic_yard());
    custom
}

fn of(custom: &Value, amount: &str) -> MixJson {
    mix(&json!({ "parts": [part(custom, amount)] }))
}

fn cubic_metres(text: &str) -> f64 {
    let vocabulary = heapwright_wire::vocabulary(heapwright_checks::catalogue());
    parse_amount(text, &vocabulary)
        .unwrap()
        .cubic_metres()
        .unwrap()
}

#[test]
fn check_d1() {
    // A material of the garden's own without a range of its own takes the weighing as it is.
    let found = mix(&json!({
        "parts": [{ "material": "weighed_scraps", "amount": "20 l" }],
        "garden": {
            "materials": [{
                "id": "weighed_scraps", "name": "Weighed scraps", "like": "mixed_vegetable_scraps",
                "bulk_density_kg_m3": [300, 300, 300]
            }],
            "measurements": [{
                "material": "weighed_scraps",
                "weighed_measure": { "measure": "20 l", "full": "10 kg", "empty": "1 kg" }
            }]
        }
    }));
    published("D1.1").meets(found.wet_mass_kg.value.unwrap());
    published("D1.2").meets(found.bulk_density_kg_m3.value.unwrap() / 1000.0);
}

#[test]
fn check_d2() {
    published("D2").meets(cubic_metres("1 cubic yard") / cubic_metres("5 US gal"));
}

#[test]
fn check_d3() {
    published("D3.1").meets(cubic_metres("1 cubic yard") / cubic_metres("1 bushel"));
    published("D3.2").meets(cubic_metres("1 bushel") / cubic_metres("1 US gal"));
}

#[test]
fn check_d4() {
    let filled = 5.0 * cubic_metres("64 cubic feet");
    assert_agree("five fills", filled, cubic_metres("320 cubic feet"), 1e-12);
    published("D4").meets(filled / cubic_metres("1 cubic yard"));
}

#[test]
fn check_d5() {
    published("D5").meets(cubic_metres("100 cubic feet") / cubic_metres("1 cubic yard"));
}

#[test]
fn check_d6() {
    let found = of(&dense(800.0 / 2.0, 50.0), "12 cubic yards");
    published("D6").meets(found.wet_mass_kg.value.unwrap() / MassUnit::Pound.kilograms());
}

#[test]
fn check_d7() {
    for (id, density) in [("D7.1", 400.0), ("D7.2", 667.0), ("D7.3", 500.0)] {
        let found = of(&dense(density, 30.0), "1 short ton");
        let volume_m3 = found.volume_l.value.unwrap() / 1000.0;
        published(id).meets(volume_m3 / VolumeUnit::CubicYard.cubic_metres());
    }
}

#[test]
fn check_d8() {
    published("D8").meets(cubic_metres("1 cubic yard") / cubic_metres("30 US gal"));
}

#[test]
fn check_d11() {
    let found = of(&dense(1018.0, 35.0), "1 cubic yard");
    published("D11").meets(found.dry_mass_kg.value.unwrap() / MassUnit::Pound.kilograms());
    // What the misprint would mean.
    let moisture = of(
        &dense(1018.0, (1.0 - 808.0 / 1018.0) * 100.0),
        "1 cubic yard",
    );
    let dry_lb = moisture.dry_mass_kg.value.unwrap() / MassUnit::Pound.kilograms();
    assert_agree("dry mass at 20.6 %", dry_lb, 808.0, 1e-9);
}

/// Free air space [%] of a material with 80 % organic matter in its dry matter.
fn free_air_space_pct(density_kg_m3: f64, moisture_pct: f64) -> f64 {
    let mut custom = custom("compost", moisture_pct, ANY_CARBON_AND_NITROGEN);
    custom["ash_pct_dry"] = json!(20.0);
    custom["bulk_density_kg_m3"] = json!(density_kg_m3);
    of(&custom, "10 l").free_air_space_pct.value.unwrap()
}

#[test]
fn check_d12() {
    published("D12").meets(free_air_space_pct(500.0, 60.0));
}

#[test]
fn check_d13() {
    // The least density at which no air is left, by halving to a millionth of a kilogram.
    let (mut airy, mut full) = (500.0, 2000.0);
    while full - airy > 1e-6 {
        let middle = f64::midpoint(airy, full);
        if free_air_space_pct(middle, 70.0) > 0.0 {
            airy = middle;
        } else {
            full = middle;
        }
    }
    published("D13").meets(full);
}

#[test]
fn check_d14() {
    let printed_lb_yd3 = [40.0, 1500.0, 250.0, 500.0, 250.0, 640.0, 473.0, 243.0];
    for (index, density) in printed_lb_yd3.into_iter().enumerate() {
        // A cubic yard of it, weighed in pounds, in the answer's own unit.
        let found =
            mix(&json!({ "parts": [part(&dense(density, 40.0), &format!("{density} lb"))] }));
        let volume_yd3 =
            found.volume_l.value.unwrap() / 1000.0 / VolumeUnit::CubicYard.cubic_metres();
        assert_agree("a cubic yard", volume_yd3, 1.0, 1e-12);
        published(&format!("D14.{}", index + 1)).meets(found.bulk_density_kg_m3.value.unwrap());
    }
}
