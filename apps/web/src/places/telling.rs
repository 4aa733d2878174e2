//! What the worker beside the page tells at once, asked anew whenever the journal changes.

use std::sync::Arc;

use heapwright_journal::EventId;
use heapwright_wire::ToldQuestion;
use heapwright_wording::{ahead as ahead_words, told as words};
use leptos::prelude::*;
use serde::de::DeserializeOwned;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::lines;
use crate::keeping::{Status, device};
use crate::parts::live::live_text;
use crate::shell::Hub;

/// What the worker calls: a word and a value.
type Hear = Closure<dyn FnMut(JsValue, JsValue)>;

/// What is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// A heap: its heat, ripeness and nutrients.
    Heap(EventId),
    /// What all heaps kept out of the bin.
    KeptOut,
    /// What all heaps need today.
    Today,
}

/// What was told, and why nothing was.
pub struct Telling<T: Send + Sync + 'static> {
    /// What was told last.
    pub told: RwSignal<Option<Arc<T>>>,
    why: RwSignal<String>,
}

impl<T: Send + Sync + 'static> Clone for Telling<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for Telling<T> {}

impl<T: DeserializeOwned + Send + Sync + 'static> Telling<T> {
    /// Asks for as long as the place is looked at and `wanted` is true.
    pub fn about(hub: Hub, about: About, wanted: impl Fn() -> bool + Send + 'static) -> Self {
        let telling = Self {
            told: RwSignal::new(None),
            why: RwSignal::new(String::new()),
        };
        let heard = StoredValue::new_local(Some(telling.hear()));
        asked_anew(hub, about, Box::new(wanted), heard, telling.why);
        telling
    }

    fn hear(self) -> Hear {
        Hear::new(move |word: JsValue, value: JsValue| {
            let text = value.as_string().unwrap_or_default();
            let why = match word.as_string().unwrap_or_default().as_str() {
                "told" => match serde_json::from_str(&text) {
                    Ok(told) => {
                        self.told.set(Some(Arc::new(told)));
                        String::new()
                    }
                    Err(_) => words::NOT_TOLD.to_owned(),
                },
                "unfetched" => ahead_words::SIMULATOR_UNFETCHED.to_owned(),
                "broken" => ahead_words::NO_SIMULATOR.to_owned(),
                _ if text.is_empty() => words::NOT_TOLD.to_owned(),
                _ => text,
            };
            self.why.set(why);
        })
    }

    /// A part of what was told; `None` while nothing was.
    pub fn part<P>(self, part: impl FnOnce(&T) -> P) -> Option<P> {
        self.told.with(|told| told.as_deref().map(part))
    }

    /// Why nothing is told, or that it is on its way.
    pub fn standing(self) -> AnyView {
        let why = self.why;
        view! { <p class="note-plain" role="status">{live_text(move || why.get())}</p> }.into_any()
    }
}

fn asked_anew(
    hub: Hub,
    about: About,
    wanted: Box<dyn Fn() -> bool + Send>,
    heard: StoredValue<Option<Hear>, LocalStorage>,
    why: RwSignal<String>,
) {
    let ask = move |text: &str| {
        heard.with_value(|hear| {
            hear.as_ref()
                .is_some_and(|hear| device::ask(text, hear.as_ref().unchecked_ref()))
        })
    };
    // `None` while the journal is being read.
    let journal = Memo::new(move |_| {
        hub.keeper
            .with(|journal| (journal.status != Status::Opening).then(|| lines::all(&journal.state)))
    });
    let us_units = Memo::new(move |_| hub.page.with(|page| page.us_units));
    Effect::new(move |_| {
        let us_units = us_units.get();
        if !wanted() {
            return;
        }
        let Some(journal) = journal.get() else {
            return;
        };
        let question = ToldQuestion {
            journal,
            heap: match about {
                About::Heap(heap) => heap.to_string(),
                About::KeptOut | About::Today => String::new(),
            },
            today: about == About::Today,
            now: device::now().to_string(),
            us_units,
        };
        let Ok(text) = serde_json::to_string(&question) else {
            return;
        };
        why.set(match ask(&text) {
            true => words::TELLING.to_owned(),
            false => ahead_words::NO_SIMULATOR.to_owned(),
        });
    });
    on_cleanup(move || {
        ask("");
    });
}
