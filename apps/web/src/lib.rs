//! The page: takes the place of the first paint that `static/index.html` drew.
//!
//! `static/boot.js` starts this module. State is one value that goes down as a
//! signal; what the keeper does comes up as an [`state::Action`]. Nothing here
//! computes: `asking` puts the question, the crates below answer it.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod asking;
pub mod demo;
pub mod state;

mod keeping;
mod language;
mod later;
mod parts;
mod places;
mod shell;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::parts::breath::breath;

/// Shows the page in the element that the first paint left for it.
///
/// Does nothing when that element is missing, so that a foreign document stays as it is. Figures, first
/// answer and page are made one after another with a breath between them: a slow phone is never deaf
/// for long.
#[wasm_bindgen]
pub async fn show_page() {
    console_error_panic_hook::set_once();
    let place = document().get_element_by_id("page");
    let Some(place) = place.and_then(|place| place.dyn_into::<web_sys::HtmlElement>().ok()) else {
        return;
    };
    if let Err(sentence) = language::settle() {
        leptos::logging::warn!("{sentence}");
        if let Some(root) = document().document_element() {
            let _ = root.set_attribute("lang", "en");
            let _ = root.set_attribute("dir", "ltr");
        }
    }
    let _ = language::catalogue();
    breath().await;
    let first = shell::First::computed();
    breath().await;
    place.set_inner_html("");
    mount_to(place, move || view! { <shell::Shell first=first/> }).forget();
}
