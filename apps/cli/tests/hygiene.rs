//! `hygiene` through the program: records from files, heaps of the journal, what is refused, what may
//! never be said.

#![allow(clippy::unwrap_used)]

mod support;

use std::fmt::Write;
use std::fs;

use jsonschema::Validator;
use serde_json::Value;
use support::{Kept, of_repository, run_with};

/// A record of an hour a row from 1 May on, at what `shown` says of each hour.
fn record(hours: u32, shown: impl Fn(u32) -> f64) -> String {
    let mut text = String::from("time,temperature_c\n");
    for hour in 0..=hours {
        let (day, of_day) = (hour / 24 + 1, hour % 24);
        writeln!(text, "2026-05-{day:02}T{of_day:02}:00:00Z,{}", shown(hour)).unwrap();
    }
    text
}

fn schema(name: &str) -> Validator {
    let path = of_repository(&format!("crates/wire/schemas/{name}.json"));
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

/// The JSON of a record on standard input, as its schema has it.
fn judged(text: &str, more: &[&str]) -> Value {
    let mut arguments = vec!["hygiene", "--json", "--csv", "-"];
    arguments.extend(more);
    let ran = run_with(&arguments, text.as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{more:?}");
    never_said(&ran.out);
    let found: Value = serde_json::from_str(&ran.out).unwrap();
    let faults: Vec<String> = schema("hygiene-answer")
        .iter_errors(&found)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    found
}

fn rule<'a>(found: &'a Value, id: &str) -> &'a Value {
    let rules = found["rules"].as_array().unwrap();
    rules.iter().find(|rule| rule["id"] == id).unwrap()
}

/// Phrases that may never stand in anything that tells of hygiene.
const NEVER: [&str; 20] = [
    " safe",
    "safely",
    "safety",
    "killed",
    "kills",
    "sterile",
    "sterilis",
    "disinfect",
    "germ-free",
    "germfree",
    "free of germs",
    "free of pathogens",
    "pathogen-free",
    "no pathogens",
    "guarantee",
    "harmless",
    "certified compost",
    "risk-free",
    "no risk",
    "weed-free",
];

fn never_said(text: &str) {
    let text = text.to_lowercase();
    for phrase in NEVER {
        assert!(!text.contains(phrase), "\"{phrase}\" in:\n{text}");
    }
}

const IDS: [&str; 20] = [
    "us_psrp",
    "us_pfrp_static",
    "us_pfrp_turned",
    "us_organic_static",
    "us_organic_turned",
    "eu_70c_1h",
    "eu_fpr_55",
    "eu_fpr_60",
    "eu_fpr_65",
    "eu_fpr_70",
    "de_55",
    "de_60",
    "de_65",
    "uk_closed_60",
    "uk_windrow_60",
    "ca_static",
    "ca_turned",
    "au_standard",
    "au_high_risk",
    "who_50",
];

/// HY-12 and HY-15: three days at 55 degrees, 40 CFR 503 App. B.
#[test]
fn three_days_at_55() {
    let text = record(72, |_| 55.0);
    let found = judged(&text, &["--method", "static"]);
    let ids: Vec<&str> = found["rules"]
        .as_array()
        .unwrap()
        .iter()
        .map(|rule| rule["id"].as_str().unwrap())
        .collect();
    assert_eq!(ids, IDS);
    let pfrp = rule(&found, "us_pfrp_static");
    assert_eq!(
        (&pfrp["status"], &pfrp["progress"]),
        (&"met".into(), &1.0.into())
    );
    assert_eq!(pfrp["missing"]["turns"], 0);
    assert_eq!(pfrp["jurisdiction"], "United States");
    // A probe that may show a degree too much does not settle it.
    assert_eq!(pfrp["status_low"], "not_met");
    assert_eq!(rule(&found, "us_pfrp_turned")["status"], "not_applicable");
    assert!(rule(&found, "us_pfrp_turned")["missing"].is_null());
    let dose = &found["dose"];
    assert!((dose["value"].as_f64().unwrap() - 1.142).abs() < 0.005);
    assert!(dose["low"].as_f64().unwrap() < 0.9 && dose["high"].as_f64().unwrap() > 1.5);
    let hours = &found["hours_at_or_above"];
    for (least, expected) in [
        ("40", 72.0),
        ("50", 72.0),
        ("55", 72.0),
        ("60", 0.0),
        ("65", 0.0),
        ("70", 0.0),
    ] {
        assert_eq!(hours[least], expected, "{least}");
    }
    // The same in a heap that was turned twice.
    let turns = [
        "--turn",
        "2026-05-02T00:00:00Z",
        "--turn",
        "2026-05-03T00:00Z",
    ];
    let turned = judged(&text, &turns);
    assert_eq!(turned["method"], "turned");
    let pfrp = rule(&turned, "us_pfrp_turned");
    assert_eq!(pfrp["status"], "not_met");
    assert_eq!(
        (&pfrp["missing"]["turns"], &pfrp["missing"]["days"]),
        (&3.into(), &12.0.into())
    );
    assert_eq!(rule(&turned, "us_pfrp_static")["status"], "not_applicable");
    let (once, thrice) = (&found["share_treated"], &turned["share_treated"]);
    assert!((once["value"].as_f64().unwrap() - 0.343).abs() < 1e-9);
    assert!((thrice["never_heated"]["value"].as_f64().unwrap() - 0.657_f64.powi(3)).abs() < 1e-9);
    assert_eq!((&thrice["stays"], &thrice["turns"]), (&3.into(), &2.into()));
}

/// Fifteen days with five turnings, 40 CFR 503 App. B, at fifteen degrees Fahrenheit over its limit.
#[test]
fn fifteen_days_turned_in_fahrenheit() {
    let text = record(360, |_| 146.0).replace("temperature_c", "temperature_f");
    let mut arguments = Vec::new();
    let days = [
        "2026-05-03",
        "2026-05-06",
        "2026-05-08",
        "2026-05-11",
        "2026-05-14",
    ];
    for day in &days {
        arguments.extend(["--turn", day]);
    }
    let text = text.replace("00Z,", "00,");
    let found = judged(&text, &arguments);
    for id in [
        "us_pfrp_turned",
        "us_organic_turned",
        "au_high_risk",
        "ca_turned",
    ] {
        assert_eq!(rule(&found, id)["status"], "met", "{id}");
    }
    let fewer = judged(&text, &arguments[..8]);
    assert_eq!(rule(&fewer, "us_pfrp_turned")["status"], "not_met");
    assert_eq!(rule(&fewer, "us_pfrp_turned")["missing"]["turns"], 1);
}

#[test]
fn depths_tell_where_the_cool_outside_ends() {
    let mut text = String::from("time,temperature_c,depth_cm\n");
    for hour in 0..72 {
        let (day, of_day) = (hour / 24 + 1, hour % 24);
        let time = format!("2026-05-{day:02}T{of_day:02}:00:00Z");
        writeln!(text, "{time},41,10\n{time},60,30").unwrap();
    }
    let size = ["--width", "1 m", "--height", "1 m"];
    let found = judged(&text, &size);
    assert_eq!(found["record"]["depth_cm"], 30.0);
    assert_eq!(found["share_treated"]["basis"], "depths");
    let hot = &found["share_treated"]["hot_share"];
    // The outside ends between 10 and 30 cm: 0.8, 0.6 and 0.4 of each side are left.
    for (end, share) in [("high", 0.512), ("value", 0.216), ("low", 0.064)] {
        assert!((hot[end].as_f64().unwrap() - share).abs() < 1e-9, "{hot}");
    }
    let mut shallow = size.to_vec();
    shallow.extend(["--depth", "10 cm"]);
    let found = judged(&text, &shallow);
    assert_eq!(found["hours_at_or_above"]["55"], 0.0);
    assert_eq!(found["share_treated"]["value"], 0.0);
    assert_eq!(found["other_depths"][0]["hours_at_or_above"]["55"], 71.0);
}

#[test]
fn gaps_are_told() {
    let text =
        "time,temperature_c\n2026-05-01,60\n2026-05-02,60\n2026-05-04T00:00,60\n2026-05-05,60\n";
    let found = judged(text, &[]);
    assert_eq!(found["record"]["not_credited_hours"], 48.0);
    assert_eq!(found["hours_at_or_above"]["55"], 48.0);
    assert_eq!(rule(&found, "uk_closed_60")["status"], "not_met");
    let notices = found["notices"].to_string();
    assert!(notices.contains("nothing is credited"), "{notices}");
}

#[test]
fn what_cannot_be_used_is_refused_in_one_sentence() {
    for (text, words) in [
        ("", "the file is empty"),
        (
            "2026-05-01T00:00Z,58\n2026-05-01T01:00Z,58\n",
            "row 1: \"2026-05-01T00:00Z58\" is no header",
        ),
        (
            "time,temperature_c\n2026-05-02,58\n2026-05-01,58\n",
            "row 3: it lies before the row above it: sort",
        ),
        (
            "time,temperature_c\n2026-05-01,58\n2026-05-01,59\n",
            "row 3: there is a row of that time already",
        ),
        (
            "time,temperature_c\n2026-05-01,58\n2026-05-02,140\n",
            "row 3: 140 °C is no temperature of a heap: if the probe shows Fahrenheit",
        ),
        (
            "time,temperature_c\n2026-05-01,58\n2026-05-02,-400\n",
            "row 3: -400 °C",
        ),
        (
            "time,temperature\n2026-05-01,58\n",
            "row 1: the header does not say the unit",
        ),
        (
            "time,temperature_c\n2026-05-01,hot\n",
            "row 2: \"hot\" is no temperature",
        ),
        (
            "time,temperature_c\n2026-05-01T00:00Z,58\n2026-05-02,58\n",
            "row 3: some times have an offset",
        ),
        (
            "time;temperature_c\n2026-05-01;58\n",
            "row 1: its columns are parted by semicolons",
        ),
    ] {
        let ran = run_with(&["hygiene", "--json", "--csv", "-"], text.as_bytes());
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{text}");
        assert_eq!(ran.err.lines().count(), 1);
        assert!(ran.err.contains(words), "no \"{words}\" in: {}", ran.err);
    }
    let good = record(3, |_| 58.0);
    for (arguments, words) in [
        (&["--turn", "soon"][..], "--turn: \"soon\" is no time"),
        (
            &["--turn", "2026-05-01"],
            "row 2: its time and those of --turn",
        ),
        (
            &["--probe-error", "-1"],
            "--probe-error must be between 0 and 20",
        ),
        (
            &["--depth", "30 cm"],
            "--depth: there is no reading at that depth",
        ),
    ] {
        let mut all = vec!["hygiene", "--csv", "-"];
        all.extend(arguments);
        let ran = run_with(&all, good.as_bytes());
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{arguments:?}");
        assert!(ran.err.contains(words), "no \"{words}\" in: {}", ran.err);
    }
    let missing = run_with(&["hygiene", "--csv", "no-such-file.csv"], b"");
    assert_eq!(missing.code, 1);
}

/// A heap with meat in it, read twice a day for four days, turned once.
fn kept(name: &str) -> Kept {
    let mut kept = Kept::new(name);
    kept.now = "2026-05-03T10:00:00+02:00".to_owned();
    kept.answer(&[
        "heap",
        "new",
        "Bin",
        "--width",
        "1 m",
        "--height",
        "1 m",
        "--wall",
        "insulated",
    ]);
    let fed = kept.answer(&[
        "feed",
        "Bin",
        "1 kg meat scraps, 10 buckets shredded leaves, 6 buckets grass",
    ]);
    assert!(
        fed.contains("This heap had meat scraps on 3 May 2026"),
        "{fed}"
    );
    assert!(fed.contains("Local rule:"), "{fed}");
    never_said(&fed);
    for day in 4..=8 {
        for hour in ["08", "20"] {
            kept.now = format!("2026-05-{day:02}T{hour}:00:00+02:00");
            kept.answer(&["read", "Bin", "--temperature", "61 C core"]);
        }
    }
    kept.now = "2026-05-09T10:00:00+02:00".to_owned();
    kept
}

#[test]
fn a_heap_of_the_journal_is_judged_and_its_meat_is_remembered() {
    let kept = kept("hygiene-heap");
    let found = kept.json(&["hygiene", "Bin"]);
    let faults = schema("hygiene-answer").iter_errors(&found).count();
    assert_eq!(faults, 0, "{found}");
    assert_eq!(found["heap"]["name"], "Bin");
    assert_eq!(rule(&found, "us_pfrp_static")["status"], "met");
    assert_eq!(found["hours_at_or_above"]["60"], 108.0);
    assert_eq!(found["share_treated"]["basis"], "outline");
    // A shell of 5 cm under insulation.
    assert!((found["share_treated"]["value"].as_f64().unwrap() - 0.729).abs() < 1e-9);
    assert_eq!(found["before_use"][0]["material"], "meat_scraps");
    let text = kept.answer(&["hygiene", "Bin"]);
    never_said(&text);
    support::golden_text("hygiene-heap", &text);
    // What is fed after the heat has not had it.
    kept.answer(&["feed", "Bin", "1 bucket vegetable scraps"]);
    let notices = kept.json(&["hygiene", "Bin"])["notices"].to_string();
    assert!(
        notices.contains("on 9 May 2026, after the core was hot"),
        "{notices}"
    );
    // It stays with the heap until it is harvested, and with what is spread then.
    let show = kept.json(&["heap", "show", "Bin"]);
    assert_eq!(show["before_use"][0]["material"], "meat_scraps");
    never_said(&show["before_use"].to_string());
    let harvest = kept.json(&["harvest", "Bin"]);
    assert_eq!(harvest["before_use"][0]["material"], "meat_scraps");
    let show = kept.json(&["heap", "show", "Bin"]);
    assert!(show.get("before_use").is_none(), "{show}");
    kept.answer(&["bed", "new", "Salad", "4 m2"]);
    let spread = kept.answer(&["spread", "Salad", "2 buckets", "--heap", "Bin"]);
    assert!(
        spread.contains("This heap had meat scraps on 3 May 2026"),
        "{spread}"
    );
    never_said(&spread);
    // It was emptied: the record begins anew.
    let ran = kept.run(&["hygiene", "Bin"]);
    assert_eq!(ran.code, 2);
    assert!(
        ran.err.contains("there is no reading of the core")
            && ran.err.contains("`heapwright read --temperature"),
        "{}",
        ran.err
    );
}

#[test]
fn every_caution_with_a_consequence_can_be_fed() {
    let kept = Kept::new("hygiene-cautions");
    kept.answer(&["heap", "new", "Bin"]);
    for (said, id) in [
        ("meat scraps", "meat_scraps"),
        ("fish scraps", "fish_scraps"),
        ("cheese", "cheese"),
        ("milk", "milk_yoghurt"),
        ("bones", "bones_fresh"),
        ("dog waste", "dog_waste"),
        ("treated wood", "wood_chip_softwood"),
        ("sprayed grass", "grass_clippings_fresh"),
        ("invasive roots", "weeds_perennial_roots"),
        ("barbecue ash", "wood_ash"),
        ("coated paper", "glossy_paper"),
        ("sick plants", "spent_vegetable_plants"),
    ] {
        let part = format!("1 kg {said}");
        let fed = kept.json(&["feed", "Bin", &part]);
        let told = &fed["before_use"][0];
        assert_eq!(told["material"], id, "{said}");
        assert!(!fed["cautions"].as_array().unwrap().is_empty(), "{said}");
        never_said(&fed["cautions"].to_string());
        never_said(&told.to_string());
    }
    let show = kept.json(&["heap", "show", "Bin"]);
    assert_eq!(show["before_use"].as_array().unwrap().len(), 12);
    // Without figures it is refused outright.
    let ran = kept.run(&["feed", "Bin", "1 kg cat litter"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("best kept out of a heap"), "{}", ran.err);
}

#[test]
fn the_text_of_a_record() {
    let text = record(15 * 24, |hour| if hour % 72 == 0 { 54.0 } else { 62.0 });
    let arguments = [
        "hygiene",
        "--csv",
        "-",
        "--turn",
        "2026-05-04T00:00:00Z",
        "--turn",
        "2026-05-07T00:00:00Z",
    ];
    let ran = run_with(&arguments, text.as_bytes());
    assert_eq!(ran.code, 0, "{}", ran.err);
    never_said(&ran.out);
    support::golden_text(
        "hygiene-record",
        &format!("{}\n{}", support::typed(&arguments), ran.out),
    );
}

/// 40 CFR 503 App. B, Wales SI 2006/1293: closed, or insulated all over, besides the heat.
#[test]
fn a_heap_of_which_nothing_is_known_meets_no_rule_for_closed_ones() {
    let text = record(72, |_| 62.0);
    let found = judged(&text, &[]);
    for id in [
        "us_pfrp_static",
        "us_organic_static",
        "uk_closed_60",
        "ca_static",
    ] {
        let rule = rule(&found, id);
        assert_eq!(rule["status"], "not_met", "{id}");
        let vessel = rule["missing"]["vessel"].as_str().unwrap();
        assert!(vessel.contains("a closed vessel"), "{id}: {vessel}");
        assert_eq!(rule["progress"], 0.5, "{id}");
        assert_eq!(rule["missing"]["hours"], 0.0, "{id}");
    }
    // Whoever says that it lies still, closed or covered, is believed; a closed vessel is more than
    // insulation.
    let found = judged(&text, &["--method", "static"]);
    for id in ["us_pfrp_static", "uk_closed_60", "ca_static"] {
        assert_eq!(rule(&found, id)["status"], "met", "{id}");
    }
    let found = judged(&text, &["--insulated"]);
    assert_eq!(rule(&found, "us_pfrp_static")["status"], "met");
    assert_eq!(rule(&found, "uk_closed_60")["status"], "not_met");
    let ran = run_with(&["hygiene", "--csv", "-"], text.as_bytes());
    assert!(
        ran.out
            .contains("missing: a closed vessel or insulation all over"),
        "{}",
        ran.out
    );
}

/// A bin of the journal that is neither closed nor insulated is known to be neither.
#[test]
fn an_open_bin_is_no_closed_vessel() {
    let mut kept = Kept::new("hygiene-open");
    kept.now = "2026-05-03T10:00:00+02:00".to_owned();
    kept.answer(&["heap", "new", "Bin", "--width", "1 m", "--height", "1 m"]);
    for day in 4..=8 {
        kept.now = format!("2026-05-{day:02}T08:00:00+02:00");
        kept.answer(&["read", "Bin", "--temperature", "61 C core"]);
    }
    for arguments in [
        &["hygiene", "Bin"][..],
        &["hygiene", "Bin", "--method", "static"],
    ] {
        let found = kept.json(arguments);
        for id in ["us_pfrp_static", "uk_closed_60"] {
            assert_eq!(rule(&found, id)["status"], "not_met", "{id}");
            assert!(rule(&found, id)["missing"]["vessel"].is_string(), "{id}");
        }
    }
}

#[test]
fn turnings_tell_the_method_wherever_they_lie() {
    let text = record(96, |_| 62.0);
    let before = judged(&text, &["--turn", "2026-04-30T00:00Z"]);
    assert_eq!(before["method"], "turned");
    assert_eq!(rule(&before, "us_pfrp_static")["status"], "not_applicable");
    assert_eq!(before["share_treated"]["turns_before"], 1);
    assert!(
        before["sentences"]
            .to_string()
            .contains("turned once before the first reading")
    );
    // Whoever says that it lies still and turns it on the third day has not held it still for three.
    let within = judged(
        &text,
        &["--method", "static", "--turn", "2026-05-03T06:00Z"],
    );
    assert_eq!(rule(&within, "us_pfrp_static")["status"], "not_met");
    // Three days after the turning do.
    let after = judged(
        &text,
        &["--method", "static", "--turn", "2026-05-01T12:00Z"],
    );
    assert_eq!(rule(&after, "us_pfrp_static")["status"], "met");
}

#[test]
fn one_row_without_depth_does_not_take_over() {
    let mut text = String::from("time,temperature_c,depth_cm\n");
    for hour in 0..48 {
        let (day, of_day) = (hour / 24 + 1, hour % 24);
        writeln!(text, "2026-05-{day:02}T{of_day:02}:00:00Z,60,30").unwrap();
    }
    text.push_str("2026-05-03T00:00:00Z,20,\n");
    let found = judged(&text, &[]);
    assert_eq!(found["record"]["depth_cm"], 30.0);
    assert_eq!(found["hours_at_or_above"]["60"], 47.0);
    assert!(
        found["notices"]
            .to_string()
            .contains("One reading without a depth is left out"),
        "{}",
        found["notices"]
    );
}

#[test]
fn a_single_reading_tells_no_time() {
    let found = judged("time,temperature_c\n2026-05-01T00:00Z,60\n", &[]);
    assert_eq!(found["share_treated"]["hot_stays"], 0);
    assert_eq!(found["share_treated"]["known"], false);
    let sentences = found["sentences"].to_string();
    assert!(sentences.contains("is not known"), "{sentences}");
    assert!(!sentences.contains("0 hours"), "{sentences}");
    assert!(!sentences.contains("1 of 1"), "{sentences}");
    assert!(found["headline"].as_str().unwrap().contains("not known"));
}

/// The contract names six temperatures; that of a trial stands elsewhere.
#[test]
fn hours_are_told_at_the_temperatures_of_rules() {
    let found = judged(&record(72, |_| 49.5), &[]);
    for key in [
        "hours_at_or_above",
        "hours_at_or_above_low",
        "hours_at_or_above_high",
    ] {
        let keys: Vec<&String> = found[key].as_object().unwrap().keys().collect();
        assert_eq!(keys, ["40", "50", "55", "60", "65", "70"], "{key}");
    }
    assert_eq!(found["white_rot_hours"]["value"], 72.0);
}

#[test]
fn what_was_too_hot_or_only_nearly_all_is_told() {
    let text = record(72, |_| 80.0);
    let ran = run_with(
        &["hygiene", "--csv", "-", "--method", "static"],
        text.as_bytes(),
    );
    let plain = ran.out.replace('\u{a0}', " ");
    assert!(
        plain.contains("time above 76.7 °C was too hot to count"),
        "{plain}"
    );
    let found = judged(&text, &["--method", "static"]);
    let missing = &rule(&found, "us_organic_static")["missing"];
    assert!((missing["too_hot_above_c"].as_f64().unwrap() - 76.667).abs() < 0.001);
    // Turned every other day for a month: nearly all came through, and never all of it.
    let text = record(24 * 30, |_| 65.0);
    let mut arguments = vec!["hygiene".to_owned(), "--csv".to_owned(), "-".to_owned()];
    for day in (2..=30).step_by(2) {
        arguments.extend(["--turn".to_owned(), format!("2026-05-{day:02}T00:00Z")]);
    }
    arguments.extend(["--width", "3 m", "--height", "2 m"].map(str::to_owned));
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let ran = run_with(&arguments, text.as_bytes());
    assert!(ran.out.contains(">99"), "{}", ran.out);
    assert!(!ran.out.contains("100\u{a0}%"), "{}", ran.out);
    assert!(!ran.out.contains("100 %"), "{}", ran.out);
}

/// What an outside reader of these rules may feed: daily and hourly rows, turnings at rows, short dips.
#[test]
fn usual_records_of_turned_heaps_are_met() {
    let turns: Vec<String> = (0..5)
        .map(|turning| format!("2026-05-{:02}T00:00:00Z", 3 + 3 * turning))
        .collect();
    let mut arguments = vec!["--method", "turned"];
    for turn in &turns {
        arguments.extend(["--turn", turn]);
    }
    let found = judged(&record(15 * 24, |_| 56.0), &arguments);
    for id in [
        "us_pfrp_turned",
        "us_organic_turned",
        "au_high_risk",
        "ca_turned",
    ] {
        assert_eq!(rule(&found, id)["status"], "met", "{id}");
    }
    let dips = record(17 * 24, |hour| {
        let of_round = (hour + 24) % 72;
        if of_round == 1 || of_round == 2 {
            46.0
        } else {
            58.0
        }
    });
    let found = judged(&dips, &arguments);
    for id in [
        "us_pfrp_turned",
        "us_organic_turned",
        "au_high_risk",
        "ca_turned",
    ] {
        assert_eq!(rule(&found, id)["status"], "met", "{id}");
    }
    // Read and turned once a day: a day of 25 hours breaks nothing.
    let daily = "time,temperature_c\n2026-10-23T08:00+02:00,60\n2026-10-24T08:00+02:00,60\n2026-10-25T08:00+01:00,60\n2026-10-26T08:00+01:00,60\n";
    let found = judged(daily, &["--method", "static"]);
    assert_eq!(rule(&found, "us_pfrp_static")["status"], "met");
    assert_eq!(found["hours_at_or_above"]["60"], 72.0);
}
