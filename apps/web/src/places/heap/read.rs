//! What was seen, felt and measured at a heap.

use heapwright_journal::EventId;
use heapwright_journal::content::{Creature, Look, Probe, ProbePlace, Read, Smell, Squeeze};
use heapwright_quantity::{UnitSystem, celsius_from_fahrenheit};
use heapwright_wording as wording;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::parts::form::{self, Entry};
use crate::parts::live::named_button;
use crate::shell::Hub;

/// The form.
pub fn form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let system = hub.page.with(|page| page.system());
    let (degrees, length) = match system {
        UnitSystem::Metric => ("\u{b0}C", "cm"),
        UnitSystem::UsCustomary => ("\u{b0}F", "in"),
    };
    view! {
        <div class="log-form">
            <div class="field">
                <label for="read-temperature">{format!("Temperature, {degrees}")}</label>
                <div class="amount">
                    <input id="read-temperature" class="count" type="text" inputmode="decimal" autocomplete="off"/>
                    // Number keypads of phones have no minus.
                    {named_button("step", "\u{b1}", Some("Above or below zero".to_owned()), turn_sign)}
                </div>
            </div>
            <div class="fields">
                {form::select("read-place", "Where", None, form::words::<ProbePlace>())}
                {form::text("read-depth", format!("How deep, {length}"), "", true)}
            </div>
            {form::chips("read-squeeze", "A handful, squeezed", true, form::words::<Squeeze>())}
            {form::chips("read-smell", "Smell", false, form::words::<Smell>())}
            {form::chips("read-look", "Looks", false, form::words::<Look>())}
            {form::chips("read-creature", "Creatures", false, form::words::<Creature>())}
            {form::when("read-when")}
            {form::send(hub, "Log the reading", move || read(id, system), done)}
        </div>
    }
    .into_any()
}

fn turn_sign() {
    let field = document()
        .get_element_by_id("read-temperature")
        .and_then(|field| field.dyn_into::<web_sys::HtmlInputElement>().ok());
    if let Some(field) = field {
        let typed = field.value();
        let turned = match typed.trim().strip_prefix(['-', '\u{2212}']) {
            Some(rest) => rest.to_owned(),
            None => format!("-{}", typed.trim()),
        };
        field.set_value(&turned);
    }
}

fn read(heap: EventId, system: UnitSystem) -> Entry {
    let temperature = form::number("read-temperature")?;
    let depth = form::number("read-depth")?;
    let probes = temperature.map(|degrees| Probe {
        temperature_c: match system {
            UnitSystem::Metric => degrees,
            UnitSystem::UsCustomary => celsius_from_fahrenheit(degrees),
        },
        depth_m: depth.map(|depth| form::metres(depth, system)),
        place: form::chosen::<ProbePlace>("read-place"),
    });
    let read = Read {
        heap,
        probes: probes.into_iter().collect(),
        air_temperature_c: None,
        squeeze: form::ticked::<Squeeze>("read-squeeze").first().copied(),
        smells: form::ticked::<Smell>("read-smell"),
        looks: form::ticked::<Look>("read-look"),
        creatures: form::ticked::<Creature>("read-creature"),
        height_m: None,
        fill_pct: None,
        logger: None,
    };
    let is_nothing = read.probes.is_empty()
        && read.squeeze.is_none()
        && read.smells.is_empty()
        && read.looks.is_empty()
        && read.creatures.is_empty();
    if is_nothing {
        return Err(wording::page::NOTHING_READ.to_owned());
    }
    Ok((read.into(), form::moment("read-when")?))
}
