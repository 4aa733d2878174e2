//! What the worker beside the page tells at once, asked anew whenever the journal changes, and as time
//! goes by.

use std::sync::Arc;
use std::time::Duration;

use heapwright_journal::{EventId, Moment};
use heapwright_wire::ToldQuestion;
use heapwright_wording::{ahead as ahead_words, told as words};
use leptos::prelude::*;
use serde::de::DeserializeOwned;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::lines::{self, Bearing, Written};
use crate::keeping::device;
use crate::language;
use crate::parts::breath::a_moment_later;
use crate::parts::live::live_text;
use crate::parts::sight::Sight;
use crate::shell::Hub;

/// What the worker calls: a word and a value.
type Hear = Closure<dyn FnMut(JsValue, JsValue)>;

/// What was told holds for so long: what is due at an hour is seen within the next [ms].
const HOUR_MS: u64 = 3_600_000;
/// How often the clock is looked at, which does not wake a page that sleeps.
const LOOK: Duration = Duration::from_secs(60);

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
    /// What was told last of the journal that is open; `None` as well when nothing can be told any more.
    pub told: RwSignal<Option<Arc<T>>>,
    /// The same at the moment of the part that shows it.
    seen: Signal<Option<Arc<T>>>,
    /// How many lines the journal had of which it was told.
    pub lines: RwSignal<usize>,
    /// The time for which it is asked.
    pub now: RwSignal<Moment>,
    asked: Asked,
}

/// How a question stands.
#[derive(Clone, Copy)]
struct Asked {
    hub: Hub,
    why: RwSignal<String>,
    /// Which of the journals it is about, and how many lines that has.
    of: StoredValue<(u32, usize)>,
    /// What is asked with.
    written: Written,
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
        let told = RwSignal::new(None);
        let sight = Sight::of_the_page();
        // Nobody reads in a tab that is not looked at.
        let is_wanted = move || wanted() && sight.is_there();
        let telling = Self {
            told,
            seen: told.into(),
            lines: RwSignal::new(0),
            now: as_time_goes(),
            asked: Asked {
                hub,
                why: RwSignal::new(String::new()),
                of: StoredValue::new((hub.keeper.opened(), 0)),
                written: lines::written(hub, Bearing::OnAnything, Box::new(is_wanted)),
            },
        };
        let opened = Memo::new(move |_| hub.keeper.with(|_| hub.keeper.opened()));
        Effect::new(move |last: Option<u32>| {
            let opened = opened.get();
            // What was told of one garden is not shown as another's.
            if last.is_some_and(|last| last != opened) {
                telling.told.set(None);
            }
            opened
        });
        let heard = StoredValue::new_local(Some(telling.hear()));
        telling.asked.anew(about, heard, telling.now, sight);
        telling
    }

    /// The same for a part that is drawn a moment later.
    pub fn later(self) -> Self {
        Self {
            seen: a_moment_later(self.seen),
            ..self
        }
    }

    fn hear(self) -> Hear {
        let Asked { hub, why, of, .. } = self.asked;
        Hear::new(move |word: JsValue, value: JsValue| {
            let (opened, lines) = of.get_value();
            if hub.keeper.is_open(opened).is_err() {
                return;
            }
            let text = value.as_string().unwrap_or_default();
            let fault = match word.as_string().unwrap_or_default().as_str() {
                "told" => match serde_json::from_str(&text) {
                    Ok(told) => {
                        self.lines.set(lines);
                        self.told.set(Some(Arc::new(told)));
                        why.set(String::new());
                        return;
                    }
                    Err(_) => words::not_told(language::locale()).to_owned(),
                },
                "unfetched" => ahead_words::simulator_unfetched(language::locale()).to_owned(),
                "broken" => {
                    // The next question gets another worker.
                    device::ask("", JsValue::UNDEFINED.unchecked_ref());
                    ahead_words::no_simulator(language::locale()).to_owned()
                }
                _ if text.is_empty() => words::not_told(language::locale()).to_owned(),
                _ => text,
            };
            self.told.set(None);
            why.set(fault);
        })
    }

    /// True while nothing is told yet and something is on its way.
    pub fn is_awaited(self) -> bool {
        let is_on_its_way = self
            .asked
            .why
            .with(|why| why.is_empty() || why == words::telling(language::locale()));
        is_on_its_way && self.told.with(Option::is_none)
    }

    /// A part of what was told; `None` while nothing was.
    pub fn part<P>(self, part: impl FnOnce(&T) -> P) -> Option<P> {
        self.seen.with(|told| told.as_deref().map(part))
    }

    /// Why nothing is told, or that it is on its way.
    pub fn standing(self) -> AnyView {
        let Asked { why, written, .. } = self.asked;
        let told = move || {
            let why = why.get();
            if why.is_empty() && written.is_writing.get() {
                words::telling(language::locale()).to_owned()
            } else {
                why
            }
        };
        view! { <p class="note-plain" role="status">{live_text(told)}</p> }.into_any()
    }
}

impl Asked {
    fn anew(
        self,
        about: About,
        heard: StoredValue<Option<Hear>, LocalStorage>,
        now: RwSignal<Moment>,
        sight: Sight,
    ) {
        let Self {
            hub,
            why,
            of,
            written,
        } = self;
        let ask = move |text: &str| {
            heard.with_value(|hear| {
                hear.as_ref()
                    .is_some_and(|hear| device::ask(text, hear.as_ref().unchecked_ref()))
            })
        };
        let us_units = Memo::new(move |_| hub.page.with(|page| page.us_units));
        Effect::new(move |_| {
            let us_units = us_units.get();
            now.track();
            let journal = written.text.get();
            if !sight.is_there() {
                return;
            }
            if journal.is_empty() {
                // An answer that is still on its way tells of what is not wanted any more.
                ask("");
                why.set(String::new());
                return;
            }
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
            of.set_value(written.of.get_value());
            why.set(match ask(&text) {
                true => words::telling(language::locale()).to_owned(),
                false => ahead_words::no_simulator(language::locale()).to_owned(),
            });
        });
        on_cleanup(move || {
            ask("");
        });
    }
}

/// What the clock says: anew with another day and after an hour, also when the page comes back from
/// sleep.
fn as_time_goes() -> RwSignal<Moment> {
    let now = RwSignal::new(device::now());
    let look = move || {
        let (last, next) = (now.get_untracked(), device::now());
        // A clock may be set back as well.
        let is_past = next.instant_ms.abs_diff(last.instant_ms) >= HOUR_MS;
        if is_past || next.local().date() != last.local().date() {
            now.set(next);
        }
    };
    let woken = ["visibilitychange", "pageshow"]
        .map(|event| window_event_listener_untyped(event, move |_| look()));
    let timer = set_interval_with_handle(look, LOOK).ok();
    on_cleanup(move || {
        for listener in woken {
            listener.remove();
        }
        if let Some(timer) = timer {
            timer.clear();
        }
    });
    now
}
