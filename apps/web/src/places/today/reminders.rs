//! What has a day: for the calendar of the device, and as reminders where the browser shows some.

use std::sync::Arc;

use heapwright_texts::messages::today_on_the_page as texts;
use heapwright_wire::TodayTold;
use heapwright_wording::today_on_the_page as words;
use js_sys::Array;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

use crate::keeping::device;
use crate::language;
use crate::parts::live::{button, live, live_if, nothing, spawn};
use crate::shell::Hub;

const NAME: &str = "heapwright.ics";
const MEDIA_TYPE: &str = "text/calendar";

/// How the browser reminds, by the word of `static/device.js`; nothing when it cannot be told.
fn how() -> String {
    device::reminding().unwrap_or_default()
}

/// Ends what was handed over for a garden in which nothing is due any more.
pub fn none(hub: Hub) {
    if !hub.keeper.peek(|journal| journal.is_demo) && is_on(&how()) {
        spawn(async move {
            let _ = device::remind("[]").await;
        });
    }
}

fn is_on(how: &str) -> bool {
    ["open", "closed"].contains(&how)
}

/// The card; without a date it says so instead of offering an empty file.
pub fn card(hub: Hub, told: RwSignal<Option<Arc<TodayTold>>>) -> AnyView {
    let calendar = move || {
        told.with(|told| told.as_ref().map(|told| told.calendar.clone()))
            .unwrap_or_default()
    };
    let save = move || {
        let file = untrack(calendar);
        device::save(NAME, &Array::of1(&JsValue::from_str(&file)), MEDIA_TYPE);
    };
    let offer = move || {
        let offer = if calendar().is_empty() {
            view! { <p>{words::nothing_dated(language::locale())}</p> }.into_any()
        } else {
            button("", words::to_calendar(language::locale()), save)
        };
        Some(offer)
    };
    // The invented garden reminds nobody.
    let is_own = Memo::new(move |_| !hub.keeper.with(|journal| journal.is_demo));
    view! {
        <section class="card" aria-labelledby="reminders-title">
            <h2 id="reminders-title">{words::reminders(language::locale())}</h2>
            <p class="hint">{words::reminders_hint(language::locale())}</p>
            {live_if(offer)}
            {live_if(move || is_own.get().then(|| on_this_device(told)))}
        </section>
    }
    .into_any()
}

/// Reminders that the browser shows.
fn on_this_device(told: RwSignal<Option<Arc<TodayTold>>>) -> AnyView {
    let reminding = RwSignal::new(how());
    Effect::new(move |_| {
        let list = told.with(|told| {
            let told = told.as_ref()?;
            serde_json::to_string(&told.reminders).ok()
        });
        if let Some(list) = list.filter(|_| is_on(&reminding.get())) {
            spawn(async move {
                // Without a worker there is nobody to remind; it is told in the line below.
                let _ = device::remind(&list).await;
            });
        }
    });
    let start = move || {
        spawn(async move {
            let told = device::start_reminding().await;
            reminding.set(
                told.ok()
                    .and_then(|told| told.as_string())
                    .unwrap_or_else(how),
            );
        });
    };
    let stop = move || {
        spawn(async move {
            let _ = device::stop_reminding().await;
            reminding.set(how());
        });
    };
    let locale = language::locale();
    let line = move || match reminding.get().as_str() {
        "" => texts::remind_not_here(locale),
        "denied" => texts::remind_denied(locale),
        "closed" => texts::remind_closed(locale),
        "open" => texts::remind_open(locale),
        _ => "",
    };
    let act = move || match reminding.get().as_str() {
        "off" => button("", texts::remind_me(locale), start),
        "closed" | "open" => button("", texts::stop_reminding(locale), stop),
        _ => nothing(),
    };
    view! {
        <p role="status">{line}</p>
        {live(act)}
    }
    .into_any()
}
