//! The language of the page: which texts `static/boot.js` fetched, and the catalogue in their words.
//!
//! It is settled before anything is shown and stays until the page is loaded anew, so every text can ask
//! for it without being told.

use std::sync::OnceLock;

use heapwright_catalogue::{Catalogue, Spreading};
use heapwright_texts::{Clock, Locale};
use heapwright_wording::Spoken;
use js_sys::Reflect;
use wasm_bindgen::JsValue;

use crate::keeping::device;

/// Where `static/boot.js` leaves the texts of another language.
const HANDED_OVER: &str = "heapwright_texts";

static SPOKEN: OnceLock<Spoken> = OnceLock::new();
static CLOCK: OnceLock<Clock> = OnceLock::new();

/// Takes the texts that were fetched, if any; called once, before the page is shown.
///
/// # Errors
///
/// When they are not of this version; a sentence. The page is then English.
pub fn settle() -> Result<(), String> {
    let _ = CLOCK.set(if device::halves() {
        Clock::Hours12
    } else {
        Clock::Hours24
    });
    let Some([tag, pack, words]) = handed_over() else {
        return Ok(());
    };
    let read = Spoken::read(&tag, pack.leak(), words.leak());
    read.map(|spoken| {
        let _ = SPOKEN.set(spoken);
    })
    .map_err(|error| error.to_string())
}

fn handed_over() -> Option<[String; 3]> {
    let texts = Reflect::get(&js_sys::global(), &JsValue::from_str(HANDED_OVER)).ok()?;
    let [tag, pack, words] = ["tag", "pack", "words"].map(|name| {
        let text = Reflect::get(&texts, &JsValue::from_str(name)).ok()?;
        text.as_string()
    });
    Some([tag?, pack?, words?])
}

fn spoken() -> &'static Spoken {
    SPOKEN.get_or_init(Spoken::english)
}

/// How the page speaks, for texts without figures: by the clock of the device.
/// [`crate::state::Page::locale`] has the keeper's units and clock.
#[must_use]
pub fn locale() -> Locale {
    let clock = CLOCK.get().copied().unwrap_or_default();
    spoken().locale().by_clock(clock)
}

/// The figures of the world, in the words of the language.
pub fn catalogue() -> &'static Catalogue {
    spoken().catalogue()
}

/// Crops and uses of compost, in the words of the language.
pub fn spreading() -> &'static Spreading {
    spoken().spreading()
}
