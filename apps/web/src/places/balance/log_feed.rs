//! Writes the feed that stands on the page into the log of a heap.

use heapwright_answers::more_than_fits;
use heapwright_garden::{Found, Garden, Stuff, part_fed};
use heapwright_journal::content::{Fed, PartFed};
use heapwright_journal::{Content, EventId};
use heapwright_texts::messages::{balance_explained as texts, heap_forms, today_place};
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::asking::FaultPlace;
use crate::keeping::device;
use crate::language;
use crate::parts::form::Sender;
use crate::parts::live::{button, live, live_if};
use crate::shell::{Hub, Route};
use crate::state::{Action, Page};

use super::GAP;

/// The feed of the page as an entry for a heap, with or without what the recipe adds.
pub fn feed(hub: Hub, heap: EventId, with_added: bool) -> Result<Content, String> {
    hub.shown.with(|shown| {
        let in_hand = |place: &FaultPlace| matches!(place, FaultPlace::Hand(_));
        if shown.faults.iter().any(|fault| in_hand(&fault.place)) {
            return Err(wording::page::mend_first(language::locale()).to_owned());
        }
        if shown.feed.hand.is_empty() {
            return Err(wording::page::empty_hand(language::locale()).to_owned());
        }
        hub.own.with(|own| {
            let own = own.as_ref();
            let part = |found: &Found| part_fed(found, is_stored(own, &found.stuff));
            let mut parts: Vec<PartFed> = shown.feed.hand.iter().map(part).collect();
            let mut water_l = None;
            if with_added {
                parts.extend(shown.feed.added.iter().map(part));
                // A litre of water weighs a kilogram.
                water_l = Some(shown.feed.water_kg).filter(|water_kg| *water_kg > 0.0);
            }
            Ok(Fed {
                heap,
                parts,
                water_l,
            }
            .into())
        })
    })
}

/// True when the stores of the journal hold it.
fn is_stored(own: Option<&Garden>, stuff: &Stuff) -> bool {
    let Stuff::Known {
        material,
        conditions,
        ..
    } = stuff
    else {
        return false;
    };
    own.is_some_and(|garden| {
        garden
            .stores
            .iter()
            .any(|stock| stock.material == *material && stock.conditions == *conditions)
    })
}

/// What logging the feed of the page would say; why it cannot be logged when it cannot.
pub fn feed_line(hub: Hub, heap: EventId, with_added: bool) -> String {
    let locale = hub.page.with(|page| page.locale());
    match feed(hub, heap, with_added) {
        Ok(content) => today_place::WritesDown {
            entry: &hub.keeper.told(content, locale),
        }
        .said(locale),
        Err(why) => why,
    }
}

/// What to think of before the feed of the page is logged: that it is the example with which the page
/// begins, that it is more than a heap holds.
pub fn to_think_of(hub: Hub, heap: EventId, with_added: bool) -> Option<AnyView> {
    let is_example = hub.page.with(|page| page.hand == Page::default().hand);
    let example = is_example.then(|| heap_forms::feed_is_example(language::locale()).to_owned());
    let lines: Vec<String> = example
        .into_iter()
        .chain(slip(hub, heap, with_added))
        .collect();
    (!lines.is_empty()).then(|| {
        let lines = lines
            .into_iter()
            .map(|line| view! { <p class="note">{line}</p> });
        lines.collect_view().into_any()
    })
}

/// A sentence when the feed of the page is more than a heap holds.
fn slip(hub: Hub, heap: EventId, with_added: bool) -> Option<String> {
    let fed_m3 = hub.shown.with(|shown| {
        let whole = shown.looked_at.as_ref();
        let in_hand = || shown.balance.as_ref()?.in_hand.as_ref();
        let fed = if with_added { whole } else { in_hand() };
        Some(fed?.mixture.volume_m3?.value)
    })?;
    let locale = hub.page.with(|page| page.locale());
    hub.keeper.with(|journal| {
        let heap = journal.state.heap(heap)?;
        let told = more_than_fits(heap.enclosure()?, fed_m3)?;
        Some(wording::told::more_than_fits(told, heap.name()?, locale))
    })
}

/// What stands in the section.
pub fn body(hub: Hub) -> AnyView {
    let heaps = move || {
        hub.keeper.with(|journal| {
            journal
                .state
                .heaps()
                .filter_map(|heap| Some((heap.id, heap.name()?.to_owned())))
                .collect::<Vec<_>>()
        })
    };
    // The heap that is chosen; the first one, where it is not among them.
    let chosen = RwSignal::new(None::<EventId>);
    let before_it = move || {
        let ids = heaps();
        let (first, _) = ids.first()?;
        let heap = chosen
            .get()
            .filter(|one| ids.iter().any(|(id, _)| id == one));
        to_think_of(hub, heap.unwrap_or(*first), true)
    };
    let sender = Sender::new(hub);
    let log = move || {
        hub.answering.settle();
        let heap = device::value("feed-heap")
            .parse()
            .map_err(|_| wording::page::no_such_heap(language::locale()).to_owned());
        let entry = heap.and_then(|heap| Ok((feed(hub, heap, true)?, None)));
        sender.send(entry, move || hub.act.run(Action::ClearHand));
    };
    view! {
            {live(move || {
                let heaps = heaps();
                if heaps.is_empty() {
                    let locale = language::locale();
                    let told = texts::StartAHeapToLog { link: GAP }.said(locale);
                    let (before, after) = told.split_once(GAP).unwrap_or_default();
                    return view! {
                        <p>
                            {before.to_owned()}
                            <a class="link" href=Route::Heaps.address()>{texts::start_a_heap(locale)}</a>
                            {after.to_owned()}
                        </p>
                    }
                    .into_any();
                }
                let present = chosen.get_untracked();
                let options = heaps
                    .into_iter()
                    .map(|(id, name)| {
                        view! { <option value=id.to_string() prop:selected=present == Some(id)>{name}</option> }
                    })
                    .collect_view();
                let choose = move |_| chosen.set(device::value("feed-heap").parse().ok());
                view! {
                    <div class="log-feed-row">
                        <select id="feed-heap" on:change=choose aria-label=texts::heap(language::locale())>{options}</select>
                        {button("main-act", texts::log_this_feed(language::locale()), log)}
                    </div>
                    <p class="hint">{wording::page::log_feed_hint(language::locale())}</p>
                }
                .into_any()
            })}
            <div role="status">{live_if(before_it)}</div>
            {sender.fault()}
    }
    .into_any()
}
