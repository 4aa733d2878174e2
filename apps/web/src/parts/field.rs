//! A labelled number field: as typed, with hint and fault.

use leptos::prelude::*;

/// A field for a number, with or without its unit.
///
/// A plain text field with a number keypad: a wheel never changes it, and what
/// was typed stays there when it cannot be used.
#[component]
pub fn Field(
    /// Its id.
    id: String,
    /// What is asked for.
    label: String,
    /// One sentence of help.
    #[prop(into)]
    hint: Signal<String>,
    /// What is typed in it.
    #[prop(into)]
    value: Signal<String>,
    /// What is wrong with it.
    #[prop(into)]
    fault: Signal<Option<String>>,
    /// Tells what is typed.
    on_input: Callback<String>,
) -> impl IntoView {
    let hint_id = format!("{id}-hint");
    let fault_id = format!("{id}-fault");
    let described = format!("{hint_id} {fault_id}");
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                id=id
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-describedby=described
                aria-invalid=move || fault.with(Option::is_some).then_some("true")
                prop:value=move || value.get()
                on:input=move |event| on_input.run(event_target_value(&event))
            />
            <p class="hint" id=hint_id>{move || hint.get()}</p>
            <p class="fault" id=fault_id>{move || fault.get()}</p>
        </div>
    }
}
