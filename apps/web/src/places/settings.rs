//! Units, light, the journal as a file, what the keeper's vessels hold, the aim.

use heapwright_answers::USUAL_TARGET;
use heapwright_catalogue::Catalogue;
use heapwright_quantity::{UnitSystem, volume_text};
use heapwright_wording as wording;
use leptos::prelude::*;

use super::transfer::journal_file;
use crate::asking::FaultPlace;
use crate::parts::field::Field;
use crate::shell::hub;
use crate::state::{Action, AimField, Light, MEASURES};

/// The place.
#[component]
pub fn Settings() -> impl IntoView {
    view! {
        <div class="settings place">
            <h1 id="title" tabindex="-1">{wording::page::SETTINGS}</h1>
            <section class="card">
                <Units/>
                <Lights/>
            </section>
            {journal_file()}
            <section class="card">
                <Measures/>
            </section>
            <section class="card">
                <AimFields/>
                <button type="button" class="quiet" on:click=move |_| hub().act.run(Action::StartAgain)>
                    "Start the balance again with the example"
                </button>
            </section>
        </div>
    }
}

#[component]
fn Units() -> impl IntoView {
    let hub = hub();
    let choice = move |us_units: bool| {
        let system = if us_units {
            UnitSystem::UsCustomary
        } else {
            UnitSystem::Metric
        };
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name="units"
                    prop:checked=move || hub.page.with(|page| page.us_units == us_units)
                    on:change=move |_| hub.act.run(Action::Units(us_units))
                />
                <span>{wording::page::units_name(system)}</span>
            </label>
        }
    };
    view! {
        <fieldset class="choices">
            <legend>"Units"</legend>
            {choice(false)}
            {choice(true)}
        </fieldset>
    }
}

#[component]
fn Lights() -> impl IntoView {
    let hub = hub();
    let choice = move |light: Light, name: &'static str| {
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name="light"
                    prop:checked=move || hub.page.with(|page| page.light == light)
                    on:change=move |_| hub.act.run(Action::Light(light))
                />
                <span>{name}</span>
            </label>
        }
    };
    view! {
        <fieldset class="choices">
            <legend>"Light"</legend>
            {choice(Light::Device, "As the device")}
            {choice(Light::Sun, "Bright sun")}
            {choice(Light::Dark, "Dark")}
        </fieldset>
    }
}

/// What the keeper's own vessels hold.
#[component]
fn Measures() -> impl IntoView {
    let hub = hub();
    let catalogue = Catalogue::built_in();
    let fields = MEASURES
        .into_iter()
        .filter_map(|id| catalogue.measure(id))
        .map(|measure| {
            let id = measure.id.clone();
            let (of_value, of_fault, of_input) = (id.clone(), id.clone(), id.clone());
            let usual = measure.volume_m3.typical;
            view! {
                <Field
                    id=format!("measure-{id}")
                    label=format!("{} holds", capital(&measure.name))
                    hint=Signal::derive(move || {
                        format!("Usually {}.", volume_text(usual, hub.page.with(|page| page.system())))
                    })
                    value=Signal::derive(move || {
                        hub.page.with(|page| page.measures.get(&of_value).cloned().unwrap_or_default())
                    })
                    fault=Signal::derive(move || {
                        hub.shown.with(|shown| shown.fault(&FaultPlace::Measure(of_fault.clone())).map(str::to_owned))
                    })
                    on_input=Callback::new(move |typed| hub.act.run(Action::Measure(of_input.clone(), typed)))
                />
            }
        })
        .collect_view();
    view! {
        <fieldset class="fields">
            <legend>"What your own vessels hold"</legend>
            {fields}
        </fieldset>
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

/// The limits of the aim.
#[component]
fn AimFields() -> impl IntoView {
    let hub = hub();
    let fields = AimField::ALL
        .into_iter()
        .map(|field| {
            let (key, label, usual) = match field {
                AimField::RatioLow => ("ratio-low", "Lowest C:N", format!("{}", USUAL_TARGET.carbon_to_nitrogen_low)),
                AimField::RatioHigh => ("ratio-high", "Highest C:N", format!("{}", USUAL_TARGET.carbon_to_nitrogen_high)),
                AimField::MoistureLow => (
                    "moisture-low",
                    "Lowest moisture, %",
                    wording::percent_text(USUAL_TARGET.moisture_wet_basis_low),
                ),
                AimField::MoistureHigh => (
                    "moisture-high",
                    "Highest moisture, %",
                    wording::percent_text(USUAL_TARGET.moisture_wet_basis_high),
                ),
                AimField::AirLow => (
                    "air-low",
                    "Least air space, %",
                    wording::percent_text(USUAL_TARGET.free_air_space_low),
                ),
            };
            view! {
                <Field
                    id=format!("aim-{key}")
                    label=label.to_owned()
                    hint=Signal::stored(format!("Usually {usual}."))
                    value=Signal::derive(move || hub.page.with(|page| page.aim.typed(field).to_owned()))
                    fault=Signal::derive(move || {
                        hub.shown.with(|shown| shown.fault(&FaultPlace::Aim(field)).map(str::to_owned))
                    })
                    on_input=Callback::new(move |typed| hub.act.run(Action::AimAt(field, typed)))
                />
            }
        })
        .collect_view();
    view! {
        <fieldset class="fields">
            <legend>"The aim"</legend>
            {fields}
            <p class="fault" role="status">
                {move || hub.shown.with(|shown| shown.fault(&FaultPlace::WholeAim).map(str::to_owned))}
            </p>
        </fieldset>
    }
}
