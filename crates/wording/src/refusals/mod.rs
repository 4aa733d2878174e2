//! Why something cannot be used, and what to do instead: one whole sentence for each error.
//!
//! In English each says what `Display` of its error says, as a sentence of the page, and those of
//! commands name a command besides; the tests hold the two together. Figures that lie outside of what can be
//! are named in words, in the units that the keeper types. Field names, which are those of
//! the JSON in English, are words elsewhere.

mod amounts;
mod commands;
mod entries;
mod figures;
mod found;
mod questions;

use heapwright_texts::Locale;
use heapwright_texts::messages::refusals as texts;

pub use amounts::{amount_refusal, parts_refusal};
pub use commands::{
    hygiene_refusal_of_commands, part_refusal_of_commands, question_refusal_of_commands,
};
pub use entries::{
    fault_refusal, moment_refusal, problem_refusal, record_refusal, write_refusal, year_refusal,
};
pub use figures::figure_refusal;
pub use found::found_refusal;
pub use questions::{question_refusal, simulation_refusal};

/// A field such as `parts[1].amount`, in words where the language has them.
fn field_name(field: &str, locale: Locale) -> String {
    field
        .split('.')
        .map(|step| step_name(step, locale))
        .reduce(|outer, inner| {
            texts::FieldInside {
                inner: &inner,
                outer: &outer,
            }
            .said(locale)
        })
        .unwrap_or_default()
}

fn step_name(step: &str, locale: Locale) -> String {
    let item = step
        .strip_suffix(']')
        .and_then(|step| step.split_once('['))
        .and_then(|(list, index)| Some((list, index, index.parse::<u32>().ok()?)));
    match item {
        Some((list, index, place)) => texts::FieldOfList {
            index,
            list,
            place: f64::from(place) + 1.0,
        }
        .said(locale),
        None => texts::FieldName { field: &key(step) }.said(locale),
    }
}

/// A word by which messages choose.
fn key(words: &str) -> String {
    words.replace(", ", "-").replace(' ', "-")
}

/// A number with the digits that it needs, as errors have it.
fn figure(number: f64, locale: Locale) -> String {
    let shown = number.abs().to_string();
    if !number.is_finite() {
        return number.to_string();
    }
    let decimals = shown.split_once('.').map_or(0, |(_, digits)| digits.len());
    let sign = if number.is_sign_negative() { "-" } else { "" };
    format!("{sign}{}", locale.decimals(number.abs(), 0, decimals))
}

#[cfg(test)]
mod tests {
    use std::fmt::Display;

    use heapwright_texts::Translation;

    use super::*;
    use crate::page::sentence;

    /// What an error says in German, after a look at what it says in English.
    pub(super) fn german<E: Display>(error: &E, refusal: fn(&E, Locale) -> String) -> String {
        let english = Locale::default();
        let said = refusal(error, english);
        assert_eq!(said, sentence(&error.to_string()));
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        let german = refusal(
            error,
            english.in_language(Some(Box::leak(Box::new(translation)))),
        );
        assert_ne!(german, said);
        assert!(german.ends_with(['.', '?']), "{german}");
        assert!(!german.starts_with(char::is_lowercase), "{german}");
        german
    }

    /// English, and a language that has all texts in other words.
    pub(super) fn languages() -> [Locale; 2] {
        let english = Locale::default();
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        [
            english,
            english.in_language(Some(Box::leak(Box::new(translation)))),
        ]
    }

    #[test]
    fn a_field_is_as_in_the_file_or_in_words() {
        let english = Locale::default();
        let translation = Translation::read("de", Translation::GERMAN, "").unwrap();
        let german = english.in_language(Some(Box::leak(Box::new(translation))));
        for (field, words) in [
            ("parts[1].amount", "Zutat 2, Menge"),
            ("target.cn_ratio", "Ziel, C:N"),
            ("water_l", "Wasser (L)"),
            ("events[3].feed[0]", "Ereignis 4, Zutat 1"),
            ("other[3].thing", "other 4, thing"),
        ] {
            assert_eq!(field_name(field, english), field);
            assert_eq!(field_name(field, german), words);
        }
    }

    #[test]
    fn a_figure_has_the_digits_that_it_needs() {
        for number in [
            0.0,
            -90.0,
            99.9,
            1e-6,
            0.001,
            1e5,
            -0.25,
            1.0 / 3.0,
            f64::NAN,
        ] {
            assert_eq!(figure(number, Locale::default()), number.to_string());
        }
    }
}
