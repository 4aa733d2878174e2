//! When was it? The spellings of dates and times in tables.

use jiff::civil::{Date, DateTime, Time};

use crate::series::{YEARS, later};

/// Which comes first in 03/04/2024.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayOrder {
    /// The third of April.
    DayFirst,
    /// The fourth of March.
    MonthFirst,
}

/// A date as it is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Written {
    Date(Date),
    /// Two numbers whose order must be known, and the year.
    Either {
        one: i8,
        other: i8,
        year: i16,
    },
}

impl Written {
    /// The order that this date alone shows.
    pub fn shows(self) -> Option<DayOrder> {
        match self {
            Self::Either { one, .. } if one > 12 => Some(DayOrder::DayFirst),
            Self::Either { other, .. } if other > 12 => Some(DayOrder::MonthFirst),
            _ => None,
        }
    }

    /// Whether the order has an effect.
    pub fn is_open(self) -> bool {
        matches!(self, Self::Either { one, other, .. } if one != other)
    }

    pub fn date(self, order: DayOrder) -> Option<Date> {
        match self {
            Self::Date(date) => Some(date),
            Self::Either { one, other, year } => {
                let (day, month) = match order {
                    DayOrder::DayFirst => (one, other),
                    DayOrder::MonthFirst => (other, one),
                };
                Date::new(year, month, day).ok()
            }
        }
    }
}

/// A time of the day as it is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Clocked {
    pub time: Time,
    /// It was 24:00: the midnight that ends the date.
    pub ends_day: bool,
    /// Local time less UTC [min].
    pub offset_min: Option<i16>,
}

/// A date with or without a time of the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stamp {
    pub date: Written,
    pub clocked: Option<Clocked>,
}

impl Stamp {
    /// What the clock on the wall showed; a date alone begins at midnight.
    pub fn local(&self, order: DayOrder) -> Option<DateTime> {
        let date = self.date.date(order)?;
        let (time, ends_day) = self.clocked.map_or((Time::midnight(), false), |clocked| {
            (clocked.time, clocked.ends_day)
        });
        let date = if ends_day { later(date, 1)? } else { date };
        Some(date.to_datetime(time))
    }
}

/// The longest text that is a time.
const LONGEST: usize = 60;

/// A date and perhaps a time from one cell.
pub(super) fn stamp(text: &str) -> Option<Stamp> {
    let text = text.trim();
    if text.len() > LONGEST {
        return None;
    }
    let leading = text.bytes().take_while(u8::is_ascii_digit).count();
    let (date_text, time_text) = if leading >= 8 {
        let (date_text, rest) = text.split_at(8);
        (
            date_text,
            rest.trim_start_matches([':', ' ', 'T', 't', '_', '-']),
        )
    } else {
        let end = text.find([' ', 'T', 't', ',']).unwrap_or(text.len());
        let (date_text, rest) = text.split_at(end);
        (date_text, rest.trim_start_matches([' ', 'T', 't', ',']))
    };
    let date = date(date_text)?;
    let clocked = if time_text.is_empty() {
        None
    } else {
        Some(clocked(time_text)?)
    };
    Some(Stamp { date, clocked })
}

/// A date alone.
pub(super) fn date(text: &str) -> Option<Written> {
    let text = text.trim();
    if text.len() == 8 && text.bytes().all(|byte| byte.is_ascii_digit()) {
        return ymd(&text[..4], &text[4..6], &text[6..]);
    }
    let mark = text
        .find(['-', '/', '.'])
        .and_then(|at| text[at..].chars().next())?;
    let mut parts = text.split(mark);
    let (one, other, last) = (parts.next()?, parts.next()?, parts.next()?);
    if parts.next().is_some() {
        return None;
    }
    if one.len() == 4 {
        return ymd(one, other, last);
    }
    let year = whole_year(last)?;
    let (one, other) = (two_digits(one)?, two_digits(other)?);
    let written = Written::Either { one, other, year };
    if mark == '.' {
        // With points the day comes first wherever they are usual.
        return written.date(DayOrder::DayFirst).map(Written::Date);
    }
    // One of both readings must be a date.
    let is_some =
        written.date(DayOrder::DayFirst).is_some() || written.date(DayOrder::MonthFirst).is_some();
    is_some.then_some(written)
}

/// A date from three cells.
pub(super) fn ymd(year: &str, month: &str, day: &str) -> Option<Written> {
    let year = whole_year(year)?;
    Date::new(year, two_digits(month)?, two_digits(day)?)
        .ok()
        .map(Written::Date)
}

fn whole_year(text: &str) -> Option<i16> {
    let text = text.trim();
    let digits = text.bytes().all(|byte| byte.is_ascii_digit());
    let number: i16 = text.parse().ok().filter(|_| digits)?;
    let year = match text.len() {
        4 => number,
        2 if number < 70 => 2000 + number,
        2 => 1900 + number,
        _ => return None,
    };
    YEARS.contains(&year).then_some(year)
}

fn two_digits(text: &str) -> Option<i8> {
    let text = text.trim();
    let fine = (1..=2).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
    text.parse().ok().filter(|_| fine)
}

/// A time of the day alone.
pub(super) fn clocked(text: &str) -> Option<Clocked> {
    let lower = text.trim().to_ascii_lowercase();
    if lower.len() > LONGEST {
        return None;
    }
    // The name of a zone in brackets repeats what the offset says.
    let lower = lower.split('[').next()?.trim();
    let (clock, offset_min) = split_offset(lower)?;
    let clock = clock.trim();
    let (clock, half) = if let Some(rest) = clock
        .strip_suffix("am")
        .or_else(|| clock.strip_suffix("a.m."))
    {
        (rest.trim(), Some(0))
    } else if let Some(rest) = clock
        .strip_suffix("pm")
        .or_else(|| clock.strip_suffix("p.m."))
    {
        (rest.trim(), Some(12))
    } else {
        let rest = clock
            .strip_suffix("uhr")
            .or_else(|| clock.strip_suffix('h'))
            .unwrap_or(clock);
        (rest.trim(), None)
    };
    let (hour, minute, second) = hour_minute_second(clock)?;
    let hour = match half {
        Some(half) if (1..=12).contains(&hour) => hour % 12 + half,
        Some(_) => return None,
        None => hour,
    };
    let ends_day = hour == 24 && minute == 0 && second == 0;
    let time = Time::new(if ends_day { 0 } else { hour }, minute, second.min(59), 0).ok()?;
    Some(Clocked {
        time,
        ends_day,
        offset_min,
    })
}

fn split_offset(text: &str) -> Option<(&str, Option<i16>)> {
    for utc in ["utc", "gmt", "z"] {
        if let Some(rest) = text.strip_suffix(utc) {
            return Some((rest, Some(0)));
        }
    }
    let Some(at) = text.find(['+', '-']) else {
        return Some((text, None));
    };
    let (clock, offset) = text.split_at(at);
    let sign = if offset.starts_with('-') { -1 } else { 1 };
    let digits = offset[1..].replacen(':', "", 1);
    if !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let (hours, minutes) = match digits.len() {
        2 => (digits.parse::<i16>().ok()?, 0),
        4 => (digits[..2].parse().ok()?, digits[2..].parse().ok()?),
        _ => return None,
    };
    (hours <= 18 && minutes < 60).then_some((clock, Some(sign * (hours * 60 + minutes))))
}

fn hour_minute_second(clock: &str) -> Option<(i8, i8, i8)> {
    if clock.len() == 4 && clock.bytes().all(|byte| byte.is_ascii_digit()) {
        return Some((two_digits(&clock[..2])?, minute(&clock[2..])?, 0));
    }
    if clock.len() == 6 && clock.bytes().all(|byte| byte.is_ascii_digit()) {
        return Some((
            two_digits(&clock[..2])?,
            minute(&clock[2..4])?,
            minute(&clock[4..])?,
        ));
    }
    let mut parts = clock.split(':');
    let hour = two_digits(parts.next()?)?;
    let minutes = parts.next().map_or(Some(0), minute)?;
    let seconds = match parts.next() {
        None => 0,
        // What is finer than a second is cut; a leap second is the last ordinary one.
        Some(text) => two_digits(text.split(['.', ',']).next()?).filter(|second| *second <= 60)?,
    };
    parts.next().is_none().then_some((hour, minutes, seconds))
}

fn minute(text: &str) -> Option<i8> {
    two_digits(text).filter(|minute| *minute < 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_spellings_are_read() {
        for (text, local, offset_min) in [
            ("2024-01-31T13:00", "2024-01-31T13:00:00", None),
            ("2024-01-31 13:00:00", "2024-01-31T13:00:00", None),
            ("2024-01-31T13:00Z", "2024-01-31T13:00:00", Some(0)),
            (
                "2024-01-31T13:00:30.250+02:00",
                "2024-01-31T13:00:30",
                Some(120),
            ),
            ("2024-01-31 13:00 -0330", "2024-01-31T13:00:00", Some(-210)),
            (
                "2024-01-31T13:00:00+01:00[Europe/Berlin]",
                "2024-01-31T13:00:00",
                Some(60),
            ),
            ("2024-01-31 13:00 UTC", "2024-01-31T13:00:00", Some(0)),
            ("2024-01-31 13", "2024-01-31T13:00:00", None),
            ("20240131", "2024-01-31T00:00:00", None),
            ("2024013113", "2024-01-31T13:00:00", None),
            ("202401311330", "2024-01-31T13:30:00", None),
            ("20240131:1310", "2024-01-31T13:10:00", None),
            ("31.01.2024 13:00", "2024-01-31T13:00:00", None),
            ("31.1.24 13:00 Uhr", "2024-01-31T13:00:00", None),
            ("31/01/2024, 1:00 PM", "2024-01-31T13:00:00", None),
            ("31-01-2024 12:30 am", "2024-01-31T00:30:00", None),
            ("2024-01-31 24:00", "2024-02-01T00:00:00", None),
            ("2024-02-29 00:00", "2024-02-29T00:00:00", None),
            ("2024/02/29 0:00", "2024-02-29T00:00:00", None),
            ("2016-12-31 23:59:60", "2016-12-31T23:59:59", None),
        ] {
            let stamp = stamp(text).unwrap_or_else(|| panic!("{text}"));
            let shown = stamp.local(DayOrder::DayFirst).unwrap().to_string();
            assert_eq!(shown, local, "{text}");
            assert_eq!(
                stamp.clocked.and_then(|clocked| clocked.offset_min),
                offset_min,
                "{text}"
            );
        }
    }

    #[test]
    fn what_is_no_time_is_refused() {
        for text in [
            "",
            "yesterday",
            "2023-02-29",
            "2024-13-01",
            "2024-01-32",
            "1899-12-31",
            "2200-01-01",
            "2024-01-31 25:00",
            "2024-01-31 13:60",
            "2024-01-31 24:01",
            "31.13.2024",
            "13/13/2024",
            "2024-01",
            "1.2.3.4",
            "2024-01-31 13:00 PM",
            "2024-01-31T13:00+99:00",
            "٢٠٢٤-01-31",
            "2024-01-31 1:2:3:4",
            "20240131x",
            "2024é01-31",
            "1-1-1",
        ] {
            assert_eq!(stamp(text), None, "{text}");
        }
    }

    #[test]
    fn the_order_of_days_and_months_is_shown_or_open() {
        let at = |text| date(text).unwrap();
        assert_eq!(at("31/01/2024").shows(), Some(DayOrder::DayFirst));
        assert_eq!(at("01/31/2024").shows(), Some(DayOrder::MonthFirst));
        assert!(at("01/02/2024").shows().is_none() && at("01/02/2024").is_open());
        assert!(!at("02/02/2024").is_open());
        assert_eq!(
            at("01/02/2024")
                .date(DayOrder::MonthFirst)
                .unwrap()
                .to_string(),
            "2024-01-02"
        );
    }
}
