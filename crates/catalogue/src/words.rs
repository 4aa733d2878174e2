//! The words of the tables in another language, put in the place of the English ones.

use std::fmt;

use heapwright_terms::{Caution, Material};

use crate::records::{CautionAbout, CautionText, HygieneRule, Name, NameKind};
use crate::rows::Records;
use crate::spreading::Spreading;

/// The words of the tables in German, one line a row: key, tab, fields.
#[cfg(feature = "all-languages")]
pub const GERMAN: &str = include_str!(concat!(env!("OUT_DIR"), "/de.words"));

/// Finds a field of a row by a key such as `material/apple`; `None` leaves English.
pub type Word = dyn Fn(&str, usize) -> Option<&'static str> + Send + Sync;

/// The words that a catalogue goes on asking for.
#[derive(Clone, Copy)]
pub(crate) struct Words(pub(crate) &'static Word);

impl fmt::Debug for Words {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("Words")
    }
}

/// Puts the words in the place of those of the table.
pub(crate) fn translate(records: &mut Records, words: &Word) {
    for material in &mut records.materials {
        let key = format!("material/{}", material.id.0);
        put(&mut material.name, words(&key, 0));
        put(&mut material.short_name, words(&key, 1));
    }
    for measure in &mut records.measures {
        let key = format!("measure/{}", measure.id);
        // A journal may have been written in English.
        let english = [measure.name.clone(), measure.plural.clone()];
        measure.other_words.extend(english);
        put(&mut measure.name, words(&key, 0));
        put(&mut measure.plural, words(&key, 1));
        list(&mut measure.other_words, words(&key, 2));
    }
    for condition in &mut records.conditions {
        let key = format!("condition/{}", condition.id);
        condition.other_words.push(condition.name.clone());
        put(&mut condition.name, words(&key, 0));
        list(&mut condition.other_words, words(&key, 1));
    }
}

/// The same for what materials are called, in the order of `materials`.
pub(crate) fn translate_names(materials: &[Material], names: &mut [Vec<Name>], words: &Word) {
    for (material, names) in materials.iter().zip(names) {
        let key = format!("material/{}", material.id.0);
        let Some(short) = words(&key, 1) else {
            continue;
        };
        let others = words(&key, 2).unwrap_or_default().split(';');
        let name = |kind, word: &str| Name {
            text: word.to_owned(),
            kind,
            note: String::new(),
        };
        let english = std::mem::take(names);
        names.push(name(NameKind::Short, short));
        names.extend(
            others
                .filter(|word| !word.is_empty())
                .map(|word| name(NameKind::Name, word)),
        );
        // Who goes on saying it in English is understood as well, where no word of the language is in the way.
        for word in english {
            if !names
                .iter()
                .any(|known| known.text.eq_ignore_ascii_case(&word.text))
            {
                names.push(name(NameKind::Name, &word.text));
            }
        }
    }
}

/// The same for what to beware of.
pub(crate) fn translate_cautions(cautions: &mut [CautionText], words: &Word) {
    for caution in cautions {
        let key = match &caution.about {
            CautionAbout::Flag(flag) => format!("caution/{}", flag_word(*flag)),
            CautionAbout::Material(id) => format!("caution/{}", id.0),
        };
        put(&mut caution.reason, words(&key, 0));
        put(&mut caution.advice, words(&key, 1));
        put(&mut caution.local_rule, words(&key, 2));
        put(&mut caution.before_use, words(&key, 3));
    }
}

impl HygieneRule {
    /// The rule in another language.
    #[must_use]
    pub fn translated(&self, words: &Word) -> Self {
        let mut rule = self.clone();
        let key = format!("rule/{}", rule.id);
        put(&mut rule.name, words(&key, 0));
        put(&mut rule.asks, words(&key, 1));
        put(&mut rule.also_asks, words(&key, 2));
        put(&mut rule.scope, words(&key, 3));
        rule
    }
}

impl Spreading {
    /// Crops, their groups and the uses of compost in another language.
    #[must_use]
    pub fn translated(&self, words: &Word) -> Self {
        let mut spreading = self.clone();
        for crop in &mut spreading.crops {
            let key = format!("crop/{}", crop.id);
            // A journal may have been written in English.
            crop.other_words.push(crop.name.clone());
            put(&mut crop.name, words(&key, 0));
            list(&mut crop.other_words, words(&key, 1));
        }
        for group in &mut spreading.groups {
            put(
                &mut group.name,
                words(&format!("crop-group/{}", group.id), 0),
            );
        }
        for way in &mut spreading.uses {
            let key = format!("use/{}", way.id);
            put(&mut way.name, words(&key, 0));
            put(&mut way.advice, words(&key, 1));
        }
        spreading
    }
}

fn put(place: &mut String, word: Option<&str>) {
    if let Some(word) = word.filter(|word| !word.is_empty()) {
        word.clone_into(place);
    }
}

/// English words stay known beside those of the language.
fn list(place: &mut Vec<String>, words: Option<&str>) {
    let words = words.unwrap_or_default().split(';');
    place.extend(words.filter(|word| !word.is_empty()).map(str::to_owned));
}

/// A flag as the table writes it.
const fn flag_word(flag: Caution) -> &'static str {
    match flag {
        Caution::Acidic => "acidic",
        Caution::Alkaline => "alkaline",
        Caution::AttractsAnimals => "attracts_animals",
        Caution::Avoid => "avoid",
        Caution::Compacts => "compacts",
        Caution::ContaminantRisk => "contaminant_risk",
        Caution::HerbicideRisk => "herbicide_risk",
        Caution::LimitAmount => "limit_amount",
        Caution::MatsWhenWet => "mats_when_wet",
        Caution::PathogenRisk => "pathogen_risk",
        Caution::RegulatedAnimalByproduct => "regulated_animal_byproduct",
        Caution::Salty => "salty",
        Caution::ShredFirst => "shred_first",
        Caution::WeedSeedRisk => "weed_seed_risk",
    }
}

#[cfg(all(test, feature = "all-languages"))]
mod tests {
    use std::collections::BTreeMap;

    use crate::{Catalogue, GERMAN, MatchRank, Resolution, Spreading, hygiene_rules};

    fn german(key: &str, field: usize) -> Option<&'static str> {
        let lines: BTreeMap<&str, &str> = GERMAN
            .lines()
            .filter_map(|line| line.split_once('\t'))
            .collect();
        lines.get(key)?.split('\t').nth(field)
    }

    #[test]
    fn every_word_has_its_place_and_no_figure_changes() {
        let (english, german) = (Catalogue::built_in(), Catalogue::translated(&self::german));
        for (before, after) in english.materials().iter().zip(german.materials()) {
            assert_eq!(before.id, after.id);
            assert_eq!(before.bulk_density_kg_m3, after.bulk_density_kg_m3);
        }
        for (before, after) in english.measures().iter().zip(german.measures()) {
            assert_eq!(before.volume_m3, after.volume_m3);
            assert_ne!(before.plural, after.plural);
            assert!(after.other_words.contains(&before.plural));
        }
        for material in english.materials() {
            for (before, after) in english
                .cautions_for(material)
                .iter()
                .zip(german.cautions_for(material))
            {
                assert_eq!(before.about, after.about);
                assert_ne!(before.reason, after.reason);
                assert_eq!(before.local_rule.is_empty(), after.local_rule.is_empty());
            }
        }
        for rule in hygiene_rules() {
            let after = rule.translated(&self::german);
            assert_ne!(rule.asks, after.asks);
            // Whatever language: the same figures.
            let figures = |text: &str| {
                text.chars()
                    .filter(char::is_ascii_digit)
                    .collect::<String>()
            };
            assert_eq!(figures(&rule.asks), figures(&after.asks), "{}", rule.id);
        }
        let spreading = Spreading::built_in().translated(&self::german);
        for (before, after) in Spreading::built_in().uses().iter().zip(spreading.uses()) {
            assert_ne!(before.advice, after.advice);
        }
    }

    #[test]
    fn crops_are_known_by_every_name_in_german_and_by_those_in_english() {
        let spreading = Spreading::built_in().translated(&self::german);
        for (english, crop) in Spreading::built_in().crops().iter().zip(spreading.crops()) {
            for name in crop.other_words.iter().chain([&crop.name, &english.name]) {
                let found = spreading.crop(name).map(|found| found.id.as_str());
                assert_eq!(found, Some(crop.id.as_str()), "{name}");
            }
        }
        assert_eq!(spreading.crop("Späte Möhren").unwrap().id, "carrot");
    }

    #[test]
    fn nothing_in_german_is_called_free_of_danger() {
        for word in ["sicher", "unbedenklich", "gefahrlos"] {
            let mut words = GERMAN.split(|letter: char| !letter.is_alphabetic());
            assert!(
                !words.any(|one| one.to_lowercase().starts_with(word)),
                "{word}"
            );
        }
    }

    #[test]
    fn german_words_find_their_material() {
        let catalogue = Catalogue::translated(&german);
        for (words, id) in [
            ("Kartoffelschalen", "potato_peelings"),
            ("kaffeesatz", "coffee_grounds"),
            ("Laub", "dry_leaves_mixed"),
            ("Rasenschnitt", "grass_clippings_fresh"),
            ("Sägemehl", "sawdust_hardwood"),
            ("Möhren", "carrot"),
            ("Pappe", "corrugated_cardboard"),
        ] {
            match catalogue.resolve(words) {
                Resolution::One(found) => {
                    assert_eq!(found.material.0, id, "{words}");
                    assert_eq!(found.rank, MatchRank::Exact, "{words}");
                }
                other => panic!("{words}: {other:?}"),
            }
        }
        assert_eq!(
            catalogue.search("coffee grounds", 3)[0].material.0,
            "coffee_grounds"
        );
        assert_eq!(
            catalogue.search("kafee satz", 3)[0].material.0,
            "coffee_grounds"
        );
    }
}
