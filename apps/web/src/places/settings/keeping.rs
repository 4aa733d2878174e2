//! Will the journal still be here in a year? The browser's promise, what may clear it, the home screen.

use heapwright_wording::{page, settings as words};
use leptos::prelude::*;

use crate::keeping::device;
use crate::language;
use crate::parts::live::{button, live, live_if, live_text, spawn};
use crate::shell::Hub;

/// What the browser promises, and what could clear the journal all the same.
pub fn promise(hub: Hub) -> AnyView {
    let keeper = hub.keeper;
    let told = move || {
        keeper.with(|journal| match journal.lasting {
            _ if journal.is_demo || journal.state.lines() == 0 => "",
            Some(true) => page::lasts(language::locale()),
            Some(false) | None if journal.was_asked => words::keep_refused(language::locale()),
            Some(false) => page::may_be_lost(language::locale()),
            None => "",
        })
    };
    let room = RwSignal::new(String::new());
    Effect::new(move |_| {
        // Asked anew whenever there is more in the journal.
        keeper.with(|journal| journal.state.lines());
        spawn(async move {
            let line = device::room()
                .await
                .and_then(|(used, most)| words::room_line(used, most, language::locale()));
            let _ = room.try_set(line.unwrap_or_default());
        });
    });
    let clearers = words::clearers(language::locale())
        .into_iter()
        .map(|line| view! { <li>{line}</li> })
        .collect_view();
    view! {
        <p role="status">{live_text(move || told().to_owned())}</p>
        {live_if(move || can_ask(hub).then(|| view! { <p class="hint">{words::keep_why(language::locale())}</p> }.into_any()))}
        {asker(hub)}
        <p class="hint">{live_text(move || room.get())}</p>
        <details class="caution">
            <summary>{words::what_clears(language::locale())}</summary>
            <ul class="told-lines">{clearers}</ul>
        </details>
    }
    .into_any()
}

/// Whether there is something to keep and no promise yet.
fn can_ask(hub: Hub) -> bool {
    hub.keeper.with(|journal| {
        !journal.is_demo && journal.state.lines() > 0 && journal.lasting == Some(false)
    })
}

fn asker(hub: Hub) -> AnyView {
    let keeper = hub.keeper;
    live_if(move || {
        can_ask(hub).then(|| {
            button("main-act", words::keep(language::locale()), move || {
                spawn(async move { keeper.ask_to_last().await });
            })
        })
    })
}

/// Offers to keep the journal, with the reason, once there is an entry and until it was asked for.
pub fn offer_to_keep(hub: Hub) -> AnyView {
    live_if(move || {
        let was_asked = hub.keeper.with(|journal| journal.was_asked);
        (can_ask(hub) && !was_asked).then(|| {
            view! {
                <div class="note">
                    <p>{words::keep_why(language::locale())}</p>
                    {asker(hub)}
                </div>
            }
            .into_any()
        })
    })
}

/// How the page gets on the home screen.
pub fn home_screen() -> AnyView {
    let changed = RwSignal::new(());
    let listener = window_event_listener_untyped("heapwright-install", move |_| {
        let _ = changed.try_set(());
    });
    on_cleanup(move || listener.remove());
    let how = move || {
        changed.track();
        if device::is_installed() {
            return view! { <p>{words::is_installed(language::locale())}</p> }.into_any();
        }
        let act = device::can_install().then(|| {
            button("main-act", words::install(language::locale()), || {
                spawn(async {
                    // Whatever is answered shows by itself.
                    let _ = device::install().await;
                });
            })
        });
        let by_hand = act.is_none().then(|| {
            let ways = words::install_by_hand(language::locale())
                .into_iter()
                .map(|line| view! { <li>{line}</li> })
                .collect_view();
            view! { <ul class="told-lines">{ways}</ul> }
        });
        view! {
            <p class="hint">{words::install_hint(language::locale())}</p>
            {act}
            {by_hand}
        }
        .into_any()
    };
    view! {
        <section class="card" aria-labelledby="home-title">
            <h2 id="home-title">{words::on_the_home_screen(language::locale())}</h2>
            {live(how)}
        </section>
    }
    .into_any()
}
