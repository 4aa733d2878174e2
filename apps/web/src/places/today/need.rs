//! Something that is needed: what to do, why, and the one thing to tap.

use heapwright_journal::{Content, Event, EventId, What};
use heapwright_wire::NeedTold;
use heapwright_wording::today_on_the_page as words;
use leptos::prelude::*;

use crate::parts::focus;
use crate::parts::fold::{folded, sentences};
use crate::parts::form::Sender;
use crate::parts::live::live_if;
use crate::places::heap::read;
use crate::shell::{Hub, Route};

/// The need whose form is open: its heap and its kind.
pub type Open = RwSignal<Option<(String, String)>>;

/// The card of a need.
pub fn need_view(hub: Hub, need: &NeedTold, is_first: bool, open: Open) -> AnyView {
    let class = match (is_first, need.urgency.as_str()) {
        (true, "now") => "card need need-first need-now",
        (true, _) => "card need need-first",
        (false, "now") => "card need need-now",
        (false, _) => "card need",
    };
    let mut why = need.why.iter();
    let first_reason = why.next().cloned();
    let more: Vec<String> = why.cloned().collect();
    let more = (!more.is_empty()).then(|| {
        folded(
            "more need-more",
            words::MORE_REASONS.into_any(),
            move || sentences(&more),
        )
    });
    let how = need
        .how
        .iter()
        .map(|line| view! { <p class="need-how">{line.clone()}</p> })
        .collect_view();
    let cautions = (!need.cautions.is_empty()).then(|| {
        let cautions = need
            .cautions
            .iter()
            .map(|caution| view! { <li>{caution.clone()}</li> })
            .collect_view();
        view! { <ul class="need-cautions">{cautions}</ul> }
    });
    let place = (!need.name.is_empty()).then(|| {
        view! {
            <a class="link need-heap" href=heap_address(&need.heap)>
                {words::OPEN_THE_HEAP}
                {of_which(need)}
            </a>
        }
    });
    view! {
        <li class=class>
            <p class="need-where"><span class="need-soon">{need.how_soon.clone()}</span>{place}</p>
            <h3 class="need-what">{need.headline.clone()}</h3>
            <p class="need-why">{first_reason}</p>
            {how}
            {cautions}
            {more}
            {act(hub, need, is_first, open)}
        </li>
    }
    .into_any()
}

fn heap_address(heap: &str) -> String {
    format!("{}/{heap}", Route::Heaps.address())
}

/// What there is to tap: it logs, it opens a form in place, or it leads to where the rest is done.
fn act(hub: Hub, need: &NeedTold, is_first: bool, open: Open) -> AnyView {
    let class = if is_first { "main-act" } else { "need-act" };
    if let Some(content) = logged(&need.entry) {
        return log_button(hub, class, need, content);
    }
    let (address, word) = match (need.kind.as_str(), need.heap.parse::<EventId>()) {
        (kind @ ("read_heat" | "look"), Ok(heap)) => {
            return form_in_place(hub, class, need, heap, kind == "read_heat", open);
        }
        ("harvest", Ok(_)) => (heap_address(&need.heap), words::TO_HARVEST),
        ("add_browns" | "add_greens", Ok(_)) => (heap_address(&need.heap), words::TO_FEED),
        ("test", Ok(_)) => (heap_address(&need.heap), words::TO_TEST),
        (_, Ok(_)) => (heap_address(&need.heap), words::TO_THE_HEAP),
        (_, Err(_)) => (Route::Stores.address(), words::TO_THE_STORES),
    };
    let class = if is_first {
        "main-act act-link"
    } else {
        "need-act act-link"
    };
    view! { <a class=class href=address>{word}{of_which(need)}</a> }.into_any()
}

/// What a line of the worker would log.
fn logged(line: &str) -> Option<Content> {
    match Event::read(line).ok()?.what {
        What::Known(content) => Some(content),
        What::Unknown(_) => None,
    }
}

/// Tells buttons of one word apart for those who do not see their card.
fn of_which(need: &NeedTold) -> AnyView {
    let name = need.name.clone();
    (!name.is_empty())
        .then(|| view! { <span class="unseen">", "{name}</span> })
        .into_any()
}

fn log_button(hub: Hub, class: &'static str, need: &NeedTold, content: Content) -> AnyView {
    let sender = Sender::new(hub);
    // The card goes with its need: the heading takes the focus.
    let log = move |_| sender.send(Ok((content.clone(), None)), || focus("title"));
    view! {
        <button type="button" class=class on:click=log>{need.act.clone()}{of_which(need)}</button>
        {sender.fault()}
    }
    .into_any()
}

fn form_in_place(
    hub: Hub,
    class: &'static str,
    need: &NeedTold,
    heap: EventId,
    is_of_heat: bool,
    open: Open,
) -> AnyView {
    let word = if is_of_heat {
        words::READ_HEAT
    } else {
        words::LOOK
    };
    let key = (need.heap.clone(), need.kind.clone());
    let opened = key.clone();
    let is_open = Memo::new(move |_| open.with(|open| open.as_ref() == Some(&key)));
    let press = move |_| {
        open.set(Some(opened.clone()));
        if is_of_heat {
            // The keypad comes up with it.
            request_animation_frame(|| focus(read::TEMPERATURE));
        }
    };
    let close = move || {
        open.set(None);
        focus("title");
    };
    let which = need.name.clone();
    view! {
        {live_if(move || {
            let press = press.clone();
            let which = which.clone();
            (!is_open.get()).then(|| {
                view! {
                    <button type="button" class=class on:click=press>{word}<span class="unseen">", "{which}</span></button>
                }
                .into_any()
            })
        })}
        {live_if(move || is_open.get().then(|| read::short(hub, heap, is_of_heat, close)))}
    }
    .into_any()
}
