//! Section C: carbon from ash. C4, the foods, is in `tests/foods.rs`.

use heapwright_checks::{catalogue, published};
use heapwright_garden::handbook_carbon_to_nitrogen;
use heapwright_terms::Material;

const ASH_DRY_BASIS: f64 = 0.10;

/// Carbon on the handbook scale, share of dry matter, of a plant with so much ash.
fn handbook_carbon(measured_carbon_dry_basis: f64) -> f64 {
    let nitrogen = 0.01;
    let material = Material {
        nitrogen_dry_basis: Some(heapwright_quantity::Range::exact(nitrogen)),
        carbon_measured_dry_basis: Some(measured_carbon_dry_basis),
        ash_dry_basis: Some(ASH_DRY_BASIS),
        ..catalogue()
            .material("grass_clippings_fresh")
            .unwrap()
            .clone()
    };
    handbook_carbon_to_nitrogen(catalogue(), &material).unwrap() * nitrogen
}

#[test]
fn check_c1() {
    // Ash decides, whatever a laboratory would find as carbon.
    for measured in [0.42, 0.45, 0.50] {
        published("C1").meets(handbook_carbon(measured) * 100.0);
    }
}

#[test]
fn check_c2() {
    published("C2").meets(handbook_carbon(0.45) / (1.0 - ASH_DRY_BASIS) * 100.0);
}

#[test]
fn check_c3() {
    published("C3").meets((1.0 - ASH_DRY_BASIS) / handbook_carbon(0.45));
}
