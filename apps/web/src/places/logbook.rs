//! All entries, latest first, by day; narrowed by heap and kind.

use heapwright_journal::{Content, Event, EventId, What};
use heapwright_state::{Place, concerns};
use heapwright_texts::messages::logbook_place as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::keeping::{Journal, Status};
use crate::language;
use crate::parts::entry::entry_row;
use crate::parts::live::{button, live};
use crate::places::{paper, transfer};
use crate::shell::{Hub, hub};

/// Entries that are shown at first, and with each tap more.
const SHOWN_AT_ONCE: usize = 50;

/// The place.
#[component]
pub fn Logbook() -> impl IntoView {
    let hub = hub();
    let heap = RwSignal::new(None::<EventId>);
    let kind = RwSignal::new(String::new());
    let most = RwSignal::new(SHOWN_AT_ONCE);
    let rows = move || {
        let most_now = most.get();
        let (days, count) = hub.keeper.with(|journal| {
            let ids = kind.with(|kind| found(journal, heap.get(), kind));
            (by_day(journal, &ids[..ids.len().min(most_now)]), ids.len())
        });
        let told = if hub.keeper.with(|journal| journal.status == Status::Opening) {
            wording::page::opening(language::locale()).to_owned()
        } else if count == 0 {
            wording::page::no_entries(language::locale()).to_owned()
        } else {
            texts::EntriesShown {
                count: f64::from(u32::try_from(count).unwrap_or(u32::MAX)),
            }
            .said(language::locale())
        };
        let days = days
            .into_iter()
            .map(|(day, ids)| day_card(hub, day, ids))
            .collect_view();
        let more = (count > most_now).then(|| {
            button("", texts::show_more(language::locale()), move || {
                most.update(|most| *most += SHOWN_AT_ONCE)
            })
        });
        view! {
            <p class="hint">{told}" "{wording::page::corrections_apart(language::locale())}</p>
            {days}
            {more}
        }
        .into_any()
    };
    let locale = language::locale();
    let kinds = wording::kind_names(language::locale())
        .into_iter()
        .map(|(kind, name)| view! { <option value=kind>{name}</option> })
        .collect_view();
    view! {
        <div class="place">
            <h1 id="title" tabindex="-1">{wording::page::logbook(language::locale())}</h1>
            <div class="sides sides-log">
                <div>
                    <div class="fields">
                        <div class="field">
                            <label for="log-heap">{texts::heap(locale)}</label>
                            <select id="log-heap" on:change=move |event| {
                                most.set(SHOWN_AT_ONCE);
                                heap.set(event_target_value(&event).parse().ok());
                            }>
                                <option value="">{texts::all_heaps(locale)}</option>
                                {live(move || heap_options(hub, heap.get_untracked()))}
                            </select>
                        </div>
                        <div class="field">
                            <label for="log-kind">{texts::what(locale)}</label>
                            <select id="log-kind" on:change=move |event| {
                                most.set(SHOWN_AT_ONCE);
                                kind.set(event_target_value(&event));
                            }>
                                <option value="">{texts::everything(locale)}</option>
                                {kinds}
                            </select>
                        </div>
                    </div>
                </div>
                <div class="place-days">{live(rows)}</div>
                <div>
                    {paper::of_all(hub)}
                    {transfer::warning(hub)}
                </div>
            </div>
        </div>
    }
}

fn day_card(hub: Hub, day: String, ids: Vec<EventId>) -> AnyView {
    let rows = ids
        .into_iter()
        .map(|id| view! { <li>{entry_row(hub, id, false)}</li> }.into_any())
        .collect_view();
    view! {
        <section class="card day">
            <h2>{day}</h2>
            <ul class="entries">{rows}</ul>
        </section>
    }
    .into_any()
}

fn heap_options(hub: Hub, chosen: Option<EventId>) -> AnyView {
    hub.keeper.with(|journal| {
        journal
            .state
            .heaps()
            .map(|heap| {
                let name = heap.name().unwrap_or_default().to_owned();
                let selected = chosen == Some(heap.id);
                view! { <option value=heap.id.to_string() prop:selected=selected>{name}</option> }
            })
            .collect_view()
            .into_any()
    })
}

/// The entries that are asked for, latest first.
fn found(journal: &Journal, heap: Option<EventId>, kind: &str) -> Vec<EventId> {
    let is_asked = |event: &Event| {
        let Some(content) = event.content() else {
            return heap.is_none() && kind.is_empty();
        };
        let of_kind = if kind.is_empty() {
            content.corrects().is_none()
        } else {
            content.kind() == kind
        };
        of_kind && heap.is_none_or(|heap| tells_of(journal, event.id, content, heap))
    };
    let mut places: Vec<Place> = journal
        .state
        .entries()
        .filter_map(|entry| {
            let recorded = entry.recorded()?;
            // Where it stands after corrections of its time.
            let event = entry.counts().unwrap_or(recorded);
            is_asked(event).then(|| Place::of(event))
        })
        .collect();
    places.sort_unstable_by(|one, other| other.cmp(one));
    places.into_iter().map(|place| place.id).collect()
}

/// True when an entry, or what it corrects, is about a heap.
fn tells_of(journal: &Journal, id: EventId, content: &Content, heap: EventId) -> bool {
    let target = content
        .corrects()
        .and_then(|target| journal.state.entry(target));
    let target = target.and_then(|entry| entry.recorded());
    let (id, content) = match target.map(|event| (event.id, &event.what)) {
        Some((id, What::Known(content))) => (id, content),
        _ => (id, content),
    };
    concerns(id, content).0.contains(&Some(heap))
}

/// Ids in their order, those of one day together.
fn by_day(journal: &Journal, ids: &[EventId]) -> Vec<(String, Vec<EventId>)> {
    let mut days: Vec<(String, Vec<EventId>)> = Vec::new();
    for id in ids {
        let Some(entry) = journal.state.entry(*id) else {
            continue;
        };
        let Some(event) = entry.counts().or(entry.recorded()) else {
            continue;
        };
        let day = wording::day_text(event.happened, language::locale());
        match days.last_mut() {
            Some((last, ids)) if *last == day => ids.push(*id),
            _ => days.push((day, vec![*id])),
        }
    }
    days
}
