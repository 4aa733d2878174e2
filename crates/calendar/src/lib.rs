//! When is what due? Reminders as iCalendar (RFC 5545, RFC 7986), which every calendar program reads.
//!
//! A reminder is an event of a day, or of a time where that is known, with an alarm. Its name is made
//! of the kind of need and the heap, so that a calendar that reads the file again moves what it has
//! and doubles nothing, whatever language it is written in. Times are in UTC, which no change of clocks can shift; days are days of the
//! calendar, wherever it is read. The clock is that of the answer: the same answer gives the same
//! file, to the last byte.
//!
//! The two libraries that were tried for writing the format read the clock and roll dice for alarms,
//! or fold a line an octet too late; what is needed of the format is a page of code.

#![cfg_attr(test, allow(clippy::unwrap_used))]

mod lines;

use heapwright_answers::today::{DatedNeed, Need, On, TodayAnswer};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::Moment;
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wording::today::{self as wording, Times};
use jiff::civil::Date;

use lines::Lines;

/// The media type of such a file.
pub const MEDIA_TYPE: &str = "text/calendar; charset=utf-8";
/// How often a calendar that follows the file may ask again.
const REFRESH: &str = "PT1H";
/// How long a reminder of a time lasts.
const LASTS: &str = "PT15M";
/// When the alarm of a day rings, after midnight.
const MORNING: &str = "PT9H";
/// The same as a time of day.
const MORNING_TIME: &str = "09:00:00";

/// What the sentences of reminders need.
#[derive(Clone, Copy)]
pub struct Telling<'a> {
    /// The catalogue, in the words of the language.
    pub catalogue: &'a Catalogue,
    /// The garden.
    pub garden: &'a Garden,
    /// Its journal.
    pub state: &'a State,
    /// In which language and units it is spoken.
    pub locale: Locale,
}

/// The file of reminders for all that the answer has a day for.
#[must_use]
pub fn calendar(telling: &Telling, answer: &TodayAnswer) -> String {
    let mut out = Lines::default();
    out.plain("BEGIN", "VCALENDAR");
    out.plain("VERSION", "2.0");
    out.plain("PRODID", "-//Heapwright//Reminders//EN");
    out.plain("CALSCALE", "GREGORIAN");
    out.plain("METHOD", "PUBLISH");
    let name = wording::calendar_name(telling.state, telling.locale);
    out.text("NAME", &name);
    out.text("X-WR-CALNAME", &name);
    out.plain("REFRESH-INTERVAL;VALUE=DURATION", REFRESH);
    out.plain("X-PUBLISHED-TTL", REFRESH);
    for date in &answer.dates {
        event(&mut out, telling, answer, date);
    }
    if answer.dates.is_empty() {
        empty(&mut out);
    }
    out.plain("END", "VCALENDAR");
    out.done()
}

/// A reminder that a device shows by itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reminder {
    /// Its lasting name, as in the file.
    pub name: String,
    /// From when on it is due: a time with its offset, or the morning of a day wherever the device is.
    pub at: String,
    /// What to do.
    pub title: String,
    /// Why, how, and what can hurt, a line each.
    pub body: String,
}

/// The same as reminders that a device shows by itself.
#[must_use]
pub fn reminders(telling: &Telling, answer: &TodayAnswer) -> Vec<Reminder> {
    let dates = answer.dates.iter();
    dates
        .map(|date| Reminder {
            name: name(date),
            at: match date.on {
                On::Day(day) => format!("{day}T{MORNING_TIME}"),
                On::Time(moment) => moment.to_string(),
            },
            title: headline(telling, date),
            body: description(telling, answer, date),
        })
        .collect()
}

/// A file must have some component: the time zone in which all times are written.
fn empty(out: &mut Lines) {
    out.plain("BEGIN", "VTIMEZONE");
    out.plain("TZID", "UTC");
    out.plain("BEGIN", "STANDARD");
    out.plain("DTSTART", "19700101T000000");
    out.plain("TZOFFSETFROM", "+0000");
    out.plain("TZOFFSETTO", "+0000");
    out.plain("END", "STANDARD");
    out.plain("END", "VTIMEZONE");
}

fn event(out: &mut Lines, telling: &Telling, answer: &TodayAnswer, date: &DatedNeed) {
    let summary = headline(telling, date);
    out.plain("BEGIN", "VEVENT");
    out.plain("UID", &name(date));
    out.plain("DTSTAMP", &utc(answer.now));
    // Later files are later versions: in minutes since 1970, which a number of the format holds.
    out.plain(
        "SEQUENCE",
        &(answer.now.instant_ms / 60_000).max(0).to_string(),
    );
    let trigger = match date.on {
        On::Day(day) => {
            out.plain("DTSTART;VALUE=DATE", &day_text(day));
            let next = day.tomorrow().unwrap_or(day);
            out.plain("DTEND;VALUE=DATE", &day_text(next));
            MORNING
        }
        On::Time(moment) => {
            out.plain("DTSTART", &utc(moment));
            out.plain("DURATION", LASTS);
            "PT0S"
        }
    };
    out.text("SUMMARY", &summary);
    out.text("DESCRIPTION", &description(telling, answer, date));
    // It fills no time: nobody is busy for it.
    out.plain("TRANSP", "TRANSPARENT");
    out.plain("BEGIN", "VALARM");
    out.plain("ACTION", "DISPLAY");
    out.text("DESCRIPTION", &summary);
    out.plain("TRIGGER", trigger);
    out.plain("END", "VALARM");
    out.plain("END", "VEVENT");
}

fn headline(telling: &Telling, date: &DatedNeed) -> String {
    let Telling {
        catalogue,
        garden,
        state,
        locale,
    } = *telling;
    wording::dated_headline(catalogue, garden, state, date, locale)
}

/// Why, how, and what can hurt, a line each. Reasons name days: nobody knows when it is read.
fn description(telling: &Telling, answer: &TodayAnswer, date: &DatedNeed) -> String {
    let times = Times::ByDay(answer.now);
    let locale = telling.locale;
    let mut told: Vec<String> = date
        .because
        .iter()
        .map(|because| wording::because_line(because, times, locale))
        .collect();
    let of_date = |need: &&Need| need.heap == date.heap && need.what.kind() == date.kind;
    // Stores have no heap, and more than one of the kind: their headline says it.
    if let (Some(need), Some(_)) = (answer.needs.iter().find(of_date), date.heap) {
        told.extend(wording::how_to(telling.catalogue, need, locale));
    }
    told.extend(
        date.cautions
            .iter()
            .map(|caution| wording::caution_line(*caution, locale).to_owned()),
    );
    told.push(wording::today_limits(locale).to_owned());
    told.join("\n")
}

/// The lasting name of a reminder. The garden is no part of it: the entry that set it up is another
/// once it is described at last, or once a journal of another device with an earlier one comes in.
fn name(date: &DatedNeed) -> String {
    let of = match (&date.material, date.heap) {
        (Some((material, conditions)), _) => {
            format!("{}.{}", material.as_str(), conditions.join("+"))
        }
        (None, Some(heap)) => heap.to_string(),
        (None, None) => "garden".to_owned(),
    };
    format!("{}.{of}@heapwright", date.kind.key())
}

/// "20260501T160000Z"
fn utc(moment: Moment) -> String {
    let at = Moment {
        offset_min: 0,
        ..moment
    }
    .local();
    format!(
        "{}T{:02}{:02}{:02}Z",
        day_text(at.date()),
        at.hour(),
        at.minute(),
        at.second()
    )
}

/// "20260501"
fn day_text(day: Date) -> String {
    format!("{:04}{:02}{:02}", day.year(), day.month(), day.day())
}
