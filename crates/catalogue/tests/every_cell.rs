//! Does every cell of every table reach the program unchanged? Each record against its row in the file.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;

use heapwright_catalogue::{
    Catalogue, CautionAbout, FoodBeds, NameKind, SourceKind, Spreading, UseKind, group_name,
    hygiene_rules, seasons,
};
use heapwright_quantity::Range;
use heapwright_terms::{
    Caution, Degradability, EdiblePart, Evidence, FigureGroup, FigureSource, Group,
    PHOSPHATE_OVER_PHOSPHORUS, POTASH_OVER_POTASSIUM,
};

type Row = BTreeMap<String, String>;

fn rows(file: &str) -> Vec<Row> {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tables");
    let mut reader = csv::Reader::from_path(path.join(file)).unwrap();
    let rows: Vec<Row> = reader.deserialize().map(Result::unwrap).collect();
    assert!(!rows.is_empty(), "{file}");
    rows
}

fn number(row: &Row, column: &str) -> Option<f64> {
    let text = row[column].as_str();
    (!text.is_empty()).then(|| text.parse().unwrap())
}

fn share(row: &Row, column: &str) -> Option<f64> {
    number(row, column).map(|percent| percent / 100.0)
}

fn range(row: &Row, stem: &str, convert: impl Fn(f64) -> f64) -> Option<Range> {
    let column = |end: &str| match stem {
        "" => end.to_owned(),
        _ => format!("{stem}_{end}"),
    };
    let typical = number(row, &column("typical"))?;
    Some(Range {
        low: convert(number(row, &column("low")).unwrap_or(typical)),
        typical: convert(typical),
        high: convert(number(row, &column("high")).unwrap_or(typical)),
    })
}

fn list(text: &str, separator: char) -> Vec<&str> {
    let parts = text.split(separator).map(str::trim);
    parts.filter(|part| !part.is_empty()).collect()
}

/// The remark as the program carries it.
fn remark<'row>(row: &'row Row, column: &str) -> &'row str {
    if cfg!(feature = "remarks") {
        &row[column]
    } else {
        ""
    }
}

/// `VerySlow` as the tables write it, `very_slow`.
fn word(variant: impl std::fmt::Debug) -> String {
    let mut out = String::new();
    for letter in format!("{variant:?}").chars() {
        if letter.is_ascii_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.push(letter.to_ascii_lowercase());
    }
    out
}

fn figure_sources(text: &str) -> Vec<FigureSource> {
    let mut expected = Vec::new();
    for part in list(text, ';') {
        let (labels, keys) = part.split_once(':').unwrap();
        for label in labels.split(',') {
            let figures = match label.trim() {
                "N" => FigureGroup::Nitrogen,
                "CN" => FigureGroup::CarbonToNitrogen,
                "C" => FigureGroup::Carbon,
                "H2O" => FigureGroup::Moisture,
                "BD" => FigureGroup::BulkDensity,
                "ash" => FigureGroup::Ash,
                "fibre" => FigureGroup::Fibre,
                "P" => FigureGroup::Phosphorus,
                "K" => FigureGroup::Potassium,
                "Ca" => FigureGroup::Calcium,
                "Mg" => FigureGroup::Magnesium,
                "Na" => FigureGroup::Sodium,
                "pH" => FigureGroup::Ph,
                other => panic!("{other}"),
            };
            expected.push(FigureSource {
                figures,
                source_keys: keys.split('+').map(|key| key.trim().to_owned()).collect(),
            });
        }
    }
    expected
}

#[test]
fn materials() {
    let catalogue = Catalogue::built_in();
    let rows = rows("materials.csv");
    assert_eq!(catalogue.materials().len(), rows.len());
    for (material, row) in catalogue.materials().iter().zip(&rows) {
        let id = row["id"].as_str();
        assert_eq!(material.id.as_str(), id);
        assert_eq!(catalogue.material(id), Some(material));
        assert_eq!(material.name, row["name"], "{id}");
        assert_eq!(group_name(material.group), row["group"], "{id}");
        assert_eq!(word(material.group), row["group"], "{id}");
        let same = |ratio| ratio;
        let fraction = |percent: f64| percent / 100.0;
        for (found, expected) in [
            (
                material.nitrogen_dry_basis,
                range(row, "nitrogen_pct_dry", fraction),
            ),
            (material.carbon_to_nitrogen_measured, range(row, "cn", same)),
            (
                material.moisture_wet_basis,
                range(row, "moisture_pct_wet", fraction),
            ),
            (
                material.bulk_density_kg_m3,
                range(row, "bulk_density_kg_m3", same),
            ),
        ] {
            assert_eq!(found, expected, "{id}");
        }
        for (found, column) in [
            (material.carbon_measured_dry_basis, "carbon_pct_dry_typical"),
            (material.ash_dry_basis, "ash_pct_dry"),
            (material.lignin_dry_basis, "lignin_pct_dry"),
            (material.cellulose_dry_basis, "cellulose_pct_dry"),
            (material.hemicellulose_dry_basis, "hemicellulose_pct_dry"),
            (material.phosphorus_dry_basis, "phosphorus_pct_dry"),
            (material.potassium_dry_basis, "potassium_pct_dry"),
            (material.calcium_dry_basis, "calcium_pct_dry"),
            (material.magnesium_dry_basis, "magnesium_pct_dry"),
            (material.sodium_dry_basis, "sodium_pct_dry"),
        ] {
            assert_eq!(found, share(row, column), "{id} {column}");
        }
        assert_eq!(material.ph, number(row, "ph"), "{id}");
        assert_eq!(word(material.degradability), row["degradability"], "{id}");
        let cautions: Vec<String> = material.cautions.iter().map(word).collect();
        assert_eq!(cautions, list(&row["flags"], ';'), "{id}");
        assert_eq!(material.sources, figure_sources(&row["sources"]), "{id}");
        assert_eq!(word(material.evidence), row["basis"], "{id}");
        assert_eq!(material.notes, remark(row, "notes"), "{id}");
    }
}

#[test]
fn names() {
    let catalogue = Catalogue::built_in();
    let mut expected: BTreeMap<String, Vec<Row>> = BTreeMap::new();
    for row in rows("names.csv") {
        expected.entry(row["id"].clone()).or_default().push(row);
    }
    assert_eq!(expected.len(), catalogue.materials().len());
    for (id, rows) in &mut expected {
        rows.sort_by_key(|row| row["kind"] != "short");
        let names = catalogue.names(id);
        assert_eq!(names.len(), rows.len(), "{id}");
        for (name, row) in names.iter().zip(rows.iter()) {
            assert_eq!(name.text, row["name"], "{id}");
            assert_eq!(word(name.kind), row["kind"], "{id} {}", name.text);
            assert_eq!(name.note, remark(row, "note"), "{id} {}", name.text);
        }
        let material = catalogue.material(id).unwrap();
        assert_eq!(material.short_name, rows[0]["name"], "{id}");
    }
}

#[test]
fn sources() {
    let catalogue = Catalogue::built_in();
    let rows = rows("sources.csv");
    assert_eq!(catalogue.sources().count(), rows.len());
    assert!(catalogue.sources().is_sorted_by_key(|source| &source.key));
    for row in &rows {
        let source = catalogue.source(&row["key"]).unwrap();
        assert_eq!(source.key, row["key"]);
        assert_eq!(word(source.kind), row["kind"], "{}", source.key);
        assert_eq!(source.citation, row["citation"]);
        assert_eq!(source.address, row["address"], "{}", source.key);
    }
    assert_eq!(catalogue.source("no such key"), None);
}

#[test]
fn measures() {
    let catalogue = Catalogue::built_in();
    let rows = rows("measures.csv");
    assert_eq!(catalogue.measures().len(), rows.len());
    for (measure, row) in catalogue.measures().iter().zip(&rows) {
        assert_eq!(measure.id, row["id"]);
        assert_eq!(measure.name, row["name"]);
        assert_eq!(measure.plural, row["plural"]);
        assert_eq!(measure.other_words, list(&row["other_words"], ';'));
        let volume_m3 = range(row, "volume_l", |litres| litres / 1000.0);
        assert_eq!(Some(measure.volume_m3), volume_m3, "{}", measure.id);
        assert_eq!(measure.source_keys, list(&row["source"], '+'));
        assert_eq!(measure.note, remark(row, "note"), "{}", measure.id);
    }
}

#[test]
fn conditions_and_their_effects() {
    let catalogue = Catalogue::built_in();
    let (rows, effects) = (rows("conditions.csv"), rows("condition_effects.csv"));
    assert_eq!(catalogue.conditions().len(), rows.len());
    let mut compared = 0;
    for (condition, row) in catalogue.conditions().iter().zip(&rows) {
        let id = row["id"].as_str();
        assert_eq!(condition.id, id);
        assert_eq!(condition.name, row["name"]);
        assert_eq!(condition.other_words, list(&row["other_words"], ';'));
        let rows: Vec<&Row> = effects
            .iter()
            .filter(|row| row["condition"] == id)
            .collect();
        assert_eq!(condition.effects.len(), rows.len(), "{id}");
        for (effect, row) in condition.effects.iter().zip(rows) {
            let groups = effect.groups.iter().map(word);
            let materials = effect.materials.iter().map(|id| id.as_str().to_owned());
            let found: Vec<String> = groups.chain(materials).collect();
            let mut expected = list(&row["applies_to"], ';');
            expected.sort_by_key(|target| catalogue.material(target).is_some());
            assert_eq!(found, expected, "{id}");
            let moisture = range(row, "moisture_pct_wet", |percent| percent / 100.0);
            assert_eq!(effect.moisture_wet_basis, moisture, "{id} {found:?}");
            let factor = range(row, "bulk_density_factor", |factor| factor);
            assert_eq!(effect.bulk_density_factor, factor, "{id} {found:?}");
            assert_eq!(effect.source_keys, list(&row["source"], '+'), "{id}");
            assert_eq!(effect.note, remark(row, "note"), "{id} {found:?}");
            compared += 1;
        }
    }
    assert_eq!(compared, effects.len());
}

#[test]
fn rules_of_hygiene() {
    let rows = rows("hygiene_rules.csv");
    assert_eq!(rows.len(), hygiene_rules().len());
    for (row, rule) in rows.iter().zip(hygiene_rules()) {
        assert_eq!(rule.id, row["id"]);
        assert_eq!(rule.name, row["name"]);
        assert_eq!(rule.jurisdiction, row["jurisdiction"]);
        assert_eq!(rule.asks, row["asks"]);
        assert_eq!(rule.also_asks, row["also_asks"]);
        assert_eq!(rule.scope, row["scope"]);
        assert_eq!(rule.year.to_string(), row["year"]);
        assert_eq!(rule.source_keys, list(&row["source"], '+'));
    }
}

#[test]
fn cautions() {
    let catalogue = Catalogue::built_in();
    let mut met = std::collections::BTreeSet::new();
    let rows = rows("cautions.csv");
    for material in catalogue.materials() {
        for caution in catalogue.cautions_for(material) {
            let about = match &caution.about {
                CautionAbout::Flag(flag) => {
                    assert!(material.cautions.contains(flag));
                    word(flag)
                }
                CautionAbout::Material(id) => {
                    assert_eq!(*id, material.id);
                    id.as_str().to_owned()
                }
            };
            let row = rows.iter().find(|row| row["flag_or_id"] == about).unwrap();
            assert_eq!(caution.reason, row["reason"], "{about}");
            assert_eq!(caution.advice, row["advice"], "{about}");
            assert_eq!(caution.local_rule, row["local_rule"], "{about}");
            assert_eq!(caution.before_use, row["before_use"], "{about}");
            let food_beds = match caution.food_beds {
                None => "",
                Some(FoodBeds::Never) => "never",
                Some(FoodBeds::Doubtful) => "doubtful",
            };
            assert_eq!(food_beds, row["food_beds"], "{about}");
            assert_eq!(caution.source_keys, list(&row["source"], '+'), "{about}");
            met.insert(about);
        }
    }
    let expected = rows.iter().map(|row| row["flag_or_id"].clone()).collect();
    assert_eq!(met, expected, "every row has a material that shows it");
}

#[test]
fn assumptions() {
    let catalogue = Catalogue::built_in();
    let rows = rows("assumptions.csv");
    assert_eq!(catalogue.assumptions().count(), rows.len());
    for row in &rows {
        let assumption = catalogue.assumption(&row["key"]).unwrap();
        let key = row["key"].as_str();
        assert_eq!(assumption.key, key);
        let (factor, unit) = match row["unit"].as_str() {
            "%" => (0.01, "1"),
            "1/%" => (100.0, "1"),
            unit => (1.0, unit),
        };
        let expected = range(row, "", |value| value * factor);
        assert_eq!(Some(assumption.range), expected, "{key}");
        assert_eq!(assumption.unit, unit, "{key}");
        assert_eq!(assumption.source_keys, list(&row["source"], '+'), "{key}");
        assert_eq!(assumption.note, remark(row, "note"), "{key}");
    }
}

#[test]
fn crops_and_their_classes() {
    let spreading = Spreading::built_in();
    let groups = rows("crop_groups.csv");
    assert_eq!(spreading.groups().len(), groups.len());
    for (group, row) in spreading.groups().iter().zip(&groups) {
        assert_eq!((&group.id, &group.name), (&row["id"], &row["name"]));
        let oxide = |figure: f64| 1e-3 / figure;
        for (found, stem, factor) in [
            (group.need.nitrogen_kg_m2, "nitrogen_g_m2", 1e-3),
            (
                group.need.phosphorus_kg_m2,
                "phosphate_g_m2",
                oxide(PHOSPHATE_OVER_PHOSPHORUS),
            ),
            (
                group.need.potassium_kg_m2,
                "potash_g_m2",
                oxide(POTASH_OVER_POTASSIUM),
            ),
        ] {
            assert_eq!(
                Some(found),
                range(row, stem, |grams| grams * factor),
                "{stem}"
            );
        }
        assert_eq!(group.source_keys, list(&row["source"], '+'));
    }
    let crops = rows("crops.csv");
    assert_eq!(spreading.crops().len(), crops.len());
    for (crop, row) in spreading.crops().iter().zip(&crops) {
        let id = &row["id"];
        assert_eq!((&crop.id, &crop.name), (id, &row["name"]));
        assert_eq!(crop.other_words, list(&row["other_words"], ';'));
        assert_eq!(crop.group, row["group"]);
        assert_eq!(crop.likes_acid, row["likes_acid"] == "yes", "{id}");
        let part = match crop.part {
            EdiblePart::TouchesSoil => "ground",
            EdiblePart::ClearOfSoil => "above",
            EdiblePart::NotEaten => "none",
        };
        assert_eq!(part, row["part"], "{id}");
        assert_eq!(crop.on_food_bed, row["food_bed"] == "yes", "{id}");
        let salt = crop.salt;
        assert_eq!(
            salt.map(|salt| salt.threshold_ds_m),
            number(row, "salt_threshold_ds_m"),
            "{id}"
        );
        let slope = number(row, "salt_slope_pct_per_ds_m").map(|pct| pct * 0.01);
        assert_eq!(salt.map(|salt| salt.loss_per_ds_m), slope, "{id}");
        let removal = crop.removal;
        assert_eq!(
            removal.map(|removal| removal.nitrogen),
            number(row, "removes_nitrogen_kg_t").map(|kg_t| kg_t * 1e-3),
            "{id}"
        );
        for word in crop.other_words.iter().chain([&crop.name, &crop.id]) {
            let found = spreading.crop(word).map(|crop| &crop.id);
            assert_eq!(found, Some(id), "{word}");
        }
        assert_eq!(crop.source_keys, list(&row["source"], '+'));
    }
    assert_eq!(spreading.crop("Sweet potatoes").unwrap().id, "sweet_potato");
    assert_eq!(
        spreading.crop("runner beans, then salad").unwrap().id,
        "bean"
    );
    assert!(spreading.crop("triffids").is_none());
}

#[test]
fn uses_and_rates_of_compost() {
    let spreading = Spreading::built_in();
    let uses = rows("compost_uses.csv");
    assert_eq!(spreading.uses().len(), uses.len());
    for (found, row) in spreading.uses().iter().zip(&uses) {
        let factor = match found.kind {
            UseKind::Depth => 1e-3,
            UseKind::ShareOfVolume => 1e-2,
        };
        assert_eq!(row["kind"] == "depth", found.kind == UseKind::Depth);
        assert_eq!(
            Some(found.limit),
            range(row, "", |value| value * factor),
            "{}",
            found.id
        );
        assert_eq!(found.advice, row["advice"]);
        assert_eq!(found.needs_mature, row["needs_mature"] == "yes");
        assert_eq!(
            found.sieve_mm.map(|sieve| sieve.1),
            number(row, "sieve_mm_high")
        );
        assert_eq!(found.ph_most, number(row, "ph_most"));
        assert_eq!(
            found.conductivity_ds_m_most,
            number(row, "conductivity_ds_m_most")
        );
        assert_eq!(found.source_keys, list(&row["source"], '+'));
    }
    let figures = rows("spreading.csv");
    assert_eq!(spreading.figures().len(), figures.len());
    for row in &figures {
        let found = spreading.figure(&row["key"]).unwrap();
        let factor = match row["unit"].as_str() {
            "%" => 1e-2,
            "mm" => 1e-3,
            "mg/kg" => 1e-6,
            _ => 1.0,
        };
        assert_eq!(
            Some(found.range),
            range(row, "", |value| value * factor),
            "{}",
            found.key
        );
        assert_eq!(found.source_keys, list(&row["source"], '+'));
        assert_eq!(found.note, row["note"]);
    }
}

/// The tests above hold for the words that some row uses: that is each of them.
#[test]
fn every_word_of_the_closed_lists_is_met() {
    let catalogue = Catalogue::built_in();
    let materials = || catalogue.materials().iter();
    let count = |words: Vec<String>| {
        words
            .into_iter()
            .collect::<std::collections::BTreeSet<_>>()
            .len()
    };
    let groups = count(materials().map(|material| word(material.group)).collect());
    assert_eq!(groups, Group::Finished as usize + 1);
    let speeds = count(
        materials()
            .map(|material| word(material.degradability))
            .collect(),
    );
    assert_eq!(speeds, Degradability::Inert as usize + 1);
    let bases = count(
        materials()
            .map(|material| word(material.evidence))
            .collect(),
    );
    assert_eq!(bases, Evidence::Estimate as usize + 1);
    let flags = count(
        materials()
            .flat_map(|material| material.cautions.iter().map(word))
            .collect(),
    );
    assert_eq!(flags, Caution::WeedSeedRisk as usize + 1);
    let figures =
        materials().flat_map(|material| material.sources.iter().map(|source| word(source.figures)));
    assert_eq!(count(figures.collect()), FigureGroup::Ph as usize + 1);
    let names = materials().flat_map(|material| catalogue.names(material.id.as_str()));
    let kinds = count(names.map(|name| word(name.kind)).collect());
    assert_eq!(kinds, NameKind::American as usize + 1);
    let kinds = count(
        catalogue
            .sources()
            .map(|source| word(source.kind))
            .collect(),
    );
    assert_eq!(kinds, SourceKind::Estimate as usize + 1);
}

#[test]
fn every_cell_of_the_seasons() {
    let rows = rows("seasons.csv");
    assert_eq!(rows.len(), seasons().len());
    for (row, season) in rows.iter().zip(seasons()) {
        assert_eq!(season.material, row["material"]);
        assert_eq!(season.first_month.to_string(), row["first_month"]);
        assert_eq!(season.last_month.to_string(), row["last_month"]);
        assert_eq!(season.source_keys, list(&row["source"], '+'));
        assert!(!row["note"].is_empty());
    }
}
