//! How things are shown, the journal and how it is kept, the garden, its vessels, the aim, the version.

mod aim;
mod garden;
mod keeping;
mod looks;
mod steps;
mod version;
mod vessels;

use heapwright_wording as wording;
use leptos::prelude::*;

pub use keeping::{offer_to_keep, promise};
pub use version::offer_update;
pub use vessels::only_here;

use super::transfer::journal_file;
use crate::language;
use crate::parts::breath::one_by_one;
use crate::shell::hub;

/// The place.
#[component]
pub fn Settings() -> impl IntoView {
    let hub = hub();
    view! {
        <div class="settings place place-wide">
            <h1 id="title" tabindex="-1">{wording::page::settings(language::locale())}</h1>
            {one_by_one(vec![
                Box::new(move || looks::section(hub)),
                Box::new(journal_file),
                Box::new(keeping::home_screen),
                Box::new(move || garden::section(hub)),
                Box::new(move || vessels::section(hub)),
                Box::new(move || aim::section(hub)),
                Box::new(version::section),
            ])}
        </div>
    }
}
