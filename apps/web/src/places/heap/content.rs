//! What is in a heap as its journal has it.

use heapwright_answers::{Figure, MixAnswer};
use heapwright_journal::EventId;
use heapwright_texts::Locale;
use heapwright_texts::messages::heap_place as texts;
use heapwright_wording::{self as wording, FigureState};
use leptos::prelude::*;

use crate::asking;
use crate::keeping::device;
use crate::language;
use crate::parts::live::live;
use crate::shell::Hub;

/// Materials that are named; the rest is counted.
const NAMED: usize = 6;

/// The section.
pub fn section(hub: Hub, id: EventId) -> AnyView {
    let told = move || {
        let page = hub.page.get();
        let (answer, was_fed) = hub.keeper.with(|journal| {
            let heap = journal.state.heap(id);
            (
                asking::in_heap(&page, &journal.state, id, device::now()),
                heap.is_some_and(|heap| heap.now().feeds > 0),
            )
        });
        let told = match answer {
            Ok(Some(mix)) => return content(&mix, page.locale()),
            Ok(None) if was_fed => wording::page::emptied(language::locale()).to_owned(),
            Ok(None) => wording::page::nothing_in(language::locale()).to_owned(),
            Err(why) => why,
        };
        view! { <p>{told}</p> }.into_any()
    };
    view! {
        <section class="card" aria-labelledby="content-title">
            <h2 id="content-title">{texts::what_is_in_it(language::locale())}</h2>
            {live(told)}
        </section>
    }
    .into_any()
}

fn content(mix: &MixAnswer, locale: Locale) -> AnyView {
    let mixture = &mix.mixture;
    let rows = [
        (
            Figure::CarbonToNitrogen,
            mixture
                .carbon_to_nitrogen
                .map(|ratio| wording::ratio_text(ratio.value, locale)),
            wording::ratio_state(mixture, &mix.target, locale),
        ),
        (
            Figure::Moisture,
            Some(wording::percent_text(mixture.moisture_wet_basis.value, locale)),
            wording::moisture_state(mixture, &mix.target, locale),
        ),
        (
            Figure::FreeAirSpace,
            mixture
                .free_air_space
                .map(|air| wording::percent_text(air.value, locale)),
            wording::air_state(mixture, &mix.target, locale),
        ),
        (
            Figure::Mass,
            Some(locale.mass(mixture.wet_mass_kg.value)),
            (FigureState::Unknown, ""),
        ),
        (
            Figure::Volume,
            mixture
                .volume_m3
                .map(|volume| locale.volume(volume.value)),
            (FigureState::Unknown, ""),
        ),
    ]
    .map(|(figure, value, (state, word))| {
        let class = match state {
            FigureState::Good => "state state-good",
            FigureState::Low | FigureState::High => "state state-off",
            FigureState::Unknown => "state",
        };
        view! {
            <div class="in-figure">
                <dt class="figure-name">{wording::page::figure_name(figure, locale)}</dt>
                <dd>
                    <span class="figure-value">{value.unwrap_or_else(|| "\u{2013}".to_owned())}</span>
                    " "
                    <span class=class>{word}</span>
                </dd>
            </div>
        }
    })
    .collect_view();
    view! {
        <dl class="in-figures">{rows}</dl>
        <p>{materials(mix, locale)}</p>
        <p class="hint">{wording::as_fed(language::locale())}</p>
    }
    .into_any()
}

/// The heaviest parts, in a line.
fn materials(mix: &MixAnswer, locale: Locale) -> String {
    let parts = wording::things_by_mass(language::catalogue(), mix, locale);
    let mut told: Vec<String> = parts
        .iter()
        .take(NAMED)
        .map(|(name, mass_kg)| {
            texts::ThingWithMass {
                name,
                mass: &locale.mass(*mass_kg),
            }
            .said(locale)
        })
        .collect();
    if parts.len() > NAMED {
        let more = u32::try_from(parts.len() - NAMED).unwrap_or(u32::MAX);
        told.push(texts::ThingsMore { count: more.into() }.said(locale));
    }
    if mix.water_kg >= 0.05 {
        let water = wording::water_text(mix.water_kg, locale);
        told.push(texts::WaterPouredOn { water: &water }.said(locale));
    }
    let things = told.into_iter().reduce(|things, next| {
        texts::ThingAfterThing {
            things: &things,
            next: &next,
        }
        .said(locale)
    });
    texts::Mostly {
        things: &things.unwrap_or_default(),
    }
    .said(locale)
}
