//! What a look saw and what a test found, in one line and without the heap.

use heapwright_journal::content::{Probe, ProbePlace, Read, Tested};
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::journal as texts;

use crate::amounts::{clauses, pct_text, row};
use crate::words::Word;

/// What a look saw, without the heap: "58 °C in the core, feels moist".
#[must_use]
pub fn read_line(read: &Read, locale: Locale) -> String {
    let mut told: Vec<String> = read
        .probes
        .iter()
        .map(|probe| probe_line(probe, locale))
        .collect();
    told.extend(read.air_temperature_c.map(|air_c| {
        texts::Air {
            temperature: &locale.temperature(air_c),
        }
        .said(locale)
    }));
    told.extend(read.squeeze.map(|squeeze| {
        texts::Feels {
            squeeze: squeeze.word(locale),
        }
        .said(locale)
    }));
    if !read.smells.is_empty() {
        told.push(
            texts::Smell {
                smells: &words(&read.smells, locale),
            }
            .said(locale),
        );
    }
    if !read.looks.is_empty() {
        told.push(
            texts::Looks {
                looks: &words(&read.looks, locale),
            }
            .said(locale),
        );
    }
    if !read.creatures.is_empty() {
        told.push(words(&read.creatures, locale));
    }
    told.extend(read.height_m.map(|height_m| {
        texts::High {
            length: &length(height_m, locale),
        }
        .said(locale)
    }));
    told.extend(read.fill_pct.map(|fill_pct| {
        texts::Full {
            percent: &pct_text(fill_pct, locale),
        }
        .said(locale)
    }));
    row(&told, locale)
}

/// What a test found, without the heap: "8 of 20 seeds sprouted, 20 of 20 in the control".
pub(crate) fn tested_line(tested: &Tested, locale: Locale) -> String {
    let mut told: Vec<String> = Vec::new();
    if tested.laboratory.is_some() {
        told.push(texts::laboratory(locale).to_owned());
    }
    if let Some(test) = &tested.self_heating {
        told.push(
            texts::SelfHeating {
                highest: &locale.temperature(test.highest_c),
                room: &locale.temperature(test.room_c),
            }
            .said(locale),
        );
    }
    if let Some(test) = &tested.germination {
        told.push(
            texts::Germination {
                control_sown: f64::from(test.control_sown),
                control_sprouted: f64::from(test.control_sprouted),
                sown: f64::from(test.sown),
                sprouted: f64::from(test.sprouted),
            }
            .said(locale),
        );
    }
    if let Some(test) = &tested.bag {
        let (count, days) = (test.days, &locale.significant(test.days, 3));
        told.push(if test.swollen {
            texts::BagSwollen { count, days }.said(locale)
        } else {
            texts::BagNotSwollen { count, days }.said(locale)
        });
    }
    clauses(&told, locale)
}

fn probe_line(probe: &Probe, locale: Locale) -> String {
    let temperature = locale.temperature(probe.temperature_c);
    let told = match probe.place {
        Some(place) => texts::Probe {
            place: place_key(place),
            temperature: &temperature,
        }
        .said(locale),
        None => temperature,
    };
    match probe.depth_m {
        Some(depth_m) => {
            let deep = texts::Deep {
                length: &length(depth_m, locale),
            };
            row(&[told, deep.said(locale)], locale)
        }
        None => told,
    }
}

fn length(length_m: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => texts::Centimetres {
            number: &locale.significant(length_m * 100.0, 3),
        }
        .said(locale),
        // International inch: 0.0254 m exactly.
        UnitSystem::UsCustomary => texts::Inches {
            number: &locale.significant(length_m / 0.0254, 3),
        }
        .said(locale),
    }
}

/// By what a message chooses the words for a place.
const fn place_key(place: ProbePlace) -> &'static str {
    match place {
        ProbePlace::Core => "core",
        ProbePlace::Halfway => "halfway",
        ProbePlace::Edge => "edge",
        ProbePlace::Top => "top",
        ProbePlace::Bottom => "bottom",
        ProbePlace::Other => "unknown",
    }
}

fn words<W: Word>(all: &[W], locale: Locale) -> String {
    let words: Vec<&str> = all.iter().map(|one| one.word(locale)).collect();
    row(&words, locale)
}
