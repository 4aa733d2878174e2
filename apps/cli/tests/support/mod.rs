//! Runs the real program.

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

/// The program itself.
pub fn program() -> Command {
    Command::new(env!("CARGO_BIN_EXE_heapwright"))
}

/// Runs the program with arguments and bytes on standard input.
pub fn run_with(arguments: &[&str], input: &[u8]) -> Ran {
    let mut child = program()
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
