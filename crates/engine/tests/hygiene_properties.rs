//! What must hold of any record: more heat is never less, a longer record takes nothing back.
#![allow(clippy::unwrap_used, missing_docs)]

use heapwright_engine::hygiene::share::{Outline, hot_share_of_outline, treated};
use heapwright_engine::hygiene::{Findings, Point, RULES, Record, RecordOptions, Turn};
use proptest::prelude::*;

/// Minutes since the point before, temperature.
type Steps = Vec<(i64, f64)>;

fn any_steps() -> impl Strategy<Value = Steps> {
    prop::collection::vec((1_i64..2000, 20.0..80.0), 2..60)
}

fn any_turns() -> impl Strategy<Value = Vec<i64>> {
    prop::collection::vec(0_i64..30_000, 0..8)
}

fn findings(steps: &Steps, turned_at_min: &[i64], warmer_k: f64) -> Findings {
    let turns = turned_at_min
        .iter()
        .map(|minutes| Turn {
            time_ms: minutes * 60_000,
            mixing: 0.0,
        })
        .collect();
    let mut record = Record::new(turns, RecordOptions::default());
    let mut time_ms = 0;
    for (minutes, temperature_c) in steps {
        time_ms += minutes * 60_000;
        record
            .take(Point {
                time_ms,
                temperature_c: temperature_c + warmer_k,
                depth_m: None,
            })
            .unwrap();
    }
    record.findings().remove(0)
}

/// As much as sums of some dozen terms round.
const ROUNDING: f64 = 1e-9;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn more_heat_is_never_less(steps in any_steps(), turns in any_turns(), warmer_k in 0.0..20.0) {
        let as_is = findings(&steps, &turns, 0.0);
        let warmer = findings(&steps, &turns, warmer_k);
        prop_assert!(warmer.dose[1] >= as_is.dose[1] * (1.0 - ROUNDING));
        for (more, fewer) in warmer.hours[1].iter().zip(as_is.hours[1]) {
            prop_assert!(*more >= fewer - ROUNDING);
        }
        for (place, rule) in RULES.iter().enumerate() {
            // The organic rule has an upper end, which more heat can pass.
            if rule.band.most_c.is_infinite() {
                let progress = warmer.outcomes[1][place].progress;
                prop_assert!(progress >= as_is.outcomes[1][place].progress - ROUNDING, "{}", rule.id);
            }
        }
        // The interval encloses what was shown.
        prop_assert!(as_is.dose[0] <= as_is.dose[1] && as_is.dose[1] <= as_is.dose[2]);
    }

    #[test]
    fn a_longer_record_takes_nothing_back(steps in any_steps(), turns in any_turns(), cut in 1_usize..60) {
        let cut = cut.min(steps.len());
        let shorter = findings(&steps[..cut].to_vec(), &turns, 0.0);
        let longer = findings(&steps, &turns, 0.0);
        for (place, rule) in RULES.iter().enumerate() {
            let (was, is) = (shorter.outcomes[1][place], longer.outcomes[1][place]);
            prop_assert!(is.progress >= was.progress - ROUNDING, "{}: {was:?} {is:?}", rule.id);
            prop_assert!(!was.is_met() || is.is_met(), "{}", rule.id);
        }
        prop_assert!(longer.dose[1] >= shorter.dose[1] * (1.0 - ROUNDING));
    }

    #[test]
    fn more_turnings_never_lower_the_share(steps in any_steps(), turns in any_turns(), one_more in 0_i64..30_000, side_m in 0.4..2.0) {
        let share = |turns: &[i64]| {
            let hot = hot_share_of_outline(Outline::Box(side_m, side_m, side_m), false);
            treated(hot, &findings(&steps, turns, 0.0).stays)
        };
        let mut more = turns.clone();
        more.push(one_more);
        let (before, after) = (share(&turns), share(&more));
        // A turning that cuts a stay short before it counts as hot takes that stay from the heap: any
        // other can but add one.
        let hot = |turns: &[i64]| findings(&steps, turns, 0.0).stays.map(|stays| {
            stays.iter().filter(|stay| stay.is_hot()).count()
        });
        let (hot_before, hot_after) = (hot(&turns), hot(&more));
        if hot_after[1] >= hot_before[1] {
            prop_assert!(after.share.value >= before.share.value - ROUNDING);
        }
        if hot_after[0] >= hot_before[0] {
            prop_assert!(after.share.low >= before.share.low - ROUNDING);
        }
        prop_assert!(after.share.low <= after.share.value && after.share.value <= after.share.high);
        prop_assert!((after.share.value + after.never.value - 1.0).abs() < ROUNDING);
    }

    #[test]
    fn turnings_add_no_hours_and_no_dose(steps in any_steps(), turns in any_turns()) {
        let (turned, left) = (findings(&steps, &turns, 0.0), findings(&steps, &[], 0.0));
        prop_assert!(turned.dose[1] <= left.dose[1] + ROUNDING * left.dose[1].max(1.0));
        for (one, other) in turned.hours[1].iter().zip(left.hours[1]) {
            prop_assert!(*one <= other + 1e-6);
        }
        // Turned at a reading, before and after are both known.
        let mut time_min = 0;
        let at_readings: Vec<i64> = steps.iter().map(|(minutes, _)| { time_min += minutes; time_min }).collect();
        let turned = findings(&steps, &at_readings, 0.0);
        prop_assert!((turned.dose[1] - left.dose[1]).abs() <= ROUNDING * left.dose[1].max(1.0));
        for (one, other) in turned.hours[1].iter().zip(left.hours[1]) {
            prop_assert!((one - other).abs() < 1e-6);
        }
    }

    #[test]
    fn points_on_the_line_between_change_nothing(steps in any_steps()) {
        let mut finer = Steps::new();
        let mut last: Option<f64> = None;
        for (minutes, temperature_c) in &steps {
            // A gap that is too long stays one.
            match last {
                Some(last_c) if *minutes <= 1440 && *minutes > 1 => {
                    let half = minutes / 2;
                    #[allow(clippy::cast_precision_loss)]
                    let share = half as f64 / *minutes as f64;
                    finer.push((half, last_c + (temperature_c - last_c) * share));
                    finer.push((minutes - half, *temperature_c));
                }
                _ => finer.push((*minutes, *temperature_c)),
            }
            last = Some(*temperature_c);
        }
        let (coarse, fine) = (findings(&steps, &[], 0.0), findings(&finer, &[], 0.0));
        prop_assert!((coarse.dose[1] - fine.dose[1]).abs() <= 1e-6 * coarse.dose[1].max(1e-3));
        for (place, rule) in RULES.iter().enumerate() {
            let (one, other) = (coarse.outcomes[1][place], fine.outcomes[1][place]);
            prop_assert!((one.progress - other.progress).abs() < 1e-6, "{}", rule.id);
        }
    }
}
