//! How large a garden, for how long?

use jiff::civil::{Date, date};
use jiff::{Span, ToSpan};

use crate::garden::Journal;
use crate::people::NAMES;

/// A garden to be made up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Another seed gives another garden.
    pub seed: u64,
    /// Name to show; say in it that the garden is invented.
    pub name: String,
    /// The first day.
    pub first_day: Date,
    /// How many days.
    pub days: u32,
    /// How many people, each with a device of their own; at least 1, at most [`Plan::MOST_PEOPLE`].
    pub people: usize,
    /// How many heaps are fed at once.
    pub heaps: usize,
    /// How many events, to the last one.
    pub events: usize,
}

impl Plan {
    /// The most people of one garden.
    pub const MOST_PEOPLE: usize = NAMES.len();

    /// The demo: one household of two, a year and a half that ends on a day, 500 events.
    #[must_use]
    pub fn demo(last_day: Date) -> Self {
        let days = 548;
        Self {
            seed: 7,
            name: "Alder Lane, an invented garden".to_owned(),
            first_day: before(last_day, days - 1),
            days,
            people: 2,
            heaps: 2,
            events: 500,
        }
    }

    /// Ten years of a community garden with fifteen people; 200,000 events are a large one.
    #[must_use]
    pub fn community(events: usize) -> Self {
        Self {
            seed: 11,
            name: "Mill Field, an invented community garden".to_owned(),
            first_day: date(2016, 3, 1),
            days: 3653,
            people: 15,
            heaps: 12,
            events,
        }
    }

    /// Its events, in the order in which they were recorded.
    #[must_use]
    pub fn journal(&self) -> Journal {
        Journal::new(self)
    }
}

fn before(day: Date, days: u32) -> Date {
    let span: Span = i64::from(days).days();
    day.saturating_sub(span)
}
