//! When was that? "yesterday evening", "2 days ago", "2026-05-01 18:00" as a moment.
//!
//! No clock is read here: the application hands in what its clock says and how local time lies.

use std::fmt;

use heapwright_journal::Moment;
use jiff::civil::{Date, DateTime, Time, Weekday};
use jiff::{Span, ToSpan};

use crate::read::shown;

/// Why a text is no time at which something can have happened. One sentence each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WhenError {
    /// It is not understood.
    NotUnderstood {
        /// What was typed.
        text: String,
    },
    /// There is no such day or time of day, or it lies outside the years 1900 to 2199.
    NoSuchTime {
        /// What was typed.
        text: String,
    },
    /// It lies more than a day ahead.
    InTheFuture {
        /// What was typed.
        text: String,
    },
}

impl fmt::Display for WhenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotUnderstood { text } => write!(
                f,
                "\"{}\" is not understood: give a time such as \"yesterday evening\", \"2 days ago\" or \"2026-05-01 18:00\"",
                shown(text)
            ),
            Self::NoSuchTime { text } => write!(
                f,
                "\"{}\" is no day and time that there is: give one such as \"2026-05-01 18:00\"",
                shown(text)
            ),
            Self::InTheFuture { text } => write!(
                f,
                "\"{}\" lies in the future: give a time that is past, such as \"today 7:30\"",
                shown(text)
            ),
        }
    }
}

impl std::error::Error for WhenError {}

/// How local time lies: its offset from UTC [min] at what the clock on the wall shows.
pub type OffsetAt<'a> = dyn Fn(DateTime) -> i16 + 'a;

/// How far after now something may have happened [ms]: clocks of phones and thermometers differ.
const MOST_AFTER_NOW_MS: i64 = 24 * 3600 * 1000;

/// A day of which no time was said lies around this one.
const NOON: Time = Time::constant(12, 0, 0, 0);

/// The last millisecond of a day.
const LAST: Time = Time::constant(23, 59, 59, 999_000_000);

/// The moment that a text tells. A day alone is its noon, or now when its noon has not come yet.
pub fn parse_when(text: &str, now: Moment, offset_at: &OffsetAt) -> Result<Moment, WhenError> {
    let moment = match read(text, now)? {
        Said::Moment(moment) => moment,
        Said::Today(_) => now,
        Said::At(date, Some(time)) => local(text, date.to_datetime(time), offset_at)?,
        Said::At(date, None) => {
            let noon = local(text, date.to_datetime(NOON), offset_at)?;
            let today = date == now.local().date();
            if today && noon.instant_ms > now.instant_ms {
                now
            } else {
                noon
            }
        }
    };
    if moment.instant_ms > now.instant_ms.saturating_add(MOST_AFTER_NOW_MS) {
        return Err(WhenError::InTheFuture {
            text: text.to_owned(),
        });
    }
    Ok(moment)
}

/// Where a stretch of time begins: a day alone is its midnight.
pub fn parse_since(text: &str, now: Moment, offset_at: &OffsetAt) -> Result<Moment, WhenError> {
    edge(text, now, offset_at, Time::midnight())
}

/// Where a stretch of time ends: a day alone is its last millisecond.
pub fn parse_until(text: &str, now: Moment, offset_at: &OffsetAt) -> Result<Moment, WhenError> {
    edge(text, now, offset_at, LAST)
}

fn edge(text: &str, now: Moment, offset_at: &OffsetAt, time: Time) -> Result<Moment, WhenError> {
    match read(text, now)? {
        Said::Moment(moment) => Ok(moment),
        Said::Today(date) => local(text, date.to_datetime(time), offset_at),
        Said::At(date, said) => local(text, date.to_datetime(said.unwrap_or(time)), offset_at),
    }
}

fn local(text: &str, local: DateTime, offset_at: &OffsetAt) -> Result<Moment, WhenError> {
    Moment::from_local(local, offset_at(local)).ok_or_else(|| WhenError::NoSuchTime {
        text: text.to_owned(),
    })
}

/// What a text says.
enum Said {
    /// A moment, whatever the clock on the wall shows.
    Moment(Moment),
    /// The day that it is; what happened on it has happened by now.
    Today(Date),
    /// A local day, and the time of day if it was said.
    At(Date, Option<Time>),
}

fn read(text: &str, now: Moment) -> Result<Said, WhenError> {
    let words: Vec<String> = text
        .to_lowercase()
        .replace(',', " ")
        .split_whitespace()
        .filter(|word| !matches!(*word, "at" | "on" | "the" | "in" | "o'clock" | "about"))
        .map(str::to_owned)
        .collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match said(&words, now) {
        Some(Some(said)) => Ok(said),
        Some(None) => Err(WhenError::NoSuchTime {
            text: text.to_owned(),
        }),
        None => Err(WhenError::NotUnderstood {
            text: text.to_owned(),
        }),
    }
}

/// `None` for what is not understood, `Some(None)` for a day or time that there is not.
fn said(words: &[&str], now: Moment) -> Option<Option<Said>> {
    let [first, rest @ ..] = words else {
        return None;
    };
    if *first == "now" && rest.is_empty() {
        return Some(Some(Said::Moment(now)));
    }
    if let Some(found) = written(words) {
        return Some(found);
    }
    if let Some(found) = ago(words, now) {
        return Some(found);
    }
    let today = now.local().date();
    if let Some((day, behind)) = day(words, today) {
        let Some(date) = day else { return Some(None) };
        if behind.is_empty() {
            return Some(Some(if *first == "today" {
                Said::Today(date)
            } else {
                Said::At(date, None)
            }));
        }
        return time(behind).map(|time| time.map(|time| Said::At(date, Some(time))));
    }
    // A time alone is the last of its kind.
    let time = match time(words)? {
        Some(time) => time,
        None => return Some(None),
    };
    let date = if time > now.local().time() {
        today.yesterday().ok()
    } else {
        Some(today)
    };
    Some(date.map(|date| Said::At(date, Some(time))))
}

/// "2026-05-01", "2026-05-01T18:00", "2026-05-01 18:00:00+02:00".
fn written(words: &[&str]) -> Option<Option<Said>> {
    let first = words.first()?;
    let (date, glued) = first.split_at_checked(10)?;
    let shape = date.bytes().enumerate().all(|(at, byte)| match at {
        4 | 7 => byte == b'-',
        _ => byte.is_ascii_digit(),
    });
    if !shape {
        return None;
    }
    let behind: Vec<&str> = match glued.strip_prefix('t') {
        Some(time) if !time.is_empty() => std::iter::once(time)
            .chain(words[1..].iter().copied())
            .collect(),
        _ if glued.is_empty() => words[1..].to_vec(),
        _ => return None,
    };
    let number = |from: usize, to: usize| date.get(from..to)?.parse::<i16>().ok();
    let day = || {
        let (month, day) = (number(5, 7)?, number(8, 10)?);
        Date::new(
            number(0, 4)?,
            i8::try_from(month).ok()?,
            i8::try_from(day).ok()?,
        )
        .ok()
    };
    let Some(day) = day() else { return Some(None) };
    if behind.is_empty() {
        return Some(Some(Said::At(day, None)));
    }
    // With an offset from UTC.
    let whole = behind.concat();
    let offset_from = whole
        .strip_suffix('z')
        .map(str::len)
        .or_else(|| whole.rfind(['+', '-', '\u{2212}']));
    if let Some(at) = offset_from {
        let (clock, offset) = whole.split_at(at);
        let clock = if clock.matches(':').count() == 1 {
            format!("{clock}:00")
        } else {
            clock.to_owned()
        };
        let offset = offset.replace('\u{2212}', "-");
        let offset = match offset.split_at_checked(3) {
            // "+02" and "+0200" are written too.
            Some((hours, "")) => format!("{hours}:00"),
            Some((hours, minutes)) if minutes.len() == 2 && !offset.contains(':') => {
                format!("{hours}:{minutes}")
            }
            _ => offset,
        };
        let moment = format!("{date}T{clock}{offset}").parse::<Moment>().ok();
        return Some(moment.map(Said::Moment));
    }
    time(&behind).map(|time| time.map(|time| Said::At(day, Some(time))))
}

/// "3 hours ago", "2 days ago 18:00", "a week ago".
fn ago(words: &[&str], now: Moment) -> Option<Option<Said>> {
    let at = words.iter().position(|word| *word == "ago")?;
    let (before, behind) = (&words[..at], &words[at + 1..]);
    let (count, unit) = match before {
        ["half", "an" | "a", "hour"] => (30, "minutes"),
        [count, unit] => (number(count)?, *unit),
        [glued] => {
            let digits = glued.find(|c: char| !c.is_ascii_digit())?;
            let (count, unit) = glued.split_at(digits);
            (number(count)?, unit)
        }
        _ => return None,
    };
    let unit = unit.strip_suffix('s').unwrap_or(unit);
    let minutes = match unit {
        "minute" | "min" => Some(1),
        "hour" | "hr" | "h" => Some(60),
        _ => None,
    };
    if let Some(minutes) = minutes {
        // Told by the clock, and not by days.
        let moment = Moment::new(
            now.instant_ms - i64::from(count) * minutes * 60_000,
            now.offset_min,
        );
        return behind.is_empty().then(|| moment.map(Said::Moment));
    }
    let span: Span = match unit {
        "day" | "d" => count.days(),
        "week" | "wk" => count.weeks(),
        "month" => count.months(),
        "year" => count.years(),
        _ => return None,
    };
    let Ok(date) = now.local().date().checked_sub(span) else {
        return Some(None);
    };
    if behind.is_empty() {
        return Some(Some(Said::At(date, Some(now.local().time()))));
    }
    time(behind).map(|time| time.map(|time| Said::At(date, Some(time))))
}

/// A small count in digits or words; larger ones are slips of the finger.
fn number(word: &str) -> Option<i32> {
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
fn day<'a>(words: &'a [&'a str], today: Date) -> Option<(Option<Date>, &'a [&'a str])> {
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
fn time(words: &[&str]) -> Option<Option<Time>> {
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

#[cfg(test)]
mod tests {
    use super::*;

    /// A Wednesday, 14:30, two hours east; clocks were one hour east before 29 March.
    fn now() -> Moment {
        "2026-05-06T14:30:00+02:00".parse().unwrap()
    }

    fn offset_at(local: DateTime) -> i16 {
        if local.date() < jiff::civil::date(2026, 3, 29) {
            60
        } else {
            120
        }
    }

    #[rustfmt::skip] // a table
    const UNDERSTOOD: &[(&str, &str)] = &[
        ("now", "2026-05-06T14:30:00+02:00"),
        ("today", "2026-05-06T14:30:00+02:00"),
        ("2026-05-01T18:00:00+02:00", "2026-05-01T18:00:00+02:00"),
        ("2026-05-01T18:00:00Z", "2026-05-01T18:00:00Z"),
        ("2026-05-01t18:00:00.250z", "2026-05-01T18:00:00.250Z"),
        ("2026-05-01T18:00+02:00", "2026-05-01T18:00:00+02:00"),
        ("2026-05-01 18:00-0530", "2026-05-01T18:00:00-05:30"),
        ("2026-05-01 18:00 +02", "2026-05-01T18:00:00+02:00"),
        ("2026-05-01 18:00", "2026-05-01T18:00:00+02:00"),
        ("2026-05-01T18:00", "2026-05-01T18:00:00+02:00"),
        ("2026-05-01T18:00:05", "2026-05-01T18:00:05+02:00"),
        ("  2026-05-01   7:05 ", "2026-05-01T07:05:00+02:00"),
        ("2026-05-01 6 pm", "2026-05-01T18:00:00+02:00"),
        ("2026-05-01 evening", "2026-05-01T19:00:00+02:00"),
        ("2026-05-01", "2026-05-01T12:00:00+02:00"),
        ("2026-02-01", "2026-02-01T12:00:00+01:00"),
        ("2024-02-29", "2024-02-29T12:00:00+01:00"),
        ("2026-05-06", "2026-05-06T12:00:00+02:00"),
        ("2026-05-07 12:00", "2026-05-07T12:00:00+02:00"),
        ("today 7:30", "2026-05-06T07:30:00+02:00"),
        ("Today at 7:30", "2026-05-06T07:30:00+02:00"),
        ("TODAY NOON", "2026-05-06T12:00:00+02:00"),
        ("this morning", "2026-05-06T08:00:00+02:00"),
        ("tonight", "2026-05-06T22:00:00+02:00"),
        ("yesterday", "2026-05-05T12:00:00+02:00"),
        ("yesterday 18:00", "2026-05-05T18:00:00+02:00"),
        ("yesterday 6pm", "2026-05-05T18:00:00+02:00"),
        ("yesterday 6:15 p.m.", "2026-05-05T18:15:00+02:00"),
        ("yesterday morning", "2026-05-05T08:00:00+02:00"),
        ("yesterday noon", "2026-05-05T12:00:00+02:00"),
        ("yesterday afternoon", "2026-05-05T15:00:00+02:00"),
        ("yesterday evening", "2026-05-05T19:00:00+02:00"),
        ("yesterday night", "2026-05-05T22:00:00+02:00"),
        ("last night", "2026-05-05T22:00:00+02:00"),
        ("the day before yesterday", "2026-05-04T12:00:00+02:00"),
        ("day before yesterday 9:00", "2026-05-04T09:00:00+02:00"),
        ("3 hours ago", "2026-05-06T11:30:00+02:00"),
        ("an hour ago", "2026-05-06T13:30:00+02:00"),
        ("half an hour ago", "2026-05-06T14:00:00+02:00"),
        ("20 min ago", "2026-05-06T14:10:00+02:00"),
        ("2h ago", "2026-05-06T12:30:00+02:00"),
        ("2 days ago", "2026-05-04T14:30:00+02:00"),
        ("two days ago 18:00", "2026-05-04T18:00:00+02:00"),
        ("2 days ago evening", "2026-05-04T19:00:00+02:00"),
        ("a week ago", "2026-04-29T14:30:00+02:00"),
        ("2 months ago", "2026-03-06T14:30:00+01:00"),
        ("1 year ago", "2025-05-06T14:30:00+01:00"),
        ("60 days ago", "2026-03-07T14:30:00+01:00"),
        ("monday", "2026-05-04T12:00:00+02:00"),
        ("last monday 9:00", "2026-05-04T09:00:00+02:00"),
        ("Mon 9:00", "2026-05-04T09:00:00+02:00"),
        ("wednesday", "2026-04-29T12:00:00+02:00"),
        ("on Thursday evening", "2026-04-30T19:00:00+02:00"),
        ("sunday 12 am", "2026-05-03T00:00:00+02:00"),
        ("last week", "2026-04-29T12:00:00+02:00"),
        ("9:00", "2026-05-06T09:00:00+02:00"),
        ("14:30", "2026-05-06T14:30:00+02:00"),
        ("18:00", "2026-05-05T18:00:00+02:00"),
        ("7:30 PM", "2026-05-05T19:30:00+02:00"),
        ("12 pm", "2026-05-06T12:00:00+02:00"),
        ("12:30 am", "2026-05-06T00:30:00+02:00"),
        ("evening", "2026-05-05T19:00:00+02:00"),
        ("morning", "2026-05-06T08:00:00+02:00"),
        ("midnight", "2026-05-06T00:00:00+02:00"),
        ("1 May 2026", "2026-05-01T12:00:00+02:00"),
        ("1 May 2026, 18:00", "2026-05-01T18:00:00+02:00"),
        ("May 1st 2026 6 pm", "2026-05-01T18:00:00+02:00"),
        ("12 Dec", "2025-12-12T12:00:00+01:00"),
        ("3rd may 7:00", "2026-05-03T07:00:00+02:00"),
    ];

    #[test]
    fn times_are_understood() {
        assert!(UNDERSTOOD.len() >= 60);
        let wrong: Vec<String> = UNDERSTOOD
            .iter()
            .filter_map(|(text, expected)| {
                let found = parse_when(text, now(), &offset_at);
                let told = found.as_ref().map_or(String::new(), ToString::to_string);
                (told != *expected).then(|| format!("{text}: {found:?}, not {expected}"))
            })
            .collect();
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    }

    #[rustfmt::skip] // a table
    const REFUSED: &[(&str, &str)] = &[
        ("", "not understood"), ("   ", "not understood"), ("soon", "not understood"),
        ("01/05/2026", "not understood"), ("7", "not understood"), ("2026", "not understood"),
        ("2026-5-1", "not understood"), ("yesterday 7", "not understood"),
        ("yesterday tomorrow", "not understood"), ("3 hours", "not understood"),
        ("some days ago", "not understood"), ("3 fortnights ago", "not understood"),
        ("99999 days ago", "not understood"), ("2 hours ago 18:00", "not understood"),
        ("2026-05-01x18:00", "not understood"), ("1:2:3:4", "not understood"),
        ("the", "not understood"), ("ago", "not understood"), ("ä ago", "not understood"),
        ("99999999d ago", "not understood"), ("99999999 d ago", "not understood"),
        ("99999999999h ago", "not understood"), ("10001years ago", "not understood"),
        ("10000years ago", "no day"), ("10000weeks ago", "no day"),
        ("2026-05-01 18:00+1é1", "no day"), ("2026-05-01 18:00+éé", "no day"),
        ("2026-05-01 18:00-é", "no day"), ("2026-05-01 18:00é+02", "no day"),
        ("2026-02-29", "no day"), ("2026-13-01", "no day"), ("2026-05-01 25:00", "no day"),
        ("today 13:75", "no day"), ("13 pm", "no day"), ("31 April 2026", "no day"),
        ("1850-01-01", "no day"), ("500 years ago", "no day"),
        ("2026-05-08", "future"), ("2026-05-07 14:31", "future"),
        ("2027-01-01T00:00:00Z", "future"),
    ];

    #[test]
    fn what_is_no_time_past_is_refused_in_one_sentence() {
        for (text, word) in REFUSED {
            let told = match parse_when(text, now(), &offset_at) {
                Ok(moment) => panic!("{text} is {moment}"),
                Err(error) => error.to_string(),
            };
            assert!(told.contains(word), "{text}: {told}");
            assert!(told.lines().count() == 1 && told.contains("such as"));
        }
    }

    #[test]
    fn days_alone_are_whole_days_where_a_stretch_of_time_is_told() {
        let since = parse_since("2026-05-01", now(), &offset_at).unwrap();
        let until = parse_until("2026-05-01", now(), &offset_at).unwrap();
        assert_eq!(since.to_string(), "2026-05-01T00:00:00+02:00");
        assert_eq!(until.to_string(), "2026-05-01T23:59:59.999+02:00");
        assert_eq!(
            parse_until("yesterday 18:00", now(), &offset_at)
                .unwrap()
                .to_string(),
            "2026-05-05T18:00:00+02:00"
        );
    }

    #[test]
    fn today_is_a_whole_day_where_a_stretch_of_time_is_told() {
        let told = |found: Result<Moment, WhenError>| found.unwrap().to_string();
        let since = parse_since("today", now(), &offset_at);
        let until = parse_until("Today", now(), &offset_at);
        assert_eq!(told(since), "2026-05-06T00:00:00+02:00");
        assert_eq!(told(until), "2026-05-06T23:59:59.999+02:00");
        let since = parse_since("today 7:30", now(), &offset_at);
        assert_eq!(told(since), "2026-05-06T07:30:00+02:00");
    }

    /// A day whose noon is still to come has not happened then.
    #[test]
    fn today_before_noon_is_now() {
        let morning: Moment = "2026-05-06T08:00:00+02:00".parse().unwrap();
        assert_eq!(parse_when("2026-05-06", morning, &offset_at), Ok(morning));
        assert_eq!(parse_when("today", morning, &offset_at), Ok(morning));
    }
}
