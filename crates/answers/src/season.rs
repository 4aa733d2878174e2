//! What happened to each heap in a season: what went in by month, what the probe showed, turnings,
//! harvests?

use std::collections::BTreeMap;

use heapwright_catalogue::Catalogue;
use heapwright_engine::mixture::typical_totals;
use heapwright_garden::Garden;
use heapwright_journal::content::{Harvested, ProbePlace};
use heapwright_journal::{Content, EventId, Moment};
use heapwright_state::{Contents, Share, State};

/// One heap.
#[derive(Clone, Debug, PartialEq)]
pub struct SeasonHeap {
    /// Which.
    pub heap: EventId,
    /// What went in, month by month.
    pub months: Vec<SeasonMonth>,
    /// What a probe in the core showed, or where no place was told [degC].
    pub core_c: Vec<(Moment, f64)>,
    /// When it was turned.
    pub turned: Vec<Moment>,
    /// How often it was watered.
    pub watered: u32,
    /// What was taken out.
    pub harvested: Vec<(Moment, Harvested)>,
}

/// One month of a heap.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SeasonMonth {
    /// Year and month, 1 to 12.
    pub month: (i16, i8),
    /// How many feeds.
    pub feeds: u32,
    /// Typical wet mass by name, in the order in which it first came [kg].
    pub parts: Vec<(String, f64)>,
    /// Water that was poured on it [L].
    pub water_l: f64,
}

impl SeasonMonth {
    /// All of it but the water [kg].
    #[must_use]
    pub fn wet_kg(&self) -> f64 {
        self.parts.iter().map(|(_, mass)| mass).sum()
    }
}

/// Adds up a season; heaps in which nothing happened are left out.
#[must_use]
pub fn season(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    from: Moment,
    to: Moment,
) -> Vec<SeasonHeap> {
    let mut all = Vec::new();
    for heap in state.heaps() {
        let mut told = SeasonHeap {
            heap: heap.id,
            months: Vec::new(),
            core_c: Vec::new(),
            turned: Vec::new(),
            watered: 0,
            harvested: Vec::new(),
        };
        let mut months: BTreeMap<(i16, i8), SeasonMonth> = BTreeMap::new();
        let mut is_empty = true;
        for event in heap.history() {
            let at = event.happened;
            if !(from.instant_ms..=to.instant_ms).contains(&at.instant_ms) {
                continue;
            }
            let local = at.local();
            let key = (local.year(), local.month());
            match event.content() {
                Some(Content::Fed(fed)) => {
                    let month = months.entry(key).or_default();
                    month.month = key;
                    month.feeds += 1;
                    month.water_l += fed.water_l.unwrap_or(0.0);
                    let once = Contents {
                        shares: vec![Share {
                            event: std::sync::Arc::clone(event),
                            share: 1.0,
                        }],
                        cut: false,
                    };
                    for part in garden.parts_of(catalogue, state, &once).0 {
                        let Ok(found) = garden.find(catalogue, &part) else {
                            continue;
                        };
                        let wet_kg =
                            typical_totals(std::slice::from_ref(&found.part), 0.0).wet_mass_kg;
                        let name = found.name;
                        match month.parts.iter_mut().find(|(other, _)| *other == name) {
                            Some((_, sum)) => *sum += wet_kg,
                            None => month.parts.push((name, wet_kg)),
                        }
                    }
                }
                Some(Content::Watered(watered)) => {
                    told.watered += 1;
                    let month = months.entry(key).or_default();
                    month.month = key;
                    month.water_l += watered.water_l;
                }
                Some(Content::Turned(_)) => told.turned.push(at),
                Some(Content::Read(read)) => {
                    let core = read
                        .probes
                        .iter()
                        .filter(|probe| matches!(probe.place, None | Some(ProbePlace::Core)))
                        .map(|probe| probe.temperature_c)
                        .reduce(f64::max);
                    told.core_c.extend(core.map(|core| (at, core)));
                }
                Some(Content::Harvested(harvested)) => told.harvested.push((at, harvested.clone())),
                _ => continue,
            }
            is_empty = false;
        }
        if !is_empty {
            told.months = months.into_values().collect();
            all.push(told);
        }
    }
    all
}
