//! How much of it: a number between two steppers, and the measure it is counted in.

use heapwright_texts::messages::shell as texts;
use leptos::prelude::*;

use crate::language;
use crate::state::{MEASURES, plain_units};

/// A row of "-", number, "+", measure.
#[component]
pub fn AmountRow(
    /// Id of the number field.
    id: String,
    /// What it is an amount of, for those who hear it.
    name: String,
    /// What is typed.
    #[prop(into)]
    typed: Signal<String>,
    /// The measure or unit.
    #[prop(into)]
    unit: Signal<String>,
    /// True to offer litres and kilograms (or gallons and pounds) too.
    plain: bool,
    /// True for gallons and pounds.
    #[prop(into)]
    us_units: Signal<bool>,
    /// What is wrong with it.
    #[prop(into)]
    fault: Signal<Option<String>>,
    /// Tells what is typed.
    on_type: Callback<String>,
    /// Tells of a step; up when true.
    on_step: Option<Callback<bool>>,
    /// Tells of another measure.
    on_unit: Callback<String>,
) -> impl IntoView {
    let fault_id = format!("{id}-fault");
    let label = texts::HowMany { name: &name }.said(language::locale());
    let unit_label = texts::MeasureOf { name: &name }.said(language::locale());
    let stepper = |up: bool| {
        on_step.map(|on_step| {
            let locale = language::locale();
            let (sign, step) = if up {
                ("+", texts::OneMore { name: &name }.said(locale))
            } else {
                ("\u{2212}", texts::OneLess { name: &name }.said(locale))
            };
            view! {
                <button
                    type="button"
                    class="step"
                    aria-label=step
                    on:click=move |_| on_step.run(up)
                >
                    {sign}
                </button>
            }
        })
    };
    view! {
        <div class="amount">
            {stepper(false)}
            <input
                id=id
                class="count"
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-label=label
                aria-describedby=fault_id.clone()
                aria-invalid=move || fault.with(Option::is_some).then_some("true")
                prop:value=move || typed.get()
                on:input=move |event| on_type.run(event_target_value(&event))
            />
            {stepper(true)}
            <select
                class="unit"
                aria-label=unit_label
                on:change=move |event| on_unit.run(event_target_value(&event))
            >
                {move || options(&unit.get(), plain, us_units.get())}
            </select>
        </div>
        <p class="fault" id=fault_id>{move || fault.get()}</p>
    }
}

/// The measures on offer, and the present one whatever it is.
fn options(present: &str, plain: bool, us_units: bool) -> impl IntoView + use<> {
    let catalogue = language::catalogue();
    let mut units: Vec<String> = MEASURES.iter().map(|id| (*id).to_owned()).collect();
    if plain {
        units.extend(plain_units(us_units).map(str::to_owned));
    }
    if !units.iter().any(|unit| unit == present) {
        units.push(present.to_owned());
    }
    let present = present.to_owned();
    units
        .into_iter()
        .map(|unit| {
            let name = catalogue
                .measure(&unit)
                .map_or_else(|| unit.clone(), |measure| measure.name.clone());
            let selected = unit == present;
            // A property, not an attribute: what was chosen by hand must yield to an undo.
            view! { <option value=unit prop:selected=selected>{name}</option> }
        })
        .collect_view()
}
