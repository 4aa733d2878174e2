//! How long do a mixture and a recipe take? On real materials of the catalogue.
//!
//! `cargo bench -p heapwright-engine`. Aims: a mixture under 10 microseconds;
//! with 1,024 draws under 1 millisecond; a whole-scoop recipe over 20 materials
//! under 10 milliseconds.
#![allow(missing_docs, clippy::unwrap_used)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use heapwright_catalogue::Catalogue;
use heapwright_engine::balance::{Balance, Objective, Question, Reach, WaterSupply, balance};
use heapwright_engine::mixture::{mixture, typical_totals};
use heapwright_garden::{Found, Garden, Stated, Stuff};
use heapwright_quantity::{Amount, Unit};
use heapwright_terms::{MaterialId, Part, Target};

const TARGET: Target = Target {
    carbon_to_nitrogen_low: 25.0,
    carbon_to_nitrogen_high: 40.0,
    carbon_to_nitrogen_goal: 30.0,
    moisture_wet_basis_low: 0.5,
    moisture_wet_basis_high: 0.6,
    free_air_space_low: 0.3,
    free_air_space_high: 1.0,
};

const IN_HAND: [(&str, f64); 5] = [
    ("mixed_vegetable_scraps", 2.0),
    ("grass_clippings_fresh", 1.0),
    ("coffee_grounds", 0.5),
    ("dry_leaves_mixed", 4.0),
    ("corrugated_cardboard", 1.0),
];

const IN_REACH: [&str; 20] = [
    "dry_leaves_mixed",
    "leaves_shredded_dry",
    "oak_leaves",
    "maple_leaves",
    "pine_needles",
    "straw_wheat",
    "straw_barley",
    "hay_grass",
    "maize_stalks",
    "bracken_dry",
    "twigs_small_sticks",
    "shredded_prunings",
    "wood_chip_hardwood",
    "sawdust_softwood",
    "wood_shavings",
    "newspaper",
    "corrugated_cardboard",
    "egg_carton",
    "horse_bedding_straw",
    "leaf_mould",
];

fn buckets(id: &str, count: f64) -> Part {
    Garden::default()
        .find(
            Catalogue::built_in(),
            &Found {
                stuff: Stuff::Known {
                    material: MaterialId(id.to_owned()),
                    conditions: Vec::new(),
                    stated: Stated::default(),
                },
                amount: Amount {
                    count,
                    unit: Unit::Measure("bucket".to_owned()),
                },
            },
        )
        .unwrap()
        .part
}

fn question(objective: Objective, alternatives: bool) -> Question {
    Question {
        in_hand: vec![
            buckets("mixed_vegetable_scraps", 2.0),
            buckets("grass_clippings_fresh", 1.0),
        ],
        reach: IN_REACH
            .iter()
            .map(|id| {
                let part = buckets(id, 1.0);
                Reach {
                    ingredient: part.ingredient,
                    unit: part.amount,
                    whole: true,
                    most_units: 12.0,
                    effort: 1.0,
                }
            })
            .collect(),
        water: WaterSupply {
            most_kg: f64::INFINITY,
            step_kg: 0.5,
        },
        target: TARGET,
        objective,
        alternatives,
        seed: 7,
    }
}

fn mixtures(criterion: &mut Criterion) {
    let parts: Vec<Part> = IN_HAND
        .iter()
        .map(|(id, count)| buckets(id, *count))
        .collect();
    criterion.bench_function("mixture of 5 parts, typical values", |bencher| {
        bencher.iter(|| typical_totals(black_box(&parts), 1.0));
    });
    criterion.bench_function("mixture of 5 parts, 1,024 draws", |bencher| {
        bencher.iter(|| mixture(black_box(&parts), 1.0, &TARGET, 7));
    });
}

fn recipes(criterion: &mut Criterion) {
    for (name, question) in [
        (
            "whole scoops of 20 materials, least to carry",
            question(Objective::LeastMass, false),
        ),
        (
            "whole scoops of 20 materials, surest",
            question(Objective::BestCentred, false),
        ),
        (
            "whole scoops of 20 materials, surest and its alternatives",
            question(Objective::BestCentred, true),
        ),
    ] {
        assert!(
            matches!(balance(&question), Balance::Met(_)),
            "the bench asks for what can be had"
        );
        criterion.bench_function(name, |bencher| {
            bencher.iter(|| balance(black_box(&question)))
        });
    }
}

criterion_group!(benches, mixtures, recipes);
criterion_main!(benches);
