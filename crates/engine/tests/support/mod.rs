//! Ingredients for tests: exact ones, and random ones with ranges.
#![allow(dead_code)] // each test file uses what it needs

use heapwright_quantity::Range;
use heapwright_terms::{Ingredient, NitrogenAndCarbon, Part, PartAmount, Target};
use proptest::prelude::*;

/// The usual region.
pub const TARGET: Target = Target {
    carbon_to_nitrogen_low: 25.0,
    carbon_to_nitrogen_high: 40.0,
    carbon_to_nitrogen_goal: 30.0,
    moisture_wet_basis_low: 0.5,
    moisture_wet_basis_high: 0.6,
    free_air_space_low: 0.3,
    free_air_space_high: 1.0,
};

/// An ingredient whose figures are exact: moisture, carbon, nitrogen in percent.
pub fn exact(
    name: &str,
    moisture_pct: f64,
    carbon_pct_dry: f64,
    nitrogen_pct_dry: f64,
) -> Ingredient {
    Ingredient {
        identity: name.to_owned(),
        moisture_wet_basis: Range::exact(moisture_pct / 100.0),
        nitrogen_and_carbon: NitrogenAndCarbon {
            nitrogen_dry_basis: Range::exact(nitrogen_pct_dry / 100.0),
            carbon_dry_basis_at_low_nitrogen: carbon_pct_dry / 100.0,
            carbon_dry_basis_typical: carbon_pct_dry / 100.0,
            carbon_dry_basis_at_high_nitrogen: carbon_pct_dry / 100.0,
        },
        measured_over_handbook_carbon: 1.0,
        bulk_density_kg_m3: None,
        density_follows_moisture: false,
        ash_dry_basis: Range::exact(0.1),
        biodegradable_dry_basis: Range::exact(0.5),
        phosphorus_dry_basis: None,
        potassium_dry_basis: None,
        calcium_dry_basis: None,
        magnesium_dry_basis: None,
        sodium_dry_basis: None,
    }
}

/// So many kilograms of it.
pub fn kilograms(ingredient: Ingredient, mass_kg: f64) -> Part {
    Part {
        ingredient,
        amount: PartAmount::MassKg(mass_kg),
    }
}

fn range(least: f64, most: f64) -> impl Strategy<Value = Range> {
    (least..most, 0.3..1.0_f64, 1.0..1.8_f64).prop_map(move |(typical, down, up)| Range {
        low: (typical * down).max(least * 0.3),
        typical,
        high: (typical * up).min(most),
    })
}

prop_compose! {
    /// Any ingredient that could be found in a garden.
    pub fn any_ingredient()(
        name in "[a-d]",
        moisture in range(0.05, 0.95),
        nitrogen in range(0.001, 0.06),
        carbon in 0.3..0.56_f64,
        lean in 0.9..1.1_f64,
        density in range(30.0, 1100.0),
        follows in any::<bool>(),
        ash in range(0.01, 0.4),
        potassium in prop::option::of(range(0.001, 0.03)),
    ) -> Ingredient {
        Ingredient {
            // The same name means the same stuff, so the figures are part of the name.
            identity: format!("{name}-{}", nitrogen.typical),
            moisture_wet_basis: moisture,
            nitrogen_and_carbon: NitrogenAndCarbon {
                nitrogen_dry_basis: nitrogen,
                carbon_dry_basis_at_low_nitrogen: carbon * lean,
                carbon_dry_basis_typical: carbon,
                carbon_dry_basis_at_high_nitrogen: carbon / lean,
            },
            measured_over_handbook_carbon: 0.87,
            bulk_density_kg_m3: Some(density),
            density_follows_moisture: follows,
            ash_dry_basis: ash,
            biodegradable_dry_basis: Range { low: 0.2, typical: 0.4, high: 0.7 },
            phosphorus_dry_basis: None,
            potassium_dry_basis: potassium,
            calcium_dry_basis: None,
            magnesium_dry_basis: None,
            sodium_dry_basis: None,
        }
    }
}

prop_compose! {
    /// Any part: weighed, or measured in fillings.
    pub fn any_part()(
        ingredient in any_ingredient(),
        weighed in any::<bool>(),
        amount in 0.05..50.0_f64,
        each in range(0.0002, 0.1),
    ) -> Part {
        Part {
            ingredient,
            amount: if weighed {
                PartAmount::MassKg(amount)
            } else {
                PartAmount::VolumeM3 { measure: "vessel".to_owned(), count: amount, each_m3: each }
            },
        }
    }
}
