//! Why a command has no answer, where another command or an option helps: named, as no page could.

use heapwright_answers::{HygieneError, QuestionError};
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals_of_commands as texts;

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

#[cfg(test)]
mod tests {
    use heapwright_texts::Translation;

    use super::*;

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
}
