//! Words for numbers, days and times of the day.

use jiff::ToSpan;
use jiff::civil::{Date, Time, Weekday};

/// A small count in digits or words; larger ones are slips of the finger.
pub(super) fn number(word: &str) -> Option<i32> {
    const WORDS: [&str; 13] = [
        "", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven", "twelve",
    ];
    match word {
        "a" | "an" => Some(1),
        word => word
            .parse::<u16>()
            .ok()
            .filter(|count| *count <= 10_000)
            .map(i32::from)
            .or_else(|| {
                WORDS
                    .iter()
                    .position(|other| *other == word && !word.is_empty())
                    .and_then(|count| i32::try_from(count).ok())
            }),
    }
}

/// A day that words begin with, and what stands behind it; the day is `None` when there is none.
pub(super) fn day<'a>(words: &'a [&'a str], today: Date) -> Option<(Option<Date>, &'a [&'a str])> {
    let back = |days: i32| today.checked_sub(days.days()).ok();
    match words {
        ["today", behind @ ..] => Some((Some(today), behind)),
        ["yesterday", behind @ ..] => Some((back(1), behind)),
        ["day", "before", "yesterday", behind @ ..] => Some((back(2), behind)),
        ["this", "morning" | "afternoon" | "evening" | "noon"] => Some((Some(today), &words[1..])),
        ["tonight"] => Some((Some(today), words)),
        ["last", "night" | "evening"] => Some((back(1), &words[1..])),
        ["last", "week", behind @ ..] => Some((back(7), behind)),
        ["last", word, behind @ ..] | [word, behind @ ..] if weekday(word).is_some() => {
            let weekday = weekday(word)?;
            // The last one past: of today's name, that of a week ago.
            let days = match i32::from(today.weekday().since(weekday)) {
                0 => 7,
                days => days,
            };
            Some((back(days), behind))
        }
        [one, two, behind @ ..] => named_day(one, two, behind, today),
        _ => None,
    }
}

/// "1 May 2026", "May 1 2026", "1 May": without a year the last one past.
fn named_day<'a>(
    one: &str,
    two: &str,
    behind: &'a [&'a str],
    today: Date,
) -> Option<(Option<Date>, &'a [&'a str])> {
    let of_month = |word: &str| {
        let digits = word.trim_end_matches(|c: char| c.is_ascii_alphabetic() || c == '.');
        let ending = &word[digits.len()..];
        matches!(ending, "" | "." | "st" | "nd" | "rd" | "th")
            .then(|| digits.parse::<i8>().ok())
            .flatten()
    };
    let (day, month) = match (of_month(one), month(two), month(one), of_month(two)) {
        (Some(day), Some(month), _, _) | (_, _, Some(month), Some(day)) => (day, month),
        _ => return None,
    };
    let year = behind
        .first()
        .filter(|word| word.len() == 4)
        .and_then(|word| word.parse::<i16>().ok());
    if let Some(year) = year {
        return Some((Date::new(year, month, day).ok(), &behind[1..]));
    }
    let this_year = Date::new(today.year(), month, day).ok();
    let date = match this_year {
        Some(date) if date > today => Date::new(today.year() - 1, month, day).ok(),
        date => date,
    };
    Some((date, behind))
}

fn month(word: &str) -> Option<i8> {
    const MONTHS: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let word = word.trim_end_matches('.');
    let at = MONTHS
        .iter()
        .position(|month| word.len() >= 3 && month.starts_with(word))?;
    i8::try_from(at + 1).ok()
}

fn weekday(word: &str) -> Option<Weekday> {
    const DAYS: [(&str, Weekday); 7] = [
        ("monday", Weekday::Monday),
        ("tuesday", Weekday::Tuesday),
        ("wednesday", Weekday::Wednesday),
        ("thursday", Weekday::Thursday),
        ("friday", Weekday::Friday),
        ("saturday", Weekday::Saturday),
        ("sunday", Weekday::Sunday),
    ];
    let word = word.trim_end_matches('.');
    DAYS.iter()
        .find(|(name, _)| word.len() >= 3 && name.starts_with(word))
        .map(|(_, day)| *day)
}

/// A time of day; `None` for what is none, `Some(None)` for one that no clock shows.
pub(super) fn time(words: &[&str]) -> Option<Option<Time>> {
    let words = match words {
        ["this", rest @ ..] => rest,
        words => words,
    };
    let named = match words {
        ["morning"] => Some(8),
        ["noon" | "midday"] => Some(12),
        ["afternoon"] => Some(15),
        ["evening"] => Some(19),
        ["night" | "tonight"] => Some(22),
        ["midnight"] => Some(0),
        _ => None,
    };
    if let Some(hour) = named {
        return Some(Time::new(hour, 0, 0, 0).ok());
    }
    let text = words.concat();
    let (text, half) = match (
        text.strip_suffix("am").or(text.strip_suffix("a.m.")),
        text.strip_suffix("pm").or(text.strip_suffix("p.m.")),
    ) {
        (Some(text), _) => (text, Some(0)),
        (_, Some(text)) => (text, Some(12)),
        _ => (text.as_str(), None),
    };
    let parts = text
        .split(':')
        .map(|part| {
            let digits = (1..=2).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
            digits.then(|| part.parse::<i8>().ok()).flatten()
        })
        .collect::<Option<Vec<i8>>>()?;
    let (hour, minute, second) = match (parts.as_slice(), half) {
        ([hour], Some(_)) => (*hour, 0, 0),
        ([hour, minute], _) => (*hour, *minute, 0),
        ([hour, minute, second], _) => (*hour, *minute, *second),
        _ => return None,
    };
    let hour = match half {
        None => hour,
        Some(_) if !(1..=12).contains(&hour) => return Some(None),
        Some(half) => hour % 12 + half,
    };
    Some(Time::new(hour, minute, second, 0).ok())
}
