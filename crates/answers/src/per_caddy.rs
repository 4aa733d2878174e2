//! What goes with a caddy of the kitchen's usual scraps, and with two, and with three?

use heapwright_catalogue::Catalogue;
use heapwright_engine::balance::{Objective, WaterSupply};
use heapwright_engine::mixture::typical_totals;
use heapwright_garden::{Found, FoundPart, Garden, Stated, Stock, Stuff, found};
use heapwright_journal::{Content, EventId, Moment};
use heapwright_quantity::{Amount, Unit};
use heapwright_state::State;
use heapwright_terms::{Group, MaterialId};

use crate::on_the_map::{OnTheMap, on_the_map};
use crate::question::{QuestionError, USUAL_TARGET};
use crate::today::limits::BROWN;
use crate::what_to_add::{BalanceAnswer, BalanceQuestion, InReach, Status, what_to_add};

/// What was fed within so many days tells what the kitchen usually has [d].
const USUAL_D: f64 = 90.0;
/// So many kinds of scraps at most; the rest of a caddy is too little to matter.
const MOST_KINDS: usize = 3;
/// Caddies that are told of.
const COUNTS: [f64; 3] = [1.0, 2.0, 3.0];
/// A scoop larger than this is handed out by halves too [m3].
const HALVED_M3: f64 = 0.004;
/// A can is poured by the half litre [kg].
const WATER_STEP_KG: f64 = 0.5;
/// Scraps of which nothing is known, and browns where none are in store.
const SCRAPS: &str = "mixed_vegetable_scraps";
const BROWNS: (&str, &str) = ("dry_leaves_mixed", "shredded");

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct PerCaddy {
    /// The kitchen's usual scraps by name, the most first.
    pub scraps: Vec<String>,
    /// True when the journal told which, false when they are assumed.
    pub scraps_known: bool,
    /// True when the browns are from the stores, false when some are assumed.
    pub from_stores: bool,
    /// Names of what may go with them.
    pub browns: Vec<String>,
    /// So many caddies, and what goes with them.
    pub rows: Vec<(f64, BalanceAnswer)>,
    /// One caddy on the map, alone and with what goes with it.
    pub map: OnTheMap,
}

/// Finds what goes with the scraps of a heap's kitchen.
///
/// # Errors
///
/// When something cannot be used, which only a garden of a newer program can bring about.
pub fn per_caddy(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    heap: EventId,
    now: Moment,
) -> Result<PerCaddy, QuestionError> {
    let mut usual = kitchen(catalogue, garden, state, Some(heap), now);
    if usual.is_empty() {
        usual = kitchen(catalogue, garden, state, None, now);
    }
    let scraps_known = !usual.is_empty();
    if usual.is_empty() {
        usual.push((known(SCRAPS, &[]), 1.0));
    }
    let whole: f64 = usual.iter().map(|(_, volume)| volume).sum();
    let have = |caddies: f64| -> Vec<Found> {
        let part = |(stuff, volume): &(Stuff, f64)| Found {
            stuff: stuff.clone(),
            amount: measure("caddy", caddies * volume / whole),
        };
        usual.iter().map(part).collect()
    };
    let mut reach = browns(catalogue, garden);
    let from_stores = !reach.is_empty();
    if reach.is_empty() {
        reach.push(InReach {
            stuff: known(BROWNS.0, &[BROWNS.1.to_owned()]),
            most: None,
            step: Some(measure("bucket", 0.5)),
            effort: 1.0,
        });
    }
    let mut rows = Vec::new();
    for count in COUNTS {
        let question = BalanceQuestion {
            have: have(count),
            reach: reach.clone(),
            water: WaterSupply {
                most_kg: f64::INFINITY,
                step_kg: WATER_STEP_KG,
            },
            target: USUAL_TARGET,
            objective: Objective::LeastMass,
            alternatives: false,
        };
        rows.push((count, what_to_add(catalogue, garden, &question)?));
    }
    let named = |found: &Found| garden.find(catalogue, found).ok();
    let in_hand: Vec<FoundPart> = have(1.0).iter().filter_map(named).collect();
    let (added, water_kg) = rows
        .first()
        .and_then(|(_, answer)| answer.recipes.first())
        .map_or((Vec::new(), 0.0), |recipe| {
            let added = recipe.added.iter().map(|added| added.found.clone());
            (added.collect(), recipe.whole.water_kg)
        });
    Ok(PerCaddy {
        scraps: in_hand.iter().map(|part| part.name.clone()).collect(),
        scraps_known,
        from_stores,
        browns: reach
            .iter()
            .filter_map(|one| {
                let found = Found {
                    stuff: one.stuff.clone(),
                    amount: measure("bucket", 1.0),
                };
                named(&found).map(|part| part.name)
            })
            .collect(),
        map: on_the_map(
            catalogue,
            garden,
            (&in_hand, &added, water_kg),
            &[],
            USUAL_TARGET,
        )?,
        rows,
    })
}

impl PerCaddy {
    /// True when every row reaches the usual region.
    #[must_use]
    pub fn is_met(&self) -> bool {
        self.rows
            .iter()
            .all(|(_, answer)| answer.status == Status::Met)
    }
}

fn measure(id: &str, count: f64) -> Amount {
    Amount {
        count,
        unit: Unit::Measure(id.to_owned()),
    }
}

fn known(material: &str, conditions: &[String]) -> Stuff {
    Stuff::Known {
        material: MaterialId(material.to_owned()),
        conditions: conditions.to_vec(),
        stated: Stated::default(),
    }
}

/// What of the kitchen was fed lately, with its volume [m3], the most first.
fn kitchen(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    heap: Option<EventId>,
    now: Moment,
) -> Vec<(Stuff, f64)> {
    let mut all: Vec<(Stuff, f64)> = Vec::new();
    let heaps = state
        .heaps()
        .filter(|one| heap.is_none_or(|heap| heap == one.id));
    for event in heaps.flat_map(heapwright_state::Heap::history) {
        let ago = crate::forecast::days_between(event.happened.instant_ms, now.instant_ms);
        let Some(Content::Fed(fed)) = event.content() else {
            continue;
        };
        if !(0.0..=USUAL_D).contains(&ago) {
            continue;
        }
        for part in fed.parts.iter().map(found) {
            let Ok(one) = garden.find(catalogue, &part) else {
                continue;
            };
            let is_kitchen =
                (one.material.as_ref()).is_some_and(|material| material.group == Group::Kitchen);
            let volume_m3 = typical_totals(std::slice::from_ref(&one.part), 0.0).volume_m3;
            let Some(volume_m3) = volume_m3.filter(|volume| is_kitchen && *volume > 0.0) else {
                continue;
            };
            match all.iter_mut().find(|(stuff, _)| *stuff == part.stuff) {
                Some((_, sum)) => *sum += volume_m3,
                None => all.push((part.stuff, volume_m3)),
            }
        }
    }
    all.sort_by(|one, other| other.1.total_cmp(&one.1));
    all.truncate(MOST_KINDS);
    all
}

/// What is brown in the stores.
fn browns(catalogue: &Catalogue, garden: &Garden) -> Vec<InReach> {
    let is_brown = |stock: &&Stock| {
        let one = Found {
            stuff: known(stock.material.as_str(), &stock.conditions),
            amount: stock.scoop.clone(),
        };
        garden.find(catalogue, &one).is_ok_and(|found| {
            let totals = typical_totals(std::slice::from_ref(&found.part), 0.0);
            totals.carbon_kg > 0.0 && totals.carbon_kg >= BROWN * totals.nitrogen_kg
        })
    };
    garden
        .stores
        .iter()
        .filter(is_brown)
        .map(|stock| {
            let mut step = stock.scoop.clone();
            if let Unit::Measure(id) = &step.unit
                && garden
                    .filling_m3(catalogue, id)
                    .is_some_and(|filling| filling.typical * step.count > HALVED_M3)
            {
                step.count /= 2.0;
            }
            InReach {
                stuff: known(stock.material.as_str(), &stock.conditions),
                most: stock.amount.clone(),
                step: Some(step),
                effort: 1.0,
            }
        })
        .collect()
}
