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
pub mod table;

use leptos::prelude::document;
use wasm_bindgen::JsCast;

/// Gives the focus to an element, when what had it is about to go away.
pub(crate) fn focus(id: &str) {
    let element = document()
        .get_element_by_id(id)
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(element) = element {
        // An element that cannot take it leaves the focus where it was.
        let _ = element.focus();
    }
}
