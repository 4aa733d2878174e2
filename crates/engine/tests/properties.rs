//! What must hold of any mixture and any recipe.
#![allow(clippy::unwrap_used, missing_docs)]

mod support;

use heapwright_engine::balance::{Balance, Objective, Question, Reach, WaterSupply, balance};
use heapwright_engine::mixture::{Mixture, mixture, typical_totals};
use heapwright_quantity::Interval;
use heapwright_terms::{Part, PartAmount};
use proptest::prelude::*;
use support::{TARGET, any_part, exact, kilograms};

const SEED: u64 = 20_261_125;

fn figures(mixture: &Mixture) -> Vec<Interval> {
    let mut figures = vec![
        mixture.wet_mass_kg,
        mixture.dry_mass_kg,
        mixture.water_kg,
        mixture.carbon_kg,
        mixture.nitrogen_kg,
        mixture.moisture_wet_basis,
        mixture.biodegradable_dry_basis,
    ];
    figures.extend(mixture.volume_m3);
    figures.extend(mixture.carbon_to_nitrogen);
    figures.extend(mixture.carbon_to_nitrogen_measured);
    figures.extend(mixture.bulk_density_kg_m3);
    figures.extend(mixture.free_air_space);
    figures.extend(mixture.potassium.mass_kg);
    figures
}

fn scaled(part: &Part, factor: f64) -> Part {
    let amount = match &part.amount {
        PartAmount::MassKg(mass_kg) => PartAmount::MassKg(mass_kg * factor),
        PartAmount::VolumeM3 {
            measure,
            count,
            each_m3,
        } => PartAmount::VolumeM3 {
            measure: measure.clone(),
            count: count * factor,
            each_m3: *each_m3,
        },
    };
    Part {
        ingredient: part.ingredient.clone(),
        amount,
    }
}

fn close(a: f64, b: f64) -> bool {
    // Sums of at most some twenty terms: a few units in the last place.
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs()).max(1e-9)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn prop_figures_are_finite_and_ordered(parts in prop::collection::vec(any_part(), 1..8), water in 0.0..20.0_f64) {
        let mixture = mixture(&parts, water, &TARGET, SEED).unwrap();
        for figure in figures(&mixture) {
            prop_assert!(figure.low.is_finite() && figure.high.is_finite());
            prop_assert!(figure.low <= figure.value && figure.value <= figure.high, "{figure:?}");
            prop_assert!(figure.low >= 0.0);
        }
        prop_assert!(mixture.moisture_wet_basis.high <= 1.0);
        prop_assert!(mixture.free_air_space.unwrap().high <= 1.0);
        let chance = mixture.chance;
        let most = chance.carbon_to_nitrogen.min(chance.moisture).min(chance.free_air_space.unwrap());
        prop_assert!(0.0 <= chance.all && chance.all <= most);
    }

    #[test]
    fn prop_the_order_of_parts_has_no_effect(parts in prop::collection::vec(any_part(), 1..8), turn in 0..8_usize) {
        let mut turned = parts.clone();
        turned.reverse();
        turned.rotate_left(turn % parts.len());
        prop_assert_eq!(mixture(&parts, 1.0, &TARGET, SEED), mixture(&turned, 1.0, &TARGET, SEED));
    }

    #[test]
    fn prop_ratios_do_not_depend_on_scale(parts in prop::collection::vec(any_part(), 1..6), factor in 0.01..100.0_f64) {
        let more: Vec<Part> = parts.iter().map(|part| scaled(part, factor)).collect();
        let (small, large) = (mixture(&parts, 2.0, &TARGET, SEED).unwrap(), mixture(&more, 2.0 * factor, &TARGET, SEED).unwrap());
        prop_assert!(close(small.carbon_to_nitrogen.unwrap().value, large.carbon_to_nitrogen.unwrap().value));
        prop_assert!(close(small.carbon_to_nitrogen.unwrap().low, large.carbon_to_nitrogen.unwrap().low));
        prop_assert!(close(small.moisture_wet_basis.value, large.moisture_wet_basis.value));
        prop_assert!(close(small.free_air_space.unwrap().value, large.free_air_space.unwrap().value));
        prop_assert!(close(small.wet_mass_kg.value * factor, large.wet_mass_kg.value));
    }

    #[test]
    fn prop_masses_are_conserved(parts in prop::collection::vec(any_part(), 1..8), water in 0.0..20.0_f64) {
        let whole = typical_totals(&parts, water);
        let each: Vec<_> = parts.iter().map(|part| typical_totals(std::slice::from_ref(part), 0.0)).collect();
        let sum = |of: fn(&heapwright_engine::mixture::Totals) -> f64| each.iter().map(of).sum::<f64>();
        prop_assert!(close(whole.wet_mass_kg, sum(|t| t.wet_mass_kg) + water));
        prop_assert!(close(whole.dry_mass_kg, sum(|t| t.dry_mass_kg)));
        prop_assert!(close(whole.carbon_kg, sum(|t| t.carbon_kg)));
        prop_assert!(close(whole.nitrogen_kg, sum(|t| t.nitrogen_kg)));
        prop_assert!(close(whole.volume_m3.unwrap(), sum(|t| t.volume_m3.unwrap())));
        let mixture = mixture(&parts, water, &TARGET, SEED).unwrap();
        prop_assert!(close(mixture.wet_mass_kg.value, mixture.dry_mass_kg.value + mixture.water_kg.value));
    }

    #[test]
    fn prop_a_mixture_lies_between_its_parts(parts in prop::collection::vec(any_part(), 1..8)) {
        let whole = mixture(&parts, 0.0, &TARGET, SEED).unwrap();
        let each: Vec<Mixture> = parts.iter().map(|part| mixture(std::slice::from_ref(part), 0.0, &TARGET, SEED).unwrap()).collect();
        let between = |of: fn(&Mixture) -> f64| {
            let low = each.iter().map(of).fold(f64::INFINITY, f64::min);
            let high = each.iter().map(of).fold(0.0, f64::max);
            (low..=high).contains(&of(&whole)) || close(of(&whole), low) || close(of(&whole), high)
        };
        prop_assert!(between(|m| m.carbon_to_nitrogen.unwrap().value));
        prop_assert!(between(|m| m.moisture_wet_basis.value));
        prop_assert!(between(|m| m.bulk_density_kg_m3.unwrap().value));
    }

    #[test]
    fn prop_wider_ranges_give_wider_intervals(part in any_part(), share in 0.0..1.0_f64) {
        // One material alone: its moisture interval grows with its moisture range.
        let mut narrow = part.clone();
        let range = part.ingredient.moisture_wet_basis;
        narrow.ingredient.moisture_wet_basis.low = range.typical - (range.typical - range.low) * share;
        narrow.ingredient.moisture_wet_basis.high = range.typical + (range.high - range.typical) * share;
        let of = |part: &Part| mixture(std::slice::from_ref(part), 0.0, &TARGET, SEED).unwrap().moisture_wet_basis;
        let (wide, narrow) = (of(&part), of(&narrow));
        prop_assert!(wide.low <= narrow.low + 1e-12 && narrow.high <= wide.high + 1e-12);
    }

    #[test]
    fn prop_recipes_keep_to_limits_and_stocks(
        in_hand in prop::collection::vec(any_part(), 1..4),
        reach in prop::collection::vec((any_part(), any::<bool>(), 0.0..30.0_f64), 0..6),
        water in any::<bool>(),
    ) {
        let reach: Vec<Reach> = reach.into_iter().map(|(part, whole, most)| Reach {
            unit: match part.amount {
                PartAmount::MassKg(_) => PartAmount::MassKg(1.0),
                PartAmount::VolumeM3 { measure, each_m3, .. } => PartAmount::VolumeM3 { measure, count: 1.0, each_m3 },
            },
            ingredient: part.ingredient,
            whole,
            most_units: most,
            effort: 1.0,
        }).collect();
        let question = Question {
            in_hand,
            reach,
            water: WaterSupply { most_kg: if water { f64::INFINITY } else { 0.0 }, step_kg: 0.0 },
            target: TARGET,
            objective: Objective::BestCentred,
            alternatives: true,
            seed: SEED,
        };
        let (recipes, met) = match balance(&question) {
            Balance::Met(recipes) => (recipes, true),
            Balance::NotMet { nearest, conflict } => {
                prop_assert!(!conflict.misses.is_empty(), "a region that is missed is missed somewhere");
                (vec![*nearest], false)
            }
            Balance::Nothing => return Err(TestCaseError::fail("there is something in hand")),
        };
        for recipe in recipes {
            prop_assert!(recipe.water_kg >= 0.0 && (water || recipe.water_kg == 0.0));
            for (units, reach) in recipe.units.iter().zip(&question.reach) {
                prop_assert!(*units >= 0.0 && *units <= reach.most_units * (1.0 + 1e-9));
                prop_assert!(!reach.whole || units.fract() == 0.0);
            }
            if met {
                let figure = |value: f64, low: f64, high: f64| value >= low * (1.0 - 1e-6) && value <= high * (1.0 + 1e-6);
                prop_assert!(figure(recipe.mixture.moisture_wet_basis.value, 0.5, 0.6), "{:?}", recipe.mixture.moisture_wet_basis);
                prop_assert!(figure(recipe.mixture.carbon_to_nitrogen.unwrap().value, 25.0, 40.0));
                prop_assert!(figure(recipe.mixture.free_air_space.unwrap().value, 0.3, 1.0));
            }
        }
    }
}

#[test]
fn mixture_of_nothing_is_nothing() {
    assert_eq!(mixture(&[], 0.0, &TARGET, SEED), None);
    assert_eq!(
        mixture(
            &[kilograms(exact("a", 50.0, 40.0, 1.0), 0.0)],
            0.0,
            &TARGET,
            SEED
        ),
        None
    );
}

#[test]
fn mixture_without_nitrogen_has_no_ratio() {
    let sugar = kilograms(exact("sugar", 0.1, 42.1, 0.0), 1.0);
    let mixture = mixture(&[sugar], 0.0, &TARGET, SEED).unwrap();
    assert_eq!(mixture.carbon_to_nitrogen, None);
    assert_eq!(mixture.chance.carbon_to_nitrogen, 0.0);
}

#[test]
fn exact_figures_carry_no_spread() {
    let parts = [
        kilograms(exact("a", 77.0, 45.0, 2.4), 10.0),
        kilograms(exact("b", 35.0, 50.0, 0.75), 6.8),
    ];
    for figure in figures(&mixture(&parts, 0.0, &TARGET, SEED).unwrap()) {
        // The draws are summed in the same order, so that they are all the value itself.
        assert!(
            figure.high - figure.low <= 1e-12 * figure.value,
            "{figure:?}"
        );
    }
}
