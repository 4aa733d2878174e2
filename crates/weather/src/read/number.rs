//! Which number stands in a cell? With a point or a comma, or a mark that it is missing.

/// What a cell holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Cell {
    Number(f64),
    Missing,
    /// So little rain that it could not be measured.
    Trace,
    NoNumber,
}

/// Which mark parts decimals in a file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Mark {
    /// Some number has a point and no comma: a lone comma groups thousands.
    Point,
    #[default]
    Comma,
}

/// What loggers write when there is nothing to write.
const MISSING: [&str; 14] = [
    "", "-", "--", "---", "na", "n/a", "nan", "null", "none", "nil", "m", "missing", "nd", "*",
];
/// The same as numbers.
const MISSING_NUMBERS: [f64; 8] = [
    -99.0, -99.9, -999.0, -999.9, -9999.0, -9999.9, 9999.0, 99999.0,
];
/// The longest number.
const LONGEST: usize = 30;

pub(super) fn cell(text: &str, mark: Mark) -> Cell {
    let text = text.trim();
    if text.len() > LONGEST {
        return Cell::NoNumber;
    }
    let lower = text.to_ascii_lowercase();
    if MISSING.contains(&lower.as_str()) {
        return Cell::Missing;
    }
    if lower == "t" || lower == "trace" {
        return Cell::Trace;
    }
    match number(text, mark) {
        Some(value)
            if MISSING_NUMBERS
                .iter()
                .any(|missing| (value - missing).abs() < 1e-9) =>
        {
            Cell::Missing
        }
        Some(value) => Cell::Number(value),
        None => Cell::NoNumber,
    }
}

/// Whether a cell shows that decimals are parted by a point.
pub(super) fn shows_point(text: &str) -> bool {
    text.contains('.') && !text.contains(',') && text.trim().parse::<f64>().is_ok()
}

fn number(text: &str, mark: Mark) -> Option<f64> {
    // The minus of typesetters.
    let text = text.replace('\u{2212}', "-");
    let digits_only = text
        .bytes()
        .all(|byte| byte.is_ascii_digit() || b"+-.,eE".contains(&byte));
    if !digits_only {
        return None;
    }
    let (points, commas) = (text.matches('.').count(), text.matches(',').count());
    let plain = match (points, commas) {
        (_, 0) => text,
        (0, 1) if mark == Mark::Comma || !could_group(&text) => text.replace(',', "."),
        (1, _) if text.rfind('.') > text.rfind(',') => ungrouped(&text, ',', '.')?,
        (1.., 1) if text.rfind(',') > text.rfind('.') => {
            ungrouped(&text, '.', ',')?.replace(',', ".")
        }
        (0, _) => ungrouped(&text, ',', '.')?,
        _ => return None,
    };
    plain.parse().ok().filter(|value: &f64| value.is_finite())
}

/// Whether three digits follow the comma.
fn could_group(text: &str) -> bool {
    text.split_once(',')
        .is_some_and(|(_, after)| after.len() == 3)
}

/// Without its group marks; each must stand before three digits.
fn ungrouped(text: &str, group: char, decimal: char) -> Option<String> {
    let whole = text.split(decimal).next()?;
    let mut groups = whole.split(group);
    let first = groups.next()?.trim_start_matches(['-', '+']);
    let fine = (1..=3).contains(&first.len())
        && groups.all(|part| part.len() == 3 && part.bytes().all(|byte| byte.is_ascii_digit()));
    fine.then(|| text.replace(group, ""))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_with_either_mark() {
        for (text, mark, value) in [
            ("3.5", Mark::Point, 3.5),
            (" -3,5 ", Mark::Comma, -3.5),
            ("3,5", Mark::Point, 3.5),
            ("1,013", Mark::Comma, 1.013),
            ("1,013", Mark::Point, 1013.0),
            ("1.013,25", Mark::Comma, 1013.25),
            ("1,013.25", Mark::Point, 1013.25),
            ("1,234,567", Mark::Point, 1_234_567.0),
            ("+4", Mark::Point, 4.0),
            ("\u{2212}4", Mark::Point, -4.0),
            ("1e1", Mark::Point, 10.0),
            (".5", Mark::Point, 0.5),
        ] {
            assert_eq!(cell(text, mark), Cell::Number(value), "{text}");
        }
    }

    #[test]
    fn missing_marks_and_nonsense_are_told_apart() {
        for text in ["", " ", "NA", "NaN", "-9999", "-999.0", "--", "M"] {
            assert_eq!(cell(text, Mark::Point), Cell::Missing, "{text}");
        }
        for text in [
            "warm", "1.2.3", "1,2,3", "--5", "1e999", "inf", "0x10", "١", "12 C",
        ] {
            assert_eq!(cell(text, Mark::Point), Cell::NoNumber, "{text}");
        }
        assert_eq!(cell("T", Mark::Point), Cell::Trace);
    }
}
