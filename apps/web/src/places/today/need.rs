//! Something that is needed: what to do, why, and the one thing to tap.

use heapwright_journal::{Content, Event, EventId, What};
use heapwright_texts::messages::today_place as texts;
use heapwright_wire::NeedTold;
use heapwright_wording::today_on_the_page as words;
use leptos::prelude::*;

use super::aside;
use super::board::{Board, Card, Key};
use crate::language;
use crate::parts::focus;
use crate::parts::fold::{folded, sentences};
use crate::parts::form::Sender;
use crate::parts::live::{live, live_if};
use crate::parts::marked::words_of;
use crate::places::heap::{Asked, ask_for, read};
use crate::shell::{Hub, Route};

/// The card of a need. It stays where it is as long as the need is there, with what is typed into it.
pub fn need_view(hub: Hub, board: Board, key: Key) -> AnyView {
    // What goes away is shown as it was.
    let card = {
        let key = key.clone();
        Memo::new(move |last: Option<&Card>| {
            board
                .card(&key)
                .or_else(|| last.cloned())
                .unwrap_or_default()
        })
    };
    let need = Memo::new(move |_| card.with(|card| card.need.clone()));
    let is_first = Memo::new(move |_| card.with(|card| card.is_first));
    let class = move || {
        let is_now = need.with(|need| need.urgency == "now");
        match (is_first.get(), is_now) {
            (true, true) => "card need need-first need-now",
            (true, false) => "card need need-first",
            (false, true) => "card need need-now",
            (false, false) => "card need",
        }
    };
    let later = {
        let key = key.clone();
        // What is being typed for it is finished first.
        let is_open = Memo::new(move |_| board.open.with(|open| open.as_ref() == Some(&key)));
        move || {
            need.with(|need| {
                (aside::can_wait(need) && !is_open.get()).then(|| aside::button(board, need))
            })
        }
    };
    view! {
        <li class=class>
            {live(move || need.with(told))}
            {live_if(later)}
            {act(hub, board, key, need, is_first)}
        </li>
    }
    .into_any()
}

/// What to do and why.
fn told(need: &NeedTold) -> AnyView {
    let mut why = need.why.iter();
    let first_reason = why.next().cloned();
    let more: Vec<String> = why.cloned().collect();
    let more = (!more.is_empty()).then(|| {
        folded(
            "more need-more",
            words::more_reasons(language::locale()).into_any(),
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
                {of_need(words::open_the_heap(language::locale()), &need.name)}
            </a>
        }
    });
    view! {
        <p class="need-where"><span class="need-soon">{need.how_soon.clone()}</span>{place}</p>
        <h3 class="need-what">{need.headline.clone()}</h3>
        <p class="need-why">{first_reason}</p>
        {how}
        {cautions}
        {more}
    }
    .into_any()
}

fn heap_address(heap: &str) -> String {
    format!("{}/{heap}", Route::Heaps.address())
}

/// What there is to tap: it logs, it opens a form in place, or it leads to where the rest is done.
fn act(hub: Hub, board: Board, key: Key, need: Memo<NeedTold>, is_first: Memo<bool>) -> AnyView {
    let class = move || {
        if is_first.get() {
            "main-act"
        } else {
            "need-act"
        }
    };
    let is_of_heat = key.kind == "read_heat";
    if (is_of_heat || key.kind == "look")
        && let Ok(heap) = key.heap.parse::<EventId>()
    {
        let name = need.with_untracked(|need| need.name.clone());
        return form_in_place(hub, board, key, heap, class, &name, is_of_heat);
    }
    let sender = Sender::new(hub);
    let button = move || {
        need.with(|need| match logged(need) {
            Some(content) => log_button(hub, board, sender, key.clone(), class, need, content),
            None => way(need, is_first),
        })
    };
    live(button)
}

/// Leads to where it is done.
fn way(need: &NeedTold, is_first: Memo<bool>) -> AnyView {
    let heap = need.heap.parse::<EventId>().ok();
    let (word, form) = match (need.kind.as_str(), heap) {
        (_, None) => (words::to_the_stores(language::locale()), None),
        ("harvest", _) => (words::to_harvest(language::locale()), Some(Asked::Harvest)),
        ("add_browns" | "add_greens", _) => (words::to_feed(language::locale()), Some(Asked::Feed)),
        ("test", _) => (words::to_test(language::locale()), Some(Asked::Test)),
        _ => (words::to_the_heap(language::locale()), None),
    };
    let address = match heap {
        Some(_) => heap_address(&need.heap),
        None => Route::Stores.address(),
    };
    let class = move || match is_first.get() {
        true => "main-act act-link",
        false => "need-act act-link",
    };
    let open = move |_| {
        if let (Some(heap), Some(form)) = (heap, form) {
            ask_for(heap, form);
        }
    };
    view! { <a class=class href=address on:click=open>{of_need(word, &need.name)}</a> }.into_any()
}

/// What one tap logs. How much was harvested nobody knows but the keeper.
fn logged(need: &NeedTold) -> Option<Content> {
    if need.kind == "harvest" {
        return None;
    }
    match Event::read(&need.entry).ok()?.what {
        What::Known(content) => Some(content),
        What::Unknown(_) => None,
    }
}

/// What a tap would write down, where its button does not say how much.
fn writes(hub: Hub, content: &Content) -> Option<String> {
    if !matches!(content, Content::Fed(_)) {
        return None;
    }
    // The need is told anew when the journal changes: the button need not be made anew before.
    let entry = &untrack(|| {
        let locale = hub.page.with(|page| page.locale());
        hub.keeper.told(content.clone(), locale)
    });
    Some(texts::WritesDown { entry }.said(language::locale()))
}

/// Tells controls of one word apart for those who do not see their card.
fn of_need(words: &str, heap: &str) -> AnyView {
    if heap.is_empty() {
        words.to_owned().into_any()
    } else {
        words_of(words, heap)
    }
}

fn log_button(
    hub: Hub,
    board: Board,
    sender: Sender,
    key: Key,
    class: impl Fn() -> &'static str + Send + 'static,
    need: &NeedTold,
    content: Content,
) -> AnyView {
    let act = need.act.clone();
    let writes_id = key.writes_id();
    let writes = writes(hub, &content).map(|line| {
        let id = writes_id.clone();
        view! { <p class="need-writes" id=id>{line}</p> }
    });
    let described_by = writes.is_some().then_some(writes_id);
    let is_logged = {
        let key = key.clone();
        Memo::new(move |_| board.is_logged(&key))
    };
    let log = move |_| {
        // A tap that was meant for what lay here before does nothing.
        if is_logged.get_untracked() || board.is_settling() {
            return;
        }
        let key = key.clone();
        sender.send(Ok((content.clone(), None)), move || {
            board.log(hub, key.clone());
            // The card goes with its need: the heading takes the focus.
            focus("title");
        });
    };
    let word = Memo::new(move |_| match is_logged.get() {
        true => words::logged(language::locale()).to_owned(),
        false => act.clone(),
    });
    let heap = need.name.clone();
    let words = live(move || word.with(|word| of_need(word, &heap)));
    view! {
        {writes}
        <button type="button" class=class aria-describedby=described_by disabled=move || is_logged.get() on:click=log>
            {words}
        </button>
        {sender.fault()}
    }
    .into_any()
}

fn form_in_place(
    hub: Hub,
    board: Board,
    key: Key,
    heap: EventId,
    class: impl Fn() -> &'static str + Copy + Send + 'static,
    name: &str,
    is_of_heat: bool,
) -> AnyView {
    let word = if is_of_heat {
        words::read_heat(language::locale())
    } else {
        words::look(language::locale())
    };
    let open = board.open;
    let opened = key.clone();
    let is_open = Memo::new(move |_| open.with(|open| open.as_ref() == Some(&key)));
    let press = move |_| {
        open.set(Some(opened.clone()));
        // The keypad comes up with the field of a temperature.
        let field = if is_of_heat {
            read::TEMPERATURE
        } else {
            read::FIRST_CHIP
        };
        request_animation_frame(move || focus(field));
    };
    let close = move || {
        open.set(None);
        focus("title");
    };
    let name = name.to_owned();
    view! {
        {live_if(move || {
            let press = press.clone();
            let words = words_of(word, &name);
            (!is_open.get()).then(|| {
                view! {
                    <button type="button" class=class on:click=press>{words}</button>
                }
                .into_any()
            })
        })}
        {live_if(move || is_open.get().then(|| read::short(hub, heap, is_of_heat, close)))}
    }
    .into_any()
}
