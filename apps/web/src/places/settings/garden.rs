//! The garden's name and where it lies, in its journal.

use heapwright_journal::content::{GardenDescribed, Place};
use heapwright_quantity::{UnitSystem, celsius_from_fahrenheit};
use heapwright_wording::settings as words;
use leptos::prelude::*;

use crate::parts::form::{self, Entry, number_in};
use crate::parts::live::{button, live_if, live_text, named_button, opener};
use crate::shell::Hub;

/// Metres in a foot, exact (1959).
const METRES_PER_FOOT: f64 = 0.3048;

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let open = RwSignal::new(false);
    let place = move || {
        hub.keeper
            .with(|journal| words::place_line(journal.state.garden().place.as_ref()))
    };
    let name = move || {
        hub.keeper
            .with(|journal| journal.state.garden().name.clone().unwrap_or_default())
    };
    view! {
        <section class="card" aria-labelledby="garden-title">
            <h2 id="garden-title" tabindex="-1">{words::YOUR_GARDEN}</h2>
            <p class="line-name">{live_text(name)}</p>
            <p>{live_text(place)}</p>
            <p class="hint">{words::PLACE_WHY}</p>
            {opener("log-act", words::DESCRIBE_GARDEN, None, move || open.get(), move || open.update(|open| *open = !*open))}
            {live_if(move || open.get().then(|| describe(hub, move || open.set(false))))}
        </section>
    }
    .into_any()
}

/// The fields, as they are typed.
#[derive(Clone, Copy)]
struct Typed {
    name: RwSignal<String>,
    latitude: RwSignal<String>,
    longitude: RwSignal<String>,
    elevation: RwSignal<String>,
    coldest: RwSignal<String>,
    warmest: RwSignal<String>,
}

fn describe(hub: Hub, done: impl Fn() + Copy + 'static) -> AnyView {
    let system = hub.page.with(|page| page.system());
    let typed = hub.keeper.peek(|journal| {
        let garden = journal.state.garden();
        let place = garden.place.as_ref();
        let text = |number: Option<f64>| {
            RwSignal::new(number.map_or_else(String::new, |number| format!("{number}")))
        };
        let metric = system == UnitSystem::Metric;
        Typed {
            name: RwSignal::new(garden.name.clone().unwrap_or_default()),
            latitude: text(place.map(|place| place.latitude_deg)),
            longitude: text(place.map(|place| place.longitude_deg)),
            // What the journal has in other units than are shown is left to be entered anew.
            elevation: text(place.and_then(|place| place.elevation_m).filter(|_| metric)),
            coldest: text(
                place
                    .and_then(|place| place.coldest_month_c)
                    .filter(|_| metric),
            ),
            warmest: text(
                place
                    .and_then(|place| place.warmest_month_c)
                    .filter(|_| metric),
            ),
        }
    });
    view! {
        <div class="log-form">
            {field("garden-name", words::GARDEN_NAME, words::GARDEN_NAME_HINT, false, typed.name)}
            {signed("garden-latitude", words::LATITUDE, words::LATITUDE_HINT, typed.latitude)}
            {signed("garden-longitude", words::LONGITUDE, words::LONGITUDE_HINT, typed.longitude)}
            {field("garden-elevation", words::elevation_label(system), words::ELEVATION_HINT, true, typed.elevation)}
            {signed("garden-coldest", words::month_label(true, system), words::MONTHS_HINT, typed.coldest)}
            {signed("garden-warmest", words::month_label(false, system), words::MONTHS_HINT, typed.warmest)}
            <div class="acts">
                {form::send(hub, words::SAVE_GARDEN, move || typed.entry(system), done)}
                {button("quiet", words::NOT_NOW, done)}
            </div>
        </div>
    }
    .into_any()
}

impl Typed {
    fn entry(self, system: UnitSystem) -> Entry {
        let number = |typed: RwSignal<String>| typed.with_untracked(|typed| number_in(typed));
        let degrees = |typed| {
            number(typed).map(|number| {
                number.map(|number| match system {
                    UnitSystem::Metric => number,
                    UnitSystem::UsCustomary => celsius_from_fahrenheit(number),
                })
            })
        };
        let name = self.name.with_untracked(|name| name.trim().to_owned());
        let name = (!name.is_empty()).then_some(name);
        let place = match (number(self.latitude)?, number(self.longitude)?) {
            (Some(latitude_deg), Some(longitude_deg)) => Some(Place {
                name: None,
                latitude_deg,
                longitude_deg,
                elevation_m: number(self.elevation)?.map(|height| match system {
                    UnitSystem::Metric => height,
                    UnitSystem::UsCustomary => height * METRES_PER_FOOT,
                }),
                coldest_month_c: degrees(self.coldest)?,
                warmest_month_c: degrees(self.warmest)?,
            }),
            (None, None) => None,
            _ => return Err(words::PLACE_NEEDS_BOTH.to_owned()),
        };
        if name.is_none() && place.is_none() {
            return Err(words::NOTHING_OF_GARDEN.to_owned());
        }
        let content = GardenDescribed {
            name,
            place,
            ..GardenDescribed::default()
        };
        Ok((content.into(), None))
    }
}

fn field(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    is_number: bool,
    typed: RwSignal<String>,
) -> AnyView {
    view! {
        <div class="field">
            <label for=id>{label}</label>
            {input(id, is_number, typed)}
            <p class="hint" id=format!("{id}-hint")>{hint}</p>
        </div>
    }
    .into_any()
}

/// A number that may be below zero: keypads of phones have no minus, so a button turns the sign.
fn signed(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    typed: RwSignal<String>,
) -> AnyView {
    let turn = move || {
        typed.update(|typed| {
            *typed = match typed.trim_start().strip_prefix(['-', '\u{2212}']) {
                Some(rest) => rest.to_owned(),
                None => format!("\u{2212}{typed}"),
            }
        });
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <div class="amount">
                {input(id, true, typed)}
                {named_button("step", "\u{b1}", Some(words::other_sign(label)), turn)}
            </div>
            <p class="hint" id=format!("{id}-hint")>{hint}</p>
        </div>
    }
    .into_any()
}

fn input(id: &'static str, is_number: bool, typed: RwSignal<String>) -> AnyView {
    view! {
        <input
            id=id
            type="text"
            inputmode=if is_number { "decimal" } else { "text" }
            autocomplete="off"
            aria-describedby=format!("{id}-hint")
            prop:value=move || typed.get()
            on:input=move |event| typed.set(event_target_value(&event))
        />
    }
    .into_any()
}
