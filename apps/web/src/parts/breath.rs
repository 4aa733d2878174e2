//! Work in pieces: the browser draws and hears taps in between.

use leptos::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::live::{live_if, nothing, spawn};
use crate::keeping::device;

/// Lets the browser do what else it has to do: draw, hear a tap.
pub async fn breath() {
    let _ = JsFuture::from(device::breath()).await;
}

/// Waits until what has changed has been drawn, but not for ever: what is not in sight is not drawn.
pub async fn painted() {
    let _ = JsFuture::from(device::painted()).await;
}

/// Waits for a frame, and for all that waits already: each goes on after a frame of its own, and none
/// of them has to bear the work of several.
pub async fn turn() {
    let _ = JsFuture::from(device::turn()).await;
}

/// The same value a moment later: what reads it is made anew in a piece of work of its own.
pub fn a_moment_later<T>(source: Signal<T>) -> Signal<T>
where
    T: Clone + Send + Sync + 'static,
{
    let later = RwSignal::new(source.get_untracked());
    let is_due = StoredValue::new(false);
    Effect::new(move |_| {
        source.track();
        if is_due.get_value() {
            return;
        }
        is_due.set_value(true);
        spawn(async move {
            turn().await;
            // By then the place may have been left.
            if is_due.try_set_value(false).is_none()
                && let Some(now) = source.try_get_untracked()
            {
                let _ = later.try_set(now);
            }
        });
    });
    later.into()
}

/// A view that is there only while there is something to show, and comes when what stands above it has
/// been drawn.
pub fn in_turn(view: impl Fn() -> Option<AnyView> + Send + 'static) -> AnyView {
    let has_come = RwSignal::new(false);
    spawn(async move {
        turn().await;
        // By then the place may have been left.
        let _ = has_come.try_set(true);
    });
    live_if(move || if has_come.get() { view() } else { None })
}

/// Views one below the other, of which each comes when the one above it has been drawn.
pub fn one_by_one(views: Vec<Box<dyn Fn() -> AnyView + Send>>) -> AnyView {
    let all = views.len();
    let come = RwSignal::new(1);
    spawn(async move {
        for _ in 1..all {
            turn().await;
            // By then the place may have been left.
            if come.try_update(|come| *come += 1).is_none() {
                return;
            }
        }
    });
    let views = views
        .into_iter()
        .enumerate()
        .map(|(index, view)| {
            let has_come = Memo::new(move |_| come.get() > index);
            live_if(move || has_come.get().then(|| untrack(&view)))
        })
        .collect_view();
    // What waits for the whole place can see that it is not there yet.
    let rest = move || {
        if come.get() < all {
            view! { <div class="coming" hidden></div> }.into_any()
        } else {
            nothing()
        }
    };
    view! { {views}{move || rest()} }.into_any()
}
