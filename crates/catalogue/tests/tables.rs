//! Are broken tables refused with table, line, row and column? Do derived figures still follow from the materials?

#![allow(clippy::unwrap_used)]

#[allow(dead_code)]
#[path = "../build/emit.rs"]
mod emit;
#[allow(dead_code)]
#[path = "../src/normalise.rs"]
mod normalise;
#[allow(dead_code)]
#[path = "../build/rules.rs"]
mod rules;
#[allow(dead_code)]
#[path = "../build/seasons.rs"]
mod seasons;
#[allow(dead_code)]
#[path = "../build/spreading.rs"]
mod spreading;
#[allow(dead_code)]
#[path = "../build/tables.rs"]
mod tables;

use std::collections::BTreeMap;

use heapwright_catalogue::{Catalogue, NameKind, SourceKind};
use heapwright_terms::{Degradability, Evidence, Group};
use tables::Tables;

fn text_of(file: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tables")
        .join(file);
    std::fs::read_to_string(path).unwrap()
}

/// The faults when `from` in one file is replaced by `to`.
fn faults_when(file: &str, from: &str, to: &str) -> Vec<String> {
    assert!(text_of(file).contains(from), "{file} holds {from}");
    let broken = |asked: &str| {
        let text = text_of(asked);
        if asked == file {
            text.replacen(from, to, 1)
        } else {
            text
        }
    };
    match Tables::read(broken) {
        Ok(tables) => rules::faults(&tables)
            .iter()
            .chain(&spreading::faults(&tables))
            .chain(&seasons::faults(&tables))
            .map(ToString::to_string)
            .collect(),
        Err(fault) => vec![fault.to_string()],
    }
}

/// `message` has `#` where the line of the changed row belongs.
#[track_caller]
fn refused(file: &str, from: &str, to: &str, message: &str) {
    let text = text_of(file);
    let place = text.find(from).unwrap();
    let line = text[..place].matches('\n').count() + 1;
    let message = message.replace('#', &line.to_string());
    let faults = faults_when(file, from, to);
    assert!(faults.contains(&message), "wanted {message}\n{faults:#?}");
}

#[test]
fn the_tables_hold() {
    let tables = Tables::read(text_of).unwrap_or_else(|fault| panic!("{fault}"));
    assert_eq!(rules::faults(&tables), []);
    assert_eq!(spreading::faults(&tables), []);
    assert_eq!(seasons::faults(&tables), []);
    assert_eq!(tables.materials.rows().count(), 185);
}

#[test]
fn broken_order_of_a_range_is_refused() {
    refused(
        "materials.csv",
        "34.8,36.4,39,",
        "34.8,36.4,12,",
        "tables/materials.csv line # (bread), column moisture_pct_wet_high: 12 is below the typical 36.4",
    );
    refused(
        "materials.csv",
        "34.8,36.4,39,",
        "37,36.4,39,",
        "tables/materials.csv line # (bread), column moisture_pct_wet_low: 37 is above the typical 36.4",
    );
    refused(
        "materials.csv",
        "34.8,36.4,39,",
        "34.8,,39,",
        "tables/materials.csv line # (bread), column moisture_pct_wet_typical: a range needs a typical value",
    );
}

#[test]
fn broken_figures_are_refused() {
    refused(
        "materials.csv",
        "34.8,36.4,39,",
        "34.8,wet,39,",
        "tables/materials.csv line # (bread), column moisture_pct_wet_typical: `wet` is not a number",
    );
    refused(
        "materials.csv",
        "34.8,36.4,39,",
        "34.8,36.4,99,",
        "tables/materials.csv line # (bread), column moisture_pct_wet_high: 99 is outside 0 to 98",
    );
    // A slip of a digit in the nitrogen of lettuce.
    refused(
        "materials.csv",
        "3.19,4.33,4.94",
        "3.19,3.33,4.94",
        "tables/materials.csv line # (lettuce), column cn_typical: 9.58 times nitrogen 3.33 is 31.9, not the carbon 41.5",
    );
    refused(
        "materials.csv",
        "34,60,224,8,8.19,44.9,23.8",
        "34,60,224,40,8.19,44.9,23.8",
        "tables/materials.csv line # (straw_wheat), column ash_pct_dry: ash 40 and fibre 76.89 are more than the whole",
    );
}

#[test]
fn broken_sense_is_refused() {
    refused(
        "materials.csv",
        "\"Dry leaves, shredded or mown\",garden_brown,0.5,0.94,1.62,27,51.1,80,48,8,15,38,100,170,250",
        "\"Dry leaves, shredded or mown\",garden_brown,0.5,0.94,1.62,27,51.1,80,48,8,15,38,50,70,250",
        "tables/materials.csv line # (leaves_shredded_dry), column bulk_density_kg_m3_typical: 70 must be above the 80 of dry_leaves_mixed",
    );
    refused(
        "materials.csv",
        "oak_leaves,",
        "oak_leafs,",
        "tables/materials.csv line 1, column id: a rule speaks of oak_leaves, but no row has that id",
    );
    refused(
        "materials.csv",
        "fast,pathogen_risk;salty;alkaline;compacts,",
        "fast,salty;alkaline;compacts,",
        "tables/materials.csv line # (chicken_layer), column flags: `pathogen_risk` is missing",
    );
}

#[test]
fn broken_words_and_keys_are_refused() {
    refused(
        "materials.csv",
        "apple,\"Apples, whole, cores and windfalls\",kitchen",
        "apple,\"Apples, whole, cores and windfalls\",pantry",
        &format!(
            "tables/materials.csv line # (apple), column group: `pantry` is not one of {}",
            rules::GROUPS.join(", ")
        ),
    );
    refused(
        "materials.csv",
        "N,H2O:SR28+IFCT17; CN,C:calc; BD,ash,P,K,Ca,Mg,Na:SR28; pH:FDApHm\",mixed,Flesh with skin",
        "N,H2O:SR99+IFCT17; CN,C:calc; BD,ash,P,K,Ca,Mg,Na:SR28; pH:FDApHm\",mixed,Flesh with skin",
        "tables/materials.csv line # (apple), column sources: the source `SR99` is not in sources.csv",
    );
    refused(
        "materials.csv",
        "N,H2O:SR28+IFCT17; CN,C:calc; BD,ash,P,K,Ca,Mg,Na:SR28; pH:FDApHm\",mixed,Flesh with skin",
        "N,H2O:SR28+IFCT17; CN,C:calc; BD,P,K,Ca,Mg,Na:SR28; pH:FDApHm\",mixed,Flesh with skin",
        "tables/materials.csv line # (apple), column sources: `ash` has a value but no source",
    );
    refused(
        "materials.csv",
        "cn_low,cn_typical",
        "cn_typical,cn_low",
        "tables/materials.csv line 1, column cn_low: the header has `cn_typical` in its place",
    );
    refused(
        "names.csv",
        "apple,windfalls,name,",
        "apple,baked goods and Breads,name,",
        "tables/names.csv line # (apple), column name: `baked goods and Breads` already means bread",
    );
    refused(
        "names.csv",
        "apple,windfalls,name,",
        "aple,windfalls,name,",
        "tables/names.csv line # (aple), column id: `aple` is not in materials.csv",
    );
    refused(
        "names.csv",
        "apple,Apples,short,",
        "apple,Apples,name,",
        "tables/materials.csv line 5 (apple), column id: has no short name in names.csv",
    );
    refused(
        "cautions.csv",
        "Mix it with something coarse, in thin layers.",
        "It is safe in thin layers.",
        "tables/cautions.csv line # (compacts), column advice: hygiene is never called safe",
    );
    refused(
        "cautions.csv",
        "where the local rule allows it.\",never,DUBEYm+UAF",
        "where the local rule allows it.\",,DUBEYm+UAF",
        "tables/cautions.csv line # (dog_waste), column food_beds: must be filled where before_use speaks of food beds, and only there",
    );
    refused(
        "cautions.csv",
        "where the local rule allows it.\",never,DUBEYm+UAF",
        "where the local rule allows it.\",doubtful,DUBEYm+UAF",
        "tables/cautions.csv line # (dog_waste), column food_beds: never stands where before_use begins with \"Never on food beds\", and only there",
    );
    refused(
        "condition_effects.csv",
        "shredded,twigs_small_sticks,",
        "shredded,twigs_and_sticks,",
        "tables/condition_effects.csv line # (shredded), column applies_to: `twigs_and_sticks` is neither a group nor a material",
    );
    refused(
        "measures.csv",
        "9,10,14",
        "9,10,4",
        "tables/measures.csv line # (bucket), column volume_l_high: 4 is below the typical 10",
    );
    refused(
        "assumptions.csv",
        "lignin_rule.least,0.05",
        "lignin_rule.most,0.05",
        // The second row of that key is the one at fault.
        &format!(
            "tables/assumptions.csv line {} (lignin_rule.most), column key: `lignin_rule.most` stands in line {} already",
            line_of("assumptions.csv", "lignin_rule.most,"),
            line_of("assumptions.csv", "lignin_rule.least,"),
        ),
    );
}

#[test]
fn broken_crops_and_rates_are_refused() {
    refused(
        "crops.csv",
        "light,above,yes,no,1.0,19",
        "lite,above,yes,no,1.0,19",
        "tables/crops.csv line # (bean), column group: `lite` is not one of light, medium, heavy",
    );
    refused(
        "crops.csv",
        "ground,yes,no,1.3,13",
        "ground,yes,no,1.3,",
        "tables/crops.csv line # (lettuce), column salt_slope_pct_per_ds_m: a threshold and a slope go together",
    );
    refused(
        "crops.csv",
        "light,above,yes,no,1.0,19",
        "light,above,no,no,1.0,19",
        "tables/crops.csv line # (bean), column food_bed: a bed of what is eaten is a food bed",
    );
    refused(
        "crops.csv",
        "pea;garden peas",
        "pea;green beans",
        "tables/crops.csv line # (pea), column other_words: `green beans` already means bean",
    );
    refused(
        "spreading.csv",
        "depth.dug,150,150,200,mm",
        "depth.dug,150,150,200,inches",
        "tables/spreading.csv line # (depth.dug), column unit: `inches` is not one of 1, %, dS/m, kg/m2, kg/m3, mg/kg, mm, d, K, years",
    );
    refused(
        "compost_uses.csv",
        "ACID-LOVERS,\n",
        "NOWHERE,\n",
        "tables/compost_uses.csv line # (acid_lovers), column source: the source `NOWHERE` is not in sources.csv",
    );
}

fn line_of(file: &str, start: &str) -> usize {
    let text = text_of(file);
    text.lines()
        .position(|line| line.starts_with(start))
        .unwrap()
        + 1
}

/// Value below which `share` of the sorted values lie, straight between two neighbours.
fn quantile(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let place = (values.len() - 1) as f64 * share;
    let below = place.floor() as usize;
    let above = (below + 1).min(values.len() - 1);
    values[below] + (place - below as f64) * (values[above] - values[below])
}

#[test]
fn derived_assumptions_follow_from_the_materials() {
    let catalogue = Catalogue::built_in();
    let mut computed: BTreeMap<String, Vec<f64>> = BTreeMap::new();
    for material in catalogue.materials() {
        let group = heapwright_catalogue::group_name(material.group);
        let mut take = |stem: &str, of: &str, value: Option<f64>| {
            if let Some(value) = value {
                computed
                    .entry(format!("{stem}.{of}"))
                    .or_default()
                    .push(value);
            }
        };
        let density = material.bulk_density_kg_m3.map(|range| range.typical);
        take("bulk_density_kg_m3", group, density);
        take("ash_dry_basis", group, material.ash_dry_basis);
        let carbon = material
            .carbon_measured_dry_basis
            .filter(|carbon| *carbon > 0.0);
        let handbook = material.ash_dry_basis.map(|ash| (1.0 - ash) / 1.8);
        let factor = handbook
            .zip(carbon)
            .map(|(handbook, carbon)| handbook / carbon);
        take("handbook_over_measured_carbon", group, factor);
        let word = match material.degradability {
            Degradability::Fast => "fast",
            Degradability::Medium => "medium",
            Degradability::Slow => "slow",
            Degradability::VerySlow => "very_slow",
            Degradability::Inert => "inert",
        };
        let fibre = material.lignin_dry_basis.zip(material.ash_dry_basis);
        let share =
            fibre.map(|(lignin, ash)| (0.83 - 2.8 * lignin / (1.0 - ash)).clamp(0.05, 0.83));
        take("biodegradable_over_volatile_solids", word, share);
    }
    let derived: Vec<_> = catalogue
        .assumptions()
        .filter(|assumption| assumption.source_keys == ["materials"])
        .collect();
    assert_eq!(
        derived.len(),
        computed.len(),
        "every derived key is written and computed"
    );
    for assumption in derived {
        let values = computed.get_mut(&assumption.key).unwrap();
        let range = assumption.range;
        for (share, written) in [(0.1, range.low), (0.5, range.typical), (0.9, range.high)] {
            let value = quantile(values, share);
            // The table keeps three digits: half a unit of the third is at most 0.5 %.
            assert!(
                (value - written).abs() <= 0.005_1 * value,
                "{}: {written} is written, {value} computed",
                assumption.key
            );
        }
        let count = format!("{} rows", values.len());
        assert!(
            assumption.note.contains(&count) || cfg!(not(feature = "remarks")),
            "{}: {}",
            assumption.key,
            assumption.note
        );
    }
}

#[test]
fn percent_becomes_a_fraction_and_litres_cubic_metres() {
    let catalogue = Catalogue::built_in();
    let bread = catalogue.material("bread").unwrap();
    let moisture = bread.moisture_wet_basis.unwrap();
    assert!((moisture.typical - 0.364).abs() < 1e-12);
    assert!((bread.ash_dry_basis.unwrap() - 0.0311).abs() < 1e-12);
    assert_eq!(bread.bulk_density_kg_m3.unwrap().typical, 190.0);
    assert_eq!(bread.group, Group::Kitchen);
    assert_eq!(bread.evidence, Evidence::Mixed);
    let bucket = catalogue.measure("bucket").unwrap();
    assert!((bucket.volume_m3.typical - 0.010).abs() < 1e-15);
    let slope = catalogue.assumption("lignin_rule.slope").unwrap();
    assert!((slope.range.typical - 2.8).abs() < 1e-12);
    for material in catalogue.materials() {
        let ranges = [material.nitrogen_dry_basis, material.moisture_wet_basis];
        for range in ranges.into_iter().flatten() {
            assert!(
                0.0 <= range.low && range.low <= range.typical,
                "{}",
                material.id.as_str()
            );
            assert!(
                range.typical <= range.high && range.high < 1.0,
                "{}",
                material.id.as_str()
            );
        }
    }
}

#[test]
fn every_material_has_names_cautions_and_sources() {
    let catalogue = Catalogue::built_in();
    for material in catalogue.materials() {
        let id = material.id.as_str();
        assert!(!catalogue.names(id).is_empty(), "{id}");
        assert_eq!(catalogue.names(id)[0].kind, NameKind::Short, "{id}");
        let cautions = catalogue.cautions_for(material);
        assert!(cautions.len() >= material.cautions.len(), "{id}");
        for key in material
            .sources
            .iter()
            .flat_map(|source| &source.source_keys)
        {
            let source = catalogue.source(key).unwrap();
            assert_eq!(
                key.ends_with('m'),
                source.kind == SourceKind::Memory,
                "{key}"
            );
        }
    }
}

#[test]
fn wetter_words_mean_wetter_stuff() {
    let catalogue = Catalogue::built_in();
    let ladder = ["bone_dry", "dry", "damp", "wet", "soaking"];
    let mut steps = 0;
    for material in catalogue.materials() {
        let moistures: Vec<_> = ladder
            .iter()
            .filter_map(|id| catalogue.condition(id).unwrap().effect_on(material))
            .filter_map(|effect| effect.moisture_wet_basis)
            .collect();
        for pair in moistures.windows(2) {
            steps += 1;
            assert!(pair[0].low < pair[1].low, "{}", material.id.as_str());
            assert!(
                pair[0].typical < pair[1].typical,
                "{}",
                material.id.as_str()
            );
            assert!(pair[0].high < pair[1].high, "{}", material.id.as_str());
        }
    }
    assert!(steps > 100, "{steps}");
}

#[test]
fn measure_words_lead_to_their_measure() {
    let catalogue = Catalogue::built_in();
    for (word, id) in [
        ("buckets", "bucket"),
        ("wheelbarrow", "barrow"),
        ("pail", "bucket"),
        ("caddies", "caddy"),
    ] {
        let found = catalogue
            .measure_words()
            .iter()
            .find(|(known, _)| known == word)
            .unwrap();
        assert_eq!(found.1, id);
    }
}

#[test]
fn broken_seasons_are_refused() {
    refused(
        "seasons.csv",
        "comfrey,5,9,",
        "comfry,5,9,",
        "tables/seasons.csv line # (comfry), column material: no material has this id",
    );
    refused(
        "seasons.csv",
        "comfrey,5,9,",
        "comfrey,5,13,",
        "tables/seasons.csv line # (comfrey), column last_month: must be a month, 1 to 12",
    );
}
