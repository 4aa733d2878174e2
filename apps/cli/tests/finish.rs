//! Is it ready, where are the nutrients, what was kept out of the bin: an invented heap from its
//! first feed to its last test, as people see it and as scripts read it.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs;

use serde_json::Value;
use support::{Kept, Ran, golden_text, of_repository, typed};

/// What was written down, before the tests. Invented.
#[rustfmt::skip] // a table
const BEFORE: &[(&str, &[&str])] = &[
    ("2025-09-01T10:00:00+02:00", &["garden", "describe", "--name", "Small garden", "--latitude", "52.5", "--longitude", "13.4"]),
    ("2025-09-01T10:01:00+02:00", &["heap", "new", "Old", "--width", "1 m", "--height", "1 m"]),
    ("2025-09-01T10:02:00+02:00", &["feed", "Old", "20 buckets grass, 40 buckets shredded leaves, 10 buckets vegetable scraps"]),
    ("2026-03-20T10:00:00+01:00", &["harvest", "Old", "14 buckets", "--share", "all", "--sieve", "12", "--overs", "4 buckets"]),
    ("2026-03-20T10:01:00+01:00", &["heap", "new", "Bin", "--width", "1 m", "--height", "1 m", "--wall", "slats", "--cover", "lid"]),
    ("2026-03-20T10:02:00+01:00", &["feed", "Bin", "20 buckets grass, 30 buckets shredded leaves, 12 buckets vegetable scraps, 1 kg egg shells, 3 kg banana peel, 2 kg bones, 1 kg wood ash"]),
    ("2026-04-20T10:00:00+02:00", &["feed", "Bin", "2 buckets coffee grounds, 1 bucket cardboard"]),
    ("2026-08-01T10:00:00+02:00", &["turn", "Bin", "--how", "inside-out"]),
    ("2026-08-04T10:00:00+02:00", &["read", "Bin", "--temperature", "24 C core", "--air", "19 C", "--squeeze", "moist", "--fill", "55%", "--smell", "earthy", "--look", "crumbly"]),
];

/// The tests at home. Invented.
#[rustfmt::skip] // a table
const AT_HOME: &[(&str, &[&str])] = &[
    ("2026-08-10T10:00:00+02:00", &["test", "Bin", "--bag-days", "7", "--swollen", "no", "--bag-smell", "earthy"]),
    ("2026-08-10T10:01:00+02:00", &["test", "Bin", "--heated-to", "28 C", "--room", "21 C"]),
];

const LABORATORY: &[&str] = &[
    "test",
    "Bin",
    "--nitrogen",
    "1.8",
    "--ash",
    "30",
    "--carbon",
    "26",
    "--ammonium",
    "90",
    "--nitrate",
    "400",
    "--carbon-dioxide",
    "9",
];
const CRESS: &[&str] = &[
    "test",
    "Bin",
    "--sown",
    "30",
    "--sprouted",
    "27",
    "--control-sown",
    "30",
    "--control-sprouted",
    "29",
    "--root-mm",
    "30",
    "--control-root-mm",
    "34",
];

fn built(name: &str, tables: &[&[(&str, &[&str])]]) -> Kept {
    let mut kept = Kept::new(name);
    for (now, arguments) in tables.iter().copied().flatten() {
        kept.now = (*now).to_owned();
        kept.answer(arguments);
    }
    kept.now = "2026-08-11T10:00:00+02:00".to_owned();
    kept
}

fn valid(schema: &str, found: &Value) {
    let path = of_repository(&format!("crates/wire/schemas/{schema}.json"));
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let faults: Vec<String> = validator
        .iter_errors(found)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn golden(name: &str, kept: &Kept, arguments: &[&str]) {
    let text = kept.answer(arguments);
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
    assert!(!text.to_lowercase().contains("safe"), "{text}");
    golden_text(name, &format!("{}\n{text}", typed(arguments)));
}

#[test]
fn one_kind_of_sign_is_half_of_it_and_two_are_ready() {
    let mut kept = built("finish-ready", &[BEFORE, AT_HOME]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    valid("ready", &found);
    assert_eq!(found["verdict"], "nearly");
    assert_eq!(
        (&found["stability"], &found["maturity"]),
        (&"for".into(), &"untested".into())
    );
    assert_eq!(found["home_tests_only"], true);
    assert!(found["simulated"].is_null());
    // 28 over 21 degrees is class V, and in a home flask counts as IV.
    let flask = &found["signs"][0];
    assert_eq!(
        (&flask["test"], &flask["class"]),
        (&"self_heating".into(), &"class V".into())
    );
    assert_eq!(number(&flask["value"]), 7.0);
    // 24 over 19 degrees three days after the turning.
    let turned = &found["signs"][1];
    assert_eq!(
        (&turned["test"], number(&turned["value"])),
        (&"reheating".into(), 5.0)
    );
    assert!(turned["doubts"].as_array().unwrap().is_empty(), "{turned}");

    kept.answer(CRESS);
    golden("ready-at-home", &kept, &["ready", "Bin", "--no-simulation"]);
    kept.answer(LABORATORY);
    let found = kept.json(&["ready", "Bin"]);
    valid("ready", &found);
    assert_eq!(found["verdict"], "ready");
    assert_eq!(found["home_tests_only"], false);
    // The simulation stands apart and is no sign.
    assert!(number(&found["simulated"]["days"]) > 140.0);
    let carbon = found["signs"]
        .as_array()
        .unwrap()
        .iter()
        .find(|sign| sign["test"] == "respiration");
    // 9 mg of carbon dioxide are 2.456 mg of carbon: the classes are of carbon.
    assert!((number(&carbon.unwrap()["value"]) - 9.0 * 12.011 / 44.009).abs() < 1e-9);
    // The yield learns from the one harvest and follows the ash.
    assert_eq!(found["yield"]["harvests"], 1);
    assert_eq!(found["yield"]["ash_measured"], true);
    // A feed makes every test tell of other stuff.
    kept.now = "2026-08-12T10:00:00+02:00".to_owned();
    kept.answer(&["feed", "Bin", "1 bucket vegetable scraps"]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    assert_eq!(found["verdict"], "untested");
    assert!(
        found["signs"]
            .as_array()
            .unwrap()
            .iter()
            .all(|sign| sign["counts"] == false)
    );
}

#[test]
fn a_dry_or_small_heap_that_stays_cool_proves_little() {
    let mut kept = built("finish-dry", &[&BEFORE[..8]]);
    kept.now = "2026-08-04T10:00:00+02:00".to_owned();
    kept.answer(&[
        "read",
        "Bin",
        "--temperature",
        "20 C core",
        "--squeeze",
        "dusty",
    ]);
    let found = kept.json(&["ready", "Bin", "--no-simulation"]);
    assert_eq!(found["verdict"], "untested");
    let sign = &found["signs"][0];
    assert_eq!(
        (&sign["test"], &sign["counts"]),
        (&"reheating".into(), &false.into())
    );
    // No reading of the air either: what is usual in August stands in.
    assert_eq!(sign["doubts"].as_array().unwrap().len(), 3, "{sign}");
    // That it is hot counts whatever it is.
    kept.now = "2026-08-05T10:00:00+02:00".to_owned();
    kept.answer(&["read", "Bin", "--temperature", "45 C core", "--air", "20 C"]);
    assert_eq!(
        kept.json(&["ready", "Bin", "--no-simulation"])["verdict"],
        "not ready"
    );
}

#[test]
fn the_ledger_balances_and_tells_what_each_material_brought() {
    let kept = built("finish-ledger", &[BEFORE, AT_HOME]);
    kept.answer(LABORATORY);
    let found = kept.json(&["ledger", "Bin"]);
    valid("ledger", &found);
    assert_eq!(found["elements"].as_array().unwrap().len(), 5);
    for element in found["elements"].as_array().unwrap() {
        let of = |name: &str| number(&element[name]["value"]);
        let sum = of("gas_kg") + of("leached_kg") + of("now_kg");
        assert!((sum / of("fed_kg") - 1.0).abs() < 1e-9, "{element}");
        assert!(number(&element["closure"]) < 1e-9);
    }
    let sources = found["sources"].as_array().unwrap();
    let brought = |name: &str, element: &str| {
        let source = sources
            .iter()
            .find(|source| source["name"] == name)
            .unwrap();
        source[element]["value"].as_f64()
    };
    // A kilogram of egg shells, 8 % water, 37 % calcium in dry matter.
    assert!((brought("Egg shells", "calcium_kg").unwrap() - 0.92 * 0.37).abs() < 1e-9);
    assert!(
        brought("Banana peel", "potassium_kg").unwrap()
            > brought("Banana peel", "phosphorus_kg").unwrap()
    );
    assert_eq!(brought("Bones (fresh, cooked)", "potassium_kg"), None);
    // Phosphorus as labels name it.
    let phosphorus = &found["elements"][1];
    let label =
        number(&phosphorus["now_as_label_kg"]["value"]) / number(&phosphorus["now_kg"]["value"]);
    assert!((label - 2.2913).abs() < 5e-5);
    // What the laboratory found is beside the account: 1.8 % of the dry matter.
    let measured = number(&found["elements"][0]["measured_kg"]["value"]);
    assert!((measured / number(&found["dry_mass_kg"]["value"]) - 0.018).abs() < 1e-9);
    golden("ledger", &kept, &["ledger", "Bin", "--no-simulation"]);
}

#[test]
fn half_taken_out_is_told_apart_from_what_is_there() {
    let kept = built("finish-half", &[BEFORE]);
    let whole = kept.json(&["ledger", "Bin", "--no-simulation"]);
    kept.answer(&["harvest", "Bin", "--share", "half"]);
    let half = kept.json(&["ledger", "Bin", "--no-simulation"]);
    for (whole, half) in whole["elements"]
        .as_array()
        .unwrap()
        .iter()
        .zip(half["elements"].as_array().unwrap())
    {
        let fed = number(&whole["fed_kg"]["value"]);
        assert!((number(&half["fed_kg"]["value"]) - fed / 2.0).abs() < 1e-9 * fed);
        assert!((number(&half["taken_kg"]) - fed / 2.0).abs() < 1e-9 * fed);
    }
    kept.answer(&["harvest", "Bin", "--share", "all"]);
    let refusal = "nothing lies in this heap, as far as the journal tells: write down what goes in with `heapwright feed`";
    refused(&kept.run(&["ledger", "Bin"]), refusal);
    refused(&kept.run(&["ready", "Bin"]), refusal);
}

#[test]
fn a_moved_heap_takes_its_account_along() {
    let kept = built("finish-moved", &[BEFORE]);
    let before = kept.json(&["ledger", "Bin", "--no-simulation"]);
    kept.answer(&["heap", "new", "Box"]);
    kept.answer(&["heap", "move", "Bin", "Box", "--share", "25%"]);
    let after = kept.json(&["ledger", "Box", "--no-simulation"]);
    for (before, after) in before["elements"]
        .as_array()
        .unwrap()
        .iter()
        .zip(after["elements"].as_array().unwrap())
    {
        let fed = number(&before["fed_kg"]["value"]);
        assert!((number(&after["fed_kg"]["value"]) - fed / 4.0).abs() < 1e-9 * fed);
        assert_eq!(number(&after["taken_kg"]), 0.0);
    }
}

#[test]
fn months_and_kinds_add_up_and_the_climate_is_a_range() {
    let kept = built("finish-diversion", &[BEFORE]);
    let found = kept.json(&["diversion"]);
    valid("diversion", &found);
    let months = found["months"].as_array().unwrap();
    let names: Vec<&str> = months
        .iter()
        .map(|month| month["month"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["2025-09", "2026-03", "2026-04"]);
    for kind in found["kinds"].as_array().unwrap() {
        let field = format!("{}_kg", kind["kind"].as_str().unwrap());
        let sum: f64 = months.iter().map(|month| number(&month[&field])).sum();
        let whole = number(&kind["wet_mass_kg"]["value"]);
        assert!((sum / whole - 1.0).abs() < 1e-9, "{field}: {sum} {whole}");
    }
    // Wood ash is no waste that rots.
    assert!((number(&found["not_waste_kg"]) - 1.0).abs() < 1e-9);
    let climate = &found["climate"];
    assert!(number(&climate["from_kg"]) < 0.0 && number(&climate["to_kg"]) > 0.0);
    let of_april = kept.json(&["diversion", "--from", "2026-04-01", "--to", "2026-04-30"]);
    assert_eq!(of_april["months"].as_array().unwrap().len(), 1);
    let nothing = kept.json(&["diversion", "--from", "2026-07-01"]);
    valid("diversion", &nothing);
    assert!(nothing["climate"].is_null());
    golden("diversion", &kept, &["diversion"]);
    refused(
        &kept.run(&["diversion", "--from", "2026-05-01", "--to", "2026-04-01"]),
        "--from",
    );
    refused(&kept.run(&["diversion", "--from", "some day"]), "--from");
}

#[test]
fn sheets_tell_how_and_need_no_journal() {
    let kept = Kept::new("finish-how");
    golden("ready-how-bag", &kept, &["ready", "--how", "bag"]);
    let all = kept.json(&["ready", "--how", "list"]);
    for sheet in all.as_array().unwrap() {
        valid("home-test", sheet);
        let name = sheet["name"].as_str().unwrap();
        golden_of_width(&kept, name);
    }
    valid("home-test", &kept.json(&["ready", "--how", "cress"]));
    refused(
        &kept.run(&["ready", "--how", "x-ray"]),
        "use one of sample, squeeze, bag",
    );
    refused(&kept.run(&["ready", "Bin"]), "");
}

/// Every command that a sheet says to type is understood.
fn golden_of_width(kept: &Kept, name: &str) {
    let text = kept.answer(&["ready", "--how", name]);
    assert!(
        text.lines().all(|line| line.chars().count() <= 80),
        "{text}"
    );
}

#[test]
fn what_the_sheets_say_to_type_is_understood() {
    let kept = built("finish-record", &[&BEFORE[..6]]);
    let all = kept.json(&["ready", "--how", "list"]);
    let mut typed = 0;
    for sheet in all.as_array().unwrap() {
        let record = sheet["record"].as_str().unwrap();
        let Some(command) = record.strip_prefix("heapwright ") else {
            continue;
        };
        // Quoted words hold together.
        let words: Vec<&str> = command
            .split('"')
            .enumerate()
            .flat_map(|(index, piece)| {
                if index % 2 == 1 {
                    vec![piece]
                } else {
                    piece.split_whitespace().collect()
                }
            })
            .collect();
        // Its heap is the only one that has anything to tell of.
        let mut all = vec![words[0], "Bin"];
        all.extend(&words[1..]);
        kept.answer(&all);
        typed += 1;
    }
    assert_eq!(typed, 7);
}

fn refused(ran: &Ran, word: &str) {
    assert!(
        ran.code != 0 && ran.out.is_empty(),
        "{}{}",
        ran.out,
        ran.err
    );
    assert_eq!(ran.err.lines().count(), 1, "{}", ran.err);
    assert!(ran.err.contains(word), "no \"{word}\" in: {}", ran.err);
}
