//! When was that? "yesterday evening", "2 days ago", "2026-05-01 18:00" as a moment.
//!
//! No clock is read here: the application hands in what its clock says and how local time lies.

mod words;

use std::fmt;

use heapwright_journal::{FIRST_YEAR, Moment};
use jiff::civil::{Date, DateTime, Time};
use jiff::{Span, ToSpan};

use crate::read::shown;
use words::{day, number, time};

/// Why a text is no time at which something can have happened. One sentence each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WhenError {
    /// It is not understood.
    NotUnderstood {
        /// What was typed.
        text: String,
    },
    /// There is no such day or time of day, or it lies after the year 2199.
    NoSuchTime {
        /// What was typed.
        text: String,
    },
    /// It lies before the years of which a journal tells.
    TooEarly {
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
            Self::TooEarly { text } => write!(
                f,
                "\"{}\" lies before {FIRST_YEAR}: give a day from {FIRST_YEAR} on, such as \"2026-05-01 18:00\"",
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
    Moment::from_local(local, offset_at(local)).ok_or_else(|| {
        let text = text.to_owned();
        if local.year() <= FIRST_YEAR {
            WhenError::TooEarly { text }
        } else {
            WhenError::NoSuchTime { text }
        }
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

#[cfg(test)]
mod tests;
