//! Every test of the project in one go, and a summary in which nothing is silently left out.

use std::collections::BTreeMap;
use std::env;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use crate::Outcome;
use crate::browser::{Missing, Rig};
use crate::bundle::bundle;
use crate::workspace::{cargo, output, run};

/// Crates that compute and must build where there is neither file nor clock.
const PURE: [&str; 16] = [
    "quantity",
    "texts",
    "numerics",
    "weather",
    "terms",
    "journal",
    "state",
    "invented",
    "catalogue",
    "garden",
    "engine",
    "answers",
    "drawings",
    "wording",
    "spreadsheet",
    "wire",
];

/// Runs of each fuzz target unless `--fuzz-runs` says otherwise (quality target R14).
const FUZZ_RUNS: u64 = 1_000_000;

/// With this set to 1, a machine that cannot open the page fails instead of skipping.
const REQUIRE_BROWSER: &str = "HEAPWRIGHT_REQUIRE_BROWSER";

enum Ending {
    Passed,
    Failed(String),
    Skipped(String),
}

struct Step {
    name: String,
    ending: Ending,
    took: Duration,
}

/// Runs everything, also after a failure, and fails when anything failed.
pub fn test(options: &[String]) -> Outcome {
    let fuzz_runs = fuzz_runs(options)?;
    let mut steps = Vec::new();
    take(&mut steps, "Rust tests", || {
        passed(run(cargo().args(["test", "--no-fail-fast"])))
    });
    // Not a default member: a plain `cargo test` need not build the page's framework.
    take(&mut steps, "Rust tests of the page", || {
        passed(run(cargo().args([
            "test",
            "--package",
            "heapwright-web",
            "--lib",
        ])))
    });
    take(&mut steps, "pure crates build for wasm32", || {
        passed(pure_crates_build_for_wasm32())
    });
    match fuzz_targets() {
        Err(sentence) => take(&mut steps, "fuzz targets", || Ending::Failed(sentence)),
        Ok(targets) => fuzz_all(&mut steps, targets, fuzz_runs),
    }
    take(&mut steps, "bundle", || passed(bundle()));
    let bundled = steps
        .last()
        .is_some_and(|step| matches!(step.ending, Ending::Passed));
    take(&mut steps, "browser tests", || browser_tests(bundled));
    summary(&steps)
}

fn fuzz_runs(options: &[String]) -> Outcome<u64> {
    match options {
        [] => Ok(FUZZ_RUNS),
        [name, count] if name == "--fuzz-runs" => count.parse().map_err(|_| {
            format!("--fuzz-runs must be a whole number, like 1000; it was `{count}`")
        }),
        _ => Err("the only option is --fuzz-runs N".to_owned()),
    }
}

fn take(steps: &mut Vec<Step>, name: &str, work: impl FnOnce() -> Ending) {
    println!("\n== {name}");
    let start = Instant::now();
    let ending = work();
    let took = start.elapsed();
    match &ending {
        Ending::Passed => println!("== {name}: passed in {:.1} s", took.as_secs_f64()),
        Ending::Failed(sentence) => println!("== {name}: FAILED: {sentence}"),
        Ending::Skipped(sentence) => println!("== {name} skipped: {sentence}"),
    }
    steps.push(Step {
        name: name.to_owned(),
        ending,
        took,
    });
}

fn passed(outcome: Outcome) -> Ending {
    match outcome {
        Ok(()) => Ending::Passed,
        Err(sentence) => Ending::Failed(sentence),
    }
}

fn pure_crates_build_for_wasm32() -> Outcome {
    let mut check = cargo();
    check.args(["check", "--target", "wasm32-unknown-unknown"]);
    for name in PURE {
        check.args(["--package", &format!("heapwright-{name}")]);
    }
    run(&mut check)
}

/// Runs the fuzz targets, as many at once as there are processors; each tells its findings when it
/// is done, so that they do not mix.
fn fuzz_all(steps: &mut Vec<Step>, targets: Vec<String>, runs: u64) {
    let at_once = std::thread::available_parallelism().map_or(1, usize::from);
    println!("\n== fuzz: {} targets, {at_once} at once", targets.len());
    let waiting = Mutex::new(targets.into_iter());
    let done = Mutex::new(steps);
    std::thread::scope(|scope| {
        for _ in 0..at_once {
            scope.spawn(|| {
                // Taken in a statement of its own, or the queue would be locked while it runs.
                while let Some(target) = next(&waiting) {
                    let start = Instant::now();
                    let told = fuzz().args([target.as_str(), &runs.to_string()]).output();
                    let (ending, words) = match told {
                        Ok(told) if told.status.success() => (Ending::Passed, told.stdout),
                        Ok(told) => (
                            Ending::Failed(format!("fuzz target {target} found a fault")),
                            [told.stdout, told.stderr].concat(),
                        ),
                        Err(error) => (
                            Ending::Failed(format!("fuzz target {target} did not start: {error}")),
                            Vec::new(),
                        ),
                    };
                    let took = start.elapsed();
                    let mut steps = done.lock().unwrap_or_else(PoisonError::into_inner);
                    print!("{}", String::from_utf8_lossy(&words));
                    println!("== fuzz {target}: {:.1} s", took.as_secs_f64());
                    steps.push(Step {
                        name: format!("fuzz {target}"),
                        ending,
                        took,
                    });
                }
            });
        }
    });
}

fn next(waiting: &Mutex<std::vec::IntoIter<String>>) -> Option<String> {
    waiting
        .lock()
        .unwrap_or_else(PoisonError::into_inner)
        .next()
}

fn fuzz() -> std::process::Command {
    let mut fuzz = cargo();
    fuzz.args([
        "run",
        "--release",
        "--quiet",
        "--package",
        "heapwright-fuzz",
        "--bin",
        "heapwright-fuzz",
        "--",
    ]);
    fuzz
}

fn fuzz_targets() -> Outcome<Vec<String>> {
    let list = output(fuzz().arg("--list"))?;
    let targets: Vec<String> = list.split_whitespace().map(str::to_owned).collect();
    if targets.is_empty() {
        return Err("`heapwright-fuzz --list` named no target".to_owned());
    }
    Ok(targets)
}

fn browser_tests(bundled: bool) -> Ending {
    let rig = match Rig::find() {
        Ok(rig) => rig,
        Err(Missing(what)) if env::var_os(REQUIRE_BROWSER).is_some_and(|value| value == "1") => {
            return Ending::Failed(what);
        }
        Err(Missing(what)) => return Ending::Skipped(what),
    };
    if !bundled {
        return Ending::Failed("there is no bundle to open; see above".to_owned());
    }
    passed(
        rig.prepare()
            .and_then(|()| run(rig.node()?.args(["--test", "--test-concurrency=1"]))),
    )
}

fn summary(steps: &[Step]) -> Outcome {
    println!();
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for Step { name, ending, took } in steps {
        let (word, why) = match ending {
            Ending::Passed => ("passed", String::new()),
            Ending::Failed(sentence) => ("failed", format!(": {sentence}")),
            Ending::Skipped(sentence) => ("skipped", format!(": {sentence}")),
        };
        *counts.entry(word).or_default() += 1;
        println!("{:>7.1} s  {word:<7}  {name}{why}", took.as_secs_f64());
    }
    let count = |word| counts.get(word).copied().unwrap_or(0);
    let (passed, failed, skipped) = (count("passed"), count("failed"), count("skipped"));
    println!("\nsteps: {passed} passed, {failed} failed, {skipped} skipped");
    if failed == 0 {
        Ok(())
    } else {
        Err(format!("{failed} of {} steps failed", steps.len()))
    }
}
