//! What lies in a heap as lots for an account: what went in, how much of it is there, how old it is.

use std::collections::BTreeMap;
use std::sync::Arc;

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::accounts::{Lot, progress_of_age};
use heapwright_garden::{Found, FoundPart, Garden, Stuff};
use heapwright_journal::content::{Cover, Harvested};
use heapwright_journal::{Content, Event, EventId};
use heapwright_state::{Contents, Share, State};

use crate::forecast::days_between;

/// Over how many moves between heaps what was moved is followed.
const MOVES_DEEP: u32 = 20;
/// Less of a feed than this counts as gone, share.
const GONE: f64 = 1e-6;

/// A feed or watering in a heap.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Portion {
    /// The feed or watering.
    pub event: Arc<Event>,
    /// How much of it came into this heap, share.
    pub came: f64,
    /// How much of it is there, share.
    pub left: f64,
}

/// A heap at a moment, since it was last empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Inside {
    /// What went in and is not all gone.
    pub portions: Vec<Portion>,
    /// What befell it, in order.
    pub events: Vec<Arc<Event>>,
    /// When something last came in, fed or moved from another heap [ms]; `None` while it is empty.
    pub last_arrival_ms: Option<i64>,
    /// True when something came over more moves than are followed.
    pub cut: bool,
}

/// Up to where a history is read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Until {
    /// All of it up to an instant [ms].
    Instant(i64),
    /// Up to an event, which is left out.
    Before(EventId),
}

/// What lies in a heap.
pub(crate) fn inside(state: &State, heap: EventId, until: Until) -> Inside {
    let mut known = BTreeMap::new();
    inside_of(state, heap, until, MOVES_DEEP, &mut known)
}

fn inside_of(
    state: &State,
    heap: EventId,
    until: Until,
    deep: u32,
    known: &mut BTreeMap<EventId, Inside>,
) -> Inside {
    let mut there = Inside::default();
    let Some(found) = state.heap(heap) else {
        return there;
    };
    for event in found.history() {
        match until {
            Until::Instant(instant) if event.happened.instant_ms > instant => break,
            Until::Before(id) if event.id == id => break,
            _ => {}
        }
        let Some(content) = event.content() else {
            continue;
        };
        there.events.push(Arc::clone(event));
        match content {
            Content::Fed(_) | Content::Watered(_) => {
                if matches!(content, Content::Fed(_)) {
                    there.arrived(event);
                }
                there.portions.push(Portion {
                    event: Arc::clone(event),
                    came: 1.0,
                    left: 1.0,
                });
            }
            Content::Moved(moved) if moved.to == heap => {
                // Whatever it was, and however long ago it was fed to its first heap.
                there.arrived(event);
                let share = moved.share_pct.unwrap_or(100.0) / 100.0;
                let Some(deeper) = deep.checked_sub(1) else {
                    there.cut = true;
                    continue;
                };
                let from = match known.get(&event.id) {
                    Some(from) => from.clone(),
                    None => {
                        let before = Until::Before(event.id);
                        let from = inside_of(state, moved.from, before, deeper, known);
                        known.insert(event.id, from.clone());
                        from
                    }
                };
                there.cut |= from.cut;
                there
                    .portions
                    .extend(from.portions.into_iter().map(|portion| Portion {
                        came: portion.left * share,
                        left: portion.left * share,
                        ..portion
                    }));
            }
            Content::Moved(moved) => there.take_out(moved.share_pct),
            Content::Harvested(harvested) if harvested.heap == heap => {
                there.take_out(harvested.share_pct);
            }
            _ => {}
        }
    }
    there
}

impl Inside {
    fn take_out(&mut self, share_pct: Option<f64>) {
        let left = 1.0 - share_pct.unwrap_or(100.0).clamp(0.0, 100.0) / 100.0;
        for portion in &mut self.portions {
            portion.left *= left;
        }
        self.portions.retain(|portion| portion.left > GONE);
        // What befell what is gone tells nothing of what comes.
        if left <= 0.0 {
            self.events.clear();
            self.last_arrival_ms = None;
        }
    }

    fn arrived(&mut self, event: &Event) {
        self.last_arrival_ms = self.last_arrival_ms.max(Some(event.happened.instant_ms));
    }
}

/// One material of a heap.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Source {
    /// What it is to the engine, as much as is there.
    pub found: FoundPart,
    /// How far it has come by its age, 0 to 1.
    pub progress: f64,
    /// How much was taken out or moved away, over what is there.
    pub taken_over_left: f64,
}

/// All that lies in a heap.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Lots {
    /// Each material once.
    pub sources: Vec<Source>,
    /// Water that was poured on what is there [kg].
    pub water_kg: f64,
    /// What cannot be used, by name, each once.
    pub left_out: Vec<String>,
    /// True when something came over more moves than are followed.
    pub cut: bool,
}

impl Lots {
    /// Of what lies in a heap at an instant.
    pub(crate) fn of(
        catalogue: &Catalogue,
        garden: &Garden,
        state: &State,
        inside: &Inside,
        at_ms: i64,
    ) -> Self {
        let mut lots = Self {
            cut: inside.cut,
            ..Self::default()
        };
        // What was said, how much of it is there, times how far it has come, and was in all.
        let mut all: Vec<(Found, f64, f64)> = Vec::new();
        for portion in &inside.portions {
            let once = Contents {
                shares: vec![Share {
                    event: Arc::clone(&portion.event),
                    share: portion.left,
                }],
                cut: false,
            };
            let (parts, water_kg) = garden.parts_of(catalogue, state, &once);
            lots.water_kg += water_kg;
            let progress = progress_of_age(days_between(portion.event.happened.instant_ms, at_ms));
            for part in parts {
                let count = part.amount.count;
                let (come, came) = (count * progress, count * portion.came / portion.left);
                match all.iter_mut().find(|(other, ..)| {
                    other.stuff == part.stuff && other.amount.unit == part.amount.unit
                }) {
                    Some((other, sum_come, sum_came)) => {
                        other.amount.count += count;
                        *sum_come += come;
                        *sum_came += came;
                    }
                    None => all.push((part, come, came)),
                }
            }
        }
        for (part, come, came) in all {
            let count = part.amount.count;
            match garden.find(catalogue, &part) {
                Ok(found) if count > 0.0 => lots.sources.push(Source {
                    found,
                    progress: (come / count).clamp(0.0, 1.0),
                    taken_over_left: (came / count - 1.0).max(0.0),
                }),
                Ok(_) => {}
                Err(_) => lots.left_out.push(match part.stuff {
                    Stuff::Known { material, .. } => material.as_str().to_owned(),
                    Stuff::Custom(custom) => custom.name,
                }),
            }
        }
        lots.left_out.sort();
        lots.left_out.dedup();
        lots
    }

    /// For the engine, by age.
    pub(crate) fn by_age(&self) -> Vec<Lot> {
        self.sources
            .iter()
            .map(|source| Lot {
                part: source.found.part.clone(),
                progress: source.progress,
            })
            .collect()
    }

    /// For the engine, as it will be when it is finished.
    pub(crate) fn finished(&self) -> Vec<Lot> {
        self.sources
            .iter()
            .map(|source| Lot {
                part: source.found.part.clone(),
                progress: 1.0,
            })
            .collect()
    }
}

/// True when rain falls on a heap: neither lid nor roof nor sheet lies on it.
pub(crate) fn rained_on(state: &State, heap: EventId) -> bool {
    state
        .heap(heap)
        .is_none_or(|heap| matches!(heap.now().cover, Cover::None | Cover::Other))
}

/// All harvests of the garden of which the amount is known, the last ones, in order.
pub(crate) fn harvests(state: &State, most: usize) -> Vec<(&Arc<Event>, &Harvested)> {
    let mut all: Vec<(&Arc<Event>, &Harvested)> = state
        .heaps()
        .flat_map(|heap| heap.history().map(move |event| (heap.id, event)))
        .filter_map(|(heap, event)| match event.content() {
            Some(Content::Harvested(harvested))
                if harvested.heap == heap && harvested.amount.is_some() =>
            {
                Some((event, harvested))
            }
            _ => None,
        })
        .collect();
    all.sort_by_key(|(event, _)| (event.happened.instant_ms, event.id));
    let skip = all.len().saturating_sub(most);
    all.split_off(skip)
}
