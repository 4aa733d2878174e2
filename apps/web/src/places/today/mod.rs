//! Today: what each heap needs.

use heapwright_wording as wording;
use leptos::prelude::*;

/// The place.
#[component]
pub fn Today() -> impl IntoView {
    view! {
        <div class="place today">
            <h1 id="title" tabindex="-1">{wording::page::TODAY}</h1>
        </div>
    }
}
