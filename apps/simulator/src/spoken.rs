//! The language of this worker: told once, before the first question, and kept to its end.

use std::sync::OnceLock;

use heapwright_catalogue::Catalogue;
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_wording::Spoken;

static SPOKEN: OnceLock<Spoken> = OnceLock::new();

/// Speaks another language from now on; texts that are not of this version leave English, which the
/// page has then told.
pub fn speak(tag: &str, pack: String, words: String) {
    if let Ok(spoken) = Spoken::read(tag, pack.leak(), words.leak()) {
        let _ = SPOKEN.set(spoken);
    }
}

fn spoken() -> &'static Spoken {
    SPOKEN.get_or_init(Spoken::english)
}

/// How to speak with the units that the page shows.
pub fn locale(us_units: bool) -> Locale {
    spoken().locale().with_units(if us_units {
        UnitSystem::UsCustomary
    } else {
        UnitSystem::Metric
    })
}

/// A question that this version of the worker does not understand, as a sentence.
pub fn unread<E>(_: E) -> String {
    heapwright_wording::ahead::question_unread(spoken().locale()).to_owned()
}

/// The figures of the world, in the words of the language.
pub fn catalogue() -> &'static Catalogue {
    spoken().catalogue()
}
