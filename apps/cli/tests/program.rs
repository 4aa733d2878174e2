//! The program as a whole: help, version, manual, completions, exit codes, broken outputs.

#![allow(clippy::unwrap_used)]

mod support;

use std::fs::File;
use std::process::Stdio;

use support::{answer, program, run, run_with};

const COMMANDS: [&str; 32] = [
    "mix",
    "balance",
    "materials",
    "heap",
    "feed",
    "turn",
    "water",
    "read",
    "note",
    "stock",
    "harvest",
    "bed",
    "beds",
    "convert",
    "spread",
    "test",
    "garden",
    "measure",
    "material",
    "undo",
    "log",
    "export",
    "import",
    "backup",
    "restore",
    "check",
    "today",
    "calendar",
    "serve",
    "schema",
    "completions",
    "manual",
];

#[test]
fn help_of_every_command_has_an_example() {
    for command in COMMANDS {
        for help in [vec![command, "--help"], vec!["help", command]] {
            let text = answer(&help);
            assert!(text.contains("Example"), "{help:?} has no example:\n{text}");
            assert!(
                text.contains(&format!("heapwright {command}")),
                "{help:?}:\n{text}"
            );
        }
    }
    let text = answer(&["--help"]);
    assert!(
        text.contains("Example") && text.contains("Exit codes"),
        "{text}"
    );
    for command in COMMANDS {
        assert!(text.contains(command), "{command} is not in the help");
    }
}

/// What the examples of the help show must work.
#[test]
fn examples_of_the_help_work() {
    for arguments in [
        &["mix", "2 buckets vegetable scraps, 1 bucket dry grass"][..],
        &[
            "mix",
            "2 buckets vegetable scraps, 1 bucket dry grass, half a handful of sawdust",
        ],
        &[
            "mix",
            "1 1/2 gal coffee grounds",
            "3.5 kg shredded leaves",
            "--water",
            "2 l",
        ],
        &[
            "balance",
            "1 caddy vegetable scraps, 1 bucket grass",
            "--reach",
            "6 buckets shredded leaves",
        ],
        &[
            "balance",
            "10 kg food waste",
            "--reach",
            "sawdust, wood chips",
            "--no-water",
            "--moisture",
            "45-60",
        ],
        &["balance", "2 buckets grass", "--demo"],
        &["materials"],
        &["materials", "coffee"],
        &["materials", "courgettes"],
        &["materials", "grass_clippings_fresh", "--json"],
        &["schema", "balance-question"],
    ] {
        assert!(answer(arguments).len() > 100, "{arguments:?}");
    }
    let ran = run_with(
        &["mix", "--json", "--file", "-"],
        br#"{"parts":[{"material":"coffee_grounds","amount":"2 buckets"}]}"#,
    );
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
}

#[test]
fn version_is_that_of_the_package() {
    assert_eq!(
        answer(&["--version"]),
        format!("heapwright {}\n", env!("CARGO_PKG_VERSION"))
    );
}

#[test]
fn completions_name_every_command() {
    for shell in ["bash", "zsh", "fish", "powershell"] {
        let text = answer(&["completions", shell]);
        for command in COMMANDS {
            assert!(
                text.contains(command),
                "{shell} does not complete {command}"
            );
        }
    }
}

#[test]
fn manual_has_a_part_for_every_command() {
    let text = answer(&["manual"]);
    assert!(text.contains(".TH heapwright"), "{}", &text[..200]);
    for command in COMMANDS {
        assert!(
            text.contains(&format!("heapwright\\-{command}")),
            "{command} has no part"
        );
    }
    assert!(text.contains("Example"));
}

/// Commands below commands.
const INNER: [[&str; 2]; 27] = [
    ["heap", "new"],
    ["heap", "list"],
    ["heap", "show"],
    ["heap", "stage"],
    ["heap", "cover"],
    ["heap", "uncover"],
    ["heap", "move"],
    ["stock", "put"],
    ["stock", "use"],
    ["stock", "count"],
    ["stock", "list"],
    ["bed", "new"],
    ["bed", "list"],
    ["garden", "describe"],
    ["garden", "person"],
    ["measure", "set"],
    ["material", "define"],
    ["material", "measure"],
    ["beds", "plan"],
    ["beds", "uses"],
    ["paper", "bin"],
    ["paper", "season"],
    ["paper", "beds"],
    ["convert", "cover"],
    ["convert", "weight"],
    ["convert", "oxide"],
    ["convert", "nitrogen"],
];

#[test]
fn inner_commands_have_their_help_and_their_part_of_the_manual() {
    let manual = answer(&["manual"]);
    for [outer, inner] in INNER {
        let help = answer(&["help", outer, inner]);
        assert!(help.contains("Usage"), "{outer} {inner}:\n{help}");
        let example = format!("heapwright {outer} {inner}");
        assert!(
            help.split_once("Example")
                .is_some_and(|(_, examples)| examples.contains(&example)),
            "{outer} {inner} has no example:\n{help}"
        );
        let part = format!("heapwright\\-{outer}\\-{inner}");
        assert!(manual.contains(&part), "{part}");
    }
}

#[test]
fn schemas_are_listed_and_printed() {
    for name in answer(&["schema"]).lines() {
        let schema: serde_json::Value = serde_json::from_str(&answer(&["schema", name])).unwrap();
        assert!(
            schema["$schema"]
                .as_str()
                .unwrap()
                .contains("json-schema.org"),
            "{name}"
        );
        assert!(jsonschema::validator_for(&schema).is_ok(), "{name}");
    }
}

#[test]
fn wrong_words_on_the_command_line_end_with_two() {
    for arguments in [
        &[][..],
        &["compost"],
        &["mix"],
        &["mix", "--frobnicate"],
        &["mix", "1 kg grass", "--file", "-"],
        &["balance", "1 kg grass", "--demo", "--garden-file", "x"],
        &["balance", "1 kg grass", "--objective", "cheapest"],
        &["mix", "1 kg grass", "--units", "stone"],
        &["serve", "--port", "99999"],
        &["serve", "--address", "nowhere"],
        &["completions", "tcsh"],
        &["mix", "--file"],
    ] {
        let ran = run(arguments);
        assert_eq!(ran.code, 2, "{arguments:?}");
        assert!(ran.out.is_empty(), "{arguments:?} wrote to standard output");
        assert!(!ran.err.is_empty(), "{arguments:?} said nothing");
    }
}

#[test]
fn a_number_that_is_none_is_refused_with_what_to_write() {
    for (arguments, words) in [
        (
            &["forecast", "--days", "soon"][..],
            "write a whole number from 1 to 1000",
        ),
        (
            &["log", "--last", "many"],
            "write a whole number, such as 10",
        ),
        (
            &["serve", "--port", "80x"],
            "write a whole number from 0 to 65535",
        ),
        (
            &["beds", "plan", "--litres", "much"],
            "write a number of litres, such as 300",
        ),
        (
            &["test", "--moisture", "wet"],
            "write a number, such as 2.5",
        ),
    ] {
        let ran = run(arguments);
        assert_eq!(ran.code, 2, "{arguments:?}");
        assert!(ran.err.contains(words), "{arguments:?}: {}", ran.err);
    }
}

#[test]
fn a_part_without_figures_is_named_as_it_was_typed() {
    let part = "Part 2, “1 bucket cat litter”: there are no figures";
    for (arguments, words) in [
        (&["mix", "1 kg grass, 1 bucket cat litter"][..], part),
        (&["balance", "1 kg grass, 1 bucket cat litter"], part),
        (
            &["balance", "1 kg grass", "--reach", "cat litter"],
            "--reach: there are no figures",
        ),
    ] {
        let ran = run(arguments);
        assert_eq!(ran.code, 2, "{arguments:?}");
        assert!(ran.err.contains(words), "{arguments:?}: {}", ran.err);
    }
}

#[test]
fn the_same_question_has_the_same_answer() {
    let question = [
        "balance",
        "1 caddy vegetable scraps",
        "--reach",
        "6 buckets straw, wood chips",
        "--json",
    ];
    assert_eq!(answer(&question), answer(&question));
}

#[test]
fn a_full_disk_is_a_failure() {
    let Ok(full) = File::options().write(true).open("/dev/full") else {
        return;
    };
    for arguments in [
        &["mix", "1 kg grass"][..],
        &["materials"],
        &["manual"],
        &["completions", "bash"],
    ] {
        let output = program()
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
}

#[test]
fn a_reader_that_has_read_enough_is_no_failure() {
    for arguments in [
        &["materials", "--json"][..],
        &["mix", "1 kg grass"],
        &["manual"],
        &["schema"],
    ] {
        let mut child = program()
            .args(arguments)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        // Closed before anything is read.
        drop(child.stdout.take());
        let output = child.wait_with_output().unwrap();
        assert_eq!(
            String::from_utf8(output.stderr).unwrap(),
            "",
            "{arguments:?}"
        );
        assert_eq!(output.status.code(), Some(0), "{arguments:?}");
    }
}

#[test]
fn a_port_that_is_taken_is_a_failure() {
    let taken = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let port = taken.local_addr().unwrap().port().to_string();
    let ran = run(&["serve", "--port", &port]);
    assert_eq!((ran.code, ran.err.lines().count()), (1, 1), "{}", ran.err);
    assert!(
        ran.err.contains("--port") && ran.out.is_empty(),
        "{}",
        ran.err
    );
}
