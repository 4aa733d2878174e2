//! Do people's words find their material?

#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;

use heapwright_catalogue::{Catalogue, MatchRank, OwnMaterial, Resolution};
use heapwright_terms::{Group, MaterialId};
use proptest::prelude::*;

const QUERIES: &str = include_str!("queries.csv");

#[test]
fn every_phrase_finds_its_material() {
    let catalogue = Catalogue::built_in();
    let mut reader = csv::Reader::from_reader(QUERIES.as_bytes());
    let (mut count, mut missed) = (0, Vec::new());
    for record in reader.records() {
        let record = record.unwrap();
        let (said, wanted, conditions) = (&record[0], &record[1], &record[2]);
        count += 1;
        let conditions: Vec<&str> = conditions.split(';').filter(|id| !id.is_empty()).collect();
        let found = match catalogue.resolve(said) {
            Resolution::One(found) => found,
            other => {
                missed.push(format!("{said}: {other:?}"));
                continue;
            }
        };
        if found.material.as_str() != wanted || found.condition_ids != conditions {
            missed.push(format!(
                "{said}: wanted {wanted} {conditions:?}, found {found:?}"
            ));
        }
        assert_eq!(catalogue.search(said, 1), [found], "{said}");
    }
    assert!(count >= 250, "only {count} phrases");
    assert!(
        missed.is_empty(),
        "{} of {count} missed:\n{}",
        missed.len(),
        missed.join("\n")
    );
}

#[test]
fn every_name_finds_its_own_material() {
    let catalogue = Catalogue::built_in();
    for material in catalogue.materials() {
        let names = catalogue.names(material.id.as_str()).iter();
        for name in names.map(|name| &name.text).chain([&material.name]) {
            let found = catalogue.search(name, 1);
            assert_eq!(found[0].material, material.id, "{name}");
            assert_eq!(found[0].rank, MatchRank::Exact, "{name}");
        }
    }
}

#[test]
fn unknown_words_give_suggestions_or_none() {
    let catalogue = Catalogue::built_in();
    for said in ["plutonium", "", "   ", "!?", "the", "zxqwv"] {
        let Resolution::Unknown { suggestions } = catalogue.resolve(said) else {
            panic!("{said} must not be taken for a material");
        };
        assert!(suggestions.is_empty(), "{said}: {suggestions:?}");
    }
    for (said, near) in [
        ("plutonium leaves", "dry_leaves_mixed"),
        ("rotary coffee machine", "coffee_grounds"),
        ("coal", "sugary_drink"),
    ] {
        let Resolution::Unknown { suggestions } = catalogue.resolve(said) else {
            panic!("{said} must not be taken for a material");
        };
        let ids: Vec<&str> = suggestions
            .iter()
            .map(|found| found.material.as_str())
            .collect();
        assert!(ids.contains(&near), "{said}: {ids:?}");
        assert!(suggestions.len() <= 5);
    }
}

#[test]
fn words_with_two_meanings_are_asked_back() {
    let catalogue = Catalogue::built_in();
    for (said, first, second) in [
        ("chips", "crisps_stale", "wood_chip_hardwood"),
        ("bracken", "bracken_green", "bracken_dry"),
        ("pomace", "apple_pomace", "grape_pomace"),
    ] {
        let Resolution::Ambiguous { candidates } = catalogue.resolve(said) else {
            panic!("{said} has two meanings");
        };
        let ids: BTreeSet<&str> = candidates
            .iter()
            .map(|found| found.material.as_str())
            .collect();
        assert!(
            ids.contains(first) && ids.contains(second),
            "{said}: {ids:?}"
        );
    }
}

#[test]
fn conditions_without_meaning_are_told_as_unused() {
    let found = &Catalogue::built_in().search("soaking gypsum", 1)[0];
    assert_eq!(found.material.as_str(), "gypsum");
    assert!(found.condition_ids.is_empty());
    assert_eq!(found.unused_words, ["soaking"]);
}

#[test]
fn own_materials_are_found_and_go_first() {
    let catalogue = Catalogue::built_in();
    let own = OwnMaterial {
        id: MaterialId("own_leaves".to_owned()),
        group: Group::GardenBrown,
        names: vec!["Leaves".to_owned(), "Leaves from the churchyard".to_owned()],
    };
    let index = catalogue.search_index().with_own(&[own]);
    for (said, conditions) in [
        ("leaves", vec![]),
        ("churchyard leaves", vec![]),
        ("loose leaves", vec!["loose"]),
    ] {
        let Resolution::One(found) = index.resolve(said) else {
            panic!("{said} is clear");
        };
        assert_eq!(found.material.as_str(), "own_leaves", "{said}");
        assert!(found.own);
        assert_eq!(found.condition_ids, conditions, "{said}");
    }
    let Resolution::One(found) = index.resolve("oak leaves") else {
        panic!("the catalogue still answers");
    };
    assert_eq!(found.material.as_str(), "oak_leaves");
    // The catalogue itself has not changed.
    assert_eq!(
        catalogue.search("leaves", 1)[0].material.as_str(),
        "dry_leaves_mixed"
    );
}

proptest! {
    #[test]
    fn prop_any_text_is_answered_the_same_twice(text in "\\PC{0,60}", limit in 0_usize..20) {
        let catalogue = Catalogue::built_in();
        let found = catalogue.search(&text, limit);
        prop_assert!(found.len() <= limit);
        prop_assert_eq!(&found, &catalogue.search(&text, limit));
        let ids: BTreeSet<&MaterialId> = found.iter().map(|found| &found.material).collect();
        prop_assert_eq!(ids.len(), found.len());
        let order: Vec<_> = found.iter().map(|found| (found.rank, found.cost)).collect();
        prop_assert!(order.is_sorted());
    }

    #[test]
    fn prop_one_slip_in_a_long_name_still_finds_it(place in 0_usize..2000, at in 1_usize..40) {
        // A letter doubled is the commonest slip of a thumb.
        let catalogue = Catalogue::built_in();
        let names: Vec<(&str, &str)> = catalogue
            .materials()
            .iter()
            .flat_map(|material| catalogue.names(material.id.as_str()).iter().map(|name| (material.id.as_str(), name.text.as_str())))
            .filter(|(_, name)| name.len() >= 6 && name.chars().all(|letter| letter.is_ascii_lowercase()))
            // A slip in the ending of such a plural ("rushhes") hides that it is one.
            .filter(|(_, name)| !name.ends_with("es"))
            .collect();
        let (id, name) = names[place % names.len()];
        let at = at % name.len();
        let slipped = format!("{}{}", &name[..=at], &name[at..]);
        let found = catalogue.search(&slipped, 5);
        prop_assert!(found.iter().any(|found| found.material.as_str() == id), "{slipped}: {found:?}");
    }
}
