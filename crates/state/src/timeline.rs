//! What happened, in the order in which it happened.

use std::collections::HashMap;
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
pub(crate) trait Step: Clone + PartialEq {
    /// As it is before anything happened.
    fn fresh(&self) -> Self;

    /// What the event changes.
    fn step(&mut self, event: &Arc<Event>);

    /// True when a copy costs next to nothing: such a state is kept now and then, so that what
    /// comes late has not all of the history folded anew.
    fn is_small(&self) -> bool {
        false
    }
}

/// A history and what was folded from it.
///
/// What is new at the end is folded on; what comes in between has folded anew what lies between the
/// states that were kept before and behind it, and further as long as the states differ from what
/// they were. Either way the result is the fold of the history in its order.
#[derive(Clone, Debug)]
pub(crate) struct Timeline<Now> {
    /// In order as far as it is folded.
    history: Vec<(Place, Arc<Event>)>,
    now: Now,
    folded: usize,
    /// Small states, with how much of the history was folded then.
    marks: Vec<(usize, Now)>,
    /// What is to be taken out.
    gone: Vec<Arc<Event>>,
}

/// How much of a history lies at least between two states that are kept.
const BETWEEN_MARKS: usize = 32;

/// Up to so many changes are made one by one.
const FEW: usize = 8;

/// What was folded before something in between changed.
struct Former<Now> {
    /// Behind so much of the history nothing has changed.
    changed: usize,
    /// How much was folded.
    folded: usize,
    /// States that were kept behind the change, the first one last.
    later: Vec<(usize, Now)>,
    now: Now,
}

impl<Now: PartialEq> Former<Now> {
    /// True when the state behind `folded` events of `length` is the same as before the change: then
    /// all that follows is, too.
    fn is_reached(&mut self, folded: usize, length: usize, now: &Now) -> bool {
        // Where a state that was kept stands now; those before the end of the change tell nothing.
        let behind = |was: usize| (was + length).checked_sub(self.folded);
        while let Some((was, state)) = self.later.last() {
            match behind(*was) {
                Some(at) if at >= self.changed && at >= folded => {
                    return at == folded && state == now;
                }
                _ => {}
            }
            self.later.pop();
        }
        false
    }
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
            marks: Vec::new(),
            gone: Vec::new(),
        }
    }

    /// Adds an event; [`Timeline::settle`] must follow.
    pub(crate) fn add(&mut self, event: &Arc<Event>) {
        self.history.push((Place::of(event), Arc::clone(event)));
    }

    /// Takes an event out that was added; [`Timeline::settle`] must follow.
    pub(crate) fn remove(&mut self, event: &Arc<Event>) {
        self.gone.push(Arc::clone(event));
    }

    /// Brings order and fold up to date.
    pub(crate) fn settle(&mut self) {
        let new = self.history[self.folded..].iter().map(|(place, _)| *place);
        let gone = self.gone.iter().map(|event| Place::of(event));
        let (mut earliest, mut latest) = (None, None);
        for place in new.chain(gone) {
            earliest = Some(earliest.map_or(place, |earliest: Place| earliest.min(place)));
            latest = latest.max(Some(place));
        }
        let (Some(earliest), Some(latest)) = (earliest, latest) else {
            return;
        };
        let folded_before = self.folded;
        if self.history.len() - self.folded + self.gone.len() <= FEW {
            self.change_few();
        } else {
            self.change_many();
        }
        let unchanged = self.history.partition_point(|(place, _)| *place < earliest);
        let former = (unchanged < folded_before).then(|| {
            let (later, now) = self.go_back(unchanged);
            Former {
                changed: self.history.partition_point(|(place, _)| *place <= latest),
                folded: folded_before,
                later,
                now,
            }
        });
        self.fold_on(former);
    }

    /// Puts new events in and takes others out, each at its place.
    fn change_few(&mut self) {
        let new = self.history.split_off(self.folded);
        for (place, event) in new {
            let at = self.history.partition_point(|(other, _)| *other <= place);
            self.history.insert(at, (place, event));
        }
        for event in std::mem::take(&mut self.gone) {
            let place = Place::of(&event);
            let first = self.history.partition_point(|(other, _)| *other < place);
            let found = self.history[first..]
                .iter()
                .take_while(|(other, _)| *other == place)
                .position(|(_, other)| Arc::ptr_eq(other, &event));
            if let Some(found) = found {
                self.history.remove(first + found);
            }
        }
    }

    /// The same for all at once.
    fn change_many(&mut self) {
        self.history[self.folded..].sort_unstable_by_key(|(place, _)| *place);
        // Two sorted runs: this sort takes them as such.
        self.history.sort_by_key(|(place, _)| *place);
        if self.gone.is_empty() {
            return;
        }
        // What was added, taken out and added again is there once.
        let mut gone: HashMap<*const Event, usize> = HashMap::new();
        for event in &self.gone {
            *gone.entry(Arc::as_ptr(event)).or_default() += 1;
        }
        self.history
            .retain(|(_, event)| match gone.get_mut(&Arc::as_ptr(event)) {
                Some(left) if *left > 0 => {
                    *left -= 1;
                    false
                }
                _ => true,
            });
        self.gone.clear();
    }

    /// Takes up the last state that holds for a beginning of the history; gives what was folded
    /// further.
    fn go_back(&mut self, unchanged: usize) -> (Vec<(usize, Now)>, Now) {
        let kept = self
            .marks
            .partition_point(|(folded, _)| *folded <= unchanged);
        let mut later = self.marks.split_off(kept);
        later.reverse();
        let (folded, now) = match self.marks.last() {
            Some((folded, now)) => (*folded, now.clone()),
            None => (0, self.now.fresh()),
        };
        self.folded = folded;
        (later, std::mem::replace(&mut self.now, now))
    }

    fn fold_on(&mut self, mut former: Option<Former<Now>>) {
        let mut last_mark = self.marks.last().map_or(0, |(folded, _)| *folded);
        for at in self.folded..self.history.len() {
            self.now.step(&self.history[at].1);
            self.folded = at + 1;
            let is_as_it_was = former.as_mut().is_some_and(|former| {
                former.is_reached(self.folded, self.history.len(), &self.now)
            });
            if is_as_it_was && let Some(former) = former {
                let length = self.history.len();
                let later = former.later.into_iter().rev();
                self.marks
                    .extend(later.map(|(folded, now)| (folded + length - former.folded, now)));
                self.now = former.now;
                break;
            }
            if self.folded >= last_mark + BETWEEN_MARKS && self.now.is_small() {
                last_mark = self.folded;
                self.marks.push((last_mark, self.now.clone()));
            }
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
