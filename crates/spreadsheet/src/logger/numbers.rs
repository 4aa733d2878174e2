//! What number does a cell say, and in which unit?

use heapwright_quantity::celsius_from_fahrenheit;

/// The unit of temperatures in a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TemperatureUnit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

impl TemperatureUnit {
    /// What it is called in a sentence.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Celsius => "degrees Celsius",
            Self::Fahrenheit => "degrees Fahrenheit",
        }
    }

    /// The temperature [degC]; of one in Fahrenheit to a hundredth, which is finer than
    /// thermometers are.
    pub(super) fn celsius(self, shown: f64) -> f64 {
        match self {
            Self::Celsius => shown,
            Self::Fahrenheit => (celsius_from_fahrenheit(shown) * 100.0).round() / 100.0,
        }
    }
}

/// A number with a point or a comma. `None` for anything else, words for infinity included.
pub(super) fn number(cell: &str) -> Option<f64> {
    let cell = cell.trim();
    if cell.len() > 40 {
        return None;
    }
    let (minus, digits) = match cell.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest),
        None => (false, cell.strip_prefix('+').unwrap_or(cell)),
    };
    let plain = digits.replacen(',', ".", 1);
    if !plain.starts_with(|c: char| c.is_ascii_digit() || c == '.')
        || !plain
            .bytes()
            .all(|byte| byte.is_ascii_digit() || b".eE+-".contains(&byte))
    {
        return None;
    }
    let value: f64 = plain.parse().ok()?;
    let value = if minus { -value } else { value };
    value.is_finite().then_some(value)
}

/// A number that may have its unit behind it: "55.5", "55,5 °C", "131F".
pub(super) fn temperature(cell: &str) -> Option<(f64, Option<TemperatureUnit>)> {
    let cell = cell.trim();
    if let Some(number) = number(cell) {
        return Some((number, None));
    }
    let at = cell.find(|c: char| c.is_alphabetic() || "°º˚℃℉".contains(c))?;
    let unit = unit_alone(&cell[at..])?;
    Some((number(&cell[..at])?, Some(unit)))
}

/// The unit that a cell holds and nothing else.
pub(super) fn unit_alone(cell: &str) -> Option<TemperatureUnit> {
    let words = words(cell);
    match (words.as_slice(), unit_in(&words, true)) {
        ([_], Some(Ok(unit))) => Some(unit),
        _ => None,
    }
}

/// The words of a name, in lower case; "°C", "deg C" and the like become "degc".
pub(super) fn words(name: &str) -> Vec<String> {
    // Names are short; what is longer is none.
    let lower: String = name.chars().take(200).collect::<String>().to_lowercase();
    let lower = lower
        .replace('℃', " degc ")
        .replace('℉', " degf ")
        .replace(['°', 'º', '˚'], " deg ");
    let mut words: Vec<String> = Vec::new();
    for word in lower.split(|c: char| !c.is_alphanumeric()) {
        let behind_degrees = words
            .last()
            .is_some_and(|last| ["deg", "degs", "degree", "degrees"].contains(&last.as_str()));
        match word {
            "" => {}
            "c" | "celsius" if behind_degrees => {
                words.pop();
                words.push("degc".to_owned());
            }
            "f" | "fahrenheit" if behind_degrees => {
                words.pop();
                words.push("degf".to_owned());
            }
            word => words.push(word.to_owned()),
        }
    }
    words
}

/// The unit that words name; an error when they name both. A letter alone is taken for one only
/// where a temperature is spoken of.
pub(super) fn unit_in(words: &[String], letters: bool) -> Option<Result<TemperatureUnit, ()>> {
    let names = |long: &[&str], short: &[&str]| {
        words.iter().any(|word| {
            long.contains(&word.as_str()) || (letters && short.contains(&word.as_str()))
        })
    };
    let celsius = names(&["degc", "celsius", "centigrade"], &["c", "tempc"]);
    let fahrenheit = names(&["degf", "fahrenheit"], &["f", "tempf"]);
    match (celsius, fahrenheit) {
        (true, true) => Some(Err(())),
        (true, false) => Some(Ok(TemperatureUnit::Celsius)),
        (false, true) => Some(Ok(TemperatureUnit::Fahrenheit)),
        (false, false) => None,
    }
}

/// What a file says that names no unit: the unit that its numbers speak for, if they do.
///
/// Above 100 water boils in Celsius; below 25 everything is hard frozen in Fahrenheit, and a file
/// that goes there without ever passing 80 is of a heap or its air in Celsius. In between either
/// may be.
pub(super) fn guessed(least: f64, most: f64) -> Option<TemperatureUnit> {
    if most > 100.0 {
        Some(TemperatureUnit::Fahrenheit)
    } else if least < 25.0 && most <= 80.0 {
        Some(TemperatureUnit::Celsius)
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_points_or_commas() {
        for (cell, value) in [
            ("55.5", Some(55.5)),
            (" 55,5 ", Some(55.5)),
            ("-3", Some(-3.0)),
            ("−3,25", Some(-3.25)),
            ("+4.", Some(4.0)),
            (".5", Some(0.5)),
            ("5.55e1", Some(55.5)),
            ("1.234,5", None),
            ("1,234.5", None),
            ("NaN", None),
            ("inf", None),
            ("--", None),
            ("", None),
            ("=55", None),
            ("1e999", None),
            ("٥", None),
            ("+-5", None),
        ] {
            assert_eq!(number(cell), value, "{cell}");
        }
    }

    #[test]
    fn units_stand_behind_numbers_and_in_names() {
        use TemperatureUnit::{Celsius, Fahrenheit};
        for (cell, found) in [
            ("55.5 °C", Some((55.5, Some(Celsius)))),
            ("131F", Some((131.0, Some(Fahrenheit)))),
            ("55,5℃", Some((55.5, Some(Celsius)))),
            ("131 deg F", Some((131.0, Some(Fahrenheit)))),
            ("131 V", None),
            ("C", None),
        ] {
            assert_eq!(temperature(cell), found, "{cell}");
        }
        for (name, unit) in [
            ("Temp (°C)", Some(Ok(Celsius))),
            ("temperature_f", Some(Ok(Fahrenheit))),
            ("Degrees Celsius", Some(Ok(Celsius))),
            ("Temp C/F", Some(Err(()))),
            ("Temp", None),
        ] {
            assert_eq!(unit_in(&words(name), true), unit, "{name}");
        }
    }
}
