//! The limits of the aim.

use heapwright_answers::USUAL_TARGET;
use heapwright_texts::messages::settings_place as texts;
use heapwright_wording::{self as wording, settings as words};
use leptos::prelude::*;

use crate::asking::FaultPlace;
use crate::language;
use crate::parts::field::Field;
use crate::shell::Hub;
use crate::state::{Action, AimField};

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let locale = language::locale();
    let ratio = |ratio: f64| locale.decimals(ratio, 0, 3);
    let percent = |fraction: f64| wording::percent_text(fraction, locale);
    let fields = AimField::ALL
        .into_iter()
        .map(|field| {
            let (key, label, usual) = match field {
                AimField::RatioLow => (
                    "ratio-low",
                    texts::lowest_ratio(locale),
                    ratio(USUAL_TARGET.carbon_to_nitrogen_low),
                ),
                AimField::RatioHigh => (
                    "ratio-high",
                    texts::highest_ratio(locale),
                    ratio(USUAL_TARGET.carbon_to_nitrogen_high),
                ),
                AimField::MoistureLow => (
                    "moisture-low",
                    texts::lowest_moisture(locale),
                    percent(USUAL_TARGET.moisture_wet_basis_low),
                ),
                AimField::MoistureHigh => (
                    "moisture-high",
                    texts::highest_moisture(locale),
                    percent(USUAL_TARGET.moisture_wet_basis_high),
                ),
                AimField::AirLow => (
                    "air-low",
                    texts::least_air_space(locale),
                    percent(USUAL_TARGET.free_air_space_low),
                ),
            };
            view! {
                <Field
                    id=format!("aim-{key}")
                    label=label.to_owned()
                    hint=Signal::stored(texts::Usually { limit: &usual }.said(locale))
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
        <section class="card">
            <fieldset class="fields">
                <legend>{words::the_aim(language::locale())}</legend>
                {fields}
                <p class="fault" role="status">
                    {move || hub.shown.with(|shown| shown.fault(&FaultPlace::WholeAim).map(str::to_owned))}
                </p>
            </fieldset>
            <button type="button" class="quiet" on:click=move |_| hub.act.run(Action::StartAgain)>
                {words::start_again(language::locale())}
            </button>
        </section>
    }
    .into_any()
}
