//! Numbers as they are typed, and what to write where there is none.

use std::fmt::Display;
use std::ops::RangeInclusive;
use std::str::FromStr;

use heapwright_quantity::{Vocabulary, parse_amount};

/// Litres in a cubic metre.
const LITRES_PER_M3: f64 = 1000.0;

/// Reads whole numbers within a range.
pub fn whole<Number>(
    range: RangeInclusive<Number>,
) -> impl Fn(&str) -> Result<Number, String> + Clone + Send + Sync + 'static
where
    Number: Clone + Display + FromStr + PartialOrd + Send + Sync + 'static,
{
    move |text: &str| {
        text.trim()
            .parse::<Number>()
            .ok()
            .filter(|number| range.contains(number))
            .ok_or_else(|| {
                format!(
                    "write a whole number from {} to {}",
                    range.start(),
                    range.end()
                )
            })
    }
}

/// Reads a count that has no end worth telling.
pub fn count<Number: FromStr>(text: &str) -> Result<Number, String> {
    text.trim()
        .parse()
        .map_err(|_| "write a whole number, such as 10".to_owned())
}

/// Reads a number.
pub fn number(text: &str) -> Result<f64, String> {
    text.trim()
        .parse()
        .map_err(|_| "write a number, such as 2.5".to_owned())
}

/// Reads litres, with the unit or without: "300", "300 l".
pub fn litres(text: &str) -> Result<f64, String> {
    if let Ok(number) = text.trim().parse::<f64>() {
        return Ok(number);
    }
    parse_amount(text, &Vocabulary::default())
        .ok()
        .and_then(|amount| amount.cubic_metres())
        .map(|volume_m3| volume_m3 * LITRES_PER_M3)
        .ok_or_else(|| "write a number of litres, such as 300".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_or_it_is_said_what_to_write() {
        let days = whole(1..=1000_u32);
        assert_eq!(days("30"), Ok(30));
        for none in ["soon", "0", "1001", "-1", "2.5", ""] {
            assert_eq!(
                days(none),
                Err("write a whole number from 1 to 1000".to_owned())
            );
        }
        assert_eq!(count::<usize>("10"), Ok(10));
        assert!(count::<usize>("many").is_err());
        assert_eq!(number("-0.5"), Ok(-0.5));
        assert!(number("wet").is_err());
    }

    #[test]
    fn litres_may_have_their_unit() {
        for text in ["300", "300 l", "300 litres", "0.3 m3"] {
            let read = litres(text);
            assert!(
                read.as_ref().is_ok_and(|read| (read - 300.0).abs() < 1e-9),
                "{text}: {read:?}"
            );
        }
        assert_eq!(litres("-3"), Ok(-3.0));
        for none in ["300 kg", "3 barrows", "some"] {
            assert_eq!(
                litres(none),
                Err("write a number of litres, such as 300".to_owned())
            );
        }
    }
}
