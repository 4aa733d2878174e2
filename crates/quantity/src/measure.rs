//! Which vessel does a word mean? Handful, mug, caddy, bucket: words given by the garden.

use std::collections::BTreeMap;

use crate::tokens::plain_phrase;

/// The words for a garden's vessels, each with the id of the measure it means.
///
/// Words match without regard to case, hyphens or repeated spaces. A word also matches with a
/// plural "s" or "es" and with "ful", "full" or "load" behind it ("bucketfuls" is "bucket"), unless the list
/// gives that very word another meaning. A word that also names a unit ("cup") means the vessel.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MeasureWords {
    id_of_phrase: BTreeMap<String, String>,
    longest_words: usize,
}

/// Endings that leave the vessel the same, longest first.
const ENDINGS: [&str; 10] = [
    "fulls", "loads", "full", "fuls", "load", "sful", "ful", "es", "s", "'s",
];

impl MeasureWords {
    /// The vocabulary of a list of (word, measure id).
    ///
    /// Plurals that are not regular must be listed. Where a word is listed twice the first
    /// counts; a word without any letter is left out.
    pub fn new<Word, Id>(words: impl IntoIterator<Item = (Word, Id)>) -> Self
    where
        Word: AsRef<str>,
        Id: Into<String>,
    {
        let mut measures = Self::default();
        for (word, id) in words {
            let phrase = plain_phrase(word.as_ref());
            if phrase.is_empty() {
                continue;
            }
            let words = phrase.split(' ').count();
            measures.longest_words = measures.longest_words.max(words);
            measures
                .id_of_phrase
                .entry(phrase)
                .or_insert_with(|| id.into());
        }
        measures
    }

    /// The id of the measure that a word or phrase means.
    #[must_use]
    pub fn id(&self, phrase: &str) -> Option<&str> {
        self.id_of_plain(&plain_phrase(phrase))
    }

    /// As `id`, for a phrase that is plain already.
    pub(crate) fn id_of_plain(&self, phrase: &str) -> Option<&str> {
        if let Some(id) = self.id_of_phrase.get(phrase) {
            return Some(id);
        }
        ENDINGS.iter().find_map(|ending| {
            let stem = phrase.strip_suffix(ending)?;
            self.id_of_phrase.get(stem).map(String::as_str)
        })
    }

    /// The most words in one phrase of the list.
    pub(crate) fn longest_words(&self) -> usize {
        self.longest_words
    }

    /// Every listed word in alphabetical order, in lower case.
    pub fn words(&self) -> impl Iterator<Item = &str> {
        self.id_of_phrase.keys().map(String::as_str)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn vessels() -> MeasureWords {
        MeasureWords::new([
            ("handful", "handful"),
            ("bucket", "bucket"),
            ("pail", "bucket"),
            ("wheel-barrow", "barrow"),
            ("Blue Tub", "tub-2"),
            ("", "nothing"),
            ("bucket", "another"),
        ])
    }

    #[test]
    fn id_ignores_case_hyphens_and_plurals() {
        let vessels = vessels();
        assert_eq!(vessels.id("BUCKETS"), Some("bucket"));
        assert_eq!(vessels.id("bucketfuls"), Some("bucket"));
        assert_eq!(vessels.id("bucketsful"), Some("bucket"));
        assert_eq!(vessels.id("pail"), Some("bucket"));
        assert_eq!(vessels.id("wheel barrow loads"), None);
        assert_eq!(vessels.id("Wheel Barrowloads"), Some("barrow"));
        assert_eq!(vessels.id("blue  tubs"), Some("tub-2"));
        assert_eq!(vessels.id("bukket"), None);
        assert_eq!(vessels.id(""), None);
    }

    #[test]
    fn new_keeps_the_first_meaning() {
        assert_eq!(vessels().id("bucket"), Some("bucket"));
        assert_eq!(vessels().longest_words(), 2);
    }
}
