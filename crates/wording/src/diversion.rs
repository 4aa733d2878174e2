//! What was kept out of the bin? Names, rows and what it may mean for the climate.

use heapwright_answers::DiversionAnswer;
use heapwright_answers::finish::{Kind, Otherwise};
use heapwright_quantity::{Interval, MassUnit, UnitSystem, mass_text};
use heapwright_texts::Locale;

/// Said under every climate figure.
pub const CLIMATE_METHOD: &str = "Method: landfill by the IPCC's first-order decay (2006, volume 5), all methane whenever it forms; the heap's own methane and nitrous oxide as measured at home heaps; 28 and 265 times carbon dioxide over a century; 2 to 14 % of the compost's carbon still in the soil by then. Carbon dioxide from plants counts zero. Left out: driving, peat and fertiliser replaced, power from landfill gas.";

/// The name of a kind of waste.
#[must_use]
pub const fn kind_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Food => "kitchen",
        Kind::Garden => "garden",
        Kind::Wood => "wood",
        Kind::Paper => "paper",
        Kind::Other => "other",
    }
}

/// What would have become of it otherwise.
#[must_use]
pub const fn otherwise_name(otherwise: Otherwise) -> &'static str {
    match otherwise {
        Otherwise::OpenLandfill => "a landfill that lets its gas go",
        Otherwise::LandfillWithCapture => "a landfill that catches some gas",
        Otherwise::BurntOrComposted => "burning or a composting works",
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
                format!("{:.places$}\u{a0}{}", count / steps_per_unit, unit.symbol())
            } else {
                "–".to_owned()
            }
        };
        let all = (cells.iter().map(|(count, _)| count).sum(), true);
        let cells = cells.iter().copied().chain([all]).map(text);
        std::iter::once(name).chain(cells).collect::<Vec<String>>()
    };
    let mut head = vec!["month".to_owned()];
    head.extend(columns.iter().map(|(_, kind)| kind_name(*kind).to_owned()));
    head.push("all".to_owned());
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
        rows.push(row("all".to_owned(), &sums));
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
        "instead of".to_owned(),
        "spared".to_owned(),
        "on balance".to_owned(),
    ]];
    for way in &climate.ways {
        rows.push(vec![
            otherwise_name(way.otherwise).to_owned(),
            range(&way.spared_kg),
            range(&way.net_kg),
        ]);
    }
    rows
}

/// "−20 kg to 35 kg".
fn span(low: f64, high: f64, locale: Locale) -> String {
    let signed = |mass: f64| {
        if mass < 0.0 {
            format!("\u{2212}{}", locale.mass(-mass))
        } else {
            locale.mass(mass)
        }
    };
    let (low, high) = (signed(low), signed(high));
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}

/// What it comes to, as sentences.
#[must_use]
pub fn diversion_lines(answer: &DiversionAnswer, locale: Locale) -> Vec<String> {
    let mut lines = Vec::new();
    let mass = |value: f64| locale.mass(value);
    if !answer.kinds.is_empty() {
        let each: Vec<String> = answer
            .kinds
            .iter()
            .map(|kept| {
                format!(
                    "{} {}",
                    kind_name(kept.kind),
                    span(kept.wet_kg.low, kept.wet_kg.high, locale)
                )
            })
            .collect();
        lines.push(format!(
            "By kind, with what is not known of weights: {}.",
            each.join("; ")
        ));
    }
    if let Some(weekly) = answer.weekly_kg {
        lines.push(format!("That is {} a week.", mass(weekly)));
    }
    if answer.not_waste_kg > 0.0 {
        lines.push(format!(
            "Not counted, for it was no waste (soil, lime, bought stuff, compost): {}.",
            mass(answer.not_waste_kg)
        ));
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
    vec![
        format!(
            "The heap itself gave off methane worth {} and nitrous oxide worth {}; carbon that stays in the soil makes good {}.",
            range(&climate.heap_methane_kg),
            range(&climate.heap_nitrous_oxide_kg),
            range(&climate.stays_kg)
        ),
        format!(
            "So it lies between {}: above zero is a gain. Which end holds depends on where it would have gone, which only you know.",
            span(climate.from_to_kg.0, climate.from_to_kg.1, locale).replace(" to ", " and ")
        ),
    ]
}
