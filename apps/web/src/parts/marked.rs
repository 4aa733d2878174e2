//! Whole messages of which one part looks different from the rest, wherever a language puts it.

use heapwright_texts::messages::forms as texts;
use leptos::prelude::*;

use crate::language;

/// Stands in a message for the part that looks different.
const GAP: &str = "\u{fffc}";

/// What is before and after the gap of a message.
fn around(told: &str) -> (String, String) {
    let (before, after) = told.split_once(GAP).unwrap_or((told, ""));
    (before.to_owned(), after.to_owned())
}

/// The words of a control that several have; heard with what this one is for. What is heard is one piece:
/// of several, browsers make words with spaces between them.
pub fn words_of(words: &str, name: &str) -> AnyView {
    let heard = texts::ControlOf { name, words }.said(language::locale());
    view! {
        <span aria-hidden="true">{words.to_owned()}</span>
        <span class="unseen">{heard}</span>
    }
    .into_any()
}

/// A row of a list: a name that stands out, and what is said of it.
pub fn name_and_said(name: &str, said: &str) -> AnyView {
    let (before, after) = around(&texts::NameAndSaid { name: GAP, said }.said(language::locale()));
    view! { {before}<span class="line-name">{name.to_owned()}</span>{after} }.into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_is_found_wherever_a_language_puts_it() {
        let parts = |told| {
            let (before, after) = around(told);
            format!("{before}|{after}")
        };
        assert_eq!(parts("\u{fffc}, Bin 1"), "|, Bin 1");
        assert_eq!(parts("Bin 1: \u{fffc}"), "Bin 1: |");
        assert_eq!(parts("of \u{fffc} here"), "of | here");
    }
}
