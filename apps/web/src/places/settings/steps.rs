//! A decimal number between two steppers, under its label.

use heapwright_texts::messages::{cldr, settings_place as texts};
use leptos::prelude::*;

use crate::language;
use crate::parts::form::number_in;
use crate::parts::live::named_button;

/// The row.
///
/// - `id`: of the field
/// - `label`: what is asked for, with its unit
/// - `hint`: one sentence of help
/// - `step`: how much a tap adds or takes away
pub fn row(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    step: f64,
    typed: RwSignal<String>,
) -> AnyView {
    let locale = language::locale();
    let hint_id = format!("{id}-hint");
    let turn = move |by: f64| {
        // What cannot be read is not lost: saving it says what is wrong with it.
        if let Ok(number) = typed.with_untracked(|typed| number_in(typed)) {
            typed.set(stepped(number, by).replace('.', cldr::decimal_mark(locale)));
        }
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <div class="amount">
                {named_button("step", "\u{2212}", Some(texts::LessOf { label }.said(locale)), move || turn(-step))}
                <input
                    id=id
                    class="count"
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-describedby=hint_id.clone()
                    prop:value=move || typed.get()
                    on:input=move |event| typed.set(event_target_value(&event))
                />
                {named_button("step", "+", Some(texts::MoreOf { label }.said(locale)), move || turn(step))}
            </div>
            <p class="hint" id=hint_id>{hint}</p>
        </div>
    }
    .into_any()
}

/// A number after a step: a multiple of the step, never below zero, without tails of binary fractions.
fn stepped(number: Option<f64>, by: f64) -> String {
    let count = (number.unwrap_or(0.0) / by.abs()).round() + by.signum();
    let next = (count * by.abs()).max(0.0);
    format!("{}", (next * 1000.0).round() / 1000.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_leave_round_numbers_and_end_at_nothing() {
        assert_eq!(stepped(Some(0.2), 0.1), "0.3");
        assert_eq!(stepped(Some(12.34), -0.1), "12.2");
        assert_eq!(stepped(None, 0.1), "0.1");
        assert_eq!(stepped(Some(0.0), -0.1), "0");
    }
}
