//! The journal at its edges: two programs at once, outputs that break, odd names and places.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs::File;
use std::process::Stdio;

use support::{Kept, SPOT_PNG, own_folder, program};

/// An amount that no heap of this size holds is written down all the same, and asked about.
#[test]
fn a_feed_that_is_more_than_the_heap_holds_is_told() {
    let kept = Kept::new("slip");
    kept.answer(&["heap", "new", "Bin", "--width", "1 m", "--height", "90 cm"]);
    let fed = kept.answer(&["feed", "500 buckets grass"]);
    let line: String = fed.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        line.contains("This feed is 5 m³ loose, and Bin holds 900 L. Check the amounts. `heapwright undo` takes it back."),
        "{fed}"
    );
    assert!(!kept.answer(&["feed", "5 buckets grass"]).contains("Check"));
    // Nobody said how large this one is.
    kept.answer(&["heap", "new", "Pile"]);
    assert!(
        !kept
            .answer(&["feed", "Pile", "500 buckets grass"])
            .contains("Check")
    );
}

/// Programs that write at once lose nothing of each other's.
#[test]
fn two_programs_write_at_once() {
    let kept = Kept::new("at-once");
    kept.answer(&["heap", "new", "Bin"]);
    let rounds = 8;
    std::thread::scope(|scope| {
        for writer in ["one", "two"] {
            let kept = &kept;
            scope.spawn(move || {
                for round in 0..rounds {
                    kept.answer(&["note", &format!("{writer} {round}"), "--heap", "Bin"]);
                }
            });
        }
    });
    let log = kept.answer(&["log", "--kind", "notes"]);
    for writer in ["one", "two"] {
        for round in 0..rounds {
            assert!(
                log.contains(&format!("{writer} {round}\n")),
                "{writer} {round} is lost:\n{log}"
            );
        }
    }
    assert_eq!(kept.json(&["check"])["sound"], true);
}

/// Two programs that start a journal at once have one journal.
#[test]
fn two_programs_start_at_once() {
    let kept = Kept::new("start-at-once");
    std::thread::scope(|scope| {
        for name in ["One", "Two"] {
            let kept = &kept;
            scope.spawn(move || kept.answer(&["heap", "new", name]));
        }
    });
    let heaps = kept.json(&["heap", "list"]);
    assert_eq!(heaps["heaps"].as_array().unwrap().len(), 2, "{heaps}");
}

#[test]
fn a_full_disk_is_a_failure() {
    let Ok(full) = File::options().write(true).open("/dev/full") else {
        return;
    };
    let kept = Kept::new("full");
    kept.answer(&["heap", "new", "Bin"]);
    kept.answer(&["feed", "1 bucket straw"]);
    for arguments in [
        &["heap", "show"][..],
        &["heap", "list", "--json"],
        &["log"],
        &["export", "-"],
        &["check"],
        &["export", "--csv", "log"],
    ] {
        let output = kept
            .program()
            .args(arguments)
            .stdin(Stdio::null())
            .stdout(full.try_clone().unwrap())
            .output()
            .unwrap();
        let err = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(1), "{arguments:?}: {err}");
        assert_eq!(err.lines().count(), 1, "{arguments:?}: {err}");
        assert!(err.contains("cannot be written"), "{arguments:?}: {err}");
    }
    let ran = kept.run(&["export", "/dev/full", "--replace"]);
    assert_eq!((ran.code, ran.err.lines().count()), (1, 1), "{}", ran.err);
}

#[test]
fn a_reader_that_has_read_enough_is_no_failure() {
    let kept = Kept::new("enough");
    kept.answer(&["heap", "new", "Bin"]);
    for arguments in [&["log"][..], &["heap", "show"], &["export", "-"], &["turn"]] {
        let mut child = kept
            .program()
            .args(arguments)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        // Closed before anything is read.
        drop(child.stdout.take());
        let output = child.wait_with_output().unwrap();
        let err = String::from_utf8(output.stderr).unwrap();
        assert_eq!(err, "", "{arguments:?}");
        assert_eq!(output.status.code(), Some(0), "{arguments:?}");
    }
    // What was written down is there all the same.
    assert_eq!(kept.json(&["heap", "show"])["heap"]["turns"], 1);
}

/// The journal goes where the surroundings say, in a folder that is made.
#[test]
fn the_usual_place_is_the_data_folder() {
    let folder = own_folder(&format!("usual-{}", std::process::id()));
    let run = |arguments: &[&str], data: Option<&std::path::Path>| {
        let mut program = program();
        program
            .env_remove("HEAPWRIGHT_GARDEN")
            .env_remove("XDG_DATA_HOME")
            .env_remove("HOME");
        if let Some(data) = data {
            program.env("XDG_DATA_HOME", data);
        }
        support::ran(program, arguments, b"")
    };
    if cfg!(all(unix, not(target_os = "macos"))) {
        let ran = run(&["heap", "new", "Bin"], Some(&folder));
        assert_eq!(ran.code, 0, "{}", ran.err);
        let path = folder.join("heapwright").join("garden.heapwright");
        assert!(path.exists(), "{}", ran.err);
        assert!(ran.err.contains(&path.display().to_string()), "{}", ran.err);
        // Without a home there is no usual place; a mixture needs none.
        for arguments in [&["heap", "list"][..], &["heap", "new", "Bin"], &["check"]] {
            let ran = run(arguments, None);
            assert_eq!((ran.code, ran.err.lines().count()), (1, 1), "{}", ran.err);
            assert!(ran.err.contains("--garden"), "{}", ran.err);
        }
        assert_eq!(run(&["mix", "1 kg grass"], None).code, 0);
    }
}

#[test]
fn odd_names_of_files_and_heaps_are_names() {
    let kept = Kept::new("odd names");
    for name in [
        "a b.heapwright",
        "gärten 🌱",
        "-dash",
        "quote'\"",
        "100%",
        "q?x#y",
    ] {
        let path = kept.folder.join(name).display().to_string();
        let ran = kept.run(&["heap", "new", name, "--garden", &path]);
        // What begins with a dash is an option, unless it is said to be none.
        if name.starts_with('-') {
            assert_eq!(ran.code, 2);
            let ran = kept.run(&["heap", "new", "--garden", &path, "--", name]);
            assert_eq!(ran.code, 0, "{}", ran.err);
        } else {
            assert_eq!(ran.code, 0, "{name}: {}", ran.err);
        }
        let log = kept.answer(&["log", "--garden", &path]);
        assert!(log.contains(&format!("Started {name}")), "{log}");
        let copy = format!("{path}.copy");
        kept.answer(&["backup", &copy, "--garden", &path]);
        kept.answer(&["export", &format!("{path}.jsonl"), "--garden", &path]);
    }
    for path in [".", "no/such/../", "text"] {
        std::fs::write(
            kept.folder.join("text"),
            "no journal of ours, and long enough to be looked at".repeat(9),
        )
        .unwrap();
        let ran = kept.run(&["heap", "list", "--garden", path]);
        assert_eq!(
            (ran.code, ran.err.lines().count()),
            (1, 1),
            "{path}: {}",
            ran.err
        );
        let ran = kept.run(&["heap", "new", "x", "--garden", path]);
        assert_eq!(ran.code, 1, "{path}: {}", ran.err);
    }
}

/// A journal that may be read alone is read, and a sentence says why nothing is added.
#[cfg(unix)]
#[test]
fn a_folder_that_takes_no_changes_is_read() {
    use std::os::unix::fs::PermissionsExt;

    let kept = Kept::new("read-only");
    kept.answer(&["heap", "new", "Bin"]);
    let locked = |mode_file, mode_folder| {
        std::fs::set_permissions(&kept.path, std::fs::Permissions::from_mode(mode_file)).unwrap();
        std::fs::set_permissions(&kept.folder, std::fs::Permissions::from_mode(mode_folder))
            .unwrap();
    };
    locked(0o400, 0o500);
    // The administrator may write everywhere: there is nothing to see then.
    let may_write = File::create(kept.folder.join("probe")).is_ok();
    let read = kept.run(&["heap", "show"]);
    let written = kept.run(&["turn"]);
    locked(0o600, 0o700);
    assert_eq!(read.code, 0, "{}", read.err);
    if !may_write {
        assert_eq!(
            (written.code, written.err.lines().count()),
            (1, 1),
            "{}",
            written.err
        );
        assert_eq!(kept.json(&["heap", "show"])["heap"]["turns"], 0);
    }
}

/// The clock of tests is told in one way.
#[test]
fn a_clock_that_is_no_time_is_refused() {
    let mut kept = Kept::new("clock");
    kept.now = "noon".to_owned();
    let ran = kept.run(&["heap", "new", "Bin"]);
    assert_eq!((ran.code, ran.err.lines().count()), (2, 1), "{}", ran.err);
    assert!(ran.err.contains("HEAPWRIGHT_NOW"), "{}", ran.err);
}

/// Without a stand-in the clock and the time zone of the computer count.
#[test]
fn the_clock_of_the_computer_is_used() {
    let kept = Kept::new("own-clock");
    let mut program = kept.program();
    program
        .env_remove("HEAPWRIGHT_NOW")
        .env("TZ", "Asia/Kathmandu");
    let ran = support::ran(
        program,
        &["heap", "new", "Bin", "--at", "2020-01-15 12:00", "--json"],
        b"",
    );
    assert_eq!(ran.code, 0, "{}", ran.err);
    let answer: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    // 5 h 45 min ahead of UTC: no other zone has that.
    assert_eq!(
        answer["entries"][0]["happened"], "2020-01-15T12:00:00+05:45",
        "{}",
        ran.err
    );
}

/// The program with the clock of the computer, in a zone with summer time.
fn in_berlin(kept: &Kept, arguments: &[&str]) -> String {
    let mut program = kept.program();
    program
        .env_remove("HEAPWRIGHT_NOW")
        .env("TZ", "Europe/Berlin");
    let ran = support::ran(program, arguments, b"");
    assert_eq!(ran.code, 0, "{arguments:?}: {}", ran.err);
    ran.out
}

/// The hour that the clock leaves out is counted on from before it, the one that it shows twice is
/// the first of the two, and a time that has its offset keeps it.
#[test]
fn hours_that_the_clock_leaves_out_or_shows_twice_are_moments() {
    let kept = Kept::new("gap");
    for (number, (text, happened)) in [
        ("2020-03-29 02:30", "2020-03-29T03:30:00+02:00"),
        ("2020-03-29 01:59", "2020-03-29T01:59:00+01:00"),
        ("2020-03-29 03:00", "2020-03-29T03:00:00+02:00"),
        ("2020-10-25 02:30", "2020-10-25T02:30:00+02:00"),
        ("2020-10-25 03:00", "2020-10-25T03:00:00+01:00"),
        ("2020-07-01T12:00:00Z", "2020-07-01T12:00:00Z"),
    ]
    .into_iter()
    .enumerate()
    {
        let name = format!("Heap {number}");
        let told = in_berlin(&kept, &["heap", "new", &name, "--at", text, "--json"]);
        let answer: serde_json::Value = serde_json::from_str(&told).unwrap();
        assert_eq!(answer["entries"][0]["happened"], happened, "{text}");
    }
}

/// A logger keeps the time of the wall: its rows are of the offset of their own day.
#[test]
fn times_of_a_logger_have_the_offset_of_their_day() {
    let kept = Kept::new("logger-zone");
    in_berlin(&kept, &["heap", "new", "Bin", "--at", "2020-01-01"]);
    std::fs::write(
        kept.folder.join("probe.csv"),
        "Time,Temperature (°C)\n2020-01-15 12:00:00,41.5\n2020-07-15 12:00:00,43.0\n",
    )
    .unwrap();
    let told = in_berlin(&kept, &["import", "probe.csv", "--heap", "Bin", "--yes"]);
    assert!(told.contains("local time at their date"), "{told}");
    let lines = kept.lines();
    for happened in ["2020-01-15T12:00:00+01:00", "2020-07-15T12:00:00+02:00"] {
        assert!(lines.contains(happened), "{happened}:\n{lines}");
    }
}

/// A line that has changed on the disk is told, and what is sound is saved.
#[test]
fn a_damaged_journal_is_told_and_put_right() {
    let kept = Kept::new("damaged");
    kept.answer(&["heap", "new", "Bin"]);
    kept.answer(&["note", "first remark", "--heap", "Bin"]);
    kept.answer(&["note", "second remark", "--heap", "Bin"]);
    let mut bytes = std::fs::read(&kept.path).unwrap();
    let at = bytes.windows(12).position(|part| part == b"first remark");
    // It may lie in what was not yet brought into the file.
    let Some(at) = at else {
        panic!("the line is not in the file")
    };
    bytes[at] = b'F';
    std::fs::write(&kept.path, &bytes).unwrap();
    let checked = kept.run(&["check"]);
    assert_eq!(
        (checked.code, checked.err.contains("damaged")),
        (1, true),
        "{}",
        checked.err
    );
    assert!(
        checked.out.contains("Entry 2 has changed"),
        "{}",
        checked.out
    );
    let log = kept.run(&["log"]);
    assert_eq!(log.code, 0);
    assert!(
        log.out.contains("second remark") && log.err.contains("heapwright check"),
        "{}{}",
        log.out,
        log.err
    );
    let refused = kept.run(&["turn"]);
    assert_eq!(refused.code, 1, "{}", refused.out);
    // What is left of it must not pass for the whole journal.
    let refused = kept.run(&["export", "rest.jsonl"]);
    assert_eq!(refused.code, 1, "{}", refused.out);
    assert!(refused.err.contains("--skip-faulty"), "{}", refused.err);
    assert!(!kept.folder.join("rest.jsonl").exists());
    let told = kept.json(&["export", "rest.jsonl", "--skip-faulty"]);
    assert_eq!(told["entries"], 2);
    assert!(told.get("digest").is_none_or(serde_json::Value::is_null));
    let rest = std::fs::read_to_string(kept.folder.join("rest.jsonl")).unwrap();
    assert_eq!(rest.lines().count(), 2);
    assert!(!rest.contains("heapwright_journal") && rest.contains("second remark"));
    let told = kept.answer(&["restore", "--from-damaged"]);
    assert!(
        told.contains("2 entries") && told.contains("lost: 1 entry."),
        "{told}"
    );
    assert_eq!(kept.json(&["check"])["sound"], true);
    kept.answer(&["turn"]);
}

/// From a damaged file its pictures come along; those that do not are told.
#[test]
fn pictures_of_a_damaged_file_come_along() {
    let kept = Kept::new("damaged-pictures");
    kept.answer(&["heap", "new", "Bin"]);
    kept.answer(&["note", "first remark", "--heap", "Bin"]);
    std::fs::write(kept.folder.join("spot.png"), SPOT_PNG).unwrap();
    kept.answer(&["note", "seen", "--heap", "Bin", "--picture", "spot.png"]);
    kept.answer(&["export", "whole.jsonl"]);
    let mut bytes = std::fs::read(&kept.path).unwrap();
    let at = bytes.windows(12).position(|part| part == b"first remark");
    bytes[at.unwrap()] = b'F';
    let damaged = kept.folder.join("damaged.heapwright");
    std::fs::write(&damaged, &bytes).unwrap();

    let other = Kept::new("damaged-pictures-here");
    let file = damaged.display().to_string();
    let told = other.json(&["restore", "--from-damaged", &file]);
    assert_eq!(
        (&told["entries"], &told["new"], &told["pictures"]),
        (&2.into(), &2.into(), &1.into())
    );
    let checked = other.json(&["check"]);
    assert_eq!(
        (
            &checked["sound"],
            &checked["pictures"],
            &checked["pictures_missing"]
        ),
        (&true.into(), &1.into(), &0.into())
    );
    assert_eq!(std::fs::read(&damaged).unwrap(), bytes, "it was touched");

    // An export has no pictures.
    let without = Kept::new("damaged-pictures-none");
    let file = kept.folder.join("whole.jsonl").display().to_string();
    without.answer(&["import", &file, "--yes"]);
    assert_eq!(without.json(&["check"])["pictures_missing"], 1);
    let told = without.answer(&["check"]);
    assert!(
        told.contains("Named by notes, but not here: 1 picture;"),
        "{told}"
    );
    // What was taken in without them is made good.
    let file = damaged.display().to_string();
    let told = without.answer(&["restore", "--from-damaged", &file]);
    assert!(
        told.contains("2 entries and 1 picture; new to the journal: 0."),
        "{told}"
    );
    assert_eq!(without.json(&["check"])["pictures_missing"], 0);
}
