//! Something folded away, made only while it is open.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A summary to tap, and what it opens.
///
/// What is closed is not there: most of the page's words are, and each tap would
/// write them anew.
#[component]
pub fn Fold(
    /// Class of the element.
    class: &'static str,
    /// What is always seen.
    summary: AnyView,
    /// What is seen when it is open.
    children: ChildrenFn,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let told = move |event: web_sys::Event| {
        let details = event
            .target()
            .and_then(|target| target.dyn_into::<web_sys::HtmlDetailsElement>().ok());
        if let Some(details) = details {
            open.set(details.open());
        }
    };
    view! {
        <details class=class on:toggle=told>
            <summary>{summary}</summary>
            {move || open.get().then(|| children())}
        </details>
    }
}

/// The same for whatever is made by a function.
pub fn folded(
    class: &'static str,
    summary: AnyView,
    body: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let children: ChildrenFn = std::sync::Arc::new(body);
    view! { <Fold class=class summary=summary children=children/> }.into_any()
}

/// Sentences, one below the other.
pub fn sentences(lines: &[String]) -> AnyView {
    let lines = lines
        .iter()
        .map(|line| view! { <li>{line.clone()}</li> })
        .collect_view();
    view! { <ul class="told-lines">{lines}</ul> }.into_any()
}
