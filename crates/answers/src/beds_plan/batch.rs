//! Of which batch is the compost of a heap, and what was in it?
//!
//! What was taken out and not spread yet is of the harvests, the last first; else the compost is what
//! lies in the heap, or what was last taken out of it. What goes in afterwards tells nothing of it.

use std::sync::Arc;

use heapwright_catalogue::Catalogue;
use heapwright_engine::finish::verdict::Verdict;
use heapwright_engine::spreading::bed::Maturity;
use heapwright_garden::Garden;
use heapwright_journal::content::{Harvested, Tested};
use heapwright_journal::{Content, Event, EventId, Moment};
use heapwright_state::{Heap, State};
use heapwright_terms::{Caution, Group, Material, MaterialId};

use crate::before_use::{BeforeUse, before_use_of};
use crate::lots::{Inside, Until, inside};
use crate::question::QuestionError;
use crate::ready::{judged, signs_of};

/// The batches that the compost may be of; the last one first.
pub(super) struct Batches(Vec<Inside>);

impl Batches {
    /// Of a heap, of which so much was taken out and not spread [m3].
    pub(super) fn of(
        state: &State,
        heap: EventId,
        now: Moment,
        left_m3: f64,
        volume_m3: &dyn Fn(&Harvested) -> Option<f64>,
    ) -> Self {
        let present = inside(state, heap, Until::Instant(now.instant_ms));
        let Some(heap) = state.heap(heap) else {
            return Self(vec![present]);
        };
        let past: Vec<&Arc<Event>> = heap
            .history()
            .filter(|event| event.happened.instant_ms <= now.instant_ms)
            .collect();
        let mut batches = Vec::new();
        let mut found_m3 = 0.0;
        for event in past.iter().rev() {
            let harvested = match event.content() {
                Some(Content::Harvested(harvested)) if harvested.heap == heap.id => Some(harvested),
                Some(Content::Moved(moved)) if moved.from == heap.id => None,
                _ => continue,
            };
            let volume_m3 = harvested.and_then(volume_m3);
            let is_of_it = if left_m3 > 0.0 {
                harvested.is_some()
            } else if present.portions.is_empty() {
                true
            } else {
                // Nobody can tell whether all of it was spread.
                harvested.is_some() && volume_m3.is_none()
            };
            let batch = is_of_it.then(|| taken(state, heap, &past, event));
            match batch {
                Some(batch) if !batch.portions.is_empty() || batch.cut => {
                    found_m3 += volume_m3.unwrap_or(0.0);
                    batches.push(batch);
                }
                _ => {}
            }
            let is_enough = if left_m3 > 0.0 {
                found_m3 >= left_m3
            } else {
                // Only the last harvest counts beside what lies there.
                !batches.is_empty() || (!present.portions.is_empty() && harvested.is_some())
            };
            if is_enough {
                break;
            }
        }
        if left_m3 <= 0.0 && !present.portions.is_empty() {
            batches.insert(0, present);
        } else if batches.is_empty() {
            batches.push(present);
        }
        Self(batches)
    }

    /// Did raw manure or the like go into any of them? `None` when that cannot be told.
    pub(super) fn held_raw(&self, catalogue: &Catalogue, garden: &Garden) -> Option<bool> {
        let each: Vec<Option<bool>> = self
            .0
            .iter()
            .map(|batch| held_raw(catalogue, garden, batch))
            .collect();
        if each.contains(&Some(true)) {
            return Some(true);
        }
        each.iter()
            .all(|held| *held == Some(false))
            .then_some(false)
    }

    /// What of all of them must be seen to before use.
    pub(super) fn before_use(&self, catalogue: &Catalogue, garden: &Garden) -> Vec<BeforeUse> {
        let mut events: Vec<&Arc<Event>> = Vec::new();
        let portions = self.0.iter().flat_map(|batch| &batch.portions);
        for event in portions.map(|portion| &portion.event) {
            // What was only partly taken out lies in several of them.
            if events.iter().all(|known| known.id != event.id) {
                events.push(event);
            }
        }
        before_use_of(catalogue, garden, events.into_iter().map(Arc::as_ref))
    }

    /// Tests of the last batch, in order: those before anything of it went in are of an earlier one.
    pub(super) fn tests(&self) -> impl Iterator<Item = &Tested> {
        let events = self.0.first().map_or(&[][..], |batch| &batch.events);
        let is_in = |event: &Arc<Event>| {
            matches!(
                event.content(),
                Some(Content::Fed(_) | Content::Moved(_) | Content::Watered(_))
            )
        };
        let start = events.iter().position(is_in).unwrap_or(0);
        events[start..]
            .iter()
            .filter_map(|event| match event.content() {
                Some(Content::Tested(tested)) => Some(tested),
                _ => None,
            })
    }

    /// Is the last batch mature? Judged as `ready` judges.
    pub(super) fn maturity(
        &self,
        state: &State,
        heap: EventId,
        now: Moment,
    ) -> Result<Maturity, QuestionError> {
        let Some(batch) = self.0.first() else {
            return Ok(Maturity::Unknown);
        };
        let signs = signs_of(state, heap, batch, now)?;
        Ok(match judged(&signs).verdict {
            Verdict::Ready => Maturity::Mature,
            Verdict::NotReady => Maturity::Immature,
            Verdict::Nearly | Verdict::Untested => Maturity::Unknown,
        })
    }
}

/// What lay in a heap just before an event took of it, with the tests of it that came later.
fn taken(state: &State, heap: &Heap, past: &[&Arc<Event>], event: &Event) -> Inside {
    let mut there = inside(state, heap.id, Until::Before(event.id));
    let later = past.iter().skip_while(|other| other.id != event.id).skip(1);
    for later in later {
        match later.content() {
            Some(Content::Tested(_)) => there.events.push(Arc::clone(later)),
            Some(Content::Fed(_)) => break,
            Some(Content::Moved(moved)) if moved.to == heap.id => break,
            _ => {}
        }
    }
    there
}

fn held_raw(catalogue: &Catalogue, garden: &Garden, batch: &Inside) -> Option<bool> {
    let mut is_known = !batch.portions.is_empty() && !batch.cut;
    let mut is_raw = false;
    for portion in &batch.portions {
        let Some(Content::Fed(fed)) = portion.event.content() else {
            continue;
        };
        is_known &= !fed.parts.is_empty();
        for part in &fed.parts {
            let material = part
                .material
                .as_ref()
                .and_then(|id| garden.material(catalogue, &MaterialId(id.clone())));
            match material {
                Some(material) => is_raw |= is_of_animals(&material),
                None => is_known = false,
            }
        }
    }
    match (is_raw, is_known) {
        (true, _) => Some(true),
        (false, true) => Some(false),
        (false, false) => None,
    }
}

fn is_of_animals(material: &Material) -> bool {
    material.cautions.contains(&Caution::PathogenRisk)
        || matches!(material.group, Group::AnimalManure | Group::AnimalProduct)
}
