//! What happened, in the order in which it happened.

use std::sync::Arc;

use heapwright_journal::{Event, EventId, Stamp};

/// The place of an event in a history: by when it happened, and between those of one instant by
/// when it was recorded. All devices have the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// When it happened [ms since 1970-01-01T00:00Z].
    pub instant_ms: i64,
    /// When it was recorded.
    pub stamp: Stamp,
    /// Which one.
    pub id: EventId,
}

impl Place {
    /// Of an event.
    #[must_use]
    pub const fn of(event: &Event) -> Self {
        Self {
            instant_ms: event.happened.instant_ms,
            stamp: event.stamp,
            id: event.id,
        }
    }
}

/// What is folded from a history, one event after the other.
pub(crate) trait Step {
    /// As it is before anything happened.
    fn fresh(&self) -> Self;

    /// What the event changes.
    fn step(&mut self, event: &Arc<Event>);
}

/// A history and what was folded from it.
///
/// What is new at the end is folded on; what comes in between has the whole folded anew. Either
/// way the result is the fold of the history in its order.
#[derive(Clone, Debug)]
pub(crate) struct Timeline<Now> {
    history: Vec<(Place, Arc<Event>)>,
    now: Now,
    /// How much of the history is folded; what is behind it may not be in order yet.
    folded: usize,
}

impl<Now: PartialEq> PartialEq for Timeline<Now> {
    fn eq(&self, other: &Self) -> bool {
        self.history == other.history && self.now == other.now
    }
}

impl<Now: Step> Timeline<Now> {
    /// Of nothing yet.
    pub(crate) fn new(now: Now) -> Self {
        Self {
            history: Vec::new(),
            now,
            folded: 0,
        }
    }

    /// Adds an event; [`Timeline::settle`] must follow.
    pub(crate) fn add(&mut self, event: &Arc<Event>) {
        self.history.push((Place::of(event), Arc::clone(event)));
    }

    /// Takes an event out; [`Timeline::settle`] must follow.
    pub(crate) fn remove(&mut self, event: &Event) {
        let place = Place::of(event);
        self.history.retain(|(other, _)| *other != place);
        self.folded = 0;
        self.now = self.now.fresh();
    }

    /// Brings order and fold up to date.
    pub(crate) fn settle(&mut self) {
        if self.folded == self.history.len() && self.folded > 0 {
            return;
        }
        let folded = self.folded.min(self.history.len());
        self.history[folded..].sort_unstable_by_key(|(place, _)| *place);
        let last = folded.checked_sub(1).map(|last| self.history[last].0);
        if last > self.history.get(folded).map(|(place, _)| *place) {
            // Two sorted runs: this sort takes them as such.
            self.history.sort_by_key(|(place, _)| *place);
            self.folded = 0;
            self.now = self.now.fresh();
        }
        for (_, event) in &self.history[self.folded.min(self.history.len())..] {
            self.now.step(event);
        }
        self.folded = self.history.len();
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.history.is_empty()
    }

    pub(crate) fn now(&self) -> &Now {
        &self.now
    }

    pub(crate) fn history(&self) -> &[(Place, Arc<Event>)] {
        &self.history
    }
}
