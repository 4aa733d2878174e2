//! Out as CSV and in again: nothing is lost, nothing comes twice, and nothing becomes a formula.
#![allow(clippy::unwrap_used)]

mod pen;

use heapwright_catalogue::Catalogue;
use heapwright_journal::content::{
    Amended, Creature, Look, Noted, PersonDescribed, Probe, ProbePlace, Read, Smell, Squeeze,
    Withdrawn,
};
use heapwright_journal::{Content, EventId, Moment};
use heapwright_spreadsheet::{
    LoggerMapping, NewReadings, Placing, READINGS_HEADER, ReadingsError, log_csv, new_readings,
    read_logger, readings_csv,
};
use heapwright_state::State;
use heapwright_texts::Locale;
use proptest::prelude::*;
use proptest::{collection, option};

use pen::{MINUTE_MS, Pen, START_MS, bare, moment, probe};

fn placing(heap: EventId) -> Placing {
    Placing {
        heap,
        place: Some(ProbePlace::Core),
        depth_m: Some(0.3),
        logger: Some("grey probe".to_owned()),
        apart_min: None,
    }
}

fn taken_in(state: &State, csv: &str, placing: &Placing) -> NewReadings {
    let file = read_logger(csv.as_bytes(), &LoggerMapping::default()).unwrap();
    assert_eq!(file.fault_count, 0, "{:?}", file.faults);
    new_readings(state, &file.rows, placing).unwrap()
}

/// The readings of a heap, in their order.
fn readings(state: &State, heap: EventId) -> Vec<(Moment, Read)> {
    let history = state.heap(heap).unwrap().history();
    history
        .filter_map(|event| match event.content() {
            Some(Content::Read(read)) => Some((event.happened, read.clone())),
            _ => None,
        })
        .collect()
}

/// The cells of a table, as the library reads it; all rows are equally long, or it fails.
fn cells(text: &str) -> Vec<Vec<String>> {
    assert_eq!(
        text.matches('\n').count(),
        text.matches("\r\n").count(),
        "{text:?}"
    );
    csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(text.as_bytes())
        .records()
        .map(|record| record.unwrap().iter().map(str::to_owned).collect())
        .collect()
}

fn any_of<T: Copy + std::fmt::Debug + 'static>(all: &'static [T]) -> impl Strategy<Value = T> {
    prop::sample::select(all)
}

fn looks() -> impl Strategy<Value = (i64, i16, Read)> {
    let probes = collection::vec(
        (
            -60.0..120.0,
            option::of(0.0..10.0),
            option::of(any_of(ProbePlace::ALL)),
        )
            .prop_map(|(temperature_c, depth_m, place)| Probe {
                temperature_c,
                depth_m,
                place,
            }),
        0..4,
    );
    let seen = (
        option::of(any_of(Squeeze::ALL)),
        collection::vec(any_of(Smell::ALL), 0..3),
        collection::vec(any_of(Look::ALL), 0..3),
        collection::vec(any_of(Creature::ALL), 0..3),
    );
    let measured = (
        option::of(-60.0..120.0),
        option::of(0.0..10.0),
        option::of(0.0..200.0),
    );
    let logger = option::of("['=+@-]{0,2}[a-z\",; ＝]{0,5}[a-z][ ]?");
    (0..50_i64, -800..800_i16, probes, seen, measured, logger).prop_map(
        |(minute, offset_min, probes, (squeeze, smells, looks, creatures), measured, logger)| {
            let mut read = bare(EventId::new(0, &[0; 10]));
            read.probes = probes;
            read.squeeze = squeeze;
            read.smells = smells;
            read.looks = looks;
            read.creatures = creatures;
            read.air_temperature_c = measured.0;
            read.height_m = measured.1;
            read.fill_pct = measured.2;
            read.logger = logger;
            if read.probes.is_empty() {
                // A look sees something.
                read.fill_pct = read.fill_pct.or(Some(50.0));
            }
            (minute * 7919, offset_min, read)
        },
    )
}

proptest! {
    #[test]
    fn readings_come_back_whole_and_once(all in collection::vec(looks(), 1..12)) {
        let mut pen = Pen::new();
        let heap = pen.heap("=Bin");
        for (ms, offset_min, read) in &all {
            let happened = Moment::new(START_MS + ms, *offset_min).unwrap();
            pen.write(Read { heap, ..read.clone() }, happened);
        }
        let csv = readings_csv(&pen.state, Some(heap));
        // Into the journal that has them: nothing is new.
        let again = taken_in(&pen.state, &csv, &placing(heap));
        prop_assert_eq!(again.readings, vec![]);
        let rows: usize = all.iter().map(|(_, _, read)| read.probes.len().max(1)).sum();
        prop_assert_eq!(again.duplicates, rows as u64);
        // Into one that has nothing: all are there, as they were.
        let mut other = Pen::new();
        let new_heap = other.heap("Bin");
        let taken = taken_in(&other.state, &csv, &placing(new_heap));
        prop_assert_eq!((taken.duplicates, taken.thinned), (0, 0));
        let mut expected = readings(&pen.state, heap);
        for (_, read) in &mut expected {
            read.heap = new_heap;
        }
        prop_assert_eq!(taken.readings, expected);
    }

    #[test]
    fn no_cell_is_a_formula(names in collection::vec("[=+@＝'-]{0,2}[a-zA-Z0-9=(),;\"! ]{0,12}[a-z]", 1..6)) {
        let mut pen = Pen::new();
        let person = pen.write(PersonDescribed { name: names[0].clone(), role: None }, moment(0));
        pen.recorder.by = Some(person);
        for name in &names {
            let heap = pen.heap(name);
            let read = Read { probes: vec![probe(-5.5)], logger: Some(name.clone()), ..bare(heap) };
            pen.write(read, moment(0));
            pen.write(
                Noted { text: Some(format!("{name}\n\t\"x\"")), heap: None, bed: None, picture: None },
                moment(0),
            );
        }
        let log = log_csv(Catalogue::built_in(), &pen.state, Locale::default());
        let table = cells(&log);
        prop_assert_eq!(table.len(), pen.state.lines() + 1);
        for cell in table.iter().flatten() {
            prop_assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\0']), "{}", cell);
        }
        for row in &cells(&readings_csv(&pen.state, None))[1..] {
            for (cell, name) in row.iter().zip(READINGS_HEADER) {
                if cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\0']) {
                    // A number below nothing stays a number.
                    prop_assert_eq!((name, cell.as_str()), ("temperature_c", "-5.5"));
                }
            }
        }
    }
}

#[test]
fn the_log_tells_what_became_of_each_entry() {
    let mut pen = Pen::new();
    let ann = PersonDescribed {
        name: "Ann".to_owned(),
        role: None,
    };
    pen.recorder.by = Some(pen.write(ann, moment(0)));
    let bin = pen.heap("Bin, the \"old\" one");
    let wrong = pen.write(
        Read {
            probes: vec![probe(85.0)],
            ..bare(bin)
        },
        moment(30),
    );
    let patch = r#"{"probes":[{"temperature_c":58}]}"#;
    let amended = Amended {
        event: wrong,
        happened: Some(moment(20)),
        patch: serde_patch(patch),
    };
    pen.write(amended, moment(40));
    let gone = pen.write(
        Read {
            fill_pct: Some(50.0),
            ..bare(bin)
        },
        moment(10),
    );
    pen.write(Withdrawn { event: gone }, moment(50));
    let table = cells(&log_csv(
        Catalogue::built_in(),
        &pen.state,
        Locale::default(),
    ));
    let told: Vec<String> = table
        .iter()
        .map(|row| {
            format!(
                "{} | {} | {} | {} | {} | {}",
                row[0], row[2], row[3], row[4], row[5], row[8]
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            "happened | heap | kind | text | by | state",
            "2026-05-01T03:46:40+02:00 |  | person_described | Ann works here |  | counts",
            "2026-05-01T03:46:40+02:00 | Bin, the \"old\" one | heap_started | Started Bin, the \"old\" one | Ann | counts",
            "2026-05-01T03:56:40+02:00 | Bin, the \"old\" one | read | Looked at Bin, the \"old\" one: 50\u{a0}% full | Ann | taken back",
            "2026-05-01T04:06:40+02:00 | Bin, the \"old\" one | read | Looked at Bin, the \"old\" one: 58\u{a0}°C | Ann | corrected",
            "2026-05-01T04:26:40+02:00 |  | amended | Corrected: Looked at Bin, the \"old\" one: 85\u{a0}°C in the core, 30\u{a0}cm deep | Ann | counts",
            "2026-05-01T04:36:40+02:00 |  | withdrawn | Taken back: Looked at Bin, the \"old\" one: 50\u{a0}% full | Ann | counts",
        ]
    );
    // What counts is what is exported.
    let rows = cells(&readings_csv(&pen.state, None));
    assert_eq!(rows.len(), 2);
    assert_eq!(
        (rows[1][0].as_str(), rows[1][2].as_str()),
        ("2026-05-01T04:06:40+02:00", "58")
    );
}

fn serde_patch(text: &str) -> serde_json::Map<String, serde_json::Value> {
    serde_json::from_str(text).unwrap()
}

#[test]
fn a_file_of_several_heaps_asks_which() {
    let mut pen = Pen::new();
    let ids: Vec<EventId> = ["Bin", "Bay", "Bay"]
        .iter()
        .map(|name| pen.heap(name))
        .collect();
    for (index, heap) in ids.iter().enumerate() {
        let temperature_c = 50.0 + index as f64;
        let read = Read {
            probes: vec![probe(temperature_c)],
            ..bare(*heap)
        };
        pen.write(read, moment(1));
    }
    let csv = readings_csv(&pen.state, None);
    let read = |heap: Option<String>| {
        let mapping = LoggerMapping {
            heap,
            ..LoggerMapping::default()
        };
        read_logger(csv.as_bytes(), &mapping)
            .map(|file| {
                file.rows
                    .iter()
                    .map(|row| row.temperature_c.unwrap())
                    .collect::<Vec<_>>()
            })
            .map_err(|error| error.to_string())
    };
    let names = format!("\"Bin\", \"{}\", \"{}\"", ids[1], ids[2]);
    assert_eq!(
        read(None),
        Err(format!(
            "The file tells of several heaps; say of which to take the readings: {names}."
        ))
    );
    assert!(
        read(Some("Bay".to_owned()))
            .unwrap_err()
            .starts_with("The file tells of several heaps")
    );
    assert_eq!(
        read(Some("Box".to_owned())),
        Err(format!(
            "The file tells nothing of \"Box\"; take one of these: {names}."
        ))
    );
    assert_eq!(read(Some("Bin".to_owned())), Ok(vec![50.0]));
    assert_eq!(read(Some(ids[2].to_string())), Ok(vec![52.0]));
}

#[test]
fn a_spreadsheet_with_decimal_commas_may_come_between() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let read = Read {
        probes: vec![probe(55.25), probe(-3.5)],
        smells: vec![Smell::Earthy, Smell::Ammonia],
        logger: Some("-5 m".to_owned()),
        ..bare(heap)
    };
    pen.write(read, moment(1));
    let mut writer = csv::WriterBuilder::new()
        .delimiter(b';')
        .from_writer(Vec::new());
    for row in cells(&readings_csv(&pen.state, None)) {
        let commas = row.iter().map(|cell| {
            if cell.parse::<f64>().is_ok() {
                cell.replace('.', ",")
            } else {
                cell.clone()
            }
        });
        writer.write_record(commas).unwrap();
    }
    let csv = String::from_utf8(writer.into_inner().unwrap()).unwrap();
    assert!(csv.contains("55,25"));
    let again = taken_in(&pen.state, &csv, &placing(heap));
    assert_eq!((again.readings.len(), again.duplicates), (0, 2));
    let new_heap = Pen::new().heap("Bin");
    let fresh = taken_in(&State::default(), &csv, &placing(new_heap));
    let mut expected = readings(&pen.state, heap);
    expected[0].1.heap = new_heap;
    assert_eq!(fresh.readings, expected);
}

fn logger_file(minutes: impl Iterator<Item = i64>) -> String {
    let mut text = "Time,Temp °C\n".to_owned();
    for minute in minutes {
        let temperature_c = 50.0 + (minute % 10) as f64;
        text.push_str(&format!("{},{temperature_c}\n", moment(minute)));
    }
    text
}

#[test]
fn rows_that_the_heap_has_come_no_more() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    // One was typed, a little off; others are at another place, time or temperature.
    for (minute, probe) in [
        (10, probe(50.05)),
        (
            20,
            Probe {
                place: None,
                ..probe(50.0)
            },
        ),
        (
            30,
            Probe {
                depth_m: None,
                ..probe(50.0)
            },
        ),
        (40, probe(50.06)),
        (51, probe(50.0)),
    ] {
        let probes = vec![probe];
        pen.write(
            Read {
                probes,
                ..bare(heap)
            },
            moment(minute),
        );
    }
    let csv = logger_file((1..=5).map(|ten| ten * 10));
    let new = taken_in(&pen.state, &csv, &placing(heap));
    assert_eq!(new.duplicates, 1);
    let minutes: Vec<i64> = new
        .readings
        .iter()
        .map(|(moment, _)| (moment.instant_ms - START_MS) / MINUTE_MS)
        .collect();
    assert_eq!(minutes, [20, 30, 40, 50]);
    for (moment, read) in new.readings {
        assert_eq!(read.logger.as_deref(), Some("grey probe"));
        pen.write(read, moment);
    }
    // The same file again, longer and with a row twice.
    let csv = logger_file((1..=6).map(|ten| ten * 10).chain([60]));
    let new = taken_in(&pen.state, &csv, &placing(heap));
    assert_eq!((new.readings.len(), new.duplicates), (1, 6));
}

#[test]
fn readings_that_are_too_close_are_left_out() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let hourly = Placing {
        apart_min: Some(60),
        ..placing(heap)
    };
    let new = taken_in(&pen.state, &logger_file(0..180), &hourly);
    assert_eq!((new.readings.len(), new.thinned), (3, 177));
    for (moment, read) in new.readings {
        pen.write(read, moment);
    }
    // The memory of the logger has moved on: what was left out stays out.
    let new = taken_in(&pen.state, &logger_file(25..260), &hourly);
    let minutes: Vec<i64> = new
        .readings
        .iter()
        .map(|(moment, _)| (moment.instant_ms - START_MS) / MINUTE_MS)
        .collect();
    assert_eq!((minutes, new.duplicates), (vec![180, 240], 2));
}

#[test]
fn thinning_leaves_what_else_was_seen() {
    let mut pen = Pen::new();
    let heap = pen.heap("Bin");
    let look = Read {
        probes: vec![probe(55.0)],
        logger: Some("grey probe".to_owned()),
        ..bare(heap)
    };
    pen.write(look.clone(), moment(1));
    let smells = vec![Smell::Sour];
    pen.write(Read { smells, ..look }, moment(2));
    let csv = readings_csv(&pen.state, None);
    let mut other = Pen::new();
    let heap = other.heap("Bin");
    let hourly = Placing {
        apart_min: Some(60),
        ..placing(heap)
    };
    let new = taken_in(&other.state, &csv, &hourly);
    assert_eq!((new.readings.len(), new.thinned), (2, 1));
    assert_eq!(new.readings[1].1.probes, []);
    assert_eq!(new.readings[1].1.smells, [Smell::Sour]);
    for (moment, read) in new.readings {
        other.write(read, moment);
    }
    assert_eq!(taken_in(&other.state, &csv, &hourly).readings, []);
}

#[test]
fn too_many_readings_are_refused_with_what_would_do() {
    let heap = Pen::new().heap("Bin");
    let file = read_logger(logger_file(0..50_000).as_bytes(), &LoggerMapping::default()).unwrap();
    let error = new_readings(&State::default(), &file.rows, &placing(heap)).unwrap_err();
    assert_eq!(
        error,
        ReadingsError::TooMany {
            readings: 50_000,
            apart_min: Some(5)
        }
    );
    assert_eq!(
        error.to_string(),
        "There are 50000 new readings and at most 20000 are taken at once; keep one every 5 minutes."
    );
    let all = 20_000;
    let new = new_readings(&State::default(), &file.rows[..all], &placing(heap)).unwrap();
    assert_eq!(new.readings.len(), all);
}
