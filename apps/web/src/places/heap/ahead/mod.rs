//! Looking ahead: what will become of the heap, computed by a worker beside the page.

mod inside;
mod over_time;
mod side_by_side;

use std::sync::Arc;

use heapwright_journal::EventId;
use heapwright_texts::messages::heap_place as texts;
use heapwright_wire::{AheadQuestion, AheadShown, OptionShown, TableShown};
use heapwright_wording::ahead as words;
use leptos::prelude::*;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

use crate::keeping::{Status, device};
use crate::language;
use crate::parts::breath::{a_moment_later, one_by_one};
use crate::parts::choices::choices;
use crate::parts::live::{button, live, live_if, live_text};
use crate::parts::picture::width_px;
use crate::parts::table::{fold, table_view};
use crate::places::lines::{self, Bearing};
use crate::shell::Hub;

/// How far the worker is.
#[derive(Clone, Debug, PartialEq)]
enum Standing {
    /// Nothing is asked.
    Idle,
    /// So many runs of so many are done.
    Running(u32, u32),
    /// All is there.
    Whole,
    /// The keeper stopped it.
    Stopped,
    /// It did not work; why, in a sentence.
    Failed(String),
}

/// What the parts of the section share.
#[derive(Clone, Copy)]
struct Look {
    hub: Hub,
    shown: RwSignal<Option<Arc<AheadShown>>>,
    /// What is shown and which turning of it, at the moment of this part.
    seen: Signal<Seen>,
    standing: RwSignal<Standing>,
    turn: RwSignal<usize>,
    water: RwSignal<bool>,
    /// What the worker's words go to.
    heard: StoredValue<Option<Hear>, LocalStorage>,
}

/// What the worker calls: a word and two values.
type Hear = Closure<dyn FnMut(JsValue, JsValue, JsValue)>;

/// What is shown, and which of the turnings is looked at.
type Seen = (Option<Arc<AheadShown>>, usize);

impl Look {
    /// The same for a part that is drawn a moment later.
    fn later(self) -> Self {
        Self {
            seen: a_moment_later(self.seen),
            ..self
        }
    }

    /// What is shown of the way to go on that is looked at.
    fn option<T>(self, part: impl FnOnce(&AheadShown, &OptionShown) -> T) -> Option<T> {
        let (shown, turn) = self.seen.get();
        let shown = shown?;
        let which = shown.by_turn.get(turn).copied().unwrap_or(0);
        // Its own run may not be there yet: until then the heap is left alone.
        let option = shown.options.get(which).or(shown.options.first())?;
        Some(part(&shown, option))
    }

    fn ask(self, heap: EventId, journal: String) {
        let question = AheadQuestion {
            journal,
            heap: heap.to_string(),
            now: device::now().to_string(),
            turn: self.turn.get_untracked(),
            water: self.water.get_untracked(),
            us_units: untrack(|| self.hub.page.with(|page| page.us_units)),
            width_px: width_px(),
        };
        let Ok(text) = serde_json::to_string(&question) else {
            return;
        };
        let hear = Hear::new(move |word: JsValue, one: JsValue, other: JsValue| {
            self.hear(&word.as_string().unwrap_or_default(), &one, &other);
        });
        let asked = device::simulate(&text, hear.as_ref().unchecked_ref());
        self.heard.set_value(Some(hear));
        self.standing.set(match asked {
            true => Standing::Running(0, 1),
            false => Standing::Failed(words::no_simulator(language::locale()).to_owned()),
        });
    }

    fn hear(self, word: &str, one: &JsValue, other: &JsValue) {
        let text = || one.as_string().unwrap_or_default();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some hundred runs
        let count = |value: &JsValue| value.as_f64().unwrap_or(0.0) as u32;
        match word {
            "progress" => self
                .standing
                .set(Standing::Running(count(one), count(other))),
            "shown" => {
                if let Ok(mut shown) = serde_json::from_str::<AheadShown>(&text()) {
                    if let Some(before) = self.shown.get_untracked() {
                        shown.keep_frames(&before);
                    }
                    self.shown.set(Some(Arc::new(shown)));
                }
            }
            "whole" => self.standing.set(Standing::Whole),
            "unfetched" => self.fail(words::simulator_unfetched(language::locale())),
            "broken" => self.fail(words::no_simulator(language::locale())),
            _ if text().is_empty() => self.fail(words::simulation_broke(language::locale())),
            _ => self.fail(&text()),
        }
    }

    fn fail(self, why: &str) {
        device::stop();
        self.shown.set(None);
        self.standing.set(Standing::Failed(why.to_owned()));
    }
}

/// The sections.
pub fn section(hub: Hub, id: EventId) -> AnyView {
    let (shown, turn) = (RwSignal::new(None), RwSignal::new(0));
    let look = Look {
        hub,
        shown,
        seen: Signal::derive(move || (shown.get(), turn.get())),
        standing: RwSignal::new(Standing::Idle),
        turn,
        water: RwSignal::new(false),
        heard: StoredValue::new_local(None),
    };
    // Drawn one after another: all at once would leave a slow phone deaf.
    let charted = look.later();
    let compared = charted.later();
    let cut_open = compared.later();
    on_cleanup(device::stop);
    let was_fed = Memo::new(move |_| {
        hub.keeper.with(|journal| {
            let heap = journal.state.heap(id);
            journal.status != Status::Opening && heap.is_some_and(|heap| heap.now().feeds > 0)
        })
    });
    let written = lines::written(
        hub,
        Bearing::OnTheFuture(id),
        Box::new(move || was_fed.get()),
    );
    let us_units = Memo::new(move |_| hub.page.with(|page| page.us_units));
    Effect::new(move |_| {
        us_units.track();
        look.water.track();
        if !was_fed.get() {
            device::stop();
            look.shown.set(None);
            look.standing.set(Standing::Idle);
            return;
        }
        let journal = written.text.get();
        if !journal.is_empty() {
            look.ask(id, journal);
        } else if written.is_writing.get() {
            look.standing.set(Standing::Running(0, 1));
        }
    });
    let is_there = Memo::new(move |_| look.shown.with(Option::is_some));
    let can_be_cut = Memo::new(move |_| cut_open.seen.with(|(shown, _)| shown.is_some()));
    let nothing = move || {
        if was_fed.get() {
            ""
        } else {
            words::nothing_ahead(language::locale())
        }
        .to_owned()
    };
    let ahead = move || {
        is_there.get().then(|| {
            one_by_one(vec![
                Box::new(move || told(look)),
                Box::new(move || over_time::figure(charted)),
                Box::new(move || side_by_side::switches(look)),
                Box::new(move || side_by_side::table(compared)),
                Box::new(move || assumed(compared)),
            ])
        })
    };
    view! {
        <section class="card ahead" aria-labelledby="ahead-title">
            <h2 id="ahead-title" tabindex="-1">{words::looking_ahead(language::locale())}</h2>
            <p class="note-plain">{live_text(nothing)}</p>
            {standing(look, move || look.ask(id, written.text.get_untracked()))}
            {live_if(ahead)}
        </section>
        {live_if(move || can_be_cut.get().then(|| inside::section(cut_open)))}
    }
    .into_any()
}

/// How far it is, and a button to stop it or to go on.
fn standing(look: Look, again: impl Fn() + Copy + Send + 'static) -> AnyView {
    let stopped = move || {
        if look.shown.with_untracked(Option::is_some) {
            words::stopped(language::locale())
        } else {
            words::stopped_early(language::locale())
        }
    };
    // What is told aloud changes seldom; the bar moves with every run.
    let state = Memo::new(move |_| match look.standing.get() {
        Standing::Running(..) => (true, false, words::computing(language::locale()).to_owned()),
        Standing::Stopped => (false, true, stopped().to_owned()),
        Standing::Failed(why) => (false, true, why),
        Standing::Idle | Standing::Whole => (false, false, String::new()),
    });
    let stop = move || {
        device::stop();
        look.standing.set(Standing::Stopped);
        crate::parts::focus("ahead-title");
    };
    let start = move || {
        again();
        crate::parts::focus("ahead-title");
    };
    let bar = move || match look.standing.get() {
        Standing::Running(done, all) => (done, all),
        _ => (0, 1),
    };
    let acts = move || {
        let (is_running, can_start, _) = state.get();
        if is_running {
            return Some(
                view! {
                    <div class="running">
                        <progress
                            aria-label=words::computing(language::locale())
                            max=move || bar().1.to_string()
                            prop:value=move || f64::from(bar().0)
                        ></progress>
                        {button("", texts::stop(language::locale()), stop)}
                    </div>
                }
                .into_any(),
            );
        }
        can_start.then(|| button("", texts::compute_again(language::locale()), start))
    };
    view! {
        <div class="standing">
            <p class="standing-told" role="status">{live_text(move || state.get().2)}</p>
            {live_if(acts)}
        </div>
    }
    .into_any()
}

/// What comes of the way to go on that is looked at, in sentences.
fn told(look: Look) -> AnyView {
    let sentences = move || {
        look.option(|shown, option| {
            // Before all that follows from what was computed.
            let gainsaid = (!shown.gainsaid.is_empty())
                .then(|| view! { <p class="note" role="note">{shown.gainsaid.clone()}</p> });
            let lines = option
                .sentences
                .iter()
                .map(|line| view! { <li>{line.clone()}</li> })
                .collect_view();
            view! {
                {gainsaid}
                <h3 class="option-name">{option.name.clone()}</h3>
                <ul class="told-lines">{lines}</ul>
            }
            .into_any()
        })
    };
    view! { <div class="ahead-told">{live_if(sentences)}</div> }.into_any()
}

/// Which weather was taken, what was assumed, what the probes showed.
fn assumed(look: Look) -> AnyView {
    let body = move || {
        look.option(|shown, _| {
            let notices = shown
                .notices
                .iter()
                .map(|line| view! { <li>{line.clone()}</li> })
                .collect_view();
            let read = (!shown.read.rows.is_empty())
                .then(|| fold(texts::your_readings(language::locale()), shown.read.clone()));
            view! {
                <p class="hint">{shown.weather.clone()}</p>
                {(!shown.readings.is_empty()).then(|| view! { <p>{shown.readings.clone()}</p> })}
                {read}
                {(!shown.notices.is_empty()).then(|| view! {
                    <details class="caution">
                        <summary>{texts::what_was_assumed(language::locale())}</summary>
                        <ul>{notices}</ul>
                    </details>
                })}
                <p class="hint">{heapwright_wording::simulation_limits(language::locale())}</p>
            }
            .into_any()
        })
    };
    live_if(body)
}

/// The table of a picture, made only while it is open.
fn live_table(
    name: &'static str,
    table: impl Fn() -> Option<TableShown> + Copy + Send + Sync + 'static,
) -> AnyView {
    let open = RwSignal::new(false);
    let toggled = move |event: web_sys::Event| {
        let details = event
            .target()
            .and_then(|target| target.dyn_into::<web_sys::HtmlDetailsElement>().ok());
        if let Some(details) = details {
            open.set(details.open());
        }
    };
    let body = move || {
        let shown = if open.get() { table() } else { None };
        shown.map(|table| table_view(name, table))
    };
    view! {
        <details class="more" on:toggle=toggled>
            <summary>{name}</summary>
            {live(move || body().unwrap_or_else(crate::parts::live::nothing))}
        </details>
    }
    .into_any()
}
