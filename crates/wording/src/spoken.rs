//! The world's tables in the words of a language: materials, measures, cautions, crops, rules.

use std::sync::OnceLock;

use heapwright_catalogue::{Catalogue, HygieneRule, Spreading};
use heapwright_texts::messages::hygiene as messages;
use heapwright_texts::{Locale, PackError, Translation};

/// A language with the tables in its words, to be held for as long as a program runs.
#[derive(Default)]
pub struct Spoken {
    translation: Option<&'static Translation>,
    catalogue: OnceLock<Catalogue>,
    spreading: OnceLock<Spreading>,
}

impl Spoken {
    /// English.
    #[must_use]
    pub const fn english() -> Self {
        Self {
            translation: None,
            catalogue: OnceLock::new(),
            spreading: OnceLock::new(),
        }
    }

    /// Another language, from its pack and the words of the tables; see [`Translation::read`].
    ///
    /// What is read is never given back: a program speaks one language to its end.
    ///
    /// # Errors
    ///
    /// When the pack is not of this version.
    pub fn read(tag: &str, pack: &'static str, words: &'static str) -> Result<Self, PackError> {
        let translation = Translation::read(tag, pack, words)?;
        Ok(Self {
            translation: Some(Box::leak(Box::new(translation))),
            ..Self::english()
        })
    }

    /// How to speak, in metric units.
    #[must_use]
    pub fn locale(&self) -> Locale {
        Locale::default().in_language(self.translation)
    }

    /// The figures of the world in the words of the language.
    pub fn catalogue(&'static self) -> &'static Catalogue {
        let Some(translation) = self.translation else {
            return Catalogue::built_in();
        };
        self.catalogue.get_or_init(|| {
            Catalogue::translated(Box::leak(Box::new(|key: &str, field| {
                translation.word(key, field)
            })))
        })
    }

    /// Crops and uses of compost in the words of the language.
    pub fn spreading(&'static self) -> &'static Spreading {
        let Some(translation) = self.translation else {
            return Spreading::built_in();
        };
        self.spreading.get_or_init(|| {
            Spreading::built_in().translated(&|key, field| translation.word(key, field))
        })
    }
}

/// A published rule in the words of the language; its place keeps its name, see [`place_name`].
#[must_use]
pub fn rule_in(rule: &HygieneRule, locale: Locale) -> HygieneRule {
    match locale.translation() {
        None => rule.clone(),
        Some(translation) => rule.translated(&|key, field| translation.word(key, field)),
    }
}

/// A country or union that has rules, as the tables write it, in the words of the language.
#[must_use]
pub fn place_name(place: &str, locale: Locale) -> String {
    messages::PlaceWithRules {
        as_listed: place,
        place: &place.to_lowercase().replace(' ', "-"),
    }
    .said(locale)
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_catalogue::{GERMAN, hygiene_rules};

    #[test]
    fn the_tables_are_german_when_german_is_spoken() {
        let spoken: &'static Spoken = Box::leak(Box::new(
            Spoken::read("de", Translation::GERMAN, GERMAN).unwrap(),
        ));
        let apple = |catalogue: &Catalogue| catalogue.material("apple").unwrap().name.clone();
        assert_ne!(apple(spoken.catalogue()), apple(Catalogue::built_in()));
        for (rule, english) in hygiene_rules().iter().zip(hygiene_rules()) {
            let german = rule_in(rule, spoken.locale());
            assert_ne!(german.asks, english.asks);
            let place = &english.jurisdiction;
            assert_eq!(german.jurisdiction, *place);
            assert_ne!(place_name(place, spoken.locale()), *place);
            assert_eq!(place_name(place, Locale::default()), *place);
            assert_eq!(rule_in(rule, Locale::default()), *english);
        }
        assert!(Spoken::read("de", "", "").is_err());
    }
}
