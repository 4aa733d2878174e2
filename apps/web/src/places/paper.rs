//! Pages to print that are made from the journal: beside a heap, and the record.

use heapwright_journal::EventId;
use heapwright_wire::PaperQuestion;
use heapwright_wording::{self as wording, paper as words};
use leptos::prelude::*;

use super::lines::{self, Bearing};
use crate::keeping::device;
use crate::language;
use crate::parts::press::{Wanted, press_button};
use crate::shell::Hub;

/// The card of a heap.
pub fn of_heap(hub: Hub, heap: EventId) -> AnyView {
    card(
        words::on_paper_heap(language::locale()),
        press_button(hub, words::press_bin(language::locale()), move || {
            wanted(hub, Some(heap))
        }),
    )
}

/// The card of the logbook.
pub fn of_all(hub: Hub) -> AnyView {
    card(
        words::on_paper_all(language::locale()),
        press_button(hub, words::press_season(language::locale()), move || {
            wanted(hub, None)
        }),
    )
}

fn card(hint: &'static str, inside: AnyView) -> AnyView {
    view! {
        <section class="card on-paper" aria-labelledby="paper-title">
            <h2 id="paper-title">{words::on_paper(language::locale())}</h2>
            <p class="hint">{hint}</p>
            {inside}
        </section>
    }
    .into_any()
}

fn wanted(hub: Hub, heap: Option<EventId>) -> Option<Wanted> {
    let us_units = untrack(|| hub.page.with(|page| page.us_units));
    let now = device::now();
    let (question, name) = hub.keeper.peek(|journal| {
        let name = heap.map_or(words::season_title(language::locale()), |heap| {
            wording::heap_name(&journal.state, heap, language::locale())
        });
        let question = PaperQuestion {
            journal: lines::at_once(&lines::that_bear(&journal.state, Bearing::OnAnything)),
            heap: heap.map(|heap| heap.to_string()).unwrap_or_default(),
            now: now.to_string(),
            us_units,
        };
        (question, name.to_owned())
    });
    Some(Wanted {
        name: format!("{name} {}", now.local().date()),
        question: serde_json::to_string(&question).ok()?,
        document: String::new(),
    })
}
