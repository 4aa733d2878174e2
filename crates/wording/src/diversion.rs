//! What was kept out of the bin? Names, rows and what it may mean for the climate.

use heapwright_answers::DiversionAnswer;
use heapwright_answers::finish::{Kind, Otherwise};
use heapwright_quantity::{Interval, MassUnit, UnitSystem};
use heapwright_texts::Locale;
use heapwright_texts::messages::diversion as texts;

/// Said under every climate figure.
#[must_use]
pub fn climate_method(locale: Locale) -> &'static str {
    texts::climate_method(locale)
}

/// The name of a kind of waste.
#[must_use]
pub fn kind_name(kind: Kind, locale: Locale) -> &'static str {
    match kind {
        Kind::Food => texts::kind_food(locale),
        Kind::Garden => texts::kind_garden(locale),
        Kind::Wood => texts::kind_wood(locale),
        Kind::Paper => texts::kind_paper(locale),
        Kind::Other => texts::kind_other(locale),
    }
}

/// What would have become of it otherwise.
#[must_use]
pub fn otherwise_name(otherwise: Otherwise, locale: Locale) -> &'static str {
    match otherwise {
        Otherwise::OpenLandfill => texts::open_landfill(locale),
        Otherwise::LandfillWithCapture => texts::landfill_with_capture(locale),
        Otherwise::BurntOrComposted => texts::burnt_or_composted(locale),
    }
}

/// Months and their mass by kind, with a head and a sum; only kinds that occur. All cells have one
/// unit and one step, and sums are of what is shown, so that a reader who adds up finds the same.
#[must_use]
pub fn month_rows(answer: &DiversionAnswer, locale: Locale) -> Vec<Vec<String>> {
    let columns: Vec<(usize, Kind)> = Kind::ALL
        .into_iter()
        .enumerate()
        .filter(|(index, _)| answer.months.iter().any(|month| month.wet_kg[*index] > 0.0))
        .collect();
    let unit = match locale.units {
        UnitSystem::Metric => MassUnit::Kilogram,
        UnitSystem::UsCustomary => MassUnit::Pound,
    };
    let whole: f64 = answer.months.iter().flat_map(|month| month.wet_kg).sum();
    let (places, steps_per_unit) = match whole / unit.kilograms() {
        ..10.0 => (2, 100.0),
        10.0..1000.0 => (1, 10.0),
        _ => (0, 1.0),
    };
    let steps = |mass_kg: f64| (mass_kg / unit.kilograms() * steps_per_unit).round();
    // What is there though it rounds to nothing is not "–".
    let row = |name: String, cells: &[(f64, bool)]| {
        let text = |(count, is_there): (f64, bool)| {
            if is_there {
                let count = locale.decimals(count / steps_per_unit, places, places);
                format!("{count}\u{a0}{}", unit.symbol())
            } else {
                "–".to_owned()
            }
        };
        let all = (cells.iter().map(|(count, _)| count).sum(), true);
        let cells = cells.iter().copied().chain([all]).map(text);
        std::iter::once(name).chain(cells).collect::<Vec<String>>()
    };
    let mut head = vec![texts::head_month(locale).to_owned()];
    head.extend(
        columns
            .iter()
            .map(|(_, kind)| kind_name(*kind, locale).to_owned()),
    );
    head.push(texts::head_all(locale).to_owned());
    let mut rows = vec![head];
    let mut sums = vec![(0.0, true); columns.len()];
    for month in &answer.months {
        let cells: Vec<(f64, bool)> = columns
            .iter()
            .map(|(index, _)| (steps(month.wet_kg[*index]), month.wet_kg[*index] > 0.0))
            .collect();
        for (sum, cell) in sums.iter_mut().zip(&cells) {
            sum.0 += cell.0;
        }
        rows.push(row(format!("{}-{:02}", month.year, month.month), &cells));
    }
    if answer.months.len() > 1 {
        rows.push(row(texts::all_months(locale).to_owned(), &sums));
    }
    rows
}

/// The three ways it might have gone: spared, and with the heap's own taken off.
#[must_use]
pub fn climate_rows(answer: &DiversionAnswer, locale: Locale) -> Vec<Vec<String>> {
    let Some(climate) = &answer.climate else {
        return Vec::new();
    };
    let range = |interval: &Interval| span(interval.low, interval.high, locale);
    let mut rows = vec![vec![
        texts::head_instead_of(locale).to_owned(),
        texts::head_spared(locale).to_owned(),
        texts::head_on_balance(locale).to_owned(),
    ]];
    for way in &climate.ways {
        rows.push(vec![
            otherwise_name(way.otherwise, locale).to_owned(),
            range(&way.spared_kg),
            range(&way.net_kg),
        ]);
    }
    rows
}

/// A mass below zero has its sign: "−20 kg".
fn signed(mass_kg: f64, locale: Locale) -> String {
    if mass_kg < 0.0 {
        format!("\u{2212}{}", locale.mass(-mass_kg))
    } else {
        locale.mass(mass_kg)
    }
}

/// "−20 kg to 35 kg".
fn span(low_kg: f64, high_kg: f64, locale: Locale) -> String {
    let (low, high) = (signed(low_kg, locale), signed(high_kg, locale));
    if low == high {
        low
    } else {
        texts::FromTo {
            low: &low,
            high: &high,
        }
        .said(locale)
    }
}

/// What it comes to, as sentences.
#[must_use]
pub fn diversion_lines(answer: &DiversionAnswer, locale: Locale) -> Vec<String> {
    let mut lines = Vec::new();
    if !answer.kinds.is_empty() {
        let each: Vec<String> = answer
            .kinds
            .iter()
            .map(|kept| {
                format!(
                    "{} {}",
                    kind_name(kept.kind, locale),
                    span(kept.wet_kg.low, kept.wet_kg.high, locale)
                )
            })
            .collect();
        let kinds = each.join("; ");
        lines.push(texts::ByKind { kinds: &kinds }.said(locale));
    }
    if let Some(weekly_kg) = answer.weekly_kg {
        let mass = locale.mass(weekly_kg);
        lines.push(texts::Weekly { mass: &mass }.said(locale));
    }
    if answer.not_waste_kg > 0.0 {
        let mass = locale.mass(answer.not_waste_kg);
        lines.push(texts::NotWaste { mass: &mass }.said(locale));
    }
    lines.extend(crate::ready::left_out_line(&answer.left_out, locale));
    lines
}

/// What it means for the climate, as sentences; none without a figure.
#[must_use]
pub fn climate_lines(answer: &DiversionAnswer, locale: Locale) -> Vec<String> {
    let Some(climate) = &answer.climate else {
        return Vec::new();
    };
    let range = |interval: &Interval| span(interval.low, interval.high, locale);
    let gave_off = texts::HeapGaveOff {
        methane: &range(&climate.heap_methane_kg),
        nitrous_oxide: &range(&climate.heap_nitrous_oxide_kg),
        stays: &range(&climate.stays_kg),
    };
    let (low, high) = (
        signed(climate.from_to_kg.0, locale),
        signed(climate.from_to_kg.1, locale),
    );
    let on_balance = if low == high {
        texts::LiesAt { mass: &low }.said(locale)
    } else {
        texts::LiesBetween {
            low: &low,
            high: &high,
        }
        .said(locale)
    };
    vec![gave_off.said(locale), on_balance]
}
