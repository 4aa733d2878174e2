//! Which version of the page this is, and the one that waits. It takes over when the keeper says so, never
//! while something is being entered.

use heapwright_wording::settings as words;
use leptos::prelude::*;

use crate::keeping::device;
use crate::language;
use crate::parts::live::{button, live, live_if, live_text, spawn};

/// True while a new version waits; kept true by the mark that `boot.js` sets.
fn waiting() -> RwSignal<bool> {
    let waits = RwSignal::new(device::update_waits());
    let listener = window_event_listener_untyped("heapwright-update", move |_| {
        let _ = waits.try_set(device::update_waits());
    });
    on_cleanup(move || listener.remove());
    waits
}

/// Takes the new version unless something is being entered, and then says so.
fn taker() -> AnyView {
    let told = RwSignal::new(String::new());
    let take = move || {
        if device::is_entering() {
            told.set(words::update_form(language::locale()).to_owned());
        } else {
            device::take_update();
        }
    };
    view! {
        <p>{words::update_waits(language::locale())}</p>
        {button("main-act", words::update_take(language::locale()), take)}
        <p class="fault" role="alert">{live_text(move || told.get())}</p>
    }
    .into_any()
}

/// Offers the version that waits, on places where something is about to be done.
pub fn offer_update() -> AnyView {
    let waits = waiting();
    live_if(move || {
        waits
            .get()
            .then(|| view! { <div class="card">{taker()}</div> }.into_any())
    })
}

/// The section.
pub fn section() -> AnyView {
    let waits = waiting();
    let told = RwSignal::new(String::new());
    let look = move || {
        told.set(words::update_looking(language::locale()).to_owned());
        spawn(async move {
            let line = match device::look_for_update().await {
                Ok(found) if found.as_bool() == Some(true) => "",
                Ok(_) => words::update_none(language::locale()),
                Err(_) => words::update_no_signal(language::locale()),
            };
            let _ = told.try_set(line.to_owned());
            let _ = waits.try_set(device::update_waits());
        });
    };
    let acts = move || {
        if waits.get() {
            taker()
        } else {
            button("", words::update_look(language::locale()), look)
        }
    };
    view! {
        <section class="card" aria-labelledby="version-title">
            <h2 id="version-title">{words::this_version(language::locale())}</h2>
            <p>{words::version_line(env!("CARGO_PKG_VERSION"), language::locale())}</p>
            {live(acts)}
            <p role="status">{live_text(move || told.get())}</p>
        </section>
    }
    .into_any()
}
