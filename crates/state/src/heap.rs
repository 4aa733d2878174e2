//! A heap: what it is now, and what went in.

use std::sync::Arc;

use heapwright_journal::content::{Cover, Enclosure, HeapStarted, Read, Stage};
use heapwright_journal::{Content, Event, EventId, Moment};

use crate::timeline::{Step, Timeline};

/// A heap as its journal has it.
#[derive(Clone, Debug, PartialEq)]
pub struct Heap {
    /// The event that started it.
    pub id: EventId,
    pub(crate) timeline: Timeline<Both>,
}

/// The fold needs to know whose history it is: a move has two heaps.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Both {
    id: EventId,
    now: HeapNow,
}

/// What a heap is now.
#[derive(Clone, Debug, PartialEq)]
pub struct HeapNow {
    /// As it was started; `None` while the start has not arrived.
    pub started: Option<Started>,
    /// Active, curing or finished.
    pub stage: Stage,
    /// What lies on it.
    pub cover: Cover,
    /// The last feed.
    pub last_fed: Option<Moment>,
    /// The last turning.
    pub last_turned: Option<Moment>,
    /// The last watering.
    pub last_watered: Option<Moment>,
    /// The last look.
    pub last_read: Option<Moment>,
    /// What the last look with a probe saw.
    pub last_probes: Option<(Moment, Read)>,
    /// The last harvest.
    pub last_harvested: Option<Moment>,
    /// How many feeds.
    pub feeds: u32,
    /// How many turnings.
    pub turns: u32,
    /// How many harvests.
    pub harvests: u32,
    /// How often it was emptied.
    pub emptied: u32,
    portions: Vec<Portion>,
    /// What is left of something that was there from the first portion on, share.
    left: f64,
}

/// How a heap was started.
#[derive(Clone, Debug, PartialEq)]
pub struct Started {
    /// When.
    pub moment: Moment,
    /// As what.
    pub heap: HeapStarted,
}

/// Something that went in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Portion {
    /// The feed, the watering, or the move from another heap.
    pub(crate) event: Arc<Event>,
    /// What was left of the first portion when this came in, share.
    left: f64,
}

impl Default for HeapNow {
    fn default() -> Self {
        Self {
            started: None,
            stage: Stage::Active,
            cover: Cover::None,
            last_fed: None,
            last_turned: None,
            last_watered: None,
            last_read: None,
            last_probes: None,
            last_harvested: None,
            feeds: 0,
            turns: 0,
            harvests: 0,
            emptied: 0,
            portions: Vec::new(),
            left: 1.0,
        }
    }
}

impl Heap {
    pub(crate) fn new(id: EventId) -> Self {
        Self {
            id,
            timeline: Timeline::new(Both {
                id,
                now: HeapNow::default(),
            }),
        }
    }

    /// What it is now.
    #[must_use]
    pub fn now(&self) -> &HeapNow {
        &self.timeline.now().now
    }

    /// Name to show; `None` while its start has not arrived, or when that was withdrawn.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        self.now()
            .started
            .as_ref()
            .map(|started| started.heap.name.as_str())
    }

    /// In what it stands.
    #[must_use]
    pub fn enclosure(&self) -> Option<&Enclosure> {
        self.now()
            .started
            .as_ref()
            .and_then(|started| started.heap.enclosure.as_ref())
    }

    /// What happened to it, in the order in which it happened.
    pub fn history(&self) -> impl DoubleEndedIterator<Item = &Arc<Event>> + ExactSizeIterator {
        self.timeline.history().iter().map(|(_, event)| event)
    }
}

/// Less than this share of a portion cannot be told from nothing.
const LEAST_LEFT: f64 = 1e-6;

impl HeapNow {
    /// What went in and how much of each is there still, share: moves are not followed.
    pub(crate) fn portions(&self) -> impl Iterator<Item = (&Arc<Event>, f64)> {
        self.portions
            .iter()
            .map(|portion| (&portion.event, self.left / portion.left))
    }

    fn put_in(&mut self, event: &Arc<Event>) {
        self.portions.push(Portion {
            event: Arc::clone(event),
            left: self.left,
        });
    }

    fn take_out(&mut self, share_pct: Option<f64>) {
        let share_pct = share_pct.unwrap_or(100.0);
        if share_pct >= 100.0 {
            self.portions.clear();
            self.left = 1.0;
            self.emptied += 1;
            return;
        }
        self.left *= 1.0 - share_pct / 100.0;
        // Products of shares must not run out of digits: what came last is the new measure, and
        // that of which less than a millionth is left is gone.
        if self.left < LEAST_LEFT {
            let left = self.left;
            self.portions
                .retain(|portion| left / portion.left >= LEAST_LEFT);
            for portion in &mut self.portions {
                portion.left /= left;
            }
            self.left = 1.0;
        }
    }

    /// Steps of what is told by the event alone, and not by which of two heaps it is.
    pub(crate) fn step(&mut self, id: EventId, event: &Arc<Event>) {
        let Some(content) = event.content() else {
            return;
        };
        let when = Some(event.happened);
        match content {
            Content::HeapStarted(heap) => {
                self.started = Some(Started {
                    moment: event.happened,
                    heap: heap.clone(),
                });
                if let Some(cover) = heap.enclosure.and_then(|enclosure| enclosure.cover) {
                    self.cover = cover;
                }
            }
            Content::Fed(_) => {
                self.put_in(event);
                self.last_fed = when;
                self.feeds += 1;
            }
            Content::Watered(_) => {
                self.put_in(event);
                self.last_watered = when;
            }
            Content::Turned(_) => {
                self.last_turned = when;
                self.turns += 1;
            }
            Content::Covered(covered) => self.cover = covered.cover.unwrap_or(Cover::Sheet),
            Content::Uncovered(_) => self.cover = Cover::None,
            Content::Read(read) => {
                self.last_read = when;
                if !read.probes.is_empty() {
                    self.last_probes = Some((event.happened, read.clone()));
                }
            }
            Content::Moved(moved) => {
                if moved.to == id {
                    self.put_in(event);
                } else {
                    self.take_out(moved.share_pct);
                }
            }
            Content::Rested(rested) => self.stage = rested.stage,
            Content::Harvested(harvested) if harvested.heap == id => {
                self.take_out(harvested.share_pct);
                self.last_harvested = when;
                self.harvests += 1;
            }
            _ => {}
        }
    }
}

impl Step for Both {
    fn fresh(&self) -> Self {
        Self {
            id: self.id,
            now: HeapNow::default(),
        }
    }

    fn step(&mut self, event: &Arc<Event>) {
        self.now.step(self.id, event);
    }

    fn is_small(&self) -> bool {
        self.now.portions.is_empty()
    }
}
