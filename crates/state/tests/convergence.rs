//! The same lines give the same state: in any order, any number of times, on every replica.
//!
//! Five replicas edit at will over a network that loses, doubles and reorders, with clocks that go
//! wrong by up to years and devices that crash. When every line has reached everybody, all states
//! are equal, and equal to the fold of all lines at once.
//!
//! `CONVERGENCE_SEED=n` runs the one seed that a failure named; `CONVERGENCE_RUNS=n` changes how
//! many are run.

#![allow(clippy::unwrap_used)]

#[path = "simulation/edits.rs"]
mod edits;
#[path = "simulation/network.rs"]
mod network;

use std::panic::{AssertUnwindSafe, catch_unwind};

use heapwright_invented::Plan;
use heapwright_journal::content::{Amended, Fed, Harvested, HeapStarted, Watered, Withdrawn};
use heapwright_journal::{
    Clock, Content, DeviceId, Digest, Event, EventId, Line, Moment, What, journal_digest,
};
use heapwright_state::State;
use serde_json::{Map, json};

use edits::{Chance, START_MS};
use network::World;

/// Runs unless CONVERGENCE_RUNS says otherwise (quality target R5).
const RUNS: u64 = 10_000;

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// One run; small ones are many, so that a failure is short.
fn run(seed: u64) {
    let steps = 90 + usize::try_from(seed % 180).unwrap();
    World::new(seed).run(steps);
}

#[test]
fn prop_r5_replicas_converge_over_a_bad_network() {
    if let Some(seed) = number("CONVERGENCE_SEED") {
        run(seed);
        return;
    }
    let runs = number("CONVERGENCE_RUNS").unwrap_or(RUNS);
    let halves = [(0..runs).step_by(2), (1..runs.max(1)).step_by(2)];
    std::thread::scope(|scope| {
        for seeds in halves {
            scope.spawn(move || {
                for seed in seeds {
                    let outcome = catch_unwind(AssertUnwindSafe(|| run(seed)));
                    assert!(outcome.is_ok(), "run again with CONVERGENCE_SEED={seed}");
                }
            });
        }
    });
}

/// Events of three replicas that see nothing of each other.
struct Three {
    clocks: [Clock; 3],
    chance: Chance,
}

impl Three {
    fn new() -> Self {
        Self {
            clocks: [1, 2, 3].map(|device| Clock::new(DeviceId(device))),
            chance: Chance::new(6),
        }
    }

    fn event(&mut self, who: usize, hour: i64, content: impl Into<Content>) -> Event {
        let now_ms = START_MS + hour * 3_600_000;
        Event {
            id: EventId::new(now_ms as u64, &self.chance.bytes()),
            stamp: self.clocks[who].tick(now_ms as u64),
            happened: Moment::new(now_ms, 60).unwrap(),
            recorded: Moment::new(now_ms, 60).unwrap(),
            by: None,
            batch: None,
            what: What::Known(content.into()),
        }
    }
}

fn started(name: &str) -> HeapStarted {
    HeapStarted {
        name: name.to_owned(),
        enclosure: None,
        sun: None,
        filling: None,
    }
}

fn water(heap: EventId, water_l: f64) -> Watered {
    Watered { heap, water_l }
}

fn amended(event: EventId, water_l: f64) -> Amended {
    let mut patch = Map::new();
    patch.insert("water_l".to_owned(), json!(water_l));
    Amended {
        event,
        happened: None,
        patch,
    }
}

fn harvested(heap: EventId) -> Harvested {
    Harvested {
        heap,
        amount: None,
        share_pct: Some(50.0),
        sieve_mm: None,
        overs: None,
        overs_to: None,
    }
}

/// Sets of six events over three replicas, two each.
fn sixes() -> Vec<Vec<Event>> {
    let mut three = Three::new();
    let heap = three.event(0, 0, started("One"));
    let watered = three.event(1, 1, water(heap.id, 5.0));
    // A correction of a correction, an event under an id that is there, things out of order.
    let first = {
        let amend = three.event(2, 2, amended(watered.id, 9.0));
        let withdraw = three.event(0, 3, Withdrawn { event: amend.id });
        let mut other = three.event(1, 4, water(heap.id, 7.0));
        other.id = watered.id;
        let harvest = three.event(2, 1, harvested(heap.id));
        vec![
            heap.clone(),
            watered.clone(),
            amend,
            withdraw,
            other,
            harvest,
        ]
    };
    // Withdrawn and brought back by two people at once.
    let second = {
        let one = three.event(0, 2, Withdrawn { event: watered.id });
        let two = three.event(1, 2, amended(watered.id, 3.0));
        let three_ = three.event(2, 2, amended(watered.id, 4.0));
        let fed = three.event(
            2,
            0,
            Fed {
                heap: heap.id,
                parts: Vec::new(),
                water_l: Some(1.0),
            },
        );
        vec![heap.clone(), watered.clone(), one, two, three_, fed]
    };
    // Three events under one id, one of them a correction that is itself taken back.
    let third = {
        let mut one = three.event(0, 5, amended(watered.id, 2.0));
        let two = three.event(1, 5, water(heap.id, 1.0));
        let mut third = three.event(2, 5, Withdrawn { event: watered.id });
        one.id = two.id;
        third.id = two.id;
        let back = three.event(0, 6, Withdrawn { event: two.id });
        vec![heap, watered, one, two, third, back]
    };
    vec![first, second, third]
}

fn orders(count: usize) -> Vec<Vec<usize>> {
    if count == 0 {
        return vec![Vec::new()];
    }
    let shorter = orders(count - 1);
    (0..count)
        .flat_map(|at| {
            shorter.iter().map(move |order| {
                let mut order = order.clone();
                order.insert(at, count - 1);
                order
            })
        })
        .collect()
}

#[test]
fn prop_r6_all_orders_of_six_events_give_the_same() {
    for (set, events) in sixes().into_iter().enumerate() {
        let lines: Vec<(Digest, Event)> = events
            .iter()
            .map(|event| {
                let (line, event) = Line::read(&event.write().unwrap()).unwrap();
                (line.digest(), event)
            })
            .collect();
        // The fold of every subset, by which of the six are in it.
        let folds: Vec<State> = (0..1_usize << lines.len())
            .map(|subset| {
                let some = lines.iter().enumerate();
                State::fold(
                    some.filter(|(at, _)| subset >> at & 1 == 1)
                        .map(|(_, line)| line.clone()),
                )
            })
            .collect();
        let orders = orders(lines.len());
        assert_eq!(orders.len(), 720);
        for order in orders {
            let mut state = State::default();
            let mut subset = 0;
            for at in &order {
                let (digest, event) = lines[*at].clone();
                assert!(state.take(digest, event.clone()));
                assert!(!state.take(digest, event), "the same line twice");
                subset |= 1 << at;
                assert_eq!(state, folds[subset], "set {set}, order {order:?}");
            }
        }
    }
}

/// Years of a garden, so that histories are long enough for states that are kept in between.
#[test]
fn prop_a_large_garden_is_the_same_in_any_order_and_in_parts_of_any_size() {
    let mut lines: Vec<(Digest, Event)> = heapwright_invented::lines(&Plan::community(6000))
        .map(|line| {
            let (line, event) = Line::read(&line.unwrap()).unwrap();
            (line.digest(), event)
        })
        .collect();
    let whole = State::fold(lines.clone());
    let mut chance = Chance::new(5);
    for largest in [1, 3, 40, 2000] {
        // Mostly in order, as journals come; the rest from anywhere.
        for _ in 0..lines.len() / 4 {
            let (one, other) = (chance.below(lines.len()), chance.below(lines.len()));
            lines.swap(one, other);
        }
        let mut state = State::default();
        let mut left = lines.as_slice();
        while !left.is_empty() {
            let (part, rest) = left.split_at((1 + chance.below(largest)).min(left.len()));
            assert_eq!(state.take_all(part.iter().cloned()), part.len());
            left = rest;
        }
        assert!(state == whole, "parts of up to {largest}");
    }
}

#[test]
fn prop_the_same_event_twice_has_no_effect() {
    let mut chance = Chance::new(12);
    let mut lines: Vec<(Digest, Event)> = sixes()
        .into_iter()
        .flatten()
        .map(|event| {
            let (line, event) = Line::read(&event.write().unwrap()).unwrap();
            (line.digest(), event)
        })
        .collect();
    let mut digests: Vec<Digest> = lines.iter().map(|(digest, _)| *digest).collect();
    let once = State::fold(lines.clone());
    lines.extend(lines.clone());
    chance.shuffle(&mut lines);
    assert_eq!(State::fold(lines), once);
    let whole = journal_digest(digests.clone());
    digests.extend(digests.clone());
    assert_eq!(journal_digest(digests), whole);
}

#[test]
fn an_id_with_other_content_is_a_conflict_that_keeps_both() {
    let mut three = Three::new();
    let heap = three.event(0, 0, started("One"));
    let mut other = three.event(1, 1, started("Other"));
    other.id = heap.id;
    let lines = [&heap, &other].map(|event| {
        let (line, event) = Line::read(&event.write().unwrap()).unwrap();
        (line.digest(), event)
    });
    for order in [[0, 1], [1, 0]] {
        let state = State::fold(order.map(|at| lines[at].clone()));
        assert_eq!(
            state.conflicts().iter().copied().collect::<Vec<_>>(),
            [heap.id]
        );
        let entry = state.entry(heap.id).unwrap();
        assert_eq!(
            **entry.recorded().unwrap(),
            heap,
            "the first by stamp counts"
        );
        let others: Vec<&Event> = entry.others().map(|event| &**event).collect();
        assert_eq!(others, [&other]);
        assert_eq!(state.heap(heap.id).unwrap().name(), Some("One"));
        for (digest, _) in &lines {
            assert_eq!(state.has(heap.id, *digest), Some(true));
        }
    }
}

#[test]
fn what_a_newer_program_wrote_is_kept_byte_for_byte() {
    let mut three = Three::new();
    let heap = three.event(0, 0, started("One"));
    let line = heap.write().unwrap();
    for (text, understood) in [
        (
            line.replacen("{\"name\"", "{\"colour\":  [1.50,\"é\"],\"name\"", 1),
            true,
        ),
        (
            line.replacen("\"kind\"", "\"mood\" : null,\"kind\"", 1),
            true,
        ),
        (line.replacen("heap_started", "heap_sung_to", 1), false),
        (line.replacen("\"v\":1", "\"v\":2", 1), false),
    ] {
        let (kept, event) = Line::read(&text).unwrap();
        assert_eq!(kept.text(), text);
        assert_eq!(kept.digest(), Digest::of(text.as_bytes()));
        assert_eq!(event.content().is_some(), understood, "{text}");
        let state = State::fold([(kept.digest(), event.clone())]);
        assert_eq!(state.has(heap.id, kept.digest()), Some(true));
        assert_eq!(**state.entry(heap.id).unwrap().recorded().unwrap(), event);
        assert_eq!(state.heaps().count(), usize::from(understood));
    }
}
