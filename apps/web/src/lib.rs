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
mod later;
mod parts;
mod places;
mod shell;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::wasm_bindgen;

/// Shows the page in the element that the first paint left for it.
///
/// Does nothing when that element is missing, so that a foreign document stays as it is.
#[wasm_bindgen(start)]
pub fn start() {
    console_error_panic_hook::set_once();
    let Some(place) = document().get_element_by_id("page") else {
        return;
    };
    if let Ok(place) = place.dyn_into::<web_sys::HtmlElement>() {
        place.set_inner_html("");
        mount_to(place, shell::Shell).forget();
    }
}
