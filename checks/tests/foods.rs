//! Check C4: C:N of foods from what food tables have of them: water, protein, ash.
//!
//! Nitrogen is protein over 6.25 (from memory of FAO 2003, Food and Nutrition Paper 77), carbon
//! (100 - ash) / 1.8 of dry matter (check C1). The foods, in g per 100 g of edible part, are of
//! the USDA National Nutrient Database for Standard Reference, release 27 (unchanged in 28), by
//! their numbers there.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::io::{self, Write};
use std::path::Path;

use heapwright_answers::{MixQuestion, USUAL_TARGET, what_is_in};
use heapwright_checks::{assert_agree, catalogue};
use heapwright_garden::{Found, Garden, Stated, Stuff};
use heapwright_quantity::{Amount, MassUnit, Range, Unit};
use heapwright_terms::{Material, MaterialId};
use serde::Deserialize;

/// Grams of protein that hold a gram of nitrogen.
const PROTEIN_PER_NITROGEN: f64 = 6.25;

#[derive(Debug, Deserialize)]
struct Food {
    ndb_no: String,
    name: String,
    water_g: f64,
    protein_g: f64,
    ash_g: f64,
    /// Worked by hand from the three.
    carbon_to_nitrogen: f64,
    /// Half a unit of its last digit, but no finer than 0.1.
    tolerance: f64,
}

/// C:N and moisture [%] of a kilogram of a food as a material of the garden's own.
fn in_a_heap(water_g: f64, protein_g: f64, ash_g: f64) -> (f64, f64) {
    let dry_g = 100.0 - water_g;
    let id = MaterialId("food".to_owned());
    let food = Material {
        id: id.clone(),
        nitrogen_dry_basis: Some(Range::exact(protein_g / PROTEIN_PER_NITROGEN / dry_g)),
        carbon_to_nitrogen_measured: None,
        // A laboratory's carbon, which the handbook scale must replace by that from the ash.
        carbon_measured_dry_basis: Some(0.45),
        moisture_wet_basis: Some(Range::exact(water_g / 100.0)),
        ash_dry_basis: Some(ash_g / dry_g),
        ..catalogue()
            .material("mixed_vegetable_scraps")
            .unwrap()
            .clone()
    };
    let garden = Garden {
        own_materials: vec![food],
        ..Garden::default()
    };
    let question = MixQuestion {
        parts: vec![Found {
            stuff: Stuff::Known {
                material: id,
                conditions: Vec::new(),
                stated: Stated::default(),
            },
            amount: Amount {
                count: 1.0,
                unit: Unit::Mass(MassUnit::Kilogram),
            },
        }],
        water_kg: 0.0,
        target: USUAL_TARGET,
    };
    let mixture = what_is_in(catalogue(), &garden, &question).unwrap().mixture;
    (
        mixture.carbon_to_nitrogen.unwrap().value,
        mixture.moisture_wet_basis.value * 100.0,
    )
}

fn foods() -> Vec<Food> {
    csv::Reader::from_reader(include_str!("../published/foods.csv").as_bytes())
        .into_deserialize()
        .collect::<Result<_, _>>()
        .unwrap()
}

#[test]
fn check_c4() {
    let foods = foods();
    assert_eq!(foods.len(), 13);
    for food in foods {
        let (ratio, moisture_pct) = in_a_heap(food.water_g, food.protein_g, food.ash_g);
        assert!(
            (ratio - food.carbon_to_nitrogen).abs() <= food.tolerance,
            "{}: {ratio} where {} is expected to {}",
            food.name,
            food.carbon_to_nitrogen,
            food.tolerance
        );
        assert_agree(&food.name, moisture_pct, food.water_g, 1e-12);
    }
}

#[derive(Debug, Deserialize)]
struct TableRow {
    ndb_no: String,
    short_description: String,
    water_g: f64,
    protein_g: f64,
    ash_g: f64,
}

/// First digits of the numbers of fruit, vegetables and legumes in the open table.
const PLANT_GROUPS: [&str; 3] = ["09", "11", "16"];

#[test]
fn check_c4_on_the_open_food_table() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../shared/reference/data/food_composition_usda_sr27_subset_public_domain.csv");
    let Ok(text) = fs::read_to_string(path) else {
        writeln!(io::stdout(), "skipped: the open food table is not here").unwrap();
        return;
    };
    let table: Vec<TableRow> = csv::Reader::from_reader(text.as_bytes())
        .into_deserialize()
        .collect::<Result<_, _>>()
        .unwrap();
    for food in foods() {
        let row = table.iter().find(|row| row.ndb_no == food.ndb_no).unwrap();
        let found = [row.water_g, row.protein_g, row.ash_g];
        assert_eq!(
            found,
            [food.water_g, food.protein_g, food.ash_g],
            "{}",
            row.short_description
        );
    }
    let mut counted = 0;
    for row in table.iter().filter(|row| {
        PLANT_GROUPS
            .iter()
            .any(|group| row.ndb_no.starts_with(group))
    }) {
        let dry_g = 100.0 - row.water_g;
        let handbook_carbon_g = (dry_g - row.ash_g) / 1.8;
        // Beyond these the rule means nothing for a plant; its own test is with the rule.
        let plant_like = (0.80..=1.35).contains(&(handbook_carbon_g / dry_g / 0.45));
        if row.protein_g <= 0.0 || dry_g <= 0.0 || !plant_like {
            continue;
        }
        let (ratio, _) = in_a_heap(row.water_g, row.protein_g, row.ash_g);
        let expected = handbook_carbon_g / (row.protein_g / PROTEIN_PER_NITROGEN);
        assert_agree(&row.short_description, ratio, expected, 1e-9);
        counted += 1;
    }
    assert!(counted > 300, "{counted} plant foods");
}
