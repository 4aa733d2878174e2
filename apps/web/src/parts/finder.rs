//! Finds a material by what the keeper calls it.

use heapwright_texts::messages::shell as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use super::focus;
use crate::language;
use crate::shell::hub;

const MOST: usize = 6;

/// A search field with its findings as buttons.
#[component]
pub fn Finder(
    /// Id of the field.
    id: &'static str,
    /// What is asked for.
    label: &'static str,
    /// Tells the id of the material that was picked.
    on_pick: Callback<String>,
) -> impl IntoView {
    let typed = RwSignal::new(String::new());
    let later = hub().later;
    let found = Memo::new(move |_| {
        let later = later.get();
        later.map_or_else(Vec::new, |later| {
            typed.with(|typed| (later.find)(typed, MOST))
        })
    });
    let hint_id = format!("{id}-hint");
    view! {
        <div class="finder">
            <label for=id>{label}</label>
            <input
                id=id
                type="search"
                autocomplete="off"
                autocapitalize="none"
                enterkeyhint="search"
                aria-describedby=hint_id.clone()
                prop:value=move || typed.get()
                on:input=move |event| typed.set(event_target_value(&event))
            />
            <p class="hint" id=hint_id>{wording::page::find_hint(language::locale())}</p>
            <p class="finder-told" role="status">
                {move || {
                    let count = found.with(Vec::len);
                    if later.with(Option::is_none) || typed.with(|typed| typed.trim().is_empty()) {
                        String::new()
                    } else if count == 0 {
                        wording::page::find_nothing(language::locale()).to_owned()
                    } else {
                        let count = f64::from(u32::try_from(count).unwrap_or(u32::MAX));
                        texts::Found { count }.said(language::locale())
                    }
                }}
            </p>
            <ul class="found">
                <For each=move || found.get() key=|(material, _)| material.clone() let((material, name))>
                    <li>
                        <button
                            type="button"
                            class="tile"
                            on:click=move |event| {
                                on_pick.run(material.clone());
                                typed.set(String::new());
                                // From the keyboard: the button is gone, the field takes over. A tap must
                                // not bring up the keypad.
                                if event.detail() == 0 {
                                    focus(id);
                                }
                            }
                        >
                            {name}
                        </button>
                    </li>
                </For>
            </ul>
        </div>
    }
}
