//! Lines that were written once and are read for ever.
//!
//! `golden/v1.jsonl` was written with version 1 and never changes: a line may be added, none altered.
//! What reads it later must understand every line and write the same bytes.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;

use heapwright_journal::content::{Creature, Look, Smell, Squeeze, Stage, Thoroughness};
use heapwright_journal::{Content, Digest, Event, FileReader, Line, LineError, What};

const VERSION_1: &str = include_str!("golden/v1.jsonl");
const NEWER: &str = include_str!("golden/newer.jsonl");

/// SHA-256 of the file of version 1 up to its first 67 lines: none of them may ever change.
const FIRST_LINES: usize = 67;
const FIRST_LINES_DIGEST: &str = "d2167fc0742e4c0f8ebea40ea3066499ecb8bbe6a72c3e360e038de2004d32e3";

fn event(line: &str) -> Event {
    Event::read(line).unwrap_or_else(|error| panic!("{error}: {line}"))
}

#[test]
fn golden_lines_of_version_1_are_understood_and_written_alike() {
    for line in VERSION_1.lines() {
        let event = event(line);
        assert!(event.content().is_some(), "{:?}: {line}", event.what);
        assert_eq!(event.write().unwrap(), line);
    }
}

#[test]
fn golden_lines_of_version_1_have_never_changed() {
    let first: String = VERSION_1.split_inclusive('\n').take(FIRST_LINES).collect();
    assert_eq!(Digest::of(first.as_bytes()).to_string(), FIRST_LINES_DIGEST);
}

#[test]
fn golden_lines_of_version_1_have_every_kind() {
    let kinds: BTreeSet<&str> = VERSION_1
        .lines()
        .map(|line| event(line).content().unwrap().kind())
        .collect();
    assert_eq!(kinds, Content::KINDS.iter().copied().collect());
}

/// What each line of a newer program comes to: the content, or why it is not understood.
#[test]
fn golden_lines_of_newer_programs_are_kept_and_understood_as_far_as_can_be() {
    let outcomes: Vec<String> = NEWER
        .lines()
        .map(|line| {
            let (kept, event) = Line::read(line).unwrap();
            assert_eq!(kept.text(), line);
            assert_eq!(kept.digest(), Digest::of(line.as_bytes()));
            match event.what {
                What::Known(content) => content.kind().to_owned(),
                What::Unknown(unknown) => {
                    let why = unknown.why.unwrap_or_else(|| "unknown".to_owned());
                    format!("{} v{}: {why}", unknown.kind, unknown.version)
                }
            }
        })
        .collect();
    assert_eq!(
        outcomes,
        [
            "sung_to v1: unknown",
            "sung_to v1: unknown",
            "watered v2: unknown",
            "watered v4294967295: unknown",
            "watered",
            "watered",
            "turned",
            "read",
            "rested",
            "watered v1: missing field `water_l`",
            "watered v1: water_l must be from 0.001 to 100000",
            "watered v1: invalid type: string \"10 l\", expected f64",
            "moved v1: to must be another heap",
        ]
    );
}

#[test]
fn words_of_newer_programs_are_read_as_others() {
    let contents: Vec<Content> = NEWER
        .lines()
        .filter_map(|line| event(line).content().cloned())
        .collect();
    let mut seen = 0;
    for content in contents {
        match content {
            Content::Turned(turned) => {
                assert_eq!(turned.thoroughness, Some(Thoroughness::Other));
                seen += 1;
            }
            Content::Rested(rested) => {
                assert_eq!(rested.stage, Stage::Other);
                seen += 1;
            }
            Content::Read(read) => {
                assert_eq!(read.smells, [Smell::Earthy, Smell::Other]);
                assert_eq!(read.looks, [Look::Other]);
                assert_eq!(read.creatures, [Creature::Other]);
                assert_eq!(read.squeeze, Some(Squeeze::Other));
                seen += 1;
            }
            _ => {}
        }
    }
    assert_eq!(seen, 3);
}

/// A line of version 1 with one thing replaced.
fn broken(from: &str, to: &str) -> String {
    let line = VERSION_1
        .lines()
        .find(|line| line.contains("\"watered\""))
        .unwrap();
    assert!(line.contains(from), "{from}");
    line.replacen(from, to, 1)
}

#[test]
fn broken_lines_are_told_in_one_sentence() {
    let id = "must be a UUID in lower case, like 0193f2a1-b3c4-7000-8000-000000000001";
    let stamp = "must be like 0193f2a1b3c4.0003.7f3a9c2e41d05b68";
    let time = "must be a time with its offset from UTC in the years 1900 to 2199, like 2026-05-01T18:00:00+02:00";
    let longest = broken("watered", &"w".repeat(70_000));
    let field = |detail: &str| {
        format!("is no event: a field is missing or cannot be as it is (“{detail}”)")
    };
    for (line, sentence) in [
        (String::new(), "is no event: it is cut off".to_owned()),
        (
            "compost".to_owned(),
            "is no event: its sign 1 makes it no JSON (“expected value”)".to_owned(),
        ),
        (
            "[]".to_owned(),
            "is no event: it does not stand in braces".to_owned(),
        ),
        ("{}".to_owned(), field("missing field `v`")),
        (
            broken("\"v\":1", "\"v\":-1"),
            field("invalid value: integer `-1`, expected u32"),
        ),
        (broken("\"id\":\"0193f2a1", "\"id\":\"0193F2A1"), field(id)),
        (
            broken("\"stamp\":\"0193f2a1b3c4", "\"stamp\":\"193f2a1b3c4"),
            field(stamp),
        ),
        (broken("2026-05-01T18", "1826-05-01T18"), field(time)),
        (broken("2026-05-01T18", "2026-13-01T18"), field(time)),
        (broken("+02:00", ""), field(time)),
        (
            broken(",\"body\"", ",\"bodies\""),
            field("missing field `body`"),
        ),
        (broken("}}", "}"), "is no event: it is cut off".to_owned()),
        (
            broken("}}", "}}{}"),
            format!(
                "is no event: its sign {} makes it no JSON (“trailing characters”)",
                broken("}}", "}}{").chars().count()
            ),
        ),
        (
            broken("watered", "wa\\u0007tered"),
            "is no event: its kind is no word".to_owned(),
        ),
        (
            broken("watered", &"w".repeat(61)),
            "is no event: its kind is no word".to_owned(),
        ),
        (
            broken("\"v\":1", "\"v\":1,\"v\":1"),
            field("duplicate field `v`"),
        ),
        (
            longest.clone(),
            format!("has {} bytes; an event has at most 65536", longest.len()),
        ),
    ] {
        let error = Event::read(&line).unwrap_err();
        assert_eq!(error.to_string(), sentence, "{line:.200}");
    }
    // Fields by their order instead of their names are no event, and no body that is understood.
    let event = event(
        &broken("{\"heap\":", "[")
            .replace("\"water_l\":", "")
            .replace("}}", "]}"),
    );
    assert!(matches!(event.what, What::Unknown(_)), "{:?}", event.what);
    let mut reader = FileReader::default();
    assert_eq!(reader.read(b"\xff\xfe{}"), None);
    let faults = reader.finish().faults;
    assert_eq!(faults[0].what, LineError::NotText);
    assert_eq!(faults[0].to_string(), "line 1 is not text in UTF-8");
}

/// A whole file: header, mark of the byte order, line breaks of two kinds, faults among the rest.
#[test]
fn a_file_of_golden_lines_is_read_and_its_digest_tells_whether_it_is_whole() {
    let digests = VERSION_1.lines().map(|line| Digest::of(line.as_bytes()));
    let exported = event(VERSION_1.lines().next().unwrap()).happened;
    let header = heapwright_journal::Header::of(digests.collect(), exported);
    let head = format!("\u{feff}{}", header.line());
    let read = |lines: Vec<&str>| {
        let mut reader = FileReader::default();
        let events = lines
            .iter()
            .filter_map(|line| reader.read(line.as_bytes()))
            .count();
        (events, reader.finish())
    };
    let lines = || std::iter::once(&*head).chain(VERSION_1.lines());
    let (events, summary) = read(lines().collect());
    assert_eq!(events, VERSION_1.lines().count());
    assert!(summary.whole && summary.faults.is_empty());
    assert_eq!(summary.header, Some(header));
    // In another order, with other line breaks and empty lines: whole still.
    let mut turned: Vec<String> = VERSION_1
        .lines()
        .rev()
        .map(|line| format!("{line}\r"))
        .collect();
    turned.insert(0, head.clone());
    turned.push("  ".to_owned());
    let (_, summary) = read(turned.iter().map(String::as_str).collect());
    assert!(summary.whole, "{summary:?}");
    // Cut, or with a line that has changed: not whole.
    assert!(!read(lines().take(20).collect()).1.whole);
    let changed = VERSION_1.replacen("Bay 1", "Bay 2", 1);
    let changed = std::iter::once(&*head).chain(changed.lines());
    assert!(!read(changed.collect()).1.whole);
    let (_, summary) = read(lines().chain(["{}", "no"]).chain(NEWER.lines()).collect());
    assert_eq!(summary.fault_count, 2);
    assert_eq!(
        summary.faults[0].to_string(),
        "line 69 is no event: a field is missing or cannot be as it is (“missing field `v`”)"
    );
    assert_eq!(summary.not_understood.get("sung_to"), Some(&2));
}
