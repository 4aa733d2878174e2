//! Units, the clock, light.

use heapwright_quantity::UnitSystem;
use heapwright_wording::{page, settings as words};
use leptos::prelude::*;

use crate::language;
use crate::shell::Hub;
use crate::state::{Action, ClockChoice, Light, Page};

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let units = |units| page::units_name(language::locale().with_units(units));
    view! {
        <section class="card" aria-labelledby="shown-title">
            <h2 id="shown-title">{words::shown(language::locale())}</h2>
            {choices(hub, "units", words::units(language::locale()), &[
                (units(UnitSystem::Metric), Action::Units(false), |page| !page.us_units),
                (units(UnitSystem::UsCustomary), Action::Units(true), |page| page.us_units),
            ])}
            {choices(hub, "clock", words::clock(language::locale()), &[
                (words::as_device(language::locale()), Action::Clock(ClockChoice::Device), |page| page.clock == ClockChoice::Device),
                (words::hours_24(language::locale()), Action::Clock(ClockChoice::Hours24), |page| page.clock == ClockChoice::Hours24),
                (words::hours_12(language::locale()), Action::Clock(ClockChoice::Hours12), |page| page.clock == ClockChoice::Hours12),
            ])}
            <p class="hint">{words::clock_hint(language::locale())}</p>
            {choices(hub, "light", words::light(language::locale()), &[
                (words::as_device(language::locale()), Action::Light(Light::Device), |page| page.light == Light::Device),
                (words::bright_sun(language::locale()), Action::Light(Light::Sun), |page| page.light == Light::Sun),
                (words::dark(language::locale()), Action::Light(Light::Dark), |page| page.light == Light::Dark),
            ])}
        </section>
    }
    .into_any()
}

/// What can be chosen: its words, what choosing it does, whether it is chosen.
type Choice = (&'static str, Action, fn(&Page) -> bool);

fn choices(hub: Hub, name: &'static str, legend: &'static str, choices: &[Choice]) -> AnyView {
    let choices = choices
        .iter()
        .cloned()
        .map(|(word, action, is_chosen)| {
            view! {
                <label class="choice">
                    <input
                        type="radio"
                        name=name
                        prop:checked=move || hub.page.with(is_chosen)
                        on:change=move |_| hub.act.run(action.clone())
                    />
                    <span>{word}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choices">
            <legend>{legend}</legend>
            {choices}
        </fieldset>
    }
    .into_any()
}
