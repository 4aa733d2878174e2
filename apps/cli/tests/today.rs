//! What each heap needs today, and reminders: an invented garden as people see it, as scripts read
//! it, as calendars follow it.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Stdio};

use heapwright_invented::Plan;
use heapwright_journal::{Header, Line};
use jiff::civil::date;
use serde_json::Value;
use support::{Kept, golden_text, of_repository, typed};

/// The invented demo garden in a journal of its own.
fn demo(name: &str) -> Kept {
    let mut kept = Kept::new(name);
    kept.now = "2026-05-01T18:00:00+02:00".to_owned();
    let plan = Plan::demo(date(2026, 5, 1));
    let lines: Vec<Line> = heapwright_invented::lines(&plan)
        .map(|line| Line::from(line.unwrap().as_str()))
        .collect();
    let digests = lines.iter().map(Line::digest).collect();
    let mut text = Header::of(digests, kept.now.parse().unwrap()).line();
    for line in &lines {
        text.push('\n');
        text.push_str(line.text());
    }
    let file = kept.folder.join("demo.jsonl");
    fs::write(&file, text).unwrap();
    let file = file.display().to_string();
    assert_eq!(kept.json(&["import", &file, "--yes"])["written"], true);
    kept
}

fn valid(found: &Value) {
    let path = of_repository("crates/wire/schemas/today.json");
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let faults: Vec<String> = validator
        .iter_errors(found)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_demo_garden_is_told_what_it_needs() {
    let mut kept = demo("today-demo");
    for (name, now) in [
        ("today", "2026-05-01T18:00:00+02:00"),
        ("today-a-month-later", "2026-06-01T08:00:00+02:00"),
    ] {
        kept.now = now.to_owned();
        let text = kept.answer(&["today"]);
        for line in text.lines() {
            assert!(line.chars().count() <= 80, "{line}");
        }
        assert!(!text.to_lowercase().contains("safe"), "{text}");
        golden_text(name, &format!("{}\n{text}", typed(&["today"])));
        valid(&kept.json(&["today"]));
    }
}

/// A heap of the invented garden that is too hot, and what becomes of it.
#[test]
fn what_was_done_is_asked_no_more() {
    let mut kept = Kept::new("today-hot");
    for (now, arguments) in [
        (
            "2026-05-01T10:00:00+02:00",
            &["heap", "new", "Bin", "--width", "1 m", "--height", "1 m"][..],
        ),
        (
            "2026-05-01T10:01:00+02:00",
            &[
                "feed",
                "Bin",
                "8 kg fresh grass, 9 kg dry leaves",
                "--water",
                "4 l",
            ],
        ),
        (
            "2026-05-06T10:00:00+02:00",
            &[
                "read",
                "Bin",
                "--temperature",
                "73 C core",
                "--squeeze",
                "moist",
            ],
        ),
    ] {
        kept.now = now.to_owned();
        kept.answer(arguments);
    }
    kept.now = "2026-05-06T14:00:00+02:00".to_owned();
    let found = kept.json(&["today", "Bin"]);
    valid(&found);
    let first = &found["needs"][0];
    assert_eq!(
        (&first["what"], &first["urgency"], &first["entry_kind"]),
        (&"cool_down".into(), &"now".into(), &"turned".into())
    );
    assert_eq!(first["entry"]["thoroughness"], "forked_over");
    assert_eq!(first["because"][0]["key"], "too_hot");
    golden_text(
        "today-hot",
        &format!("{}\n{}", typed(&["today"]), kept.answer(&["today"])),
    );
    kept.answer(&["turn", "Bin"]);
    let found = kept.json(&["today"]);
    assert!(
        found["needs"]
            .as_array()
            .unwrap()
            .iter()
            .all(|need| need["what"] != "cool_down"),
        "{found}"
    );
    kept.answer(&["heap", "stage", "Bin", "finished"]);
    let ran = kept.run(&["today", "Bin"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("asks for nothing"), "{}", ran.err);
}

#[test]
fn a_calendar_file_is_replaced_whole_and_nothing_else_is() {
    let mut kept = demo("calendar-file");
    let text = kept.answer(&["calendar"]);
    golden_text("calendar", &text.replace('\r', ""));
    assert_eq!(
        kept.answer(&["calendar", "--output", "garden.ics"]),
        "Written to garden.ics.\n"
    );
    let path = kept.folder.join("garden.ics");
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
    kept.now = "2026-05-03T18:00:00+02:00".to_owned();
    kept.answer(&["calendar", "--output", "garden.ics"]);
    let later = fs::read_to_string(&path).unwrap();
    assert!(later.contains("DTSTAMP:20260503T160000Z") && !later.contains("20260501T160000Z"));
    // Nothing half written lies beside it.
    let left = fs::read_dir(&kept.folder).unwrap();
    let names: Vec<_> = left.map(|entry| entry.unwrap().file_name()).collect();
    assert!(
        names
            .iter()
            .all(|name| !name.to_string_lossy().ends_with(".new")),
        "{names:?}"
    );
    let note = kept.folder.join("notes.txt");
    fs::write(&note, "my notes").unwrap();
    let ran = kept.run(&["calendar", "--output", "notes.txt"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("is no calendar"), "{}", ran.err);
    assert_eq!(fs::read_to_string(note).unwrap(), "my notes");
}

fn get(address: &str, host: &str) -> String {
    let mut stream = TcpStream::connect(address).unwrap();
    write!(
        stream,
        "GET /calendar.ics HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"
    )
    .unwrap();
    let mut reply = String::new();
    stream.read_to_string(&mut reply).unwrap();
    reply
}

struct Ended(Child);

impl Drop for Ended {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// What serves, and the first two lines that it says.
fn served(kept: &Kept, also: &[&str]) -> (Ended, [String; 2]) {
    let mut child = kept
        .program()
        .args(["serve", "--port", "0"])
        .args(also)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
    let ended = Ended(child);
    (ended, [(); 2].map(|()| lines.next().unwrap().unwrap()))
}

fn address_of(line: &str) -> String {
    let address = line.split_once("http://").unwrap().1;
    address.split_once('/').unwrap().0.to_owned()
}

#[test]
fn the_server_hands_out_reminders_in_the_language_that_was_asked_for() {
    let kept = demo("calendar-served-german");
    let (_ended, [_, second]) = served(&kept, &["--language", "de"]);
    let address = address_of(&second);
    let reply = get(&address, &address);
    let body = reply.split_once("\r\n\r\n").unwrap().1;
    assert_eq!(body, kept.answer(&["calendar", "--language", "de"]));
    assert_ne!(body, kept.answer(&["calendar"]));
}

#[test]
fn the_server_hands_out_reminders_worked_out_anew() {
    let kept = demo("calendar-served");
    let (_ended, [first, second]) = served(&kept, &[]);
    assert!(
        first.starts_with("Heapwright is at http://127.0.0.1:"),
        "{first}"
    );
    let address = address_of(&second);
    assert!(second.contains("/calendar.ics"), "{second}");
    let reply = get(&address, &address);
    assert!(reply.starts_with("HTTP/1.1 200"), "{reply}");
    let head = reply.split_once("\r\n\r\n").unwrap().0.to_lowercase();
    assert!(
        head.contains("content-type: text/calendar; charset=utf-8"),
        "{head}"
    );
    assert!(head.contains("cache-control: no-store"), "{head}");
    assert!(
        head.contains("cross-origin-resource-policy: same-origin"),
        "{head}"
    );
    let body = reply.split_once("\r\n\r\n").unwrap().1;
    assert_eq!(body, kept.answer(&["calendar"]));
    // A new heap that nobody looked at is in it without a new start.
    kept.answer(&["heap", "new", "Newcomer"]);
    kept.answer(&["feed", "Newcomer", "5 kg fresh grass"]);
    // What was worked out holds for a moment.
    let told = (0..100).any(|_| {
        std::thread::sleep(std::time::Duration::from_millis(100));
        get(&address, &address).contains("Newcomer")
    });
    assert!(told);
    // A hostile site that lets its name resolve to this computer gets nothing.
    let reply = get(&address, "heap.example");
    assert!(
        reply.starts_with("HTTP/1.1 421") && !reply.contains("VCALENDAR"),
        "{reply}"
    );
}
