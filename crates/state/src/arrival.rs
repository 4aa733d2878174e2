//! What would come of taking in another journal? Told before anything is written.

use heapwright_journal::{Digest, Event, EventId, MOST_AHEAD_MS};

use crate::State;

/// What a foreign journal holds that this one does not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arrival {
    /// Lines that are new.
    pub new: u64,
    /// Lines that are there already.
    pub known: u64,
    /// Ids of new lines that are there with other content: both are kept.
    pub conflicts: Vec<EventId>,
    /// New lines whose stamps lie more than a day ahead of the clock.
    pub ahead: u64,
    /// The set-up of a garden that this journal does not have, when neither shares a line with the
    /// other: then it may be the journal of another garden.
    pub other_garden: Option<EventId>,
}

impl State {
    /// Looks at one line that has come.
    pub fn look_at(&self, arrival: &mut Arrival, digest: Digest, event: &Event, now_ms: u64) {
        match self.has(event.id, digest) {
            Some(true) => {
                arrival.known += 1;
                return;
            }
            Some(false) => arrival.conflicts.push(event.id),
            None => {}
        }
        arrival.new += 1;
        if event.stamp.wall_ms > now_ms.saturating_add(MOST_AHEAD_MS) {
            arrival.ahead += 1;
        }
        if matches!(
            event.content(),
            Some(heapwright_journal::Content::GardenDescribed(_))
        ) {
            arrival.other_garden.get_or_insert(event.id);
        }
    }

    /// Brings what was looked at to its end.
    pub fn looked(&self, arrival: &mut Arrival) {
        if arrival.known > 0 || self.garden().set_up.is_none() {
            arrival.other_garden = None;
        }
    }
}
