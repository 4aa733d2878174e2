//! Today: what each heap needs, first things first. One tap logs what was done.
//!
//! What is needed is worked out beside the page; this place shows it.

mod aside;
mod board;
mod need;
pub mod reminders;
mod temperature;

use heapwright_texts::messages::today_place as texts;
use heapwright_wire::{QuietTold, TodayTold};
use heapwright_wording::{
    self as wording, settings as settings_words, today, today_on_the_page as words,
};
use leptos::prelude::*;

use aside::Aside;
use board::Board;
use need::need_view;

use super::telling::{About, Telling};
use crate::keeping::Status;
use crate::language;
use crate::parts::form::Sender;
use crate::parts::live::{button, live, live_if, live_text, nothing};
use crate::places::settings::only_here;
use crate::places::transfer;
use crate::shell::{DEMO_ADDRESS, Hub, Route, hub};

/// How the journal stands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Standing {
    Opening,
    Failed,
    NoHeaps,
    Heaps,
}

/// The place.
#[component]
pub fn Today() -> impl IntoView {
    let hub = hub();
    let standing = Memo::new(move |_| {
        hub.keeper.with(|journal| match journal.status {
            Status::Opening => Standing::Opening,
            Status::Failed(_) => Standing::Failed,
            Status::Ready if journal.state.heaps().next().is_none() => Standing::NoHeaps,
            Status::Ready => Standing::Heaps,
        })
    });
    let has_heaps = move || standing.get() == Standing::Heaps;
    let telling: Telling<TodayTold> = Telling::about(hub, About::Today, has_heaps);
    let board = Board::of(telling, Aside::kept(hub));
    let is_told = Memo::new(move |_| telling.told.with(Option::is_some));
    let is_awaited = Memo::new(move |_| telling.is_awaited());
    let is_of_heat = temperature::is_asked();
    let has_typed_vessels = Memo::new(move |_| {
        hub.page.with(|page| !page.measures.is_empty())
            && !hub.keeper.with(|journal| journal.is_demo)
    });
    let sender = Sender::new(hub);
    if window().location().hash().unwrap_or_default() == DEMO_ADDRESS {
        // Asked for once: loading the page again must not lead back into it.
        let _ = window().location().replace(&Route::Today.address());
        sender.run(hub.keeper.open_demo(), || {});
    }
    let whole = move || {
        match standing.get() {
        Standing::Opening => {
            view! { <p role="status">{wording::page::opening(language::locale())}</p> }.into_any()
        }
        // Why stands above all places.
        Standing::Failed => nothing(),
        Standing::NoHeaps => no_heaps(hub),
        Standing::Heaps if is_of_heat.get() => temperature::section(hub, is_of_heat),
        Standing::Heaps => view! {
            {live_if(move || is_awaited.get().then(waiting))}
            {telling.standing()}
            {live_if(move || is_told.get().then(|| day(hub, telling, board)))}
            {live_if(move || has_typed_vessels.get().then(|| typed_vessels(hub)))}
            <p><a class="link" href=Route::Heaps.address()>{words::all_heaps(language::locale())}</a></p>
            {reminders::card(hub, telling)}
            {transfer::warning(hub)}
        }
        .into_any(),
    }
    };
    view! {
        <div class="place today">
            <div class="title-row">
                <h1 id="title" tabindex="-1">{wording::page::today(language::locale())}</h1>
                <p class="today-date">{live_text(move || wording::day_text(telling.now.get(), language::locale()))}</p>
            </div>
            {sender.fault()}
            {live(whole)}
        </div>
    }
}

/// Room for the first need while it is worked out.
fn waiting() -> AnyView {
    view! {
        <section class="card need need-first need-waiting" aria-label=words::needed(language::locale())>
            <p class="need-what">{words::looking(language::locale())}</p>
        </section>
    }
    .into_any()
}

/// All needs, then the heaps that need nothing.
fn day(hub: Hub, telling: Telling<TodayTold>, board: Board) -> AnyView {
    let is_nothing = Memo::new(move |_| board.cards.with(Vec::is_empty));
    let is_aside = Memo::new(move |_| board.put_aside.with(|put| !put.is_empty()));
    let cards = move || {
        if is_nothing.get() && is_aside.get() {
            return nothing();
        }
        if is_nothing.get() {
            return view! {
                <section class="card need need-first need-none need-rest" aria-label=words::needed(language::locale())>
                    <p class="need-what">{today::nothing_today(language::locale())}</p>
                    <p>{words::nothing_needed_more(language::locale())}</p>
                </section>
            }
            .into_any();
        }
        view! {
            <section aria-labelledby="needs-title">
                <h2 id="needs-title" class="unseen">{words::needed(language::locale())}</h2>
                <ul class="needs">
                    <For each=move || board.cards.get() key=|card| card.key.clone() let(card)>
                        {need_view(hub, board, card.key)}
                    </For>
                </ul>
            </section>
        }
        .into_any()
    };
    let at_rest = move || {
        telling
            .part(|told| (!told.quiet.is_empty()).then(|| quiet(&told.quiet)))
            .flatten()
    };
    view! {
        {live(cards)}
        {live_if(move || is_aside.get().then(|| board.put_aside.with(|put| aside::section(board, put))))}
        {live_if(at_rest)}
        <p class="hint">{today::today_limits(language::locale())}</p>
    }
    .into_any()
}

fn quiet(heaps: &[QuietTold]) -> AnyView {
    let rows = heaps
        .iter()
        .map(|heap| {
            let address = format!("{}/{}", Route::Heaps.address(), heap.heap);
            view! {
                <li><a class="quiet-heap" href=address>{heap.line.clone()}</a></li>
            }
        })
        .collect_view();
    view! {
        <section class="card" aria-labelledby="quiet-title">
            <h2 id="quiet-title">{today::quiet(language::locale())}</h2>
            <ul class="quiet-heaps">{rows}</ul>
        </section>
    }
    .into_any()
}

/// Vessels that the page knows and the journal does not: recipes of the day come from the journal.
fn typed_vessels(hub: Hub) -> AnyView {
    let locale = language::locale();
    view! {
        <section class="card" aria-labelledby="typed-vessels-title">
            <h2 id="typed-vessels-title">{settings_words::your_vessels(locale)}</h2>
            <p>{texts::vessels_not_known(locale)}</p>
            {only_here(hub)}
        </section>
    }
    .into_any()
}

/// The first steps of a garden.
fn no_heaps(hub: Hub) -> AnyView {
    let sender = Sender::new(hub);
    let enter = move || sender.run(hub.keeper.open_demo(), || {});
    view! {
        <section class="card need need-first need-none" aria-label=words::needed(language::locale())>
            <p class="need-what">{words::no_heaps(language::locale())}</p>
            <a class="main-act act-link" href=Route::Heaps.address()>{words::start_a_heap(language::locale())}</a>
        </section>
        <a class="act-link act-plain" href=Route::Balance.address()>{words::balance_first(language::locale())}</a>
        {live_if(move || (!hub.keeper.with(|journal| journal.is_demo)).then(|| {
            button("", wording::page::demo_enter(language::locale()), enter)
        }))}
        {sender.fault()}
    }
    .into_any()
}
