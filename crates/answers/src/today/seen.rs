//! What does the journal show of a heap, since it was last empty?

use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_journal::content::{Creature, Look, ProbePlace, Read, Smell, Squeeze, Stage};
use heapwright_journal::{Content, Event, EventId, Moment};
use heapwright_state::{Heap, State};

use super::limits::SENSES_HOLD_D;
use crate::forecast::days_between;
use crate::lots::{Inside, Until, inside};

/// A heap and all that a need may rest on.
pub(super) struct Seen<'a> {
    pub catalogue: &'a Catalogue,
    pub garden: &'a Garden,
    pub state: &'a State,
    pub heap: &'a Heap,
    pub id: EventId,
    pub now: Moment,
    pub there: Inside,
}

/// Something that was seen, and its place in the order of events.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sight<T> {
    pub what: T,
    pub at: Moment,
    pub place: usize,
}

impl<'a> Seen<'a> {
    pub fn of(
        catalogue: &'a Catalogue,
        garden: &'a Garden,
        state: &'a State,
        heap: &'a Heap,
        now: Moment,
    ) -> Self {
        Self {
            catalogue,
            garden,
            state,
            heap,
            id: heap.id,
            now,
            there: inside(state, heap.id, Until::Instant(now.instant_ms)),
        }
    }

    pub fn is_empty(&self) -> bool {
        self.there.portions.is_empty()
    }

    pub fn is_curing(&self) -> bool {
        self.heap.now().stage == Stage::Curing
    }

    /// How long ago [d].
    pub fn ago_d(&self, at: Moment) -> f64 {
        days_between(at.instant_ms, self.now.instant_ms)
    }

    fn events(&self) -> impl DoubleEndedIterator<Item = (usize, &Event)> + ExactSizeIterator {
        self.there
            .events
            .iter()
            .enumerate()
            .map(|(place, event)| (place, &**event))
    }

    /// The last event of which something is told.
    pub fn last<T>(&self, told: impl Fn(&Content) -> Option<T>) -> Option<Sight<T>> {
        self.events().rev().find_map(|(place, event)| {
            Some(Sight {
                what: told(event.content()?)?,
                at: event.happened,
                place,
            })
        })
    }

    fn last_read<T>(&self, told: impl Fn(&Read) -> Option<T>) -> Option<Sight<T>> {
        self.last(|content| match content {
            Content::Read(read) => told(read),
            _ => None,
        })
    }

    /// True when something of that kind happened behind a place.
    pub fn since(&self, place: usize, is: impl Fn(&Content) -> bool) -> bool {
        self.events()
            .skip(place + 1)
            .any(|(_, event)| event.content().is_some_and(&is))
    }

    /// When something of that kind first happened behind a place.
    pub fn first_since(&self, place: usize, is: impl Fn(&Content) -> bool) -> Option<Moment> {
        self.events()
            .skip(place + 1)
            .find(|(_, event)| event.content().is_some_and(&is))
            .map(|(_, event)| event.happened)
    }

    /// What was poured behind a place [L], and when last.
    pub fn poured_since(&self, place: Option<usize>) -> Option<(f64, Moment)> {
        let from = place.map_or(0, |place| place + 1);
        let poured = self
            .events()
            .skip(from)
            .filter_map(|(_, event)| match event.content() {
                Some(Content::Watered(watered)) => Some((watered.water_l, event.happened)),
                Some(Content::Fed(fed)) => Some((fed.water_l?, event.happened)),
                _ => None,
            });
        poured.reduce(|(sum_l, _), (more_l, at)| (sum_l + more_l, at))
    }

    /// What was seen, while it still speaks of today.
    fn fresh<T>(&self, sight: Option<Sight<T>>, holds_d: f64) -> Option<Sight<T>> {
        sight.filter(|sight| self.ago_d(sight.at) <= holds_d)
    }

    /// The last look of any kind.
    pub fn last_look(&self) -> Option<Moment> {
        self.last_read(|_| Some(())).map(|sight| sight.at)
    }

    /// The hottest that a probe showed, by the last reading of each place of the heap [degC]. A reading
    /// of the core, the hottest place, stands for the whole heap; one of the edge tells of the edge
    /// alone, and withdraws nothing that was seen elsewhere.
    pub fn hottest(&self) -> Option<Sight<f64>> {
        let mut shown: Vec<(Option<ProbePlace>, Sight<f64>)> = Vec::new();
        for (place, event) in self.events() {
            let Some(Content::Read(read)) = event.content() else {
                continue;
            };
            if core_of(read).is_some() {
                shown.clear();
            }
            let measured = |spot| read.probes.iter().any(|probe| probe.place == spot);
            shown.retain(|(spot, _)| !measured(*spot));
            shown.extend(read.probes.iter().map(|probe| {
                let sight = Sight {
                    what: probe.temperature_c,
                    at: event.happened,
                    place,
                };
                (probe.place, sight)
            }));
        }
        let sights = shown.into_iter().map(|(_, sight)| sight);
        // Of several that are as hot the last one.
        sights.reduce(|hot, other| if other.what >= hot.what { other } else { hot })
    }

    /// What each look showed of the core, behind a place [degC].
    pub fn cores_since(&self, place: Option<usize>) -> Vec<Sight<f64>> {
        let from = place.map_or(0, |place| place + 1);
        self.events()
            .skip(from)
            .filter_map(|(place, event)| match event.content() {
                Some(Content::Read(read)) => Some(Sight {
                    what: core_of(read)?,
                    at: event.happened,
                    place,
                }),
                _ => None,
            })
            .collect()
    }

    /// What the last look showed of the core [degC].
    pub fn core(&self) -> Option<Sight<f64>> {
        self.last_read(core_of)
    }

    pub fn squeeze(&self) -> Option<Sight<Squeeze>> {
        let sight = self.last_read(|read| read.squeeze);
        self.fresh(sight, SENSES_HOLD_D)
    }

    /// Whether a handful felt dry when something was seen, or not long before or later. What was fed or
    /// poured since does not change it, for it may not have got where the heat is: a new handful does.
    pub fn was_dry_at(&self, at: Moment) -> bool {
        self.last_read(|read| read.squeeze).is_some_and(|felt| {
            matches!(felt.what, Squeeze::Dusty | Squeeze::Dry)
                && days_between(felt.at.instant_ms, at.instant_ms) <= SENSES_HOLD_D
        })
    }

    /// How a handful felt, when nothing came in since.
    pub fn squeeze_of_now(&self) -> Option<Sight<Squeeze>> {
        self.squeeze()
            .filter(|sight| !self.since(sight.place, |content| self.wets_or_feeds(content)))
    }

    /// A smell of the last look that told of smells.
    pub fn smell(&self, is: impl Fn(Smell) -> bool) -> Option<Sight<Smell>> {
        let sight = self.last_read(|read| (!read.smells.is_empty()).then(|| read.smells.clone()));
        let sight = self.fresh(sight, SENSES_HOLD_D)?;
        let smell = sight.what.iter().copied().find(|smell| is(*smell))?;
        Some(Sight {
            what: smell,
            at: sight.at,
            place: sight.place,
        })
    }

    /// A sight of the last look that told of looks.
    pub fn look(&self, is: impl Fn(Look) -> bool) -> Option<Sight<Look>> {
        let sight = self.last_read(|read| (!read.looks.is_empty()).then(|| read.looks.clone()));
        let sight = self.fresh(sight, SENSES_HOLD_D)?;
        let look = sight.what.iter().copied().find(|look| is(*look))?;
        Some(Sight {
            what: look,
            at: sight.at,
            place: sight.place,
        })
    }

    /// The last time that such a creature was seen.
    pub fn creature(&self, holds_d: f64, is: impl Fn(Creature) -> bool) -> Option<Sight<Creature>> {
        let sight = self.last_read(|read| read.creatures.iter().copied().find(|one| is(*one)));
        self.fresh(sight, holds_d)
    }

    /// When it was last turned, whatever the way.
    pub fn last_turned(&self) -> Option<Sight<()>> {
        self.last(|content| matches!(content, Content::Turned(_)).then_some(()))
    }

    /// When something last came in.
    pub fn last_arrival(&self) -> Option<Sight<()>> {
        self.last(|content| self.brings_in(content).then_some(()))
    }

    pub fn brings_in(&self, content: &Content) -> bool {
        match content {
            Content::Fed(fed) => !fed.parts.is_empty(),
            Content::Moved(moved) => moved.to == self.id,
            _ => false,
        }
    }

    pub fn wets_or_feeds(&self, content: &Content) -> bool {
        match content {
            Content::Fed(_) | Content::Watered(_) => true,
            Content::Moved(moved) => moved.to == self.id,
            _ => false,
        }
    }

    /// The height of the heap as it was read last, or of what it stands in [m].
    pub fn height_m(&self) -> Option<f64> {
        let enclosure = self.heap.enclosure().map(|enclosure| enclosure.height_m);
        self.last_read(|read| read.height_m)
            .map(|sight| sight.what)
            .or(enclosure)
    }

    /// Whether it is dry, as far as a hand told.
    pub fn is_dry(&self) -> bool {
        self.squeeze_of_now()
            .is_some_and(|sight| matches!(sight.what, Squeeze::Dusty | Squeeze::Dry))
    }
}

/// What a look showed of the core: a probe there, or one of which no place is told.
fn core_of(read: &Read) -> Option<f64> {
    let core = read
        .probes
        .iter()
        .filter(|probe| matches!(probe.place, None | Some(ProbePlace::Core)))
        .map(|probe| probe.temperature_c);
    core.reduce(f64::max)
}
