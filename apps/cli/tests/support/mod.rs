//! Runs the real program, with a journal of its own where one is wanted.

// Each test binary uses its own part of this.
#![allow(dead_code, clippy::unwrap_used)]

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What came of a run.
#[derive(Clone, Debug)]
pub struct Ran {
    /// Exit code; -1 when a signal ended it.
    pub code: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

/// The program itself. No journal of this computer is touched.
pub fn program() -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_heapwright"));
    program
        .env("HEAPWRIGHT_GARDEN", own_folder("no-journal").join("none"))
        .env_remove("HEAPWRIGHT_NOW");
    program
}

/// An empty folder of this test binary.
pub fn own_folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// A journal of its own, and what the clock says.
#[derive(Clone, Debug)]
pub struct Kept {
    /// The folder in which nothing else lies at first.
    pub folder: PathBuf,
    /// The file of the journal.
    pub path: PathBuf,
    /// What the clock says.
    pub now: String,
}

impl Kept {
    /// One that is not there yet.
    pub fn new(name: &str) -> Self {
        let folder = own_folder(&format!("{name}-{}", std::process::id()));
        std::fs::remove_dir_all(&folder).unwrap();
        std::fs::create_dir_all(&folder).unwrap();
        Self {
            path: folder.join("garden.heapwright"),
            folder,
            now: "2026-05-06T14:30:00+02:00".to_owned(),
        }
    }

    /// The program with this journal and clock.
    pub fn program(&self) -> Command {
        let mut program = program();
        program
            .env("HEAPWRIGHT_GARDEN", &self.path)
            .env("HEAPWRIGHT_NOW", &self.now)
            .current_dir(&self.folder);
        program
    }

    /// Runs the program with arguments.
    pub fn run(&self, arguments: &[&str]) -> Ran {
        ran(self.program(), arguments, b"")
    }

    /// Runs the program; it must succeed.
    pub fn answer(&self, arguments: &[&str]) -> String {
        let ran = self.run(arguments);
        assert_eq!(ran.code, 0, "{arguments:?}: {}{}", ran.out, ran.err);
        ran.out
    }

    /// The answer as JSON.
    pub fn json(&self, arguments: &[&str]) -> serde_json::Value {
        let mut all = arguments.to_vec();
        all.push("--json");
        serde_json::from_str(&self.answer(&all)).unwrap()
    }

    /// The journal as it is exported, without the header, which has the time in it.
    pub fn lines(&self) -> String {
        if !self.path.exists() {
            return String::new();
        }
        let text = self.answer(&["export", "-"]);
        text.split_once('\n').unwrap().1.to_owned()
    }
}

/// Compares a text with what is kept, no-break spaces written as plain ones. UPDATE_GOLDEN=1
/// rewrites what is kept: look at the difference.
pub fn golden_text(name: &str, text: &str) {
    let text = text.replace('\u{a0}', " ");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/golden/{name}.txt"));
    if std::env::var_os("UPDATE_GOLDEN").is_some() {
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, &text).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        kept == text,
        "{} has changed; now it is:\n{text}",
        path.display()
    );
}

/// The smallest PNG: one pixel.
pub const SPOT_PNG: &[u8] = &[
    0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d, b'I', b'H', b'D', b'R', 0, 0, 0,
    1, 0, 0, 0, 1, 8, 0, 0, 0, 0, 0x3a, 0x7e, 0x9b, 0x55, 0, 0, 0, 0x0a, b'I', b'D', b'A', b'T',
    0x78, 0x9c, 0x63, 0x60, 0, 0, 0, 2, 0, 1, 0x48, 0xaf, 0xa4, 0x71, 0, 0, 0, 0, b'I', b'E', b'N',
    b'D', 0xae, 0x42, 0x60, 0x82,
];

/// Arguments as they are typed.
pub fn typed(arguments: &[&str]) -> String {
    let mut typed = String::from("$ heapwright");
    for argument in arguments {
        let plain = !argument.is_empty()
            && argument
                .chars()
                .all(|c| c.is_alphanumeric() || "-_.".contains(c));
        typed.push_str(&if plain {
            format!(" {argument}")
        } else {
            format!(" \"{argument}\"")
        });
    }
    typed
}

/// Runs the program with arguments and bytes on standard input.
pub fn run_with(arguments: &[&str], input: &[u8]) -> Ran {
    ran(program(), arguments, input)
}

/// Runs a program that is set up.
pub fn ran(mut program: Command, arguments: &[&str], input: &[u8]) -> Ran {
    let mut child = program
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    let input = input.to_vec();
    // It may stop reading before all is written.
    let writer = std::thread::spawn(move || {
        let _ = stdin.write_all(&input);
    });
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap();
    let ran = Ran {
        code: output.status.code().unwrap_or(-1),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    };
    assert!(!ran.err.contains("panicked"), "{arguments:?}: {}", ran.err);
    ran
}

/// Runs the program with arguments and nothing on standard input.
pub fn run(arguments: &[&str]) -> Ran {
    run_with(arguments, b"")
}

/// Runs the program; it must succeed in silence but for its answer.
pub fn answer(arguments: &[&str]) -> String {
    let ran = run(arguments);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{arguments:?}");
    ran.out
}

/// A file of the repository, from its root.
pub fn of_repository(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .join(path)
}
