//! What the probe asks: too hot, alarms, cooling, readings that are due.

use super::*;

#[test]
fn heat_is_answered_by_its_degree() {
    for (shown_c, height_m, dry, expected) in [
        (64.0, 1.0, false, None),
        (66.0, 1.0, false, Some((Kind::Turn, Urgency::Soon))),
        (72.0, 1.0, false, Some((Kind::CoolDown, Urgency::Now))),
        (72.0, 1.0, true, Some((Kind::CoolDown, Urgency::Now))),
        (72.0, 2.5, false, Some((Kind::CoolDown, Urgency::Now))),
        (72.0, 2.5, true, Some((Kind::StandBack, Urgency::Now))),
        (86.0, 1.0, false, Some((Kind::StandBack, Urgency::Now))),
    ] {
        let mut case = Case::new(9.0, height_m);
        case.feed(
            9.0,
            vec![
                part("grass_clippings_fresh", 8.0, "kg"),
                part("dry_leaves_mixed", 9.0, "kg"),
            ],
            Some(4.0),
        );
        case.core(0.5, shown_c);
        case.look(0.4, |read| {
            read.squeeze = Some(if dry { Squeeze::Dry } else { Squeeze::Moist });
        });
        let first = case.asked().needs.first().cloned();
        let found = first.as_ref().map(|need| (need.what.kind(), need.urgency));
        assert_eq!(found, expected, "{shown_c} {height_m} {dry}");
        if let Some(need) = first.filter(|need| need.what == What::StandBack) {
            // Nobody is sent to a heap that may burn, and nothing else is asked of it.
            assert!(need.entry.is_none());
            assert_eq!(case.kinds(), [Kind::StandBack]);
            assert_eq!(need.cautions, [Caution::Fire]);
        }
    }
}

#[test]
fn what_was_too_hot_and_turned_is_read_again_the_next_day() {
    let mut case = Case::fed(9.0);
    case.core(0.5, 73.0);
    let need = case.need(Kind::CoolDown);
    assert!(need.cautions.contains(&Caution::Steam));
    case.turn(0.2);
    let answer = case.asked();
    assert!(answer.needs.is_empty(), "{:#?}", answer.needs);
    // A day after the turning, to the minute, and quiet no longer than that.
    let read = answer.dates.iter().find(|date| date.kind == Kind::ReadHeat);
    let read = read.unwrap();
    let expected: Moment = "2026-06-16T07:12:00+02:00".parse().unwrap();
    assert_eq!(read.on, On::Time(expected));
    assert!(read.cautions.contains(&Caution::Fire));
    let again = answer.quiet[0].again.unwrap();
    assert_eq!(again.to_string(), "2026-06-16");

    let mut case = Case::fed(9.0);
    case.core(2.0, 73.0);
    case.turn(1.5);
    let need = case.need(Kind::ReadHeat);
    assert_eq!(need.urgency, Urgency::Now);
    assert!(
        matches!(need.because[0], Because::HotUnread { temperature_c, .. } if temperature_c == 73.0)
    );
    assert!(need.due.unwrap().instant_ms < now().instant_ms);
    assert!(need.cautions.contains(&Caution::Fire));
    // Turned once more, it is still not known whether it cooled.
    case.turn(0.5);
    assert_eq!(case.need(Kind::ReadHeat).urgency, Urgency::Now);
    case.core(0.1, 52.0);
    assert!(!case.kinds().contains(&Kind::ReadHeat));
    // Neither turned nor read for long: read it, rather than turn it for an old reading.
    let mut case = Case::fed(40.0);
    case.core(35.0, 73.0);
    assert!(!case.kinds().contains(&Kind::CoolDown));
    assert_eq!(case.need(Kind::ReadHeat).urgency, Urgency::Now);
}

#[test]
fn an_alarm_stands_until_the_probe_shows_less_there() {
    let probe = |temperature_c, place| Probe {
        temperature_c,
        depth_m: None,
        place,
    };
    // However long ago it was read.
    let mut case = Case::fed(60.0);
    case.core(50.0, 88.0);
    assert_eq!(case.kinds(), [Kind::StandBack]);
    // A cool edge says nothing of the core; nor does what was done since.
    case.look(3.0, |read| {
        read.probes.push(probe(40.0, Some(ProbePlace::Edge)));
    });
    case.turn(2.0);
    assert_eq!(case.kinds(), [Kind::StandBack]);
    // A probe of which no place is told is one of the core.
    case.look(1.0, |read| read.probes.push(probe(60.0, None)));
    assert!(!case.kinds().contains(&Kind::StandBack));
    // An edge is cleared by itself, or by the core.
    for (place, clears) in [
        (Some(ProbePlace::Edge), true),
        (Some(ProbePlace::Core), true),
        (Some(ProbePlace::Top), false),
    ] {
        let mut case = Case::fed(30.0);
        case.look(9.0, |read| {
            read.probes.push(probe(86.0, Some(ProbePlace::Edge)));
            read.probes.push(probe(70.0, Some(ProbePlace::Core)));
        });
        case.look(1.0, |read| read.probes.push(probe(50.0, place)));
        assert_eq!(
            case.kinds().contains(&Kind::StandBack),
            !clears,
            "{place:?}"
        );
    }
}

#[test]
fn a_high_hot_dry_heap_is_kept_away_from_until_a_handful_or_the_probe_says_otherwise() {
    let high = || {
        let mut case = Case::new(30.0, 2.5);
        case.feed(
            30.0,
            vec![
                part("grass_clippings_fresh", 8.0, "kg"),
                part("dry_leaves_mixed", 9.0, "kg"),
            ],
            Some(4.0),
        );
        case.core(20.0, 72.0);
        case.look(19.9, |read| read.squeeze = Some(Squeeze::Dry));
        case
    };
    assert_eq!(high().kinds(), [Kind::StandBack]);
    let mut case = high();
    case.feed(2.0, vec![part("grass_clippings_fresh", 8.0, "kg")], None);
    case.water(1.0, 5.0);
    assert_eq!(case.kinds(), [Kind::StandBack]);
    case.look(0.5, |read| read.squeeze = Some(Squeeze::Moist));
    assert!(!case.kinds().contains(&Kind::StandBack));
    let mut case = high();
    case.core(1.0, 60.0);
    assert!(!case.kinds().contains(&Kind::StandBack));
    // A handful of long before the reading says nothing of that day.
    let mut case = Case::new(30.0, 2.5);
    case.feed(30.0, vec![part("straw_wheat", 9.0, "kg")], None);
    case.look(20.0, |read| read.squeeze = Some(Squeeze::Dry));
    case.core(1.0, 72.0);
    assert!(case.kinds().contains(&Kind::CoolDown));
}

#[test]
fn a_heap_that_cools_is_turned_and_one_that_was_turned_is_not() {
    let mut case = Case::fed(20.0);
    case.core(10.0, 58.0);
    case.core(1.0, 47.0);
    let need = case.need(Kind::Turn);
    assert!(
        matches!(need.because[0], Because::Cooling { from_c, to_c, .. } if (from_c, to_c) == (58.0, 47.0))
    );
    case.turn(0.9);
    assert!(!case.kinds().contains(&Kind::Turn));
    // Less than what two points of one heap differ by is no cooling.
    let mut case = Case::fed(20.0);
    case.core(10.0, 58.0);
    case.core(1.0, 49.0);
    assert!(!case.kinds().contains(&Kind::Turn));
}

#[test]
fn a_hot_heap_is_read_every_few_days() {
    let mut case = Case::fed(20.0);
    case.core(2.5, 52.0);
    assert!(!case.kinds().contains(&Kind::ReadHeat));
    let later = case.asked().dates;
    let read = later.iter().find(|date| date.kind == Kind::ReadHeat);
    assert_eq!(read.unwrap().on.day().to_string(), "2026-06-16");
    let mut case = Case::fed(20.0);
    case.core(3.5, 52.0);
    let need = case.need(Kind::ReadHeat);
    assert!(need.entry.is_none(), "numbers are typed");
    assert!(need.due.unwrap().instant_ms < now().instant_ms);
}

#[test]
fn a_hold_is_read_once_a_day_and_says_what_is_missing() {
    let mut case = Case::fed(20.0);
    case.feed(19.0, vec![part("chicken_layer", 2.0, "kg")], None);
    for day in 0..8 {
        case.core(9.0 - f64::from(day), 61.0);
    }
    // The last reading was two days ago: one is overdue.
    let need = case.need(Kind::ReadHeat);
    assert!(
        need.because.iter().any(|because| matches!(
            because,
            Because::RuleTime { raw: true, missing_s, .. } if *missing_s > 0.0
        )),
        "{need:#?}"
    );
    case.core(0.25, 61.0);
    let dates = case.asked().dates;
    let read = dates.iter().find(|date| date.kind == Kind::ReadHeat);
    // A day after the last reading, to the minute.
    let expected: Moment = "2026-06-16T06:00:00+02:00".parse().unwrap();
    assert_eq!(read.unwrap().on, On::Time(expected));
}

#[test]
fn turnings_that_a_rule_asks_for_come_when_they_count() {
    let mut case = Case::fed(20.0);
    case.feed(19.0, vec![part("chicken_layer", 2.0, "kg")], None);
    for half_day in 0..30 {
        case.core(15.0 - f64::from(half_day) / 2.0, 60.0);
        if half_day == 12 {
            case.turn(8.9);
        }
    }
    let need = case.need(Kind::Turn);
    assert!(
        need.because
            .iter()
            .any(|because| matches!(because, Because::RuleTurns { raw: true, .. })),
        "{need:#?}"
    );
    assert_eq!(
        need.what,
        What::Turn {
            how: Thoroughness::InsideOut
        }
    );
}
