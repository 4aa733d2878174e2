//! A heap's journal as events of a simulation, since it was last empty.

use std::sync::Arc;

use heapwright_catalogue::Catalogue;
use heapwright_engine::heap::{Action, Charge, Cover, Enclosure, Event as Step, Overrides};
use heapwright_garden::{Found, Garden, Stuff};
use heapwright_journal::content::{
    Cover as CoverSaid, Enclosure as EnclosureSaid, Fed, Sun, Thoroughness,
};
use heapwright_journal::{Content, Event, EventId, Moment};
use heapwright_state::{Contents, Share, State};

use super::{ProbeReading, days_between};
use crate::fits::enclosure_of;
use crate::question::QuestionError;
use crate::simulated::{SimulationNotice, charge_of, is_sound};

/// Milliseconds of a day.
pub(super) const MS_PER_DAY: f64 = 86_400_000.0;
/// What went in longer ago is left out [d]: ten years.
pub(super) const LONGEST_D: f64 = 3660.0;
/// A harvest of more than this leaves nothing that counts.
const EMPTIED: f64 = 0.999;
/// The most that the engine takes out at once.
const MOST_AT_ONCE: f64 = 0.95;
/// Over how many moves between heaps what was moved is followed with a simulation of its own.
const MOVES_DEEP: u32 = 3;

/// How a turning mixes: 0 nothing moved, 1 all alike. Estimates.
fn thoroughness(said: Option<Thoroughness>) -> f64 {
    match said {
        Some(Thoroughness::Loosened) => 0.15,
        Some(Thoroughness::InsideOut) => 1.0,
        _ => 0.7,
    }
}

/// Share of the sun in the open that reaches the heap. Estimates.
fn sun_share(said: Option<Sun>) -> f64 {
    match said {
        Some(Sun::Shade) => 0.1,
        Some(Sun::Full) => 1.0,
        _ => 0.5,
    }
}

/// What befell a heap until a moment.
pub(super) struct History {
    /// When the simulation starts [ms since 1970-01-01T00:00Z]: with the first feed.
    pub start_ms: i64,
    /// What was done, in order.
    pub events: Vec<Step>,
    /// In what it stands.
    pub enclosure: Enclosure,
    /// Share of the sun that reaches it.
    pub sun_share: f64,
    /// What probes showed.
    pub readings: Vec<ProbeReading>,
    /// What was assumed.
    pub notices: Vec<SimulationNotice>,
}

/// What the history is read with.
pub(super) struct Reader<'a> {
    catalogue: &'a Catalogue,
    garden: &'a Garden,
    pub(super) state: &'a State,
    notices: Vec<SimulationNotice>,
    left_out: Vec<String>,
}

/// Something done at an instant.
pub(super) type At = (i64, Action);

impl History {
    /// Reads the history of a heap up to now.
    pub(super) fn of(
        catalogue: &Catalogue,
        garden: &Garden,
        state: &State,
        heap: EventId,
        now: Moment,
    ) -> Result<Self, QuestionError> {
        let mut reader = Reader {
            catalogue,
            garden,
            state,
            notices: Vec::new(),
            left_out: Vec::new(),
        };
        let (mut acts, mut cover) = reader.acts(heap, now.instant_ms, MOVES_DEEP);
        let start = acts
            .iter()
            .find(|(_, action)| matches!(action, Action::Feed { .. }))
            .map(|(instant, _)| *instant);
        let Some(mut start_ms) = start else {
            return Err(QuestionError::NothingInHeap);
        };
        if days_between(start_ms, now.instant_ms) > LONGEST_D {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // ten years
            let days = LONGEST_D as u32;
            reader.notices.push(SimulationNotice::OldLeftOut { days });
            let from = now.instant_ms - i64::from(days) * 86_400_000;
            acts.retain(|(instant, action)| {
                if let (Action::Cover(laid), true) = (action, *instant < from) {
                    cover = *laid;
                }
                *instant >= from
            });
            start_ms = acts
                .iter()
                .find(|(_, action)| matches!(action, Action::Feed { .. }))
                .map_or(Err(QuestionError::NothingInHeap), |(instant, _)| {
                    Ok(*instant)
                })?;
        }
        // What lay on it before the first feed lies on it from the start.
        for (instant, action) in &acts {
            if let (true, Action::Cover(laid)) = (*instant < start_ms, action) {
                cover = *laid;
            }
        }
        let events = acts
            .into_iter()
            .filter(|(instant, _)| *instant >= start_ms)
            .map(|(instant, action)| Step {
                day: days_between(start_ms, instant),
                action,
            })
            .collect();
        let started = state
            .heap(heap)
            .and_then(|heap| heap.now().started.as_ref())
            .map(|started| &started.heap);
        let mut enclosure = reader.enclosure(started.and_then(|heap| heap.enclosure.as_ref()));
        enclosure.cover = cover;
        Ok(Self {
            start_ms,
            events,
            enclosure,
            sun_share: sun_share(started.and_then(|heap| heap.sun)),
            readings: readings(state, heap, start_ms, now.instant_ms),
            notices: reader.told(),
        })
    }

    /// A moment on the clock of the simulation [d].
    pub(super) fn day_of(&self, moment: Moment) -> f64 {
        days_between(self.start_ms, moment.instant_ms)
    }
}

impl Reader<'_> {
    fn told(mut self) -> Vec<SimulationNotice> {
        if !self.left_out.is_empty() {
            self.left_out.sort();
            self.left_out.dedup();
            self.notices.push(SimulationNotice::LeftOut {
                names: self.left_out,
            });
        }
        self.notices
    }

    pub(super) fn enclosure(&mut self, said: Option<&EnclosureSaid>) -> Enclosure {
        let Some(said) = said else {
            self.notices.push(SimulationNotice::EnclosureAssumed);
            return Enclosure::open_box(1.0, 1.0, 1.0);
        };
        enclosure_of(said)
    }

    /// What was done to a heap until an instant, from when it was last empty, and what lay on it
    /// before that.
    pub(super) fn acts(&mut self, heap: EventId, until_ms: i64, deep: u32) -> (Vec<At>, Cover) {
        let mut acts: Vec<At> = Vec::new();
        let mut cover = Cover::None;
        let Some(known) = self.state.heap(heap) else {
            return (acts, cover);
        };
        let history: Vec<Arc<Event>> = known.history().map(Arc::clone).collect();
        for event in history {
            let instant = event.happened.instant_ms;
            if instant > until_ms {
                break;
            }
            let Some(content) = event.content() else {
                continue;
            };
            match content {
                Content::HeapStarted(started) => {
                    if let Some(laid) = started.enclosure.and_then(|enclosure| enclosure.cover) {
                        acts.push((instant, Action::Cover(covered(laid))));
                    }
                }
                Content::Fed(fed) => acts.extend(self.fed(&event, fed, instant)),
                Content::Watered(watered) => acts.push((
                    instant,
                    Action::Water {
                        litres: watered.water_l,
                    },
                )),
                Content::Turned(turned) => acts.push((
                    instant,
                    Action::Turn {
                        thoroughness: thoroughness(turned.thoroughness),
                    },
                )),
                Content::Covered(laid) => {
                    let laid = laid.cover.unwrap_or(CoverSaid::Sheet);
                    acts.push((instant, Action::Cover(covered(laid))));
                }
                Content::Uncovered(_) => acts.push((instant, Action::Cover(Cover::None))),
                Content::Moved(moved) if moved.to == heap => {
                    let share = moved.share_pct.unwrap_or(100.0) / 100.0;
                    if let Some(charge) = self.moved(moved.from, instant, share, deep) {
                        self.notices.push(SimulationNotice::MovedIn);
                        acts.push((
                            instant,
                            Action::Feed {
                                charge,
                                temperature_c: None,
                            },
                        ));
                    }
                }
                Content::Moved(moved) => take_out(&mut acts, &mut cover, instant, moved.share_pct),
                Content::Harvested(harvested) if harvested.heap == heap => {
                    take_out(&mut acts, &mut cover, instant, harvested.share_pct);
                }
                _ => {}
            }
        }
        (acts, cover)
    }

    /// A feed, or the water of one that had nothing else.
    fn fed(&mut self, event: &Arc<Event>, fed: &Fed, instant: i64) -> Option<At> {
        let once = Contents {
            shares: vec![Share {
                event: Arc::clone(event),
                share: 1.0,
            }],
            cut: false,
        };
        let (parts, water_kg) = self.garden.parts_of(self.catalogue, self.state, &once);
        let mut charge = Charge::default();
        for part in &parts {
            match self.garden.find(self.catalogue, part) {
                Ok(found) => {
                    charge.add(&charge_of_journal(part, &found));
                    self.notices
                        .extend(found.notices.into_iter().map(SimulationNotice::Part));
                }
                Err(_) => self.left_out.push(name(part)),
            }
        }
        charge.water_kg += water_kg;
        if is_sound(&charge) {
            return Some((
                instant,
                Action::Feed {
                    charge,
                    temperature_c: None,
                },
            ));
        }
        let litres = fed.water_l.filter(|litres| *litres > 0.0)?;
        Some((instant, Action::Water { litres }))
    }
}

/// A feed of the journal: a stated density is how it lay in the vessel.
fn charge_of_journal(said: &Found, found: &heapwright_garden::FoundPart) -> Charge {
    let mut plain = said.clone();
    match &mut plain.stuff {
        Stuff::Known { stated, .. } => stated.bulk_density_kg_m3 = None,
        Stuff::Custom(custom) => custom.bulk_density_kg_m3 = None,
    }
    charge_of(&plain, found, &Overrides::default())
}

/// Something is taken out; when all is, the history begins anew.
fn take_out(acts: &mut Vec<At>, cover: &mut Cover, instant: i64, share_pct: Option<f64>) {
    let mut left = 1.0 - share_pct.unwrap_or(100.0) / 100.0;
    if left < 1.0 - EMPTIED {
        for (_, action) in acts.drain(..) {
            if let Action::Cover(laid) = action {
                *cover = laid;
            }
        }
        return;
    }
    while left < 1.0 {
        let share = (1.0 - left).min(MOST_AT_ONCE);
        acts.push((
            instant,
            Action::TakeOut {
                share,
                from_below: false,
            },
        ));
        left /= 1.0 - share;
    }
}

fn covered(said: CoverSaid) -> Cover {
    match said {
        CoverSaid::Sheet => Cover::Sheet,
        CoverSaid::Lid => Cover::Lid,
        CoverSaid::Roof => Cover::Roof,
        CoverSaid::None | CoverSaid::Other => Cover::None,
    }
}

fn name(part: &Found) -> String {
    match &part.stuff {
        Stuff::Known { material, .. } => material.as_str().to_owned(),
        Stuff::Custom(custom) => custom.name.clone(),
    }
}

fn readings(state: &State, heap: EventId, start_ms: i64, now_ms: i64) -> Vec<ProbeReading> {
    let Some(heap) = state.heap(heap) else {
        return Vec::new();
    };
    let mut all = Vec::new();
    for event in heap.history() {
        let instant = event.happened.instant_ms;
        if !(start_ms..=now_ms).contains(&instant) {
            continue;
        }
        if let Some(Content::Read(read)) = event.content() {
            all.extend(read.probes.iter().map(|probe| ProbeReading {
                day: days_between(start_ms, instant),
                temperature_c: probe.temperature_c,
                place: probe.place,
                depth_m: probe.depth_m,
                computed_core_c: None,
            }));
        }
    }
    all
}
