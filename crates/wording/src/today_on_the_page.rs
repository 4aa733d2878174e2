//! What the page says around the needs of a day: headings, buttons, empty places.

use heapwright_texts::Locale;
use heapwright_texts::messages::today_on_the_page as texts;

/// No heap yet.
#[must_use]
pub fn no_heaps(locale: Locale) -> &'static str {
    texts::no_heaps(locale)
}

/// Starts a heap.
#[must_use]
pub fn start_a_heap(locale: Locale) -> &'static str {
    texts::start_a_heap(locale)
}

/// Leads to the balance.
#[must_use]
pub fn balance_first(locale: Locale) -> &'static str {
    texts::balance_first(locale)
}

/// While the worker looks through the journal.
#[must_use]
pub fn looking(locale: Locale) -> &'static str {
    texts::looking(locale)
}

/// What to do when nothing is needed.
#[must_use]
pub fn nothing_needed_more(locale: Locale) -> &'static str {
    texts::nothing_needed_more(locale)
}

/// Heading of what is needed, for those who do not see it.
#[must_use]
pub fn needed(locale: Locale) -> &'static str {
    texts::needed(locale)
}

/// Opens the other reasons.
#[must_use]
pub fn more_reasons(locale: Locale) -> &'static str {
    texts::more_reasons(locale)
}

/// Leads to all heaps.
#[must_use]
pub fn all_heaps(locale: Locale) -> &'static str {
    texts::all_heaps(locale)
}

/// Opens the field of the temperature.
#[must_use]
pub fn read_heat(locale: Locale) -> &'static str {
    texts::read_heat(locale)
}

/// Opens the form of what was seen.
#[must_use]
pub fn look(locale: Locale) -> &'static str {
    texts::look(locale)
}

/// Leads to the heap.
#[must_use]
pub fn open_the_heap(locale: Locale) -> &'static str {
    texts::open_the_heap(locale)
}

/// Leads to the heap to feed it.
#[must_use]
pub fn to_feed(locale: Locale) -> &'static str {
    texts::to_feed(locale)
}

/// Leads to the heap for what cannot be done here.
#[must_use]
pub fn to_the_heap(locale: Locale) -> &'static str {
    texts::to_the_heap(locale)
}

/// Leads to the heap to take compost out.
#[must_use]
pub fn to_harvest(locale: Locale) -> &'static str {
    texts::to_harvest(locale)
}

/// Leads to the heap to test it.
#[must_use]
pub fn to_test(locale: Locale) -> &'static str {
    texts::to_test(locale)
}

/// Leads to the stores.
#[must_use]
pub fn to_the_stores(locale: Locale) -> &'static str {
    texts::to_the_stores(locale)
}

/// On the button of what was logged just now, until the page knows what follows of it.
#[must_use]
pub fn logged(locale: Locale) -> &'static str {
    texts::logged(locale)
}

/// Heading of where a temperature is logged whatever the day asks.
#[must_use]
pub fn log_temperature(locale: Locale) -> &'static str {
    texts::log_temperature(locale)
}

/// Which heap was read.
#[must_use]
pub fn which_heap(locale: Locale) -> &'static str {
    texts::which_heap(locale)
}

/// Back to what the day asks.
#[must_use]
pub fn to_the_day(locale: Locale) -> &'static str {
    texts::to_the_day(locale)
}

/// Heading of reminders.
#[must_use]
pub fn reminders(locale: Locale) -> &'static str {
    texts::reminders(locale)
}

/// What the page can do, and cannot.
#[must_use]
pub fn reminders_hint(locale: Locale) -> &'static str {
    texts::reminders_hint(locale)
}

/// Nothing has a day.
#[must_use]
pub fn nothing_dated(locale: Locale) -> &'static str {
    texts::nothing_dated(locale)
}

/// Writes the calendar.
#[must_use]
pub fn to_calendar(locale: Locale) -> &'static str {
    texts::to_calendar(locale)
}
