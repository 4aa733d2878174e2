//! Why a command has no answer, where another command or an option helps: named, as no page could.

use heapwright_answers::{HygieneError, QuestionError};
use heapwright_garden::FoundError;
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals_of_commands as texts;

use super::found;

/// A record of heat that has no answer, as the command line says it behind its name.
#[must_use]
pub fn hygiene_refusal_of_commands(error: HygieneError, locale: Locale) -> &'static str {
    match error {
        HygieneError::NoReadings => texts::no_readings(locale),
        HygieneError::NoSuchDepth => texts::no_such_depth(locale),
    }
}

/// A question that a command would make answerable, as the command line says it behind its name;
/// nothing for the others.
#[must_use]
pub fn question_refusal_of_commands(error: &QuestionError, locale: Locale) -> Option<&'static str> {
    match error {
        QuestionError::NoBeds => Some(texts::no_beds(locale)),
        QuestionError::NothingInHeap => Some(texts::nothing_in_heap(locale)),
        _ => None,
    }
}

/// A part of a list that was typed and cannot be used: which one, as it was typed, and why.
#[must_use]
pub fn part_refusal_of_commands(
    index: usize,
    text: &str,
    error: &FoundError,
    locale: Locale,
) -> String {
    #[allow(clippy::cast_precision_loss)] // a place in a list that somebody typed
    let part = index as f64 + 1.0;
    texts::PartOfListRefused {
        part,
        refusal: &found::after_colon(error, locale),
        text,
    }
    .said(locale)
}

#[cfg(test)]
mod tests {
    use heapwright_texts::Translation;

    use super::*;
    use crate::refusals::tests::languages;

    /// The error's own words as far as what to do, and then the command or the option.
    fn names_a_command(error: &str, refusal: impl Fn(Locale) -> &'static str) {
        let english = Locale::default();
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        let german = english.in_language(Some(Box::leak(Box::new(translation))));
        let (what, _) = error.split_once(':').unwrap();
        assert!(refusal(english).contains(what), "{error}");
        assert_ne!(refusal(german), refusal(english));
        for said in [refusal(english), refusal(german)] {
            assert!(
                said.contains("`heapwright ") || said.contains("--"),
                "{said}"
            );
            assert!(said.ends_with('.'), "{said}");
        }
    }

    #[test]
    fn a_refusal_of_a_command_says_which_command_or_option_helps() {
        for error in [HygieneError::NoReadings, HygieneError::NoSuchDepth] {
            names_a_command(&error.to_string(), |locale| {
                hygiene_refusal_of_commands(error, locale)
            });
        }
        for error in [QuestionError::NoBeds, QuestionError::NothingInHeap] {
            names_a_command(&error.to_string(), |locale| {
                question_refusal_of_commands(&error, locale).unwrap()
            });
        }
        let other = question_refusal_of_commands(&QuestionError::OutOfTime, Locale::default());
        assert_eq!(other, None);
    }

    #[test]
    fn a_part_is_named_as_it_was_typed() {
        let error = FoundError::NoDensity;
        let [english, german] = languages()
            .map(|locale| part_refusal_of_commands(1, "1 bucket cat litter", &error, locale));
        assert!(english.starts_with("Part 2, “1 bucket cat litter”: bulk_density"));
        assert!(german.starts_with("Teil 2, „1 bucket cat litter“: "));
    }
}
