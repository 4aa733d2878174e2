//! "3 buckets of shredded leaves", "2 L of water", "31 (26 to 40)".

use heapwright_answers::MixAnswer;
use heapwright_catalogue::Catalogue;
use heapwright_garden::FoundPart;
use heapwright_quantity::{Amount, Interval, Unit, measure_count_text};
use heapwright_terms::Material;
use heapwright_texts::Locale;
use heapwright_texts::messages::{amounts as texts, cldr};

/// An amount in the keeper's own measures: "3 buckets", "4.5 kg".
#[must_use]
pub fn amount_text(catalogue: &Catalogue, amount: &Amount, locale: Locale) -> String {
    match &amount.unit {
        Unit::Mass(unit) => locale.mass(amount.count * unit.kilograms()),
        Unit::Volume(unit) => locale.volume(amount.count * unit.cubic_metres()),
        Unit::Measure(id) => {
            let measure = match catalogue.measure(id) {
                Some(measure) if amount.count > 1.0 => &measure.plural,
                Some(measure) => &measure.name,
                None => id,
            };
            texts::CountOfMeasure {
                count: &measure_count_text(amount.count),
                measure,
            }
            .said(locale)
        }
    }
}

/// An amount of something: "3 buckets of shredded leaves".
#[must_use]
pub fn amount_of(catalogue: &Catalogue, found: &FoundPart, locale: Locale) -> String {
    part_of(
        &amount_text(catalogue, &found.amount, locale),
        &name_in_sentence(catalogue, found, locale),
        locale,
    )
}

/// An amount and a name that were written already: "3 buckets of shredded leaves".
pub(crate) fn part_of(amount: &str, name: &str, locale: Locale) -> String {
    texts::AmountOf { amount, name }.said(locale)
}

/// The short name as it stands inside a sentence, with its conditions: "wet shredded leaves".
#[must_use]
pub fn name_in_sentence(catalogue: &Catalogue, found: &FoundPart, locale: Locale) -> String {
    match &found.material {
        Some(material) => name_of(catalogue, material, &found.conditions, locale),
        None => found.name.clone(),
    }
}

/// What lies in a mixture by name, with its typical wet mass [kg], the heaviest first: what was said
/// in several measures or with figures of its own is one thing all the same.
#[must_use]
pub fn things_by_mass(
    catalogue: &Catalogue,
    mix: &MixAnswer,
    locale: Locale,
) -> Vec<(String, f64)> {
    let mut things: Vec<(String, f64)> = Vec::new();
    for (part, brought) in mix.parts.iter().zip(&mix.brought) {
        let name = name_in_sentence(catalogue, part, locale);
        match things.iter_mut().find(|(other, _)| *other == name) {
            Some((_, mass_kg)) => *mass_kg += brought.wet_mass_kg,
            None => things.push((name, brought.wet_mass_kg)),
        }
    }
    things.sort_by(|one, other| other.1.total_cmp(&one.1));
    things
}

/// The short name of a material with its conditions: "wet shredded leaves".
pub(crate) fn name_of(
    catalogue: &Catalogue,
    material: &Material,
    conditions: &[String],
    locale: Locale,
) -> String {
    let name = if names_begin_small(locale) {
        lower_first(&material.short_name)
    } else {
        material.short_name.clone()
    };
    let conditions: Vec<String> = conditions
        .iter()
        .filter_map(|id| catalogue.condition(id))
        .map(|condition| condition.name.to_lowercase())
        // "dry dry leaves": the name says it already.
        .filter(|condition| {
            !name
                .to_lowercase()
                .split(|letter: char| letter.is_whitespace() || "(),".contains(letter))
                .any(|word| word == condition)
        })
        .collect();
    if conditions.is_empty() {
        return name;
    }
    let conditions = &folded(&conditions, |first, second| {
        texts::Conditions { first, second }.said(locale)
    });
    // "Laub (gehäckselt, trocken)": one parenthesis, not two.
    let parted = name
        .strip_suffix(')')
        .and_then(|name| name.rsplit_once(" ("));
    match parted {
        Some((name, inner)) => texts::NameWithMoreConditions {
            conditions,
            inner,
            name,
        }
        .said(locale),
        None => texts::NameWithConditions {
            conditions,
            name: &name,
        }
        .said(locale),
    }
}

/// Whether the names of things begin with a small letter inside a sentence.
pub(crate) fn names_begin_small(locale: Locale) -> bool {
    texts::names_in_a_sentence(locale) == "small"
}

/// "a, b, c": what is told in a row, without a word before the last.
pub(crate) fn row<Item: AsRef<str>>(items: &[Item], locale: Locale) -> String {
    folded(items, |first, second| {
        cldr::ListMiddle { first, second }.said(locale)
    })
}

/// "a; b": clauses of one sentence.
pub(crate) fn clauses(items: &[String], locale: Locale) -> String {
    folded(items, |first, second| {
        texts::Clauses { first, second }.said(locale)
    })
}

/// Items one after the other, two at a time as `pair` has them.
pub(crate) fn folded<Item: AsRef<str>>(
    items: &[Item],
    pair: impl Fn(&str, &str) -> String,
) -> String {
    match items {
        [] => String::new(),
        [first, rest @ ..] => rest.iter().fold(first.as_ref().to_owned(), |told, item| {
            pair(&told, item.as_ref())
        }),
    }
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

/// Water from a can in a sentence: "2 L of water".
pub(crate) fn amount_of_water(water_kg: f64, locale: Locale) -> String {
    texts::AmountOfWater {
        amount: &water_text(water_kg, locale),
    }
    .said(locale)
}

/// A ratio for people: two digits, three from 100 up.
#[must_use]
pub fn ratio_text(ratio: f64, locale: Locale) -> String {
    if ratio < 10.0 {
        locale.significant(ratio, 2)
    } else {
        locale.decimals(ratio, 0, 0)
    }
}

/// A fraction as whole percent: "57 %".
#[must_use]
pub fn percent_text(fraction: f64, locale: Locale) -> String {
    // Nearly all is not all; what rounding left of all is.
    if (0.995..1.0 - 1e-9).contains(&fraction) {
        return texts::percent_nearly_all(locale).to_owned();
    }
    percent(&locale.decimals(fraction * 100.0, 0, 0), locale)
}

/// A number of percent to three digits: "12.5 %".
pub(crate) fn pct_text(pct: f64, locale: Locale) -> String {
    percent(&locale.significant(pct, 3), locale)
}

fn percent(number: &str, locale: Locale) -> String {
    texts::Percent { number }.said(locale)
}

/// A value and the limit that it misses, as texts that differ: with as many more
/// digits as it takes, up to three.
#[must_use]
pub fn apart(value: f64, limit: f64, is_ratio: bool, locale: Locale) -> (String, String) {
    let text = |number: f64, digits: usize| {
        if is_ratio {
            locale.decimals(number, digits, digits)
        } else {
            percent(&locale.decimals(number * 100.0, digits, digits), locale)
        }
    };
    (0..=3)
        .map(|digits| (text(value, digits), text(limit, digits)))
        .find(|(value, limit)| value != limit)
        .unwrap_or_else(|| (text(value, 3), text(limit, 3)))
}

/// A figure's interval: "26 to 40"; the figure alone when it has no spread.
#[must_use]
pub fn interval_text(interval: &Interval, text: impl Fn(f64) -> String, locale: Locale) -> String {
    let (low, high) = (text(interval.low), text(interval.high));
    if low == high {
        low
    } else {
        texts::Interval {
            low: &low,
            high: &high,
        }
        .said(locale)
    }
}

#[cfg(test)]
mod tests {
    use heapwright_answers::{MixQuestion, USUAL_TARGET, what_is_in};
    use heapwright_catalogue::GERMAN;
    use heapwright_garden::{Found, Garden, Stated, Stuff};
    use heapwright_quantity::MassUnit;
    use heapwright_terms::MaterialId;
    use heapwright_texts::Translation;

    use super::*;
    use crate::Spoken;

    #[test]
    fn a_name_says_each_condition_once_and_in_one_parenthesis() {
        let english: &'static Spoken = Box::leak(Box::new(Spoken::english()));
        let german = Spoken::read("de", Translation::GERMAN, GERMAN).unwrap();
        let german: &'static Spoken = Box::leak(Box::new(german));
        for (spoken, id, conditions, said) in [
            (english, "leaves_shredded_dry", "wet", "wet shredded leaves"),
            (
                german,
                "leaves_shredded_dry",
                "wet",
                "Laub (gehäckselt, nass)",
            ),
            (
                german,
                "grass_clippings_fresh",
                "fresh wet",
                "Rasenschnitt (frisch, nass)",
            ),
            (german, "coffee_grounds", "wet", "Kaffeesatz (nass)"),
        ] {
            let (catalogue, locale) = (spoken.catalogue(), spoken.locale());
            let material = catalogue
                .materials()
                .iter()
                .find(|one| one.id.as_str() == id);
            let conditions: Vec<String> = conditions.split(' ').map(str::to_owned).collect();
            assert_eq!(
                name_of(catalogue, material.unwrap(), &conditions, locale),
                said
            );
        }
    }

    #[test]
    fn a_material_in_two_measures_is_one_thing() {
        let catalogue = Catalogue::built_in();
        let garden = Garden::default();
        let found = |material: &str, conditions: &[&str], count, unit| Found {
            stuff: Stuff::Known {
                material: MaterialId(material.to_owned()),
                conditions: conditions.iter().map(|one| (*one).to_owned()).collect(),
                stated: Stated::default(),
            },
            amount: Amount { count, unit },
        };
        let kilograms = Unit::Mass(MassUnit::Kilogram);
        let question = MixQuestion {
            parts: vec![
                found("straw_wheat", &[], 2.0, kilograms.clone()),
                found("coffee_grounds", &[], 2.2, kilograms.clone()),
                found("straw_wheat", &["wet"], 0.1, kilograms),
                found("straw_wheat", &[], 600.0, Unit::Mass(MassUnit::Gram)),
            ],
            water_kg: 0.0,
            target: USUAL_TARGET,
        };
        let mix = what_is_in(catalogue, &garden, &question).unwrap();
        let things = things_by_mass(catalogue, &mix, Locale::default());
        let names: Vec<&str> = things.iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(names, ["straw", "coffee grounds", "wet straw"]);
        assert!((things[0].1 - 2.6).abs() < 1e-9, "{things:?}");
    }

    #[test]
    fn nearly_all_is_not_all() {
        for (fraction, text) in [
            (0.574, "57\u{a0}%"),
            (0.9949, "99\u{a0}%"),
            (0.9951, ">99\u{a0}%"),
            (1.0, "100\u{a0}%"),
        ] {
            assert_eq!(percent_text(fraction, Locale::default()), text);
        }
    }

    #[test]
    fn a_value_is_told_apart_from_its_limit() {
        for (value, limit, is_ratio, value_text, limit_text) in [
            (24.0, 25.0, true, "24", "25"),
            (24.96, 25.0, true, "24.96", "25.00"),
            (0.602, 0.6, false, "60.2\u{a0}%", "60.0\u{a0}%"),
            (25.0, 25.0, true, "25.000", "25.000"),
        ] {
            let texts = apart(value, limit, is_ratio, Locale::default());
            assert_eq!(texts, (value_text.to_owned(), limit_text.to_owned()));
        }
    }
}
