//! What is fetched right after the first answer is on the page: every place but Balance, what explains
//! the answer there, the search by name, and all that reads and writes the journal.
//!
//! `cargo xtask bundle` puts what only [`later`] leads to into a file of its own. So whatever is called
//! by name from elsewhere comes with the first file; what is called through [`Later`] does not.

use std::pin::Pin;

use heapwright_garden::Garden;
use heapwright_journal::{Content, EventId, Moment};
use heapwright_texts::Locale;
use leptos::prelude::*;
use leptos::wasm_split::{SplitLoaderError, wasm_split};

use crate::keeping::{Journal, KeepError, Keeper, device};
use crate::language;
use crate::places::{
    balance::under_the_answer, beds::Beds, heap, heap::HeapPlace, heaps::Heaps, known,
    logbook::Logbook, settings::Settings, stores::Stores, today, today::Today,
};
use crate::shell::{Hub, Route, sun};

/// Something that goes on by itself.
pub type Work<T> = Pin<Box<dyn Future<Output = T>>>;

/// Logs what was done when; the error is a sentence.
pub type Log = fn(Keeper, Content, Option<Moment>, Locale) -> Work<Result<EventId, String>>;

/// The ways into the later part.
#[derive(Clone, Copy)]
pub struct Later {
    /// A place other than Balance.
    pub place: fn(Route) -> AnyView,
    /// What explains the answer in Balance.
    pub under_the_answer: fn() -> AnyView,
    /// Ids and names of the materials that some words may mean, best first.
    pub find: fn(&str, usize) -> Vec<(String, String)>,
    /// The garden of the journal, when that has heaps, stores, or vessels or materials that were
    /// weighed.
    pub garden: fn(&Journal) -> Option<Garden>,
    /// Whether something was ever put by: what is used up is no reason to show an example.
    pub keeps_stores: fn(&Journal) -> bool,
    /// What to show on the tiles of Balance, nothing when there are no heaps; `None` while that is
    /// not known, and of a garden that is not the keeper's own.
    pub tiles: fn(&Journal) -> Option<String>,
    /// What goes on beside all places: the title of the window, reminders.
    pub beside: fn(Hub, RwSignal<Route>),
    /// The switch for bright sun.
    pub sun: fn(Hub) -> AnyView,
    /// Reads the journal from its start.
    pub open: fn(Keeper) -> Work<Result<(), KeepError>>,
    /// Reads what other tabs wrote since.
    pub follow: fn(Keeper) -> Work<Result<(), KeepError>>,
    /// Logs what was done; the error is a sentence.
    pub log: Log,
    /// Takes an entry back, or brings it back.
    pub withdraw: fn(Keeper, EventId, bool, Locale) -> Work<()>,
}

/// The later part, fetched when this is first called.
#[wasm_split(later, wasm_split_path = ::leptos::wasm_split, fallible)]
pub fn later() -> Result<Later, KeepError> {
    Ok(Later {
        place,
        under_the_answer,
        find,
        garden,
        keeps_stores: |journal| !journal.state.stores().shelves.is_empty(),
        tiles: known::known,
        beside,
        sun,
        open: |keeper| Box::pin(keeper.open_now()),
        follow: |keeper| Box::pin(keeper.follow_now()),
        log: |keeper, content, happened, locale| {
            Box::pin(keeper.log_now(content, happened, locale))
        },
        withdraw: |keeper, event, withdraw, locale| {
            Box::pin(keeper.withdraw_now(event, withdraw, locale))
        },
    })
}

impl From<SplitLoaderError> for KeepError {
    fn from(_: SplitLoaderError) -> Self {
        Self::Unfetched
    }
}

fn beside(hub: Hub, route: RwSignal<Route>) {
    heap::keep_entitled(hub, route);
    today::reminders::keep_told(hub, route);
}

fn place(route: Route) -> AnyView {
    match route {
        // Comes with the first file, and is shown without this one.
        Route::Balance => ().into_any(),
        Route::Today => view! { <Today/> }.into_any(),
        Route::Heaps => view! { <Heaps/> }.into_any(),
        Route::Heap(id) => view! { <HeapPlace id=id/> }.into_any(),
        Route::Beds => view! { <Beds/> }.into_any(),
        Route::Stores => view! { <Stores/> }.into_any(),
        Route::Logbook => view! { <Logbook/> }.into_any(),
        Route::Settings => view! { <Settings/> }.into_any(),
    }
}

fn find(words: &str, most: usize) -> Vec<(String, String)> {
    let catalogue = language::catalogue();
    let mut names: Vec<(String, String)> = Vec::new();
    // A material is found by several of its names.
    for found in catalogue.search(words, 3 * most) {
        let id = found.material.as_str();
        if names.len() < most
            && !names.iter().any(|(known, _)| known == id)
            && let Some(material) = catalogue.material(id)
        {
            names.push((id.to_owned(), material.name.clone()));
        }
    }
    names
}

fn garden(journal: &Journal) -> Option<Garden> {
    let now = journal.state.garden();
    let is_own = journal.state.heaps().next().is_some()
        || !journal.state.stores().shelves.is_empty()
        || !now.measures.is_empty()
        || !now.measurements.is_empty();
    is_own.then(|| Garden::from_state(language::catalogue(), &journal.state, device::now()))
}
