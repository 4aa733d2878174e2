//! What is in a heap: every feed, and how much of it is there still.

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use heapwright_journal::{Content, Event, EventId};

use crate::State;
use crate::heap::HeapNow;
use crate::timeline::Place;

/// A feed or a watering, and the share of it that is there.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// The feed or watering.
    pub event: Arc<Event>,
    /// How much of it is there, above 0 to 1: what was harvested or moved away counts no more. What
    /// rots and dries is not known here.
    pub share: f64,
}

/// What went into a heap.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Contents {
    /// Each feed and watering once.
    pub shares: Vec<Share>,
    /// True when some of it came from heaps over more moves than are followed.
    pub cut: bool,
}

/// The most moves between heaps that are followed, the last ones; a garden makes a few a year.
const MOST_MOVES: usize = 1000;

impl State {
    /// What went into a heap, as far as it was not taken out again; moves between heaps are
    /// followed.
    #[must_use]
    pub fn contents(&self, heap: EventId) -> Contents {
        let Some(heap) = self.heap(heap) else {
            return Contents::default();
        };
        self.contents_of(heap.now())
    }

    /// What was in a heap just before compost was last taken out of it, and what is in it now; each
    /// feed once, with the greater share.
    #[must_use]
    pub fn contents_since_harvest(&self, heap: EventId) -> Contents {
        let mut all = self.contents(heap);
        let harvested = self.heap(heap).and_then(|heap| {
            let history = heap.timeline.history().iter().rev();
            let mut harvests = history.filter(|(_, event)| {
                matches!(event.content(), Some(Content::Harvested(of)) if of.heap == heap.id)
            });
            harvests.next().map(|(place, _)| *place)
        });
        let Some(place) = harvested else {
            return all;
        };
        let then = self.contents_of(&self.heap_before(heap, place));
        all.cut |= then.cut;
        for share in then.shares {
            match all
                .shares
                .iter_mut()
                .find(|now| now.event.id == share.event.id)
            {
                Some(now) => now.share = now.share.max(share.share),
                None => all.shares.push(share),
            }
        }
        all.shares.sort_by_key(|share| Place::of(&share.event));
        all
    }

    fn contents_of(&self, now: &HeapNow) -> Contents {
        let mut moved = HashMap::new();
        let comes_from_others = now
            .portions()
            .any(|(event, _)| matches!(event.content(), Some(Content::Moved(_))));
        if comes_from_others {
            let skip = self.moves().len().saturating_sub(MOST_MOVES);
            for (place, event) in self.moves().iter().skip(skip) {
                if let Some(Content::Moved(of)) = event.content() {
                    let share = of.share_pct.unwrap_or(100.0) / 100.0;
                    let mut there = resolved(&self.heap_before(of.from, *place), &moved);
                    for one in &mut there.shares {
                        one.share *= share;
                    }
                    moved.insert(event.id, there);
                }
            }
        }
        resolved(now, &moved)
    }

    /// What a heap was just before an event.
    fn heap_before(&self, heap: EventId, place: Place) -> HeapNow {
        let mut now = HeapNow::default();
        if let Some(heap) = self.heap(heap) {
            let history = heap.timeline.history();
            let end = history.partition_point(|(other, _)| *other < place);
            for (_, event) in &history[..end] {
                now.step(heap.id, event);
            }
        }
        now
    }
}

/// Feeds and waterings of a heap, when those that its moves brought are known.
fn resolved(now: &HeapNow, moved: &HashMap<EventId, Contents>) -> Contents {
    // The same feed may come on more than one way.
    let mut shares: BTreeMap<Place, Share> = BTreeMap::new();
    let mut cut = false;
    let mut put = |event: &Arc<Event>, share: f64| {
        shares
            .entry(Place::of(event))
            .or_insert_with(|| Share {
                event: Arc::clone(event),
                share: 0.0,
            })
            .share += share;
    };
    for (event, share) in now.portions() {
        if !matches!(event.content(), Some(Content::Moved(_))) {
            put(event, share);
            continue;
        }
        match moved.get(&event.id) {
            Some(there) => {
                cut |= there.cut;
                for one in &there.shares {
                    put(&one.event, one.share * share);
                }
            }
            None => cut = true,
        }
    }
    Contents {
        shares: shares.into_values().collect(),
        cut,
    }
}
