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

/// A figure of a table in tenths of its unit.
fn tenths(cell: &str) -> i64 {
    let figure: String = cell
        .chars()
        .take_while(|letter| letter.is_ascii_digit() || *letter == '.')
        .collect();
    let (whole, part) = figure.split_once('.').unwrap_or((&figure, "0"));
    assert_eq!(part.len(), 1, "{cell}");
    whole.parse::<i64>().unwrap() * 10 + part.parse::<i64>().unwrap()
}

#[test]
fn months_and_kinds_add_up_as_they_are_shown() {
    let mut kept = built("edges-sums", &[BEFORE]);
    kept.now = "2026-04-20T10:00:00+02:00".to_owned();
    kept.answer(&[
        "feed",
        "Bin",
        "3.46 kg vegetable scraps, 2.46 kg corrugated cardboard, 5.46 kg grass",
    ]);
    kept.now = "2026-05-20T10:00:00+02:00".to_owned();
    kept.answer(&[
        "feed",
        "Bin",
        "1.36 kg vegetable scraps, 1.36 kg corrugated cardboard, 1.36 kg grass",
    ]);
    let text = kept.answer(&["diversion"]);
    let rows: Vec<Vec<i64>> = text
        .lines()
        .skip_while(|line| !line.starts_with("month"))
        .skip(1)
        .take_while(|line| !line.is_empty())
        .map(|line| {
            line.split("  ")
                .map(str::trim)
                .filter(|cell| !cell.is_empty())
                .skip(1)
                .map(|cell| if cell == "–" { 0 } else { tenths(cell) })
                .collect()
        })
        .collect();
    assert_eq!(rows.len(), 4, "{text}");
    for row in &rows {
        let (all, each) = row.split_last().unwrap();
        assert_eq!(each.len(), 3, "{text}");
        assert_eq!(each.iter().sum::<i64>(), *all, "{text}");
    }
    for column in 0..4 {
        let sum: i64 = rows[..3].iter().map(|row| row[column]).sum();
        assert_eq!(sum, rows[3][column], "{text}");
    }
    // And the whole is what a script reads, but for rounding.
    let found = kept.json(&["diversion"]);
    let whole: f64 = found["kinds"]
        .as_array()
        .unwrap()
        .iter()
        .map(|kind| number(&kind["wet_mass_kg"]["value"]))
        .sum();
    #[allow(clippy::cast_precision_loss)] // a few kilograms
    let shown = rows[3][3] as f64 / 10.0;
    assert!((shown - whole).abs() < 0.5, "{shown} {whole}");
}

#[test]
fn a_ledger_of_many_materials_names_the_largest_and_adds_up_the_others() {
    let kept = built("edges-many", &[BEFORE]);
    kept.answer(&["feed", "Bin", "1 kg egg shells, 3 kg banana peel, 2 kg bones, 1 kg wood ash, 2 kg coffee grounds, 1 kg corrugated cardboard, 2 kg straw, 1 kg sawdust, 2 kg horse manure, 1 kg hay, 0.1 kg newspaper, 0.1 kg tea leaves"]);
    let found = kept.json(&["ledger", "Bin", "--no-simulation"]);
    let sources = found["sources"].as_array().unwrap();
    assert_eq!(sources.len(), 15, "{found}");
    let text = kept.answer(&["ledger", "Bin", "--no-simulation"]);
    let table: Vec<&str> = text
        .lines()
        .skip_while(|line| !line.starts_with("g of the element"))
        .skip(1)
        .take_while(|line| !line.starts_with("went in"))
        .collect();
    let named = table
        .iter()
        .filter(|line| line.len() > 40 && !line.starts_with("others"))
        .count();
    assert_eq!(named, 12, "{text}");
    assert!(
        table.last().unwrap().starts_with("others together (3)"),
        "{text}"
    );
    // The largest bringer of calcium is named though it brings hardly any nitrogen.
    assert!(
        table.iter().any(|line| line.starts_with("Egg shells")),
        "{text}"
    );
    assert!(
        text.contains("the others stand together in one row"),
        "{text}"
    );
    // What is known in part only stands below what is known whole.
    let below = table
        .iter()
        .position(|line| *line == "not all known:")
        .unwrap();
    assert!(
        table[..below].iter().all(|line| !line.contains('?')),
        "{text}"
    );
    assert!(
        table[below + 1..table.len() - 1]
            .iter()
            .all(|line| line.contains('?')),
        "{text}"
    );
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}
