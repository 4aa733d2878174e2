//! Language, units, the clock, light.

use heapwright_quantity::UnitSystem;
use heapwright_texts::messages::settings as texts;
use heapwright_wording::{page, settings as words};
use leptos::prelude::*;

use crate::keeping::device;
use crate::language;
use crate::parts::live::{button, live_if};
use crate::shell::Hub;
use crate::state::{Action, ClockChoice, Light, Page};

/// Tags of the languages, behind that of the device.
const LANGUAGES: [&str; 3] = ["", "en", "de"];

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let units = |units| page::units_name(language::locale().with_units(units));
    view! {
        <section class="card" aria-labelledby="shown-title">
            <h2 id="shown-title">{words::shown(language::locale())}</h2>
            {language()}
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

/// The language: that of the device, or one of those that there are, each by its own name.
fn language() -> AnyView {
    let chosen = device::language_chosen().unwrap_or_default();
    let place = LANGUAGES.iter().position(|tag| *tag == chosen).unwrap_or(0);
    let locale = language::locale();
    let words = [
        words::as_device(locale),
        texts::english(locale),
        texts::german(locale),
    ];
    let wanted = RwSignal::new(place);
    let fault = RwSignal::new("");
    let take = move || {
        if device::is_entering() {
            fault.set(texts::language_entering(locale));
            return;
        }
        if device::choose_language(LANGUAGES[untrack(|| wanted.get())]).is_err() {
            fault.set(texts::language_not_kept(locale));
        }
    };
    let offer =
        move || (wanted.get() != place).then(|| button("", texts::use_language(locale), take));
    let choices = LANGUAGES
        .into_iter()
        .zip(words)
        .enumerate()
        .map(|(index, (tag, word))| {
            view! {
                <label class="choice">
                    <input
                        type="radio"
                        name="language"
                        prop:checked=index == place
                        on:change=move |_| wanted.set(index)
                    />
                    <span lang=(!tag.is_empty()).then_some(tag)>{word}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choices" aria-describedby="language-hint">
            <legend>{texts::language(locale)}</legend>
            {choices}
        </fieldset>
        <p id="language-hint" class="hint">{texts::language_hint(locale)}</p>
        {live_if(offer)}
        <p class="fault" role="alert">{move || fault.get()}</p>
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
