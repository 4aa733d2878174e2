//! What heaps need, over invented gardens: every heap is told of, the order is the same every time,
//! and what was done is not asked for again.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;

use heapwright_answers::today::{Kind, Need, TodayAnswer, today};
use heapwright_catalogue::Catalogue;
use heapwright_garden::Garden;
use heapwright_invented::Plan;
use heapwright_journal::content::Stage;
use heapwright_journal::{DeviceId, Digest, Event, EventId, Line, Moment};
use heapwright_state::{Now, Recorder, State};
use jiff::civil::date;

const DAY_MS: i64 = 86_400_000;

fn asked(state: &State, now: Moment) -> TodayAnswer {
    let catalogue = Catalogue::built_in();
    let garden = Garden::from_state(catalogue, state, now);
    today(catalogue, &garden, state, now)
}

/// The journal as it was on each of some days of an invented garden.
fn days_of(plan: &Plan, every_d: i64, mut see: impl FnMut(&State, Moment)) {
    let mut events: Vec<(Digest, Event)> = plan
        .journal()
        .map(|event| {
            let line = event.write().unwrap();
            let (line, event) = Line::read(&line).unwrap();
            (line.digest(), event)
        })
        .collect();
    events.sort_by_key(|(_, event)| event.recorded.instant_ms);
    let mut state = State::default();
    let mut next_ms = events[0].1.recorded.instant_ms + every_d * DAY_MS;
    for (digest, event) in events {
        while event.recorded.instant_ms > next_ms {
            see(&state, Moment::new(next_ms, 120).unwrap());
            next_ms += every_d * DAY_MS;
        }
        state.take(digest, event);
    }
    see(&state, Moment::new(next_ms, 120).unwrap());
}

fn plans() -> Vec<Plan> {
    let demo = Plan::demo(date(2026, 5, 1));
    let mut plans: Vec<Plan> = (1..=6)
        .map(|seed| Plan {
            seed,
            ..demo.clone()
        })
        .collect();
    plans.push(Plan::community(2_000));
    plans
}

#[test]
fn every_heap_is_told_of_once_and_the_order_is_that_of_harm() {
    for plan in plans() {
        days_of(&plan, 23, |state, now| {
            let answer = asked(state, now);
            for heap in state.heaps() {
                let needs = answer.needs.iter().any(|need| need.heap == Some(heap.id));
                let quiet = answer
                    .quiet
                    .iter()
                    .filter(|quiet| quiet.heap == heap.id)
                    .count();
                let expected = usize::from(heap.now().stage != Stage::Finished && !needs);
                assert_eq!(quiet, expected, "{}", heap.id);
            }
            for need in &answer.needs {
                assert!(!need.because.is_empty(), "{need:?}");
            }
            let ranks: Vec<_> = answer
                .needs
                .iter()
                .map(|need| (need.urgency, need.what.kind()))
                .collect();
            assert!(ranks.is_sorted(), "{ranks:?}");
            // A kind once for each heap, so that a reminder has one name.
            let mut named = std::collections::BTreeSet::new();
            for date in &answer.dates {
                let name = (date.heap, date.kind, date.material.clone());
                assert!(named.insert(name), "{date:?} stands there twice");
                assert!(date.on.day() >= now.local().date());
            }
            assert!(answer.dates.is_sorted_by_key(|date| date.on.day()));
            assert_eq!(answer, asked(state, now));
        });
    }
}

#[test]
fn lines_in_any_order_ask_for_the_same() {
    let plan = Plan::demo(date(2026, 5, 1));
    let mut lines: Vec<(Digest, Event)> = plan
        .journal()
        .map(|event| {
            let (line, event) = Line::read(&event.write().unwrap()).unwrap();
            (line.digest(), event)
        })
        .collect();
    let now: Moment = "2026-05-01T12:00:00+02:00".parse().unwrap();
    let answer = asked(&State::fold(lines.clone()), now);
    lines.reverse();
    assert_eq!(answer, asked(&State::fold(lines.clone()), now));
    let middle = lines.len() / 3;
    lines.rotate_left(middle);
    assert_eq!(answer, asked(&State::fold(lines), now));
}

fn reasons(need: &Need) -> Vec<(Option<EventId>, Kind, String)> {
    need.because
        .iter()
        .map(|because| {
            // Of creatures, smells and rules each is a reason of its own.
            let name = format!("{} {:?}", because.key(), because);
            let name = match because.key() {
                "fed_too_wet" | "fed_too_dry" | "fed_too_rich" | "fed_too_poor" | "not_fed" => {
                    because.key().to_owned()
                }
                _ => name,
            };
            (need.heap, need.what.kind(), name)
        })
        .collect()
}

/// The strongest of all: whoever does what is asked, and taps, is not asked again for that reason.
#[test]
fn what_was_done_is_not_asked_for_again() {
    let mut tapped: BTreeMap<Kind, usize> = BTreeMap::new();
    for plan in plans() {
        days_of(&plan, 9, |state, now| {
            for need in asked(state, now).needs {
                let Some(entry) = need.entry.clone() else {
                    continue;
                };
                entry.check().unwrap();
                let mut recorder = Recorder::new(DeviceId(77), state, now);
                let at = Now {
                    moment: now,
                    random: [7; 10],
                };
                let (line, event) = recorder.record(state, entry, now, None, at).unwrap();
                let mut then = state.clone();
                then.take(line.digest(), event);
                let left: Vec<_> = asked(&then, now).needs.iter().flat_map(reasons).collect();
                for reason in reasons(&need) {
                    assert!(!left.contains(&reason), "{reason:?} stays after {need:#?}");
                }
                *tapped.entry(need.what.kind()).or_default() += 1;
            }
        });
    }
    // Gardens of which nothing was asked would prove nothing.
    for kind in [
        Kind::Turn,
        Kind::Water,
        Kind::AddBrowns,
        Kind::Cover,
        Kind::KeepAnimalsOut,
    ] {
        assert!(tapped.contains_key(&kind), "{kind:?} among {tapped:?}");
    }
}
