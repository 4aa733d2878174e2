//! What holds the places: the state and its keeping, the header with the bar of places, the footer.

mod answering;
mod done;
mod keep;
mod route;
mod sun;

use std::ops::Range;
use std::sync::Arc;

use leptos::prelude::*;

use heapwright_garden::Garden;
use heapwright_texts::messages::shell as texts;
use heapwright_wording as wording;

pub use route::{DEMO_ADDRESS, Route, entitle};
pub use sun::sun;

use crate::asking::{self, Shown};
use crate::demo;
use crate::keeping::Keeper;
use crate::language;
use crate::later::{Later, later};
use crate::parts::focus;
use crate::parts::live::{live, live_if, live_text, nothing, spawn};
use crate::places::balance::Balance;
use crate::shell::answering::Answering;
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
    /// What comes of it, a moment after it.
    pub shown: View<Shown>,
    /// The same for what explains it, another moment later.
    pub explained: View<Shown>,
    /// Computes what is shown.
    pub answering: Answering,
    /// The garden of the journal, when that has stores or vessels of its own; else the example
    /// stands in. Without stores those of the example stand in reach.
    pub own: View<Option<Garden>>,
    /// Tells what the keeper does.
    pub act: Callback<Action>,
    /// True when there is something to take back.
    pub can_undo: Memo<bool>,
    /// Takes the last change back.
    pub undo: Callback<()>,
    /// The journal.
    pub keeper: Keeper,
    /// What is fetched after the first answer, once it is here.
    pub later: RwSignal<Option<Later>>,
}

/// The hub of this page.
pub fn hub() -> Hub {
    expect_context::<Hub>()
}

fn here(home: Route) -> Route {
    Route::read(&window().location().hash().unwrap_or_default(), home)
}

impl Hub {
    /// True while stores of the example stand in reach.
    pub fn shows_example(&self) -> bool {
        self.page
            .with(|page| page.reach.iter().any(|line| line.stored))
            && self
                .own
                .with(|own| own.as_ref().is_none_or(|own| own.stores.is_empty()))
    }
}

/// What the page opens with.
pub struct First {
    page: Arc<Page>,
    shown: Arc<Shown>,
}

impl First {
    /// What was kept of the last time, and what comes of it without the journal.
    #[must_use]
    pub fn computed() -> Self {
        let page = Arc::new(keep::kept().unwrap_or_default());
        // Who has heaps has vessels as usual until the journal tells of others, none of the example.
        let own = (!page.tiles.is_empty()).then(Garden::default);
        Self {
            shown: Arc::new(asking::shown(&page, own.as_ref(), None)),
            page,
        }
    }
}

/// The whole page.
#[component]
pub fn Shell(
    /// What it opens with.
    first: First,
) -> impl IntoView {
    let (page, set_page) = signal(first.page);
    let before = RwSignal::new(Vec::<Arc<Page>>::new());
    let keeper = Keeper::start();
    let rest = RwSignal::new(None::<Later>);
    let own = Memo::new(move |_| {
        keeper.with(|journal| Arc::new(rest.get().and_then(|later| (later.garden)(journal))))
    });
    let keeps_stores = Memo::new(move |_| {
        rest.get()
            .is_some_and(|later| keeper.with(later.keeps_stores))
    });
    let answering = Answering::start(page, own, first.shown);
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
            let now = page.get_untracked();
            set_page.set(Arc::new(Page::clone(&last).beside(&now)));
            // What was in the stores then may not be there now.
            if let Some(garden) = own.get_untracked().as_ref()
                && keeps_stores.get_untracked()
            {
                act.run(Action::Stores(garden.stores.clone()));
            }
        }
    });
    // What the journal has in its stores is what is in reach; without any, the example. What its
    // heaps are fed is what the tiles offer, and tells the next start that there are heaps.
    Effect::new(move |had_stores: Option<bool>| {
        if let Some(tiles) = rest.get().and_then(|later| keeper.with(later.tiles)) {
            act.run(Action::Tiles(tiles));
        }
        let own = own.get();
        let kept = own.as_ref().as_ref().filter(|_| keeps_stores.get());
        let stores = match kept {
            Some(garden) => Some(garden.stores.clone()),
            None => (had_stores == Some(true)).then(|| demo::garden().stores),
        };
        if let Some(stores) = stores {
            act.run(Action::Stores(stores));
        }
        kept.is_some()
    });
    let home = if page.with_untracked(|page| page.tiles.is_empty()) {
        Route::Balance
    } else {
        Route::Today
    };
    let route = RwSignal::new(here(home));
    let hub = Hub {
        page: View(page.into()),
        shown: View(answering.shown.into()),
        explained: View(answering.explained.into()),
        answering,
        own: View(own.into()),
        act,
        can_undo,
        undo,
        keeper,
        later: rest,
    };
    provide_context(hub);
    let owner = Owner::current();
    spawn(async move {
        // When it cannot be fetched, the journal cannot be opened either, and the page says so.
        if let Ok(later) = later().await {
            rest.set(Some(later));
            if let Some(owner) = owner {
                owner.with(|| (later.beside)(hub, route));
            }
        }
    });
    window_event_listener_untyped("hashchange", move |_| {
        let now = here(home);
        // A place that is asked for again stays as it is.
        if route.get_untracked() != now {
            route.set(now);
        }
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
    Effect::new(move |last: Option<Route>| {
        let now = route.get();
        // A heap has its name, which only the later part knows.
        if !matches!(now, Route::Heap(_)) {
            entitle(now.name());
        }
        if now != Route::Balance && rest.with(Option::is_none) {
            return last.unwrap_or(now);
        }
        // Not at the start: then the focus is where the browser put it.
        if last.is_some_and(|last| last != now) {
            window().scroll_to_with_x_and_y(0.0, 0.0);
            focus("title");
        }
        now
    });
    let note = move || {
        if keeper.with(|journal| journal.is_demo) {
            Some(wording::page::demo(language::locale()))
        } else {
            (route.get() == Route::Balance && hub.shows_example())
                .then_some(wording::page::example(language::locale()))
        }
        .unwrap_or_default()
        .to_owned()
    };
    let place = move || match route.get() {
        Route::Balance => view! { <Balance/> }.into_any(),
        other => match rest.get() {
            Some(later) => (later.place)(other),
            None => nothing(),
        },
    };
    view! {
        <header class="top">
            <p class="mark">
                <svg class="mark-heap" viewBox="0 0 32 32" aria-hidden="true" inner_html=MARK></svg>
                {wording::page::name(language::locale())}
            </p>
            <nav class="places" aria-label=texts::places(language::locale())>
                <div class="places-daily">{places(route, 0..Route::DAILY)}</div>
                <div class="places-corner">{places(route, Route::DAILY..Route::ALL.len())}</div>
            </nav>
            // Its room is kept from the first paint on, so that nothing moves when it comes.
            <div class="sun-room">{live_if(move || rest.get().map(|later| (later.sun)(hub)))}</div>
            <p class="place-note">{live_text(note)}</p>
        </header>
        <main>
            {done::bar(hub)}
            {live(place)}
        </main>
        <footer class="foot">
            <p>{wording::disclaimer(language::locale())}</p>
            <p role="status">
                {move || not_kept.get().then(|| texts::not_kept(language::locale()))}
            </p>
        </footer>
    }
}

fn places(route: RwSignal<Route>, of: Range<usize>) -> AnyView {
    let skipped = of.start;
    Route::ALL
        .into_iter()
        .zip(PICTURES)
        .take(of.end)
        .skip(skipped)
        .map(|(place, picture)| {
            view! {
                <a href=place.address() aria-current=move || route.get().is_in(place).then_some("page")>
                    <svg viewBox="0 0 24 24" aria-hidden="true" inner_html=picture></svg>
                    {place.name()}
                </a>
            }
        })
        .collect_view()
        .into_any()
}

/// A heap cut open: outline, warm core, layers.
const MARK: &str = r#"<path class="mark-outline" d="M3 27C6 16 11 7 16 7s10 9 13 20z"/><path class="mark-layer" d="M7 21h18M10 15h12"/><circle class="mark-core" cx="16" cy="20" r="3.5"/>"#;

/// A tick in a ring, a pair of scales, a heap, a box with a lid, a sprout over a bed, a book, two
/// sliders.
const PICTURES: [&str; 7] = [
    r#"<circle cx="12" cy="12" r="9"/><path d="M8 12l3 3l5-6"/>"#,
    r#"<path d="M12 4v16M7 20h10M4 7h16M4 7l-2 6h5zM20 7l-3 6h5z"/>"#,
    r#"<path d="M2 20C5 10 8 5 12 5s7 5 10 15zM7 14h10"/>"#,
    r#"<path d="M3 5h18v4H3zM5 9v11h14V9M10 13h4"/>"#,
    r#"<path d="M2 20v-4h20v4M12 16V9M12 10C8 10 6 8 6 4c4 0 6 2 6 6c0-3 2-5 6-5c0 4-2 6-6 6"/>"#,
    r#"<path d="M5 4h14v16H5zM9 4v16M12 9h4M12 13h4"/>"#,
    r#"<path d="M3 8h9M18 8h3M3 16h3M12 16h9"/><circle cx="15" cy="8" r="3"/><circle cx="9" cy="16" r="3"/>"#,
];
