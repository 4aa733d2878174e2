//! Controls that places share.

pub mod amount;
pub mod amount_said;
pub mod breath;
pub mod choices;
pub mod entry;
pub mod field;
pub mod finder;
pub mod fold;
pub mod form;
pub mod live;
pub mod marked;
pub mod picture;
pub mod press;
pub mod sight;
pub mod table;

use leptos::prelude::document;
use wasm_bindgen::JsCast;

/// Gives the focus to an element, when what had it is about to go away.
pub(crate) fn focus(id: &str) {
    if let Some(element) = element(id) {
        // An element that cannot take it leaves the focus where it was.
        let _ = element.focus();
    }
}

/// The same where more is tapped at once: what is in sight stays there.
pub(crate) fn focus_unscrolled(id: &str) {
    if let Some(element) = element(id) {
        let how = web_sys::FocusOptions::new();
        how.set_prevent_scroll(true);
        let _ = element.focus_with_options(&how);
    }
}

fn element(id: &str) -> Option<web_sys::HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}
