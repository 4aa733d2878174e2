//! A bed: what it is now, and what was spread on it.

use std::sync::Arc;

use heapwright_journal::content::{BedDescribed, Spread};
use heapwright_journal::{Content, Event, EventId, Moment};

use crate::timeline::{Step, Timeline};

/// A bed as its journal has it.
#[derive(Clone, Debug, PartialEq)]
pub struct Bed {
    /// The event that described it.
    pub id: EventId,
    pub(crate) timeline: Timeline<BedNow>,
}

/// What a bed is now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BedNow {
    /// As it was described; `None` while that has not arrived.
    pub described: Option<BedDescribed>,
    /// What was spread on it.
    pub dressings: Vec<(Moment, Spread)>,
}

impl Bed {
    pub(crate) fn new(id: EventId) -> Self {
        Self {
            id,
            timeline: Timeline::new(BedNow::default()),
        }
    }

    /// What it is now.
    #[must_use]
    pub fn now(&self) -> &BedNow {
        self.timeline.now()
    }

    /// What happened to it, in the order in which it happened.
    pub fn history(&self) -> impl DoubleEndedIterator<Item = &Arc<Event>> + ExactSizeIterator {
        self.timeline.history().iter().map(|(_, event)| event)
    }
}

impl Step for BedNow {
    fn fresh(&self) -> Self {
        Self::default()
    }

    fn step(&mut self, event: &Arc<Event>) {
        match event.content() {
            Some(Content::BedDescribed(described)) => self.described = Some(described.clone()),
            Some(Content::Spread(spread)) => self.dressings.push((event.happened, spread.clone())),
            _ => {}
        }
    }
}
