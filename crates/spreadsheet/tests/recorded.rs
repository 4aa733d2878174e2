//! Our tables, as another program reads them: recorded in `oracles/spreadsheet`.
#![allow(clippy::unwrap_used)]

mod pen;

use std::fs;
use std::path::PathBuf;

use heapwright_catalogue::Catalogue;
use heapwright_journal::content::{Noted, PersonDescribed, Read, Smell};
use heapwright_spreadsheet::{READINGS_HEADER, log_csv, readings_csv};
use heapwright_texts::Locale;

use pen::{Pen, bare, moment, probe};

fn path(file: &str) -> PathBuf {
    PathBuf::from(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../oracles/spreadsheet"
    ))
    .join(file)
}

/// Names that make trouble in tables.
const NAMES: [&str; 9] = [
    "Bin",
    "Bin, the \"old\" one",
    "\"",
    "\"\",\"\"",
    "=SUM(A1;A2)",
    "+49 @home",
    "'quoted'",
    "'=twice",
    "ämne; 堆肥 🪱",
];

/// A journal that makes trouble.
fn tables() -> (String, String) {
    let mut pen = Pen::new();
    let ann = PersonDescribed {
        name: "-Ann, \"A\"".to_owned(),
        role: None,
    };
    pen.recorder.by = Some(pen.write(ann, moment(0)));
    for (minute, name) in (1..).zip(NAMES) {
        let heap = pen.heap(name);
        let note = Noted {
            text: Some(format!("{name}\nnext, \"line\"")),
            heap: None,
            bed: None,
            picture: None,
        };
        pen.write(note, moment(minute));
        let read = Read {
            probes: vec![probe(-3.5), probe(55.25)],
            smells: vec![Smell::Earthy, Smell::Sour],
            logger: Some(name.to_owned()),
            ..bare(heap)
        };
        pen.write(read, moment(minute));
    }
    let log = log_csv(Catalogue::built_in(), &pen.state, Locale::default());
    (log, readings_csv(&pen.state, None))
}

#[test]
#[ignore = "writes the tables that oracles/spreadsheet/make.py reads"]
fn write_the_tables() {
    let (log, readings) = tables();
    fs::write(path("log.csv"), log).unwrap();
    fs::write(path("readings.csv"), readings).unwrap();
}

#[test]
fn another_program_reads_what_was_meant() {
    let (log, readings) = tables();
    assert_eq!(fs::read_to_string(path("log.csv")).unwrap(), log);
    assert_eq!(fs::read_to_string(path("readings.csv")).unwrap(), readings);
    let answers: serde_json::Value =
        serde_json::from_str(&fs::read_to_string(path("answers.json")).unwrap()).unwrap();
    let rows = |table: &str| -> Vec<Vec<String>> {
        serde_json::from_value(answers[table].clone()).unwrap()
    };
    // A formula has an apostrophe in front, and one more where there is one.
    let meant = |name: &str| match name {
        "=SUM(A1;A2)" | "+49 @home" | "'=twice" => format!("'{name}"),
        name => name.to_owned(),
    };
    let found = rows("readings");
    assert_eq!(found[0], READINGS_HEADER);
    assert_eq!(found.len(), 1 + 2 * NAMES.len());
    for (pair, name) in found[1..].chunks(2).zip(NAMES) {
        let cells = |row: &[String]| [1, 2, 3, 4, 7, 12].map(|column: usize| row[column].clone());
        let name = meant(name);
        let first = [&name, "-3.5", "0.3", "core", "earthy; sour", &name];
        assert_eq!(cells(&pair[0]), first);
        let second = [&name, "55.25", "0.3", "core", "", &name];
        assert_eq!(cells(&pair[1]), second);
    }
    let found = rows("log");
    assert_eq!(found.len(), 2 + 3 * NAMES.len());
    assert!(found.iter().all(|row| row.len() == 9));
    for name in NAMES {
        let started = found
            .iter()
            .find(|row| row[3] == "heap_started" && row[2] == meant(name));
        let started = started.unwrap_or_else(|| panic!("{name} is not in the log"));
        assert_eq!(started[4], format!("Started {name}"));
        assert_eq!(started[5], "'-Ann, \"A\"");
        let note = format!("Note: {name} next, \"line\"");
        assert!(found.iter().any(|row| row[4] == note), "{note}");
    }
}
