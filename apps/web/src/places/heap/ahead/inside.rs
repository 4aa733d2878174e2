//! Inside the heap: it is cut open, and the cut goes through time.

use std::time::Duration;

use heapwright_drawings::{
    Cut, CutLayer, Field, Picture, Sides, cut_with_key, height_of_cut, value_labels,
};
use heapwright_quantity::UnitSystem;
use heapwright_texts::messages::heap_place as texts;
use heapwright_wire::{AheadShown, FrameShown, TableShown};
use heapwright_wording::ahead as words;
use leptos::leptos_dom::helpers::IntervalHandle;
use leptos::prelude::*;

use super::{Look, choices, live_table};
use crate::language;
use crate::parts::breath::in_turn;
use crate::parts::live::{button, live_text};
use crate::parts::picture::{Drawn, width_px};

/// Between two frames while it plays [ms].
const FRAME_MS: u64 = 250;
const FIELDS: [Field; 3] = [Field::Warm, Field::Wet, Field::Air];

/// The section.
pub fn section(look: Look) -> AnyView {
    let first = look.shown.with_untracked(|shown| {
        let shown = shown.as_ref()?;
        Some((
            shown.frame_now,
            shown
                .fields
                .iter()
                .map(|field| field.name.clone())
                .collect::<Vec<_>>(),
        ))
    });
    let (now, names) = first.unwrap_or_default();
    let at = RwSignal::new(now);
    let which = RwSignal::new(0);
    let playing = StoredValue::new_local(None::<IntervalHandle>);
    let is_playing = RwSignal::new(false);
    let last = move || {
        look.option(|_, option| option.frames.len().saturating_sub(1))
            .unwrap_or(0)
    };
    let pause = move || {
        if let Some(handle) = playing.try_update_value(Option::take).flatten() {
            handle.clear();
        }
        is_playing.set(false);
    };
    on_cleanup(move || {
        if let Some(handle) = playing.try_update_value(Option::take).flatten() {
            handle.clear();
        }
    });
    let step = move |forth: bool| {
        pause();
        at.update(|at| {
            *at = if forth { *at + 1 } else { at.saturating_sub(1) }.min(last());
        });
    };
    let play = move || {
        if is_playing.get_untracked() {
            pause();
            return;
        }
        if at.get_untracked() >= last() {
            at.set(0);
        }
        let tick = move || {
            if at.get_untracked() >= last() {
                pause();
            } else {
                at.update(|at| *at += 1);
            }
        };
        if let Ok(handle) = set_interval_with_handle(tick, Duration::from_millis(FRAME_MS)) {
            playing.set_value(Some(handle));
            is_playing.set(true);
        }
    };
    let frame = move |part: &dyn Fn(&FrameShown) -> String| {
        look.option(|_, option| {
            option
                .frames
                .get(at.get().min(option.frames.len().saturating_sub(1)))
                .map(part)
        })
        .flatten()
        .unwrap_or_default()
    };
    // Who chooses other units is shown what is worked out anew for them.
    let units = move || untrack(|| look.hub.page.with(|page| page.locale().units));
    let when = move || frame(&|frame| frame.when.clone());
    let told = move || frame(&|frame| frame.sentence.clone());
    let picture = move || {
        look.option(|shown, option| {
            let frame = option.frames.get(at.get())?;
            Some(
                view! { <Drawn picture=drawn(shown, frame, which.get(), units()) class="cut-picture"/> }
                    .into_any(),
            )
        })
        .flatten()
    };
    let table = move || {
        look.option(|shown, option| {
            let frame = option.frames.get(at.get())?;
            Some(tabled(shown, frame, which.get(), units()))
        })
        .flatten()
    };
    let sought = move |event: web_sys::Event| {
        if let Ok(index) = event_target_value(&event).parse::<usize>() {
            pause();
            at.set(index);
        }
    };
    let locale = language::locale();
    let play_word = move || {
        let word = if is_playing.get() {
            texts::pause(locale)
        } else {
            texts::play(locale)
        };
        word.to_owned()
    };
    let heard = move || {
        texts::FrameHeard {
            when: &when(),
            told: &told(),
        }
        .said(locale)
    };
    view! {
        <section class="card inside" aria-labelledby="inside-title">
            <h2 id="inside-title">{words::inside(language::locale())}</h2>
            {choices("ahead-field", texts::shown_in_the_cut(locale).to_owned(), names, move || which.get(), move |index| which.set(index))}
            <figure aria-labelledby="inside-title">
                <p class="frame-when">{live_text(when)}</p>
                {in_turn(picture)}
                <figcaption>
                    <p>{live_text(told)}</p>
                </figcaption>
            </figure>
            <div class="scrub">
                <label for="ahead-day">{texts::day(locale)}</label>
                <input
                    id="ahead-day"
                    type="range"
                    min="0"
                    step="1"
                    max=move || last().to_string()
                    prop:value=move || at.get().to_string()
                    aria-valuetext=heard
                    on:input=sought
                />
                <div class="scrub-acts">
                    {button("", texts::earlier(locale), move || step(false))}
                    <button type="button" on:click=move |_| play()>{live_text(play_word)}</button>
                    {button("", texts::later(locale), move || step(true))}
                </div>
            </div>
            {live_table(texts::cut_as_table(locale), table)}
        </section>
    }
    .into_any()
}

/// The cut of a frame.
fn cut(shown: &AheadShown, frame: &FrameShown, which: usize, units: UnitSystem) -> Cut {
    let which = which.min(FIELDS.len() - 1);
    let height_m: f64 = frame.layers.iter().map(|layer| layer.thickness_m).sum();
    let half_m = frame
        .layers
        .iter()
        .map(|layer| layer.half_width_m)
        .fold(0.0, f64::max);
    Cut {
        layers: frame
            .layers
            .iter()
            .map(|layer| CutLayer {
                thickness_m: layer.thickness_m,
                half_width_m: layer.half_width_m,
                values: layer.values[which].clone(),
            })
            .collect(),
        steps: shown
            .fields
            .get(which)
            .map(|field| field.steps.clone())
            .unwrap_or_default(),
        field: FIELDS[which],
        room_m: shown.room_m,
        sides: Sides::ALL.get(shown.sides).copied().unwrap_or_default(),
        decimal_mark: language::locale().decimal_mark(),
        units,
        // Where temperature is shown, what was read stands in it.
        probes: frame
            .probes
            .iter()
            .filter(|_| which == 0)
            .map(|(across, up, words)| {
                let share = half_m / shown.room_m.0.max(0.05);
                (across * share, up * height_m, words.clone())
            })
            .collect(),
    }
}

fn drawn(shown: &AheadShown, frame: &FrameShown, which: usize, units: UnitSystem) -> Picture {
    let cut = cut(shown, frame, which, units);
    let unit = shown
        .fields
        .get(which)
        .map_or("", |field| field.unit.as_str());
    let width = width_px().min(560.0);
    let height = height_of_cut(&cut, width, 450.0);
    let mut picture = cut_with_key(&cut, unit, width, height);
    picture.shapes.extend(value_labels(&cut, width, height));
    picture
}

fn tabled(shown: &AheadShown, frame: &FrameShown, which: usize, units: UnitSystem) -> TableShown {
    let cut = cut(shown, frame, which, units);
    let rings = cut.layers.iter().map(|layer| layer.values.len()).max();
    let rings = rings.unwrap_or(0);
    let field = shown.fields.get(which);
    let unit = field.map_or("", |field| field.unit.as_str());
    let locale = language::locale();
    let number = |index: usize| f64::from(u32::try_from(index + 1).unwrap_or(u32::MAX));
    let name = |ring: usize| match ring {
        0 => texts::RingCore { unit }.said(locale),
        ring if ring + 1 == rings => texts::RingEdge { unit }.said(locale),
        ring => {
            let ring = number(ring);
            texts::RingBetween { ring, unit }.said(locale)
        }
    };
    TableShown {
        heads: std::iter::once(texts::layer(locale).to_owned())
            .chain((0..rings).map(name))
            .collect(),
        rows: cut
            .layers
            .iter()
            .enumerate()
            .rev()
            .map(|(layer, cells)| {
                let name = match layer {
                    0 => texts::layer_ground(locale).to_owned(),
                    layer if layer + 1 == cut.layers.len() => texts::layer_top(locale).to_owned(),
                    layer => {
                        let layer = number(layer);
                        texts::LayerBetween { layer }.said(locale)
                    }
                };
                std::iter::once(name)
                    .chain(
                        cells
                            .values
                            .iter()
                            .map(|value| locale.decimals(*value, 0, 0)),
                    )
                    .collect()
            })
            .collect(),
    }
}
