//! The whole: every event in its place.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use heapwright_journal::{Content, DeviceId, Digest, Event, EventId, Stamp};

use crate::beds::Bed;
use crate::events::{Change, Events, Slot};
use crate::garden::GardenNow;
use crate::heap::Heap;
use crate::stores::{ShelfKey, StoresNow, shelves_of};
use crate::timeline::{Place, Timeline};

/// The garden as its journal has it: a pure fold of a set of events.
///
/// Which events are there decides, not in which order or how often they came: see `tests/`.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    events: Events,
    garden: Timeline<GardenNow>,
    stores: StoresNow,
    heaps: BTreeMap<EventId, Heap>,
    beds: BTreeMap<EventId, Bed>,
    moves: BTreeMap<Place, Arc<Event>>,
    latest: Option<Stamp>,
}

impl Default for State {
    fn default() -> Self {
        Self {
            events: Events::default(),
            garden: Timeline::new(GardenNow::default()),
            stores: StoresNow::default(),
            heaps: BTreeMap::new(),
            beds: BTreeMap::new(),
            moves: BTreeMap::new(),
            latest: None,
        }
    }
}

/// What a batch of changes touched: only that is folded on.
#[derive(Default)]
struct Touched {
    garden: bool,
    shelves: BTreeSet<ShelfKey>,
    heaps: BTreeSet<EventId>,
    beds: BTreeSet<EventId>,
}

/// An event with all that is known of it.
#[derive(Clone, Copy, Debug)]
pub struct Entry<'a> {
    slot: &'a Slot,
    events: &'a Events,
}

impl<'a> Entry<'a> {
    /// As it was recorded.
    #[must_use]
    pub fn recorded(&self) -> Option<&'a Arc<Event>> {
        self.slot.accepted.as_ref().map(|variant| &variant.event)
    }

    /// As it counts: corrected; `None` when it was withdrawn, is not understood, or is itself a
    /// correction.
    #[must_use]
    pub fn counts(&self) -> Option<&'a Arc<Event>> {
        self.slot.counts.as_ref()
    }

    /// True when it was withdrawn.
    #[must_use]
    pub fn is_withdrawn(&self) -> bool {
        match self.recorded().and_then(|event| event.content()) {
            Some(Content::Amended(amended)) => self.recorded().is_some_and(|event| {
                event.id != amended.event && self.events.is_withdrawn(event.id)
            }),
            Some(content) => content.corrects().is_none() && self.counts().is_none(),
            None => false,
        }
    }

    /// What corrects it, in the order in which it counts.
    pub fn corrections(&self) -> impl DoubleEndedIterator<Item = &'a Arc<Event>> {
        let events = self.events;
        self.slot
            .corrections
            .iter()
            .filter_map(|(_, id)| Some(&events.slot(*id)?.accepted.as_ref()?.event))
    }

    /// Others that came under the same id with other content: a conflict.
    pub fn others(&self) -> impl ExactSizeIterator<Item = &'a Arc<Event>> {
        self.slot.others.iter().map(|variant| &variant.event)
    }
}

impl State {
    /// The fold of many lines.
    #[must_use]
    pub fn fold(lines: impl IntoIterator<Item = (Digest, Event)>) -> Self {
        let mut state = Self::default();
        state.take_all(lines);
        state
    }

    /// Takes in a line; false when it is there already.
    pub fn take(&mut self, digest: Digest, event: Event) -> bool {
        self.take_all([(digest, event)]) == 1
    }

    /// Takes in lines; tells how many were new.
    pub fn take_all(&mut self, lines: impl IntoIterator<Item = (Digest, Event)>) -> usize {
        let lines = lines.into_iter();
        self.events.reserve(lines.size_hint().0);
        let mut touched = Touched::default();
        let mut changes = Vec::new();
        let mut later = Vec::new();
        let mut new = 0;
        for (digest, event) in lines {
            self.latest = self.latest.max(Some(event.stamp));
            let event = Arc::new(event);
            new += usize::from(self.events.take(digest, event, &mut changes, &mut later));
            self.place_all(&mut changes, &mut touched);
        }
        self.events.refresh_all(&mut later, &mut changes);
        self.place_all(&mut changes, &mut touched);
        self.settle(&touched);
        new
    }

    fn place_all(&mut self, changes: &mut Vec<Change>, touched: &mut Touched) {
        for Change { before, after } in changes.drain(..) {
            if let Some(event) = before {
                self.place(&event, false, touched);
            }
            if let Some(event) = after {
                self.place(&event, true, touched);
            }
        }
    }

    /// Puts an event where it belongs, or takes it out.
    fn place(&mut self, event: &Arc<Event>, put: bool, touched: &mut Touched) {
        let Some(content) = event.content() else {
            return;
        };
        let (heaps, bed) = concerns(event.id, content);
        for id in heaps.into_iter().flatten() {
            let heap = self.heaps.entry(id).or_insert_with(|| Heap::new(id));
            if put {
                heap.timeline.add(event);
            } else {
                heap.timeline.remove(event);
            }
            touched.heaps.insert(id);
        }
        if let Some(id) = bed {
            let bed = self.beds.entry(id).or_insert_with(|| Bed::new(id));
            if put {
                bed.timeline.add(event);
            } else {
                bed.timeline.remove(event);
            }
            touched.beds.insert(id);
        }
        match content {
            Content::GardenDescribed(_)
            | Content::PersonDescribed(_)
            | Content::MeasureDefined(_)
            | Content::MaterialDefined(_)
            | Content::MaterialMeasured(_) => {
                if put {
                    self.garden.add(event);
                } else {
                    self.garden.remove(event);
                }
                touched.garden = true;
            }
            Content::Moved(_) => {
                if put {
                    self.moves.insert(Place::of(event), Arc::clone(event));
                } else {
                    self.moves.remove(&Place::of(event));
                }
            }
            _ => {}
        }
        for key in shelves_of(content) {
            let timeline = self.stores.shelves.timeline(&key);
            if put {
                timeline.add(event);
            } else {
                timeline.remove(event);
            }
            touched.shelves.insert(key);
        }
    }

    fn settle(&mut self, touched: &Touched) {
        if touched.garden {
            self.garden.settle();
        }
        for key in &touched.shelves {
            self.stores.shelves.settle(key);
        }
        for id in &touched.heaps {
            if let Some(heap) = self.heaps.get_mut(id) {
                heap.timeline.settle();
                if heap.timeline.is_empty() {
                    self.heaps.remove(id);
                }
            }
        }
        for id in &touched.beds {
            if let Some(bed) = self.beds.get_mut(id) {
                bed.timeline.settle();
                if bed.timeline.is_empty() {
                    self.beds.remove(id);
                }
            }
        }
    }

    /// What the garden says of itself.
    #[must_use]
    pub fn garden(&self) -> &GardenNow {
        self.garden.now()
    }

    /// What is put by.
    #[must_use]
    pub fn stores(&self) -> &StoresNow {
        &self.stores
    }

    /// All heaps, by id: those whose start is known, in the order in which they were started.
    pub fn heaps(&self) -> impl Iterator<Item = &Heap> {
        self.heaps
            .values()
            .filter(|heap| heap.now().started.is_some())
    }

    /// Heaps that something tells of, but whose start has not arrived or was withdrawn.
    pub fn unknown_heaps(&self) -> impl Iterator<Item = &Heap> {
        self.heaps
            .values()
            .filter(|heap| heap.now().started.is_none())
    }

    /// A heap by its id.
    #[must_use]
    pub fn heap(&self, id: EventId) -> Option<&Heap> {
        self.heaps.get(&id)
    }

    /// All beds that are described, by id.
    pub fn beds(&self) -> impl Iterator<Item = &Bed> {
        self.beds
            .values()
            .filter(|bed| bed.now().described.is_some())
    }

    /// A bed by its id.
    #[must_use]
    pub fn bed(&self, id: EventId) -> Option<&Bed> {
        self.beds.get(&id)
    }

    /// Moves between heaps, in the order in which they happened.
    pub(crate) fn moves(&self) -> &BTreeMap<Place, Arc<Event>> {
        &self.moves
    }

    /// How many lines there are, each once.
    #[must_use]
    pub fn lines(&self) -> usize {
        self.events.lines()
    }

    /// The last stamp of all.
    #[must_use]
    pub fn latest(&self) -> Option<Stamp> {
        self.latest
    }

    /// An event with all that is known of it.
    #[must_use]
    pub fn entry(&self, id: EventId) -> Option<Entry<'_>> {
        self.events
            .slot(id)
            .filter(|slot| slot.accepted.is_some())
            .map(|slot| Entry {
                slot,
                events: &self.events,
            })
    }

    /// All events, in no order.
    pub fn entries(&self) -> impl Iterator<Item = Entry<'_>> {
        self.events
            .slots()
            .filter(|(_, slot)| slot.accepted.is_some())
            .map(|(_, slot)| Entry {
                slot,
                events: &self.events,
            })
    }

    /// Ids under which more than one event came.
    #[must_use]
    pub fn conflicts(&self) -> &BTreeSet<EventId> {
        self.events.conflicts()
    }

    /// The line of an id that is there, told by its digest; `None` when no event has this id.
    #[must_use]
    pub fn has(&self, id: EventId, digest: Digest) -> Option<bool> {
        let slot = self.events.slot(id)?;
        let accepted = slot.accepted.as_ref()?;
        Some(accepted.digest == digest || slot.others.iter().any(|other| other.digest == digest))
    }

    /// What "undo" takes back: the last thing that a device recorded and that still stands.
    /// Withdrawals are passed over: they are not taken back but made good by an amendment.
    #[must_use]
    pub fn last_of(&self, device: DeviceId) -> Option<&Arc<Event>> {
        self.entries()
            .filter(|entry| {
                entry.recorded().is_some_and(|event| {
                    event.stamp.device == device
                        && match event.content() {
                            Some(Content::Withdrawn(_)) | None => false,
                            Some(Content::Amended(_)) => !entry.is_withdrawn(),
                            Some(_) => entry.counts().is_some(),
                        }
                })
            })
            .filter_map(|entry| entry.recorded())
            .max_by_key(|event| (event.stamp, event.id))
    }

    /// The stamp behind which a correction of an event must stand, so that it counts even where a
    /// device's clock was ahead: the last of the event's own and of those that correct it.
    #[must_use]
    pub fn correction_follows(&self, id: EventId) -> Option<Stamp> {
        let entry = self.entry(id)?;
        let own = entry.recorded().map(|event| event.stamp);
        entry.corrections().map(|event| event.stamp).max().max(own)
    }
}

/// Which heaps and which bed an event tells of.
#[must_use]
pub fn concerns(id: EventId, content: &Content) -> ([Option<EventId>; 2], Option<EventId>) {
    let (heaps, bed) = match content {
        Content::HeapStarted(_) => ([Some(id), None], None),
        Content::Fed(fed) => ([Some(fed.heap), None], None),
        Content::Turned(turned) => ([Some(turned.heap), None], None),
        Content::Watered(watered) => ([Some(watered.heap), None], None),
        Content::Covered(covered) => ([Some(covered.heap), None], None),
        Content::Uncovered(uncovered) => ([Some(uncovered.heap), None], None),
        Content::Read(read) => ([Some(read.heap), None], None),
        Content::Tested(tested) => ([Some(tested.heap), None], None),
        Content::Moved(moved) => ([Some(moved.from), Some(moved.to)], None),
        Content::Rested(rested) => ([Some(rested.heap), None], None),
        Content::Harvested(harvested) => ([Some(harvested.heap), harvested.overs_to], None),
        Content::Spread(spread) => ([spread.heap, None], Some(spread.bed)),
        Content::BedDescribed(_) => ([None, None], Some(id)),
        Content::StockUsed(used) => ([used.heap, None], None),
        Content::Noted(noted) => ([noted.heap, None], noted.bed),
        _ => ([None, None], None),
    };
    match heaps {
        // Told once, though it stand there twice.
        [one, other] if one == other => ([one, None], bed),
        _ => (heaps, bed),
    }
}
