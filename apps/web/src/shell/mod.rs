//! What holds the places: the state and its keeping, the header, the settings, the footer.

mod keep;
mod settings;

use std::sync::Arc;

use leptos::prelude::*;

use heapwright_wording as wording;

use crate::asking::{self, Shown};
use crate::places::balance::Balance;
use crate::state::{Action, Light, Page, updated};

/// How many changes can be taken back.
const MOST_UNDO: usize = 50;

/// A value that goes down to the components and tells them when it changes.
///
/// It is shared behind a pointer, so that the machinery of signals is compiled
/// once for each kind of value and not once for each place that reads it: the
/// page is a tenth smaller for it.
pub struct View<T: Send + Sync + 'static>(Signal<Arc<T>>);

impl<T: Send + Sync> Clone for View<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync> Copy for View<T> {}

impl<T: Send + Sync> View<T> {
    /// The value; read anew when it changes.
    pub fn get(self) -> Arc<T> {
        self.0.get()
    }

    /// Something of the value; read anew when the value changes.
    pub fn with<Part>(self, part: impl FnOnce(&T) -> Part) -> Part {
        part(&self.get())
    }
}

/// What every component may read and call.
#[derive(Clone, Copy)]
pub struct Hub {
    /// What was tapped and typed.
    pub page: View<Page>,
    /// What comes of it.
    pub shown: View<Shown>,
    /// Tells what the keeper does.
    pub act: Callback<Action>,
    /// True when there is something to take back.
    pub can_undo: Memo<bool>,
    /// Takes the last change back.
    pub undo: Callback<()>,
}

/// The hub of this page.
pub fn hub() -> Hub {
    expect_context::<Hub>()
}

/// The whole page.
#[component]
pub fn Shell() -> impl IntoView {
    let (page, set_page) = signal(Arc::new(keep::kept().unwrap_or_default()));
    let before = RwSignal::new(Vec::<Arc<Page>>::new());
    let shown = Memo::new(move |_| Arc::new(asking::shown(&page.get())));
    let can_undo = Memo::new(move |_| before.with(|before| !before.is_empty()));
    let act = Callback::new(move |action: Action| {
        let now = page.get_untracked();
        let next = updated(&now, &action);
        // What changes nothing is no step to take back.
        if *now == next {
            return;
        }
        if action.can_be_undone() {
            before.update(|before| {
                before.push(now);
                if before.len() > MOST_UNDO {
                    before.remove(0);
                }
            });
        }
        set_page.set(Arc::new(next));
    });
    let undo = Callback::new(move |()| {
        let last = before.try_update(Vec::pop).flatten();
        if let Some(last) = last {
            set_page.set(last);
        }
    });
    provide_context(Hub {
        page: View(page.into()),
        shown: View(shown.into()),
        act,
        can_undo,
        undo,
    });
    let not_kept = RwSignal::new(false);
    Effect::new(move |_| not_kept.set(!keep::keep(&page.get())));
    Effect::new(move |_| {
        let light = match page.get().light {
            Light::Device => "device",
            Light::Sun => "sun",
            Light::Dark => "dark",
        };
        if let Some(root) = document().document_element() {
            // A missing attribute means "as the device is set".
            let _ = root.set_attribute("data-light", light);
        }
    });
    view! {
        <header class="top">
            <p class="mark">
                <svg class="mark-heap" viewBox="0 0 32 32" aria-hidden="true" inner_html=MARK></svg>
                {wording::page::NAME}
            </p>
            <p class="place-note">"Demo garden, invented"</p>
        </header>
        <main>
            <Balance/>
            <settings::Settings/>
        </main>
        <footer class="foot">
            <p>{wording::DISCLAIMER}</p>
            <p role="status">
                {move || not_kept.get().then_some("This browser does not let the page keep what you type: it is gone when you leave.")}
            </p>
        </footer>
    }
}

/// A heap cut open: outline, warm core, layers.
const MARK: &str = r#"<path class="mark-outline" d="M3 27C6 16 11 7 16 7s10 9 13 20z"/><path class="mark-layer" d="M7 21h18M10 15h12"/><circle class="mark-core" cx="16" cy="20" r="3.5"/>"#;
