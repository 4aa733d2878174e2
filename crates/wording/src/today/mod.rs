//! What a heap needs today: what to do, why, what can hurt, and when to look again.

mod doing;
mod why;

pub use doing::{dated_headline, headline, how_to, kind_headline, tap_word};
pub use heapwright_texts::messages::today::{no_heaps, nothing_today, quiet, today_limits};
pub use why::{Times, because_line, why_lines};

use heapwright_answers::today::{Caution, Quiet, Rest, Urgency};
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_texts::messages::today as messages;
use jiff::civil::Date;

use crate::journal::{date_text, heap_name};

/// How soon, as a heading.
#[must_use]
pub fn urgency_heading(urgency: Urgency, locale: Locale) -> &'static str {
    match urgency {
        Urgency::Now => messages::urgency_now(locale),
        Urgency::Soon => messages::urgency_soon(locale),
        Urgency::Whenever => messages::urgency_whenever(locale),
    }
}

/// What can hurt while it is done.
#[must_use]
pub fn caution_line(caution: Caution, locale: Locale) -> &'static str {
    match caution {
        Caution::Fire => messages::caution_fire(locale),
        Caution::Steam => messages::caution_steam(locale),
        Caution::MouldDust => messages::caution_mould_dust(locale),
        Caution::Animals => messages::caution_animals(locale),
        Caution::Fumes => messages::caution_fumes(locale),
        Caution::Lifting => messages::caution_lifting(locale),
    }
}

/// What a calendar of reminders is called.
#[must_use]
pub fn calendar_name(state: &State, locale: Locale) -> String {
    match state.garden().name.as_deref() {
        Some(garden) => messages::CalendarOfGarden { garden }.said(locale),
        None => messages::calendar(locale).to_owned(),
    }
}

/// A heap that needs nothing, and when to look again.
#[must_use]
pub fn quiet_line(state: &State, quiet: &Quiet, locale: Locale) -> String {
    let heap = heap_name(state, quiet.heap, locale);
    let day = quiet.again.map(|day| date_text(day, locale));
    match (quiet.why, &day) {
        (Rest::Empty, _) => messages::RestsEmpty { heap }.said(locale),
        (Rest::Working, Some(day)) => messages::WorksUntilDay { day, heap }.said(locale),
        (Rest::Working, None) => messages::Works { heap }.said(locale),
        (Rest::Ripening, Some(day)) => messages::RipensUntilDay { day, heap }.said(locale),
        (Rest::Ripening, None) => messages::Ripens { heap }.said(locale),
    }
}

/// A day as people write it: "1 May 2026".
#[must_use]
pub fn day_of(day: Date, locale: Locale) -> String {
    date_text(day, locale)
}
