//! Why a command has no answer, where another command or an option helps: named, as no page could.

use heapwright_answers::{HygieneError, QuestionError};
use heapwright_garden::FoundError;
use heapwright_journal::{Problem, WriteError, Wrong};
use heapwright_state::RecordError;
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals_of_commands as texts;

use super::{field_name, figure, found};

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

/// What cannot be recorded for one of its figures, as the command line says it: the figure in words
/// and with its unit; nothing for the others.
#[must_use]
pub fn record_refusal_of_commands(error: &RecordError, locale: Locale) -> Option<String> {
    match error {
        RecordError::Write(WriteError::Impossible(problem)) => {
            problem_refusal_of_commands(problem, locale)
        }
        _ => None,
    }
}

/// A figure of an entry that lies outside what can be, in words and with its unit; nothing for what
/// is wrong otherwise.
fn problem_refusal_of_commands(problem: &Problem, locale: Locale) -> Option<String> {
    let Wrong::Outside { least, most } = &problem.what else {
        return None;
    };
    // The last step tells the figure and its unit wherever it stands.
    let last = problem.field.rsplit('.').next().unwrap_or_default();
    Some(
        texts::FigureOfEntryOutside {
            field: &field_name(&problem.field, locale),
            figure: last,
            least: &figure(*least, locale),
            most: &figure(*most, locale),
        }
        .said(locale),
    )
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

    fn languages() -> [Locale; 2] {
        let english = Locale::default();
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        [
            english,
            english.in_language(Some(Box::leak(Box::new(translation)))),
        ]
    }

    #[test]
    fn a_figure_of_an_entry_is_refused_in_words_with_its_unit() {
        for (field, least, most, english, german) in [
            (
                "probes[0].temperature_c",
                -60.0,
                120.0,
                "The temperature must be from -60 to 120\u{a0}°C.",
                "Gib für die Temperatur -60 bis 120\u{a0}°C an.",
            ),
            (
                "enclosure.width_m",
                0.1,
                20.0,
                "The width must be from 0.1 to 20\u{a0}m.",
                "Gib für die Breite 0,1 bis 20\u{a0}m an.",
            ),
            (
                "place.latitude_deg",
                -90.0,
                90.0,
                "The latitude must be from -90 to 90\u{a0}degrees.",
                "Gib für den Breitengrad -90 bis 90\u{a0}Grad an.",
            ),
            (
                "other.thing",
                0.0,
                1.0,
                "other.thing must be from 0 to 1.",
                "other, thing: Gib eine Zahl von 0 bis 1 an.",
            ),
        ] {
            let error = RecordError::Write(WriteError::Impossible(Problem {
                field: field.to_owned(),
                what: Wrong::Outside { least, most },
            }));
            let said = languages().map(|locale| record_refusal_of_commands(&error, locale));
            assert_eq!(said, [Some(english.to_owned()), Some(german.to_owned())]);
        }
        let other = RecordError::InTheFuture;
        assert_eq!(record_refusal_of_commands(&other, Locale::default()), None);
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
