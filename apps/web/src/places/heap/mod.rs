//! One heap: what is in it, what to log, what will become of it, what is told of it, what was done.

mod ahead;
mod content;
mod log;
pub(super) mod read;
mod told;

use std::cell::Cell;

use heapwright_journal::EventId;
use heapwright_texts::messages::heap_place as texts;
use heapwright_wording::{self as wording, Word};
use leptos::prelude::*;

use crate::keeping::{Status, device};
use crate::language;
use crate::parts::breath::one_by_one;
use crate::parts::entry::entry_row;
use crate::parts::live::{button, live, live_if, live_text};
use crate::places::heaps::doings;
use crate::places::paper;
use crate::shell::{Hub, Route, entitle, hub};

/// Entries of the history that are shown at first, and with each tap more.
const SHOWN_AT_ONCE: usize = 12;

/// A form that another place leads to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    /// To log a feed.
    Feed,
    /// To log a harvest.
    Harvest,
    /// To write a test down.
    Test,
}

thread_local! {
    static ASKED: Cell<Option<(EventId, Asked)>> = const { Cell::new(None) };
}

/// The place of this heap is about to be opened for a form.
pub fn ask_for(heap: EventId, form: Asked) {
    ASKED.set(Some((heap, form)));
}

/// The form that this heap was opened for, once, if it is one of these.
fn asked_for(heap: EventId, forms: &[Asked]) -> Option<Asked> {
    let (of, form) = ASKED.get()?;
    let is_it = of == heap && forms.contains(&form);
    if is_it {
        ASKED.set(None);
    }
    is_it.then_some(form)
}

/// What a heap is called; as the page of all heaps while that is not known.
fn name_of(hub: Hub, id: EventId) -> String {
    hub.keeper.with(|journal| {
        let heap = journal.state.heap(id).and_then(|heap| heap.name());
        heap.unwrap_or(wording::page::heaps(language::locale()))
            .to_owned()
    })
}

/// While a heap is looked at, the window has its name.
pub fn keep_entitled(hub: Hub, route: RwSignal<Route>) {
    Effect::new(move |_| {
        if let Route::Heap(id) = route.get() {
            entitle(&name_of(hub, id));
        }
    });
}

/// The place.
#[component]
pub fn HeapPlace(
    /// Which heap.
    id: EventId,
) -> impl IntoView {
    let hub = hub();
    // The forms stay as they are while entries come in: only these decide whether they are there.
    let is_there = Memo::new(move |_| {
        hub.keeper.with(|journal| {
            let heap = journal.state.heap(id).and_then(|heap| heap.name());
            heap.is_some() || (journal.status == Status::Opening && heap.is_none())
        })
    });
    let is_open = Memo::new(move |_| hub.keeper.with(|journal| journal.status != Status::Opening));
    let whole = move || match (is_open.get(), is_there.get()) {
        (false, _) => {
            view! { <p role="status">{wording::page::opening(language::locale())}</p> }.into_any()
        }
        (true, false) => {
            view! { <p>{wording::page::no_such_heap(language::locale())}</p> }.into_any()
        }
        (true, true) => one_by_one(vec![
            Box::new(move || doings_of(hub, id)),
            Box::new(move || log::section(hub, id)),
            Box::new(move || content::section(hub, id)),
            Box::new(move || ahead::section(hub, id)),
            Box::new(move || told::sections(hub, id)),
            Box::new(move || paper::of_heap(hub, id)),
            Box::new(move || history(hub, id)),
        ]),
    };
    view! {
        <div class="place place-wide">
            <p><a class="link" href=Route::Heaps.address()>{texts::all_heaps(language::locale())}</a></p>
            <h1 id="title" tabindex="-1">{live_text(move || name_of(hub, id))}</h1>
            {live(whole)}
        </div>
    }
}

fn doings_of(hub: Hub, id: EventId) -> AnyView {
    let told = move || {
        let locale = hub.page.with(|page| page.locale());
        hub.keeper.with(|journal| {
            let heap = journal.state.heap(id)?;
            let stage = heap.now().stage.word(locale);
            let rows = doings(heap, device::now(), locale);
            Some(
                view! { <div><dt>{texts::stage(locale)}</dt><dd>{stage}</dd></div>{rows} }
                    .into_any(),
            )
        })
    };
    view! { <dl class="doings">{live_if(told)}</dl> }.into_any()
}

fn history(hub: Hub, id: EventId) -> AnyView {
    let most = RwSignal::new(SHOWN_AT_ONCE);
    let rows = move || {
        let found = hub.keeper.with(|journal| {
            let events = journal.state.heap(id)?.history();
            let count = events.len();
            let ids: Vec<EventId> = events
                .rev()
                .take(most.get())
                .map(|event| event.id)
                .collect();
            Some((ids, count))
        });
        let (ids, count) = found?;
        let more = (count > ids.len()).then(|| {
            let count = u32::try_from(count).unwrap_or(u32::MAX).into();
            let word = texts::ShowMoreOf { count }.said(language::locale());
            button("", &word, move || {
                most.update(|most| *most += SHOWN_AT_ONCE);
            })
        });
        let rows = ids
            .into_iter()
            .map(|id| view! { <li>{entry_row(hub, id, true)}</li> }.into_any())
            .collect_view();
        Some(view! { <ul class="entries">{rows}</ul>{more} }.into_any())
    };
    view! {
        <section class="card" aria-labelledby="history-title">
            <h2 id="history-title">{texts::what_was_done(language::locale())}</h2>
            {live_if(rows)}
        </section>
    }
    .into_any()
}
