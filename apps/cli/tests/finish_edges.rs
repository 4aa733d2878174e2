//! Is it ready, how much will there be, what adds up: where a heap gets stuff from another one, a
//! later test says nothing, a harvest cannot be true, or a table would be long.

#![allow(clippy::unwrap_used)]

mod support;

use serde_json::Value;
use support::Kept;

/// What was written down. Invented.
#[rustfmt::skip] // a table
const BEFORE: &[(&str, &[&str])] = &[
    ("2026-03-20T10:01:00+01:00", &["heap", "new", "Bin", "--width", "1 m", "--height", "1 m"]),
    ("2026-03-20T10:02:00+01:00", &["feed", "Bin", "20 buckets grass, 30 buckets shredded leaves, 12 buckets vegetable scraps"]),
];

/// Tests that Bin passes. Invented.
#[rustfmt::skip] // a table
const PASSED: &[(&str, &[&str])] = &[
    ("2026-08-10T10:00:00+02:00", &["test", "Bin", "--bag-days", "7", "--swollen", "no", "--bag-smell", "earthy"]),
    ("2026-08-10T10:01:00+02:00", &["test", "Bin", "--nitrogen", "1.8", "--ash", "30", "--ammonium", "90", "--nitrate", "400"]),
    ("2026-08-10T10:02:00+02:00", &["read", "Bin", "--fill", "55%"]),
];

fn built(name: &str, tables: &[&[(&str, &[&str])]]) -> Kept {
    let mut kept = Kept::new(name);
    for (now, arguments) in tables.iter().copied().flatten() {
        kept.now = (*now).to_owned();
        kept.answer(arguments);
    }
    kept
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn of<'a>(answer: &'a Value, field: &str, end: &str) -> &'a Value {
    &answer["yield"][field][end]
}

#[test]
fn what_is_moved_in_makes_earlier_tests_tell_of_other_stuff() {
    let mut kept = built("edges-moved", &[BEFORE]);
    // Raw stuff of another heap, fed there long before Bin was tested.
    kept.now = "2026-07-01T10:00:00+02:00".to_owned();
    kept.answer(&["heap", "new", "Pile"]);
    kept.answer(&["feed", "Pile", "5 buckets horse manure"]);
    for (now, arguments) in PASSED {
        kept.now = (*now).to_owned();
        kept.answer(arguments);
    }
    kept.now = "2026-08-11T10:00:00+02:00".to_owned();
    let question = ["ready", "Bin", "--no-simulation"];
    assert_eq!(kept.json(&question)["verdict"], "ready");
    let ledger = ["ledger", "Bin", "--no-simulation"];
    let volume_l = number(&kept.json(&ledger)["volume_l"]["value"]);
    assert!((volume_l - 550.0).abs() < 1.0, "{volume_l}");

    kept.answer(&["heap", "move", "Pile", "Bin", "--share", "all"]);
    let found = kept.json(&question);
    assert_eq!(found["verdict"], "untested");
    for sign in found["signs"].as_array().unwrap() {
        assert_eq!(sign["counts"], false, "{sign}");
        assert!(sign["doubts"].to_string().contains("moved in"), "{sign}");
    }
    assert_eq!(found["yield"]["ash_measured"], false);
    let found = kept.json(&ledger);
    assert!(
        found["elements"][0]["measured_kg"]["value"].is_null(),
        "{found}"
    );
    assert!((number(&found["volume_l"]["value"]) - volume_l).abs() > 1.0);
    // A test after the move tells of all that is there.
    kept.now = "2026-08-20T10:00:00+02:00".to_owned();
    kept.answer(&["test", "Bin", "--bag-days", "7", "--swollen", "yes"]);
    assert_eq!(kept.json(&question)["verdict"], "not ready");
}

#[test]
fn a_height_before_some_was_taken_out_tells_no_volume() {
    let kept = built("edges-taken", &[BEFORE, PASSED]);
    let ledger = ["ledger", "Bin", "--no-simulation"];
    let before_l = number(&kept.json(&ledger)["volume_l"]["value"]);
    kept.answer(&["harvest", "Bin", "--share", "half"]);
    let after_l = number(&kept.json(&ledger)["volume_l"]["value"]);
    assert!(after_l < 0.7 * before_l, "{before_l} {after_l}");
}

#[test]
fn a_test_that_says_nothing_leaves_an_earlier_one_standing() {
    let mut kept = built("edges-bag", &[BEFORE]);
    kept.now = "2026-08-01T10:00:00+02:00".to_owned();
    kept.answer(&["test", "Bin", "--bag-days", "7", "--swollen", "yes"]);
    kept.now = "2026-08-05T10:00:00+02:00".to_owned();
    kept.answer(&["test", "Bin", "--bag-days", "1", "--swollen", "no"]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    assert_eq!(
        (&found["verdict"], &found["stability"]),
        (&"not ready".into(), &"against".into())
    );
    // Both are shown, for the later one would be missed.
    let counts: Vec<bool> = found["signs"]
        .as_array()
        .unwrap()
        .iter()
        .map(|sign| sign["counts"].as_bool().unwrap())
        .collect();
    assert_eq!(counts, [true, false]);
    // The same test done well stands for both.
    kept.now = "2026-08-10T10:00:00+02:00".to_owned();
    kept.answer(&[
        "test",
        "Bin",
        "--bag-days",
        "7",
        "--swollen",
        "no",
        "--bag-smell",
        "earthy",
    ]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    assert_eq!(found["stability"], "for");
    assert_eq!(found["signs"].as_array().unwrap().len(), 1);
}

/// A garden that had some harvests of a heap alike, each told in kilograms.
fn harvested(name: &str, masses: &[&str]) -> Kept {
    let mut kept = Kept::new(name);
    for (index, mass) in masses.iter().enumerate() {
        let heap = format!("Old {index}");
        kept.now = format!("2025-{:02}-01T10:00:00+01:00", index + 1);
        kept.answer(&["heap", "new", &heap, "--width", "1 m", "--height", "1 m"]);
        kept.answer(&[
            "feed",
            &heap,
            "20 buckets grass, 30 buckets shredded leaves",
        ]);
        kept.now = format!("2025-{:02}-01T10:00:00+01:00", index + 7);
        kept.answer(&["harvest", &heap, mass, "--share", "all"]);
    }
    for (now, arguments) in BEFORE {
        kept.now = (*now).to_owned();
        kept.answer(arguments);
    }
    kept
}

#[test]
fn compost_as_it_lies_weighs_more_than_its_dry_matter_whatever_was_learnt() {
    let kept = harvested("edges-light", &["14 kg", "14 kg", "14 kg", "14 kg"]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    assert_eq!(found["yield"]["harvests"], 4);
    assert!(number(&found["yield"]["factor"]) < 0.5, "{found}");
    for end in ["value", "low", "high"] {
        let dry = number(of(&found, "dry_mass_kg", end));
        let wet = number(of(&found, "wet_mass_kg", end));
        assert!(dry < 0.8 * wet, "{end}: {dry} {wet}");
    }
    // What passes the sieve and what it holds back are the whole.
    let volume = |field| number(of(&found, field, "value"));
    let sum = volume("sieved_l") + volume("overs_l");
    assert!((sum / volume("volume_l") - 1.0).abs() < 1e-9);
}

#[test]
fn a_harvest_that_cannot_be_true_is_told() {
    let kept = harvested("edges-slip", &["60 kg", "6000 kg"]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    assert_eq!(found["yield"]["harvests"], 1);
    assert_eq!(found["yield"]["harvests_left_out"], 1);
    let text = kept.answer(&["ready", "Bin", "--no-simulation"]);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("One harvest is left out"), "{text}");
    let kept = harvested("edges-fine", &["60 kg"]);
    let text = kept.answer(&["ready", "Bin", "--no-simulation"]);
    assert!(!text.contains("left out"), "{text}");
}
