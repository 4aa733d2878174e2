//! What the journal says of a heap: what to see to before use, its heat, its ripeness, its nutrients.

mod heat;
mod nutrients;
mod ripeness;
mod test_form;

use std::sync::Arc;

use heapwright_journal::{Content, Event, EventId};
use heapwright_wire::{HeapTold, HeatTold, NutrientsTold, RipenessTold};
use heapwright_wording::told as words;
use leptos::prelude::*;

use crate::language;
use crate::parts::breath::one_by_one;
use crate::parts::fold::sentences;
use crate::parts::live::live_if;
use crate::places::telling::{About, Telling};
use crate::shell::Hub;

/// All of them.
pub fn sections(hub: Hub, id: EventId) -> AnyView {
    // A heap of which nothing is known asks nothing: the worker is fetched for those that have a past.
    let has_past = Memo::new(move |_| {
        hub.keeper.with(|journal| {
            let heap = journal.state.heap(id);
            heap.is_some_and(|heap| heap.history().any(|event| tells(event)))
        })
    });
    let telling: Telling<HeapTold> = Telling::about(hub, About::Heap(id), move || has_past.get());
    Effect::new(move |_| {
        if !has_past.get() {
            telling.told.set(Some(Arc::new(of_nothing())));
        }
    });
    // Drawn one after another: all at once would leave a slow phone deaf.
    let heat = telling.later();
    let ripeness = heat.later();
    let nutrients = ripeness.later();
    one_by_one(vec![
        Box::new(move || before_use_section(telling)),
        Box::new(move || heat_section(heat)),
        Box::new(move || ripeness_section(hub, id, ripeness)),
        Box::new(move || nutrients_section(nutrients)),
    ])
}

fn before_use_section(telling: Telling<HeapTold>) -> AnyView {
    view! {
        <section class="card before-use" aria-labelledby="before-use-title">
            <h2 id="before-use-title">{words::before_use(language::locale())}</h2>
            {telling.standing()}
            {live_if(move || telling.part(before_use))}
        </section>
    }
    .into_any()
}

fn heat_section(telling: Telling<HeapTold>) -> AnyView {
    view! {
        <section class="card heat" aria-labelledby="heat-title">
            <h2 id="heat-title">{words::heat(language::locale())}</h2>
            {heat::body(telling)}
        </section>
    }
    .into_any()
}

fn ripeness_section(hub: Hub, id: EventId, telling: Telling<HeapTold>) -> AnyView {
    view! {
        <section class="card ripeness" aria-labelledby="ripeness-title">
            <h2 id="ripeness-title" tabindex="-1">{words::ripeness(language::locale())}</h2>
            {live_if(move || telling.part(|told| ripeness::verdict(&told.ripeness)))}
            {test_form::section(hub, id)}
            {live_if(move || telling.part(|told| ripeness::evidence(&told.ripeness)))}
        </section>
    }
    .into_any()
}

fn nutrients_section(telling: Telling<HeapTold>) -> AnyView {
    view! {
        <section class="card nutrients" aria-labelledby="nutrients-title">
            <h2 id="nutrients-title">{words::nutrients(language::locale())}</h2>
            {nutrients::body(telling)}
        </section>
    }
    .into_any()
}

/// True for what something can be told from.
fn tells(event: &Event) -> bool {
    matches!(
        event.content(),
        Some(Content::Fed(_) | Content::Read(_) | Content::Moved(_) | Content::Tested(_))
    )
}

/// What is told of a heap of which nothing is known.
fn of_nothing() -> HeapTold {
    HeapTold {
        heat: HeatTold {
            headline: words::no_readings(language::locale()).to_owned(),
            ..HeatTold::default()
        },
        ripeness: RipenessTold {
            lines: vec![words::nothing_in_it(language::locale()).to_owned()],
            ..RipenessTold::default()
        },
        nutrients: NutrientsTold {
            refusal: words::nothing_in_it(language::locale()).to_owned(),
            ..NutrientsTold::default()
        },
        ..HeapTold::default()
    }
}

fn before_use(told: &HeapTold) -> AnyView {
    if told.before_use.is_empty() {
        return view! { <p>{words::nothing_lasts(language::locale())}</p> }.into_any();
    }
    sentences(&told.before_use)
}
