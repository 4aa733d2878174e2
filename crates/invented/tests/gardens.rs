//! Invented gardens are sound, whole and the same every time.

#![allow(clippy::unwrap_used)]

use std::collections::{BTreeMap, BTreeSet};

use heapwright_catalogue::Catalogue;
use heapwright_invented::{Plan, lines, materials};
use heapwright_journal::content::Role;
use heapwright_journal::{Content, Event, Line};
use heapwright_state::State;
use jiff::civil::date;

fn fold(plan: &Plan) -> State {
    State::fold(lines(plan).map(|line| {
        let (line, event) = Line::read(&line.unwrap()).unwrap();
        (line.digest(), event)
    }))
}

fn demo() -> Plan {
    Plan::demo(date(2026, 5, 1))
}

#[test]
fn a_garden_has_as_many_events_as_were_asked_for_and_all_are_understood() {
    for plan in [demo(), Plan::community(20_000)] {
        let mut count = 0;
        for line in lines(&plan) {
            let line = line.unwrap();
            let event = Event::read(&line).unwrap();
            assert!(event.content().is_some(), "{line}");
            assert_eq!(event.write().unwrap(), line);
            count += 1;
        }
        assert_eq!(count, plan.events, "{}", plan.name);
    }
}

#[test]
fn a_plan_gives_the_same_events_every_time_and_another_seed_others() {
    let of = |plan: &Plan| lines(plan).map(Result::unwrap).collect::<Vec<_>>();
    assert_eq!(of(&demo()), of(&demo()));
    assert_ne!(of(&demo()), of(&Plan { seed: 8, ..demo() }));
}

#[test]
fn every_kind_occurs_in_a_large_garden() {
    let mut kinds: BTreeMap<&str, usize> = BTreeMap::new();
    for event in Plan::community(20_000).journal() {
        *kinds.entry(event.content().unwrap().kind()).or_default() += 1;
    }
    for kind in Content::KINDS {
        assert!(kinds.contains_key(kind), "no {kind} among {kinds:?}");
    }
}

#[test]
fn materials_measures_and_conditions_are_those_of_the_catalogue() {
    let catalogue = Catalogue::built_in();
    let mut misfits = Vec::new();
    for (id, unit, conditions) in materials() {
        let material = catalogue.material(id).unwrap_or_else(|| panic!("no {id}"));
        assert!(
            catalogue.measure(unit).is_some() || ["kg"].contains(&unit),
            "{id}: no measure {unit}"
        );
        for condition in conditions {
            let known = catalogue.conditions_for(material);
            if !known.iter().any(|of| of.id == condition) {
                misfits.push(format!("{id} is never {condition}"));
            }
        }
    }
    assert!(misfits.is_empty(), "{misfits:?}");
}

#[test]
fn the_demo_is_a_household_with_something_of_everything() {
    let plan = demo();
    let state = fold(&plan);
    let garden = state.garden();
    assert!(garden.invented);
    assert_eq!(garden.name.as_deref(), Some(plan.name.as_str()));
    assert_eq!(garden.people.len(), 2);
    assert!(
        garden
            .people
            .values()
            .any(|person| person.role == Some(Role::Keeper))
    );
    assert_eq!(state.unknown_heaps().count(), 0);
    assert!(state.conflicts().is_empty());
    assert!(state.heaps().count() >= 3);
    assert!(state.heaps().any(|heap| heap.now().harvests > 0));
    assert!(
        state
            .heaps()
            .any(|heap| heap.now().stage == heapwright_journal::content::Stage::Active)
    );
    assert!(!state.stores().shelves.is_empty());
    assert!(state.beds().any(|bed| !bed.now().dressings.is_empty()));
    let last = plan
        .journal()
        .map(|event| event.recorded.instant_ms)
        .max()
        .unwrap();
    let last_day = heapwright_journal::Moment::new(last, 0)
        .unwrap()
        .local()
        .date();
    assert!(
        last_day >= date(2026, 4, 29) && last_day <= date(2026, 5, 1),
        "{last_day}"
    );
}

#[test]
fn some_events_are_recorded_days_later_and_on_many_devices() {
    let plan = Plan::community(5_000);
    let events: Vec<Event> = plan.journal().collect();
    let late = events
        .iter()
        .filter(|event| event.recorded.instant_ms - event.happened.instant_ms > 12 * 3_600_000)
        .count();
    assert!((50..1000).contains(&late), "{late} of 5000 are late");
    let devices: BTreeSet<_> = events.iter().map(|event| event.stamp.device).collect();
    assert_eq!(devices.len(), plan.people);
    let mut stamps: Vec<_> = events.iter().map(|event| event.stamp).collect();
    stamps.sort_unstable();
    stamps.dedup();
    assert_eq!(stamps.len(), events.len(), "a stamp was given twice");
}

/// After a good feed a heap warms, after weeks without it cools: over all readings of the middle
/// both must be seen, and nothing that no heap does.
#[test]
fn probes_show_warm_and_cold_heaps() {
    let mut temperatures_c: Vec<f64> = Plan::community(20_000)
        .journal()
        .filter_map(|event| match event.content() {
            Some(Content::Read(read)) => read.probes.first().map(|probe| probe.temperature_c),
            _ => None,
        })
        .collect();
    temperatures_c.sort_by(f64::total_cmp);
    let at = |share: f64| temperatures_c[(share * temperatures_c.len() as f64) as usize];
    assert!(at(0.0) > -8.0 && at(0.1) < 25.0, "{} {}", at(0.0), at(0.1));
    assert!(
        at(0.9) > 45.0 && at(0.999) < 76.0,
        "{} {}",
        at(0.9),
        at(0.999)
    );
}
