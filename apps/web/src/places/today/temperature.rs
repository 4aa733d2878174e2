//! A temperature, whatever the day asks: which heap, and its degrees.

use heapwright_journal::EventId;
use heapwright_journal::content::Stage;
use heapwright_wording::today_on_the_page as words;
use leptos::prelude::*;

use crate::language;
use crate::parts::focus;
use crate::parts::live::{button, live_if};
use crate::places::heap::read;
use crate::shell::{Hub, Route};

/// The address of Today that asks for a temperature, as the shortcut of the installed page has it.
const ADDRESS: &str = "#/today/temperature";

fn is_here() -> bool {
    window().location().hash().unwrap_or_default() == ADDRESS
}

/// True while the address asks for it.
pub fn is_asked() -> RwSignal<bool> {
    let asked = RwSignal::new(is_here());
    let listener = window_event_listener_untyped("hashchange", move |_| asked.set(is_here()));
    on_cleanup(move || listener.remove());
    asked
}

/// The heaps that are still at work, and the form of the one that is chosen.
pub fn section(hub: Hub, asked: RwSignal<bool>) -> AnyView {
    let heaps: Vec<(EventId, String)> = hub.keeper.peek(|journal| {
        let at_work = journal
            .state
            .heaps()
            .filter(|heap| heap.now().stage != Stage::Finished);
        at_work
            .filter_map(|heap| Some((heap.id, heap.name()?.to_owned())))
            .collect()
    });
    let chosen = RwSignal::new(None::<EventId>);
    let choose = move |heap: EventId| {
        chosen.set(Some(heap));
        request_animation_frame(|| focus(read::TEMPERATURE));
    };
    let is_choice = heaps.len() > 1;
    if let [(only, _)] = heaps[..] {
        choose(only);
    }
    let done = move || {
        // The next load of the page must not ask again.
        let _ = window().location().replace(&Route::Today.address());
        asked.set(false);
        focus("title");
    };
    let rows = heaps
        .into_iter()
        .map(|(heap, name)| {
            view! {
                <li>
                    {live_if({
                        let name = name.clone();
                        move || (is_choice && chosen.get() != Some(heap))
                            .then(|| button("need-act", &name, move || choose(heap)))
                    })}
                    {live_if(move || (chosen.get() == Some(heap)).then(|| {
                        view! {
                            <h3>{name.clone()}</h3>
                            {read::short(hub, heap, true, done)}
                        }
                        .into_any()
                    }))}
                </li>
            }
        })
        .collect_view();
    view! {
        <section class="card" aria-labelledby="temperature-title">
            <h2 id="temperature-title">{words::log_temperature(language::locale())}</h2>
            {is_choice.then(|| view! { <p>{words::which_heap(language::locale())}</p> })}
            <ul class="quiet-heaps">{rows}</ul>
        </section>
        <p><a class="link" href=Route::Today.address()>{words::to_the_day(language::locale())}</a></p>
    }
    .into_any()
}
