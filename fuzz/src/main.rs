//! `heapwright-fuzz --list`: the targets, one name a line.
//! `heapwright-fuzz TARGET [RUNS [SEED]] [--keep]`: feeds a target and reports in one line.
//!
//! Inputs that break the target are kept in `crashers/TARGET/` (exit code 1). With `--keep`, inputs
//! with a new kind of outcome join `corpus/TARGET/`.

use std::io::{self, Write};
use std::process::ExitCode;
use std::time::Instant;

use heapwright_fuzz::{Options, Shelf, TARGETS, Target, run, target_named};

const DEFAULT_RUNS: u64 = 1_000_000;
const DEFAULT_SEED: u64 = 1;

struct Order {
    target: Target,
    options: Options,
    keep: bool,
}

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if arguments == ["--list"] {
        return list();
    }
    let order = match order(&arguments) {
        Ok(order) => order,
        Err(message) => {
            let _ = writeln!(io::stderr(), "{message}");
            return ExitCode::from(2);
        }
    };
    match carry_out(&order) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            let _ = writeln!(
                io::stderr(),
                "Cannot read or write the kept inputs: {error}."
            );
            ExitCode::FAILURE
        }
    }
}

fn list() -> ExitCode {
    let mut out = io::stdout().lock();
    for target in TARGETS {
        if writeln!(out, "{}", target.name).is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn order(arguments: &[String]) -> Result<Order, String> {
    let names: Vec<&str> = TARGETS.iter().map(|target| target.name).collect();
    let usage = || {
        format!(
            "Write heapwright-fuzz TARGET [RUNS [SEED]] [--keep], with TARGET one of {}, or heapwright-fuzz --list.",
            names.join(", ")
        )
    };
    let keep = arguments.iter().any(|argument| argument == "--keep");
    let plain: Vec<&String> = arguments
        .iter()
        .filter(|argument| *argument != "--keep")
        .collect();
    if plain.is_empty() || plain.len() > 3 {
        return Err(usage());
    }
    let number = |place: usize, default: u64| match plain.get(place) {
        None => Ok(default),
        Some(text) => text.parse().map_err(|_| usage()),
    };
    Ok(Order {
        target: target_named(plain[0]).ok_or_else(usage)?,
        options: Options {
            runs: number(1, DEFAULT_RUNS)?,
            seed: number(2, DEFAULT_SEED)?,
        },
        keep,
    })
}

/// Runs and reports; true when nothing broke.
fn carry_out(order: &Order) -> io::Result<bool> {
    let Order {
        target,
        options,
        keep,
    } = order;
    let shelf = Shelf::of_package();
    let corpus = shelf.inputs("corpus", target.name)?;
    // The panics are reported below; the default hook would print each at once.
    std::panic::set_hook(Box::new(|_| {}));
    let begin = Instant::now();
    let report = run(*target, corpus, *options);
    let took = begin.elapsed();
    let mut out = io::stdout().lock();
    for failure in &report.failures {
        let file = shelf.keep("crashers", target.name, &failure.input)?;
        let text = String::from_utf8_lossy(&failure.input);
        let text: String = text.chars().take(200).collect();
        writeln!(out, "{}: {}: {text:?}", file.display(), failure.message)?;
    }
    if *keep {
        for input in &report.discoveries {
            shelf.keep("corpus", target.name, input)?;
        }
    }
    writeln!(
        out,
        "{}: {} inputs, seed {}, {} kinds of outcome ({} new), {} failures, slowest {:.1} ms, {:.1} s",
        target.name,
        report.runs,
        options.seed,
        report.outcomes,
        report.discoveries.len(),
        report.failures.len(),
        took_ms(report.slowest),
        took.as_secs_f64(),
    )?;
    Ok(report.failures.is_empty())
}

fn took_ms(took: std::time::Duration) -> f64 {
    took.as_secs_f64() * 1000.0
}
