//! A button that makes a page to print, and the line below it that tells how it went.

use heapwright_wording::{ahead as ahead_words, paper as words};
use leptos::prelude::*;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

use crate::keeping::device;
use crate::language;
use crate::parts::live::{button, live_text};
use crate::shell::Hub;

/// What is to be made: the name of the file, and either a question for the worker or a document as
/// text.
pub struct Wanted {
    /// Name of the file, without its ending.
    pub name: String,
    /// The question; empty when the document is there.
    pub question: String,
    /// The document; empty when it is to be made from the journal.
    pub document: String,
}

/// The button; `wanted` is asked when it is tapped.
pub fn press_button(
    hub: Hub,
    word: &'static str,
    wanted: impl Fn() -> Option<Wanted> + 'static,
) -> AnyView {
    one_kind(hub, word, Box::new(wanted))
}

fn one_kind(hub: Hub, word: &'static str, wanted: Box<dyn Fn() -> Option<Wanted>>) -> AnyView {
    let told = RwSignal::new(String::new());
    let heard = StoredValue::new_local(Closure::<dyn FnMut(JsValue, JsValue)>::new(
        move |what: JsValue, sentence: JsValue| {
            let sentence = sentence.as_string().unwrap_or_default();
            // The place may have been left meanwhile.
            told.try_set(match what.as_string().unwrap_or_default().as_str() {
                "pressed" => words::pressed(language::locale()).to_owned(),
                "unfetched" => ahead_words::simulator_unfetched(language::locale()).to_owned(),
                "unpressed" => words::not_pressed_for(&sentence, language::locale()),
                _ if sentence.is_empty() => words::not_pressed(language::locale()).to_owned(),
                _ => sentence,
            });
        },
    ));
    let tap = move || {
        let letter = untrack(|| hub.page.with(|page| page.us_units));
        let is_asked = wanted().is_some_and(|wanted| {
            heard.with_value(|hear| {
                device::press(
                    &format!("{}.pdf", wanted.name.replace(['/', '\\', ':'], "-")),
                    &wanted.question,
                    &wanted.document,
                    letter,
                    hear.as_ref().unchecked_ref(),
                )
            })
        });
        told.set(if is_asked {
            words::pressing(language::locale()).to_owned()
        } else {
            words::not_pressed(language::locale()).to_owned()
        });
    };
    view! {
        <div class="press">
            {button("", word, tap)}
            <p class="note-plain" role="status">{live_text(move || told.get())}</p>
        </div>
    }
    .into_any()
}
