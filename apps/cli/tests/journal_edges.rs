//! The journal at its edges: two programs at once, outputs that break, odd names and places.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs::File;
use std::process::Stdio;

use support::{Kept, own_folder, program};

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
    let told = kept.answer(&["restore", "--from-damaged"]);
    assert!(
        told.contains("2 entries") && told.contains("lost: 1 entry."),
        "{told}"
    );
    assert_eq!(kept.json(&["check"])["sound"], true);
    kept.answer(&["turn"]);
}
