//! Ten years of a large garden: every command answers before anybody waits. Ignored, for it takes a
//! while to make: `cargo test --release -p heapwright-cli --test large -- --ignored`.

#![allow(clippy::print_stdout, clippy::unwrap_used)]

mod support;

use std::time::{Duration, Instant};

use heapwright_invented::Plan;
use heapwright_journal::{Header, Line};
use support::Kept;

/// A large garden in ten years.
const EVENTS: usize = 200_000;

/// A keeper at the heap does not wait longer.
const AT_MOST: Duration = Duration::from_secs(1);

#[test]
#[ignore = "makes 200,000 entries"]
fn a_large_journal_is_opened_before_anybody_waits() {
    let mut kept = Kept::new("large");
    kept.now = "2031-01-01T12:00:00+01:00".to_owned();
    let lines: Vec<Line> = heapwright_invented::lines(&Plan::community(EVENTS))
        .map(|line| Line::from(line.unwrap().as_str()))
        .collect();
    assert!(lines.len() >= EVENTS * 9 / 10, "{} lines", lines.len());
    let digests = lines.iter().map(Line::digest).collect();
    let mut text = Header::of(digests, kept.now.parse().unwrap()).line();
    for line in &lines {
        text.push('\n');
        text.push_str(line.text());
    }
    let file = kept.folder.join("large.jsonl");
    std::fs::write(&file, text).unwrap();
    let file = file.display().to_string();
    assert_eq!(kept.json(&["import", &file, "--yes"])["written"], true);
    let heaps = kept.json(&["heap", "list"]);
    let heap = heaps["heaps"]
        .as_array()
        .unwrap()
        .iter()
        .find(|heap| heap["stage"] == "active")
        .unwrap()["id"]
        .as_str()
        .unwrap()
        .to_owned();
    let mut slow = Vec::new();
    for arguments in [
        &["heap", "show", &heap][..],
        &["feed", &heap, "1 bucket straw"],
        &["turn", &heap],
        &["log", "--last", "10"],
        &["undo"],
    ] {
        let start = Instant::now();
        kept.answer(arguments);
        let took = start.elapsed();
        println!("{took:?} {arguments:?}");
        // A program without optimisation says nothing of the one that people have.
        if took > AT_MOST && !cfg!(debug_assertions) {
            slow.push(format!("{took:?} {arguments:?}"));
        }
    }
    assert!(slow.is_empty(), "{}", slow.join("\n"));
}
