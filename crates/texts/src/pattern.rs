//! A message in its compact form becomes a sentence.
//!
//! Text stands as it is. Control characters lead the rest: `1` an argument, `6` a number with least
//! and most decimals, `2` a choice with its argument and its default, in it `3` a key, `4` what stands
//! for it, `5` the end. Places and counts are letters from "A" on. `build/emit.rs` writes this form.

use std::iter::Peekable;
use std::str::Chars;

use crate::locale::Locale;

const ARGUMENT: char = '\u{1}';
const SELECT: char = '\u{2}';
const VARIANT: char = '\u{3}';
const OF_VARIANT: char = '\u{4}';
const END: char = '\u{5}';
const NUMBER: char = '\u{6}';

/// Decimals of a number that stands in a sentence without a word on it.
const MOST_DECIMALS: usize = 3;

/// What is put into a message.
pub enum Argument<'a> {
    /// As it is.
    Text(&'a str),
    /// In the figures of the language.
    Number(f64),
}

/// The sentence.
pub fn said(pattern: &str, arguments: &[Argument], locale: Locale) -> String {
    let mut sentence = String::with_capacity(pattern.len() + 32);
    let mut rest = pattern.chars().peekable();
    Speaker { arguments, locale }.pieces(&mut rest, Some(&mut sentence));
    sentence
}

struct Speaker<'a> {
    arguments: &'a [Argument<'a>],
    locale: Locale,
}

impl Speaker<'_> {
    /// Says pieces up to the end of the pattern; without a sentence, only passes over them.
    fn pieces(&self, rest: &mut Peekable<Chars>, mut sentence: Option<&mut String>) {
        while let Some(letter) = rest.next_if(|letter| ![VARIANT, END].contains(letter)) {
            match letter {
                ARGUMENT => {
                    let argument = self.argument(rest);
                    if let Some(sentence) = sentence.as_deref_mut() {
                        self.put(sentence, argument, 0, MOST_DECIMALS);
                    }
                }
                NUMBER => {
                    let argument = self.argument(rest);
                    let (least, most) = (count(rest), count(rest));
                    if let Some(sentence) = sentence.as_deref_mut() {
                        self.put(sentence, argument, least, most);
                    }
                }
                SELECT => self.select(rest, sentence.as_deref_mut()),
                letter => {
                    if let Some(sentence) = sentence.as_deref_mut() {
                        sentence.push(letter);
                    }
                }
            }
        }
    }

    fn argument(&self, rest: &mut Peekable<Chars>) -> Option<&Argument<'_>> {
        self.arguments.get(count(rest))
    }

    fn put(&self, sentence: &mut String, argument: Option<&Argument>, least: usize, most: usize) {
        match argument {
            Some(Argument::Text(text)) => self.locale.isolated(sentence, text),
            Some(Argument::Number(number)) => {
                self.locale
                    .isolated(sentence, &self.locale.decimals(*number, least, most));
            }
            None => {}
        }
    }

    /// The exact key first, then the plural, then the default.
    fn select(&self, rest: &mut Peekable<Chars>, mut sentence: Option<&mut String>) {
        let argument = self.argument(rest);
        let default = count(rest);
        let (exact, category) = match argument {
            Some(Argument::Text(text)) => ((*text).to_owned(), ""),
            Some(Argument::Number(number)) => {
                let shown = plain(*number, 0, MOST_DECIMALS);
                let category = self.locale.plural(&shown);
                (shown, category)
            }
            None => (String::new(), ""),
        };
        let keys = keys(rest.clone());
        let chosen = keys
            .iter()
            .position(|key| *key == exact)
            .or_else(|| keys.iter().position(|key| key == category))
            .unwrap_or(default);
        let mut place = 0;
        while rest.next_if_eq(&VARIANT).is_some() {
            while rest.next_if(|letter| *letter != OF_VARIANT).is_some() {}
            rest.next();
            let heard = if place == chosen {
                sentence.as_deref_mut()
            } else {
                None
            };
            self.pieces(rest, heard);
            place += 1;
        }
        rest.next_if_eq(&END);
    }
}

/// The keys of a choice that has just begun.
fn keys(mut rest: Peekable<Chars>) -> Vec<String> {
    let mut keys = Vec::new();
    let mut depth = 0_u32;
    while let Some(letter) = rest.next() {
        match letter {
            SELECT => depth += 1,
            END if depth == 0 => break,
            END => depth -= 1,
            VARIANT if depth == 0 => {
                let mut key = String::new();
                while let Some(letter) = rest.next_if(|letter| *letter != OF_VARIANT) {
                    key.push(letter);
                }
                keys.push(key);
            }
            _ => {}
        }
    }
    keys
}

/// A place or a count: "A" is none.
fn count(rest: &mut Peekable<Chars>) -> usize {
    rest.next().map_or(0, |letter| {
        usize::try_from(u32::from(letter).saturating_sub(u32::from('A'))).unwrap_or(0)
    })
}

/// A number with a point, without superfluous zeros.
pub fn plain(number: f64, least: usize, most: usize) -> String {
    if !number.is_finite() {
        return "\u{2013}".to_owned();
    }
    let mut text = format!("{:.most$}", number.abs());
    while let Some(point) = text.find('.') {
        let decimals = text.len() - point - 1;
        if decimals == 0 || (decimals == 1 && least == 0 && text.ends_with('0')) {
            text.truncate(point);
        } else if decimals > least && text.ends_with('0') {
            text.pop();
        } else {
            break;
        }
    }
    if number < 0.0 && text.bytes().any(|digit| (b'1'..=b'9').contains(&digit)) {
        text.insert(0, '\u{2212}');
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// "one" for 1 and "other" else; marks as `build/emit.rs` writes them.
    const DAYS: &str =
        "in \u{2}AC\u{3}0\u{4}no time\u{3}one\u{4}a day\u{3}other\u{4}\u{1}A days\u{5}, \u{1}B";

    #[test]
    fn a_choice_takes_the_exact_key_before_the_plural() {
        for (number, sentence) in [
            (0.0, "in no time, Ada"),
            (1.0, "in a day, Ada"),
            (2.0, "in 2 days, Ada"),
            (1.5, "in 1.5 days, Ada"),
        ] {
            let arguments = [Argument::Number(number), Argument::Text("Ada")];
            assert_eq!(said(DAYS, &arguments, Locale::default()), sentence);
        }
    }

    #[test]
    fn choices_nest() {
        let nested =
            "\u{2}AB\u{3}a\u{4}\u{2}BB\u{3}one\u{4}1a\u{3}other\u{4}na\u{5}!\u{3}b\u{4}B\u{5}.";
        for (key, number, sentence) in [
            ("a", 1.0, "1a!."),
            ("a", 7.0, "na!."),
            ("b", 1.0, "B."),
            ("c", 1.0, "B."),
        ] {
            let arguments = [Argument::Text(key), Argument::Number(number)];
            assert_eq!(said(nested, &arguments, Locale::default()), sentence);
        }
    }

    #[test]
    fn numbers_have_no_superfluous_zeros() {
        for (number, least, most, text) in [
            (2.0, 0, 3, "2"),
            (2.5, 0, 3, "2.5"),
            (2.5, 2, 3, "2.50"),
            (2.0, 1, 1, "2.0"),
            (-0.5, 0, 1, "\u{2212}0.5"),
            (-0.01, 0, 1, "0"),
            (f64::NAN, 0, 1, "\u{2013}"),
            (1e9, 0, 0, "1000000000"),
        ] {
            assert_eq!(plain(number, least, most), text);
        }
    }

    #[test]
    fn a_broken_pattern_says_what_it_can() {
        for broken in [
            "\u{2}",
            "\u{2}AA\u{3}",
            "\u{2}AA\u{3}one",
            "\u{1}",
            "\u{6}A",
            "a\u{5}b",
        ] {
            assert!(said(broken, &[], Locale::default()).len() < 3);
        }
    }
}
