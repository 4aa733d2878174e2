//! Lengths, areas, temperatures, shares and words to choose from, as people say them.

use heapwright_catalogue::Catalogue;
use heapwright_journal::content::{Probe, ProbePlace};
use heapwright_quantity::{Amount, Unit, UnitSystem, celsius_from_fahrenheit, parse_amount};
use heapwright_wording::Word;

use crate::ENGLISH;
use crate::WireError;
use crate::read::{shown, vocabulary};

/// International foot, 1959: 0.3048 m.
const METRES_PER_FOOT: f64 = 0.3048;

/// Units of length and how long each is [m].
const LENGTHS: [(&[&str], f64); 6] = [
    (&["m", "metre", "metres", "meter", "meters"], 1.0),
    (
        &[
            "cm",
            "centimetre",
            "centimetres",
            "centimeter",
            "centimeters",
        ],
        0.01,
    ),
    (
        &[
            "mm",
            "millimetre",
            "millimetres",
            "millimeter",
            "millimeters",
        ],
        0.001,
    ),
    (&["ft", "foot", "feet", "'", "′"], METRES_PER_FOOT),
    (&["in", "inch", "inches", "\"", "″"], METRES_PER_FOOT / 12.0),
    (&["yd", "yard", "yards"], METRES_PER_FOOT * 3.0),
];

/// Units of area and how large each is [m2].
const AREAS: [(&[&str], f64); 5] = [
    (
        &[
            "m2",
            "m²",
            "sqm",
            "sq m",
            "square metres",
            "square metre",
            "square meters",
            "square meter",
        ],
        1.0,
    ),
    (
        &["ft2", "ft²", "sq ft", "sqft", "square feet", "square foot"],
        METRES_PER_FOOT * METRES_PER_FOOT,
    ),
    (
        &["yd2", "yd²", "sq yd", "square yards", "square yard"],
        METRES_PER_FOOT * METRES_PER_FOOT * 9.0,
    ),
    (&["ha", "hectare", "hectares"], 10_000.0),
    (
        &["acre", "acres"],
        METRES_PER_FOOT * METRES_PER_FOOT * 43_560.0,
    ),
];

/// The number that a text begins with, and the rest in lower case.
fn number_and_rest(text: &str) -> Option<(f64, String)> {
    let text = text
        .trim()
        .replace('\u{2212}', "-")
        .replace('\u{a0}', " ")
        .to_lowercase();
    let end = text
        .char_indices()
        .find(|(at, c)| {
            !(c.is_ascii_digit() || matches!(c, '.' | ',') || (*at == 0 && matches!(c, '-' | '+')))
        })
        .map_or(text.len(), |(at, _)| at);
    let (number, rest) = text.split_at(end);
    // "60, core": the comma belongs to the list.
    let trimmed = number.trim_end_matches(',');
    let rest = rest.trim().to_owned();
    let number: f64 = trimmed.replace(',', ".").parse().ok()?;
    number.is_finite().then_some((number, rest))
}

fn in_units(text: &str, units: &[(&[&str], f64)]) -> Option<f64> {
    let (number, rest) = number_and_rest(text)?;
    units
        .iter()
        .find(|(words, _)| words.contains(&rest.as_str()))
        .map(|(_, each)| number * each)
}

/// A length [m]: "1 m", "90 cm", "3 ft".
pub fn length_m(text: &str, field: &str) -> Result<f64, WireError> {
    in_units(text, &LENGTHS)
        .filter(|length| *length > 0.0)
        .ok_or_else(|| {
            WireError::field(
                field,
                format!(
                    "\"{}\" is no length: give one such as \"90 cm\" or \"3 ft\"",
                    shown(text)
                ),
            )
        })
}

/// An area [m2]: "12 m2", "100 sq ft", "3 m x 1.2 m".
pub fn area_m2(text: &str, field: &str) -> Result<f64, WireError> {
    let product = || {
        let (one, other) = text.split_once(['x', '×', '*'])?;
        let other = in_units(other, &LENGTHS)?;
        // "3 x 1.2 m": the unit stands once.
        let one = in_units(one, &LENGTHS).or_else(|| {
            let (number, rest) = number_and_rest(one)?;
            let unit: String = text
                .chars()
                .rev()
                .take_while(|c| c.is_alphabetic())
                .collect();
            let unit: String = unit.chars().rev().collect();
            rest.is_empty()
                .then(|| in_units(&format!("{number} {unit}"), &LENGTHS))?
        })?;
        Some(one * other)
    };
    in_units(text, &AREAS)
        .or_else(product)
        .filter(|area| *area > 0.0)
        .ok_or_else(|| {
            WireError::field(
                field,
                format!(
                    "\"{}\" is no area: give one such as \"12 m2\" or \"3 m x 1.2 m\"",
                    shown(text)
                ),
            )
        })
}

/// A share [percent]: "50%", "50", "half", "all".
pub fn share_pct(text: &str, field: &str) -> Result<f64, WireError> {
    let plain = text.trim().to_lowercase();
    let pct = match plain.as_str() {
        "all" => Some(100.0),
        "half" => Some(50.0),
        "a third" | "third" => Some(100.0 / 3.0),
        "a quarter" | "quarter" => Some(25.0),
        _ => number_and_rest(&plain)
            .filter(|(_, rest)| matches!(rest.as_str(), "" | "%" | "percent"))
            .map(|(number, _)| number),
    };
    pct.filter(|pct| *pct > 0.0 && *pct <= 100.0)
        .ok_or_else(|| {
            WireError::field(
                field,
                format!(
                    "\"{}\" is no share: give one above 0 to 100, such as 50%",
                    shown(text)
                ),
            )
        })
}

/// A temperature [degC]: "58 C", "136 F"; without a unit as the garden speaks.
pub fn temperature_c(text: &str, system: UnitSystem, field: &str) -> Result<f64, WireError> {
    let found = number_and_rest(text).and_then(|(number, rest)| celsius(number, &rest, system));
    found.ok_or_else(|| no_temperature(text, field))
}

fn no_temperature(text: &str, field: &str) -> WireError {
    WireError::field(
        field,
        format!(
            "\"{}\" is no temperature: give one such as \"58 C\" or \"136 F core\"",
            shown(text)
        ),
    )
}

fn celsius(number: f64, unit: &str, system: UnitSystem) -> Option<f64> {
    match unit {
        "c" | "°c" | "° c" | "deg c" | "degc" | "celsius" => Some(number),
        "f" | "°f" | "° f" | "deg f" | "degf" | "fahrenheit" => {
            Some(celsius_from_fahrenheit(number))
        }
        "" | "°" | "deg" | "degrees" => Some(match system {
            UnitSystem::Metric => number,
            UnitSystem::UsCustomary => celsius_from_fahrenheit(number),
        }),
        _ => None,
    }
}

/// One reading of a probe: "58 C", "58 C core", "136 F, 40 cm deep", "60 C @ edge, 20 cm".
pub fn probe(text: &str, system: UnitSystem, field: &str) -> Result<Probe, WireError> {
    let fail = || no_temperature(text, field);
    let (number, rest) = number_and_rest(text).ok_or_else(fail)?;
    let rest = rest.replace(['@', ',', ';'], " ");
    let mut words: Vec<&str> = rest
        .split_whitespace()
        .filter(|word| !matches!(*word, "at" | "in" | "the" | "near"))
        .collect();
    // The longest beginning that is a unit; a glued length is none.
    let mut unit = 0;
    for count in 1..=words.len().min(2) {
        if celsius(number, &words[..count].join(" "), system).is_some() {
            unit = count;
        }
    }
    let temperature_c = celsius(number, &words[..unit].join(" "), system).ok_or_else(fail)?;
    words.drain(..unit);
    words.retain(|word| *word != "deep");
    let mut place = None;
    let mut depth_m = None;
    let mut at = 0;
    while let Some(word) = words.get(at) {
        let named = match *word {
            "middle" | "centre" | "center" => Some(ProbePlace::Core),
            word => ProbePlace::choices()
                .iter()
                .copied()
                .find(|place| place.word(ENGLISH) == word),
        };
        if let (Some(named), None) = (named, place) {
            place = Some(named);
            at += 1;
            continue;
        }
        let pair = words.get(at..at + 2).map(|pair| pair.join(" "));
        let (length, taken) = match pair.as_deref().and_then(|pair| in_units(pair, &LENGTHS)) {
            Some(length) => (length, 2),
            None => (
                in_units(word, &LENGTHS).ok_or_else(|| no_place(text, field))?,
                1,
            ),
        };
        if depth_m.replace(length).is_some() {
            return Err(no_place(text, field));
        }
        at += taken;
    }
    Ok(Probe {
        temperature_c,
        depth_m,
        place,
    })
}

fn no_place(text: &str, field: &str) -> WireError {
    let places: Vec<&str> = ProbePlace::choices()
        .iter()
        .map(|place| place.word(ENGLISH))
        .collect();
    WireError::field(
        field,
        format!(
            "\"{}\": behind the temperature stand at most a place ({}) and a depth such as \"40 cm\"",
            shown(text),
            places.join(", ")
        ),
    )
}

/// One of the words that can be chosen, by what it is called or by the word of the journal; case,
/// hyphens and underscores do not matter.
pub fn chosen<W: Word + serde::Serialize>(text: &str, field: &str) -> Result<W, WireError> {
    let plain = |text: &str| {
        let text = text.to_lowercase().replace(['-', '_'], " ");
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let typed = plain(text);
    let key = |word: W| {
        serde_json::to_value(word)
            .ok()
            .and_then(|value| value.as_str().map(plain))
    };
    W::choices()
        .iter()
        .copied()
        .find(|word| plain(word.word(ENGLISH)) == typed || key(*word).as_deref() == Some(&typed))
        .ok_or_else(|| {
            let words: Vec<&str> = W::choices().iter().map(|word| word.word(ENGLISH)).collect();
            WireError::field(
                field,
                format!("\"{}\" is none of {}", shown(text), words.join(", ")),
            )
        })
}

/// Several of the words, parted by commas, each once.
pub fn all_chosen<W: Word + serde::Serialize>(
    texts: &[String],
    field: &str,
) -> Result<Vec<W>, WireError> {
    let mut all = Vec::new();
    for text in texts.iter().flat_map(|text| text.split(',')) {
        let word = chosen(text, field)?;
        if !all.contains(&word) {
            all.push(word);
        }
    }
    Ok(all)
}

/// One amount: "2 buckets", "3.5 kg".
pub fn spoken_amount(catalogue: &Catalogue, text: &str, field: &str) -> Result<Amount, WireError> {
    parse_amount(text, &vocabulary(catalogue)).map_err(|error| WireError::field(field, error))
}

/// A mass [kg]: "2 kg", "12 oz".
pub fn mass_kg(catalogue: &Catalogue, text: &str, field: &str) -> Result<f64, WireError> {
    spoken_amount(catalogue, text, field)?
        .kilograms()
        .ok_or_else(|| {
            WireError::field(
                field,
                format!(
                    "\"{}\" is no weight: give one such as \"2.5 kg\"",
                    shown(text)
                ),
            )
        })
}

/// A volume [L]: "10 l", "3 US gal".
pub fn volume_l(catalogue: &Catalogue, text: &str, field: &str) -> Result<f64, WireError> {
    spoken_amount(catalogue, text, field)?
        .cubic_metres()
        .map(|volume| volume * 1000.0)
        .ok_or_else(|| {
            WireError::field(
                field,
                format!(
                    "\"{}\" is no volume: give one such as \"10 l\"",
                    shown(text)
                ),
            )
        })
}

/// The id of the measure that a word means: "buckets" is "bucket".
pub fn measure_id(catalogue: &Catalogue, text: &str, field: &str) -> Result<String, WireError> {
    // As one of it would be counted, so that every word and slip is met as everywhere else.
    match spoken_amount(catalogue, &format!("1 {}", text.trim()), field)?.unit {
        Unit::Measure(id) => Ok(id),
        Unit::Mass(_) | Unit::Volume(_) => Err(WireError::field(
            field,
            format!(
                "\"{}\" is a unit already: name a vessel, such as bucket",
                shown(text)
            ),
        )),
    }
}

#[cfg(test)]
mod tests {
    use heapwright_journal::content::{How, Smell, Thoroughness};

    use super::*;

    const METRIC: UnitSystem = UnitSystem::Metric;

    #[test]
    fn lengths_and_areas_are_understood() {
        for (text, expected) in [
            ("1 m", 1.0),
            ("90 cm", 0.9),
            ("90cm", 0.9),
            ("900 mm", 0.9),
            ("3 ft", 0.9144),
            ("36 in", 0.9144),
            ("1,2 m", 1.2),
            ("1 yard", 0.9144),
        ] {
            let found = length_m(text, "--width").unwrap();
            assert!((found - expected).abs() < 1e-12, "{text}: {found}");
        }
        for (text, expected) in [
            ("12 m2", 12.0),
            ("12 m²", 12.0),
            ("100 sq ft", 9.290_304),
            ("3 m x 1.2 m", 3.6),
            ("3 x 1.2 m", 3.6),
            ("300 cm × 1.2 m", 3.6),
        ] {
            let found = area_m2(text, "AREA").unwrap();
            assert!((found - expected).abs() < 1e-9, "{text}: {found}");
        }
        for text in [
            "", "1", "m", "-1 m", "0 m", "1 kg", "1 m 2", "NaN m", "inf m", "1e999 m",
        ] {
            assert!(length_m(text, "--width").is_err(), "{text}");
            assert!(area_m2(text, "AREA").is_err(), "{text}");
        }
    }

    #[test]
    fn shares_are_understood() {
        for (text, expected) in [
            ("50%", 50.0),
            ("50", 50.0),
            ("half", 50.0),
            ("12.5 %", 12.5),
            ("all", 100.0),
        ] {
            assert!(
                (share_pct(text, "--share").unwrap() - expected).abs() < 1e-12,
                "{text}"
            );
        }
        for text in ["0", "101%", "-5", "some", "", "50 kg"] {
            assert!(share_pct(text, "--share").is_err(), "{text}");
        }
    }

    #[test]
    fn readings_of_a_probe_are_understood() {
        use ProbePlace::{Core, Edge};
        #[rustfmt::skip] // a table
        let table = [
            ("58 C", 58.0, None, None), ("58", 58.0, None, None), ("58 °C", 58.0, None, None),
            ("-3 C", -3.0, None, None), ("136.4 F", 58.0, None, None),
            ("58 C core", 58.0, None, Some(Core)), ("58c core", 58.0, None, Some(Core)),
            ("58 C, in the core", 58.0, None, Some(Core)), ("58 core", 58.0, None, Some(Core)),
            ("58 C in the middle", 58.0, None, Some(Core)),
            ("136.4 F, 40 cm deep", 58.0, Some(0.4), None),
            ("58 C @ edge, 20cm", 58.0, Some(0.2), Some(Edge)),
            ("58 C 40 cm deep at the edge", 58.0, Some(0.4), Some(Edge)),
            ("58,5 C", 58.5, None, None),
        ];
        for (text, temperature_c, depth_m, place) in table {
            let found = probe(text, METRIC, "--temperature").unwrap();
            assert!(
                (found.temperature_c - temperature_c).abs() < 1e-9,
                "{text}: {found:?}"
            );
            assert_eq!((found.depth_m, found.place), (depth_m, place), "{text}");
        }
        let found = probe("136.4 core", UnitSystem::UsCustomary, "--temperature").unwrap();
        assert!((found.temperature_c - 58.0).abs() < 1e-9);
        for text in [
            "",
            "hot",
            "58 kg",
            "58 C here",
            "58 C core edge",
            "58 C 1 m 2 m",
            "58 K",
            "1e999 C",
        ] {
            let error = probe(text, METRIC, "--temperature")
                .unwrap_err()
                .to_string();
            assert!(error.starts_with("--temperature: "), "{text}: {error}");
        }
        assert!((temperature_c("32 F", METRIC, "--air").unwrap()).abs() < 1e-12);
    }

    #[test]
    fn words_are_found_however_they_are_written() {
        assert_eq!(
            chosen::<Thoroughness>("inside-out", "--how"),
            Ok(Thoroughness::InsideOut)
        );
        assert_eq!(
            chosen::<Thoroughness>("Forked_Over", "--how"),
            Ok(Thoroughness::ForkedOver)
        );
        assert_eq!(chosen::<How>("mulch", "--how"), Ok(How::Mulch));
        assert_eq!(chosen::<How>("left on top", "--how"), Ok(How::Mulch));
        let smells =
            all_chosen::<Smell>(&["earthy, sour".to_owned(), "sour".to_owned()], "--smell");
        assert_eq!(smells, Ok(vec![Smell::Earthy, Smell::Sour]));
        let error = chosen::<Smell>("other", "--smell").unwrap_err().to_string();
        assert!(error.contains("ammonia"), "{error}");
    }
}
