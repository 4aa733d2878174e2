//! `paper`: files that are whole, the same every time, and refused where they must be.

#![allow(clippy::unwrap_used, clippy::print_stderr)]

mod support;

use std::fs;
use std::io::ErrorKind;
use std::process::Command;

use support::Kept;

fn garden(name: &str) -> Kept {
    let mut kept = Kept::new(name);
    for (now, arguments) in [
        (
            "2026-04-02T10:00:00+02:00",
            vec!["heap", "new", "Bin", "--width", "1 m", "--height", "90 cm"],
        ),
        (
            "2026-04-02T10:05:00+02:00",
            vec!["stock", "put", "6 buckets shredded leaves"],
        ),
        (
            "2026-04-20T18:00:00+02:00",
            vec!["feed", "1 caddy vegetable scraps, 1 bucket shredded leaves"],
        ),
        (
            "2026-04-24T18:00:00+02:00",
            vec!["read", "Bin", "--temperature", "52 C core"],
        ),
        (
            "2026-04-26T18:00:00+02:00",
            vec!["read", "Bin", "--temperature", "58 C core"],
        ),
        ("2026-04-28T18:00:00+02:00", vec!["turn", "Bin"]),
        (
            "2026-04-30T18:00:00+02:00",
            vec!["read", "Bin", "--temperature", "49 C core"],
        ),
        (
            "2026-05-02T10:00:00+02:00",
            vec!["bed", "new", "Long bed", "6 m x 1.2 m", "--crop", "beans"],
        ),
    ] {
        kept.now = now.to_owned();
        kept.answer(&arguments);
    }
    kept.now = "2026-05-06T14:30:00+02:00".to_owned();
    kept
}

/// The letters of a file as another program reads them; `None`, and a word of it, where that is absent.
fn letters(kept: &Kept, file: &str) -> Option<String> {
    let path = kept.folder.join(file);
    match Command::new("pdftotext")
        .arg("-layout")
        .arg(path)
        .arg("-")
        .output()
    {
        Ok(output) => Some(String::from_utf8_lossy(&output.stdout).replace('\u{a0}', " ")),
        Err(error) if error.kind() == ErrorKind::NotFound => {
            eprintln!("skipped: pdftotext is not there to read {file}");
            None
        }
        Err(error) => panic!("{error}"),
    }
}

#[test]
fn each_page_is_written_whole_and_the_same_twice() {
    let kept = garden("paper-pages");
    for (arguments, wanted) in [
        (
            vec!["paper", "bin", "Bin"],
            vec![
                "Bin: what goes in",
                "1 caddy",
                "shredded leaves",
                "Squeeze",
                "Core, °C",
            ],
        ),
        (
            vec!["paper", "season", "--from", "2026-04-01"],
            vec![
                "Record of the heaps",
                "April 2026",
                "Turned once: 28 April 2026",
            ],
        ),
        (
            vec!["paper", "beds", "--litres", "60", "--mature", "--no-raw"],
            vec!["Compost for the beds", "Long bed", "Barrows", "Done"],
        ),
    ] {
        let run = |file: &str, more: &[&str]| {
            let mut all = arguments.clone();
            all.extend(["--output", file]);
            all.extend(more);
            assert_eq!(kept.answer(&all), "");
            fs::read(kept.folder.join(file)).unwrap()
        };
        let (once, twice) = (
            run("once.pdf", &["--replace"]),
            run("twice.pdf", &["--replace"]),
        );
        assert!(once.starts_with(b"%PDF-1.7") && once == twice);
        let letter = run("letter.pdf", &["--replace", "--size", "letter"]);
        assert_ne!(letter, once);
        if let Some(text) = letters(&kept, "once.pdf") {
            for wanted in wanted {
                assert!(text.contains(wanted), "{wanted}: {text}");
            }
        }
    }
}

#[test]
fn what_is_there_is_not_written_over_and_what_cannot_be_is_said() {
    let kept = garden("paper-refused");
    fs::write(kept.folder.join("bin.pdf"), "mine").unwrap();
    for (arguments, wanted) in [
        (
            vec!["paper", "bin", "Bin", "--output", "bin.pdf"],
            "bin.pdf is there already",
        ),
        (
            vec!["paper", "bin", "Nothing", "--output", "new.pdf"],
            "Nothing",
        ),
        (
            vec![
                "paper",
                "season",
                "--from",
                "2026-05-01",
                "--to",
                "2026-04-01",
                "-o",
                "new.pdf",
            ],
            "--from lies behind --to",
        ),
        (
            vec!["paper", "season", "--from", "2026-09-01", "-o", "new.pdf"],
            "--from lies in the future, where there is nothing to tell of yet",
        ),
        (
            vec!["paper", "beds", "--output", "new.pdf"],
            "say how much compost there is",
        ),
    ] {
        let ran = kept.run(&arguments);
        assert_eq!(ran.code, 2, "{}", ran.err);
        assert!(ran.err.contains(wanted), "{}", ran.err);
    }
    assert_eq!(fs::read(kept.folder.join("bin.pdf")).unwrap(), b"mine");
    assert!(!kept.folder.join("new.pdf").exists());
}

#[test]
fn the_pages_and_the_reminders_are_german_when_german_is_asked_for() {
    let kept = garden("paper-german");
    for (name, arguments) in [
        ("bin", vec!["paper", "bin", "Bin"]),
        ("season", vec!["paper", "season", "--from", "2026-04-01"]),
        ("beds", vec!["paper", "beds", "--litres", "300"]),
    ] {
        let file = kept.folder.join(format!("{name}.pdf"));
        let mut all = arguments;
        all.extend(["--language", "de", "--output", file.to_str().unwrap()]);
        kept.answer(&all);
        let bytes = fs::read(&file).unwrap();
        let says = |words: &[u8]| bytes.windows(words.len()).any(|found| found == words);
        assert!(says(b"/Lang(de)") || says(b"/Lang (de)"), "{name}");
    }
    if let Some(text) = letters(&kept, "bin.pdf") {
        assert!(text.contains("Eimer"), "{text}");
    }
    let calendar = kept.answer(&["calendar", "--language", "de"]);
    let english = kept.answer(&["calendar"]);
    let names = |text: &str| -> Vec<String> {
        let lines = text.lines();
        lines
            .filter(|line| line.starts_with("UID:"))
            .map(str::to_owned)
            .collect()
    };
    assert_eq!(names(&calendar), names(&english));
    assert_ne!(calendar, english);
}

#[test]
fn a_garden_without_stores_gets_its_page_with_browns_that_are_assumed() {
    let mut kept = Kept::new("paper-no-stores");
    kept.now = "2026-05-06T14:30:00+02:00".to_owned();
    kept.answer(&["heap", "new", "Bin", "--width", "1 m", "--height", "90 cm"]);
    for language in ["en", "de"] {
        let file = kept.folder.join(format!("bin-{language}.pdf"));
        let path = file.to_str().unwrap();
        kept.answer(&[
            "paper",
            "bin",
            "Bin",
            "--language",
            language,
            "--output",
            path,
        ]);
        assert!(fs::read(&file).unwrap().starts_with(b"%PDF-"), "{language}");
    }
}
