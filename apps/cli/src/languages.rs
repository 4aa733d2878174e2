//! The languages of what is handed on: paper and reminders. What the command line itself says is English.

use std::sync::OnceLock;

use heapwright_catalogue::GERMAN;
use heapwright_texts::Translation;
use heapwright_wording::Spoken;

use crate::arguments::LanguageArgument;
use crate::failure::Failure;

static ENGLISH: Spoken = Spoken::english();
static OTHER: OnceLock<Spoken> = OnceLock::new();

/// A language with the catalogue in its words.
///
/// # Errors
///
/// When its texts are not of this version, which a test rules out.
pub fn spoken(language: LanguageArgument) -> Result<&'static Spoken, Failure> {
    match language {
        LanguageArgument::En => Ok(&ENGLISH),
        LanguageArgument::De => {
            let read = Spoken::read("de", Translation::GERMAN, GERMAN)
                .map_err(|error| Failure::Outside(error.to_string()))?;
            Ok(OTHER.get_or_init(|| read))
        }
    }
}
