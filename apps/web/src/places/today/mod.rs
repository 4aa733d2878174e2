//! Today: what each heap needs, first things first. One tap logs what was done.
//!
//! What is needed is worked out beside the page; this place shows it.

mod need;
mod reminders;

use heapwright_wire::{QuietTold, TodayTold};
use heapwright_wording::{self as wording, today, today_on_the_page as words};
use leptos::prelude::*;

use need::{Open, need_view};

use super::telling::{About, Telling};
use crate::keeping::{Status, device};
use crate::parts::form::Sender;
use crate::parts::live::{button, live, live_if};
use crate::places::transfer;
use crate::shell::{DEMO_ADDRESS, Hub, Route, hub};

/// The place.
#[component]
pub fn Today() -> impl IntoView {
    let hub = hub();
    let is_open = Memo::new(move |_| hub.keeper.with(|journal| journal.status != Status::Opening));
    let has_heaps = Memo::new(move |_| {
        hub.keeper
            .with(|journal| journal.state.heaps().next().is_some())
    });
    let telling: Telling<TodayTold> = Telling::about(hub, About::Today, move || has_heaps.get());
    let open: Open = RwSignal::new(None);
    let sender = Sender::new(hub);
    if window().location().hash().unwrap_or_default() == DEMO_ADDRESS {
        // Asked for once: loading the page again must not lead back into it.
        let _ = window().location().replace(&Route::Today.address());
        sender.run(hub.keeper.open_demo(), || {});
    }
    let whole = move || match (is_open.get(), has_heaps.get()) {
        (false, _) => view! { <p role="status">{wording::page::OPENING}</p> }.into_any(),
        (true, false) => no_heaps(hub),
        (true, true) => view! {
            {live_if(move || telling.told.with(Option::is_none).then(waiting))}
            {telling.standing()}
            {live_if(move || telling.part(|told| day(hub, told, open)))}
            <p><a class="link" href=Route::Heaps.address()>{words::ALL_HEAPS}</a></p>
            {reminders::card(telling.told)}
            {transfer::warning(hub)}
        }
        .into_any(),
    };
    view! {
        <div class="place today">
            <div class="title-row">
                <h1 id="title" tabindex="-1">{wording::page::TODAY}</h1>
                <p class="today-date">{wording::day_text(device::now())}</p>
            </div>
            {sender.fault()}
            {live(whole)}
        </div>
    }
}

/// Room for the first need while it is worked out.
fn waiting() -> AnyView {
    view! {
        <section class="card need need-first need-waiting" aria-label=words::NEEDED>
            <p class="need-what">{words::LOOKING}</p>
        </section>
    }
    .into_any()
}

/// All needs, then the heaps that need nothing.
fn day(hub: Hub, told: &TodayTold, open: Open) -> AnyView {
    let needs = if told.needs.is_empty() {
        view! {
            <section class="card need need-first need-none need-rest" aria-label=words::NEEDED>
                <p class="need-what">{today::NOTHING_TODAY}</p>
                <p>{words::NOTHING_NEEDED_MORE}</p>
            </section>
        }
        .into_any()
    } else {
        let needs = told
            .needs
            .iter()
            .enumerate()
            .map(|(index, need)| need_view(hub, need, index == 0, open))
            .collect_view();
        view! {
            <section aria-labelledby="needs-title">
                <h2 id="needs-title" class="unseen">{words::NEEDED}</h2>
                <ul class="needs">{needs}</ul>
            </section>
        }
        .into_any()
    };
    view! {
        {needs}
        {(!told.quiet.is_empty()).then(|| quiet(&told.quiet))}
        <p class="hint">{today::TODAY_LIMITS}</p>
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
            <h2 id="quiet-title">{today::QUIET}</h2>
            <ul class="quiet-heaps">{rows}</ul>
        </section>
    }
    .into_any()
}

/// The first steps of a garden.
fn no_heaps(hub: Hub) -> AnyView {
    let sender = Sender::new(hub);
    let enter = move || sender.run(hub.keeper.open_demo(), || {});
    view! {
        <section class="card need need-first need-none" aria-label=words::NEEDED>
            <p class="need-what">{words::NO_HEAPS}</p>
            <a class="main-act act-link" href=Route::Heaps.address()>{words::START_A_HEAP}</a>
        </section>
        <a class="act-link act-plain" href=Route::Balance.address()>{words::BALANCE_FIRST}</a>
        {live_if(move || (!hub.keeper.with(|journal| journal.is_demo)).then(|| {
            button("", wording::page::DEMO_ENTER, enter)
        }))}
        {sender.fault()}
    }
    .into_any()
}
