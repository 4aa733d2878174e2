//! Fields of the forms that log something. What is typed stays in the field until it is kept.
//!
//! They are read from the page when the form is sent: nothing else needs to know what is in them.

use std::pin::Pin;
use std::time::Duration;

use heapwright_journal::{Content, Moment};
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::forms as texts;
use heapwright_wording::{self as wording, Word};
use leptos::prelude::*;

use super::live::{button, live_text, spawn};
use crate::keeping::device;
use crate::language;
use crate::shell::Hub;

/// The words of all that can be chosen.
pub fn words<W: Word>() -> Vec<&'static str> {
    let locale = language::locale();
    W::choices()
        .iter()
        .map(|choice| choice.word(locale))
        .collect()
}

/// What is chosen in a field of words, if anything is.
pub fn chosen<W: Word>(id: &str) -> Option<W> {
    let index: usize = device::value(id).parse().ok()?;
    W::choices().get(index).copied()
}

/// All that is ticked under a name.
pub fn ticked<W: Word>(name: &str) -> Vec<W> {
    let all = device::ticked(name);
    all.iter()
        .filter_map(|index| W::choices().get(*index).copied())
        .collect()
}

/// A number that was typed, with either decimal mark; `None` when the field is empty.
pub fn number(id: &str) -> Result<Option<f64>, String> {
    number_in(&device::value(id))
}

/// A number as it was typed, with either decimal mark; `None` when nothing was.
pub fn number_in(typed: &str) -> Result<Option<f64>, String> {
    let typed = typed.trim().replace(',', ".").replace('\u{2212}', "-");
    if typed.is_empty() {
        return Ok(None);
    }
    typed
        .parse::<f64>()
        .ok()
        .filter(|number| number.is_finite())
        .map(Some)
        .ok_or_else(|| wording::page::no_number(language::locale()).to_owned())
}

/// A length as it is typed: in centimetres, or inches.
pub fn metres(length: f64, locale: Locale) -> f64 {
    match locale.units {
        UnitSystem::Metric => length / 100.0,
        // International inch: 0.0254 m exactly.
        UnitSystem::UsCustomary => length * 0.0254,
    }
}

/// A field for a short text or a number.
pub fn text(id: &'static str, label: String, hint: &'static str, is_number: bool) -> AnyView {
    let hint_id = format!("{id}-hint");
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <input
                id=id
                type="text"
                inputmode=if is_number { "decimal" } else { "text" }
                autocomplete="off"
                aria-describedby=hint_id.clone()
            />
            <p class="hint" id=hint_id>{hint}</p>
        </div>
    }
    .into_any()
}

/// A choice of one word, or of none.
pub fn select(
    id: &'static str,
    label: &'static str,
    none: Option<&'static str>,
    words: Vec<&'static str>,
) -> AnyView {
    let options = words
        .into_iter()
        .enumerate()
        .map(|(index, word)| view! { <option value=index.to_string()>{word}</option> })
        .collect_view();
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <select id=id>
                {none.map(|none| view! { <option value="">{none}</option> })}
                {options}
            </select>
        </div>
    }
    .into_any()
}

/// Words to tick: any number of them, or one when `one`.
pub fn chips(
    name: &'static str,
    legend: &'static str,
    one: bool,
    words: Vec<&'static str>,
) -> AnyView {
    let chips = words
        .into_iter()
        .enumerate()
        .map(|(index, word)| {
            view! {
                <label class="chip">
                    <input
                        id=format!("{name}-{index}")
                        type=if one { "radio" } else { "checkbox" }
                        name=name
                        value=index.to_string()
                    />
                    <span>{word}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="chips">
            <legend>{legend}</legend>
            {chips}
        </fieldset>
    }
    .into_any()
}

/// A field for when it was; empty for now.
pub fn when(id: &'static str) -> AnyView {
    let hint_id = format!("{id}-hint");
    view! {
        <div class="field">
            <label for=id>{texts::when(language::locale())}</label>
            <input id=id type="datetime-local" aria-describedby=hint_id.clone()/>
            <p class="hint" id=hint_id>{texts::now_if_empty(language::locale())}</p>
        </div>
    }
    .into_any()
}

/// When it was; `None` for now.
pub fn moment(id: &str) -> Result<Option<Moment>, String> {
    let typed = device::value(id);
    if typed.is_empty() {
        return Ok(None);
    }
    device::at(&typed).map(Some).ok_or_else(|| {
        let locale = language::locale();
        // The field has years first, as many digits as they need.
        let year = typed.split('-').next().and_then(|year| year.parse().ok());
        year.map_or_else(
            || wording::page::no_time(locale).to_owned(),
            |year| wording::year_refusal(year, locale),
        )
    })
}

/// What is sent: what was done, and when.
pub type Entry = Result<(Content, Option<Moment>), String>;

/// The button that logs, and what is wrong if it cannot. While one entry is on its way no other is
/// sent.
pub fn send(
    hub: Hub,
    label: &'static str,
    entry: impl Fn() -> Entry + 'static,
    done: impl Fn() + Copy + 'static,
) -> AnyView {
    send_as("main-act", hub, label, entry, done)
}

/// The same for one of several that a form logs, none of which is its main action.
pub fn send_as(
    class: &'static str,
    hub: Hub,
    label: &'static str,
    entry: impl Fn() -> Entry + 'static,
    done: impl Fn() + Copy + 'static,
) -> AnyView {
    let sender = Sender::new(hub);
    view! {
        {button(class, label, move || sender.send(entry(), done))}
        {sender.fault()}
    }
    .into_any()
}

/// Puts what is known into fields that are about to be shown.
pub fn fill(values: Vec<(&'static str, String)>) {
    // The fields are there with the next frame.
    request_animation_frame(move || {
        for (id, value) in values {
            set_value(id, &value);
        }
    });
}

/// Puts a text into a field, or chooses an option by it.
pub fn set_value(id: &str, value: &str) {
    if let Some(field) = document().get_element_by_id(id) {
        // Only a frozen object refuses, and no field is one.
        let _ = js_sys::Reflect::set(&field, &"value".into(), &value.into());
    }
}

/// The place of a word among its choices, as the options of [`select`] have it; empty for none.
pub fn option_of<W: Word + PartialEq>(word: Option<W>) -> String {
    word.and_then(|word| W::choices().iter().position(|choice| *choice == word))
        .map_or_else(String::new, |index| index.to_string())
}

/// So long a button that logs at one tap rests when it has: a second tap was meant for the first.
const REST: Duration = Duration::from_secs(2);

type Work = Pin<Box<dyn Future<Output = Result<(), String>>>>;

/// Sends entries, one at a time, and tells what went wrong.
#[derive(Clone, Copy)]
pub struct Sender {
    hub: Hub,
    fault: RwSignal<Option<String>>,
    busy: RwSignal<bool>,
}

impl Sender {
    /// Of a form.
    pub fn new(hub: Hub) -> Self {
        Self {
            hub,
            fault: RwSignal::new(None),
            busy: RwSignal::new(false),
        }
    }

    /// Logs it; `done` is called when it is kept.
    pub fn send(self, entry: Entry, done: impl Fn() + 'static) {
        self.send_one(entry, Box::new(done));
    }

    fn send_one(self, entry: Entry, done: Box<dyn Fn()>) {
        let work = async move {
            let (content, happened) = entry?;
            let locale = self.hub.page.with(|page| page.locale());
            self.hub
                .keeper
                .log(content, happened, locale)
                .await
                .map(drop)
        };
        self.run_one(Box::pin(work), done);
    }

    /// Does something that may fail with a sentence, unless something is being done.
    pub fn run(
        self,
        work: impl Future<Output = Result<(), String>> + 'static,
        done: impl Fn() + 'static,
    ) {
        self.run_one(Box::pin(work), Box::new(done));
    }

    fn run_one(self, work: Work, done: Box<dyn Fn()>) {
        if self.busy.get_untracked() {
            return;
        }
        self.busy.set(true);
        spawn(async move {
            let result = work.await;
            // The form may be gone by now.
            let _ = self.busy.try_set(false);
            let kept = result.is_ok();
            let _ = self.fault.try_set(result.err());
            if kept {
                done();
            }
        });
    }

    /// The same for a button that stays: it rests a while once it is kept.
    pub fn tap(self, content: Content, done: impl Fn() + 'static) {
        self.send(Ok((content, None)), move || {
            done();
            // The button may be gone by then.
            let _ = self.busy.try_set(true);
            let rested = move || {
                let _ = self.busy.try_set(false);
            };
            set_timeout(rested, REST);
        });
    }

    /// True while one entry is on its way, and while the button rests.
    pub fn is_busy(self) -> bool {
        self.busy.get()
    }

    /// What went wrong.
    pub fn fault(self) -> AnyView {
        let told = move || self.fault.get().unwrap_or_default();
        view! { <p class="fault" role="alert">{live_text(told)}</p> }.into_any()
    }
}
