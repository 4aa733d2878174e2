//! What has a day: for the calendar of the device, and as reminders where the browser shows some.

use std::cell::Cell;
use std::time::Duration;

use heapwright_texts::messages::today_on_the_page as texts;
use heapwright_wire::{TodayTold, ToldQuestion};
use heapwright_wording::today_on_the_page as words;
use js_sys::Array;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

use crate::keeping::{Status, device};
use crate::language;
use crate::parts::live::{button, live, live_if, nothing, spawn};
use crate::parts::sight::Sight;
use crate::places::lines::{self, Bearing};
use crate::places::telling::Telling;
use crate::shell::{Hub, Route};

const NAME: &str = "heapwright.ics";
const MEDIA_TYPE: &str = "text/calendar";

/// So long after a change reminders are worked out anew: entries that come one after another are one
/// change, and where Today is looked at it has told by then.
const SOON: Duration = Duration::from_secs(3);

/// Where Today is looked at, it hands over the same by itself; it has so much longer for that.
const LATER: Duration = Duration::from_secs(20);

/// How the browser reminds, by the word of `static/device.js`; nothing when it cannot be told.
fn how() -> String {
    device::reminding().unwrap_or_default()
}

fn is_on(how: &str) -> bool {
    ["open", "closed"].contains(&how)
}

/// What a list of reminders was worked out from: which of the journals that were opened, its lines, and
/// whether in US units.
type Grounds = (u32, usize, bool);

thread_local! {
    /// What the list was worked out from that the worker of the device was handed last.
    static HANDED: Cell<Option<Grounds>> = const { Cell::new(None) };
}

/// Notes what was handed over, by the answer of the device; false when it was not.
fn note(answer: Result<JsValue, JsValue>, grounds: Grounds) -> bool {
    let is_handed = answer.ok().and_then(|answer| answer.as_bool()) == Some(true);
    if is_handed {
        HANDED.set(Some(grounds));
    }
    is_handed
}

/// Hands what has a day over anew after whatever changes the journal, at whatever place and in whatever
/// tab; and when it was opened, for the last change may have come just before the page was closed. What
/// fails is tried again with the next change, or when the page comes back into sight.
pub fn keep_told(hub: Hub, route: RwSignal<Route>) {
    let grounds = Memo::new(move |_| {
        let us_units = hub.page.with(|page| page.us_units);
        // The invented garden reminds nobody.
        hub.keeper.with(|journal| {
            (journal.status == Status::Ready && !journal.is_demo)
                .then(|| (hub.keeper.opened(), journal.state.lines(), us_units))
        })
    });
    let sight = Sight::of_the_page();
    let hand = move |now: Grounds| {
        // A later change has a later call.
        if grounds.get_untracked() == Some(now) && HANDED.get() != Some(now) {
            hand_over(hub, now, grounds, sight);
        }
    };
    Effect::new(move |_| {
        let Some(now) = grounds.get() else {
            return;
        };
        // Who changed the journal looks at another tab, which hands it over.
        if !sight.is_there() {
            return;
        }
        let soon = move || {
            if route.get_untracked() == Route::Today {
                set_timeout(move || hand(now), LATER);
            } else {
                hand(now);
            }
        };
        set_timeout(soon, SOON);
    });
}

fn hand_over(hub: Hub, now: Grounds, grounds: Memo<Option<Grounds>>, sight: Sight) {
    if !is_on(&how()) {
        return;
    }
    let (_, _, us_units) = now;
    let events = hub.keeper.peek(|journal| {
        let has_heaps = journal.state.heaps().next().is_some();
        has_heaps.then(|| lines::that_bear(&journal.state, Bearing::OnAnything))
    });
    spawn(async move {
        let answer = if let Some(events) = events {
            // A later change has a later call, and Today may hand them over meanwhile.
            let are_wanted =
                move || grounds.try_get_untracked() == Some(Some(now)) && HANDED.get() != Some(now);
            let Some(journal) = lines::in_pieces(events, Box::new(are_wanted)).await else {
                return;
            };
            let question = ToldQuestion {
                journal,
                heap: String::new(),
                today: true,
                now: device::now().to_string(),
                us_units,
            };
            let Ok(question) = serde_json::to_string(&question) else {
                return;
            };
            device::remind_anew(&question).await
        } else {
            // Without a heap nothing has a day.
            device::remind("[]").await
        };
        if !note(answer, now) {
            sight.leave_undone();
        }
    });
}

/// The card; without a date it says so instead of offering an empty file.
pub fn card(hub: Hub, telling: Telling<TodayTold>) -> AnyView {
    let told = telling.told;
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
            {live_if(move || is_own.get().then(|| on_this_device(hub, telling)))}
        </section>
    }
    .into_any()
}

/// Reminders that the browser shows.
fn on_this_device(hub: Hub, telling: Telling<TodayTold>) -> AnyView {
    let reminding = RwSignal::new(how());
    Effect::new(move |_| {
        let list = telling.part(|told| serde_json::to_string(&told.reminders).ok());
        if let Some(list) = list.flatten().filter(|_| is_on(&reminding.get())) {
            let us_units = untrack(|| hub.page.with(|page| page.us_units));
            let grounds = (hub.keeper.opened(), telling.lines.get_untracked(), us_units);
            spawn(async move {
                // What fails is made good by what goes on beside all places.
                note(device::remind(&list).await, grounds);
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
