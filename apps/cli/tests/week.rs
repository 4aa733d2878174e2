//! A small week in a garden: what every command of the journal writes, as text and as JSON.

#![allow(clippy::unwrap_used)]

mod support;

use serde_json::Value;
use support::{Kept, SPOT_PNG, golden_text, of_repository, typed};

/// The week: when it is typed, and what.
#[rustfmt::skip] // a table
const WEEK: &[(&str, &[&str])] = &[
    ("2026-05-01T09:00:00+02:00", &["garden", "describe", "--name", "Small garden", "--latitude", "52.5", "--longitude", "13.4"]),
    ("2026-05-01T09:01:00+02:00", &["garden", "person", "Ann"]),
    ("2026-05-01T09:02:00+02:00", &["heap", "new", "Bin", "--width", "1 m", "--height", "90 cm", "--wall", "slats", "--cover", "lid", "--ground", "soil", "--sun", "shade", "--filling", "little-by-little"]),
    ("2026-05-01T09:03:00+02:00", &["measure", "set", "bucket", "12 l"]),
    ("2026-05-01T09:04:00+02:00", &["stock", "put", "6 buckets shredded leaves, 2 sacks sawdust"]),
    ("2026-05-01T18:00:00+02:00", &["feed", "1 caddy vegetable scraps, 1 bucket shredded leaves"]),
    ("2026-05-02T08:00:00+02:00", &["feed", "bin", "2 buckets grass", "1 bucket shredded leaves", "--at", "yesterday evening", "--from-stores"]),
    ("2026-05-02T08:01:00+02:00", &["water", "3 l"]),
    ("2026-05-03T10:00:00+02:00", &["read", "--temperature", "58 C core", "--temperature", "41 C edge, 20 cm deep", "--air", "14 C", "--squeeze", "moist", "--smell", "earthy", "--look", "white threads", "--creatures", "worms"]),
    ("2026-05-03T10:01:00+02:00", &["turn", "Bin", "--how", "inside-out", "--by", "Ann"]),
    ("2026-05-03T10:02:00+02:00", &["heap", "uncover"]),
    ("2026-05-03T10:03:00+02:00", &["heap", "cover", "--with", "sheet"]),
    ("2026-05-04T12:00:00+02:00", &["note", "a hedgehog moved in", "--heap", "Bin"]),
    ("2026-05-04T12:01:00+02:00", &["turn"]),
    ("2026-05-04T12:02:00+02:00", &["undo", "--list"]),
    ("2026-05-04T12:03:00+02:00", &["undo"]),
    ("2026-05-04T12:04:00+02:00", &["undo", "--bring-back"]),
    ("2026-05-04T12:05:00+02:00", &["undo"]),
    ("2026-05-05T09:00:00+02:00", &["heap", "new", "Box"]),
    ("2026-05-05T09:01:00+02:00", &["heap", "move", "Bin", "Box", "--share", "25%"]),
    ("2026-05-05T09:02:00+02:00", &["test", "Bin", "--bag-days", "7", "--swollen", "no", "--bag-smell", "earthy"]),
    ("2026-05-05T09:03:00+02:00", &["harvest", "Bin", "3 buckets", "--share", "half", "--sieve", "12", "--overs", "1 bucket", "--overs-to", "Box"]),
    ("2026-05-05T09:04:00+02:00", &["bed", "new", "Long bed", "6 m x 1.2 m", "--crop", "beans"]),
    ("2026-05-05T09:05:00+02:00", &["spread", "long", "2 buckets", "--heap", "Bin", "--how", "mulch"]),
    ("2026-05-05T09:06:00+02:00", &["stock", "use", "1 bucket shredded leaves", "--heap", "Box"]),
    ("2026-05-05T09:07:00+02:00", &["stock", "count", "3 buckets shredded leaves", "--none", "sawdust"]),
    ("2026-05-05T09:08:00+02:00", &["stock", "list"]),
    ("2026-05-05T09:09:00+02:00", &["material", "define", "Our leaves", "--like", "shredded leaves", "--moisture", "35"]),
    ("2026-05-05T09:10:00+02:00", &["material", "measure", "grass", "--wet", "200 g", "--dried", "45 g"]),
    ("2026-05-05T09:11:00+02:00", &["heap", "stage", "Bin", "curing"]),
    ("2026-05-06T14:30:00+02:00", &["feed", "Box", "1 bucket our leaves"]),
    ("2026-05-06T14:30:00+02:00", &["heap", "list"]),
    ("2026-05-06T14:30:00+02:00", &["heap", "show", "Bin"]),
    ("2026-05-06T14:30:00+02:00", &["bed", "list"]),
    ("2026-05-06T14:30:00+02:00", &["balance", "2 buckets grass", "--no-water"]),
    ("2026-05-06T14:30:00+02:00", &["log", "--heap", "Bin", "--kind", "feeds", "--kind", "turnings", "--all"]),
    ("2026-05-06T14:30:00+02:00", &["log"]),
    ("2026-05-06T14:30:00+02:00", &["check"]),
    ("2026-05-06T14:30:00+02:00", &["export", "week.jsonl"]),
];

fn week(name: &str) -> (Kept, String) {
    let mut kept = Kept::new(name);
    let folder = kept.folder.display().to_string();
    let mut told = String::new();
    for (now, arguments) in WEEK {
        kept.now = (*now).to_owned();
        let answer = kept.answer(arguments).replace(&folder, "FOLDER");
        told.push_str(&format!("{}\n{answer}\n", typed(arguments)));
    }
    (kept, told)
}

#[test]
fn golden_week() {
    golden_text("week", &week("golden-week").1);
}

fn assert_of_schema(name: &str, value: &Value) {
    let path = of_repository(&format!("crates/wire/schemas/{name}.json"));
    let schema: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let faults: Vec<String> = validator
        .iter_errors(value)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{name}:\n{}", faults.join("\n"));
}

/// Every answer in JSON is of a schema that `heapwright schema` prints.
#[test]
fn answers_are_of_their_schemas() {
    let mut kept = Kept::new("schemas");
    for (now, arguments) in WEEK {
        kept.now = (*now).to_owned();
        let name = match arguments {
            ["heap", "list", ..] => "heap-list",
            ["heap", "show", ..] => "heap",
            ["stock", "list", ..] => "stores",
            ["bed", "list", ..] => "bed-list",
            ["balance", ..] => "balance-answer",
            ["log", ..] | ["undo", "--list", ..] => "log",
            ["check", ..] => "check",
            ["export", ..] => "copied",
            _ => "recorded",
        };
        let answer = kept.json(arguments);
        assert_of_schema(name, &answer);
        if name == "recorded" {
            assert!(
                !answer["entries"].as_array().unwrap().is_empty(),
                "{arguments:?}"
            );
        }
    }
    assert_of_schema("copied", &kept.json(&["backup", "week.heapwright"]));
    assert_of_schema("copied", &kept.json(&["restore", "week.heapwright"]));
    assert_of_schema("import", &kept.json(&["import", "week.jsonl", "--dry-run"]));
    std::fs::write(kept.folder.join("probe.csv"), PROBE).unwrap();
    let told = kept.json(&["import", "probe.csv", "--heap", "Bin", "--dry-run"]);
    assert_of_schema("import", &told);
    assert_eq!((&told["kind"], &told["new"]), (&"logger".into(), &3.into()));
}

/// A table as a thermometer writes it.
const PROBE: &str = "\
Time,Temperature (°C)
2026-05-05 08:00:00,41.5
2026-05-05 09:00:00,43.0
2026-05-05 10:00:00,44.5
";

/// What a feed does to a heap is what `mix` says of all that went in.
#[test]
fn the_balance_of_a_heap_is_that_of_what_went_in() {
    let kept = Kept::new("balance");
    kept.answer(&["heap", "new", "Bin"]);
    let first = kept.json(&["feed", "1 caddy vegetable scraps, 1 bucket shredded leaves"]);
    let second = kept.json(&["feed", "2 buckets grass", "--water", "2 l"]);
    let mixed: Value = serde_json::from_str(&support::answer(&[
        "mix",
        "1 caddy vegetable scraps, 1 bucket shredded leaves, 2 buckets grass",
        "--water",
        "2 l",
        "--json",
    ]))
    .unwrap();
    assert!(first.get("before").is_none());
    for figure in [
        "cn_ratio",
        "moisture_pct",
        "free_air_space_pct",
        "wet_mass_kg",
    ] {
        assert_eq!(second["after"][figure], mixed[figure], "{figure}");
        assert_eq!(second["before"][figure], first["after"][figure], "{figure}");
    }
    // Half of it is taken out: the ratios stay, the mass is half.
    kept.answer(&["harvest", "--share", "half"]);
    let shown = kept.json(&["heap", "show"]);
    let mass = |value: &Value| value["wet_mass_kg"]["value"].as_f64().unwrap();
    assert!((mass(&shown["as_fed"]) - mass(&mixed) / 2.0).abs() < 1e-9);
}

/// The journal's own measure and stores stand behind a balance; named gardens stand before it.
#[test]
fn a_question_uses_the_journal_that_is_there() {
    let kept = Kept::new("behind");
    kept.answer(&["measure", "set", "bucket", "20 l"]);
    kept.answer(&["stock", "put", "9 buckets shredded leaves"]);
    let mass = |value: &Value| value["wet_mass_kg"]["value"].as_f64().unwrap();
    let with = kept.json(&["mix", "1 bucket grass"]);
    let litres = kept.json(&["mix", "20 l grass"]);
    assert!((mass(&with) - mass(&litres)).abs() < 1e-9);
    let demo = kept.json(&["mix", "1 bucket grass", "--demo"]);
    assert!((mass(&demo) - mass(&litres)).abs() > 0.1);
    let balance = kept.json(&["balance", "2 buckets grass"]);
    let first = &balance["recipes"][0]["add"][0];
    assert!(
        first["name"].as_str().unwrap().contains("leaves"),
        "{first}"
    );
    let path = kept.path.display().to_string();
    let named: Value = serde_json::from_str(&support::answer(&[
        "mix",
        "1 bucket grass",
        "--garden",
        &path,
        "--json",
    ]))
    .unwrap();
    assert_eq!(mass(&named), mass(&with));
}

/// U21: what is exported and taken in elsewhere is the same journal, to the last bit.
#[test]
fn an_export_taken_in_elsewhere_is_the_same_journal() {
    let (kept, _) = week("there");
    let other = Kept::new("and-back");
    let file = kept.folder.join("week.jsonl").display().to_string();
    let told = other.json(&["import", &file, "--yes"]);
    assert_eq!(told["written"], true);
    assert_eq!(told["known"], 0);
    let digest = |kept: &Kept, name: &str| kept.json(&["export", name])["digest"].clone();
    assert_eq!(digest(&kept, "again.jsonl"), digest(&other, "again.jsonl"));
    assert_eq!(
        kept.answer(&["log", "--all"]),
        other.answer(&["log", "--all"])
    );
    assert_eq!(
        kept.json(&["heap", "show", "Bin"])["as_fed"],
        other.json(&["heap", "show", "Bin"])["as_fed"]
    );
    // A second time nothing is new.
    let lines = other.lines();
    let told = other.json(&["import", &file, "--yes"]);
    assert_eq!((&told["new"], &told["written"]), (&0.into(), &false.into()));
    assert_eq!(other.lines(), lines);
}

#[test]
fn a_backup_brings_all_of_it_back() {
    let (kept, _) = week("backed-up");
    std::fs::write(kept.folder.join("spot.png"), SPOT_PNG).unwrap();
    kept.answer(&["note", "the heap", "--heap", "Bin", "--picture", "spot.png"]);
    let made = kept.json(&["backup", "copy.heapwright"]);
    assert_eq!(made["pictures"], 1);
    let lines = kept.lines();
    let log = kept.answer(&["log", "--all"]);
    // What is written after the backup stays.
    kept.answer(&["turn", "Bin"]);
    let told = kept.json(&["restore", "copy.heapwright"]);
    assert_eq!(told["new"], 0);
    assert!(kept.lines().len() > lines.len());
    std::fs::remove_file(&kept.path).unwrap();
    for ending in ["-wal", "-shm"] {
        let _ = std::fs::remove_file(format!("{}{ending}", kept.path.display()));
    }
    let told = kept.json(&["restore", "copy.heapwright"]);
    assert_eq!(
        (&told["entries"], &told["pictures"]),
        (&made["entries"], &1.into())
    );
    assert_eq!(kept.lines(), lines);
    assert_eq!(kept.answer(&["log", "--all"]), log);
    assert_eq!(kept.json(&["check"])["sound"], true);
}

/// Readings of a logger are one batch: taken back together, and found again as known.
#[test]
fn readings_of_a_logger_come_once_and_go_together() {
    let kept = Kept::new("logger");
    kept.answer(&["heap", "new", "Bin"]);
    let before = kept.answer(&["log"]);
    std::fs::write(kept.folder.join("probe.csv"), PROBE).unwrap();
    let arguments = [
        "import",
        "probe.csv",
        "--heap",
        "Bin",
        "--place",
        "core",
        "--yes",
    ];
    assert_eq!(kept.json(&arguments)["new"], 3);
    let again = kept.json(&arguments);
    assert_eq!((&again["new"], &again["known"]), (&0.into(), &3.into()));
    assert_eq!(
        kept.answer(&["log", "--kind", "readings"]).lines().count(),
        4
    );
    kept.answer(&["undo"]);
    assert_eq!(kept.answer(&["log"]), before);
    kept.answer(&["undo", "--bring-back"]);
    assert_eq!(
        kept.answer(&["log", "--kind", "readings"]).lines().count(),
        4
    );
}

/// What was taken back and brought back leaves the garden as it was.
#[test]
fn undo_and_back_changes_nothing_but_the_log() {
    let (kept, _) = week("undone");
    let shown = kept.answer(&["heap", "show", "Box"]);
    kept.answer(&["undo"]);
    assert_ne!(kept.answer(&["heap", "show", "Box"]), shown);
    kept.answer(&["undo", "--bring-back"]);
    assert_eq!(kept.answer(&["heap", "show", "Box"]), shown);
    let nothing = kept.run(&["undo", "--bring-back"]);
    // The turning that was taken back in the week is still there to be brought back.
    assert_eq!(nothing.code, 0, "{}", nothing.err);
}

/// What was brought back is passed over the next time, even when it had been taken back twice.
#[test]
fn bringing_back_goes_on_to_what_was_taken_back_before() {
    let mut kept = Kept::new("brought-back");
    let mut minute = 0;
    let mut later = |kept: &mut Kept| {
        minute += 1;
        kept.now = format!("2026-05-06T15:{minute:02}:00+02:00");
    };
    for arguments in [
        &["heap", "new", "Bin"][..],
        &["note", "first remark", "--heap", "Bin"],
        &["note", "second remark", "--heap", "Bin"],
        &["undo"],
        &["undo"],
        &["undo", "--bring-back"],
        &["undo"],
        &["undo", "--bring-back"],
    ] {
        later(&mut kept);
        kept.answer(arguments);
    }
    let log = kept.answer(&["log"]);
    assert!(
        log.contains("first remark") && !log.contains("second remark"),
        "{log}"
    );
    later(&mut kept);
    kept.answer(&["undo", "--bring-back"]);
    let log = kept.answer(&["log"]);
    assert!(
        log.contains("first remark") && log.contains("second remark"),
        "{log}"
    );
    later(&mut kept);
    let nothing = kept.run(&["undo", "--bring-back"]);
    assert_eq!(nothing.code, 2, "{}", nothing.out);
    assert!(
        nothing.err.contains("nothing was taken back"),
        "{}",
        nothing.err
    );
}

/// Words as a shell parts them: quotation marks hold words together.
fn words(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for sign in line.trim().chars() {
        match sign {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            sign => words.last_mut().unwrap().push(sign),
        }
    }
    words.retain(|word| !word.is_empty());
    words
}

/// What the help shows works as it stands there.
#[test]
fn examples_of_the_help_work() {
    const COMMANDS: [&[&str]; 33] = [
        &["heap"],
        &["heap", "new"],
        &["heap", "show"],
        &["heap", "cover"],
        &["heap", "uncover"],
        &["heap", "move"],
        &["feed"],
        &["turn"],
        &["water"],
        &["read"],
        &["note"],
        &["stock"],
        &["stock", "put"],
        &["stock", "use"],
        &["stock", "count"],
        &["bed"],
        &["bed", "new"],
        &["spread"],
        &["test"],
        &["garden"],
        &["garden", "describe"],
        &["garden", "person"],
        &["measure"],
        &["material"],
        &["material", "define"],
        &["material", "measure"],
        &["undo"],
        &["log"],
        &["export"],
        &["import"],
        &["backup"],
        &["restore"],
        &["harvest"],
    ];
    let one = Kept::new("one-heap");
    let two = Kept::new("two-heaps");
    for kept in [&one, &two] {
        kept.answer(&["heap", "new", "Bin"]);
        kept.answer(&["bed", "new", "Long bed", "7 m2"]);
        kept.answer(&["stock", "put", "9 buckets shredded leaves"]);
        std::fs::write(kept.folder.join("heap.jpg"), SPOT_PNG).unwrap();
        std::fs::write(
            kept.folder.join("probe.csv"),
            PROBE.replace("Temperature (°C)", "Temp"),
        )
        .unwrap();
    }
    two.answer(&["heap", "new", "Box"]);
    let mut count = 0;
    for command in COMMANDS {
        let help = support::answer(&[&["help"], command].concat());
        let examples = help
            .lines()
            .filter(|line| line.starts_with("  heapwright "));
        for example in examples {
            let words = words(example);
            let arguments: Vec<&str> = words[1..].iter().map(String::as_str).collect();
            // A journal has to be damaged first: see the tests of the edges.
            if arguments.contains(&"--from-damaged") {
                continue;
            }
            let begins = arguments.get(1) == Some(&"new");
            let fresh = Kept::new("fresh");
            let kept = match arguments.contains(&"Box") {
                _ if begins => &fresh,
                true => &two,
                false => &one,
            };
            let ran = kept.run(&arguments);
            assert_eq!(ran.code, 0, "{example}: {}", ran.err);
            count += 1;
        }
    }
    assert!(count >= 50, "{count} examples");
}
