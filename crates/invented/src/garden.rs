//! Day by day: who does what.

use std::collections::VecDeque;

use heapwright_journal::{Content, Event, EventId, Moment, WriteError};
use jiff::ToSpan;
use jiff::civil::Date;

use crate::chance::Chance;
use crate::heaps::Bay;
use crate::people::{DAY_MS, Entry, Scribe};
use crate::plan::Plan;
use crate::seasons::{air_c, busyness};
use crate::stores::Stores;
use crate::{beds, set_up};

/// How many of the last events may still be corrected.
const RECENT: usize = 60;

/// The events of an invented garden, in the order in which they were recorded.
#[derive(Clone, Debug)]
pub struct Journal {
    pub(crate) plan: Plan,
    pub(crate) chance: Chance,
    pub(crate) scribe: Scribe,
    pub(crate) bays: Vec<Bay>,
    pub(crate) stores: Stores,
    pub(crate) beds: Vec<EventId>,
    pub(crate) recent: VecDeque<(EventId, Moment, Content)>,
    pub(crate) day: u32,
    pub(crate) started: usize,
    /// How many events there are to be by the evening of each day.
    pub(crate) due: Vec<usize>,
    pub(crate) written: usize,
}

/// The lines of a garden.
pub fn lines(plan: &Plan) -> impl Iterator<Item = Result<String, WriteError>> + use<> {
    plan.journal().map(|event| event.write())
}

impl Iterator for Journal {
    type Item = Event;

    fn next(&mut self) -> Option<Event> {
        loop {
            if let Some(event) = self.scribe.next() {
                return Some(event);
            }
            if self.day >= self.plan.days {
                return None;
            }
            self.pass_day();
            self.day += 1;
        }
    }
}

/// A day with what holds all day long.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Today {
    pub(crate) date: Date,
    pub(crate) air_c: f64,
    /// Days since 1970.
    pub(crate) number: i64,
    pub(crate) offset_min: i16,
}

fn weight_of(chance: &mut Chance, date: Date) -> f64 {
    let weekend = matches!(
        date.weekday(),
        jiff::civil::Weekday::Saturday | jiff::civil::Weekday::Sunday
    );
    busyness(date.month()) * if weekend { 2.0 } else { 1.0 } * chance.between(0.2, 1.8)
}

impl Journal {
    pub(crate) fn new(plan: &Plan) -> Self {
        let end = date_of(plan, plan.days);
        let end_ms = Moment::from_local(end.at(0, 0, 0, 0), 0).map_or(0, |end| end.instant_ms);
        Self {
            plan: plan.clone(),
            chance: Chance::new(plan.seed, "garden"),
            // Some hours before the end, so that no offset of the local time leads beyond it.
            scribe: Scribe::new(plan.seed, plan.people, plan.events, end_ms - DAY_MS / 8),
            bays: Vec::new(),
            stores: Stores::default(),
            beds: Vec::new(),
            recent: VecDeque::new(),
            day: 0,
            started: 0,
            due: due(plan),
            written: 0,
        }
    }

    fn today(&mut self) -> Today {
        let date = date_of(&self.plan, self.day);
        // Summer time from April to October is near enough for a place that does not exist.
        let offset_min = if (4..=10).contains(&date.month()) {
            120
        } else {
            60
        };
        let midnight = Moment::from_local(date.at(0, 0, 0, 0), 0).map_or(0, |at| at.instant_ms);
        Today {
            date,
            air_c: air_c(date.day_of_year()) + self.chance.between(-4.0, 4.0),
            number: midnight / DAY_MS,
            offset_min,
        }
    }

    fn pass_day(&mut self) {
        let today = self.today();
        if self.day == 0 {
            self.set_up(&today);
        }
        for bay in &mut self.bays {
            bay.day(today.air_c);
        }
        self.go_on(&today);
        let due = self.due.get(self.day as usize).copied().unwrap_or(0);
        // What comes to nothing, such as a note about no heap, must not go on for ever.
        let mut tries = 20 + 4 * due.saturating_sub(self.written);
        while self.written < due && tries > 0 {
            tries -= 1;
            self.do_something(&today);
        }
        let evening_ms = (today.number + 1) * DAY_MS - i64::from(today.offset_min) * 60_000;
        if self.day + 1 == self.plan.days {
            self.scribe.write_all();
        } else {
            self.scribe.write(evening_ms);
        }
    }

    /// Writes something down that happened at an hour of the day.
    pub(crate) fn note(&mut self, today: &Today, hour: f64, content: Content) -> Option<EventId> {
        let late = hour > 7.0 && self.chance.happens(0.06);
        let after_min = if late {
            self.chance.between(600.0, 9000.0)
        } else {
            self.chance.between(1.0, 40.0)
        };
        let person = self.somebody();
        self.write(today, hour, person, after_min, None, content)
    }

    pub(crate) fn write(
        &mut self,
        today: &Today,
        hour: f64,
        person: usize,
        after_min: f64,
        batch: Option<EventId>,
        content: Content,
    ) -> Option<EventId> {
        let minutes = (hour * 60.0) as i64 - i64::from(today.offset_min);
        let instant_ms = today.number * DAY_MS + minutes * 60_000;
        let happened = Moment::new(instant_ms, today.offset_min)?;
        let entry = Entry {
            person,
            happened,
            after_ms: (after_min * 60_000.0) as i64,
            batch,
        };
        let id = self.scribe.note(&entry, content.clone())?;
        self.written += 1;
        if matches!(
            content,
            Content::Fed(_)
                | Content::Read(_)
                | Content::Turned(_)
                | Content::Watered(_)
                | Content::Noted(_)
        ) {
            self.recent.push_back((id, happened, content));
            if self.recent.len() > RECENT {
                self.recent.pop_front();
            }
        }
        Some(id)
    }

    /// Somebody; the first ones do more.
    pub(crate) fn somebody(&mut self) -> usize {
        let people = self.scribe.people();
        let (one, other) = (self.chance.below(people), self.chance.below(people));
        one.min(other)
    }

    pub(crate) fn hour(&mut self) -> f64 {
        self.chance.between(7.5, 20.5)
    }

    fn set_up(&mut self, today: &Today) {
        self.write(today, 5.0, 0, 1.0, None, set_up::garden(&self.plan.name));
        for person in 0..self.scribe.people() {
            let id = self.write(today, 5.1, person, 1.0, None, set_up::person(person));
            if let Some(id) = id {
                self.scribe.introduce(person, id);
            }
        }
        for content in set_up::equipment() {
            self.write(today, 5.2, 0, 1.0, None, content);
        }
        for number in 0..3 + self.plan.people {
            let bed = beds::described(&mut self.chance, number);
            let id = self.write(today, 5.5, 0, 1.0, None, bed.into());
            self.beds.extend(id);
        }
    }
}

fn date_of(plan: &Plan, day: u32) -> Date {
    plan.first_day.saturating_add(i64::from(day).days())
}

/// How many events there are to be by the evening of each day: more at weekends and in summer.
fn due(plan: &Plan) -> Vec<usize> {
    let mut chance = Chance::new(plan.seed, "days");
    let weights: Vec<f64> = (0..plan.days)
        .map(|day| weight_of(&mut chance, date_of(plan, day)))
        .collect();
    let in_all: f64 = weights.iter().sum();
    let mut so_far = 0.0;
    let mut due: Vec<usize> = weights
        .iter()
        .map(|weight| {
            so_far += weight;
            (so_far / in_all * plan.events as f64) as usize
        })
        .collect();
    if let Some(last) = due.last_mut() {
        *last = plan.events;
    }
    due
}
