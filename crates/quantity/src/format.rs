//! How is a quantity written for people? Few digits, units of a sensible size, no exponent.

use crate::unit::{MassUnit, VolumeUnit, fahrenheit_from_celsius};

/// Between a number and its unit, so that a line never breaks there.
const NO_BREAK_SPACE: char = '\u{a0}';
/// What stands for a figure that is not finite.
const NO_FIGURE: &str = "–";

/// The units that a keeper reads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum UnitSystem {
    /// g, kg, t; mL, L, m³; °C.
    #[default]
    Metric,
    /// oz, lb; US cups, quarts and gallons, cubic yards; °F.
    UsCustomary,
}

/// A value with `digits` significant digits (1 to 15), without exponent or trailing zeros.
///
/// Below zero the minus sign U+2212 leads; what is not finite is "–".
#[must_use]
pub fn significant(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return NO_FIGURE.to_owned();
    }
    let decimals = digits.clamp(1, 15) - 1;
    let scientific = format!("{:.decimals$e}", value.abs());
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let digits: String = mantissa.chars().filter(char::is_ascii_digit).collect();
    let exponent: i32 = exponent.parse().unwrap_or(0);
    let mut text = positional(&digits, exponent);
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if value < 0.0 && text != "0" {
        text.insert(0, '\u{2212}');
    }
    text
}

/// The digits d1 d2 d3 ... as d1.d2d3 times ten to the exponent, written out.
fn positional(digits: &str, exponent: i32) -> String {
    match usize::try_from(exponent) {
        Ok(shift) if shift + 1 >= digits.len() => {
            format!("{digits}{}", "0".repeat(shift + 1 - digits.len()))
        }
        Ok(shift) => {
            let (whole, decimals) = digits.split_at(shift + 1);
            format!("{whole}.{decimals}")
        }
        Err(_) => {
            let zeros = usize::try_from(-exponent - 1).unwrap_or(0);
            format!("0.{}{digits}", "0".repeat(zeros))
        }
    }
}

/// A count of vessels with halves and quarters: "2½", "¾", "12".
///
/// Below 10 to the nearest quarter, below 20 to the nearest half, from there to the nearest whole.
/// What is above 0 and would round to nothing is "<⅛"; a count that is not finite or below 0 is "–".
#[must_use]
pub fn measure_count_text(count: f64) -> String {
    if !count.is_finite() || count < 0.0 {
        return NO_FIGURE.to_owned();
    }
    let steps = if count < 10.0 {
        4.0
    } else if count < 20.0 {
        2.0
    } else {
        1.0
    };
    let rounded = (count * steps).round() / steps;
    if rounded == 0.0 && count > 0.0 {
        return "<⅛".to_owned();
    }
    let whole = rounded.trunc();
    let part = rounded - whole;
    let sign = if part == 0.25 {
        "¼"
    } else if part == 0.5 {
        "½"
    } else if part == 0.75 {
        "¾"
    } else {
        ""
    };
    if whole == 0.0 && !sign.is_empty() {
        sign.to_owned()
    } else {
        format!("{whole}{sign}")
    }
}

/// A mass [kg] in g, kg or t, or in oz or lb.
#[must_use]
pub fn mass_text(mass_kg: f64, system: UnitSystem) -> String {
    let size = |unit: MassUnit| (unit.kilograms(), unit.symbol());
    match system {
        UnitSystem::Metric => stepped(
            mass_kg,
            &[MassUnit::Gram, MassUnit::Kilogram, MassUnit::Tonne].map(size),
        ),
        UnitSystem::UsCustomary => stepped(mass_kg, &[MassUnit::Ounce, MassUnit::Pound].map(size)),
    }
}

/// A volume [m3] in mL, L or m³, or in US cups, quarts, gallons or cubic yards.
///
/// The gallons are US gallons; the text says "gal" because the whole system is the US one.
#[must_use]
pub fn volume_text(volume_m3: f64, system: UnitSystem) -> String {
    let size = |(unit, symbol): (VolumeUnit, &'static str)| (unit.cubic_metres(), symbol);
    match system {
        UnitSystem::Metric => stepped(
            volume_m3,
            &[
                (VolumeUnit::Millilitre, "mL"),
                (VolumeUnit::Litre, "L"),
                (VolumeUnit::CubicMetre, "m³"),
            ]
            .map(size),
        ),
        UnitSystem::UsCustomary => stepped(
            volume_m3,
            &[
                (VolumeUnit::UsCup, "cups"),
                (VolumeUnit::UsQuart, "qt"),
                (VolumeUnit::UsGallon, "gal"),
                (VolumeUnit::CubicYard, "cu\u{a0}yd"),
            ]
            .map(size),
        ),
    }
}

/// A temperature [degC] in whole degrees.
#[must_use]
pub fn temperature_text(temperature_c: f64, system: UnitSystem) -> String {
    let (value, symbol) = match system {
        UnitSystem::Metric => (temperature_c, "°C"),
        UnitSystem::UsCustomary => (fahrenheit_from_celsius(temperature_c), "°F"),
    };
    if !value.is_finite() {
        return format!("{NO_FIGURE}{NO_BREAK_SPACE}{symbol}");
    }
    let whole = value.round();
    let minus = if whole < 0.0 { "\u{2212}" } else { "" };
    format!("{minus}{}{NO_BREAK_SPACE}{symbol}", whole.abs())
}

/// The value in the largest unit of which it makes one, as it will be read after rounding.
fn stepped<const UNITS: usize>(value: f64, units: &[(f64, &str); UNITS]) -> String {
    let mut text = String::new();
    for (place, (size, symbol)) in units.iter().enumerate() {
        text = format!("{}{NO_BREAK_SPACE}{symbol}", figure(value / size));
        let Some((larger, _)) = units.get(place + 1) else {
            break;
        };
        if rounded(value / size).abs() * size < larger * (1.0 - 1e-9) || !value.is_finite() {
            break;
        }
    }
    text
}

/// Two significant digits, three from 100 on: more is never known of a heap.
fn figure(value: f64) -> String {
    significant(value, figure_digits(value))
}

fn figure_digits(value: f64) -> usize {
    if value.abs() < 99.5 { 2 } else { 3 }
}

/// The value as `figure` shows it.
fn rounded(value: f64) -> f64 {
    let decimals = figure_digits(value) - 1;
    format!("{value:.decimals$e}").parse().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use UnitSystem::{Metric, UsCustomary};

    #[test]
    fn significant_writes_few_digits_and_no_exponent() {
        for (value, digits, text) in [
            (0.0, 3, "0"),
            (-0.0, 3, "0"),
            (1.0, 3, "1"),
            (0.000_123_45, 2, "0.00012"),
            (12_345.0, 2, "12000"),
            (9.996, 3, "10"),
            (99.95, 3, "100"),
            (2.5, 2, "2.5"),
            (-30.25, 3, "−30.2"),
            (1e21, 1, "1000000000000000000000"),
            (f64::NAN, 3, "–"),
            (f64::INFINITY, 3, "–"),
        ] {
            assert_eq!(significant(value, digits), text);
        }
        assert_eq!(significant(1.25, 0), "1");
    }

    #[test]
    fn measure_count_text_uses_halves_and_quarters() {
        for (count, text) in [
            (0.0, "0"),
            (0.01, "<⅛"),
            (0.2, "¼"),
            (0.5, "½"),
            (0.74, "¾"),
            (0.9, "1"),
            (2.6, "2½"),
            (9.9, "10"),
            (12.3, "12½"),
            (23.5, "24"),
            (-1.0, "–"),
            (f64::NAN, "–"),
        ] {
            assert_eq!(measure_count_text(count), text);
        }
    }

    #[test]
    fn mass_text_chooses_the_unit() {
        for (mass_kg, metric, customary) in [
            (0.0, "0 g", "0 oz"),
            (0.0123, "12 g", "0.43 oz"),
            (0.9996, "1 kg", "2.2 lb"),
            (3.456, "3.5 kg", "7.6 lb"),
            (0.453_592_37, "454 g", "1 lb"),
            (123.4, "123 kg", "272 lb"),
            (1234.0, "1.2 t", "2720 lb"),
        ] {
            assert_eq!(mass_text(mass_kg, Metric).replace('\u{a0}', " "), metric);
            assert_eq!(
                mass_text(mass_kg, UsCustomary).replace('\u{a0}', " "),
                customary
            );
        }
    }

    #[test]
    fn volume_text_chooses_the_unit() {
        for (volume_m3, metric, customary) in [
            (0.000_25, "250 mL", "1.1 cups"),
            (0.001, "1 L", "1.1 qt"),
            (0.01, "10 L", "2.6 gal"),
            (0.999_9, "1 m³", "1.3 cu yd"),
            (0.4, "400 L", "106 gal"),
            (1.2, "1.2 m³", "1.6 cu yd"),
        ] {
            assert_eq!(
                volume_text(volume_m3, Metric).replace('\u{a0}', " "),
                metric
            );
            assert_eq!(
                volume_text(volume_m3, UsCustomary).replace('\u{a0}', " "),
                customary
            );
        }
    }

    #[test]
    fn temperature_text_is_whole_degrees() {
        assert_eq!(temperature_text(55.2, Metric), "55\u{a0}°C");
        assert_eq!(temperature_text(55.0, UsCustomary), "131\u{a0}°F");
        assert_eq!(temperature_text(-0.3, Metric), "0\u{a0}°C");
        assert_eq!(temperature_text(-5.0, Metric), "−5\u{a0}°C");
        assert_eq!(temperature_text(f64::NAN, Metric), "–\u{a0}°C");
    }
}
