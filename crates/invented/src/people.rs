//! Who works there, and what their devices write down.

use std::cmp::Reverse;
use std::collections::{BinaryHeap, VecDeque};

use heapwright_journal::{Clock, Content, DeviceId, Event, EventId, Moment, Stamp, What};

use crate::chance::Chance;

/// First names that everybody has heard of, and nobody in particular.
pub(crate) const NAMES: [&str; 20] = [
    "Ann", "Ben", "Carla", "Dan", "Ella", "Finn", "Grace", "Hugo", "Iris", "Jon", "Kate", "Leo",
    "Mona", "Nils", "Olga", "Paul", "Rosa", "Sam", "Tess", "Vera",
];

/// Milliseconds of a day.
pub(crate) const DAY_MS: i64 = 24 * 3600 * 1000;

/// Somebody with a device.
#[derive(Clone, Debug)]
struct Person {
    /// The event that described them.
    id: Option<EventId>,
    clock: Clock,
    /// How far the clock of the device goes wrong [ms].
    off_ms: i64,
}

/// Something that happened and is written down at some time.
#[derive(Clone, Debug)]
struct Draft {
    person: usize,
    id: EventId,
    happened: Moment,
    recorded_ms: i64,
    offset_min: i16,
    batch: Option<EventId>,
    content: Content,
}

/// Writes down what happens, on the devices of all people.
#[derive(Clone, Debug)]
pub(crate) struct Scribe {
    chance: Chance,
    people: Vec<Person>,
    /// Drafts by the time at which they will be recorded.
    order: BinaryHeap<Reverse<(i64, usize)>>,
    drafts: Vec<Option<Draft>>,
    ready: VecDeque<Event>,
    last: Option<Stamp>,
    left: usize,
    end_ms: i64,
}

/// What to write down.
pub(crate) struct Entry {
    pub(crate) person: usize,
    pub(crate) happened: Moment,
    /// After what time it was recorded [ms].
    pub(crate) after_ms: i64,
    pub(crate) batch: Option<EventId>,
}

impl Scribe {
    /// For some people, a number of events and nothing recorded after `end_ms`.
    pub(crate) fn new(seed: u64, people: usize, events: usize, end_ms: i64) -> Self {
        let mut chance = Chance::new(seed, "people");
        let people = (0..people.clamp(1, NAMES.len()))
            .map(|_| {
                let half = |chance: &mut Chance| (chance.unit() * 4_294_967_296.0) as u64;
                let device = DeviceId(half(&mut chance) << 32 | half(&mut chance));
                Person {
                    id: None,
                    clock: Clock::new(device),
                    off_ms: chance.between(-90_000.0, 90_000.0) as i64,
                }
            })
            .collect();
        Self {
            chance,
            people,
            order: BinaryHeap::new(),
            drafts: Vec::new(),
            ready: VecDeque::new(),
            last: None,
            left: events,
            end_ms,
        }
    }

    /// How many people there are.
    pub(crate) fn people(&self) -> usize {
        self.people.len()
    }

    /// From now on, a person goes by this id.
    pub(crate) fn introduce(&mut self, person: usize, id: EventId) {
        self.people[person].id = Some(id);
    }

    /// Notes what happened; `None` when all events are written.
    pub(crate) fn note(&mut self, entry: &Entry, content: Content) -> Option<EventId> {
        self.left = self.left.checked_sub(1)?;
        let recorded_ms = (entry.happened.instant_ms + entry.after_ms).min(self.end_ms);
        let random = self.chance.bytes();
        let clock_ms = recorded_ms + self.people[entry.person].off_ms;
        let id = EventId::new(u64::try_from(clock_ms).unwrap_or(0), &random);
        self.order.push(Reverse((recorded_ms, self.drafts.len())));
        self.drafts.push(Some(Draft {
            person: entry.person,
            id,
            happened: entry.happened,
            recorded_ms,
            offset_min: entry.happened.offset_min,
            batch: entry
                .batch
                .map(|first| if first == Self::SELF { id } else { first }),
            content,
        }));
        Some(id)
    }

    /// Stands for the first event of a batch, which is not known before it is noted.
    pub(crate) const SELF: EventId = EventId::new(0, &[0; 10]);

    /// Writes all that is recorded up to a time, and lets the devices hear of each other.
    pub(crate) fn write(&mut self, until_ms: i64) {
        while let Some(Reverse((recorded_ms, place))) = self.order.peek().copied() {
            if recorded_ms > until_ms {
                break;
            }
            self.order.pop();
            if let Some(event) = self.drafts[place]
                .take()
                .and_then(|draft| self.event(draft))
            {
                self.last = self.last.max(Some(event.stamp));
                self.ready.push_back(event);
            }
        }
        if self.order.is_empty() {
            self.drafts.clear();
        }
        let Some(last) = self.last else {
            return;
        };
        for person in &mut self.people {
            // Not every device is in the net on every day.
            if self.chance.happens(0.8) {
                let now_ms = u64::try_from(until_ms + person.off_ms).unwrap_or(0);
                person.clock.see(last, now_ms);
            }
        }
    }

    /// Writes all that is left: nothing is recorded after the end.
    pub(crate) fn write_all(&mut self) {
        self.write(self.end_ms);
    }

    fn event(&mut self, draft: Draft) -> Option<Event> {
        let person = &mut self.people[draft.person];
        let now_ms = draft.recorded_ms + person.off_ms;
        Some(Event {
            id: draft.id,
            stamp: person.clock.tick(u64::try_from(now_ms).ok()?),
            happened: draft.happened,
            recorded: Moment::new(now_ms, draft.offset_min)?,
            by: person.id,
            batch: draft.batch,
            what: What::Known(draft.content),
        })
    }

    /// The next event that is written.
    pub(crate) fn next(&mut self) -> Option<Event> {
        self.ready.pop_front()
    }
}
