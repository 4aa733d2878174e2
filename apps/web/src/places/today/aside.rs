//! What the keeper puts aside for the rest of a day. It stays on the page in one line, and comes back with
//! the next day, by a tap, or by itself once it is urgent.
//!
//! It is kept on this device and not in the journal: nothing was done or seen, and who else tends the heap
//! may have time today.

use heapwright_texts::messages::{shell, today_place as texts};
use heapwright_wire::NeedTold;
use js_sys::Function;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use wasm_bindgen::{JsCast, JsValue};

use super::board::Board;
use crate::keeping::device;
use crate::language;
use crate::parts::focus_unscrolled;
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

/// Puts aside, or brings back. What another day left behind goes.
fn change(list: &mut Vec<Put>, put: &Put, is_aside: bool) {
    list.retain(|other| other.day == put.day && other != put);
    if is_aside {
        list.push(put.clone());
    }
}

/// What the device keeps; `None` when it cannot be asked.
async fn read() -> Option<Vec<Put>> {
    let text = device::get(STORE, KEY).await.ok()?.as_string();
    Some(
        text.and_then(|text| serde_json::from_str(&text).ok())
            .unwrap_or_default(),
    )
}

/// Changes what the device keeps, which another tab may have changed meanwhile; what it keeps now, or
/// `None` when nothing could be kept.
async fn keep(put: &Put, is_aside: bool) -> Option<Vec<Put>> {
    let free = device::lock().await.ok()?;
    let list = rewrite(put, is_aside).await;
    if let Some(free) = free.dyn_ref::<Function>() {
        // A lock that the browser will not take back ends with the tab.
        let _ = free.call0(&JsValue::NULL);
    }
    list
}

async fn rewrite(put: &Put, is_aside: bool) -> Option<Vec<Put>> {
    let mut list = read().await?;
    change(&mut list, put, is_aside);
    let text = serde_json::to_string(&list).ok()?;
    device::put(STORE, KEY, &JsValue::from_str(&text))
        .await
        .ok()?;
    Some(list)
}

/// What was put aside.
#[derive(Clone, Copy)]
pub struct Aside {
    hub: Hub,
    all: RwSignal<Vec<Put>>,
    /// How often it was changed on the page: what was read before the last change is not shown.
    changes: StoredValue<usize>,
}

impl Aside {
    /// What the device knows of.
    pub fn kept(hub: Hub) -> Self {
        let aside = Self {
            hub,
            all: RwSignal::new(Vec::new()),
            changes: StoredValue::new(0),
        };
        // The journal that is open, and whether it is the invented garden, in which nothing is kept.
        let open = Memo::new(move |_| {
            let is_demo = hub.keeper.with(|journal| journal.is_demo);
            (hub.keeper.opened(), is_demo)
        });
        Effect::new(move |_| {
            let (opened, is_demo) = open.get();
            aside.all.set(Vec::new());
            if is_demo {
                return;
            }
            let changes = aside.changes.get_value();
            spawn(async move {
                let kept = read().await;
                aside.show(kept, opened, changes);
            });
        });
        aside
    }

    /// Shows what the device keeps, unless it is another garden's or was changed since.
    fn show(self, kept: Option<Vec<Put>>, opened: u32, changes: usize) {
        if let Some(kept) = kept
            && self.hub.keeper.is_open(opened).is_ok()
            && self.changes.try_get_value() == Some(changes)
        {
            // The place may have been left.
            let _ = self.all.try_set(kept);
        }
    }

    /// True for what is put aside on this day. What is urgent never is.
    pub fn has(self, need: &NeedTold, day: &str) -> bool {
        can_wait(need)
            && self.all.with(|all| {
                all.iter()
                    .any(|put| put.day == day && put.heap == need.heap && put.kind == need.kind)
            })
    }

    /// Puts a need aside for a day, or brings it back: at once on the page, then on the device.
    fn change(self, need: &NeedTold, day: String, is_aside: bool) {
        let put = Put {
            day,
            heap: need.heap.clone(),
            kind: need.kind.clone(),
        };
        self.all.update(|all| change(all, &put, is_aside));
        self.changes.update_value(|changes| *changes += 1);
        // The invented garden leaves nothing behind.
        if self.hub.keeper.peek(|journal| journal.is_demo) {
            return;
        }
        let (opened, changes) = (self.hub.keeper.opened(), self.changes.get_value());
        spawn(async move {
            // Where nothing can be kept it holds until the page is left.
            let kept = keep(&put, is_aside).await;
            self.show(kept, opened, changes);
        });
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
        // The next tap must log nothing by mistake; one that puts aside is heard even then.
        board.settle();
        let day = untrack(|| board.day());
        board.aside.change(&need, day, true);
        // The card goes: the heading takes the focus.
        focus_unscrolled("title");
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
                let day = untrack(|| board.day());
                board.aside.change(&need, day, false);
                focus_unscrolled("title");
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
