//! The switch between the light of the device and one for bright sun, in reach in every place.

use heapwright_wording as wording;
use leptos::prelude::*;

use super::Hub;
use crate::language;
use crate::state::{Action, Light};

/// A sun with its rays.
const SUN: &str = r#"<circle cx="12" cy="12" r="4"/><path d="M12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M5 19l2-2M17 7l2-2"/>"#;

/// The switch.
pub fn sun(hub: Hub) -> AnyView {
    let is_on = move || hub.page.with(|page| page.light == Light::Sun);
    let turn = move |_| {
        hub.act.run(Action::Light(if is_on() {
            Light::Device
        } else {
            Light::Sun
        }));
    };
    view! {
        <button type="button" class="sun" aria-pressed=move || if is_on() { "true" } else { "false" } on:click=turn>
            <svg viewBox="0 0 24 24" aria-hidden="true" inner_html=SUN></svg>
            {wording::page::bright_sun(language::locale())}
        </button>
    }
    .into_any()
}
