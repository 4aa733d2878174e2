//! The project's own tasks, reached by `cargo xtask TASK`: [`bundle`], [`hosted`], [`run`], [`test`], [`tidy`], [`measure`].
//!
//! A task that fails says in one sentence what to do, and ends with code 1; an unknown task ends with code 2.

// Talking to a terminal is what this program is for.
#![allow(clippy::print_stdout, clippy::print_stderr)]
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod browser;
mod bundle;
mod forms;
/// The server's own list, so that both say the same.
#[path = "../../apps/site/src/headers.rs"]
mod headers;
mod hosted;
mod languages;
mod measure;
mod naming;
mod parts;
mod run;
mod sizes;
mod style;
mod test;
mod tidy;
mod workspace;

use std::process::ExitCode;

const HELP: &str = "\
cargo xtask bundle              build the page into dist/, print its sizes, fail when it grew too large
cargo xtask static --output FOLDER [--as-bundled]
                                the page as plain files for any host, with compressed forms and the headers to send
cargo xtask run [-- OPTIONS]    bundle, then start `heapwright serve OPTIONS`
cargo xtask test [--fuzz-runs N]
                                every test: Rust, wasm32, fuzz targets (1000000 runs each), the page in a browser
cargo xtask tidy                rules that compilers do not know: who imports whom, named paths, source keys, words
cargo xtask measure [--write]   measure the page in a browser; --write keeps the figures in docs/measurements/
";

/// What a task returns: nothing, or the sentence to show.
type Outcome<T = ()> = Result<T, String>;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (task, options) = match arguments.split_first() {
        Some((task, options)) => (task.as_str(), options),
        None => ("help", [].as_slice()),
    };
    let outcome = match task {
        "bundle" => bundle::bundle(),
        "static" => hosted::hosted(options),
        "run" => run::run(options),
        "test" => test::test(options),
        "tidy" => tidy::tidy(),
        "measure" => measure::measure(options),
        "help" | "-h" | "--help" => {
            print!("{HELP}");
            Ok(())
        }
        unknown => {
            eprintln!("there is no task `{unknown}`; choose one of these:\n\n{HELP}");
            return ExitCode::from(2);
        }
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            eprintln!("xtask {task}: {sentence}");
            ExitCode::FAILURE
        }
    }
}
