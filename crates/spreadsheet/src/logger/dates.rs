//! What time does a cell say? Digits, marks and words to a date, a time of day and an offset.

use heapwright_journal::Moment;

/// In which order day, month and year stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateOrder {
    /// 31/12/2026.
    DayFirst,
    /// 12/31/2026.
    MonthFirst,
    /// 26/12/31, when the year has two digits.
    YearFirst,
}

impl DateOrder {
    pub(super) const ALL: [Self; 3] = [Self::DayFirst, Self::MonthFirst, Self::YearFirst];

    /// What it is called in a sentence.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::DayFirst => "day first",
            Self::MonthFirst => "month first",
            Self::YearFirst => "year first",
        }
    }
}

/// A date as it is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Date {
    parts: [u16; 3],
    form: Form,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    /// 2026-12-31.
    YearFirst,
    /// 31/12/2026.
    YearLast,
    /// 31/12/26.
    ShortYear,
    /// 31.12.2026 or 31.12.26: with points the day stands first.
    Points,
}

/// A time of day as it is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct TimeOfDay {
    hour: u16,
    minute: u16,
    second: u16,
    milliseconds: u16,
}

/// What a cell says of a time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Stamped {
    pub date: Option<Date>,
    pub time: Option<TimeOfDay>,
    pub offset_min: Option<i16>,
}

impl Date {
    /// The orders that it can be written in; `None` when its form says it.
    pub(super) fn orders(&self) -> Option<[bool; 3]> {
        if self.form == Form::YearFirst {
            return None;
        }
        Some(DateOrder::ALL.map(|order| {
            let fits = match self.form {
                Form::Points => order == DateOrder::DayFirst,
                Form::YearLast => order != DateOrder::YearFirst,
                Form::YearFirst | Form::ShortYear => true,
            };
            let [_, month, day] = self.year_month_day(order);
            fits && (1..=12).contains(&month) && (1..=31).contains(&day)
        }))
    }

    fn year_month_day(&self, order: DateOrder) -> [u16; 3] {
        let [a, b, c] = self.parts;
        let century = |year| if year < 100 { 2000 + year } else { year };
        match order {
            _ if self.form == Form::YearFirst => [a, b, c],
            DateOrder::DayFirst => [century(c), b, a],
            DateOrder::MonthFirst => [century(c), a, b],
            DateOrder::YearFirst => [century(a), b, c],
        }
    }
}

impl Stamped {
    /// The date as it is written, for a sentence.
    pub(super) fn date_as_written(&self) -> String {
        let Some(date) = self.date else {
            return String::new();
        };
        let mark = match date.form {
            Form::YearFirst => '-',
            Form::YearLast | Form::ShortYear => '/',
            Form::Points => '.',
        };
        let [a, b, c] = date.parts;
        format!("{a:02}{mark}{b:02}{mark}{c:02}")
    }

    /// The moment. `None` for a date that the calendar does not have.
    pub(super) fn moment(&self, order: DateOrder, offset_min: i16) -> Option<Moment> {
        let [year, month, day] = self.date?.year_month_day(order);
        let time = self.time?;
        let offset_min = self.offset_min.unwrap_or(offset_min);
        // The journal's own reader knows the calendar.
        format!(
            "{year:04}-{month:02}-{day:02}T{:02}:{:02}:{:02}.{:03}{}{:02}:{:02}",
            time.hour,
            time.minute,
            time.second,
            time.milliseconds,
            if offset_min < 0 { '-' } else { '+' },
            offset_min.unsigned_abs() / 60,
            offset_min.unsigned_abs() % 60,
        )
        .parse()
        .ok()
    }
}

/// Reads a cell: a date, a time of day, or both. `None` for anything else.
pub(super) fn stamped(cell: &str) -> Option<Stamped> {
    let cell = cell.trim();
    if cell.len() > 60 {
        return None;
    }
    let mut reader = Reader { rest: cell };
    let mut found = Stamped {
        date: reader.date(),
        ..Stamped::default()
    };
    if found.date.is_some() {
        reader.between();
        if reader.rest.is_empty() {
            return Some(found);
        }
    }
    found.time = Some(reader.time_of_day()?);
    reader.spaces();
    if !reader.rest.is_empty() {
        found.offset_min = Some(reader.offset()?);
    }
    reader.rest.is_empty().then_some(found)
}

/// The offset from UTC [min] that a name or remark states: "UTC", "GMT+2", "UTC-05:30".
pub(super) fn stated_offset(text: &str) -> Option<i16> {
    let upper = text.to_ascii_uppercase();
    let at = upper.find("UTC").or_else(|| upper.find("GMT"))?;
    let mut reader = Reader {
        rest: upper.get(at + 3..)?,
    };
    reader.spaces();
    if reader.rest.starts_with(['+', '-', '−']) {
        reader.signed_offset()
    } else {
        Some(0)
    }
}

/// Takes pieces off the front of a text.
struct Reader<'a> {
    rest: &'a str,
}

impl Reader<'_> {
    fn digits(&mut self, most: usize) -> Option<(u16, usize)> {
        let count = self
            .rest
            .bytes()
            .take_while(u8::is_ascii_digit)
            .take(most + 1)
            .count();
        if count == 0 || count > most {
            return None;
        }
        let number = self.rest[..count].parse().ok()?;
        self.rest = &self.rest[count..];
        Some((number, count))
    }

    fn sign(&mut self, allowed: &[char]) -> Option<char> {
        let sign = self.rest.chars().next().filter(|c| allowed.contains(c))?;
        self.rest = &self.rest[sign.len_utf8()..];
        Some(sign)
    }

    fn word(&mut self, word: &str) -> Option<()> {
        let front = self.rest.get(..word.len())?;
        front.eq_ignore_ascii_case(word).then(|| {
            self.rest = &self.rest[word.len()..];
        })
    }

    fn spaces(&mut self) {
        self.rest = self.rest.trim_start();
    }

    fn date(&mut self) -> Option<Date> {
        let before = self.rest;
        let date = self.date_here();
        if date.is_none() {
            self.rest = before;
        }
        date
    }

    fn date_here(&mut self) -> Option<Date> {
        let (a, a_digits) = self.digits(4)?;
        let mark = self.sign(&['-', '/', '.'])?;
        let (b, b_digits) = self.digits(2)?;
        self.sign(&[mark])?;
        let (c, c_digits) = self.digits(4)?;
        let form = match (a_digits, b_digits, c_digits) {
            (4, _, 1..=2) => Form::YearFirst,
            (1..=2, _, 2 | 4) if mark == '.' => Form::Points,
            (1..=2, _, 4) => Form::YearLast,
            (1..=2, _, 2) => Form::ShortYear,
            _ => return None,
        };
        Some(Date {
            parts: [a, b, c],
            form,
        })
    }

    /// What stands between a date and a time.
    fn between(&mut self) {
        let _ = self.sign(&['T', 't', ',']);
        self.spaces();
    }

    fn time_of_day(&mut self) -> Option<TimeOfDay> {
        let (hour, _) = self.digits(2)?;
        self.sign(&[':'])?;
        let minute = self.two_digits_below(60)?;
        let mut time = TimeOfDay {
            hour,
            minute,
            ..TimeOfDay::default()
        };
        if self.sign(&[':']).is_some() {
            time.second = self.two_digits_below(60)?;
            if self.sign(&['.', ',']).is_some() {
                time.milliseconds = self.milliseconds()?;
            }
        }
        self.spaces();
        let twelve = [("a.m.", 0), ("am", 0), ("p.m.", 12), ("pm", 12)]
            .into_iter()
            .find(|(word, _)| self.word(word).is_some());
        match twelve {
            Some((_, later)) => {
                time.hour = (1..=12).contains(&hour).then_some(hour % 12 + later)?;
            }
            None if hour > 23 => return None,
            None => {}
        }
        Some(time)
    }

    fn two_digits_below(&mut self, end: u16) -> Option<u16> {
        let (number, digits) = self.digits(2)?;
        (digits == 2 && number < end).then_some(number)
    }

    fn milliseconds(&mut self) -> Option<u16> {
        let count = self.rest.bytes().take_while(u8::is_ascii_digit).count();
        if !(1..=9).contains(&count) {
            return None;
        }
        let kept = &self.rest[..count.min(3)];
        let number: u16 = kept.parse().ok()?;
        self.rest = &self.rest[count..];
        Some(number * [100, 10, 1][kept.len() - 1])
    }

    fn offset(&mut self) -> Option<i16> {
        let word = ["utc", "gmt", "z"]
            .iter()
            .any(|word| self.word(word).is_some());
        if word && self.rest.is_empty() {
            return Some(0);
        }
        self.signed_offset()
    }

    fn signed_offset(&mut self) -> Option<i16> {
        let minus = self.sign(&['+', '-', '−'])? != '+';
        let (number, digits) = self.digits(4)?;
        let (hours, minutes) = match digits {
            1 | 2 if self.sign(&[':']).is_some() => (number, self.two_digits_below(60)?),
            1 | 2 => (number, 0),
            4 => (number / 100, number % 100),
            _ => return None,
        };
        if hours > 14 || minutes > 59 {
            return None;
        }
        let offset = i16::try_from(hours * 60 + minutes).ok()?;
        Some(if minus { -offset } else { offset })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_read_in_many_forms() {
        use DateOrder::{DayFirst, MonthFirst, YearFirst};
        for (cell, order, moment) in [
            (
                "2026-05-01T18:00:00+02:00",
                DayFirst,
                "2026-05-01T18:00:00+02:00",
            ),
            (
                "2026-05-01T18:00:00.25Z",
                DayFirst,
                "2026-05-01T18:00:00.250Z",
            ),
            ("2026-05-01 18:00", MonthFirst, "2026-05-01T18:00:00+01:00"),
            ("2026/5/1 6:05:07 PM", DayFirst, "2026-05-01T18:05:07+01:00"),
            ("01/05/2026 12:00 am", DayFirst, "2026-05-01T00:00:00+01:00"),
            (
                "01/05/2026 12:00 p.m.",
                MonthFirst,
                "2026-01-05T12:00:00+01:00",
            ),
            ("1.5.2026, 07:08", DayFirst, "2026-05-01T07:08:00+01:00"),
            ("26/05/01 07:08", YearFirst, "2026-05-01T07:08:00+01:00"),
            (
                "01-05-26 07:08:09,5",
                DayFirst,
                "2026-05-01T07:08:09.500+01:00",
            ),
            (
                "2026-05-01 07:08 -0530",
                DayFirst,
                "2026-05-01T07:08:00-05:30",
            ),
            ("2026-05-01 07:08 UTC", DayFirst, "2026-05-01T07:08:00Z"),
            (
                "2026-05-01 07:08 GMT+2",
                DayFirst,
                "2026-05-01T07:08:00+02:00",
            ),
        ] {
            let found = stamped(cell).and_then(|found| found.moment(order, 60));
            assert_eq!(
                found.map(|found| found.to_string()).as_deref(),
                Some(moment),
                "{cell}"
            );
        }
    }

    #[test]
    fn what_is_no_time_is_none() {
        for cell in [
            "",
            "1777651200",
            "55.5",
            "46143.75",
            "18",
            "2026-05-01 24:00",
            "2026-05-01 13:00 PM",
            "2026-05-01 0:00 AM",
            "2026-05-01 07:60",
            "2026-05-01 07:08 yesterday",
            "2026-05",
            "1/5/6 07:00",
            "2026-05-01 07:08 +25:00",
            "٢٠٢٦-05-01 07:08",
            "é",
            "2026-05-01Té",
        ] {
            assert_eq!(stamped(cell), None, "{cell}");
        }
        let feb = stamped("30/02/2026 10:00").unwrap();
        assert_eq!(feb.moment(DateOrder::DayFirst, 0), None);
    }

    #[test]
    fn offsets_in_names_are_read() {
        for (name, offset_min) in [
            ("Time (UTC)", Some(0)),
            ("Time, GMT+02:00", Some(120)),
            ("time utc-5", Some(-300)),
            ("Time", None),
            ("Time (UTC+99)", None),
        ] {
            assert_eq!(stated_offset(name), offset_min, "{name}");
        }
    }
}
