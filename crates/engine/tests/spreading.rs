//! Does the plan keep what it promises? Limits, sums, order, and that more compost never does harm.
#![allow(clippy::unwrap_used)]

use heapwright_engine::spreading::bed::{Bed, BedLimit, Dressing, Maturity, Soil, State, weigh};
use heapwright_engine::spreading::compost::Compost;
use heapwright_engine::spreading::plan::{Binding, Question, plan};
use heapwright_engine::spreading::rules::Rules;
use heapwright_engine::spreading::salt;
use heapwright_engine::spreading::sharing::{Plot, Sharing, share_out};
use heapwright_quantity::Range;
use heapwright_terms::{CropNeed, EdiblePart, SaltTolerance};
use proptest::prelude::*;

/// Figures near those of the tables; the tests hold for any.
fn rules() -> Rules {
    Rules {
        nitrogen_first_year: Range::new(0.0, 0.10, 0.15).unwrap(),
        nitrogen_later: Range::new(0.02, 0.05, 0.08).unwrap(),
        mineral_share: Range::new(0.02, 0.035, 0.05).unwrap(),
        organic_marks: [
            (10.0, 0.20),
            (12.0, 0.12),
            (15.0, 0.08),
            (20.0, 0.03),
            (25.0, 0.0),
            (30.0, -0.05),
        ],
        organic_spread: Range::new(0.5, 1.0, 1.5).unwrap(),
        phosphorus_first_year: Range::new(0.3, 0.4, 0.5).unwrap(),
        potassium_first_year: Range::new(0.8, 0.85, 0.9).unwrap(),
        phosphorus_window_years: 3.0,
        phosphorus_build_up: 2.0,
        low_soil_phosphorus: 20e-6,
        high_soil_phosphorus: 55e-6,
        high_soil_potassium: 240e-6,
        established_depth_m: 0.010,
        new_ground_depth_m: 0.050,
        dug_m: 0.150,
        soil_conductivity_ds_m: 0.5,
        immature_days: 56.0,
        waiting_touching_days: 120.0,
        waiting_clear_days: 90.0,
    }
}

fn compost() -> Compost {
    Compost {
        moisture_wet_basis: Range::new(0.4, 0.5, 0.6).unwrap(),
        bulk_density_kg_m3: Range::new(500.0, 600.0, 750.0).unwrap(),
        nitrogen_dry_basis: Range::new(0.009, 0.015, 0.025).unwrap(),
        phosphorus_dry_basis: Range::new(0.002, 0.004, 0.008).unwrap(),
        potassium_dry_basis: Range::new(0.006, 0.012, 0.026).unwrap(),
        calcium_dry_basis: Range::exact(0.03),
        magnesium_dry_basis: Range::exact(0.005),
        conductivity_ds_m: Range::exact(3.0),
        carbon_to_nitrogen: None,
        mineral_nitrogen_share: None,
    }
}

fn bed() -> Bed {
    Bed {
        area_m2: 6.0,
        need: CropNeed {
            nitrogen_kg_m2: Range::new(0.010, 0.0125, 0.015).unwrap(),
            phosphorus_kg_m2: Range::exact(0.002),
            potassium_kg_m2: Range::exact(0.0145),
        },
        salt: Some(SaltTolerance {
            threshold_ds_m: 1.7,
            loss_per_ds_m: 0.12,
        }),
        part: EdiblePart::TouchesSoil,
        is_for_food: true,
        likes_acid: false,
        new_ground: false,
        soil: Soil::default(),
        sown_in_days: None,
        harvest_in_days: None,
        dressings: Vec::new(),
    }
}

const MATURE: State = State {
    maturity: Maturity::Mature,
    held_raw: Some(false),
    off_food_beds: false,
};

/// What binds a bed when there is more than enough compost, and how deep it gets [mm].
fn binding(bed: Bed, compost: Compost, state: State) -> (Binding, f64) {
    let question = Question {
        beds: vec![bed],
        compost,
        state,
        volume_m3: 10.0,
        rules: rules(),
        unit_kg_m2: [0.0125, 0.002, 0.0145],
        seed: 1,
    };
    let share = plan(&question).beds.remove(0);
    (share.binding, share.depth_m * 1000.0)
}

fn close(found: f64, wanted: f64) {
    assert!((found - wanted).abs() < 1e-6, "{found} is not {wanted}");
}

#[test]
fn each_limit_can_be_the_one_that_binds() {
    let (limit, depth) = binding(bed(), compost(), MATURE);
    // Three years of 2 g over 0.6 kg/L x 50 % x 0.4 % = 1.2 g/L.
    assert_eq!(limit, Binding::Limit(BedLimit::Phosphorus));
    close(depth, 3.0 * 2.0 / 1.2);

    let acid = Bed {
        likes_acid: true,
        ..bed()
    };
    assert_eq!(
        binding(acid, compost(), MATURE),
        (Binding::Limit(BedLimit::Acid), 0.0)
    );

    let raw = State {
        held_raw: Some(true),
        ..MATURE
    };
    for (part, days, barred) in [
        (EdiblePart::TouchesSoil, 119.9, true),
        (EdiblePart::TouchesSoil, 120.0, false),
        (EdiblePart::ClearOfSoil, 89.9, true),
        (EdiblePart::ClearOfSoil, 90.0, false),
        (EdiblePart::NotEaten, 1.0, false),
    ] {
        let soon = Bed {
            part,
            harvest_in_days: Some(days),
            ..bed()
        };
        let found = binding(soon, compost(), raw).0;
        assert_eq!(
            found == Binding::Limit(BedLimit::Waiting),
            barred,
            "{part:?} {days}"
        );
    }

    for (maturity, limit) in [
        (Maturity::Immature, BedLimit::Immature),
        (Maturity::Unknown, BedLimit::MaturityUnknown),
    ] {
        let state = State { maturity, ..MATURE };
        let sown = |days| Bed {
            sown_in_days: Some(days),
            ..bed()
        };
        assert_eq!(
            binding(sown(55.9), compost(), state),
            (Binding::Limit(limit), 0.0)
        );
        assert_ne!(
            binding(sown(56.0), compost(), state).0,
            Binding::Limit(limit)
        );
    }

    let salty = Compost {
        conductivity_ds_m: Range::exact(60.0),
        ..compost()
    };
    let (limit, depth) = binding(bed(), salty, MATURE);
    assert_eq!(limit, Binding::Limit(BedLimit::Salt));
    close(salt::root_zone_ds_m(0.5, 60.0, depth / 1000.0, 0.150), 1.7);

    let lean = Compost {
        phosphorus_dry_basis: Range::exact(0.0005),
        ..compost()
    };
    assert_eq!(
        binding(bed(), lean.clone(), MATURE).0,
        Binding::Limit(BedLimit::Depth)
    );
    close(binding(bed(), lean.clone(), MATURE).1, 10.0);
    let new = Bed {
        new_ground: true,
        ..bed()
    };
    let (limit, depth) = binding(new, lean.clone(), MATURE);
    // 15 g at most over 0.6 kg/L x 50 % x 1.5 % x 10 % = 0.45 g/L; the phosphorus allows 40 mm.
    assert_eq!(limit, Binding::Limit(BedLimit::Nitrogen));
    close(depth, 15.0 / 0.45);
}

#[test]
fn what_never_goes_on_food_beds_goes_on_others_only() {
    let state = State {
        held_raw: Some(true),
        off_food_beds: true,
        ..MATURE
    };
    let soon = Bed {
        likes_acid: true,
        harvest_in_days: Some(1.0),
        ..bed()
    };
    for food in [bed(), soon] {
        let barred = (Binding::Limit(BedLimit::FoodBed), 0.0);
        assert_eq!(binding(food.clone(), compost(), state), barred);
        // No wait makes it fit for food, so none is told.
        assert_eq!(weigh(&food, &compost(), state, &rules()).wait_days, None);
    }
    let border = Bed {
        is_for_food: false,
        part: EdiblePart::NotEaten,
        ..bed()
    };
    assert_eq!(
        binding(border.clone(), compost(), state),
        binding(border, compost(), MATURE)
    );
}

#[test]
fn a_need_is_met_only_where_more_would_meet_none_of_it() {
    // Round-off of the solver leaves drops of some amounts: they are no sign of a need that is met.
    for litres in (1..=60).map(f64::from) {
        for beds in [
            vec![bed()],
            vec![
                bed(),
                Bed {
                    area_m2: 2.5,
                    ..bed()
                },
            ],
        ] {
            let question = Question {
                beds,
                compost: compost(),
                state: MATURE,
                volume_m3: litres / 1000.0,
                rules: rules(),
                unit_kg_m2: [0.0125, 0.002, 0.0145],
                seed: 1,
            };
            // All beds are alike, and 5 mm are as much as their phosphorus allows.
            let area_m2: f64 = question.beds.iter().map(|bed| bed.area_m2).sum();
            let wanted = if litres / area_m2 < 5.0 - 1e-3 {
                Binding::Supply
            } else {
                Binding::Limit(BedLimit::Phosphorus)
            };
            for share in plan(&question).beds {
                assert_eq!(share.binding, wanted, "{litres} L on {area_m2} m2");
            }
        }
    }
}

#[test]
fn a_soil_rich_in_phosphorus_gets_one_year_of_it_and_a_poor_one_more() {
    let with = |mg_kg: f64| Bed {
        soil: Soil {
            phosphorus: Some(mg_kg * 1e-6),
            ..Soil::default()
        },
        ..bed()
    };
    let room = |bed: Bed| {
        let weighed = weigh(&bed, &compost(), MATURE, &rules());
        let phosphorus = |allowed: &&heapwright_engine::spreading::bed::Allowed| {
            allowed.limit == BedLimit::Phosphorus
        };
        weighed.allowed.iter().find(phosphorus).unwrap().depth_m * 1000.0
    };
    close(room(with(80.0)), 2.0 / 1.2);
    close(room(with(40.0)), 6.0 / 1.2);
    close(room(with(10.0)), 12.0 / 1.2);
    let need = weigh(&with(80.0), &compost(), MATURE, &rules()).need;
    assert_eq!(need.phosphorus_kg_m2.typical, 0.0);
}

#[test]
fn earlier_dressings_count_for_need_and_limits() {
    let dressed = |age_years: f64| Bed {
        dressings: vec![Dressing {
            age_years,
            depth_m: 0.002,
        }],
        ..bed()
    };
    let weighed = |age: f64| weigh(&dressed(age), &compost(), MATURE, &rules());
    // This year: 10 % of 4.5 g/L x 2 L; later 5 % of the rest, then of what is left.
    close(weighed(0.4).carried.nitrogen_kg_m2 * 1000.0, 0.9);
    close(weighed(1.4).carried.nitrogen_kg_m2 * 1000.0, 0.405);
    close(weighed(2.4).carried.nitrogen_kg_m2 * 1000.0, 0.384_75);
    close(weighed(0.4).most_depth_m() * 1000.0, 5.0 - 2.0);
    close(weighed(2.9).most_depth_m() * 1000.0, 5.0 - 2.0);
    close(weighed(3.1).most_depth_m() * 1000.0, 5.0);
    close(weighed(0.9).carried.depth_this_year_m * 1000.0, 2.0);
    close(weighed(1.1).carried.depth_this_year_m, 0.0);
}

#[test]
fn compost_that_ties_nitrogen_up_meets_none_of_the_need() {
    let woody = Compost {
        carbon_to_nitrogen: Some(40.0),
        ..compost()
    };
    let first = woody.first_year_nitrogen(&rules());
    assert!(first.typical < 0.0 && first.low <= first.typical && first.typical <= first.high);
    let (_, depth) = binding(bed(), woody, MATURE);
    assert!(depth > 0.0, "phosphorus and potassium are still welcome");
}

#[test]
fn intervals_hold_the_typical_value_and_are_the_same_twice() {
    let once = compost().brought(&rules(), 7);
    assert_eq!(once, compost().brought(&rules(), 7));
    let nitrogen = once.nitrogen_first_year;
    assert!(nitrogen.low < nitrogen.value && nitrogen.value < nitrogen.high);
    close(nitrogen.value, 0.45);
}

fn plots() -> impl Strategy<Value = Vec<Plot>> {
    let plot = (
        0.5_f64..20.0,
        [0.0_f64..0.025, 0.0_f64..0.003, 0.0_f64..0.025],
        0.0_f64..0.003,
        prop_oneof![Just(0.0), Just(0.010), 0.0_f64..0.05],
    )
        .prop_map(
            |(area_m2, wanted_kg_m2, phosphorus_room_kg_m2, most_depth_m)| Plot {
                area_m2,
                wanted_kg_m2,
                phosphorus_room_kg_m2,
                most_depth_m,
            },
        );
    prop::collection::vec(plot, 1..7)
}

fn sharing(plots: Vec<Plot>, volume_m3: f64) -> Sharing {
    Sharing {
        plots,
        volume_m3,
        supplied_kg_m3: [0.45, 0.48, 3.06],
        phosphorus_kg_m3: 1.2,
        unit_kg_m2: [0.0125, 0.002, 0.0145],
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn prop_limits_are_kept_and_shares_sum_to_what_there_is(
        plots in plots(),
        volume_m3 in 0.0_f64..0.6,
    ) {
        let found = share_out(&sharing(plots.clone(), volume_m3));
        prop_assert!(found.proven);
        let mut given_m3 = 0.0;
        for (plot, depth) in plots.iter().zip(&found.depths_m) {
            prop_assert!(*depth >= 0.0 && *depth <= plot.most_depth_m);
            given_m3 += plot.area_m2 * depth;
        }
        prop_assert!((given_m3 + found.left_m3 - volume_m3).abs() <= 1e-9 * volume_m3.max(1.0));
        prop_assert!(given_m3 <= volume_m3 * (1.0 + 1e-12));
    }

    #[test]
    fn prop_more_compost_never_leaves_more_need_unmet(
        plots in plots(),
        volume_m3 in 0.0_f64..0.4,
        more_m3 in 0.0_f64..0.3,
    ) {
        let less = share_out(&sharing(plots.clone(), volume_m3));
        let more = share_out(&sharing(plots, volume_m3 + more_m3));
        prop_assert!(more.unmet <= less.unmet + 1e-7 * less.unmet.max(1.0));
    }

    #[test]
    fn prop_the_order_of_beds_has_no_effect(
        plots in plots(),
        volume_m3 in 0.0_f64..0.6,
        turn in 0_usize..7,
    ) {
        let mut turned = plots.clone();
        turned.reverse();
        turned.rotate_left(turn % plots.len());
        let places: Vec<usize> = turned
            .iter()
            .map(|plot| plots.iter().position(|other| other == plot).unwrap())
            .collect();
        let here = share_out(&sharing(plots, volume_m3));
        let there = share_out(&sharing(turned, volume_m3));
        for (depth, place) in there.depths_m.iter().zip(places) {
            prop_assert!((depth - here.depths_m[place]).abs() <= 1e-12);
        }
    }

    #[test]
    fn prop_beds_that_are_alike_get_alike(
        plots in plots(),
        volume_m3 in 0.0_f64..0.6,
        area_m2 in 0.5_f64..20.0,
    ) {
        let mut doubled = plots.clone();
        doubled.push(Plot { area_m2, ..plots[0] });
        let found = share_out(&sharing(doubled, volume_m3));
        prop_assert_eq!(found.depths_m[0], *found.depths_m.last().unwrap());
    }
}
