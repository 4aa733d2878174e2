//! What the keeper puts aside for the rest of a day. It stays on the page in one line, and comes back with
//! the next day, by a tap, or by itself once it is urgent.
//!
//! It is kept on this device and not in the journal: nothing was done or seen, and who else tends the heap
//! may have time today.

use heapwright_texts::messages::{shell, today_place as texts};
use heapwright_wire::NeedTold;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use wasm_bindgen::JsValue;

use super::board::Board;
use crate::keeping::device;
use crate::language;
use crate::parts::focus;
use crate::parts::live::{named_button, spawn};
use crate::shell::Hub;

/// Where the device keeps the list.
const STORE: &str = "facts";
const KEY: &str = "put_aside";

/// Needs of one kind of a heap, on one day.
#[derive(Clone, Debug, Deserialize, PartialEq, Eq, Serialize)]
struct Put {
    /// As "2026-05-01", by the clock of the device.
    day: String,
    heap: String,
    kind: String,
}

/// What was put aside.
#[derive(Clone, Copy)]
pub struct Aside {
    hub: Hub,
    all: RwSignal<Vec<Put>>,
}

impl Aside {
    /// What the device knows of.
    pub fn kept(hub: Hub) -> Self {
        let all = RwSignal::new(Vec::new());
        // The journal that is open, and whether it is the invented garden, in which nothing is kept.
        let open = Memo::new(move |_| {
            let is_demo = hub.keeper.with(|journal| journal.is_demo);
            (hub.keeper.opened(), is_demo)
        });
        Effect::new(move |_| {
            let (opened, is_demo) = open.get();
            all.set(Vec::new());
            if is_demo {
                return;
            }
            spawn(async move {
                let text = device::get(STORE, KEY).await.ok();
                let kept = text
                    .and_then(|text| text.as_string())
                    .and_then(|text| serde_json::from_str::<Vec<Put>>(&text).ok());
                if let Some(kept) = kept
                    && hub.keeper.is_open(opened).is_ok()
                {
                    // The place may have been left, or something put aside meanwhile.
                    let _ = all.try_update(|all| all.extend(kept));
                }
            });
        });
        Self { hub, all }
    }

    /// True for what is put aside on this day. What is urgent never is.
    pub fn has(self, need: &NeedTold, day: &str) -> bool {
        can_wait(need)
            && self.all.with(|all| {
                all.iter()
                    .any(|put| put.day == day && put.heap == need.heap && put.kind == need.kind)
            })
    }

    fn put(self, need: &NeedTold, day: String) {
        let put = Put {
            day: day.clone(),
            heap: need.heap.clone(),
            kind: need.kind.clone(),
        };
        self.change(|all| {
            all.retain(|other| other.day == day);
            all.push(put);
        });
    }

    fn bring_back(self, need: &NeedTold) {
        self.change(|all| all.retain(|put| put.heap != need.heap || put.kind != need.kind));
    }

    fn change(self, change: impl FnOnce(&mut Vec<Put>)) {
        self.all.update(change);
        let text = serde_json::to_string(&self.all.get_untracked());
        // The invented garden leaves nothing behind.
        if let Ok(text) = text
            && !self.hub.keeper.peek(|journal| journal.is_demo)
        {
            spawn(async move {
                // Where nothing can be kept it holds until the page is left.
                let _ = device::put(STORE, KEY, &JsValue::from_str(&text)).await;
            });
        }
    }
}

/// True when a need has a time and bears waiting for another day. What is to be done when it suits the
/// keeper asks for nothing today; what is urgent cannot wait.
pub fn can_wait(need: &NeedTold) -> bool {
    need.urgency == "soon"
}

/// Puts a need aside.
pub fn button(board: Board, need: &NeedTold) -> AnyView {
    let locale = language::locale();
    let name = texts::NotTodayOf {
        need: &need.headline,
    }
    .said(locale);
    let need = need.clone();
    let put = move || {
        // A tap that was meant for what lay here before does nothing.
        if board.is_settling() {
            return;
        }
        board.settle();
        board.aside.put(&need, untrack(|| board.day()));
        // The card goes: the heading takes the focus.
        focus("title");
    };
    named_button(
        "quiet need-later",
        texts::not_today(locale),
        Some(name),
        put,
    )
}

/// What is put aside, each with the way back.
pub fn section(board: Board, needs: &[NeedTold]) -> AnyView {
    let locale = language::locale();
    let rows = needs
        .iter()
        .map(|need| {
            let name = texts::BringBackNeed {
                need: &need.headline,
            }
            .said(locale);
            let headline = need.headline.clone();
            let need = need.clone();
            let back = move || {
                board.settle();
                board.aside.bring_back(&need);
                focus("title");
            };
            let back = named_button("quiet", shell::bring_back(locale), Some(name), back);
            view! { <li class="aside-need"><span>{headline}</span>{back}</li> }
        })
        .collect_view();
    view! {
        <section class="card" aria-labelledby="aside-title">
            <h2 id="aside-title">{texts::put_aside(locale)}</h2>
            <p class="hint">{texts::put_aside_hint(locale)}</p>
            <ul class="quiet-heaps">{rows}</ul>
        </section>
    }
    .into_any()
}
