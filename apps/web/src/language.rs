//! The language of the page: which texts `static/boot.js` fetched, and the catalogue in their words.
//!
//! It is settled before anything is shown and stays until the page is loaded anew, so every text can ask
//! for it without being told.

use std::sync::OnceLock;

use heapwright_catalogue::{Catalogue, Spreading, Words};
use heapwright_texts::{Locale, Translation};
use js_sys::Reflect;
use wasm_bindgen::JsValue;

/// Where `static/boot.js` leaves the texts of another language.
const HANDED_OVER: &str = "heapwright_texts";

static TRANSLATION: OnceLock<Option<&'static Translation>> = OnceLock::new();
static CATALOGUE: OnceLock<Catalogue> = OnceLock::new();
static SPREADING: OnceLock<Spreading> = OnceLock::new();

/// Takes the texts that were fetched, if any; called once, before the page is shown.
///
/// # Errors
///
/// When they are not of this version; a sentence. The page is then English.
pub fn settle() -> Result<(), String> {
    let read = handed_over().map(|[tag, pack, words]| {
        // The page speaks them to its end.
        Translation::read(&tag, pack.leak(), words.leak())
    });
    let (translation, told) = match read {
        Some(Ok(translation)) => (Some(&*Box::leak(Box::new(translation))), Ok(())),
        Some(Err(error)) => (None, Err(error.to_string())),
        None => (None, Ok(())),
    };
    let _ = TRANSLATION.set(translation);
    told
}

fn handed_over() -> Option<[String; 3]> {
    let texts = Reflect::get(&js_sys::global(), &JsValue::from_str(HANDED_OVER)).ok()?;
    let [tag, pack, words] = ["tag", "pack", "words"].map(|name| {
        let text = Reflect::get(&texts, &JsValue::from_str(name)).ok()?;
        text.as_string()
    });
    Some([tag?, pack?, words?])
}

fn translation() -> Option<&'static Translation> {
    TRANSLATION.get().copied().flatten()
}

/// How the page speaks, for texts without figures; [`crate::state::Page::locale`] has the keeper's
/// units and clock as well.
#[must_use]
pub fn locale() -> Locale {
    Locale::default().in_language(translation())
}

fn words(translation: &'static Translation) -> Words {
    Words(Box::leak(Box::new(move |key: &str, field| {
        translation.word(key, field)
    })))
}

/// The figures of the world, in the words of the language.
pub fn catalogue() -> &'static Catalogue {
    match translation() {
        None => Catalogue::built_in(),
        Some(of) => CATALOGUE.get_or_init(|| Catalogue::translated(words(of))),
    }
}

/// Crops and uses of compost, in the words of the language.
pub fn spreading() -> &'static Spreading {
    match translation() {
        None => Spreading::built_in(),
        Some(of) => SPREADING.get_or_init(|| Spreading::built_in().translated(words(of))),
    }
}
