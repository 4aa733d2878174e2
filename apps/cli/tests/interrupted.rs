//! Answers that take long: nothing half written is left when Ctrl-C ends the program, and no program
//! that reads them is shown progress.

#![cfg(unix)]
#![allow(clippy::unwrap_used)]

mod support;

use std::fs;
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use serde_json::json;
use support::{own_folder, program};

/// A case that takes minutes.
fn long_case() -> String {
    json!({
        "start": "2026-05-01T00:00:00Z", "days": 1000,
        "enclosure": { "width_m": 1, "height_m": 1 },
        "weather": { "climate": { "latitude_deg": 50 } },
        "events": [{ "day": 0, "feed": [{ "material": "straw_wheat", "amount": "30 kg" }] }],
        "ensemble": { "members": 60 }
    })
    .to_string()
}

fn names(folder: &std::path::Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn ctrl_c_leaves_what_was_there_and_nothing_new() {
    for (index, form) in [&["--csv"][..], &["--svg", "core"], &["--json"]]
        .iter()
        .enumerate()
    {
        let folder = own_folder(&format!("interrupted-{index}-{}", std::process::id()));
        fs::write(folder.join("case.json"), long_case()).unwrap();
        fs::write(folder.join("kept.out"), "what was there").unwrap();
        let mut running = program()
            .current_dir(&folder)
            .args([
                "simulate",
                "--file",
                "case.json",
                "--output",
                "kept.out",
                "--replace",
            ])
            .args(*form)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        sleep(Duration::from_millis(700));
        assert!(
            running.try_wait().unwrap().is_none(),
            "{form:?} was done before it was interrupted"
        );
        let sent = Command::new("kill")
            .args(["-INT", &running.id().to_string()])
            .status();
        assert!(sent.unwrap().success());
        let began = Instant::now();
        let ended = running.wait_with_output().unwrap();
        assert!(began.elapsed() < Duration::from_secs(20));
        assert_eq!(ended.status.code(), Some(130), "{form:?}: {ended:?}");
        assert!(
            ended.stdout.is_empty() && ended.stderr.is_empty(),
            "{form:?}: {ended:?}"
        );
        assert_eq!(names(&folder), ["case.json", "kept.out"]);
        assert_eq!(
            fs::read_to_string(folder.join("kept.out")).unwrap(),
            "what was there"
        );
    }
}

#[test]
fn an_answer_in_a_file_is_that_of_standard_output_and_is_not_written_over() {
    let folder = own_folder(&format!("output-{}", std::process::id()));
    let case = long_case().replace("1000", "5").replace("60", "3");
    fs::write(folder.join("case.json"), case).unwrap();
    let run = |more: &[&str]| {
        program()
            .current_dir(&folder)
            .args(["simulate", "--file", "case.json", "--csv"])
            .args(more)
            .output()
            .unwrap()
    };
    let shown = run(&[]);
    // Piped: no progress.
    assert!(shown.status.success() && shown.stderr.is_empty());
    let written = run(&["--output", "rows.csv"]);
    assert!(written.status.success() && written.stdout.is_empty() && written.stderr.is_empty());
    assert_eq!(fs::read(folder.join("rows.csv")).unwrap(), shown.stdout);
    let again = run(&["--output", "rows.csv"]);
    assert_eq!(again.status.code(), Some(2));
    let said = String::from_utf8(again.stderr).unwrap();
    assert!(
        said.contains("rows.csv") && said.contains("--replace"),
        "{said}"
    );
    assert!(run(&["--output", "rows.csv", "--replace"]).status.success());
    assert_eq!(names(&folder), ["case.json", "rows.csv"]);
}
