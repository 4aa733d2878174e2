//! Balance: what is in hand, what to put with it.
//!
//! The answer comes with the first part of the page. What explains it ([`under_the_answer`]) is fetched
//! later and stands below it, so that nothing moves when it arrives.

mod answer;
mod cautions;
mod figures;
mod in_hand;
mod in_reach;
pub mod log_feed;
mod map;

use heapwright_texts::messages::{balance_explained, balance_place};
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::language;
use crate::parts::live::live_if;
use crate::shell::{DEMO_ADDRESS, Hub, hub};

/// Stands in a sentence where something with a look of its own comes: the object replacement of Unicode.
const GAP: &str = "\u{fffc}";

/// The place.
#[component]
pub fn Balance() -> impl IntoView {
    let hub = hub();
    let explained = move || hub.later.get().map(|later| (later.under_the_answer)());
    view! {
        <div class="balance">
            <div class="title-row">
                <h1 id="title" tabindex="-1">{wording::page::balance(language::locale())}</h1>
                {first_visit(hub)}
            </div>
            <div class="column">
                <in_hand::InHand/>
                <in_reach::InReach/>
            </div>
            <div class="column">
                <answer::Answer/>
                <answer::Ways/>
                {live_if(explained)}
            </div>
        </div>
    }
}

/// The way into the invented garden, for those who have no heap yet.
fn first_visit(hub: Hub) -> AnyView {
    live_if(move || {
        let has_heaps = hub.page.with(|page| !page.tiles.is_empty());
        let is_demo = hub.keeper.with(|journal| journal.is_demo);
        (!has_heaps && !is_demo).then(|| {
            view! { <a class="link" href=DEMO_ADDRESS>{wording::page::demo_enter(language::locale())}</a> }.into_any()
        })
    })
}

/// What can be done with the answer, and what stands behind it.
pub fn under_the_answer() -> AnyView {
    let hub = hub();
    view! {
        <section class="card log-feed" aria-labelledby="log-feed-title">
            <h2 id="log-feed-title">{balance_explained::log_this_feed(language::locale())}</h2>
            {log_feed::body(hub)}
        </section>
        <map::MixMap/>
        <figures::Figures/>
        <cautions::Cautions/>
    }
    .into_any()
}

/// The short name of a material.
pub(crate) fn short_name(id: &str) -> String {
    language::catalogue()
        .material(id)
        .map_or_else(|| id.to_owned(), |material| material.short_name.clone())
}

/// The conditions that mean something for a material, as options of a select.
pub(crate) fn condition_options(material: &str, present: &str) -> impl IntoView + use<> {
    let catalogue = language::catalogue();
    let usual = balance_place::as_usual(language::locale());
    let mut options = vec![(String::new(), usual.to_owned())];
    if let Some(material) = catalogue.material(material) {
        options.extend(
            catalogue
                .conditions_for(material)
                .into_iter()
                .map(|condition| (condition.id.clone(), condition.name.to_lowercase())),
        );
    }
    let present = present.to_owned();
    options
        .into_iter()
        .map(|(id, name)| {
            let selected = id == present;
            // A property, not an attribute: what was chosen by hand must yield to an undo.
            view! { <option value=id prop:selected=selected>{name}</option> }
        })
        .collect_view()
}
