//! "3 buckets of shredded leaves", "2 L of water", "31 (26 to 40)".

use heapwright_catalogue::Catalogue;
use heapwright_garden::FoundPart;
use heapwright_quantity::{
    Amount, Interval, Unit, UnitSystem, mass_text, measure_count_text, significant, volume_text,
};
use heapwright_terms::Material;
use heapwright_texts::Locale;

/// An amount in the keeper's own measures: "3 buckets", "4.5 kg".
#[must_use]
pub fn amount_text(catalogue: &Catalogue, amount: &Amount, locale: Locale) -> String {
    match &amount.unit {
        Unit::Mass(unit) => locale.mass(amount.count * unit.kilograms()),
        Unit::Volume(unit) => locale.volume(amount.count * unit.cubic_metres()),
        Unit::Measure(id) => {
            let count = measure_count_text(amount.count);
            match catalogue.measure(id) {
                Some(measure) if amount.count > 1.0 => format!("{count}\u{a0}{}", measure.plural),
                Some(measure) => format!("{count}\u{a0}{}", measure.name),
                None => format!("{count}\u{a0}{id}"),
            }
        }
    }
}

/// An amount of something: "3 buckets of shredded leaves".
#[must_use]
pub fn amount_of(catalogue: &Catalogue, found: &FoundPart, locale: Locale) -> String {
    format!(
        "{} of {}",
        amount_text(catalogue, &found.amount, locale),
        name_in_sentence(catalogue, found)
    )
}

/// The short name as it stands inside a sentence, with its conditions: "wet shredded leaves".
#[must_use]
pub fn name_in_sentence(catalogue: &Catalogue, found: &FoundPart) -> String {
    match &found.material {
        Some(material) => name_of(catalogue, material, &found.conditions),
        None => found.name.clone(),
    }
}

/// The short name of a material with its conditions: "wet shredded leaves".
pub(crate) fn name_of(catalogue: &Catalogue, material: &Material, conditions: &[String]) -> String {
    let name = lower_first(&material.short_name);
    let mut words: Vec<String> = conditions
        .iter()
        .filter_map(|id| catalogue.condition(id))
        .map(|condition| condition.name.to_lowercase())
        // "dry dry leaves": the name says it already.
        .filter(|condition| {
            !name
                .to_lowercase()
                .split_whitespace()
                .any(|word| word == condition)
        })
        .collect();
    words.push(name);
    words.join(" ")
}

fn lower_first(name: &str) -> String {
    let mut letters = name.chars();
    let Some(first) = letters.next() else {
        return String::new();
    };
    let rest = letters.as_str();
    // "NPK" and other names in capitals stay as they are.
    if rest.chars().next().is_some_and(char::is_uppercase) {
        name.to_owned()
    } else {
        first.to_lowercase().collect::<String>() + rest
    }
}

/// Water from a can, by volume: a litre weighs a kilogram.
#[must_use]
pub fn water_text(water_kg: f64, locale: Locale) -> String {
    locale.volume(water_kg / 1000.0)
}

/// A ratio for people: two digits, three from 100 up.
#[must_use]
pub fn ratio_text(ratio: f64) -> String {
    if ratio < 10.0 {
        significant(ratio, 2)
    } else {
        format!("{:.0}", ratio)
    }
}

/// A fraction as whole percent: "57 %".
#[must_use]
pub fn percent_text(fraction: f64) -> String {
    // Nearly all is not all; what rounding left of all is.
    if (0.995..1.0 - 1e-9).contains(&fraction) {
        return ">99\u{a0}%".to_owned();
    }
    format!("{:.0}\u{a0}%", fraction * 100.0)
}

/// A value and the limit that it misses, as texts that differ: with as many more
/// digits as it takes, up to three.
#[must_use]
pub fn apart(value: f64, limit: f64, is_ratio: bool) -> (String, String) {
    let text = |number: f64, digits: usize| {
        if is_ratio {
            format!("{number:.digits$}")
        } else {
            format!("{:.digits$}\u{a0}%", number * 100.0)
        }
    };
    (0..=3)
        .map(|digits| (text(value, digits), text(limit, digits)))
        .find(|(value, limit)| value != limit)
        .unwrap_or_else(|| (text(value, 3), text(limit, 3)))
}

/// A figure's interval: "26 to 40"; the figure alone when it has no spread.
#[must_use]
pub fn interval_text(interval: &Interval, text: impl Fn(f64) -> String) -> String {
    let (low, high) = (text(interval.low), text(interval.high));
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}
