//! All events, with what corrects them: what counts of each, and what is in conflict.

use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;

use heapwright_journal::{Content, Digest, Event, EventId, Stamp, What};

/// An event as one line has it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Variant {
    pub(crate) digest: Digest,
    pub(crate) event: Arc<Event>,
}

impl Variant {
    fn order(&self) -> (Stamp, Digest) {
        (self.event.stamp, self.digest)
    }
}

/// All that is known under one id.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slot {
    /// The one that counts: the first by stamp and digest. `None` when only corrections are known.
    pub(crate) accepted: Option<Variant>,
    /// Others of the same id, in their order: a conflict.
    pub(crate) others: Vec<Variant>,
    /// Ids of the corrections of this event, in their order.
    pub(crate) corrections: BTreeSet<(Stamp, EventId)>,
    /// What counts of it: corrected, and nothing when withdrawn, not understood or itself a correction.
    pub(crate) counts: Option<Arc<Event>>,
}

impl Slot {
    /// True when nothing is known under the id.
    fn is_empty(&self) -> bool {
        self.accepted.is_none() && self.corrections.is_empty()
    }
}

/// All events by id.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Events {
    slots: HashMap<EventId, Slot>,
    conflicts: BTreeSet<EventId>,
    lines: usize,
}

/// What became of what counts.
pub(crate) struct Change {
    pub(crate) before: Option<Arc<Event>>,
    pub(crate) after: Option<Arc<Event>>,
}

impl Events {
    pub(crate) fn slot(&self, id: EventId) -> Option<&Slot> {
        self.slots.get(&id)
    }

    pub(crate) fn slots(&self) -> impl Iterator<Item = (&EventId, &Slot)> {
        self.slots.iter()
    }

    pub(crate) fn conflicts(&self) -> &BTreeSet<EventId> {
        &self.conflicts
    }

    /// How many lines there are, each once.
    pub(crate) fn lines(&self) -> usize {
        self.lines
    }

    pub(crate) fn reserve(&mut self, more: usize) {
        self.slots.reserve(more);
    }

    fn slot_mut(&mut self, id: EventId) -> &mut Slot {
        self.slots.entry(id).or_insert(Slot {
            accepted: None,
            others: Vec::new(),
            corrections: BTreeSet::new(),
            counts: None,
        })
    }

    /// Takes in a line; false when it is there already. What its corrections change is noted in
    /// `later`, to be worked out once for many of them by [`Events::refresh_all`].
    pub(crate) fn take(
        &mut self,
        digest: Digest,
        event: Arc<Event>,
        changes: &mut Vec<Change>,
        later: &mut Vec<EventId>,
    ) -> bool {
        let id = event.id;
        let new = Variant { digest, event };
        let slot = self.slot_mut(id);
        let Some(accepted) = &mut slot.accepted else {
            let event = Arc::clone(&new.event);
            slot.accepted = Some(new);
            self.lines += 1;
            self.corrected(&event, true, later);
            self.refresh(id, changes);
            return true;
        };
        if accepted.digest == digest {
            return false;
        }
        match slot
            .others
            .binary_search_by_key(&new.order(), Variant::order)
        {
            Ok(_) => return false,
            Err(index) if new.order() > accepted.order() => slot.others.insert(index, new),
            Err(_) => {
                let event = Arc::clone(&new.event);
                let old = std::mem::replace(accepted, new);
                let old_event = Arc::clone(&old.event);
                slot.others.insert(0, old);
                self.corrected(&old_event, false, later);
                self.corrected(&event, true, later);
                self.refresh(id, changes);
            }
        }
        self.lines += 1;
        self.conflicts.insert(id);
        true
    }

    /// Ties a correction to what it corrects, or unties it.
    fn corrected(&mut self, event: &Event, tie: bool, later: &mut Vec<EventId>) {
        let Some(target) = event.content().and_then(Content::corrects) else {
            return;
        };
        let corrections = &mut self.slot_mut(target).corrections;
        if tie {
            corrections.insert((event.stamp, event.id));
        } else {
            corrections.remove(&(event.stamp, event.id));
        }
        later.push(target);
    }

    /// Works out anew what counts of events whose corrections have changed.
    pub(crate) fn refresh_all(&mut self, ids: &mut Vec<EventId>, changes: &mut Vec<Change>) {
        // Of an amendment that is taken back, what it amended changes.
        let amended: Vec<EventId> = ids
            .iter()
            .filter_map(|id| match self.accepted(*id) {
                Some(Content::Amended(amended)) => Some(amended.event),
                _ => None,
            })
            .collect();
        ids.extend(amended);
        ids.sort_unstable();
        ids.dedup();
        for id in ids.drain(..) {
            if self.slot(id).is_some_and(Slot::is_empty) {
                // As if no correction had ever pointed here.
                self.slots.remove(&id);
            } else if self.slot(id).is_some() {
                self.refresh(id, changes);
            }
        }
    }

    fn accepted(&self, id: EventId) -> Option<&Content> {
        self.slot(id)?.accepted.as_ref()?.event.content()
    }

    /// True when an amendment was taken back.
    pub(crate) fn is_withdrawn(&self, amendment: EventId) -> bool {
        self.slot(amendment).is_some_and(|slot| {
            slot.corrections
                .iter()
                .any(|(_, id)| matches!(self.accepted(*id), Some(Content::Withdrawn(_))))
        })
    }

    /// Works out anew what counts of an event.
    fn refresh(&mut self, id: EventId, changes: &mut Vec<Change>) {
        let after = self.counting(id);
        let slot = self.slot_mut(id);
        if slot.counts == after {
            return;
        }
        let before = std::mem::replace(&mut slot.counts, after.clone());
        changes.push(Change { before, after });
    }

    fn counting(&self, id: EventId) -> Option<Arc<Event>> {
        let slot = self.slot(id)?;
        let event = &slot.accepted.as_ref()?.event;
        let content = event.content()?;
        if content.corrects().is_some() {
            return None;
        }
        if slot.corrections.is_empty() {
            return Some(Arc::clone(event));
        }
        // The last correction decides whether it counts; all amendments that stand are applied, in
        // their order. One that would lead outside what can be changes nothing.
        let mut counts = true;
        let mut corrected = Event::clone(event);
        for (_, correction) in &slot.corrections {
            match self.accepted(*correction) {
                Some(Content::Withdrawn(_)) => counts = false,
                Some(Content::Amended(amended)) if !self.is_withdrawn(*correction) => {
                    counts = true;
                    corrected.happened = amended.happened.unwrap_or(corrected.happened);
                    if let What::Known(content) = &corrected.what
                        && let Ok(content) = content.amended(&amended.patch)
                    {
                        corrected.what = What::Known(content);
                    }
                }
                _ => {}
            }
        }
        counts.then(|| Arc::new(corrected))
    }
}
