//! What is left of what went in: published balances, properties, and bins that were weighed.

#![allow(clippy::unwrap_used)]

use std::io::Write;
use std::path::Path;

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::accounts::{Accounts, Element, Known, Lot, accounts, left_of};
use heapwright_engine::finish::diversion::{Kind, kept_out};
use heapwright_engine::finish::learnt::learn;
use heapwright_garden::{Found, Garden, Stated, Stuff};
use heapwright_quantity::{Amount, MassUnit, Range, Unit};
use heapwright_terms::{Ingredient, MaterialId, NitrogenAndCarbon, Part, PartAmount};
use proptest::prelude::*;

const SEED: u64 = 5;

/// Stuff of exact figures: dry matter [kg], ash, nitrogen and carbon of it; half water.
fn exact(dry_kg: f64, ash: f64, nitrogen: f64, degradable_of_organic: f64) -> Part {
    Part {
        ingredient: Ingredient {
            identity: format!("test/{ash}/{nitrogen}"),
            moisture_wet_basis: Range::exact(0.5),
            nitrogen_and_carbon: NitrogenAndCarbon {
                nitrogen_dry_basis: Range::exact(nitrogen),
                carbon_dry_basis_at_low_nitrogen: (1.0 - ash) / 1.8,
                carbon_dry_basis_typical: (1.0 - ash) / 1.8,
                carbon_dry_basis_at_high_nitrogen: (1.0 - ash) / 1.8,
            },
            measured_over_handbook_carbon: 1.0,
            bulk_density_kg_m3: Some(Range::exact(300.0)),
            density_follows_moisture: false,
            ash_dry_basis: Range::exact(ash),
            biodegradable_dry_basis: Range::exact((1.0 - ash) * degradable_of_organic),
            phosphorus_dry_basis: Some(Range::exact(0.003)),
            potassium_dry_basis: Some(Range::exact(0.01)),
            calcium_dry_basis: None,
            magnesium_dry_basis: Some(Range::exact(0.002)),
            sodium_dry_basis: None,
        },
        amount: PartAmount::MassKg(2.0 * dry_kg),
    }
}

fn finished(part: Part) -> Lot {
    Lot {
        part,
        progress: 1.0,
    }
}

fn kept(lots: &[Lot], known: &Known) -> Accounts {
    accounts(lots, 0.0, known, SEED).unwrap()
}

#[test]
fn us_04_and_us_05_ash_balance() {
    let known = Known {
        ash_dry_basis: Some(Range::exact(0.40)),
        moisture_wet_basis: Some(Range::exact(0.5)),
        ..Known::default()
    };
    let found = kept(&[finished(exact(100.0, 0.12, 0.02, 0.9))], &known);
    // Derived in the reference: 30.0 kg of dry matter, 60 kg, 100 L at 0.60 kg/L.
    assert!(
        (found.dry_kg.value - 30.0).abs() < 1e-9,
        "{:?}",
        found.dry_kg
    );
    assert!((found.wet_kg.value - 60.0).abs() < 1e-9);
    assert!((found.volume_m3.value - 0.1).abs() < 1e-9);
    assert!((found.sieved_m3.value + found.overs_m3.value - 0.1).abs() < 1e-9);
    assert!(!found.ash_too_low);
}

#[test]
fn ash_that_cannot_be_is_told() {
    let lots = [finished(exact(100.0, 0.12, 0.02, 0.9))];
    let known = |ash| Known {
        ash_dry_basis: Some(Range::exact(ash)),
        ..Known::default()
    };
    let low = kept(&lots, &known(0.05));
    assert!(low.ash_too_low && (low.dry_kg.value - 100.0).abs() < 1e-9);
    let soil = kept(&lots, &known(0.8));
    assert!(soil.soil_likely && !soil.ash_too_low);
    assert!(accounts(&[], 0.0, &Known::default(), SEED).is_none());
    assert!(
        accounts(
            &[finished(exact(0.0, 0.1, 0.02, 0.9))],
            3.0,
            &Known::default(),
            SEED
        )
        .is_none()
    );
}

#[test]
fn fresh_stuff_has_lost_nothing() {
    let fresh = Lot {
        part: exact(10.0, 0.1, 0.03, 0.8),
        progress: 0.0,
    };
    let found = kept(&[fresh], &Known::default());
    assert!((found.dry_kg.value - 10.0).abs() < 1e-12);
    assert!((found.volume_m3.value - 20.0 / 300.0).abs() < 1e-12);
    let nitrogen = found.elements[0].unwrap();
    assert_eq!((nitrogen.gas_kg.high, nitrogen.leached_kg.high), (0.0, 0.0));
    // What is known of no part has no account, and what is known of some says of how much.
    assert!(found.elements[3].is_none());
    assert!(found.brought_kg[0][3].is_none());
}

#[test]
fn nitrogen_losses_lie_in_the_band_of_their_ratio() {
    // Section 3.6 of the dossier of the simulation: C:N 20: 25 to 50 %, 30: 8 to 35, 40: 3 to 25.
    for (ratio, low, high) in [(20.0, 0.25, 0.5), (30.0, 0.08, 0.35), (40.0, 0.03, 0.25)] {
        let carbon = 0.9 / 1.8;
        let found = kept(
            &[finished(exact(10.0, 0.1, carbon / ratio, 0.8))],
            &Known::default(),
        );
        let nitrogen = found.elements[0].unwrap();
        let lost = 1.0 - nitrogen.now_kg.value / nitrogen.fed_kg.value;
        assert!(lost > low && lost < high, "{ratio}: {lost}");
        let least = 1.0 - nitrogen.now_kg.high / nitrogen.fed_kg.value;
        let most = 1.0 - nitrogen.now_kg.low / nitrogen.fed_kg.value;
        assert!(least >= low && most <= high, "{ratio}: {least} {most}");
    }
}

fn material(id: &str, mass_kg: f64) -> Part {
    let found = Found {
        stuff: Stuff::Known {
            material: MaterialId(id.to_owned()),
            conditions: Vec::new(),
            stated: Stated::default(),
        },
        amount: Amount {
            count: mass_kg,
            unit: Unit::Mass(MassUnit::Kilogram),
        },
    };
    let garden = Garden::default();
    garden.find(Catalogue::built_in(), &found).unwrap().part
}

#[test]
fn egg_shells_bring_lime_and_banana_peels_potash() {
    let lots = [
        finished(material("egg_shells", 1.0)),
        finished(material("banana_peel", 1.0)),
        finished(material("bones_fresh", 1.0)),
    ];
    let found = kept(&lots, &Known::default());
    let brought = |lot: usize, element: Element| {
        let index = Element::ALL.iter().position(|of| *of == element).unwrap();
        found.brought_kg[lot][index].map(|mass| mass.value)
    };
    // The catalogue: 37 % calcium of 92 % dry matter; 9.6 % phosphorus of bones, 30 % water.
    assert!((brought(0, Element::Calcium).unwrap() - 0.92 * 0.37).abs() < 1e-9);
    assert!((brought(2, Element::Phosphorus).unwrap() - 0.7 * 0.096).abs() < 1e-9);
    assert!(brought(1, Element::Potassium).unwrap() > brought(0, Element::Potassium).unwrap());
    assert_eq!(brought(2, Element::Potassium), None);
    let potassium = found.elements[2].unwrap();
    assert!(potassium.known_share < 1.0 && potassium.known_share > 0.0);
}

/// US-40: a review's three bins of food waste with chips lost 58 to 69 % of the wet mass and 37 to
/// 61 % of the dry (abstract in the reference, section 2). Our 80 % interval must meet that range.
#[test]
fn us_40_food_waste_with_chips_in_small_bins() {
    let lots = [
        finished(material("household_food_waste_mixed", 7.0)),
        finished(material("wood_chip_hardwood", 1.0)),
    ];
    let found = kept(&lots, &Known::default());
    let wet = found.wet_kg.scaled(1.0 / found.fed_wet_kg.value);
    let dry = found.dry_kg.scaled(1.0 / found.fed_dry_kg.value);
    writeln!(std::io::stdout(), "wet left {wet:?}, dry left {dry:?}").unwrap();
    assert!(wet.low < 0.42 && wet.high > 0.31, "{wet:?}");
    assert!(dry.low < 0.63 && dry.high > 0.39, "{dry:?}");
}

/// J5: 88 bin batches, crude output 35.3 % of the feed (17 to 57 %). How moist they were in and out is
/// not told. What is computed beforehand is told, not asserted: it lies too high. What is asserted is
/// that the garden's own harvests mend it: after three batches the interval must hold as many of the
/// next ones as an 80 % interval should, within what chance allows for 85 of them.
#[test]
fn j5_batches_that_were_weighed() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../../shared/reference/data/compost_batches_apache2_lytras2024.csv");
    let Ok(text) = std::fs::read_to_string(&path) else {
        writeln!(
            std::io::stdout(),
            "skipped: the open table of batches is not here"
        )
        .unwrap();
        return;
    };
    // Fields may stand in quotes with a decimal comma.
    let cells = |line: &str| -> Vec<f64> {
        let mut quoted = false;
        let plain: String = line
            .chars()
            .map(|letter| {
                quoted ^= letter == '"';
                if letter == ',' && !quoted {
                    ';'
                } else {
                    letter
                }
            })
            .collect();
        let plain = plain.replace('"', "").replace(',', ".");
        plain
            .split(';')
            .map(|cell| cell.trim().parse().unwrap_or(0.0))
            .collect()
    };
    let ids = [
        "household_food_waste_mixed",
        "shredded_prunings",
        "finished_compost",
        "sawdust_softwood",
        "dry_leaves_mixed",
    ];
    let (mut inside, mut learnt_inside, mut ratios) = (0_u32, 0_u32, Vec::new());
    for line in text.lines().skip(1).filter(|line| !line.trim().is_empty()) {
        let row = cells(line);
        let lots: Vec<Lot> = ids
            .iter()
            .zip(&row[1..6])
            .filter(|(_, mass)| **mass > 0.0)
            .map(|(id, mass)| finished(material(id, *mass)))
            .collect();
        let found = kept(&lots, &Known::default());
        let crude = row[10];
        inside += u32::from(found.wet_kg.low <= crude && crude <= found.wet_kg.high);
        if ratios.len() >= 3 {
            let learnt = learn(found.wet_kg, &ratios).interval;
            learnt_inside += u32::from(learnt.low <= crude && crude <= learnt.high);
        }
        ratios.push(crude / found.wet_kg.value);
    }
    let all = ratios.len();
    let learnt_share = f64::from(learnt_inside) / 85.0;
    ratios.sort_by(f64::total_cmp);
    writeln!(
        std::io::stdout(),
        "batches {all}: inside beforehand {inside}, after own harvests {learnt_inside} of 85; found over computed {:.3}",
        ratios[all / 2]
    )
    .unwrap();
    assert_eq!(all, 88);
    // 80 % of 85, less and more three standard errors of 4.3 points.
    assert!((0.67..=0.93).contains(&learnt_share), "{learnt_share}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn prop_balances_close(
        parts in prop::collection::vec((0.01..500.0_f64, 0.01..0.95_f64, 0.0005..0.06_f64, 0.0..1.0_f64, 0.0..1.0_f64), 1..6),
        rained_on in any::<bool>(),
        water_kg in 0.0..200.0_f64,
    ) {
        let lots: Vec<Lot> = parts
            .iter()
            .map(|(dry, ash, nitrogen, degradable, progress)| Lot {
                part: exact(*dry, *ash, *nitrogen, *degradable),
                progress: *progress,
            })
            .collect();
        let known = Known { rained_on, ..Known::default() };
        let found = accounts(&lots, water_kg, &known, SEED).unwrap();
        for element in found.elements.iter().flatten() {
            prop_assert!(element.closure < 1e-9, "{}", element.closure);
            let sum = element.now_kg.value + element.gas_kg.value + element.leached_kg.value;
            prop_assert!((sum / element.fed_kg.value - 1.0).abs() < 1e-9);
        }
        // Without draws the same comes out.
        let left = left_of(&lots, water_kg, &known).unwrap();
        for (one, other) in [(left.wet_kg, found.wet_kg), (left.volume_m3, found.volume_m3), (left.sieved_m3, found.sieved_m3)] {
            prop_assert!((one / other.value - 1.0).abs() < 1e-12, "{one} {}", other.value);
        }
        // What lots brought is what went in.
        for index in [0, 1, 2, 4] {
            let brought: f64 = found.brought_kg.iter().filter_map(|lot| lot[index]).map(|mass| mass.value).sum();
            prop_assert!((brought / found.elements[index].unwrap().fed_kg.value - 1.0).abs() < 1e-9);
        }
        // Ash is conserved, and there is never more than went in.
        prop_assert!((found.ash_dry_basis.value * found.dry_kg.value / found.ash_kg.value - 1.0).abs() < 1e-9);
        prop_assert!(found.dry_kg.high <= found.fed_dry_kg.high * (1.0 + 1e-9));
        prop_assert!(found.dry_kg.low >= found.ash_kg.low * (1.0 - 1e-9));
    }

    #[test]
    fn prop_more_ash_never_means_less_compost(
        dry in 1.0..100.0_f64, ash in 0.02..0.6_f64, more in 0.0..0.3_f64,
        degradable in 0.1..0.95_f64, measured in prop::option::of(0.3..0.9_f64),
    ) {
        let known = Known {
            ash_dry_basis: measured.map(Range::exact),
            ..Known::default()
        };
        let left = |ash| {
            let found = kept(&[finished(exact(dry, ash, 0.02, degradable))], &known);
            [found.dry_kg, found.wet_kg, found.volume_m3].map(|figure| figure.value)
        };
        for (one, other) in left(ash).into_iter().zip(left(ash + more)) {
            prop_assert!(other >= one * (1.0 - 1e-12), "{one} {other}");
        }
    }

    #[test]
    fn prop_the_order_of_what_was_kept_out_does_not_matter(
        masses in prop::collection::vec(0.1..100.0_f64, 1..5),
    ) {
        let mut parts: Vec<(Kind, Part)> = masses
            .iter()
            .zip([Kind::Food, Kind::Garden, Kind::Wood, Kind::Paper])
            .map(|(mass, kind)| (kind, exact(*mass, 0.1, 0.02, 0.8)))
            .collect();
        let (kinds, climate) = kept_out(&parts, SEED).unwrap();
        let whole: f64 = kinds.iter().map(|kept| kept.wet_kg.value).sum();
        prop_assert!((whole / (2.0 * masses.iter().sum::<f64>()) - 1.0).abs() < 1e-9);
        parts.reverse();
        let (turned, other) = kept_out(&parts, SEED).unwrap();
        prop_assert_eq!(kinds.len(), turned.len());
        prop_assert!((climate.from_to_kg.0 - other.from_to_kg.0).abs() < 1e-6 * whole);
        // Burning leaves nothing to spare, and the range holds every way.
        prop_assert_eq!(climate.ways[2].spared_kg.high, 0.0);
        for way in climate.ways {
            prop_assert!(climate.from_to_kg.0 <= way.net_kg.low && way.net_kg.high <= climate.from_to_kg.1);
        }
    }
}
