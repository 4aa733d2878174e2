//! What number do digits with points and commas mean? Marks to a value, or why not.

use crate::amount::AmountProblem;
use crate::shorten::shortened;
use crate::vocabulary::DecimalMark;

/// The longest number that is read, in bytes; more is not something people type.
const LONGEST_NUMBER: usize = 40;

/// The value of "3", "3,5", "1.234,5", "1'000" or "1e3", typed without spaces.
///
/// A mark that occurs once with three digits behind it and one to three before it has two
/// readings; `decimal` decides, and `DecimalMark::Unknown` refuses. Everywhere else only one
/// reading is possible and `decimal` is not asked.
pub(crate) fn number_value(typed: &str, decimal: DecimalMark) -> Result<f64, AmountProblem> {
    let malformed = || AmountProblem::NumberForm {
        number: shortened(typed),
    };
    if typed.len() > LONGEST_NUMBER {
        return Err(malformed());
    }
    let (digits, exponent) = match typed.find(['e', 'E']) {
        Some(at) => typed.split_at(at),
        None => (typed, ""),
    };
    let (whole, decimals) = match decimal_place(digits, decimal)? {
        Some(at) => (&digits[..at], &digits[at + 1..]),
        None => (digits, ""),
    };
    let whole = ungrouped(whole).ok_or_else(malformed)?;
    let plain = format!("0{whole}.{decimals}{exponent}");
    let value: f64 = plain.parse().map_err(|_| malformed())?;
    if value.is_finite() {
        Ok(value)
    } else {
        Err(AmountProblem::NotFinite)
    }
}

/// Where the decimal mark stands, if there is one.
fn decimal_place(digits: &str, decimal: DecimalMark) -> Result<Option<usize>, AmountProblem> {
    let Some(last) = digits.rfind(['.', ',']) else {
        return Ok(None);
    };
    let mark = &digits[last..=last];
    let before = &digits[..last];
    let decimals = digits.len() - last - 1;
    if before.contains(mark) {
        return Ok(None);
    }
    let grouped_before = before.contains(['.', ',', '\'']);
    let could_group = !grouped_before
        && decimals == 3
        && (1..=3).contains(&before.len())
        && !before.starts_with('0');
    if !could_group {
        return Ok(Some(last));
    }
    let is_decimal = match decimal {
        DecimalMark::Point => mark == ".",
        DecimalMark::Comma => mark == ",",
        DecimalMark::Unknown => {
            let after = &digits[last + 1..];
            return Err(AmountProblem::AmbiguousNumber {
                number: digits.to_owned(),
                small: format!("{before}.{}", clear_decimals(after)),
                large: format!("{before}{after}"),
            });
        }
    };
    Ok(is_decimal.then_some(last))
}

/// The three decimals of a number of two readings, as many of them as leave one reading: as one would write
/// them where they end in zeros, else with a zero behind them.
fn clear_decimals(three: &str) -> String {
    match three.trim_end_matches('0') {
        "" => "0".to_owned(),
        shorter if shorter.len() < three.len() => shorter.to_owned(),
        _ => format!("{three}0"),
    }
}

/// The digits without group marks; `None` when the groups are not of three digits after the
/// first, or not all parted by one mark.
fn ungrouped(whole: &str) -> Option<String> {
    let Some(mark) = whole.find(['.', ',', '\'']).map(|at| &whole[at..=at]) else {
        return Some(whole.to_owned());
    };
    let groups: Vec<&str> = whole.split(mark).collect();
    let even = groups.iter().enumerate().all(|(place, group)| {
        let digits = group.bytes().all(|byte| byte.is_ascii_digit());
        let fits = if place == 0 {
            (1..=3).contains(&group.len())
        } else {
            group.len() == 3
        };
        digits && fits
    });
    even.then(|| groups.concat())
}

#[cfg(test)]
mod tests {
    use super::*;
    use DecimalMark::{Comma, Point, Unknown};

    #[test]
    fn number_value_reads_the_only_reading() {
        for decimal in [Unknown, Point, Comma] {
            for (typed, value) in [
                ("3", 3.0),
                ("3,5", 3.5),
                ("3.5", 3.5),
                (".5", 0.5),
                ("0,125", 0.125),
                ("1234,567", 1234.567),
                ("1,234,567", 1_234_567.0),
                ("1.234,5", 1234.5),
                ("1,234.567", 1234.567),
                ("1'234'567,8", 1_234_567.8),
                ("1.5e1", 15.0),
                ("1.2340", 1.234),
            ] {
                assert_eq!(number_value(typed, decimal), Ok(value), "{typed}");
            }
        }
    }

    #[test]
    fn number_value_asks_the_mark_where_there_are_two_readings() {
        assert_eq!(number_value("1,234", Comma), Ok(1.234));
        assert_eq!(number_value("1,234", Point), Ok(1234.0));
        assert_eq!(number_value("12.345", Point), Ok(12.345));
        assert_eq!(number_value("12.345", Comma), Ok(12345.0));
        for (typed, small, large, value) in [
            ("1,000", "1.0", "1000", 1.0),
            ("1.500", "1.5", "1500", 1.5),
            ("12,340", "12.34", "12340", 12.34),
            ("1,050", "1.05", "1050", 1.05),
            ("1,234", "1.2340", "1234", 1.234),
        ] {
            assert_eq!(
                number_value(typed, Unknown),
                Err(AmountProblem::AmbiguousNumber {
                    number: typed.to_owned(),
                    small: small.to_owned(),
                    large: large.to_owned(),
                })
            );
            // What is proposed has one reading, by either mark.
            for small in [small.to_owned(), small.replace('.', ",")] {
                assert_eq!(number_value(&small, Unknown), Ok(value));
            }
            assert_eq!(number_value(large, Unknown), Ok(value * 1000.0));
        }
    }

    #[test]
    fn number_value_refuses_uneven_groups_and_overflow() {
        for typed in ["1,2,3", "1.2.3", "12,34.567,8", "1234,567,890", "1,23.4"] {
            let found = number_value(typed, Point);
            assert!(
                matches!(found, Err(AmountProblem::NumberForm { .. })),
                "{typed}"
            );
        }
        assert_eq!(number_value("1e999", Point), Err(AmountProblem::NotFinite));
        let long = "1".repeat(41);
        assert!(number_value(&long, Point).is_err());
    }
}
