//! Every sentence in every language, outside the code, and the formats of numbers, dates and lists.
//!
//! The sentences stand in `locales/LANGUAGE/*.ftl` in the syntax of Fluent; `build` reads them with
//! Fluent's own parser and makes of each message a function ([`messages`]) whose arguments have names
//! and types, so that a wrong one does not compile and a missing translation stops the build. Plurals
//! follow CLDR by `icu_plurals`; dates, lists and decimal marks stand in `locales/LANGUAGE/cldr.ftl`,
//! which `tests/cldr.rs` holds against ICU. English is compiled in; other languages are one pack each
//! (feature `all-languages`), which the page fetches when it is asked for one.
//! `docs/decisions/0016-texts-as-fluent-files.md` says why not Fluent's own runtime.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod dates;
mod locale;
mod pattern;
mod translation;

use pattern::Argument;

pub use dates::{Clock, Day};
pub use locale::{Direction, Locale};
pub use translation::{PackError, Translation};

/// A module for each file of `locales/en`, a function or a structure for each message.
///
/// A message without arguments is a function: `messages::page::undo(locale)`. One with arguments is a
/// structure that is said: `messages::page::TakenBack { line: &line }.said(locale)`.
pub mod messages {
    include!(concat!(env!("OUT_DIR"), "/messages.rs"));
}

/// The messages of one file: English here, others at the same place of a translation.
struct File {
    place: usize,
    english: &'static [&'static str],
}

impl File {
    fn text(&self, locale: Locale, message: usize) -> &'static str {
        locale
            .translation()
            .and_then(|translation| translation.text(self.place, message))
            .or_else(|| self.english.get(message).copied())
            .unwrap_or_default()
    }

    fn said(&self, locale: Locale, message: usize, arguments: &[Argument]) -> String {
        pattern::said(self.text(locale, message), arguments, locale)
    }
}

/// A message as a test finds it.
#[cfg(test)]
pub(crate) struct Listed {
    file: &'static File,
    name: &'static str,
    id: &'static str,
    index: usize,
    /// Names, and whether they are numbers.
    arguments: &'static [(&'static str, bool)],
}

#[cfg(all(test, feature = "all-languages"))]
mod tests {
    use std::{fs, path::Path};

    use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};

    use super::*;

    fn bundle(folder: &str) -> FluentBundle<FluentResource> {
        let tag = folder.parse().unwrap();
        let mut bundle = FluentBundle::new(vec![tag]);
        bundle.set_use_isolating(false);
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("locales")
            .join(folder);
        for entry in fs::read_dir(path).unwrap() {
            let path = entry.unwrap().path();
            let file = path.file_stem().unwrap().to_str().unwrap().to_owned();
            // The runtime has one room for all names: here a file's name leads them.
            let text: String = fs::read_to_string(&path)
                .unwrap()
                .lines()
                .map(|line| match line.chars().next() {
                    Some('a'..='z') if line.contains('=') => format!("{file}-{line}\n"),
                    _ => format!("{line}\n"),
                })
                .collect();
            bundle
                .add_resource(FluentResource::try_new(text).unwrap())
                .unwrap();
        }
        bundle.add_builtins().unwrap();
        bundle
    }

    fn keys(text: &str) -> Vec<String> {
        text.split('\u{3}')
            .skip(1)
            .filter_map(|piece| Some(piece.split_once('\u{4}')?.0.to_owned()))
            .collect()
    }

    #[test]
    fn only_what_the_command_line_says_names_commands_and_options() {
        let locales = Path::new(env!("CARGO_MANIFEST_DIR")).join("locales");
        let mut named = 0;
        for folder in ["en", "de"] {
            for entry in fs::read_dir(locales.join(folder)).unwrap() {
                let path = entry.unwrap().path();
                let file = path.file_stem().unwrap().to_str().unwrap();
                let text = fs::read_to_string(&path).unwrap();
                let messages = text.lines().filter(|line| !line.starts_with('#'));
                let naming =
                    messages.filter(|line| line.contains("`heapwright") || line.contains("--"));
                if file.ends_with("_of_commands") {
                    named += naming.count();
                } else {
                    assert_eq!(
                        naming.collect::<Vec<_>>(),
                        Vec::<&str>::new(),
                        "{folder}/{file}"
                    );
                }
            }
        }
        assert!(named > 0);
    }

    /// True when each round bracket that opens is closed after it, and none closes that was not opened.
    fn brackets_pair(line: &str) -> bool {
        let mut open = 0_u32;
        for letter in line.chars() {
            match letter {
                '(' => open += 1,
                ')' if open == 0 => return false,
                ')' => open -= 1,
                _ => {}
            }
        }
        open == 0
    }

    #[test]
    fn brackets_pair_in_order() {
        assert!(brackets_pair("leaves (dry, wet (packed))"));
        for line in ["leaves, wet)", "leaves (wet", "leaves )wet("] {
            assert!(!brackets_pair(line), "{line}");
        }
    }

    /// A language puts the pieces of a label in its own order: none may be made to be set behind another.
    #[test]
    fn no_message_is_the_tail_of_another() {
        let locales = Path::new(env!("CARGO_MANIFEST_DIR")).join("locales");
        let mut messages = 0;
        for folder in ["en", "de"] {
            for entry in fs::read_dir(locales.join(folder)).unwrap() {
                let path = entry.unwrap().path();
                // How ICU parts and ends lists and dates.
                if path.file_stem().unwrap() == "cldr" {
                    continue;
                }
                for line in fs::read_to_string(&path).unwrap().lines() {
                    if line.starts_with('#') {
                        continue;
                    }
                    // Variants are texts of their own, each on its line.
                    assert!(brackets_pair(line), "{folder}: {line}");
                    let Some((id, text)) = line.split_once(" = ") else {
                        continue;
                    };
                    if !id.starts_with(|first: char| first.is_ascii_lowercase()) {
                        continue;
                    }
                    messages += 1;
                    let begins = text.starts_with([',', ':', ';', ')', '.']);
                    let one_space = text.starts_with("{\" \"}");
                    assert!(!begins && !one_space, "{folder}: {line}");
                }
            }
        }
        assert!(messages > 2000, "{messages}");
    }

    /// Fluent's own runtime is the independent answer to how a message reads.
    #[test]
    fn every_message_reads_as_fluent_says_it() {
        let german: &'static Translation = Box::leak(Box::new(
            Translation::read("de", Translation::GERMAN, "").unwrap(),
        ));
        let english = Locale::default();
        let mut said = 0;
        for (locale, folder) in [(english, "en"), (english.in_language(Some(german)), "de")] {
            let bundle = bundle(folder);
            for message in messages::ALL.iter().copied().flatten() {
                let id = format!("{}-{}", message.name, message.id);
                let pattern = bundle
                    .get_message(&id)
                    .and_then(|found| found.value())
                    .unwrap_or_else(|| panic!("{folder}: {id}"));
                let keys = keys(message.file.text(locale, message.index));
                // Whole numbers: the runtime writes decimals with a point in every language.
                for (round, number) in [0.0, 1.0, 2.0, 5.0, 11.0, 12.0, 100.0]
                    .into_iter()
                    .enumerate()
                {
                    let words: Vec<String> = (0..message.arguments.len())
                        .map(|place| {
                            keys.get((round + place) % keys.len().max(1))
                                .cloned()
                                .unwrap_or_else(|| format!("<{place}>"))
                        })
                        .collect();
                    let mut theirs = FluentArgs::new();
                    let mut ours = Vec::new();
                    for ((name, is_number), word) in message.arguments.iter().zip(&words) {
                        if *is_number {
                            theirs.set(*name, number);
                            ours.push(Argument::Number(number));
                        } else {
                            theirs.set(*name, word.clone());
                            ours.push(Argument::Text(word));
                        }
                    }
                    let mut errors = Vec::new();
                    let expected = bundle.format_pattern(pattern, Some(&theirs), &mut errors);
                    assert!(errors.is_empty(), "{folder}: {id}: {errors:?}");
                    assert_eq!(
                        message.file.said(locale, message.index, &ours),
                        expected,
                        "{folder}: {id}"
                    );
                    said += 1;
                }
            }
        }
        assert!(said >= 2 * 7 * messages::COUNTS.iter().sum::<usize>());
    }
}
