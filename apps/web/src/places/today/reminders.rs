//! What has a day, for the calendar of the device: the page itself cannot wake anyone.

use std::sync::Arc;

use heapwright_wire::TodayTold;
use heapwright_wording::today_on_the_page as words;
use js_sys::Array;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

use crate::keeping::device;
use crate::language;
use crate::parts::live::{button, live_if};

const NAME: &str = "heapwright.ics";
const MEDIA_TYPE: &str = "text/calendar";

/// The card; without a date it says so instead of offering an empty file.
pub fn card(told: RwSignal<Option<Arc<TodayTold>>>) -> AnyView {
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
    view! {
        <section class="card" aria-labelledby="reminders-title">
            <h2 id="reminders-title">{words::reminders(language::locale())}</h2>
            <p class="hint">{words::reminders_hint(language::locale())}</p>
            {live_if(offer)}
        </section>
    }
    .into_any()
}
