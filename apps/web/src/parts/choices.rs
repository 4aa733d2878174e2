//! Chips of which one is chosen.

use leptos::prelude::*;

/// Chips of which one is chosen.
pub fn choices(
    name: &'static str,
    legend: String,
    words: Vec<String>,
    chosen: impl Fn() -> usize + Copy + Send + 'static,
    choose: impl Fn(usize) + Copy + 'static,
) -> AnyView {
    let chips = words
        .into_iter()
        .enumerate()
        .map(|(index, word)| {
            view! {
                <label class="chip">
                    <input
                        type="radio"
                        name=name
                        prop:checked=move || chosen() == index
                        on:change=move |_| choose(index)
                    />
                    <span>{word}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="chips">
            <legend>{legend}</legend>
            {chips}
        </fieldset>
    }
    .into_any()
}
