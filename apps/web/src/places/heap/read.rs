//! What was seen, felt and measured at a heap.

use heapwright_journal::EventId;
use heapwright_journal::content::{Creature, Look, Probe, ProbePlace, Read, Smell, Squeeze};
use heapwright_quantity::{UnitSystem, celsius_from_fahrenheit, fahrenheit_from_celsius};
use heapwright_texts::Locale;
use heapwright_texts::messages::heap_forms as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::keeping::device;
use crate::language;
use crate::parts::form::{self, Entry};
use crate::parts::live::{button, named_button};
use crate::places::heaps::core_of;
use crate::shell::Hub;

/// Id of the field of the temperature.
pub const TEMPERATURE: &str = "read-temperature";

/// Id of the first that can be chosen of what was found.
pub const FIRST_CHIP: &str = "read-squeeze-0";

/// Where steps begin for a heap that was never read \[degC\]: a mild day.
const USUAL_C: f64 = 20.0;

/// The form.
pub fn form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let unit = match locale.units {
        UnitSystem::Metric => texts::centimetres(locale),
        UnitSystem::UsCustomary => texts::inches(locale),
    };
    view! {
        <div class="log-form">
            {temperature(hub, id)}
            <div class="fields">
                {form::select("read-place", texts::probe_place(locale), None, form::words::<ProbePlace>())}
                {form::text("read-depth", texts::HowDeep { unit }.said(locale), "", true)}
            </div>
            {form::chips("read-squeeze", texts::squeezed(locale), true, form::words::<Squeeze>())}
            {form::chips("read-smell", texts::smell(locale), false, form::words::<Smell>())}
            {form::chips("read-look", texts::looks(locale), false, form::words::<Look>())}
            {form::chips("read-creature", texts::creatures(locale), false, form::words::<Creature>())}
            {form::when("read-when")}
            {form::send(hub, texts::log_reading(locale), move || read(id, locale, form::chosen::<ProbePlace>("read-place")), done)}
        </div>
    }
    .into_any()
}

/// The little that a need of today asks for: the core's temperature, or what hand, nose and eye find.
pub fn short(hub: Hub, id: EventId, is_of_heat: bool, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let fields = if is_of_heat {
        temperature(hub, id)
    } else {
        view! {
            {form::chips("read-squeeze", texts::squeezed(locale), true, form::words::<Squeeze>())}
            {form::chips("read-smell", texts::smell(locale), false, form::words::<Smell>())}
            {form::chips("read-creature", texts::creatures(locale), false, form::words::<Creature>())}
        }
        .into_any()
    };
    view! {
        <div class="log-form">
            {fields}
            {form::send(hub, texts::log_reading(locale), move || read(id, locale, Some(ProbePlace::Core)), done)}
        </div>
    }
    .into_any()
}

/// The field of a temperature: digits, a degree more or less, and the sign.
pub fn temperature(hub: Hub, heap: EventId) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let unit = match locale.units {
        UnitSystem::Metric => "\u{b0}C",
        UnitSystem::UsCustomary => "\u{b0}F",
    };
    // Steps from an empty field begin where the heap was last.
    let last = hub.keeper.peek(|journal| {
        let heap = journal.state.heap(heap)?;
        core_of(heap).map(|(_, temperature_c)| temperature_c)
    });
    let begin = last.map_or(USUAL_C, f64::round);
    let begin = match locale.units {
        UnitSystem::Metric => begin,
        UnitSystem::UsCustomary => fahrenheit_from_celsius(begin).round(),
    };
    let step = move |by: f64| {
        let next = match form::number(TEMPERATURE) {
            Ok(Some(degrees)) => degrees + by,
            Ok(None) => begin,
            // What cannot be read is not lost.
            Err(_) => return,
        };
        form::set_value(TEMPERATURE, &locale.significant(next, 4));
    };
    view! {
        <div class="field">
            <label for=TEMPERATURE>{texts::Temperature { unit }.said(locale)}</label>
            <div class="amount">
                {named_button("step", "\u{2212}", Some(texts::one_degree_less(locale).to_owned()), move || step(-1.0))}
                <input id=TEMPERATURE class="count" type="text" inputmode="decimal" autocomplete="off"/>
                {named_button("step", "+", Some(texts::one_degree_more(locale).to_owned()), move || step(1.0))}
                // Number keypads of phones have no minus.
                {button("sign-key", wording::page::below_zero(language::locale()), turn_sign)}
            </div>
        </div>
    }
    .into_any()
}

fn turn_sign() {
    let typed = device::value(TEMPERATURE);
    let turned = match typed.trim().strip_prefix(['-', '\u{2212}']) {
        Some(rest) => rest.to_owned(),
        None => format!("-{}", typed.trim()),
    };
    form::set_value(TEMPERATURE, &turned);
}

/// The temperature that the field holds [degC]; `None` when it is empty.
pub fn typed_c(locale: Locale) -> Result<Option<f64>, String> {
    let typed = form::number(TEMPERATURE)?;
    Ok(typed.map(|degrees| match locale.units {
        UnitSystem::Metric => degrees,
        UnitSystem::UsCustomary => celsius_from_fahrenheit(degrees),
    }))
}

fn read(heap: EventId, locale: Locale, place: Option<ProbePlace>) -> Entry {
    let depth = form::number("read-depth")?;
    let probes = typed_c(locale)?.map(|temperature_c| Probe {
        temperature_c,
        depth_m: depth.map(|depth| form::metres(depth, locale)),
        place,
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
        return Err(wording::page::nothing_read(language::locale()).to_owned());
    }
    Ok((read.into(), form::moment("read-when")?))
}
